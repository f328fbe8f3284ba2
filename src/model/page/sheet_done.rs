//! What was done to the piece: the record of treatment, and the page it is written on.

use super::as_typed::as_typed;
use super::ask::choice;
use super::block::{Block, Field, Tone};
use super::caution_blocks;
use super::sheet::small;
use super::sheet_cautions::with_cautions;
use crate::case::{Date, Draft};
use crate::treatment::Treatment;

/// Most entries read; the rest stays in the record.
const MOST: usize = 60;

/// Classes of material, by id and in words.
const MATERIALS: [(&str, &str); 13] = [
    ("", "Not said"),
    ("none", "Nothing was added"),
    ("solder_lead_free", "Solder without lead"),
    ("solder_lead", "Solder with lead"),
    ("solder_unknown", "Solder, not known which"),
    ("solder_low", "Solder that melts low"),
    ("solder_hard", "Silver solder"),
    ("adhesive", "Glue"),
    ("coating", "Lacquer, wax or other coating"),
    ("silver", "Silver put on by electricity"),
    ("silver_other", "Silver put on in another way"),
    ("tin", "Tin"),
    ("new_part", "New metal or another new part"),
];

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
            None if self.unknown.is_empty() => "Something not named".to_owned(),
            None => self.unknown.clone(),
        }
    }

    /// The same in the middle of a sentence; what a person wrote stays as written.
    pub(super) fn in_sentence(&self) -> String {
        match self.treatment {
            Some(treatment) => small(treatment.name()),
            None if self.unknown.is_empty() => "something not named".to_owned(),
            None => self.unknown.clone(),
        }
    }

    /// The class of material in words; as written when it is none we know, empty when not said.
    pub(super) fn materials_words(&self) -> String {
        let written = self.materials.trim();
        if written.is_empty() {
            return String::new();
        }
        MATERIALS
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
            (true, false) => format!("by {}", self.by),
            (false, false) => format!("{}, by {}", self.on, self.by),
        }
    }

    /// The same in brackets, to stand behind what was done.
    pub(super) fn when_in_brackets(&self) -> String {
        match self.when_and_who() {
            when if when.is_empty() => when,
            when => format!(" ({when})"),
        }
    }

    /// Name and words, for a record.
    pub(super) fn rows(&self) -> Vec<(String, String)> {
        let said = |text: String| {
            if text.is_empty() {
                "not recorded".to_owned()
            } else {
                text
            }
        };
        vec![
            ("Done".to_owned(), self.name()),
            ("By".to_owned(), said(self.by.clone())),
            ("When".to_owned(), said(self.on.clone())),
            (
                "Material, by class".to_owned(),
                said(self.materials_words()),
            ),
            ("Before".to_owned(), said(self.before.clone())),
            ("After".to_owned(), said(self.after.clone())),
        ]
    }
}

/// The page: one row of fields for each thing done, and an empty one for the next.
#[must_use]
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let recorded = places(draft);
    let mut blocks = vec![
        Block::para(
            "What was done, by whom, when, with which class of material, and how the piece was before and after. It stays \
             with the record; the sheets tell it, and the one for a buyer discloses it.",
        ),
        Block::said(
            Tone::Quiet,
            "Record what is known of earlier work too. The answer goes by what is found on the piece: if work is recorded \
             here, look at the piece again on Look and Condition.",
        ),
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
            format!("Work {}", place + 1)
        } else {
            "Add another".to_owned()
        };
        blocks.push(Block::section(
            &format!("done.{place}"),
            &title,
            entry(draft, place),
        ));
    }
    if recorded > MOST {
        blocks.push(Block::said(
            Tone::Note,
            format!("The first {MOST} entries are shown; the rest stays in the record."),
        ));
    }
    let mut blocks = with_cautions(draft, blocks);
    // The list to choose from names all of them.
    let all = Treatment::ALL
        .iter()
        .filter_map(|t| caution_blocks::of_treatment(*t).map(|caution| (t.name(), caution)))
        .flat_map(|(name, caution)| [Block::said(Tone::Quiet, name), caution])
        .collect();
    blocks.push(Block::fold(
        "done.cautions",
        "Cautions for all work that can be chosen here",
        all,
    ));
    blocks
}

fn entry(draft: &Draft, place: usize) -> Vec<Block> {
    let mut options = vec![("", "Choose")];
    options.extend(Treatment::ALL.iter().map(|t| (t.id(), t.name())));
    let (what, _) = choice(draft, &path(place, "what"), "What was done", "", &options);
    let (materials, _) = choice(
        draft,
        &path(place, "materials"),
        "Material, by class",
        "Of what stays on the piece.",
        &MATERIALS,
    );
    let mut blocks = Vec::new();
    let written = draft.text(&path(place, "what"));
    if !written.is_empty() && Treatment::parse(written.trim()).is_none() {
        blocks.push(Block::said(
            Tone::Note,
            format!(
                "The record says \"{}\", which is none of the choices. It is kept until you choose another.",
                as_typed(&short(&written))
            ),
        ));
    }
    blocks.extend([
        Block::Row {
            blocks: vec![what, materials],
        },
        Block::Row {
            blocks: vec![
                text_field(draft, place, "by", "By whom", "", String::new()),
                text_field(
                    draft,
                    place,
                    "on",
                    "When",
                    "Year-month-day, or as much of it as is known.",
                    date_problem(&draft.text(&path(place, "on"))),
                ),
            ],
        },
        text_field(
            draft,
            place,
            "before",
            "How it was before",
            "Where, how much, what was found.",
            String::new(),
        ),
        text_field(
            draft,
            place,
            "after",
            "How it is now",
            "What changed, what is gone, what to watch.",
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
        "That is not a date. Write it as 2026-05-31, 2026-05 or 2026. It is kept as typed."
            .to_owned()
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
