//! When a look is asked for.

use crate::ledger::{FindingFact, FindingId, Requires};
use crate::terms::Instrument;

/// When a look is asked for. Earlier turns come first, however informative a later look would be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// Anyone can take it with what is at hand.
    First,
    /// It needs a paper, a book, a piece to compare with or the word of a person who knows, or it is an
    /// answer for a user who cannot say which of several looks it was.
    Later,
    /// It needs an instrument that is not at hand.
    Last,
}

/// Answers for a user who cannot say which of several looks it was, or who repeats what a seller said. Nobody
/// is asked to look for them.
const NOT_LOOKS: [FindingId; 7] = [
    FindingId::C13,
    FindingId::C20,
    FindingId::M06,
    FindingId::S07,
    FindingId::S11,
    FindingId::S18,
    FindingId::S19,
];

impl Turn {
    /// The turn of a look for a user who has these instruments at hand.
    #[must_use]
    pub fn of(look: &FindingFact, at_hand: &[Instrument]) -> Self {
        if NOT_LOOKS.contains(&look.id) || look.requires == Requires::Reference {
            Self::Later
        } else if look.is_lay(at_hand) {
            Self::First
        } else {
            Self::Last
        }
    }
}
