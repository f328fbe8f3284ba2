//! Which parts a treatment touches, as recorded.

use crate::record::{Case, Dents, Fill, FillState, Joint, Loss, Part, Split};
use crate::terms::{JointClass, Treatment};

/// The recorded parts that `treatment` would work on: those with the fault it answers, or every recorded part
/// if the work covers the whole piece or no such fault is recorded.
#[must_use]
pub fn touched(treatment: Treatment, case: &Case) -> Vec<&Part> {
    let with = |fault: &dyn Fn(&Part) -> bool| -> Vec<&Part> {
        let faulty: Vec<&Part> = case.parts.iter().filter(|p| fault(p)).collect();
        if faulty.is_empty() {
            case.parts.iter().collect()
        } else {
            faulty
        }
    };
    match treatment {
        Treatment::Dents => with(&|p| matches!(p.dents, Some(Dents::Minor | Dents::Moderate))),
        Treatment::Solder | Treatment::LowMelt | Treatment::HardSolder => {
            with(&|p| is_open(p) || is_split(p))
        }
        Treatment::RemoveLead => with(&|p| p.has_joint(Joint::GreyRepair)),
        Treatment::RemoveFill => with(&|p| {
            p.fill_state == Some(FillState::Failing) || p.fill.is_some_and(|f| f != Fill::None)
        }),
        Treatment::Mechanical => with(&is_loose),
        Treatment::ReplacePart => with(&|p| matches!(p.loss, Some(Loss::Small | Loss::Large))),
        _ => case.parts.iter().collect(),
    }
}

/// An open or leaking joint.
pub(super) fn is_open(part: &Part) -> bool {
    part.has_any_joint(&[Joint::Open, Joint::Leaking])
}

/// Split through, in metal. A split in wood or ivory is not: see [`is_cracked`].
pub(super) fn is_split(part: &Part) -> bool {
    part.is_metal() && splits_through(part)
}

/// A crack in wood, ivory or another material that is not metal.
pub(super) fn is_cracked(part: &Part) -> bool {
    !part.is_metal() && splits_through(part)
}

fn splits_through(part: &Part) -> bool {
    part.split == Some(Split::Through) || part.dents == Some(Dents::Split)
}

/// An attached part that has come loose, or a loose filling.
fn is_loose(part: &Part) -> bool {
    let fitted = part.name.joint_class() == JointClass::Attachment;
    (fitted && part.has_joint(Joint::Open)) || part.fill_state == Some(FillState::Failing)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::terms::PartName;

    #[test]
    fn a_filling_is_taken_out_of_the_parts_that_have_one_or_else_of_any_part() {
        let of = |body: Part, foot: Part| -> Vec<PartName> {
            let case = Case {
                parts: vec![body, foot],
                ..Case::default()
            };
            let touched = touched(Treatment::RemoveFill, &case);
            touched.iter().map(|part| part.name).collect()
        };
        let body = || Part::unknown(PartName::Body);
        let foot = || Part::unknown(PartName::Foot);
        let filled = Part {
            fill: Some(Fill::Pitch),
            ..foot()
        };
        let failing = Part {
            fill_state: Some(FillState::Failing),
            ..foot()
        };
        assert_eq!(of(body(), filled), [PartName::Foot]);
        assert_eq!(of(body(), failing), [PartName::Foot]);
        let empty = Part {
            fill: Some(Fill::None),
            ..foot()
        };
        assert_eq!(of(body(), empty), [PartName::Body, PartName::Foot]);
    }
}
