//! A person's own figures and selling terms, reusable for other pieces, such as those of a workshop.

use serde_json::{Map, Value};

use super::{Draft, Problem};

/// What `format` must say.
const FORMAT: &str = "leavewell-figures";
/// The newest version this program writes and reads.
const VERSION: u64 = 1;

/// Selling terms that belong to a person and not to a piece, as paths in a case.
const TERMS: [&str; 3] = ["fees", "mix", "damping_pct"];

impl Draft {
    /// The figures of this case's own, and its terms of selling, as the text of a file; `None` when it
    /// has neither.
    #[must_use]
    pub fn own_figures(&self) -> Option<String> {
        let own = self.section("overrides").filter(|own| !own.is_empty());
        let mut terms = Map::new();
        for name in TERMS {
            if let Some(term) = self.section("market").and_then(|market| market.get(name)) {
                terms.insert(name.to_owned(), term.clone());
            }
        }
        if own.is_none() && terms.is_empty() {
            return None;
        }
        let mut root = Map::new();
        root.insert("format".to_owned(), FORMAT.into());
        root.insert("version".to_owned(), VERSION.into());
        if let Some(own) = own {
            root.insert("overrides".to_owned(), Value::Object(own.clone()));
        }
        if !terms.is_empty() {
            root.insert("market".to_owned(), Value::Object(terms));
        }
        serde_json::to_string_pretty(&root).ok()
    }

    /// Lays the figures and terms of such a file over those of this case and says how many there were.
    /// What the file does not name stays; a figure this program does not know is kept, and reported
    /// like any other that cannot be used when the case is read.
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
        let figures = read.section("overrides").into_iter().flatten();
        let mut taken = 0;
        for (id, figure) in figures {
            self.put_at(&["overrides.{", id, "}"].concat(), Some(figure.clone()));
            taken += 1;
        }
        for (name, term) in read.section("market").into_iter().flatten() {
            if !TERMS.contains(&name.as_str()) {
                continue;
            }
            let place = ["market.", name].concat();
            match term {
                Value::Object(terms) => {
                    for (field, value) in terms {
                        self.put_at(&[&place, ".", field].concat(), Some(value.clone()));
                        taken += 1;
                    }
                }
                value => {
                    self.put_at(&place, Some(value.clone()));
                    taken += 1;
                }
            }
        }
        if taken == 0 {
            return Err(fault(
                "There are no figures in this file.",
                "Choose another file.",
            ));
        }
        Ok(taken)
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
    fn terms_of_selling_go_along_and_nothing_else_of_the_market() {
        let mut workshop = Draft::default();
        workshop.set("market.likely", "420");
        workshop.set("market.fees.commission_pct", "12,5");
        workshop.set("market.fees.lot", "9");
        workshop.set("market.damping_pct", "80");
        let file = workshop.own_figures().unwrap();
        let mut other = Draft::default();
        other.set("market.likely", "60");
        other.set("market.fees.lot", "3");
        other.set("market.fees.vat_pct", "20");
        assert_eq!(other.lay_figures(&file), Ok(3));
        for (path, text) in [
            ("market.likely", "60"),
            ("market.fees.commission_pct", "12,5"),
            ("market.fees.lot", "9"),
            ("market.fees.vat_pct", "20"),
            ("market.damping_pct", "80"),
        ] {
            assert_eq!(other.text(path), text, "{path}");
        }
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
