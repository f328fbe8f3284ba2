//! The screens of a piece, and the shelf.
//!
//! Every screen of a piece is a function of a [`Page`]. All but the counsel use `parts::screen::screen`, which
//! adds the head, the live answer and the next step.

pub mod bench;
pub mod condition;
pub mod counsel;
pub mod figures;
pub mod guide;
pub mod learning;
pub mod look;
pub mod money;
pub mod piece;
pub mod plan;
pub mod road;
pub mod sheet;
pub mod shelf;
pub mod stock;

use leavewell_model::Report;
use leavewell_model::road::says_how_bare;
use yew::{Callback, Html};

use super::parts::element::{El, el};
use super::parts::words::money_band;
use super::route::Route;
use super::state::{Action, Open, State};
use super::wording::answer as text;
use super::wording::condition::NO_SILVER_YET;
use leavewell_model::terms::percent;

/// The input of every screen of a piece.
#[derive(Clone, Copy)]
pub struct Page<'a> {
    /// The state of the app.
    pub state: &'a State,
    /// The open piece.
    pub open: &'a Open,
    /// Receives the actions.
    pub act: &'a Callback<Action>,
}

/// The live answer of a screen in one line. It is empty on screens without one, and until the answer arrives.
#[must_use]
pub fn line(here: Route, open: &Open) -> String {
    let Some(report) = open.report() else {
        return match here {
            Route::Piece | Route::Look | Route::Road(_) => open.identity.sentence.clone(),
            _ => String::new(),
        };
    };
    match here {
        Route::Piece | Route::Look | Route::Road(_) => open.identity.sentence.clone(),
        Route::Condition if !says_how_bare(&open.case) => NO_SILVER_YET.to_owned(),
        Route::Condition => text::silver_covers(&percent(report.silver.covered_area)),
        Route::Money => text::worth_as_it_is(&money_band(report.value.as_it_is, open.currency())),
        _ => String::new(),
    }
}

/// The report, rendered by `show`. Until it arrives, a message that it is being worked out, or why it failed.
pub fn of_report(open: &Open, show: impl FnOnce(&Report) -> Html) -> Html {
    let missing = match (open.report(), &open.weighed.failure) {
        (Some(report), _) => return show(report),
        (None, None) => el("p", "hint").text(text::ON_ITS_WAY),
        (None, Some(why)) => not_worked_out(why),
    };
    missing.html()
}

/// The message that an answer could not be worked out, with what to do.
pub fn not_worked_out(why: &str) -> El {
    el("p", "problem").words(text::not_worked_out(why))
}
