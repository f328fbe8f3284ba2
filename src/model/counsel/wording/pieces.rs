//! The words of several pieces: together or apart, and what does not match.

pub(crate) fn both(together: &str, apart: &str) -> String {
    format!(
        "Sold together they would leave you about {together}; one by one about {apart}, after the charges for each."
    )
}

pub(crate) const KEEP_TOGETHER: &str = "Keep them together.";
pub(crate) const SELL_APART: &str = "Sell them one by one.";
pub(crate) const EITHER: &str = "It makes little difference.";

/// `lots` names the pieces of each lot.
pub(crate) fn in_lots(lots: &[String], kept: &str) -> String {
    format!(
        "Best in {} lots: {}. That would leave about {kept}.",
        lots.len(),
        lots.join("; ")
    )
}

/// A fault with the pieces it is on; as it is where there is nothing to say of them.
pub(crate) fn of_pieces(fault: &str, pieces: &str) -> String {
    if pieces.is_empty() {
        return fault.to_owned();
    }
    format!("{fault} ({pieces})")
}

/// The name of a part of some pieces: "Body of the second".
pub(crate) fn part_of(part: &str, pieces: &str) -> String {
    format!("{part} of {pieces}")
}
