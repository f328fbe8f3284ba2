//! Piece: what it is for, what is known of it, and what is wanted.

pub const TITLE: &str = "The piece, and what you want of it";
pub const PURPOSE: &str =
    "A few things to begin with. Everything may be left open; the answer is only less sure then.";
pub const NEXT: &str = "Next: look at the piece";

// Beside the first questions.

pub const HOW_THIS_GOES_ON: &str = "How this goes on";
pub const THE_WAY: &str = "Next you look at the piece, then say what state each part is in, then what it might fetch. You can \
     read the counsel at any time: it says how sure it is.";
pub const LOOKS_THAT_TELL_MOST: &str = "These looks would tell most:";

// The piece.

pub const THE_PIECE: &str = "The piece";
pub const NAME: [&str; 3] = ["What do you call it?", "For you to find it again.", ""];
pub const CAME_FROM: [&str; 3] = [
    "How did it come to you?",
    "It says which kinds are common before anything is looked at: household drawers hold mostly electroplate, dealers in old plate sort it out.",
    "Not sure",
];
pub const FORM: [&str; 3] = [
    "What is it?",
    "The form decides which parts there are, and whether food or drink belongs in it.",
    "Not said",
];
pub const HEIGHT: [&str; 3] = ["Height", "Its size tells how much work it would be.", "mm"];
pub const MADE: &str = "When was it made, as far as somebody has told you?";
pub const MADE_HINT: &str = "What you are told is held against what shows; where the two do not fit, we say so. Leave both open if \
     nobody knows.";
pub const NOT_BEFORE: [&str; 3] = ["Not before", "", ""];
pub const NOT_AFTER: [&str; 3] = ["Not after", "", ""];
pub const SOLDERED: [&str; 2] = [
    "Is it held together with solder?",
    "Pots, jugs and baskets mostly are. Old solder often holds lead and lets go when it is warmed.",
];
pub const RARE: [&str; 2] = [
    "It is rare, early, or by a maker people look for",
    "Such pieces lose most when their first surface goes.",
];
pub const DOCUMENTED: [&str; 2] = [
    "Its history is written down",
    "Papers, an old bill or a photograph: what can be shown is worth keeping unbroken.",
];

// What is wanted.

pub const WANTED: &str = "What do you want?";
pub const GOAL: [&str; 3] = [
    "What is to become of it?",
    "A seller asks what it fetches; a keeper asks what stays. The answer can differ.",
    "Not decided",
];
pub const IN_MIND: [&str; 2] = [
    "Did you come with something in mind?",
    "Tick what you would like an answer about. The counsel then says why, or why not.",
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
    "Food or drink is to be served from it",
    "Old plate can give off lead or copper, so this is checked before anything else.",
];
pub const FOOD_STANDS: [&str; 2] = [
    "Food or drink would stand in it for hours",
    "The longer it stands, the more comes out of the metal.",
];
pub const CHILD_OR_PREGNANT: [&str; 2] = [
    "A child, or somebody pregnant or breast-feeding, lives where it is kept or would use it",
    "Lead harms them most.",
];
pub const DOER: [&str; 3] = [
    "Who would do any work on it?",
    "Some work is safe at home and most is not.",
    "Not decided",
];
