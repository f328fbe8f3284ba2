//! Wording of what closed pieces teach, and of how close we came.

pub(crate) fn judged_and_taught(judged: &str, taught: &str, pieces: usize) -> String {
    let pieces = match pieces {
        0 => "Your pieces make".to_owned(),
        1 => "1 piece of yours makes".to_owned(),
        _ => format!("{pieces} pieces of yours make"),
    };
    format!("We judged it {judged}. {pieces} it {taught}.")
}

pub(crate) fn middle_and_ends(middle: &str, low: &str, high: &str) -> String {
    format!("{middle} ({low} to {high})")
}

// What there is

pub(crate) const NONE: &str = "No closed piece has anything to learn from yet. Close one under \
    Work done: whether it sold, for how much, and what the work came to.";
pub(crate) const INVENTED: &str = "All of this is invented: forty imaginary pieces, to show what this page says once you have closed some. None of it touches your pieces or your figures.";

pub(crate) fn what_there_is(pieces: usize, prices: usize, bills: usize, hours: usize) -> String {
    let pieces = match pieces {
        1 => "1 closed piece can be learnt from".to_owned(),
        _ => format!("{pieces} closed pieces can be learnt from"),
    };
    format!("{pieces}: {prices} with a price, {bills} with a bill, {hours} with hours.")
}

pub(crate) const CLAIMS: &str = "This compares your pieces with our judgement, no more. Nobody chose at random which pieces had which work, so it proves nothing about any work. It does not describe the market, and it never changes a safety rule, what a piece is, or how much silver is left.";

pub(crate) const PRICES: &str = "Prices";
pub(crate) const BILLS: &str = "Bills";
pub(crate) const HOURS: &str = "Hours";
pub(crate) const FEES: &str = "Fees of the newest statement, and the chance of a sale";
pub(crate) const MISHAPS: &str = "Work that went wrong";
pub(crate) const MORE_TOLD: &str = "More figures from your pieces";
pub(crate) const BY_KINSHIP: &str = "Figures that move along with these";
pub(crate) const KINSHIP_MEANS: &str = "None of your pieces has direct evidence for these. They move a little \
    because they tend to be off in the same direction.";
pub(crate) const OUTSIDE: &str = "Further from our judgement than we allowed for. Either your trade \
    differs, or something was entered wrongly:";

pub(crate) const ALL_SOLD: &str = "Every piece here that was offered sold. If some did not, close those \
    too: what remains unsold teaches as much, and leaving it out makes prices look too high.";

// What it would change

pub(crate) const CHANGES: &str = "What it would change";
pub(crate) const CHANGES_NOTHING: &str =
    "With these figures, our advice on the open pieces on your shelf stays the same.";
pub(crate) const CHANGED_COLUMNS: [&str; 3] = ["Piece", "With our figures", "With yours"];
pub(crate) const CHANGED_CAPTION: &str = "Open pieces with different advice";

pub(crate) fn changes(differ: usize, of: usize) -> String {
    let pieces = if of == 1 { "open piece" } else { "open pieces" };
    format!("The advice changes for {differ} of {of} {pieces}.")
}

pub(crate) fn only_first(most: usize) -> String {
    format!("Only the first {most} open pieces were tried.")
}

// What does not count

pub(crate) const NOT_COUNTED: &str = "Kept, but not learnt from";
pub(crate) const UNNAMED: &str = "Unnamed piece";

// What pulls most

pub(crate) fn pulls(figure: &str, percent: f64) -> String {
    let without = if percent >= 0.0 { "higher" } else { "lower" };
    format!(
        "Without it, this would be {:.0} % {without}: {figure}",
        percent.abs()
    )
}

// How close we came

pub(crate) const HOW_WELL_MEANS: &str = "What we noted beforehand, compared with what happened. Nothing is \
    worked out again.";

pub(crate) fn too_few(have: usize, need: usize) -> String {
    format!("Too few to judge: {have} of the {need} it takes.")
}

pub(crate) fn in_bands(hits: [usize; 3], n: usize) -> String {
    format!(
        "Of {n}, {} fell into the band that should hold half, {} into the one for 8 in 10, {} into the one \
         for 9 in 10.",
        hits[0], hits[1], hits[2]
    )
}

pub(crate) const NO_ALARM: &str = "Nothing stands out.";
pub(crate) const TOO_LOW: &str =
    "We were too low: more often than luck allows, what happened lay above what we said.";
pub(crate) const TOO_HIGH: &str =
    "We were too high: more often than luck allows, what happened lay below what we said.";
pub(crate) const TOO_NARROW: &str =
    "Our bands were too narrow: what happened fell outside them too often.";
pub(crate) const TOO_WIDE: &str = "Our bands were wider than they needed to be.";
pub(crate) const NOT_HELPED: &str = "Learning has not helped: the figures as shipped would have come closer. Consider going back to them.";

pub(crate) fn went_wrong(works: usize, bad: usize, expected: &str) -> String {
    let bad = match bad {
        0 => "none went wrong".to_owned(),
        1 => "1 went wrong".to_owned(),
        _ => format!("{bad} went wrong"),
    };
    let works = match works {
        1 => "Of 1 work whose result you recorded".to_owned(),
        _ => format!("Of {works} works whose result you recorded"),
    };
    format!("{works}, {bad}; about {expected} would be expected.")
}

pub(crate) const NOT_TAUGHT: &str = "We count this and never learn from it: to find how often work goes wrong takes far more than two hundred jobs, and bad results often go unrecorded.";
pub(crate) const MORE_WRONG: &str =
    "That is more than luck allows. Look at who does this work, and how.";
pub(crate) const NO_RESULTS: &str = "You have not recorded how any work turned out yet.";
pub(crate) const CELL_COLUMNS: [&str; 4] = [
    "Work",
    "Recorded",
    "Went wrong",
    "Chance: ours, and as recorded",
];
pub(crate) const CELL_CAPTION: &str = "Results recorded, by work and kind of piece";

// Pictures

pub(crate) const COVERAGE: &str = "How many fell into each band";
pub(crate) const COVERAGE_COLUMNS: [&str; 4] = ["Band", "Should hold", "Held", "Could be, by luck"];

pub(crate) fn coverage_title(topic: &str) -> String {
    format!("{topic}: what our bands held, beside what they should")
}

pub(crate) fn coverage_description(topic: &str) -> String {
    format!(
        "{topic}. For the bands of 50, 80 and 90 in 100, the share that fell inside, each with the range that \
         luck alone allows. On the diagonal the bands are right."
    )
}

pub(crate) const SHOULD: &str = "should hold";
pub(crate) const HELD: &str = "held";

pub(crate) const BARS: &str = "Where the results fell within our range";
pub(crate) const BARS_COLUMNS: [&str; 2] = ["Tenth of our range", "How many"];

pub(crate) fn bars_title(low: usize, high: usize) -> String {
    format!("If we are right, nearly every bar holds {low} to {high}")
}

pub(crate) fn bars_description(topic: &str) -> String {
    format!(
        "{topic}. Ten bars, from what lay lowest among what we said to what lay highest. They are about equal \
         when the bands are right, high at both ends when the bands are too narrow."
    )
}

pub(crate) const LOWEST: &str = "lower than said";
pub(crate) const HIGHEST: &str = "higher than said";

pub(crate) fn tenth(number: usize) -> String {
    match number {
        1 => "lowest".to_owned(),
        10 => "highest".to_owned(),
        _ => number.to_string(),
    }
}

pub(crate) const RUNNING: &str = "Whether learning has helped";
pub(crate) const RUNNING_COLUMNS: [&str; 2] =
    ["After so many pieces", "Mean gain of the taught figures"];

pub(crate) fn running_title(helped: bool) -> &'static str {
    if helped {
        "The taught figures have come closer so far"
    } else {
        "The taught figures have not come closer so far"
    }
}

pub(crate) const RUNNING_DESCRIPTION: &str = "The running mean of how much nearer the taught figures came than \
    the shipped ones. Above the line they did better.";
pub(crate) const NO_GAIN: &str = "no difference";

pub(crate) const EACH: &str = "Each of them";
pub(crate) const EACH_CAPTION: &str = "What we said, and what happened";
pub(crate) const EACH_COLUMNS: [&str; 3] = ["Piece", "We said", "It was"];
