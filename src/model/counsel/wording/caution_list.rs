//! The subject of each caution.

pub(crate) const CORROSION: &str = "Corrosion";
pub(crate) const LEAD: &str = "Lead";
pub(crate) const SEALED: &str = "Closed or filled parts";
pub(crate) const MERCURY: &str = "Mercury";
pub(crate) const SILVER_SOLDER: &str = "An old repair with silver solder";
pub(crate) const BARE_METAL: &str = "Bare metal";
pub(crate) const CHILDREN: &str = "Children and pregnancy";
pub(crate) const ASBESTOS: &str = "Asbestos";
pub(crate) const AMMONIA: &str = "Silver with ammonia";
pub(crate) const IVORY: &str = "Ivory";
pub(crate) const WAX: &str = "Candle wax";
pub(crate) const DISHWASHER: &str = "A dishwasher";
pub(crate) const DAMP: &str = "A damp place";
