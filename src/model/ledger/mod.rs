//! The ledger: every number the model rests on, as data.
//!
//! Invariant: no other module holds figures. A formula's constants that are pure mathematics (a half, pi)
//! stay in the formula; anything open to dispute is an entry here with value, range, unit, source and tag,
//! and the user can override it.

mod catalogue_text;
mod duty;
mod evidence_id;
mod figure;
mod figure_id;
mod finding;
mod finding_id;
mod ground;
mod meaning_of_words;
mod proposal;
mod row_id;
mod rule;
mod rule_id;
mod safe_range;
pub mod signs;
mod table;
mod treatment_text;
#[cfg(any(test, feature = "trace"))]
mod used;

use std::sync::OnceLock;

pub use catalogue_text::{CatalogueText, Risk, catalogue_text, catalogue_texts};
pub use duty::{Duty, Status, duties, signposts};
pub use evidence_id::{EvidenceId, ReadingOf};
pub use figure::{Figure, Shape, Tag};
pub use figure_id::FigureId;
pub use finding::{
    FindingFact, LOOK_EFFORT, LowerEnd, Place, Requires, Window, WindowOf, findings, windows,
};
pub use finding_id::FindingId;
pub use ground::Ground;
pub use meaning_of_words::{FoundWord, Meaning, WORDS, next_word, words_in};
pub use proposal::{SuggestedBy, WordsIn, suggestions};
pub use rule::{GuardText, Lifts, SoftText, guard_texts, soft_rules};
pub use rule_id::RuleId;
pub use safe_range::{SafeRange, safe_range};
pub use treatment_text::{
    CautionText, Hand, Level, Offered, TreatmentText, caution, cautions, treatment_text,
    treatment_texts,
};

#[cfg(any(test, feature = "trace"))]
pub use used::read_during;

use crate::terms::decimal;
use table::rows;

/// Version of the figures, printed with every answer. Raise it when a data file changes.
pub const LEDGER_VERSION: &str = "2026.17";

/// A published source, or one of our three substitutes for "no source".
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// Id used by figures.
    pub id: &'static str,
    /// Author, year and title, as far as known.
    pub citation: &'static str,
    /// Book, article, standard, law, data, web, judgement, practice or computed.
    pub kind: &'static str,
}

/// The table of all figures, with the user's own values applied.
#[derive(Clone, Debug, PartialEq)]
pub struct Ledger {
    /// In order of id, so that a [`FigureId`] is an index into it.
    figures: Vec<Figure>,
}

/// Why a user's own value was refused.
#[derive(Clone, Debug, PartialEq)]
pub enum OverrideFault {
    /// No figure has this id; the nearest id is suggested.
    Unknown {
        /// The closest existing id.
        nearest: &'static str,
    },
    /// Not a finite number.
    NotFinite,
    /// Negative, where the figure cannot be.
    Negative,
    /// A share or chance outside 0 to 1.
    OutsideShare,
    /// Outside what is safe for a figure on which a rule of safety rests.
    Unsafe(SafeRange),
}

impl Ledger {
    /// The ledger as shipped.
    #[must_use]
    pub fn standard() -> &'static Self {
        static LEDGER: OnceLock<Ledger> = OnceLock::new();
        LEDGER.get_or_init(|| {
            let text = include_str!(concat!(env!("OUT_DIR"), "/figures.psv"));
            let figures = embedded(read_figures(figure_id::names(), text));
            Self { figures }
        })
    }

    /// The figure with this id.
    #[must_use]
    pub fn figure(&self, id: FigureId) -> &Figure {
        let figure = &self.figures[id.place()];
        #[cfg(any(test, feature = "trace"))]
        used::note(figure.id);
        figure
    }

    /// The figure that a file or a user names, if there is one.
    #[must_use]
    pub fn find(&self, id: &str) -> Option<&Figure> {
        FigureId::parse(id).map(|id| self.figure(id))
    }

    /// The middle value of a figure.
    #[must_use]
    pub fn value(&self, id: FigureId) -> f64 {
        self.figure(id).value
    }

    /// All figures, by id.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        self.figures.iter()
    }

    /// Replaces a figure by the user's own value. The range collapses to that value: a user who overrides a
    /// figure claims to know it.
    ///
    /// # Errors
    /// See [`OverrideFault`]; the ledger is then unchanged.
    pub fn override_with(
        &mut self,
        id: &str,
        value: f64,
        reason: &str,
    ) -> Result<(), OverrideFault> {
        let Some(id) = FigureId::parse(id) else {
            return Err(OverrideFault::Unknown {
                nearest: self.nearest(id),
            });
        };
        let figure = &mut self.figures[id.place()];
        if !value.is_finite() {
            return Err(OverrideFault::NotFinite);
        }
        if value < 0.0 && figure.low >= 0.0 {
            return Err(OverrideFault::Negative);
        }
        if figure.unit == "share" && value > 1.0 {
            return Err(OverrideFault::OutsideShare);
        }
        if let Some(range) = safe_range(id).filter(|range| range.refuses(value)) {
            return Err(OverrideFault::Unsafe(range));
        }
        figure.value = value;
        figure.low = value;
        figure.high = value;
        figure.own_reason = Some(reason.to_owned());
        Ok(())
    }

    /// Replaces a figure by what closed pieces teach. The range remains a range, because pieces differ. A
    /// share is capped at 1.
    pub fn teach(&mut self, id: FigureId, range: [f64; 3]) {
        let figure = &mut self.figures[id.place()];
        let most = if figure.unit == "share" {
            1.0
        } else {
            f64::MAX
        };
        let [low, value, high] = range.map(|x| x.min(most));
        figure.low = low;
        figure.value = value;
        figure.high = high;
    }

    fn nearest(&self, id: &str) -> &'static str {
        nearest(id, self.figures.iter().map(|f| f.id)).unwrap_or("")
    }
}

/// The id in `ids` with the smallest edit distance to `wanted`, for "did you mean".
pub fn nearest<'a>(wanted: &str, ids: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    ids.min_by_key(|id| edit_distance(wanted, id))
}

/// Levenshtein distance; ids are short, so a plain table is enough. Long input is cut first so that a hostile
/// file cannot make it slow.
fn edit_distance(a: &str, b: &str) -> usize {
    let a: Vec<char> = a.chars().take(64).collect();
    let b: Vec<char> = b.chars().take(64).collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.iter().enumerate() {
        let mut corner = row[0];
        row[0] = i + 1;
        for (j, cb) in b.iter().enumerate() {
            let next = (corner + usize::from(ca != cb))
                .min(row[j] + 1)
                .min(row[j + 1] + 1);
            corner = row[j + 1];
            row[j + 1] = next;
        }
    }
    row[b.len()]
}

/// All sources, in file order.
#[must_use]
pub fn sources() -> &'static [Source] {
    static SOURCES: OnceLock<Vec<Source>> = OnceLock::new();
    SOURCES.get_or_init(|| {
        embedded(rows(
            "sources.psv",
            include_str!("data/sources.psv"),
            &["id", "citation", "kind"],
        ))
        .into_iter()
        .map(|r| Source {
            id: r[0],
            citation: r[1],
            kind: r[2],
        })
        .collect()
    })
}

/// The source with this id.
#[must_use]
pub fn source(id: &str) -> Option<&'static Source> {
    sources().iter().find(|s| s.id == id)
}

/// What a figure means, in one plain sentence. The sentences are a separate text in the order of the ids, so
/// that a program that never asks for one does not carry them.
#[must_use]
pub fn meaning(id: &str) -> Option<&'static str> {
    static MEANINGS: OnceLock<Vec<&str>> = OnceLock::new();
    let text = include_str!(concat!(env!("OUT_DIR"), "/meanings.txt"));
    let meanings = MEANINGS.get_or_init(|| text.lines().collect());
    meanings.get(FigureId::parse(id)?.place()).copied()
}

/// Unwraps something read from a file embedded in the program. A test reads every file, so a user never meets
/// a fault here.
pub(crate) fn embedded<T>(read: Result<T, String>) -> T {
    read.unwrap_or_else(|fault| unreachable!("{fault}"))
}

/// Reads the figures with these ids, one per line and in the same order, from the file without its first
/// column, as the build script writes it.
fn read_figures(ids: &[&'static str], text: &'static str) -> Result<Vec<Figure>, String> {
    let mut lines = text.lines();
    let figures = ids.iter().map(|id| {
        let fault = |what: &str| format!("figures.psv: {id}: {what}");
        let line = lines.next().unwrap_or_default();
        let fields: Vec<&'static str> = line.split(" | ").map(str::trim).collect();
        let [value, low, high, unit, shape, tag, source] = fields[..] else {
            return Err(fault("some fields are missing, or too many"));
        };
        let number = |t: &str| {
            decimal(t)
                .filter(|v| v.is_finite())
                .ok_or_else(|| fault("not a number"))
        };
        let figure = Figure {
            id,
            value: number(value)?,
            low: number(low)?,
            high: number(high)?,
            unit,
            shape: Shape::parse(shape).ok_or_else(|| fault("unknown shape"))?,
            tag: Tag::parse(tag).ok_or_else(|| fault("unknown tag"))?,
            source,
            own_reason: None,
        };
        if !(figure.low <= figure.value && figure.value <= figure.high) {
            return Err(fault("low, value and high are out of order"));
        }
        if figure.unit.is_empty() || figure.source.is_empty() {
            return Err(fault("unit or source is missing"));
        }
        Ok(figure)
    });
    figures.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_figure_has_a_source_and_every_source_is_used() {
        let known: BTreeSet<_> = sources().iter().map(|s| s.id).collect();
        let mut used = BTreeSet::new();
        for f in Ledger::standard().figures() {
            assert!(
                known.contains(f.source),
                "{}: source {} is not listed",
                f.id,
                f.source
            );
            used.insert(f.source);
        }
        for f in findings() {
            assert!(known.contains(f.source), "{}: source {}", f.id, f.source);
            used.insert(f.source);
        }
        for w in windows() {
            assert!(known.contains(w.source), "{:?}: source {}", w.of, w.source);
            used.insert(w.source);
        }
        for c in cautions() {
            assert!(known.contains(c.source), "{}: source {}", c.id, c.source);
            used.insert(c.source);
        }
        for (id, source) in guard_texts()
            .iter()
            .map(|g| (g.id.text(), g.source))
            .chain(soft_rules().iter().map(|s| (s.id, s.source)))
            .chain(duties().iter().map(|d| (d.id, d.source)))
        {
            assert!(known.contains(source), "{id}: source {source}");
            used.insert(source);
        }
        let idle: Vec<_> = known.difference(&used).collect();
        assert!(idle.is_empty(), "sources nothing rests on: {idle:?}");
    }

    #[test]
    fn every_figure_has_a_meaning_and_every_meaning_a_figure() {
        for f in Ledger::standard().figures() {
            assert!(meaning(f.id).is_some_and(|m| m.ends_with('.')), "{}", f.id);
        }
        let rows = include_str!("data/meanings.psv")
            .lines()
            .filter(|l| l.contains(" | "))
            .count();
        assert_eq!(rows - 1, Ledger::standard().figures().count());
    }

    #[test]
    fn a_figure_tagged_read_cites_a_publication() {
        for f in Ledger::standard().figures() {
            let kind = source(f.source).map_or("", |s| s.kind);
            if f.tag == Tag::Read {
                assert!(
                    !["judgement", "practice"].contains(&kind),
                    "{} is read from {kind}",
                    f.id
                );
            }
        }
    }

    #[test]
    fn a_fault_in_a_data_file_is_reported() {
        let fault = |row: &'static str| read_figures(&["a"], row).unwrap_err();
        assert!(fault("1 | 2 | 3 | um | point | read | x").contains("out of order"));
        assert!(fault("x | 2 | 3 | um | point | read | x").contains("not a number"));
        assert!(fault("2 | 2 | 3 | um | blob | read | x").contains("shape"));
        assert!(fault("2 | 2 | 3 | um | point | hearsay | x").contains("tag"));
    }

    #[test]
    fn overrides_move_safety_thresholds_only_toward_safety() {
        let mut ledger = Ledger::standard().clone();
        for (id, safe) in [
            ("guard.h14.area", 0.1),
            ("guard.h14.looked", 0.9),
            ("guard.food_year", 2010.0),
            ("guard.heat.thickness", 1.5),
            ("food.limit.Pb", 0.005),
            ("silver.part.unlike", 0.8),
        ] {
            assert_eq!(ledger.override_with(id, safe, "stricter"), Ok(()), "{id}");
        }
        let (least, most) = (|x| (Some(x), None), |x| (None, Some(x)));
        for (id, unsafe_value, (least, most)) in [
            ("guard.h14.area", 0.3, most(0.25)),
            ("guard.h14.looked", 0.01, least(0.66)),
            ("guard.food_year", 1600.0, least(1990.0)),
            ("guard.h07.margin", 40.0, least(50.0)),
            ("guard.h06", 80.0, most(60.0)),
            ("guard.heat.thickness", 0.01, least(1.0)),
            ("guard.heat.h_near", 5000.0, most(50.0)),
            ("guard.heat.copper_k", 1.0, least(401.0)),
            ("guard.heat.ramp", 0.9, most(0.5)),
            ("guard.heat.patch", 0.1, (Some(5.0), Some(5.0))),
            ("guard.heat.ambient", 300.0, (Some(20.0), Some(20.0))),
            ("heat.limit.tin", 233.0, most(232.0)),
            ("heat.above_liquid", 35.0, least(50.0)),
            ("solder.BAg-5", 700.0, least(743.0)),
            ("silver.part.unlike", 0.9, (Some(0.3), Some(0.8))),
            ("silver.bleed.judged_spread", 1.0, (Some(1.5), Some(1.5))),
        ] {
            assert_eq!(
                ledger.override_with(id, unsafe_value, ""),
                Err(OverrideFault::Unsafe(SafeRange { least, most })),
                "{id}"
            );
        }
    }

    #[test]
    fn an_unknown_figure_suggests_the_nearest_and_bad_numbers_are_refused() {
        let mut ledger = Ledger::standard().clone();
        let fault = ledger.override_with("fee.comission", 0.2, "");
        assert_eq!(
            fault,
            Err(OverrideFault::Unknown {
                nearest: "fee.commission"
            })
        );
        assert_eq!(
            ledger.override_with("fee.commission", f64::NAN, ""),
            Err(OverrideFault::NotFinite)
        );
        assert_eq!(
            ledger.override_with("fee.commission", -0.1, ""),
            Err(OverrideFault::Negative)
        );
        assert_eq!(
            ledger.override_with("fee.commission", 15.0, ""),
            Err(OverrideFault::OutsideShare)
        );
        assert_eq!(&ledger, Ledger::standard());
    }
}
