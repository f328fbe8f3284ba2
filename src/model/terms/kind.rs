//! Kinds and families of pieces, and the letters and clusters of the likelihood ladder.

/// What a piece is: how the body was made, combined with the silver now on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// Solid silver.
    Sil,
    /// Fused plate, silver on one side, tinned inside.
    Fps,
    /// Fused plate, silver on both sides.
    Fpd,
    /// Late fused plate with a nickel-silver layer or core.
    Fpn,
    /// Close plate: silver foil tinned to iron or steel.
    Clp,
    /// French plate: leaf burnished on brass, bronze or copper.
    Frp,
    /// Electroplate on copper or brass.
    Ecu,
    /// Electroplate on nickel silver.
    Ens,
    /// Electroplate on Britannia metal.
    Ebm,
    /// Fused plate, electroplated later.
    Rfp,
    /// Later reproduction in the fused-plate style.
    Rep,
    /// Weighted sterling: a thin silver shell on a filling.
    Wst,
    /// Electroplate on iron or steel.
    Est,
    /// Plain copper or brass, never silvered.
    Ucu,
    /// Plain nickel silver or paktong, never silvered.
    Uns,
    /// Plain Britannia metal or pewter, never silvered.
    Ubm,
    /// Nickel or chromium plate.
    Ncp,
    /// Outside these kinds.
    Out,
}

/// One number for each kind, in the order of [`Kind::ALL`].
pub type ByKind = [f64; Kind::COUNT];

/// One number for each kind the ladder has letters for, in the order of [`Kind::LADDER`].
pub type ByLadderKind = [f64; Kind::LADDER.len()];

impl Kind {
    /// How many kinds there are.
    pub const COUNT: usize = 18;

    /// The codes of [`Kind::ALL`], in its order.
    pub const CODES: [&'static str; Self::COUNT] = [
        "SIL", "FPS", "FPD", "FPN", "CLP", "FRP", "ECU", "ENS", "EBM", "RFP", "REP", "WST", "EST",
        "UCU", "UNS", "UBM", "NCP", "OUT",
    ];

    /// Every kind.
    pub const ALL: [Self; Self::COUNT] = [
        Self::Sil,
        Self::Fps,
        Self::Fpd,
        Self::Fpn,
        Self::Clp,
        Self::Frp,
        Self::Ecu,
        Self::Ens,
        Self::Ebm,
        Self::Rfp,
        Self::Rep,
        Self::Wst,
        Self::Est,
        Self::Ucu,
        Self::Uns,
        Self::Ubm,
        Self::Ncp,
        Self::Out,
    ];

    /// The kinds the ladder has letters for, in its column order: all but [`Kind::Out`].
    pub const LADDER: [Self; 17] = [
        Self::Sil,
        Self::Fps,
        Self::Fpd,
        Self::Fpn,
        Self::Clp,
        Self::Frp,
        Self::Ecu,
        Self::Ens,
        Self::Ebm,
        Self::Rfp,
        Self::Rep,
        Self::Wst,
        Self::Est,
        Self::Ucu,
        Self::Uns,
        Self::Ubm,
        Self::Ncp,
    ];

    /// Index in [`Kind::ALL`].
    #[must_use]
    pub fn index(self) -> usize {
        self as usize
    }

    /// The code used in files.
    #[must_use]
    pub fn code(self) -> &'static str {
        Self::CODES[self.index()]
    }

    /// The kind with this code.
    #[must_use]
    pub fn parse(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|k| k.code() == code)
    }

    /// The kind in trade words.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Sil => "solid silver",
            Self::Fps => "fused plate, one side, tinned inside",
            Self::Fpd => "fused plate, both sides",
            Self::Fpn => "late fused plate with nickel silver",
            Self::Clp => "close plate on iron or steel",
            Self::Frp => "French plate",
            Self::Ecu => "electroplate on copper or brass",
            Self::Ens => "electroplate on nickel silver",
            Self::Ebm => "electroplate on Britannia metal",
            Self::Rfp => "fused plate, electroplated later",
            Self::Rep => "later reproduction in fused-plate style",
            Self::Wst => "weighted sterling, a silver shell on a filling",
            Self::Est => "electroplate on iron or steel",
            Self::Ucu => "plain copper or brass, not silvered",
            Self::Uns => "plain nickel silver or paktong, not silvered",
            Self::Ubm => "plain Britannia metal or pewter, not silvered",
            Self::Ncp => "nickel or chromium plate",
            Self::Out => "something outside these kinds",
        }
    }

    /// The family in which it is reported.
    #[must_use]
    pub fn family(self) -> Family {
        match self {
            Self::Sil | Self::Wst => Family::Solid,
            Self::Fps | Self::Fpd | Self::Fpn => Family::Fused,
            Self::Rfp => Family::ReplatedFused,
            Self::Clp => Family::Close,
            Self::Frp => Family::French,
            Self::Ecu | Self::Ens | Self::Ebm | Self::Est | Self::Rep => Family::Electroplate,
            Self::Ucu | Self::Uns | Self::Ubm | Self::Ncp | Self::Out => Family::Outside,
        }
    }

    /// Whether it has a surface layer on another metal that can wear through: silver on all plated kinds,
    /// nickel or chromium on [`Kind::Ncp`].
    #[must_use]
    pub fn has_layer(self) -> bool {
        !matches!(
            self,
            Self::Sil | Self::Wst | Self::Ucu | Self::Uns | Self::Ubm
        )
    }

    /// Whether the kind implies that it never had any silver.
    #[must_use]
    pub fn is_unsilvered(self) -> bool {
        matches!(self, Self::Ucu | Self::Uns | Self::Ubm | Self::Ncp)
    }
}

/// Families of kinds, which a user sees before the kinds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    /// Solid silver.
    Solid,
    /// Fused plate with its original surface.
    Fused,
    /// Fused plate, electroplated later.
    ReplatedFused,
    /// Close plate.
    Close,
    /// French plate.
    French,
    /// Electroplate of any sort.
    Electroplate,
    /// Not silvered, or outside the kinds.
    Outside,
}

impl Family {
    /// Every family.
    pub const ALL: [Self; 7] = [
        Self::Fused,
        Self::ReplatedFused,
        Self::Electroplate,
        Self::Close,
        Self::French,
        Self::Solid,
        Self::Outside,
    ];

    /// Index in [`Family::ALL`].
    #[must_use]
    pub fn place(self) -> usize {
        Self::ALL.iter().position(|f| *f == self).unwrap_or(0)
    }

    /// The id used in files.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Solid => "solid",
            Self::Fused => "fused",
            Self::ReplatedFused => "replated_fused",
            Self::Close => "close",
            Self::French => "french",
            Self::Electroplate => "electroplate",
            Self::Outside => "outside",
        }
    }

    /// The family with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|family| family.id() == id)
    }

    /// The family in words.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Solid => "solid silver",
            Self::Fused => "fused plate (old Sheffield plate)",
            Self::ReplatedFused => "fused plate, electroplated later",
            Self::Close => "close plate",
            Self::French => "French plate",
            Self::Electroplate => "electroplate",
            Self::Outside => "not silvered, or something else",
        }
    }

    /// What the words mean, for a reader who has never met them.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Solid => "Silver all through, or a shell of it on a filling.",
            Self::Fused => {
                "Silver bonded to copper as one sheet before anything was made from it, from about 1743 to about \
                 1860. The trade calls it old Sheffield plate."
            }
            Self::ReplatedFused => "Such a piece, covered with new silver by electricity later on.",
            Self::Close => "Silver foil held by tin on iron or steel.",
            Self::French => "Silver leaf rubbed onto brass, bronze or copper.",
            Self::Electroplate => {
                "Made of copper, brass, nickel silver, white metal or steel first, then covered with silver by \
                 electricity, from 1840."
            }
            Self::Outside => {
                "None of these: plain copper, brass, nickel silver or pewter, nickel plate, gilt copper and the like."
            }
        }
    }
}

/// Step of the likelihood ladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Letter {
    /// Near-certain.
    N,
    /// Likely.
    L,
    /// Possible.
    P,
    /// Unlikely.
    U,
    /// Near-impossible.
    X,
}

impl Letter {
    /// Every letter, most likely first.
    pub const ALL: [Self; 5] = [Self::N, Self::L, Self::P, Self::U, Self::X];

    /// The codes of [`Letter::ALL`], in its order.
    pub const CODES: [&'static str; 5] = ["N", "L", "P", "U", "X"];

    /// The letter as used in files and figure ids.
    #[must_use]
    pub fn code(self) -> &'static str {
        Self::CODES[self as usize]
    }

    /// Reads a letter.
    #[must_use]
    pub fn parse(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|l| l.code() == code)
    }
}

/// Findings that share a cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cluster {
    /// Construction.
    Constr,
    /// Edges.
    Edge,
    /// Mounts.
    Mount,
    /// Shield and engraving.
    Shield,
    /// Inside.
    Interior,
    /// Surface colour.
    Surface,
    /// What shows where it is worn.
    Wear,
    /// How the silver lies.
    Deposit,
    /// Marks.
    Mark,
    /// Physical measures.
    Phys,
    /// Style and form.
    Style,
    /// Papers and dated inscriptions.
    Date,
}

impl Cluster {
    /// Every cluster, in file order.
    pub const ALL: [Self; 12] = [
        Self::Constr,
        Self::Edge,
        Self::Mount,
        Self::Shield,
        Self::Interior,
        Self::Surface,
        Self::Wear,
        Self::Deposit,
        Self::Mark,
        Self::Phys,
        Self::Style,
        Self::Date,
    ];

    /// Reads a cluster name.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Some(match text {
            "constr" => Self::Constr,
            "edge" => Self::Edge,
            "mount" => Self::Mount,
            "shield" => Self::Shield,
            "interior" => Self::Interior,
            "surface" => Self::Surface,
            "wear" => Self::Wear,
            "deposit" => Self::Deposit,
            "mark" => Self::Mark,
            "phys" => Self::Phys,
            "style" => Self::Style,
            "date" => Self::Date,
            _ => return None,
        })
    }
}
