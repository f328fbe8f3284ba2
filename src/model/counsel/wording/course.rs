//! Why a treatment has nothing to do, and what it needs of others.

pub(crate) const NO_TARNISH: &str = "No tarnish is recorded.";
pub(crate) const BRIGHT: &str = "It is bright; there is nothing to take off.";
pub(crate) const UNDER_LACQUER: &str =
    "A sound coat of lacquer is over it; there is nothing to polish.";

pub(crate) const NOT_BY_ITSELF: &str = "It only makes sense with work that a rule bars.";
pub(crate) const WITH_THE_REST: &str = "What bars the rest.";

/// Why a step is out as long as another is not done, and what lifts that.
pub(crate) type First = (&'static str, &'static str);

pub(crate) const SPLIT_FIRST: First = (
    "Metal that has split goes on splitting when it is pushed, and lets baths in.",
    "The split is mended first.",
);
pub(crate) const JOINT_FIRST: First = (
    "An open joint takes plating liquid in and never gives it all back.",
    "The joint is repaired first.",
);
pub(crate) const LEAK_FIRST: First = (
    "Lacquer over a weeping seam seals the trouble in.",
    "The seam is closed and dry first.",
);
pub(crate) const LEAD_OUT_FIRST: First = (
    "Lead left in the joint makes a repair that opens in boiling water.",
    "The old lead is taken out first.",
);
pub(crate) const PLATED_AFTER: First = (
    "The silver over the dent is nearly through and would not bear it.",
    "New silver over the whole piece afterwards.",
);
