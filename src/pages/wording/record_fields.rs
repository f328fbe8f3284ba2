//! Labels, hints and values of the fields of a part.

// Fields

pub(crate) const BLEED: &str = "Base metal showing";
pub(crate) const TARNISH: &str = "Tarnish";
pub(crate) const JOINT: &str = "Joints and seams";
pub(crate) const JOINT_DISTANCE: &str = "From the faulty joint to the next one";
pub(crate) const MOUNT: &str = "Stamped mount";
pub(crate) const MOUNT_HINT: &str = "Stamped thin and backed with soft metal.";
pub(crate) const DENTS: &str = "Dents";
pub(crate) const SPLIT: &str = "Splits";
pub(crate) const LOSS: &str = "Missing metal";
pub(crate) const REPLACED: &str = "Replaced";
pub(crate) const ENGRAVING: &str = "Engraving and chasing";
pub(crate) const ENGRAVING_HINT: &str = "How crisp the lines still are.";
pub(crate) const LACQUER: &str = "Lacquer";
pub(crate) const CORROSION: &str = "Powder, crust or rust";
pub(crate) const INTERIOR: &str = "Lining";
pub(crate) const FILL: &str = "Filling";
pub(crate) const LEAD: &str = "Lead";
pub(crate) const XRF: &str = "Silver by X-ray fluorescence";
pub(crate) const COULOMETRIC: &str = "Silver by coulometric spot";
pub(crate) const SECTION: &str = "Silver in cross-section";
pub(crate) const NOTE: &str = "Note";
pub(crate) const PHOTOS: &str = "Photographs";
pub(crate) const PHOTOS_HINT: &str =
    "Names of photographs kept on this device, separated by spaces. They are never sent.";

// Values

pub(crate) fn photos_kept(count: usize) -> String {
    format!("{count} kept on this device")
}

pub(crate) const NONE_SEEN: &str = "none seen";

pub(crate) fn by_eye(share: &str) -> String {
    format!("{share}, judged by eye")
}

pub(crate) fn counted(share: &str, low: f64, high: f64) -> String {
    format!("{share}, counted; between {low:.0} and {high:.0} %")
}

// Problems

pub(crate) const CANNOT_BE_USED: &str = "this entry cannot be used";

pub(crate) fn none_of_the_choices(field: &str, written: &str, choices: &str) -> String {
    format!("{field}: \"{written}\" is not one of the choices. Choose one of: {choices}.")
}
