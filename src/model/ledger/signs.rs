//! Groups of findings with the same meaning, for code that asks about the meaning and not about one look.

/// A piece of silver was let in or rubbed in to carry the arms.
pub const LET_IN: [&str; 3] = ["C13", "C25", "C26"];

/// A mark or a let-in shield that makes fused plate worth keeping as it is.
pub const KEEP_AS_IT_IS: [&str; 6] = ["M04", "M05", "M25", "C13", "C25", "C26"];

/// A mark struck by a registered plater, or the sham hallmarks of earlier years.
pub const EARLY_MARKS: [&str; 3] = ["M04", "M05", "M25"];

/// Rust shows.
pub const RUST: [&str; 2] = ["S07", "S21"];

/// The silver is lifting, or there is rust under it.
pub const LIFTING: [&str; 3] = ["S07", "S21", "S22"];

/// The metal under the silver shows.
pub const BASE_METAL: [&str; 4] = ["S03", "S04", "S05", "S06"];

/// The piece is loaded or filled with something that moves, bursts or holds water.
pub const LOADED: [&str; 3] = ["C32", "C33", "M15"];

/// A mark that says electroplate on nickel silver, or electroplate in shields.
pub const ELECTROPLATE_MARKS: [&str; 3] = ["M01", "M06", "M29"];

/// Hallmarks of silver, on the whole piece or on a mount.
pub const HALLMARKS: [&str; 2] = ["M03", "M28"];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::finding;

    #[test]
    fn every_sign_is_a_finding() {
        for id in [
            &LET_IN[..],
            &KEEP_AS_IT_IS,
            &EARLY_MARKS,
            &RUST,
            &LIFTING,
            &BASE_METAL,
            &LOADED,
            &ELECTROPLATE_MARKS,
            &HALLMARKS,
        ]
        .concat()
        {
            assert!(finding(id).is_some(), "{id}");
        }
    }
}
