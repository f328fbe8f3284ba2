//! Why a treatment has nothing to do.

pub(crate) const TESTED: &str = "It has been tested already.";
pub(crate) const CLEAN: &str = "It is clean already.";
pub(crate) const NO_TARNISH: &str = "No tarnish is recorded.";
pub(crate) const BRIGHT: &str = "It is bright; there is nothing to take off.";
pub(crate) const NO_OPEN_JOINT: &str = "No open joint is recorded.";
pub(crate) const NO_GREY_REPAIR: &str = "No old grey repair is recorded.";
pub(crate) const HARDLY_ANY_BLEED: &str = "Hardly any base metal shows.";
