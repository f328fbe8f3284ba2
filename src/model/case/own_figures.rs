//! A set of figures of one's own, apart from any piece: a workshop's figures, to lay over another.

use serde_json::{Map, Value};

use super::{Draft, Problem};

/// What `format` must say.
const FORMAT: &str = "leavewell-figures";
/// The newest version this program writes and reads.
const VERSION: u64 = 1;

impl Draft {
    /// The figures of this case's own as the text of a file; `None` when it has none.
    #[must_use]
    pub fn own_figures(&self) -> Option<String> {
        let own = self.section("overrides").filter(|own| !own.is_empty())?;
        let mut root = Map::new();
        root.insert("format".to_owned(), FORMAT.into());
        root.insert("version".to_owned(), VERSION.into());
        root.insert("overrides".to_owned(), Value::Object(own.clone()));
        serde_json::to_string_pretty(&root).ok()
    }

    /// Lays the figures of such a file over those of this case and says how many there were. A figure
    /// the file does not name stays; one this program does not know is kept, and reported like any
    /// other that cannot be used when the case is read.
    ///
    /// # Errors
    /// When the text is no such file, with what to do about it. The case is then unchanged.
    pub fn lay_figures(&mut self, text: &str) -> Result<usize, Problem> {
        let fault = |message: &str, remedy: &str| Problem {
            field: "file".to_owned(),
            message: message.to_owned(),
            remedy: remedy.to_owned(),
        };
        // A case file holds figures as well: the same limits keep either from doing harm.
        let as_case = text.replacen(FORMAT, super::CASE_FORMAT, 1);
        let read = match Self::parse(&as_case) {
            Ok(read) if as_case != text => read,
            Ok(_) => {
                return Err(fault(
                    "This is the file of a piece, not of figures.",
                    "Open it from the shelf, or save its figures as a file there first.",
                ));
            }
            Err(super::OpenError::NotACase) => {
                return Err(fault(
                    "This is no file of figures.",
                    "Choose a file that was saved with \"Save my figures as a file\".",
                ));
            }
            Err(other) => return Err(other.problem()),
        };
        let figures = read.section("overrides").filter(|own| !own.is_empty());
        let Some(figures) = figures else {
            return Err(fault(
                "There are no figures in this file.",
                "Choose another file.",
            ));
        };
        for (id, figure) in figures {
            self.put_override(id, figure.clone());
        }
        Ok(figures.len())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOT: &str = "overrides.{fee.lot}.value";

    #[test]
    fn figures_go_from_one_case_to_another() {
        let mut workshop = Draft::default();
        assert_eq!(workshop.own_figures(), None);
        workshop.set(LOT, "31");
        workshop.set("overrides.{fee.lot}.reason", "Our own sale room");
        workshop.set("piece.name", "Invented pot");
        let file = workshop.own_figures().unwrap();
        assert!(
            !file.contains("Invented"),
            "nothing of the piece goes with them"
        );
        let mut other = Draft::default();
        other.set("overrides.{fee.vat}.value", "0.1");
        assert_eq!(other.lay_figures(&file), Ok(1));
        assert_eq!(other.text(LOT), "31");
        assert_eq!(
            other.text("overrides.{fee.lot}.reason"),
            "Our own sale room"
        );
        assert_eq!(other.text("overrides.{fee.vat}.value"), "0.1");
        let again = other.own_figures().unwrap();
        assert!(again.contains("fee.vat") && again.contains("fee.lot"));
    }

    #[test]
    fn what_is_no_file_of_figures_is_refused_and_changes_nothing() {
        let mut case = Draft::default();
        case.set(LOT, "31");
        let before = case.clone();
        for (text, said) in [
            (
                "{\"format\":\"leavewell-figures\",\"version\":1}",
                "no figures in",
            ),
            (
                "{\"format\":\"leavewell-figures\",\"version\":9,\"overrides\":{\"a\":1}}",
                "version 9",
            ),
            ("{\"format\":\"leavewell-figures\"", "breaks off"),
            ("{\"format\":\"something\"}", "no file of figures"),
            ("[1]", "no file of figures"),
        ] {
            let fault = case.lay_figures(text).unwrap_err();
            assert!(fault.message.contains(said), "{text}: {}", fault.message);
            assert!(!fault.remedy.is_empty());
        }
        let whole = case.to_json();
        assert!(
            case.lay_figures(&whole)
                .unwrap_err()
                .message
                .contains("file of a piece")
        );
        assert_eq!(case, before);
    }

    #[test]
    fn a_figure_nobody_knows_is_kept_and_reported() {
        let mut case = Draft::default();
        let text = "{\"format\":\"leavewell-figures\",\"version\":1,\"overrides\":{\"no.such\":{\"value\":1}}}";
        assert_eq!(case.lay_figures(text), Ok(1));
        assert!(case.to_json().contains("no.such"));
        assert!(
            case.read()
                .1
                .iter()
                .any(|p| p.field.starts_with("overrides"))
        );
    }
}
