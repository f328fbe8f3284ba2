//! Wording of faults that are shown at a place.

pub(crate) const ON_THE_DRAWING: &str = "Where the numbered faults are";
pub(crate) const ON_A_PHOTO: &str = "Numbered faults on a photo";

/// A kind of fault with how many there are.
pub(crate) fn several(fault: &str, count: u32) -> String {
    if count > 1 {
        [fault, " (", &count.to_string(), ")"].concat()
    } else {
        fault.to_owned()
    }
}

/// A place in words, from per cent of the width and of the height.
pub(crate) fn place((x, y): (f64, f64)) -> &'static str {
    let third = |share: f64| match share {
        share if share < 100.0 / 3.0 => 0,
        share if share <= 200.0 / 3.0 => 1,
        _ => 2,
    };
    match (third(x), third(y)) {
        (0, 0) => "at the upper left",
        (0, 1) => "at the left",
        (0, _) => "at the lower left",
        (1, 0) => "at the top",
        (1, 1) => "in the middle",
        (1, _) => "at the bottom",
        (_, 0) => "at the upper right",
        (_, 1) => "at the right",
        _ => "at the lower right",
    }
}

pub(crate) fn on_drawing(place: &str) -> String {
    [", ", place, " of the drawing"].concat()
}

pub(crate) fn on_photo(place: &str) -> String {
    [", ", place, " of the photo"].concat()
}

pub(crate) fn placed(number: u16, fault: &str, place: &str, note: &str) -> String {
    let note = if note.is_empty() {
        String::new()
    } else {
        [": ", note].concat()
    };
    [&number.to_string(), ". ", fault, place, &note].concat()
}

pub(crate) fn summed(fault: &str, part: &str) -> String {
    [fault, ", ", part].concat()
}
