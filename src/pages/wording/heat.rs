//! Wording on the reach of soldering heat.

pub(crate) const HEAT: &str = "How far heat reaches";
pub(crate) const NOT_YET: &str =
    "We cannot use one field, so there is no distance yet. The field says what it needs.";
pub(crate) const ERRS: &str = "This assumes steady heat from the joint alone. For a quick job the distance is too long. Where a flame plays over the piece it is too short, because a small pot in a flame gets hot all over.";

// Metals

pub(crate) const COPPER: &str = "Copper";
pub(crate) const BRASS: &str = "Brass";
pub(crate) const NICKEL_SILVER: &str = "Nickel silver";
pub(crate) const BRITANNIA: &str = "Britannia metal";
pub(crate) const STEEL: &str = "Iron or steel";
pub(crate) const SILVER: &str = "Silver";

// What gives way

pub(crate) const BISMUTH_LEAD: &str = "An old repair with bismuth and lead opens";
pub(crate) const BISMUTH: &str = "A joint of bismuth and tin opens";
pub(crate) const SOFT: &str = "Old soft solder opens";
pub(crate) const TIN: &str = "Tinning runs, close plate lifts";
pub(crate) const PITTING: &str = "Lead and tin begin to eat silver and copper";
pub(crate) const SILVER_LEAD: &str = "Lead and silver run together";
pub(crate) const MERCURY: &str = "Its gilding may contain mercury, which heat drives off as a poison: no heat on this \
    piece unless a laboratory or a conservator has ruled that out. The figures below are for the rest.";
pub(crate) const LEAD: &str = "Lead filling melts";
pub(crate) const BOND: &str = "Silver and copper of fused plate melt together";

// Fields

pub(crate) const WHERE: &str = "Where is the joint?";
pub(crate) const ON_A_BODY: &str = "On a body, a cover or a tray";
pub(crate) const ALONG_A_SEAM: &str = "Along a seam, rim, spout or strap";
pub(crate) const ON_A_HANDLE: &str = "On a solid handle, knob or leg";
pub(crate) const ROOM: &str = "Room temperature";
pub(crate) const PATCH: &str = "Radius of the hot patch";
pub(crate) const DIAMETER: &str = "Diameter";
pub(crate) const THICKNESS: &str = "Thickness of the metal";
pub(crate) const THICKNESS_HINT: &str = "If you leave it empty, a range around the usual thickness \
    is used.";
pub(crate) const JOINT: &str = "Temperature at the joint, if you know it";
pub(crate) const JOINT_HINT: &str = "If you leave it empty, it comes from the solder.";
pub(crate) const METAL: &str = "The metal under the silver";
pub(crate) const METAL_HINT: &str = "Preset from what the piece probably is.";
pub(crate) const SOLDER: &str = "The new solder";
pub(crate) const EXTENT: &str = "How far the metal extends";
pub(crate) const EXTENT_FROM_HEIGHT: &str = "Preset to the height of the piece.";
pub(crate) const EXTENT_FROM_LENGTH: &str = "Preset to the length of the piece.";
pub(crate) const EXTENT_HINT: &str = "From the joint to the far side.";
pub(crate) const DISTANCE: &str = "From the hot spot to the next old joint or filling";
pub(crate) const DISTANCE_RECORDED: &str =
    "Preset to the shortest distance recorded for the piece.";
pub(crate) const NEXT: &str = "What lies there";
pub(crate) const NEXT_SOFT: &str = "Old soft solder, or not known";
pub(crate) const NEXT_BISMUTH_LEAD: &str = "A repair that may hold bismuth and lead";
pub(crate) const NEXT_BISMUTH: &str = "A joint of bismuth and tin";
pub(crate) const NEXT_TIN: &str = "Tinning, or close plate";
pub(crate) const NEXT_LEAD: &str = "Lead filling";
pub(crate) const NEXT_PITCH: &str = "Pitch or rosin";

// The answer

pub(crate) fn never_opens(joint_c: &str, threshold_c: f64) -> String {
    format!(
        "With {joint_c} °C at the joint, this sum keeps the metal around it below {threshold_c} °C, where \
         old soft solder opens. A flame that plays over the piece may still open it."
    )
}

pub(crate) fn can_open(joint_c: &str, solder: &str, what: &str) -> String {
    format!("With {joint_c} °C at the joint{solder}, heat can open {what}.")
}

pub(crate) const EVERY_JOINT: &str = "every old soft joint in that metal";

pub(crate) fn from_at_least(least: &str) -> String {
    format!("old soft solder from at least {least} away, and perhaps everywhere in that metal")
}

pub(crate) fn as_far_as(reach: &str) -> String {
    format!("old soft solder as far as {reach} away")
}

pub(crate) fn chance_at(away: &str, gives_way_c: &str, chance: &str) -> String {
    format!("What lies {away} away gives way at {gives_way_c} °C. The chance of that is {chance}.")
}

// How far each temperature reaches

pub(crate) const NEVER_REACHED: &str = "not reached in this calculation";
pub(crate) const ALL_OF_IT: &str = "all of it";
pub(crate) const CAPTION: &str = "How far each temperature reaches from the hot spot";
pub(crate) const COLUMNS: [&str; 4] = ["What gives way", "At", "At least", "At most"];

// A brief heating

pub(crate) const BRIEF: &str = "If the heating is brief";

pub(crate) fn needs_time(metal: &str) -> String {
    format!(
        "Heat takes time to travel through {metal}. Beyond these distances there is hardly any yet."
    )
}

pub(crate) const BRIEF_CAPTION: &str = "How far heat has travelled";
pub(crate) const BRIEF_COLUMNS: [&str; 2] = ["After", "Felt as far as"];

// Solders

pub(crate) const ANY_SOLDER: &str = "Any lead-free soft solder";
pub(crate) const ANY_SOLDER_SHORT: &str = "any lead-free soft solder";

// Cautions

pub(crate) const LEADED: &str =
    "Leaded solder is listed only to explain old work. Do not use it for anything new.";

pub(crate) const TOO_HOT_FOR_THE_BOND: &str =
    "This solder is too hot for the bond of silver and copper in fused plate.";
pub(crate) const BURNS_THE_PLATING: &str =
    "On fused plate the heat burns off the plating around the joint. We advise against it there.";

pub(crate) fn britannia_melts(from_c: f64) -> String {
    format!(
        "Britannia metal itself melts from about {from_c} °C (from memory, and it varies): a joint this hot \
         can melt the piece."
    )
}
