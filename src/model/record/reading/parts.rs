//! Reads the condition of each part.

use serde_json::{Map, Value};

use super::wording as words;
use super::{MOST_ENTRIES, Reader, Section, shorten};
use crate::ledger::nearest;
use crate::maths::{CountFault, point_count};
use crate::record::draft::typed_text;
use crate::record::number::{NumberFault, NumberKind, typed_number};
use crate::record::schema::BARE_SHARE;
use crate::record::{Bleed, Part, Reading};
use crate::terms::{BleedWord, Method, PartName, Word};

/// Thickest silver, in micrometres, that is not taken for a slip.
const MOST_UM: f64 = 2000.0;

/// Most points in a field.
const MOST_POINTS: f64 = 100_000.0;

impl Reader {
    /// The parts listed at a path whose last step is a field of `holder`. `of_piece` are the photos of the whole piece.
    pub(super) fn parts(
        &mut self,
        holder: &Map<String, Value>,
        path: &str,
        of_piece: &[String],
    ) -> Vec<Part> {
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
            let spots = self.spots((&s, name), &photos, of_piece);
            let judged = self.bleed(&s);
            // A count replaces what was judged by eye.
            let (bleed, counted_fields) = match self.count(&s) {
                Some((count, fields)) => (Some(count), fields),
                None => (judged, 0),
            };
            let mut part = Part {
                name,
                on: Vec::new(),
                spots,
                photos,
                bleed,
                counted_fields,
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
    pub(super) fn numbers(&mut self, s: &Section, field: &str, most: f64) -> Vec<f64> {
        let mut numbers = Vec::new();
        let text = s.get(field).map(typed_text).unwrap_or_default();
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
    pub(super) fn readings(&mut self, s: &Section) -> Vec<Reading> {
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

    /// A point count and its number of fields: `count_points` in each field, `count_bare` on bare metal, one
    /// number a field.
    pub(super) fn count(&mut self, s: &Section) -> Option<(Bleed, usize)> {
        let bare = self.numbers(s, "count_bare", MOST_POINTS);
        let points = self.number(s, "count_points");
        if bare.is_empty() {
            return None;
        }
        let field = match point_count(points.unwrap_or_default(), &bare) {
            Ok(count) => {
                let counted = Bleed::Counted {
                    low: count.low,
                    likely: count.mean,
                    high: count.high,
                };
                return Some((counted, bare.len()));
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
    pub(super) fn unless_unsure<W: Word>(&mut self, s: &Section, field: &str) -> Option<W> {
        if matches!(
            s.get(field).and_then(Value::as_str),
            Some("unknown" | "unsure")
        ) {
            return None;
        }
        self.word(s, field)
    }

    /// A yes or no that may also say "unknown" or "unsure", which is the same as not saying.
    pub(super) fn flag_unless_unsure(&mut self, s: &Section, field: &str) -> Option<bool> {
        match s.get(field).and_then(Value::as_str) {
            Some("unknown" | "unsure") => None,
            _ => self.flag(s, field),
        }
    }

    /// Bleed as a word, as a fraction of 1, or as a counted interval `{low, likely, high}`.
    pub(super) fn bleed(&mut self, s: &Section) -> Option<Bleed> {
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
}

fn percent_of(text: &str) -> Option<f64> {
    typed_number(text, NumberKind::Percent).ok()
}
