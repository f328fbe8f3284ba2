//! Why a treatment is not needed, and which others it needs.

pub(crate) const NO_TARNISH: &str = "No tarnish is recorded.";
pub(crate) const BRIGHT: &str = "It is bright already.";
pub(crate) const UNDER_LACQUER: &str =
    "A sound coat of lacquer covers it, so there is nothing to polish.";

pub(crate) const NOT_BY_ITSELF: &str = "It only makes sense with other work, which a rule bars.";
pub(crate) const WITH_THE_REST: &str = "Whatever lifts the bar on that work.";
