//! The questions of the road and the answers each takes.

use super::{ALL_OVER, NONE, UNSURE};
use crate::ledger::FindingId;
use crate::record::{Form, JointClass, PartName};
use crate::terms::{BleedWord, Seen, Treatment};

/// Letters and marks that may be struck underneath, from the plainest to the rarest.
pub const LETTERS: [FindingId; 4] = [
    FindingId::M01,
    FindingId::M01B,
    FindingId::M03,
    FindingId::M04,
];
/// The metal that shows where the silver has gone, by its colour: red, then grey or yellow.
pub const BARE_METAL: [FindingId; 4] = [
    FindingId::S03,
    FindingId::S04,
    FindingId::S06,
    FindingId::S05,
];
/// The work that owners are most often offered.
pub const OFFERS: [Treatment; 5] = [
    Treatment::Replate,
    Treatment::Solder,
    Treatment::Dents,
    Treatment::ReplacePart,
    Treatment::Clean,
];

/// A question of the road.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoadQuestion {
    /// What sort of piece it is.
    Form,
    /// Whether there are letters or marks underneath.
    Letters,
    /// Whether another metal shows through, and of which colour.
    Metal,
    /// Whether it attracts a magnet.
    Magnet,
    /// Where bare metal shows most.
    BareWhere,
    /// How much of that part is bare.
    BareAmount,
    /// What is wrong with it.
    Trouble,
    /// The part on which that trouble is.
    TroubleWhere(Damage),
    /// What else is wrong with it.
    More,
    /// What the owner will do with it.
    Use,
    /// The work that was offered.
    Offer,
    /// The price asked for that work.
    Sum,
    /// One more look.
    Look(FindingId),
}

/// A kind of trouble that an owner can see.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// A part is gone.
    Missing,
    /// A part is loose.
    Loose,
    /// It leaks, or a seam stands open.
    Leaking,
    /// It is dented.
    Dented,
    /// An old grey repair.
    Repair,
}

impl Damage {
    /// Every trouble, in the order shown.
    pub const ALL: [Self; 5] = [
        Self::Missing,
        Self::Loose,
        Self::Leaking,
        Self::Dented,
        Self::Repair,
    ];

    /// Its id, used as an answer.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Missing => "missing",
            Self::Loose => "loose",
            Self::Leaking => "leaking",
            Self::Dented => "dented",
            Self::Repair => "repair",
        }
    }

    /// The trouble with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|trouble| trouble.id() == id)
    }

    /// The parts of a piece of this form that can have it.
    #[must_use]
    pub fn parts(self, form: Option<Form>) -> Vec<PartName> {
        let can = |part: &PartName| match self {
            Self::Missing => !matches!(
                part,
                PartName::Body
                    | PartName::Interior
                    | PartName::Rim
                    | PartName::Edge
                    | PartName::Shield
                    | PartName::Base
            ),
            Self::Loose => part.joint_class() == JointClass::Attachment,
            Self::Leaking => part.meets_liquid() || part.joint_class() == JointClass::Seam,
            Self::Dented | Self::Repair => true,
        };
        parts(form).into_iter().filter(can).collect()
    }
}

fn parts(form: Option<Form>) -> Vec<PartName> {
    form.unwrap_or(Form::Other).parts().to_vec()
}

/// One of several findings as the answer, or none of them.
fn seen_or_none(findings: [FindingId; 4]) -> Vec<&'static str> {
    findings
        .into_iter()
        .map(FindingId::text)
        .chain([NONE])
        .collect()
}

impl RoadQuestion {
    /// The further looks, each with a drawing, that an owner can take without an instrument.
    pub const LOOKS: [FindingId; 7] = [
        FindingId::C01,
        FindingId::C07,
        FindingId::C06,
        FindingId::C08,
        FindingId::S10,
        FindingId::S22,
        FindingId::S17,
    ];

    /// The ids of the question's answers for a piece of this form, in the order shown; "not sure" comes last.
    #[must_use]
    pub fn answers(self, form: Option<Form>) -> Vec<&'static str> {
        let mut ids: Vec<&'static str> = match self {
            Self::Form => Form::IDS.to_vec(),
            Self::Letters => seen_or_none(LETTERS),
            Self::Metal => seen_or_none(BARE_METAL),
            Self::Magnet | Self::Look(_) => vec![Seen::Yes.id(), Seen::No.id()],
            Self::BareWhere => parts(form)
                .into_iter()
                .map(PartName::id)
                .chain([ALL_OVER])
                .collect(),
            Self::BareAmount => BleedWord::ALL
                .iter()
                .filter(|word| **word != BleedWord::None)
                .map(|word| word.id())
                .collect(),
            Self::Trouble | Self::More => Damage::ALL
                .into_iter()
                .map(Damage::id)
                .chain([NONE])
                .collect(),
            Self::TroubleWhere(trouble) => {
                trouble.parts(form).into_iter().map(PartName::id).collect()
            }
            Self::Use => vec!["use", "show", "sell"],
            Self::Offer => OFFERS
                .into_iter()
                .map(Treatment::id)
                .chain([NONE])
                .collect(),
            Self::Sum => vec!["given"],
        };
        ids.push(UNSURE);
        ids
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::Turn;

    #[test]
    fn every_question_has_answers_for_every_form() {
        for form in Form::ALL {
            for trouble in Damage::ALL {
                let ids = RoadQuestion::TroubleWhere(trouble).answers(Some(*form));
                assert!(ids.len() > 1, "{form:?}, {trouble:?}");
            }
        }
        for id in RoadQuestion::LOOKS {
            let look = id.fact();
            assert_eq!(Turn::of(look, &[]), Turn::First, "{id} needs no instrument");
            assert!(look.invasive < 2, "{id}");
        }
        for trouble in Damage::ALL {
            assert_eq!(Damage::parse(trouble.id()), Some(trouble));
        }
    }
}
