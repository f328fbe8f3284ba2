//! The sentence that compares the advice with what was asked about.

use crate::terms::small;
use crate::treatment::{Outcome, Treatment};

/// What is done, as the beginning of a sentence.
pub(crate) fn subject(treatment: Treatment) -> &'static str {
    match treatment {
        Treatment::Leave => "Leaving it",
        Treatment::Keeping => "Better keeping",
        Treatment::Wash => "A wash",
        Treatment::LacquerOff => "Taking the lacquer off",
        Treatment::Clean => "Gentle cleaning",
        Treatment::Foam => "Shop polish",
        Treatment::Dip => "A silver dip",
        Treatment::FoilBath => "A foil-and-soda bath",
        Treatment::Lacquer => "A coat of lacquer",
        Treatment::Dents => "Taking the dents out",
        Treatment::Solder => "A solder repair",
        Treatment::LowMelt => "A low-melt or glued repair",
        Treatment::RemoveLead => "Taking the old lead solder out",
        Treatment::RemoveFill => "Taking the filling out",
        Treatment::HardSolder => "Hard solder",
        Treatment::Mechanical => "Fixing the loose part in its old seat",
        Treatment::LocalPlate => "Local plating",
        Treatment::RubOn => "Rub-on silver",
        Treatment::Toning => "Removable toning",
        Treatment::Replate => "Replating",
        Treatment::Overplate => "Plating over the old silver",
        Treatment::Tinning => "Tinning the inside",
        Treatment::Regild => "Renewing the gilding",
        Treatment::ReplacePart => "A new part",
        Treatment::TestLead => "A test for lead",
    }
}

pub(crate) const NEXT_TO_NOTHING: &str = "next to nothing";

pub(crate) fn as_quoted(sum: &str) -> String {
    format!("{sum}, as quoted")
}

pub(crate) fn by_our_estimate(sum: &str) -> String {
    format!("about {sum} by our estimate")
}

pub(crate) fn in_your_currency(sum: &str) -> String {
    format!("{sum} in your currency")
}

// What it comes to

pub(crate) const LEAVING_IT: &str = "leaving it";
pub(crate) const WHAT_IS_ADVISED: &str = "what is advised";
pub(crate) const LEVEL: &str = "come out level for what you want";
pub(crate) const LEVEL_LESS_CHOICE: &str =
    "come out level for what you want, but leave you less choice later";

pub(crate) fn level_in_money(against: &str) -> String {
    format!("leave you about as well off as {against}")
}

pub(crate) fn worse_off(sum: &str, against: &str) -> String {
    format!("leave you {sum} worse off than {against}")
}

pub(crate) fn better_off(sum: &str, against: &str) -> String {
    format!("leave you {sum} better off than {against}, which is too little for what it takes away")
}

/// "10 points", "1 point".
fn so_many(points: f64) -> String {
    if points < 1.5 {
        "1 point".to_owned()
    } else {
        format!("{points:.0} points")
    }
}

pub(crate) fn points(points: f64, lower: bool) -> String {
    let how = if lower {
        "lower for what you want"
    } else {
        "higher for what you want, but leave you less choice later"
    };
    format!("score {} in 100 {how}", so_many(points))
}

pub(crate) fn would_cost(what: &str, price: &str, test: Option<&str>, end: &str) -> String {
    match test {
        Some(test) => {
            format!(
                "{what} would cost {price}, with about {test} more for the test first, and {end}."
            )
        }
        None if price.contains(',') => format!("{what} would cost {price}, and {end}."),
        None => format!("{what} would cost {price} and {end}."),
    }
}

// What was asked about is advised, or is not

pub(crate) const WHAT_YOU_ASKED: &str = "That is what you asked about.";

pub(crate) fn what_you_asked(price: &str) -> String {
    format!("That is what you asked about, at {price}.")
}

pub(crate) fn is_out(what: &str, price: Option<&str>, outcome: Outcome, reason: &str) -> String {
    let price = price.map(|p| format!(" ({p})")).unwrap_or_default();
    let verdict = match outcome {
        Outcome::NeedsCheck => "waits for a check",
        Outcome::NeedsOpinion => "waits for an opinion",
        _ => "is ruled out by what you recorded",
    };
    format!("{what}{price} {verdict}: {}", small(reason))
}

pub(crate) fn nothing_to_do(what: &str, why: &str) -> String {
    format!("{what} is not needed here: {}", small(why))
}

pub(crate) fn never(what: &str, why: &str) -> String {
    format!("{what} is never right for old plate: {}", small(why))
}

// Work is advised: what leaving would do

pub(crate) const LEAVING_LEVEL: &str = "Leaving it comes out level for what you want.";

pub(crate) fn leaving_money(sum: &str, worse: bool) -> String {
    let how = if worse { "worse" } else { "better" };
    format!("Leaving it would leave you {sum} {how} off by our estimate.")
}

pub(crate) fn leaving_points(points: f64, lower: bool) -> String {
    let how = if lower { "lower" } else { "higher" };
    format!(
        "Leaving it scores {} in 100 {how} for what you want.",
        so_many(points)
    )
}
