//! What the closed pieces on a shelf teach, and how well the program has said.

use leavewell_model::terms::ShortSort;
use serde::{Deserialize, Serialize};

use super::as_typed::as_typed;
use super::block::{Block, Table, Tone};
use super::learning_example::example;
use super::learning_picture::{bars, coverage, running};
use super::money_text::MoneyFormat;
use super::number_text::figures;
use super::wording::learning as words;
use super::wording::not_counted::not_counted;
use leavewell_model::learn::{
    Alarm, Closing, MishapCount, PieceEvidence, PricedState, ScoredPrediction, Shift, TaughtBy,
    Teaching, Topic, TopicRecord, TurnedOn, count_mishaps, evidence, in_percent, more_went_wrong,
    outside_the_range, record_of,
};
use leavewell_model::ledger::{Figure, FigureId, Ledger, meaning};
use leavewell_model::record::{
    COMPARED_KINDS, Case, Currency, Date, Draft, Ending, Form, PredictedWhen, SoldAs, TaughtFigure,
    TaughtFigures,
};
use leavewell_model::terms::small;

/// The question, as JSON text.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct LearningQuestion {
    /// The day, from which age is counted.
    pub today: String,
    /// Whether prices are taught.
    pub prices: bool,
    /// Whether bills and hours are taught.
    pub works: bool,
    /// Whether the invented pieces are asked about instead of the shelf.
    pub example: bool,
    /// Keys and records of the shelf.
    pub pieces: Vec<(String, String)>,
}

/// The answer.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Learning {
    /// The taught figures that hold from now on, as text.
    pub layer: String,
    /// What the pieces teach.
    pub blocks: Vec<Block>,
    /// How well the program has said.
    pub how_well: Vec<Block>,
    /// The pieces that count most, furthest first.
    pub pulls: Vec<PullingPiece>,
    /// The pieces that were left out.
    pub left_out: Vec<PullingPiece>,
    /// The pieces that were sold, to be used as prices of like pieces.
    pub sales: Vec<SoldPiece>,
}

/// A piece that was sold.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SoldPiece {
    /// Its key.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Id of its form; empty if unknown.
    pub form: String,
    /// Its price in words.
    pub price: String,
    /// The fields of an entry of `comparables`, each with its text.
    pub fields: Vec<(String, String)>,
}

/// A piece that moves a taught figure far, or one that was left out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PullingPiece {
    /// Its key.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What it moves; empty for one that was left out.
    pub what: String,
}

/// Most pieces that are shown as pulling.
const MOST_PULLS: usize = 5;
/// Most figures of a topic that are shown at first.
const MOST_SHOWN: usize = 5;
/// Most open pieces that are tried with the taught figures.
const MOST_TRIED: usize = 12;
const TOPICS: [(Topic, &str); 3] = [
    (Topic::Prices, words::PRICES),
    (Topic::Bills, words::BILLS),
    (Topic::Hours, words::HOURS),
];

/// Works out what the pieces of a shelf teach.
#[must_use]
pub fn learning(question: &str) -> Learning {
    let asked: LearningQuestion = serde_json::from_str(question).unwrap_or_default();
    let closings = if asked.example {
        example()
    } else {
        let read = asked.pieces.iter().filter_map(|(id, text)| {
            let case = Draft::parse(text).ok()?.read().0;
            Some(Closing {
                id: id.clone(),
                case,
            })
        });
        read.collect()
    };
    let today = Date::parse(&asked.today);
    let told = evidence(&closings, today);
    let teaching = Teaching::new(&told).with_fees(&closings);
    let shelf = LearntShelf {
        closings: &closings,
        told: &told,
        teaching: &teaching,
        mishaps: count_mishaps(&told),
    };
    let on = TurnedOn {
        prices: asked.prices,
        works: asked.works,
    };
    Learning {
        layer: if asked.example {
            String::new()
        } else {
            teaching.layer(on).to_text()
        },
        blocks: shelf.blocks(asked.example),
        how_well: shelf.how_well(),
        pulls: shelf.pulls(),
        left_out: shelf.left_out(),
        sales: closings.iter().filter_map(sold_piece).collect(),
    }
}

/// A sold piece as a price of a like piece. `of` names it, so that it never counts twice.
fn sold_piece(closing: &Closing) -> Option<SoldPiece> {
    let case = &closing.case;
    let sale = &case.closed.sale;
    // The price of several is no price of one.
    let several = case.pieces.are_several();
    if case.closed.outcome != Some(Ending::Sold) || sale.sold_as == Some(SoldAs::Asking) || several
    {
        return None;
    }
    let price = sale.price.filter(|price| *price > 0.0)?;
    let currency = sale.currency.or(case.market.currency);
    let on = sale.on.or(case.closed.on);
    let frozen = case
        .predicted
        .iter()
        .find(|p| p.event == PredictedWhen::Offered);
    let state = frozen.and_then(|p| PricedState::parse(&p.state));
    let kind = frozen.and_then(|p| p.kind);
    let kind = COMPARED_KINDS
        .iter()
        .find(|(_, known)| kind.is_some() && *known == kind);
    let fields = [
        ("price", price.to_string()),
        ("what", sale.sold_as.map_or("", SoldAs::id).to_owned()),
        ("on", on.map_or_else(String::new, |on| on.to_string())),
        ("currency", currency.map_or("", Currency::id).to_owned()),
        ("kind", kind.map_or("", |(id, _)| *id).to_owned()),
        (
            "bleed",
            state.map_or_else(String::new, |state| format!("{:.3}", state.bare)),
        ),
        ("of", closing.id.clone()),
    ];
    Some(SoldPiece {
        id: closing.id.clone(),
        name: name_of(case),
        form: case.piece.form.map_or("", Form::id).to_owned(),
        price: MoneyFormat::of(currency).exact(price),
        fields: fields
            .into_iter()
            .filter(|(_, text)| !text.is_empty())
            .map(|(field, text)| (field.to_owned(), text))
            .collect(),
    })
}

struct LearntShelf<'a> {
    closings: &'a [Closing],
    told: &'a [PieceEvidence],
    teaching: &'a Teaching,
    mishaps: MishapCount,
}

impl LearntShelf<'_> {
    fn blocks(&self, invented: bool) -> Vec<Block> {
        let mut blocks = Vec::new();
        if invented {
            blocks.push(Block::said(Tone::Note, words::INVENTED));
        }
        let counts = TOPICS.map(|(topic, _)| self.teaching.of(topic).pieces);
        let telling = self
            .told
            .iter()
            .filter(|one| !one.seen.is_empty() || !one.results.is_empty())
            .count();
        if telling == 0 {
            blocks.push(Block::said(Tone::Answer, words::NONE));
        } else {
            let [prices, bills, hours] = counts;
            let text = words::what_there_is(telling, prices, bills, hours);
            blocks.push(Block::said(Tone::Answer, text));
            blocks.push(Block::said(Tone::Quiet, words::CLAIMS));
            if self.has_all_sold() {
                blocks.push(Block::said(Tone::Note, words::ALL_SOLD));
            }
            for (topic, name) in TOPICS {
                blocks.extend(self.topic(topic, name));
            }
            blocks.extend(self.fees());
            if !invented {
                blocks.push(self.changes());
            }
        }
        blocks.extend(self.not_counted());
        blocks
    }

    /// Whether so many pieces were offered that one at least should have come back unsold.
    fn has_all_sold(&self) -> bool {
        let ended = |ending| {
            let of = self.closings.iter();
            of.filter(|c| c.case.closed.outcome == Some(ending)).count()
        };
        let ledger = Ledger::standard();
        let sold = ledger.value(FigureId::FEE_SOLD);
        let luck = (0..ended(Ending::Sold)).fold(1.0, |luck, _| luck * sold);
        ended(Ending::Unsold) == 0 && luck < ledger.value(FigureId::LEARN_ALL_SOLD)
    }

    fn topic(&self, topic: Topic, name: &str) -> Option<Block> {
        let learnt = self.teaching.of(topic);
        if learnt.pieces == 0 {
            return None;
        }
        let taught = self.teaching.figures(topic);
        let on = |by: &TaughtBy| learnt.pieces_on(by.shift);
        let row = |by: &TaughtBy| {
            let shipped = Ledger::standard().figure(by.figure.figure);
            let text = taught_sentence(shipped, &by.figure, on(by));
            (meaning_of(shipped), text)
        };
        let (told, along): (Vec<&TaughtBy>, Vec<&TaughtBy>) =
            taught.iter().partition(|by| on(by) > 0);
        let mut told = told;
        told.order_by_key(|by| std::cmp::Reverse(on(by)));
        // Of figures that move together, such as one for each buyer, one stands for all.
        let (first, rest): (Vec<&TaughtBy>, Vec<&TaughtBy>) = {
            let mut shown: Vec<Shift> = Vec::new();
            told.into_iter().partition(|by| {
                let new = !shown.contains(&by.shift) && shown.len() < MOST_SHOWN;
                shown.extend(new.then_some(by.shift));
                new
            })
        };
        let id = topic_id(topic);
        let mut blocks = vec![Block::Facts {
            rows: first.iter().map(|by| row(by)).collect(),
        }];
        if !rest.is_empty() {
            let rows = rest.iter().map(|by| row(by)).collect();
            blocks.push(Block::fold(
                &format!("learning.{id}.more"),
                words::MORE_TOLD,
                vec![Block::Facts { rows }],
            ));
        }
        let outside = outside_the_range(learnt);
        let far: Vec<String> = taught
            .iter()
            .filter(|by| outside.contains(&by.shift))
            .map(|by| meaning_of(Ledger::standard().figure(by.figure.figure)))
            .collect();
        if !far.is_empty() {
            blocks.push(Block::said(Tone::Note, words::OUTSIDE));
            blocks.push(Block::List { items: far });
        }
        if !along.is_empty() {
            let rows = along.iter().map(|by| row(by)).collect();
            blocks.push(Block::fold(
                &format!("learning.{id}.along"),
                words::BY_KINSHIP,
                vec![
                    Block::said(Tone::Quiet, words::KINSHIP_MEANS),
                    Block::Facts { rows },
                ],
            ));
        }
        Some(Block::section(&format!("learning.{id}"), name, blocks))
    }

    fn fees(&self) -> Option<Block> {
        let fees = &self.teaching.fees;
        let rows = fees.iter().map(|fee| {
            let shipped = Ledger::standard().figure(fee.figure);
            (meaning_of(shipped), taught_sentence(shipped, fee, 0))
        });
        let rows: Vec<(String, String)> = rows.collect();
        (!rows.is_empty())
            .then(|| Block::section("learning.fees", words::FEES, vec![Block::Facts { rows }]))
    }

    /// What the open pieces would be advised with everything taught.
    fn changes(&self) -> Block {
        let layer = self.teaching.layer(TurnedOn {
            prices: true,
            works: true,
        });
        let open = || {
            let of = self.closings.iter();
            of.filter(|closing| closing.case.closed.outcome.is_none())
        };
        let advised = |case: &Case, taught: TaughtFigures| {
            let case = Case {
                taught,
                ..case.clone()
            };
            let counsel = leavewell_model::counsel::weigh_at_once(&case, Vec::new()).counsel;
            (counsel.steps, counsel.sentence)
        };
        let mut rows = Vec::new();
        for closing in open().take(MOST_TRIED) {
            let (before, said) = advised(&closing.case, TaughtFigures::default());
            let (after, then) = advised(&closing.case, layer.clone());
            if before != after {
                rows.push(vec![name_of(&closing.case), said, then]);
            }
        }
        let tried = open().count().min(MOST_TRIED);
        let mut blocks = vec![Block::para(if rows.is_empty() {
            words::CHANGES_NOTHING.to_owned()
        } else {
            words::changes(rows.len(), tried)
        })];
        if !rows.is_empty() {
            blocks.push(Block::Table(Table {
                caption: words::CHANGED_CAPTION.to_owned(),
                columns: words::CHANGED_COLUMNS.map(str::to_owned).to_vec(),
                rows,
            }));
        }
        if open().count() > MOST_TRIED {
            blocks.push(Block::said(Tone::Quiet, words::only_first(MOST_TRIED)));
        }
        Block::section("learning.changes", words::CHANGES, blocks)
    }

    fn not_counted(&self) -> Option<Block> {
        let rows: Vec<(String, String)> = self
            .told
            .iter()
            .flat_map(|one| {
                let name = named(&one.name);
                let mut why: Vec<&str> = one
                    .not_counted
                    .iter()
                    .map(|(_, why)| not_counted(*why))
                    .collect();
                why.dedup();
                why.into_iter()
                    .map(move |why| (name.clone(), why.to_owned()))
            })
            .collect();
        (!rows.is_empty()).then(|| {
            Block::fold(
                "learning.not-counted",
                words::NOT_COUNTED,
                vec![Block::Facts { rows }],
            )
        })
    }

    /// The pieces that move a figure most, over all topics, each with the figure it moves furthest.
    fn pulls(&self) -> Vec<PullingPiece> {
        let mut found: Vec<(String, f64, String)> = Vec::new();
        for (topic, _) in TOPICS {
            let learnt = self.teaching.of(topic);
            let shifts = learnt
                .shifts
                .iter()
                .filter(|shift| learnt.pieces_on(**shift) > 0);
            for shift in shifts {
                let Some(figure) = shift.figures().first().copied() else {
                    continue;
                };
                for (id, pull) in learnt.pulls(*shift).into_iter().take(MOST_PULLS) {
                    let text = meaning_of(Ledger::standard().figure(figure));
                    match found.iter_mut().find(|(known, _, _)| *known == id) {
                        Some(known) if known.1.abs() >= pull.abs() => {}
                        Some(known) => (known.1, known.2) = (pull, text),
                        None => found.push((id, pull, text)),
                    }
                }
            }
        }
        found.order_by(|a, b| b.1.abs().total_cmp(&a.1.abs()));
        found.truncate(MOST_PULLS);
        found
            .into_iter()
            .map(|(id, pull, figure)| PullingPiece {
                name: self.name(&id),
                what: words::pulls(&figure, in_percent(pull)),
                id,
            })
            .collect()
    }

    fn name(&self, id: &str) -> String {
        let of = self.closings.iter().find(|closing| closing.id == id);
        of.map_or_else(String::new, |closing| name_of(&closing.case))
    }

    fn left_out(&self) -> Vec<PullingPiece> {
        let out = self.closings.iter();
        out.filter(|closing| closing.case.closed.left_out)
            .map(|closing| PullingPiece {
                id: closing.id.clone(),
                name: name_of(&closing.case),
                what: String::new(),
            })
            .collect()
    }

    fn how_well(&self) -> Vec<Block> {
        let mut blocks = vec![Block::said(Tone::Quiet, words::HOW_WELL_MEANS)];
        for (topic, name) in TOPICS {
            let record = record_of(topic, self.closings);
            if !record.predictions.is_empty() {
                blocks.push(record_blocks(topic, name, &record, self.closings));
            }
        }
        blocks.push(self.mishap_blocks());
        blocks
    }

    fn mishap_blocks(&self) -> Block {
        let count = &self.mishaps;
        let mut blocks = Vec::new();
        if count.works < 0.5 {
            blocks.push(Block::para(words::NO_RESULTS));
        } else {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole counts
            let (works, bad) = (count.works as usize, count.bad as usize);
            let expected = figures(count.expected);
            blocks.push(Block::para(words::went_wrong(works, bad, &expected)));
            if more_went_wrong(count) {
                blocks.push(Block::said(Tone::Note, words::MORE_WRONG));
            }
            let percent = |p: f64| format!("{} %", figures(100.0 * p));
            let rows = count.cells.iter().filter(|cell| cell.n > 0.0).map(|cell| {
                let shipped = Ledger::standard().figure(cell.chance);
                let chances = [percent(shipped.value), percent(cell.chance_seen())];
                vec![
                    meaning_of(shipped),
                    figures(cell.n),
                    figures(cell.bad),
                    chances.join(", "),
                ]
            });
            let table = Block::Table(Table {
                caption: words::CELL_CAPTION.to_owned(),
                columns: words::CELL_COLUMNS.map(str::to_owned).to_vec(),
                rows: rows.collect(),
            });
            blocks.push(Block::fold(
                "learning.mishaps.cells",
                words::CELL_CAPTION,
                vec![table],
            ));
        }
        blocks.push(Block::said(Tone::Quiet, words::NOT_TAUGHT));
        Block::section("learning.mishaps", words::MISHAPS, blocks)
    }
}

fn topic_id(topic: Topic) -> &'static str {
    match topic {
        Topic::Prices => "prices",
        Topic::Bills => "bills",
        Topic::Hours => "hours",
    }
}

fn named(name: &str) -> String {
    let name = as_typed(name);
    if name.is_empty() {
        words::UNNAMED.to_owned()
    } else {
        name
    }
}

fn name_of(case: &Case) -> String {
    match case.piece.form {
        Some(form) if case.piece.name.trim().is_empty() => form.label().to_owned(),
        _ => named(&case.piece.name),
    }
}

/// The meaning of a figure, without its full stop.
fn meaning_of(figure: &Figure) -> String {
    let text = meaning(figure.id).unwrap_or(figure.id);
    text.trim_end_matches('.').to_owned()
}

/// What was judged of a figure, and what closed pieces make of it.
pub(super) fn taught_sentence(shipped: &Figure, taught: &TaughtFigure, pieces: usize) -> String {
    let range = |[low, middle, high]: [f64; 3]| {
        let [low, middle, high] = [low, middle, high].map(figures);
        if low == high {
            middle
        } else {
            words::middle_and_ends(&middle, &low, &high)
        }
    };
    let judged = range([shipped.low, shipped.value, shipped.high]);
    let now = range([taught.low, taught.value, taught.high]);
    words::judged_and_taught(&judged, &now, pieces)
}

fn record_blocks(topic: Topic, name: &str, record: &TopicRecord, closings: &[Closing]) -> Block {
    let id = format!("learning.said.{}", topic_id(topic));
    let n = record.predictions.len();
    let mut blocks = Vec::new();
    if record.is_too_few() {
        let few = Ledger::standard().value(FigureId::LEARN_FEW);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a whole number
        blocks.push(Block::para(words::too_few(n, few as usize)));
    } else {
        let hits = record.coverage.map(|one| one.hits);
        blocks.push(Block::para(words::in_bands(hits, n)));
        if record.alarms.is_empty() {
            blocks.push(Block::para(words::NO_ALARM));
        }
        for alarm in &record.alarms {
            blocks.push(Block::said(Tone::Note, alarm_words(*alarm)));
        }
        blocks.push(coverage(&id, name, record));
        let mut fold = vec![bars(&id, name, record)];
        let gain = record.running_gain();
        if gain.len() > 1 {
            fold.push(running(&id, &gain));
        }
        blocks.push(Block::fold(&format!("{id}.bars"), words::BARS, fold));
    }
    blocks.push(Block::fold(
        &format!("{id}.each"),
        words::EACH,
        vec![each(topic, &record.predictions, closings)],
    ));
    Block::section(&id, name, blocks)
}

fn each(topic: Topic, said: &[ScoredPrediction], closings: &[Closing]) -> Block {
    let row = |one: &ScoredPrediction| {
        let currency = closings.iter().find(|closing| closing.id == one.id);
        let format = MoneyFormat::of(currency.and_then(|closing| closing.case.market.currency));
        let text = |x: f64| match topic {
            Topic::Hours => figures(x),
            Topic::Prices | Topic::Bills => format.amount(x),
        };
        let [low, likely, high] = one.predicted.map(text);
        let name = match one.work {
            Some(work) => [&named(&one.name), ": ", &small(work.name())].concat(),
            None => named(&one.name),
        };
        vec![
            name,
            words::middle_and_ends(&likely, &low, &high),
            text(one.happened),
        ]
    };
    Block::Table(Table {
        caption: words::EACH_CAPTION.to_owned(),
        columns: words::EACH_COLUMNS.map(str::to_owned).to_vec(),
        rows: said.iter().map(row).collect(),
    })
}

fn alarm_words(alarm: Alarm) -> &'static str {
    match alarm {
        Alarm::TooLow => words::TOO_LOW,
        Alarm::TooHigh => words::TOO_HIGH,
        Alarm::TooNarrow => words::TOO_NARROW,
        Alarm::TooWide => words::TOO_WIDE,
        Alarm::LearningHasNotHelped => words::NOT_HELPED,
    }
}
