//! What the screens say: every label, sentence, hint, title and name of a button that is shown or read
//! out stands here, one file for each screen or concern, in the order in which it is met there.
//!
//! The rule: a screen holds no words of its own. Text that never changes is a constant; text into
//! which something is put is a small function; words that go together, such as a field's label, hint
//! and unit, are one array. A name says what the line says or where it stands, so that a file can be
//! read through by itself, as a text is. What the model words (findings, treatments, cautions,
//! reports) stays with the model; ids, classes, addresses, paths of the record and names of events are
//! no words.
//!
//! Arrays for controls hold, in this order, for a field: label, hint, unit; for a choice: label, hint,
//! and what stands for no answer; for a box to tick or a yes-or-no question: label, hint. An empty
//! text shows nothing.

// Only this crate reads the words: one that no screen uses any more is told by the compiler.
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
pub mod keeping;
pub mod look;
pub mod money;
pub mod piece;
pub mod places;
pub mod plan;
pub mod proposal;
pub mod reader;
pub mod sheet;
pub mod shelf;
pub mod shell;
