//! Words on minding risk.

pub(crate) const RISK: &str = "If you mind risk";
pub(crate) const STAKE: &str = "Most you would just stake";
pub(crate) const STAKE_HINT: &str = "An even chance: win this sum, or lose half of it. The greatest \
    such bet you would still take. A smaller sum means that you mind risk more.";

// Ways of judging

pub(crate) const ON_AVERAGE: &str = "On average";
pub(crate) const MINDING_RISK: &str = "For somebody who minds risk as much as you say";
pub(crate) const WORST_TENTH: &str = "In the worst tenth of outcomes";
pub(crate) const REGRET: &str = "By the greatest regret";
pub(crate) const LEVEL: &str = "level with it";
pub(crate) const CAPTION: &str = "Which course comes first by each way of judging";
pub(crate) const COLUMNS: [&str; 3] = ["Judged", "First", "Better than what is advised by"];
pub(crate) const COST_COUNTS_FOR_NOTHING: &str =
    "Cost counts for nothing in your weights, so the sum you would stake says nothing here.";

pub(crate) fn all_agree(course: &str) -> String {
    format!(
        "On average, for somebody who minds risk, in the worst tenth and by the greatest regret, nothing does \
         noticeably better than: {course}."
    )
}

pub(crate) fn another(way: &str, course: &str) -> String {
    format!("{way}, another does better: {course}.")
}

pub(crate) fn advised(course: &str, others: &str) -> String {
    format!("Advised is: {course}. {others}")
}

// Whatever the taste for risk

pub(crate) const DOMINATES: &str = "What holds whatever your taste for risk";

pub(crate) fn at_every_level(course: &str) -> String {
    format!("At every level it is at least as likely to do that well as {course}.")
}

pub(crate) fn nobody_would_rather(course: &str) -> String {
    format!("Nobody who minds risk would rather have: {course}.")
}

pub(crate) fn dominated_by(course: &str) -> String {
    format!("At every level this is at least as likely to do that well: {course}.")
}
