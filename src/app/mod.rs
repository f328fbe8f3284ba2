//! The screens: what is shown, what a person does, and what is kept on this device.
//!
//! Invariant: nothing here computes a figure. Every number shown comes from the report, the ledger
//! or the draft; this module words it and scales it to pixels.

pub mod charts;
pub mod drawings;
pub mod examples;
pub mod history;
pub mod pages;
pub mod parts;
pub mod platform;
pub mod reader;
pub mod route;
pub mod shell;
pub mod state;
mod wording;

pub use shell::App;
