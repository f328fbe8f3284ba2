//! How far the heat of a joint reaches.

use leavewell_model::bench::Reach;

/// One temperature and how far it reaches: least and greatest. `None` if the joint is cooler than that.
pub(super) struct ReachRow {
    /// What gives way.
    pub(super) what: &'static str,
    /// The temperature, in °C.
    pub(super) at_c: f64,
    /// Least reach over the bands of uncertainty.
    pub(super) near: Reach,
    /// Greatest reach over the bands of uncertainty.
    pub(super) far: Reach,
}
