//! Piece: what it is, what is known about it, and what the owner wants.

use leavewell_model::Report;
use leavewell_model::ledger::treatment_text;
use leavewell_model::terms::{CameFrom, Doer, Form, Goal};
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::parts::cautions::{cautions, display_only, named};
use crate::app::parts::choice::{choices, pick, radios, tick, yes_no};
use crate::app::parts::element::{el, group};
use crate::app::parts::field::{number_field, text_field};
use crate::app::parts::marks::{bullets, section};
use crate::app::parts::screen::screen;
use crate::app::route::Route;
use crate::app::state::Target::Field;
use crate::app::wording::piece as text;

/// The treatments that people come to ask about.
const IN_MIND: [&str; 6] = ["T14a", "T09", "T10a", "T03", "T17", "T15"];

/// The screen Piece.
pub fn piece_page(page: Page) -> Html {
    screen(
        page,
        (Route::Piece, Route::Look),
        [text::TITLE, text::PURPOSE, text::NEXT],
        begin(page),
        group()
            .put(section("", "piece-title", text::THE_PIECE, known(page)))
            .put(section("", "aim-title", text::WANTED, wanted(page)))
            .put(cautions(&named(&IN_MIND)))
            .html(),
    )
}

fn known(page: Page) -> Html {
    group()
        .put(text_field(page, Field("piece.name"), text::NAME))
        .put(pick(page, Field("piece.form"), text::FORM, choices!(Form)))
        .put(number_field(page, Field("piece.height_mm"), text::HEIGHT))
        .put(made(page))
        .put(pick(
            page,
            Field("piece.came_from"),
            text::CAME_FROM,
            choices!(CameFrom),
        ))
        .put(yes_no(page, "piece.soldered_vessel", text::SOLDERED))
        .put(tick(page, "piece.rare", text::RARE))
        .put(tick(page, "piece.documented", text::DOCUMENTED))
        .html()
}

fn made(page: Page) -> Html {
    let years = el("div", "side-by-side")
        .put(number_field(
            page,
            Field("piece.from_year"),
            text::NOT_BEFORE,
        ))
        .put(number_field(page, Field("piece.to_year"), text::NOT_AFTER));
    el("fieldset", "choice")
        .tag("legend", text::MADE)
        .p("hint", text::MADE_HINT)
        .el(years)
        .html()
}

fn wanted(page: Page) -> Html {
    group()
        .put(radios(page, Field("aim.goal"), text::GOAL, choices!(Goal)))
        .put(pick(
            page,
            Field("aim.asked"),
            text::IN_MIND,
            IN_MIND
                .iter()
                .filter_map(|id| treatment_text(id))
                .map(|text| (text.id, text.name))
                .collect(),
        ))
        .put(tick(page, "aim.food", text::FOOD))
        .put(tick(page, "aim.store_food", text::FOOD_STANDS))
        .put(tick(
            page,
            "aim.household_child_or_pregnant",
            text::CHILD_OR_PREGNANT,
        ))
        // Shown at once if food is wanted; otherwise the counsel shows it.
        .el(el("div", "")
            .hidden(page.open.draft.flag("aim.food") != Some(true))
            .put(of_report(page.open, display_only)))
        .put(radios(page, Field("aim.doer"), text::DOER, choices!(Doer)))
        .html()
}

/// The column beside the first questions, for a newcomer.
fn begin(page: Page) -> Html {
    let looks = |report: &Report| {
        let looks = report.identity.next_looks.iter().take(3);
        bullets(looks.map(|look| look.title.get().into()).collect())
    };
    el("div", "")
        .tag("h2", text::HOW_THIS_GOES_ON)
        .p("", text::THE_WAY)
        .p("", text::LOOKS_THAT_TELL_MOST)
        .put(of_report(page.open, looks))
        .html()
}
