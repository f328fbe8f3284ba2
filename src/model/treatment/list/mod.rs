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
    pub risk: Risk,
    /// What it costs without a quote.
    pub price: Price,
    /// How much of what is original it takes or covers.
    pub dose: Dose,
    /// How each fault it answers stands afterwards.
    pub after: &'static [(Fault, State)],
}

impl Work {
    /// How the fault stands once this work is done; `None` where it does not answer it.
    #[must_use]
    pub fn leaves(&self, fault: Fault) -> Option<State> {
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

/// The chance and size of a bad result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Risk {
    /// None to speak of.
    None,
    /// Figures `hazard.<id>.*` by value class.
    Figures(&'static str),
    /// The classes of `catalogue.psv`, figures `hazard.class.*`.
    ByClass,
}

/// Where the cost without a quote comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Price {
    /// One figure.
    Figure(&'static str),
    /// Cleaning: by the owner or paid.
    Cleaning,
    /// One figure, more on trays and baskets.
    Large(&'static str),
    /// By the size of the fault, more on trays and baskets.
    Large2(&'static str, &'static str),
    /// By the size of the fault.
    BySize(&'static str, &'static str),
    /// A joint's, or a split's where one is mended.
    Joint(&'static str),
    /// Plating, much more on trays and baskets.
    Plating(&'static str),
}

/// Where the dose comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dose {
    /// Nothing original goes.
    None,
    /// One figure.
    Figure(&'static str),
    /// By the size of the fault.
    BySize(&'static str, &'static str),
    /// A joint's, or a split's where one is mended.
    Joint(&'static str),
    /// By the family of the kind: `attribute.dose.<id>.fused`, `.replated`, `.electroplate`.
    ByKind(&'static str),
    /// What one cleaning takes of the silver that is left.
    Cleaning,
}

/// How a piece stands as far as one fault goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct State {
    /// What it does to the price.
    pub value: Value,
    /// How well the piece shows.
    pub show: Show,
    /// Figure of how well it serves; empty for fully.
    pub serves: &'static str,
    /// Last step of the figure `attribute.stability.*`: how well it will keep.
    pub keeps: &'static str,
}

impl State {
    /// No fault.
    pub const SOUND: Self = Self {
        value: Value::Whole,
        show: Show::Full,
        serves: "",
        keeps: "sound",
    };
}

/// What a state does to the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Value {
    /// Nothing.
    Whole,
    /// A row of condition factors, by class: `value.factor.<row>.*`.
    Row(&'static str),
    /// One figure for all classes.
    One(&'static str),
    /// The figure's share of the logarithm of the factor as found stays.
    Eased(&'static str),
    /// A new part, by the size of the lost one.
    NewPart,
}

/// How well a state shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Show {
    /// Nothing to see.
    Full,
    /// A figure.
    Figure(&'static str),
    /// The figure's share of what was lacking stays.
    Eased(&'static str),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Ledger;

    #[test]
    fn every_figure_a_work_names_is_in_the_ledger() {
        let ledger = Ledger::standard();
        let known = |id: &str| assert!(ledger.find(id).is_some(), "{id}");
        for t in Treatment::ALL {
            let Some(w) = work(t) else { continue };
            assert_eq!(w.treatment, t);
            match w.price {
                Price::Cleaning => known("cost.T03_paid"),
                Price::Figure(id) | Price::Large(id) | Price::Joint(id) | Price::Plating(id) => {
                    known(id);
                }
                Price::Large2(small, large) | Price::BySize(small, large) => {
                    known(small);
                    known(large);
                }
            }
            match w.dose {
                Dose::None | Dose::Cleaning => {}
                Dose::Figure(id) | Dose::Joint(id) => known(id),
                Dose::BySize(small, large) => {
                    known(small);
                    known(large);
                }
                Dose::ByKind(id) => known(&format!("attribute.dose.{id}.fused")),
            }
            for (_, state) in w.after {
                known(&format!("attribute.stability.{}", state.keeps));
                if !state.serves.is_empty() {
                    known(state.serves);
                }
            }
        }
    }
}
