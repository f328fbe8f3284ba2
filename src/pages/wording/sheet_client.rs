//! Wording of the sheet for a client.

use leavewell_model::report::OptionOutcome;

// Headings

pub(crate) const FOR_THE_CLIENT: &str = "For the client";
pub(crate) const TOO_LITTLE: &str = "Too little is recorded to advise on this piece.";
pub(crate) const RESTS_ON: &str = "How to work it out again";

// The answer

pub(crate) const ANSWER: &str = "What we advise";
pub(crate) const THE_PIECE: &str = "The piece";
pub(crate) const FORM: &str = "Form";
pub(crate) const MARKS: &str = "Marks as read";
pub(crate) const SIZE: &str = "Size";
pub(crate) const CONDITION: &str = "Its condition";
pub(crate) const THE_WHOLE: &str = "the whole piece";
pub(crate) const PLACED: &str = "Shown at a place";
pub(crate) const PHOTOS: &str = "Photos";
pub(crate) const NOT_LOOKED_AT: &str = "Not looked at";
pub(crate) const STEPS_TITLE: &str = "The steps we advise";
pub(crate) const STEPS: &str = "Steps, in their order";
pub(crate) const STEP_COLUMNS: [&str; 5] =
    ["Step", "Price", "Hours", "Lost for good", "Who may do it"];
pub(crate) const NOT_SAID: &str = "not said";
pub(crate) const CONDITIONS: &str = "Risks and conditions:";

/// What a rule says of a step, and what it asks for.
pub(crate) fn of_step(step: &str, reason: &str, asked: &str) -> String {
    format!("{step}: {reason} {asked}").trim_end().to_owned()
}

pub(crate) const BEHIND: &str = "What this rests on, and what it means";
pub(crate) const BEHIND_MEANS: &str = "The pages from here on belong to the signed ones before. They give the reasons, everything else we considered, the cautions, and what the words mean.";
pub(crate) const REASONS: &str = "Why";
pub(crate) const WHY_DISPLAY_ONLY: &str = "Why it is for display:";

pub(crate) fn specialist_first(why: &str) -> String {
    format!("Let a specialist see it first. {why}")
}

pub(crate) const DOUBTS: &str = "Why we are not surer:";
pub(crate) const WOULD_CHANGE: &str = "What would change this:";

pub(crate) fn changes_nothing(inputs: &str) -> String {
    format!("No other value we tried for {inputs} changes the answer.")
}

// What it is

pub(crate) const WHAT_IT_IS: &str = "What it is";

/// When it was made, whose years helped to say so, and what lies outside these years.
pub(crate) fn made_in(years: &str, given: Option<&str>, outside: &str) -> String {
    let given = given.map_or_else(String::new, |given| format!(" and {given}"));
    format!("Judging by the evidence{given}, it dates from {years}; {outside}.")
}

pub(crate) fn outside_the_years(is_open: bool, is_conditional: bool) -> String {
    let each = if is_conditional { "in each case " } else { "" };
    if is_open {
        format!("{each}there is a 1 in 20 chance that it is earlier")
    } else {
        format!("{each}there is a 1 in 20 chance that it is earlier, and the same that it is later")
    }
}

/// Words of marks that count for nothing until they are confirmed.
pub(crate) fn unconfirmed(words: &[String]) -> String {
    let quoted: Vec<String> = words.iter().map(|w| format!("“{w}”")).collect();
    format!(
        "Not counted yet: {} as read in a mark. Confirm on the screen “Look” what it means.",
        quoted.join(", ")
    )
}

// What could be done

pub(crate) const OPTIONS: &str = "What could be done";
pub(crate) const CAN_BE_DONE: &str = "Each by itself";
pub(crate) const OPTION_COLUMNS: [&str; 5] = [
    "What is done",
    "Price",
    "Lost for good",
    "Can it be undone",
    "Who may do it",
];
pub(crate) const AGAINST: &str = "What we advise against, and why:";
pub(crate) const NOT_NEEDED: &str = "Not needed here";
pub(crate) const NEVER: &str = "Never for pieces like this";
/// Where another course does as well as any other more often than the one advised.
pub(crate) const MORE_OFTEN: &str = "Another course does as well as any other more often than the one we advise. Ours does better \
    on average, or nearly as well while it leaves more choices for later.";

pub(crate) fn from_to(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

/// A price as quoted, and what it may come to.
pub(crate) fn as_quoted(price: &str, band: &str) -> String {
    format!("{price} as quoted; it may come to {band}")
}

pub(crate) fn as_quoted_fixed(price: &str) -> String {
    format!("{price} as quoted, a fixed price")
}

/// A price that rests on a quote for several works.
pub(crate) fn from_a_quote(band: &str) -> String {
    format!("{band}, from a quote for several works")
}

pub(crate) fn not_quoted(band: &str) -> String {
    format!("{band}; no quote yet")
}

pub(crate) fn lifted_by(reason: &str, what: &str) -> String {
    format!("{reason} What would lift it: {what}")
}

pub(crate) fn asked_for(reason: &str, what: &str) -> String {
    format!("{reason} {what}")
}

/// The rules' verdict on a treatment.
pub(crate) fn outcome(outcome: OptionOutcome) -> &'static str {
    match outcome {
        OptionOutcome::Allowed => "Yes",
        OptionOutcome::Conditional => "With conditions",
        OptionOutcome::NeedsCheck => "Needs a check first",
        OptionOutcome::NeedsOpinion => "Needs a conservator's opinion first",
        OptionOutcome::Barred => "Not for this piece",
        OptionOutcome::NotNeeded => "Not needed",
        OptionOutcome::Never => "Never for these pieces",
    }
}

/// Who may do it, from one letter of the catalogue.
pub(crate) fn doer(letter: &str) -> &'static str {
    match letter {
        "O" => "the owner",
        "S" => "a silversmith",
        "C" => "a conservator",
        "P" => "a plating works with a permit",
        "L" => "a laboratory",
        _ => "nobody",
    }
}

// The money

pub(crate) const MONEY: &str = "The money";
pub(crate) const UNDAMAGED: &str = "Undamaged it might fetch";
pub(crate) const AS_IT_IS: &str = "As it is it might fetch";
pub(crate) const SELLER_KEEPS: &str = "The seller would keep";
pub(crate) const COURSES: &str = "Each course in money";
pub(crate) const COURSE_COLUMNS: [&str; 6] = [
    "Course",
    "Cost",
    "Left after all costs",
    "On average, compared with leaving it",
    "How likely it does as well as any other",
    "Original material kept",
];

// Questions

pub(crate) const QUESTIONS: &str = "Questions to ask the person who would do the work";
pub(crate) const FOR_ANY_WORK: &str = "For any work: who does it, what is recorded before and after, what you get back, and what you would have to tell a buyer.";

// To sign

pub(crate) const SIGN: &str = "Choose and sign";

/// How long the sheet holds.
pub(crate) fn valid(day: &str) -> String {
    format!(
        "Made on {day}. A quoted price holds for as long as its quote says; an estimate binds nobody. The cautions and the meanings of words are on the pages that follow."
    )
}

pub(crate) const CHOICE: &str = "What I choose";
pub(crate) const NOT_WANTED: &str = "What I do not want done";
pub(crate) const LOSS_EXPLAINED: &str =
    "What is lost for good was explained to me. Photographs will be taken before any work begins.";
pub(crate) const OWNER: &str = "Owner, with date";
pub(crate) const WORKSHOP: &str = "Workshop, with date";
