//! What the trade's words on a sheet mean.

pub(crate) const WORDS_USED: &str = "Words used here";

/// Word, the pieces of it that tell it is used (parted by `|`), and what it means.
pub(crate) const WORDS: [(&str, &str, &str); 26] = [
    (
        "auction commission",
        "commission",
        "The seller's fee to an auction house, a share of the hammer price.",
    ),
    (
        "base metal",
        "base metal",
        "The copper, brass, nickel silver, Britannia metal or steel under the silver.",
    ),
    (
        "bleed",
        "bleed",
        "Base metal showing where the silver has worn through.",
    ),
    (
        "Britannia metal",
        "britannia",
        "A soft alloy, mostly tin, that melts low.",
    ),
    (
        "close plate",
        "close plate",
        "Silver foil held by tin on iron or steel.",
    ),
    (
        "display only",
        "display",
        "Not to be used for food or drink.",
    ),
    (
        "electroplate",
        "electroplat",
        "Base metal covered with silver by an electric current, from about 1840.",
    ),
    (
        "filled mount",
        "filled",
        "A thin stamped border or foot, backed with soft grey metal or pitch to hold its shape.",
    ),
    (
        "flat chasing",
        "chas",
        "A pattern pressed into the surface with blunt tools; no metal is cut away.",
    ),
    (
        "French plate",
        "french plate",
        "Silver leaf rubbed onto brass, bronze or copper with heat.",
    ),
    (
        "fused plate",
        "fused plate",
        "Copper with a sheet of silver fused to it by heat, then rolled and worked; the trade's old Sheffield plate.",
    ),
    (
        "hammer",
        "hammer",
        "The price a lot is knocked down for, before fees.",
    ),
    (
        "lacquer",
        "lacquer",
        "A clear coat that keeps tarnish away.",
    ),
    (
        "let-in shield",
        "let in",
        "A piece of thicker silver set into fused plate where arms were to be engraved.",
    ),
    (
        "nickel silver",
        "nickel silver",
        "A white alloy of copper, nickel and zinc; there is no silver in it.",
    ),
    (
        "originality",
        "original",
        "How much of what left the maker's hands is still there, from 0 to 1.",
    ),
    (
        "Part",
        "condition by part",
        "A named piece of the whole, such as foot or spout, with a condition of its own.",
    ),
    (
        "preventive conservation",
        "preventive",
        "Looking after the surroundings and use of a piece; the piece itself is not touched.",
    ),
    (
        "remedial conservation",
        "remedial",
        "Work on a piece to stop damage going on, or to strengthen it.",
    ),
    (
        "re-plated",
        "re-plat|replat",
        "Covered with new silver by electricity after it left the maker.",
    ),
    (
        "reserve",
        "reserve",
        "The least a seller will take at auction.",
    ),
    (
        "restoration",
        "restoration",
        "Work on a sound piece so that it can be better enjoyed, understood or used.",
    ),
    (
        "reversibility",
        "undone",
        "How far a thing done can be undone without harm.",
    ),
    (
        "soft solder",
        "solder",
        "A low-melting metal that joins parts; old solder usually holds lead.",
    ),
    (
        "tarnish",
        "tarnish",
        "The dark layer that sulphur in the air makes of silver.",
    ),
    ("tinning", "tinned", "A lining of tin over copper."),
];

pub(crate) const LIKELIHOOD: &str = "How likely a thing is, is said in these words (Mastrandrea et \
    al. 2010). Where two ranges meet, the narrower one is meant.";
pub(crate) const FIRMNESS_AND_RANGES: &str = "Clear, leaning and open say how firm an answer is. A \
    range such as \"200 to 400\" leaves out the lowest and the highest tenth of the ways things may \
    be; the middle value has as many above it as below.";
