//! The record of work done to the piece, and the page where it is entered.

use super::Subject;
use super::as_typed::as_typed;
use super::ask::{NumberField, choice, number};
use super::block::{Block, Choice, EntryField, TakePhotos, Tone};
use super::caution_blocks;
use super::happened::happened;
use super::happened::problem_at;
use super::money_text::MoneyFormat;
use super::part_words::{named, parts};
use super::sentence::and;
use super::sheet_cautions::with_cautions;
use super::wording::sheet_done as words;
use leavewell_model::record::{Case, Draft, Problem};
use leavewell_model::terms::MaterialUsed;
use leavewell_model::terms::PartName;
use leavewell_model::terms::Treatment;
use leavewell_model::terms::{small, sum};

/// Greatest number of entries read. The rest stay in the record.
const MOST: usize = 60;

/// One piece of work, as recorded.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct RecordedWork {
    /// Index in the list of the file.
    pub(super) place: usize,
    /// The treatment, if the catalogue knows it.
    pub(super) treatment: Option<Treatment>,
    /// The text in place of an unknown treatment.
    pub(super) unknown: String,
    pub(super) by: String,
    pub(super) on: String,
    /// The class of material, if known.
    material: Option<MaterialUsed>,
    /// The class of material, as written.
    materials: String,
    pub(super) before: String,
    pub(super) after: String,
    /// Its id in the record; empty where it has none.
    pub(super) id: String,
    pub(super) parts: Vec<PartName>,
    hours: Option<f64>,
    method: String,
    deviations: String,
    kept: String,
    /// The numbers of the photographs taken afterwards.
    pub(super) photos: Vec<String>,
}

/// All recorded work, in file order.
pub(super) fn done(case: &Case) -> Vec<RecordedWork> {
    case.done
        .iter()
        .map(|work| RecordedWork {
            place: work.place,
            treatment: work.treatment,
            unknown: if work.treatment.is_some() {
                String::new()
            } else {
                as_typed(&work.what)
            },
            by: as_typed(&work.by),
            on: as_typed(&work.on),
            material: work.material,
            materials: work.materials.clone(),
            before: as_typed(&work.before),
            after: as_typed(&work.after),
            id: work.id.clone(),
            parts: work.parts.clone(),
            hours: work.hours,
            method: as_typed(&work.method),
            deviations: as_typed(&work.deviations),
            kept: as_typed(&work.kept),
            photos: work.photos.clone(),
        })
        .collect()
}

impl RecordedWork {
    /// The work in words.
    pub(super) fn name(&self) -> String {
        match self.treatment {
            Some(treatment) => treatment.name().to_owned(),
            None if self.unknown.is_empty() => words::UNNAMED.to_owned(),
            None => self.unknown.clone(),
        }
    }

    /// The name for the middle of a sentence. Text that a person wrote stays as written.
    pub(super) fn in_sentence(&self) -> String {
        match self.treatment {
            Some(treatment) => small(treatment.name()),
            None if self.unknown.is_empty() => words::UNNAMED_IN_SENTENCE.to_owned(),
            None => self.unknown.clone(),
        }
    }

    /// The class of material in words: as written if unknown, empty if not given.
    pub(super) fn materials_words(&self) -> String {
        self.material.map_or_else(
            || as_typed(&self.materials),
            |material| material.label().to_owned(),
        )
    }

    /// Whether silver was added.
    pub(super) fn plates(&self) -> bool {
        matches!(
            self.treatment,
            Some(
                Treatment::Replate
                    | Treatment::Overplate
                    | Treatment::LocalPlate
                    | Treatment::RubOn
            )
        ) || matches!(
            self.material,
            Some(MaterialUsed::Silver | MaterialUsed::SilverOther)
        )
    }

    /// Whether a joint, a break or the shape was repaired.
    pub(super) fn repairs(&self) -> bool {
        matches!(
            self.treatment,
            Some(
                Treatment::Solder
                    | Treatment::LowMelt
                    | Treatment::HardSolder
                    | Treatment::Mechanical
                    | Treatment::RemoveLead
                    | Treatment::RemoveFill
                    | Treatment::Dents
                    | Treatment::Tinning
            )
        ) || matches!(
            self.material,
            Some(
                MaterialUsed::SolderLeadFree
                    | MaterialUsed::SolderLead
                    | MaterialUsed::SolderUnknown
                    | MaterialUsed::SolderLow
                    | MaterialUsed::SolderHard
                    | MaterialUsed::Adhesive
            )
        )
    }

    /// Whether a part was replaced.
    pub(super) fn replaces(&self) -> bool {
        self.treatment == Some(Treatment::ReplacePart)
            || self.material == Some(MaterialUsed::NewPart)
    }

    /// Whether a coating was left on the surface.
    pub(super) fn coats(&self) -> bool {
        matches!(self.treatment, Some(Treatment::Lacquer | Treatment::Toning))
            || self.material == Some(MaterialUsed::Coating)
    }

    /// When and by whom, in a few words; empty if neither is known.
    pub(super) fn when_and_who(&self) -> String {
        match (self.on.is_empty(), self.by.is_empty()) {
            (true, true) => String::new(),
            (false, true) => self.on.clone(),
            (true, false) => words::by(&self.by),
            (false, false) => words::on_by(&self.on, &self.by),
        }
    }

    /// When and by whom in brackets, to follow the name of the work.
    pub(super) fn when_in_brackets(&self) -> String {
        match self.when_and_who() {
            when if when.is_empty() => when,
            when => words::in_brackets(&when),
        }
    }

    /// Label and value of each field, for a record.
    pub(super) fn rows(&self) -> Vec<(String, String)> {
        let said = |text: String| {
            if text.is_empty() {
                words::NOT_RECORDED.to_owned()
            } else {
                text
            }
        };
        let parts: Vec<String> = self.parts.iter().map(|part| named(*part)).collect();
        let quoted = |text: &str| match text {
            "" => String::new(),
            text => words::quoted(text),
        };
        // What only a workshop writes down stands there where it is written.
        let more = |name: &str, text: String| (!text.is_empty()).then(|| (name.to_owned(), text));
        let mut rows = vec![(words::DONE.to_owned(), self.name())];
        rows.extend(more(words::ON_PARTS, and(&parts)));
        rows.extend([
            (words::BY.to_owned(), said(self.by.clone())),
            (words::ON.to_owned(), said(self.on.clone())),
        ]);
        rows.extend(more(words::METHOD, quoted(&self.method)));
        rows.push((words::MATERIAL.to_owned(), said(self.materials_words())));
        rows.extend(more(
            words::HOURS,
            self.hours.map_or_else(String::new, |hours| sum("", hours)),
        ));
        rows.extend(more(words::DEVIATIONS, self.deviations.clone()));
        rows.extend(more(words::PARTS_KEPT, self.kept.clone()));
        rows.extend([
            (words::BEFORE.to_owned(), said(self.before.clone())),
            (words::AFTER.to_owned(), said(self.after.clone())),
        ]);
        rows
    }
}

/// Builds the page: one row of fields for each entry, and an empty one for the next.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let (draft, case, problems) = (subject.draft(), subject.case(), subject.problems());
    let recorded = draft.count("done");
    let mut blocks = vec![
        Block::para(words::WHAT_IT_IS),
        Block::said(Tone::Quiet, words::EARLIER_WORK),
    ];
    let filled = |place: usize| case.done.iter().any(|work| work.place == place);
    // The next free index. An empty entry at the end serves as well.
    let rows = match recorded.checked_sub(1) {
        Some(last) if !filled(last) => recorded,
        _ => recorded + 1,
    };
    for place in 0..rows.min(MOST) {
        let title = if filled(place) {
            words::work(place + 1)
        } else {
            words::ADD_ANOTHER.to_owned()
        };
        blocks.push(Block::section(
            &format!("done.{place}"),
            &title,
            entry(draft, case, problems, place),
        ));
    }
    if recorded > MOST {
        blocks.push(Block::said(Tone::Note, words::first_shown(MOST)));
    }
    blocks.push(happened(subject));
    let recorded = case.done.iter().filter_map(|work| work.treatment);
    let mut blocks = with_cautions(case, recorded.collect(), blocks);
    // The list of choices names every treatment.
    let all = Treatment::ALL
        .iter()
        .filter_map(|t| caution_blocks::of_treatment(*t).map(|caution| (t.name(), caution)))
        .flat_map(|(name, caution)| [Block::said(Tone::Quiet, name), caution])
        .collect();
    blocks.push(Block::fold("done.cautions", words::CAUTIONS, all));
    blocks
}

fn entry(draft: &Draft, case: &Case, problems: &[Problem], place: usize) -> Vec<Block> {
    let mut options = vec![("", words::CHOOSE)];
    options.extend(Treatment::ALL.iter().map(|t| (t.id(), t.name())));
    let (what, _) = choice(draft, &path(place, "what"), words::WHAT, "", &options);
    let mut materials = vec![("", words::NOT_SAID)];
    materials.extend(MaterialUsed::ALL.iter().map(|m| (m.id(), m.label())));
    let (materials, _) = choice(
        draft,
        &path(place, "materials"),
        words::MATERIAL_FIELD,
        words::MATERIAL_HINT,
        &materials,
    );
    let mut blocks = Vec::new();
    let unknown = case
        .done
        .iter()
        .find(|work| work.place == place && work.treatment.is_none());
    if let Some(work) = unknown.filter(|work| !work.what.is_empty()) {
        blocks.push(Block::said(
            Tone::Note,
            words::none_of_the_choices(&as_typed(&short(&work.what))),
        ));
    }
    blocks.extend([
        Block::Row {
            blocks: vec![what, materials],
        },
        Block::Row {
            blocks: vec![
                text_field(draft, place, "by", words::BY_WHOM, "", String::new()),
                text_field(
                    draft,
                    place,
                    "on",
                    words::WHEN,
                    words::WHEN_HINT,
                    problem_at(problems, &path(place, "on")),
                ),
            ],
        },
        text_field(
            draft,
            place,
            "before",
            words::BEFORE_FIELD,
            words::BEFORE_HINT,
            String::new(),
        ),
        text_field(
            draft,
            place,
            "after",
            words::AFTER_FIELD,
            words::AFTER_HINT,
            String::new(),
        ),
    ]);
    if unknown.is_none() && case.done.iter().any(|work| work.place == place) {
        blocks.extend(what_it_took(draft, case, place));
    }
    blocks
}

/// What a work took, and whether it went wrong.
fn what_it_took(draft: &Draft, case: &Case, place: usize) -> Vec<Block> {
    let of = |field: &str, label: &str, hint: &str, unit: &str| {
        let asked = NumberField {
            path: &path(place, field),
            label,
            unit,
            hint,
            stand_in: None,
        };
        number(draft, asked).0
    };
    let unit = MoneyFormat::of(case.market.currency).unit();
    let results = [
        ("", words::NOT_SAID),
        ("no", words::WENT_WELL),
        ("yes", words::WENT_WRONG),
        ("unsure", words::NOT_SURE),
    ];
    let (result, _) = choice(
        draft,
        &path(place, "bad"),
        words::RESULT,
        words::RESULT_HINT,
        &results,
    );
    let number_of_bill = text_field(
        draft,
        place,
        "bill_no",
        words::BILL_NUMBER,
        words::BILL_NUMBER_HINT,
        String::new(),
    );
    let text = |field: &str, label: &str, hint: &str| {
        text_field(draft, place, field, label, hint, String::new())
    };
    vec![
        text("method", words::METHOD_FIELD, words::METHOD_HINT),
        Block::Row {
            blocks: vec![
                text("deviations", words::DEVIATIONS, words::DEVIATIONS_HINT),
                text("kept", words::PARTS_KEPT, words::PARTS_KEPT_HINT),
            ],
        },
        parts_ticked(draft, case, place),
        of("hours", words::HOURS, "", words::HOURS_UNIT),
        Block::TakePhotos(photos_after(draft, case, place)),
        Block::Row {
            blocks: vec![of("bill", words::BILL, "", unit), number_of_bill],
        },
        result,
    ]
}

/// The parts a work was done to.
fn parts_ticked(draft: &Draft, case: &Case, place: usize) -> Block {
    let path = path(place, "parts");
    let options = parts(case).into_iter();
    Block::Ticks(Choice {
        label: words::ON_PARTS.to_owned(),
        hint: String::new(),
        options: options
            .map(|part| (part.id().to_owned(), part.label().to_owned()))
            .collect(),
        chosen: draft.text(&path),
        path,
    })
}

/// Photographs taken after a work. They go by its id, which it gets with the first of them.
fn photos_after(draft: &Draft, case: &Case, place: usize) -> TakePhotos {
    let id = draft.text(&path(place, "id"));
    let (id, first) = if id.is_empty() {
        let taken = |id: &String| case.done.iter().any(|work| work.id == *id);
        let free = (place + 1..).map(|number| format!("e{number}"));
        let id = free.into_iter().find(|id| !taken(id)).unwrap_or_default();
        (id.clone(), (path(place, "id"), id))
    } else {
        (id, (String::new(), String::new()))
    };
    TakePhotos {
        of: ["done-", &id].concat(),
        path: path(place, "photos"),
        name: words::work_named(place + 1),
        first,
    }
}

fn text_field(
    draft: &Draft,
    place: usize,
    field: &str,
    label: &str,
    hint: &str,
    problem: String,
) -> Block {
    let path = path(place, field);
    Block::Field(EntryField {
        label: label.to_owned(),
        unit: String::new(),
        hint: hint.to_owned(),
        text: draft.text(&path),
        stand_in: String::new(),
        problem,
        number: false,
        path,
    })
}

fn short(text: &str) -> String {
    text.chars().take(40).collect()
}

fn path(place: usize, field: &str) -> String {
    format!("done[{place}].{field}")
}
