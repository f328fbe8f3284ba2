//! What the road writes into the record in words.

pub(super) const LOOSE_SOMEWHERE: &str = "Something is loose. Which part is not known.";
pub(super) const REPAIRED_SOMEWHERE: &str = "There is an old grey repair. Where is not known.";
