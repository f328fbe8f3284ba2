//! The wording of the advice: numbers as people say them, courses as sentences.

use super::course::Course;
use super::wording::{contrast, sentences as words};
use crate::record::{Case, Currency, Doer};
use crate::terms::{self, all_of, in_turn, small};
use crate::treatment::Treatment;

/// An amount in the case's currency, to two significant figures: "£340".
#[must_use]
pub fn money(case: &Case, amount: f64) -> String {
    terms::money(currency(case), amount)
}

fn currency(case: &Case) -> Currency {
    case.market.currency.unwrap_or(Currency::Other)
}

/// A sum with its currency named if the currency has no sign.
fn named(case: &Case, sum: String) -> String {
    if currency(case).sign().is_empty() {
        contrast::in_your_currency(&sum)
    } else {
        sum
    }
}

/// A sum as quoted, to the penny where there are pennies: "£180, as quoted".
pub(super) fn as_quoted(case: &Case, sum: f64) -> String {
    contrast::as_quoted(&named(case, terms::to_the_penny(currency(case), sum)))
}

/// A sum estimated by us: "about £140 by our estimate"; under five units, next to nothing.
pub(super) fn by_our_estimate(case: &Case, sum: f64) -> String {
    if sum < 5.0 {
        return contrast::NEXT_TO_NOTHING.to_owned();
    }
    contrast::by_our_estimate(&named(case, money(case, sum)))
}

/// Treatments as the start of a sentence: "Taking the dents out and local plating".
pub(super) fn phrase(steps: &[Treatment]) -> String {
    let stripped = steps.contains(&Treatment::LacquerOff);
    let mut parts: Vec<&str> = Vec::new();
    for t in steps {
        parts.push(match t {
            Treatment::Clean if stripped => "cleaning",
            t => contrast::subject(*t),
        });
    }
    let mut said: Vec<String> = parts.iter().map(|part| small(part)).collect();
    if let (Some(first), Some(part)) = (said.first_mut(), parts.first()) {
        (*part).clone_into(first);
    }
    all_of(&said)
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
    in_turn(&names)
}

/// A course as an instruction: "Have it tested for lead first; if it passes, have the joint repaired."
pub(super) fn advice_sentence(course: &Course, case: &Case) -> String {
    let has = |t| course.steps.contains(&t);
    let done = |steps: &[Treatment]| {
        let clauses: Vec<&str> = steps.iter().filter_map(|t| words::clause(*t)).collect();
        match clauses.as_slice() {
            [] => None,
            [one]
                if *one == words::CLEANED
                    && case.aim.who_does(Treatment::Clean) != Some(Doer::Workshop) =>
            {
                Some(words::CLEAN_NO_MORE.to_owned())
            }
            clauses => Some(words::have(&all_of(clauses))),
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
        None if has(Treatment::Keeping) && case.corrodes() => words::LEAVE_AND_KEEP_DRY.to_owned(),
        None if has(Treatment::Keeping) => words::LEAVE_AND_KEEP.to_owned(),
        None => words::LEAVE.to_owned(),
    }
}
