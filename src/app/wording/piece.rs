//! Piece: what it is, what is known about it, and what the owner wants.

pub const TITLE: &str = "The piece, and what you want from it";
pub const PURPOSE: &str =
    "A few questions to begin with. You can skip any of them; the answer is then less sure.";
pub const NEXT: &str = "Next: look at the piece";

// Beside the first questions.

pub const HOW_THIS_GOES_ON: &str = "What comes next";
pub const THE_WAY: &str = "Next you look at the piece, then say what state each part is in, then what it might fetch. You can \
     read our advice at any time: it says how sure it is.";
pub const LOOKS_THAT_TELL_MOST: &str = "These would tell us most:";

// The piece.

pub const THE_PIECE: &str = "The piece";
pub const NAME: [&str; 3] = ["What do you call it?", "So that you can find it again.", ""];
pub const CAME_FROM: [&str; 3] = [
    "How did it come to you?",
    "Some kinds are likelier from the start: household drawers hold mostly electroplate, while dealers in old plate sort it out.",
    "Not sure",
];
pub const FORM: [&str; 3] = [
    "What is it?",
    "The form decides which parts there are, and whether food or drink belongs in it.",
    "Not said",
];
pub const SIZE: &str = "How large is it?";
pub const SIZE_HINT: &str =
    "The larger it is, the more work it takes. The sheets print what you measured.";
pub const HEIGHT: [&str; 2] = ["Height", ""];
pub const LENGTH: [&str; 2] = ["Length", ""];
pub const WIDTH: [&str; 2] = ["Width", ""];
pub const WEIGHT: [&str; 2] = ["Weight", ""];
pub const TROY_OUNCES: &str = "oz t";
pub const UNITS: &str = "Units";
pub const LENGTHS_IN: [&str; 3] = ["Lengths in", "", "Millimetres, unless you choose"];
pub const WEIGHTS_IN: [&str; 3] = ["Weights in", "", "Grams, unless you choose"];
pub const RELATION: [&str; 3] = [
    "One piece, or several?",
    "Everything below then holds for all of them; a price is for all together.",
    "One piece, unless you choose",
];
pub const HOW_MANY: [&str; 3] = ["How many are there?", "", ""];
pub const MADE: &str = "When is it said to have been made?";
pub const MADE_HINT: &str = "We compare this with what shows on the piece, and say so if the two do not fit. Leave both blank if \
     nobody knows.";
pub const NOT_BEFORE: [&str; 3] = ["Not before", "", ""];
pub const NOT_AFTER: [&str; 3] = ["Not after", "", ""];
pub const SOLDERED: [&str; 2] = [
    "Is it held together with solder?",
    "Most pots, jugs and baskets are. Old solder often contains lead, and lets go when it is warmed.",
];
pub const RARE: [&str; 2] = [
    "It is rare, early, or by a sought-after maker",
    "Such pieces lose most when their original surface goes.",
];
pub const DOCUMENTED: [&str; 2] = [
    "Its history is written down",
    "Papers, an old bill or a photograph: a history you can prove is worth keeping unbroken.",
];

// What the owner wants.

pub const WANTED: &str = "What do you want?";
pub const GOAL: [&str; 3] = [
    "What will become of it?",
    "A seller asks what it fetches; a keeper asks what lasts. The answers can differ.",
    "Not decided",
];
pub const IN_MIND: [&str; 2] = [
    "Did you come with something in mind?",
    "Tick what you would like an answer about. Our advice will then say why, or why not.",
];
pub const DISHWASHER: [&str; 2] = ["It would be washed in a dishwasher", ""];
pub const DAMP: [&str; 2] = [
    "It is kept in a damp place",
    "A kitchen, a cellar, a house by the sea.",
];
pub const LOAN: [&str; 2] = [
    "It is lent to a museum, or about to be",
    "Then nothing is done without the museum and a conservator.",
];
pub const ASSUME_LEAD: [&str; 2] = [
    "Treat its solder as leaded without a test",
    "Saves the test before a small repair. It never clears anything for food.",
];
pub const UNTIL: [&str; 3] = [
    "Is there a date by which it must be settled?",
    "A sale or a party, such as 2026-12-01.",
    "",
];
pub const FOOD: [&str; 2] = [
    "Food or drink will be served from it",
    "Old plate can give off lead or copper, so this is checked before anything else.",
];
pub const FOOD_STANDS: [&str; 2] = [
    "Food or drink would stand in it for hours",
    "The longer it stands, the more comes out of the metal.",
];
pub const CHILD_OR_PREGNANT: [&str; 2] = [
    "A child, or anyone pregnant or breast-feeding, lives where it is kept or would use it",
    "Lead harms them most.",
];
pub const DOER: [&str; 3] = [
    "Who would do any work on it?",
    "Some work is safe at home and most is not.",
    "Not decided",
];

// Photos.

/// In the middle of a sentence.
pub const WHOLE_PIECE: &str = "whole piece";
