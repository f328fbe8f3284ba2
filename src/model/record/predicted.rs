//! What the program expected, frozen by the program when work was agreed or the piece was offered.
//!
//! Invariant: an entry is written once and never again, so that outcomes can be compared with earlier
//! predictions.

use serde_json::Value;

use super::{Date, Draft, PredictedWhen, PriceBasis};
use crate::terms::{Kind, Treatment};

/// One frozen prediction.
#[derive(Clone, Debug, PartialEq)]
pub struct Predicted {
    /// Why it was frozen.
    pub event: PredictedWhen,
    /// The day; `None` when the file does not say.
    pub on: Option<Date>,
    /// Version of the shipped figures.
    pub ledger: String,
    /// Digest of the taught figures in use; empty if none.
    pub taught: String,
    /// What the price rested on.
    pub basis: Option<PriceBasis>,
    /// ln of the price of an undamaged piece like it, in the case's currency.
    pub ln_level: Option<f64>,
    /// Standard deviation of that level, in ln.
    pub sd: Option<f64>,
    /// The kind held most likely.
    pub kind: Option<Kind>,
    /// Its chance, 0 to 1.
    pub p: Option<f64>,
    /// The condition that the price rested on, as the program wrote it.
    pub state: String,
    /// What the shipped figures expected.
    pub shipped: PredictedFigures,
    /// What the taught figures expected; nothing where none were taught.
    pub taught_values: PredictedFigures,
}

impl Predicted {
    /// The middle of the year of the shipped figures it was made with, from their version, such as "2026.17".
    #[must_use]
    pub fn edition(&self) -> Option<Date> {
        let (year, _) = self.ledger.split_once('.')?;
        Date::parse(&[year.trim(), "-07-01"].concat())
    }
}

/// What one set of figures expected.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PredictedFigures {
    /// The hammer price: 1 in 10 below, the middle, 1 in 10 above.
    pub price: Option<[f64; 3]>,
    /// What each work costs, in the case's currency: low, likely, high.
    pub bills: Vec<PredictedOf<[f64; 3]>>,
    /// Hours of each work: low, likely, high.
    pub hours: Vec<PredictedOf<[f64; 3]>>,
    /// The chance that each work goes wrong.
    pub chances: Vec<PredictedOf<f64>>,
}

/// What was expected of one work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PredictedOf<T> {
    /// The work.
    pub work: Treatment,
    /// What was expected.
    pub value: T,
}

/// The list in a record.
const LIST: &str = "predicted";

fn place(event: PredictedWhen, field: &str) -> String {
    [LIST, "[event=", event.id(), "].", field].concat()
}

impl Draft {
    /// Whether something was frozen at this event.
    #[must_use]
    pub fn has_predicted(&self, event: PredictedWhen) -> bool {
        self.text(&place(event, "event")) == event.id()
    }

    /// Freezes what was expected at an event: its fields, each with its text. What was frozen before
    /// stays; then nothing changes.
    pub fn freeze(&mut self, event: PredictedWhen, fields: &[(String, String)]) {
        if self.has_predicted(event) {
            return;
        }
        for (field, text) in fields {
            self.set(&place(event, field), text);
        }
    }

    /// Takes over what was frozen in another version of the same record and is missing in this one, so
    /// that no undo makes room for a prediction after the event.
    pub fn keep_predicted(&mut self, of: &Self) {
        let frozen = of.root.get(LIST).and_then(Value::as_array);
        let missing: Vec<Value> = frozen
            .into_iter()
            .flatten()
            .filter(|entry| {
                let event = entry
                    .get("event")
                    .and_then(Value::as_str)
                    .unwrap_or_default();
                PredictedWhen::parse(event).is_some_and(|event| !self.has_predicted(event))
            })
            .cloned()
            .collect();
        if missing.is_empty() {
            return;
        }
        let held = self
            .root
            .entry(LIST)
            .or_insert_with(|| Value::Array(Vec::new()));
        if let Some(list) = held.as_array_mut() {
            list.extend(missing);
        }
        self.raise_version();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_frozen_is_never_written_again() {
        let mut draft = Draft::default();
        let fields = |price: &str| {
            [
                ("on".to_owned(), "2026-11-30".to_owned()),
                ("shipped.price".to_owned(), price.to_owned()),
            ]
        };
        assert!(!draft.has_predicted(PredictedWhen::Offered));
        draft.freeze(PredictedWhen::Offered, &fields("120/210/380"));
        draft.freeze(PredictedWhen::Offered, &fields("1/2/3"));
        draft.freeze(PredictedWhen::Agreed, &fields("100/200/300"));
        let (case, problems) = draft.read();
        assert!(problems.is_empty(), "{problems:?}");
        assert_eq!(case.predicted.len(), 2);
        assert_eq!(case.predicted[0].shipped.price, Some([120.0, 210.0, 380.0]));
        assert_eq!(draft.text("version"), "2");
    }

    #[test]
    fn a_step_back_keeps_what_was_frozen() {
        let mut before = Draft::default();
        before.set("piece.name", "Invented pot");
        let mut now = before.clone();
        now.freeze(
            PredictedWhen::Agreed,
            &[("on".to_owned(), "2026-11-30".to_owned())],
        );
        let frozen = now.clone();
        before.keep_predicted(&frozen);
        assert!(before.has_predicted(PredictedWhen::Agreed));
        assert_eq!(before.text("version"), "2");
        let known = before.clone();
        before.keep_predicted(&frozen);
        assert_eq!(before, known);
        let mut broken = Draft::default();
        broken.set("predicted", "none");
        broken.keep_predicted(&frozen);
        assert_eq!(
            broken.text("predicted"),
            "none",
            "what cannot be read stays"
        );
    }
}
