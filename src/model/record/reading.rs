//! Reads a draft's fields into a case, one rule a field, and says what could not be used.

mod closed;
mod of_pages;
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

use super::Weighing;
use super::circumstances::MeasuredAs;
use super::number::{NumberFault, NumberKind, typed_number};
use super::schema::{BARE_SHARE, NumberRange, number_range};
use super::{
    Aim, Answer, Bleed, BleedWord, Case, Circumstances, Consents, Date, Density, Iacs, Instrument,
    Market, Measures, Method, Override, Part, PartName, Piece, Problem, Reading, Seen, Spot,
    StockEntry, StockStatus, StruckMark, TaughtFigures, Word, Xrf,
};
use crate::ledger::{FigureId, Ledger, OverrideFault, finding, findings, nearest};
use crate::maths::{CountFault, point_count};

/// Earliest and latest year a piece may be said to be from.
const YEARS: (f64, f64) = (1700.0, 2100.0);
/// Most parts and quotes that are read; the rest stays in the draft.
const MOST_ENTRIES: usize = 200;
/// Thickest silver, in micrometres, that is not taken for a slip.
const MOST_UM: f64 = 2000.0;
/// Most points in a field.
const MOST_POINTS: f64 = 100_000.0;
/// Most figures of one's own that are read: more than the ledger holds.
const MOST_OVERRIDES: usize = 600;

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

    /// What was said of the piece when it was measured, with or without a reading.
    fn measured_as(&mut self, root: &Map<String, Value>) -> MeasuredAs {
        let s = self.section(root, "measures");
        MeasuredAs {
            loaded: self.flag(&s, "density.loaded"),
            hollow_sealed: self.flag(&s, "density.hollow_sealed"),
            organic: self.flag(&s, "density.organic"),
            filled_behind: self.flag(&s, "iacs.loaded"),
        }
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

    /// The answers, and of each finding confirmed from typed words where those stand: the id of a mark.
    fn findings(
        &mut self,
        root: &Map<String, Value>,
    ) -> (Vec<Answer>, Vec<(String, &'static str)>) {
        let mut answers: Vec<Answer> = Vec::new();
        let mut confirmed: Vec<(String, &'static str)> = Vec::new();
        for s in self.list(root, "findings", super::MAX_FINDINGS) {
            let Some(id) = self.text(&s, "id") else {
                self.problem(
                    s.at("id"),
                    words::NO_FINDING_ID.to_owned(),
                    words::NO_FINDING_ID_REMEDY,
                );
                continue;
            };
            let Some(fact) = finding(&id) else {
                let near = nearest(&id, findings().iter().map(|f| f.id)).unwrap_or("");
                self.problem(
                    s.at("id"),
                    words::no_such_finding(&shorten(&id)),
                    &words::did_you_mean(near),
                );
                continue;
            };
            let Some(seen) = self.word::<Seen>(&s, "answer") else {
                if s.get("answer").is_none() {
                    self.problem(
                        s.at("answer"),
                        words::no_answer(&id),
                        words::NO_ANSWER_REMEDY,
                    );
                }
                continue;
            };
            if let Some(from) = self.text(&s, "from")
                && seen == Seen::Yes
            {
                confirmed.push((from, fact.id));
            }
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
                        words::answered_twice(&id),
                        &words::answered_twice_remedy(kept),
                    );
                }
            }
        }
        (answers, confirmed)
    }

    /// What is struck on the piece. A mark without words counts for nothing.
    fn marks(
        &mut self,
        root: &Map<String, Value>,
        confirmed: &[(String, &'static str)],
    ) -> Vec<StruckMark> {
        let mut marks = Vec::new();
        for s in self.list(root, "marks", MOST_ENTRIES) {
            let id = self.text(&s, "id").unwrap_or_default();
            let part = self.word(&s, "part");
            let text = self.text(&s, "text").unwrap_or_default();
            if text.trim().is_empty() {
                continue;
            }
            let from_it = confirmed.iter().filter(|(from, _)| *from == id);
            marks.push(StruckMark {
                text: text.trim().to_owned(),
                part,
                findings: from_it.map(|(_, finding)| *finding).collect(),
            });
        }
        marks
    }

    fn instruments(&mut self, root: &Map<String, Value>) -> Vec<Instrument> {
        let s = self.section(root, "looked");
        let known: Vec<_> = Instrument::ALL.iter().map(|i| (i.id(), *i)).collect();
        self.ids(&s, "instruments", &known)
    }

    /// Readings with a number. Each is used whole or not at all, and then the reason is given.
    fn measures(
        &mut self,
        root: &Map<String, Value>,
        findings: &[Answer],
        measured: MeasuredAs,
    ) -> Measures {
        let s = self.section(root, "measures");
        for group in ["density", "iacs", "xrf"] {
            if s.get(group).is_some_and(|held| !held.is_object()) {
                self.problem(s.at(group), words::no_object(group), words::LEFT_OUT);
            }
        }
        Measures {
            density: self.density(&s, measured),
            iacs: self.iacs(&s, findings, measured),
            xrf: self.xrf(&s),
        }
    }

    /// True, with the reason given, when one of these ticks rules the reading out.
    fn refused(&mut self, s: &Section, ticks: &[(&str, Option<bool>, &str)]) -> bool {
        let mut refused = false;
        for (field, tick, why) in ticks {
            if *tick == Some(true) {
                refused = true;
                self.problem(s.at(field), words::not_used(why), words::NOT_USED_REMEDY);
            }
        }
        refused
    }

    fn density(&mut self, s: &Section, measured: MeasuredAs) -> Option<Density> {
        let ledger = Ledger::standard();
        let own = |id: FigureId| ledger.value(id);
        let (air_field, water_field) = ("density.in_air_g", "density.in_water_g");
        let air = self.number(s, air_field);
        let water = self.number(s, water_field);
        let water_c = self.number(s, "density.water_c");
        let readable = self.number(s, "density.readable_g");
        if s.get(air_field).is_none() && s.get(water_field).is_none() {
            return None;
        }
        let refused = self.refused(
            s,
            &[
                ("density.loaded", measured.loaded, words::LOADED),
                (
                    "density.hollow_sealed",
                    measured.hollow_sealed,
                    words::HOLLOW,
                ),
                ("density.organic", measured.organic, words::ORGANIC),
            ],
        );
        for field in [air_field, water_field] {
            if s.get(field).is_none() {
                self.problem(
                    s.at(field),
                    words::ONE_WEIGHT.to_owned(),
                    words::ONE_WEIGHT_REMEDY,
                );
            }
        }
        // Something that could not be read is told already; a stand-in for it would be a guess.
        let unread = |field: &str, got: Option<f64>| s.get(field).is_some() && got.is_none();
        if refused || unread("density.water_c", water_c) || unread("density.readable_g", readable) {
            return None;
        }
        let weighing = Weighing {
            in_air_g: air?,
            in_water_g: water?,
            water_c: water_c.unwrap_or_else(|| own(FigureId::MEASURE_DENSITY_WATER)),
            readable_g: readable.unwrap_or_else(|| own(FigureId::MEASURE_DENSITY_READABLE)),
            unnoticed_cm3: own(FigureId::MEASURE_DENSITY_UNNOTICED),
        };
        let (Some(g_cm3), Some(spread)) = (weighing.density(), weighing.spread()) else {
            self.problem(
                s.at(water_field),
                words::WATER_NOT_LESS.to_owned(),
                words::WATER_NOT_LESS_REMEDY,
            );
            return None;
        };
        let fault = if g_cm3 > own(FigureId::MEASURE_DENSITY_MOST) {
            words::TOO_HEAVY
        } else if g_cm3 < own(FigureId::MEASURE_DENSITY_LEAST) {
            words::TOO_LIGHT
        } else {
            return Some(Density { g_cm3, spread });
        };
        self.problem(
            s.at(water_field),
            words::density(&hundredths(g_cm3), fault),
            words::DENSITY_REMEDY,
        );
        None
    }

    fn iacs(&mut self, s: &Section, findings: &[Answer], measured: MeasuredAs) -> Option<Iacs> {
        let most = Ledger::standard().value(FigureId::MEASURE_IACS_MOST);
        let range = NumberRange {
            most,
            ..*number_range("measures.iacs.percent")
        };
        let percent = self.number_of(s, "iacs.percent", &range);
        let part = self.word(s, "iacs.where");
        s.get("iacs.percent")?;
        let (curved, thin) = (self.flag(s, "iacs.curved"), self.flag(s, "iacs.thin"));
        let refused = self.refused(
            s,
            &[
                ("iacs.curved", curved, words::CURVED),
                ("iacs.thin", thin, words::THIN),
                ("iacs.loaded", measured.filled_behind, words::FILLED),
            ],
        );
        let magnetic = findings
            .iter()
            .any(|a| a.id == "P01" && a.seen == Seen::Yes);
        if magnetic {
            self.problem(
                s.at("iacs.percent"),
                words::MAGNETIC.to_owned(),
                words::MAGNETIC_REMEDY,
            );
        }
        let percent = percent.filter(|_| !refused && !magnetic)?;
        Some(Iacs { percent, part })
    }

    fn xrf(&mut self, s: &Section) -> Option<Xrf> {
        let limit = |id: FigureId| Ledger::standard().value(id);
        let fields = [
            "xrf.silver_pct",
            "xrf.nickel_pct",
            "xrf.zinc_pct",
            "xrf.tin_pct",
            "xrf.iron_pct",
            "xrf.copper_pct",
            "xrf.antimony_pct",
        ];
        let shares = fields.map(|f| self.number(s, f));
        let spot: Option<Spot> = self.word(s, "xrf.spot");
        if fields.iter().all(|f| s.get(f).is_none()) {
            return None;
        }
        if fields
            .iter()
            .zip(&shares)
            .any(|(f, x)| s.get(f).is_some() && x.is_none())
        {
            return None;
        }
        let Some(spot) = spot else {
            if s.get("xrf.spot").is_none() {
                self.problem(
                    s.at("xrf.spot"),
                    words::NO_SPOT.to_owned(),
                    words::NO_SPOT_REMEDY,
                );
            }
            return None;
        };
        let told: f64 = shares.iter().flatten().sum();
        if told > limit(FigureId::MEASURE_XRF_SUM) {
            self.problem(
                s.at(fields[0]),
                words::sum(&hundredths(told)),
                words::SUM_REMEDY,
            );
            return None;
        }
        let silver = shares[0];
        if spot == Spot::Worn && silver.is_some_and(|x| x > limit(FigureId::MEASURE_XRF_BARE)) {
            self.problem(
                s.at("xrf.spot"),
                words::NOT_WORN_THROUGH.to_owned(),
                words::NOT_WORN_THROUGH_REMEDY,
            );
            return None;
        }
        let used = match spot {
            Spot::Sound => &shares[..1],
            Spot::Worn => &shares[1..5],
        };
        if used.iter().all(Option::is_none) {
            let (what, field) = match spot {
                Spot::Sound => (words::THE_SILVER, fields[0]),
                Spot::Worn => (words::OTHER_METALS, fields[1]),
            };
            self.problem(
                s.at(field),
                words::xrf_does_not_say(what),
                words::XRF_DOES_NOT_SAY_REMEDY,
            );
            return None;
        }
        // Shares of the base metal alone, so that what silver is left on the spot does not matter.
        // If copper is not given, it makes up the rest.
        let base = if shares[5].is_some() { told } else { 100.0 } - silver.unwrap_or(0.0);
        let of_base = |i: usize| shares[i].filter(|_| base > 0.0).map(|x| 100.0 * x / base);
        Some(Xrf {
            spot,
            silver,
            base: [of_base(1), of_base(2), of_base(3), of_base(4)],
        })
    }

    /// The parts listed at a path whose last step is a field of `holder`. `of_piece` are the photos of the whole piece.
    fn parts(&mut self, holder: &Map<String, Value>, path: &str, of_piece: &[String]) -> Vec<Part> {
        let mut parts: Vec<Part> = Vec::new();
        for s in self.list(holder, path, MOST_ENTRIES) {
            let Some(name) = self.word::<PartName>(&s, "part") else {
                if s.get("part").is_none() {
                    self.problem(
                        s.at("part"),
                        words::NO_PART_NAME.to_owned(),
                        words::NO_PART_NAME_REMEDY,
                    );
                }
                continue;
            };
            let photos = self.photos(&s);
            let mut part = Part {
                name,
                on: Vec::new(),
                spots: self.spots((&s, name), &photos, of_piece),
                photos,
                // A count takes the place of what was judged.
                bleed: {
                    let judged = self.bleed(&s);
                    self.count(&s).or(judged)
                },
                tarnish: self.word(&s, "tarnish"),
                joint: self.word(&s, "joint"),
                other_joint: None,
                lead: self.unless_unsure(&s, "lead"),
                dents: self.word(&s, "dents"),
                interior: self.word(&s, "interior"),
                corrosion: self.word(&s, "corrosion"),
                fill: self.word(&s, "fill"),
                joint_distance_mm: self.number(&s, "joint_distance_mm"),
                readings: self.readings(&s),
                split: self.word(&s, "split"),
                loss: self.word(&s, "loss"),
                mount: self.word(&s, "mount"),
                lacquer: self.word(&s, "lacquer"),
                replaced: self.word(&s, "replaced"),
                engraving: self.word(&s, "engraving"),
                repair: self.word(&s, "repair"),
                fill_state: self.word(&s, "fill_state"),
                hollow: self.flag_unless_unsure(&s, "hollow"),
                liner: self.unless_unsure(&s, "liner"),
                material: self.unless_unsure(&s, "material"),
                gilding: self.word(&s, "gilding"),
                wax: self.flag_unless_unsure(&s, "wax"),
            };
            if parts.iter().any(|p| p.name == name) {
                self.problem(
                    s.at("part"),
                    words::listed_twice(name.id()),
                    words::LISTED_TWICE_REMEDY,
                );
                continue;
            }
            part.count_spots();
            parts.push(part);
        }
        parts
    }

    /// Numbers typed one after the other, with spaces between; a comma or semicolon may end each.
    fn numbers(&mut self, s: &Section, field: &str, most: f64) -> Vec<f64> {
        let mut numbers = Vec::new();
        let text = s
            .get(field)
            .map(super::draft::typed_text)
            .unwrap_or_default();
        for word in text.split(' ').take(MOST_ENTRIES) {
            let word = word.strip_suffix([',', ';']).unwrap_or(word);
            if word.is_empty() {
                continue;
            }
            match typed_number(word, NumberKind::Measure) {
                Ok(number) if (0.0..=most).contains(&number) => numbers.push(number),
                _ => {
                    self.problem(
                        s.at(field),
                        words::cannot_be_used(&shorten(word)),
                        words::CANNOT_BE_USED_REMEDY,
                    );
                    return Vec::new();
                }
            }
        }
        numbers
    }

    /// Measured thicknesses: for each method `<id>_um`, one or several, and `<id>_error_um`.
    fn readings(&mut self, s: &Section) -> Vec<Reading> {
        let mut readings = Vec::new();
        for method in Method::ALL {
            let um = self.numbers(s, &[method.id(), "_um"].concat(), MOST_UM);
            let error = [method.id(), "_error_um"].concat();
            let error_um = self.number(s, &error);
            readings.extend(um.into_iter().map(|um| Reading {
                method: *method,
                um,
                error_um,
            }));
        }
        readings
    }

    /// A point count: `count_points` in each field, `count_bare` on bare metal, one number a field.
    fn count(&mut self, s: &Section) -> Option<Bleed> {
        let bare = self.numbers(s, "count_bare", MOST_POINTS);
        let points = self.number(s, "count_points");
        if bare.is_empty() {
            return None;
        }
        let field = match point_count(points.unwrap_or_default(), &bare) {
            Ok(count) => {
                return Some(Bleed::Counted {
                    low: count.low,
                    likely: count.mean,
                    high: count.high,
                });
            }
            Err(CountFault::TooMany { .. } | CountFault::NotWhole) => "count_bare",
            Err(CountFault::NoPoints | CountFault::NoFields) => "count_points",
        };
        self.problem(
            s.at(field),
            words::COUNT_DOES_NOT_FIT.to_owned(),
            words::COUNT_DOES_NOT_FIT_REMEDY,
        );
        None
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

    /// A yes or no that may also say "unknown" or "unsure", which is the same as not saying.
    fn flag_unless_unsure(&mut self, s: &Section, field: &str) -> Option<bool> {
        match s.get(field).and_then(Value::as_str) {
            Some("unknown" | "unsure") => None,
            _ => self.flag(s, field),
        }
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
                    words::interval_lacks(missing),
                    words::INTERVAL_LACKS_REMEDY,
                );
                return None;
            }
            let low = self.number(&inner, "low")?;
            let likely = self.number(&inner, "likely")?;
            let high = self.number(&inner, "high")?;
            if low <= likely && likely <= high {
                return Some(Bleed::Counted { low, likely, high });
            }
            self.problem(
                inner.path,
                words::INTERVAL_CROSSED.to_owned(),
                words::INTERVAL_CROSSED_REMEDY,
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
            if let Some(percent) = text.trim().strip_suffix('%').and_then(percent_of) {
                if (0.0..=100.0).contains(&percent) {
                    return Some(Bleed::Fraction(percent / 100.0));
                }
                self.problem(
                    s.at("bleed"),
                    words::not_possible(percent),
                    words::NOT_POSSIBLE_REMEDY,
                );
                return None;
            }
            if typed_number(text, NumberKind::Measure) == Err(NumberFault::Unreadable) {
                let near = nearest(text, BleedWord::ids().into_iter()).unwrap_or("");
                self.problem(
                    s.at("bleed"),
                    words::no_bleed(&shorten(text)),
                    &words::no_bleed_remedy(near, &BleedWord::ids().join(", ")),
                );
                return None;
            }
        }
        self.number_of(s, "bleed", &BARE_SHARE).map(Bleed::Fraction)
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

    fn overrides(&mut self, root: &Map<String, Value>) -> Vec<Override> {
        let s = self.section(root, "overrides");
        let mut taken = Vec::new();
        let count = s.fields.map_or(0, Map::len);
        if count == 0 {
            return taken;
        }
        if count > MOST_OVERRIDES {
            self.problem(
                "overrides".to_owned(),
                words::own_figures(count, MOST_OVERRIDES),
                words::OWN_FIGURES_REMEDY,
            );
        }
        // Each is tried on a ledger here, so that a case only ever holds overrides that can be laid.
        let mut trial = Ledger::standard().clone();
        for (id, entry) in s.fields.into_iter().flatten().take(MOST_OVERRIDES) {
            let path = s.at(id);
            let fields = match entry {
                Value::Object(fields) => fields.clone(),
                Value::Number(_) | Value::String(_) => {
                    // Not collected from a list: that brings in the library's whole sort.
                    let mut bare = Map::new();
                    bare.insert("value".to_owned(), entry.clone());
                    bare
                }
                _ => Map::new(),
            };
            let inner = Section {
                path: path.clone(),
                fields: Some(&fields),
            };
            let value = self.number(&inner, "value");
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

fn percent_of(text: &str) -> Option<f64> {
    typed_number(text, NumberKind::Percent).ok()
}

fn override_words(fault: &OverrideFault) -> (String, String) {
    match fault {
        OverrideFault::Unknown { nearest } => {
            (words::NO_FIGURE.to_owned(), words::did_you_mean(nearest))
        }
        OverrideFault::NotFinite => (
            words::NOT_FINITE.to_owned(),
            words::NOT_FINITE_REMEDY.to_owned(),
        ),
        OverrideFault::Negative => (
            words::NEGATIVE.to_owned(),
            words::NEGATIVE_REMEDY.to_owned(),
        ),
        OverrideFault::OutsideShare => (
            words::OUTSIDE_SHARE.to_owned(),
            words::OUTSIDE_SHARE_REMEDY.to_owned(),
        ),
        OverrideFault::Unsafe(range) => words::unsafe_figure(*range),
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
