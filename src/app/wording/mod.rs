//! The words of the screens, apart from what draws them.

pub mod reader;
