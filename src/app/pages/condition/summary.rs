//! What is recorded of a part, in one line.

use leavewell_model::case::{
    BleedWord, Corrosion, Dents, Fill, Interior, Joint, Lead, PartName, Tarnish,
};

use super::fields::share_text;
use crate::app::parts::words::capital;
use crate::app::state::Open;

/// The fields a part may have.
const FIELDS: [&str; 9] = [
    "bleed",
    "tarnish",
    "joint",
    "lead",
    "dents",
    "interior",
    "corrosion",
    "fill",
    "joint_distance_mm",
];

/// Whether anything is recorded of a part.
pub(super) fn is_recorded(open: &Open, part: PartName) -> bool {
    FIELDS
        .iter()
        .any(|field| !open.draft.part_text(part.id(), field).is_empty())
}

/// One line about a part.
pub(super) fn of(open: &Open, part: PartName) -> String {
    let text = |field: &str| open.draft.part_text(part.id(), field);
    let mut said: Vec<String> = Vec::new();
    let bleed = text("bleed");
    if let Some(word) = BleedWord::parse(&bleed) {
        said.push(bleed_words(word).to_owned());
    } else if bleed.starts_with('{') {
        said.push("base metal counted".to_owned());
    } else if open.part_problem(part.id(), "bleed").is_some() {
        said.push("a percentage that cannot be".to_owned());
    } else if !bleed.is_empty() {
        said.push(format!("base metal on {} %", share_text(&bleed)));
    }
    if let Some(tarnish) = Tarnish::parse(&text("tarnish")) {
        said.push(if tarnish == Tarnish::Bright {
            "bright".to_owned()
        } else {
            format!("{} tarnish", tarnish.label().to_lowercase())
        });
    }
    if let Some(joint) = Joint::parse(&text("joint")) {
        said.push(if joint == Joint::Sound {
            "joints sound".to_owned()
        } else {
            joint.label().to_lowercase()
        });
    }
    if let Some(dents) = Dents::parse(&text("dents")) {
        said.push(if dents == Dents::None {
            "no dents".to_owned()
        } else {
            dents.label().to_lowercase()
        });
    }
    if let Some(corrosion) = Corrosion::parse(&text("corrosion")) {
        said.push(if corrosion == Corrosion::None {
            "no corrosion".to_owned()
        } else {
            corrosion.label().to_lowercase()
        });
    }
    if let Some(interior) = Interior::parse(&text("interior")) {
        said.push(format!("lining: {}", interior.label().to_lowercase()));
    }
    if let Some(fill) = Fill::parse(&text("fill")) {
        said.push(format!("filling: {}", fill.label().to_lowercase()));
    }
    if let Some(lead) = Lead::parse(&text("lead")) {
        said.push(lead.label().to_lowercase());
    }
    if said.is_empty() {
        "Not looked at yet".to_owned()
    } else {
        capital(&said.join("; "))
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
