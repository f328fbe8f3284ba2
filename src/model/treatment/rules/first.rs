//! What has to be done before a treatment, in the words of the rule book, which asks it of a treatment by itself, and
//! of the weighing, which asks it of a course whose other steps may do it.

/// Why a treatment is ruled out until something else is done, and what lifts that.
pub(crate) type First = (&'static str, &'static str);

pub(crate) const PUSHED_SPLIT: First = (
    "A split grows when the metal is pushed.",
    "Have the split mended first.",
);
pub(crate) const PLATED_SPLIT: First = (
    "Plating liquid gets into a split and never all comes out.",
    "Have the split mended first.",
);
pub(crate) const OPEN_JOINT: First = (
    "Plating liquid gets into an open joint and never all comes out.",
    "Have the joint repaired first.",
);
pub(crate) const LACQUERED_TROUBLE: First = (
    "Lacquer over a leaking seam or active corrosion seals the trouble in.",
    "Have the leak and the corrosion stopped first.",
);
pub(crate) const LEAD_LEFT: First = (
    "If lead is left in the joint, boiling water opens the repair.",
    "Have the old lead taken out first.",
);
pub(crate) const WORN_SKIN: First = (
    "The silver over the dent is nearly worn through and could not stand it.",
    "Have the silver measured, to see whether it is thicker, or the whole piece replated afterwards.",
);
