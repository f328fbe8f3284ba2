//! What the closed pieces on the shelf teach, what learning is turned on for, and how well the program has
//! said.

use leavewell_model::learn::TurnedOn;
use leavewell_pages::learning::PullingPiece;
use yew::prelude::*;

use crate::app::parts::blocks::without_fields;
use crate::app::parts::choice::tick_as;
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::marks::{press, section};
use crate::app::parts::screen::shelf_head;
use crate::app::state::{Action, Effect, Lessons};
use crate::app::wording::learning as text;

/// The screen of what closed pieces teach.
pub fn learning_page(lessons: &Lessons, act: &Callback<Action>, effect: &Callback<Effect>) -> Html {
    let head = shelf_head(text::TITLE, text::PURPOSE);
    let invented = button("quiet")
        .pressed(press(act, Action::ShowInvented(!lessons.invented)))
        .text(if lessons.invented {
            text::SHOW_OWN
        } else {
            text::SHOW_INVENTED
        });
    let (said, how_well, pulls) = match lessons.learning.as_deref() {
        None => (waiting(), waiting(), el("div", "")),
        Some(learning) => {
            let pulls = el("div", "")
                .el(pieces(
                    (text::PULLS, text::PULLS_MEANS),
                    &learning.pulls,
                    lessons.invented,
                    effect,
                    true,
                ))
                .el(pieces(
                    (text::LEFT_OUT, ""),
                    &learning.left_out,
                    lessons.invented,
                    effect,
                    false,
                ));
            (
                without_fields(&learning.blocks),
                without_fields(&learning.how_well),
                pulls,
            )
        }
    };
    el("div", "screen is-wide learning-page")
        .el(head)
        .el(el("p", "buttons").el(invented))
        .put(section("", "use-title", text::USE, turned_on(lessons, act)))
        .put(section(
            "",
            "teach-title",
            text::TEACH,
            group().el(said).el(pulls).html(),
        ))
        .put(section(
            "",
            "how-well-title",
            text::HOW_WELL,
            how_well.html(),
        ))
        .html()
}

fn waiting() -> El {
    el("div", "leaf").p("hint", text::WAITING)
}

fn turned_on(lessons: &Lessons, act: &Callback<Action>) -> Html {
    let on = lessons.on;
    let tick = |id: &str, words: [&'static str; 2], ticked: bool, then: TurnedOn| {
        tick_as(id, ticked, act.reform(move |_| Action::Teach(then)), words)
    };
    let holds = !lessons.taught.is_empty();
    let said = if holds { text::HOLDS } else { text::HOLDS_NOT };
    el("div", "")
        .p("hint", text::USE_MEANS)
        .put(tick(
            "teach-prices",
            text::FOR_PRICES,
            on.prices,
            TurnedOn {
                prices: !on.prices,
                ..on
            },
        ))
        .put(tick(
            "teach-works",
            text::FOR_WORKS,
            on.works,
            TurnedOn {
                works: !on.works,
                ..on
            },
        ))
        .el(el("p", "").attr("data-said", "true").text(said))
        .el(el("p", "buttons")
            .hidden(on == TurnedOn::default())
            .el(button("")
                .pressed(press(act, Action::Teach(TurnedOn::default())))
                .text(text::AS_SHIPPED)))
        .html()
}

/// Pieces with a button each: those that pull most are left out, those left out are taken in again.
fn pieces(
    (title, means): (&'static str, &'static str),
    pieces: &[PullingPiece],
    invented: bool,
    effect: &Callback<Effect>,
    out: bool,
) -> El {
    let (label, heard): (&'static str, fn(&str) -> String) = if out {
        (text::LEAVE_OUT, text::leave_out)
    } else {
        (text::TAKE_IN, text::take_in)
    };
    let list = el("ul", "pulling").each(pieces, |piece| {
        let press = press(effect, Effect::LeaveOut(piece.id.clone(), out));
        let button = button("quiet")
            .set("aria-label", heard(&piece.name))
            .hidden(invented)
            .pressed(press)
            .text(label);
        el("li", "")
            .key(&piece.id)
            .el(el("strong", "").words(piece.name.clone()))
            .said("", piece.what.clone())
            .el(button)
    });
    el("div", "")
        .hidden(pieces.is_empty())
        .tag("h3", title)
        .p("hint", means)
        .el(list)
}
