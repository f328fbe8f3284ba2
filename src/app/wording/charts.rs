//! The charts: what each shows, how to read it, and the column heads of its table.

use leavewell_model::terms;

use crate::app::parts::words::joined;

// For every chart.

pub const AS_A_TABLE: &str = "The same as a table";

pub fn table_of(title: &str) -> String {
    joined(&["Table: ", title])
}

/// Label of the zero line on a money scale: the piece left alone.
pub const AS_IT_IS: &str = "as it is";

// What the piece is: a bar for each family.

pub const NO_FAMILY_YET: &str = "We do not know yet what it is";

pub fn likeliest_family(name: &str, odds: &str) -> String {
    joined(&["Most likely ", name, ": ", odds])
}

pub const FAMILIES_READ: &str = "Each bar is one family of plate: the longer the bar, the more likely the family. The thin line below it \
     shows how far off the figure may be.";
pub const FAMILIES_HEAD: [&str; 3] = ["Family", "How likely", "Range"];

pub fn between(low: &str, high: &str) -> String {
    joined(&[low, " to ", high])
}

/// A probability in everyday words, such as "about 3 in 4".
pub fn odds(p: f64) -> String {
    const WORDS: [(f64, &str); 17] = [
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
    let nearest = WORDS
        .iter()
        .min_by(|a, b| (a.0 - p).abs().total_cmp(&(b.0 - p).abs()));
    nearest
        .map(|(_, words)| joined(&["about ", words]))
        .unwrap_or_default()
}

// Silver left: a bar for each part.

pub const NO_LAYER: &str = "No layer of silver that could wear through";

pub fn thinnest(part: &str, left: &str) -> String {
    joined(&["Thinnest: ", part, ", ", left, " of its original silver"])
}

pub const SILVER_LEFT_READ: &str = "The long outline is the silver the part was made with. The filled bar is what is left. The thin line \
     below it shows how far off that may be.";
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

// Money for each plan: one line a plan, all on one scale.

pub const PLANS: &str = "What each plan gains or loses, compared with leaving it";
pub const ADVISED_IS_BEST: &str = "In money, no plan does better than the one we advise";
pub const PLANS_OVERLAP: &str = "The best plans overlap in money; other reasons decide";
pub const ANOTHER_IS_BETTER: &str = "Another plan does better in money alone; other reasons decide";
pub const PLANS_READ: &str = "Each line holds 8 outcomes in 10 of one plan; the upright mark is the middle one. To the right of the \
     dashed line you have more money than if you leave it as it is, to the left less. As good as any: in how \
     many of 100 cases it does as well as any other plan.";
pub const PLANS_HEAD: [&str; 4] = [
    "Plan",
    "Compared with leaving it",
    "Middle",
    "As good as any in",
];

pub fn advised(plan: &str) -> String {
    joined(&[plan, " (advised)"])
}

pub fn barred(plan: &str) -> String {
    joined(&[plan, " (barred)"])
}

pub const NO_CHANGE: &str = "no change";

/// A range without "about", for a place where the drawn line already shows that it is approximate.
pub fn range_alone(range: &str) -> &str {
    range.trim_start_matches("about ")
}

pub fn gain_and_unbeaten(gain: &str, unbeaten: &str) -> String {
    joined(&[gain, "; ", unbeaten])
}

/// How often it does as well as anything else.
pub fn unbeaten(share: f64) -> String {
    if share <= 0.0 {
        "never as good as the best".to_owned()
    } else if share >= 1.0 {
        "always as good as any".to_owned()
    } else {
        joined(&[
            "as good as any in ",
            &terms::share(share).replace(" in ", " of "),
        ])
    }
}

// Money against originality: one point a plan.

pub const PLANS_BY_BOTH: &str = "What each plan gains, and what it keeps";
pub const ADVISED_IS_UNBEATEN: &str =
    "No plan beats the one we advise on both money and originality";
pub const ADVISED_IS_BEATEN: &str =
    "Another plan keeps as much and does as well or better in money";
pub const PLANE_READ: &str = "Further right means more money than leaving it; further up keeps more of the original. The level line \
     through each point holds 8 outcomes in 10. Dashes join the plans that no other plan beats on both counts.";
pub const PLANE_TOP: &str = "Originality kept: all";
pub const PLANE_FOOT: &str = "none";
pub const PLANE_ACROSS: &str = "compared with leaving it";
pub const PLANE_HEAD: [&str; 4] = [
    "Plan",
    "Compared with leaving it",
    "Originality kept",
    "Beaten on both counts",
];

pub fn beaten(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}

/// Another plan at the same point.
pub fn and_plan(plan: &str) -> String {
    joined(&["and ", plan])
}

// From now to after: one bar a cause.

pub const BRIDGE_EVEN: &str = "The work leaves you with as much money as leaving it";

pub fn together(amount: &str, more: bool) -> String {
    let how = if more { " more" } else { " less" };
    joined(&["Together: ", amount, how, " than leaving it"])
}

pub const BRIDGE_READ: &str = "Each bar is one cause. It starts where the last one ended: to the right it adds money, to the left it \
     takes money away. The dashed line is the piece as it is; the last bar is the sum.";
pub const CAUSE_VALUE: &str = "Change in what it would fetch";
pub const CAUSE_FEES: &str = "Selling charges on that";
pub const CAUSE_COST: &str = "Cost of the work";
pub const TOGETHER: &str = "Together";
pub const BRIDGE_HEAD: [&str; 3] = ["Cause", "Amount", "So far"];

// What would change the answer: one track an input.

pub const NOTHING_CHANGES: &str = "Nothing we tried changes the answer";
pub const ONE_THING_CHANGES: &str = "One thing could change the answer";
pub const WHAT_CHANGES: &str = "What could change the answer";
pub const CHANGE_READ: &str = "On each track the filled mark is the value now, and the open mark is the value at which the answer \
     changes. Equal steps along a track are equal ratios.";

pub fn now(amount: &str) -> String {
    joined(&["now ", amount])
}

pub fn another_answer_at(amount: &str) -> String {
    joined(&["the answer changes at ", amount])
}

pub const NO_CHANGE_ALONG_HERE: &str = "no change found on this track";
pub const CHANGE_HEAD: [&str; 4] = ["Input", "Now", "Answer changes at", "In words"];
pub const NOT_ALONG_HERE: &str = "not on this track";

#[cfg(test)]
mod tests {
    use super::odds;

    #[test]
    fn probabilities_become_simple_odds() {
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
