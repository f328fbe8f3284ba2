//! The options that a piece offers to the planning of a whole shelf: what could be done with it, what that
//! gains, and what it uses of money and hours.

use serde::Serialize;
use serde_json::Value;

use super::advise::gentler;
use super::{Solved, sentences};
use crate::ledger::{FigureId, Ledger};
use crate::record::{Case, Currency, Goal, is_enough_to_advise};
use crate::terms::decimal;
use crate::treatment::Treatment;

/// The options of a piece. Leaving it as it is comes first.
#[derive(Clone, Debug, PartialEq, Serialize)]
// Four independent facts.
#[allow(clippy::struct_excessive_bools)]
pub struct Offer {
    /// The currency of all its amounts.
    pub currency: Currency,
    /// Whether a specialist should see the piece first.
    pub refer: bool,
    /// Whether a default value is used because no value was given.
    pub assumed: bool,
    /// Whether it is kept rather than sold, so that the gain of work is not money.
    pub kept: bool,
    /// Whether a child or a pregnant person lives in the household.
    pub child: bool,
    /// What could be done with it.
    pub choices: Vec<OfferedChoice>,
    /// The index of the advised choice.
    pub advised: usize,
}

/// One thing that could be done.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OfferedChoice {
    /// Treatment ids in order; empty for leaving it as it is.
    pub steps: Vec<Treatment>,
    /// In words.
    pub name: String,
    /// Its gain over leaving alone, in money; for a keeper, its worth by the weights of the aims.
    pub gain: f64,
    /// Mean cost.
    pub cost: f64,
    /// 90th percentile of the cost.
    pub cost_high: f64,
    /// Hours of work on the piece.
    pub hours: f64,
    /// How much choice it leaves for later, 0 to 1.
    pub keeps: f64,
}

impl Offer {
    /// Reads an offer from its serialised form; `None` for anything else.
    #[must_use]
    pub fn from_value(value: &Value) -> Option<Self> {
        let is = |field: &str| value[field] == true;
        let choices: Option<Vec<OfferedChoice>> = value["choices"]
            .as_array()?
            .iter()
            .map(OfferedChoice::from_value)
            .collect();
        let choices = choices.filter(|choices| !choices.is_empty())?;
        let advised = value["advised"]
            .as_u64()
            .and_then(|at| usize::try_from(at).ok())?;
        Some(Self {
            currency: Currency::parse(value["currency"].as_str()?)?,
            refer: is("refer"),
            assumed: is("assumed"),
            kept: is("kept"),
            child: is("child"),
            advised: advised.min(choices.len() - 1),
            choices,
        })
    }
}

impl OfferedChoice {
    fn from_value(value: &Value) -> Option<Self> {
        let number = |field: &str| decimal(value[field].as_number()?.as_str());
        Some(Self {
            steps: value["steps"]
                .as_array()?
                .iter()
                .filter_map(|step| Treatment::parse(step.as_str()?))
                .collect(),
            name: value["name"].as_str()?.to_owned(),
            gain: number("gain")?,
            cost: number("cost")?,
            cost_high: number("cost_high")?,
            hours: number("hours")?,
            keeps: number("keeps")?,
        })
    }

    /// Whether anything is done or bought at all.
    #[must_use]
    pub fn is_work(&self) -> bool {
        !self.steps.is_empty()
    }
}

/// Computes the options of a piece.
///
/// Only choices that the advice can support are listed: the advised course, and, of the courses that can be
/// advised and gain less than it but more than the noise over leaving alone, those for which no gentler
/// course comes within the noise at no greater cost in money and hours. A plan without limits therefore
/// follows the advice for each piece, and a limit never leads to a choice that the advice would not give.
#[must_use]
pub fn offer(solved: &Solved) -> Offer {
    let (case, ledger) = (solved.case(), solved.ledger());
    let hours: Vec<f64> = solved
        .courses
        .iter()
        .map(|course| course.steps.iter().map(|t| hours(*t, case, ledger)).sum())
        .collect();
    let means: Vec<f64> = solved.outcomes.iter().map(|o| o.score.mean()).collect();
    let costs: Vec<f64> = solved.outcomes.iter().map(|o| o.cost.mean()).collect();
    let (advised, noise) = (solved.advice.chosen, solved.advice.noise);
    let open = |i: usize| solved.courses[i].can_be_advised();
    // The leave course comes first and is never barred.
    let stands = |i: usize| {
        let kept_for_less = |o: usize| {
            let (a, b) = (&solved.outcomes[o], &solved.outcomes[i]);
            o != i
                && open(o)
                && means[o] >= means[i] - noise
                && costs[o] <= costs[i]
                && hours[o] <= hours[i]
                && gentler(a, means[o], b, means[i])
        };
        i != 0
            && open(i)
            && means[i] > means[0] + noise
            && means[i] <= means[advised]
            && !(0..means.len()).any(kept_for_less)
    };
    // With too little recorded nothing is advised, so nothing is planned either.
    let is_advised = is_enough_to_advise(case);
    let chosen = |i: &usize| *i == 0 || (is_advised && (*i == advised || stands(*i)));
    let places: Vec<usize> = (0..means.len()).filter(chosen).collect();
    let choices = places
        .iter()
        .map(|i| {
            let (course, outcome) = (&solved.courses[*i], &solved.outcomes[*i]);
            if *i == 0 {
                return OfferedChoice {
                    steps: Vec::new(),
                    name: sentences::course_name(course),
                    gain: 0.0,
                    cost: 0.0,
                    cost_high: 0.0,
                    hours: 0.0,
                    keeps: 1.0,
                };
            }
            OfferedChoice {
                steps: course.steps.clone(),
                name: sentences::course_name(course),
                gain: solved.money_of(means[*i] - means[0]),
                cost: costs[*i].max(0.0),
                cost_high: outcome.cost.deciles()[2].max(0.0),
                hours: hours[*i],
                keeps: outcome.retreatability,
            }
        })
        .collect();
    Offer {
        currency: case.market.currency.unwrap_or(Currency::Other),
        refer: !solved.explained(0.0).referrals().is_empty(),
        assumed: !solved.draws.value_entered,
        kept: solved.goal != Goal::Sell,
        child: case.aim.household_child_or_pregnant,
        advised: places.iter().position(|i| *i == advised).unwrap_or(0),
        choices,
    }
}

/// Classes of effort, as named in the treatments' words.
const EFFORTS: [&str; 5] = ["E0", "E1", "E2", "E3", "E4"];

/// Hours of work of each class of effort.
const WORK_HOURS: [FigureId; 5] = FigureId::family("work.hours.", EFFORTS, "");

/// Hours of work for one treatment: from the quote, or else the ledger's hours for its class of effort.
/// Leaving alone takes none.
fn hours(treatment: Treatment, case: &Case, ledger: &Ledger) -> f64 {
    if treatment == Treatment::Leave {
        return 0.0;
    }
    if let Some(hours) = case.quote(treatment).and_then(|q| q.hours) {
        return hours;
    }
    work_hours(treatment).map_or(0.0, |id| ledger.value(id))
}

/// The figure for the hours of a work, by its class of effort.
#[must_use]
pub fn work_hours(treatment: Treatment) -> Option<FigureId> {
    let effort = treatment.text().effort;
    let place = EFFORTS.iter().position(|code| *code == effort)?;
    WORK_HOURS.get(place).copied()
}
