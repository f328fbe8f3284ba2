//! The fields that a record may hold for a part, and each value in words.

use super::part_words::{part_problem, um};
use super::wording::record_fields as words;
use leavewell_model::record::schema;
use leavewell_model::record::{Bleed, Case, Draft, Problem};
use leavewell_model::terms::{
    BleedWord, Corrosion, Dents, Engraving, Fill, Interior, Joint, Lacquer, Lead, Loss, Method,
    Mount, PartName, Replaced, Split, Tarnish, percent,
};

/// Ids and labels of a list of choices.
type Words = fn() -> Vec<(&'static str, &'static str)>;

/// How the text of a field is read.
#[derive(Clone, Copy)]
pub(super) enum PartFieldKind {
    /// One of a list of choices.
    Words(Words),
    /// The bare share.
    Bleed,
    /// Thickness readings by this method.
    Reading(Method),
    /// A number with its unit.
    Number(&'static str),
    /// Ids of photographs on the device, separated by spaces.
    Photos,
    /// Free text.
    Text,
}

/// One field of a part.
pub(super) struct RecordField {
    pub(super) id: &'static str,
    pub(super) hint: &'static str,
    pub(super) kind: PartFieldKind,
    /// Whether the field is asked only on this page and no answer uses it.
    pub(super) only_here: bool,
}

impl RecordField {
    /// What the schema calls it.
    pub(super) fn label(&self) -> &'static str {
        schema::field(&["parts[].", self.id].concat()).map_or(self.id, |field| field.label)
    }
}

macro_rules! words {
    ($name:ident) => {
        PartFieldKind::Words(|| $name::ALL.iter().map(|w| (w.id(), w.label())).collect())
    };
}

const fn field(id: &'static str, kind: PartFieldKind) -> RecordField {
    RecordField {
        id,
        hint: "",
        kind,
        only_here: false,
    }
}

const fn here(id: &'static str, hint: &'static str, kind: PartFieldKind) -> RecordField {
    RecordField {
        id,
        hint,
        kind,
        only_here: true,
    }
}

/// Every field, in record order.
pub(super) const FIELDS: [RecordField; 20] = [
    field("bleed", PartFieldKind::Bleed),
    field("tarnish", words!(Tarnish)),
    field("joint", words!(Joint)),
    field("joint_distance_mm", PartFieldKind::Number("mm")),
    here("mount", words::MOUNT_HINT, words!(Mount)),
    field("dents", words!(Dents)),
    here("split", "", words!(Split)),
    here("loss", "", words!(Loss)),
    here("replaced", "", words!(Replaced)),
    here("engraving", words::ENGRAVING_HINT, words!(Engraving)),
    here("lacquer", "", words!(Lacquer)),
    field("corrosion", words!(Corrosion)),
    field("interior", words!(Interior)),
    field("fill", words!(Fill)),
    field("lead", words!(Lead)),
    field("xrf_um", PartFieldKind::Reading(Method::Xrf)),
    field(
        "coulometric_um",
        PartFieldKind::Reading(Method::Coulometric),
    ),
    field("section_um", PartFieldKind::Reading(Method::Section)),
    here("note", "", PartFieldKind::Text),
    here("photos", words::PHOTOS_HINT, PartFieldKind::Photos),
];

/// A draft that is read once and then queried field by field.
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

    /// The recorded value of a field in words; `None` if nothing usable is recorded.
    pub(super) fn said(&self, part: PartName, field: &RecordField) -> Option<String> {
        let text = self.draft.part_text(part.id(), field.id);
        let text = text.trim();
        let known = self.case.part(part);
        match field.kind {
            PartFieldKind::Bleed => known?.bleed.map(bleed_words),
            PartFieldKind::Reading(method) => {
                let read: Vec<String> = known?
                    .readings
                    .iter()
                    .filter(|r| r.method == method)
                    .map(|r| um(r.um))
                    .collect();
                (!read.is_empty()).then(|| format!("{} µm", read.join(", ")))
            }
            _ if text.is_empty() => None,
            PartFieldKind::Words(words) => words()
                .into_iter()
                .find(|(id, _)| *id == text)
                .map(|(_, label)| label.to_owned()),
            PartFieldKind::Number(unit) => Some(format!("{text} {unit}")),
            PartFieldKind::Photos => Some(words::photos_kept(text.split_whitespace().count())),
            PartFieldKind::Text => Some(text.to_owned()),
        }
    }

    /// Label and value of everything recorded for a part.
    pub(super) fn rows(&self, part: PartName) -> Vec<(String, String)> {
        FIELDS
            .iter()
            .filter_map(|f| {
                let said = self.said(part, f).or_else(|| {
                    self.fault(part, f)
                        .map(|_| words::CANNOT_BE_USED.to_owned())
                })?;
                Some((f.label().to_owned(), said))
            })
            .collect()
    }

    /// What is wrong with a field and what to do; `None` if nothing is.
    pub(super) fn fault(&self, part: PartName, field: &RecordField) -> Option<String> {
        let found = part_problem(self.draft, &self.problems, part, field.id);
        if !found.is_empty() {
            return Some(found);
        }
        let PartFieldKind::Words(words) = field.kind else {
            return None;
        };
        let text = self.draft.part_text(part.id(), field.id);
        let text = text.trim();
        if !field.only_here || text.is_empty() || words().iter().any(|(id, _)| *id == text) {
            return None;
        }
        let shown: String = text.chars().take(40).collect();
        let labels: Vec<&str> = words().iter().map(|(_, label)| *label).collect();
        Some(words::none_of_the_choices(
            field.label(),
            &shown,
            &labels.join("; "),
        ))
    }

    /// Everything wrong with the entries for a part.
    pub(super) fn faults(&self, part: PartName) -> Vec<String> {
        FIELDS.iter().filter_map(|f| self.fault(part, f)).collect()
    }
}

fn bleed_words(bleed: Bleed) -> String {
    match bleed {
        Bleed::Word(word) => match word {
            BleedWord::None => words::NONE_SEEN.to_owned(),
            other => other.label().to_owned(),
        },
        Bleed::Fraction(f) => words::by_eye(&percent(f)),
        Bleed::Counted { low, likely, high } => {
            words::counted(&percent(likely), 100.0 * low, 100.0 * high)
        }
    }
}
