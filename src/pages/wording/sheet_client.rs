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
pub(crate) const BEHIND_MEANS: &str = "The pages from here on belong to the ones before, which are \
    signed. They hold the reasons, everything else that was considered, the cautions, and the \
    meanings of the words.";
pub(crate) const REASONS: &str = "Why";
pub(crate) const WHY_DISPLAY_ONLY: &str = "Why it is for display:";

pub(crate) fn specialist_first(why: &str) -> String {
    format!("Let a specialist see it first. {why}")
}

pub(crate) const DOUBTS: &str = "What keeps this from being firmer:";
pub(crate) const WOULD_CHANGE: &str = "What would change this:";

pub(crate) fn changes_nothing(inputs: &str) -> String {
    format!("No other value we tried for {inputs} changes the answer.")
}

pub(crate) fn or(all_but_last: &str, last: &str) -> String {
    format!("{all_but_last} or {last}")
}

// What it is

pub(crate) const WHAT_IT_IS: &str = "What it is";

/// When it was made, whose years helped to say so, and what lies outside these years.
pub(crate) fn made_in(years: &str, given: Option<&str>, outside: &str) -> String {
    let given = given.map_or_else(String::new, |given| format!(" and {given}"));
    format!("By the evidence{given}, it dates from {years}; {outside}.")
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
        "Not counted yet: {} as read in a mark. What it means is still to be confirmed on the screen “Look”.",
        quoted.join(", ")
    )
}

// What could be done

pub(crate) const OPTIONS: &str = "What could be done";
pub(crate) const NOT_NEEDED: &str = "Not needed here:";
pub(crate) const NEVER: &str = "Never for pieces like this:";

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

pub(crate) const CAN_IT_BE_DONE: &str = "Can it be done";
pub(crate) const COST: &str = "Cost";
pub(crate) const LOST: &str = "Lost for good";
pub(crate) const CAN_IT_BE_UNDONE: &str = "Can it be undone";
pub(crate) const WHO: &str = "Who may do it";

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

pub(crate) const OR: &str = " or ";

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

// The picture of courses

pub(crate) fn picture_title(course: &str) -> String {
    format!("What is left after all costs; we advise: {course}")
}

pub(crate) const PICTURE: &str = "One bar for each course. One case in ten falls below its lower \
    end and one in ten above its upper end; the line marks the middle.";
pub(crate) const KEPT: &str = "Left after all costs";
pub(crate) const KEPT_COLUMNS: [&str; 4] = ["Course", "1 in 10 less", "Middle", "1 in 10 more"];

// Questions

pub(crate) const QUESTIONS: &str = "Questions to ask whoever would do the work";
pub(crate) const FOR_ANY_WORK: &str = "For any work: who does it, what is written down before and \
    after, what is given back, and what you would have to tell a buyer.";

// To sign

pub(crate) const SIGN: &str = "Choose and sign";

/// How long the sheet holds.
pub(crate) fn valid(day: &str) -> String {
    format!(
        "Made on {day}. Prices hold as their quotes say, and without a quote not at all. The cautions and \
         the meanings of words stand on the pages behind."
    )
}

pub(crate) const CHOICE: &str = "What I choose";
pub(crate) const NOT_WANTED: &str = "What I do not want done";
pub(crate) const LOSS_EXPLAINED: &str = "What is lost for good was explained to me, and photographs are \
    taken before any work begins.";
pub(crate) const OWNER: &str = "Owner, with date";
pub(crate) const WORKSHOP: &str = "Workshop, with date";
