//! Wording of the page of all treatments.

// The head

pub(crate) fn summary(all: usize, open: usize, first: usize, barred: usize, idle: usize) -> String {
    format!(
        "Of {all} things that could be done to it, {open} are open, {first} need a check or an opinion \
         first, {barred} are ruled out, and {idle} are not needed. You can always leave it alone, store it better, or ask a \
         conservator."
    )
}

pub(crate) const QUESTIONS: &str = "A few questions asked only here";
pub(crate) const ANSWERS: [(&str, &str); 3] = [("", "Not known"), ("yes", "Yes"), ("no", "No")];
pub(crate) const WHATEVER_IS_DONE: &str = "Whatever is done";
pub(crate) const EVERYTHING_ELSE: &str = "Everything else that could be done";

// One treatment

pub(crate) fn nothing_to_do(why: &str) -> String {
    format!("Not needed, going by what is recorded. {why}")
}

pub(crate) const ON_CONDITION: &str = "On condition: ";
pub(crate) const WOULD_CHANGE: &str = "What would change that: ";
pub(crate) const MORE: &str = "The effort, what it needs, what it changes and what can go wrong";
pub(crate) const ASK: &str = "What to ask whoever would do it";
pub(crate) const AGAINST: &str = "What else counts for or against it";

// Its facts

pub(crate) const LOST: &str = "Lost for good";
pub(crate) const CAN_IT_BE_UNDONE: &str = "Can it be undone";
pub(crate) const WHO: &str = "Who may do it";

/// Who may do it, from one letter of the catalogue.
pub(crate) fn doer(letter: &str) -> Option<&'static str> {
    Some(match letter {
        "O" => "the owner",
        "S" => "an experienced silversmith or plater",
        "C" => "a conservator who belongs to a professional body",
        "P" => "a plating works with a permit",
        "L" => "an accredited laboratory",
        _ => return None,
    })
}

pub(crate) const NOBODY: &str = "Nobody.";
pub(crate) const EFFORT: &str = "Effort";

pub(crate) fn effort(code: &str) -> &'static str {
    match code {
        "E0" => "Minutes.",
        "E1" => "Under an hour.",
        "E2" => "One to four hours.",
        "E3" => "About a day.",
        _ => "Several days.",
    }
}

pub(crate) const SORT_OF_WORK: &str = "Sort of work";
pub(crate) const NEEDS: &str = "What it needs first";
pub(crate) const NOT_WITH: &str = "What it must not be combined with";
pub(crate) const CHANGES: &str = "What changes";
pub(crate) const CAN_GO_WRONG: &str = "What can go wrong";
pub(crate) const CARE: &str = "Bear in mind";
pub(crate) const BAD_RESULT: &str = "Chance of a bad result";

pub(crate) fn no_risk(sort: &str) -> String {
    format!("If {sort}: none to speak of.")
}

pub(crate) fn risk(
    sort: &str,
    hundredths: &str,
    low: &str,
    high: &str,
    left: f64,
    known: &str,
) -> String {
    format!(
        "If {sort}: about {hundredths} in 100 ({low} to {high}), leaving about {left:.0} % of the value when \
         it happens. {known}."
    )
}

pub(crate) const FUSED: &str = "fused plate";
pub(crate) const CLOSE: &str = "close or French plate";
pub(crate) const NICKEL_SILVER: &str = "electroplated nickel silver";
pub(crate) const BRITANNIA: &str = "electroplated Britannia metal";
pub(crate) const OTHER: &str = "other electroplate";

// All the rules

pub(crate) const RULES: &str = "All the rules, what lifts each, and where they come from";
pub(crate) const HOW_RULES_WORK: &str = "The letters in brackets above name a rule in this list. \
    People and law come first, then damage to the piece, then ethics and evidence, then food. \
    Rules only rule things out: their order decides which reason you read first, not what is \
    left.";
pub(crate) const HARD: &str = "Hard rules";
pub(crate) const HARD_COLUMNS: [&str; 4] = ["Rule", "What it says", "What lifts it", "Rests on"];
pub(crate) const A_TEST: &str = "a test, a closer look or a measurement";
pub(crate) const WORK_FIRST: &str = "other work done first";
pub(crate) const AN_OPINION: &str = "a conservator's written opinion";
pub(crate) const CONSENT: &str = "consent, photographs, honest disclosure at sale";
pub(crate) const NOTHING: &str = "nothing";
pub(crate) const SOFT: &str = "What counts without barring";
pub(crate) const SOFT_COLUMNS: [&str; 3] = ["What", "Where it counts", "Rests on"];
pub(crate) const WEIGHED: &str = "weighed in the answer";
pub(crate) const SAID_ONLY: &str = "mentioned here only";
