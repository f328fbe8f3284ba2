//! Wording of the disclosures to a buyer: a few words for a ticket (`…_SHORT`, `…_short`), a sentence for a
//! catalogue.

// Re-plated

pub(crate) const NO_TIME: &str = "at a time not recorded";
pub(crate) const REPLATED: &str = "Re-plated";
pub(crate) const REPLATED_IN_PLACES: &str = "Re-plated in places";

pub(crate) fn replated_short(extent: &str, when: &str) -> String {
    format!("{extent} ({when})")
}

pub(crate) fn replated(extent: &str, when: &str) -> String {
    format!(
        "{extent}: the record gives {when}. The silver now visible there is later than the piece."
    )
}

pub(crate) fn signs(signs: &str) -> String {
    format!(" Signs of it: {signs}.")
}

pub(crate) const REPLATING_UNKNOWN_SHORT: &str = "whether it was re-plated is not known";
pub(crate) const REPLATING_UNKNOWN: &str =
    "Whether it was re-plated is not known: nobody has looked for signs of it.";

pub(crate) fn perhaps_replated_short(likely: &str) -> String {
    format!("{likely} re-plated later")
}

pub(crate) fn perhaps_replated(likely: &str, why: &str) -> String {
    format!(
        "{} fused plate, re-plated later by electricity.{why}",
        leavewell_model::terms::capital(likely)
    )
}

// Repaired

pub(crate) fn grey_repair_short(parts: &str) -> String {
    format!("old grey repair: {parts}")
}

pub(crate) fn grey_repair(parts: &str) -> String {
    format!("Repaired with a grey metal that looks like lead: {parts}.")
}

pub(crate) fn neat_repair_short(parts: &str) -> String {
    format!("old repair: {parts}")
}

pub(crate) fn neat_repair(parts: &str) -> String {
    format!("Neatly repaired at some time: {parts}.")
}

pub(crate) fn repaired_short(work: &str, details: &str) -> String {
    format!("repaired: {work}{details}")
}

pub(crate) fn repaired(work: &str, details: &str) -> String {
    format!("Repaired: {work}{details}.")
}

pub(crate) fn work_short(work: &str, when: &str) -> String {
    format!("work recorded: {work}{when}")
}

pub(crate) fn work(work: &str, when: &str) -> String {
    format!("Work recorded: {work}{when}.")
}

// Lead

pub(crate) fn lead_filling_short(parts: &str) -> String {
    format!("lead filling: {parts}")
}

pub(crate) fn lead_filling(parts: &str) -> String {
    format!("Filled with lead or solder: {parts}.")
}

pub(crate) const BORDERS_SHORT: &str = "borders filled with grey metal, probably lead";
pub(crate) const BORDERS: &str =
    "Its stamped borders are filled with grey metal, probably lead, as such mounts were made.";
pub(crate) const LEAD_SOLDER_SHORT: &str = "repaired with solder that contains lead";
pub(crate) const LEAD_SOLDER: &str = "Repaired with solder that contains lead.";

/// For a ticket and for a catalogue, with the places where they are known.
pub(crate) fn lead_found(places: &str) -> [String; 2] {
    let at = at(places);
    [
        format!("lead found by a test{at}"),
        format!("A test found lead{at}."),
    ]
}

pub(crate) fn lead_released(places: &str) -> [String; 2] {
    let at = at(places);
    [
        format!("failed a release test{at}"),
        format!("A release test failed{at}: it is not for food or drink."),
    ]
}

fn at(places: &str) -> String {
    if places.is_empty() {
        return String::new();
    }
    format!(" ({places})")
}

pub(crate) fn no_lead_short(parts: &str) -> String {
    format!("no lead released in a test ({parts})")
}

pub(crate) fn no_lead(parts: &str) -> String {
    format!(
        "A test found no lead released ({parts}). It says nothing of other parts, or of the piece once its \
         condition changes."
    )
}

pub(crate) const NO_LEAD_IN_IT_SHORT: &str = "analysed, no lead found in it";
pub(crate) const NO_LEAD_IN_IT: &str =
    "The parts recorded were analysed, and no lead was found in them.";
pub(crate) const LEAD_ASSUMED_SHORT: &str = "lead assumed, not tested";
pub(crate) const LEAD_ASSUMED: &str = "Lead is assumed; it has not been tested.";
pub(crate) const NOT_TESTED_SHORT: &str = "not tested for lead";
pub(crate) const NOT_TESTED_SOLDERED: &str =
    "It has not been tested for lead; old soldered pieces often contain some.";
pub(crate) const NOT_TESTED: &str = "It has not been tested for lead.";

// Replaced

pub(crate) fn doubtful_short(part: &str) -> String {
    format!("{part} perhaps replaced")
}

pub(crate) fn doubtful(part: &str) -> String {
    format!("The {part} may not be original.")
}

pub(crate) fn replaced_short(part: &str) -> String {
    format!("{part} replaced")
}

pub(crate) fn replaced(part: &str) -> String {
    format!("The {part} is a replacement.")
}

pub(crate) fn part_new_short(when: &str) -> String {
    format!("a part replaced{when}")
}

pub(crate) fn part_new(when: &str) -> String {
    format!("One part is new{when}.")
}

pub(crate) const MARRIAGE_SHORT: &str = "parts perhaps not from one piece";
pub(crate) const MARRIAGE: &str =
    "The findings on its parts do not agree, so they may come from different pieces.";

pub(crate) fn flaw(words: &str) -> String {
    format!("Also recorded: {words}.")
}

/// A recorded flaw in words; an unknown one as written.
pub(crate) fn flaw_words(flaw: &str) -> &str {
    match flaw {
        "part_replaced" => "a part replaced",
        "marriage" => "made up from different pieces",
        "part_missing_minor" => "a small part missing",
        "part_missing_major" => "an important part missing",
        "arms_erased" => "arms or initials taken out",
        "monogram_later" => "initials added later",
        "inscription_later" => "an inscription added later",
        "detail_softened" => "detail softened",
        "single_of_pair" => "one of a pair",
        "converted" => "made into something else",
        other => other,
    }
}

// Worn

pub(crate) fn worn_short(parts: &str) -> String {
    format!("base metal showing: {parts}")
}

pub(crate) fn worn(parts: &str) -> String {
    format!("Worn: base metal shows on the {parts}; each share is of that part's surface.")
}

pub(crate) const BARE_INSIDE_SHORT: &str = "bare metal inside";
pub(crate) const BARE_INSIDE: &str = "Bare metal shows on the inside.";

// Hazards

pub(crate) fn ivory_short(parts: &str) -> String {
    format!("ivory: {parts}")
}

pub(crate) fn ivory(parts: &str) -> String {
    format!("Ivory: {parts}. The law may forbid its sale or ask for a permit.")
}
pub(crate) const MERCURY_SHORT: &str = "gilding may contain mercury";
pub(crate) const MERCURY: &str = "Its gilding may contain mercury: do not heat it.";
pub(crate) const CADMIUM_SHORT: &str = "old hard-solder repair, may contain cadmium";
pub(crate) const CADMIUM: &str =
    "An old repair in hard solder may contain cadmium: do not heat it.";
pub(crate) const ASBESTOS_SHORT: &str = "old heat pad, may be asbestos";
pub(crate) const ASBESTOS: &str = "An old pad or ring at a handle may be asbestos: leave it alone until a licensed analyst has examined it.";
pub(crate) const FAILING_SHORT: &str = "old repair failing";
pub(crate) const FAILING: &str = "An old repair is failing";
pub(crate) const GILDING_SHORT: &str = "gilding worn";
pub(crate) const GILDING: &str = "Gilding worn or gone";

// Damaged

pub(crate) fn damaged_short(damage: &str, parts: &str) -> String {
    format!("{damage}: {parts}")
}

pub(crate) fn damaged(damage: &str, parts: &str) -> String {
    format!("{damage}: {parts}.")
}

pub(crate) const JOINT_SHORT: &str = "joint open, loose or leaking";
pub(crate) const JOINT: &str = "Open, loose or leaking";
pub(crate) const CREASED_SHORT: &str = "split or creased";
pub(crate) const CREASED: &str = "Creased or split";
pub(crate) const DENTED_SHORT: &str = "dented";
pub(crate) const DENTED: &str = "Dented deeply or out of shape";
pub(crate) const SMALL_DENTS_SHORT: &str = "small dents";
pub(crate) const SMALL_DENTS: &str = "Small dents";
pub(crate) const THROUGH_SHORT: &str = "split through the metal";
pub(crate) const THROUGH: &str = "Split through the metal";
pub(crate) const CREASE_SHORT: &str = "creased";
pub(crate) const CREASE: &str = "Creased, not through the metal";
pub(crate) const LOSS_SHORT: &str = "metal missing";
pub(crate) const LOSS: &str = "Metal is missing";
pub(crate) const ENGRAVING_SHORT: &str = "engraving worn";
pub(crate) const ENGRAVING: &str = "Engraving softened or gone";
pub(crate) const MOUNT_SHORT: &str = "mount worn";
pub(crate) const MOUNT: &str = "Stamped mount worn";
pub(crate) const SCRATCHED_SHORT: &str = "scratched";
pub(crate) const SCRATCHED: &str = "Scratched";

/// A fault that only the person's note names.
pub(crate) fn other_short(note: &str) -> String {
    if note.is_empty() {
        "another fault".to_owned()
    } else {
        format!("fault noted ({note})")
    }
}

pub(crate) fn other(note: &str) -> String {
    if note.is_empty() {
        "Another fault".to_owned()
    } else {
        format!("A fault noted as “{note}”")
    }
}

// Coated

pub(crate) const INSIDE: &str = "inside";
pub(crate) const AS_RECORDED: &str = "as recorded";

pub(crate) fn coated_short(parts: &str) -> String {
    format!("coated: {parts}")
}

pub(crate) fn coated(parts: &str) -> String {
    format!("Lacquered, waxed or glued: {parts}.")
}

// Corroding

pub(crate) const WHERE_RUST_WAS_SEEN: &str = "where rust or lifting foil was seen";

pub(crate) fn corroding_short(parts: &str) -> String {
    format!("corrosion: {parts}")
}

pub(crate) fn corroding(parts: &str) -> String {
    format!("Corroding: {parts}.")
}
