//! The pictures of numbers: what each shows, how it is read, and the heads of its table.

use crate::app::parts::words::{in_hundred, joined};

// Round every picture.

pub const AS_A_TABLE: &str = "The same as a table";

pub fn table_of(title: &str) -> String {
    joined(&["Table: ", title])
}

/// The piece left alone, on a scale of money.
pub const AS_IT_IS: &str = "as it is";

// What the piece is: a bar for each family.

pub const NO_FAMILY_YET: &str = "Nothing is known yet of what it is";

pub fn likeliest_family(name: &str, odds: &str) -> String {
    joined(&["Most likely ", name, ": ", odds])
}

pub const FAMILIES_READ: &str = "One bar for each family of plate: the longer, the more likely. The thin line below it shows how far the \
     figure may be out.";
pub const FAMILIES_HEAD: [&str; 3] = ["Family", "How likely", "Between"];

pub fn between(low: &str, high: &str) -> String {
    joined(&[low, " to ", high])
}

/// A chance as a person would say it: "about 3 in 4".
pub fn odds(p: f64) -> String {
    const SAID: [(f64, &str); 17] = [
        (0.02, "1 in 50"),
        (0.05, "1 in 20"),
        (0.1, "1 in 10"),
        (1.0 / 6.0, "1 in 6"),
        (0.2, "1 in 5"),
        (0.25, "1 in 4"),
        (1.0 / 3.0, "1 in 3"),
        (0.4, "2 in 5"),
        (0.5, "1 in 2"),
        (0.6, "3 in 5"),
        (2.0 / 3.0, "2 in 3"),
        (0.75, "3 in 4"),
        (0.8, "4 in 5"),
        (5.0 / 6.0, "5 in 6"),
        (0.9, "9 in 10"),
        (0.95, "19 in 20"),
        (0.98, "49 in 50"),
    ];
    if p < 0.015 {
        return "fewer than 1 in 50".to_owned();
    }
    if p > 0.985 {
        return "more than 49 in 50".to_owned();
    }
    let nearest = SAID
        .iter()
        .min_by(|a, b| (a.0 - p).abs().total_cmp(&(b.0 - p).abs()));
    nearest
        .map(|(_, words)| joined(&["about ", words]))
        .unwrap_or_default()
}

// Silver left: a bar for each part.

pub const NO_LAYER: &str = "No layer of silver to run out";

pub fn thinnest(part: &str, left: &str) -> String {
    joined(&["Thinnest: ", part, ", ", left, " of its first silver"])
}

pub const SILVER_LEFT_READ: &str = "The long outline is the silver a part was made with; the filled bar is what is left, and the thin line \
     below it shows how far that may be out.";
pub const SILVER_LEFT_HEAD: [&str; 4] = [
    "Part",
    "Silver left",
    "Thickness in thousandths of a millimetre",
    "Base metal shows on",
];
pub const NOT_A_LAYER: &str = "not a layer";
pub const SOLID: &str = "solid";

pub fn left_where_bare(left: &str, bare: &str) -> String {
    joined(&[left, " left; base metal shows on ", bare])
}

pub fn left_nowhere_bare(left: &str) -> String {
    joined(&[left, " left; no base metal shows"])
}

// Money for each plan: a line for each, all on one scale.

pub const PLANS: &str = "What each plan brings, against leaving it";
pub const ADVISED_IS_BEST: &str = "In money, no plan does better than the one advised";
pub const PLANS_OVERLAP: &str = "In money the best plans overlap; other reasons decide";
pub const ANOTHER_IS_BETTER: &str = "In money alone another plan does better; other reasons decide";
pub const PLANS_READ: &str = "For each plan a line holds 8 outcomes in 10; the upright mark is the middle one. Right of the dashed \
     line there is more money than by leaving it as it is, left of it less. Unbeaten: of 100 ways things \
     may be, so many in which nothing else does noticeably better.";
pub const PLANS_HEAD: [&str; 4] = ["Plan", "Against leaving it", "Middle", "Unbeaten in"];

pub fn advised(plan: &str) -> String {
    joined(&[plan, " (advised)"])
}

pub fn barred(plan: &str) -> String {
    joined(&[plan, " (barred)"])
}

pub const NO_CHANGE: &str = "no change";

/// A range as it stands under a line, where the line says by itself that it is "about".
pub fn range_alone(range: &str) -> &str {
    range.trim_start_matches("about ")
}

pub fn gain_and_unbeaten(gain: &str, unbeaten: &str) -> String {
    joined(&[gain, "; ", unbeaten])
}

/// How often nothing else does noticeably better.
pub fn unbeaten(share: f64) -> String {
    if share <= 0.0 {
        "always beaten".to_owned()
    } else if share >= 1.0 {
        "never beaten".to_owned()
    } else {
        joined(&["unbeaten in ", &in_hundred(share).replace(" in ", " of ")])
    }
}

// Money against originality: a point for each plan.

pub const PLANS_BY_BOTH: &str = "What each plan brings, and what it keeps";
pub const ADVISED_IS_UNBEATEN: &str =
    "No plan beats the one advised in money and in originality at once";
pub const ADVISED_IS_BEATEN: &str =
    "Another plan keeps as much and does as well or better in money";
pub const PLANE_READ: &str = "Further right is more money than by leaving it; further up keeps more of what is original. The level \
     line through a point holds 8 outcomes in 10. Dashes join the plans that nothing beats on both counts.";
pub const PLANE_TOP: &str = "Originality kept: all";
pub const PLANE_FOOT: &str = "none";
pub const PLANE_ACROSS: &str = "against leaving it";
pub const PLANE_HEAD: [&str; 4] = [
    "Plan",
    "Against leaving it",
    "Originality kept",
    "Beaten on both counts",
];

pub fn beaten(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}

/// A further plan on the same spot.
pub fn and_plan(plan: &str) -> String {
    joined(&["and ", plan])
}

// From now to after: a bar for each cause.

pub const BRIDGE_EVEN: &str = "The work leaves as much as leaving it";

pub fn together(amount: &str, more: bool) -> String {
    let how = if more { " more" } else { " less" };
    joined(&["Together: ", amount, how, " than by leaving it"])
}

pub const BRIDGE_READ: &str = "Each bar is one cause. It starts where the last one ended: to the right it adds money, to the left it \
     takes money away. The dashed line is the piece as it is; the last bar is the sum.";
pub const CAUSE_VALUE: &str = "Change in what it would fetch";
pub const CAUSE_FEES: &str = "Selling charges on that";
pub const CAUSE_COST: &str = "Cost of the work";
pub const TOGETHER: &str = "Together";
pub const BRIDGE_HEAD: [&str; 3] = ["Cause", "Amount", "So far"];

// What would change the answer: a track for each input.

pub const NOTHING_CHANGES: &str = "Nothing tried here changes the answer";
pub const ONE_THING_CHANGES: &str = "One thing could change the answer";
pub const WHAT_CHANGES: &str = "What could change the answer";
pub const CHANGE_READ: &str = "On each track the filled mark is where things stand now. The open mark is where the answer becomes \
     another one. Equal steps along a track are equal ratios.";

pub fn now(amount: &str) -> String {
    joined(&["now ", amount])
}

pub fn another_answer_at(amount: &str) -> String {
    joined(&["another answer at ", amount])
}

pub const NO_CHANGE_ALONG_HERE: &str = "no change found along here";
pub const CHANGE_HEAD: [&str; 4] = ["Input", "Now", "Answer changes at", "In words"];
pub const NOT_ALONG_HERE: &str = "not along here";

#[cfg(test)]
mod tests {
    use super::odds;

    #[test]
    fn chances_are_said_simply() {
        for (p, words) in [
            (0.0, "fewer than 1 in 50"),
            (0.03, "about 1 in 50"),
            (0.76, "about 3 in 4"),
            (0.52, "about 1 in 2"),
            (0.99, "more than 49 in 50"),
        ] {
            assert_eq!(odds(p), words, "{p}");
        }
    }
}
