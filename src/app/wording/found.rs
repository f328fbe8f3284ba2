//! The labels of the picture that shows what was found.

use crate::app::parts::words::joined;

pub const MISSING: &str = "Missing";
pub const LEAKS: &str = "Leaks";
pub const LOOSE: &str = "Loose";
pub const OPEN_SEAM: &str = "Open seam";
pub const GREY: &str = "Grey repair";
pub const DENT: &str = "Small dent";
pub const DEEP_DENT: &str = "Deep dent";
pub const COPPER: &str = "Copper shows";
pub const BARE: &str = "Bare metal";
pub const UNKNOWN_PART: &str = "part not known";

pub fn on(part: &str) -> String {
    joined(&["on the ", part])
}

/// How many of a kind were placed on a part, where there is more than one.
pub fn several(count: u32, note: String) -> String {
    if count < 2 {
        return note;
    }
    joined(&[&note, " (", &count.to_string(), ")"])
}

pub fn at(part: &str) -> String {
    joined(&["at the ", part])
}

pub fn share_of(share: &str, part: &str) -> String {
    joined(&["on ", share, " of the ", part])
}
