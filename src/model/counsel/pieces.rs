//! Several pieces in the answer: what each is worth, together or apart, and in which lots they sell best.

use super::Solved;
use super::column::Column;
use super::member::Member;
use super::outcome::Weigher;
use super::report::band;
use super::sentences::money;
use super::wording::pieces as words;
use crate::ledger::FigureId;
use crate::record::{Goal, SellAs};
use crate::report::{FaultOn, LotsReport, PieceReport, PiecesReport};
use crate::terms::the_pieces;
use crate::treatment::Fault;
use crate::value::{Belonging, Unit};

impl Solved {
    /// What several pieces come to once the advised work is done; `None` for one piece.
    pub(super) fn pieces(&self) -> Option<PiecesReport> {
        if self.members.is_empty() {
            return None;
        }
        let situation = self.situation();
        let world = self.world(&self.draws, &situation, None);
        let weigher = Weigher::new(&world);
        let n = self.draws.n;
        let multipliers = weigher.members_after(&self.courses[self.advice.chosen], n);
        let sold = |as_said: SellAs| -> (Column, Column) {
            let hammer = weigher.hammer_of_several(&multipliers, as_said, n);
            let kept = weigher.sold(&hammer);
            (hammer.all.into(), kept.into())
        };
        let (whole, kept_whole) = sold(SellAs::Together);
        let (singles, kept_singles) = sold(SellAs::Apart);
        let middles: Vec<Column> = multipliers.into_iter().map(Column::from).collect();
        let units: Vec<Unit> = (self.members.iter().zip(&middles))
            .map(|(member, multiplier)| member.unit(multiplier.median()))
            .collect();
        let premium = self.draws.premium.as_ref().map_or(1.0, Column::median);
        let belonging = Belonging::of(&self.case.pieces, premium, &self.ledger);
        let level = self.draws.level.median();
        let fees = self.draws.fees.middle();
        let kept = |share: f64| {
            self.draws
                .selling
                .kept(self.draws.route, &fees, level * share)
        };
        let (lots, best) = belonging.best_lots(&units, &kept);
        let numbers = |places: &Vec<usize>| -> Vec<u16> {
            let all = 1..=self.case.pieces.count;
            let in_lot = |no: &u16| {
                places
                    .iter()
                    .any(|at| self.members[*at].numbers.contains(no))
            };
            all.filter(in_lot).collect()
        };
        let lots: Vec<Vec<u16>> = if lots.is_empty() {
            (1..=self.case.pieces.count).map(|no| vec![no]).collect()
        } else {
            lots.iter().map(numbers).collect()
        };
        let [together, apart] =
            [(&whole, &kept_whole), (&singles, &kept_singles)].map(|(hammer, kept)| LotsReport {
                hammer: band(hammer),
                kept: band(kept),
            });
        Some(PiecesReport {
            count: self.case.pieces.count,
            relation: self.case.pieces.relation,
            sell: self.sold_as(),
            premium: belonging.premium,
            each: (self.members.iter().zip(&middles))
                .map(|(member, multiplier)| PieceReport {
                    numbers: member.numbers.clone(),
                    share: member.share / member.numbers.len() as f64,
                    left: multiplier.median(),
                })
                .collect(),
            sentence: if self.goal == Goal::Sell {
                self.together_or_apart(&lots, [kept_whole.median(), kept_singles.median(), best])
            } else {
                String::new()
            },
            together,
            apart,
            lots,
            lots_keep: best,
            faults: self.faults_on(),
        })
    }

    /// How they are weighed: as one lot unless the person says otherwise.
    fn sold_as(&self) -> SellAs {
        self.case.pieces.sell.unwrap_or(SellAs::Together)
    }

    fn together_or_apart(&self, lots: &[Vec<u16>], [whole, singles, best]: [f64; 3]) -> String {
        let sum = |amount: f64| money(&self.case, amount);
        let both = words::both(&sum(whole), &sum(singles));
        let noise = self.ledger.value(FigureId::COUNSEL_NOISE_NET) * whole.abs();
        let advice = if lots.len() > 1 && lots.len() < usize::from(self.case.pieces.count) {
            let named: Vec<String> = lots.iter().map(|lot| the_pieces(lot)).collect();
            words::in_lots(&named, &sum(best))
        } else if (whole - singles).abs() <= noise {
            words::EITHER.to_owned()
        } else if whole > singles {
            words::KEEP_TOGETHER.to_owned()
        } else {
            words::SELL_APART.to_owned()
        };
        [both, advice].join(" ")
    }

    /// The numbers of the pieces for which this holds, from the least up.
    pub(super) fn numbers_of(&self, holds: &dyn Fn(&Member) -> bool) -> Vec<u16> {
        let with: Vec<&Member> = self.members.iter().filter(|m| holds(m)).collect();
        let all = 1..=self.case.pieces.count;
        all.filter(|no| with.iter().any(|m| m.numbers.contains(no)))
            .collect()
    }

    /// The pieces that have a fault, where that is not all of several.
    fn pieces_with(&self, fault: Fault) -> Vec<u16> {
        let mut numbers = self.numbers_of(&|m| m.faults.has(fault));
        if numbers.len() == usize::from(self.case.pieces.count) {
            numbers.clear();
        }
        numbers
    }

    /// A fault in a few words, with the pieces it is on where that is not all of several.
    pub(super) fn fault_name(&self, fault: Fault) -> String {
        words::of_pieces(fault.name(), &the_pieces(&self.pieces_with(fault)))
    }

    /// The faults that are not on every piece, each with the pieces it is on.
    fn faults_on(&self) -> Vec<FaultOn> {
        let all = self.faults.0.iter().map(|found| FaultOn {
            fault: found.fault,
            pieces: self.pieces_with(found.fault),
        });
        all.filter(|on| !on.pieces.is_empty()).collect()
    }
}

#[cfg(test)]
mod tests {
    use crate::counsel::weigh_at_once;
    use crate::record::Draft;
    use crate::report::Report;
    use crate::terms::{Fault, Treatment};
    use serde_json::{Value, json};

    fn report(change: impl Fn(&mut Value)) -> Report {
        let mut case = json!({
            "format": "leavewell-case",
            "version": 2,
            "piece": {"form": "candlestick"},
            "findings": [{"id": "C01", "answer": "seen"}, {"id": "C06", "answer": "seen"}, {"id": "C08", "answer": "seen"}],
            "parts": [{"part": "body", "bleed": "none", "tarnish": "bright", "joint": "sound"}],
            "aim": {"goal": "sell"},
            "pieces": {"relation": "pair"},
            "market": {"low": 250, "likely": 400, "high": 640, "currency": "GBP"},
        });
        change(&mut case);
        let (case, problems) = Draft::parse(&case.to_string()).unwrap().read();
        assert_eq!(problems, []);
        weigh_at_once(&case, problems)
    }

    /// What pushing the dents out costs.
    fn dents_out(r: &Report) -> f64 {
        let option = r
            .options
            .iter()
            .find(|o| o.treatment == Treatment::Dents)
            .unwrap();
        option.cost.p50
    }

    fn dented(case: &mut Value) {
        case["pieces"]["each"] =
            json!([{"no": 2, "parts": [{"part": "body", "dents": "moderate"}]}]);
    }

    #[test]
    fn a_whole_pair_is_worth_what_was_said_and_more_than_two_singles() {
        let pair = report(|_| {});
        let one = report(|case| case["pieces"] = json!({}));
        assert_eq!(one.pieces, None);
        let pieces = pair.pieces.as_ref().unwrap();
        assert!((pair.value.undamaged.p50 - one.value.undamaged.p50).abs() < 1e-9);
        assert!((pieces.together.hammer.p50 / pair.value.as_it_is.p50 - 1.0).abs() < 0.02);
        assert!(pieces.apart.hammer.p50 < 0.85 * pieces.together.hammer.p50);
        assert_eq!(pieces.lots, [[1, 2]]);
        let sentence = &pair.counsel.selling.as_ref().unwrap().sentence;
        assert!(sentence.contains(&pieces.sentence), "{sentence}");
    }

    #[test]
    fn a_dent_in_one_costs_the_pair_and_is_paid_once() {
        let (whole, one) = (report(|_| {}), report(dented));
        let both = report(|case| case["parts"][0]["dents"] = "moderate".into());
        let value = |r: &Report| r.value.as_it_is.p50;
        assert!(value(&one) < value(&whole) && value(&both) < value(&one));
        let single = report(|case| {
            dented(case);
            case["pieces"]["sell"] = "apart".into();
        });
        assert!(value(&single) < value(&one));
        let pieces = one.pieces.as_ref().unwrap();
        assert_eq!(pieces.faults[0].fault, Fault::Dents);
        assert_eq!(pieces.faults[0].pieces, [2]);
        let named = one.faults.iter().find(|f| f.fault == Fault::Dents).unwrap();
        assert_eq!(named.name, "Dents (the second)");
        // Both cost less than twice one, and more than one.
        assert!(
            (dents_out(&both) / dents_out(&one) - 1.7).abs() < 0.01,
            "{}",
            dents_out(&both) / dents_out(&one)
        );
        let dent = |r: &Report| {
            r.faults
                .iter()
                .find(|f| f.fault == Fault::Dents)
                .unwrap()
                .price_left
        };
        assert!(dent(&both) < dent(&one) && dent(&one) < 1.0);
    }

    #[test]
    fn what_is_barred_for_one_is_barred_for_both() {
        let leaded = report(|case| {
            case["pieces"]["each"] =
                json!([{"no": 2, "parts": [{"part": "base", "lead": "present"}]}]);
            case["aim"] = json!({"goal": "keep_use", "food": true});
        });
        assert!(leaded.display_only.yes);
        let clear = report(|case| {
            case["parts"][0]["lead"] = "not_found".into();
        });
        let solder = |r: &Report| {
            let option = r
                .options
                .iter()
                .find(|o| o.treatment == Treatment::Solder)
                .unwrap();
            option.verdicts.len()
        };
        let unknown = report(|case| {
            case["parts"][0]["lead"] = "not_found".into();
            case["pieces"]["each"] =
                json!([{"no": 1, "parts": [{"part": "foot", "joint": "open", "lead": "present"}]}]);
        });
        assert!(solder(&unknown) > solder(&clear));
    }

    #[test]
    fn plating_one_of_a_pair_says_that_it_will_not_match() {
        let worn = |on_both: bool| {
            report(move |case| {
                if on_both {
                    case["parts"][0]["bleed"] = "much".into();
                } else {
                    case["pieces"]["each"] =
                        json!([{"no": 1, "parts": [{"part": "body", "bleed": "much"}]}]);
                }
            })
        };
        let says = |r: &Report| {
            let option = r
                .options
                .iter()
                .find(|o| o.treatment == Treatment::Replate)
                .unwrap();
            option.verdicts.iter().any(|v| v.reason.contains("match"))
        };
        assert!(says(&worn(false)) && !says(&worn(true)));
    }

    #[test]
    fn a_price_told_for_the_record_is_paid_once() {
        let quoted = report(|case| {
            case["parts"][0]["dents"] = "moderate".into();
            case["quotes"] =
                json!([{"treatment": "T08", "likely": 90, "fixed": true, "post_included": true}]);
        });
        assert!((dents_out(&quoted) - 90.0).abs() < 1e-9);
    }

    #[test]
    fn a_large_set_is_weighed_by_its_states() {
        let forks = report(|case| {
            case["piece"]["form"] = "cutlery".into();
            case["pieces"] = json!({"count": 24, "relation": "set",
                "each": [{"no": 7, "parts": [{"part": "body", "bleed": "most"}]}]});
        });
        let pieces = forks.pieces.unwrap();
        assert_eq!(pieces.each.len(), 2);
        assert_eq!(pieces.each[1].numbers, [7]);
        assert!((pieces.premium - 1.3).abs() < 0.01);
        assert!(forks.counsel.selling.unwrap().sentence.contains("together"));
    }

    #[test]
    fn every_state_of_many_pieces_is_priced_and_heard() {
        let set = |last: Value| {
            report(move |case| {
                let of =
                    |no: u16| json!({"part": "body", "dents": "minor", "joint_distance_mm": no});
                let mut each: Vec<Value> = (1..=14)
                    .map(|no| json!({"no": no, "parts": [of(no)]}))
                    .collect();
                each[13]["parts"] = last.clone();
                case["parts"][0]["lead"] = "not_found".into();
                case["pieces"] = json!({"count": 14, "relation": "set", "each": each});
            })
        };
        let sound = set(json!([{"part": "body"}]));
        let pieces = sound.pieces.as_ref().unwrap();
        assert_eq!(pieces.each.len(), 14);
        assert!(pieces.each[13].left > 1.01 * pieces.each[12].left);
        let leaded = set(json!([{"part": "body", "lead": "present"}]));
        assert!(
            verdicts(&leaded, Treatment::Solder).len() > verdicts(&sound, Treatment::Solder).len()
        );
    }

    fn verdicts(r: &Report, treatment: Treatment) -> Vec<String> {
        let option = r.options.iter().find(|o| o.treatment == treatment);
        let verdicts = &option.unwrap().verdicts;
        verdicts
            .iter()
            .map(|v| format!("{:?} {:?}", v.ground, v.outcome))
            .collect()
    }

    /// A pair wanted for food, with this test, this state of the second, and what is tested of the first.
    fn tested(of: Value, kind: &str, passed: bool, second: Value) -> Report {
        report(move |case| {
            case["aim"] =
                json!({"goal": "keep_use", "food": true, "household_child_or_pregnant": true});
            case["pieces"]["each"] = json!([{"no": 2, "parts": [second.clone()]}]);
            case["tests"] = json!([{"id": "a", "kind": kind, "part": "body", "of": of,
                "by": "laboratory", "passed": passed}]);
        })
    }

    /// Whether the first is at least as strict as the second for every treatment and for food.
    fn no_milder(a: &Report, b: &Report) -> bool {
        let covers = |t: Treatment| {
            let of_a = verdicts(a, t);
            verdicts(b, t).iter().all(|v| of_a.contains(v))
        };
        let why = |why: &String| a.display_only.why.contains(why);
        b.options.iter().all(|o| covers(o.treatment)) && b.display_only.why.iter().all(why)
    }

    #[test]
    fn a_pass_that_names_a_piece_is_never_milder_than_one_that_names_none() {
        let like = json!({"part": "body"});
        let unlike = json!({"part": "body", "dents": "minor"});
        for kind in ["content", "release"] {
            for second in [&like, &unlike] {
                let of = |of: Value, passed| tested(of, kind, passed, second.clone());
                let untested = report(|case| {
                    case["aim"] = json!({"goal": "keep_use", "food": true, "household_child_or_pregnant": true});
                    case["pieces"]["each"] = json!([{"no": 2, "parts": [second.clone()]}]);
                });
                let both = of("1 2".into(), true);
                for one in [of("1".into(), true), of(2.into(), true)] {
                    // A pass on one clears nothing for the pair: the other stands as untested.
                    assert!(no_milder(&one, &of(Value::Null, true)), "{kind}");
                    assert!(no_milder(&one, &untested) && no_milder(&untested, &one));
                    assert!(no_milder(&one, &both) && !no_milder(&both, &one), "{kind}");
                }
                // A find on one is a find for the pair.
                let found = of(Value::Null, false);
                for one in [of("1".into(), false), of("2".into(), false)] {
                    assert!(no_milder(&one, &found) && no_milder(&found, &one), "{kind}");
                    assert!(!no_milder(&untested, &one), "{kind}");
                }
                // A pass for a piece that cannot be identified clears none.
                let (case, problems) = Draft::parse(
                    &json!({"format": "leavewell-case", "version": 2, "pieces": {"relation": "pair"},
                        "tests": [{"kind": kind, "part": "body", "of": "3", "passed": true},
                            {"kind": kind, "part": "body", "of": "left", "passed": true},
                            {"kind": kind, "part": "body", "of": "left", "passed": false}]})
                    .to_string(),
                )
                .unwrap()
                .read();
                let fields: Vec<&str> = problems.iter().map(|p| &*p.field).collect();
                assert_eq!(fields, ["tests[0].of", "tests[1].of", "tests[2].of"]);
                let passed: Vec<Option<bool>> = case.tests.iter().map(|t| t.passed).collect();
                assert_eq!(passed, [None, None, Some(false)]);
            }
        }
    }

    #[test]
    fn without_a_value_a_pair_is_more_than_twice_the_usual_one() {
        let none = |several: Value| {
            let r = report(move |case| {
                case["market"] = json!({"currency": "GBP"});
                case["pieces"] = several.clone();
            });
            r.value.undamaged.p50
        };
        let (one, alike, pair) = (
            none(json!({})),
            none(json!({"count": 2, "relation": "alike"})),
            none(json!({"relation": "pair"})),
        );
        assert!((alike / one - 2.0).abs() < 1e-9);
        assert!((pair / alike - 1.316).abs() < 0.1, "{}", pair / alike);
    }
}
