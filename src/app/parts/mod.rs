//! Small components and the wording that all screens share.

pub mod cautions;
pub mod choice;
pub mod field;
pub mod live;
pub mod places;
pub mod screen;
pub mod words;
