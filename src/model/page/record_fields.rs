//! What a record may hold of a part, and how each is said.

use super::part_words::{part_problem, percent, um};
use crate::case::{
    Bleed, BleedWord, Case, Corrosion, Dents, Draft, Engraving, Fill, Interior, Joint, Lacquer,
    Lead, Loss, Method, Mount, PartName, Problem, Replaced, Split, Tarnish,
};

/// Ids and labels of a list of words.
type Words = fn() -> Vec<(&'static str, &'static str)>;

/// How the text of a field is read.
#[derive(Clone, Copy)]
pub(super) enum Kind {
    /// One of a list of words.
    Words(Words),
    /// The bare share.
    Bleed,
    /// Readings of thickness by this method.
    Reading(Method),
    /// A number with its unit.
    Number(&'static str),
    /// Ids of photographs kept on the device, with spaces between.
    Photos,
    /// As written.
    Text,
}

/// One field of a part.
pub(super) struct RecordField {
    pub(super) id: &'static str,
    pub(super) label: &'static str,
    pub(super) hint: &'static str,
    pub(super) kind: Kind,
    /// The answer does not use it and no other screen asks it.
    pub(super) only_here: bool,
}

macro_rules! words {
    ($name:ident) => {
        Kind::Words(|| $name::ALL.iter().map(|w| (w.id(), w.label())).collect())
    };
}

const fn field(id: &'static str, label: &'static str, kind: Kind) -> RecordField {
    RecordField {
        id,
        label,
        hint: "",
        kind,
        only_here: false,
    }
}

const fn here(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    kind: Kind,
) -> RecordField {
    RecordField {
        id,
        label,
        hint,
        kind,
        only_here: true,
    }
}

/// Every field, in the order of a record.
pub(super) const FIELDS: [RecordField; 20] = [
    field("bleed", "Base metal showing", Kind::Bleed),
    field("tarnish", "Tarnish", words!(Tarnish)),
    field("joint", "Joints and seams", words!(Joint)),
    field(
        "joint_distance_mm",
        "From the faulty joint to the next",
        Kind::Number("mm"),
    ),
    here(
        "mount",
        "Stamped mount",
        "Stamped thin and backed with soft metal.",
        words!(Mount),
    ),
    field("dents", "Dents", words!(Dents)),
    here("split", "Splits", "", words!(Split)),
    here("loss", "Missing metal", "", words!(Loss)),
    here("replaced", "Replaced", "", words!(Replaced)),
    here(
        "engraving",
        "Engraving and chasing",
        "How crisp the lines still are.",
        words!(Engraving),
    ),
    here("lacquer", "Lacquer", "", words!(Lacquer)),
    field("corrosion", "Powder, crust or rust", words!(Corrosion)),
    field("interior", "Lining", words!(Interior)),
    field("fill", "Filling", words!(Fill)),
    field("lead", "Lead", words!(Lead)),
    field(
        "xrf_um",
        "Silver by X-ray fluorescence",
        Kind::Reading(Method::Xrf),
    ),
    field(
        "coulometric_um",
        "Silver by coulometric spot",
        Kind::Reading(Method::Coulometric),
    ),
    field(
        "section_um",
        "Silver in cross-section",
        Kind::Reading(Method::Section),
    ),
    here("note", "Note", "", Kind::Text),
    here(
        "photos",
        "Photographs",
        "Names of photographs kept on this device, with a space between. They are never sent.",
        Kind::Photos,
    ),
];

/// A draft read once, for asking field by field.
pub(super) struct Record<'a> {
    pub(super) draft: &'a Draft,
    case: Case,
    problems: Vec<Problem>,
}

impl<'a> Record<'a> {
    pub(super) fn new(draft: &'a Draft) -> Self {
        let (case, problems) = draft.read();
        Self {
            draft,
            case,
            problems,
        }
    }

    /// What is recorded of a field, in words; `None` when nothing can be used.
    pub(super) fn said(&self, part: PartName, field: &RecordField) -> Option<String> {
        let text = self.draft.part_text(part.id(), field.id);
        let text = text.trim();
        let known = self.case.part(part);
        match field.kind {
            Kind::Bleed => known?.bleed.map(bleed_words),
            Kind::Reading(method) => {
                let read: Vec<String> = known?
                    .readings
                    .iter()
                    .filter(|r| r.method == method)
                    .map(|r| um(r.um))
                    .collect();
                (!read.is_empty()).then(|| format!("{} µm", read.join(", ")))
            }
            _ if text.is_empty() => None,
            Kind::Words(words) => words()
                .into_iter()
                .find(|(id, _)| *id == text)
                .map(|(_, label)| label.to_owned()),
            Kind::Number(unit) => Some(format!("{text} {unit}")),
            Kind::Photos => Some(format!(
                "{} kept on this device",
                text.split_whitespace().count()
            )),
            Kind::Text => Some(text.to_owned()),
        }
    }

    /// Names and words of everything recorded of a part.
    pub(super) fn rows(&self, part: PartName) -> Vec<(String, String)> {
        FIELDS
            .iter()
            .filter_map(|f| {
                let said = self.said(part, f).or_else(|| {
                    self.fault(part, f)
                        .map(|_| "what was typed cannot be used".to_owned())
                })?;
                Some((f.label.to_owned(), said))
            })
            .collect()
    }

    /// What is wrong with a field, and what to do.
    pub(super) fn fault(&self, part: PartName, field: &RecordField) -> Option<String> {
        let found = part_problem(self.draft, &self.problems, part, field.id);
        if !found.is_empty() {
            return Some(found);
        }
        let Kind::Words(words) = field.kind else {
            return None;
        };
        let text = self.draft.part_text(part.id(), field.id);
        let text = text.trim();
        if !field.only_here || text.is_empty() || words().iter().any(|(id, _)| *id == text) {
            return None;
        }
        let shown: String = text.chars().take(40).collect();
        let labels: Vec<&str> = words().iter().map(|(_, label)| *label).collect();
        Some(format!(
            "{}: \"{shown}\" is not one of the choices. Choose one of: {}.",
            field.label,
            labels.join("; ")
        ))
    }

    /// Everything that is wrong with what was typed of a part.
    pub(super) fn faults(&self, part: PartName) -> Vec<String> {
        FIELDS.iter().filter_map(|f| self.fault(part, f)).collect()
    }
}

fn bleed_words(bleed: Bleed) -> String {
    match bleed {
        Bleed::Word(word) => match word {
            BleedWord::None => "none seen".to_owned(),
            other => other.label().to_owned(),
        },
        Bleed::Fraction(f) => format!("{}, judged by eye", percent(f)),
        Bleed::Counted { low, likely, high } => format!(
            "{}, counted; between {:.0} and {:.0} %",
            percent(likely),
            100.0 * low,
            100.0 * high
        ),
    }
}
