//! Which screen the address names. The part after `#` is the whole route, so the built site works
//! from any folder.

use leavewell_model::page::CHANGES;

/// A screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Route {
    /// All pieces on this device.
    #[default]
    Shelf,
    /// What the piece is for and what is wanted.
    Piece,
    /// Findings.
    Look,
    /// Condition by part.
    Condition,
    /// Value and prices.
    Money,
    /// The advice.
    Counsel,
    /// All treatments, with what the rules say of each.
    Treatments,
    /// Heat, plating, food, measuring: small sums.
    Bench,
}

impl Route {
    /// The places in a case, in the order a newcomer takes them.
    pub const PLACES: [Self; 7] = [
        Self::Piece,
        Self::Look,
        Self::Condition,
        Self::Money,
        Self::Counsel,
        Self::Treatments,
        Self::Bench,
    ];

    /// The address, for a link.
    #[must_use]
    pub fn href(self) -> &'static str {
        match self {
            Self::Shelf => "#/",
            Self::Piece => "#/piece",
            Self::Look => "#/look",
            Self::Condition => "#/condition",
            Self::Money => "#/money",
            Self::Counsel => "#/counsel",
            Self::Treatments => "#/treatments",
            Self::Bench => "#/bench",
        }
    }

    /// The name of the screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Shelf => "Shelf",
            Self::Piece => "Piece",
            Self::Look => "Look",
            Self::Condition => "Condition",
            Self::Money => "Money",
            Self::Counsel => "Counsel",
            Self::Treatments => "Treatments",
            Self::Bench => "Bench",
        }
    }

    /// The pages of the second program that stand on the screen.
    #[must_use]
    pub fn leaves(self) -> &'static [&'static str] {
        match self {
            Self::Shelf | Self::Piece => &[],
            Self::Money => &["worth"],
            Self::Look => &["why", "measures"],
            Self::Counsel => &[CHANGES],
            Self::Condition => &["bleed", "care", "record"],
            Self::Treatments => &["catalogue"],
            Self::Bench => &["bench"],
        }
    }

    /// The screen an address names; the shelf when it names none.
    #[must_use]
    pub fn parse(hash: &str) -> Self {
        Self::PLACES
            .into_iter()
            .find(|route| route.href() == hash.trim_end_matches('/'))
            .unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::Route;

    #[test]
    fn addresses_round_trip() {
        for route in Route::PLACES {
            assert_eq!(Route::parse(route.href()), route);
        }
        for hash in ["", "#", "#/", "#/nowhere", "look"] {
            assert_eq!(Route::parse(hash), Route::Shelf, "{hash}");
        }
        assert_eq!(Route::parse("#/look/"), Route::Look);
    }
}
