//! What was done to the piece: the record of treatment, and the page it is written on.

use super::Subject;
use super::as_typed::as_typed;
use super::ask::choice;
use super::block::{Block, Field, Tone};
use super::caution_blocks;
use super::sheet::small;
use super::sheet_cautions::with_cautions;
use super::wording::sheet_done as words;
use leavewell_model::record::{Date, Draft};
use leavewell_model::treatment::Treatment;

/// Most entries read; the rest stays in the record.
const MOST: usize = 60;

/// One thing done, as recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Done {
    /// Its place in the list of the file.
    pub(super) place: usize,
    /// What, if it is one the catalogue knows.
    pub(super) treatment: Option<Treatment>,
    /// What was written where a treatment should stand and is not known.
    pub(super) unknown: String,
    pub(super) by: String,
    pub(super) on: String,
    /// Id of the class of material, as written.
    pub(super) materials: String,
    pub(super) before: String,
    pub(super) after: String,
}

const FIELDS: [&str; 6] = ["what", "by", "on", "materials", "before", "after"];

/// Everything recorded, in the order it stands in the file; entries with nothing in them are passed
/// over.
pub(super) fn done(draft: &Draft) -> Vec<Done> {
    (0..places(draft))
        .filter_map(|place| {
            let text = |field| draft.text(&path(place, field));
            if FIELDS.iter().all(|f| text(f).trim().is_empty()) {
                return None;
            }
            let what = text("what");
            let treatment = Treatment::parse(what.trim());
            Some(Done {
                place,
                treatment,
                unknown: if treatment.is_some() {
                    String::new()
                } else {
                    as_typed(&what)
                },
                by: as_typed(&text("by")),
                on: as_typed(&text("on")),
                materials: text("materials"),
                before: as_typed(&text("before")),
                after: as_typed(&text("after")),
            })
        })
        .collect()
}

impl Done {
    /// What was done, in words.
    pub(super) fn name(&self) -> String {
        match self.treatment {
            Some(treatment) => treatment.name().to_owned(),
            None if self.unknown.is_empty() => words::UNNAMED.to_owned(),
            None => self.unknown.clone(),
        }
    }

    /// The same in the middle of a sentence; what a person wrote stays as written.
    pub(super) fn in_sentence(&self) -> String {
        match self.treatment {
            Some(treatment) => small(treatment.name()),
            None if self.unknown.is_empty() => words::UNNAMED_IN_SENTENCE.to_owned(),
            None => self.unknown.clone(),
        }
    }

    /// The class of material in words; as written when it is none we know, empty when not said.
    pub(super) fn materials_words(&self) -> String {
        let written = self.materials.trim();
        if written.is_empty() {
            return String::new();
        }
        words::MATERIALS
            .iter()
            .find(|(id, _)| *id == written)
            .map_or_else(|| as_typed(written), |(_, words)| (*words).to_owned())
    }

    /// Silver was put on.
    pub(super) fn plates(&self) -> bool {
        matches!(
            self.treatment,
            Some(
                Treatment::Replate
                    | Treatment::Overplate
                    | Treatment::LocalPlate
                    | Treatment::RubOn
            )
        ) || matches!(self.materials.trim(), "silver" | "silver_other")
    }

    /// A joint, a break or the shape was mended.
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
        ) || self.materials.starts_with("solder")
            || self.materials.trim() == "adhesive"
    }

    /// A part is new.
    pub(super) fn replaces(&self) -> bool {
        self.treatment == Some(Treatment::ReplacePart) || self.materials.trim() == "new_part"
    }

    /// Something lies over the surface.
    pub(super) fn coats(&self) -> bool {
        matches!(self.treatment, Some(Treatment::Lacquer | Treatment::Toning))
            || self.materials.trim() == "coating"
    }

    /// Lead was put in.
    pub(super) fn adds_lead(&self) -> bool {
        self.materials.trim() == "solder_lead"
    }

    /// When and by whom, in a few words; empty when neither is known.
    pub(super) fn when_and_who(&self) -> String {
        match (self.on.is_empty(), self.by.is_empty()) {
            (true, true) => String::new(),
            (false, true) => self.on.clone(),
            (true, false) => words::by(&self.by),
            (false, false) => words::on_by(&self.on, &self.by),
        }
    }

    /// The same in brackets, to stand behind what was done.
    pub(super) fn when_in_brackets(&self) -> String {
        match self.when_and_who() {
            when if when.is_empty() => when,
            when => words::in_brackets(&when),
        }
    }

    /// Name and words, for a record.
    pub(super) fn rows(&self) -> Vec<(String, String)> {
        let said = |text: String| {
            if text.is_empty() {
                words::NOT_RECORDED.to_owned()
            } else {
                text
            }
        };
        vec![
            (words::DONE.to_owned(), self.name()),
            (words::BY.to_owned(), said(self.by.clone())),
            (words::ON.to_owned(), said(self.on.clone())),
            (words::MATERIAL.to_owned(), said(self.materials_words())),
            (words::BEFORE.to_owned(), said(self.before.clone())),
            (words::AFTER.to_owned(), said(self.after.clone())),
        ]
    }
}

/// The page: one row of fields for each thing done, and an empty one for the next.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let draft = subject.draft();
    let recorded = places(draft);
    let mut blocks = vec![
        Block::para(words::WHAT_IT_IS),
        Block::said(Tone::Quiet, words::EARLIER_WORK),
    ];
    let filled = |place: usize| {
        FIELDS
            .iter()
            .any(|f| !draft.text(&path(place, f)).trim().is_empty())
    };
    // The next free place; one left empty at the end serves as well.
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
            entry(draft, place),
        ));
    }
    if recorded > MOST {
        blocks.push(Block::said(Tone::Note, words::first_shown(MOST)));
    }
    let mut blocks = with_cautions(subject.case(), blocks);
    // The list to choose from names all of them.
    let all = Treatment::ALL
        .iter()
        .filter_map(|t| caution_blocks::of_treatment(*t).map(|caution| (t.name(), caution)))
        .flat_map(|(name, caution)| [Block::said(Tone::Quiet, name), caution])
        .collect();
    blocks.push(Block::fold("done.cautions", words::CAUTIONS, all));
    blocks
}

fn entry(draft: &Draft, place: usize) -> Vec<Block> {
    let mut options = vec![("", words::CHOOSE)];
    options.extend(Treatment::ALL.iter().map(|t| (t.id(), t.name())));
    let (what, _) = choice(draft, &path(place, "what"), words::WHAT, "", &options);
    let (materials, _) = choice(
        draft,
        &path(place, "materials"),
        words::MATERIAL_FIELD,
        words::MATERIAL_HINT,
        &words::MATERIALS,
    );
    let mut blocks = Vec::new();
    let written = draft.text(&path(place, "what"));
    if !written.is_empty() && Treatment::parse(written.trim()).is_none() {
        blocks.push(Block::said(
            Tone::Note,
            words::none_of_the_choices(&as_typed(&short(&written))),
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
                    date_problem(&draft.text(&path(place, "on"))),
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
    blocks
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
    Block::Field(Field {
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

/// What is wrong with a date that may be only a year, or a year and a month.
fn date_problem(text: &str) -> String {
    let text = text.trim();
    let whole = |t: &str| Date::parse(t).is_some();
    let ok = text.is_empty()
        || whole(text)
        || whole(&format!("{text}-01"))
        || whole(&format!("{text}-01-01"));
    if ok {
        String::new()
    } else {
        words::NO_DATE.to_owned()
    }
}

fn short(text: &str) -> String {
    text.chars().take(40).collect()
}

fn path(place: usize, field: &str) -> String {
    format!("done[{place}].{field}")
}

/// How many entries the list has, whatever they are. A list that is none has none.
fn places(draft: &Draft) -> usize {
    serde_json::from_str::<serde_json::Value>(&draft.to_json())
        .ok()
        .and_then(|root| root["done"].as_array().map(Vec::len))
        .unwrap_or(0)
}
