//! Storage, files, the clock, the workers and the page. Only these modules use web APIs.

pub mod clock;
pub mod file;
pub mod locale;
pub mod page;
pub mod store;
pub mod worker;
