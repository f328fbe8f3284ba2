//! Which question comes next: the first of the fixed questions that is still open, then the look that best
//! distinguishes what is still possible.

use super::question::{BARE_METAL, Damage, LETTERS, OFFERS, RoadQuestion};
use super::{ALL_OVER, NONE, UNSURE};
use crate::identity::{
    Carried, Evidence, InformationGain, Posterior, Surety, information_gain, interval_with,
    readings,
};
use crate::ledger::{FigureId, FindingId, Ledger};
use crate::record::{Answer, Asked, Case, Form, Part, ledger_of};
use crate::terms::{Family, Seen};
use std::borrow::Cow;

/// The most questions in one walk.
pub const MOST_QUESTIONS: usize = 12;
/// After this many questions there is a first answer.
pub const FIRST_ANSWER_AFTER: usize = 5;

/// The questions in the order of the road. A walk keeps room for each of them except the magnet, which adds least
/// where the colour of the metal below was seen.
const ORDER: [RoadQuestion; 11] = [
    RoadQuestion::Form,
    RoadQuestion::Letters,
    RoadQuestion::Metal,
    RoadQuestion::BareWhere,
    RoadQuestion::BareAmount,
    RoadQuestion::Magnet,
    RoadQuestion::Trouble,
    RoadQuestion::More,
    RoadQuestion::Use,
    RoadQuestion::Offer,
    RoadQuestion::Sum,
];

/// The questions asked so far, each with its answer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RoadWalk(Vec<(RoadQuestion, &'static str)>);

impl RoadWalk {
    /// The walk with one more answer; a question that was put before keeps its place. Damage that the answer takes
    /// back is no longer placed.
    #[must_use]
    pub fn with(&self, question: RoadQuestion, answer: &'static str) -> Self {
        let mut steps = self.0.clone();
        if let Some((damage, _)) = self.taken_back(question, answer) {
            let place = RoadQuestion::TroubleWhere(damage);
            steps.retain(|(put, _)| *put != place || place == question);
        }
        match steps.iter_mut().find(|(put, _)| *put == question) {
            Some(step) => step.1 = answer,
            None => steps.push((question, answer)),
        }
        Self(steps)
    }

    /// How many questions were asked.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// The questions in the order they were put, each with its answer.
    #[must_use]
    pub fn steps(&self) -> &[(RoadQuestion, &'static str)] {
        &self.0
    }

    /// Whether none was asked yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The answer that was given to a question on this walk.
    #[must_use]
    pub fn answer(&self, question: RoadQuestion) -> Option<&'static str> {
        let step = self.0.iter().find(|(put, _)| *put == question);
        step.map(|(_, answer)| *answer)
    }

    /// The damage that this answer takes back or moves, with the answer that placed it.
    pub(super) fn taken_back(
        &self,
        question: RoadQuestion,
        answer: &str,
    ) -> Option<(Damage, &'static str)> {
        let before = self.answer(question).filter(|before| *before != answer)?;
        let damage = match question {
            RoadQuestion::Trouble | RoadQuestion::More => Damage::parse(before)?,
            RoadQuestion::TroubleWhere(damage) => damage,
            _ => return None,
        };
        Some((damage, self.answer(RoadQuestion::TroubleWhere(damage))?))
    }

    /// The trouble that was named and not yet placed.
    fn trouble_to_place(&self) -> Option<Damage> {
        [RoadQuestion::Trouble, RoadQuestion::More]
            .into_iter()
            .filter_map(|question| Damage::parse(self.answer(question)?))
            .find(|trouble| self.answer(RoadQuestion::TroubleWhere(*trouble)).is_none())
    }
}

/// The question that comes next; `None` when the answer is complete.
#[must_use]
pub fn next(walk: &RoadWalk, case: &Case) -> Option<RoadQuestion> {
    // Damage named by an answer that was changed at the end of a walk is still placed, or it would be lost.
    if let Some(trouble) = walk.trouble_to_place() {
        return Some(RoadQuestion::TroubleWhere(trouble));
    }
    if walk.len() >= MOST_QUESTIONS {
        return None;
    }
    let known = SoFar::of(walk, case);
    let kept = known.kept_room();
    let fits = |question: &RoadQuestion| {
        *question != RoadQuestion::Magnet || walk.len() + kept < MOST_QUESTIONS
    };
    let asked = ORDER
        .into_iter()
        .filter(|question| known.is_open(*question))
        .find(fits);
    asked.or_else(|| known.telling_look())
}

/// Roughly how many questions are still to come.
#[must_use]
pub fn left(walk: &RoadWalk, case: &Case) -> usize {
    if next(walk, case).is_none() {
        return 0;
    }
    let known = SoFar::of(walk, case);
    let open = ORDER.iter().filter(|question| known.is_open(**question));
    let to_place = usize::from(walk.trouble_to_place().is_some());
    let room = MOST_QUESTIONS.saturating_sub(walk.len());
    (open.count() + to_place).clamp(1, room.max(1))
}

/// The answer to a question: from this walk, or else from the record.
#[must_use]
pub fn answer_in(question: RoadQuestion, walk: &RoadWalk, case: &Case) -> Option<&'static str> {
    walk.answer(question).or_else(|| {
        let seen = |id: FindingId| case.answer(id).map(Seen::id);
        match question {
            RoadQuestion::Form => case.piece.form.map(Form::id),
            RoadQuestion::Letters => among(case, &LETTERS),
            RoadQuestion::Metal => among(case, &BARE_METAL),
            RoadQuestion::Magnet => seen(FindingId::P01),
            RoadQuestion::Look(id) => seen(id),
            RoadQuestion::Offer => match &case.aim.asked {
                Some(Asked::Treatments(all)) => match all[..] {
                    [one] => Some(one.id()),
                    _ => None,
                },
                _ => None,
            },
            _ => None,
        }
    })
}

fn among(case: &Case, ids: &[FindingId]) -> Option<&'static str> {
    let seen = ids.iter().find(|id| case.has_seen(**id));
    seen.map(|id| id.text()).or_else(|| {
        let answers: Vec<Seen> = ids.iter().filter_map(|id| case.answer(*id)).collect();
        match answers.first()? {
            Seen::Unsure => Some(UNSURE),
            _ => Some(NONE),
        }
    })
}

/// The walk and the record, with what the piece appears to be so far.
struct SoFar<'a> {
    walk: &'a RoadWalk,
    case: &'a Case,
    ledger: Cow<'static, Ledger>,
    now: (Family, Surety),
    gains: Vec<InformationGain>,
}

impl<'a> SoFar<'a> {
    fn of(walk: &'a RoadWalk, case: &'a Case) -> Self {
        let ledger = ledger_of(case);
        let readings = readings(case, &ledger);
        let evidence = Evidence::of(case, &readings);
        let posterior = interval_with(&evidence, &ledger).base;
        let (family, p) = posterior.top_family();
        let carried = Carried::of(&evidence, family);
        Self {
            walk,
            case,
            now: (family, Surety::of(p, carried, &ledger)),
            gains: information_gain(&evidence, &posterior, &ledger),
            ledger,
        }
    }

    /// The room kept for questions that every walk reaches, including those that their answers may add.
    fn kept_room(&self) -> usize {
        let open = ORDER
            .into_iter()
            .filter(|question| *question != RoadQuestion::Magnet && self.is_open(*question));
        open.map(|question| match question {
            // Damage twice, each with its part.
            RoadQuestion::Trouble => 4,
            RoadQuestion::More | RoadQuestion::Offer | RoadQuestion::BareWhere => 2,
            _ => 1,
        })
        .sum()
    }

    /// Whether a question is still to be asked: it applies, and neither the walk nor the record answers it.
    fn is_open(&self, question: RoadQuestion) -> bool {
        if self.walk.answer(question).is_some() {
            return false;
        }
        let case = self.case;
        let looked = |ids: &[FindingId]| ids.iter().any(|id| case.answer(*id).is_some());
        match question {
            RoadQuestion::Form => case.piece.form.is_none(),
            RoadQuestion::Letters => !looked(&LETTERS),
            RoadQuestion::Metal => !looked(&BARE_METAL),
            RoadQuestion::Magnet => {
                case.answer(FindingId::P01).is_none() && self.tells(FindingId::P01)
            }
            RoadQuestion::BareWhere => {
                let seen = case.findings.iter().find(|answer| shows_bare(answer));
                seen.is_some_and(|answer| answer.part.is_none()) && !says_how_bare(case)
            }
            RoadQuestion::BareAmount => {
                let all_over = self.walk.answer(RoadQuestion::BareWhere) == Some(ALL_OVER);
                let placed = case
                    .findings
                    .iter()
                    .any(|a| shows_bare(a) && a.part.is_some());
                (all_over || placed) && !says_how_bare(case)
            }
            RoadQuestion::Trouble => !case.parts.iter().any(says_what_is_wrong),
            RoadQuestion::More => {
                let trouble = self.walk.answer(RoadQuestion::Trouble);
                trouble.is_some_and(|id| ![NONE, UNSURE].contains(&id))
            }
            RoadQuestion::Use => case.aim.goal.is_none(),
            RoadQuestion::Offer => case.aim.asked.is_none() && case.quotes.is_empty(),
            RoadQuestion::Sum => match &case.aim.asked {
                Some(Asked::Treatments(all)) => {
                    matches!(all[..], [one] if OFFERS.contains(&one) && case.quote(one).is_none())
                }
                _ => false,
            },
            RoadQuestion::TroubleWhere(_) | RoadQuestion::Look(_) => false,
        }
    }

    /// The further look that is expected to be most informative.
    fn telling_look(&self) -> Option<RoadQuestion> {
        self.gains
            .iter()
            .filter_map(|gain| {
                let looks = RoadQuestion::LOOKS.into_iter();
                looks.into_iter().find(|id| *id == gain.finding.id)
            })
            .map(RoadQuestion::Look)
            .find(|look| {
                let RoadQuestion::Look(id) = *look else {
                    return false;
                };
                self.walk.answer(*look).is_none() && self.tells(id)
            })
    }

    /// Whether an answer to this look would change the family named, or how firmly it is named, and is not all but
    /// foreseen.
    fn tells(&self, id: FindingId) -> bool {
        let Some(gain) = self.gains.iter().find(|gain| gain.finding.id == id) else {
            return false;
        };
        let differs = |posterior: &Posterior| {
            let (family, p) = posterior.top_family();
            (family, Surety::of(p, Carried::ByMore, &self.ledger)) != self.now
        };
        gain.bits >= self.ledger.value(FigureId::LOOK_LEAST_BITS)
            && self.now.1 < Surety::AlmostCertain
            && [gain.if_seen, gain.if_absent].iter().any(differs)
    }
}

/// Whether it is recorded on some part how much bare metal shows, or the silver there was measured. Before that nothing
/// is said of how much silver is left.
#[must_use]
pub fn says_how_bare(case: &Case) -> bool {
    let is_known = |part: &Part| part.bleed.is_some() || !part.readings.is_empty();
    case.parts.iter().any(is_known)
}

fn shows_bare(answer: &Answer) -> bool {
    answer.seen == Seen::Yes && BARE_METAL.contains(&answer.id)
}

/// Whether a part's record states damage, or states that there is none.
fn says_what_is_wrong(part: &Part) -> bool {
    part.dents.is_some() || part.joint.is_some() || part.loss.is_some() || part.split.is_some()
}

#[cfg(test)]
mod tests {
    use super::super::write;
    use super::*;
    use crate::record::Draft;

    /// Walks to the end; `choose` picks each answer, given the number of answers.
    fn walk_through(
        mut choose: impl FnMut(RoadQuestion, &[&'static str]) -> usize,
    ) -> (RoadWalk, Case) {
        let (mut walk, mut draft) = (RoadWalk::default(), Draft::default());
        loop {
            let case = draft.read().0;
            let Some(question) = next(&walk, &case) else {
                assert_eq!(left(&walk, &case), 0);
                return (walk, case);
            };
            assert!(walk.answer(question).is_none(), "{question:?} is put twice");
            assert!(left(&walk, &case) >= 1);
            let ids = question.answers(case.piece.form);
            let answer = ids[choose(question, &ids) % ids.len()];
            write(&mut draft, &walk, question, answer);
            walk = walk.with(question, answer);
        }
    }

    #[test]
    fn every_walk_is_as_short_as_promised_and_reaches_the_aim_and_the_offer() {
        let mut seed = 1_u64;
        for _ in 0..60 {
            let (walk, _) = walk_through(|_, _| {
                seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                usize::try_from(seed >> 40).unwrap()
            });
            assert!(walk.len() <= MOST_QUESTIONS, "{walk:?}");
            for question in [
                RoadQuestion::Use,
                RoadQuestion::Offer,
                RoadQuestion::Trouble,
            ] {
                assert!(walk.answer(question).is_some(), "{question:?}: {walk:?}");
            }
            let offered = walk.answer(RoadQuestion::Offer).unwrap();
            let asks_the_sum = ![NONE, UNSURE].contains(&offered);
            assert_eq!(walk.answer(RoadQuestion::Sum).is_some(), asks_the_sum);
        }
    }

    /// Every combination of two answers to each question that makes a walk longer or shorter.
    #[test]
    fn whatever_is_answered_the_walk_has_room_for_bare_metal_damage_twice_the_aim_and_the_offer() {
        let choices = [
            (RoadQuestion::Letters, ["M01", NONE]),
            (RoadQuestion::Metal, ["S03", NONE]),
            (RoadQuestion::Magnet, ["seen", "absent"]),
            (RoadQuestion::Trouble, ["loose", NONE]),
            (RoadQuestion::More, ["repair", NONE]),
            (RoadQuestion::Offer, ["T14a", NONE]),
        ];
        for combination in 0..1_u32 << choices.len() {
            let wanted = |question: RoadQuestion| {
                let at = choices.iter().position(|(known, _)| *known == question)?;
                Some(choices[at].1[(combination >> at & 1) as usize])
            };
            let (walk, case) = walk_through(|question, ids| {
                let wanted = wanted(question).unwrap_or(ids[0]);
                ids.iter().position(|id| *id == wanted).unwrap()
            });
            assert!(walk.len() <= MOST_QUESTIONS, "{walk:?}");
            let damaged = walk.answer(RoadQuestion::Trouble) == Some("loose");
            assert_eq!(
                walk.answer(RoadQuestion::More).is_some(),
                damaged,
                "{walk:?}"
            );
            let twice = walk.answer(RoadQuestion::More) == Some("repair");
            let placed = |damage| walk.answer(RoadQuestion::TroubleWhere(damage)).is_some();
            assert_eq!(
                (placed(Damage::Loose), placed(Damage::Repair)),
                (damaged, twice)
            );
            for question in [RoadQuestion::Use, RoadQuestion::Offer] {
                assert!(walk.answer(question).is_some(), "{question:?}: {walk:?}");
            }
            let offered = walk.answer(RoadQuestion::Offer) == Some("T14a");
            assert_eq!(
                walk.answer(RoadQuestion::Sum).is_some(),
                offered,
                "{walk:?}"
            );
            let bare = case.findings.iter().any(shows_bare);
            let amount = walk.answer(RoadQuestion::BareAmount);
            assert_eq!(amount.is_some(), bare, "{walk:?}");
        }
    }

    #[test]
    fn damage_named_by_an_answer_changed_at_the_end_is_still_placed() {
        let (walk, case) = walk_through(|question, ids| match question {
            RoadQuestion::Metal | RoadQuestion::Offer => 0,
            RoadQuestion::Trouble => ids.len() - 2,
            _ => ids.len() - 1,
        });
        assert_eq!(next(&walk, &case), None);
        let mut full = walk.clone();
        for id in RoadQuestion::LOOKS {
            full = full.with(RoadQuestion::Look(id), UNSURE);
        }
        assert!(full.len() >= MOST_QUESTIONS);
        for walk in [walk, full] {
            let changed = walk.with(RoadQuestion::Trouble, Damage::Leaking.id());
            let place = RoadQuestion::TroubleWhere(Damage::Leaking);
            assert_eq!(next(&changed, &case), Some(place));
            assert_eq!(left(&changed, &case).min(1), 1);
        }
    }

    #[test]
    fn the_road_opens_with_what_anyone_can_see() {
        let (walk, _) = walk_through(|_, ids| ids.len() - 1);
        let first: Vec<RoadQuestion> = walk.0.iter().take(5).map(|step| step.0).collect();
        let seen_by_anyone = [
            RoadQuestion::Form,
            RoadQuestion::Letters,
            RoadQuestion::Metal,
            RoadQuestion::Magnet,
            RoadQuestion::Trouble,
        ];
        assert_eq!(first, seen_by_anyone);
    }

    #[test]
    fn letters_that_name_the_metal_spare_uninformative_looks() {
        let answer = |question, ids: &[&'static str]| {
            let wanted = match question {
                RoadQuestion::Letters => "M01",
                RoadQuestion::Metal | RoadQuestion::Trouble | RoadQuestion::Offer => NONE,
                _ => ids[0],
            };
            ids.iter().position(|id| *id == wanted).unwrap()
        };
        let (walk, case) = walk_through(answer);
        assert!(case.has_seen(FindingId::M01));
        assert!(walk.answer(RoadQuestion::Magnet).is_none(), "{walk:?}");
        assert!(walk.len() < 9, "{walk:?}");
    }

    #[test]
    fn what_the_record_answers_is_not_asked() {
        let mut draft = Draft::default();
        draft.set("piece.form", "tray");
        draft.set("aim.goal", "sell");
        draft.set_answer(FindingId::S03, "seen", "border");
        draft.set_part("border", "bleed", "some");
        draft.set_part("handle", "dents", "minor");
        draft.set_quote("T14a", "likely", "300");
        let case = draft.read().0;
        let mut walk = RoadWalk::default();
        let mut asked = Vec::new();
        while let Some(question) = next(&walk, &case) {
            asked.push(question);
            walk = walk.with(question, UNSURE);
        }
        for known in [
            RoadQuestion::Form,
            RoadQuestion::Use,
            RoadQuestion::Metal,
            RoadQuestion::BareAmount,
            RoadQuestion::Trouble,
            RoadQuestion::Offer,
        ] {
            assert!(!asked.contains(&known), "{known:?}");
        }
        assert_eq!(asked[0], RoadQuestion::Letters);
        assert_eq!(answer_in(RoadQuestion::Form, &walk, &case), Some("tray"));
        assert_eq!(answer_in(RoadQuestion::Metal, &walk, &case), Some("S03"));
    }

    #[test]
    fn a_named_trouble_is_placed_at_once() {
        let mut draft = Draft::default();
        draft.set("piece.form", "teapot");
        let walk = RoadWalk::default().with(RoadQuestion::Trouble, "dented");
        assert_eq!(
            next(&walk, &draft.read().0),
            Some(RoadQuestion::TroubleWhere(Damage::Dented))
        );
    }
}
