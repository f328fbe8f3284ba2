//! What can be said of one part.

use leavewell_model::case::{
    BleedWord, Corrosion, Dents, Fill, Form, Interior, Joint, Lead, PartName, Tarnish,
};
use yew::prelude::*;

use crate::app::pages::Page;
use crate::app::parts::choice::{Choice, choices, pick, radios};
use crate::app::parts::element::el;
use crate::app::parts::field::number_field;
use crate::app::parts::share::is_counted;
use crate::app::state::Target;

/// Words for the choice that says nothing.
const UNSAID: &str = "Not looked";

/// The fields of one part. Which ones there are depends on the part; fields that come and go are
/// hidden, not taken out, so that those beside them are never drawn anew.
pub(super) fn part_fields(page: Page, part: PartName) -> Html {
    let text = |field: &str| page.open.draft.part_text(part.id(), field);
    let faulty = Joint::parse(&text("joint"))
        .is_some_and(|j| !matches!(j, Joint::Sound | Joint::NeatRepair));
    let filled = may_be_filled(page.open.form(), part) || !text("fill").is_empty();
    let lined = part == PartName::Interior || !text("interior").is_empty();
    let pick = |field: &'static str, label, hint, choices: Vec<Choice>| {
        pick(
            page,
            Target::Part(part, field),
            [label, hint, UNSAID],
            choices,
        )
    };
    let shown = |shown: bool, field| el("div", "").hidden(!shown).put(field);
    let distance = number_field(
        page,
        Target::Part(part, "joint_distance_mm"),
        [
            "From the faulty joint to the next soft joint or filling",
            "Heat travels: what is near may let go too. A rough measure will do.",
            "mm",
        ],
    );
    // The colours beside the words are in the style sheet, by the id of each stage.
    let tarnish = el("div", "swatches").put(radios(
        page,
        Target::Part(part, "tarnish"),
        [
            "Tarnish",
            "The darkest colour over most of the part, in the order in which it comes.",
            UNSAID,
        ],
        choices!(Tarnish),
    ));
    let grid = el("div", "field-grid")
        .put(pick(
            "joint",
            "Joints and seams",
            "Where this part meets another, and any seam in it.",
            choices!(Joint),
        ))
        .put(pick("dents", "Dents", "", choices!(Dents)))
        .put(pick(
            "corrosion",
            "Powder, crust or rust",
            "Not tarnish: something that grows or crumbles.",
            choices!(Corrosion),
        ))
        .put(pick(
            "lead",
            "Lead",
            "Only what a test has shown. A guess is not needed.",
            choices!(Lead),
        ))
        .el(shown(
            lined,
            pick(
                "interior",
                "What lines the inside",
                "Look with a torch.",
                choices!(Interior),
            ),
        ))
        .el(shown(
            filled,
            pick(
                "fill",
                "What fills it",
                "Hollow parts were often filled. Do not open anything to find out.",
                choices!(Fill),
            ),
        ))
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

/// How much base metal shows: in words, or as a share.
fn bleed(page: Page, part: PartName) -> Html {
    let text = |field: &str| page.open.draft.part_text(part.id(), field);
    let hint = if !text("count_bare").is_empty() {
        "A point count is recorded for this part and takes the place of anything said here."
    } else if is_counted(&text("bleed")) {
        "A point count is recorded for this part. Anything typed here takes its place."
    } else {
        "Takes the place of the choice above. Leave it empty if the words fit."
    };
    el("div", "bleed-fields").put(radios(
                page,
                Target::Part(part, "bleed"),
                [
                    "Base metal showing through",
                    "Copper red, brass yellow or grey where the silver has gone. Judge over the whole of this part.",
                    UNSAID,
                ],
                choices!(BleedWord),
            )).put(number_field(
                page,
                Target::Share(part),
                ["Or a percentage you judged, such as 5", hint, "%"],
            )).html()
}

/// Parts that are often hollow and filled.
fn may_be_filled(form: Option<Form>, part: PartName) -> bool {
    matches!(
        part,
        PartName::Base | PartName::Handle | PartName::Border | PartName::Foot
    ) || (form == Some(Form::Candlestick) && part == PartName::Body)
}
