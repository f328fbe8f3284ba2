//! The blocks of work that make up a course.

use crate::treatment::{Fault, Treatment};

/// Faults that are answered together, with the treatments that answer them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum WorkBlock {
    /// Dents.
    Shape,
    /// Splits, joints, loose parts, failing fillings.
    Joins,
    /// Old lead repairs.
    Lead,
    /// Lost parts.
    Part,
    /// Linings.
    Lining,
    /// Tarnish, lacquer and bare metal.
    Surface,
    /// Better keeping.
    Keep,
    /// The test for lead: not a block of choices but a switch over all of them.
    Test,
}

impl WorkBlock {
    /// Every block of choices.
    pub(super) const ALL: [Self; 7] = [
        Self::Shape,
        Self::Joins,
        Self::Lead,
        Self::Part,
        Self::Lining,
        Self::Surface,
        Self::Keep,
    ];

    /// The block in which a fault is answered; `None` if nothing answers it.
    pub(super) fn of(fault: Fault) -> Option<Self> {
        Some(match fault {
            Fault::Dents => Self::Shape,
            Fault::Split
            | Fault::OpenJoint
            | Fault::LoosePart
            | Fault::CrackedMaterial
            | Fault::FailingFilling => Self::Joins,
            Fault::GreyRepair => Self::Lead,
            Fault::PartLost => Self::Part,
            Fault::LiningGone | Fault::GildingGone => Self::Lining,
            Fault::BrokenLacquer | Fault::Tarnish | Fault::BareMetal => Self::Surface,
            Fault::FillingShows | Fault::Corrosion => return None,
        })
    }

    /// The block of a treatment; `None` for leaving alone and for treatments that are never done.
    pub(super) fn of_treatment(t: Treatment) -> Option<Self> {
        use Treatment as T;
        Some(match t {
            T::Dents => Self::Shape,
            T::Solder | T::LowMelt | T::Mechanical | T::RemoveFill => Self::Joins,
            T::RemoveLead => Self::Lead,
            T::ReplacePart => Self::Part,
            T::Tinning | T::Regild => Self::Lining,
            T::Wash
            | T::LacquerOff
            | T::Clean
            | T::Foam
            | T::LocalPlate
            | T::Overplate
            | T::Replate
            | T::Toning
            | T::Lacquer => Self::Surface,
            T::Keeping => Self::Keep,
            T::TestLead => Self::Test,
            _ => return None,
        })
    }
}
