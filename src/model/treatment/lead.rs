//! What is known about lead: whether it is in the metal, and whether it is released into food.
//!
//! These are two questions with two answers. A release test that passes says nothing about what is in the
//! metal, and an analysis of one part says nothing about another. Invariants: lead recorded anywhere counts
//! as present for every work; only an analysis of each part that a work touches rules lead out there; only a
//! test of the inside, where food goes, answers for food.

use crate::record::{Case, Fill, Joint, Lead, Mount, Part, Test};
use crate::terms::{MaterialUsed, PartName, TestKind, Tester, Treatment};

use super::touched::touched;

/// Whether there is lead in the metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeadStatus {
    /// Unknown.
    Unknown,
    /// Lead is present, or assumed to be.
    Present,
    /// Every part in question was analysed, and none contains lead.
    Absent,
}

/// Whether lead is released into food or drink.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Release {
    /// The inside has not been tested, or there is doubt about a part that liquid touches.
    Untested,
    /// A release test failed.
    Failed,
    /// A release test of the inside passed.
    Passed,
    /// A laboratory's release test of the inside passed.
    PassedByLaboratory,
}

impl Release {
    /// Whether a release test of the inside passed.
    #[must_use]
    pub fn passed(self) -> bool {
        matches!(self, Self::Passed | Self::PassedByLaboratory)
    }
}

/// What is recorded about lead in the parts that `treatment` touches.
#[must_use]
pub fn lead_for(treatment: Treatment, case: &Case) -> LeadStatus {
    let parts = touched(treatment, case);
    if recorded(case) {
        LeadStatus::Present
    } else if !parts.is_empty() && parts.iter().all(|p| cleared(p, case)) {
        LeadStatus::Absent
    } else if case.aim.assume_lead {
        LeadStatus::Present
    } else {
        LeadStatus::Unknown
    }
}

/// What is recorded about lead in the piece as a whole.
#[must_use]
pub fn lead_anywhere(case: &Case) -> LeadStatus {
    lead_for(Treatment::Replate, case)
}

/// Whether lead is recorded in any part: found by an analysis, a lead filling, a mount that shows its
/// filling, or solder with lead in the record of work done.
pub(super) fn recorded(case: &Case) -> bool {
    case.parts
        .iter()
        .any(|p| p.lead == Some(Lead::Present) || lead_filled(p))
        || (case.tests.iter()).any(|t| t.kind == TestKind::Content && t.passed == Some(false))
        || case.done.iter().any(crate::record::Done::adds_lead)
}

/// Whether a part is filled with lead, as recorded or as its worn mount shows.
pub(super) fn lead_filled(part: &Part) -> bool {
    part.fill == Some(Fill::Lead)
        || matches!(part.mount, Some(Mount::GreyWear | Mount::FillShowing))
}

/// Whether an analysis of this part found no lead, and nothing recorded on it contradicts that. A home test
/// kit may miss lead and clears nothing.
fn cleared(part: &Part, case: &Case) -> bool {
    let analysed = part.lead == Some(Lead::NotFound)
        || case.tested_each(&part.on, &|t| {
            t.kind == TestKind::Content
                && t.part == Some(part.name)
                && t.passed == Some(true)
                && t.by != Some(Tester::Home)
        });
    let soldered_since = case.done.iter().any(|d| {
        d.material == Some(MaterialUsed::SolderUnknown)
            && (d.parts.is_empty() || d.parts.contains(&part.name))
    });
    analysed && !part.has_joint(Joint::GreyRepair) && !soldered_since
}

/// Whether lead is released into food, as recorded.
///
/// It passes if the inside passed (the body, only while no inside is recorded) and every part that liquid
/// touches and that contains lead, is grey, open or leaking has its own pass. Other parts clear nothing.
#[must_use]
pub fn release(case: &Case) -> Release {
    let wet = case.parts.iter().filter(|p| p.name.meets_liquid());
    let failed_somewhere = case.tests.iter().any(|t| {
        t.kind == TestKind::Release
            && t.passed == Some(false)
            && t.part.is_none_or(PartName::meets_liquid)
            && !case.passed_later(t)
    });
    if failed_somewhere {
        return Release::Failed;
    }
    let inside = if case.part(PartName::Interior).is_some()
        || case
            .tests
            .iter()
            .any(|t| t.part == Some(PartName::Interior))
    {
        PartName::Interior
    } else {
        PartName::Body
    };
    let answer = release_of(inside, case);
    let doubtful = wet
        .filter(|p| p.name != inside)
        .any(|p| in_doubt(p) && !release_of(p.name, case).passed());
    if doubtful {
        return Release::Untested;
    }
    answer
}

fn in_doubt(part: &Part) -> bool {
    part.lead == Some(Lead::Present)
        || lead_filled(part)
        || part.has_any_joint(&[Joint::GreyRepair, Joint::Open, Joint::Leaking])
}

/// The release test of one part alone, on every piece that has it.
#[must_use]
pub fn release_of(part: PartName, case: &Case) -> Release {
    let passed = |on: &[u16], by: &dyn Fn(&Test) -> bool| {
        case.tested_each(on, &|t| {
            let passed = t.kind == TestKind::Release && t.passed == Some(true);
            passed && t.part == Some(part) && by(t)
        })
    };
    let by_laboratory = |on: &[u16]| passed(on, &|t| t.by == Some(Tester::Laboratory));
    let answered =
        |p: &Part| p.lead == Some(Lead::Absent) || passed(&p.on, &|t| t.by != Some(Tester::Home));
    // A test tells that there is such a part, recorded or not.
    let unrecorded = Part::unknown(part);
    let mut states: Vec<&Part> = case.parts_named(part).collect();
    if states.is_empty() {
        states.push(&unrecorded);
    }
    if states.iter().all(|p| by_laboratory(&p.on)) {
        Release::PassedByLaboratory
    } else if states.iter().all(|p| answered(p)) {
        Release::Passed
    } else {
        Release::Untested
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Draft;

    fn read(fields: &[(&str, &str)], rest: &str) -> Case {
        let text = format!(r#"{{"format":"leavewell-case","version":1{rest}}}"#);
        let mut draft = Draft::parse(&text).unwrap();
        for (path, value) in fields {
            draft.set(path, value);
        }
        draft.read().0
    }

    #[test]
    fn a_pass_on_a_finial_clears_nothing() {
        let case = read(
            &[],
            r#","parts":[{"part":"finial","lead":"absent"},{"part":"handle","joint":"grey_repair"}]"#,
        );
        assert_eq!(lead_anywhere(&case), LeadStatus::Unknown);
        assert_eq!(release(&case), Release::Untested);
    }

    #[test]
    fn a_laboratory_result_entered_at_the_bench_counts() {
        let failed = read(&[("bench.food.pb", "5")], "");
        assert_eq!(release(&failed), Release::Failed);
        let passed = read(&[("bench.food.pb", "0.001")], "");
        assert_eq!(release(&passed), Release::PassedByLaboratory);
        assert_eq!(lead_anywhere(&passed), LeadStatus::Unknown);
        // Without lead among its results it does not count.
        let other = read(&[("bench.food.cu", "0.1")], "");
        assert_eq!(release(&other), Release::Untested);
        // Copper over its limit fails for food, and says nothing about lead.
        let copper = read(&[("bench.food.cu", "50"), ("bench.food.pb", "0.001")], "");
        assert_eq!(release(&copper), Release::Failed);
    }

    #[test]
    fn solder_with_lead_in_earlier_work_is_lead() {
        let done = r#","done":[{"what":"T09","materials":"solder_lead"}]"#;
        assert_eq!(lead_anywhere(&read(&[], done)), LeadStatus::Present);
    }

    #[test]
    fn a_doubtful_part_that_liquid_touches_needs_its_own_pass() {
        let with = |spout: &str| {
            read(
                &[],
                &format!(
                    r#","parts":[{{"part":"interior","lead":"absent"}},{{"part":"spout"{spout}}}]"#
                ),
            )
        };
        assert_eq!(release(&with("")), Release::Passed);
        for doubt in [
            r#","joint":"grey_repair""#,
            r#","joint":"open""#,
            r#","joint":"leaking""#,
            r#","fill":"lead""#,
            r#","lead":"present""#,
        ] {
            assert_eq!(release(&with(doubt)), Release::Untested, "{doubt}");
        }
        assert_eq!(
            release(&with(r#","joint":"grey_repair","lead":"absent""#)),
            Release::Passed
        );
    }

    #[test]
    fn liquid_touches_liners_and_bottles_but_not_handles() {
        let with = |part: &str| {
            read(
                &[],
                &format!(
                    r#","parts":[{{"part":"interior","lead":"absent"}},{{"part":"{part}","joint":"grey_repair"}}]"#
                ),
            )
        };
        for wet in ["liner", "bottle", "rim"] {
            assert_eq!(release(&with(wet)), Release::Untested, "{wet}");
        }
        assert_eq!(release(&with("handle")), Release::Passed);
    }

    #[test]
    fn an_analysis_clears_its_part_and_a_home_kit_clears_nothing() {
        let by = |who: &str| {
            read(
                &[],
                &format!(
                    r#","parts":[{{"part":"body"}}],"tests":[{{"id":"a","kind":"content","part":"body","by":"{who}","passed":true}}]"#
                ),
            )
        };
        assert_eq!(lead_anywhere(&by("laboratory")), LeadStatus::Absent);
        assert_eq!(lead_anywhere(&by("home")), LeadStatus::Unknown);
        let grey = read(
            &[],
            r#","parts":[{"part":"body","lead":"not_found","joint":"grey_repair"}]"#,
        );
        assert_eq!(lead_anywhere(&grey), LeadStatus::Unknown);
    }

    /// What holds of a pair, of its first and of its second.
    fn of_pair<T>(rest: &str, what: fn(&Case) -> T) -> [T; 3] {
        let pair = read(&[("pieces.relation", "pair")], rest);
        [
            what(&pair),
            what(&pair.of_piece(1)),
            what(&pair.of_piece(2)),
        ]
    }

    #[test]
    fn an_analysis_of_the_first_never_clears_the_second() {
        use LeadStatus::{Absent, Present, Unknown};
        let test = |of: &str, passed: &str| {
            format!(
                r#"{{"kind":"content","part":"body","by":"laboratory","of":"{of}","passed":{passed}}}"#
            )
        };
        let tests = |all: &[String]| {
            format!(
                r#","parts":[{{"part":"body"}}],"tests":[{}]"#,
                all.join(",")
            )
        };
        for (all, status) in [
            (vec![test("1", "true")], [Unknown, Absent, Unknown]),
            (vec![test("1 2", "true")], [Absent; 3]),
            (vec![test("", "true")], [Absent; 3]),
            (vec![test("1", "true"), test("2", "true")], [Absent; 3]),
            (vec![test("1", "true"), test("2", "false")], [Present; 3]),
        ] {
            assert_eq!(of_pair(&tests(&all), lead_anywhere), status, "{all:?}");
        }
        // One that names none clears none of two that differ; one that names it clears that one.
        let unlike = |of: &str| {
            format!(
                r#","parts":[{{"part":"body"}}],"tests":[{}],
                "pieces":{{"relation":"pair","each":[{{"no":2,"parts":[{{"part":"body","dents":"minor"}}]}}]}}"#,
                test(of, "true")
            )
        };
        assert_eq!(of_pair(&unlike(""), lead_anywhere), [Unknown; 3]);
        assert_eq!(
            of_pair(&unlike("2"), lead_anywhere),
            [Unknown, Unknown, Absent]
        );
    }

    #[test]
    fn a_release_test_is_of_the_pieces_it_names() {
        use Release::{Failed, PassedByLaboratory, Untested};
        let food = |of: &str, pb: &str| format!(r#","bench":{{"food":{{"pb":{pb},"of":"{of}"}}}}"#);
        for (of, pb, release_of_each) in [
            ("1", "0.001", [Untested, PassedByLaboratory, Untested]),
            ("1 2", "0.001", [PassedByLaboratory; 3]),
            ("", "0.001", [PassedByLaboratory; 3]),
            ("2", "5", [Failed; 3]),
            ("3", "0.001", [Untested; 3]),
        ] {
            assert_eq!(
                of_pair(&food(of, pb), release),
                release_of_each,
                "{of} {pb}"
            );
        }
    }

    #[test]
    fn only_a_later_pass_of_the_same_piece_takes_a_failure_back() {
        use Release::{Failed, Passed};
        let tests = |failed: &str, passed: &str| {
            let test = |of: &str, on: &str, result: bool| {
                format!(
                    r#"{{"kind":"release","part":"interior","of":"{of}","on":"{on}","by":"workshop","passed":{result}}}"#
                )
            };
            let before = test("1 2", "2020-01-01", true);
            let all = [
                before,
                test(failed, "2021-01-01", false),
                test(passed, "2022-01-01", true),
            ];
            format!(
                r#","parts":[{{"part":"interior"}}],"tests":[{}]"#,
                all.join(",")
            )
        };
        for (failed, passed, result) in [
            ("2", "1", [Failed; 3]),
            ("2", "", [Failed; 3]),
            ("2", "2", [Passed; 3]),
            ("1 2", "2", [Failed; 3]),
            ("", "", [Passed; 3]),
            ("", "1", [Failed, Passed, Failed]),
        ] {
            assert_eq!(
                of_pair(&tests(failed, passed), release),
                result,
                "{failed} {passed}"
            );
        }
    }
}
