//! Conditions that change the price: for each, the figures of its factor by group of value classes.

use super::{ByGroup, Class};

/// Coloured tarnish.
pub const TARNISH_COLOURED: ByGroup = Class::by_group("value.factor.tarnish_coloured.");
/// Grey or black tarnish.
pub const TARNISH_HEAVY: ByGroup = Class::by_group("value.factor.tarnish_heavy.");
/// Small dents.
pub const DENTS_MINOR: ByGroup = Class::by_group("value.factor.dents_minor.");
/// Deep dents.
pub const DENTS_MODERATE: ByGroup = Class::by_group("value.factor.dents_moderate.");
/// A split in the metal.
pub const SPLIT: ByGroup = Class::by_group("value.factor.split.");
/// An open or leaking joint.
pub const LEAK: ByGroup = Class::by_group("value.factor.leak.");
/// A loose handle, knob, foot, cover or base.
pub const LOOSE: ByGroup = Class::by_group("value.factor.loose.");
/// An old grey repair.
pub const SOLDER_REPAIR: ByGroup = Class::by_group("value.factor.solder_repair.");
/// A neat old repair.
pub const NEAT_REPAIR: ByGroup = Class::by_group("value.factor.neat_repair.");
/// A filling that fails.
pub const FILL_FAILING: ByGroup = Class::by_group("value.factor.fill_failing.");
/// A filling that shows.
pub const FILL_SHOWING: ByGroup = Class::by_group("value.factor.fill_showing.");
/// A small part lost.
pub const PART_MISSING_MINOR: ByGroup = Class::by_group("value.factor.part_missing_minor.");
/// A large part lost.
pub const PART_MISSING_MAJOR: ByGroup = Class::by_group("value.factor.part_missing_major.");
/// A large part made new.
pub const PART_REPLACED: ByGroup = Class::by_group("value.factor.part_replaced.");
/// A tin lining worn away.
pub const LINING_GONE: ByGroup = Class::by_group("value.factor.lining_gone.");
/// Gilding inside worn away.
pub const GILDING_GONE: ByGroup = Class::by_group("value.factor.gilding_gone.");
/// Broken or yellowed lacquer.
pub const LACQUER_BROKEN: ByGroup = Class::by_group("value.factor.lacquer_broken.");
/// Original arms.
pub const ARMS_ORIGINAL: ByGroup = Class::by_group("value.factor.arms_original.");
/// A small part made new.
pub const PART_NEW_MINOR: ByGroup = Class::by_group("value.part_new_minor.");
