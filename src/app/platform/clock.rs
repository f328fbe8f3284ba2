//! The clock. The app reads it only when a person starts or opens a piece. The model has no clock.

pub use gloo::timers::callback::Timeout as Wait;
use js_sys::{Date, Math};

/// Today's date in the person's time zone, as year-month-day.
#[must_use]
pub fn today() -> String {
    let now = Date::new_0();
    format!(
        "{:04}-{:02}-{:02}",
        now.get_full_year(),
        now.get_month() + 1,
        now.get_date()
    )
}

/// A new key for a piece. It combines the time with a random number, so that two tabs do not make the same key.
#[must_use]
pub fn new_id() -> String {
    // The time in milliseconds and a number below 65,536 convert exactly and are not negative.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let (time, chance) = (Date::now() as u64, (Math::random() * 65_536.0) as u64);
    format!("{time:x}-{chance:04x}")
}

/// Runs `what` after a delay in milliseconds, unless the returned handle is dropped first.
pub fn after(milliseconds: u32, what: impl FnOnce() + 'static) -> Wait {
    Wait::new(milliseconds, what)
}
