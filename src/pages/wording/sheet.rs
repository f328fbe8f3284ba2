//! Wording shared by all sheets.

use leavewell_model::terms::{Form, capital};

// Names

pub(crate) const UNNAMED_PIECE: &str = "A piece without a name";
pub(crate) const UNNAMED_PART: &str = "Part without a name";

pub(crate) const A_PIECE: &str = "A piece";
pub(crate) const NO_FORM_KNOWN: &str = "A piece whose form is not recorded";

// Several pieces

/// A part, and the pieces it is on; nothing of the pieces where it is that of all.
pub(crate) fn part_of(part: &str, pieces: &str) -> String {
    if pieces.is_empty() {
        return part.to_owned();
    }
    format!("{part} of {pieces}")
}

pub(crate) const KEPT_TOGETHER: &str = "A seller keeps, sold together";
pub(crate) const KEPT_APART: &str = "A seller keeps, sold one by one";

pub(crate) fn a_pair_of(things: &str) -> String {
    format!("A pair of {things}")
}

pub(crate) fn a_set_of(count: u16, things: &str) -> String {
    format!("A set of {} {things}", number(count))
}

pub(crate) fn alike(count: u16, things: &str) -> String {
    capital(&format!("{} {things}, alike", number(count)))
}

/// A small number as a word.
fn number(count: u16) -> String {
    let words = [
        "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    ];
    let at = usize::from(count).checked_sub(2);
    at.and_then(|at| words.get(at))
        .map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// A form for the middle of a sentence, of more than one.
pub(crate) fn several(form: Option<Form>) -> &'static str {
    match form {
        Some(Form::CoffeePot) => "coffee pots",
        Some(Form::Teapot) => "teapots",
        Some(Form::Tankard) => "tankards or mugs",
        Some(Form::Tray) => "trays or salvers",
        Some(Form::Candlestick) => "candlesticks",
        Some(Form::Basket) => "baskets",
        Some(Form::Tureen) => "tureens or covered dishes",
        Some(Form::Sauceboat) => "sauceboats or cream jugs",
        Some(Form::Cooler) => "wine coolers or coasters",
        Some(Form::Box) => "boxes or caddies",
        Some(Form::Cutlery) => "pieces of cutlery",
        Some(Form::Snuffers) => "snuffers",
        Some(Form::Cruet) => "cruets",
        Some(Form::Inkstand) => "inkstands",
        Some(Form::Salts) => "salts",
        Some(Form::Coaster) => "coasters",
        Some(Form::Urn) => "urns",
        Some(Form::WaterDish) => "hot-water dishes",
        Some(Form::Candelabrum) => "candelabra",
        Some(Form::Other) | None => "pieces",
    }
}

// Sureness

/// A likelihood in words: at least very likely, at least likely, at least even.
pub(crate) fn sureness([very, likely, even]: [bool; 3]) -> &'static str {
    match (very, likely, even) {
        (true, ..) => "almost certainly",
        (_, true, _) => "probably",
        (_, _, true) => "quite possibly",
        _ => "possibly",
    }
}

// Sizes

pub(crate) const HEIGHT: &str = "height";
pub(crate) const LENGTH: &str = "length";
pub(crate) const WIDTH: &str = "width";
pub(crate) const WEIGHT: &str = "weight with all that is fixed to it";

pub(crate) fn size(name: &str, measure: &str) -> String {
    format!("{name} {measure}")
}

pub(crate) fn mm(mm: f64) -> String {
    format!("{mm} mm")
}

pub(crate) fn inches(typed: &str) -> String {
    format!("{typed} in")
}

pub(crate) fn grams(g: f64) -> String {
    format!("{g} g")
}

pub(crate) fn troy_ounces(typed: &str) -> String {
    format!("{typed} oz t")
}

// Money

pub(crate) const NO_MONEY: &str = "nothing";

pub(crate) fn about(middle: &str) -> String {
    format!("about {middle}")
}

pub(crate) fn about_from(low: &str, high: &str, middle: &str) -> String {
    format!("about {low} to {high}, middle {middle}")
}

// What is not known

pub(crate) const NOT_KNOWN: &str = "What is not known";
pub(crate) const NO_NAME: &str = "It has no name in the record.";
pub(crate) const NO_FORM: &str = "What sort of piece it is.";
pub(crate) const NO_SIZE: &str = "How large it is.";
pub(crate) const NO_YEARS: &str = "When it was made: no year is stated or documented.";
pub(crate) const NO_LOOK: &str = "How it is made: no look is recorded.";
pub(crate) const NO_CONDITION: &str = "The condition of its parts is not recorded.";
pub(crate) const NO_LEAD_TEST_OF_EACH: &str =
    "Whether each of them releases lead: not every one of them is tested.";
pub(crate) const NO_LEAD_TEST: &str = "Whether it releases lead: no test is recorded.";
pub(crate) const NO_PRICE: &str =
    "What such a piece fetches: no figure is recorded, so amounts rest on typical values.";
pub(crate) const NO_DATE: &str = "The date of this record.";

pub(crate) fn parts_not_looked_at(parts: &str) -> String {
    format!("Parts not looked at: {parts}.")
}

pub(crate) fn looked_for_not_sure(findings: &str) -> String {
    format!("Looked for, not sure: {findings}.")
}

// Work on record

pub(crate) const WORK_DONE: &str = "What was done to it";
pub(crate) const WORK_IN_ORDER: &str = "Recorded work, in the order of the record.";

pub(crate) fn plated_yet_fused(likely: &str) -> String {
    format!(
        "The record says that silver was added, yet the findings still make original silver {likely}. One of \
         the two is wrong or concerns another part: look again before you rely on either."
    )
}

pub(crate) fn work(number: usize, name: &str) -> String {
    format!("Work {number}: {name}")
}

// How to reproduce the numbers

pub(crate) const PROGRAM: &str = "Program";

pub(crate) fn program(version: &str) -> String {
    format!("Leavewell {version}")
}

pub(crate) const LEDGER: &str = "Figures used, edition";
pub(crate) const TAUGHT_FIGURES: &str = "Figures taught by closed pieces";

pub(crate) fn taught_by(figures: usize, pieces: usize, digest: &str) -> String {
    let pieces = match pieces {
        1 => "1 piece".to_owned(),
        _ => format!("{pieces} pieces"),
    };
    format!("{figures}, by {pieces} ({digest})")
}

pub(crate) const OWN_FIGURES: &str = "Your own figures";
pub(crate) const NO_OWN_FIGURES: &str = "none";
pub(crate) const SEED: &str = "Random seed";
pub(crate) const POINTS: &str = "Number of cases tried";
pub(crate) const DATE: &str = "Date";
pub(crate) const NOT_RECORDED: &str = "not recorded";

// Differences from the screen

pub(crate) fn screen_says(sentence: &str) -> String {
    format!(
        "The screen tries fewer cases and says: {sentence} The two are close; treat the answer as open."
    )
}

pub(crate) fn screen_calls_it(there: &str, here: &str) -> String {
    format!(
        "The screen tries fewer cases and calls this {there}; here it is {here}. It is on the border between \
         the two."
    )
}

// In a sentence

pub(crate) const YES: &str = "yes";
pub(crate) const NO: &str = "no";

// The first line

pub(crate) const NO_DATE_RECORDED: &str = "the record has no date";

pub(crate) fn head(name: &str, whom: &str, day: &str) -> String {
    format!("{name}. {whom}; {day}.")
}
