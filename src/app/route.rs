//! Which screen the address names. The part after `#` is the whole route, so the built site works
//! from any folder.

use leavewell_pages::CHANGES;

use super::wording::{places, sheet};

/// A screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Route {
    /// All pieces on this device.
    #[default]
    Shelf,
    /// Which of them to work on, within money and hours.
    Plan,
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
    /// Every treatment, with what the rules say of it.
    Treatments,
    /// The weighing looked at closer: trees, what knowing is worth, risk.
    Closer,
    /// Small sums for the bench.
    Bench,
    /// The sheet for somebody.
    Sheet(Whom),
    /// What was done.
    Done,
    /// Every figure.
    Figures,
}

/// Whom a sheet is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whom {
    /// Who decides.
    Client,
    /// Who buys.
    Buyer,
    /// Whoever looks after the piece later.
    File,
}

/// What there is to say of a screen.
struct Sign {
    route: Route,
    href: &'static str,
    name: &'static str,
    /// The pages of the second program that stand on it.
    leaves: &'static [&'static str],
}

const SIGNS: [Sign; 15] = [
    sign(Route::Shelf, "#/", places::SHELF, &[]),
    sign(Route::Plan, "#/plan", places::PLAN, &[]),
    sign(Route::Piece, "#/piece", places::PIECE, &[]),
    sign(Route::Look, "#/look", places::LOOK, &["why", "measures"]),
    sign(
        Route::Condition,
        "#/condition",
        places::CONDITION,
        &["bleed", "care", "record"],
    ),
    sign(Route::Money, "#/money", places::MONEY, &["worth"]),
    sign(
        Route::Counsel,
        "#/counsel",
        places::COUNSEL,
        &[CHANGES, "trace"],
    ),
    sign(
        Route::Treatments,
        "#/treatments",
        places::TREATMENTS,
        &["catalogue"],
    ),
    sign(Route::Closer, "#/closer", places::CLOSER, &["deeper"]),
    sign(
        Route::Bench,
        "#/bench",
        places::BENCH,
        &["bench", "measures", "bleed"],
    ),
    sign(
        Route::Sheet(Whom::Client),
        "#/sheet/client",
        places::SHEET,
        &["sheet_client"],
    ),
    sign(
        Route::Sheet(Whom::Buyer),
        "#/sheet/buyer",
        places::SHEET,
        &["sheet_buyer"],
    ),
    sign(
        Route::Sheet(Whom::File),
        "#/sheet/file",
        places::SHEET,
        &["sheet_file"],
    ),
    sign(Route::Done, "#/done", places::DONE, &["done"]),
    sign(Route::Figures, "#/figures", places::FIGURES, &["ledger"]),
];

const fn sign(
    route: Route,
    href: &'static str,
    name: &'static str,
    leaves: &'static [&'static str],
) -> Sign {
    Sign {
        route,
        href,
        name,
        leaves,
    }
}

impl Route {
    /// The places in a case, in the order a newcomer takes them.
    pub const PLACES: [Self; 5] = [
        Self::Piece,
        Self::Look,
        Self::Condition,
        Self::Money,
        Self::Counsel,
    ];

    /// What else there is for a case, once somebody wants to know more.
    pub const MORE: [Self; 6] = [
        Self::Treatments,
        Self::Closer,
        Self::Bench,
        Self::Sheet(Whom::Client),
        Self::Done,
        Self::Figures,
    ];

    fn sign(self) -> &'static Sign {
        let known = SIGNS.iter().find(|sign| sign.route == self);
        known.unwrap_or(&SIGNS[0])
    }

    /// Whether it is about the open piece rather than about all of them.
    #[must_use]
    pub fn is_of_a_piece(self) -> bool {
        !matches!(self, Self::Shelf | Self::Plan)
    }

    /// The address, for a link.
    #[must_use]
    pub fn href(self) -> &'static str {
        self.sign().href
    }

    /// The name of the screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.sign().name
    }

    /// The pages of the second program that stand on the screen.
    #[must_use]
    pub fn leaves(self) -> &'static [&'static str] {
        self.sign().leaves
    }

    /// The screen an address names; the shelf when it names none.
    #[must_use]
    pub fn parse(hash: &str) -> Self {
        let hash = hash.trim_end_matches('/');
        let known = SIGNS.iter().find(|sign| sign.href == hash);
        known.map_or(Self::Shelf, |sign| sign.route)
    }
}

impl Whom {
    /// Everybody a sheet can be for.
    pub const ALL: [Self; 3] = [Self::Client, Self::Buyer, Self::File];

    /// In words, and what such a sheet is.
    #[must_use]
    pub fn words(self) -> [&'static str; 2] {
        match self {
            Self::Client => sheet::CLIENT,
            Self::Buyer => sheet::BUYER,
            Self::File => sheet::FILE,
        }
    }

    /// The names under which the second program writes it out: for a letter, and as a page.
    #[must_use]
    pub fn files(self) -> [&'static str; 2] {
        match self {
            Self::Client => ["client.md", "client.html"],
            Self::Buyer => ["buyer.md", "buyer.html"],
            Self::File => ["file.md", "file.html"],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_round_trip() {
        for sign in &SIGNS {
            assert_eq!(Route::parse(sign.route.href()), sign.route);
            assert!(!sign.name.is_empty());
        }
        for route in Route::PLACES.into_iter().chain(Route::MORE) {
            assert_eq!(route.sign().route, route, "every screen has its sign");
        }
        for hash in ["", "#", "#/", "#/nowhere", "look"] {
            assert_eq!(Route::parse(hash), Route::Shelf, "{hash}");
        }
        assert_eq!(Route::parse("#/look/"), Route::Look);
    }
}
