//! Reads quotes, tests for lead, work already done, and the person's own proposal.
//!
//! An entry that cannot be used stays in the file and is named among the problems; the rest of its
//! list is used.

use serde_json::{Map, Value};

use super::wording as words;
use super::wording::work as said;
use super::{MOST_ENTRIES, Reader, Section, in_order, shorten};
use crate::ledger::{FigureId, Ledger, nearest};
use crate::record::{
    Asked, Circumstances, Done, Override, Part, Proposal, ProposalStep, Quote, Test,
};
use crate::terms::Treatment;
use crate::terms::{Covers, Date, Fill, FillState, MaterialUsed, PartName, TestKind, Tester};

/// Metals a laboratory reports on the bench: the field under `bench.food`, and the ledger's row of
/// its limit.
const RELEASED: [(&str, FigureId); 7] = [
    ("pb", FigureId::FOOD_LIMIT_PB),
    ("cu", FigureId::FOOD_LIMIT_CU),
    ("ni", FigureId::FOOD_LIMIT_NI),
    ("ag", FigureId::FOOD_LIMIT_AG),
    ("sn", FigureId::FOOD_LIMIT_SN),
    ("sb", FigureId::FOOD_LIMIT_SB),
    ("zn", FigureId::FOOD_LIMIT_ZN),
];
impl Reader {
    /// Ids with spaces or commas between. An id that is none is named; the others count.
    pub(super) fn ids<T: Copy + PartialEq>(
        &mut self,
        s: &Section,
        field: &str,
        known: &[(&'static str, T)],
    ) -> Vec<T> {
        let mut found = Vec::new();
        let text = self.text(s, field).unwrap_or_default();
        for id in text
            .split(|c: char| c.is_whitespace() || c == ',')
            .filter(|id| !id.is_empty())
            .take(MOST_ENTRIES)
        {
            match known.iter().find(|(name, _)| *name == id) {
                Some((_, one)) if found.contains(one) => {}
                Some((_, one)) => found.push(*one),
                None => {
                    let near = nearest(id, known.iter().map(|(name, _)| *name)).unwrap_or("");
                    self.problem(
                        s.at(field),
                        words::no_choice(&shorten(id)),
                        &words::did_you_mean(near),
                    );
                }
            }
        }
        found
    }

    fn treatments(&mut self, s: &Section, field: &str) -> Vec<Treatment> {
        self.ids(s, field, &Treatment::ALL.map(|t| (t.id(), t)))
    }

    fn part_names(&mut self, s: &Section, field: &str) -> Vec<PartName> {
        let known: Vec<_> = PartName::ALL.iter().map(|p| (p.id(), *p)).collect();
        self.ids(s, field, &known)
    }

    /// Text as written, without the space round it; empty when there is none.
    pub(super) fn written(&mut self, s: &Section, field: &str) -> String {
        self.text(s, field).unwrap_or_default().trim().to_owned()
    }

    /// Whether work went wrong: yes, no, or not known.
    fn went_wrong(&mut self, s: &Section) -> Option<bool> {
        if s.text_is("bad", "unsure") {
            return None;
        }
        self.flag(s, "bad")
    }

    /// A day, or a month or year of which the middle is taken.
    pub(super) fn about_when(&mut self, s: &Section, field: &str) -> Option<Date> {
        let text = self.text(s, field)?;
        let on = Date::parse_about(text.trim());
        if on.is_none() {
            self.problem(
                s.at(field),
                words::no_date(&shorten(&text)),
                said::NO_DATE_REMEDY,
            );
        }
        on
    }

    fn hours(&mut self, s: &Section, field: &str) -> Option<f64> {
        self.number(s, field)
    }

    /// What the person asked about: `proposal`, or ids of treatments.
    pub(super) fn asked(&mut self, aim: &Section) -> Option<Asked> {
        if self.text(aim, "asked")?.trim() == "proposal" {
            return Some(Asked::Proposal);
        }
        let treatments = self.treatments(aim, "asked");
        (!treatments.is_empty()).then_some(Asked::Treatments(treatments))
    }

    /// Low, likely and high; where they are out of order low and high do not count.
    fn range(&mut self, s: &Section) -> [Option<f64>; 3] {
        let range = ["low", "likely", "high"].map(|field| self.money(s, field));
        if in_order(&range) {
            return range;
        }
        self.problem(
            s.at("likely"),
            words::OUT_OF_ORDER.to_owned(),
            words::OUT_OF_ORDER_REMEDY,
        );
        [None, range[1], None]
    }

    /// What a quote is for: one treatment, or several together.
    fn quoted(&mut self, s: &Section) -> Vec<Treatment> {
        let Some(id) = self.text(s, "treatment") else {
            if s.get("treatments").is_some() {
                return self.treatments(s, "treatments");
            }
            self.problem(
                s.at("treatment"),
                words::NO_TREATMENT.to_owned(),
                words::NO_TREATMENT_REMEDY,
            );
            return Vec::new();
        };
        let found = Treatment::parse(&id);
        if found.is_none() {
            let near = nearest(&id, Treatment::ALL.iter().map(|t| t.id())).unwrap_or("");
            self.problem(
                s.at("treatment"),
                words::no_such_treatment(&shorten(&id)),
                &words::no_such_treatment_remedy(near),
            );
        }
        found.into_iter().collect()
    }

    pub(super) fn quotes(&mut self, root: &Map<String, Value>) -> Vec<Quote> {
        let mut quotes: Vec<Quote> = Vec::new();
        for s in self.list(root, "quotes", MOST_ENTRIES) {
            let treatments = self.quoted(&s);
            if treatments.is_empty() {
                continue;
            }
            let [low, likely, high] = self.range(&s);
            let post = self.money(&s, "post").unwrap_or(0.0);
            let post_included = self.flag(&s, "post_included").unwrap_or(false);
            let id = self.text(&s, "id");
            let deposit = self.money(&s, "deposit");
            let by = self.written(&s, "by");
            let hours = self.hours(&s, "hours");
            let fixed = self.flag(&s, "fixed").unwrap_or(false);
            let covers = self.word(&s, "covers").unwrap_or(Covers::Work);
            let Some(likely) = likely else {
                if s.get("likely").is_none() {
                    self.problem(
                        s.at("likely"),
                        words::NO_PRICE.to_owned(),
                        words::NO_PRICE_REMEDY,
                    );
                }
                continue;
            };
            quotes.push(Quote {
                id,
                treatments,
                low,
                likely,
                high,
                post: if post_included { 0.0 } else { post },
                deposit,
                by,
                hours,
                fixed,
                covers,
                post_included,
            });
        }
        quotes
    }

    /// Tests for lead of so many pieces, and last the laboratory's figures of the bench.
    pub(super) fn tests(
        &mut self,
        root: &Map<String, Value>,
        own: &[Override],
        count: u16,
    ) -> Vec<Test> {
        let mut tests = Vec::new();
        for s in self.list(root, "tests", MOST_ENTRIES) {
            let id = self.written(&s, "id");
            let kind: Option<TestKind> = self.word(&s, "kind");
            let part = self.word(&s, "part");
            let on = self.about_when(&s, "on");
            let by: Option<Tester> = self.word(&s, "by");
            let passed = self.flag(&s, "passed");
            self.text(&s, "note");
            let (of, passed) = self.tested_of(&s, count, passed);
            let Some(kind) = kind else {
                if s.get("kind").is_none() {
                    self.problem(
                        s.at("kind"),
                        said::NO_TEST_KIND.to_owned(),
                        said::NO_TEST_KIND_REMEDY,
                    );
                }
                continue;
            };
            tests.push(Test {
                id,
                kind,
                part,
                of,
                on,
                by,
                passed,
            });
        }
        tests.extend(self.released(root, own, count));
        tests
    }

    /// The pieces that a test was of, and its result. A pass that names one that cannot be read clears none.
    fn tested_of(
        &mut self,
        s: &Section,
        count: u16,
        passed: Option<bool>,
    ) -> (Vec<u16>, Option<bool>) {
        let before = self.problems.len();
        let mut of = self.piece_numbers(s, "of");
        if let Some(beyond) = of.iter().find(|no| **no > count) {
            self.problem(
                s.at("of"),
                words::pieces::no_such_piece(f64::from(*beyond), count),
                words::pieces::NO_SUCH_PIECE_REMEDY,
            );
        }
        let is_readable = self.problems.len() == before;
        if count == 1 {
            of.clear();
        }
        (of, passed.filter(|passed| is_readable || !passed))
    }

    /// The laboratory's figures of the bench as a release test of the interior: failed when a metal
    /// is over its limit, passed only when lead is given and nothing is over.
    fn released(
        &mut self,
        root: &Map<String, Value>,
        own: &[Override],
        count: u16,
    ) -> Option<Test> {
        let s = self.section(root.get("bench")?.as_object()?, "bench.food");
        let mut ledger = None;
        let (mut failed, mut lead, mut given) = (false, false, false);
        for (field, limit) in RELEASED {
            let released = self.number(&s, field);
            let Some(released) = released else { continue };
            let ledger = ledger.get_or_insert_with(|| with_own(own));
            given = true;
            lead |= field == "pb";
            failed |= released > ledger.value(limit);
        }
        let passed = if failed {
            Some(false)
        } else {
            lead.then_some(true)
        };
        let (of, passed) = self.tested_of(&s, count, passed);
        given.then(|| Test {
            id: "bench.food".to_owned(),
            kind: TestKind::Release,
            part: Some(PartName::Interior),
            of,
            on: None,
            by: Some(Tester::Laboratory),
            passed,
        })
    }

    /// Work already done. Entries with nothing in them are passed over.
    pub(super) fn done(&mut self, root: &Map<String, Value>) -> Vec<Done> {
        let mut done = Vec::new();
        for s in self.list(root, "done", MOST_ENTRIES) {
            let what = self.written(&s, "what");
            let materials = self.written(&s, "materials");
            let entry = Done {
                place: super::place_in(&s.path).unwrap_or(done.len()),
                id: self.written(&s, "id"),
                treatment: Treatment::parse(&what),
                material: MaterialUsed::parse(&materials),
                parts: self.part_names(&s, "parts"),
                by: self.written(&s, "by"),
                on: self.written(&s, "on"),
                before: self.written(&s, "before"),
                after: self.written(&s, "after"),
                method: self.written(&s, "method"),
                deviations: self.written(&s, "deviations"),
                kept: self.written(&s, "kept"),
                photos: self.photos(&s),
                hours: self.hours(&s, "hours"),
                bill: self.money(&s, "bill"),
                bill_no: self.written(&s, "bill_no"),
                went_wrong: self.went_wrong(&s),
                what,
                materials,
            };
            self.about_when(&s, "on");
            let texts = [
                &entry.what,
                &entry.materials,
                &entry.by,
                &entry.on,
                &entry.before,
                &entry.after,
                &entry.method,
                &entry.deviations,
                &entry.kept,
            ];
            let empty = texts.iter().all(|t| t.is_empty())
                && entry.parts.is_empty()
                && entry.photos.is_empty()
                && entry.hours.is_none()
                && entry.bill.is_none()
                && entry.went_wrong.is_none();
            if !empty {
                done.push(entry);
            }
        }
        done
    }

    pub(super) fn proposal(&mut self, root: &Map<String, Value>) -> Proposal {
        let Some(proposal) = self.section(root, "proposal").fields else {
            return Proposal::default();
        };
        let mut steps = Vec::new();
        for s in self.list(proposal, "proposal.steps", MOST_ENTRIES) {
            let Some(treatment) = self.text(&s, "treatment") else {
                self.problem(
                    s.at("treatment"),
                    said::NO_STEP.to_owned(),
                    words::NO_TREATMENT_REMEDY,
                );
                continue;
            };
            let Some(treatment) = Treatment::parse(&treatment) else {
                let near = nearest(&treatment, Treatment::ALL.iter().map(|t| t.id()));
                self.problem(
                    s.at("treatment"),
                    words::no_such_treatment(&shorten(&treatment)),
                    &words::did_you_mean(near.unwrap_or("")),
                );
                continue;
            };
            let [low, likely, high] = self.range(&s);
            steps.push(ProposalStep {
                id: self.written(&s, "id"),
                treatment,
                parts: self.part_names(&s, "parts"),
                of: self.piece_numbers(&s, "of"),
                low,
                likely,
                high,
                fixed: self.flag(&s, "fixed").unwrap_or(false),
                hours: self.hours(&s, "hours"),
                who: self.word(&s, "who"),
                quote: self.text(&s, "quote"),
                agreed: self.flag(&s, "agreed").unwrap_or(false),
                note: self.written(&s, "note"),
            });
        }
        Proposal { steps }
    }

    /// Numbers of pieces from 1, with spaces between.
    fn piece_numbers(&mut self, s: &Section, field: &str) -> Vec<u16> {
        let mut numbers = Vec::new();
        let text = self.text(s, field).unwrap_or_default();
        for word in text.split_whitespace().take(MOST_ENTRIES) {
            match word.trim_end_matches([',', ';']).parse::<u16>() {
                Ok(number) if number > 0 => numbers.push(number),
                _ => self.problem(
                    s.at(field),
                    words::cannot_be_used(&shorten(word)),
                    said::PIECE_NUMBERS_REMEDY,
                ),
            }
        }
        numbers
    }
}

/// What files of version 1 say of a filling as a whole, as the state of the filled parts; of the base
/// where no part is recorded as filled.
pub(super) fn failing_fill(circumstances: Circumstances, parts: &mut Vec<Part>) {
    if circumstances.failing_fill != Some(true) || parts.iter().any(|p| p.fill_state.is_some()) {
        return;
    }
    let mut found = false;
    for part in parts.iter_mut() {
        if part.fill.is_some_and(|fill| fill != Fill::None) {
            part.fill_state = Some(FillState::Failing);
            found = true;
        }
    }
    if found {
        return;
    }
    let failing = Some(FillState::Failing);
    match parts.iter_mut().find(|p| p.name == PartName::Base) {
        Some(base) => base.fill_state = failing,
        None => parts.push(Part {
            fill_state: failing,
            ..Part::unknown(PartName::Base)
        }),
    }
}

/// The ledger with the person's own figures in it.
fn with_own(own: &[Override]) -> Ledger {
    let mut ledger = Ledger::standard().clone();
    for one in own {
        // Each was tried when it was read.
        let _ = ledger.override_with(&one.figure, one.value, &one.reason);
    }
    ledger
}

#[cfg(test)]
mod tests {
    use crate::ledger::FindingId;
    use crate::record::{Asked, Case, Draft, Problem};
    use crate::terms::Instrument;
    use crate::terms::Treatment;
    use crate::terms::{Covers, PartName, TestKind, Tester};

    fn read(body: &str) -> (Case, Vec<Problem>) {
        Draft::parse(&format!(
            "{{\"format\":\"leavewell-case\",\"version\":1{body}}}"
        ))
        .unwrap()
        .read()
    }

    #[test]
    fn what_is_asked_is_a_proposal_or_treatments() {
        let asked = |text: &str| {
            let (case, problems) = read(&format!(",\"aim\":{{\"asked\":\"{text}\"}}"));
            (case.aim.asked, problems.len())
        };
        assert_eq!(asked("proposal"), (Some(Asked::Proposal), 0));
        let both = Asked::Treatments(vec![Treatment::Dents, Treatment::Mechanical]);
        assert_eq!(asked("T08 T12"), (Some(both), 0));
        let one = Asked::Treatments(vec![Treatment::Dents]);
        assert_eq!(asked("T08 T99, T08"), (Some(one), 1));
        assert_eq!(asked("nothing"), (None, 1));
    }

    #[test]
    fn marks_are_read_with_their_part_and_what_was_confirmed_from_them() {
        let (case, problems) = read(
            r#","marks":[{"id":"1","text":" E P N S ","part":"base"},{"id":"e2"},{"id":"e3","text":"A1"}],
               "findings":[{"id":"M01","answer":"seen","part":"base","from":"1"},
                           {"id":"M20","answer":"unsure","from":"e3"}]"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let [first, last] = &case.marks[..] else {
            panic!("{:?}", case.marks)
        };
        assert_eq!(
            (&*first.text, first.part),
            ("E P N S", Some(PartName::Base))
        );
        assert_eq!(first.findings, [FindingId::M01]);
        assert_eq!((&*last.text, last.part), ("A1", None));
        assert!(last.findings.is_empty());
        let (case, problems) = read(r#","marks":[{"text":"X","part":"nowhere"}, 5]"#);
        assert_eq!((case.marks.len(), problems.len()), (1, 2));
    }

    #[test]
    fn instruments_at_hand_are_ids_with_spaces() {
        let (case, problems) = read(r#","looked":{"instruments":"xrf scales, telescope"}"#);
        assert_eq!(case.instruments, [Instrument::Xrf, Instrument::Scales]);
        assert_eq!(problems.len(), 1);
        assert_eq!(problems[0].field, "looked.instruments");
    }

    #[test]
    fn a_quote_is_for_one_treatment_or_several() {
        let (case, problems) = read(
            r#","quotes":[{"treatment":"T08","likely":60,"post":12,"post_included":true,"fixed":true},
               {"id":"q1","treatments":"T08 T12","likely":"£1,150","hours":"12½","covers":"with_cleaning"}]"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let [alone, together] = &case.quotes[..] else {
            panic!("{:?}", case.quotes)
        };
        assert_eq!(case.quote(Treatment::Dents), Some(alone));
        assert!(alone.fixed && alone.post_included && alone.post.abs() < 1e-12);
        assert_eq!(case.quote(Treatment::Mechanical), None);
        assert_eq!(together.covers, Covers::WithCleaning);
        assert_eq!((together.likely, together.hours), (1150.0, Some(12.5)));
    }

    #[test]
    fn bench_figures_are_a_release_test_of_the_interior() {
        let result = |food: &str| {
            let (case, _) = read(&format!(",\"bench\":{{\"food\":{{{food}}}}}"));
            case.tests.first().map(|t| {
                assert_eq!(t.part, Some(PartName::Interior));
                assert_eq!(
                    (t.kind, t.by),
                    (TestKind::Release, Some(Tester::Laboratory))
                );
                t.passed
            })
        };
        assert_eq!(result(""), None);
        assert_eq!(result("\"pb\":\"unreadable\""), None);
        assert_eq!(result("\"pb\":0.001"), Some(Some(true)));
        assert_eq!(result("\"pb\":5"), Some(Some(false)));
        assert_eq!(result("\"cu\":0.1"), Some(None), "lead was not measured");
        assert_eq!(result("\"pb\":0.001,\"ni\":99"), Some(Some(false)));
    }

    #[test]
    fn done_work_and_proposals_name_their_parts() {
        let (case, problems) = read(
            r#","done":[{"what":"T09","materials":"solder_lead","parts":"foot handle","on":"1987"},{}],
               "proposal":{"steps":[{"id":"a","treatment":"T08","parts":"body","of":"1 2","likely":60,"agreed":true}]}"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        assert_eq!(case.done.len(), 1);
        assert!(case.done[0].adds_lead());
        assert_eq!(case.done[0].parts, [PartName::Foot, PartName::Handle]);
        let step = &case.proposal.steps[0];
        assert_eq!((step.of.as_slice(), step.agreed), (&[1, 2][..], true));
    }
}
