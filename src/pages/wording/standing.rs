//! The word for where a treatment stands.

pub(crate) const ADVISED: &str = "Advised";
pub(crate) const POSSIBLE: &str = "Possible";
pub(crate) const NEEDS_CHECK: &str = "Needs a check";
pub(crate) const NEEDS_OPINION: &str = "Needs an opinion";
pub(crate) const BARRED: &str = "Barred";
pub(crate) const NOT_NEEDED: &str = "Not needed";
pub(crate) const NEVER: &str = "Never";
