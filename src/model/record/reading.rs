//! Reads a draft's fields into a case, one rule a field, and says what could not be used.

mod closed;
mod findings;
mod measures;
mod of_pages;
mod overrides;
mod parts;
mod pieces;
mod sales;
#[cfg(test)]
mod schema_test;
mod spots;
pub(super) mod wording;
mod work;

use serde_json::{Map, Value};

pub use sales::{COMPARED_KINDS, FLAWS};
use wording as words;

use super::circumstances::MeasuredAs;
use super::schema::{NumberRange, number_range};
use super::{
    Aim, Case, Circumstances, Consents, Date, Market, Piece, Problem, StockEntry, StockStatus,
    TaughtFigures, Word,
};
use crate::ledger::nearest;

/// Earliest and latest year a piece may be said to be from.
const YEARS: (f64, f64) = (1700.0, 2100.0);
/// Most parts and quotes that are read; the rest stays in the draft.
const MOST_ENTRIES: usize = 200;

/// Reads the whole document.
pub(super) fn read(root: &Map<String, Value>) -> (Case, Vec<Problem>) {
    let mut reader = Reader {
        problems: Vec::new(),
    };
    let piece = reader.piece(root);
    let (findings, from) = reader.findings(root);
    let measured = reader.measured_as(root);
    let measures = reader.measures(root, &findings, measured);
    let (pieces, mut parts) = reader.pieces(root, &piece.photos);
    let circumstances = reader.circumstances(root, measured);
    work::failing_fill(circumstances, &mut parts);
    let flaws = reader.flaws(root, &parts, pieces.relation);
    let overrides = reader.overrides(root);
    let looked = reader.section(root, "looked");
    reader.fields_of_pages(root);
    let case = Case {
        piece,
        findings,
        marks: reader.marks(root, &from),
        instruments: reader.instruments(root),
        measures,
        aim: reader.aim(root),
        market: reader.market(root),
        comparables: reader.comparables(root),
        flaws,
        quotes: reader.quotes(root),
        tests: reader.tests(root, &overrides, pieces.count),
        done: reader.done(root),
        proposal: reader.proposal(root),
        closed: reader.closed(root),
        predicted: reader.predicted(root),
        circumstances,
        consents: reader.consents(root),
        stock: reader.stock(root),
        looked_on: reader.day(&looked, "on"),
        next_look: reader.day(&looked, "next"),
        asked_on: reader.date(root),
        taught: TaughtFigures::default(),
        lot: reader.lot(root),
        pieces,
        parts,
        overrides,
    };
    (case, reader.problems)
}

struct Reader {
    problems: Vec<Problem>,
}

/// One object of the document with its path.
struct Section<'a> {
    path: String,
    fields: Option<&'a Map<String, Value>>,
}

impl<'a> Section<'a> {
    fn at(&self, field: &str) -> String {
        if self.path.is_empty() {
            field.to_owned()
        } else {
            format!("{}.{field}", self.path)
        }
    }

    /// Whether exactly this text stands in a field.
    fn text_is(&self, field: &str, text: &str) -> bool {
        self.get(field).and_then(Value::as_str) == Some(text)
    }

    /// What stands in a field; a dot leads into an object.
    fn get(&self, field: &str) -> Option<&'a Value> {
        #[cfg(test)]
        schema_test::note(&self.at(field));
        let (mut holder, mut rest) = (self.fields?, field);
        while let Some((first, after)) = rest.split_once('.') {
            holder = holder.get(first)?.as_object()?;
            rest = after;
        }
        holder
            .get(rest)
            .filter(|v| !v.is_null() && v.as_str() != Some(""))
    }
}

impl Reader {
    fn problem(&mut self, field: String, message: String, remedy: &str) {
        self.problems.push(Problem {
            field,
            message,
            remedy: remedy.to_owned(),
        });
    }

    /// The section at a path whose last step is a field of `holder`.
    fn section<'a>(&mut self, holder: &'a Map<String, Value>, name: &str) -> Section<'a> {
        let field = name.rsplit('.').next().unwrap_or(name);
        let value = holder.get(field).filter(|v| !v.is_null());
        self.object(name.to_owned(), value)
    }

    /// The section in a field of another section.
    fn inner<'a>(&mut self, holder: &Section<'a>, field: &str) -> Section<'a> {
        self.object(holder.at(field), holder.get(field))
    }

    /// What stands at a path as a section. Anything but an object is a problem, noted once.
    fn object<'a>(&mut self, path: String, value: Option<&'a Value>) -> Section<'a> {
        let is_known = |p: &Problem| p.field == path;
        if value.is_some_and(|v| !v.is_object()) && !self.problems.iter().any(is_known) {
            self.problem(path.clone(), words::no_object(&path), words::LEFT_OUT);
        }
        Section {
            path,
            fields: value.and_then(Value::as_object),
        }
    }

    /// The entries of a list at a path whose last step is a field of `root`.
    fn list<'a>(
        &mut self,
        root: &'a Map<String, Value>,
        name: &str,
        most: usize,
    ) -> Vec<Section<'a>> {
        let field = name.rsplit('.').next().unwrap_or(name);
        let Some(value) = root.get(field).filter(|v| !v.is_null()) else {
            return Vec::new();
        };
        let Some(entries) = value.as_array() else {
            self.problem(name.to_owned(), words::no_list(name), words::LEFT_OUT);
            return Vec::new();
        };
        if entries.len() > most {
            self.problem(
                name.to_owned(),
                words::too_many(name, entries.len(), most),
                words::TOO_MANY_REMEDY,
            );
        }
        let mut sections = Vec::new();
        for (i, entry) in entries.iter().take(most).enumerate() {
            let path = format!("{name}[{i}]");
            match entry.as_object() {
                Some(fields) => sections.push(Section {
                    path,
                    fields: Some(fields),
                }),
                None => self.problem(
                    path,
                    words::ENTRY_NO_OBJECT.to_owned(),
                    words::ENTRY_NO_OBJECT_REMEDY,
                ),
            }
        }
        sections
    }

    fn text(&mut self, section: &Section, field: &str) -> Option<String> {
        match section.get(field)? {
            Value::String(text) => Some(text.clone()),
            Value::Number(number) => Some(number.to_string()),
            _ => {
                self.problem(
                    section.at(field),
                    words::NO_TEXT.to_owned(),
                    words::NO_TEXT_REMEDY,
                );
                None
            }
        }
    }

    fn word<W: Word>(&mut self, section: &Section, field: &str) -> Option<W> {
        W::from_id(self.one_of(section, field, &W::ids())?)
    }

    /// One of a few ids.
    fn one_of(
        &mut self,
        section: &Section,
        field: &str,
        ids: &[&'static str],
    ) -> Option<&'static str> {
        let text = self.text(section, field)?;
        let found = ids.iter().find(|id| **id == text).copied();
        if found.is_none() {
            let near = nearest(&text, ids.iter().copied()).unwrap_or("");
            self.problem(
                section.at(field),
                words::no_choice(&shorten(&text)),
                &words::no_choice_remedy(near, &ids.join(", ")),
            );
        }
        found
    }

    fn flag(&mut self, section: &Section, field: &str) -> Option<bool> {
        let value = section.get(field)?;
        let yes = super::draft::yes_or_no(value);
        if yes.is_none() {
            self.problem(
                section.at(field),
                words::NO_FLAG.to_owned(),
                words::NO_FLAG_REMEDY,
            );
        }
        yes
    }

    /// The number in a field, in the range of the schema.
    fn number(&mut self, section: &Section, field: &str) -> Option<f64> {
        let path = section.at(field);
        let range = number_range(&path);
        self.number_of(section, field, range)
    }

    fn number_of(&mut self, section: &Section, field: &str, range: &NumberRange) -> Option<f64> {
        match range.read(section.get(field)?) {
            Ok(number) => Some(number),
            Err((message, remedy)) => {
                self.problem(section.at(field), message, &remedy);
                None
            }
        }
    }

    fn year(&mut self, section: &Section, field: &str) -> Option<u16> {
        let year = self.number(section, field)?;
        if !(YEARS.0..=YEARS.1).contains(&year) {
            let (what, then) = if year < YEARS.0 {
                (words::TOO_EARLY, words::TOO_EARLY_REMEDY)
            } else {
                (words::NO_YEAR, "")
            };
            self.problem(
                section.at(field),
                words::year_is(year, what),
                &words::year_remedy(YEARS.0, YEARS.1, then),
            );
            return None;
        }
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        // checked to be 1700 to 2100
        let whole = year as u16;
        if f64::from(whole).to_bits() == year.to_bits() {
            return Some(whole);
        }
        self.problem(
            section.at(field),
            words::no_whole_year(year),
            words::NO_WHOLE_YEAR_REMEDY,
        );
        None
    }

    /// Answers under `catalogue.`: yes, no, or not known.
    fn circumstances(&mut self, root: &Map<String, Value>, measured: MeasuredAs) -> Circumstances {
        let s = self.section(root, "catalogue");
        let answer = |path: &'static str| {
            let field = path.rsplit('.').next().unwrap_or(path);
            if let Some(Value::Bool(yes)) = s.get(field) {
                return Some(*yes);
            }
            match self.one_of(&s, field, &["yes", "no", "unknown", "unsure"])? {
                "yes" => Some(true),
                "no" => Some(false),
                _ => None,
            }
        };
        Circumstances::from_answers(answer, measured)
    }

    fn piece(&mut self, root: &Map<String, Value>) -> Piece {
        let s = self.section(root, "piece");
        let mut piece = Piece {
            name: self.text(&s, "name").unwrap_or_default(),
            form: self.word(&s, "form"),
            from_year: self.year(&s, "from_year"),
            to_year: self.year(&s, "to_year"),
            height_mm: self.number(&s, "height_mm"),
            length_mm: self.number(&s, "length_mm"),
            width_mm: self.number(&s, "width_mm"),
            weight_g: self.number(&s, "weight_g"),
            length_unit: self.word(&s, "length_unit"),
            weight_unit: self.word(&s, "weight_unit"),
            soldered_vessel: self.flag(&s, "soldered_vessel"),
            came_from: self.word(&s, "came_from"),
            rare: self.flag(&s, "rare").unwrap_or(false),
            documented: self.flag(&s, "documented").unwrap_or(false),
            photos: self.photos(&s),
        };
        if let (Some(from), Some(to)) = (piece.from_year, piece.to_year)
            && from > to
        {
            self.problem(
                "piece.from_year".to_owned(),
                words::years_crossed(from, to),
                words::YEARS_CROSSED_REMEDY,
            );
            piece.from_year = None;
            piece.to_year = None;
        }
        piece
    }

    /// Where it stands in stock, and what was paid for it.
    fn stock(&mut self, root: &Map<String, Value>) -> StockEntry {
        let s = self.section(root, "stock");
        let worth = self.section(root, "worth");
        let entered = StockStatus::ENTERED.map(StockStatus::id);
        StockEntry {
            number: self
                .text(&s, "number")
                .unwrap_or_default()
                .trim()
                .to_owned(),
            status: self
                .one_of(&s, "status", &entered)
                .and_then(StockStatus::parse),
            place: self.text(&s, "where").unwrap_or_default().trim().to_owned(),
            bought_on: self.day(&s, "bought_on"),
            paid: self.money(&worth, "paid"),
            asking: self.money(&s, "asking"),
            reserve: self.money(&s, "reserve"),
            show_price: self.flag(&s, "show_price").unwrap_or(false),
            show_photos: self.flag(&s, "show_photos").unwrap_or(false),
            seller: self
                .text(&s, "seller")
                .unwrap_or_default()
                .trim()
                .to_owned(),
        }
    }

    fn aim(&mut self, root: &Map<String, Value>) -> Aim {
        let s = self.section(root, "aim");
        let weights = s.fields.map_or([None; 5], |aim| {
            let own = self.section(aim, "aim.weights");
            Aim::WEIGHED.map(|id| self.number(&own, id))
        });
        Aim {
            weights,
            goal: self.word(&s, "goal"),
            food: self.flag(&s, "food").unwrap_or(false),
            store_food: self.flag(&s, "store_food").unwrap_or(false),
            household_child_or_pregnant: self
                .flag(&s, "household_child_or_pregnant")
                .unwrap_or(false),
            doer: self.word(&s, "doer"),
            doer_of: Vec::new(),
            asked: self.asked(&s),
            assume_lead: self.flag(&s, "assume_lead").unwrap_or(false),
            dishwasher: self.flag(&s, "dishwasher").unwrap_or(false),
            damp: self.flag(&s, "damp").unwrap_or(false),
            until: self.day(&s, "until"),
            loan: self.flag(&s, "loan").unwrap_or(false),
        }
    }

    fn money(&mut self, s: &Section, field: &str) -> Option<f64> {
        self.number(s, field)
    }

    fn market(&mut self, root: &Map<String, Value>) -> Market {
        let s = self.section(root, "market");
        let mut market = Market {
            low: self.money(&s, "low"),
            likely: self.money(&s, "likely"),
            high: self.money(&s, "high"),
            currency: self.word(&s, "currency"),
            route: self.word(&s, "route"),
            margin_taxed: {
                let worth = self.section(root, "worth");
                self.flag(&worth, "margin_tax") == Some(true)
            },
            terms: self.terms(root, &s),
            buyers: self.buyers(root, &s),
        };
        market.take_buyers_of(market.route_or_usual());
        for (field, value) in [
            ("low", &mut market.low),
            ("likely", &mut market.likely),
            ("high", &mut market.high),
        ] {
            if value.is_some_and(|v| v <= 0.0) {
                self.problem(
                    s.at(field),
                    words::NO_VALUE.to_owned(),
                    words::NO_VALUE_REMEDY,
                );
                *value = None;
            }
        }
        if !in_order(&[market.low, market.likely, market.high]) {
            self.problem(
                "market.likely".to_owned(),
                words::OUT_OF_ORDER.to_owned(),
                words::OUT_OF_ORDER_REMEDY,
            );
            market.low = None;
            market.high = None;
        }
        market
    }

    fn consents(&mut self, root: &Map<String, Value>) -> Consents {
        let s = self.section(root, "consents");
        Consents {
            loss: self.flag(&s, "loss").unwrap_or(false),
            photo: self.flag(&s, "photo").unwrap_or(false),
            disclose: self.flag(&s, "disclose").unwrap_or(false),
            conservator_opinion: self.flag(&s, "conservator_opinion").unwrap_or(false),
        }
    }

    /// The day the question is asked.
    fn date(&mut self, root: &Map<String, Value>) -> Option<Date> {
        let s = Section {
            path: String::new(),
            fields: Some(root),
        };
        self.day(&s, "asked_on")
    }

    /// One day of the calendar.
    fn day(&mut self, s: &Section, field: &str) -> Option<Date> {
        let text = self.text(s, field)?;
        let date = Date::parse(text.trim());
        if date.is_none() {
            self.problem(
                s.at(field),
                words::no_date(&shorten(&text)),
                words::NO_DATE_REMEDY,
            );
        }
        date
    }
}

/// A number to two places, without trailing noughts.
#[must_use]
pub fn hundredths(x: f64) -> String {
    ((x * 100.0).round() / 100.0).to_string()
}

/// The place in a path such as `comparables[3]`.
fn place_in(path: &str) -> Option<usize> {
    path.strip_suffix(']')?.rsplit_once('[')?.1.parse().ok()
}

fn in_order(values: &[Option<f64>]) -> bool {
    let known: Vec<f64> = values.iter().flatten().copied().collect();
    known.windows(2).all(|w| w[0] <= w[1])
}

/// What was typed, cut so that a message stays readable.
pub(super) fn shorten(text: &str) -> String {
    if text.chars().count() <= 40 {
        text.to_owned()
    } else {
        format!("{}…", text.chars().take(40).collect::<String>())
    }
}
