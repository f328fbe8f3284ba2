//! The plan for a whole shelf: which pieces to work on, and how, within limits of money and hours.

use leavewell_model::terms::ShortSort;
use serde::Serialize;
use serde_json::Value;

use super::Subject;
use super::as_typed::as_typed;
use super::block::{Block, Table, Tone};
use super::money_text::MoneyFormat;
use super::plan_curve::curve;
use super::sheet_cautions::cautions_for;
use super::wording::plan as words;
use leavewell_model::counsel::offer::{Offer, OfferedChoice, offer};
use leavewell_model::counsel::solve;
use leavewell_model::decide::stock::{MOST_HELD, MOST_NEEDS, Need, Selection, StockChoice, select};
use leavewell_model::record::schema::number_typed;
use leavewell_model::record::{Case, NumberKind};
use leavewell_model::terms::{Currency, Form};
use leavewell_model::terms::{Treatment, TreatmentSet};

/// Columns of the tables of work.
const COLUMNS: [&str; 5] = [
    words::PIECE,
    words::WORK,
    words::BRINGS,
    words::COSTS,
    words::HOURS_SHORT,
];

/// Search effort for plans that only supply a point on the curve.
const ROUGHLY: usize = 200;

/// Works out the options for each piece. The question is JSON text: `[{"id", "text"}]`, where each text is
/// a record. The answer is JSON text too: `[{"id", "name", "offer"}]`, with `"problem"` in place of
/// `"offer"` if a record cannot be read.
#[must_use]
pub fn offers_json(question: &str) -> String {
    let asked: Value = serde_json::from_str(question).unwrap_or_default();
    let pieces: Vec<ShelfPiece> = items(&asked).iter().map(piece).collect();
    serde_json::to_string(&pieces).unwrap_or_default()
}

/// A piece on the shelf.
#[derive(Clone, Debug, Serialize)]
struct ShelfPiece {
    id: String,
    name: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    offer: Option<Offer>,
    #[serde(skip_serializing_if = "Option::is_none")]
    problem: Option<String>,
}

fn piece(record: &Value) -> ShelfPiece {
    let (name, offer, problem) = match Subject::parse(&text(&record["text"])) {
        Ok(subject) => (
            name_of(subject.case()),
            Some(offer(&solve(subject.case()))),
            None,
        ),
        Err(fault) => (
            words::UNNAMED.to_owned(),
            None,
            Some(fault.problem().message),
        ),
    };
    ShelfPiece {
        id: text(&record["id"]),
        name,
        offer,
        problem,
    }
}

fn items(list: &Value) -> &[Value] {
    list.as_array().map_or(&[], Vec::as_slice)
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn name_of(case: &Case) -> String {
    let name = as_typed(&case.piece.name);
    if !name.is_empty() {
        return name;
    }
    case.piece
        .form
        .map_or(words::UNNAMED, Form::label)
        .to_owned()
}

/// The plan for a shelf.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Planned {
    /// The page; empty if a limit cannot be used.
    #[serde(skip)]
    pub blocks: Vec<Block>,
    /// The first sentence of the page, to be announced.
    pub sentence: String,
    /// What is wrong with the limits.
    pub problems: Problems,
    /// Id of the currency of the plan.
    pub currency: &'static str,
    /// Id and name of every currency on the shelf, most common first.
    pub currencies: Vec<(&'static str, &'static str)>,
}

/// What is wrong with the limits; empty if nothing is.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Problems {
    /// The problem with the money.
    pub money: String,
    /// The problem with the hours.
    pub hours: String,
}

/// Plans the work on a shelf. The question is JSON text: `{"money", "hours"}`, both as typed; `"currency"`;
/// `"pieces"`, as answered by [`offers_json`]; `"left_out"`, a list of ids; and `"together"`, pairs of ids
/// where the first piece is worked on only if the second is.
#[must_use]
pub fn plan(question: &str) -> Planned {
    let question: Value = serde_json::from_str(question).unwrap_or_default();
    answer(&PlanQuestion::new(&question))
}

struct PlanQuestion {
    money: String,
    hours: String,
    currency: String,
    pieces: Vec<ShelfPiece>,
    left_out: Vec<String>,
    together: Vec<(String, String)>,
}

impl PlanQuestion {
    fn new(question: &Value) -> Self {
        let pieces = items(&question["pieces"]).iter().map(|piece| ShelfPiece {
            id: text(&piece["id"]),
            name: text(&piece["name"]),
            offer: Offer::from_value(&piece["offer"]),
            problem: piece["problem"].as_str().map(str::to_owned),
        });
        let pairs = items(&question["together"]).iter();
        Self {
            money: text(&question["money"]),
            hours: text(&question["hours"]),
            currency: text(&question["currency"]),
            pieces: pieces.collect(),
            left_out: items(&question["left_out"]).iter().map(text).collect(),
            together: pairs.map(|pair| (text(&pair[0]), text(&pair[1]))).collect(),
        }
    }
}

fn answer(asked: &PlanQuestion) -> Planned {
    let currencies = currencies(asked);
    let wanted = currencies.iter().find(|c| c.id() == asked.currency);
    let currency = wanted
        .or(currencies.first())
        .copied()
        .unwrap_or(Currency::Other);
    let (money, money_problem) = limit(&asked.money, NumberKind::Money, 1e8);
    let (hours, hours_problem) = limit(&asked.hours, NumberKind::Measure, 1e5);
    let blocks = match (money, hours) {
        (Some(money), Some(hours)) => Shelf::new(asked, currency, [money, hours]).blocks(),
        _ => Vec::new(),
    };
    let sentence = match blocks.first() {
        Some(Block::Para { text, .. }) => text.clone(),
        _ => String::new(),
    };
    Planned {
        blocks,
        sentence,
        problems: Problems {
            money: money_problem,
            hours: hours_problem,
        },
        currency: currency.id(),
        currencies: currencies.iter().map(|c| (c.id(), c.label())).collect(),
    }
}

/// The currencies on the shelf, most common first.
fn currencies(asked: &PlanQuestion) -> Vec<Currency> {
    let of = |currency: &Currency| {
        let offers = asked.pieces.iter().filter_map(|p| p.offer.as_ref());
        offers.filter(|o| o.currency == *currency).count()
    };
    let mut found: Vec<Currency> = Currency::ALL
        .iter()
        .copied()
        .filter(|c| of(c) > 0)
        .collect();
    found.order_by_key(|c| std::cmp::Reverse(of(c)));
    found
}

/// Reads a limit. It is infinite if the text is empty, and `None` with a problem if the text cannot be
/// used. An "h" for hours may follow the number.
fn limit(text: &str, kind: NumberKind, most: f64) -> (Option<f64>, String) {
    let text = text.trim().trim_end_matches('h');
    if text.trim().is_empty() {
        return (Some(f64::INFINITY), String::new());
    }
    match number_typed(text, kind, (0.0, most)) {
        Ok(number) => (Some(number), String::new()),
        Err((message, remedy)) => (None, format!("{message} {remedy}")),
    }
}

/// The pieces in the plan, with everything that planning needs.
struct Shelf<'a> {
    pieces: Vec<(&'a str, &'a Offer)>,
    /// Names of the pieces not in the plan, with the reason.
    others: Vec<String>,
    stock: Vec<Vec<StockChoice<2>>>,
    needs: Vec<Need>,
    limits: [f64; 2],
    format: MoneyFormat,
}

impl<'a> Shelf<'a> {
    fn new(asked: &'a PlanQuestion, currency: Currency, limits: [f64; 2]) -> Self {
        let mut others = Vec::new();
        let mut pieces: Vec<(&str, &Offer)> = Vec::new();
        let mut ids: Vec<&str> = Vec::new();
        for piece in &asked.pieces {
            let why = match (&piece.offer, &piece.problem) {
                (_, Some(problem)) => problem,
                _ if asked.left_out.contains(&piece.id) => words::LEFT_OUT,
                (Some(offer), _) if offer.currency == currency => {
                    pieces.push((&piece.name, offer));
                    ids.push(&piece.id);
                    continue;
                }
                _ => words::OTHER_CURRENCY,
            };
            others.push(words::because(&piece.name, why));
        }
        let mut stock: Vec<Vec<StockChoice<2>>> = pieces
            .iter()
            .map(|(_, offer)| offer.choices.iter().map(choice).collect())
            .collect();
        let place = |id: &String| ids.iter().position(|known| known == id);
        let mut needs = Vec::new();
        for (piece, of) in asked.together.iter().filter(|(piece, of)| piece != of) {
            let Some(piece) = place(piece) else { continue };
            let work = |piece: usize| (1..pieces[piece].1.choices.len()).collect();
            if let Some(of) = place(of) {
                needs.push(Need {
                    piece,
                    choices: work(piece),
                    of,
                    one_of: work(of),
                });
            } else if asked.pieces.iter().any(|known| known.id == *of) {
                // A piece outside the plan gets no work.
                stock[piece].truncate(1);
            }
        }
        // A choice that is no longer offered needs nothing.
        for need in &mut needs {
            need.choices.retain(|c| *c < stock[need.piece].len());
            need.one_of.retain(|c| *c < stock[need.of].len());
        }
        Self {
            pieces,
            others,
            stock,
            needs,
            limits,
            format: MoneyFormat::of(Some(currency)),
        }
    }

    fn select(&self, limits: [f64; 2], held: usize) -> Option<Selection<2>> {
        select(&self.stock, &self.needs, limits, held)
    }

    fn blocks(&self) -> Vec<Block> {
        if self.pieces.is_empty() {
            let mut blocks = vec![Block::para(words::NO_PIECES)];
            blocks.extend(self.others());
            return blocks;
        }
        let Some(plan) = self.select(self.limits, MOST_HELD) else {
            let why = if self.needs.len() > MOST_NEEDS {
                words::too_many_pairs(MOST_NEEDS)
            } else {
                words::NOT_SOUND.to_owned()
            };
            return vec![Block::para(why)];
        };
        let mut blocks = vec![Block::said(Tone::Answer, self.sentence(&plan))];
        blocks.push(Block::said(Tone::Plain, self.what_binds(&plan).join(" ")));
        if !plan.is_best() && plan.bound - plan.gain > 0.5 {
            let gap = self.format.amount(plan.bound - plan.gain);
            blocks.push(Block::said(Tone::Quiet, words::not_searched_out(&gap)));
        }
        blocks.extend(self.beside(&plan));
        blocks.extend(self.to_do(&plan));
        blocks.extend(self.not_now(&plan));
        blocks.extend(self.curve(&plan));
        blocks.extend(self.left_alone());
        blocks.extend(self.others());
        blocks.push(Self::basis());
        let child = self.pieces.iter().any(|(_, offer)| offer.child);
        blocks.push(cautions_for(self.named(), child));
        blocks
    }

    /// The choice made for each piece, with the index of the piece.
    fn chosen<'b>(
        &'b self,
        plan: &'b Selection<2>,
    ) -> impl Iterator<Item = (usize, &'a OfferedChoice)> {
        let picks = self.pieces.iter().zip(&plan.picks).enumerate();
        picks.filter_map(|(place, ((_, offer), pick))| Some((place, offer.choices.get(*pick)?)))
    }

    /// Every treatment that the plan may name.
    fn named(&self) -> TreatmentSet {
        let offered = self.pieces.iter().flat_map(|(_, offer)| &offer.choices);
        let steps = offered.flat_map(|choice| &choice.steps);
        steps.copied().chain([Treatment::Leave]).collect()
    }

    fn sentence(&self, plan: &Selection<2>) -> String {
        let [money, hours] = self.limits;
        let said_money = words::exact_money(self.format.unit(), money);
        let said_hours = words::exact_hours(hours);
        let limits = match (money.is_finite(), hours.is_finite()) {
            (true, true) => words::with_both(&said_money, &said_hours),
            (true, false) => words::with_money(&said_money),
            (false, true) => words::with_hours(&said_hours),
            (false, false) => words::WITHOUT_LIMITS.to_owned(),
        };
        let worked = self.chosen(plan).filter(|(_, made)| made.is_work()).count();
        if worked == 0 {
            let any = self.pieces.iter().any(|(_, offer)| offer.advised > 0);
            return if any {
                words::nothing_fits(&limits)
            } else {
                words::LEAVE_ALL.to_owned()
            };
        }
        words::work_on(
            &leavewell_model::terms::capital(&limits),
            worked,
            self.pieces.len(),
            &self.format.amount(plan.gain),
            &words::money(self.format.unit(), plan.uses[0]),
            &words::hours(plan.uses[1]),
        )
    }

    /// What the reader must know besides the totals.
    fn beside(&self, plan: &Selection<2>) -> Vec<Block> {
        let count = |is: fn(&Offer) -> bool| {
            let worked = self.chosen(plan).filter(|(_, made)| made.is_work());
            worked
                .filter(|(place, _)| is(self.pieces[*place].1))
                .count()
        };
        let mut said = Vec::new();
        if count(|offer| offer.kept) > 0 {
            said.push(Block::said(Tone::Quiet, words::SOME_KEPT));
        }
        let assumed = count(|offer| offer.assumed);
        if assumed > 0 {
            said.push(Block::said(Tone::Quiet, words::some_assumed(assumed)));
        }
        said
    }

    /// Table row for a piece and the work on it.
    fn row(&self, place: usize, made: &OfferedChoice) -> Vec<String> {
        let (name, offer) = self.pieces[place];
        let mut what = made.name.clone();
        if offer.refer {
            what.push_str(". ");
            what.push_str(words::SEE_FIRST);
        }
        vec![
            name.to_owned(),
            what,
            self.format.amount(made.gain),
            self.format.amount(made.cost),
            made.hours.to_string(),
        ]
    }

    /// What raising each limit would bring.
    fn what_binds(&self, plan: &Selection<2>) -> Vec<String> {
        let [money, hours] = self.limits;
        let free = !money.is_finite() && !hours.is_finite();
        let as_advised = self
            .pieces
            .iter()
            .zip(&plan.picks)
            .all(|((_, offer), pick)| offer.advised == *pick);
        match (free, as_advised) {
            (true, true) => return vec![words::NO_LIMIT_SET.to_owned()],
            (true, false) => return vec![words::PAIRS_HOLD_BACK.to_owned()],
            (false, true) => return vec![words::NOTHING_HELD_BACK.to_owned()],
            (false, false) => {}
        }
        let mut said = Vec::new();
        let mut ask = |limits, more: &str| {
            let gain = self
                .select(limits, MOST_HELD)
                .map_or(0.0, |then| then.gain - plan.gain);
            said.push(if gain >= 0.5 {
                words::more_brings(more, &self.format.amount(gain))
            } else {
                words::more_brings_nothing(more)
            });
        };
        if money.is_finite() {
            let more = step(
                0.1 * money,
                &[10.0, 25.0, 50.0, 100.0, 250.0, 500.0, 1000.0],
            );
            ask([money + more, hours], &self.format.amount(more));
        }
        if hours.is_finite() {
            let more = step(0.1 * hours, &[1.0, 2.0, 5.0, 10.0, 20.0, 50.0]);
            ask([money, hours + more], &words::hours(more));
        }
        said
    }

    fn to_do(&self, plan: &Selection<2>) -> Vec<Block> {
        let mut work: Vec<(usize, &OfferedChoice)> = self
            .chosen(plan)
            .filter(|(_, made)| made.is_work())
            .collect();
        if work.is_empty() {
            return Vec::new();
        }
        work.order_by(|a, b| b.1.gain.total_cmp(&a.1.gain));
        let high: f64 = work.iter().map(|(_, made)| made.cost_high).sum();
        let rows = work.iter().map(|(place, made)| self.row(*place, made));
        let table = Table {
            caption: words::TO_DO_CAPTION.to_owned(),
            columns: columns(&COLUMNS),
            rows: rows.collect(),
        };
        let over = high > self.limits[0] + 0.5;
        let high = words::cost_high(&words::money(self.format.unit(), high), over);
        vec![Block::section(
            "plan.work",
            words::TO_DO,
            vec![Block::Table(table), Block::said(Tone::Quiet, high)],
        )]
    }

    /// The pieces for which the limits keep the plan from following their own advice.
    fn not_now(&self, plan: &Selection<2>) -> Option<Block> {
        let rows: Vec<Vec<String>> = self
            .chosen(plan)
            .filter_map(|(place, made)| {
                let offer = self.pieces[place].1;
                let advised = offer.choices.get(offer.advised)?;
                let instead = if made.is_work() {
                    made.name.clone()
                } else {
                    words::LEFT_FOR_NOW.to_owned()
                };
                let row = || [self.row(place, advised), vec![instead]].concat();
                (advised != made).then(row)
            })
            .collect();
        let table = Table {
            caption: words::NOT_NOW_CAPTION.to_owned(),
            columns: [columns(&COLUMNS), columns(&[words::INSTEAD])].concat(),
            rows,
        };
        (!table.rows.is_empty())
            .then(|| Block::section("plan.not_now", words::NOT_NOW, vec![Block::Table(table)]))
    }

    /// The gain of the best plan for other sums of money, with the hours unchanged.
    fn curve(&self, plan: &Selection<2>) -> Option<Block> {
        let [money, hours] = self.limits;
        let all = self.select([f64::INFINITY, hours], ROUGHLY)?;
        let most = if money.is_finite() {
            money.max(all.uses[0])
        } else {
            all.uses[0]
        };
        if all.gain < 0.5 || most < 1.0 {
            return None;
        }
        let steps: u32 = match self.pieces.len() {
            0..30 => 100,
            30..200 => 40,
            _ => 20,
        };
        let mut points = vec![(0.0, 0.0)];
        for i in 0..=steps {
            let money = most * f64::from(i) / f64::from(steps);
            let Some(found) = self.select([money, hours], ROUGHLY) else {
                continue;
            };
            // More money never brings less, because the cheaper plan is still possible.
            let (from, before) = points.last().copied().unwrap_or_default();
            if found.gain > before {
                points.push((found.uses[0].max(from), found.gain));
            }
        }
        let yours = money.is_finite().then_some((money, plan.gain));
        Some(curve(&points, most, yours, self.format))
    }

    fn left_alone(&self) -> Option<Block> {
        let alone = self.pieces.iter().filter(|(_, offer)| {
            let advised = offer.choices.get(offer.advised);
            advised.is_none_or(|made| !made.is_work())
        });
        let items: Vec<String> = alone.map(|(name, _)| (*name).to_owned()).collect();
        let summary = words::left_alone(items.len());
        (!items.is_empty())
            .then(|| Block::fold("plan.alone", &summary, vec![Block::List { items }]))
    }

    fn others(&self) -> Option<Block> {
        let list = Block::List {
            items: self.others.clone(),
        };
        let summary = words::not_planned(self.others.len());
        (!self.others.is_empty()).then(|| Block::fold("plan.others", &summary, vec![list]))
    }

    fn basis() -> Block {
        let said = [words::BASIS_GAIN, words::BASIS_HOURS, words::BASIS_CHOICE];
        let said = said.map(Block::para).to_vec();
        Block::fold("plan.basis", words::BASIS, said)
    }
}

fn choice(made: &OfferedChoice) -> StockChoice<2> {
    StockChoice {
        gain: made.gain,
        uses: [made.cost, made.hours],
        keeps: made.keeps,
    }
}

fn columns(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

/// The first step that is at least `least`, or else the last.
fn step(least: f64, steps: &[f64]) -> f64 {
    let found = steps.iter().find(|s| **s >= least).or(steps.last());
    found.copied().unwrap_or(least)
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::record::Draft;
    use serde_json::json;

    const TUREEN: &str = include_str!("../../tests/cases/copper_reproduction_tureen.json");
    const TEAPOT: &str = include_str!("../../tests/cases/leaking_teapot.json");
    const TRAY: &str = include_str!("../../tests/cases/worn_tray.json");
    const CANDLESTICKS: &str = include_str!("../../tests/cases/hallmarked_candlesticks.json");

    fn offers(records: &[(&str, &str)]) -> Value {
        let asked: Vec<Value> = records
            .iter()
            .map(|(id, text)| json!({ "id": id, "text": text }))
            .collect();
        serde_json::from_str(&offers_json(&json!(asked).to_string())).unwrap()
    }

    fn plan(question: &Value) -> Value {
        planned(&question.to_string())
    }

    /// The answer as the caller receives it, together with its blocks.
    fn planned(question: &str) -> Value {
        let plan = super::plan(question);
        let mut answer = serde_json::to_value(&plan).unwrap();
        answer["blocks"] = serde_json::to_value(&plan.blocks).unwrap();
        answer
    }

    fn words_of(answer: &Value) -> String {
        answer["blocks"].to_string()
    }

    #[test]
    fn without_limits_the_plan_follows_the_advice_for_each_piece() {
        let pieces = offers(&[("a", TUREEN), ("b", TEAPOT), ("c", TRAY)]);
        for (piece, text) in items(&pieces).iter().zip([TUREEN, TEAPOT, TRAY]) {
            let (case, problems) = Draft::parse(text).unwrap().read();
            let counsel = leavewell_model::counsel::weigh_at_once(&case, problems).counsel;
            let offer = Offer::from_value(&piece["offer"]).unwrap();
            let advised = &offer.choices[offer.advised];
            let is_work = |step: &Treatment| *step != Treatment::Leave;
            let steps: Vec<Treatment> = counsel.steps.into_iter().filter(is_work).collect();
            assert_eq!(advised.steps, steps);
        }
        let said = words_of(&plan(&json!({ "pieces": pieces })));
        assert!(
            said.contains("Without a limit, work on 2 of 3 pieces and leave the other as it is")
        );
        assert!(said.contains(words::NO_LIMIT_SET));
    }

    #[test]
    fn an_unusable_limit_states_the_valid_range_and_plans_nothing() {
        let pieces = offers(&[("a", TUREEN)]);
        let answer = plan(&json!({ "pieces": pieces, "money": "lots", "hours": "-2" }));
        assert_eq!(answer["blocks"], json!([]));
        for (field, what_can) in [("money", "in digits"), ("hours", "0 to 1")] {
            let problem = answer["problems"][field].as_str().unwrap();
            assert!(problem.contains(what_can), "{field}: {problem}");
        }
    }

    #[test]
    fn without_money_nothing_that_costs_money_is_planned() {
        let pieces = offers(&[("a", TUREEN), ("b", TEAPOT)]);
        let said = words_of(&plan(&json!({ "pieces": pieces, "money": "0" })));
        assert!(
            said.contains("Leave every piece as it is: with £0 to spend"),
            "{said}"
        );
        assert!(said.contains(words::LEFT_FOR_NOW));
        assert!(said.contains("more would bring"));
    }

    #[test]
    fn pieces_outside_the_plan_are_named_with_a_reason() {
        let pieces = offers(&[
            ("a", TUREEN),
            ("b", CANDLESTICKS),
            ("c", "{\"format\":"),
            ("d", TEAPOT),
        ]);
        let answer = plan(&json!({ "pieces": pieces, "left_out": ["d"] }));
        assert_eq!(answer["currency"], "GBP");
        assert_eq!(answer["currencies"][0][0], "GBP");
        assert_eq!(answer["currencies"][1][0], "other");
        let said = words_of(&answer);
        assert!(said.contains("Not in the plan: 3"), "{said}");
        assert!(said.contains(words::LEFT_OUT) && said.contains(words::OTHER_CURRENCY));
        let other = words_of(&plan(&json!({ "pieces": pieces, "currency": "other" })));
        assert!(!other.contains("£"), "{other}");
    }

    #[test]
    fn work_that_needs_an_unplanned_piece_waits() {
        let pieces = offers(&[("a", TUREEN), ("b", TEAPOT), ("c", CANDLESTICKS)]);
        let ask = |left_out: Value, on: &str| {
            let question =
                json!({ "pieces": pieces, "left_out": left_out, "together": [["a", on]] });
            words_of(&plan(&question))
        };
        assert!(ask(json!([]), "b").contains("work on both pieces"));
        assert!(ask(json!(["b"]), "b").contains(words::LEFT_FOR_NOW));
        assert!(ask(json!([]), "c").contains(words::LEFT_FOR_NOW));
        // A piece that is gone holds nothing up.
        assert!(ask(json!([]), "gone").contains("work on both pieces"));
    }

    #[test]
    fn every_planned_treatment_has_its_caution_and_the_deferral_line() {
        let pieces = offers(&[("a", TUREEN), ("b", TEAPOT)]);
        let said = words_of(&plan(&json!({ "pieces": pieces })));
        for id in [
            "caution.T14a",
            "caution.T17",
            "caution.child",
            "caution.deferral",
        ] {
            let text = leavewell_model::ledger::caution(id).unwrap().text;
            assert!(said.contains(text), "{id}");
        }
    }

    #[test]
    fn nonsense_gives_no_plan_and_no_panic() {
        for question in [
            "",
            "[]",
            "{",
            "null",
            "{\"pieces\":[{\"offer\":{\"choices\":[{}]}}]}",
        ] {
            let answer = planned(question);
            assert!(words_of(&answer).contains(words::NO_PIECES), "{question}");
            let _: Value = serde_json::from_str(&offers_json(question)).unwrap();
        }
        // A tampered file could hold a first choice that costs something.
        let mut pieces = offers(&[("a", TUREEN)]);
        pieces[0]["offer"]["choices"][0]["cost"] = json!(5);
        let said = words_of(&plan(&json!({ "pieces": pieces })));
        assert!(said.contains(words::NOT_SOUND), "{said}");
    }

    #[test]
    fn a_name_from_a_file_stays_text_and_keeps_the_reading_direction() {
        let record = json!({ "format": "leavewell-case", "version": 1, "piece": { "name": "<b>\u{202e}x" } });
        let pieces = offers(&[("a", &record.to_string())]);
        assert_eq!(pieces[0]["name"], "<b>x");
    }
}
