//! How a piece stands with a fault that is left.

use super::{Show, State, Value};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Found, Size};
use crate::value::factor_rows as rows;

/// The state of a fault as it was found. Tarnish and bare metal are weighed with the whole surface
/// and have no separate state here.
#[must_use]
pub fn as_found(found: &Found) -> State {
    let large = found.size == Size::Large;
    match found.fault {
        Fault::Dents if large => State {
            value: Value::Row(rows::DENTS_MODERATE),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_DAMAGED),
            ..State::SOUND
        },
        Fault::Dents => State {
            value: Value::Row(rows::DENTS_MINOR),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_DENTS_MINOR),
            ..State::SOUND
        },
        Fault::Split => State {
            value: Value::Row(rows::SPLIT),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_DAMAGED),
            serves: Some(FigureId::ATTRIBUTE_USE_SPLIT),
            keeps: FigureId::ATTRIBUTE_STABILITY_SPLIT,
        },
        Fault::OpenJoint => State {
            value: Value::Row(rows::LEAK),
            // It serves no better than a split does.
            serves: Some(FigureId::ATTRIBUTE_USE_SPLIT),
            keeps: FigureId::ATTRIBUTE_STABILITY_OPEN,
            ..State::SOUND
        },
        Fault::LoosePart | Fault::CrackedMaterial => State {
            value: Value::Row(rows::LOOSE),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_LOOSE),
            serves: Some(FigureId::ATTRIBUTE_USE_LOOSE),
            keeps: FigureId::ATTRIBUTE_STABILITY_LOOSE,
        },
        Fault::GreyRepair => State {
            value: Value::Row(rows::SOLDER_REPAIR),
            serves: Some(FigureId::ATTRIBUTE_USE_GREY),
            keeps: FigureId::ATTRIBUTE_STABILITY_GREY,
            ..State::SOUND
        },
        Fault::FailingFilling => State {
            value: Value::Row(rows::FILL_FAILING),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_FILL_FAILING),
            serves: Some(FigureId::ATTRIBUTE_USE_FILL_FAILING),
            keeps: FigureId::ATTRIBUTE_STABILITY_FILL_FAILING,
        },
        Fault::FillingShows => State {
            value: Value::Row(rows::FILL_SHOWING),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_FILL_SHOWING),
            ..State::SOUND
        },
        Fault::PartLost if large => State {
            value: Value::Row(rows::PART_MISSING_MAJOR),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_MISSING_MAJOR),
            serves: Some(FigureId::ATTRIBUTE_USE_MISSING_MAJOR),
            ..State::SOUND
        },
        Fault::PartLost => State {
            value: Value::Row(rows::PART_MISSING_MINOR),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_MISSING_MINOR),
            serves: Some(FigureId::ATTRIBUTE_USE_MISSING_MINOR),
            ..State::SOUND
        },
        Fault::LiningGone => State {
            value: Value::Row(rows::LINING_GONE),
            ..State::SOUND
        },
        Fault::GildingGone => State {
            value: Value::Row(rows::GILDING_GONE),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_GILDING_GONE),
            ..State::SOUND
        },
        Fault::BrokenLacquer => State {
            value: Value::Row(rows::LACQUER_BROKEN),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_LACQUER_BROKEN),
            keeps: FigureId::ATTRIBUTE_STABILITY_LACQUER_BROKEN,
            ..State::SOUND
        },
        Fault::Corrosion => State {
            keeps: FigureId::ATTRIBUTE_STABILITY_CORROSION,
            ..State::SOUND
        },
        Fault::Tarnish | Fault::BareMetal => State::SOUND,
    }
}
