//! What the printed sheets share. A sheet is one case as blocks, in a version for the client, the buyer or
//! the file.
//!
//! Invariants: a sheet states what is missing instead of guessing; it names no treatment without its
//! caution and the deferral line; its numbers are those of the report it is made from.

use serde_json::{Map, Value};

use super::Subject;
use super::as_typed::as_typed;
use super::block::{Block, Tone};
use super::scale_words::said;
use super::sheet_done::{RecordedWork, done};
use super::wording::sheet as words;
use leavewell_model::counsel::money;
use leavewell_model::ledger::{FigureId, LEDGER_VERSION, Ledger};
use leavewell_model::record::Part;
use leavewell_model::record::{
    Case, Draft, Form, LengthUnit, Problem, WeightUnit, is_enough_to_advise, size_text,
};
use leavewell_model::report::{Band, Report};
use leavewell_model::terms::{PartName, Relation, Seen, TreatmentSet, capital, small, the_pieces};
use leavewell_model::treatment::{LeadStatus, Release, lead_anywhere, release};

/// Version of the program, printed on every sheet.
pub(super) const VERSION: &str = env!("CARGO_PKG_VERSION");

/// A case with everything a sheet may use.
pub(super) struct Paper<'a> {
    subject: &'a Subject,
    pub(super) draft: &'a Draft,
    /// Every field of the record as it stands in the file, for those that the model does not read.
    pub(super) raw: &'a Map<String, Value>,
    pub(super) case: &'a Case,
    pub(super) ledger: &'a Ledger,
    /// The report on the finer sample used for sheets.
    pub(super) report: Report,
    pub(super) done: Vec<RecordedWork>,
}

impl<'a> Paper<'a> {
    pub(super) fn new(subject: &'a Subject) -> Self {
        let (draft, solved) = (subject.draft(), subject.solved_finely());
        Self {
            subject,
            draft,
            raw: draft.fields(),
            case: subject.case(),
            ledger: solved.ledger(),
            report: solved.report(subject.problems().to_vec()),
            done: done(subject.case()),
        }
    }

    /// Adds what would change the answer, which takes most of the time.
    pub(super) fn with_changes(mut self) -> Self {
        if !self.too_little() {
            self.report.counsel.would_change = self.subject.changes().to_vec();
        }
        self
    }

    /// Whether so little is recorded that any advice would be a guess.
    pub(super) fn too_little(&self) -> bool {
        !is_enough_to_advise(self.case)
    }

    /// The name of the piece: as typed, or else its form.
    pub(super) fn name(&self) -> String {
        let name = as_typed(&self.case.piece.name);
        if !name.is_empty() {
            return name;
        }
        self.case.piece.form.map_or_else(
            || words::UNNAMED_PIECE.to_owned(),
            |form| form.label().to_owned(),
        )
    }

    /// The treatments that the history names.
    pub(super) fn named_done(&self) -> TreatmentSet {
        self.done.iter().filter_map(|work| work.treatment).collect()
    }

    /// The treatments that the proposal names.
    pub(super) fn named_proposed(&self) -> TreatmentSet {
        self.case
            .proposal
            .steps
            .iter()
            .map(|step| step.treatment)
            .collect()
    }

    /// The treatments that a sheet with all options names: with too little recorded to advise, the history
    /// and the proposal alone.
    pub(super) fn named(&self) -> TreatmentSet {
        let recorded = self.named_done().or(self.named_proposed());
        if self.too_little() {
            return recorded;
        }
        let options = self.report.options.iter().map(|option| option.treatment);
        recorded.or(options.collect())
    }

    /// The day the question was asked; `None` if not recorded.
    pub(super) fn day(&self) -> Option<String> {
        self.case
            .asked_on
            .map(|d| format!("{}-{:02}-{:02}", d.year, d.month, d.day))
    }

    pub(super) fn money(&self, amount: f64) -> String {
        money(self.case, amount)
    }

    /// A range of money: "about £210 to £560, middle £340".
    pub(super) fn money_band(&self, band: Band) -> String {
        let [low, middle, high] = [band.p10, band.p50, band.p90].map(|x| self.money(x));
        if band.p10.abs().max(band.p90.abs()) < 0.5 {
            words::NO_MONEY.to_owned()
        } else if low == high {
            words::about(&middle)
        } else {
            words::about_from(&low, &high, &middle)
        }
    }

    /// A field that the model does not read, as typed.
    pub(super) fn typed(&self, path: &str) -> String {
        as_typed(&self.draft.text(path))
    }

    /// A likelihood in words with its number.
    pub(super) fn likely(&self, p: f64) -> String {
        said(p, self.ledger)
    }

    /// A likelihood in words for a sheet that somebody signs. Without a specialist or a laboratory nothing is
    /// surer than "almost certainly".
    pub(super) fn in_words(&self, p: f64) -> &'static str {
        words::sureness([
            p >= self.ledger.value(FigureId::WORDS_VERY_LIKELY),
            p >= self.ledger.value(FigureId::WORDS_LIKELY),
            p >= self.ledger.value(FigureId::WORDS_EVEN),
        ])
    }

    /// What a stranger may be told that the piece is called: its form, never the owner's name for it.
    pub(super) fn public_name(&self) -> String {
        public_name(self.case)
    }

    /// Length, width, height and weight as a sentence, in the person's units; empty if nothing is measured.
    pub(super) fn size(&self) -> String {
        let piece = &self.case.piece;
        let in_inches = piece.length_unit == Some(LengthUnit::Inches);
        let in_ounces = piece.weight_unit == Some(WeightUnit::TroyOunces);
        let length = |name: &str, path: &str, mm: Option<f64>| {
            let mm = mm?;
            let text = size_text(self.draft, path).filter(|text| in_inches && !text.is_empty());
            Some(words::size(
                name,
                &text.map_or_else(|| words::mm(mm), |text| words::inches(&text)),
            ))
        };
        let weight = piece.weight_g.map(|g| {
            let text = size_text(self.draft, "piece.weight_g");
            let text = text.filter(|text| in_ounces && !text.is_empty());
            let text = text.map_or_else(|| words::grams(g), |text| words::troy_ounces(&text));
            words::size(words::WEIGHT, &text)
        });
        let all: Vec<String> = [
            length(words::HEIGHT, "piece.height_mm", piece.height_mm),
            length(words::LENGTH, "piece.length_mm", piece.length_mm),
            length(words::WIDTH, "piece.width_mm", piece.width_mm),
            weight,
        ]
        .into_iter()
        .flatten()
        .collect();
        if all.is_empty() {
            return String::new();
        }
        capital(&all.join(", ")) + "."
    }

    /// Whether to disclose it to a buyer: more than very unlikely.
    pub(super) fn worth_telling(&self, p: f64) -> bool {
        p > self.ledger.value(FigureId::WORDS_VERY_UNLIKELY)
    }

    /// The entries in the record's list of parts, then those of single pieces with the number of each.
    pub(super) fn raw_parts(&self) -> Vec<(Option<u16>, &Map<String, Value>)> {
        fn list(held: Option<&Value>) -> std::slice::Iter<'_, Value> {
            let entries = held.and_then(Value::as_array);
            entries.map_or(&[][..], Vec::as_slice).iter()
        }
        let all = list(self.raw.get("parts")).map(|part| (None, part));
        let pieces = list(self.raw.get("pieces").and_then(|pieces| pieces.get("each")));
        let of_pieces = pieces.flat_map(|piece| {
            let no = piece["no"].as_u64().and_then(|no| u16::try_from(no).ok());
            list(piece.get("parts")).map(move |part| (no, part))
        });
        let count = self.case.pieces.count;
        let of_pieces = of_pieces.filter(|(no, _)| no.is_some_and(|no| count > 1 && no <= count));
        all.chain(of_pieces)
            .filter_map(|(no, part)| Some((no, part.as_object()?)))
            .collect()
    }

    /// What several pieces come to together and one by one; empty for one piece.
    pub(super) fn pieces_rows(&self) -> Vec<(String, String)> {
        let Some(pieces) = &self.report.pieces else {
            return Vec::new();
        };
        let apart = pieces.apart.kept;
        vec![
            (
                words::KEPT_TOGETHER.to_owned(),
                self.money_band(pieces.together.kept),
            ),
            (words::KEPT_APART.to_owned(), self.money_band(apart)),
        ]
    }

    /// Parts that such a piece has but nothing is recorded about.
    pub(super) fn parts_not_looked_at(&self) -> Vec<&'static str> {
        let parts = self.case.piece.form.map_or(&[][..], |form| form.parts());
        parts
            .iter()
            .filter(|part| self.case.part(**part).is_none())
            .map(|part| part.label())
            .collect()
    }

    /// Whether there is lead in the metal, as recorded.
    pub(super) fn lead(&self) -> LeadStatus {
        lead_anywhere(self.case)
    }

    /// Whether the piece releases lead into food, as recorded.
    pub(super) fn release(&self) -> Release {
        release(self.case)
    }

    /// What a reader would want to know but the record lacks, one sentence each. The value counts only
    /// `with_value`.
    pub(super) fn missing(&self, with_value: bool) -> Vec<String> {
        let piece = &self.case.piece;
        let mut missing = Vec::new();
        let mut add = |absent: bool, text: &str| {
            if absent {
                missing.push(text.to_owned());
            }
        };
        add(with_value && piece.name.trim().is_empty(), words::NO_NAME);
        add(piece.form.is_none(), words::NO_FORM);
        add(piece.height_mm.is_none(), words::NO_SIZE);
        add(
            piece.from_year.is_none() && piece.to_year.is_none(),
            words::NO_YEARS,
        );
        add(
            !self.case.findings.iter().any(|a| a.seen != Seen::Unsure),
            words::NO_LOOK,
        );
        add(self.case.parts.is_empty(), words::NO_CONDITION);
        add(
            self.lead() == LeadStatus::Unknown && self.release() == Release::Untested,
            if self.case.tests.iter().any(|test| !test.of.is_empty()) {
                words::NO_LEAD_TEST_OF_EACH
            } else {
                words::NO_LEAD_TEST
            },
        );
        add(with_value && self.report.value.assumed, words::NO_PRICE);
        add(self.case.asked_on.is_none(), words::NO_DATE);
        let unseen = self.parts_not_looked_at();
        if !self.case.parts.is_empty() && !unseen.is_empty() {
            let unseen: Vec<String> = unseen.into_iter().map(small).collect();
            missing.push(words::parts_not_looked_at(&unseen.join(", ")));
        }
        let unsure: Vec<&str> = self
            .case
            .findings
            .iter()
            .filter(|a| a.seen == Seen::Unsure)
            .map(|a| a.id.fact().title)
            .collect();
        if !unsure.is_empty() {
            missing.push(words::looked_for_not_sure(&unsure.join("; ")));
        }
        missing
    }

    /// Fields of the record that could not be used, with the reason.
    pub(super) fn problems(&self) -> Vec<String> {
        let line = |p: &Problem| {
            format!(
                "{}: {} {}",
                as_typed(&p.field),
                as_typed(&p.message),
                as_typed(&p.remedy)
            )
        };
        self.report.problems.iter().map(line).collect()
    }

    /// The inputs behind the numbers, so that anyone can reproduce them.
    pub(super) fn made_from(&self) -> Vec<(String, String)> {
        let own = self.case.overrides.len();
        let fact = |name: &str, words: String| (name.to_owned(), words);
        let taught = &self.case.taught;
        let taught = (!taught.is_empty()).then(|| {
            let of = words::taught_by(taught.figures().len(), taught.pieces, &taught.digest());
            fact(words::TAUGHT_FIGURES, of)
        });
        let mut made_from = vec![
            fact(words::PROGRAM, words::program(VERSION)),
            fact(words::LEDGER, LEDGER_VERSION.to_owned()),
            fact(
                words::OWN_FIGURES,
                if own == 0 {
                    words::NO_OWN_FIGURES.to_owned()
                } else {
                    own.to_string()
                },
            ),
            fact(words::SEED, self.report.seed.to_string()),
            fact(
                words::POINTS,
                (1_u32 << leavewell_model::counsel::SHEET_LOG2).to_string(),
            ),
            fact(
                words::DATE,
                self.day().unwrap_or_else(|| words::NOT_RECORDED.to_owned()),
            ),
        ];
        made_from.splice(2..2, taught);
        made_from
    }

    /// Where the coarser sample on screen gives another answer; empty if both agree.
    pub(super) fn against_the_screen(&self) -> Vec<Block> {
        let screen = &self.subject.report().counsel;
        let here = &self.report.counsel;
        let text = if screen.steps != here.steps {
            words::screen_says(&screen.sentence)
        } else if screen.firmness != here.firmness {
            words::screen_calls_it(screen.firmness.id(), here.firmness.id())
        } else {
            return Vec::new();
        };
        vec![Block::said(Tone::Note, text)]
    }
}

/// A part in the middle of a sentence, with the pieces it is on where that is not all of them.
pub(super) fn part_label(part: &Part) -> String {
    words::part_of(&small(part.name.label()), &the_pieces(&part.on))
}

/// The parts for which something holds, each once, with the pieces it holds on where that is not all of them.
pub(super) fn part_labels(case: &Case, holds: &dyn Fn(&Part) -> bool) -> Vec<String> {
    let mut found: Vec<Part> = Vec::new();
    for part in case.parts.iter().filter(|part| holds(part)) {
        match found.iter_mut().find(|known| known.name == part.name) {
            Some(known) => known.on.extend(&part.on),
            None => found.push(part.clone()),
        }
    }
    for part in &mut found {
        let all = 1..=case.pieces.count;
        let on: Vec<u16> = all.filter(|no| part.on.contains(no)).collect();
        part.on = if on.len() == usize::from(case.pieces.count) {
            Vec::new()
        } else {
            on
        };
    }
    found.iter().map(part_label).collect()
}

/// The form of a piece as a stranger may be told; a piece outside the forms is just a piece. Several are
/// named for what they are to each other.
pub(super) fn public_name(case: &Case) -> String {
    let count = case.pieces.count;
    if count > 1 {
        let things = words::several(case.piece.form);
        return match case.pieces.relation {
            Relation::Pair => words::a_pair_of(things),
            Relation::Set => words::a_set_of(count, things),
            _ => words::alike(count, things),
        };
    }
    match case.piece.form {
        None => words::NO_FORM_KNOWN.to_owned(),
        Some(Form::Other) => words::A_PIECE.to_owned(),
        Some(form) => form.label().to_owned(),
    }
}

/// A JSON value as a person would write it; empty for a list or an object.
pub(super) fn plain(value: &Value) -> String {
    match value {
        Value::String(text) => as_typed(text),
        Value::Number(number) => number.to_string(),
        Value::Bool(yes) => if *yes { words::YES } else { words::NO }.to_owned(),
        _ => String::new(),
    }
}

/// The name of an entry in the list of parts.
pub(super) fn part_name(part: &Map<String, Value>) -> String {
    let id = part.get("part").map(plain).unwrap_or_default();
    match PartName::parse(&id) {
        Some(name) => name.label().to_owned(),
        None if id.is_empty() => words::UNNAMED_PART.to_owned(),
        None => id,
    }
}

/// The heading of a sheet: what it is called there, for whom it is, and when it was made.
pub(super) fn head(paper: &Paper, name: &str, whom: &str) -> Vec<Block> {
    let day = paper
        .day()
        .unwrap_or_else(|| words::NO_DATE_RECORDED.to_owned());
    vec![Block::para(words::head(name, whom, &day))]
}

/// What is missing, as a section; empty if nothing is.
pub(super) fn missing(paper: &Paper, id: &str) -> Vec<Block> {
    let missing = paper.missing(!id.starts_with("buyer"));
    if missing.is_empty() {
        return Vec::new();
    }
    vec![Block::section(
        id,
        words::NOT_KNOWN,
        vec![Block::List { items: missing }],
    )]
}

/// A lead-in line with its list; empty if the list is.
pub(super) fn listed(lead: &str, items: &[String]) -> Vec<Block> {
    if items.is_empty() {
        return Vec::new();
    }
    vec![
        Block::para(lead),
        Block::List {
            items: items.to_vec(),
        },
    ]
}
