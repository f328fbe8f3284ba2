//! The outside: storage, files, the clock and the page itself. The only place that knows the web.

pub mod clock;

pub mod file;
pub mod page;
pub mod store;
pub mod worker;
