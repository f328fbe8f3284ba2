//! What the shelf says of a piece without opening its record.

use leavewell_model::record::is_enough_to_advise;
use leavewell_model::terms::{Currency, Form, StockStatus};
use leavewell_model::{Case, Draft};
use serde_json::{Value, json};

use super::wording::{owner, shelf};
use crate::app::parts::words::joined;

/// One line of the shelf.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ShelfLine {
    /// The key of the piece's stored record.
    pub id: String,
    /// The owner's name for it.
    pub name: String,
    /// Its form in words; empty if unknown.
    pub form: String,
    /// The first sentence of the last answer, which names the plan and nothing else.
    pub answer: String,
    /// The treatments in that answer, so that the shelf shows their cautions.
    pub steps: Vec<String>,
    /// Why the record cannot be read, if so.
    pub unreadable: Option<String>,
    /// What the stock book says of it.
    pub stock: StockLine,
}

/// What the stock book says of a piece. Amounts are in its currency.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StockLine {
    /// The stock number; may be empty.
    pub number: String,
    /// The lot it was bought in; may be empty.
    pub lot: String,
    /// What it is made of and how, as far as it is known; may be empty.
    pub kind: String,
    /// Where it is; may be empty.
    pub place: String,
    /// Where it stands.
    pub status: Option<StockStatus>,
    /// What was paid for it.
    pub paid: Option<f64>,
    /// The bills for work on it, together.
    pub spent: Option<f64>,
    /// The price asked for it.
    pub asking: Option<f64>,
    /// The most to pay for it, while it is looked at and not bought, by the last answer.
    pub most: Option<f64>,
    /// The currency of the amounts.
    pub currency: Option<Currency>,
}

impl StockLine {
    pub(super) fn of_case(case: &Case) -> Self {
        let bills = case.done.iter().filter_map(|done| done.bill);
        let stock = &case.stock;
        Self {
            number: stock.number.clone(),
            lot: case.lot.id.clone(),
            kind: String::new(),
            place: stock.place.clone(),
            status: case.stock_status(),
            paid: stock.paid,
            spent: bills.reduce(|sum, bill| sum + bill),
            asking: stock.asking,
            most: None,
            currency: case.market.currency,
        }
    }

    /// The most to pay, unless it is bought.
    #[must_use]
    pub fn most_while_looking(&self) -> Option<f64> {
        let is_looked_at = matches!(self.status, None | Some(StockStatus::Looking));
        self.most.filter(|_| is_looked_at && self.paid.is_none())
    }

    fn to_value(&self) -> Value {
        json!({
            "number": self.number,
            "lot": self.lot,
            "kind": self.kind,
            "place": self.place,
            "status": self.status.map(StockStatus::id),
            "paid": self.paid,
            "spent": self.spent,
            "asking": self.asking,
            "most": self.most,
            "currency": self.currency.map(Currency::id),
        })
    }

    fn from_value(value: &Value) -> Self {
        let text = |field: &str| value[field].as_str().unwrap_or_default();
        let amount = |field: &str| value[field].as_f64();
        Self {
            number: text("number").to_owned(),
            lot: text("lot").to_owned(),
            kind: text("kind").to_owned(),
            place: text("place").to_owned(),
            status: StockStatus::parse(text("status")),
            paid: amount("paid"),
            spent: amount("spent"),
            asking: amount("asking"),
            most: amount("most"),
            currency: Currency::parse(text("currency")),
        }
    }
}

impl ShelfLine {
    /// The line as stored.
    #[must_use]
    pub fn to_value(&self) -> Value {
        json!({
            "id": self.id,
            "name": self.name,
            "form": self.form,
            "answer": self.answer,
            "steps": self.steps,
            "unreadable": self.unreadable,
            "stock": self.stock.to_value(),
        })
    }

    /// The line of a record that was never opened.
    #[must_use]
    pub fn of_draft(id: &str, draft: &Draft) -> Self {
        let (case, _) = draft.read();
        Self {
            id: id.to_owned(),
            name: name_of(draft),
            form: form_words(&case),
            answer: if is_enough_to_advise(&case) {
                String::new()
            } else {
                owner::TOO_LITTLE.to_owned()
            },
            stock: StockLine::of_case(&case),
            ..Self::default()
        }
    }

    /// The line of a changed record, with the advice of this one until it is weighed again.
    #[must_use]
    pub fn advice_for(&self, draft: &Draft) -> Self {
        let mut line = Self::of_draft(&self.id, draft);
        line.answer.clone_from(&self.answer);
        line.steps.clone_from(&self.steps);
        line.stock.kind.clone_from(&self.stock.kind);
        line.stock.most = self.stock.most;
        line
    }

    /// Reads a stored line; `None` if it has no id.
    #[must_use]
    pub fn from_value(value: &Value) -> Option<Self> {
        let text = |field: &str| value[field].as_str().map(str::to_owned);
        Some(Self {
            id: text("id")?,
            name: text("name").unwrap_or_default(),
            form: text("form").unwrap_or_default(),
            answer: text("answer").unwrap_or_default(),
            steps: value["steps"]
                .as_array()
                .into_iter()
                .flatten()
                .filter_map(|step| step.as_str().map(str::to_owned))
                .collect(),
            unreadable: text("unreadable"),
            stock: StockLine::from_value(&value["stock"]),
        })
    }
}

/// The name of a piece on screen.
pub(super) fn name_of(draft: &Draft) -> String {
    let name = draft.text("piece.name");
    if !name.trim().is_empty() {
        return name;
    }
    draft
        .form()
        .map_or_else(|| shelf::UNNAMED.to_owned(), |form| form.label().to_owned())
}

/// The form in words, and how many there are of it; empty if the form is not known.
pub(super) fn form_words(case: &Case) -> String {
    let label = case.piece.form.map_or("", Form::label);
    match case.pieces.count {
        1 => label.to_owned(),
        count => joined(&[label, " × ", &count.to_string()]),
    }
}
