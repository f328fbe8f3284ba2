//! What a piece of evidence comes from: a finding, or a reading of an instrument.

use serde::{Deserialize, Serialize};

use super::finding_id::FindingId;
use crate::terms::as_ids;

/// What an instrument reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ReadingOf {
    /// Weight in air and in water.
    Density,
    /// Electrical conductivity.
    Conductivity,
    /// The X-rays that the surface gives back.
    Xray,
}

impl ReadingOf {
    const ALL: [Self; 3] = [Self::Density, Self::Conductivity, Self::Xray];

    /// Stable id.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Density => "density",
            Self::Conductivity => "conductivity",
            Self::Xray => "xray",
        }
    }
}

/// A finding or a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EvidenceId {
    /// A finding of the ladder.
    Finding(FindingId),
    /// A reading of an instrument.
    Reading(ReadingOf),
}

impl EvidenceId {
    /// The id as text.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::Finding(id) => id.text(),
            Self::Reading(of) => of.id(),
        }
    }

    /// The observation with this id.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let reading = ReadingOf::ALL.into_iter().find(|of| of.id() == text);
        let finding = FindingId::parse(text).map(Self::Finding);
        reading.map(Self::Reading).or(finding)
    }
}

as_ids!(EvidenceId by text);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn findings_and_readings_are_found_by_their_ids() {
        let readings = ReadingOf::ALL.map(EvidenceId::Reading);
        for of in FindingId::all().map(EvidenceId::Finding).chain(readings) {
            assert_eq!(EvidenceId::parse(of.text()), Some(of));
        }
        assert_eq!(EvidenceId::parse("weight"), None);
    }
}
