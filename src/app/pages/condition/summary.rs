//! What is recorded of a part, in one line.

use leavewell_model::case::{
    BleedWord, Corrosion, Dents, Fill, Interior, Joint, Lead, PartName, Tarnish,
};

use crate::app::parts::share::{hundredths, is_counted};
use crate::app::parts::words::{joined, small};
use crate::app::state::{Open, Target};
use leavewell_model::small::capital;

/// Whether anything is recorded of a part; one of which nothing is left is not in the record.
pub(super) fn is_recorded(open: &Open, part: PartName) -> bool {
    open.draft.part_place(part.id()).is_some()
}

/// One line about a part.
pub(super) fn of(open: &Open, part: PartName) -> String {
    let text = |field: &str| open.draft.part_text(part.id(), field);
    let mut said: Vec<String> = Vec::new();
    let bleed = text("bleed");
    if !text("count_bare").is_empty() {
        said.push("base metal counted".to_owned());
    } else if let Some(word) = BleedWord::parse(&bleed) {
        said.push(bleed_words(word).to_owned());
    } else if is_counted(&bleed) {
        said.push("base metal counted".to_owned());
    } else if Target::Share(part).problem(open).is_some() {
        said.push("a percentage that cannot be".to_owned());
    } else if !bleed.is_empty() {
        said.push(joined(&["base metal on ", &hundredths(&bleed), " %"]));
    }
    let mut say = |before: &str, label: &str, after: &str| {
        said.push(joined(&[before, &small(label), after]));
    };
    match Tarnish::parse(&text("tarnish")) {
        None => {}
        Some(Tarnish::Bright) => say("", "bright", ""),
        Some(tarnish) => say("", tarnish.label(), " tarnish"),
    }
    match Joint::parse(&text("joint")) {
        None => {}
        Some(Joint::Sound) => say("", "joints sound", ""),
        Some(joint) => say("", joint.label(), ""),
    }
    match Dents::parse(&text("dents")) {
        None => {}
        Some(Dents::None) => say("", "no dents", ""),
        Some(dents) => say("", dents.label(), ""),
    }
    match Corrosion::parse(&text("corrosion")) {
        None => {}
        Some(Corrosion::None) => say("", "no corrosion", ""),
        Some(corrosion) => say("", corrosion.label(), ""),
    }
    if let Some(interior) = Interior::parse(&text("interior")) {
        say("lining: ", interior.label(), "");
    }
    if let Some(fill) = Fill::parse(&text("fill")) {
        say("filling: ", fill.label(), "");
    }
    if let Some(lead) = Lead::parse(&text("lead")) {
        say("", lead.label(), "");
    }
    if !said.is_empty() {
        capital(&said.join("; "))
    } else if is_recorded(open, part) {
        "Only in the condition record".to_owned()
    } else {
        "Not looked at yet".to_owned()
    }
}

fn bleed_words(word: BleedWord) -> &'static str {
    match word {
        BleedWord::None => "no base metal shows",
        BleedWord::Slight => "a trace of base metal",
        BleedWord::Some => "some base metal shows",
        BleedWord::Much => "much base metal shows",
        BleedWord::Most => "mostly base metal",
    }
}
