//! A text field with its label, hint, unit and what is wrong with what stands in it.

use leavewell_model::Problem;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What a field needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct FieldProps {
    /// Id, unique on the screen; the field's path or the like.
    pub id: AttrValue,
    /// The question.
    pub label: AttrValue,
    /// Why it is asked, or how to answer; empty for none.
    #[prop_or_default]
    pub hint: AttrValue,
    /// Unit shown after the field; empty for none.
    #[prop_or_default]
    pub unit: AttrValue,
    /// The text in it, as typed.
    pub value: AttrValue,
    /// What is wrong with it.
    #[prop_or_default]
    pub problem: Option<Problem>,
    /// A number is wanted, so a phone shows digits.
    #[prop_or_default]
    pub number: bool,
    /// What was typed, at every change.
    pub on_text: Callback<String>,
}

/// A text field. The text shown is the text typed, right or wrong; what is wrong is said below it.
#[component]
pub fn TextField(props: &FieldProps) -> Html {
    let oninput = props.on_text.reform(|event: InputEvent| {
        event
            .target_dyn_into::<HtmlInputElement>()
            .map(|input| input.value())
            .unwrap_or_default()
    });
    let FieldProps {
        id,
        label,
        hint,
        unit,
        value,
        problem,
        number,
        ..
    } = props;
    let described = format!("{id}-hint {id}-problem");
    html! {
        <div class="field">
            <label for={id.clone()}>{ label.clone() }</label>
            <p class="hint" id={format!("{id}-hint")}>{ hint.clone() }</p>
            <div class="field-line">
                <input
                    {id}
                    class={classes!(number.then_some("is-number"))}
                    type="text"
                    inputmode={if *number { "decimal" } else { "text" }}
                    autocomplete="off"
                    {value}
                    aria-describedby={described}
                    aria-invalid={problem.is_some().then_some("true")}
                    {oninput}
                />
                <span class="unit">{ unit.clone() }</span>
            </div>
            <Trouble id={format!("{id}-problem")} problem={problem.clone()} />
        </div>
    }
}

/// What the line under a field needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct TroubleProps {
    /// Id the field is described by.
    pub id: AttrValue,
    /// What is wrong, if anything.
    pub problem: Option<Problem>,
}

/// What is wrong with a field and what to do. The element is always there, so that fields beside it
/// are never drawn anew.
#[component]
pub fn Trouble(props: &TroubleProps) -> Html {
    let words = props
        .problem
        .as_ref()
        .map(|p| format!("{} {}", p.message, p.remedy))
        .unwrap_or_default();
    html! { <p class="problem" id={props.id.clone()} hidden={words.is_empty()}>{ words }</p> }
}
