//! The words of the counsel: numbers as people say them, courses as sentences.

use super::course::Course;
use crate::case::{Case, Currency, Doer};
use crate::treatment::Treatment;

/// An amount rounded to two figures, with the currency's sign: "about £340".
pub(crate) fn money(case: &Case, amount: f64) -> String {
    let rounded = two_figures(amount.abs());
    let sign = match case.market.currency {
        Some(Currency::Pound) => "£",
        Some(Currency::Euro) => "€",
        Some(Currency::Dollar) => "$",
        _ => "",
    };
    let minus = if amount < 0.0 && rounded > 0.0 {
        "−"
    } else {
        ""
    };
    if rounded < 10.0 {
        format!("{minus}{sign}{rounded:.0}")
    } else {
        format!("{minus}{sign}{}", grouped(rounded))
    }
}

/// Rounded to two significant figures; below 10 to a whole number.
pub(super) fn two_figures(x: f64) -> f64 {
    if !x.is_finite() || x < 10.0 {
        return x.round();
    }
    let mut unit = 1.0;
    while x / unit >= 100.0 {
        unit *= 10.0;
    }
    (x / unit).round() * unit
}

fn grouped(x: f64) -> String {
    let digits = format!("{x:.0}");
    let mut out = String::new();
    for (i, c) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            out.push(',');
        }
        out.push(c);
    }
    out
}

/// A share in words: "3 in 100", "about half".
pub(crate) fn share(p: f64) -> String {
    let hundred = 100.0 * p;
    if hundred < 1.0 {
        "less than 1 in 100".to_owned()
    } else if hundred > 99.0 {
        "more than 99 in 100".to_owned()
    } else {
        format!("{hundred:.0} in 100")
    }
}

/// A share of an area or of a whole: "about 3 %", "nearly all".
pub(super) fn percent(f: f64) -> String {
    if f < 0.005 {
        "less than 1 %".to_owned()
    } else if f >= 0.985 {
        "nearly all".to_owned()
    } else {
        format!("about {:.0} %", 100.0 * f)
    }
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
    names.join(", then ")
}

/// A course as what to do: "Have it tested for lead first; if it passes, have the joint repaired."
pub(super) fn advice_sentence(course: &Course, case: &Case) -> String {
    let has = |t| course.steps.contains(&t);
    let clause = |t: Treatment| match t {
        Treatment::RemoveLead => Some("the old lead solder taken out"),
        Treatment::Solder => Some("the joint repaired with lead-free solder"),
        Treatment::LowMelt => Some("the joint mended with a low-melting or glued repair"),
        Treatment::Clean => Some("it gently cleaned"),
        Treatment::Replate => Some("it fully replated"),
        _ => None,
    };
    let done = |steps: &[Treatment]| {
        let clauses: Vec<&str> = steps.iter().filter_map(|t| clause(*t)).collect();
        match clauses.as_slice() {
            [] => None,
            [one] if *one == "it gently cleaned" && case.aim.doer != Some(Doer::Workshop) => {
                Some("clean it gently, and no more than that".to_owned())
            }
            [one] => Some(format!("have {one}")),
            [rest @ .., last] => Some(format!("have {} and {last}", rest.join(", "))),
        }
    };
    let keep = if has(Treatment::Keeping) {
        " Keep it better from then on."
    } else {
        ""
    };
    if has(Treatment::TestLead) {
        let after = match (done(&course.if_clear), done(&course.if_lead)) {
            (None, None) if case.aim.food => "; use it only if it passes".to_owned(),
            (None, None) => String::new(),
            (Some(a), Some(b)) if a == b => format!("; then {a}"),
            (Some(a), None) => format!("; if it passes, {a}, and if it does not, leave it"),
            (None, Some(b)) => format!("; if lead is found, {b}, and if not, leave it"),
            (Some(a), Some(b)) => format!("; if it passes, {a}, and if it does not, {b}"),
        };
        return format!("Have it tested for lead first{after}.{keep}");
    }
    match done(&course.if_clear) {
        Some(words) => format!("{}{}.{keep}", words[..1].to_ascii_uppercase(), &words[1..]),
        None if has(Treatment::Keeping) => "Leave it as it is, and keep it better.".to_owned(),
        None => "Leave it as it is.".to_owned(),
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

    #[test]
    fn shares_are_said_in_hundredths() {
        assert_eq!(share(0.914), "91 in 100");
        assert_eq!(share(0.001), "less than 1 in 100");
        assert_eq!(share(1.0), "more than 99 in 100");
        assert_eq!(percent(0.03), "about 3 %");
        assert_eq!(percent(0.999), "nearly all");
    }
}
