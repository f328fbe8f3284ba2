//! Whom a sheet is for, and what such a sheet is.

pub const CLIENT: [&str; 2] = [
    "For the client",
    "What could be done, what it costs, what is lost for good, and what to ask; with room to choose and sign.",
];
pub const BUYER: [&str; 2] = [
    "For a buyer",
    "What it is and what was found and done, told honestly: a few words for a ticket, and a long description.",
];
pub const FILE: [&str; 2] = [
    "For the file",
    "Everything: looks, parts, measures, figures, and how the answer was made.",
];
