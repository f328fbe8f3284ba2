//! Wording of the plan for a whole shelf.

use leavewell_model::terms::sum;

pub(crate) const UNNAMED: &str = "Unnamed piece";

pub(crate) const NO_PIECES: &str =
    "There is no piece on the shelf to plan for yet. Start one, or open a worked example.";

pub(crate) fn pieces(count: usize) -> String {
    match count {
        1 => "1 piece".to_owned(),
        _ => format!("{count} pieces"),
    }
}

pub(crate) fn hours(hours: f64) -> String {
    let quarters = (4.0 * hours).round() / 4.0;
    if (quarters - 1.0).abs() < 1e-9 {
        "1 hour".to_owned()
    } else {
        format!("{quarters} hours")
    }
}

/// An amount rounded to whole units, so that it never appears to exceed a limit it keeps.
pub(crate) fn money(unit: &str, amount: f64) -> String {
    exact_money(unit, amount.round())
}

/// An amount exactly as typed.
pub(crate) fn exact_money(unit: &str, amount: f64) -> String {
    if unit.is_empty() {
        format!("{} in money", sum("", amount))
    } else {
        sum(unit, amount)
    }
}

pub(crate) fn exact_hours(hours: f64) -> String {
    let unit = if (hours - 1.0).abs() < 1e-9 {
        "hour"
    } else {
        "hours"
    };
    format!("{hours} {unit}")
}

pub(crate) const LEAVE_ALL: &str = "Leave every piece as it is: no work is worth its cost.";

pub(crate) fn nothing_fits(limits: &str) -> String {
    format!("Leave every piece as it is: {limits}, no work worth its cost fits.")
}

pub(crate) fn work_on(
    limits: &str,
    worked: usize,
    all: usize,
    gain: &str,
    cost: &str,
    hours: &str,
) -> String {
    let which = match (worked, all) {
        (1, 1) => "the one piece there is".to_owned(),
        (2, 2) => "both pieces".to_owned(),
        _ if worked == all => format!("all {all} pieces"),
        _ => format!("{worked} of {}", pieces(all)),
    };
    let left = match all - worked {
        0 => String::new(),
        1 => " and leave the other as it is".to_owned(),
        left => format!(" and leave the other {left} as they are"),
    };
    format!(
        "{limits}, work on {which}{left}. After costs, that brings about {gain} more than leaving \
         everything; it takes about {cost} and {hours}."
    )
}

pub(crate) fn with_money(money: &str) -> String {
    format!("with {money} to spend")
}

pub(crate) fn with_hours(hours: &str) -> String {
    format!("with {hours} of work")
}

pub(crate) fn with_both(money: &str, hours: &str) -> String {
    format!("with {money} to spend and {hours} of work")
}

pub(crate) const WITHOUT_LIMITS: &str = "without a limit";

pub(crate) fn cost_high(high: &str, over: bool) -> String {
    let over = if over {
        ", which is over your limit"
    } else {
        ""
    };
    format!("If every price comes in high, it costs about {high}{over}.")
}

pub(crate) const NOTHING_HELD_BACK: &str =
    "Your limits hold nothing back: the plan follows the advice for each piece.";
pub(crate) const NO_LIMIT_SET: &str =
    "You set no limit: the plan follows the advice for each piece.";

pub(crate) const PAIRS_HOLD_BACK: &str =
    "You set no limit. Work that waits for another piece is done only together with that piece.";

pub(crate) fn more_brings(more: &str, gain: &str) -> String {
    format!("{more} more would bring about {gain} more.")
}

pub(crate) fn more_brings_nothing(more: &str) -> String {
    format!("{more} more would bring nothing.")
}

pub(crate) fn not_searched_out(gain: &str) -> String {
    format!(
        "Very many plans are nearly as good. This one was found without trying them all; no other gains more \
         than about {gain} over it."
    )
}

pub(crate) const TO_DO: &str = "What to do";
pub(crate) const TO_DO_CAPTION: &str = "The work planned, with what brings most at the top";
pub(crate) const PIECE: &str = "Piece";
pub(crate) const WORK: &str = "Work";
pub(crate) const BRINGS: &str = "Brings, after costs";
pub(crate) const COSTS: &str = "Costs about";
pub(crate) const HOURS_SHORT: &str = "Hours";
pub(crate) const SEE_FIRST: &str = "A specialist should see it first.";

pub(crate) const NOT_NOW: &str = "Not now, or done differently";
pub(crate) const NOT_NOW_CAPTION: &str = "What the advice for each of these pieces says on its \
    own";
pub(crate) const INSTEAD: &str = "In this plan";
pub(crate) const LEFT_FOR_NOW: &str = "Left for now";

pub(crate) fn left_alone(count: usize) -> String {
    format!("Best left as they are: {count}")
}

pub(crate) fn not_planned(count: usize) -> String {
    format!("Not in the plan: {count}")
}

pub(crate) fn because(name: &str, why: &str) -> String {
    format!("{name}: {why}")
}

pub(crate) const LEFT_OUT: &str = "left out by you.";
pub(crate) const OTHER_CURRENCY: &str = "its money is in another currency.";

pub(crate) const BASIS: &str = "What this rests on";
pub(crate) const BASIS_GAIN: &str = "Gains, costs and hours are middle values. The gain is \
    compared with leaving the piece as it is, after costs; it is indicative, not an appraisal. The \
    advice for each piece says how sure it is: open it from the shelf.";
pub(crate) const BASIS_HOURS: &str = "Hours are working time on the piece, whoever does it, from a \
    usual figure for each kind of work. Work often takes longer than expected.";
pub(crate) const BASIS_CHOICE: &str =
    "Work that the rules bar for a piece never enters a plan, whatever your limits.";

pub(crate) const SOME_KEPT: &str = "Some of these pieces are kept, not sold. What work on them brings is not cash: it is what the work is worth to you, expressed as money.";

pub(crate) fn some_assumed(count: usize) -> String {
    format!(
        "No value is recorded for {} of these: a usual one is used.",
        pieces(count)
    )
}

pub(crate) fn too_many_pairs(most: usize) -> String {
    format!("The plan cannot handle more than {most} pieces that wait for another. Remove some.")
}

pub(crate) const NOT_SOUND: &str = "The weighed pieces do not fit together, so there is no plan. \
    Reload the page to weigh them again; your pieces are safe.";
