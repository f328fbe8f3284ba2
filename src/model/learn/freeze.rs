//! Freezes what is expected of a piece, as fields of the record, when work is agreed or it is offered.

use super::state::PricedPieces;
use crate::counsel::{ExpectedPiece, ExpectedWork, solve};
use crate::ledger::LEDGER_VERSION;
use crate::record::{Case, PredictedWhen, TaughtFigures};

/// What is expected of a case under the shipped figures and, where some are taught, under those: the
/// fields of an entry of `predicted`, each with its text, but for the day.
#[must_use]
pub fn freeze(case: &Case, event: PredictedWhen) -> Vec<(String, String)> {
    let shipped = solve(&Case {
        taught: TaughtFigures::default(),
        ..case.clone()
    })
    .expected();
    let mut pieces = PricedPieces::of(case, &shipped);
    if event == PredictedWhen::Agreed {
        // The work is still to come.
        for (at, (_, state)) in pieces.each.iter_mut().enumerate() {
            state.bare = shipped.each.get(at).map_or(shipped.bare, |one| one.bare);
            state.replated = false;
            state.repaired = false;
            state.plated_again = shipped.kind == crate::identity::Kind::Rfp;
        }
    }
    let mut fields: Vec<(String, String)> = [
        ("event", event.id().to_owned()),
        ("ledger", LEDGER_VERSION.to_owned()),
        ("taught", case.taught.digest()),
        ("basis", shipped.basis.id().to_owned()),
        ("ln_level", format!("{:.6}", shipped.ln_level)),
        ("sd", format!("{:.6}", shipped.sd)),
        ("kind", shipped.kind.code().to_owned()),
        ("p", format!("{:.4}", shipped.p)),
        ("state", pieces.to_text()),
    ]
    .into_iter()
    .map(|(field, text)| (field.to_owned(), text))
    .collect();
    add_figures(&mut fields, "shipped", &shipped);
    if !case.taught.is_empty() {
        add_figures(&mut fields, "taught_values", &solve(case).expected());
    }
    fields.retain(|(_, text)| !text.is_empty());
    fields
}

fn add_figures(fields: &mut Vec<(String, String)>, of: &str, expected: &ExpectedPiece) {
    let range = |[low, likely, high]: [f64; 3]| format!("{low:.2}/{likely:.2}/{high:.2}");
    let works = |value: &dyn Fn(&ExpectedWork) -> Option<String>| {
        let each = expected
            .works
            .iter()
            .filter_map(|work| Some(format!("{}={}", work.work.id(), value(work)?)));
        each.collect::<Vec<String>>().join(" ")
    };
    // What would be written as nothing cannot be compared with what happened.
    let is_written = |range: &[f64; 3]| range[0] >= 0.005;
    let price = Some(expected.price).filter(is_written);
    let texts = [
        ("price", price.map(range).unwrap_or_default()),
        (
            "bills",
            works(&|work| work.bill.filter(is_written).map(range)),
        ),
        (
            "hours",
            works(&|work| work.hours.filter(is_written).map(range)),
        ),
        (
            "chances",
            works(&|work| Some(format!("{:.4}", work.chance?))),
        ),
    ];
    fields.extend(texts.map(|(field, text)| (format!("{of}.{field}"), text)));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::learn::{Closing, NotCounted, Shift, Teaching, Topic, TurnedOn, evidence, price};
    use crate::record::Draft;

    const TRAY: &str = include_str!("../../../tests/cases/worn_tray.json");

    fn frozen(draft: &mut Draft, event: PredictedWhen) {
        let fields = freeze(&draft.read().0, event);
        draft.freeze(event, &fields);
        draft.set(&format!("predicted[event={}].on", event.id()), "2026-11-01");
    }

    #[test]
    fn a_prediction_is_read_back_as_it_was_made() {
        let mut draft = Draft::parse(TRAY).unwrap();
        let expected = solve(&draft.read().0).expected();
        frozen(&mut draft, PredictedWhen::Offered);
        let (case, problems) = draft.read();
        assert!(problems.is_empty(), "{problems:?}");
        let read = &case.predicted[0];
        assert_eq!(read.kind, Some(expected.kind));
        assert_eq!(read.basis, Some(expected.basis));
        let price = read.shipped.price.unwrap();
        assert!((price[1] - expected.price[1]).abs() < 0.01);
        assert!(read.shipped.bills.len() > 2 && read.shipped.chances.len() > 1);
        assert!(
            PricedPieces::parse(&read.state).is_some_and(|s| s.class() == Some(expected.class))
        );
        assert!(read.taught.is_empty() && read.taught_values.price.is_none());
    }

    #[test]
    fn a_pair_sold_as_one_teaches_once_and_its_lot_teaches_nothing() {
        let text = include_str!("../../../tests/cases/pair_of_candlesticks.json");
        let mut draft = Draft::parse(text).unwrap();
        draft.set("worth.paid", "150");
        frozen(&mut draft, PredictedWhen::Agreed);
        frozen(&mut draft, PredictedWhen::Offered);
        for event in ["agreed", "offered"] {
            draft.set(&format!("predicted[event={event}].p"), "0.95");
        }
        for (field, text) in [
            ("outcome", "sold"),
            ("sale.price", "300"),
            ("sale.on", "2026-11-20"),
        ] {
            draft.set(&format!("closed.{field}"), text);
        }
        let frozen = |draft: &Draft| {
            let (case, problems) = draft.read();
            assert_eq!(problems, []);
            let closing = Closing {
                id: "a".to_owned(),
                case,
            };
            let seen = evidence(&[closing], None).remove(0);
            assert_eq!(seen.not_counted, []);
            seen.seen
        };
        let state = draft.read().0.predicted[1].state.clone();
        let pieces = PricedPieces::parse(&state).unwrap();
        assert_eq!((pieces.each.len(), pieces.several), (2, true));
        assert_eq!(pieces.to_text(), state);
        assert!(pieces.each[1].1.rows.len() > pieces.each[0].1.rows.len());
        // Bought and sold are two observations of one pair, of which the second is the difference.
        let both = frozen(&draft);
        assert_eq!(both.len(), 2);
        draft.set("lot.id", "A1");
        let one = frozen(&draft);
        assert_eq!(one.len(), 1);
        let lot = one[0].row.iter().find(|(shift, _)| *shift == Shift::Lot);
        assert_eq!(lot.map(|(_, x)| *x), Some(1.0));
        let (ln, _, spread) = pieces.multiplier(None);
        let parts: Vec<f64> = (pieces.each.iter())
            .map(|(share, state)| share * libm::exp(state.multiplier(None).0))
            .collect();
        assert!((ln - libm::log(parts.iter().sum())).abs() < 1e-12);
        assert!(spread > 0.5 && spread < 0.6, "{spread}");
        assert!(one[0].sd < both[0].sd.max(0.6));
        draft.set("pieces.sell", "apart");
        let (case, _) = draft.read();
        let closing = Closing {
            id: "a".to_owned(),
            case,
        };
        let seen = evidence(&[closing], None).remove(0);
        assert_eq!(seen.not_counted, [(Topic::Prices, NotCounted::SoldApart)]);
        for bad in [
            "*A2",
            "x*A2",
            "0*A2",
            "-1*A2",
            "0.5*A2 + A2",
            "0.5*",
            "inf*A2",
        ] {
            assert_eq!(PricedPieces::parse(bad), None, "{bad}");
        }
    }

    #[test]
    fn a_sale_after_the_prediction_teaches_and_one_before_does_not() {
        let mut draft = Draft::parse(TRAY).unwrap();
        frozen(&mut draft, PredictedWhen::Offered);
        // How sure the kind is, is not what is tried here.
        draft.set("predicted[event=offered].p", "0.95");
        for (field, text) in [
            ("outcome", "sold"),
            ("sale.price", "260"),
            ("sale.what", "hammer"),
            ("sale.on", "2026-11-20"),
        ] {
            draft.set(&format!("closed.{field}"), text);
        }
        let closing = |draft: &Draft| Closing {
            id: "a".to_owned(),
            case: draft.read().0,
        };
        let all = evidence(&[closing(&draft)], None);
        assert_eq!(all[0].seen.len(), 1, "{all:?}");
        let said = price(&closing(&draft)).unwrap();
        assert!((said.happened - 260.0).abs() < 1e-9 && said.at > 0.0);
        let on = TurnedOn {
            prices: true,
            works: true,
        };
        let layer = Teaching::new(&all).layer(on);
        assert_eq!(layer.pieces, 1);
        // With a layer the next prediction holds both.
        let (mut case, _) = Draft::parse(TRAY).unwrap().read();
        case.taught = layer;
        let fields = freeze(&case, PredictedWhen::Offered);
        assert!(
            fields
                .iter()
                .any(|(field, _)| field == "taught_values.price")
        );
        assert!(
            fields
                .iter()
                .any(|(field, text)| field == "taught" && text.len() == 16)
        );
        draft.set("closed.sale.on", "2026-10-20");
        let all = evidence(&[closing(&draft)], None);
        assert!(all[0].seen.is_empty(), "{all:?}");
        assert_eq!(all[0].not_counted[0].0, Topic::Prices);
        assert!(price(&closing(&draft)).is_none());
    }
}
