//! Choosing one of a few: radio buttons, a list to pick from, and a box to tick.

use yew::prelude::*;

use super::field::{described, heard, hint, trouble};
use crate::app::pages::Page;
use crate::app::parts::marks::div;
use crate::app::parts::words::joined;
use crate::app::state::Target;

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
    html! {
        <fieldset class="choice" aria-describedby={described(id)}>
            <legend>{ label }</legend>
            { hint(id, said) }
            <div class="radios" onchange={heard(page, target)}>
                for (choice, words) in choices {
                    <label class="radio" key={choice}>
                        <input type="radio" name={id.to_owned()} value={choice} checked={choice == value} />
                        <span>{ words }</span>
                    </label>
                }
            </div>
            { trouble(id, target.problem(page.open)) }
        </fieldset>
    }
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
    html! {
        <div class="field">
            <label for={id.to_owned()}>{ label }</label>
            { hint(id, said) }
            <select id={id.to_owned()} aria-describedby={described(id)} {onchange}>
                for (choice, words) in choices {
                    <option key={choice} value={choice} selected={choice == value}>{ words }</option>
                }
            </select>
            { problem }
        </div>
    }
}

/// Yes, no, or not sure: the question and its hint.
pub fn yes_no(page: Page, path: &'static str, [label, said]: [&'static str; 2]) -> Html {
    let choices = vec![("yes", "Yes"), ("no", "No")];
    radios(page, Target::Flag(path), [label, said, "Not sure"], choices)
}

/// A box to tick: the statement and its hint.
pub fn tick(page: Page, path: &'static str, [label, said]: [&'static str; 2]) -> Html {
    let checked = page.open.draft.flag(path) == Some(true);
    div(
        "tick",
        vec![
            html! { <label class="radio" for={path}>
                <input
                    id={path}
                    type="checkbox"
                    {checked}
                    aria-describedby={joined(&[path, "-hint"])}
                    onchange={heard(page, Target::Flag(path))}
                />
                <span>{ label }</span>
            </label> },
            hint(path, said),
        ],
    )
}
