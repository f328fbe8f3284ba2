//! Which treatments answer a fault. Each treatment lists the faults it answers; here is in which order they are
//! proposed and in which they are done.

use super::{Fault, work};
use crate::terms::Treatment;

/// The treatments that are proposed for a fault, the gentlest first.
#[must_use]
pub fn answers_to(fault: Fault) -> Vec<Treatment> {
    use Treatment as T;
    match fault {
        Fault::BareMetal => vec![T::Toning, T::LocalPlate, T::Overplate, T::Replate],
        Fault::Tarnish => vec![T::Clean],
        Fault::BrokenLacquer => vec![T::LacquerOff],
        Fault::LoosePart => vec![T::Mechanical, T::Solder, T::LowMelt],
        Fault::FailingFilling => vec![T::Mechanical, T::RemoveFill],
        _ => Treatment::ALL
            .into_iter()
            .filter(|t| work(*t).is_some_and(|w| w.answers.contains(&fault)))
            .collect(),
    }
}

/// The first of the treatments done that answers a fault: an old part is fixed in its seat before it is
/// soldered, and a filling is taken out before it is set again.
#[must_use]
pub fn answer_to(fault: Fault, done: &[Treatment]) -> Option<Treatment> {
    use Treatment as T;
    let order: &[T] = match fault {
        Fault::Dents => &[T::Dents],
        Fault::Split | Fault::OpenJoint => &[T::Solder, T::LowMelt],
        Fault::LoosePart => &[T::Mechanical, T::Solder, T::LowMelt],
        Fault::CrackedMaterial => &[T::Mechanical],
        Fault::FailingFilling => &[T::RemoveFill, T::Mechanical],
        Fault::GreyRepair => &[T::RemoveLead],
        Fault::PartLost => &[T::ReplacePart],
        Fault::LiningGone => &[T::Tinning],
        Fault::GildingGone => &[T::Regild],
        _ => &[],
    };
    order.iter().copied().find(|t| done.contains(t))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_orders_hold_only_treatments_that_say_they_answer_the_fault() {
        for fault in Fault::ALL {
            let says = |t: Treatment| work(t).is_some_and(|work| work.answers.contains(&fault));
            for t in answers_to(fault) {
                assert!(says(t), "{fault:?}: {t:?}");
            }
            for t in Treatment::ALL {
                let first = answer_to(fault, &[t]);
                assert!(
                    first.is_none_or(|first| first == t && says(t)),
                    "{fault:?}: {t:?}"
                );
            }
        }
    }
}
