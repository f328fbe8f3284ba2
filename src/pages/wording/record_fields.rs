//! What a record may hold of a part: hints of the fields, and their values.

// Fields

pub(crate) const MOUNT_HINT: &str = "Stamped thin and backed with soft metal.";
pub(crate) const ENGRAVING_HINT: &str = "How crisp the lines still are.";
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
