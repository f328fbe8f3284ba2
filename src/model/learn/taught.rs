//! What all closed pieces together teach: the figures they move, and which pieces move them most.

use std::collections::BTreeMap;

use super::evidence::{Closing, PieceEvidence, Scatter, Topic};
use super::fees::taught_fees;
use super::shift::{Shift, ShiftFamily, precision};
use super::solver::{Fit, FitSetup, Observation, ROUNDS, Tails, fit};
use super::student4::WIDER;
use crate::ledger::{FigureId, Ledger};
use crate::maths::probability;
use crate::record::{TaughtFigure, TaughtFigures};
use crate::terms::ShortSort;

/// The fit of one topic.
#[derive(Clone, Debug)]
pub struct Learnt {
    /// The shifts that evidence bears on.
    pub shifts: Vec<Shift>,
    /// How many pieces tell something.
    pub pieces: usize,
    fit: Fit,
    /// For each observation, the key of its piece.
    of: Vec<String>,
    observations: Vec<Observation>,
}

/// A prediction in ln: a t with four degrees of freedom, and the normal law that agrees with it in the band
/// of 80 in 100.
///
/// The t is for judging: a few outliers do not pull a score or a test of its middle. Bands are read off the
/// normal, the law of every range in the ledger. Bands of the t would be too narrow in the middle: fitted to
/// bills that scatter normally but for a few outliers, its band of 50 in 100 holds 45 (computed,
/// `tests/learning_simulation.rs`).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PredictedLn {
    /// Its middle.
    pub at: f64,
    /// Its scale.
    pub scale: f64,
}

impl PredictedLn {
    /// How far `y` lies from the middle, in scales of the t.
    #[must_use]
    pub fn deviate(self, y: f64) -> f64 {
        (y - self.at) / self.scale
    }

    /// The share of the bands' law below `y`, 0 to 1.
    #[must_use]
    pub fn share_below(self, y: f64) -> f64 {
        probability(self.deviate(y) / WIDER)
    }
}

/// Fits one topic to what closed pieces tell.
#[must_use]
pub fn learn(topic: Topic, evidence: &[PieceEvidence]) -> Learnt {
    let seen = || {
        evidence.iter().flat_map(|one| {
            let seen = one.seen.iter().filter(|seen| seen.topic == topic);
            seen.map(|seen| (one.id.as_str(), seen))
        })
    };
    let mut families: Vec<ShiftFamily> = seen()
        .flat_map(|(_, seen)| seen.row.iter().map(|(shift, _)| shift.family()))
        .collect();
    families.order_by(Ord::cmp);
    families.dedup();
    let mut shifts = Shift::all();
    shifts.retain(|shift| families.binary_search(&shift.family()).is_ok());
    let place = |shift: Shift| shifts.binary_search(&shift).ok();
    let observations: Vec<Observation> = seen()
        .map(|(_, seen)| Observation {
            row: seen
                .row
                .iter()
                .filter_map(|(shift, x)| Some((place(*shift)?, *x)))
                .collect(),
            y: seen.y,
            sd: seen.sd,
            group: seen.scatter as usize,
            weight: seen.weight,
            censored: seen.censored,
        })
        .collect();
    let of: Vec<String> = seen().map(|(id, _)| id.to_owned()).collect();
    let mut pieces = of.clone();
    pieces.dedup();
    let before = FitSetup {
        precision: precision(&shifts),
        shifts: shifts.len(),
        tails: Tails::Student,
        kappa_weight: Ledger::standard().value(FigureId::LEARN_SCATTER_WEIGHT),
        groups: Scatter::ALL.len(),
        rounds: ROUNDS,
    };
    Learnt {
        pieces: pieces.len(),
        fit: fit(&before, &observations),
        of,
        observations,
        shifts,
    }
}

impl Learnt {
    fn place(&self, shift: Shift) -> Option<usize> {
        self.shifts.binary_search(&shift).ok()
    }

    /// Where a shift stands, and its standard deviation: as before any evidence where there is none.
    #[must_use]
    pub fn shift(&self, shift: Shift) -> (f64, f64) {
        match self.place(shift) {
            Some(at) => (self.fit.mean[at], self.fit.covariance.at(at, at).sqrt()),
            None => (0.0, shift.prior_sd()),
        }
    }

    /// The squared factor on the scatter of a group.
    #[must_use]
    pub fn scatter(&self, group: Scatter) -> f64 {
        self.fit.kappa2[group as usize]
    }

    /// The largest change of a shift in the last round of the fit.
    #[must_use]
    pub fn last_step(&self) -> f64 {
        self.fit.last_step
    }

    /// What is predicted of something that rests on these shifts, with this scatter.
    #[must_use]
    pub fn predict(&self, row: &[(Shift, f64)], sd: f64, group: Scatter) -> PredictedLn {
        let mut known = Vec::new();
        let mut rest = 0.0;
        for (shift, x) in row {
            match self.place(*shift) {
                Some(at) => known.push((at, *x)),
                None => rest += x * shift.prior_sd() * x * shift.prior_sd(),
            }
        }
        let at = known.iter().map(|(at, x)| x * self.fit.mean[*at]).sum();
        let variance = self.scatter(group) * sd * sd + self.fit.covariance.quadratic(&known) + rest;
        PredictedLn {
            at,
            scale: variance.sqrt() / WIDER,
        }
    }

    /// A shift further from its shipped middle than its range allows, with the chance of being so far out
    /// by luck: `None` where evidence has not moved it.
    #[must_use]
    pub fn outside(&self, shift: Shift) -> Option<f64> {
        let (mean, sd) = self.shift(shift);
        let learnt = shift.prior_sd() * shift.prior_sd() - sd * sd;
        (learnt > 0.0 && self.place(shift).is_some()).then(|| mean.abs() / learnt.sqrt())
    }

    /// What the figure is taught: its range moved and narrowed, by the shift that moves it.
    fn figure(&self, shift: Shift, id: FigureId) -> TaughtFigure {
        let ledger = Ledger::standard();
        let shipped = ledger.figure(id);
        let (mean, sd) = self.shift(shift);
        let before = shift.prior_sd();
        // The range of a bill or of hours is that of one job.
        let narrower = if shift.is_of_work() {
            let group = match shift {
                Shift::Hours(_) => Scatter::Hours,
                Shift::Overrun => Scatter::Quote,
                _ => Scatter::Bill,
            };
            let job = shift.job_sd();
            let one_job = self.predict(&[(shift, 1.0)], job, group).scale * WIDER;
            one_job / (before * before + job * job).sqrt()
        } else {
            (sd / before).max(ledger.value(FigureId::LEARN_NARROWEST))
        };
        let times = libm::exp(mean);
        let end = |end: f64| times * shipped.value * libm::pow(end / shipped.value, narrower);
        TaughtFigure {
            figure: id,
            low: end(shipped.low),
            value: times * shipped.value,
            high: end(shipped.high),
        }
    }

    /// The pieces that pull a shift most, with how far it would move without each, furthest first.
    #[must_use]
    pub fn pulls(&self, shift: Shift) -> Vec<(String, f64)> {
        let Some(at) = self.place(shift) else {
            return Vec::new();
        };
        let mut by_piece: BTreeMap<&str, f64> = BTreeMap::new();
        for ((id, o), pull) in self.of.iter().zip(&self.observations).zip(&self.fit.pulls) {
            *by_piece.entry(id).or_default() += self.fit.without(at, &o.row, *pull);
        }
        let mut pulls: Vec<(String, f64)> = by_piece
            .into_iter()
            .map(|(id, pull)| (id.to_owned(), pull))
            .collect();
        pulls.order_by(|a, b| b.1.abs().total_cmp(&a.1.abs()));
        pulls
    }

    /// How many pieces tell something of this very shift.
    #[must_use]
    pub fn pieces_on(&self, shift: Shift) -> usize {
        let Some(at) = self.place(shift) else {
            return 0;
        };
        let rows = self.of.iter().zip(&self.observations);
        let mut pieces: Vec<&String> = rows
            .filter(|(_, o)| o.row.iter().any(|(place, x)| *place == at && *x != 0.0))
            .map(|(id, _)| id)
            .collect();
        pieces.dedup();
        pieces.len()
    }
}

/// A shift in ln as a change in per cent.
#[must_use]
pub fn in_percent(shift: f64) -> f64 {
    100.0 * libm::expm1(shift)
}

/// What is taught when learning is turned on for prices, and for bills and hours.
#[derive(Clone, Debug)]
pub struct Teaching {
    /// The fit of prices.
    pub prices: Learnt,
    /// The fit of bills.
    pub bills: Learnt,
    /// The fit of hours.
    pub hours: Learnt,
    /// Fees, which go with prices.
    pub fees: Vec<TaughtFigure>,
}

/// One taught figure with the shift behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaughtBy {
    /// The shift.
    pub shift: Shift,
    /// What the figure would be.
    pub figure: TaughtFigure,
}

impl Teaching {
    /// Fits every topic.
    #[must_use]
    pub fn new(evidence: &[PieceEvidence]) -> Self {
        Self {
            prices: learn(Topic::Prices, evidence),
            bills: learn(Topic::Bills, evidence),
            hours: learn(Topic::Hours, evidence),
            fees: Vec::new(),
        }
    }

    /// The same with the fees that these pieces tell.
    #[must_use]
    pub fn with_fees(self, closings: &[Closing]) -> Self {
        Self {
            fees: taught_fees(closings),
            ..self
        }
    }

    /// The fit of a topic.
    #[must_use]
    pub fn of(&self, topic: Topic) -> &Learnt {
        match topic {
            Topic::Prices => &self.prices,
            Topic::Bills => &self.bills,
            Topic::Hours => &self.hours,
        }
    }

    /// Every figure the evidence of a topic moves, in order.
    #[must_use]
    pub fn figures(&self, topic: Topic) -> Vec<TaughtBy> {
        let learnt = self.of(topic);
        let mut taught: Vec<TaughtBy> = Vec::new();
        for shift in &learnt.shifts {
            for id in shift.figures() {
                taught.push(TaughtBy {
                    shift: *shift,
                    figure: learnt.figure(*shift, id),
                });
            }
        }
        if topic == Topic::Prices && learnt.pieces > 0 {
            taught.extend(self.spreads());
        }
        taught.order_by_key(|taught| taught.figure.figure);
        taught
    }

    /// The scatter of sales and of estimates, and of prices of like pieces.
    fn spreads(&self) -> Vec<TaughtBy> {
        let ledger = Ledger::standard();
        let kappa = self.prices.scatter(Scatter::Guess).sqrt();
        let comps = self.prices.scatter(Scatter::Comparables);
        let scaled = |shift: Shift, id: FigureId, of: &dyn Fn(f64) -> f64| {
            let shipped = ledger.figure(id);
            TaughtBy {
                shift,
                figure: TaughtFigure {
                    figure: id,
                    low: of(shipped.low),
                    value: of(shipped.value),
                    high: of(shipped.high),
                },
            }
        };
        let has = |shift: fn(&Shift) -> bool| self.prices.shifts.iter().find(|s| shift(s)).copied();
        let mut spreads = Vec::new();
        if let Some(shift) = has(|s| matches!(s, Shift::Guess(_))) {
            spreads.push(scaled(shift, FigureId::VALUE_SALE_SD, &|x| x * kappa));
            let spread = |x: f64| libm::exp(kappa * libm::log(x));
            spreads.push(scaled(shift, FigureId::VALUE_SINGLE_GUESS_SPREAD, &spread));
        }
        if let Some(shift) = has(|s| matches!(s, Shift::Comparables)) {
            spreads.push(scaled(shift, FigureId::VALUE_PRIOR_BETA, &|x| x * comps));
        }
        spreads
    }

    /// The layer to lay over the shipped figures.
    #[must_use]
    pub fn layer(&self, on: TurnedOn) -> TaughtFigures {
        let mut figures: Vec<TaughtFigure> = Vec::new();
        let topics = [
            (on.prices, &[Topic::Prices][..]),
            (on.works, &[Topic::Bills, Topic::Hours][..]),
        ];
        let mut pieces = 0;
        for (_, topics) in topics.iter().filter(|(on, _)| *on) {
            for topic in *topics {
                figures.extend(self.figures(*topic).iter().map(|taught| taught.figure));
                pieces = pieces.max(self.of(*topic).pieces);
            }
        }
        if on.prices {
            figures.extend(&self.fees);
            pieces = pieces.max(usize::from(!self.fees.is_empty()));
        }
        TaughtFigures::new(figures, pieces)
    }
}

/// What learning is turned on for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct TurnedOn {
    /// Prices.
    pub prices: bool,
    /// Bills and hours.
    pub works: bool,
}
