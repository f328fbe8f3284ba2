//! Reads what has to do with selling: sales of like pieces, the person's own terms, and faults of the
//! whole piece.
//!
//! A sale that cannot be counted stays in the file and is named, with the way to leave it out.

use serde_json::{Map, Value};

use super::wording::sales as words;
use super::{MOST_ENTRIES, Reader, Section, place_in, shorten};
use crate::ledger::{FigureId, Ledger};
use crate::record::schema::{SIMILAR, is_percentage};
use crate::record::{BuyersByRoute, Comparable, Part, Similar};
use crate::terms::Kind;
use crate::terms::{Currency, Date, Relation, SoldAs, Word};

/// What a comparable can be said to be; nothing or `same` is the same kind as the piece.
pub const COMPARED_KINDS: [(&str, Option<Kind>); 8] = [
    ("same", None),
    ("fused", Some(Kind::Fpd)),
    ("replated", Some(Kind::Rfp)),
    ("close", Some(Kind::Clp)),
    ("electroplate", Some(Kind::Ens)),
    ("britannia", Some(Kind::Ebm)),
    ("copper", Some(Kind::Ecu)),
    ("silver", Some(Kind::Sil)),
];

/// Faults and features of a whole piece, each a row of condition factors.
pub const FLAWS: [&str; 10] = [
    "monogram_later",
    "inscription_later",
    "arms_erased",
    "detail_softened",
    "part_missing_minor",
    "part_missing_major",
    "part_replaced",
    "marriage",
    SINGLE_OF_PAIR,
    "converted",
];

/// The flaw that says the same as the relation of one left of a pair.
pub(super) const SINGLE_OF_PAIR: &str = "single_of_pair";

/// A dealer's own terms, with the figure each stands for.
const TRADE_TERMS: [(&str, &str); 8] = [
    ("retail_over_hammer", "value.retail_over_hammer"),
    ("shop_months", "value.trade.months.shop"),
    ("work_months", "value.trade.months.work"),
    ("auction_months", "value.trade.months.auction"),
    ("rate_pct", "value.trade.rate"),
    ("holding_pct", "value.trade.holding"),
    ("margin_pct", "value.trade.margin"),
    ("risk_pct", "value.trade.risk"),
];

/// Fields of `market` that stand for a figure.
const TERMS: [(&str, &str); 13] = [
    ("fees.commission_pct", "fee.commission"),
    ("fees.above", "fee.above"),
    ("fees.above_pct", "fee.commission_above"),
    ("fees.minimum", "fee.minimum"),
    ("fees.vat_pct", "fee.vat"),
    ("fees.lot", "fee.lot"),
    ("fees.insurance_pct", "fee.insurance"),
    ("fees.transport", "fee.transport"),
    ("fees.sold_pct", "fee.sold"),
    ("fees.reoffer_pct", "fee.reoffer"),
    ("fees.unsold", "fee.unsold"),
    ("fees.premium_pct", "fee.premium"),
    ("damping_pct", "value.damping"),
];

impl Reader {
    /// The sales that count.
    pub(super) fn comparables(&mut self, root: &Map<String, Value>) -> Vec<Comparable> {
        let asked_text = root
            .get("asked_on")
            .and_then(Value::as_str)
            .unwrap_or_default();
        let asked = Date::parse(asked_text);
        let mut currency = root
            .get("market")
            .and_then(|m| m.get("currency"))
            .and_then(Value::as_str)
            .and_then(Currency::parse);
        let mut sales: Vec<Comparable> = Vec::new();
        for (place, s) in self
            .list(root, "comparables", MOST_ENTRIES)
            .into_iter()
            .enumerate()
        {
            let typed = s.fields.is_some_and(|f| !f.is_empty());
            if !typed || self.flag(&s, "left_out") == Some(true) {
                continue;
            }
            let Some(price) = self.number(&s, "price") else {
                if s.get("price").is_none() {
                    self.problem(
                        s.at("price"),
                        words::NO_PRICE.to_owned(),
                        words::OR_LEAVE_OUT,
                    );
                }
                continue;
            };
            if price <= 0.0 {
                self.problem(
                    s.at("price"),
                    words::PRICE_TOO_LOW.to_owned(),
                    words::OR_LEAVE_OUT,
                );
                continue;
            }
            let own = self
                .one_of(&s, "currency", &Currency::ids())
                .and_then(Currency::parse);
            if own.is_some() && currency.is_some() && own != currency {
                self.problem(
                    s.at("currency"),
                    words::OTHER_CURRENCY.to_owned(),
                    words::OTHER_CURRENCY_REMEDY,
                );
                continue;
            }
            currency = currency.or(own);
            self.text(&s, "of");
            let kinds = COMPARED_KINDS.map(|(id, _)| id);
            let kind = self.one_of(&s, "kind", &kinds);
            let found = Comparable {
                // A list with an entry that is no object has its places shifted; the path has them.
                place: place_in(&s.path).unwrap_or(place),
                price,
                sold_as: self.word(&s, "what").unwrap_or(SoldAs::Hammer),
                age_years: self.age(&s, asked_text, asked),
                kind: COMPARED_KINDS
                    .iter()
                    .find(|(id, _)| Some(*id) == kind)
                    .and_then(|(_, k)| *k),
                bleed: self.bleed(&s),
                tarnish: self.word(&s, "tarnish"),
                dents: self.word(&s, "dents"),
                joint: self.word(&s, "joint"),
                similar: self.similar(&s),
            };
            sales.push(found);
        }
        self.far_prices(&sales);
        sales
    }

    /// Prices far from the rest: named, but counted.
    fn far_prices(&mut self, sales: &[Comparable]) {
        let far = Ledger::standard().value(FigureId::VALUE_COMPARABLE_FAR);
        for (i, sale) in sales.iter().enumerate() {
            let mut others: Vec<f64> = sales
                .iter()
                .enumerate()
                .filter(|(j, _)| *j != i)
                .map(|(_, s)| s.price)
                .collect();
            if others.is_empty() {
                return;
            }
            others.sort_by(f64::total_cmp);
            // Of two middles the nearer one, so that one slip does not make the rest look odd.
            let (low, high) = (others[(others.len() - 1) / 2], others[others.len() / 2]);
            let (times, message) = if sale.price > high {
                (sale.price / high, words::TIMES)
            } else {
                (low / sale.price, words::TIMES_LESS)
            };
            if times >= far {
                self.problem(
                    format!("comparables[{}].price", sale.place),
                    words::far(times.round(), message),
                    words::FAR_REMEDY,
                );
            }
        }
    }

    /// Years between a sale and the day of asking. A date may be a year, a month or a day.
    fn age(&mut self, s: &Section, asked_text: &str, asked: Option<Date>) -> Option<f64> {
        let text = self.text(s, "on")?;
        let text = text.trim();
        let Some(on) = Date::parse_about(text) else {
            self.problem(
                s.at("on"),
                words::no_date(&shorten(text)),
                words::NO_DATE_REMEDY,
            );
            return None;
        };
        let asked = asked?;
        if asked_text.get(..text.len()).is_some_and(|now| text > now) {
            self.problem(s.at("on"), words::FUTURE.to_owned(), words::OR_LEAVE_OUT);
        }
        let years =
            |d: Date| f64::from(d.year) + (f64::from(d.month) + f64::from(d.day) / 31.0) / 12.0;
        Some((years(asked) - years(on)).max(0.0))
    }

    /// How like the piece it is: a word or a share of 1.
    fn similar(&mut self, s: &Section) -> Similar {
        const CLOSE: Similar = Similar::Close;
        match s.get("similar").and_then(Value::as_str) {
            None if s.get("similar").is_none() => CLOSE,
            Some("close") => CLOSE,
            Some("fair") => Similar::Fair,
            Some("loose") => Similar::Loose,
            _ => match self.number_of(s, "similar", &SIMILAR) {
                None => CLOSE,
                Some(share) if share > 0.0 => Similar::Share(share),
                Some(_) => {
                    self.problem(
                        s.at("similar"),
                        words::NOT_ALIKE.to_owned(),
                        words::NOT_ALIKE_REMEDY,
                    );
                    Similar::Loose
                }
            },
        }
    }

    /// The person's own terms, each with the id of the figure it stands for.
    pub(super) fn terms(
        &mut self,
        root: &Map<String, Value>,
        market: &Section,
    ) -> Vec<(String, f64)> {
        let mut terms = Vec::new();
        for (field, figure) in TERMS {
            if let Some(value) = self.term(market, field) {
                terms.push((figure.to_owned(), value));
            }
        }
        let worth = self.section(root, "worth");
        for (field, figure) in TRADE_TERMS {
            if let Some(value) = self.share_or_number(&worth, field) {
                terms.push((figure.to_owned(), value));
            }
        }
        terms
    }

    /// Who buys, on every route and on those where others do.
    pub(super) fn buyers(&mut self, root: &Map<String, Value>, market: &Section) -> BuyersByRoute {
        let worth = self.section(root, "worth");
        BuyersByRoute {
            anywhere: self.buyer_shares(market, "mix"),
            in_shop: self.buyer_shares(&worth, "mix_shop"),
            privately: self.buyer_shares(&worth, "mix_private"),
        }
    }

    /// Shares of buyers. Those left empty buy nothing once one is given; shares need not add up.
    fn buyer_shares(&mut self, holder: &Section, field: &str) -> Option<[f64; 3]> {
        let s = self.inner(holder, field);
        let shares = ["collector", "decorator", "user"].map(|buyer| self.number(&s, buyer));
        if shares.iter().all(Option::is_none) {
            return None;
        }
        let shares = shares.map(|share| share.unwrap_or(0.0) / 100.0);
        if shares.iter().all(|share| *share <= 0.0) {
            self.problem(
                s.at("collector"),
                words::NO_BUYER.to_owned(),
                words::NO_BUYER_REMEDY,
            );
            return None;
        }
        Some(shares)
    }

    /// One term; a percentage comes back as a share.
    fn term(&mut self, market: &Section, field: &str) -> Option<f64> {
        let Some((group, name)) = field.split_once('.') else {
            return self.share_or_number(market, field);
        };
        let s = self.inner(market, group);
        self.share_or_number(&s, name)
    }

    /// The number in a field, a percentage as a share.
    fn share_or_number(&mut self, s: &Section, field: &str) -> Option<f64> {
        let number = self.number(s, field)?;
        Some(if is_percentage(&s.at(field)) {
            number / 100.0
        } else {
            number
        })
    }

    /// Faults of the whole piece: those that were ticked, and those recorded on a part. A fault said
    /// both ways is one.
    /// That it is one left of a pair is what `relation` says.
    pub(super) fn flaws(
        &mut self,
        root: &Map<String, Value>,
        parts: &[Part],
        relation: Relation,
    ) -> Vec<&'static str> {
        let s = self.section(root, "flaws");
        let there = |id: &&str| match *id {
            SINGLE_OF_PAIR => relation == Relation::OneOfPair,
            id => self.flag(&s, id) == Some(true) || parts.iter().any(|part| part.has_flaw(id)),
        };
        FLAWS.into_iter().filter(there).collect()
    }
}

#[cfg(test)]
mod tests {
    use crate::record::{Case, Draft, Problem, Similar};
    use crate::terms::SoldAs;

    fn read(body: &str) -> (Case, Vec<Problem>) {
        Draft::parse(&format!(
            "{{\"format\":\"leavewell-case\",\"version\":1,\"asked_on\":\"2026-05-31\"{body}}}"
        ))
        .unwrap()
        .read()
    }

    /// How many sales count, and the fields that are spoken of.
    fn sales(list: &str) -> (usize, Vec<String>) {
        let (case, problems) = read(&format!(",\"comparables\":[{list}]"));
        for p in &problems {
            assert!(p.message.ends_with('.') && p.remedy.ends_with('.'), "{p:?}");
        }
        (
            case.comparables.len(),
            problems.into_iter().map(|p| p.field).collect(),
        )
    }

    #[test]
    fn a_price_of_nothing_or_less_is_not_counted_and_named() {
        let price = vec!["comparables[0].price".to_owned()];
        for bad in ["0", "-20", "\"0\"", "\"12o\"", "1e300", "[]"] {
            assert_eq!(sales(&format!("{{\"price\":{bad}}}")), (0, price.clone()));
        }
        assert_eq!(sales("{\"note\":\"x\"}"), (0, price));
        assert_eq!(sales("{\"price\":0.01}"), (1, vec![]));
        assert_eq!(sales("{\"price\":\"1 250,50\"}"), (1, vec![]));
        // An empty row, and one left out, say nothing.
        assert_eq!(sales("{},{\"price\":-1,\"left_out\":true}"), (0, vec![]));
        assert_eq!(sales("{\"price\":5,\"left_out\":\"yes\"}"), (0, vec![]));
        assert_eq!(sales("{\"price\":5,\"left_out\":false}"), (1, vec![]));
    }

    #[test]
    fn a_sale_from_the_future_is_named_and_counted_as_new() {
        let on = |date: &str| {
            let (case, problems) = read(&format!(
                ",\"comparables\":[{{\"price\":5,\"on\":\"{date}\"}}]"
            ));
            (case.comparables[0].age_years, problems.len())
        };
        // Both sides of the day of asking, at each precision.
        for (past, future) in [
            ("2026-05-31", "2026-06-01"),
            ("2026-05", "2026-06"),
            ("2026", "2027"),
        ] {
            assert_eq!(on(past).1, 0, "{past}");
            assert_eq!(on(future), (Some(0.0), 1), "{future}");
        }
        let years = on("2016-05-31").0.unwrap();
        assert!((years - 10.0).abs() < 1e-9, "{years}");
        assert_eq!(on("last year"), (None, 1));
        // A year typed as a number is a date too.
        let (case, problems) = read(",\"comparables\":[{\"price\":5,\"on\":2025}]");
        assert!(problems.is_empty() && case.comparables[0].age_years.unwrap() > 0.8);
    }

    #[test]
    fn another_currency_is_not_counted() {
        let euro = r#"{"price":5,"currency":"EUR"}"#;
        let pound = r#"{"price":5,"currency":"GBP"}"#;
        let field = |i: usize| vec![format!("comparables[{i}].currency")];
        assert_eq!(sales(&format!("{euro},{pound}")), (1, field(1)));
        assert_eq!(sales(&format!("{euro},{euro}")), (2, vec![]));
        let (case, problems) = read(&format!(
            ",\"market\":{{\"currency\":\"GBP\"}},\"comparables\":[{euro},{pound},{{\"price\":6}}]"
        ));
        assert_eq!(case.comparables.len(), 2);
        assert_eq!(problems.len(), 1);
        assert_eq!(problems[0].field, "comparables[0].currency");
    }

    #[test]
    fn a_price_far_from_the_rest_is_named_and_still_counted() {
        let with = |odd: &str| {
            sales(&format!(
                "{{\"price\":100}},{{\"price\":100}},{{\"price\":{odd}}}"
            ))
        };
        let named = vec!["comparables[2].price".to_owned()];
        assert_eq!(with("999"), (3, vec![]));
        assert_eq!(with("1000"), (3, named.clone()));
        assert_eq!(with("10000"), (3, named.clone()));
        assert_eq!(with("10.1"), (3, vec![]));
        assert_eq!(with("1"), (3, named));
        // Of two, either may be the slip.
        assert_eq!(sales("{\"price\":1},{\"price\":100}").1.len(), 2);
    }

    #[test]
    fn places_are_those_of_the_file() {
        let (case, problems) = read(",\"comparables\":[7,{},{\"price\":4}]");
        assert_eq!(case.comparables[0].place, 2);
        assert_eq!(problems[0].field, "comparables[0]");
    }

    #[test]
    fn words_are_read_and_unknown_ones_named() {
        let (case, problems) = read(
            r#","comparables":[{"price":4,"what":"asking","similar":"fair","kind":"close","bleed":"5 %"},
               {"price":4,"what":"swapped","similar":"0.5"},{"price":4,"similar":0}]"#,
        );
        let [a, b, c] = &case.comparables[..] else {
            panic!("three sales")
        };
        assert_eq!((a.sold_as, a.similar), (SoldAs::Asking, Similar::Fair));
        assert!(a.kind.is_some() && a.bleed.is_some());
        assert_eq!(
            (b.sold_as, b.similar),
            (SoldAs::Hammer, Similar::Share(0.5))
        );
        assert_eq!(c.similar, Similar::Loose);
        let fields: Vec<_> = problems.iter().map(|p| p.field.as_str()).collect();
        assert_eq!(fields, ["comparables[1].what", "comparables[2].similar"]);
    }

    #[test]
    fn terms_are_read_and_checked() {
        let term = |body: &str, id: &str| {
            let (case, problems) = read(&format!(",\"market\":{{{body}}}"));
            let found = case.market.terms.iter().find(|(f, _)| f == id);
            (found.map(|(_, v)| *v), problems.len())
        };
        let id = "fee.commission";
        assert_eq!(
            term(r#""fees":{"commission_pct":12.5}"#, id),
            (Some(0.125), 0)
        );
        assert_eq!(
            term(r#""fees":{"commission_pct":"12,5"}"#, id),
            (Some(0.125), 0)
        );
        assert_eq!(term(r#""fees":{"commission_pct":101}"#, id), (None, 1));
        assert_eq!(term(r#""fees":{"commission_pct":-1}"#, id), (None, 1));
        assert_eq!(term(r#""fees":7"#, id), (None, 1));
        assert_eq!(
            term(r#""damping_pct":75"#, "value.damping"),
            (Some(0.75), 0)
        );
        let user = "value.mix.C2.user";
        assert_eq!(term(r#""mix":{"collector":30}"#, user), (Some(0.0), 0));
        assert_eq!(term(r#""mix":{"collector":0}"#, user), (None, 1));
        assert_eq!(term("", user), (None, 0));
    }

    #[test]
    fn faults_of_the_whole_piece_are_ticked() {
        let (case, problems) =
            read(r#","flaws":{"marriage":true,"converted":"yes","arms_erased":false,"x":true}"#);
        assert_eq!(case.flaws, ["marriage", "converted"]);
        assert!(problems.is_empty());
    }
}
