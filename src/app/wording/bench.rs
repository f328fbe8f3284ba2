//! Heads of the screens Treatments, Bench and Closer, which the worker fills in. Each is a title and a line
//! that says what the screen is for.

pub const TREATMENTS: [&str; 2] = [
    "What could be done, and what it takes away",
    "Every treatment: whether the rules allow it on this piece, what it takes away for good, and what to ask the person who would do it.",
];

pub const BENCH: [&str; 2] = [
    "Workshop sums",
    "How far heat travels, how much a coat of silver weighs, what to ask before food touches it. Figures to discuss with a restorer, not instructions for work.",
];

// Headings of the sections that open.

pub const MEASURES: &str = "Density, conductivity and X-ray readings";
pub const BLEED: &str = "Count the bare metal, or compare it with charts";

pub const CLOSER: [&str; 2] = [
    "A closer look at the answer",
    "What another look is worth, which step depends on which, what risk changes, and what would change the answer. For anyone who wants to check our advice.",
];
