//! The guide: what the program does, with one invented piece taken from start to finish.

use leavewell_model::record::Seen;
use leavewell_pages::Block;
use yew::prelude::*;

use super::counsel::{drawn, found};
use super::road::look;
use crate::app::charts::outcomes;
use crate::app::parts::blocks::without_fields;
use crate::app::parts::cautions::folded_cautions;
use crate::app::parts::element::{El, el};
use crate::app::parts::screen::shelf_head;
use crate::app::state::Open;
use crate::app::wording::guide as text;

/// The screen of the guide. The blocks and the report on its piece come from the worker.
pub fn guide_page(guide: &[Block], piece: Option<&Open>) -> Html {
    let (what, rest) = guide.split_at(guide.len().min(1));
    el("div", "screen is-wide guide-page")
        .el(shelf_head(text::TITLE, text::PURPOSE))
        .el(without_fields(what))
        .el(piece.map_or_else(|| el("div", ""), pictures))
        .el(without_fields(rest))
        .html()
}

/// The piece of the guide in pictures: what was seen, what was found, and what each choice would bring.
fn pictures(open: &Open) -> El {
    let answers = open.case.findings.iter();
    let seen = answers.filter(|answer| answer.seen == Seen::Yes);
    let looks = el("div", "replies").each(seen.map(|it| it.id.fact()), |finding| {
        el("figure", "reply")
            .el(look(finding.id, Seen::Yes.id()))
            .el(el("figcaption", "").text(finding.title))
    });
    let mut choices = el("div", "").tag("h3", text::STEPS[2]);
    if let Some(report) = open.report() {
        let drawn = drawn(report);
        let steps = drawn.iter().flat_map(|course| &course.steps);
        choices = choices
            .put(outcomes(&drawn, &report.counsel.steps, open.currency()))
            .el(folded_cautions(steps.map(|step| step.id()).collect()));
    }
    el("section", "")
        .attr("aria-labelledby", "guide-pictures")
        .el(el("h2", "")
            .attr("id", "guide-pictures")
            .text(text::PICTURES))
        .el(el("div", "picture-grid")
            .el(el("div", "").tag("h3", text::STEPS[0]).el(looks))
            .el(el("div", "").tag("h3", text::STEPS[1]).put(found(open)))
            .el(choices))
}
