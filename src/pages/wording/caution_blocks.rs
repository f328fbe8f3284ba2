//! Words at the foot of every page that names a treatment.

pub(crate) const LAW: &str = "Law and limits: ask the regulator where you live";
pub(crate) const HELP: &str = "If something has happened: whom to call";
pub(crate) const NUMBERS_ARE_RECALLED: &str =
    "The numbers are recalled: check those for where you live before you need them.";
