//! Words of the heat drawn on the piece.

// What is asked

pub(crate) const ON_PART: &str = "Which part is the joint on?";
pub(crate) const ON_PART_HINT: &str = "The one filled in has a faulty or mended joint on record, or \
    is one that is usually soldered on.";
pub(crate) const LENGTH: &str = "Length with its handles";
pub(crate) const HEIGHT: &str = "Height of the piece";
pub(crate) const SIZE_HINT: &str = "It gives the drawing its scale.";

// The size that is assumed

/// How the size of a tray is told, and what it is called.
pub(crate) const TRAY_SIZE: [&str; 2] = ["long", "length"];
/// The same of everything else.
pub(crate) const PIECE_SIZE: [&str; 2] = ["high", "height"];

pub(crate) fn assumed(size: &str, [long, length]: [&str; 2]) -> String {
    format!(
        "Drawn as if the piece were {size} {long}, which is only assumed. Put in the {length} to draw it to scale."
    )
}

pub(crate) const LAID_FLAT: &str = "Distances run along the metal; on the drawing they are laid \
    flat. Where one is a range, the drawing shows the farthest.";

// A reach in a few words

pub(crate) const NEVER_REACHED: &str = "not reached by this sum";
pub(crate) const ALL_OF_IT: &str = "all of it";
pub(crate) const PERHAPS_ALL: &str = "perhaps all of it";

pub(crate) fn to_all(near: &str) -> String {
    format!("{near} to all of it")
}

pub(crate) fn up_to(far: &str) -> String {
    format!("up to {far}")
}

// The title: what becomes of old soft solder

pub(crate) fn does_not_open(part: &str) -> String {
    format!(
        "{} is not reached by this sum; a flame may.",
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

// What is seen

pub(crate) fn no_band(part: &str) -> String {
    format!("The piece with a mark for the joint on the {part} and no band round it.")
}

pub(crate) fn bands(part: &str, bands: &str) -> String {
    format!("The piece with bands round the joint on the {part}: {bands}.")
}
