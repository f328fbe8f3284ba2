//! Whether enough is recorded to advise, and to speak of hazards.

use super::{Case, Circumstances, Part, Seen};

/// Whether enough of the piece was looked at to advise. Every place that gives advice asks here: the answer,
/// the sheets and the shelf.
///
/// It takes a look answered with yes or no, a reading of an instrument, or a part whose condition is recorded.
/// "Not sure", the form, the aim and the prices count for nothing: they say nothing of the state of the piece.
#[must_use]
pub fn is_enough_to_advise(case: &Case) -> bool {
    let is_looked_at = case.findings.iter().any(|a| a.seen != Seen::Unsure);
    let measures = &case.measures;
    let is_measured =
        measures.density.is_some() || measures.iacs.is_some() || measures.xrf.is_some();
    let is_described = case.parts.iter().any(|p| *p != Part::unknown(p.name));
    is_looked_at || is_measured || is_described
}

/// Whether anything is recorded that bears on a hazard. Until then nothing is said of hazards; from then on all that
/// may apply are named, also where it is too little to advise.
#[must_use]
pub fn bears_on_hazards(case: &Case) -> bool {
    is_enough_to_advise(case)
        || case.circumstances != Circumstances::default()
        || !case.tests.is_empty()
        || !case.done.is_empty()
        || !case.flaws.is_empty()
        || case.aim.food
        || case.aim.household_child_or_pregnant
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::FindingId;
    use crate::record::Draft;

    #[test]
    fn a_piece_that_nobody_looked_at_gets_no_advice() {
        let enough = |change: &dyn Fn(&mut Draft)| {
            let mut draft = Draft::default();
            change(&mut draft);
            is_enough_to_advise(&draft.read().0)
        };
        assert!(!enough(&|_| {}));
        assert!(!enough(&|d| {
            d.set("piece.form", "teapot");
            d.set("aim.goal", "sell");
            d.set("market.likely", "300");
            d.set_answer(FindingId::S03, "unsure", "");
            d.set_answer(FindingId::C01, "unsure", "");
        }));
        assert!(enough(&|d| d.set_answer(FindingId::S03, "seen", "")));
        assert!(enough(&|d| d.set_answer(FindingId::P01, "absent", "")));
        assert!(enough(&|d| d.set_part("body", "dents", "minor")));
    }

    #[test]
    fn each_question_about_a_hazard_is_enough_to_name_hazards() {
        assert!(!bears_on_hazards(&Case::default()));
        for (path, _) in crate::record::QUESTIONS {
            let mut draft = Draft::default();
            draft.set(path, "yes");
            assert!(bears_on_hazards(&draft.read().0), "{path}");
        }
        for text in [
            r#""aim":{"food":true}"#,
            r#""aim":{"household_child_or_pregnant":true}"#,
            r#""tests":[{"id":"t1","kind":"release","by":"laboratory","result":"failed"}]"#,
            r#""done":[{"id":"d1","what":"T09"}]"#,
        ] {
            let text = format!(r#"{{"format":"leavewell-case","version":2,{text}}}"#);
            let case = Draft::parse(&text).unwrap().read().0;
            assert!(bears_on_hazards(&case), "{text}");
        }
    }
}
