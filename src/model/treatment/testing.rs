//! Cases and situations for the tests of the rules.

use super::{LeadStatus, Situation};
use crate::bench::SolderReach;
use crate::identity::{Evidence, interval_with};
use crate::ledger::FindingId;
use crate::ledger::Ledger;
use crate::record::{Answer, Case, Part, PartName, Seen};

/// A case with these findings seen and one body, modified by `body`.
pub(super) fn case(seen: &[&'static str], body: impl FnOnce(&mut Part)) -> Case {
    let mut part = Part::unknown(PartName::Body);
    body(&mut part);
    Case {
        findings: seen
            .iter()
            .map(|id| Answer {
                id: FindingId::parse(id).unwrap(),
                seen: Seen::Yes,
                part: None,
            })
            .collect(),
        parts: vec![part],
        ..Case::default()
    }
}

pub(super) fn situation(case: &Case) -> Situation<'_> {
    let ledger = Ledger::standard();
    let bleed = crate::silver::bleed_range(case.parts.first().and_then(|p| p.bleed), ledger);
    Situation {
        case,
        ledger,
        posterior: interval_with(&Evidence::of(case, &[]), ledger).base,
        body_bleed: bleed.likely,
        covered_area: 1.0 - bleed.low,
        worn_through: 0.0,
        next_look: "a look",
        looked_at: 1.0,
        largest_unseen: None,
        heat_reach: SolderReach {
            likely_mm: 5.63,
            most_mm: 30.0,
        },
        each: Vec::new(),
        lead: LeadStatus::Unknown,
        joint: Situation::stated_joint(case),
        replated: false,
        low_melt: false,
        cleaned: false,
        lacquer_off: false,
        to_be_plated: false,
        lining_tested: false,
    }
}
