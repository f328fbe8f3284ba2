//! The fields of one part.

use leavewell_model::terms::{
    BleedWord, Corrosion, Dents, Fill, Form, Interior, Joint, Lead, PartName, Tarnish,
};
use yew::prelude::*;

use crate::app::pages::Page;
use crate::app::parts::choice::{LabelledId, choices, pick, radios};
use crate::app::parts::element::el;
use crate::app::parts::field::number_field;
use crate::app::parts::share::is_counted;
use crate::app::state::Target;
use crate::app::wording::condition as text;

/// The fields of one part. Each part has different ones. Fields that come and go are hidden, not removed, so
/// that the others keep their elements.
pub(super) fn part_fields(page: Page, part: PartName) -> Html {
    let text = |field: &str| page.open.draft.part_text(part.id(), field);
    let faulty = Joint::parse(&text("joint"))
        .is_some_and(|j| !matches!(j, Joint::Sound | Joint::NeatRepair));
    let filled = may_be_filled(page.open.form(), part) || !text("fill").is_empty();
    let lined = part == PartName::Interior || !text("interior").is_empty();
    let pick = |field: &'static str, words, choices: Vec<LabelledId>| {
        pick(page, Target::Part(part, field), words, choices)
    };
    let shown = |shown: bool, field| el("div", "").hidden(!shown).put(field);
    let distance = number_field(
        page,
        Target::Part(part, "joint_distance_mm"),
        text::JOINT_DISTANCE,
    );
    // The style sheet has the colour of each stage, by its id.
    let tarnish = el("div", "swatches").put(radios(
        page,
        Target::Part(part, "tarnish"),
        text::TARNISH,
        choices!(Tarnish),
    ));
    let grid = el("div", "field-grid")
        .put(pick("joint", text::JOINT, choices!(Joint)))
        .put(pick("dents", text::DENTS, choices!(Dents)))
        .put(pick("corrosion", text::CORROSION, choices!(Corrosion)))
        .put(pick("lead", text::LEAD, choices!(Lead)))
        .el(shown(
            lined,
            pick("interior", text::INTERIOR, choices!(Interior)),
        ))
        .el(shown(filled, pick("fill", text::FILL, choices!(Fill))))
        .el(shown(faulty, distance));
    el("section", "part-fields")
        .attr("aria-labelledby", "part-title")
        .key(part.id())
        .el(el("h2", "").attr("id", "part-title").text(part.label()))
        .put(bleed(page, part))
        .el(tarnish)
        .el(grid)
        .html()
}

/// How much base metal shows: as a word or as a percentage.
fn bleed(page: Page, part: PartName) -> Html {
    let text = |field: &str| page.open.draft.part_text(part.id(), field);
    let hint = if !text("count_bare").is_empty() {
        text::COUNT_STANDS
    } else if is_counted(&text("bleed")) {
        text::COUNT_GIVES_WAY
    } else {
        text::SHARE_HINT
    };
    el("div", "bleed-fields")
        .put(radios(
            page,
            Target::Part(part, "bleed"),
            text::BLEED,
            choices!(BleedWord),
        ))
        .put(number_field(
            page,
            Target::Share(part),
            [text::SHARE, hint, text::SHARE_UNIT],
        ))
        .html()
}

/// Parts that are often hollow and filled.
fn may_be_filled(form: Option<Form>, part: PartName) -> bool {
    matches!(
        part,
        PartName::Base | PartName::Handle | PartName::Border | PartName::Foot
    ) || (form == Some(Form::Candlestick) && part == PartName::Body)
}
