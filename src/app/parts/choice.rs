//! Choosing one of a few: radio buttons, a list to pick from, and a box to tick.

use yew::prelude::*;

use super::field::{described, heard, hint, trouble};
use crate::app::pages::Page;
use crate::app::parts::element::{El, el};
use crate::app::parts::marks::words;
use crate::app::parts::words::joined;
use crate::app::state::{Action, Target};
use crate::app::wording::controls as say;

/// One thing to choose: its id in the file (empty for "not said"), and the words for people.
pub type Choice = (&'static str, &'static str);

/// The choices of a vocabulary: `choices!(Form)`.
#[macro_export]
macro_rules! choices {
    ($word:ident) => {
        $word::ALL
            .iter()
            .map(|word| (word.id(), word.label()))
            .collect::<Vec<$crate::app::parts::choice::Choice>>()
    };
}
pub use choices;

/// Radio buttons under one question: its label, its hint, and words for the choice that clears the
/// answer, which comes last.
pub fn radios(page: Page, target: Target, words: [&'static str; 3], choices: Vec<Choice>) -> Html {
    radios_as(&target.id(), page, target, words, choices)
}

/// Radio buttons on a screen that shows the same question twice, each under an id of its own.
pub fn radios_as(
    id: &str,
    page: Page,
    target: Target,
    [label, said, unsaid]: [&'static str; 3],
    mut choices: Vec<Choice>,
) -> Html {
    choices.push(("", unsaid));
    let value = target.text(page.open);
    // One listener for all: a change of a button is heard in the box round it.
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

/// A list to pick from, for more than a handful: its label, its hint, and words for the choice that
/// clears the answer, which comes first.
pub fn pick(page: Page, target: Target, words: [&'static str; 3], choices: Vec<Choice>) -> Html {
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

/// A list to pick from, with everything said: for lists that are no field of a piece.
pub fn list(
    id: &str,
    label: AttrValue,
    [said, unsaid]: [&'static str; 2],
    value: &str,
    mut choices: Vec<Choice>,
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

/// One line of a list to pick from.
pub fn option(value: &'static str, words: &'static str, chosen: bool) -> El {
    el("option", "")
        .key(value)
        // Set even where it is empty: a line without a value stands for its words.
        .set("value", value.to_owned())
        .attr("selected", if chosen { "selected" } else { "" })
        .text(words)
}

/// Yes, no, or not sure: the question and its hint.
pub fn yes_no(page: Page, path: &'static str, [label, said]: [&'static str; 2]) -> Html {
    let choices = vec![("yes", say::YES), ("no", say::NO)];
    radios(
        page,
        Target::Flag(path),
        [label, said, say::NOT_SURE],
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
    choices: Vec<Choice>,
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
