//! Piece: what it is for, what is known of it, and what is wanted.

use leavewell_model::Report;
use leavewell_model::case::{Doer, Form, Goal};
use leavewell_model::facts::treatment_text;
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

/// What people come to ask about.
const IN_MIND: [&str; 6] = ["T14a", "T09", "T10a", "T03", "T17", "T15"];

/// Piece.
pub fn piece_page(page: Page) -> Html {
    screen(
        page,
        (Route::Piece, Route::Look),
        [
            "The piece, and what you want of it",
            "A few things to begin with. Everything may be left open; the answer is only less sure then.",
            "Next: look at the piece",
        ],
        begin(page),
        group()
            .put(section("", "piece-title", "The piece", known(page)))
            .put(section("", "aim-title", "What do you want?", wanted(page)))
            .put(cautions(&named(&IN_MIND)))
            .html(),
    )
}

fn known(page: Page) -> Html {
    group().put(text_field(
            page,
            Field("piece.name"),
            ["What do you call it?", "For you to find it again.", ""],
        )).put(pick(
            page,
            Field("piece.form"),
            [
                "What is it?",
                "The form decides which parts there are, and whether food or drink belongs in it.",
                "Not said",
            ],
            choices!(Form),
        )).put(number_field(
            page,
            Field("piece.height_mm"),
            ["Height", "Its size tells how much work it would be.", "mm"],
        )).put(made(page)).put(yes_no(
            page,
            "piece.soldered_vessel",
            [
                "Is it held together with solder?",
                "Pots, jugs and baskets mostly are. Old solder often holds lead and lets go when it is warmed.",
            ],
        )).put(tick(
            page,
            "piece.rare",
            [
                "It is rare, early, or by a maker people look for",
                "Such pieces lose most when their first surface goes.",
            ],
        )).put(tick(
            page,
            "piece.documented",
            [
                "Its history is written down",
                "Papers, an old bill or a photograph: what can be shown is worth keeping unbroken.",
            ],
        )).html()
}

fn made(page: Page) -> Html {
    let years = el("div", "side-by-side")
        .put(number_field(
            page,
            Field("piece.from_year"),
            ["Not before", "", ""],
        ))
        .put(number_field(
            page,
            Field("piece.to_year"),
            ["Not after", "", ""],
        ));
    el("fieldset", "choice")
        .tag(
            "legend",
            "When was it made, as far as somebody has told you?",
        )
        .p(
            "hint",
            "A year you are told narrows what it can be. Leave both open if nobody knows.",
        )
        .el(years)
        .html()
}

fn wanted(page: Page) -> Html {
    group().put(radios(
            page,
            Field("aim.goal"),
            [
                "What is to become of it?",
                "A seller asks what it fetches; a keeper asks what stays. The answer can differ.",
                "Not decided",
            ],
            choices!(Goal),
        )).put(pick(
            page,
            Field("aim.asked"),
            [
                "Did you come with something in mind?",
                "The counsel then says why, or why not.",
                "Nothing yet",
            ],
            IN_MIND
                .iter()
                .filter_map(|id| treatment_text(id))
                .map(|text| (text.id, text.name))
                .collect(),
        )).put(tick(
            page,
            "aim.food",
            [
                "Food or drink is to be served from it",
                "Old plate can give off lead or copper, so this is checked before anything else.",
            ],
        )).put(tick(
            page,
            "aim.store_food",
            [
                "Food or drink would stand in it for hours",
                "The longer it stands, the more comes out of the metal.",
            ],
        )).put(tick(
            page,
            "aim.household_child_or_pregnant",
            [
                "A child, or somebody pregnant or breast-feeding, lives where it is kept or would use it",
                "Lead harms them most.",
            ],
        ))
// Said at once where food is wanted; elsewhere it waits for the counsel.
.el(el("div", "")
            .hidden(page.open.draft.flag("aim.food") != Some(true))
            .put(of_report(page.open, display_only))).put(radios(
            page,
            Field("aim.doer"),
            [
                "Who would do any work on it?",
                "Some work is safe at home and most is not.",
                "Not decided",
            ],
            choices!(Doer),
        )).html()
}

/// What a newcomer sees beside the first questions.
fn begin(page: Page) -> Html {
    let looks = |report: &Report| {
        let looks = report.identity.next_looks.iter().take(3);
        bullets(looks.map(|look| look.title.get().into()).collect())
    };
    el("div", "")
        .tag("h2", "How this goes on")
        .p(
            "",
            "Next you look at the piece, then say what state each part is in, then what it might fetch. You can \
             read the counsel at any time: it says how sure it is.",
        )
        .p("", "These looks would tell most:")
        .put(of_report(page.open, looks))
        .html()
}
