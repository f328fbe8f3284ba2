//! Text fields with a label, a hint, a unit and a problem message.

use leavewell_model::Problem;
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use crate::app::pages::Page;
use crate::app::parts::element::el;
use crate::app::parts::words::joined;
use crate::app::state::{Action, Target};

/// A text field. The words are its label, hint and unit; hint and unit may be empty.
pub fn text_field(page: Page, target: Target, words: [&str; 3]) -> Html {
    field(page, target, words, "text")
}

/// A text field for a number, for which a phone shows the numeric keyboard.
pub fn number_field(page: Page, target: Target, words: [&str; 3]) -> Html {
    field(page, target, words, "decimal")
}

/// The problem with a field and its remedy. The element is always present, so that the fields beside it keep
/// their elements.
pub fn trouble(id: &str, problem: Option<Problem>) -> Html {
    let words = problem.map_or_else(String::new, |p| p.message + " " + &p.remedy);
    el("p", "problem")
        .set("id", joined(&[id, "-problem"]))
        .hidden(words.is_empty())
        .words(words)
        .html()
}

/// A hint that describes a control.
pub fn hint(id: &str, words: &str) -> Html {
    el("p", "hint")
        .set("id", joined(&[id, "-hint"]))
        .words(words.to_owned())
        .html()
}

/// The ids of the elements that describe a control.
#[must_use]
pub fn described(id: &str) -> String {
    joined(&[id, "-hint ", id, "-problem"])
}

/// Emits what a person typed or chose in a control.
#[must_use]
pub fn heard(page: Page, target: Target) -> Callback<Event> {
    page.act
        .reform(move |event: Event| Action::Typed(target, typed(&event)))
}

/// The current value of a control. For a checkbox it is `yes` or empty.
#[must_use]
pub fn typed(event: &Event) -> String {
    let Some(place) = event.target() else {
        return String::new();
    };
    if let Some(input) = place.dyn_ref::<HtmlInputElement>() {
        // An unchecked box counts as never checked.
        if input.type_() == "checkbox" {
            return if input.checked() { "yes" } else { "" }.to_owned();
        }
        return input.value();
    }
    place
        .dyn_ref::<HtmlSelectElement>()
        .map(HtmlSelectElement::value)
        .unwrap_or_default()
}

/// Where a slider stands; 0 for an event of any other control.
#[must_use]
pub fn slider_value(event: &Event) -> f64 {
    let place = event.target();
    let slider = place
        .as_ref()
        .and_then(|place| place.dyn_ref::<HtmlInputElement>());
    slider
        .map(HtmlInputElement::value_as_number)
        .filter(|value| value.is_finite())
        .unwrap_or(0.0)
}

/// A text field. It shows the text as typed, valid or not, with any problem below it.
fn field(
    page: Page,
    target: Target,
    [label, said, unit]: [&str; 3],
    inputmode: &'static str,
) -> Html {
    let id = target.id();
    let problem = target.problem(page.open);
    let heard = heard(page, target);
    let number = inputmode == "decimal";
    let control = el("input", if number { "is-number" } else { "" })
        .set("id", id.clone())
        .attr("type", "text")
        .attr("inputmode", inputmode)
        .attr("autocomplete", "off")
        .value(target.text(page.open))
        .set("aria-describedby", described(&id))
        .attr("aria-invalid", if problem.is_some() { "true" } else { "" })
        .typed(heard.reform(|event: InputEvent| event.into()));
    let line = el("div", "field-line")
        .el(control)
        .el(el("span", "unit").words(unit.to_owned()));
    el("div", "field")
        .el(el("label", "")
            .set("for", id.clone())
            .words(label.to_owned()))
        .put(hint(&id, said))
        .el(line)
        .put(trouble(&id, problem))
        .html()
}
