//! The words of the screens: every label, sentence, hint, title and button name, one file a screen or
//! concern, in the order in which a reader meets them.
//!
//! A screen contains no words itself. Fixed text is a constant, text with a placeholder is a small
//! function, and words that belong together, such as a field's label, hint and unit, are one array. Each
//! name says what the text says or where it appears, so that a file reads like a text. The model words
//! findings, treatments, cautions and reports. Ids, classes, addresses, record paths and event names are
//! not words.
//!
//! Arrays for controls hold, in this order, for a field: label, hint, unit; for a choice: label, hint,
//! and the choice for no answer; for a checkbox or a yes-or-no question: label, hint. An empty text shows
//! nothing.

// Only this crate reads the words, so the compiler reports those that no screen uses any more.
#![allow(unreachable_pub)]

pub mod answer;
pub mod bench;
pub mod cautions;
pub mod charts;
pub mod condition;
pub mod controls;
pub mod counsel;
pub mod drawings;
pub mod examples;
pub mod faults;
pub mod figures;
pub mod found;
pub mod guide;
pub mod keeping;
pub mod learning;
pub mod look;
pub mod money;
pub mod owner;
pub mod piece;
pub mod places;
pub mod plan;
pub mod proposal;
pub mod reader;
pub mod road;
pub mod selling;
pub mod sheet;
pub mod shelf;
pub mod shell;
pub mod stock;
