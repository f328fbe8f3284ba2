//! A case: everything recorded about one piece, in typed and valid form.
//!
//! Two stages. A [`Draft`] is the file as typed and may hold anything; reading it gives a [`Case`],
//! valid by construction, and a list of [`Problem`]s for what could not be used. Invariant: reading
//! never fails and never drops what the draft holds; what cannot be used counts as unknown.

mod circumstances;
mod closed;
mod copy;
pub mod difference;
mod draft;
mod enough;
mod ledger_of;
mod looks;
mod measures;
mod number;
mod open_error;
mod own_figures;
mod pieces;
mod predicted;
mod reading;
mod sale_law;
pub mod schema;
pub mod shelf_file;
mod size;
mod spot;
mod stock;
mod taught;
mod weighing;
mod work;

use serde::{Deserialize, Serialize};

pub use crate::terms::{
    BleedWord, BuyerSort, CameFrom, Corrosion, Covers, Currency, Date, Dents, Doer, Ending,
    Engraving, Fill, FillState, Form, Gilding, Goal, Instrument, Interior, Joint, JointClass,
    Lacquer, Lead, LengthUnit, Liner, Loss, LotRule, Material, MaterialUsed, Method, Mount,
    PartName, PredictedWhen, PriceBasis, Relation, Repair, Replaced, Route, Seen, SellAs, SoldAs,
    Split, SpotFault, StockStatus, Tarnish, TestKind, Tester, UnsoldAt, WeightUnit, Word,
};
pub use circumstances::{Circumstances, QUESTIONS};
pub use closed::{Closed, OwnSale, Statement, UnsoldPrice};
pub use draft::Draft;
pub use draft::typed_text;
pub use enough::{bears_on_hazards, is_enough_to_advise};
pub use ledger_of::ledger_of;
pub use looks::put_looks;
pub use measures::{Density, Iacs, Measures, Spot, Xrf};
pub use number::NumberKind;
pub use open_error::{CASE_FORMAT, CASE_VERSION, MAX_BYTES, MAX_DEPTH, MAX_FINDINGS, OpenError};
pub use pieces::{Each, Lot, MOST_PIECES, Pieces};
pub use predicted::{Predicted, PredictedFigures, PredictedOf};
pub use reading::hundredths;
pub use reading::{COMPARED_KINDS, FLAWS};
pub use size::{put_size, size_text};
pub use spot::FaultSpot;
pub use stock::{StockEntry, put_status};
pub use taught::{TaughtFigure, TaughtFigures, is_teachable};
pub use weighing::{Weighing, water_density};
pub use work::{Asked, Done, Proposal, ProposalStep, Quote, Test};

use crate::ledger::{FindingId, signs};
use crate::terms::{BUYERS, Kind, Treatment};

/// Why a file was not opened, as JSON.
#[derive(serde::Serialize)]
pub(crate) struct Refused {
    pub(crate) refused: Problem,
}

/// Something in a draft that could not be used, and what to do about it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Problem {
    /// The field, as a path in the file: `parts[0].bleed`.
    pub field: String,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub remedy: String,
}

/// Everything known about one piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Case {
    /// The piece itself.
    pub piece: Piece,
    /// What was looked for, and the answer.
    pub findings: Vec<Answer>,
    /// What is struck on the piece, as read, in the order entered.
    pub marks: Vec<StruckMark>,
    /// The instruments that the person has at hand.
    pub instruments: Vec<Instrument>,
    /// Readings with a number.
    pub measures: Measures,
    /// Condition by part; a part not listed was not looked at. Where several pieces differ, a part has one
    /// entry per state; [`Part::on`] lists the pieces in it.
    pub parts: Vec<Part>,
    /// How many pieces the record is of, and what they are to each other.
    pub pieces: Pieces,
    /// The lot it was bought in.
    pub lot: Lot,
    /// What is wanted.
    pub aim: Aim,
    /// What it might fetch.
    pub market: Market,
    /// Sales of like pieces that count, in the order entered.
    pub comparables: Vec<Comparable>,
    /// Faults and features of the whole piece that are named by a row of condition factors, each
    /// once. A fault recorded on a part (a loss, a replaced part, softened engraving) is among them.
    pub flaws: Vec<&'static str>,
    /// Prices asked for treatments.
    pub quotes: Vec<Quote>,
    /// Tests for lead and their results, the laboratory's figures of the bench among them.
    pub tests: Vec<Test>,
    /// Work already done to the piece, in the order of the file.
    pub done: Vec<Done>,
    /// The person's own plan of work.
    pub proposal: Proposal,
    /// How it ended; nothing known while it is open.
    pub closed: Closed,
    /// What the program expected when work was agreed and when the piece was offered, each once.
    pub predicted: Vec<Predicted>,
    /// Answers that only the rules ask for.
    pub circumstances: Circumstances,
    /// What the owner has agreed to.
    pub consents: Consents,
    /// The person's own figures, one entry a figure.
    pub overrides: Vec<Override>,
    /// Its entry in the stock book.
    pub stock: StockEntry,
    /// What closed pieces taught; passed in by the caller, never saved.
    pub taught: TaughtFigures,
    /// The day it is to be looked at again.
    pub next_look: Option<Date>,
    /// The day it was looked at.
    pub looked_on: Option<Date>,
    /// The day the question is asked; the shell supplies it, the model has no clock.
    pub asked_on: Option<Date>,
}

/// What kind of thing it is, and its recorded history.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Piece {
    /// What the owner calls it.
    pub name: String,
    /// Its form.
    pub form: Option<Form>,
    /// Earliest year of making, if given.
    pub from_year: Option<u16>,
    /// Latest year of making, if given.
    pub to_year: Option<u16>,
    /// Height in millimetres.
    pub height_mm: Option<f64>,
    /// Length in millimetres.
    pub length_mm: Option<f64>,
    /// Width in millimetres.
    pub width_mm: Option<f64>,
    /// Weight in grams, with everything that is fixed to it.
    pub weight_g: Option<f64>,
    /// The unit lengths are shown in; millimetres by default.
    pub length_unit: Option<LengthUnit>,
    /// The unit weights are shown in; grams by default.
    pub weight_unit: Option<WeightUnit>,
    /// Soldered joints that hold liquid; if not recorded, the form's default.
    pub soldered_vessel: Option<bool>,
    /// How it came to its owner, if recorded.
    pub came_from: Option<CameFrom>,
    /// Rare, early or by a sought maker, in the person's judgement.
    pub rare: bool,
    /// Its history is documented.
    pub documented: bool,
    /// The numbers of the photographs of the whole piece.
    pub photos: Vec<String>,
}

/// One answered finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// What was looked for.
    pub id: FindingId,
    /// The answer.
    pub seen: Seen,
    /// The part it was seen on; the whole piece if not given.
    pub part: Option<PartName>,
}

/// A mark at one place, as the person read it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StruckMark {
    /// The letters, words and numbers as typed, without the space round them; never empty.
    pub text: String,
    /// The part that carries it; `None` if not given.
    pub part: Option<PartName>,
    /// The findings that the person confirmed from it.
    pub findings: Vec<FindingId>,
}

/// How much base metal shows on a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bleed {
    /// In words.
    Word(BleedWord),
    /// As a fraction of the part's area, judged by eye.
    Fraction(f64),
    /// As a fraction with its interval, from a point count.
    Counted {
        /// Lower end of the interval.
        low: f64,
        /// Best estimate.
        likely: f64,
        /// Upper end.
        high: f64,
    },
}

/// One measured thickness of the silver on a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// How it was measured.
    pub method: Method,
    /// The thickness read, micrometres, 0 or more.
    pub um: f64,
    /// Reported standard error, micrometres; the method's default if absent.
    pub error_um: Option<f64>,
}

/// The condition of one part. Everything may be unknown.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Which part.
    pub name: PartName,
    /// Numbers of the pieces it belongs to, from 1; empty if it belongs to all.
    pub on: Vec<u16>,
    /// Base metal showing.
    pub bleed: Option<Bleed>,
    /// In how many fields points were counted; 0 where the bare share was judged by eye.
    pub counted_fields: usize,
    /// Tarnish stage.
    pub tarnish: Option<Tarnish>,
    /// Joints.
    pub joint: Option<Joint>,
    /// A second state of its joints, if a placed fault differs from `joint`.
    pub other_joint: Option<Joint>,
    /// Lead.
    pub lead: Option<Lead>,
    /// Dents.
    pub dents: Option<Dents>,
    /// Lining.
    pub interior: Option<Interior>,
    /// Active corrosion.
    pub corrosion: Option<Corrosion>,
    /// Filling.
    pub fill: Option<Fill>,
    /// Distance from its faulty joint to the nearest other soft joint or lead fill, millimetres.
    pub joint_distance_mm: Option<f64>,
    /// Measured thicknesses of its silver.
    pub readings: Vec<Reading>,
    /// Splits and cracks.
    pub split: Option<Split>,
    /// Missing metal.
    pub loss: Option<Loss>,
    /// A stamped mount backed with soft metal.
    pub mount: Option<Mount>,
    /// A clear coating.
    pub lacquer: Option<Lacquer>,
    /// Whether it is the part the piece was made with.
    pub replaced: Option<Replaced>,
    /// How crisp its engraving and chasing are.
    pub engraving: Option<Engraving>,
    /// Whether an old repair on it holds.
    pub repair: Option<Repair>,
    /// The state of its filling.
    pub fill_state: Option<FillState>,
    /// Whether it is hollow.
    pub hollow: Option<bool>,
    /// A loose liner in it.
    pub liner: Option<Liner>,
    /// What it is made of; `None` when not recorded or not known.
    pub material: Option<Material>,
    /// The state of its gilding.
    pub gilding: Option<Gilding>,
    /// Whether candle wax is on it.
    pub wax: Option<bool>,
    /// Faults shown at a place, each counted in the fields above as well.
    pub spots: Vec<FaultSpot>,
    /// The numbers of its photographs.
    pub photos: Vec<String>,
}

impl Part {
    /// A part of which nothing is known.
    #[must_use]
    pub fn unknown(name: PartName) -> Self {
        Self {
            name,
            on: Vec::new(),
            bleed: None,
            counted_fields: 0,
            tarnish: None,
            joint: None,
            other_joint: None,
            lead: None,
            dents: None,
            interior: None,
            corrosion: None,
            fill: None,
            joint_distance_mm: None,
            readings: Vec::new(),
            split: None,
            loss: None,
            mount: None,
            lacquer: None,
            replaced: None,
            engraving: None,
            repair: None,
            fill_state: None,
            hollow: None,
            liner: None,
            material: None,
            gilding: None,
            wax: None,
            spots: Vec::new(),
            photos: Vec::new(),
        }
    }
}

impl Part {
    /// Whether it is metal; the default if no material is recorded.
    #[must_use]
    pub fn is_metal(&self) -> bool {
        matches!(
            self.material,
            None | Some(Material::Metal | Material::Unknown)
        )
    }

    /// Whether the part's record amounts to this fault of the whole piece.
    #[must_use]
    pub fn has_flaw(&self, id: &str) -> bool {
        match id {
            "part_missing_minor" => self.loss == Some(Loss::Small),
            "part_missing_major" => self.loss == Some(Loss::Large),
            "part_replaced" => self.replaced == Some(Replaced::Yes),
            "detail_softened" => matches!(
                self.engraving,
                Some(Engraving::Softened | Engraving::Faint | Engraving::Gone)
            ),
            _ => false,
        }
    }
}

/// What is wanted of the piece and by whom.
// Each is a separate question, hence a separate bool.
#[allow(clippy::struct_excessive_bools)]
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Aim {
    /// The goal; if not given, keep and show.
    pub goal: Option<Goal>,
    /// Food or drink is to be served from it.
    pub food: bool,
    /// Food or drink would stand in it for hours.
    pub store_food: bool,
    /// A child, or someone pregnant or breast-feeding, lives where it is kept or would use it.
    pub household_child_or_pregnant: bool,
    /// Who would do the work; the owner for cleaning and a workshop for the rest if not given.
    pub doer: Option<Doer>,
    /// Who would do which work, where a proposal says so; before `doer`.
    pub doer_of: Vec<(Treatment, Doer)>,
    /// How much each attribute counts, in points of 100, in the order of [`Aim::WEIGHED`].
    pub weights: [Option<f64>; 5],
    /// What the person asked about, if anything.
    pub asked: Option<Asked>,
    /// Lead counts as present wherever it has not been ruled out, so that no test is needed first.
    pub assume_lead: bool,
    /// It is washed in a dishwasher.
    pub dishwasher: bool,
    /// It is kept in a damp place.
    pub damp: bool,
    /// The day by which a decision or a sale is due.
    pub until: Option<Date>,
    /// It is lent to a museum: nothing is done without the borrower's and a conservator's word.
    pub loan: bool,
}

impl Aim {
    /// Who would do this work, as far as it is recorded.
    #[must_use]
    pub fn who_does(&self, work: Treatment) -> Option<Doer> {
        let named = self.doer_of.iter().find(|(t, _)| *t == work);
        named.map(|(_, doer)| *doer).or(self.doer)
    }

    /// Ids of the attributes a keeper may weigh.
    pub const WEIGHED: [&'static str; 5] = [
        "originality",
        "fitness",
        "stability",
        "cost",
        "retreatability",
    ];

    /// The goal, with the default for a person who has not said.
    #[must_use]
    pub fn goal_or_default(&self) -> Goal {
        self.goal.unwrap_or(Goal::KeepShow)
    }
}

/// What an undamaged piece like it might fetch, in the case's currency.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Market {
    /// 1 in 10 would fetch less.
    pub low: Option<f64>,
    /// Median estimate.
    pub likely: Option<f64>,
    /// 1 in 10 would fetch more.
    pub high: Option<f64>,
    /// The currency.
    pub currency: Option<Currency>,
    /// The route.
    pub route: Option<Route>,
    /// Tax on a dealer's margin is to be taken off.
    pub margin_taxed: bool,
    /// The person's own terms, each with the figure it stands for.
    pub terms: Vec<(String, f64)>,
    /// The shares of buyers on every route, and on those where others buy; each of collectors, of those
    /// who show it and of those who use it. `None` for the usual shares.
    pub buyers: BuyersByRoute,
}

/// Who buys, by route: shares of collectors, of those who show it and of those who use it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BuyersByRoute {
    /// On every route that has no separate shares.
    pub anywhere: Option<[f64; 3]>,
    /// From a shop or a stand.
    pub in_shop: Option<[f64; 3]>,
    /// Privately.
    pub privately: Option<[f64; 3]>,
}

impl BuyersByRoute {
    /// The shares on this route.
    #[must_use]
    pub fn on(&self, route: Route) -> Option<[f64; 3]> {
        let own = match route {
            Route::Shop | Route::Fair => self.in_shop,
            Route::Private => self.privately,
            Route::Auction | Route::Trade => None,
        };
        own.or(self.anywhere)
    }
}

impl Market {
    /// The route it is sold by; an auction if none is given.
    #[must_use]
    pub fn route_or_usual(&self) -> Route {
        self.route.unwrap_or(Route::Auction)
    }

    /// Puts the buyers of a route into the terms, in place of any there.
    pub(crate) fn take_buyers_of(&mut self, route: Route) {
        self.terms
            .retain(|(figure, _)| !figure.starts_with("value.mix."));
        for (buyer, share) in self
            .buyers
            .on(route)
            .into_iter()
            .flat_map(|s| BUYERS.into_iter().zip(s))
        {
            for class in CLASSES {
                self.terms
                    .push((format!("value.mix.{class}.{buyer}"), share));
            }
        }
    }
}

/// The classes of pieces that the ledger has shares of buyers for.
const CLASSES: [&str; 7] = ["A1", "A2", "B", "C1", "C2", "C3", "C4"];

/// A sale, or an asking price, of a piece like it.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparable {
    /// Its place in the list of the file.
    pub place: usize,
    /// The price, more than nothing.
    pub price: f64,
    /// What sort of price that is; a hammer price if not given.
    pub sold_as: SoldAs,
    /// Years between the sale and the day the question is asked; `None` when either is unknown.
    pub age_years: Option<f64>,
    /// What it was; the same kind as the piece if not given.
    pub kind: Option<Kind>,
    /// Base metal showing; none if not given.
    pub bleed: Option<Bleed>,
    /// Tarnish stage.
    pub tarnish: Option<Tarnish>,
    /// Dents.
    pub dents: Option<Dents>,
    /// Joints.
    pub joint: Option<Joint>,
    /// How like the piece it is.
    pub similar: Similar,
}

/// How like the piece a comparable is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Similar {
    /// The same thing, or nearly.
    Close,
    /// Much alike.
    Fair,
    /// Only of the same sort.
    Loose,
    /// As a share, more than 0 and up to 1.
    Share(f64),
}

/// What the owner has agreed to or holds in writing.
#[allow(clippy::struct_excessive_bools)] // four separate agreements
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Consents {
    /// Accepts that original silver is lost.
    pub loss: bool,
    /// Photographs are taken first.
    pub photo: bool,
    /// The work will be disclosed at sale.
    pub disclose: bool,
    /// A conservator's written opinion is at hand.
    pub conservator_opinion: bool,
}

/// A person's own value for a figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Override {
    /// The figure's id.
    pub figure: String,
    /// The value.
    pub value: f64,
    /// Why.
    pub reason: String,
}

impl Case {
    /// The case as the buyers of a route see it; `None` where they are those it is weighed for anyway.
    #[must_use]
    pub fn as_sold(&self, route: Route) -> Option<Self> {
        let buyers = self.market.buyers;
        if buyers.on(route) == buyers.on(self.market.route_or_usual()) {
            return None;
        }
        let mut case = self.clone();
        case.market.take_buyers_of(route);
        Some(case)
    }

    /// The answer to a finding, seen before absent before not sure when parts differ.
    #[must_use]
    pub fn answer(&self, id: FindingId) -> Option<Seen> {
        self.findings
            .iter()
            .filter(|a| a.id == id)
            .map(|a| a.seen)
            .min()
    }

    /// True when the finding was seen on some part.
    #[must_use]
    pub fn has_seen(&self, id: FindingId) -> bool {
        self.answer(id) == Some(Seen::Yes)
    }

    /// True when any of these findings was seen on some part.
    #[must_use]
    pub fn has_seen_any(&self, ids: &[FindingId]) -> bool {
        ids.iter().any(|id| self.has_seen(*id))
    }

    /// True when it corrodes now: green or white powder or rust on a part, or rust seen where it is worn.
    #[must_use]
    pub fn corrodes(&self) -> bool {
        self.has_seen_any(&signs::RUST)
            || (self.parts.iter()).any(|p| p.corrosion.is_some_and(|c| c != Corrosion::None))
    }

    /// The record of a part, if it was looked at.
    #[must_use]
    pub fn part(&self, name: PartName) -> Option<&Part> {
        self.parts.iter().find(|p| p.name == name)
    }

    /// The quote for a treatment alone.
    #[must_use]
    pub fn quote(&self, treatment: Treatment) -> Option<&Quote> {
        self.quotes.iter().find(|q| q.treatments == [treatment])
    }

    /// The parts on which a fault of the whole piece is recorded; none where it was only ticked.
    #[must_use]
    pub fn flaw_parts(&self, id: &str) -> Vec<PartName> {
        let found = self.parts.iter().filter(|part| part.has_flaw(id));
        found.map(|part| part.name).collect()
    }

    /// True when the whole piece has this fault, ticked as such or recorded on a part: one fault
    /// either way.
    #[must_use]
    pub fn has_flaw(&self, id: &str) -> bool {
        self.flaws.contains(&id)
    }

    /// Whether it has soldered joints: as recorded, otherwise the form's default.
    #[must_use]
    pub fn is_soldered(&self) -> bool {
        self.piece
            .soldered_vessel
            .unwrap_or_else(|| self.piece.form.is_none_or(Form::usually_soldered))
    }
}
