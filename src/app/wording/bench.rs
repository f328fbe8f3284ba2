//! Heads of the screens Treatments, Bench and Closer, which the worker fills in. Each is a title and a line
//! that says what the screen is for.

pub const TREATMENTS: [&str; 2] = [
    "What could be done, and what it takes away",
    "Every treatment: what the rules say about it for this piece, what is lost for good, and what to ask whoever would do it.",
];

pub const BENCH: [&str; 2] = [
    "Workshop sums",
    "How far heat travels, how much a coat of silver weighs, what to ask before food touches it. Figures to discuss with a restorer, not instructions for work.",
];

// Headings of the sections that open.

pub const MEASURES: &str = "Density, conductivity and X-ray readings";
pub const BLEED: &str = "Count points on bare metal, and charts to hold beside the piece";

pub const CLOSER: [&str; 2] = [
    "A closer look at the answer",
    "What it is worth to know more, which step depends on which, how risk affects the answer, and what moves it. For anyone who wants to check our advice.",
];
