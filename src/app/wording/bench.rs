//! Treatments, the bench, and the weighing looked at closer: the heads of screens that the second
//! program works out. Each is a title and what the screen is for.

pub const TREATMENTS: [&str; 2] = [
    "What could be done, and what it takes away",
    "Every treatment, what the rules say of it for this piece, what is lost for good, and what to ask whoever would do it.",
];

pub const BENCH: [&str; 2] = [
    "Small sums for the bench",
    "How far heat goes, what a coat of silver weighs, what to ask before food touches it. Figures to talk about with a restorer, not instructions for work.",
];

/// Instruments that open.
pub const MEASURES: &str = "Density, conductivity and X-ray readings";
pub const BLEED: &str = "Counting points on bare metal, and charts to hold beside it";

pub const CLOSER: [&str; 2] = [
    "The weighing, looked at closer",
    "What knowing more is worth, which step hangs on which, how the answer takes risk, and what moves it. For whoever wants to check the counsel.",
];
