//! Small parts of a screen that all screens share. They are plain functions: the app is the only component,
//! so its state alone decides what is shown.

pub mod blocks;
pub mod cautions;
pub mod choice;
pub mod chosen_file;
pub mod element;
pub mod field;
pub mod live;
pub mod locale;
pub mod marks;
pub mod places;
pub mod screen;
pub mod share;
pub mod terms;
pub mod words;
