//! Reads what happened in the end, and what the program had expected.

use serde_json::{Map, Value};

use super::wording as words;
use super::wording::closed as said;
use super::{MOST_ENTRIES, Reader, Section, shorten};
use crate::record::{
    Closed, OwnSale, Predicted, PredictedFigures, PredictedOf, Statement, UnsoldPrice,
};
use crate::terms::{Kind, PredictedWhen, Treatment, decimal};

impl Reader {
    /// How the case ended.
    pub(super) fn closed(&mut self, root: &Map<String, Value>) -> Closed {
        let s = self.section(root, "closed");
        let Some(fields) = s.fields else {
            return Closed::default();
        };
        let sale = self.section(fields, "closed.sale");
        let unsold = self.section(fields, "closed.unsold");
        Closed {
            on: self.about_when(&s, "on"),
            outcome: self.word(&s, "outcome"),
            sale: self.own_sale(&sale),
            unsold: UnsoldPrice {
                price: self.money(&unsold, "price"),
                at: self.word(&unsold, "what"),
                months: self.number(&unsold, "months"),
            },
            left_out: self.flag(&s, "left_out").unwrap_or(false),
            why: self.written(&s, "why"),
        }
    }

    fn own_sale(&mut self, s: &Section) -> OwnSale {
        let statement = match s.fields {
            Some(fields) => {
                let s = self.section(fields, "closed.sale.statement");
                let share = |percent: Option<f64>| percent.map(|p| p / 100.0);
                Statement {
                    commission: share(self.number(&s, "commission_pct")),
                    lot: self.money(&s, "lot"),
                    vat: share(self.number(&s, "vat_pct")),
                    insurance: share(self.number(&s, "insurance_pct")),
                }
            }
            None => Statement::default(),
        };
        OwnSale {
            price: self.money(s, "price"),
            sold_as: self.word(s, "what"),
            on: self.about_when(s, "on"),
            place: self.written(s, "where"),
            buyer: self.word(s, "buyer"),
            reserve: self.money(s, "reserve"),
            currency: self.word(s, "currency"),
            statement,
        }
    }

    /// What was expected, each event once: of two entries of one event the first counts.
    pub(super) fn predicted(&mut self, root: &Map<String, Value>) -> Vec<Predicted> {
        let mut found: Vec<Predicted> = Vec::new();
        for s in self.list(root, "predicted", MOST_ENTRIES) {
            let Some(event) = self.word::<PredictedWhen>(&s, "event") else {
                if s.get("event").is_none() {
                    self.problem(
                        s.at("event"),
                        said::NO_EVENT.to_owned(),
                        said::NO_EVENT_REMEDY,
                    );
                }
                continue;
            };
            let kinds = Kind::ALL.map(Kind::code);
            let kind = self.one_of(&s, "kind", &kinds);
            let entry = Predicted {
                event,
                on: self.about_when(&s, "on"),
                ledger: self.written(&s, "ledger"),
                taught: self.written(&s, "taught"),
                basis: self.word(&s, "basis"),
                ln_level: self.number(&s, "ln_level"),
                sd: self.number(&s, "sd").filter(|sd| *sd >= 0.0),
                kind: Kind::ALL.into_iter().find(|k| Some(k.code()) == kind),
                p: self.number(&s, "p"),
                state: self.written(&s, "state"),
                shipped: self.predicted_figures(&s, "shipped"),
                taught_values: self.predicted_figures(&s, "taught_values"),
            };
            if found.iter().all(|before| before.event != event) {
                found.push(entry);
            }
        }
        found
    }

    fn predicted_figures(&mut self, s: &Section, name: &str) -> PredictedFigures {
        let Some(fields) = s.fields else {
            return PredictedFigures::default();
        };
        let s = self.section(fields, &s.at(name));
        PredictedFigures {
            price: self.expected(&s, "price", range_of),
            bills: self.expected_of_works(&s, "bills", range_of),
            hours: self.expected_of_works(&s, "hours", range_of),
            chances: self.expected_of_works(&s, "chances", |text| {
                decimal(text).filter(|p| (0.0..=1.0).contains(p))
            }),
        }
    }

    fn expected<T>(
        &mut self,
        s: &Section,
        field: &str,
        read: impl Fn(&str) -> Option<T>,
    ) -> Option<T> {
        let text = self.text(s, field)?;
        let value = read(text.trim());
        if value.is_none() {
            self.problem(
                s.at(field),
                words::cannot_be_used(&shorten(&text)),
                said::EXPECTED_REMEDY,
            );
        }
        value
    }

    /// Entries such as `T14a=110/220/500`, with spaces between. One that cannot be used is named.
    fn expected_of_works<T>(
        &mut self,
        s: &Section,
        field: &str,
        read: impl Fn(&str) -> Option<T>,
    ) -> Vec<PredictedOf<T>> {
        let text = self.text(s, field).unwrap_or_default();
        let mut found = Vec::new();
        for word in text.split_whitespace().take(MOST_ENTRIES) {
            let entry = word.split_once('=').and_then(|(id, value)| {
                Some(PredictedOf {
                    work: Treatment::parse(id)?,
                    value: read(value)?,
                })
            });
            match entry {
                Some(entry) => found.push(entry),
                None => self.problem(
                    s.at(field),
                    words::cannot_be_used(&shorten(word)),
                    said::EXPECTED_REMEDY,
                ),
            }
        }
        found
    }
}

/// Three numbers above 0 in rising order, such as `110/220/500`.
fn range_of(text: &str) -> Option<[f64; 3]> {
    let mut numbers = text.split('/').map(decimal);
    let range = [numbers.next()??, numbers.next()??, numbers.next()??];
    let rising = range[0] > 0.0 && range.windows(2).all(|w| w[0] <= w[1]);
    (rising && range[2].is_finite() && numbers.next().is_none()).then_some(range)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{Case, Draft, Problem};
    use crate::terms::{BuyerSort, Currency, Ending, PriceBasis, SoldAs, UnsoldAt};

    fn read(body: &str) -> (Case, Vec<Problem>) {
        let text = format!("{{\"format\":\"leavewell-case\",\"version\":2{body}}}");
        Draft::parse(&text).unwrap().read()
    }

    #[test]
    fn a_sale_is_read_with_its_terms() {
        let (case, problems) = read(
            r#","closed":{"on":"2026-05","outcome":"sold","sale":{"price":"1,260","what":"hammer","on":"2026-05-02",
               "where":"A sale room","buyer":"collector","reserve":200,"currency":"GBP",
               "statement":{"commission_pct":15,"lot":20,"vat_pct":20,"insurance_pct":1}},"left_out":true,"why":"a friend bought it"}"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let closed = case.closed;
        assert_eq!(closed.outcome, Some(Ending::Sold));
        assert_eq!(closed.sale.price, Some(1260.0));
        assert_eq!(closed.sale.sold_as, Some(SoldAs::Hammer));
        assert_eq!(closed.sale.buyer, Some(BuyerSort::Collector));
        assert_eq!(closed.sale.currency, Some(Currency::Pound));
        assert_eq!(closed.sale.statement.commission, Some(0.15));
        assert_eq!(closed.sale.statement.lot, Some(20.0));
        assert!(closed.left_out && closed.why == "a friend bought it");
        assert_eq!(closed.on.map(|on| on.day), Some(15));
    }

    #[test]
    fn an_offer_without_a_buyer_is_read_and_what_cannot_be_used_is_named() {
        let (case, problems) = read(
            r#","closed":{"outcome":"unsold","unsold":{"price":150,"what":"reserve","months":7}}"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let unsold = case.closed.unsold;
        assert_eq!(unsold.price, Some(150.0));
        assert_eq!(unsold.at, Some(UnsoldAt::Reserve));
        assert_eq!(unsold.months, Some(7.0));
        let (case, problems) = read(
            r#","closed":{"outcome":"lost","on":"soon","sale":{"price":-4}},"predicted":[{},{"event":"agreed","shipped":{"price":"3/2/1","bills":"T99=1/2/3"}}]"#,
        );
        assert_eq!((case.closed.outcome, case.closed.sale.price), (None, None));
        assert_eq!(case.predicted.len(), 1);
        let fields: Vec<&str> = problems.iter().map(|p| p.field.as_str()).collect();
        assert_eq!(
            fields,
            [
                "closed.on",
                "closed.outcome",
                "closed.sale.price",
                "predicted[0].event",
                "predicted[1].shipped.price",
                "predicted[1].shipped.bills",
            ]
        );
        assert!(problems.iter().all(|p| p.remedy.ends_with('.')));
    }

    #[test]
    fn what_was_expected_is_read_once_an_event() {
        let (case, problems) = read(
            r#","predicted":[{"event":"offered","on":"2026-04-01","ledger":"12","basis":"guess","ln_level":5.3,"sd":0.54,"kind":"FPS","p":0.9,
               "state":"A2","shipped":{"price":"120/210/380","bills":"T14a=110/220/500","hours":"T02=0.3/0.6/1.2","chances":"T14a=0.03"}},
               {"event":"offered","on":"2026-05-01"}]"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        let [one] = case.predicted.as_slice() else {
            panic!("{:?}", case.predicted);
        };
        assert_eq!(
            (one.event, one.basis),
            (PredictedWhen::Offered, Some(PriceBasis::Guess))
        );
        assert_eq!(one.kind, Some(Kind::Fps));
        assert_eq!(one.shipped.price, Some([120.0, 210.0, 380.0]));
        assert_eq!(one.shipped.bills[0].work, Treatment::parse("T14a").unwrap());
        assert!((one.shipped.chances[0].value - 0.03).abs() < 1e-12);
        assert_eq!(one.taught_values, PredictedFigures::default());
    }
}
