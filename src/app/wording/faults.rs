//! Counsel by fault: each fault left or treated, and what each does.

use crate::app::parts::words::joined;

pub const TITLE: &str = "Fault by fault";
pub const NONE: &str = "No fault is recorded. On Condition, say what you see on each part; each fault is then weighed here.";
pub const TO_CONDITION: &str = "Go to Condition";
pub const HINT: &str = "Each treatment is compared by itself with leaving the whole piece as it is, unless it says otherwise.";

/// The heading of a fault: its name and its parts.
pub fn heading(name: &str, parts: &str) -> String {
    if parts.is_empty() {
        name.to_owned()
    } else {
        joined(&[name, ": ", parts])
    }
}

/// The choice in one line, such as "Leave it, or £60 as quoted."
pub fn choice(others: &str) -> String {
    if others.is_empty() {
        "Leave it: none of the treatments here would put this right.".to_owned()
    } else {
        joined(&["Leave it, or ", others, "."])
    }
}

/// The price of a treatment in that line.
pub fn priced(name: &str, price: &str) -> String {
    joined(&[name, " at ", price])
}

pub const OR: &str = ", or ";
pub const LEAVE: &str = "Leave it";
pub const WE_ADVISE: &str = "Advised.";
pub const WE_WOULD_NOT: &str = "Possible.";

/// What the fault by itself leaves of the price.
pub fn fetches(hundredths: &str) -> String {
    joined(&[
        " This fault alone leaves about ",
        hundredths,
        " in 100 of the price.",
    ])
}

pub fn as_quoted(price: &str) -> String {
    joined(&[price, ", as quoted"])
}

pub fn by_estimate(price: &str) -> String {
    joined(&[price, " by our estimate"])
}

pub const NO_COST: &str = "no cost";

/// What stands after the word and the cost of a treatment.
pub fn worth_more(amount: &str) -> String {
    joined(&["It would leave you ", amount, " better off."])
}

pub fn worth_less(amount: &str) -> String {
    joined(&["It would leave you ", amount, " worse off."])
}

pub const WORTH_SAME: &str = "It would come out level in money.";

pub fn scores_more(points: &str) -> String {
    joined(&["It scores ", points, " higher for what you want."])
}

pub fn scores_less(points: &str) -> String {
    joined(&["It scores ", points, " lower for what you want."])
}

pub const SCORES_SAME: &str = "It scores the same for what you want.";

/// What an advised step does, shown by leaving it out.
pub fn without_money(amount: &str) -> String {
    joined(&[
        "Leave it out of the advice and you are ",
        amount,
        " worse off.",
    ])
}

pub fn without_points(points: &str) -> String {
    joined(&[
        "Leave it out of the advice and the rest scores ",
        points,
        " lower.",
    ])
}

pub const WITHOUT_NOTHING: &str = "Leaving it out of the advice changes next to nothing by itself.";
pub const POINT: &str = "point in 100";
pub const POINTS: &str = "points in 100";

/// A sum that is an estimate.
pub fn about(sum: &str) -> String {
    joined(&["about ", sum])
}
