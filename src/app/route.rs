//! The screens and their addresses. The part after `#` is the whole route, so the built site works from any
//! folder.

use leavewell_model::ledger::FindingId;
use leavewell_model::road::{Damage, RoadQuestion};
use leavewell_pages::PageName;
use leavewell_pages::sheet_text::Recipient;
use leavewell_worker::ask::Ask;

use super::wording::{places, road, stock};

/// A screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Route {
    /// All pieces on this device.
    #[default]
    Shelf,
    /// A question of the owner's road.
    Road(RoadQuestion),
    /// Which pieces to work on, within a budget of money and hours.
    Plan,
    /// What the program does, with one piece from start to finish.
    Guide,
    /// A table from a spreadsheet, to be taken in.
    StockTable,
    /// Labels to print.
    Labels,
    /// The stock list to print.
    StockList,
    /// What the closed pieces teach, and how well the program has said.
    Learning,
    /// What the piece is and what the owner wants.
    Piece,
    /// Findings.
    Look,
    /// Condition by part.
    Condition,
    /// Value and prices.
    Money,
    /// The advice.
    Counsel,
    /// Every treatment, with the rules' verdict on it.
    Treatments,
    /// A closer look at the answer: decision trees, the value of information, risk.
    Closer,
    /// Workshop sums.
    Bench,
    /// A sheet for a client, a buyer or the file.
    Sheet(Recipient),
    /// The record of work done.
    Done,
    /// Every figure of the ledger.
    Figures,
}

/// The properties of a screen.
struct Sign {
    route: Route,
    href: &'static str,
    name: &'static str,
    /// What the screen requests from the worker besides the report.
    asks: &'static [Ask],
}

const SIGNS: [Sign; 21] = [
    sign(Route::Shelf, "#/", places::SHELF, &[]),
    sign(Route::Plan, "#/plan", places::PLAN, &[]),
    sign(Route::Learning, "#/learning", places::LEARNING, &[]),
    sign(Route::Guide, "#/guide", places::GUIDE, &[]),
    sign(Route::StockTable, "#/stock/table", stock::TABLE_TITLE, &[]),
    sign(Route::Labels, "#/stock/labels", stock::LABELS_TITLE, &[]),
    sign(Route::StockList, "#/stock/list", stock::LIST_TITLE, &[]),
    sign(Route::Piece, "#/piece", places::PIECE, &[]),
    sign(
        Route::Look,
        "#/look",
        places::LOOK,
        &[Ask::Page(PageName::Why), Ask::Page(PageName::Measures)],
    ),
    sign(
        Route::Condition,
        "#/condition",
        places::CONDITION,
        &[
            Ask::Page(PageName::Places),
            Ask::Page(PageName::Bleed),
            Ask::Page(PageName::Care),
            Ask::Page(PageName::Record),
        ],
    ),
    sign(
        Route::Money,
        "#/money",
        places::MONEY,
        &[Ask::Page(PageName::Worth)],
    ),
    sign(
        Route::Counsel,
        "#/counsel",
        places::COUNSEL,
        &[Ask::Changes, Ask::Page(PageName::Trace)],
    ),
    sign(
        Route::Treatments,
        "#/treatments",
        places::TREATMENTS,
        &[Ask::Page(PageName::Catalogue)],
    ),
    sign(
        Route::Closer,
        "#/closer",
        places::CLOSER,
        &[Ask::Page(PageName::Closer)],
    ),
    sign(
        Route::Bench,
        "#/bench",
        places::BENCH,
        &[
            Ask::Page(PageName::Bench),
            Ask::Page(PageName::Measures),
            Ask::Page(PageName::Bleed),
        ],
    ),
    sign(
        Route::Sheet(Recipient::Client),
        "#/sheet/client",
        places::SHEET,
        &[Ask::Page(PageName::SheetForClient)],
    ),
    sign(
        Route::Sheet(Recipient::Buyer),
        "#/sheet/buyer",
        places::SHEET,
        &[Ask::Page(PageName::SheetForBuyer)],
    ),
    sign(
        Route::Sheet(Recipient::File),
        "#/sheet/file",
        places::SHEET,
        &[Ask::Page(PageName::SheetForFile)],
    ),
    sign(
        Route::Sheet(Recipient::Conservation),
        "#/sheet/conservation",
        places::SHEET,
        &[Ask::Page(PageName::SheetForConservation)],
    ),
    sign(
        Route::Done,
        "#/done",
        places::DONE,
        &[Ask::Page(PageName::Done)],
    ),
    sign(
        Route::Figures,
        "#/figures",
        places::FIGURES,
        &[Ask::Page(PageName::Ledger)],
    ),
];

/// The address of every question of the road.
const ROAD: [(RoadQuestion, &str); 23] = [
    (RoadQuestion::Form, "#/road/form"),
    (RoadQuestion::Letters, "#/road/letters"),
    (RoadQuestion::Metal, "#/road/bare-metal"),
    (RoadQuestion::Magnet, "#/road/magnet"),
    (RoadQuestion::BareWhere, "#/road/where-bare"),
    (RoadQuestion::BareAmount, "#/road/how-bare"),
    (RoadQuestion::Trouble, "#/road/damage"),
    (
        RoadQuestion::TroubleWhere(Damage::Missing),
        "#/road/missing",
    ),
    (RoadQuestion::TroubleWhere(Damage::Loose), "#/road/loose"),
    (
        RoadQuestion::TroubleWhere(Damage::Leaking),
        "#/road/leaking",
    ),
    (RoadQuestion::TroubleWhere(Damage::Dented), "#/road/dented"),
    (RoadQuestion::TroubleWhere(Damage::Repair), "#/road/repair"),
    (RoadQuestion::More, "#/road/more-damage"),
    (RoadQuestion::Use, "#/road/use"),
    (RoadQuestion::Offer, "#/road/offer"),
    (RoadQuestion::Sum, "#/road/price"),
    (RoadQuestion::Look(FindingId::C01), "#/road/seam"),
    (RoadQuestion::Look(FindingId::C07), "#/road/silver-edge"),
    (RoadQuestion::Look(FindingId::C06), "#/road/folded-edge"),
    (RoadQuestion::Look(FindingId::C08), "#/road/layers"),
    (RoadQuestion::Look(FindingId::S10), "#/road/old-wear"),
    (RoadQuestion::Look(FindingId::S22), "#/road/peeling"),
    (RoadQuestion::Look(FindingId::S17), "#/road/never-black"),
];

const fn sign(route: Route, href: &'static str, name: &'static str, asks: &'static [Ask]) -> Sign {
    Sign {
        route,
        href,
        name,
        asks,
    }
}

impl Route {
    /// The places of a piece, in the order a newcomer visits them, each with its screens.
    pub const PLACES: [(&'static str, &'static [Self]); 5] = [
        (places::PIECE, &[Self::Piece]),
        (places::LOOK, &[Self::Look, Self::Condition]),
        (
            places::ADVICE,
            &[Self::Counsel, Self::Treatments, Self::Bench],
        ),
        (places::MONEY, &[Self::Money, Self::Closer, Self::Figures]),
        (
            places::PAPERS,
            &[Self::Sheet(Recipient::Client), Self::Done],
        ),
    ];

    fn sign(self) -> &'static Sign {
        let known = SIGNS.iter().find(|sign| sign.route == self);
        known.unwrap_or(&SIGNS[0])
    }

    /// Whether the screen is about the open piece rather than the whole shelf.
    #[must_use]
    pub fn is_of_a_piece(self) -> bool {
        !matches!(
            self,
            Self::Shelf
                | Self::Plan
                | Self::Learning
                | Self::Guide
                | Self::StockTable
                | Self::Labels
                | Self::StockList
        )
    }

    /// Whether the screen is a question of the owner's road.
    #[must_use]
    pub fn is_of_the_road(self) -> bool {
        matches!(self, Self::Road(_))
    }

    /// The address, for use in a link.
    #[must_use]
    pub fn href(self) -> &'static str {
        if let Self::Road(question) = self {
            let known = ROAD.iter().find(|(asked, _)| *asked == question);
            return known.unwrap_or(&ROAD[0]).1;
        }
        self.sign().href
    }

    /// The name of the screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        if let Self::Road(question) = self {
            return road::question(question)[0];
        }
        self.sign().name
    }

    /// What the screen requests from the worker besides the report.
    #[must_use]
    pub fn asks(self) -> &'static [Ask] {
        if self.is_of_the_road() {
            return &[];
        }
        self.sign().asks
    }

    /// The screen an address names, or the shelf if it names none.
    #[must_use]
    pub fn parse(hash: &str) -> Self {
        let hash = hash.trim_end_matches('/');
        let known = SIGNS.iter().find(|sign| sign.href == hash);
        let asked = ROAD.iter().find(|(_, href)| *href == hash);
        let asked = asked.map(|(question, _)| Self::Road(*question));
        known.map(|sign| sign.route).or(asked).unwrap_or_default()
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
        let mut titles = Vec::new();
        for (question, href) in ROAD {
            assert_eq!(Route::parse(href), Route::Road(question));
            assert_eq!(Route::Road(question).href(), href);
            assert!(!titles.contains(&Route::Road(question).name()), "{href}");
            titles.push(Route::Road(question).name());
        }
        for id in RoadQuestion::LOOKS {
            let route = Route::Road(RoadQuestion::Look(id));
            assert_eq!(Route::parse(route.href()), route, "{id} has no address");
        }
        let placed: Vec<Route> = Route::PLACES
            .iter()
            .flat_map(|(_, all)| *all)
            .copied()
            .collect();
        for sign in &SIGNS {
            let named = placed.iter().any(|route| route.name() == sign.name);
            assert_eq!(named, sign.route.is_of_a_piece(), "{}", sign.name);
        }
        for hash in ["", "#", "#/", "#/nowhere", "look"] {
            assert_eq!(Route::parse(hash), Route::Shelf, "{hash}");
        }
        assert_eq!(Route::parse("#/look/"), Route::Look);
    }
}
