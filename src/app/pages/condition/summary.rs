//! A one-line summary of a part's record.

use leavewell_model::terms::{
    BleedWord, Corrosion, Dents, Fill, FillState, Gilding, Interior, Joint, Lacquer, Lead, Loss,
    Material, PartName, Repair, Replaced, Split, Tarnish, small,
};

use crate::app::parts::share::{hundredths, is_counted};
use crate::app::parts::words::joined;
use crate::app::state::{Open, Target};
use crate::app::wording::condition as text;
use leavewell_model::terms::capital;

/// A name without words before or after it.
const ALONE: [&str; 2] = ["", ""];

/// Whether anything is recorded about a part. A part whose last entry is removed leaves the record.
pub(super) fn is_recorded(open: &Open, part: PartName) -> bool {
    open.draft.part_place(part.id()).is_some() || open.case.part(part).is_some()
}

/// The summary of a part, in one line.
pub(super) fn of(open: &Open, part: PartName) -> String {
    let text = |field: &str| open.part_text(part, field);
    let mut said: Vec<String> = Vec::new();
    let bleed = text("bleed");
    if !text("count_bare").is_empty() {
        said.push(text::COUNTED.to_owned());
    } else if let Some(word) = BleedWord::parse(&bleed) {
        said.push(text::bleed(word).to_owned());
    } else if is_counted(&bleed) {
        said.push(text::COUNTED.to_owned());
    } else if Target::Share(part).problem(open).is_some() {
        said.push(text::IMPOSSIBLE_SHARE.to_owned());
    } else if !bleed.is_empty() {
        said.push(text::bleed_share(&hundredths(&bleed)));
    }
    let mut add = |[before, after]: [&str; 2], label: &str| {
        said.push(joined(&[before, &small(label), after]));
    };
    match open.part_word::<Tarnish>(part, "tarnish") {
        None => {}
        Some(Tarnish::Bright) => add(ALONE, text::BRIGHT),
        Some(tarnish) => add(text::TARNISHED, tarnish.label()),
    }
    match open.part_word::<Joint>(part, "joint") {
        None => {}
        Some(Joint::Sound) => add(ALONE, text::JOINTS_SOUND),
        Some(joint) => add(ALONE, joint.label()),
    }
    match open.part_word::<Dents>(part, "dents") {
        None => {}
        Some(Dents::None) => add(ALONE, text::NO_DENTS),
        Some(dents) => add(ALONE, dents.label()),
    }
    match open.part_word::<Split>(part, "split") {
        None => {}
        Some(Split::None) => add(ALONE, text::NOT_SPLIT),
        Some(split) => add(ALONE, split.label()),
    }
    match open.part_word::<Loss>(part, "loss") {
        None => {}
        Some(Loss::None) => add(ALONE, text::NOTHING_MISSING),
        Some(loss) => add(ALONE, loss.label()),
    }
    match open.part_word::<Corrosion>(part, "corrosion") {
        None => {}
        Some(Corrosion::None) => add(ALONE, text::NO_CORROSION),
        Some(corrosion) => add(ALONE, corrosion.label()),
    }
    if let Some(interior) = open.part_word::<Interior>(part, "interior") {
        add(text::LINED, interior.label());
    }
    if let Some(fill) = open.part_word::<Fill>(part, "fill") {
        add(text::FILLED, fill.label());
    }
    if let Some(state) = open.part_word::<FillState>(part, "fill_state") {
        add(text::FILLING_STATE, state.label());
    }
    if let Some(gilding) = open.part_word::<Gilding>(part, "gilding") {
        add(text::GILDED, gilding.label());
    }
    if let Some(lacquer) = open.part_word::<Lacquer>(part, "lacquer") {
        add(text::LACQUERED, lacquer.label());
    }
    if let Some(repair) = open.part_word::<Repair>(part, "repair") {
        add(text::REPAIRED, repair.label());
    }
    if let Some(lead) = open.part_word::<Lead>(part, "lead") {
        add(ALONE, lead.label());
    }
    if let Some(Replaced::Yes) = open.part_word::<Replaced>(part, "replaced") {
        add(ALONE, Replaced::Yes.label());
    }
    match open.part_word::<Material>(part, "material") {
        None | Some(Material::Metal | Material::Unknown) => {}
        Some(material) => add(ALONE, material.label()),
    }
    let list = joined(&["parts[part=", part.id(), "].spots"]);
    match open.draft.count(&list) {
        0 => {}
        places => said.push(text::places(places)),
    }
    if !said.is_empty() {
        capital(&said.join("; "))
    } else if is_recorded(open, part) {
        text::ONLY_IN_RECORD.to_owned()
    } else {
        text::NOT_LOOKED_AT.to_owned()
    }
}
