//! Work on the piece: what it would cost, what was tested, what was done, and what is proposed.

use super::{Covers, Date, Doer, MaterialUsed, PartName, TestKind, Tester};
use crate::terms::Treatment;

/// What the person asked about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Asked {
    /// These treatments, in the order asked; at least one.
    Treatments(Vec<Treatment>),
    /// The person's own proposal.
    Proposal,
}

/// A price asked for one treatment, or for several together.
#[derive(Clone, Debug, PartialEq)]
pub struct Quote {
    /// Its id, where it has one. A quote for one treatment may go by the treatment.
    pub id: Option<String>,
    /// For what; at least one, and each once.
    pub treatments: Vec<Treatment>,
    /// Low end, if a range was given.
    pub low: Option<f64>,
    /// The price, in the case's currency.
    pub likely: f64,
    /// High end.
    pub high: Option<f64>,
    /// Carriage and insurance there and back on top of the price; 0 when the price includes them.
    pub post: f64,
    /// What has to be paid in advance, in the case's currency.
    pub deposit: Option<f64>,
    /// Who gave it, as typed; empty when that is not recorded.
    pub by: String,
    /// Hours of work the quote allows.
    pub hours: Option<f64>,
    /// The price is fixed and cannot overrun.
    pub fixed: bool,
    /// What the price covers.
    pub covers: Covers,
    /// The price includes carriage and insurance there and back.
    pub post_included: bool,
}

/// A test for lead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Test {
    /// Its id in the file; `bench.food` for the laboratory's figures of the bench.
    pub id: String,
    /// What was asked.
    pub kind: TestKind,
    /// Where; `None` when it was not said.
    pub part: Option<PartName>,
    /// Of which of several pieces, by their numbers from 1 up; empty where it was not said, and for one piece.
    pub of: Vec<u16>,
    /// When; the middle of the month or year where only that is known.
    pub on: Option<Date>,
    /// Who carried it out.
    pub by: Option<Tester>,
    /// `Some(true)`: release within the limits, or no lead in the metal. `None`: no usable result.
    pub passed: Option<bool>,
}

/// One piece of work already done.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    /// Its place in the list of the file.
    pub place: usize,
    /// Its id in the file; empty in files of version 1.
    pub id: String,
    /// What was done, if it is one the catalogue knows.
    pub treatment: Option<Treatment>,
    /// What was done, as written.
    pub what: String,
    /// The class of material used.
    pub material: Option<MaterialUsed>,
    /// The material, as written.
    pub materials: String,
    /// The parts it was done to; empty when not recorded.
    pub parts: Vec<PartName>,
    /// By whom, as written.
    pub by: String,
    /// When, as written.
    pub on: String,
    /// How it was before, as written.
    pub before: String,
    /// How it was afterwards, as written.
    pub after: String,
    /// How it was done, in the words of whoever did it; empty when not written.
    pub method: String,
    /// What was done otherwise than proposed, as written; empty when not written.
    pub deviations: String,
    /// Which parts taken off are kept, and where, as written; empty when not written.
    pub kept: String,
    /// The numbers of the photographs taken afterwards.
    pub photos: Vec<String>,
    /// Hours of work.
    pub hours: Option<f64>,
    /// What it cost, in the case's currency; a shared bill is repeated on each work.
    pub bill: Option<f64>,
    /// Bill number, if several works share a bill; otherwise empty.
    pub bill_no: String,
    /// Whether it went wrong; `None` if not recorded or not known.
    pub went_wrong: Option<bool>,
}

impl Done {
    /// Solder with lead was used, so there is lead at the parts it was done to.
    #[must_use]
    pub fn adds_lead(&self) -> bool {
        self.material == Some(MaterialUsed::SolderLead)
    }
}

/// The person's own plan of work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Proposal {
    /// Its steps, in the order of the file.
    pub steps: Vec<ProposalStep>,
}

/// One step of a proposal.
#[derive(Clone, Debug, PartialEq)]
pub struct ProposalStep {
    /// Its id in the file.
    pub id: String,
    /// What is to be done.
    pub treatment: Treatment,
    /// On which parts; empty for the whole piece, or where the work itself says.
    pub parts: Vec<PartName>,
    /// On which pieces of several, by number from 1; empty for all.
    pub of: Vec<u16>,
    /// Low end of the price.
    pub low: Option<f64>,
    /// The price, in the case's currency.
    pub likely: Option<f64>,
    /// High end of the price.
    pub high: Option<f64>,
    /// The price is fixed.
    pub fixed: bool,
    /// Hours of work.
    pub hours: Option<f64>,
    /// Who does it.
    pub who: Option<Doer>,
    /// Id of the quote that prices it.
    pub quote: Option<String>,
    /// The owner agreed to it.
    pub agreed: bool,
    /// A note, as written.
    pub note: String,
}
