//! How much silver is left, where, and what one more cleaning takes.

mod bleed;
mod layer;
mod loss;

pub use bleed::{BleedRange, bleed_range};
pub use layer::Layer;
pub use loss::{FilmLoss, film_loss_um};
