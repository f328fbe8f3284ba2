//! Wording of the cross-section of a wall.

pub(crate) fn picture_title(um: &str, part: &str) -> String {
    format!("About {um} µm of silver is left on the {part}, where it is not bare")
}

pub(crate) fn description(wall: &str, times: &str, cleanings: &str) -> String {
    format!(
        "One face of the sheet in two boxes, drawn to scale. Left: a wall of {wall} mm with its silver as a \
         thin line on top. Right: that line enlarged {times} times more, with the thickness as made, what is \
         left, how uncertain that is, and what cleaning takes ({cleanings})."
    )
}

pub(crate) const COPPER: &str = "copper";
pub(crate) const BASE_METAL: &str = "base metal";

// On the drawing

pub(crate) const WALL: &str = "The wall";
pub(crate) const SILVER: &str = "Its silver";

pub(crate) fn enlarged(times: &str) -> String {
    format!("enlarged {times} times more")
}

pub(crate) fn thick(mm: &str) -> String {
    format!("{mm} mm thick")
}

pub(crate) fn as_made(um: &str) -> String {
    format!("line: as made, {um} µm")
}

pub(crate) const ONE_CLEANING: &str = "frame: one cleaning";

pub(crate) fn cleanings(count: u32) -> String {
    format!("frame: {count} cleanings")
}

pub(crate) const ALL_AT_ONCE: &str = "one cleaning takes it all";

// Its table

pub(crate) const CAPTION: &str = "Thicknesses drawn, in thousandths of a millimetre";
pub(crate) const WHAT: &str = "What";
pub(crate) const THICKNESS: &str = "Thickness";

pub(crate) fn wall_of(metal: &str) -> String {
    format!("Wall of {metal}, assumed")
}

pub(crate) const MADE: &str = "Silver as made, about";
pub(crate) const LEFT: &str = "Silver left, about";
pub(crate) const BETWEEN: &str = "8 times in 10 between";

pub(crate) fn between(low: &str, high: &str) -> String {
    format!("{low} and {high}")
}

pub(crate) const TAKES: &str = "One cleaning takes about";
