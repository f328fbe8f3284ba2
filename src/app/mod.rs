//! The app: what the screens show, what a person does, and what this device stores.
//!
//! Invariant: the app computes no figure. Every number on screen comes from the report, the ledger or the
//! draft; the app only words it and scales it to pixels.

pub mod charts;
pub mod drawings;
pub mod examples;
pub mod history;
pub mod kept_walk;
pub mod pages;
pub mod parts;
pub mod platform;
pub mod reader;
pub mod route;
pub mod shelf_line;
pub mod shell;
pub mod state;
pub mod stock_book;
mod wording;

pub use shell::App;
