//! Ids of figures as constants, generated from the data by the build script, so that code with an unknown id
//! does not compile.

use std::fmt;
use std::sync::OnceLock;

/// The id of a figure. Every value names a figure of the ledger as shipped, so looking one up cannot
/// fail.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FigureId(u16);

include!(concat!(env!("OUT_DIR"), "/figure_ids.rs"));

impl FigureId {
    /// The id as text, as used in files and on screens.
    #[must_use]
    pub fn text(self) -> &'static str {
        names()[self.place()]
    }

    /// The id with this text, for text that comes from a file or a user.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let place = names().binary_search(&text).ok()?;
        u16::try_from(place).ok().map(Self)
    }

    /// Every id, in alphabetical order.
    pub fn all() -> impl Iterator<Item = Self> {
        (0..).map(Self).take(names().len())
    }

    /// Index in alphabetical order, from 0.
    #[must_use]
    pub const fn place(self) -> usize {
        self.0 as usize
    }

    /// The ids of a family of figures, with `before` and `after` around each member: `family("silver.t0.",
    /// Kind::CODES, "")`. Meant for constants, where a missing figure stops the compiler.
    ///
    /// # Panics
    /// When a member has no figure; in a constant, this is a compile error.
    #[must_use]
    pub const fn family<const N: usize>(
        before: &str,
        members: [&str; N],
        after: &str,
    ) -> [Self; N] {
        let found = Self::family_if_any(before, members, after);
        let mut ids = [Self(0); N];
        let mut i = 0;
        while i < N {
            ids[i] = match found[i] {
                Some(id) => id,
                None => panic!("a member of the family has no figure"),
            };
            i += 1;
        }
        ids
    }

    /// Like [`FigureId::family`], for families in which only some members have a figure.
    #[must_use]
    pub const fn family_if_any<const N: usize>(
        before: &str,
        members: [&str; N],
        after: &str,
    ) -> [Option<Self>; N] {
        let mut ids = [None; N];
        let mut i = 0;
        while i < N {
            ids[i] = of_parts(&[before, members[i], after]);
            i += 1;
        }
        ids
    }
}

/// Every id as text, in alphabetical order. The program carries the names as one text; `IDS` serves only
/// constants, because carrying it would make the program some KB larger.
pub(super) fn names() -> &'static [&'static str] {
    static SPLIT: OnceLock<Vec<&'static str>> = OnceLock::new();
    SPLIT.get_or_init(|| NAMES.lines().collect())
}

/// The id whose text is the concatenation of these parts.
const fn of_parts(parts: &[&str]) -> Option<FigureId> {
    let (mut low, mut high) = (0_usize, IDS.len());
    while low < high {
        let middle = usize::midpoint(low, high);
        match compare(IDS[middle], parts) {
            0 => {
                #[allow(clippy::cast_possible_truncation)] // fewer figures than 65,536
                return Some(FigureId(middle as u16));
            }
            less if less < 0 => low = middle + 1,
            _ => high = middle,
        }
    }
    None
}

/// Compares a text with the concatenation of parts, byte by byte: below 0, 0 or above 0.
const fn compare(text: &str, parts: &[&str]) -> i32 {
    let text = text.as_bytes();
    let (mut at, mut part) = (0, 0);
    while part < parts.len() {
        let bytes = parts[part].as_bytes();
        let mut i = 0;
        while i < bytes.len() {
            if at == text.len() {
                return -1;
            }
            if text[at] != bytes[i] {
                return text[at] as i32 - bytes[i] as i32;
            }
            at += 1;
            i += 1;
        }
        part += 1;
    }
    if at == text.len() { 0 } else { 1 }
}

impl fmt::Debug for FigureId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

impl fmt::Display for FigureId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_id_is_found_by_its_text_and_by_its_parts() {
        for id in FigureId::all() {
            assert_eq!(FigureId::parse(id.text()), Some(id));
            let (before, after) = id.text().split_at(id.text().len() / 2);
            assert_eq!(of_parts(&[before, "", after]), Some(id));
        }
        assert_eq!(FigureId::parse("fee.comission"), None);
        assert_eq!(of_parts(&["fee.", "lo"]), None);
        assert_eq!(of_parts(&["fee.", "lott"]), None);
    }

    #[test]
    fn a_family_finds_each_member() {
        const ENDS: [FigureId; 2] = FigureId::family("fee.", ["lot", "commission"], "");
        assert_eq!(ENDS, [FigureId::FEE_LOT, FigureId::FEE_COMMISSION]);
        assert_eq!(
            FigureId::family_if_any("fee.", ["lot", "none"], ""),
            [Some(FigureId::FEE_LOT), None]
        );
    }
}
