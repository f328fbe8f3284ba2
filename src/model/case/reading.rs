//! Reads a draft's fields into a case, one rule a field, and says what could not be used.

mod sales;

use serde_json::{Map, Value};

pub use sales::{COMPARED_KINDS, FLAWS};

use super::{
    Aim, Answer, Bleed, BleedWord, Case, Consents, Date, Market, Override, Part, PartName, Piece,
    Problem, Quote, Seen, Word,
};
use crate::facts::{Ledger, OverrideFault, finding, findings, nearest};
use crate::small::decimal;
use crate::treatment::Treatment;

/// Earliest and latest year a piece may be said to be from.
const YEARS: (f64, f64) = (1700.0, 2100.0);
/// Amounts of money beyond this are taken for a slip.
const MOST_MONEY: f64 = 100_000_000.0;
/// Most parts and quotes that are read; the rest stays in the draft.
const MOST_ENTRIES: usize = 200;
/// Most figures of one's own that are read: more than the ledger holds.
const MOST_OVERRIDES: usize = 600;

/// Reads the whole document.
pub(super) fn read(root: &Map<String, Value>) -> (Case, Vec<Problem>) {
    let mut reader = Reader {
        problems: Vec::new(),
    };
    let case = Case {
        piece: reader.piece(root),
        findings: reader.findings(root),
        parts: reader.parts(root),
        aim: reader.aim(root),
        market: reader.market(root),
        comparables: reader.comparables(root),
        flaws: reader.flaws(root),
        quotes: reader.quotes(root),
        consents: reader.consents(root),
        overrides: reader.overrides(root),
        asked_on: reader.date(root),
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

    fn get(&self, field: &str) -> Option<&'a Value> {
        self.fields
            .and_then(|m| m.get(field))
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

    fn section<'a>(&mut self, root: &'a Map<String, Value>, name: &str) -> Section<'a> {
        let value = root.get(name).filter(|v| !v.is_null());
        if value.is_some_and(|v| !v.is_object()) {
            self.problem(
                name.to_owned(),
                format!("\"{name}\" should be an object with named fields."),
                "It was left out. What stood there is kept in the file.",
            );
        }
        Section {
            path: name.to_owned(),
            fields: value.and_then(Value::as_object),
        }
    }

    fn list<'a>(
        &mut self,
        root: &'a Map<String, Value>,
        name: &str,
        most: usize,
    ) -> Vec<Section<'a>> {
        let Some(value) = root.get(name).filter(|v| !v.is_null()) else {
            return Vec::new();
        };
        let Some(entries) = value.as_array() else {
            self.problem(
                name.to_owned(),
                format!("\"{name}\" should be a list."),
                "It was left out. What stood there is kept in the file.",
            );
            return Vec::new();
        };
        if entries.len() > most {
            self.problem(
                name.to_owned(),
                format!(
                    "\"{name}\" has {} entries; the first {most} are used.",
                    entries.len()
                ),
                "Remove what repeats.",
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
                    "This entry is not an object.".to_owned(),
                    "It was left out. Correct or remove it.",
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
                    "This should be text.".to_owned(),
                    "Put it in quotation marks or leave it out.",
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
                format!("\"{}\" is not one of the choices.", shorten(&text)),
                &format!("Did you mean \"{near}\"? Choices: {}.", ids.join(", ")),
            );
        }
        found
    }

    fn flag(&mut self, section: &Section, field: &str) -> Option<bool> {
        let value = section.get(field)?;
        let yes = value.as_bool();
        if yes.is_none() {
            self.problem(
                section.at(field),
                "This should be true or false.".to_owned(),
                "Write true or false, or leave it out.",
            );
        }
        yes
    }

    /// A number in a range. Text that reads as a number is taken too: it is what a person typed.
    fn number(
        &mut self,
        section: &Section,
        field: &str,
        range: (f64, f64),
        what: &str,
    ) -> Option<f64> {
        let value = section.get(field)?;
        let number = match value {
            Value::Number(n) => decimal(n.as_str()),
            Value::String(t) => typed_number(t),
            _ => None,
        }
        .filter(|n| n.is_finite());
        let Some(number) = number else {
            let shown = value
                .as_str()
                .map_or_else(|| value.to_string(), str::to_owned);
            self.problem(
                section.at(field),
                format!("\"{}\" is not a number.", shorten(&shown)),
                &format!("Type {what} in digits, such as {}.", example(range)),
            );
            return None;
        };
        if number < range.0 || number > range.1 {
            self.problem(
                section.at(field),
                format!("{number} is out of range for {what}."),
                &format!("Use a number from {} to {}.", range.0, range.1),
            );
            return None;
        }
        Some(number)
    }

    fn year(&mut self, section: &Section, field: &str) -> Option<u16> {
        let year = self.number(section, field, YEARS, "a year")?;
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        // checked to be 1700 to 2100
        let whole = year as u16;
        if f64::from(whole).to_bits() == year.to_bits() {
            return Some(whole);
        }
        self.problem(
            section.at(field),
            format!("{year} is not a whole year."),
            "Type the year in four digits.",
        );
        None
    }

    fn piece(&mut self, root: &Map<String, Value>) -> Piece {
        let s = self.section(root, "piece");
        let mut piece = Piece {
            name: self.text(&s, "name").unwrap_or_default(),
            form: self.word(&s, "form"),
            from_year: self.year(&s, "from_year"),
            to_year: self.year(&s, "to_year"),
            height_mm: self.number(&s, "height_mm", (1.0, 3000.0), "a height in millimetres"),
            soldered_vessel: self.flag(&s, "soldered_vessel"),
            rare: self.flag(&s, "rare").unwrap_or(false),
            documented: self.flag(&s, "documented").unwrap_or(false),
        };
        if let (Some(from), Some(to)) = (piece.from_year, piece.to_year)
            && from > to
        {
            self.problem(
                "piece.from_year".to_owned(),
                format!("The earliest year, {from}, is after the latest, {to}."),
                "Correct one of them. Until then neither is used.",
            );
            piece.from_year = None;
            piece.to_year = None;
        }
        piece
    }

    fn findings(&mut self, root: &Map<String, Value>) -> Vec<Answer> {
        let mut answers: Vec<Answer> = Vec::new();
        for s in self.list(root, "findings", super::MAX_FINDINGS) {
            let Some(id) = self.text(&s, "id") else {
                self.problem(
                    s.at("id"),
                    "A finding needs its id.".to_owned(),
                    "Give it, such as C01, or remove the entry.",
                );
                continue;
            };
            let Some(fact) = finding(&id) else {
                let near = nearest(&id, findings().iter().map(|f| f.id)).unwrap_or("");
                self.problem(
                    s.at("id"),
                    format!("No finding is called \"{}\".", shorten(&id)),
                    &format!("Did you mean {near}? It was left out."),
                );
                continue;
            };
            let Some(seen) = self.word::<Seen>(&s, "answer") else {
                if s.get("answer").is_none() {
                    self.problem(
                        s.at("answer"),
                        format!("{id} has no answer."),
                        "Say seen, absent or unsure.",
                    );
                }
                continue;
            };
            let answer = Answer {
                id: fact.id,
                seen,
                part: self.word(&s, "part"),
            };
            match answers
                .iter()
                .find(|a| a.id == answer.id && a.part == answer.part)
            {
                None => answers.push(answer),
                Some(first) if first.seen == answer.seen => {}
                Some(first) => {
                    let kept = first.seen.id();
                    self.problem(
                        s.at("answer"),
                        format!("{id} is answered twice for the same part, differently."),
                        &format!("The first, \"{kept}\", is used. Remove one of them."),
                    );
                }
            }
        }
        answers
    }

    fn parts(&mut self, root: &Map<String, Value>) -> Vec<Part> {
        let mut parts: Vec<Part> = Vec::new();
        for s in self.list(root, "parts", MOST_ENTRIES) {
            let Some(name) = self.word::<PartName>(&s, "part") else {
                if s.get("part").is_none() {
                    self.problem(
                        s.at("part"),
                        "A part needs its name.".to_owned(),
                        "Give it, such as body, or remove the entry.",
                    );
                }
                continue;
            };
            let part = Part {
                name,
                bleed: self.bleed(&s),
                tarnish: self.word(&s, "tarnish"),
                joint: self.word(&s, "joint"),
                lead: self.unless_unsure(&s, "lead"),
                dents: self.word(&s, "dents"),
                interior: self.word(&s, "interior"),
                corrosion: self.word(&s, "corrosion"),
                fill: self.word(&s, "fill"),
                joint_distance_mm: self.number(
                    &s,
                    "joint_distance_mm",
                    (0.0, 2000.0),
                    "a distance in millimetres",
                ),
            };
            if parts.iter().any(|p| p.name == name) {
                self.problem(
                    s.at("part"),
                    format!("\"{}\" is listed twice.", name.id()),
                    "The first entry is used. Join the two.",
                );
                continue;
            }
            parts.push(part);
        }
        parts
    }

    /// A word that may also say "unknown" or "unsure", which is the same as not saying.
    fn unless_unsure<W: Word>(&mut self, s: &Section, field: &str) -> Option<W> {
        if matches!(
            s.get(field).and_then(Value::as_str),
            Some("unknown" | "unsure")
        ) {
            return None;
        }
        self.word(s, field)
    }

    /// Bleed as a word, as a fraction of 1, or as a counted interval `{low, likely, high}`.
    fn bleed(&mut self, s: &Section) -> Option<Bleed> {
        let value = s.get("bleed")?;
        if let Some(fields) = value.as_object() {
            let inner = Section {
                path: s.at("bleed"),
                fields: Some(fields),
            };
            if let Some(missing) = ["low", "likely", "high"]
                .into_iter()
                .find(|f| inner.get(f).is_none())
            {
                self.problem(
                    inner.at(missing),
                    format!("The counted interval has no \"{missing}\"."),
                    "Give low, likely and high, each as a share of 1, or one word or percentage instead.",
                );
                return None;
            }
            let low = self.number(&inner, "low", (0.0, 1.0), "a fraction")?;
            let likely = self.number(&inner, "likely", (0.0, 1.0), "a fraction")?;
            let high = self.number(&inner, "high", (0.0, 1.0), "a fraction")?;
            if low <= likely && likely <= high {
                return Some(Bleed::Counted { low, likely, high });
            }
            self.problem(
                inner.path,
                "The interval is out of order.".to_owned(),
                "Write low, likely and high from small to large.",
            );
            return None;
        }
        if let Some(text) = value.as_str() {
            if matches!(text, "unknown" | "unsure") {
                return None;
            }
            if let Some(word) = BleedWord::parse(text) {
                return Some(Bleed::Word(word));
            }
            // "12 %" is what people write.
            if let Some(percent) = text.trim().strip_suffix('%').and_then(typed_number) {
                if (0.0..=100.0).contains(&percent) {
                    return Some(Bleed::Fraction(percent / 100.0));
                }
                self.problem(
                    s.at("bleed"),
                    format!("{percent} % is not possible."),
                    "Use 0 to 100 %: the share of the part where base metal shows.",
                );
                return None;
            }
            if typed_number(text).is_none() {
                let near = nearest(text, BleedWord::ids().into_iter()).unwrap_or("");
                self.problem(
                    s.at("bleed"),
                    format!(
                        "\"{}\" is not a way to tell how much base metal shows.",
                        shorten(text)
                    ),
                    &format!(
                        "Did you mean \"{near}\"? Say {}, or a percentage such as 5 %.",
                        BleedWord::ids().join(", ")
                    ),
                );
                return None;
            }
        }
        self.number(
            s,
            "bleed",
            (0.0, 1.0),
            "the share of the part where base metal shows (0.05 is 5 %)",
        )
        .map(Bleed::Fraction)
    }

    fn aim(&mut self, root: &Map<String, Value>) -> Aim {
        let s = self.section(root, "aim");
        Aim {
            goal: self.word(&s, "goal"),
            food: self.flag(&s, "food").unwrap_or(false),
            store_food: self.flag(&s, "store_food").unwrap_or(false),
            household_child_or_pregnant: self
                .flag(&s, "household_child_or_pregnant")
                .unwrap_or(false),
            doer: self.word(&s, "doer"),
        }
    }

    fn money(&mut self, s: &Section, field: &str) -> Option<f64> {
        self.number(s, field, (0.0, MOST_MONEY), "an amount of money")
    }

    fn market(&mut self, root: &Map<String, Value>) -> Market {
        let s = self.section(root, "market");
        let mut market = Market {
            low: self.money(&s, "low"),
            likely: self.money(&s, "likely"),
            high: self.money(&s, "high"),
            currency: self.word(&s, "currency"),
            route: self.word(&s, "route"),
            terms: self.terms(&s),
        };
        for (field, value) in [
            ("low", &mut market.low),
            ("likely", &mut market.likely),
            ("high", &mut market.high),
        ] {
            if value.is_some_and(|v| v <= 0.0) {
                self.problem(
                    s.at(field),
                    "A value has to be more than nothing.".to_owned(),
                    "Type what an undamaged one might fetch, or leave it empty.",
                );
                *value = None;
            }
        }
        if !in_order(&[market.low, market.likely, market.high]) {
            self.problem(
                "market.likely".to_owned(),
                "Low, likely and high are out of order.".to_owned(),
                "Type them from small to large. Until then only \"likely\" is used.",
            );
            market.low = None;
            market.high = None;
        }
        market
    }

    fn quotes(&mut self, root: &Map<String, Value>) -> Vec<Quote> {
        let mut quotes: Vec<Quote> = Vec::new();
        for s in self.list(root, "quotes", MOST_ENTRIES) {
            let Some(id) = self.text(&s, "treatment") else {
                self.problem(
                    s.at("treatment"),
                    "A quote needs the treatment it is for.".to_owned(),
                    "Give it, such as T14a, or remove the entry.",
                );
                continue;
            };
            let Some(treatment) = Treatment::parse(&id) else {
                let near = nearest(&id, Treatment::ALL.iter().map(|t| t.id())).unwrap_or("");
                self.problem(
                    s.at("treatment"),
                    format!("No treatment is called \"{}\".", shorten(&id)),
                    &format!("Did you mean {near}? The quote was left out."),
                );
                continue;
            };
            let (low, likely, high) = (
                self.money(&s, "low"),
                self.money(&s, "likely"),
                self.money(&s, "high"),
            );
            let post = self.money(&s, "post").unwrap_or(0.0);
            let Some(likely) = likely else {
                if s.get("likely").is_none() {
                    self.problem(
                        s.at("likely"),
                        "The quote has no price.".to_owned(),
                        "Type the price asked.",
                    );
                }
                continue;
            };
            if !in_order(&[low, Some(likely), high]) {
                self.problem(
                    s.at("likely"),
                    "Low, likely and high are out of order.".to_owned(),
                    "Type them from small to large. Until then only \"likely\" is used.",
                );
                quotes.push(Quote {
                    treatment,
                    low: None,
                    likely,
                    high: None,
                    post,
                });
                continue;
            }
            quotes.push(Quote {
                treatment,
                low,
                likely,
                high,
                post,
            });
        }
        quotes
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

    fn overrides(&mut self, root: &Map<String, Value>) -> Vec<Override> {
        let s = self.section(root, "overrides");
        let mut taken = Vec::new();
        let count = s.fields.map_or(0, Map::len);
        if count > MOST_OVERRIDES {
            self.problem(
                "overrides".to_owned(),
                format!(
                    "There are {count} figures of your own; the first {MOST_OVERRIDES} are used."
                ),
                "Remove those that only repeat what is shipped.",
            );
        }
        // Each is tried on a ledger here, so that a case only ever holds overrides that can be laid.
        let mut trial = Ledger::standard().clone();
        for (id, entry) in s.fields.into_iter().flatten().take(MOST_OVERRIDES) {
            let path = s.at(id);
            let fields = match entry {
                Value::Object(fields) => fields.clone(),
                Value::Number(_) | Value::String(_) => {
                    Map::from_iter([("value".to_owned(), entry.clone())])
                }
                _ => Map::new(),
            };
            let inner = Section {
                path: path.clone(),
                fields: Some(&fields),
            };
            let value = self.number(&inner, "value", (f64::MIN, f64::MAX), "your own value");
            let reason = self.text(&inner, "reason").unwrap_or_default();
            let Some(value) = value else { continue };
            match trial.override_with(id, value, &reason) {
                Ok(()) => taken.push(Override {
                    figure: id.clone(),
                    value,
                    reason,
                }),
                Err(fault) => {
                    let (message, remedy) = override_words(&fault);
                    self.problem(path, message, &remedy);
                }
            }
        }
        taken
    }

    fn date(&mut self, root: &Map<String, Value>) -> Option<Date> {
        let s = Section {
            path: String::new(),
            fields: Some(root),
        };
        let text = self.text(&s, "asked_on")?;
        let date = Date::parse(&text);
        if date.is_none() {
            self.problem(
                "asked_on".to_owned(),
                format!("\"{}\" is not a date.", shorten(&text)),
                "Write it as year-month-day, such as 2026-05-31.",
            );
        }
        date
    }
}

fn override_words(fault: &OverrideFault) -> (String, String) {
    match fault {
        OverrideFault::Unknown { nearest } => (
            "No figure has this id.".to_owned(),
            format!("Did you mean {nearest}? It was left out."),
        ),
        OverrideFault::NotFinite => (
            "This is not a number.".to_owned(),
            "Type your value in digits.".to_owned(),
        ),
        OverrideFault::Negative => (
            "This figure cannot be below zero.".to_owned(),
            "Type zero or more.".to_owned(),
        ),
        OverrideFault::OutsideShare => (
            "This figure is a share of 1.".to_owned(),
            "Type a number from 0 to 1; 0.15 is 15 %.".to_owned(),
        ),
        OverrideFault::Unsafe { limit } => (
            "This is a safety limit; it can be made stricter but not looser.".to_owned(),
            format!("The loosest it may be is {limit}. The shipped value is used."),
        ),
    }
}

/// A number as people type it: spaces and thin spaces are passed over, a comma may be the decimal
/// sign when it cannot be anything else.
pub(crate) fn typed_number(text: &str) -> Option<f64> {
    let plain: String = text
        .chars()
        .filter(|c| !c.is_whitespace() && *c != '\u{2009}' && *c != '\u{202f}')
        .collect();
    if plain
        .bytes()
        .any(|c| c.is_ascii_alphabetic() && c != b'e' && c != b'E')
    {
        return None;
    }
    decimal(&plain).or_else(|| {
        let (whole, decimals) = plain.split_once(',')?;
        (!decimals.contains([',', '.']) && decimals.len() != 3)
            .then(|| decimal(&format!("{whole}.{decimals}")))?
    })
}

fn in_order(values: &[Option<f64>]) -> bool {
    let known: Vec<f64> = values.iter().flatten().copied().collect();
    known.windows(2).all(|w| w[0] <= w[1])
}

fn example(range: (f64, f64)) -> f64 {
    match range.1 {
        1.0 => 0.05,
        top if top > 50_000.0 => 120.0,
        top if top > 2000.0 => 150.0,
        top => f64::midpoint(range.0, top),
    }
}

/// What was typed, cut so that a message stays readable.
fn shorten(text: &str) -> String {
    if text.chars().count() <= 40 {
        text.to_owned()
    } else {
        format!("{}…", text.chars().take(40).collect::<String>())
    }
}
