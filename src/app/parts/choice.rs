//! Choices: radio buttons, drop-down lists, and checkboxes.

use yew::prelude::*;

use super::field::{described, heard, hint, trouble};
use crate::app::pages::Page;
use crate::app::parts::element::{El, el};
use crate::app::parts::marks::words;
use crate::app::parts::words::joined;
use crate::app::state::{Action, Target};
use crate::app::wording::controls as text;

/// One choice: its id in the record (empty for "not said") and its label.
pub type LabelledId = (&'static str, &'static str);

/// The choices of a vocabulary, as in `choices!(Form)`.
#[macro_export]
macro_rules! choices {
    ($word:ident) => {
        $word::ALL
            .iter()
            .map(|word| (word.id(), word.label()))
            .collect::<Vec<$crate::app::parts::choice::LabelledId>>()
    };
}
pub use choices;

/// Radio buttons for one question. The words are its label, its hint, and the last choice, which clears the
/// answer.
pub fn radios(
    page: Page,
    target: Target,
    words: [&'static str; 3],
    choices: Vec<LabelledId>,
) -> Html {
    radios_as(&target.id(), page, target, words, choices)
}

/// Radio buttons with a given id, for a screen that shows the same question twice.
pub fn radios_as(
    id: &str,
    page: Page,
    target: Target,
    [label, said, unsaid]: [&'static str; 3],
    mut choices: Vec<LabelledId>,
) -> Html {
    choices.push(("", unsaid));
    let value = target.text(page.open);
    // One listener serves all the buttons, because the change event bubbles to the fieldset.
    let radios =
        el("div", "radios")
            .changed(heard(page, target))
            .each(choices, |(choice, words)| {
                let button = el("input", "")
                    .attr("type", "radio")
                    .set("name", id.to_owned())
                    .value(choice.to_owned())
                    .ticked(choice == value);
                el("label", "radio")
                    .key(choice)
                    .el(button)
                    .tag("span", words)
            });
    el("fieldset", "choice")
        .set("aria-describedby", described(id))
        .tag("legend", label)
        .put(hint(id, said))
        .el(radios)
        .put(trouble(id, target.problem(page.open)))
        .html()
}

/// A drop-down list, for more than a handful of choices. The words are its label, its hint, and the first
/// choice, which clears the answer.
pub fn pick(
    page: Page,
    target: Target,
    words: [&'static str; 3],
    choices: Vec<LabelledId>,
) -> Html {
    let [label, said, unsaid] = words;
    let value = target.text(page.open);
    let problem = trouble(&target.id(), target.problem(page.open));
    list(
        &target.id(),
        label.into(),
        [said, unsaid],
        &value,
        choices,
        heard(page, target),
        problem,
    )
}

/// A drop-down list with every property given, for lists that are not a field of a piece.
pub fn list(
    id: &str,
    label: AttrValue,
    [said, unsaid]: [&'static str; 2],
    value: &str,
    mut choices: Vec<LabelledId>,
    onchange: Callback<Event>,
    problem: Html,
) -> Html {
    choices.insert(0, ("", unsaid));
    let select = el("select", "")
        .set("id", id.to_owned())
        .set("aria-describedby", described(id))
        .changed(onchange)
        .each(choices, |(choice, name)| {
            option(choice, name, choice == value)
        });
    el("div", "field")
        .el(el("label", "").set("for", id.to_owned()).put(words(label)))
        .put(hint(id, said))
        .el(select)
        .put(problem)
        .html()
}

/// One option of a drop-down list.
pub fn option(value: &'static str, words: &'static str, chosen: bool) -> El {
    el("option", "")
        .key(value)
        // Set even if it is empty, because an option without a value takes its text as the value.
        .set("value", value.to_owned())
        .attr("selected", if chosen { "selected" } else { "" })
        .text(words)
}

/// A question with the answers yes, no and not sure. The words are the question and its hint.
pub fn yes_no(page: Page, path: &'static str, [label, said]: [&'static str; 2]) -> Html {
    let choices = vec![("yes", text::YES), ("no", text::NO)];
    radios(
        page,
        Target::Flag(path),
        [label, said, text::NOT_SURE],
        choices,
    )
}

/// A box to tick: the statement and its hint.
pub fn tick(page: Page, path: &'static str, words: [&'static str; 2]) -> Html {
    tick_at(page, Target::Flag(path), words)
}

/// A box to tick for a field that is no flag of the whole piece.
pub fn tick_at(page: Page, target: Target, words: [&'static str; 2]) -> Html {
    let ticked = matches!(target.text(page.open).as_str(), "yes" | "true");
    tick_as(&target.id(), ticked, heard(page, target), words)
}

/// A box to tick, with everything said.
pub fn tick_as(
    id: &str,
    ticked: bool,
    heard: Callback<Event>,
    [label, said]: [&'static str; 2],
) -> Html {
    let control = el("input", "")
        .set("id", id.to_owned())
        .attr("type", "checkbox")
        .ticked(ticked)
        .set("aria-describedby", joined(&[id, "-hint"]))
        .changed(heard);
    el("div", "tick")
        .el(el("label", "radio")
            .set("for", id.to_owned())
            .el(control)
            .tag("span", label))
        .put(hint(id, said))
        .html()
}

/// Boxes to tick under one question, for a field that lists ids: its label and its hint.
pub fn several(
    page: Page,
    target: Target,
    [label, said]: [&'static str; 2],
    choices: Vec<LabelledId>,
) -> Html {
    let id = target.id();
    let boxes = el("div", "radios").each(choices, |(choice, words)| {
        let ticked = page
            .act
            .reform(move |_: Event| Action::Ticked(target, choice));
        let control = el("input", "")
            .attr("type", "checkbox")
            .value(choice.to_owned())
            .ticked(target.lists(page.open, choice))
            .changed(ticked);
        el("label", "radio")
            .key(choice)
            .el(control)
            .tag("span", words)
    });
    el("fieldset", "choice")
        .set("aria-describedby", described(&id))
        .tag("legend", label)
        .put(hint(&id, said))
        .el(boxes)
        .put(trouble(&id, target.problem(page.open)))
        .html()
}
