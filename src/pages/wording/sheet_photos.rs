//! Wording of photographs on sheets.

pub(crate) const THE_PIECE: &str = "The whole piece";
pub(crate) const BEFORE: &str = "Before";
pub(crate) const AFTER: &str = "After";
pub(crate) const NONE_BEFORE: &str = "No photo from before the work is recorded.";
pub(crate) const NONE_AFTER: &str = "No photo from after the work is recorded.";

/// What photographs show, with the pieces that are on them where there are several.
pub(crate) fn of_pieces(shown: &str, pieces: &str) -> String {
    if pieces.is_empty() {
        return shown.to_owned();
    }
    format!("{shown}, {pieces}")
}

/// What to say where photographs cannot be shown.
pub(crate) fn missing(count: usize, of: &str) -> String {
    match count {
        1 => format!(
            "One photo is recorded ({of}). It is kept only in the browser where it was taken in."
        ),
        count => format!(
            "{count} photos are recorded ({of}). They are kept only in the browser where they were taken in."
        ),
    }
}
