//! Undo and redo for the open record and its walk on the owner's road.
//!
//! Invariant: an undo followed by a redo gives the same record. Continued typing in one field is one step, so
//! an undo takes back the words typed and not a single letter.

use std::rc::Rc;

use leavewell_model::Draft;
use leavewell_model::road::RoadWalk;

/// The largest number of steps kept.
const MOST: usize = 200;

/// A record, and the questions of the owner's road that were put when it stood.
pub type Moment = (Rc<Draft>, Rc<RoadWalk>);

/// The moments before the current one and, after an undo, those after it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    past: Vec<Moment>,
    future: Vec<Moment>,
    /// The field that changed last, and its text after the change.
    last: Option<(String, String)>,
}

impl History {
    /// Notes the moment before a change of `field`, in which `text` stands now. An empty field is
    /// always a separate step.
    #[must_use]
    pub fn noted(&self, before: Moment, field: String, text: String) -> Self {
        let going_on = self.last.as_ref().is_some_and(|(known, was)| {
            !field.is_empty()
                && *known == field
                && (was.starts_with(&text) || text.starts_with(was.as_str()))
        });
        let mut past = self.past.clone();
        if !going_on {
            if past.len() == MOST {
                past.remove(0);
            }
            past.push(before);
        }
        Self {
            past,
            future: Vec::new(),
            last: Some((field, text)),
        }
    }

    /// The moment one step back, and the history after that undo. `None` if there is no step back.
    #[must_use]
    pub fn back(&self, now: Moment) -> Option<(Moment, Self)> {
        let (before, past) = self.past.split_last()?;
        let mut future = self.future.clone();
        future.push(now);
        let history = Self {
            past: past.to_vec(),
            future,
            last: None,
        };
        Some((before.clone(), history))
    }

    /// The moment one step forward, and the history after that redo. `None` if there is no step forward.
    #[must_use]
    pub fn forth(&self, now: Moment) -> Option<(Moment, Self)> {
        let (next, future) = self.future.split_last()?;
        let mut past = self.past.clone();
        past.push(now);
        let history = Self {
            past,
            future: future.to_vec(),
            last: None,
        };
        Some((next.clone(), history))
    }

    /// Whether an undo and a redo are possible, in that order.
    #[must_use]
    pub fn can(&self) -> (bool, bool) {
        (!self.past.is_empty(), !self.future.is_empty())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draft(name: &str) -> Moment {
        let mut draft = Draft::default();
        draft.set("piece.name", name);
        (Rc::new(draft), Rc::default())
    }

    fn typed(history: &History, from: &str, to: &str) -> History {
        history.noted(draft(from), "piece.name".to_owned(), to.to_owned())
    }

    #[test]
    fn continued_typing_in_one_field_is_one_step() {
        let mut history = History::default();
        for (from, to) in [("", "P"), ("P", "Po"), ("Po", "Pot"), ("Pot", "Po")] {
            history = typed(&history, from, to);
        }
        let (back, left) = history.back(draft("Po")).unwrap();
        assert_eq!(back, draft(""));
        assert_eq!(left.can(), (false, true));
        let (forth, _) = left.forth(back).unwrap();
        assert_eq!(forth, draft("Po"));
    }

    #[test]
    fn a_new_word_or_another_field_starts_a_new_step() {
        let history = typed(&History::default(), "", "seen");
        let history = typed(&history, "seen", "absent");
        let history = history.noted(draft("absent"), "piece.form".to_owned(), "tray".to_owned());
        assert_eq!(history.past.len(), 3);
    }

    #[test]
    fn a_change_after_an_undo_discards_the_redo_steps() {
        let history = typed(&History::default(), "", "Pot");
        let (_, history) = history.back(draft("Pot")).unwrap();
        let history = typed(&history, "", "Tray");
        assert_eq!(history.can(), (true, false));
        let again = typed(&history, "Tray", "Trays");
        assert_eq!(again.past.len(), 1, "typing goes on");
    }

    #[test]
    fn the_history_keeps_a_limited_number_of_steps() {
        let mut history = History::default();
        for n in 0..=MOST {
            history = history.noted(draft(&n.to_string()), String::new(), String::new());
        }
        assert_eq!(history.past.len(), MOST);
        assert_eq!(history.past[0], draft("1"));
    }
}
