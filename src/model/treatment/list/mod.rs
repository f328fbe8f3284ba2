//! The works that can be weighed, one file per treatment: the faults it answers, its cost without a quote,
//! how much original material it takes, and the state of the piece afterwards.
//!
//! Every number is a figure of the ledger, named here by id. The rule book decides which rules apply to a
//! treatment.

mod as_found;
mod clean;
mod dents;
mod factors_in_play;
mod foam;
mod keeping;
mod lacquer;
mod lacquer_off;
mod local_plate;
mod low_melt;
mod mechanical;
mod overplate;
mod regild;
mod remove_fill;
mod remove_lead;
mod replace_part;
mod replate;
mod solder;
mod test_lead;
mod tinning;
mod toning;
mod wash;

pub use as_found::as_found;
pub use factors_in_play::factors_in_play;

use super::{Fault, Treatment};
use crate::ledger::FigureId;
use crate::value::{ByGroup, Class};

/// One treatment, as the advice weighs it.
#[derive(Clone, Copy, Debug)]
pub struct Work {
    /// The treatment.
    pub treatment: Treatment,
    /// The faults it answers.
    pub answers: &'static [Fault],
    /// Why it has nothing to do if the piece has none of these faults; `None` if it always has something to
    /// do.
    pub idle: Option<&'static str>,
    /// Costs of works of one trade are high or low together.
    pub trade: Trade,
    /// What can go wrong.
    pub risk: MishapRisk,
    /// What it costs without a quote.
    pub price: Price,
    /// How much original material it takes or covers.
    pub dose: Dose,
    /// The state of each fault it answers afterwards.
    pub after: &'static [(Fault, FaultState)],
}

impl Work {
    /// The state of the fault once this work is done; `None` if the work does not answer it.
    #[must_use]
    pub fn leaves(&self, fault: Fault) -> Option<FaultState> {
        let after = self.after.iter().find(|(f, _)| *f == fault);
        after.map(|(_, state)| *state)
    }
}

/// Who is paid: costs within a trade share one uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trade {
    /// Repairs, dents, new parts, tinning.
    Repair,
    /// Old lead and fillings taken out; tests.
    Remove,
    /// Plating.
    Plate,
    /// Cleaning, coatings and keeping.
    Care,
}

/// Figures of the risk by group of classes, in the order of [`Class::HAZARD_GROUPS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mishaps {
    /// The chance of a bad result.
    pub chance: [FigureId; 6],
    /// The share of the price that remains after a bad result.
    pub kept: [FigureId; 6],
}

/// The mishap figures whose ids start with `before`.
const fn mishaps(before: &str) -> Mishaps {
    Mishaps {
        chance: FigureId::family(before, Class::HAZARD_GROUPS, ".p"),
        kept: FigureId::family(before, Class::HAZARD_GROUPS, ".kept"),
    }
}

/// The origins of a piece's silver for which doses differ.
const ORIGINS: [&str; 3] = ["fused", "replated", "electroplate"];

/// The figures whose ids start with `before`, one for each of [`ORIGINS`].
const fn by_origin(before: &str) -> [FigureId; 3] {
    FigureId::family(before, ORIGINS, "")
}

/// The chance and size of a bad result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MishapRisk {
    /// No significant risk.
    None,
    /// The treatment's own figures, `hazard.<id>.*`.
    Figures(Mishaps),
    /// The classes of `catalogue.psv`, figures `hazard.class.*`.
    ByClass,
}

/// Where the cost without a quote comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Price {
    /// One figure.
    Figure(FigureId),
    /// Cleaning: by the owner or paid.
    Cleaning,
    /// Keeping: for a sound piece, or for one that corrodes.
    Keeping(FigureId, FigureId),
    /// One figure, higher for trays and baskets.
    Large(FigureId),
    /// By the size of the fault, higher for trays and baskets.
    Large2(FigureId, FigureId),
    /// By the size of the fault.
    BySize(FigureId, FigureId),
    /// The figure for a joint, or for a split if one is mended.
    Joint(FigureId),
    /// Plating, much higher for trays and baskets.
    Plating(FigureId),
}

/// Where the dose comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dose {
    /// No original material is lost.
    None,
    /// One figure.
    Figure(FigureId),
    /// By the size of the fault.
    BySize(FigureId, FigureId),
    /// The figure for a joint, or for a split if one is mended.
    Joint(FigureId),
    /// By the origin of the silver: fused, replated fused, electroplate.
    ByKind([FigureId; 3]),
    /// The share of the remaining silver that one cleaning takes.
    Cleaning,
}

/// The state of a piece with regard to one fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FaultState {
    /// What it does to the price.
    pub value: Value,
    /// How well the piece displays.
    pub show: Show,
    /// Figure of how well it serves; `None` for full service.
    pub serves: Option<FigureId>,
    /// Figure of how well it will keep, `attribute.stability.*`.
    pub keeps: FigureId,
}

impl FaultState {
    /// No fault.
    pub const SOUND: Self = Self {
        value: Value::Whole,
        show: Show::Full,
        serves: None,
        keeps: FigureId::ATTRIBUTE_STABILITY_SOUND,
    };
}

/// The effect of a state on the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Value {
    /// No effect.
    Whole,
    /// A condition factor by group of value classes.
    Row(ByGroup),
    /// One figure for all classes.
    One(FigureId),
    /// The log of the factor as found, times the figure's share.
    Eased(FigureId),
    /// A new part, by the size of the lost part.
    NewPart,
}

/// How well a piece in this state displays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Show {
    /// No visible fault.
    Full,
    /// A figure.
    Figure(FigureId),
    /// What was lacking as found, times the figure's share.
    Eased(FigureId),
}

/// The work of a treatment; `None` for leaving the piece alone and for treatments that are never done to
/// these pieces.
///
/// ```
/// use leavewell_model::treatment::{Fault, Treatment, work};
/// let dents = work(Treatment::Dents).unwrap();
/// assert_eq!(dents.answers, [Fault::Dents]);
/// assert!(work(Treatment::Dip).is_none());
/// ```
#[must_use]
pub fn work(treatment: Treatment) -> Option<&'static Work> {
    match treatment {
        Treatment::Keeping => Some(&keeping::KEEPING),
        Treatment::Wash => Some(&wash::WASH),
        Treatment::LacquerOff => Some(&lacquer_off::LACQUER_OFF),
        Treatment::Clean => Some(&clean::CLEAN),
        Treatment::Foam => Some(&foam::FOAM),
        Treatment::Lacquer => Some(&lacquer::LACQUER),
        Treatment::Dents => Some(&dents::DENTS),
        Treatment::Solder => Some(&solder::SOLDER),
        Treatment::LowMelt => Some(&low_melt::LOW_MELT),
        Treatment::RemoveLead => Some(&remove_lead::REMOVE_LEAD),
        Treatment::RemoveFill => Some(&remove_fill::REMOVE_FILL),
        Treatment::Mechanical => Some(&mechanical::MECHANICAL),
        Treatment::LocalPlate => Some(&local_plate::LOCAL_PLATE),
        Treatment::Toning => Some(&toning::TONING),
        Treatment::Replate => Some(&replate::REPLATE),
        Treatment::Overplate => Some(&overplate::OVERPLATE),
        Treatment::Tinning => Some(&tinning::TINNING),
        Treatment::Regild => Some(&regild::REGILD),
        Treatment::ReplacePart => Some(&replace_part::REPLACE_PART),
        Treatment::TestLead => Some(&test_lead::TEST_LEAD),
        _ => None,
    }
}

/// The state in which any repair leaves an open joint, a loose part or a split.
const REPAIRED: &[(Fault, FaultState)] = &[
    (
        Fault::OpenJoint,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_REPAIR),
            keeps: FigureId::ATTRIBUTE_STABILITY_NEAT,
            ..FaultState::SOUND
        },
    ),
    (
        Fault::LoosePart,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_REPAIR),
            keeps: FigureId::ATTRIBUTE_STABILITY_NEAT,
            ..FaultState::SOUND
        },
    ),
    (
        Fault::Split,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_SPLIT),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_SPLIT_MENDED),
            serves: Some(FigureId::ATTRIBUTE_USE_SPLIT_MENDED),
            keeps: FigureId::ATTRIBUTE_STABILITY_SPLIT_MENDED,
        },
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_work_is_listed_under_its_treatment() {
        let mut listed = 0;
        for t in Treatment::ALL {
            let Some(w) = work(t) else { continue };
            assert_eq!(w.treatment, t);
            listed += 1;
        }
        // Every weighed treatment except leaving the piece alone, which is not work.
        assert_eq!(listed, Treatment::WEIGHED.len() - 1);
    }
}
