//! A lot bought at one price, shared out over the records of its pieces.
//!
//! Invariant: the shares sum to the price to the penny, or there are none and the reason is said. Nothing is
//! written here.

use std::collections::BTreeMap;

use leavewell_model::record::{Draft, hundredths};
use leavewell_model::terms::LotRule;
use leavewell_model::value::shared_out;
use serde::{Deserialize, Serialize};

use super::Subject;
use super::wording::lot as words;

/// A lot, and the records it may be in.
#[derive(Debug, Deserialize)]
struct LotQuestion {
    /// The id of the lot.
    lot: String,
    /// Key and record of every piece on the shelf.
    #[serde(default)]
    pieces: Vec<(String, String)>,
}

/// What each record of a lot was bought for.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct LotShares {
    /// The key of each record, and its share of the price as a person would type it.
    pub shares: Vec<(String, String)>,
    /// Why there are none and what to do; empty if there are.
    pub refused: [String; 2],
}

/// One record of the lot.
struct OfLot {
    id: String,
    subject: Subject,
}

/// Shares out the price of a lot, from JSON text: `{"lot": id, "pieces": [[key, record], ...]}`.
#[must_use]
pub fn share_out(question: &str) -> LotShares {
    let refuse = |[what, remedy]: [&str; 2]| LotShares {
        shares: Vec::new(),
        refused: [what.to_owned(), remedy.to_owned()],
    };
    let Ok(question) = serde_json::from_str::<LotQuestion>(question) else {
        return refuse(words::NO_LOT);
    };
    let lot = question.lot.trim();
    let mut all: Vec<OfLot> = Vec::new();
    for (id, record) in question.pieces {
        let Ok(draft) = Draft::parse(&record) else {
            continue;
        };
        if draft.text("lot.id").trim() == lot {
            let subject = Subject::new(draft);
            all.push(OfLot { id, subject });
        }
    }
    if lot.is_empty() || all.is_empty() {
        return refuse(words::NO_LOT);
    }
    let prices: Vec<f64> = all.iter().filter_map(|of| of.subject.case().lot.price).collect();
    let Some(price) = prices.first().copied() else {
        return refuse(words::NO_PRICE);
    };
    if prices.iter().any(|other| (other - price).abs() > 0.004) {
        return refuse(words::TWO_PRICES);
    }
    let rules: Vec<LotRule> = all.iter().filter_map(|of| of.subject.case().lot.rule).collect();
    if rules.windows(2).any(|two| two[0] != two[1]) {
        return refuse(words::TWO_RULES);
    }
    let currencies: BTreeMap<&str, ()> = all
        .iter()
        .filter_map(|of| of.subject.case().market.currency)
        .map(|currency| (currency.id(), ()))
        .collect();
    if currencies.len() > 1 {
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
    LotShares {
        shares: all
            .into_iter()
            .zip(shares)
            .map(|(of, share)| (of.id, hundredths(share)))
            .collect(),
        refused: [String::new(), String::new()],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    fn record(lot: Value, likely: u32) -> String {
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

    fn shared(pieces: &[(&str, Value, u32)]) -> LotShares {
        let pieces: Vec<(&str, String)> = pieces
            .iter()
            .map(|(id, lot, likely)| (*id, record(lot.clone(), *likely)))
            .collect();
        share_out(&json!({"lot": " A1 ", "pieces": pieces}).to_string())
    }

    fn amounts(shares: &LotShares) -> Vec<f64> {
        let amounts = shares.shares.iter().map(|(_, text)| text.parse().unwrap());
        amounts.collect()
    }

    #[test]
    fn a_lot_is_shared_by_the_rule_and_by_nothing_else_on_the_shelf() {
        let own = shared(&[
            ("a", json!({"id": "A1", "price": 300, "rule": "own", "share": 220}), 50),
            ("b", json!({"id": "A1", "share": 120}), 50),
            ("x", json!({"id": "B2", "price": 999}), 50),
            ("c", json!({"id": "A1 ", "share": 60}), 50),
        ]);
        assert_eq!(own.refused, ["", ""]);
        assert_eq!(amounts(&own), [165.0, 90.0, 45.0]);
        let equal = shared(&[
            ("a", json!({"id": "A1", "price": 100, "rule": "equal"}), 50),
            ("b", json!({"id": "A1"}), 500),
            ("c", json!({"id": "A1"}), 50),
        ]);
        assert_eq!(amounts(&equal), [33.34, 33.33, 33.33]);
        let expected = shared(&[
            ("a", json!({"id": "A1", "price": 400}), 100),
            ("b", json!({"id": "A1"}), 300),
        ]);
        let amounts = amounts(&expected);
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
            let shares = shared(&pieces);
            assert!(shares.shares.is_empty(), "{pieces:?}");
            assert!(shares.refused.iter().all(|words| words.ends_with('.')));
        }
        assert!(share_out("no question").shares.is_empty());
        assert!(share_out("{\"lot\":\"\",\"pieces\":[]}").shares.is_empty());
    }
}
