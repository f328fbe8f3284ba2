//! Wording on attitude to risk.

pub(crate) const RISK: &str = "If risk worries you";
pub(crate) const STAKE: &str = "The most you would stake";
pub(crate) const STAKE_HINT: &str = "An even bet: you win this sum, or lose half of it. Enter the largest such bet that you would still take. The smaller the sum, the more you dislike risk.";

// Ways of judging

pub(crate) const ON_AVERAGE: &str = "On average";
pub(crate) const MINDING_RISK: &str = "For someone who minds risk as much as you do";
pub(crate) const WORST_TENTH: &str = "In the worst tenth of outcomes";
pub(crate) const REGRET: &str = "If you want to regret it least";
pub(crate) const LEVEL: &str = "level with it";
pub(crate) const CAPTION: &str = "Which plan comes first by each way of judging";
pub(crate) const COLUMNS: [&str; 3] = ["Judged", "First", "Better than the advice by"];
pub(crate) const COST_COUNTS_FOR_NOTHING: &str =
    "Cost has no weight in your aims, so the sum you would stake makes no difference here.";

pub(crate) fn all_agree(course: &str) -> String {
    format!(
        "On average, for someone who minds risk, in the worst tenth and by the greatest regret, nothing does \
         noticeably better than: {course}."
    )
}

pub(crate) fn another(way: &str, course: &str) -> String {
    format!("{way}, another course does better: {course}.")
}

pub(crate) fn advised(course: &str, others: &str) -> String {
    format!("The advice is: {course}. {others}")
}

// Dominance

pub(crate) const DOMINATES: &str = "True whatever you feel about risk";

pub(crate) fn at_every_level(course: &str) -> String {
    format!("At every level it is at least as likely to do that well as: {course}.")
}

pub(crate) fn nobody_would_rather(course: &str) -> String {
    format!("No one who minds risk would prefer: {course}.")
}

pub(crate) fn dominated_by(course: &str) -> String {
    format!("At every level this is at least as likely to do that well: {course}.")
}
