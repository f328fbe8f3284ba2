//! Wording of the instrument readings.

pub(crate) const NONE_IS_NEEDED: &str = "None of this is needed. If you have a reading, we compare it with what each kind would give, allow for its uncertainty, and count it as one observation. Nothing here asks for a scratch, a file or a drop of anything.";
pub(crate) const MOVES_NOTHING: &str = "It changes nothing.";
pub(crate) const NOT_SAID: &str = "Not said";
pub(crate) const NO: &str = "No";
pub(crate) const YES: &str = "Yes";

// Density

pub(crate) const DENSITY: &str = "Density, by weighing in water";
pub(crate) const HOW_TO_WEIGH: &str = "Weigh the part dry, then hanging from a thread in plain \
    water, touching nothing and free of bubbles. Dry it at once and completely.";
pub(crate) const KEEP_OUT_OF_WATER: &str = "Only for an all-metal part with no closed hollows. \
    Never put a loaded foot, a hollow handle, wood, ivory or felt into water: it gets in and \
    stays.";
pub(crate) const IN_AIR: &str = "Weight in air";
pub(crate) const IN_WATER: &str = "Weight in water";
pub(crate) const WATER: &str = "Water";
pub(crate) const WATER_HINT: &str = "20 if you leave it empty.";
pub(crate) const STEP: &str = "Smallest step of the balance";
pub(crate) const STEP_HINT: &str = "0.1 if you leave it empty.";
pub(crate) const LOADED: &str = "Is it loaded or filled?";
pub(crate) const HOLLOW: &str = "Is any of it hollow and closed?";
pub(crate) const ORGANIC: &str = "Is there wood, ivory, felt or card on it?";

// Conductivity

pub(crate) const CONDUCTIVITY: &str = "Conductivity, by an eddy-current meter";
pub(crate) const HOW_TO_READ: &str = "In per cent of annealed copper (% IACS), on a flat spot larger \
    than the probe, at room temperature.";
pub(crate) const READING: &str = "Reading";
pub(crate) const CURVED: &str = "Is the spot curved, or smaller than the probe?";
pub(crate) const THIN: &str = "Is the sheet very thin?";
pub(crate) const FILLED: &str = "Is there a filling close behind?";

// X-rays

pub(crate) const XRAY: &str = "X-ray fluorescence";
pub(crate) const SHARES: &str = "Shares by weight as the analyser gives them. Such a reading sees \
    little deeper than the silver: over sound silver it may look like sterling whatever lies \
    below, so a spot where the silver is worn through says far more.";
pub(crate) const SPOT: &str = "Where was it taken?";
pub(crate) const SPOTS: [(&str, &str); 3] = [
    ("", "Not said"),
    ("worn", "Where the silver is worn through"),
    ("sound", "Where the silver is sound"),
];
pub(crate) const SILVER: &str = "Silver";
pub(crate) const COPPER: &str = "Copper";
pub(crate) const NICKEL: &str = "Nickel";
pub(crate) const ZINC: &str = "Zinc";
pub(crate) const TIN: &str = "Tin";
pub(crate) const ANTIMONY: &str = "Antimony";
pub(crate) const IRON: &str = "Iron";
