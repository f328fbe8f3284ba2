//! Form fields of a page: the typed text, read and checked.

use super::block::{Block, Choice, EntryField};
use leavewell_model::record::Draft;
use leavewell_model::record::schema::{self, FieldKind};

/// The definition of a number field. Its range is the schema's.
#[derive(Clone, Copy, Debug)]
pub struct NumberField<'a> {
    /// Path of its text in the record.
    pub path: &'a str,
    /// The label.
    pub label: &'a str,
    /// Unit; may be empty.
    pub unit: &'a str,
    /// A line of help; may be empty.
    pub hint: &'a str,
    /// The value used while the field is empty.
    pub stand_in: Option<f64>,
}

/// The field and its number: the default while it is empty, `None` if the text cannot be used.
#[must_use]
pub fn number(draft: &Draft, ask: NumberField<'_>) -> (Block, Option<f64>) {
    debug_assert!(
        matches!(
            schema::field(ask.path).map(|field| field.kind),
            Some(FieldKind::Number(_))
        ),
        "{}",
        ask.path
    );
    let (value, problem) = read_number(draft, &ask);
    let field = EntryField {
        path: ask.path.to_owned(),
        label: ask.label.to_owned(),
        unit: ask.unit.to_owned(),
        hint: ask.hint.to_owned(),
        text: draft.text(ask.path),
        stand_in: ask.stand_in.map(|v| v.to_string()).unwrap_or_default(),
        problem,
        number: true,
    };
    (Block::Field(field), value)
}

/// The number as the record reads it, or its default. If the text cannot be used, `None` and what is wrong.
fn read_number(draft: &Draft, ask: &NumberField<'_>) -> (Option<f64>, String) {
    match draft.number(ask.path) {
        Ok(value) => (value.or(ask.stand_in), String::new()),
        Err(problem) => (None, format!("{} {}", problem.message, problem.remedy)),
    }
}

/// The choice and the chosen id: the first option while nothing, or an unknown id, is chosen.
#[must_use]
pub fn choice(
    draft: &Draft,
    path: &str,
    label: &str,
    hint: &str,
    options: &[(&'static str, &'static str)],
) -> (Block, &'static str) {
    let text = draft.text(path);
    let chosen = options
        .iter()
        .find(|(id, _)| *id == text)
        .or(options.first())
        .map_or("", |(id, _)| id);
    let choice = Choice {
        path: path.to_owned(),
        label: label.to_owned(),
        hint: hint.to_owned(),
        options: options
            .iter()
            .map(|&(id, label)| (id.to_owned(), label.to_owned()))
            .collect(),
        chosen: chosen.to_owned(),
    };
    (Block::Choice(choice), chosen)
}

/// Moves the option with this id to the front.
pub(super) fn first<'a>(mut options: Vec<(&'a str, &'a str)>, id: &str) -> Vec<(&'a str, &'a str)> {
    if let Some(at) = options.iter().position(|(known, _)| *known == id) {
        let chosen = options.remove(at);
        options.insert(0, chosen);
    }
    options
}

#[cfg(test)]
mod tests {
    use super::*;

    const THICKNESS: NumberField<'static> = NumberField {
        path: "bench.heat.thickness_mm",
        label: "Thickness",
        unit: "mm",
        hint: "",
        stand_in: Some(0.8),
    };

    fn asked(text: &str) -> (String, Option<f64>) {
        let mut draft = Draft::default();
        draft.set(THICKNESS.path, text);
        let (Block::Field(field), value) = number(&draft, THICKNESS) else {
            panic!("a number field is a field")
        };
        assert_eq!(field.text, text.trim());
        (field.problem, value)
    }

    #[test]
    fn an_empty_field_uses_its_default() {
        assert_eq!(asked(""), (String::new(), Some(0.8)));
    }

    #[test]
    fn a_number_in_range_is_used() {
        assert_eq!(asked("1,5"), (String::new(), Some(1.5)));
    }

    #[test]
    fn an_unusable_number_states_what_is_usable() {
        for (text, what_can) in [
            ("0", "0.05 to 30"),
            ("-3", "0.05 to 30"),
            ("1e300", "0.05 to 30"),
            ("thick", "in digits, such as 0.8"),
        ] {
            let (problem, value) = asked(text);
            assert_eq!(value, None, "{text}");
            assert!(problem.contains(what_can), "{problem}");
        }
    }

    #[test]
    fn an_unknown_choice_falls_back_to_the_first() {
        let mut draft = Draft::default();
        let options = [("disk", "Round"), ("strip", "Strip")];
        draft.set("bench.heat.form", "cone");
        assert_eq!(
            choice(&draft, "bench.heat.form", "Form", "", &options).1,
            "disk"
        );
        draft.set("bench.heat.form", "strip");
        assert_eq!(
            choice(&draft, "bench.heat.form", "Form", "", &options).1,
            "strip"
        );
    }
}
