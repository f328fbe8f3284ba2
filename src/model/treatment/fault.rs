//! The faults a piece may have, each with the parts it is on.
//!
//! A fault counts once however many parts have it, as the worst of them; further parts, and further places
//! on one part, only add to the cost of the work. Defects
//! that no treatment fixes (erased arms, a married piece) are not faults; only rules use them.

use crate::ledger::FigureId;
use crate::ledger::{Ledger, signs};
use crate::record::{
    Bleed, Case, Corrosion, Dents, FillState, Gilding, Interior, Joint, JointClass, Lacquer, Loss,
    Mount, Part, PartName, Split, SpotFault, Tarnish,
};
use crate::silver::bleed_range;
use crate::terms::Fault;
use crate::treatment::touched::{is_cracked, is_split};

/// How large a fault is, where this changes what it costs and what it takes off the price.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Size {
    /// Small dents; a small part lost; coloured tarnish.
    Small,
    /// Deep dents; a large part lost; heavy tarnish.
    Large,
}

/// One fault with the parts that have it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// Which fault.
    pub fault: Fault,
    /// Its worst size.
    pub size: Size,
    /// The parts it was recorded on; empty where it was recorded for the whole piece.
    pub parts: Vec<PartName>,
    /// Further places of it on parts that have it: three dents shown on one part are two further places.
    pub further: u32,
}

impl Found {
    /// How many parts have it; at least 1.
    #[must_use]
    pub fn count(&self) -> usize {
        self.parts.len().max(1)
    }
}

impl Found {
    /// The fault split into what is on these parts and what is on others, each with the size it has there. A
    /// fault recorded for the whole piece is on any part named.
    #[must_use]
    pub fn divided(&self, parts: &[PartName], case: &Case, ledger: &Ledger) -> [Option<Self>; 2] {
        if self.parts.is_empty() {
            return [Some(self.clone()), None];
        }
        [true, false].map(|wanted| {
            let mut only = case.clone();
            only.parts.retain(|p| parts.contains(&p.name) == wanted);
            let here = found(self.fault, &only, ledger)?;
            (!here.parts.is_empty()).then_some(here)
        })
    }
}

/// Every fault of a case, in the order of [`Fault::ALL`].
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Faults(pub Vec<Found>);

impl Faults {
    /// Reads the faults of a case.
    #[must_use]
    pub fn of(case: &Case, ledger: &Ledger) -> Self {
        let found = Fault::ALL
            .into_iter()
            .filter_map(|fault| found(fault, case, ledger))
            .collect();
        Self(found)
    }

    /// The fault, if the piece has it.
    #[must_use]
    pub fn get(&self, fault: Fault) -> Option<&Found> {
        self.0.iter().find(|f| f.fault == fault)
    }

    /// Whether the piece has the fault.
    #[must_use]
    pub fn has(&self, fault: Fault) -> bool {
        self.get(fault).is_some()
    }
}

fn found(fault: Fault, case: &Case, ledger: &Ledger) -> Option<Found> {
    let on = |has: &dyn Fn(&Part) -> bool| -> Vec<PartName> {
        let mut names: Vec<PartName> = Vec::new();
        for part in case.parts.iter().filter(|p| has(p)) {
            if !names.contains(&part.name) {
                names.push(part.name);
            }
        }
        names
    };
    let size = |large: bool| if large { Size::Large } else { Size::Small };
    let parts = match fault {
        Fault::Dents => on(&|p| p.is_metal() && (is_dented(p) || p.split == Some(Split::Crease))),
        Fault::Split => on(&is_split),
        Fault::CrackedMaterial => on(&is_cracked),
        Fault::OpenJoint => on(&|p| {
            p.has_joint(Joint::Leaking)
                || (p.has_joint(Joint::Open) && p.name.joint_class() == JointClass::Seam)
        }),
        Fault::LoosePart => {
            on(&|p| p.has_joint(Joint::Open) && p.name.joint_class() == JointClass::Attachment)
        }
        Fault::GreyRepair => on(&|p| p.has_joint(Joint::GreyRepair)),
        Fault::FailingFilling => on(&|p| p.fill_state == Some(FillState::Failing)),
        Fault::FillingShows => on(&|p| p.mount == Some(Mount::FillShowing)),
        Fault::PartLost => on(&|p| matches!(p.loss, Some(Loss::Small | Loss::Large))),
        Fault::LiningGone => on(&|p| match p.interior {
            Some(Interior::Bare) => true,
            Some(Interior::Tinned) => shows(p.bleed, ledger),
            _ => false,
        }),
        Fault::GildingGone => on(&|p| {
            p.name == PartName::Interior && matches!(p.gilding, Some(Gilding::Worn | Gilding::Gone))
        }),
        Fault::BrokenLacquer => {
            on(&|p| matches!(p.lacquer, Some(Lacquer::Broken | Lacquer::Yellowed)))
        }
        Fault::Tarnish => on(&|p| p.tarnish.is_some_and(|t| t > Tarnish::Bright)),
        Fault::BareMetal => on(&|p| shows(p.bleed, ledger)),
        Fault::Corrosion => on(&|p| p.corrosion.is_some_and(|c| c != Corrosion::None)),
    };
    let (there, large) = match fault {
        Fault::Dents => (
            !parts.is_empty(),
            case.parts.iter().any(|p| p.dents == Some(Dents::Moderate)),
        ),
        Fault::PartLost => (
            case.has_flaw("part_missing_minor")
                || case.has_flaw("part_missing_major")
                || !parts.is_empty(),
            case.has_flaw("part_missing_major")
                || case.parts.iter().any(|p| p.loss == Some(Loss::Large)),
        ),
        Fault::Tarnish => (
            !parts.is_empty(),
            case.parts
                .iter()
                .any(|p| p.tarnish.is_some_and(|t| t >= Tarnish::Grey)),
        ),
        // A look says that bare metal shows, but no part says how much.
        Fault::BareMetal => (
            !parts.is_empty()
                || case.has_seen_any(&signs::BASE_METAL)
                    && case.parts.iter().all(|p| p.bleed.is_none()),
            false,
        ),
        Fault::Corrosion => (case.corrodes(), false),
        _ => (!parts.is_empty(), false),
    };
    let placed = case.parts.iter().filter(|p| parts.contains(&p.name));
    let further = placed.map(|p| {
        let places = p.places_of(|spot| is_placed(spot, p, fault));
        places.saturating_sub(1)
    });
    let further = further.fold(0, u32::saturating_add);
    there.then(|| Found {
        fault,
        size: size(large),
        parts,
        further,
    })
}

/// Whether a fault shown at a place of a part is this one.
fn is_placed(spot: SpotFault, part: &Part, fault: Fault) -> bool {
    let is_fixed_on = part.name.joint_class() == JointClass::Attachment;
    let shown = match spot {
        SpotFault::SmallDent | SpotFault::DeepDent | SpotFault::Crease => Fault::Dents,
        SpotFault::Split if part.is_metal() => Fault::Split,
        SpotFault::Split => Fault::CrackedMaterial,
        SpotFault::SmallLoss | SpotFault::LargeLoss => Fault::PartLost,
        SpotFault::OpenJoint if is_fixed_on => Fault::LoosePart,
        SpotFault::OpenJoint | SpotFault::Leak => Fault::OpenJoint,
        SpotFault::GreyRepair => Fault::GreyRepair,
        SpotFault::FillShowing => Fault::FillingShows,
        SpotFault::LooseFilling => Fault::FailingFilling,
        SpotFault::BrokenLacquer => Fault::BrokenLacquer,
        SpotFault::WornGilding => Fault::GildingGone,
        SpotFault::Green | SpotFault::WhitePowder | SpotFault::Rust => Fault::Corrosion,
        SpotFault::BareMetal => Fault::BareMetal,
        SpotFault::NeatRepair | SpotFault::WornMount | SpotFault::Scratch | SpotFault::Other => {
            return false;
        }
    };
    shown == fault
}

fn is_dented(part: &Part) -> bool {
    matches!(part.dents, Some(Dents::Minor | Dents::Moderate))
}

fn shows(bleed: Option<Bleed>, ledger: &Ledger) -> bool {
    bleed.is_some() && bleed_range(bleed, ledger).likely >= ledger.value(FigureId::SILVER_F_NONE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::FindingId;
    use crate::record::{Answer, BleedWord, Material, Seen};

    fn case(change: impl FnOnce(&mut Case)) -> Case {
        let mut case = Case::default();
        change(&mut case);
        case
    }

    fn part(name: PartName, change: impl FnOnce(&mut Part)) -> Part {
        let mut part = Part::unknown(name);
        change(&mut part);
        part
    }

    #[test]
    fn base_metal_seen_counts_as_bare_metal_until_a_part_says_how_much() {
        let seen = |bleed: Option<Bleed>| {
            let c = case(|c| {
                c.findings = vec![Answer {
                    id: FindingId::S03,
                    seen: Seen::Yes,
                    part: None,
                }];
                c.parts = vec![part(PartName::Body, |p| p.bleed = bleed)];
            });
            Faults::of(&c, Ledger::standard()).has(Fault::BareMetal)
        };
        assert!(seen(None));
        assert!(!seen(Some(Bleed::Word(BleedWord::None))));
    }

    #[test]
    fn an_open_joint_on_a_handle_is_a_loose_part_and_on_the_body_an_open_joint() {
        let c = case(|c| {
            c.parts = vec![
                part(PartName::Handle, |p| p.joint = Some(Joint::Open)),
                part(PartName::Body, |p| p.joint = Some(Joint::Open)),
                part(PartName::Foot, |p| p.joint = Some(Joint::Leaking)),
            ];
        });
        let faults = Faults::of(&c, Ledger::standard());
        assert_eq!(
            faults.get(Fault::LoosePart).map(|f| f.parts.clone()),
            Some(vec![PartName::Handle])
        );
        assert_eq!(
            faults.get(Fault::OpenJoint).map(Found::count),
            Some(2),
            "{faults:?}"
        );
    }

    #[test]
    fn a_cracked_wooden_handle_is_not_a_split_in_the_metal() {
        let c = case(|c| {
            c.parts = vec![part(PartName::Handle, |p| {
                p.split = Some(Split::Through);
                p.material = Some(Material::Wood);
            })];
        });
        let faults = Faults::of(&c, Ledger::standard());
        assert!(faults.has(Fault::CrackedMaterial) && !faults.has(Fault::Split));
    }

    #[test]
    fn a_fault_on_two_parts_is_one_fault_with_the_worse_size() {
        let c = case(|c| {
            c.parts = vec![
                part(PartName::Body, |p| p.dents = Some(Dents::Minor)),
                part(PartName::Foot, |p| p.dents = Some(Dents::Moderate)),
            ];
        });
        let faults = Faults::of(&c, Ledger::standard());
        assert_eq!(faults.0.len(), 1);
        assert_eq!((faults.0[0].size, faults.0[0].count()), (Size::Large, 2));
    }
}
