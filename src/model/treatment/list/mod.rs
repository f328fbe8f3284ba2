//! The works that can be weighed, one file a treatment: what each answers, what it costs without a
//! quote, what it takes of what is original, and how the piece stands afterwards.
//!
//! Every number is a figure of the ledger, named here by id. Which rules a treatment meets is the
//! rule book's business.

mod as_found;
mod clean;
mod dents;
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

use super::{Fault, Treatment};
use crate::ledger::FigureId;
use crate::value::{ByGroup, Class};

/// One treatment as the counsel weighs it.
#[derive(Clone, Copy, Debug)]
pub struct Work {
    /// Which.
    pub treatment: Treatment,
    /// The faults it answers.
    pub answers: &'static [Fault],
    /// Why it has nothing to do where none of them is there; `None` where it always has.
    pub idle: Option<&'static str>,
    /// Works of one trade are dear or cheap together.
    pub trade: Trade,
    /// What can go wrong.
    pub risk: MishapRisk,
    /// What it costs without a quote.
    pub price: Price,
    /// How much of what is original it takes or covers.
    pub dose: Dose,
    /// How each fault it answers stands afterwards.
    pub after: &'static [(Fault, FaultState)],
}

impl Work {
    /// How the fault stands once this work is done; `None` where it does not answer it.
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
    /// Cleaning, coats and keeping.
    Care,
}

/// Figures of what can go wrong by group of classes, in the order of [`Class::HAZARD_GROUPS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mishaps {
    /// The chance of a bad result.
    pub chance: [FigureId; 6],
    /// The share of the price that a bad result keeps.
    pub kept: [FigureId; 6],
}

/// The figures of the mishaps that start with `before`.
const fn mishaps(before: &str) -> Mishaps {
    Mishaps {
        chance: FigureId::family(before, Class::HAZARD_GROUPS, ".p"),
        kept: FigureId::family(before, Class::HAZARD_GROUPS, ".kept"),
    }
}

/// Where the silver on a piece is from, as far as doses differ.
const ORIGINS: [&str; 3] = ["fused", "replated", "electroplate"];

/// The figures that start with `before`, one for each of [`ORIGINS`].
const fn by_origin(before: &str) -> [FigureId; 3] {
    FigureId::family(before, ORIGINS, "")
}

/// The chance and size of a bad result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MishapRisk {
    /// None to speak of.
    None,
    /// Figures of the treatment's own, `hazard.<id>.*`.
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
    /// Keeping: a sound piece, or one that corrodes.
    Keeping(FigureId, FigureId),
    /// One figure, more on trays and baskets.
    Large(FigureId),
    /// By the size of the fault, more on trays and baskets.
    Large2(FigureId, FigureId),
    /// By the size of the fault.
    BySize(FigureId, FigureId),
    /// A joint's, or a split's where one is mended.
    Joint(FigureId),
    /// Plating, much more on trays and baskets.
    Plating(FigureId),
}

/// Where the dose comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dose {
    /// Nothing original goes.
    None,
    /// One figure.
    Figure(FigureId),
    /// By the size of the fault.
    BySize(FigureId, FigureId),
    /// A joint's, or a split's where one is mended.
    Joint(FigureId),
    /// By where the silver is from: fused, replated fused, electroplate.
    ByKind([FigureId; 3]),
    /// What one cleaning takes of the silver that is left.
    Cleaning,
}

/// How a piece stands as far as one fault goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FaultState {
    /// What it does to the price.
    pub value: Value,
    /// How well the piece shows.
    pub show: Show,
    /// Figure of how well it serves; `None` for fully.
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

/// What a state does to the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Value {
    /// Nothing.
    Whole,
    /// A condition factor by group of value classes.
    Row(ByGroup),
    /// One figure for all classes.
    One(FigureId),
    /// The figure's share of the logarithm of the factor as found stays.
    Eased(FigureId),
    /// A new part, by the size of the lost one.
    NewPart,
}

/// How well a state shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Show {
    /// Nothing to see.
    Full,
    /// A figure.
    Figure(FigureId),
    /// The figure's share of what was lacking stays.
    Eased(FigureId),
}

/// The work a treatment is; `None` for leaving alone and for what is never done to these pieces.
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

/// What a repair leaves of an open joint, a loose part and a split, however it is made.
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
    fn each_work_is_listed_under_its_own_treatment() {
        let mut listed = 0;
        for t in Treatment::ALL {
            let Some(w) = work(t) else { continue };
            assert_eq!(w.treatment, t);
            listed += 1;
        }
        // All but leaving the piece alone, which is no work.
        assert_eq!(listed, Treatment::WEIGHED.len() - 1);
    }
}
