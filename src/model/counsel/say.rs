//! The words of the counsel: numbers as people say them, courses as sentences.

use super::course::Course;
use super::wording::say as words;
use crate::record::{Case, Currency, Doer};
use crate::terms;
use crate::treatment::Treatment;

/// An amount in the case's currency, to two significant figures: "£340".
#[must_use]
pub fn money(case: &Case, amount: f64) -> String {
    terms::money(case.market.currency.unwrap_or(Currency::Other), amount)
}

/// A course in a few words, for lists: "wash, gentle cleaning".
pub(super) fn course_name(course: &Course) -> String {
    let names: Vec<String> = course
        .steps
        .iter()
        .filter(|t| !(**t == Treatment::Wash && course.steps.contains(&Treatment::Clean)))
        .enumerate()
        .map(|(i, t)| {
            if i == 0 {
                t.name().to_owned()
            } else {
                t.name().to_ascii_lowercase()
            }
        })
        .collect();
    names.join(words::THEN)
}

/// A course as what to do: "Have it tested for lead first; if it passes, have the joint repaired."
pub(super) fn advice_sentence(course: &Course, case: &Case) -> String {
    let has = |t| course.steps.contains(&t);
    let done = |steps: &[Treatment]| {
        let clauses: Vec<&str> = steps.iter().filter_map(|t| words::clause(*t)).collect();
        match clauses.as_slice() {
            [] => None,
            [one] if *one == words::CLEANED && case.aim.doer != Some(Doer::Workshop) => {
                Some(words::CLEAN_NO_MORE.to_owned())
            }
            [one] => Some(words::have(one)),
            [rest @ .., last] => Some(words::have_all(&rest.join(", "), last)),
        }
    };
    let keep = if has(Treatment::Keeping) {
        words::KEEP_BETTER
    } else {
        ""
    };
    if has(Treatment::TestLead) {
        let after = match (done(&course.if_clear), done(&course.if_lead)) {
            (None, None) if case.aim.food => words::USE_IF_PASSED.to_owned(),
            (None, None) => String::new(),
            (Some(a), Some(b)) if a == b => words::then_anyway(&a),
            (Some(a), None) => words::if_passed(&a),
            (None, Some(b)) => words::if_lead(&b),
            (Some(a), Some(b)) => words::either_way(&a, &b),
        };
        return words::test_first(&after, keep);
    }
    match done(&course.if_clear) {
        Some(words) => format!("{}{}.{keep}", words[..1].to_ascii_uppercase(), &words[1..]),
        None if has(Treatment::Keeping) => words::LEAVE_AND_KEEP.to_owned(),
        None => words::LEAVE.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_never_falsely_precise() {
        let mut case = Case::default();
        case.market.currency = Some(Currency::Pound);
        for (amount, shown) in [
            (1234.0, "£1,200"),
            (-87.4, "−£87"),
            (4.4, "£4"),
            (99_960.0, "£100,000"),
            (-0.2, "£0"),
            (345.0, "£350"),
        ] {
            assert_eq!(money(&case, amount), shown);
        }
    }
}
