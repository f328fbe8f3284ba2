//! Why a treatment is not needed, and which others it needs.

pub(crate) const NO_TARNISH: &str = "No tarnish is recorded.";
pub(crate) const BRIGHT: &str = "It is bright already.";
pub(crate) const UNDER_LACQUER: &str =
    "A sound coat of lacquer covers it, so there is nothing to polish.";

pub(crate) const NOT_BY_ITSELF: &str = "It only makes sense with other work, which a rule bars.";
pub(crate) const WITH_THE_REST: &str = "Whatever lifts the bar on that work.";

/// Why a step is ruled out until another is done, and what lifts that.
pub(crate) type First = (&'static str, &'static str);

pub(crate) const SPLIT_FIRST: First = (
    "A split grows when the metal is pushed, and it lets plating baths in.",
    "Have the split mended first.",
);
pub(crate) const JOINT_FIRST: First = (
    "Plating liquid gets into an open joint and never all comes out.",
    "Have the joint repaired first.",
);
pub(crate) const LEAK_FIRST: First = (
    "Lacquer over a leaking seam seals the trouble in.",
    "Have the seam closed and dried first.",
);
pub(crate) const LEAD_OUT_FIRST: First = (
    "If lead is left in the joint, boiling water opens the repair.",
    "Have the old lead taken out first.",
);
pub(crate) const PLATED_AFTER: First = (
    "The silver over the dent is nearly worn through and could not stand it.",
    "It can be done if the whole piece is replated afterwards.",
);
