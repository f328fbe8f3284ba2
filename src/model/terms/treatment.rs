//! The catalogue of treatments, by stable id.

/// A treatment. The ledger holds the words about it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Treatment {
    /// Leave it alone and keep an eye on it.
    Leave,
    /// Better handling, storage and display.
    Keeping,
    /// Dust, wash, degrease.
    Wash,
    /// Old lacquer taken off.
    LacquerOff,
    /// Gentle cleaning with precipitated chalk.
    Clean,
    /// Proprietary foam, cream or cloth.
    Foam,
    /// Chemical dip.
    Dip,
    /// Foil-and-soda or electrolytic bath.
    FoilBath,
    /// Lacquer.
    Lacquer,
    /// Dents taken out.
    Dents,
    /// Soft-solder repair, lead-free.
    Solder,
    /// Low-melt or glued repair.
    LowMelt,
    /// Old lead solder taken out, with rework.
    RemoveLead,
    /// Filling taken out of mounts and bases.
    RemoveFill,
    /// Hard solder.
    HardSolder,
    /// Pin, screw, collar or glue in an existing place.
    Mechanical,
    /// Local electroplating.
    LocalPlate,
    /// Rub-on silvering.
    RubOn,
    /// Removable toning.
    Toning,
    /// Stripped, buffed and replated.
    Replate,
    /// Plated over without stripping first.
    Overplate,
    /// The inside retinned.
    Tinning,
    /// Inside gilding renewed.
    Regild,
    /// A lost part replaced.
    ReplacePart,
    /// Test for lead.
    TestLead,
}

/// An unordered set of treatments.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct TreatmentSet(u32);

impl TreatmentSet {
    /// The set of these treatments.
    #[must_use]
    pub fn of(treatments: &[Treatment]) -> Self {
        treatments.iter().copied().collect()
    }

    /// What is in either set.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// Its treatments, in order of id.
    pub fn iter(self) -> impl Iterator<Item = Treatment> {
        let is_in = move |t: &Treatment| self.0 & 1 << *t as u32 != 0;
        Treatment::ALL.into_iter().filter(is_in)
    }
}

impl FromIterator<Treatment> for TreatmentSet {
    fn from_iter<T: IntoIterator<Item = Treatment>>(treatments: T) -> Self {
        Self(treatments.into_iter().fold(0, |set, t| set | 1 << t as u32))
    }
}

const _: () = assert!(Treatment::ALL.len() <= u32::BITS as usize);

impl Treatment {
    /// Every treatment, in order of id.
    pub const ALL: [Self; 25] = [
        Self::Leave,
        Self::Keeping,
        Self::Wash,
        Self::LacquerOff,
        Self::Clean,
        Self::Foam,
        Self::Dip,
        Self::FoilBath,
        Self::Lacquer,
        Self::Dents,
        Self::Solder,
        Self::LowMelt,
        Self::RemoveLead,
        Self::RemoveFill,
        Self::HardSolder,
        Self::Mechanical,
        Self::LocalPlate,
        Self::RubOn,
        Self::Toning,
        Self::Replate,
        Self::Overplate,
        Self::Tinning,
        Self::Regild,
        Self::ReplacePart,
        Self::TestLead,
    ];

    /// The treatments that the advice weighs, in the order they would be done: investigate, wash, remove,
    /// repair, clean, plate, keep.
    pub const WEIGHED: [Self; 21] = [
        Self::Leave,
        Self::TestLead,
        Self::Wash,
        Self::LacquerOff,
        Self::RemoveLead,
        Self::RemoveFill,
        Self::Dents,
        Self::Tinning,
        Self::Solder,
        Self::LowMelt,
        Self::Mechanical,
        Self::ReplacePart,
        Self::Clean,
        Self::Foam,
        Self::LocalPlate,
        Self::Overplate,
        Self::Replate,
        Self::Regild,
        Self::Toning,
        Self::Lacquer,
        Self::Keeping,
    ];

    /// The treatments shown with the reason they never suit these pieces.
    pub const NEVER: [Self; 4] = [Self::Dip, Self::FoilBath, Self::HardSolder, Self::RubOn];

    /// Whether it adds metal to a piece, takes metal off or changes its parts, so that the law on hallmarked
    /// silver may ask about it.
    #[must_use]
    pub fn alters(self) -> bool {
        matches!(
            self,
            Self::Solder
                | Self::LowMelt
                | Self::RemoveLead
                | Self::HardSolder
                | Self::LocalPlate
                | Self::Replate
                | Self::Overplate
                | Self::Regild
                | Self::ReplacePart
        )
    }

    /// Stable id, such as `T09b`.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Leave => "T00",
            Self::Keeping => "T01",
            Self::Wash => "T02",
            Self::LacquerOff => "T02b",
            Self::Clean => "T03",
            Self::Foam => "T04",
            Self::Dip => "T05",
            Self::FoilBath => "T06",
            Self::Lacquer => "T07",
            Self::Dents => "T08",
            Self::Solder => "T09",
            Self::LowMelt => "T09b",
            Self::RemoveLead => "T10a",
            Self::RemoveFill => "T10b",
            Self::HardSolder => "T11",
            Self::Mechanical => "T12",
            Self::LocalPlate => "T13a",
            Self::RubOn => "T13b",
            Self::Toning => "T13c",
            Self::Replate => "T14a",
            Self::Overplate => "T14b",
            Self::Tinning => "T15",
            Self::Regild => "T15b",
            Self::ReplacePart => "T16",
            Self::TestLead => "T17",
        }
    }

    /// The treatment with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|t| t.id() == id)
    }
}

/// Ordinal scale of how far a treatment can be undone, worst first (terms of EN 15898; the scale
/// is our judgement).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reversibility {
    /// Original material is destroyed.
    V0,
    /// Something is added that cannot be removed without harm.
    V1,
    /// Can be undone with some loss or risk.
    V2,
    /// Can be removed without residue.
    V3,
    /// The object is not touched.
    V4,
}

impl Reversibility {
    /// The code.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::V0 => "V0",
            Self::V1 => "V1",
            Self::V2 => "V2",
            Self::V3 => "V3",
            Self::V4 => "V4",
        }
    }

    /// Reads a code.
    #[must_use]
    pub fn parse(code: &str) -> Option<Self> {
        [Self::V0, Self::V1, Self::V2, Self::V3, Self::V4]
            .into_iter()
            .find(|v| v.code() == code)
    }

    /// The code in plain words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::V0 => "cannot be undone; something original is gone",
            Self::V1 => "cannot be undone; something is added",
            Self::V2 => "can be undone with some loss",
            Self::V3 => "leaves nothing behind",
            Self::V4 => "nothing is done to the piece",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_round_trip() {
        for treatment in Treatment::ALL {
            assert_eq!(Treatment::parse(treatment.id()), Some(treatment));
        }
        assert_eq!(Treatment::parse("T18"), None);
    }
}
