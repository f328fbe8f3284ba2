//! Choosing one of a few: radio buttons, a list to pick from, and a box to tick.

use leavewell_model::Problem;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use super::field::Trouble;

/// One thing to choose: its id in the file, and the words for people.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Id in the file; empty for "not said".
    pub id: &'static str,
    /// The words.
    pub label: &'static str,
}

/// The choices of a vocabulary: `choices!(Form)`.
#[macro_export]
macro_rules! choices {
    ($word:ident) => {
        $word::ALL
            .iter()
            .map(|word| $crate::app::parts::choice::Choice {
                id: word.id(),
                label: word.label(),
            })
            .collect::<Vec<_>>()
    };
}
pub use choices;

/// What a group of radio buttons or a list needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct ChoiceProps {
    /// Id, unique on the screen; also the name of the radio group.
    pub id: AttrValue,
    /// The question.
    pub label: AttrValue,
    /// Why it is asked, or how to answer; empty for none.
    #[prop_or_default]
    pub hint: AttrValue,
    /// What there is to choose.
    pub choices: Vec<Choice>,
    /// Words for the choice that clears the answer; empty when there is none.
    #[prop_or_default]
    pub unsaid: &'static str,
    /// Id of the choice made; empty when none is.
    pub value: AttrValue,
    /// What is wrong with it.
    #[prop_or_default]
    pub problem: Option<Problem>,
    /// The id chosen; empty when the answer is cleared.
    pub on_choice: Callback<String>,
}

/// Radio buttons under one question.
#[component]
pub fn Radios(props: &ChoiceProps) -> Html {
    let ChoiceProps {
        id,
        label,
        hint,
        value,
        problem,
        ..
    } = props;
    let onchange = props.on_choice.reform(|event: Event| {
        event
            .target_dyn_into::<HtmlInputElement>()
            .map(|input| input.value())
            .unwrap_or_default()
    });
    html! {
        <fieldset class="choice" aria-describedby={format!("{id}-hint {id}-problem")}>
            <legend>{ label.clone() }</legend>
            <p class="hint" id={format!("{id}-hint")}>{ hint.clone() }</p>
            <div class="radios">
                for choice in all(props, Unsaid::Last) {
                    <label class="radio" key={choice.id}>
                        <input
                            type="radio"
                            name={id.clone()}
                            value={choice.id}
                            checked={choice.id == value.as_str()}
                            onchange={onchange.clone()}
                        />
                        <span>{ choice.label }</span>
                    </label>
                }
            </div>
            <Trouble id={format!("{id}-problem")} problem={problem.clone()} />
        </fieldset>
    }
}

/// A list to pick from, for more than a handful.
#[component]
pub fn Pick(props: &ChoiceProps) -> Html {
    let ChoiceProps {
        id,
        label,
        hint,
        value,
        problem,
        ..
    } = props;
    let onchange = props.on_choice.reform(|event: Event| {
        event
            .target_dyn_into::<HtmlSelectElement>()
            .map(|select| select.value())
            .unwrap_or_default()
    });
    html! {
        <div class="field">
            <label for={id.clone()}>{ label.clone() }</label>
            <p class="hint" id={format!("{id}-hint")}>{ hint.clone() }</p>
            <select {id} aria-describedby={format!("{id}-hint {id}-problem")} {onchange}>
                for choice in all(props, Unsaid::First) {
                    <option key={choice.id} value={choice.id} selected={choice.id == value.as_str()}>
                        { choice.label }
                    </option>
                }
            </select>
            <Trouble id={format!("{id}-problem")} problem={problem.clone()} />
        </div>
    }
}

/// What a yes-or-no question needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct YesNoProps {
    /// Id, unique on the screen.
    pub id: AttrValue,
    /// The question.
    pub label: AttrValue,
    /// Why it is asked; empty for none.
    #[prop_or_default]
    pub hint: AttrValue,
    /// The answer, `None` for not sure.
    pub value: Option<bool>,
    /// The new answer.
    pub on_answer: Callback<Option<bool>>,
}

/// Yes, no, or not sure.
#[component]
pub fn YesNo(props: &YesNoProps) -> Html {
    let on_choice = props.on_answer.reform(|id: String| match id.as_str() {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    });
    let value = props.value.map_or("", |yes| if yes { "yes" } else { "no" });
    html! {
        <Radios
            id={props.id.clone()}
            label={props.label.clone()}
            hint={props.hint.clone()}
            choices={vec![Choice { id: "yes", label: "Yes" }, Choice { id: "no", label: "No" }]}
            unsaid="Not sure"
            {value}
            {on_choice}
        />
    }
}

/// What a box to tick needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct TickProps {
    /// Id, unique on the screen.
    pub id: AttrValue,
    /// The statement.
    pub label: AttrValue,
    /// Why it is asked; empty for none.
    #[prop_or_default]
    pub hint: AttrValue,
    /// Whether it is ticked.
    pub checked: bool,
    /// Whether it is ticked now.
    pub on_tick: Callback<bool>,
}

/// A box to tick.
#[component]
pub fn Tick(props: &TickProps) -> Html {
    let TickProps {
        id,
        label,
        hint,
        checked,
        on_tick,
    } = props;
    let onchange = on_tick.reform(|event: Event| {
        event
            .target_dyn_into::<HtmlInputElement>()
            .is_some_and(|input| input.checked())
    });
    html! {
        <div class="tick">
            <label class="radio" for={id.clone()}>
                <input {id} type="checkbox" checked={*checked} aria-describedby={format!("{id}-hint")} {onchange} />
                <span>{ label.clone() }</span>
            </label>
            <p class="hint" id={format!("{id}-hint")}>{ hint.clone() }</p>
        </div>
    }
}

/// Where the choice that clears the answer stands.
#[derive(Clone, Copy)]
enum Unsaid {
    First,
    Last,
}

fn all(props: &ChoiceProps, unsaid: Unsaid) -> Vec<Choice> {
    let mut choices = props.choices.clone();
    if !props.unsaid.is_empty() {
        let at = match unsaid {
            Unsaid::First => 0,
            Unsaid::Last => choices.len(),
        };
        choices.insert(
            at,
            Choice {
                id: "",
                label: props.unsaid,
            },
        );
    }
    choices
}
