//! Wording of the solid that stands for the piece.

pub(crate) const TURNED: &str = "a turned wall on a round bottom";
pub(crate) const OVAL: &str = "a flat oval";
pub(crate) const BOX: &str = "a box";

pub(crate) fn title(what: &str) -> String {
    format!("The surface is worked out for {what}.")
}

pub(crate) fn description(what: &str) -> String {
    format!(
        "The outline of {what}, with the sizes you gave. The real piece has more surface: see the \
        table."
    )
}

// Sizes

pub(crate) fn across(size: &str) -> String {
    format!("{size} across")
}

pub(crate) fn high(size: &str) -> String {
    format!("{size} high")
}

pub(crate) fn by(length: &str, width: &str) -> String {
    format!("{length} by {width}")
}

pub(crate) fn by_high(length: &str, width: &str, height: &str) -> String {
    format!("{length} by {width}, {height} high")
}
