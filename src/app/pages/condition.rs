//! Condition: the drawn piece, its parts, and what a person sees on each of them.

mod fields;
mod summary;

use leavewell_model::Report;
use leavewell_model::ledger::caution;
use leavewell_model::record::bears_on_hazards;
use leavewell_model::report::CautionReport;
use leavewell_model::road::says_how_bare;
use leavewell_model::terms::{Form, PartName, Treatment, capital, small, the_pieces};
use leavewell_pages::PageName;
use yew::prelude::*;

use super::road::{TO_TAP, piece_button};
use super::{Page, of_report};
use crate::app::charts::silver_left;
use crate::app::drawings::piece_drawing;
use crate::app::parts::blocks::{loaded_page, shows_pieces};
use crate::app::parts::cautions::cautions;
use crate::app::parts::choice;
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::field::typed;
use crate::app::parts::marks::{fold, named, press};
use crate::app::parts::screen::screen;
use crate::app::parts::words::joined;
use crate::app::reader::Reader;
use crate::app::route::Route;
use crate::app::state::{Action, Open, Target};
use crate::app::wording::condition as text;
use fields::part_fields;

/// The condition of the piece, part by part.
pub fn condition_page(page: Page) -> Html {
    let open = page.open;
    let selected = page.state.selected_part.unwrap_or(PartName::Body);
    let parts = parts(open, selected);
    // A restorer comes for a proposal, which stands with the advice.
    let (next, words) = match page.state.reader {
        Reader::Restorer => (Route::Counsel, text::TO_PROPOSAL),
        Reader::Owner | Reader::Dealer => (Route::Money, text::NEXT),
    };
    screen(
        page,
        (Route::Condition, next),
        [text::TITLE, text::PURPOSE, words],
        of_report(open, |report| answer(page, report)),
        group()
            .el(forms(page))
            .el(el("div", "condition")
                .el(drawn(open, selected, &parts))
                .el(el("div", "part-choice")
                    .el(which(page))
                    .el(list(page, selected, &parts))
                    .put(another(page, &parts)))
                .el(el("div", "part-side")
                    .put(part_fields(page, selected))
                    .el(photos(page, selected))))
            .put(loaded_page(page, PageName::Places))
            .put(fold(
                "more",
                text::MEASURE_BARE,
                loaded_page(page, PageName::Bleed),
            ))
            .put(fold(
                "more",
                text::HOW_LONG_IT_LASTS,
                loaded_page(page, PageName::Care),
            ))
            .put(fold(
                "more",
                text::RECORD,
                group()
                    .put(loaded_page(page, PageName::Record))
                    .el(el("p", "")
                        .el(button("")
                            .pressed(press(page.act, Action::KeepRecord))
                            .text(text::KEEP_RECORD))
                        .el(el("span", "hint").text(text::KEEP_RECORD_WHEN)))
                    .html(),
            ))
            .put(cautions(&here(open)))
            .html(),
    )
}

/// Photos of a part. `www/photos.js` stores them and counts points on them.
fn photos(page: Page, part: PartName) -> El {
    let field = |field: &str| page.open.part_text(part, field);
    // The fields beside it have the part's key.
    shows_pieces(el("part-photos", ""), page)
        .key(&joined(&["photos-", part.id()]))
        .set("case", page.open.id.clone())
        .attr("part", part.id())
        .set("name", small(part.label()))
        .set("points", field("count_points"))
        .set("bare", field("count_bare"))
}

/// The forms to tap, while the form is not known.
fn forms(page: Page) -> El {
    let form = Target::Field("piece.form");
    let tapped = |id: &'static str| press(page.act, Action::Typed(form, id.to_owned()));
    el("div", "")
        .hidden(page.open.form().is_some())
        .tag("h2", text::WHICH_FORM)
        .el(el("div", "bench").each(TO_TAP, |form| {
            let button = button("piece-button").key(form.id());
            piece_button(form, button.pressed(tapped(form.id())))
        }))
        .el(el("p", "hint").text(text::NO_FORM).el(el("a", "")
            .attr("href", Route::Piece.href())
            .text(text::SAY_THE_FORM)))
}

/// The drawn piece.
fn drawn(open: &Open, selected: PartName, parts: &[PartName]) -> El {
    el("div", "condition-piece")
        .put(piece_drawing(open.form(), selected, &bleeds(open, parts)))
        .p("hint", text::STRIPES)
}

/// Which of several pieces the fields speak of: all of them, or one.
fn which(page: Page) -> El {
    let (count, now) = (page.open.case.pieces.count, page.open.piece);
    let chosen = page.act.reform(move |event: Event| {
        let text = typed(&event);
        let no = (0..=count).find(|no| no.to_string() == text);
        Action::SelectPiece(no.unwrap_or(0))
    });
    let numbers: Vec<u16> = (0..=count).collect();
    let select = el("select", "")
        .attr("id", "which-piece")
        .changed(chosen)
        .each(numbers, |no| {
            let name = match no {
                0 => text::ALL_PIECES.to_owned(),
                no => capital(&the_pieces(&[no])),
            };
            el("option", "")
                .key(&no.to_string())
                .set("value", no.to_string())
                .attr("selected", if no == now { "selected" } else { "" })
                .words(name)
        });
    el("div", "field")
        .hidden(count < 2 && now == 0)
        .el(el("label", "")
            .attr("for", "which-piece")
            .text(text::WHICH_PIECE))
        .p("hint", text::WHICH_PIECE_HINT)
        .el(select)
}

/// The list of parts to choose from.
fn list(page: Page, selected: PartName, parts: &[PartName]) -> El {
    el("ul", "part-list")
        .attr("aria-label", text::PARTS)
        .each(parts, |part| {
            let pressed = if *part == selected { "true" } else { "false" };
            let button = button("part-button")
                .attr("aria-pressed", pressed)
                .pressed(press(page.act, Action::SelectPart(*part)))
                .el(el("span", "part-name").text(part.label()))
                .el(el("span", "part-summary").words(summary::of(page.open, *part)));
            el("li", "").key(part.id()).el(button)
        })
}

/// A list of the parts such a piece does not usually have, to choose one from.
fn another(page: Page, parts: &[PartName]) -> Html {
    let others = PartName::ALL.iter().filter(|part| !parts.contains(part));
    let choices = others.map(|part| (part.id(), part.label())).collect();
    let chosen = page.act.reform(|event: Event| {
        let part = PartName::parse(&typed(&event)).unwrap_or(PartName::Body);
        Action::SelectPart(part)
    });
    let none = el("p", "").hidden(true).html();
    choice::list(
        "another-part",
        text::ANOTHER_PART.into(),
        text::ANOTHER_PART_HINT,
        "",
        choices,
        chosen,
        none,
    )
}

/// The parts such a piece usually has, and any other that the record speaks of or that was chosen.
fn parts(open: &Open, selected: PartName) -> Vec<PartName> {
    let usual = open.form().unwrap_or(Form::Other).parts();
    let others = PartName::ALL
        .iter()
        .filter(|p| !usual.contains(p) && (**p == selected || summary::is_recorded(open, **p)));
    usual.iter().chain(others).copied().collect()
}

/// The share of each recorded part where base metal shows.
fn bleeds(open: &Open, parts: &[PartName]) -> Vec<(PartName, f64)> {
    let recorded = |part: PartName| {
        !open.part_text(part, "bleed").is_empty() && Target::Share(part).problem(open).is_none()
    };
    let known = open.report().map_or(&[][..], |r| &r.silver.parts);
    parts
        .iter()
        .filter(|part| recorded(**part))
        .filter(|part| open.part_text(**part, "bleed") != "none")
        .filter_map(|part| {
            known
                .iter()
                .find(|p| p.part == *part)
                .map(|p| (*part, p.bleed))
        })
        .collect()
}

fn answer(page: Page, report: &Report) -> Html {
    if !says_how_bare(&page.open.case) {
        // The line above already says what to record first.
        return el("div", "").hidden(true).html();
    }
    let parts = &report.silver.parts;
    group()
        .tag("h2", text::SILVER_LEFT)
        .p("", text::SILVER_LEFT_FROM)
        .el(el("ul", "silver-words").each(parts, |part| {
            el("li", "")
                .key(part.part.id())
                .put(named(part.name.clone(), text::left_on(&part.words)))
        }))
        .put(silver_left(parts))
        .html()
}

/// The cautions of the hazards in the record, as the advice has them, and that of the test for lead, which every part
/// names.
fn here(open: &Open) -> Vec<CautionReport> {
    let of_work = |id: &str| {
        let of = id.strip_prefix("caution.").unwrap_or(id);
        Treatment::parse(of).is_some() || id == "caution.child"
    };
    let report = open.report().filter(|_| bears_on_hazards(&open.case));
    let all = report.into_iter().flat_map(|r| &r.cautions);
    let test = caution("caution.T17").map(|text| CautionReport {
        id: text.id.to_owned(),
        level: text.level,
        about: text::ABOUT_LEAD_TEST.to_owned(),
        text: text.text.to_owned(),
    });
    all.filter(|c| !of_work(&c.id))
        .cloned()
        .chain(test)
        .collect()
}
