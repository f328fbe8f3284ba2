//! The identification, as the plain data that screens and sheets show.

use super::posterior::counted;
use super::surety::fused_is_parted_from_copies;
use super::{
    Build, Carried, Dating, Evidence, FUSED_BODY, Family, Interval, JudgedReading, Kind, Push,
    Skin, Surety, contradictions, interval_with, likeliest, pushes, readings, readings_that_clash,
    suggested_findings,
};
use crate::ledger::EvidenceId;
use crate::ledger::{FigureId, FindingId, Ledger, WordsIn};
use crate::record::Case;
use crate::report::{
    ContradictionReport, Families, FamilyPush, FamilyReport, IdentityReport, KindReport,
    MeasureReport, PushReport, SettledReport,
};
use crate::terms::Seen;
use crate::terms::ShortSort;
use crate::terms::share;

/// Identifies the piece from its record alone, fast enough for a screen that answers while the user looks.
/// `next_looks` is empty, because the worth of a look depends on the advice.
#[must_use]
pub fn identify(case: &Case, ledger: &Ledger) -> IdentityReport {
    let readings = readings(case, ledger);
    let interval = interval_with(&Evidence::of(case, &readings), ledger);
    let dating = Dating::new(case, &interval.base, ledger);
    Identified {
        case,
        ledger,
        readings: &readings,
        interval: &interval,
        dating: &dating,
    }
    .report()
}

/// Everything inferred about what a piece is.
pub(crate) struct Identified<'a> {
    pub(crate) case: &'a Case,
    pub(crate) ledger: &'a Ledger,
    pub(crate) readings: &'a [JudgedReading],
    pub(crate) interval: &'a Interval,
    pub(crate) dating: &'a Dating,
}

impl Identified<'_> {
    /// The identification without the next looks: their worth is known only to the advice.
    pub(crate) fn report(&self) -> IdentityReport {
        let mut kinds: Vec<KindReport> = Kind::ALL
            .into_iter()
            .map(|k| {
                let (p, low, high) = self.interval.range(|q| q.of(k));
                KindReport {
                    kind: k,
                    name: k.name().into(),
                    p,
                    low,
                    high,
                }
            })
            .collect();
        kinds.order_by(|a, b| b.p.total_cmp(&a.p));
        let mut family_bars: Vec<FamilyReport> = Family::ALL
            .into_iter()
            .map(|f| {
                let (p, low, high) = self.interval.range(|q| q.family(f));
                FamilyReport {
                    family: f,
                    name: f.name().into(),
                    meaning: f.meaning().into(),
                    p,
                    low,
                    high,
                }
            })
            .collect();
        family_bars.order_by(|a, b| b.p.total_cmp(&a.p));
        let posterior = self.interval.base;
        let (top, _) = posterior.top_family();
        // If nothing was found, the years would be those of the prior.
        let (dates, date_conflicts) = if self.nothing_found() {
            (None, Vec::new())
        } else {
            self.dating.report(self.interval, self.ledger)
        };
        let moved = pushes(&Evidence::of(self.case, self.readings), self.ledger, top);
        IdentityReport {
            sentence: self.sentence(),
            nothing_found: self.nothing_found(),
            body: self.settled(
                "The body",
                likeliest(&Build::ALL, Build::probability, self.interval),
                Build::name,
            ),
            skin: self.settled(
                "The silver on it",
                likeliest(&Skin::ALL, Skin::probability, self.interval),
                Skin::name,
            ),
            date_conflicts,
            kinds,
            families: Families {
                solid: posterior.family(Family::Solid),
                fused: posterior.family(Family::Fused),
                replated_fused: posterior.family(Family::ReplatedFused),
                close: posterior.family(Family::Close),
                french: posterior.family(Family::French),
                electroplate: posterior.family(Family::Electroplate),
                outside: posterior.family(Family::Outside),
            },
            family_bars,
            dates,
            contradictions: contradictions(self.case, self.ledger)
                .into_iter()
                .map(|c| ContradictionReport {
                    findings: c.findings.map(|f| EvidenceId::Finding(f.id)),
                    text: c.text,
                    different_parts: c.different_parts,
                })
                .chain(
                    readings_that_clash(self.case, self.readings, self.ledger)
                        .into_iter()
                        .map(|c| ContradictionReport {
                            findings: c.between,
                            text: c.text,
                            different_parts: false,
                        }),
                )
                .collect(),
            measures: self.readings.iter().map(|r| measured(r, &moved)).collect(),
            unconfirmed: self.unconfirmed(),
            parting: Vec::new(),
            open: None,
            next_looks: Vec::new(),
            pushes: moved
                .iter()
                .map(|p| PushReport {
                    finding: p.id,
                    title: p.title.into(),
                    answer: p.seen.id().into(),
                    log_odds: p.log_odds[top.place()],
                })
                .collect(),
        }
    }

    /// Words in the marks that suggest a finding the user has not answered.
    fn unconfirmed(&self) -> Vec<String> {
        let mut words: Vec<String> = Vec::new();
        for mark in &self.case.marks {
            for proposal in suggested_findings(WordsIn::Mark, &mark.text) {
                let answered = self.case.answer(proposal.finding).is_some();
                if !answered && !words.contains(&proposal.words) {
                    words.push(proposal.words);
                }
            }
        }
        words
    }

    fn evidence(&self) -> Evidence<'_> {
        Evidence::of(self.case, self.readings)
    }

    /// Whether nothing informative was looked at or read, so that only the prior counts. The absence of a
    /// mark or a style is not informative.
    pub(crate) fn nothing_found(&self) -> bool {
        counted(&self.evidence()).is_empty() && !self.readings.iter().any(|r| r.counts)
    }

    /// The family in words, no more firmly than the looks justify, and what is still open about it.
    fn sentence(&self) -> String {
        if self.nothing_found() {
            let looked = self.case.findings.iter().any(|a| a.seen != Seen::Unsure);
            return if looked {
                "What has been looked at says nothing yet of what it is, so it could be any of these."
            } else {
                "Nothing has been looked at yet, so it could be any of these."
            }
            .to_owned();
        }
        let posterior = self.interval.base;
        let (top, _) = posterior.top_family();
        let carried = Carried::of(&self.evidence(), top);
        let fused = matches!(top, Family::Fused | Family::ReplatedFused);
        // Copper alone decides nothing: electroplate on copper also wears through to copper.
        if fused && !fused_is_parted_from_copies(&self.evidence()) {
            let metal = if self.case.has_seen(FindingId::S03) {
                "Silver over copper."
            } else {
                "Not settled."
            };
            return format!(
                "{metal} Whether it was fused or electroplated has to show in a seam, an edge, a mount or a shield."
            );
        }
        let (_, low, _) = self.interval.range(|q| q.family(top));
        let (_, low_body, _) = self.interval.range(|q| q.of_any(&FUSED_BODY));
        let sure = Surety::of(low, carried, self.ledger);
        let sure_body = Surety::of(low_body, carried, self.ledger);
        if fused && sure_body > sure && sure_body >= Surety::Probable {
            return format!(
                "{} made as fused plate (old Sheffield plate); whether it was electroplated later is open.",
                sure_body.words()
            );
        }
        let names_base = !(self.case.has_seen(FindingId::M01B)
            && top == Family::Electroplate
            && posterior.of(posterior.top_kind()) < 0.8);
        let name = if names_base || top != Family::Electroplate {
            top.name()
        } else {
            "electroplate; the mark does not name the metal beneath"
        };
        format!("{} {name}.", sure.words())
    }

    /// One of the two questions behind a kind, in words.
    fn settled<T: Copy>(
        &self,
        subject: &str,
        (top, (p, low, high)): (T, (f64, f64, f64)),
        name: fn(T) -> &'static str,
    ) -> SettledReport {
        let settled = low >= self.ledger.value(FigureId::COUNSEL_FAMILY);
        let name = name(top);
        let share = share(p);
        let sentence = if self.nothing_found() {
            format!("{subject} is not known yet.")
        } else if settled {
            format!("{subject} is {name} ({share}).")
        } else {
            format!("{subject} is not settled; most likely it is {name} ({share}).")
        };
        SettledReport {
            name: name.into(),
            p,
            low,
            high,
            settled,
            sentence,
        }
    }
}

/// A reading and how far it moved each family; a reading that does not count moves none.
fn measured(reading: &JudgedReading, moved: &[Push]) -> MeasureReport {
    let push = moved
        .iter()
        .find(|p| p.id == EvidenceId::Reading(reading.of));
    MeasureReport {
        id: reading.of,
        title: reading.title.into(),
        text: reading.text.clone(),
        counts: push.is_some(),
        pushes: push
            .into_iter()
            .flat_map(|p| Family::ALL.into_iter().zip(p.log_odds))
            .map(|(family, log_odds)| FamilyPush { family, log_odds })
            .collect(),
    }
}
