//! Checks the fields that only a page reads: its calculators, its comparison of habits, its bet.
//!
//! The page asks the draft for the value (`Draft::number`), by the same entry of the schema; the problem is
//! found here, so that no text is ignored in silence before its page is opened.

use serde_json::{Map, Value};

use super::{Reader, Section};
use crate::record::schema::{FIELDS, FieldKind};

/// Fields, and sections with a dot at the end, that only a page reads.
const OF_PAGES: [&str; 5] = [
    "bench.heat.",
    "bench.plating.",
    "bench.food.cup_ml",
    "care.",
    "aim.even_bet",
];

impl Reader {
    /// Notes the problem with each field that only a page reads.
    pub(super) fn fields_of_pages(&mut self, root: &Map<String, Value>) {
        let whole = Section {
            path: String::new(),
            fields: Some(root),
        };
        for section in ["bench", "care"] {
            self.section(root, section);
        }
        for field in FIELDS {
            let is_of_page = OF_PAGES.iter().any(|start| field.path.starts_with(start));
            if is_of_page && matches!(field.kind, FieldKind::Number(_)) {
                self.number(&whole, field.path);
            }
        }
    }
}
