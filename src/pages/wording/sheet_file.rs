//! Wording of the sheet for the file.

// Headings

pub(crate) const FOR_THE_FILE: &str = "For the file";
pub(crate) const IDENTIFICATION: &str = "Identification";
pub(crate) const EXAMINATION: &str = "Examination";
pub(crate) const DESCRIPTION: &str = "Description";
pub(crate) const PARTS: &str = "Condition by part";
pub(crate) const IMAGES: &str = "Images";
pub(crate) const RECOMMENDATIONS: &str = "Recommendations";
pub(crate) const KINDS: &str = "What it may be";
pub(crate) const VALUE: &str = "Value";
pub(crate) const TREATMENTS: &str = "Each treatment";
pub(crate) const COURSES: &str = "Each course";
pub(crate) const FIGURES: &str = "Figures";
pub(crate) const REST: &str = "The record, field by field";

// Gaps

pub(crate) const NOT_RECORDED: &str = "not recorded";
pub(crate) const TOO_LITTLE: &str =
    "Too little is recorded to recommend more than a closer look, and keeping it safe until then.";

// Identification

pub(crate) const CALLED: &str = "Called";
pub(crate) const NUMBER: &str = "Number or mark it is known by";
pub(crate) const FORM: &str = "Form";
pub(crate) const SIZE: &str = "Size";
pub(crate) const WHAT_IT_IS: &str = "What it is";
pub(crate) const YEARS_TOLD: &str = "Years stated";

pub(crate) fn from(year: u16) -> String {
    format!("{year} or later")
}

pub(crate) fn until(year: u16) -> String {
    format!("{year} or earlier")
}

pub(crate) fn between(from: u16, to: u16) -> String {
    format!("{from} to {to}")
}

pub(crate) const YEARS_FOUND: &str = "Years from the findings";
pub(crate) const YEARS_FOUND_WITH_STATED: &str = "Years from the findings and those stated";

pub(crate) fn probably(years: &str, is_open: bool, is_conditional: bool) -> String {
    let each = if is_conditional { "in each case " } else { "" };
    if is_open {
        format!("{years} ({each}1 in 20 earlier)")
    } else {
        format!("{years} ({each}1 in 20 earlier, 1 in 20 later)")
    }
}

pub(crate) const RARE: &str = "Rare, early or sought after";
pub(crate) const DOCUMENTED: &str = "Documented history";
pub(crate) const YES: &str = "yes";
pub(crate) const NO: &str = "no, or not recorded";
pub(crate) const DATES_REST_ON: &str = "The years rest on:";
pub(crate) const AGAINST_YEARS_TOLD: &str = "Against the years stated:";

// Examination

pub(crate) const DATE: &str = "Date";
pub(crate) const EXAMINER: &str = "Examiner";
pub(crate) const LIGHT: &str = "Light";
pub(crate) const AIDS: &str = "Aids";
pub(crate) const REASON: &str = "Reason";
pub(crate) const KEPT_AT: &str = "Kept at";

// Description

pub(crate) const THE_PIECE: &str = "the piece";
pub(crate) const NO_FINDING: &str = "No finding is recorded.";
pub(crate) const FINDINGS: &str = "Findings";
pub(crate) const FINDING_COLUMNS: [&str; 3] = ["Looked for", "Answer", "On"];
pub(crate) const MARKS: &str = "Marks as read:";
pub(crate) const CLASHES: &str = "What does not agree:";

// Parts

pub(crate) const PLACED: &str = "Shown at a place:";

/// The label of a known field of a part.
pub(crate) fn part_field(field: &str) -> Option<&'static str> {
    Some(match field {
        "bleed" => "Base metal showing",
        "joint" => "Joints and seams",
        "joint_distance_mm" => "From the faulty joint to the next, mm",
        "interior" => "Lining",
        "fill" => "Filling",
        "loss" => "Missing metal",
        "split" => "Splits",
        "engraving" => "Engraving and chasing",
        "mount" => "Stamped mount",
        "corrosion" => "Powder, crust or rust",
        "xrf_um" => "Silver by X-ray fluorescence, um",
        "coulometric_um" => "Silver by coulometric spot, um",
        "section_um" => "Silver in cross-section, um",
        _ => return None,
    })
}

pub(crate) const SILVER: &str = "Silver, calculated";
pub(crate) const SILVER_LEFT: &str = "Silver left, calculated";

pub(crate) fn of_the_first(share: &str) -> String {
    format!("; {share} of the first")
}

pub(crate) fn left(low: &str, high: &str, middle: &str, share: &str) -> String {
    format!("{low} to {high}, middle {middle} um{share}")
}

pub(crate) const NO_PART: &str = "No part is recorded.";

pub(crate) fn not_looked_at(parts: &str) -> String {
    format!("Not looked at: {parts}.")
}

pub(crate) const BEYOND_RECKONING: &str = "too large to calculate";

// Images

pub(crate) const NO_IMAGE: &str = "The record lists no image.";
pub(crate) const IMAGE_LIST: &str = "Images: number, view, light, date, by whom";

// What it may be

pub(crate) const EVERY_KIND: &str = "Every kind, with its range over the three sets of evidence \
    weights";
pub(crate) const EVERY_KIND_BEFORE_LOOKING: &str =
    "How common every kind is before anything is looked at, with its range";
pub(crate) const KIND_COLUMNS: [&str; 4] = ["Kind", "How likely", "At least", "At most"];

// Value

pub(crate) const UNDAMAGED: &str = "Undamaged, at hammer";
pub(crate) const AS_IT_IS: &str = "As it is, at hammer";
pub(crate) const SELLER_KEEPS: &str = "The seller would keep";
pub(crate) const RESTS_ON: &str = "Rests on";
pub(crate) const TYPICAL_VALUES: &str = "typical values; no figure is recorded";
pub(crate) const RECORDED_FIGURES: &str = "figures in the record";
pub(crate) const CURRENCY: &str = "Currency";

// Recommendations

pub(crate) const WHY: &str = "Why:";
pub(crate) const DOUBTS: &str = "Why we are not surer:";
pub(crate) const SPECIALIST_FIRST: &str = "Why a specialist should see it first:";
pub(crate) const NEXT_LOOKS: &str = "What to look at next:";

// Each treatment

pub(crate) const EVERY_TREATMENT: &str = "Every treatment, and what the rules say of it";
pub(crate) const TREATMENT_COLUMNS: [&str; 5] = [
    "Treatment",
    "Can it be done",
    "Lost for good",
    "Cost",
    "Who may do it",
];

pub(crate) fn sentence(words: &str) -> String {
    format!("{words}.")
}

/// What a rule says: its verdict and why.
pub(crate) fn verdict(verdict: &str, why: &str) -> String {
    format!("{verdict}: {why}")
}

/// What is lost, and whether the work can be undone.
pub(crate) fn lost(lost: &str, undone: &str) -> String {
    format!("{lost}; {undone}")
}

// Each course

pub(crate) const BARRED: &str = "Weighed, but barred:";

// Figures

pub(crate) const OWN_FIGURES: &str = "Figures replaced by hand";
pub(crate) const OWN_COLUMNS: [&str; 5] = ["Figure", "Own value", "As shipped", "Unit", "Reason"];
pub(crate) const UNUSABLE: &str = "In the record, but could not be used:";

// The record, field by field

pub(crate) fn more_entries(count: usize) -> String {
    format!("{count} more entries are in the file but not shown here.")
}

pub(crate) fn cut(text: &str, letters: usize) -> String {
    format!("{text} (cut here; {letters} letters in the file)")
}
