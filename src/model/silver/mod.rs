//! How much silver is left, where, and what one more cleaning takes.

mod bleed;
mod care;
mod chart;
mod layer;
mod loss;
mod measured;
mod rolled;
mod whole_piece;

pub use bleed::{BleedRange, bleed_range};
pub use care::{Habit, bleed_after, years_until};
pub use chart::{CHART_COLUMNS, CHART_PERCENTS, CHART_ROWS, Grain, chart_cells};
pub use layer::{Layer, held, shown_share};
pub use loss::{FilmLoss, film_loss_um};
pub use measured::{Belief, let_in, measured, reading_error_um};
pub use rolled::rolled_face_um;
pub use whole_piece::{PART_AREA, PartBleed, whole_piece};
