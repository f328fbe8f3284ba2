//! Faults that work may answer.

/// A fault that work may answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fault {
    /// Dents or distortion.
    Dents,
    /// Metal split through.
    Split,
    /// A seam that is open or leaks.
    OpenJoint,
    /// A handle, knob, foot, cover or base that has come loose.
    LoosePart,
    /// A crack in wood, ivory or another material that is not metal.
    CrackedMaterial,
    /// A grey repair, which probably contains lead.
    GreyRepair,
    /// A filling that fails or sits loose.
    FailingFilling,
    /// A filling that shows through a worn mount.
    FillingShows,
    /// A part that is lost.
    PartLost,
    /// A tin lining that is gone, or bare metal inside.
    LiningGone,
    /// A gilt lining that is worn or gone.
    GildingGone,
    /// Lacquer that is broken or yellowed.
    BrokenLacquer,
    /// Tarnish.
    Tarnish,
    /// Bare metal on a part that was looked at.
    BareMetal,
    /// Active corrosion.
    Corrosion,
}

impl Fault {
    /// Every fault, in order of severity by kind.
    pub const ALL: [Self; 15] = [
        Self::Split,
        Self::OpenJoint,
        Self::PartLost,
        Self::LoosePart,
        Self::CrackedMaterial,
        Self::FailingFilling,
        Self::Dents,
        Self::GreyRepair,
        Self::Corrosion,
        Self::LiningGone,
        Self::GildingGone,
        Self::BrokenLacquer,
        Self::FillingShows,
        Self::BareMetal,
        Self::Tarnish,
    ];

    /// The id used in reports.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Dents => "dents",
            Self::Split => "split",
            Self::OpenJoint => "open_joint",
            Self::LoosePart => "loose_part",
            Self::CrackedMaterial => "cracked_material",
            Self::GreyRepair => "grey_repair",
            Self::FailingFilling => "failing_filling",
            Self::FillingShows => "filling_shows",
            Self::PartLost => "part_lost",
            Self::LiningGone => "lining_gone",
            Self::GildingGone => "gilding_gone",
            Self::BrokenLacquer => "broken_lacquer",
            Self::Tarnish => "tarnish",
            Self::BareMetal => "bare_metal",
            Self::Corrosion => "corrosion",
        }
    }

    /// The fault in a few words.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Dents => "Dents",
            Self::Split => "A split",
            Self::OpenJoint => "An open or leaking joint",
            Self::LoosePart => "A loose part",
            Self::CrackedMaterial => "A crack in wood, ivory or the like",
            Self::GreyRepair => "An old grey repair",
            Self::FailingFilling => "A failing filling",
            Self::FillingShows => "Filling showing through a mount",
            Self::PartLost => "A missing part",
            Self::LiningGone => "A worn or missing lining",
            Self::GildingGone => "Worn or lost gilding inside",
            Self::BrokenLacquer => "Broken lacquer",
            Self::Tarnish => "Tarnish",
            Self::BareMetal => "Bare metal",
            Self::Corrosion => "Corrosion",
        }
    }

    /// The fault with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|fault| fault.id() == id)
    }
}
