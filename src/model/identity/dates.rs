//! When it was made: the windows of the kinds, narrowed by dated findings and by the years given for the
//! piece.
//!
//! Invariants: the length of a kind's window does not affect its probability; years never change the
//! probability of kinds; and the years given either narrow the answer or are reported as a conflict. The
//! years shown belong to the family named beside them: where the families disagree and none is firm, each
//! family is named with its own years.

use super::posterior::{FUSED_BODY, Interval, Posterior};
use crate::ledger::FigureId;
use crate::ledger::{Ledger, LowerEnd, Window, WindowOf, windows};
use crate::record::{Answer, Case};
use crate::report::{DateReport, FamilyDates};
use crate::terms::ShortSort;
use crate::terms::{CameFrom, Seen};
use crate::terms::{Cluster, Family, Kind};
use crate::terms::{capital, share};

/// First year considered.
const FIRST_YEAR: u16 = 1670;

/// Weight of every year, and the evidence that shaped it.
#[derive(Clone, Debug)]
pub struct Dating {
    last: u16,
    /// For each kind, the joint probability of each year and the kind; sums to 1 over all kinds and years
    /// unless no year is possible.
    by_kind: [Vec<f64>; Kind::COUNT],
    /// The same before the given years are taken into account.
    found: [Vec<f64>; Kind::COUNT],
    /// The years given, if they narrow the answer.
    given: Option<Given>,
    /// Given years that leave a family less than this share of its own years do not fit it.
    least: f64,
    reasons: Vec<String>,
    conflicts: Vec<String>,
    /// Whether a finding on the body or given years date the piece, and not only a style.
    dated: bool,
    /// A span that ends this close to the last year counts as open.
    open_years: f64,
}

/// The central 90 % of the date, with the reasons for its ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DateSpan {
    /// 5th percentile.
    pub from: u16,
    /// 95th percentile.
    pub to: u16,
    /// It may have been made recently, so the end is shown as "or later".
    pub open: bool,
    /// In words.
    pub reasons: Vec<String>,
}

/// The years that a person or a document gives for a piece, and how they fade out beyond their ends.
#[derive(Clone, Debug)]
struct Given {
    from: u16,
    to: u16,
    tail: f64,
    documented: bool,
    came_from: Option<CameFrom>,
}

impl Given {
    fn of(case: &Case, ledger: &Ledger) -> Option<Self> {
        let piece = &case.piece;
        if piece.from_year.is_none() && piece.to_year.is_none() {
            return None;
        }
        let documented = piece.documented;
        let tail = ledger.value(if documented {
            FigureId::IDENTITY_DOCUMENTED_TAIL
        } else {
            FigureId::IDENTITY_TOLD_TAIL
        });
        Some(Self {
            from: piece.from_year.unwrap_or(0),
            to: piece.to_year.unwrap_or(u16::MAX),
            tail,
            documented,
            came_from: piece.came_from,
        })
    }

    fn weight(&self, year: u16) -> f64 {
        let before = f64::from(self.from) - f64::from(year);
        let after = f64::from(year) - f64::from(self.to);
        fading(before.max(after), self.tail)
    }

    /// The source of these years: "the years given by the seller".
    fn source(&self) -> &'static str {
        if self.documented {
            return "the years in its papers";
        }
        match self.came_from {
            Some(CameFrom::Household) => "the years given by the family",
            Some(CameFrom::Sale) => "the years given by the seller",
            Some(CameFrom::Dealer) => "the years given by the dealer",
            None => "the years given for it",
        }
    }

    fn years(&self) -> String {
        match (self.from, self.to) {
            (from, u16::MAX) => format!("{from} or later"),
            (0, to) => format!("{to} or earlier"),
            (from, to) if from == to => format!("about {from}"),
            (from, to) => format!("{from} to {to}"),
        }
    }
}

impl Dating {
    /// The weights over years. For each kind, its own window, normalised to sum to 1, is multiplied by the
    /// windows of the findings seen and rescaled to the kind's probability. A kind for which the findings
    /// leave almost none of its years is left out. The given years come last, if the findings leave enough of
    /// them.
    #[must_use]
    pub fn new(case: &Case, posterior: &Posterior, ledger: &Ledger) -> Self {
        let today = case
            .asked_on
            .map_or(ledger.value(FigureId::IDENTITY_TODAY), |d| {
                f64::from(d.year)
            });
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to four digits
        let last = today.clamp(1900.0, 2999.0) as u16;
        let seen = seen_windows(&case.findings);
        let (by_kind, dropped) = years_by_kind(last, posterior, &seen, ledger);
        let mut dating = Self {
            last,
            found: by_kind.clone(),
            by_kind,
            given: None,
            least: ledger.value(FigureId::IDENTITY_TOLD_LEAST),
            reasons: seen.iter().map(|w| w.what.to_owned()).collect(),
            conflicts: Vec::new(),
            dated: seen.iter().any(|w| !is_of_style(w)),
            open_years: ledger.value(FigureId::IDENTITY_OPEN_YEARS),
        };
        if dropped > ledger.value(FigureId::IDENTITY_WINDOW_DROPPED_SAID) {
            dating.reasons.push(format!(
                "kinds never made in these years are left out of the dating, {} of the answer",
                share(dropped)
            ));
        }
        if let Some(given) = Given::of(case, ledger) {
            dating.hear(given);
        }
        dating
    }

    /// Narrows the weights to the given years, or records a conflict.
    fn hear(&mut self, given: Given) {
        let weight: Vec<f64> = (FIRST_YEAR..=self.last).map(|y| given.weight(y)).collect();
        let kept: f64 = self
            .by_kind
            .iter()
            .flat_map(|years| years.iter().zip(&weight).map(|(y, w)| y * w))
            .sum();
        let (source, years) = (given.source(), given.years());
        if kept < self.least {
            self.conflicts.push(format!(
                "{} are {years}, but what was found leaves next to nothing of those years. They are left out: \
                 one of the two is wrong.",
                capital(source)
            ));
            return;
        }
        for kind in &mut self.by_kind {
            for (y, w) in kind.iter_mut().zip(&weight) {
                *y *= w / kept;
            }
        }
        self.dated = true;
        self.reasons.push(format!("{source} are {years}"));
        self.given = Some(given);
    }

    /// The central 90 % over all kinds; `None` when the findings leave no year possible.
    #[must_use]
    pub fn span(&self) -> Option<DateSpan> {
        self.middle(&self.by_kind, &Kind::ALL)
    }

    /// The central 90 % if it is one of `kinds`; `None` when the findings leave these kinds no year. Given
    /// years that leave these kinds almost none of their own years are ignored.
    #[must_use]
    pub fn span_of(&self, kinds: &[Kind]) -> Option<DateSpan> {
        let by_kind = if self.is_at_odds_with(kinds) {
            &self.found
        } else {
            &self.by_kind
        };
        self.middle(by_kind, kinds)
    }

    /// Whether the given years narrow the answer as a whole but leave these kinds almost none of their own
    /// years.
    fn is_at_odds_with(&self, kinds: &[Kind]) -> bool {
        let Some(given) = &self.given else {
            return false;
        };
        let (mut kept, mut all) = (0.0, 0.0);
        for kind in kinds {
            for (y, w) in (FIRST_YEAR..=self.last).zip(&self.found[kind.index()]) {
                all += w;
                kept += w * given.weight(y);
            }
        }
        kept < self.least * all
    }

    fn middle(&self, by_kind: &[Vec<f64>; Kind::COUNT], kinds: &[Kind]) -> Option<DateSpan> {
        let mut weights = vec![0.0; usize::from(self.last - FIRST_YEAR) + 1];
        for kind in kinds {
            for (sum, w) in weights.iter_mut().zip(&by_kind[kind.index()]) {
                *sum += w;
            }
        }
        let total: f64 = weights.iter().sum();
        if total <= 0.0 {
            return None;
        }
        let at = |p: f64| {
            let mut sum = 0.0;
            (FIRST_YEAR..=self.last)
                .zip(&weights)
                .find(|(_, w)| {
                    sum += **w;
                    sum >= p * total
                })
                .map_or(self.last, |(year, _)| year)
        };
        let to = at(0.95);
        Some(DateSpan {
            from: at(0.05),
            to,
            open: f64::from(self.last - to) < self.open_years,
            reasons: self.reasons.clone(),
        })
    }

    /// The years as shown: those of the leading family and, unless that family is firm, of each other family
    /// that is reasonably likely and has different years. Given years that do not fit a family shown are
    /// listed as conflicts.
    #[must_use]
    pub fn report(
        &self,
        interval: &Interval,
        ledger: &Ledger,
    ) -> (Option<DateReport>, Vec<String>) {
        let mut conflicts = self.conflicts.clone();
        let posterior = &interval.base;
        let (top, _) = posterior.top_family();
        let leading = Side::of(top);
        let share = |side: Side| posterior.of_any(&side.kinds());
        let (_, low, _) = interval.range(|p| p.of_any(&leading.kinds()));
        let is_firm = low >= ledger.value(FigureId::IDENTITY_SURE_VERY);
        let least = ledger.value(FigureId::WORDS_VERY_UNLIKELY);
        let mut sides: Vec<Side> = Side::ALL
            .into_iter()
            .filter(|side| *side != leading && !is_firm && share(*side) > least)
            .collect();
        sides.order_by(|a, b| share(*b).total_cmp(&share(*a)));
        sides.insert(0, leading);
        let apart = ledger.value(FigureId::IDENTITY_YEARS_APART);
        let mut by_family: Vec<FamilyDates> = Vec::new();
        for side in sides {
            let kinds = side.kinds();
            if self.is_at_odds_with(&kinds)
                && let Some(given) = &self.given
            {
                conflicts.push(format!(
                    "{} are {}, which does not fit {}: its years are shown without them.",
                    capital(given.source()),
                    given.years(),
                    side.name()
                ));
            }
            let Some(span) = self.span_of(&kinds) else {
                continue;
            };
            let dates = FamilyDates {
                names: vec![side.name().into()],
                from: span.from,
                to: span.to,
                open: span.open,
            };
            match by_family.iter_mut().find(|f| !dates.differ(f, apart)) {
                Some(alike) => alike.names.extend(dates.names),
                None => by_family.push(dates),
            }
        }
        let leads = self.span_of(&leading.kinds()).is_some();
        let dates = self.span().map(|span| DateReport {
            from: span.from,
            to: span.to,
            open: span.open,
            reasons: span.reasons,
            is_conditional: by_family.len() > 1 || !leads,
            by_family,
            given: self.given.as_ref().map(|given| given.source().into()),
        });
        (dates, conflicts)
    }

    /// Whether the piece counts as early: more likely than not made by the ledger's year, and dated by a
    /// finding on the body or by given years. A style alone is not enough, because styles were revived.
    #[must_use]
    pub fn is_early(&self, ledger: &Ledger) -> bool {
        self.dated && made_by(self, &FUSED_BODY, ledger.value(FigureId::VALUE_EARLY_YEAR)) >= 0.5
    }
}

/// Families with distinct years of making. Replated fused plate is grouped with fused plate, because
/// replating does not change when the body was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    FusedBody,
    Of(Family),
}

impl Side {
    const ALL: [Self; 6] = [
        Self::FusedBody,
        Self::Of(Family::Electroplate),
        Self::Of(Family::Close),
        Self::Of(Family::French),
        Self::Of(Family::Solid),
        Self::Of(Family::Outside),
    ];

    fn of(family: Family) -> Self {
        match family {
            Family::Fused | Family::ReplatedFused => Self::FusedBody,
            other => Self::Of(other),
        }
    }

    fn kinds(self) -> Vec<Kind> {
        Kind::ALL
            .into_iter()
            .filter(|k| Self::of(k.family()) == self)
            .collect()
    }

    fn name(self) -> &'static str {
        match self {
            Self::FusedBody => "fused plate",
            Self::Of(family) => family.name(),
        }
    }
}

/// The weight of each year for each kind, and the total probability of the kinds left out.
fn years_by_kind(
    last: u16,
    posterior: &Posterior,
    seen: &[&Window],
    ledger: &Ledger,
) -> ([Vec<f64>; Kind::COUNT], f64) {
    let tail = ledger.value(FigureId::IDENTITY_WINDOW_TAIL).max(0.0);
    let shoulder = ledger
        .value(FigureId::IDENTITY_WINDOW_SHOULDER)
        .clamp(0.0, 1.0);
    let least = ledger.value(FigureId::IDENTITY_WINDOW_DROPPED).max(0.0);
    let found: Vec<f64> = (FIRST_YEAR..=last)
        .map(|y| seen.iter().map(|w| of_finding(w, y, last, tail)).product())
        .collect();
    let mut dropped = 0.0;
    let mut by_kind = Kind::ALL.map(|kind| {
        let own: Vec<f64> = (FIRST_YEAR..=last)
            .map(|y| kind_window(kind).map_or(1.0, |w| of_kind(w, y, last, tail, shoulder)))
            .collect();
        let whole: f64 = own.iter().sum();
        let joint: Vec<f64> = own.iter().zip(&found).map(|(o, f)| o * f / whole).collect();
        let kept: f64 = joint.iter().sum();
        let p = posterior.of(kind);
        if kept <= least {
            dropped += p;
            return vec![0.0; joint.len()];
        }
        joint.into_iter().map(|y| p * y / kept).collect()
    });
    let total: f64 = by_kind.iter().flatten().sum();
    if total > 0.0 {
        for weight in by_kind.iter_mut().flatten() {
            *weight /= total;
        }
    }
    (by_kind, dropped)
}

/// Chance that it was made by the end of `year`, given that it is one of `kinds`; 0 if they are impossible.
fn made_by(dating: &Dating, kinds: &[Kind], year: f64) -> f64 {
    let (mut before, mut all) = (0.0, 0.0);
    for kind in kinds {
        for (y, w) in (FIRST_YEAR..=dating.last).zip(&dating.by_kind[kind.index()]) {
            all += w;
            if f64::from(y) <= year {
                before += w;
            }
        }
    }
    if all > 0.0 { before / all } else { 0.0 }
}

/// Whether a window dates only through style or form.
fn is_of_style(window: &Window) -> bool {
    matches!(window.of, WindowOf::Body(id) if id.fact().cluster == Cluster::Style)
}

fn kind_window(kind: Kind) -> Option<&'static Window> {
    windows().iter().find(|w| w.of == WindowOf::Kind(kind))
}

/// Windows of the findings that were seen.
pub(super) fn seen_windows(answers: &[Answer]) -> Vec<&'static Window> {
    windows()
        .iter()
        .filter(|w| {
            let was_seen = |a: &Answer| w.of == WindowOf::Body(a.id) && a.seen == Seen::Yes;
            answers.iter().any(was_seen)
        })
        .collect()
}

/// Weight 1 at 0 years outside, falling linearly to 0 over `tail` years.
fn fading(years_outside: f64, tail: f64) -> f64 {
    if years_outside <= 0.0 {
        1.0
    } else {
        (1.0 - years_outside / tail.max(f64::MIN_POSITIVE)).max(0.0)
    }
}

/// The weight a finding gives to a year: 1 inside its window, fading outside, never below its floor.
fn of_finding(w: &Window, year: u16, today: u16, tail: f64) -> f64 {
    let early = f64::from(w.from) - f64::from(year);
    let late = f64::from(year) - f64::from(w.to.unwrap_or(today));
    let below = match w.lower_end {
        LowerEnd::Hard => fading(early, 0.0),
        LowerEnd::Soft => fading(early, tail),
    };
    below.min(fading(late, tail)).max(w.floor)
}

/// The weight of a year for a kind: 1 in its peak, `shoulder` in its first and last year, linear in between.
/// Outside it fades from `shoulder`, and is 0 before a hard lower end.
fn of_kind(w: &Window, year: u16, today: u16, tail: f64, shoulder: f64) -> f64 {
    let y = f64::from(year);
    let [from, peak_from] = [w.from, w.peak.0].map(f64::from);
    let [peak_to, to] = [w.peak.1, w.to].map(|end| f64::from(end.unwrap_or(today)));
    let between = |part: f64, whole: f64| shoulder + (1.0 - shoulder) * part / whole.max(1.0);
    if y < from {
        match w.lower_end {
            LowerEnd::Hard => 0.0,
            LowerEnd::Soft => shoulder * fading(from - y, tail),
        }
    } else if y > to {
        shoulder * fading(y - to, tail)
    } else if y < peak_from {
        between(y - from, peak_from - from)
    } else if y > peak_to {
        between(to - y, to - peak_to)
    } else {
        1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::{Evidence, interval_with};
    use crate::ledger::FindingId;

    /// The span for these findings and given years, as of 2026.
    fn dated(seen: &[&'static str], told: Option<(u16, u16)>) -> (DateSpan, Vec<String>, bool) {
        let mut case = Case::default();
        case.piece.from_year = told.map(|t| t.0);
        case.piece.to_year = told.map(|t| t.1);
        case.findings = seen
            .iter()
            .map(|id| Answer {
                id: FindingId::parse(id).unwrap(),
                seen: Seen::Yes,
                part: None,
            })
            .collect();
        let ledger = Ledger::standard();
        let p = interval_with(&Evidence::of(&case, &[]), ledger).base;
        let dating = Dating::new(&case, &p, ledger);
        let early = dating.is_early(ledger);
        (dating.span().unwrap(), dating.conflicts.clone(), early)
    }

    fn years(seen: &[&'static str], told: Option<(u16, u16)>) -> (u16, u16) {
        let span = dated(seen, told).0;
        (span.from, span.to)
    }

    #[test]
    fn spans_match_independently_computed_ones() {
        assert_eq!(years(&["C01", "C08"], None), (1763, 1847));
        assert_eq!(years(&["C01", "C08"], Some((1780, 1800))), (1775, 1804));
        assert_eq!(years(&["M01", "S04"], None), (1852, 2017));
        assert_eq!(years(&["M01", "S04"], Some((1880, 1900))), (1876, 1905));
        assert_eq!(years(&["C17", "C05", "M05"], None), (1750, 1778));
        assert_eq!(years(&["C01", "C07", "C25", "F03"], None), (1803, 1843));
    }

    /// The years shown for these findings and given years, in words and with their source, and the conflicts.
    fn shown(seen: &[&'static str], case: Case) -> (DateReport, Vec<String>) {
        let case = Case {
            findings: seen
                .iter()
                .map(|id| Answer {
                    id: FindingId::parse(id).unwrap(),
                    seen: Seen::Yes,
                    part: None,
                })
                .collect(),
            ..case
        };
        let ledger = Ledger::standard();
        let interval = interval_with(&Evidence::of(&case, &[]), ledger);
        let dating = Dating::new(&case, &interval.base, ledger);
        let (dates, conflicts) = dating.report(&interval, ledger);
        (dates.unwrap(), conflicts)
    }

    fn given(from: u16, to: u16, came_from: Option<CameFrom>) -> Case {
        let mut case = Case::default();
        case.piece.from_year = Some(from);
        case.piece.to_year = Some(to);
        case.piece.came_from = came_from;
        case
    }

    #[test]
    fn the_years_shown_belong_to_the_family_named_with_them() {
        // Worn to copper: fused plate and electroplate are both reasonably likely.
        let (dates, _) = shown(&["S03"], Case::default());
        assert!(dates.is_conditional);
        assert_eq!(dates.by_family[0].names[0].get(), "fused plate");
        let electroplate = dates
            .by_family
            .iter()
            .find(|f| &*f.names[0] == "electroplate");
        assert!(electroplate.unwrap().from >= 1840);
        let words = dates.in_words();
        assert!(
            words.contains(" if it is fused plate, ")
                && words.ends_with("or later if it is electroplate"),
            "{words}"
        );
        // Electroplate on nickel silver and nothing else: one window, without a condition.
        let (dates, _) = shown(&["M01", "S04"], Case::default());
        assert_eq!(
            dates.in_words(),
            format!("{} or later", dates.by_family[0].from)
        );
        assert!(dates.by_family.len() == 1 && dates.by_family[0].from >= 1840);
    }

    #[test]
    fn an_end_at_the_present_is_never_shown_as_a_year() {
        for seen in [&["M01", "S04"][..], &["S03"], &["M03"], &["S16"], &["M16"]] {
            let words = shown(seen, Case::default()).0.in_words();
            assert!(!words.contains(" 20"), "{seen:?}: {words}");
        }
    }

    #[test]
    fn given_years_are_shown_with_their_source() {
        for (came_from, source) in [
            (None, "the years given for it"),
            (Some(CameFrom::Household), "the years given by the family"),
            (Some(CameFrom::Sale), "the years given by the seller"),
            (Some(CameFrom::Dealer), "the years given by the dealer"),
        ] {
            let (dates, conflicts) = shown(&["C01", "C08"], given(1780, 1800, came_from));
            assert_eq!(dates.given.unwrap().get(), source);
            assert_eq!(
                dates.reasons.last().unwrap(),
                &format!("{source} are 1780 to 1800")
            );
            assert_eq!(conflicts, Vec::<String>::new());
        }
        let mut documented = given(1780, 1780, None);
        documented.piece.documented = true;
        let (dates, _) = shown(&["C01", "C08"], documented);
        assert_eq!(
            dates.reasons.last().unwrap(),
            "the years in its papers are about 1780"
        );
        // Years that are left out are not credited.
        let (dates, conflicts) = shown(&["M01", "S04"], given(1780, 1800, None));
        assert_eq!(dates.given, None);
        assert!(conflicts[0].starts_with("The years given for it are 1780 to 1800"));
    }

    #[test]
    fn given_years_that_do_not_fit_the_likeliest_family_are_a_conflict() {
        let (dates, conflicts) = shown(&["S11"], given(1780, 1800, Some(CameFrom::Sale)));
        assert_eq!(dates.by_family[0].names[0].get(), "electroplate");
        assert!(dates.by_family[0].from >= 1840 && dates.is_conditional);
        assert_eq!(conflicts.len(), 1, "{conflicts:?}");
        assert!(
            conflicts[0].contains("does not fit electroplate"),
            "{conflicts:?}"
        );
        let fused = &dates.by_family[1];
        assert!(&*fused.names[0] == "fused plate" && fused.from >= 1770 && fused.to <= 1810);
    }

    #[test]
    fn an_impossible_given_date_is_reported_and_left_out() {
        // Electroplating begins in 1840 (patent; Victoria and Albert Museum).
        let (span, conflicts, _) = dated(&["M01", "S04"], Some((1780, 1800)));
        assert_eq!((span.from, span.to), (1852, 2017));
        assert_eq!(conflicts.len(), 1);
        assert!(dated(&["M01", "S04"], Some((1880, 1900))).1.is_empty());
    }

    #[test]
    fn a_window_that_reaches_the_present_is_open() {
        assert!(dated(&["M01", "S04"], None).0.open);
        assert!(!dated(&["C01", "C08"], None).0.open);
    }

    #[test]
    fn a_style_alone_does_not_make_a_piece_early() {
        assert!(dated(&["C17", "C05", "M05"], None).2);
        assert!(!dated(&["C17", "C05", "F01"], None).2);
    }

    #[test]
    fn nothing_is_dated_before_a_hard_lower_end() {
        assert!(years(&["M01"], None).0 >= 1840);
        let w = kind_window(Kind::Ens).unwrap();
        assert!(of_kind(w, 1839, 2026, 10.0, 0.3) <= 0.0);
    }
}
