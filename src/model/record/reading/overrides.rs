//! Reads a person's own figures.

use serde_json::{Map, Value};

use super::wording as words;
use super::{Reader, Section};
use crate::ledger::{Ledger, OverrideFault};
use crate::record::Override;

/// Most of the person's figures that are read: more than the ledger holds.
const MOST_OVERRIDES: usize = 600;

impl Reader {
    pub(super) fn overrides(&mut self, root: &Map<String, Value>) -> Vec<Override> {
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
