//! A lot bought at one price, shared out over the records of its pieces.
//!
//! Invariant: the shares sum to the price to the penny, or there are none and the reason is said. Nothing is
//! written here.

use super::Subject;
use super::wording::lot as words;
use leavewell_model::record::hundredths;
use leavewell_model::terms::{Currency, LotRule};
use leavewell_model::value::shared_out;

/// One record of the lot.
struct OfLot {
    id: String,
    subject: Subject,
}

/// Shares out the price of a lot, from JSON text: `[lot, [[key, record], ...]]` with every record of the shelf.
/// Gives the key of each record of the lot and its share of the price, as a person would type it.
///
/// # Errors
/// Why it cannot be shared out and what to do, in two sentences.
pub fn share_out(question: &str) -> Result<Vec<(String, String)>, String> {
    let refuse = |why: &str| Err(why.to_owned());
    let Ok((lot, pieces)) = serde_json::from_str::<(String, Vec<(String, String)>)>(question)
    else {
        return refuse(words::NO_LOT);
    };
    let lot = lot.trim();
    let mut all: Vec<OfLot> = Vec::new();
    for (id, record) in pieces {
        let Ok(subject) = Subject::parse(&record) else {
            continue;
        };
        if subject.case().lot.id == lot {
            all.push(OfLot { id, subject });
        }
    }
    if lot.is_empty() || all.is_empty() {
        return refuse(words::NO_LOT);
    }
    let prices: Vec<f64> = all
        .iter()
        .filter_map(|of| of.subject.case().lot.price)
        .collect();
    let Some(price) = prices.first().copied() else {
        return refuse(words::NO_PRICE);
    };
    if prices.iter().any(|other| (other - price).abs() > 0.004) {
        return refuse(words::TWO_PRICES);
    }
    let rules: Vec<LotRule> = all
        .iter()
        .filter_map(|of| of.subject.case().lot.rule)
        .collect();
    if rules.windows(2).any(|two| two[0] != two[1]) {
        return refuse(words::TWO_RULES);
    }
    let currencies = all
        .iter()
        .filter_map(|of| of.subject.case().market.currency);
    let currencies: Vec<Currency> = currencies.collect();
    if currencies.windows(2).any(|two| two[0] != two[1]) {
        return refuse(words::TWO_CURRENCIES);
    }
    let weight = |of: &OfLot| match rules.first().copied().unwrap_or(LotRule::Expected) {
        LotRule::Expected => of.subject.report().value.as_it_is.p50,
        LotRule::Equal => 1.0,
        LotRule::Own => of.subject.case().lot.share.unwrap_or(0.0),
    };
    let weights: Vec<f64> = all.iter().map(weight).collect();
    let Some(shares) = shared_out(price, &weights) else {
        return refuse(words::NO_SHARES);
    };
    let each = all.into_iter().zip(shares);
    Ok(each.map(|(of, share)| (of.id, hundredths(share))).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    fn record(lot: &Value, likely: u32) -> String {
        json!({
            "format": "leavewell-case", "version": 2,
            "piece": {"form": "tray"},
            "findings": [{"id": "C01", "answer": "seen"}],
            "parts": [{"part": "body", "bleed": "none"}],
            "market": {"low": likely / 2, "likely": likely, "high": likely * 2, "currency": "GBP"},
            "lot": lot,
        })
        .to_string()
    }

    fn shared(pieces: &[(&str, Value, u32)]) -> Result<Vec<(String, String)>, String> {
        let pieces: Vec<(&str, String)> = pieces
            .iter()
            .map(|(id, lot, likely)| (*id, record(lot, *likely)))
            .collect();
        share_out(&json!([" A1 ", pieces]).to_string())
    }

    fn amounts(shares: Result<Vec<(String, String)>, String>) -> Vec<f64> {
        let shares = shares.unwrap();
        shares
            .iter()
            .map(|(_, text)| text.parse().unwrap())
            .collect()
    }

    #[test]
    fn a_lot_is_shared_by_the_rule_and_by_nothing_else_on_the_shelf() {
        let own = shared(&[
            (
                "a",
                json!({"id": "A1", "price": 300, "rule": "own", "share": 220}),
                50,
            ),
            ("b", json!({"id": "A1", "share": 120}), 50),
            ("x", json!({"id": "B2", "price": 999}), 50),
            ("c", json!({"id": "A1 ", "share": 60}), 50),
        ]);
        assert_eq!(amounts(own), [165.0, 90.0, 45.0]);
        let equal = shared(&[
            ("a", json!({"id": "A1", "price": 100, "rule": "equal"}), 50),
            ("b", json!({"id": "A1"}), 500),
            ("c", json!({"id": "A1"}), 50),
        ]);
        assert_eq!(amounts(equal), [33.34, 33.33, 33.33]);
        let expected = shared(&[
            ("a", json!({"id": "A1", "price": 400}), 100),
            ("b", json!({"id": "A1"}), 300),
        ]);
        let amounts = amounts(expected);
        assert!((amounts.iter().sum::<f64>() - 400.0).abs() < 1e-9);
        assert!((amounts[0] - 100.0).abs() < 5.0, "{amounts:?}");
    }

    #[test]
    fn a_lot_that_cannot_be_shared_says_why() {
        let at = |price: Value| json!({"id": "A1", "price": price});
        for pieces in [
            vec![],
            vec![("a", json!({"id": "A2", "price": 5}), 50)],
            vec![("a", json!({"id": "A1"}), 50)],
            vec![("a", at(json!(-5)), 50)],
            vec![("a", at(json!(5)), 50), ("b", at(json!(6)), 50)],
            vec![
                ("a", json!({"id": "A1", "price": 5, "rule": "own"}), 50),
                ("b", json!({"id": "A1", "rule": "equal"}), 50),
            ],
            vec![("a", json!({"id": "A1", "price": 5, "rule": "own"}), 50)],
        ] {
            let why = shared(&pieces).unwrap_err();
            assert!(
                why.ends_with('.') && why.matches(". ").count() == 1,
                "{why}"
            );
        }
        assert!(share_out("no question").is_err());
        assert!(share_out("[\"\", []]").is_err());
    }
}
