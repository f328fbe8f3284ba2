//! The screens of a piece, and the shelf they start from.
//!
//! Every screen of a piece is a function of a [`Page`]. All but the counsel are drawn inside
//! `parts::screen::screen`, which gives them their head, their live answer and their next step.

pub mod condition;
pub mod counsel;
pub mod look;
pub mod money;
pub mod piece;
pub mod shelf;

use yew::Callback;

use super::parts::words::{money_band, percent};
use super::route::Route;
use super::state::{Action, Open, State};
use crate::app::parts::words::joined;

/// What every screen of a piece is given.
#[derive(Clone, Copy)]
pub struct Page<'a> {
    /// Everything the app knows.
    pub state: &'a State,
    /// The piece.
    pub open: &'a Open,
    /// Where to say what happened.
    pub act: &'a Callback<Action>,
}

/// The live answer of a screen in one line; empty on screens that have none.
#[must_use]
pub fn line(here: Route, open: &Open) -> String {
    let report = &open.report;
    match here {
        Route::Piece | Route::Look => report.identity.sentence.clone(),
        Route::Condition => {
            let covered = percent(report.silver.covered_area);
            joined(&["Silver may still cover ", &covered, " of it."])
        }
        Route::Money => {
            let worth = money_band(report.value.as_it_is, open.currency());
            joined(&["As it is: ", &worth, "."])
        }
        Route::Shelf | Route::Counsel => String::new(),
    }
}
