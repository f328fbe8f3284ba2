//! The row for quick entry: a piece in one line of fields, by keyboard.

use leavewell_model::Draft;
use leavewell_model::ledger::findings;
use leavewell_model::record::{put_looks, put_size};
use leavewell_model::terms::{BleedWord, Currency, Form, Goal, StockStatus};
use yew::prelude::*;

use crate::app::parts::choice::{LabelledId, choices, option};
use crate::app::parts::element::{El, el};
use crate::app::parts::field::hint;
use crate::app::parts::words::joined;
use crate::app::platform::page::{focus_field, put_in, typed_in};
use crate::app::platform::store;
use crate::app::state::Effect;
use crate::app::wording::stock as text;

/// The id of its first field.
pub const FIRST: &str = "quick-name";
const LOOKS: &str = "quick-looks";

/// A field of the row.
struct QuickField {
    id: &'static str,
    label: &'static str,
    /// Its path in the record; empty for the line of looks.
    path: &'static str,
    choices: Option<fn() -> Vec<LabelledId>>,
    /// Whether what is in it stays for the next piece.
    stays: bool,
}

const fn typed(id: &'static str, label: &'static str, path: &'static str) -> QuickField {
    QuickField {
        id,
        label,
        path,
        choices: None,
        stays: false,
    }
}

const fn staying(
    id: &'static str,
    label: &'static str,
    path: &'static str,
    choices: Option<fn() -> Vec<LabelledId>>,
) -> QuickField {
    QuickField {
        id,
        label,
        path,
        choices,
        stays: true,
    }
}

const FIELDS: [QuickField; 15] = [
    typed(FIRST, text::NAME, "piece.name"),
    staying(
        "quick-form",
        text::FORM,
        "piece.form",
        Some(|| choices!(Form)),
    ),
    typed("quick-number", text::NUMBER, "stock.number"),
    typed("quick-from", text::FROM, "piece.from_year"),
    typed("quick-to", text::TO, "piece.to_year"),
    typed("quick-height", text::HEIGHT, "piece.height_mm"),
    typed(LOOKS, text::LOOKS, ""),
    QuickField {
        choices: Some(|| choices!(BleedWord)),
        ..typed("quick-bare", text::BARE, "parts[part=body].bleed")
    },
    staying("quick-where", text::PLACE, "stock.where", None),
    staying(
        "quick-status",
        text::STANDS,
        "stock.status",
        Some(|| StockStatus::ENTERED.map(|s| (s.id(), s.label())).to_vec()),
    ),
    typed("quick-paid", text::PAID, "worth.paid"),
    typed("quick-likely", text::LIKELY, "market.likely"),
    typed("quick-asking", text::ASKING, "stock.asking"),
    staying(
        "quick-goal",
        text::GOAL,
        "aim.goal",
        Some(|| choices!(Goal)),
    ),
    staying(
        "quick-currency",
        text::CURRENCY,
        "market.currency",
        Some(|| choices!(Currency)),
    ),
];

/// The row, in a fold.
pub fn quick_row(effect: &Callback<Effect>) -> Html {
    let onsubmit = effect.reform(|event: SubmitEvent| {
        event.prevent_default();
        Effect::AddRow
    });
    let form = el("form", "quick")
        .sent(onsubmit)
        .each(&FIELDS, control)
        .el(el("button", "main").attr("type", "submit").text(text::ADD));
    el("details", "more quick-entry")
        .el(el("summary", "")
            .attr("id", "quick-title")
            .text(text::QUICK))
        .p("hint", text::QUICK_HINT)
        .el(form)
        .el(key_of_looks())
        .html()
}

fn control(field: &QuickField) -> El {
    let control = match field.choices {
        None => el("input", "")
            .attr("type", "text")
            .attr("autocomplete", "off"),
        Some(choices) => {
            let none = [("", text::NOT_SAID)];
            el("select", "").each(none.into_iter().chain(choices()), |(id, words)| {
                option(id, words, id.is_empty())
            })
        }
    };
    let label = match field.path {
        "piece.height_mm" if store::has_inches() => text::HEIGHT_IN_INCHES,
        _ => field.label,
    };
    el("div", "field")
        .el(el("label", "").attr("for", field.id).text(label))
        .el(control.attr("id", field.id))
}

/// What the letters of the looks mean.
fn key_of_looks() -> El {
    let meanings = el("dl", "looks-key").each(findings(), |fact| {
        el("div", "")
            .el(el("dt", "").text(fact.id.text()))
            .el(el("dd", "").text(fact.title))
    });
    el("details", "")
        .tag("summary", text::LOOKS_KEY)
        .put(hint(LOOKS, text::LOOKS_KEY_HINT))
        .el(meanings)
}

/// The record of the piece typed into the row, on top of what the person's pieces begin with.
///
/// # Errors
/// What cannot be used, and what to do. The row stays as it is.
pub fn typed_piece(begun: Draft) -> Result<Draft, [String; 2]> {
    let mut draft = begun;
    let mut unknown = Vec::new();
    let mut is_empty = true;
    for field in &FIELDS {
        let typed = typed_in(field.id);
        is_empty &= field.stays || typed.trim().is_empty();
        if field.id == LOOKS {
            unknown = put_looks(&mut draft, &typed);
        } else if !put_size(&mut draft, field.path, typed.trim()) && !typed.trim().is_empty() {
            draft.set(field.path, typed.trim());
        }
    }
    if !unknown.is_empty() {
        let words = text::not_looks(&unknown.join(" "));
        return Err([words, text::NOT_LOOKS_NEXT.to_owned()]);
    }
    if is_empty && typed_in("quick-form").is_empty() {
        return Err([text::NOTHING_TYPED.to_owned(), text::QUICK_HINT.to_owned()]);
    }
    match draft.read().1.into_iter().next() {
        Some(problem) => {
            let field = FIELDS.iter().find(|field| field.path == problem.field);
            let label = field.map_or("", |field| field.label);
            if let Some(field) = field {
                focus_field(field.id);
            }
            Err([joined(&[label, ": ", &problem.message]), problem.remedy])
        }
        None => Ok(draft),
    }
}

/// Empties the row for the next piece and goes to its first field.
pub fn next_piece() {
    for field in FIELDS.iter().filter(|field| !field.stays) {
        put_in(field.id, "");
    }
    focus_field(FIRST);
}
