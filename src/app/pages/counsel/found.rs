//! The picture at the head of the answer: what was found, part by part, as recorded.

use leavewell_model::report::Report;
use leavewell_model::terms::{Dents, Joint, JointClass, Loss, small};
use yew::prelude::*;

use crate::app::drawings::{FoundMark, Shown, found_drawing};
use crate::app::pages::Page;
use crate::app::parts::words::percent;
use crate::app::wording::found as text;

/// The piece with what the record says of its parts, damage first.
pub(super) fn found(page: Page) -> Html {
    let case = &page.open.case;
    let mut marks = Vec::new();
    for part in &case.parts {
        let name = small(part.name.label());
        let mut mark = |shown, label, note: String| {
            marks.push(FoundMark {
                part: part.name,
                shown,
                label,
                note,
            });
        };
        if matches!(part.loss, Some(Loss::Small | Loss::Large)) {
            mark(Shown::Lost, text::MISSING, name.clone());
        }
        match part.joint {
            Some(Joint::Leaking) => mark(Shown::Ring, text::LEAKS, name.clone()),
            Some(Joint::Open) if part.name.joint_class() == JointClass::Attachment => {
                mark(Shown::Ring, text::LOOSE, name.clone());
            }
            Some(Joint::Open) => mark(Shown::Ring, text::OPEN_SEAM, name.clone()),
            Some(Joint::GreyRepair) => mark(Shown::Grey, text::GREY, text::at(&name)),
            _ => {}
        }
        match part.dents {
            Some(Dents::Minor) => mark(Shown::Dent, text::DENT, text::on(&name)),
            Some(Dents::Moderate | Dents::Split) => {
                mark(Shown::Dent, text::DEEP_DENT, text::on(&name));
            }
            _ => {}
        }
    }
    marks.extend(bare(page));
    found_drawing(page.open.form(), &marks)
}

/// Bare metal on the parts where it is recorded, by the share that the answer works with.
fn bare(page: Page) -> Vec<FoundMark> {
    let case = &page.open.case;
    let known = page.open.report().map_or(&[][..], shown_parts);
    let label = if case.has_seen("S03") {
        text::COPPER
    } else {
        text::BARE
    };
    let recorded = case.parts.iter().filter(|part| part.bleed.is_some());
    // The drawing shows one piece of several.
    let mut drawn = Vec::new();
    recorded
        .filter_map(|part| {
            if drawn.contains(&part.name) {
                return None;
            }
            drawn.push(part.name);
            let share = known.iter().find(|p| p.part == part.name.id())?.bleed;
            let is_none = page.open.draft.part_text(part.name.id(), "bleed") == "none";
            (share > 0.0 && !is_none).then(|| FoundMark {
                part: part.name,
                shown: Shown::Bare(share),
                label,
                note: text::share_of(&percent(share), &small(part.name.label())),
            })
        })
        .collect()
}

fn shown_parts(report: &Report) -> &[leavewell_model::report::PartReport] {
    &report.silver.parts
}
