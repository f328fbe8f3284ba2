//! Wording of the sheet for a buyer.

use leavewell_model::ledger::FindingId;
use leavewell_model::terms::{Material, any_of};

// Headings

pub(crate) const FOR_A_BUYER: &str = "For a buyer";
pub(crate) const TICKET: &str = "For a ticket";
pub(crate) const CATALOGUE: &str = "For a catalogue";
pub(crate) const KEEP_EACH: &str = "Keep every fault and repair named here in your description.";
pub(crate) const LAW_OF_THE_PLACE: &str = "The law of the place of sale decides what a description must say: check it there. This one says only what the record says and what follows from it; compare it with the piece.";

// What it is, and its years

pub(crate) const STOCK_NUMBER: &str = "Stock number";
pub(crate) const PRICE: &str = "Price";
pub(crate) const SELLER: &str = "Offered by";
pub(crate) const LAW: &str = "The law of its sale";
pub(crate) const UNDATED: &str = "undated";

pub(crate) fn later_than(year: u16) -> String {
    format!("probably later than {year}")
}

pub(crate) fn if_it_is(years: &str, families: &[&str]) -> String {
    format!("{years} if it is {}", any_of(families))
}

pub(crate) fn stated_from(from: u16) -> String {
    format!("said to be from {from} or later")
}

pub(crate) fn stated_until(to: u16) -> String {
    format!("said to be from {to} or earlier")
}

pub(crate) fn stated_between(from: u16, to: u16) -> String {
    format!("said to be from {from} to {to}")
}

pub(crate) fn probably(years: &str) -> String {
    format!("probably {years}")
}

/// The years by the evidence, beside years stated that do not fit them.
pub(crate) fn found_and_stated(found: &str, stated: &str) -> String {
    format!("{found} by the evidence, {stated}")
}

/// The years to which the evidence and the years stated lead together.
pub(crate) fn stated_and_found(stated: &str, found: &str) -> String {
    format!("{stated}; taken with the evidence, {found}")
}

pub(crate) fn form_and_years(form: &str, years: &str) -> String {
    format!("{form}, {years}")
}

pub(crate) const UNKNOWN_METAL: &str = "What it is made of is not known";

// The ticket

pub(crate) const NOT_EXAMINED: &str =
    "Not examined: what it is made of, repairs and re-plating not known";

// The catalogue, sentence by sentence

pub(crate) const NOT_EXAMINED_SENTENCE: &str = "It has not been examined: what it is made of, and \
    whether it was repaired, re-plated or has replaced parts, is not known.";

pub(crate) fn might_also_be(families: &str) -> String {
    format!("It might also be {families}.")
}

/// Sentences on the metal below the silver, by the findings that tell it; the first that fits holds.
pub(crate) const METALS_BELOW: [(&[FindingId], &str); 7] = [
    (
        &[FindingId::M01],
        "Its mark names nickel silver as the metal below.",
    ),
    (
        &[FindingId::M02, FindingId::M30],
        "Its mark names Britannia metal as the metal below.",
    ),
    (
        &[FindingId::M18],
        "Its mark names copper as the metal below.",
    ),
    (
        &[FindingId::S12, FindingId::P01, FindingId::S21],
        "The metal below is iron or steel.",
    ),
    (
        &[
            FindingId::S03,
            FindingId::C08,
            FindingId::C01,
            FindingId::C30,
        ],
        "The metal below is copper.",
    ),
    (
        &[FindingId::S06, FindingId::C31],
        "The metal below is brass.",
    ),
    (
        &[FindingId::S05],
        "The metal below is soft and grey, like Britannia metal.",
    ),
];

/// What was found of how it is made and decorated, in the words of a catalogue.
pub(crate) const FEATURES: [(FindingId, &str); 21] = [
    (FindingId::C21, "made of stamped sections"),
    (FindingId::C22, "cast"),
    (FindingId::C07, "silver wire edges"),
    (FindingId::C06, "edges folded over"),
    (FindingId::C28, "silver drawn over at the pierced edges"),
    (FindingId::C10, "filled stamped borders"),
    (FindingId::C11, "cast feet, knobs or handles"),
    (FindingId::C17, "tinned inside or below"),
    (FindingId::C18, "silver inside as well"),
    (FindingId::C30, "bare copper inside or below"),
    (FindingId::C13, "a let-in silver shield"),
    (FindingId::C26, "a let-in silver shield"),
    (FindingId::C25, "a rubbed-in silver shield"),
    (FindingId::C29, "bright-cut engraving"),
    (FindingId::C23, "flat chasing"),
    (FindingId::C24, "engine turning"),
    (FindingId::C27, "traces of an erased crest"),
    (FindingId::F01, "in the rococo taste"),
    (FindingId::F02, "in the neoclassical taste"),
    (FindingId::F03, "with gadroon, shell or leaf borders"),
    (FindingId::F04, "in the rococo revival taste"),
];

pub(crate) fn made_with(features: &str) -> String {
    format!("With these features: {features}.")
}

/// A part that is not of metal; `None` for one that is, or is not known.
pub(crate) fn made_of(material: Material) -> Option<&'static str> {
    match material {
        Material::Wood => Some("wood"),
        Material::Ivory => Some("ivory"),
        Material::Horn => Some("horn"),
        Material::Bone => Some("bone or shell"),
        Material::Composition => Some("composition"),
        Material::Glass => Some("glass"),
        Material::Metal | Material::Unknown => None,
    }
}

pub(crate) fn part_of(part: &str, material: &str) -> String {
    format!("{part} of {material}")
}

pub(crate) const NO_EARLIER_WORK: &str =
    "No document or date of earlier work is on record; there may still have been some.";

pub(crate) fn on_record(work: &str) -> String {
    format!("On record: {work}.")
}

pub(crate) const DOCUMENTED: &str = "Its history is documented.";

// Marks

/// A mark as read, and the part that carries it.
pub(crate) fn quoted(mark: &str, part: Option<&str>) -> String {
    match part {
        Some(part) => format!("“{mark}” ({part})"),
        None => format!("“{mark}”"),
    }
}

pub(crate) fn marked(marks: &str) -> String {
    format!("Marked: {marks}.")
}

/// Marks that were seen and not written down letter by letter.
pub(crate) fn not_transcribed(marks: &str) -> String {
    format!("Marks seen, not transcribed: {marks}.")
}

pub(crate) const NO_MARK: &str = "It has no mark.";
pub(crate) const MARKS_NOT_RECORDED: &str = "Marks are not recorded.";
