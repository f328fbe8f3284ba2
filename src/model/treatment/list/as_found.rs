//! How a piece stands with a fault that is left.

use super::{FaultState, Show, Value};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Found, Size};
use crate::value::factor_rows as rows;

/// The state of a fault as it was found. Tarnish and bare metal are weighed with the whole surface
/// and have no separate state here.
#[must_use]
pub fn as_found(found: &Found) -> FaultState {
    let large = found.size == Size::Large;
    match found.fault {
        Fault::Dents if large => FaultState {
            value: Value::Row(rows::DENTS_MODERATE),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_DAMAGED),
            ..FaultState::SOUND
        },
        Fault::Dents => FaultState {
            value: Value::Row(rows::DENTS_MINOR),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_DENTS_MINOR),
            ..FaultState::SOUND
        },
        Fault::Split => FaultState {
            value: Value::Row(rows::SPLIT),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_DAMAGED),
            serves: Some(FigureId::ATTRIBUTE_USE_SPLIT),
            keeps: FigureId::ATTRIBUTE_STABILITY_SPLIT,
        },
        Fault::OpenJoint => FaultState {
            value: Value::Row(rows::LEAK),
            // It serves no better than a split does.
            serves: Some(FigureId::ATTRIBUTE_USE_SPLIT),
            keeps: FigureId::ATTRIBUTE_STABILITY_OPEN,
            ..FaultState::SOUND
        },
        Fault::LoosePart | Fault::CrackedMaterial => FaultState {
            value: Value::Row(rows::LOOSE),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_LOOSE),
            serves: Some(FigureId::ATTRIBUTE_USE_LOOSE),
            keeps: FigureId::ATTRIBUTE_STABILITY_LOOSE,
        },
        Fault::GreyRepair => FaultState {
            value: Value::Row(rows::SOLDER_REPAIR),
            serves: Some(FigureId::ATTRIBUTE_USE_GREY),
            keeps: FigureId::ATTRIBUTE_STABILITY_GREY,
            ..FaultState::SOUND
        },
        Fault::FailingFilling => FaultState {
            value: Value::Row(rows::FILL_FAILING),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_FILL_FAILING),
            serves: Some(FigureId::ATTRIBUTE_USE_FILL_FAILING),
            keeps: FigureId::ATTRIBUTE_STABILITY_FILL_FAILING,
        },
        Fault::FillingShows => FaultState {
            value: Value::Row(rows::FILL_SHOWING),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_FILL_SHOWING),
            ..FaultState::SOUND
        },
        Fault::PartLost if large => FaultState {
            value: Value::Row(rows::PART_MISSING_MAJOR),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_MISSING_MAJOR),
            serves: Some(FigureId::ATTRIBUTE_USE_MISSING_MAJOR),
            ..FaultState::SOUND
        },
        Fault::PartLost => FaultState {
            value: Value::Row(rows::PART_MISSING_MINOR),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_MISSING_MINOR),
            serves: Some(FigureId::ATTRIBUTE_USE_MISSING_MINOR),
            ..FaultState::SOUND
        },
        Fault::LiningGone => FaultState {
            value: Value::Row(rows::LINING_GONE),
            ..FaultState::SOUND
        },
        Fault::GildingGone => FaultState {
            value: Value::Row(rows::GILDING_GONE),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_GILDING_GONE),
            ..FaultState::SOUND
        },
        Fault::BrokenLacquer => FaultState {
            value: Value::Row(rows::LACQUER_BROKEN),
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_LACQUER_BROKEN),
            keeps: FigureId::ATTRIBUTE_STABILITY_LACQUER_BROKEN,
            ..FaultState::SOUND
        },
        Fault::Corrosion => FaultState {
            keeps: FigureId::ATTRIBUTE_STABILITY_CORROSION,
            ..FaultState::SOUND
        },
        Fault::Tarnish | Fault::BareMetal => FaultState::SOUND,
    }
}
