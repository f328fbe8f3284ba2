//! Wording of the heat overlay on the drawn piece.

// Fields

pub(crate) const ON_PART: &str = "Which part is the joint on?";
pub(crate) const ON_PART_HINT: &str = "Preset to a part with a faulty or mended joint on record, \
    or one that is usually soldered on.";
pub(crate) const LENGTH: &str = "Length with its handles";
pub(crate) const HEIGHT: &str = "Height of the piece";
pub(crate) const SIZE_HINT: &str = "It sets the scale of the drawing.";

// The assumed size

/// The adjective and the noun for the size of a tray.
pub(crate) const TRAY_SIZE: [&str; 2] = ["long", "length"];
/// The adjective and the noun for the size of any other piece.
pub(crate) const PIECE_SIZE: [&str; 2] = ["high", "height"];

pub(crate) fn assumed(size: &str, [long, length]: [&str; 2]) -> String {
    format!(
        "Drawn as if the piece were {size} {long}, which is only assumed. Enter the {length} to draw it to \
         scale."
    )
}

pub(crate) const LAID_FLAT: &str = "Distances run along the metal; the drawing lays them flat. For \
    a range it shows the farthest.";

// A reach in a few words

pub(crate) const NEVER_REACHED: &str = "not reached in this calculation";
pub(crate) const ALL_OF_IT: &str = "all of it";
pub(crate) const PERHAPS_ALL: &str = "perhaps all of it";

pub(crate) fn to_all(near: &str) -> String {
    format!("{near} to all of it")
}

pub(crate) fn up_to(far: &str) -> String {
    format!("up to {far}")
}

// The title: the effect on old soft solder

pub(crate) fn does_not_open(part: &str) -> String {
    format!(
        "{} is not reached in this calculation; a flame may reach it.",
        soft_solder(part)
    )
}

pub(crate) fn opens_as_far_as(part: &str, far: &str) -> String {
    format!("{} can open as far as {far} away.", soft_solder(part))
}

pub(crate) fn opens_all_over(part: &str) -> String {
    format!("{} can open all over.", soft_solder(part))
}

fn soft_solder(part: &str) -> String {
    format!("With a joint on the {part}, old soft solder")
}

// Descriptions

pub(crate) fn no_band(part: &str) -> String {
    format!("The piece with a mark for the joint on the {part} and no band around it.")
}

pub(crate) fn bands(part: &str, bands: &str) -> String {
    format!("The piece with bands around the joint on the {part}: {bands}.")
}
