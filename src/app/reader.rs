//! The reader of the counsel: the owner, the restorer or the dealer. Everyone gets the same answer; the reader
//! only decides the order of its sections.

/// The reader of the counsel. The choice is stored on the device.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Reader {
    /// The owner of the piece.
    #[default]
    Owner,
    /// A restorer who would work on it.
    Restorer,
    /// A dealer who would sell it.
    Dealer,
}

impl Reader {
    /// Every choice.
    pub const ALL: [Self; 3] = [Self::Owner, Self::Restorer, Self::Dealer];

    /// The id it is stored under.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Owner => "owner",
            Self::Restorer => "restorer",
            Self::Dealer => "dealer",
        }
    }

    /// The choice with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|reader| reader.id() == id)
    }

    /// The ids of the sections around the answer, in this reader's order: main column, side column, and below
    /// both. Every reader gets all of them.
    #[must_use]
    pub fn order(self) -> [&'static [&'static str]; 3] {
        match self {
            Self::Owner => [
                &["faults", "proposal", "options"],
                &["lost", "look-next", "would-change"],
                &["pictures", "cautions", "courses", "trace"],
            ],
            Self::Restorer => [
                &["faults", "options", "proposal"],
                &["look-next", "lost", "would-change"],
                &["cautions", "courses", "pictures", "trace"],
            ],
            Self::Dealer => [
                &["faults", "proposal", "options"],
                &["would-change", "lost", "look-next"],
                &["courses", "pictures", "cautions", "trace"],
            ],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_reader_gets_the_same_sections() {
        let sorted = |reader: Reader| {
            reader.order().map(|column| {
                let mut column = column.to_vec();
                column.sort_unstable();
                column
            })
        };
        for reader in Reader::ALL {
            assert_eq!(sorted(reader), sorted(Reader::Owner), "{reader:?}");
            assert_eq!(Reader::parse(reader.id()), Some(reader));
        }
        assert_eq!(Reader::parse("nobody"), None);
    }

    #[test]
    fn each_reader_has_a_different_order() {
        for (i, reader) in Reader::ALL.into_iter().enumerate() {
            for other in &Reader::ALL[i + 1..] {
                assert_ne!(reader.order(), other.order(), "{reader:?} and {other:?}");
            }
        }
    }
}
