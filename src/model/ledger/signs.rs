//! Groups of findings with the same meaning, for code that asks about the meaning and not about one look.

use super::FindingId;

/// A piece of silver was let in or rubbed in to carry the arms.
pub const LET_IN: [FindingId; 3] = [FindingId::C13, FindingId::C25, FindingId::C26];

/// A mark or a let-in shield that makes fused plate worth keeping as it is.
pub const KEEP_AS_IT_IS: [FindingId; 6] = [
    FindingId::M04,
    FindingId::M05,
    FindingId::M25,
    FindingId::C13,
    FindingId::C25,
    FindingId::C26,
];

/// A mark struck by a registered plater, or the sham hallmarks of earlier years.
pub const EARLY_MARKS: [FindingId; 3] = [FindingId::M04, FindingId::M05, FindingId::M25];

/// Rust shows.
pub const RUST: [FindingId; 2] = [FindingId::S07, FindingId::S21];

/// The silver is lifting, or there is rust under it.
pub const LIFTING: [FindingId; 3] = [FindingId::S07, FindingId::S21, FindingId::S22];

/// The metal under the silver shows.
pub const BASE_METAL: [FindingId; 4] = [
    FindingId::S03,
    FindingId::S04,
    FindingId::S05,
    FindingId::S06,
];

/// The piece is loaded or filled with something that moves, bursts or holds water.
pub const LOADED: [FindingId; 3] = [FindingId::C32, FindingId::C33, FindingId::M15];

/// A mark that says electroplate on nickel silver, or electroplate in shields.
pub const ELECTROPLATE_MARKS: [FindingId; 3] = [FindingId::M01, FindingId::M06, FindingId::M29];

/// Hallmarks of silver, on the whole piece or on a mount.
pub const HALLMARKS: [FindingId; 2] = [FindingId::M03, FindingId::M28];
