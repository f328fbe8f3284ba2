//! The findings a user can report, how likely each kind is to show them, and the years they imply.

use crate::terms::ShortSort;
use std::sync::OnceLock;

use super::figure::Tag;
use super::figure_id::FigureId;
use super::finding_id::FindingId;
use super::{embedded, table::rows};
use crate::terms::{Cluster, Instrument, Kind, Letter};

/// Where on the piece a finding is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// The seam and the inside.
    Seam,
    /// Edges and rim.
    Edges,
    /// Borders, feet, spouts and other mounts.
    Mounts,
    /// Shield and engraving.
    Shield,
    /// Where it is worn, and where silver lies over old damage.
    Wear,
    /// The colour of the surface.
    Surface,
    /// Stamped marks and words.
    Marks,
    /// What sort of thing it is, its style, and papers or dates that go with it.
    Style,
    /// Magnet, density, conductivity, X-ray readings.
    Measures,
}

impl Place {
    /// All places, in the order in which a user meets them.
    pub const ALL: [Self; 9] = [
        Self::Marks,
        Self::Wear,
        Self::Seam,
        Self::Edges,
        Self::Mounts,
        Self::Shield,
        Self::Surface,
        Self::Style,
        Self::Measures,
    ];

    /// Reads a place as written in the data file.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Some(match text {
            "seam" => Self::Seam,
            "edges" => Self::Edges,
            "mounts" => Self::Mounts,
            "shield" => Self::Shield,
            "wear" => Self::Wear,
            "surface" => Self::Surface,
            "marks" => Self::Marks,
            "style" => Self::Style,
            "measures" => Self::Measures,
            _ => return None,
        })
    }
}

/// What a look requires, beyond eyes, hands and light.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Requires {
    /// Nothing.
    None,
    /// A paper, a book, a piece to compare with, or the word of a person who knows.
    Reference,
    /// An instrument.
    Instrument(Instrument),
}

impl Requires {
    fn parse(text: &str) -> Option<Self> {
        match text {
            "none" => Some(Self::None),
            "reference" => Some(Self::Reference),
            _ => Instrument::parse(text).map(Self::Instrument),
        }
    }
}

/// The figures for the effort of a look, by how invasive it is.
pub const LOOK_EFFORT: [FigureId; 4] = FigureId::family("look.effort.", ["0", "1", "2", "3"], "");

/// One observation of the ladder.
#[derive(Clone, Debug, PartialEq)]
pub struct FindingFact {
    /// Stable id, such as `C01`.
    pub id: FindingId,
    /// Findings of one cluster share a cause, so together they count for less than the product of their
    /// likelihoods.
    pub cluster: Cluster,
    /// Findings with the same twin are versions of one look, of which only the strongest counts; the
    /// finding's own id where it has no twin.
    pub twin: &'static str,
    /// Where to look.
    pub place: Place,
    /// A few plain words.
    pub title: &'static str,
    /// What is seen when the feature is there.
    pub look_for: &'static str,
    /// How to look, safely.
    pub how: &'static str,
    /// What the look needs.
    pub needs: &'static str,
    /// What must be at hand beyond eyes, hands and light.
    pub requires: Requires,
    /// 0 look, 1 touch or breath, 2 wetting or taking apart, 3 an instrument.
    pub invasive: u8,
    /// Easily missed, so "absent" is weak evidence.
    pub hidden: bool,
    /// How it is known that the look is evidence.
    pub tag: Tag,
    /// Source id.
    pub source: &'static str,
    /// How likely each kind shows it, in the order of [`Kind::LADDER`].
    pub letters: [Letter; Kind::LADDER.len()],
}

impl FindingFact {
    /// The letter for a kind; `None` for [`Kind::Out`], which the ladder does not cover.
    #[must_use]
    pub fn letter(&self, kind: Kind) -> Option<Letter> {
        Kind::LADDER
            .iter()
            .position(|k| *k == kind)
            .map(|i| self.letters[i])
    }

    /// Whether a user with these instruments can take the look at home, with nothing to look up and nothing
    /// to compare with. Every household is assumed to have a magnet and a loupe.
    #[must_use]
    pub fn is_lay(&self, at_hand: &[Instrument]) -> bool {
        match self.requires {
            Requires::None | Requires::Instrument(Instrument::Magnet | Instrument::Loupe) => true,
            Requires::Reference => false,
            Requires::Instrument(instrument) => at_hand.contains(&instrument),
        }
    }

    /// Whether it says the same of every kind, so that it is not evidence.
    #[must_use]
    pub fn says_nothing(&self) -> bool {
        self.letters.iter().all(|l| *l == self.letters[0])
    }
}

/// What a window dates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindowOf {
    /// When pieces of a kind were made.
    Kind(Kind),
    /// When a body with this finding was made.
    Body(FindingId),
}

/// How a window begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LowerEnd {
    /// Fixed by a patent, an Act or an invention: impossible before it.
    Hard,
    /// Known only roughly: the weight fades out over the ledger's tail.
    Soft,
}

/// Years within which a kind was made or a feature used.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// What it dates.
    pub of: WindowOf,
    /// First year.
    pub from: u16,
    /// First and last year of peak production; `None` if the last year is still to come. For a finding, the
    /// whole window.
    pub peak: (u16, Option<u16>),
    /// Last year; `None` while it is still made.
    pub to: Option<u16>,
    /// How firm the first year is.
    pub lower_end: LowerEnd,
    /// The smallest weight it gives to any year, 0 to 1.
    pub floor: f64,
    /// How it is known.
    pub tag: Tag,
    /// Source id.
    pub source: &'static str,
    /// The reason in plain words.
    pub what: &'static str,
}

/// Every finding of the ladder, in file order.
#[must_use]
pub fn findings() -> &'static [FindingFact] {
    static FINDINGS: OnceLock<Vec<FindingFact>> = OnceLock::new();
    FINDINGS.get_or_init(|| {
        embedded(read_findings(
            include_str!("data/findings.psv"),
            include_str!("data/ladder.psv"),
        ))
    })
}

impl FindingId {
    /// What is known of the finding.
    #[must_use]
    pub fn fact(self) -> &'static FindingFact {
        static BY_ID: OnceLock<Vec<&FindingFact>> = OnceLock::new();
        let by_id = BY_ID.get_or_init(|| {
            let mut all: Vec<&FindingFact> = findings().iter().collect();
            all.order_by_key(|f| f.id);
            all
        });
        by_id[self.place()]
    }
}

/// Every dated window, of kinds and of findings.
#[must_use]
pub fn windows() -> &'static [Window] {
    static WINDOWS: OnceLock<Vec<Window>> = OnceLock::new();
    WINDOWS.get_or_init(|| embedded(read_windows(include_str!("data/windows.psv"))))
}

fn read_findings(texts: &'static str, ladder: &'static str) -> Result<Vec<FindingFact>, String> {
    let mut head = ["id", "cluster", "twin"].to_vec();
    head.extend(Kind::LADDER.map(Kind::code));
    let mut letters = Vec::new();
    for r in rows("ladder.psv", ladder, &head)? {
        let fault = |what: &str| format!("ladder.psv: {}: {what}", r[0]);
        let cluster = Cluster::parse(r[1]).ok_or_else(|| fault("unknown cluster"))?;
        let twin = if r[2] == "-" { r[0] } else { r[2] };
        let mut row = [Letter::X; Kind::LADDER.len()];
        for (slot, text) in row.iter_mut().zip(&r[3..]) {
            *slot = Letter::parse(text).ok_or_else(|| fault("unknown letter"))?;
        }
        letters.push((r[0], cluster, twin, row));
    }
    let head = [
        "id", "place", "title", "look_for", "how", "needs", "requires", "invasive", "hidden",
        "tag", "source",
    ];
    let mut findings = Vec::new();
    for r in rows("findings.psv", texts, &head)? {
        let fault = |what: &str| format!("findings.psv: {}: {what}", r[0]);
        let place = letters
            .iter()
            .position(|(id, ..)| *id == r[0])
            .ok_or_else(|| fault("not in ladder.psv"))?;
        let (_, cluster, twin, letters) = letters.remove(place);
        findings.push(FindingFact {
            id: FindingId::parse(r[0]).ok_or_else(|| fault("not in the ids that were built"))?,
            cluster,
            twin,
            place: Place::parse(r[1]).ok_or_else(|| fault("unknown place"))?,
            title: r[2],
            look_for: r[3],
            how: r[4],
            needs: r[5],
            requires: Requires::parse(r[6]).ok_or_else(|| fault("unknown requirement"))?,
            invasive: r[7].parse().map_err(|_| fault("invasive is 0 to 3"))?,
            hidden: r[8] == "yes",
            tag: Tag::parse(r[9]).ok_or_else(|| fault("unknown tag"))?,
            source: r[10],
            letters,
        });
    }
    if let Some((id, ..)) = letters.first() {
        return Err(format!("findings.psv: {id} of ladder.psv has no text"));
    }
    Ok(findings)
}

fn read_windows(text: &'static str) -> Result<Vec<Window>, String> {
    let head = [
        "id",
        "from",
        "peak_from",
        "peak_to",
        "to",
        "lower_end",
        "floor",
        "about",
        "tag",
        "source",
        "what",
    ];
    rows("windows.psv", text, &head)?
        .into_iter()
        .map(|r| {
            let fault = |what: &str| format!("windows.psv: {}: {what}", r[0]);
            let year = |t: &str| t.parse::<u16>().map_err(|_| fault("not a year"));
            let end = |t: &str| match t {
                "today" => Ok(None),
                _ => year(t).map(Some),
            };
            Ok(Window {
                of: match r[7] {
                    "kind" => Kind::parse(r[0]).map(WindowOf::Kind),
                    "body" => FindingId::parse(r[0]).map(WindowOf::Body),
                    _ => return Err(fault("about is kind or body")),
                }
                .ok_or_else(|| fault("no such kind or finding"))?,
                from: year(r[1])?,
                peak: (year(r[2])?, end(r[3])?),
                to: end(r[4])?,
                lower_end: match r[5] {
                    "hard" => LowerEnd::Hard,
                    "soft" => LowerEnd::Soft,
                    _ => return Err(fault("lower_end is hard or soft")),
                },
                floor: r[6].parse().map_err(|_| fault("floor is a number"))?,
                tag: Tag::parse(r[8]).ok_or_else(|| fault("unknown tag"))?,
                source: r[9],
                what: r[10],
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ladder_has_the_expected_size_and_clusters() {
        // Counted by hand in the data: 57 rows of the first ladder and 57 added since.
        let count = |c: Cluster| findings().iter().filter(|f| f.cluster == c).count();
        let sizes = Cluster::ALL.map(count);
        assert_eq!(sizes, [7, 4, 6, 11, 5, 2, 14, 9, 31, 16, 7, 2]);
        assert_eq!(findings().len(), 114);
        let letters = |l: Letter| {
            findings()
                .iter()
                .flat_map(|f| f.letters)
                .filter(|x| *x == l)
                .count()
        };
        assert_eq!(
            [Letter::N, Letter::L, Letter::P, Letter::U, Letter::X].map(letters),
            [37, 225, 444, 463, 769]
        );
    }

    #[test]
    fn windows_run_forward_and_every_kind_has_one() {
        for w in windows() {
            let ends = [Some(w.from), Some(w.peak.0), w.peak.1, w.to];
            let years = ends.map(|end| end.unwrap_or(u16::MAX));
            assert!(years.is_sorted(), "{:?}: {years:?}", w.of);
            assert!((0.0..1.0).contains(&w.floor), "{:?}", w.of);
        }
        for kind in Kind::ALL {
            let of = WindowOf::Kind(kind);
            assert!(windows().iter().any(|w| w.of == of), "{of:?}");
        }
    }

    #[test]
    fn no_look_asks_for_harm() {
        // Harm may only be named to forbid it.
        for f in findings() {
            for sentence in f.how.split(['.', ';']).map(str::to_lowercase) {
                let forbids = ["never", "not ", "no ", "without"]
                    .iter()
                    .any(|w| sentence.contains(w));
                for word in [
                    "scratch", "file it", "filing", "acid", "heat", "nitric", "flame",
                ] {
                    assert!(forbids || !sentence.contains(word), "{}: {sentence}", f.id);
                }
            }
        }
    }
}
