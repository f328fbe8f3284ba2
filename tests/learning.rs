//! Learning from closed pieces: what it may change and what it never changes.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]
#![allow(clippy::disallowed_methods)] // an oracle on the machine it runs on

use std::fs;

use leavewell_model::counsel::{otherwise_as_shipped, solve, weigh, weigh_at_once};
use leavewell_model::learn::{Closing, NotCounted, Shift, Teaching, evidence};
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::record::{Case, Draft, TaughtFigure, TaughtFigures, is_teachable, ledger_of};
use leavewell_model::report::Report;
use leavewell_model::value::Class;
use leavewell_pages::Subject;
use leavewell_pages::learning::{LearningQuestion, learning};
use leavewell_pages::sheet_text::{Form, Recipient, sheet_text};

/// The worked examples, each with its name.
fn examples() -> Vec<(String, Case)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases");
    let mut found: Vec<(String, Case)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
            let text = fs::read_to_string(&path).unwrap();
            (name, Draft::parse(&text).unwrap().read().0)
        })
        .collect();
    found.sort_by(|a, b| a.0.cmp(&b.0));
    assert!(found.len() > 10);
    found
}

/// A layer in which every figure that may be taught is derived from its shipped range.
fn layer(of: impl Fn([f64; 3]) -> [f64; 3]) -> TaughtFigures {
    let ledger = Ledger::standard();
    let figures = FigureId::all().filter(|id| is_teachable(*id)).map(|id| {
        let shipped = ledger.figure(id);
        let [low, value, high] = of([shipped.low, shipped.value, shipped.high]);
        TaughtFigure {
            figure: id,
            low,
            value,
            high,
        }
    });
    TaughtFigures::new(figures.collect(), 40)
}

fn json(report: &Report) -> String {
    serde_json::to_string(report).unwrap()
}

#[test]
fn with_nothing_taught_every_answer_is_unchanged_byte_for_byte() {
    let as_shipped = layer(|range| range);
    assert!(!as_shipped.is_empty());
    for (name, case) in examples() {
        assert!(case.taught.is_empty(), "no file holds what was taught");
        let before = json(&weigh(&case, Vec::new()));
        for taught in [TaughtFigures::new(Vec::new(), 40), as_shipped.clone()] {
            let with = Case {
                taught,
                ..case.clone()
            };
            assert!(json(&weigh(&with, Vec::new())) == before, "{name}");
        }
        let figures = ledger_of(&case);
        let own = !case.overrides.is_empty() || !case.market.terms.is_empty();
        assert_eq!(
            matches!(figures, std::borrow::Cow::Owned(_)),
            own,
            "{name}: the shipped figures are not copied for nothing"
        );
    }
}

/// Ids and outcomes of every verdict on every treatment, and what it takes to lift them.
fn verdicts(report: &Report) -> Vec<String> {
    let mut all = Vec::new();
    for option in &report.options {
        for verdict in &option.verdicts {
            let id = [
                option.treatment.id(),
                verdict.ground.text(),
                verdict.outcome.id(),
            ];
            all.push(id.join(" "));
        }
    }
    all
}

#[test]
fn taught_figures_change_no_verdict_hazard_or_identification() {
    let layers = [
        layer(|[low, _, _]| [low * 0.2, low * 0.2, low * 0.2]),
        layer(|[_, _, high]| [high * 5.0, high * 5.0, high * 5.0]),
    ];
    let mut moved = 0;
    for (name, case) in examples() {
        let before = weigh_at_once(&case, Vec::new());
        for taught in &layers {
            let with = Case {
                taught: taught.clone(),
                ..case.clone()
            };
            let after = weigh_at_once(&with, Vec::new());
            assert_eq!(verdicts(&after), verdicts(&before), "{name}");
            assert_eq!(after.identity.kinds, before.identity.kinds, "{name}");
            assert_eq!(after.silver, before.silver, "{name}");
            assert_eq!(after.display_only, before.display_only, "{name}");
            let texts = |report: &Report| -> Vec<String> {
                report.cautions.iter().map(|c| c.id.clone()).collect()
            };
            assert_eq!(texts(&after), texts(&before), "{name}");
            moved += usize::from(after.value != before.value);
        }
    }
    assert!(
        moved > 20,
        "the layers are heard where they may be: {moved}"
    );
}

#[test]
fn a_users_own_figure_overrides_a_taught_one() {
    let (_, mut case) = examples().into_iter().next().unwrap();
    case.taught = layer(|[low, value, high]| [low, value.midpoint(high), high]);
    case.overrides = vec![leavewell_model::record::Override {
        figure: "cost.T14a".to_owned(),
        value: 77.0,
        reason: "the bill".to_owned(),
    }];
    let ledger = ledger_of(&case);
    let cost = ledger.figure(FigureId::COST_T14A);
    assert_eq!(
        [cost.low, cost.value, cost.high].map(f64::to_bits),
        [77.0_f64.to_bits(); 3]
    );
    let taught = ledger.figure(FigureId::COST_T09);
    assert!(taught.value > Ledger::standard().value(FigureId::COST_T09));
    assert!(taught.low < taught.high && taught.own_reason.is_none());
}

/// A tray that was offered and then sold, with its record as a user would type it.
fn sold_tray(price: &str) -> Draft {
    let mut draft = Draft::default();
    for (path, text) in [
        ("piece.name", "Invented tray"),
        ("piece.form", "tray"),
        ("market.currency", "GBP"),
        ("predicted[event=offered].on", "2026-03-01"),
        ("predicted[event=offered].basis", "guess"),
        ("predicted[event=offered].ln_level", "5.4"),
        ("predicted[event=offered].sd", "0.54"),
        ("predicted[event=offered].p", "0.95"),
        ("predicted[event=offered].state", "A2 bare=0.05"),
        ("predicted[event=offered].shipped.price", "80/160/320"),
        ("closed.outcome", "sold"),
        ("closed.sale.price", price),
        ("closed.sale.on", "2026-04-02"),
    ] {
        draft.set(path, text);
    }
    draft
}

fn closing(id: &str, draft: &Draft) -> Closing {
    let read = Draft::parse(&draft.to_json()).unwrap();
    assert_eq!(read.to_json(), draft.to_json(), "it is kept");
    Closing {
        id: id.to_owned(),
        case: read.read().0,
    }
}

/// The number of observations in a record, and why the rest does not count.
fn told(draft: &Draft) -> (usize, Vec<NotCounted>) {
    let all = evidence(&[closing("a", draft)], None);
    let seen = all.iter().map(|one| one.seen.len()).sum();
    let why = all.iter().flat_map(|one| one.not_counted.iter());
    (seen, why.map(|(_, why)| *why).collect())
}

#[test]
fn bad_input_is_reported_kept_and_not_learnt_from() {
    assert_eq!(told(&sold_tray("260")), (1, Vec::new()));
    let with = |path: &str, text: &str| {
        let mut draft = sold_tray("260");
        draft.set(path, text);
        told(&draft)
    };
    let only = |why: NotCounted| (0, vec![why]);
    for (path, text, why) in [
        ("closed.sale.currency", "EUR", NotCounted::OtherCurrency),
        (
            "stock.bought_on",
            "2026-06-01",
            NotCounted::SoldBeforeBought,
        ),
        ("closed.sale.on", "2026-02-01", NotCounted::ExpectedLater),
        ("closed.sale.price", "0", NotCounted::NoPrice),
        ("closed.sale.price", "", NotCounted::NoPrice),
        ("closed.sale.what", "asking", NotCounted::OnlyAsked),
        ("closed.left_out", "yes", NotCounted::LeftOut),
        ("predicted[event=offered].p", "0.5", NotCounted::KindUnsure),
        ("predicted", "", NotCounted::NothingExpected),
        (
            "predicted[event=offered].state",
            "no state",
            NotCounted::NothingExpected,
        ),
    ] {
        assert_eq!(with(path, text), only(why), "{path} {text}");
    }
    // A bill of zero, and zero hours.
    let mut draft = Draft::default();
    draft.set("done[0].what", "T09");
    draft.set("done[0].bill", "0");
    draft.set("done[0].hours", "0");
    assert_eq!(
        told(&draft),
        (
            0,
            vec![NotCounted::BillOfNothing, NotCounted::BillOfNothing]
        )
    );
    draft.set("done[0].bill", "120");
    draft.set("done[0].hours", "");
    assert_eq!(told(&draft), (1, Vec::new()));
    // Text in place of a number is a problem of the record, and teaches nothing.
    draft.set("done[0].bill", "a lot");
    let (_, problems) = draft.read();
    assert_eq!(problems[0].field, "done[0].bill");
    assert_eq!(told(&draft), (0, Vec::new()));
}

#[test]
fn a_thousand_copies_of_one_sale_count_once() {
    let one = sold_tray("260");
    let copies: Vec<Closing> = (0..1000)
        .map(|n| closing(&format!("{n:04}"), &one))
        .collect();
    let told = evidence(&copies, None);
    let counted = told.iter().filter(|one| !one.seen.is_empty()).count();
    let copied = told.iter().filter(|one| {
        let mut why = one.not_counted.iter();
        why.any(|(_, why)| *why == NotCounted::Copy)
    });
    assert_eq!((counted, copied.count()), (1, 999));
    let shift = |closings: &[Closing]| {
        let learnt = Teaching::new(&evidence(closings, None)).prices;
        learnt.shift(Shift::Guess(Class::A2))
    };
    assert_eq!(shift(&copies), shift(&copies[..1]));
    // Another sale of a similar piece is not a copy.
    let two = [closing("a", &one), closing("b", &sold_tray("270"))];
    assert_eq!(
        evidence(&two, None)
            .iter()
            .filter(|one| one.seen.len() == 1)
            .count(),
        2
    );
}

#[test]
fn an_unsold_piece_is_evidence_that_the_price_was_too_high() {
    let mut unsold = sold_tray("");
    unsold.set("closed.sale", "");
    unsold.set("closed.outcome", "unsold");
    unsold.set("closed.unsold.price", "150");
    unsold.set("closed.unsold.what", "reserve");
    let all = evidence(&[closing("a", &unsold)], None);
    assert!(all[0].seen[0].censored);
    let learnt = Teaching::new(&all).prices;
    assert!(learnt.shift(Shift::Guess(Class::A2)).0 < 0.0);
    unsold.set("closed.unsold.what", "asking");
    assert_eq!(told(&unsold).1, [NotCounted::NotLongOnOffer]);
    unsold.set("closed.unsold.months", "7");
    assert_eq!(told(&unsold), (1, Vec::new()));
}

/// Forty trays that sold over ten years at prices that rose by 3 in 100 a year, against the usual price of the kind
/// or against their owners' estimates.
fn rising(basis: &str) -> Teaching {
    let closings: Vec<Closing> = (0..40_u16)
        .map(|i| {
            let year = 2026 + i / 4;
            let years = f64::from(year) + 0.25 * f64::from(i % 4) + 1.0 / 12.0 - 2026.5;
            let price = 160.0 * (0.03 * years).exp();
            let mut draft = sold_tray(&format!("{price:.4}"));
            draft.set("predicted[event=offered].basis", basis);
            draft.set("predicted[event=offered].ledger", "2026.17");
            draft.set("piece.name", &format!("Invented tray {i}"));
            draft.set("predicted[event=offered].on", "2026-01-01");
            draft.set(
                "closed.sale.on",
                &format!("{year}-{:02}-01", 1 + 3 * (i % 4) + 1),
            );
            closing(&format!("{i:03}"), &draft)
        })
        .collect();
    Teaching::new(&evidence(&closings, None))
}

#[test]
fn a_rising_market_is_not_taken_for_a_level() {
    let of_class = rising("class").prices;
    let (yearly, _) = of_class.shift(Shift::Drift);
    assert!((0.02..0.031).contains(&yearly), "{yearly}");
    assert!(Shift::Drift.figures().is_empty(), "it is never taught");
    // An estimate is made anew for each piece and needs no such column.
    let of_guess = rising("guess").prices;
    assert!(of_guess.shift(Shift::Drift).0.abs() < 1e-12);
    // Without the column the level would hold the rise of half the time.
    let (level, _) = of_class.shift(Shift::ClassLevel);
    let (guess, _) = of_guess.shift(Shift::Guess(Class::A2));
    assert!(level < guess - 0.05, "{level} {guess}");
}

#[test]
fn a_sale_used_for_another_piece_is_not_counted_a_second_time() {
    let sold = sold_tray("260");
    let mut next = Draft::default();
    for (field, text) in [("price", "260"), ("of", "a"), ("on", "2026-04-02")] {
        next.set(&format!("comparables[0].{field}"), text);
    }
    let alone = evidence(&[closing("a", &sold)], None);
    let both = evidence(&[closing("a", &sold), closing("b", &next)], None);
    assert_eq!(alone, both);
    assert_eq!(
        next.read().0.comparables.len(),
        1,
        "it is a price of a like piece"
    );
}

#[test]
fn one_bill_for_several_works_is_one_piece_of_evidence() {
    let mut draft = Draft::default();
    for (place, work) in ["T14a", "T10a"].into_iter().enumerate() {
        draft.set(&format!("done[{place}].what"), work);
        draft.set(&format!("done[{place}].bill"), "560");
        draft.set(&format!("done[{place}].bill_no"), "17");
    }
    let all = evidence(&[closing("a", &draft)], None);
    let [seen] = all[0].seen.as_slice() else {
        panic!("{all:?}");
    };
    assert!((seen.y - (560.0_f64 / 400.0).ln()).abs() < 1e-12);
    let shares: Vec<f64> = seen.row.iter().map(|(_, x)| *x).collect();
    assert!((shares[0] - 0.55).abs() < 1e-12 && (shares[1] - 0.45).abs() < 1e-12);
}

#[test]
fn sheets_and_the_advice_say_that_figures_were_taught() {
    let sheet = |taught: &str| {
        let tray = include_str!("cases/worn_tray.json");
        let taught = TaughtFigures::parse(taught);
        let subject = Subject::parse(tray).unwrap().with_taught(taught);
        sheet_text(&subject, Recipient::Client, Form::Markdown)
    };
    assert!(!sheet("").contains("taught by closed pieces"));
    let taught = sheet("12\ncost.T14a=200/221/260");
    assert!(
        taught.contains("Figures taught by closed pieces"),
        "{taught}"
    );
    assert!(taught.contains("by 12 pieces"), "{taught}");
    // The advice says so only if the shipped figures would lead to different advice.
    let far = layer(|[low, _, _]| [low * 0.2, low * 0.2, low * 0.2]);
    let (mut differ, mut agree) = (0, 0);
    for (name, case) in examples() {
        let shipped = weigh_at_once(&case, Vec::new()).counsel.steps;
        let with = solve(&Case {
            taught: far.clone(),
            ..case
        });
        let advised = with.report(Vec::new()).counsel.steps;
        let said = otherwise_as_shipped(&with);
        assert_eq!(said.is_some(), advised != shipped, "{name}: {said:?}");
        if said.is_some() {
            differ += 1;
        } else {
            agree += 1;
        }
    }
    assert!(differ > 0 && agree > 0, "{differ} {agree}");
}

#[test]
fn the_effect_of_learning_is_shown_before_it_is_turned_on() {
    let sold = sold_tray("2600");
    let pieces = [
        ("a".to_owned(), sold.to_json()),
        (
            "b".to_owned(),
            include_str!("cases/worn_tray.json").to_owned(),
        ),
    ];
    let asked = |prices: bool, pieces: &[(String, String)]| {
        let question = LearningQuestion {
            today: "2026-11-30".to_owned(),
            prices,
            pieces: pieces.to_vec(),
            ..LearningQuestion::default()
        };
        learning(&serde_json::to_string(&question).unwrap())
    };
    let off = asked(false, &pieces);
    assert!(off.layer.is_empty());
    let shown = serde_json::to_string(&off.blocks).unwrap();
    let effects = ["our advice on the open pieces", "The advice changes for"];
    assert!(shown.contains("We judged it") && effects.iter().any(|text| shown.contains(text)));
    assert_eq!(off.sales.len(), 1);
    assert!(
        off.sales[0]
            .fields
            .contains(&("of".to_owned(), "a".to_owned()))
    );
    let on = asked(true, &pieces);
    assert!(on.layer.starts_with("1\n") && on.layer.contains("value.guess_bias.A2="));
    assert!(
        !on.layer.contains("cost."),
        "bills and hours are turned on by themselves"
    );
    assert_eq!(on.blocks, off.blocks);
    // An empty shelf, and one that cannot be read.
    for pieces in [Vec::new(), vec![("a".to_owned(), "{".to_owned())]] {
        let none = asked(true, &pieces);
        assert!(none.layer.is_empty() && none.pulls.is_empty() && !none.blocks.is_empty());
    }
    assert_eq!(learning("no question").layer, "");
}
