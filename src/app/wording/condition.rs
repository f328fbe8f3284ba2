//! Condition: the drawn piece, its parts, and what a person sees on each of them.

use leavewell_model::terms::BleedWord;

use crate::app::parts::words::joined;

pub const TITLE: &str = "Condition, part by part";
pub const PURPOSE: &str = "Say what you see on each part. Skip what you have not looked at: skipping it only makes us less sure.";
/// The next step of a restorer.
pub const TO_PROPOSAL: &str = "Next: our advice and your proposal";
pub const NEXT: &str = "Next: what it might fetch";

pub const NO_SILVER_YET: &str =
    "Say on a part how much base metal shows. Then we work out how much silver is left.";

// The drawn piece and its parts.

pub const WHICH_FORM: &str = "What is it? Tap the nearest.";
pub const NO_FORM: &str = "Until then the drawing shows a plain covered cup. ";
pub const SAY_THE_FORM: &str = "It is none of these";
pub const STRIPES: &str = "Stripes mark where you say base metal shows.";
pub const PARTS: &str = "Parts of the piece";

pub const WHICH_PIECE: &str = "Which piece is it on?";
pub const WHICH_PIECE_HINT: &str = "First say what is true of all of them. Then choose a piece to record what is true of it alone; a blank there means as for all.";
pub const ALL_PIECES: &str = "All of them";

// What is recorded of a part, in one line.

pub const COUNTED: &str = "base metal counted";
pub const IMPOSSIBLE_SHARE: &str = "an impossible percentage";

pub fn bleed(word: BleedWord) -> &'static str {
    match word {
        BleedWord::None => "no base metal shows",
        BleedWord::Slight => "a trace of base metal",
        BleedWord::Some => "some base metal shows",
        BleedWord::Much => "much base metal shows",
        BleedWord::Most => "mostly base metal",
    }
}

pub fn bleed_share(hundredths: &str) -> String {
    joined(&["base metal on ", hundredths, " %"])
}

pub const BRIGHT: &str = "bright";

/// The words before and after the name of a stage of tarnish, a lining or a filling.
pub const TARNISHED: [&str; 2] = ["", " tarnish"];
pub const LINED: [&str; 2] = ["lining: ", ""];
pub const FILLED: [&str; 2] = ["filling: ", ""];

pub const JOINTS_SOUND: &str = "joints sound";
pub const NO_DENTS: &str = "no dents";
pub const NO_CORROSION: &str = "no corrosion";
pub const ONLY_IN_RECORD: &str = "Only in the condition record";
pub const NOT_LOOKED_AT: &str = "Not looked at yet";

/// How many faults are shown where they are.
pub fn places(count: usize) -> String {
    joined(&[&count.to_string(), " shown where they are"])
}

// The fields of a part.

/// The choice that records nothing.
pub const NOT_LOOKED: &str = "Not looked";

pub const BLEED: [&str; 3] = [
    "Base metal showing through",
    "Copper red, brass yellow or grey where the silver has gone. Judge over the whole of this part.",
    NOT_LOOKED,
];
pub const SHARE: &str = "Or your own estimate in per cent, such as 5";
pub const SHARE_UNIT: &str = "%";
pub const SHARE_HINT: &str =
    "This replaces the choice above. Leave it empty if one of those choices fits.";
pub const COUNT_STANDS: &str =
    "A point count is recorded for this part; it overrides anything you say here.";
pub const COUNT_GIVES_WAY: &str =
    "A point count is recorded for this part. Anything you type here replaces it.";
pub const TARNISH: [&str; 3] = [
    "Tarnish",
    "The darkest colour over most of this part. The list runs from the first stage to the last.",
    NOT_LOOKED,
];
pub const JOINT: [&str; 3] = [
    "Joints and seams",
    "Where this part meets another, and any seam in it.",
    NOT_LOOKED,
];
pub const DENTS: [&str; 3] = ["Dents", "", NOT_LOOKED];
pub const CORROSION: [&str; 3] = [
    "Powder, crust or rust",
    "Not tarnish: something that grows or crumbles.",
    NOT_LOOKED,
];
pub const LEAD: [&str; 3] = [
    "Lead",
    "Only what a test has shown. You need not guess.",
    NOT_LOOKED,
];
pub const INTERIOR: [&str; 3] = ["What lines the inside", "Look with a torch.", NOT_LOOKED];
pub const FILL: [&str; 3] = [
    "What fills it",
    "Hollow parts were often filled. Do not open anything to find out.",
    NOT_LOOKED,
];
pub const REPAIR: [&str; 3] = ["Does the old repair hold?", "", NOT_LOOKED];
pub const MATERIAL: [&str; 3] = [
    "What is this part made of?",
    "Wood, ivory and glass have separate rules.",
    "Metal, as far as known",
];
pub const SPLIT: [&str; 3] = ["Cracks and splits", "", NOT_LOOKED];
pub const LOSS: [&str; 3] = ["Missing metal or a missing part", "", NOT_LOOKED];
pub const REPLACED: [&str; 3] = ["Is it original?", "", NOT_LOOKED];
pub const MOUNT: [&str; 3] = [
    "Stamped mount",
    "Silver stamped thin and backed with soft metal.",
    NOT_LOOKED,
];
pub const ENGRAVING: [&str; 3] = [
    "Engraving and chasing",
    "How crisp the lines still are.",
    NOT_LOOKED,
];
pub const HOLLOW: [&str; 3] = [
    "Is it hollow?",
    "Water that gets in does not come out. Do not open anything to find out.",
    "Not known",
];
pub const FILL_STATE: [&str; 3] = ["State of the filling", "", NOT_LOOKED];
pub const LINER: [&str; 3] = ["A loose liner in it", "", NOT_LOOKED];
pub const GILDING: [&str; 3] = ["Gilding", "", "None, or not looked"];
pub const LACQUER: [&str; 3] = [
    "Lacquer",
    "A clear coat, often yellow with age.",
    NOT_LOOKED,
];
pub const WAX: [&str; 3] = ["Candle wax on it", "", NOT_LOOKED];

// Boxes to open.

pub const DAMAGE: &str = "Splits, losses, replacements, engraving";
pub const INSIDE_IT: &str = "Filling, lining, gilding, lacquer";

/// The line of a box to open, with how many of its fields hold something.
pub fn box_title(title: &str, said: usize) -> String {
    match said {
        0 => title.to_owned(),
        said => joined(&[title, " (", &said.to_string(), " recorded)"]),
    }
}

// A part such pieces usually have not.

pub const ANOTHER_PART: &str = "Another part";
pub const ANOTHER_PART_HINT: [&str; 2] = [
    "For a part such a piece does not usually have.",
    "Choose one",
];

// What is recorded in the boxes, in one line.

pub const NOT_SPLIT: &str = "no splits";
pub const NOTHING_MISSING: &str = "nothing missing";
pub const FILLING_STATE: [&str; 2] = ["filling ", ""];
pub const GILDED: [&str; 2] = ["gilding ", ""];
pub const LACQUERED: [&str; 2] = ["lacquer: ", ""];
pub const REPAIRED: [&str; 2] = ["repair: ", ""];

pub const JOINT_DISTANCE: [&str; 3] = [
    "From the faulty joint to the next soft joint or filling",
    "Heat travels: a joint or filling nearby may let go too. A rough measurement will do.",
    "mm",
];

// Silver left.

pub const SILVER_LEFT: &str = "Silver left";
pub const SILVER_LEFT_FROM: &str = "We work this out from how much base metal you say shows, and from how thick such silver was when new.";

pub fn left_on(words: &str) -> String {
    joined(&[": ", words])
}

// More, to open.

pub const MEASURE_BARE: &str = "Measure how much base metal shows";
pub const HOW_LONG_IT_LASTS: &str = "How long the silver will last, depending on its care";
pub const RECORD: &str = "The condition record: more about each part, and earlier records";
pub const KEEP_RECORD: &str = "Keep a copy of this record";
pub const KEEP_RECORD_WHEN: &str =
    " Do this before any work on the piece; later records are compared with it.";

// The subjects of the cautions.

pub const ABOUT_LEAD_TEST: &str = "Test for lead";
