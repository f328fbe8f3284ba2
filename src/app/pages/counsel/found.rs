//! The picture at the head of the answer: what was found, part by part, as recorded.

use leavewell_model::ledger::FindingId;
use leavewell_model::record::{Bleed, Part};
use leavewell_model::report::Report;
use leavewell_model::terms::{
    BleedWord, Dents, Joint, JointClass, Loss, PartName, SpotFault, small,
};
use yew::prelude::*;

use crate::app::drawings::{FoundMark, Shown, found_drawing};
use crate::app::state::Open;
use crate::app::wording::found as text;
use leavewell_model::terms::percent;

/// The piece with what the record says of its parts, damage first.
pub fn found(open: &Open) -> Html {
    found_drawing(open.form(), &marks(open))
}

fn marks(open: &Open) -> Vec<FoundMark> {
    let case = &open.case;
    let form = open.form();
    let mut marks = Vec::new();
    for part in &case.parts {
        // A fitting on a form that has none is a part that the owner could not name.
        let is_named = part.name != PartName::Fitting
            || form.is_some_and(|form| form.parts().contains(&part.name));
        let name = if is_named {
            small(part.name.label())
        } else {
            text::UNKNOWN_PART.to_owned()
        };
        let mut mark = |shown, label, note: String, is_it: &dyn Fn(SpotFault) -> bool| {
            add(&mut marks, part, (shown, label, note), is_it);
        };
        if matches!(part.loss, Some(Loss::Small | Loss::Large)) {
            mark(Shown::Lost, text::MISSING, name.clone(), &|fault| {
                matches!(fault, SpotFault::SmallLoss | SpotFault::LargeLoss)
            });
        }
        if part.has_joint(Joint::Leaking) {
            mark(Shown::Ring, text::LEAKS, name.clone(), &|fault| {
                fault == SpotFault::Leak
            });
        }
        if part.has_joint(Joint::Open) || part.places_of(|fault| fault == SpotFault::OpenJoint) > 0
        {
            let loose = part.name.joint_class() == JointClass::Attachment;
            let label = if loose { text::LOOSE } else { text::OPEN_SEAM };
            mark(Shown::Ring, label, name.clone(), &|fault| {
                fault == SpotFault::OpenJoint
            });
        }
        if part.has_joint(Joint::GreyRepair) {
            mark(Shown::Grey, text::GREY, text::at(&name), &|fault| {
                fault == SpotFault::GreyRepair
            });
        }
        let deep = matches!(part.dents, Some(Dents::Moderate | Dents::Split));
        if deep {
            mark(Shown::Dent, text::DEEP_DENT, text::on(&name), &|fault| {
                fault == SpotFault::DeepDent
            });
        }
        if part.dents == Some(Dents::Minor)
            || part.places_of(|fault| fault == SpotFault::SmallDent) > 0
        {
            mark(Shown::Dent, text::DENT, text::on(&name), &|fault| {
                fault == SpotFault::SmallDent
            });
        }
    }
    bare(open, &mut marks);
    marks
}

/// Adds what was found on a part: at each place of the drawing where such a fault was put, else at the usual one. The
/// first of them carries the name, with how many there are. The drawing shows one piece of several, so what is placed
/// for all of them stands once.
fn add(
    marks: &mut Vec<FoundMark>,
    part: &Part,
    (shown, label, note): (Shown, &'static str, String),
    is_it: &dyn Fn(SpotFault) -> bool,
) {
    let of_kind = part.spots.iter().filter(|spot| is_it(spot.fault));
    let on_drawing = of_kind.filter(|spot| spot.photo.is_none());
    let mut places: Vec<Option<(f64, f64)>> = on_drawing
        .filter(|spot| spot.at.is_some())
        .map(|spot| spot.at)
        .collect();
    if places.is_empty() {
        places.push(None);
    }
    let count = match shown {
        // How much of it is bare says more than at how many places.
        Shown::Bare(_) => 1,
        _ => part.places_of(is_it),
    };
    let from = marks.len();
    for at in places {
        let is_known = |mark: &FoundMark| {
            let is_same = mark.part == part.name && mark.shown == shown && mark.at == at;
            is_same && (at.is_some() || mark.label == label)
        };
        if marks.iter().any(is_known) {
            continue;
        }
        let is_first = marks.len() == from;
        marks.push(FoundMark {
            part: part.name,
            shown,
            at,
            label: if is_first { label } else { "" },
            note: text::several(count, note.clone()),
        });
    }
}

/// Bare metal on the parts where it is recorded, by the share that the answer works with.
fn bare(open: &Open, marks: &mut Vec<FoundMark>) {
    let case = &open.case;
    let known = open.report().map_or(&[][..], shown_parts);
    let label = if case.has_seen(FindingId::S03) {
        text::COPPER
    } else {
        text::BARE
    };
    // The drawing shows one piece of several.
    let mut drawn = Vec::new();
    for part in &case.parts {
        let recorded = !matches!(part.bleed, None | Some(Bleed::Word(BleedWord::None)));
        if !recorded || drawn.contains(&part.name) {
            continue;
        }
        let Some(known) = known.iter().find(|p| p.part == part.name) else {
            continue;
        };
        drawn.push(part.name);
        if known.bleed > 0.0 {
            let note = text::share_of(&percent(known.bleed), &small(part.name.label()));
            add(
                marks,
                part,
                (Shown::Bare(known.bleed), label, note),
                &|fault| fault == SpotFault::BareMetal,
            );
        }
    }
}

fn shown_parts(report: &Report) -> &[leavewell_model::report::PartReport] {
    &report.silver.parts
}

#[cfg(test)]
mod tests {
    use leavewell_model::Draft;

    use super::*;

    /// Label, note and place of a mark.
    type Marked = (&'static str, String, Option<(f64, f64)>);

    /// The marks of a tray.
    fn marked(parts: &str) -> Vec<Marked> {
        let text = format!(
            r#"{{"format":"leavewell-case","version":2,"piece":{{"form":"tray","photos":"p1"}},{parts}}}"#
        );
        let open = Open::new("a".to_owned(), Draft::parse(&text).unwrap());
        let marks = marks(&open).into_iter();
        let of = |mark: FoundMark| {
            assert_eq!(mark.part, PartName::Body);
            (mark.label, mark.note, mark.at)
        };
        marks.map(of).collect()
    }

    #[test]
    fn a_fault_stands_where_it_was_placed_once_for_each_place() {
        let placed = marked(
            r#""parts":[{"part":"body","dents":"minor","spots":[
                {"id":"a","fault":"small_dent","x":20,"y":30},
                {"id":"b","fault":"small_dent","count":2,"x":70,"y":40},
                {"id":"c","fault":"leak","x":50,"y":50}]}]"#,
        );
        let on_body = "on the body (3)".to_owned();
        assert_eq!(
            placed,
            [
                (text::LEAKS, "body".to_owned(), Some((50.0, 50.0))),
                (text::DENT, on_body.clone(), Some((20.0, 30.0))),
                ("", on_body, Some((70.0, 40.0))),
            ]
        );
    }

    #[test]
    fn what_is_not_placed_on_the_drawing_keeps_its_usual_place() {
        let usual = |label, note: &str| (label, note.to_owned(), None);
        assert_eq!(
            marked(r#""parts":[{"part":"body","dents":"moderate"}]"#),
            [usual(text::DEEP_DENT, "on the body")]
        );
        assert_eq!(
            marked(
                r#""parts":[{"part":"body","spots":[{"id":"a","fault":"small_dent"},
                    {"id":"b","fault":"grey_repair","photo":"piece/p1","x":5,"y":5}]}]"#
            ),
            [
                usual(text::GREY, "at the body"),
                usual(text::DENT, "on the body")
            ]
        );
        // A small dent that is placed is not the deep one that is ticked.
        assert_eq!(
            marked(
                r#""parts":[{"part":"body","dents":"moderate","spots":[{"id":"a","fault":"small_dent","x":1,"y":2}]}]"#
            ),
            [
                usual(text::DEEP_DENT, "on the body"),
                (text::DENT, "on the body".to_owned(), Some((1.0, 2.0)))
            ]
        );
    }

    #[test]
    fn what_is_placed_for_all_of_several_pieces_stands_once() {
        let placed = marked(
            r#""parts":[{"part":"body","spots":[{"id":"a","fault":"deep_dent","x":10,"y":20}]}],
            "pieces":{"relation":"pair","each":[{"no":2,"parts":[{"part":"body","split":"crease"}]}]}"#,
        );
        assert_eq!(
            placed,
            [(
                text::DEEP_DENT,
                "on the body".to_owned(),
                Some((10.0, 20.0))
            )]
        );
    }
}
