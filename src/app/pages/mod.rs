//! The screens of a piece, and the shelf they start from.
//!
//! Every screen of a piece is a function of a [`Page`]. All but the counsel are drawn inside
//! `parts::screen::screen`, which gives them their head, their live answer and their next step.

pub mod bench;
pub mod condition;
pub mod counsel;
pub mod figures;
pub mod look;
pub mod money;
pub mod piece;
pub mod plan;
pub mod sheet;
pub mod shelf;

use leavewell_model::Report;
use yew::{Callback, Html};

use super::parts::element::{El, el};
use super::parts::words::{money_band, percent};
use super::route::Route;
use super::state::{Action, Open, State};
use super::wording::answer as say;

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

/// The live answer of a screen in one line; empty on screens that have none, and before it has come.
#[must_use]
pub fn line(here: Route, open: &Open) -> String {
    let Some(report) = open.report() else {
        return match here {
            Route::Piece | Route::Look => open.identity.sentence.clone(),
            _ => String::new(),
        };
    };
    match here {
        Route::Piece | Route::Look => open.identity.sentence.clone(),
        Route::Condition => say::silver_covers(&percent(report.silver.covered_area)),
        Route::Money => say::worth_as_it_is(&money_band(report.value.as_it_is, open.currency())),
        _ => String::new(),
    }
}

/// What the report says, shown by `show`; before it has come, that it is being worked out, or why it
/// cannot be.
pub fn of_report(open: &Open, show: impl FnOnce(&Report) -> Html) -> Html {
    let missing = match (open.report(), &open.weighed.failure) {
        (Some(report), _) => return show(report),
        (None, None) => el("p", "hint").text(say::ON_ITS_WAY),
        (None, Some(why)) => not_worked_out(why),
    };
    missing.html()
}

/// That something could not be worked out, and what to do about it.
pub fn not_worked_out(why: &str) -> El {
    el("p", "problem").words(say::not_worked_out(why))
}
