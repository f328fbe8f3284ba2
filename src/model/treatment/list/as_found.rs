//! How a piece stands with a fault that is left.

use super::{Show, State, Value};
use crate::treatment::{Fault, Found, Size};

/// The state of a fault as it was found. Tarnish and bare metal are weighed with the whole surface
/// and have no state of their own here.
#[must_use]
pub fn as_found(found: &Found) -> State {
    let large = found.size == Size::Large;
    match found.fault {
        Fault::Dents if large => State {
            value: Value::Row("dents_moderate"),
            show: Show::Figure("attribute.show.damaged"),
            ..State::SOUND
        },
        Fault::Dents => State {
            value: Value::Row("dents_minor"),
            show: Show::Figure("attribute.show.dents_minor"),
            ..State::SOUND
        },
        Fault::Split => State {
            value: Value::Row("split"),
            show: Show::Figure("attribute.show.damaged"),
            serves: "attribute.use.split",
            keeps: "split",
        },
        Fault::OpenJoint => State {
            value: Value::Row("leak"),
            // It serves no better than a split does.
            serves: "attribute.use.split",
            keeps: "open",
            ..State::SOUND
        },
        Fault::LoosePart | Fault::CrackedMaterial => State {
            value: Value::Row("loose"),
            show: Show::Figure("attribute.show.loose"),
            serves: "attribute.use.loose",
            keeps: "loose",
        },
        Fault::GreyRepair => State {
            value: Value::Row("solder_repair"),
            serves: "attribute.use.grey",
            keeps: "grey",
            ..State::SOUND
        },
        Fault::FailingFilling => State {
            value: Value::Row("fill_failing"),
            show: Show::Figure("attribute.show.fill_failing"),
            serves: "attribute.use.fill_failing",
            keeps: "fill_failing",
        },
        Fault::FillingShows => State {
            value: Value::Row("fill_showing"),
            show: Show::Figure("attribute.show.fill_showing"),
            ..State::SOUND
        },
        Fault::PartLost if large => State {
            value: Value::Row("part_missing_major"),
            show: Show::Figure("attribute.show.missing_major"),
            serves: "attribute.use.missing_major",
            ..State::SOUND
        },
        Fault::PartLost => State {
            value: Value::Row("part_missing_minor"),
            show: Show::Figure("attribute.show.missing_minor"),
            serves: "attribute.use.missing_minor",
            ..State::SOUND
        },
        Fault::LiningGone => State {
            value: Value::Row("lining_gone"),
            ..State::SOUND
        },
        Fault::GildingGone => State {
            value: Value::Row("gilding_gone"),
            show: Show::Figure("attribute.show.gilding_gone"),
            ..State::SOUND
        },
        Fault::BrokenLacquer => State {
            value: Value::Row("lacquer_broken"),
            show: Show::Figure("attribute.show.lacquer_broken"),
            keeps: "lacquer_broken",
            ..State::SOUND
        },
        Fault::Corrosion => State {
            keeps: "corrosion",
            ..State::SOUND
        },
        Fault::Tarnish | Fault::BareMetal => State::SOUND,
    }
}
