//! Mercury in gilding or silvering: one answer for every rule, caution, page and sheet.

use crate::ledger::FindingId;
use crate::record::{Case, Gilding, Interior};

/// What is known of mercury in gilding or silvering, the least grave first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mercury {
    /// There is no gilding and no trace of any, and nobody said otherwise.
    NoSign,
    /// It is or was gilt, later than mercury was used for it, as was said.
    Unlikely,
    /// It is or was gilt, and nobody said when.
    Possible,
    /// It was said to be gilt with mercury.
    Likely,
    /// Mercury was seen or measured.
    Found,
}

/// What a case records of mercury. A finding counts before an answer, and an answer before the gilding itself.
#[must_use]
pub fn mercury(case: &Case) -> Mercury {
    let answer = case.circumstances.fire_gilding;
    if case.has_seen(FindingId::P14) {
        Mercury::Found
    } else if answer == Some(true) {
        Mercury::Likely
    } else if !was_gilt(case) {
        Mercury::NoSign
    } else if answer == Some(false) {
        Mercury::Unlikely
    } else {
        Mercury::Possible
    }
}

/// Gilding that is still there, whole or worn.
pub(super) fn gilt(case: &Case) -> bool {
    case.parts.iter().any(|p| {
        p.interior == Some(Interior::Gilt)
            || matches!(p.gilding, Some(Gilding::Whole | Gilding::Worn))
    })
}

/// Gilding that is there or once was. Traces of old gilding may still contain mercury.
pub(super) fn was_gilt(case: &Case) -> bool {
    gilt(case) || case.parts.iter().any(|p| p.gilding.is_some())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Draft;

    #[test]
    fn every_record_of_gilding_counts_and_the_gravest_holds() {
        let of = |set: &[(&str, &str)]| {
            let mut draft = Draft::default();
            for (path, text) in set {
                draft.set(path, text);
            }
            mercury(&draft.read().0)
        };
        let worn = ("parts[part=border].gilding", "worn");
        let gone = ("parts[part=border].gilding", "gone");
        let old = ("catalogue.fire_gilding", "yes");
        let newer = ("catalogue.fire_gilding", "no");
        assert_eq!(of(&[]), Mercury::NoSign);
        assert_eq!(of(&[newer]), Mercury::NoSign);
        assert_eq!(of(&[worn, newer]), Mercury::Unlikely);
        assert_eq!(of(&[worn]), Mercury::Possible);
        assert_eq!(of(&[gone]), Mercury::Possible);
        assert_eq!(of(&[old]), Mercury::Likely);
        let mut found = Draft::default();
        found.set("catalogue.fire_gilding", "no");
        found.set_answer(FindingId::P14, "seen", "");
        assert_eq!(mercury(&found.read().0), Mercury::Found);
    }
}
