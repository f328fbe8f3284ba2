//! Writes an answer of the road into the record.

use super::question::{BARE_METAL, Damage, LETTERS, RoadQuestion};
use super::wording::{LOOSE_SOMEWHERE, REPAIRED_SOMEWHERE};
use super::{ALL_OVER, NONE, RoadWalk, UNSURE};
use crate::ledger::FindingId;
use crate::record::{Draft, PartName, Seen};
use crate::terms::{Dents, Goal, Joint, Loss, SpotFault, Word};

/// Writes the answer with this id into the record. "Not sure" is recorded where the record has a place for it.
/// Damage that an earlier answer on this walk placed, and that this answer takes back or moves, leaves the record.
pub fn write(draft: &mut Draft, walk: &RoadWalk, question: RoadQuestion, answer: &'static str) {
    if let Some((damage, at)) = walk.taken_back(question, answer) {
        take_back(draft, damage, at);
    }
    match question {
        RoadQuestion::Form if answer != UNSURE => draft.set("piece.form", answer),
        RoadQuestion::Letters => one_of(draft, &LETTERS, answer),
        RoadQuestion::Metal => one_of(draft, &BARE_METAL, answer),
        RoadQuestion::Magnet => found(draft, FindingId::P01, answer),
        RoadQuestion::Look(id) => found(draft, id, answer),
        RoadQuestion::BareWhere if ![ALL_OVER, UNSURE].contains(&answer) => {
            for id in BARE_METAL {
                if draft.answer(id) == (Seen::Yes.id().to_owned(), String::new()) {
                    draft.set_answer(id, Seen::Yes.id(), answer);
                }
            }
        }
        RoadQuestion::BareAmount if answer != UNSURE => {
            draft.set_part(bare_part(draft), "bleed", answer);
        }
        RoadQuestion::Trouble if answer == NONE => {
            let body = PartName::Body.id();
            draft.set_part(body, "dents", Dents::None.id());
            draft.set_part(body, "joint", Joint::Sound.id());
            draft.set_part(body, "loss", Loss::None.id());
        }
        RoadQuestion::TroubleWhere(trouble) => trouble_on(draft, trouble, answer),
        RoadQuestion::Use => {
            let goal = match answer {
                "use" => Goal::KeepUse,
                "show" => Goal::KeepShow,
                "sell" => Goal::Sell,
                _ => return,
            };
            draft.set("aim.goal", goal.id());
            draft.set_flag("aim.food", (goal == Goal::KeepUse).then_some(true));
        }
        RoadQuestion::Offer => {
            let asked = if [NONE, UNSURE].contains(&answer) {
                ""
            } else {
                answer
            };
            draft.set("aim.asked", asked);
        }
        // The price field of `Sum` is written separately; the other answers are "not sure" or lead to a
        // further question.
        _ => {}
    }
}

/// The part on which bare metal was seen; the body if no part was named.
fn bare_part(draft: &Draft) -> &'static str {
    let part = BARE_METAL.iter().find_map(|id| {
        let (answer, part) = draft.answer(*id);
        (answer == Seen::Yes.id()).then_some(part)
    });
    let part = part.and_then(|part| PartName::from_id(&part));
    part.unwrap_or(PartName::Body).id()
}

fn found(draft: &mut Draft, id: FindingId, answer: &str) {
    // A part named on a long screen is kept with what was seen there.
    let (before, part) = draft.answer(id);
    let part = if before == answer {
        part
    } else {
        String::new()
    };
    draft.set_answer(id, answer, &part);
}

/// One of several findings was seen, or none of them.
fn one_of(draft: &mut Draft, ids: &[FindingId], answer: &str) {
    for (place, id) in ids.iter().copied().enumerate() {
        let before = draft.answer(id).0;
        if id.text() == answer {
            found(draft, id, Seen::Yes.id());
        } else if answer == NONE {
            found(draft, id, Seen::No.id());
        } else if answer == UNSURE && place == 0 {
            found(draft, id, UNSURE);
        } else if before == Seen::Yes.id() || before == UNSURE {
            found(draft, id, "");
        }
    }
}

/// How large a loss a missing part is: a knob or a piece of a border is small; a cover, spout or handle is
/// large.
fn loss_of(part: &str) -> Loss {
    match PartName::from_id(part) {
        Some(
            PartName::Finial
            | PartName::Border
            | PartName::Edge
            | PartName::Shield
            | PartName::Fitting,
        ) => Loss::Small,
        _ => Loss::Large,
    }
}

/// The field of a part that holds damage, and its word.
fn recorded_as(damage: Damage, part: &str) -> (&'static str, &'static str) {
    match damage {
        Damage::Missing => ("loss", loss_of(part).id()),
        Damage::Loose => ("joint", Joint::Open.id()),
        Damage::Leaking => ("joint", Joint::Leaking.id()),
        Damage::Dented => ("dents", Dents::Minor.id()),
        Damage::Repair => ("joint", Joint::GreyRepair.id()),
    }
}

/// Damage to a joint as a fault shown on its part, for a part whose joints hold other damage already: the path of its
/// entry, and its fields. `None` for damage of other kinds.
fn as_spot(damage: Damage, part: &str) -> Option<(String, String)> {
    let fault = match damage {
        Damage::Loose => SpotFault::OpenJoint,
        Damage::Leaking => SpotFault::Leak,
        Damage::Repair => SpotFault::GreyRepair,
        Damage::Missing | Damage::Dented => return None,
    };
    let path = ["parts[part=", part, "].spots[id=road-", damage.id(), "]"].concat();
    Some((path, ["fault=", fault.id()].concat()))
}

/// The part that carries damage of a kind whose part is not known, with a note that says so. A loose part counts as
/// loose only on a part that is attached, so it is recorded as another fitting. `None` for damage that needs no note.
fn somewhere(damage: Damage) -> Option<(PartName, &'static str)> {
    match damage {
        Damage::Loose => Some((PartName::Fitting, LOOSE_SOMEWHERE)),
        Damage::Repair => Some((PartName::Body, REPAIRED_SOMEWHERE)),
        Damage::Missing | Damage::Leaking | Damage::Dented => None,
    }
}

/// Clears what the road wrote for damage at this answer. What a person has changed since on a long screen stays.
fn take_back(draft: &mut Draft, damage: Damage, at: &str) {
    if (at, damage) == (UNSURE, Damage::Missing) {
        draft.set_flag("flaws.part_missing_minor", None);
        return;
    }
    let part = match at {
        UNSURE => somewhere(damage)
            .map_or(PartName::Body, |(part, _)| part)
            .id(),
        part => part,
    };
    let (field, word) = recorded_as(damage, part);
    if draft.part_text(part, field) == word {
        draft.set_part(part, field, "");
    }
    if let Some((path, _)) = as_spot(damage, part) {
        draft.set(&path, "");
    }
}

fn trouble_on(draft: &mut Draft, trouble: Damage, answer: &str) {
    if let (UNSURE, Some((part, note))) = (answer, somewhere(trouble))
        && let Some((path, fault)) = as_spot(trouble, part.id())
    {
        draft.set(&path, &[&fault, "\nnote=", note].concat());
        return;
    }
    let (field, word) = recorded_as(trouble, answer);
    let on = match (answer, trouble) {
        (UNSURE, Damage::Leaking) => PartName::Body.id(),
        (part, _) => part,
    };
    // The field holds one state of the joints, and neither a leak nor an old repair may hide the other.
    if let (Some((path, fault)), true) = (as_spot(trouble, on), on != UNSURE) {
        let now = draft.part_text(on, field);
        if !["", word, Joint::Sound.id(), Joint::NeatRepair.id()].contains(&now.as_str()) {
            draft.set(&path, &fault);
            return;
        }
    }
    match (answer, trouble) {
        (UNSURE, Damage::Missing) => draft.set_flag("flaws.part_missing_minor", Some(true)),
        (UNSURE, Damage::Leaking | Damage::Dented) => {
            draft.set_part(PartName::Body.id(), field, word);
        }
        (part, _) => draft.set_part(part, field, word),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{BleedWord, Case};

    fn after(answers: &[(RoadQuestion, &'static str)]) -> (Draft, Case) {
        let (mut draft, mut walk) = (Draft::default(), RoadWalk::default());
        for (question, answer) in answers {
            write(&mut draft, &walk, *question, answer);
            walk = walk.with(*question, answer);
        }
        let (case, problems) = draft.read();
        assert!(problems.is_empty(), "{problems:?}");
        (draft, case)
    }

    #[test]
    fn a_lost_cover_is_a_large_loss_and_a_lost_knob_a_small_one() {
        for (part, size) in [("finial", "small"), ("cover", "large"), ("spout", "large")] {
            let (draft, _) = after(&[(RoadQuestion::TroubleWhere(Damage::Missing), part)]);
            assert_eq!(draft.part_text(part, "loss"), size, "{part}");
        }
    }

    #[test]
    fn answers_are_written_to_the_fields_of_the_long_screens() {
        let (draft, case) = after(&[
            (RoadQuestion::Form, "teapot"),
            (RoadQuestion::Metal, "S03"),
            (RoadQuestion::BareWhere, "spout"),
            (RoadQuestion::BareAmount, "slight"),
            (RoadQuestion::TroubleWhere(Damage::Missing), "finial"),
            (RoadQuestion::Use, "use"),
            (RoadQuestion::Offer, "T14a"),
        ]);
        assert_eq!(
            draft.answer(FindingId::S03),
            ("seen".to_owned(), "spout".to_owned())
        );
        assert_eq!(draft.part_text("spout", "bleed"), BleedWord::Slight.id());
        assert_eq!(draft.part_text("finial", "loss"), "small");
        assert_eq!(draft.text("aim.asked"), "T14a");
        assert!(case.aim.food && case.aim.goal == Some(Goal::KeepUse));
    }

    #[test]
    fn a_second_answer_replaces_the_first() {
        let (draft, case) = after(&[
            (RoadQuestion::Letters, "M01"),
            (RoadQuestion::Letters, "M04"),
            (RoadQuestion::Use, "use"),
            (RoadQuestion::Use, "sell"),
            (RoadQuestion::Offer, "T08"),
            (RoadQuestion::Offer, NONE),
        ]);
        assert_eq!(draft.answer(FindingId::M01).0, "");
        assert!(case.has_seen(FindingId::M04) && !case.aim.food);
        assert_eq!(case.aim.goal, Some(Goal::Sell));
        assert_eq!(draft.text("aim.asked"), "");
    }

    #[test]
    fn damage_that_is_taken_back_leaves_the_record_and_damage_that_is_moved_stands_once() {
        let placed = (RoadQuestion::TroubleWhere(Damage::Dented), "spout");
        let dented = (RoadQuestion::Trouble, Damage::Dented.id());
        for second in [NONE, UNSURE, Damage::Leaking.id()] {
            let (draft, _) = after(&[dented, placed, (RoadQuestion::Trouble, second)]);
            assert_eq!(draft.part_text("spout", "dents"), "", "{second}");
        }
        let moved = (RoadQuestion::TroubleWhere(Damage::Dented), "cover");
        let (draft, _) = after(&[dented, placed, moved]);
        assert_eq!(draft.part_text("spout", "dents"), "");
        assert_eq!(draft.part_text("cover", "dents"), "minor");
        // The same answer again changes nothing.
        let (draft, _) = after(&[dented, placed, dented]);
        assert_eq!(draft.part_text("spout", "dents"), "minor");
        let missing = (RoadQuestion::Trouble, Damage::Missing.id());
        let somewhere = (RoadQuestion::TroubleWhere(Damage::Missing), UNSURE);
        let (draft, _) = after(&[missing, somewhere]);
        assert!(draft.to_json().contains("part_missing_minor"));
        let (draft, _) = after(&[missing, somewhere, (RoadQuestion::Trouble, UNSURE)]);
        assert!(!draft.to_json().contains("part_missing_minor"));
    }

    #[test]
    fn a_leak_and_an_old_repair_on_one_part_are_both_recorded() {
        let first = (RoadQuestion::Trouble, Damage::Leaking.id());
        let leak = (RoadQuestion::TroubleWhere(Damage::Leaking), UNSURE);
        let more = (RoadQuestion::More, Damage::Repair.id());
        let repair = (RoadQuestion::TroubleWhere(Damage::Repair), "body");
        let (_, case) = after(&[first, leak, more, repair]);
        let has = |case: &Case, joint| {
            case.parts_named(PartName::Body)
                .any(|part| part.has_joint(joint))
        };
        assert!(has(&case, Joint::Leaking) && has(&case, Joint::GreyRepair));
        let (draft, case) = after(&[first, leak, more, repair, (RoadQuestion::More, NONE)]);
        assert!(has(&case, Joint::Leaking) && !has(&case, Joint::GreyRepair));
        assert!(!draft.to_json().contains("road-"), "{}", draft.to_json());
    }

    #[test]
    fn damage_whose_part_is_not_known_is_recorded_and_leaves_the_record_again() {
        for damage in Damage::ALL {
            let named = (RoadQuestion::Trouble, damage.id());
            let unsure = (RoadQuestion::TroubleWhere(damage), UNSURE);
            let (_, case) = after(&[named, unsure]);
            assert!(
                !case.parts.is_empty() || !case.flaws.is_empty(),
                "{damage:?}"
            );
            if let Some((part, note)) = somewhere(damage) {
                let on = case.part(part).unwrap();
                assert_eq!(
                    on.joint.map(Joint::id),
                    Some(recorded_as(damage, part.id()).1)
                );
                assert_eq!(on.spots[0].note, note);
            }
            let (_, case) = after(&[named, unsure, (RoadQuestion::Trouble, UNSURE)]);
            assert!(case.parts.is_empty() && case.flaws.is_empty(), "{damage:?}");
        }
    }

    #[test]
    fn what_was_changed_on_a_long_screen_is_not_taken_back() {
        let (mut draft, _) = after(&[
            (RoadQuestion::Trouble, Damage::Dented.id()),
            (RoadQuestion::TroubleWhere(Damage::Dented), "spout"),
        ]);
        draft.set_part("spout", "dents", "moderate");
        let walk = RoadWalk::default()
            .with(RoadQuestion::Trouble, Damage::Dented.id())
            .with(RoadQuestion::TroubleWhere(Damage::Dented), "spout");
        write(&mut draft, &walk, RoadQuestion::Trouble, NONE);
        assert_eq!(draft.part_text("spout", "dents"), "moderate");
    }

    #[test]
    fn not_sure_asserts_nothing() {
        for question in [
            RoadQuestion::Form,
            RoadQuestion::Trouble,
            RoadQuestion::Use,
            RoadQuestion::Offer,
            RoadQuestion::Sum,
        ] {
            let (draft, _) = after(&[(question, UNSURE)]);
            assert_eq!(draft, Draft::default(), "{question:?}");
        }
        let (_, case) = after(&[
            (RoadQuestion::Letters, UNSURE),
            (RoadQuestion::Metal, UNSURE),
        ]);
        assert!(
            case.findings
                .iter()
                .all(|answer| answer.seen == Seen::Unsure)
        );
    }
}
