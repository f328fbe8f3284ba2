//! The clock. It is read only when a person starts or opens a piece; the model has none.

pub use gloo::timers::callback::Timeout as Wait;
use js_sys::{Date, Math};

/// Today where the person is, as year-month-day.
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

/// A new key for a piece. It joins the time with a random number, so that two tabs never make the same.
#[must_use]
pub fn new_id() -> String {
    // A time in milliseconds and a number below 65,536 are exact and not negative.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let (time, chance) = (Date::now() as u64, (Math::random() * 65_536.0) as u64);
    format!("{time:x}-{chance:04x}")
}

/// Runs `what` after so many milliseconds, unless the returned handle is dropped first.
pub fn after(milliseconds: u32, what: impl FnOnce() + 'static) -> Wait {
    Wait::new(milliseconds, what)
}
