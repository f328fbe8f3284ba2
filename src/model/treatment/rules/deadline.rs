//! Time: work that keeps a piece away for longer than the time available.

use super::RuleCheck;
use crate::ledger::Ground;
use crate::ledger::{FigureId, Hand};
use crate::terms::Treatment;

/// How long each hand usually keeps a piece, in days. Work that the owner may do takes no time away.
const AWAY: [(Hand, FigureId); 4] = [
    (Hand::Laboratory, FigureId::WORK_AWAY_LABORATORY),
    (Hand::Silversmith, FigureId::WORK_AWAY_SILVERSMITH),
    (Hand::PlatingWorks, FigureId::WORK_AWAY_PLATER),
    (Hand::Conservator, FigureId::WORK_AWAY_CONSERVATOR),
];

/// The piece is needed by a date. If there are fewer days than this kind of work takes at its quickest, the
/// owner must first get a promised date; if there are fewer than it may take, that is a condition. The days
/// count from the date of the record; a date already past has no effect. A test for lead is never ruled out,
/// so for a test this is only a condition.
pub(super) fn wanted_back(a: &mut RuleCheck) {
    let (Some(today), Some(until)) = (a.s.case.asked_on, a.s.case.aim.until) else {
        return;
    };
    let days = f64::from(today.days_until(until));
    let text = a.treatment.text();
    if days < 0.0 || text.may_be_done_by(Hand::Owner) {
        return;
    }
    let quickest = AWAY
        .iter()
        .filter(|(hand, _)| text.may_be_done_by(*hand))
        .map(|(_, id)| a.s.ledger.figure(*id))
        .min_by(|x, y| x.value.total_cmp(&y.value));
    let Some(away) = quickest.filter(|away| days < away.high) else {
        return;
    };
    let reason = format!(
        "It is wanted by {until}, {days} days after {today}; this kind of work usually keeps a piece for {} to {} days.",
        away.low, away.high
    );
    let lifted_by = "Get a date promised in writing, or let the work wait.";
    if days < away.low && a.treatment != Treatment::TestLead {
        a.check_first(Ground::Need, &reason, lifted_by);
    } else {
        a.condition(Ground::Need, &reason, lifted_by);
    }
}
