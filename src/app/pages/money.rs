//! Money: what an undamaged one fetches, what is asked for work, what the owner agrees to.

use leavewell_model::case::{Currency, Route as SaleRoute};
use leavewell_model::facts::treatment_text;
use yew::prelude::*;

use super::PageProps;
use crate::app::parts::cautions::{Cautions, named};
use crate::app::parts::choice::{Pick, Radios, Tick, choices};
use crate::app::parts::field::TextField;
use crate::app::parts::screen::Screen;
use crate::app::parts::words::{capital, money_band};
use crate::app::route::Route;
use crate::app::state::{Action, Open};

/// What a quote can be put in for, in the order people ask for it.
const QUOTED: [&str; 6] = ["T14a", "T09", "T09b", "T10a", "T03", "T17"];

/// Money.
#[component]
pub fn MoneyPage(props: &PageProps) -> Html {
    let PageProps { open, act } = props;
    let unit = unit(open.currency());
    html! {
        <Screen
            open={open.clone()}
            title="What it might fetch, and what work would cost"
            purpose="A rough value and one price are enough to weigh money. Leave open what you do not know."
            next={(Route::Counsel, "Next: the counsel".into())}
            line={format!("As it is: {}.", money_band(open.report.value.as_it_is, open.currency()))}
            answer={worth(open)}
        >
            <section aria-labelledby="value-title">
                <h2 id="value-title">{ "What an undamaged one fetches" }</h2>
                <p class="hint">
                    { "Think of the same piece with its silver whole and nothing broken. Results of past sales are the \
                       best guide; a guess is good enough to begin with." }
                </p>
                <div class="side-by-side">
                    { value(props, "market.low", "Low", "1 in 10 would fetch less.", unit) }
                    { value(props, "market.likely", "Likely", "As likely more as less.", unit) }
                    { value(props, "market.high", "High", "1 in 10 would fetch more.", unit) }
                </div>
                <Pick
                    id="market.currency"
                    label="Currency"
                    hint="Only a label: nothing is converted, so keep to one."
                    choices={choices!(Currency)}
                    unsaid="Not said"
                    value={open.draft.text("market.currency")}
                    problem={open.problem("market.currency")}
                    on_choice={sets(act, "market.currency")}
                />
                <Radios
                    id="market.route"
                    label="How would it be sold?"
                    hint="At auction, fees come off what the buyer bids."
                    choices={choices!(SaleRoute)}
                    unsaid="Not said"
                    value={open.draft.text("market.route")}
                    problem={open.problem("market.route")}
                    on_choice={sets(act, "market.route")}
                />
            </section>
            <section aria-labelledby="quotes-title">
                <h2 id="quotes-title">{ "Prices you were asked" }</h2>
                <p class="hint">
                    { "Put in only what somebody has quoted you. Without a price, a usual one is taken and the range \
                       is wide. That a price can be put in does not mean that the work is wise." }
                </p>
                for treatment in QUOTED {
                    <QuoteFields key={treatment} {treatment} open={open.clone()} act={act.clone()} />
                }
            </section>
            <section aria-labelledby="consents-title">
                <h2 id="consents-title">{ "If it were replated" }</h2>
                <p class="hint">
                    { "Replating takes away what cannot be put back, so it is not even weighed for some pieces unless \
                       these hold. Tick what is so; nothing is promised by it." }
                </p>
                { consent(props, "consents.loss", "I accept that the first silver is lost for good", "") }
                { consent(props, "consents.photo", "It will be photographed well before anything is done", "") }
                { consent(
                    props,
                    "consents.disclose",
                    "A later buyer will be told",
                    "The law may ask for it; honesty does.",
                ) }
                { consent(
                    props,
                    "consents.conservator_opinion",
                    "I have a conservator's opinion in writing",
                    "From somebody who has seen the piece and does not sell the work.",
                ) }
            </section>
            <Cautions cautions={named(&QUOTED)} />
        </Screen>
    }
}

/// What it is worth, in three bands.
fn worth(open: &Open) -> Html {
    let value = &open.report.value;
    let currency = open.currency();
    html! {
        <div>
            <h2>{ "What it might fetch" }</h2>
            <dl class="bands">
                <dt>{ "Undamaged" }</dt>
                <dd>{ capital(&money_band(value.undamaged, currency)) }</dd>
                <dt>{ "As it is" }</dt>
                <dd>{ capital(&money_band(value.as_it_is, currency)) }</dd>
                <dt>{ "What a seller keeps of that" }</dt>
                <dd>{ capital(&money_band(value.net_as_it_is, currency)) }</dd>
            </dl>
            <p class="hint">{ "In 8 cases of 10 it would lie within these bounds." }</p>
            <p class="hint" hidden={!value.assumed}>
                { "You have given no value, so these rest on what such pieces usually fetch. A likely value of your \
                   own would narrow them." }
            </p>
            <p class="label">{ value.label }</p>
        </div>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct QuoteProps {
    treatment: &'static str,
    open: std::rc::Rc<Open>,
    act: Callback<Action>,
}

#[component]
fn QuoteFields(props: &QuoteProps) -> Html {
    let QuoteProps {
        treatment, open, ..
    } = props;
    // As it was when the screen opened: emptying a field must not close the box round it.
    let given = use_state(|| {
        ["low", "high"]
            .iter()
            .any(|field| !open.draft.quote_text(treatment, field).is_empty())
    });
    let Some(words) = treatment_text(treatment) else {
        return html! { <div hidden=true /> };
    };
    let unit = unit(open.currency());
    html! {
        <fieldset class="choice quote">
            <legend>{ words.name }</legend>
            <p class="hint">{ words.plain }</p>
            { quote(props, "likely", "Price asked", unit) }
            <details open={*given}>
                <summary>{ "The price was a range" }</summary>
                <div class="side-by-side">
                    { quote(props, "low", "From", unit) }
                    { quote(props, "high", "To", unit) }
                </div>
            </details>
        </fieldset>
    }
}

fn quote(props: &QuoteProps, field: &'static str, label: &'static str, unit: &'static str) -> Html {
    let treatment = props.treatment;
    html! {
        <TextField
            id={format!("quote-{treatment}-{field}")}
            {label}
            {unit}
            number=true
            value={props.open.draft.quote_text(treatment, field)}
            problem={props.open.quote_problem(treatment, field)}
            on_text={props.act.reform(move |typed| Action::SetQuote {
                treatment: treatment.to_owned(),
                field: field.to_owned(),
                typed,
            })}
        />
    }
}

fn value(
    props: &PageProps,
    path: &'static str,
    label: &'static str,
    hint: &'static str,
    unit: &'static str,
) -> Html {
    html! {
        <TextField
            id={path}
            {label}
            {hint}
            {unit}
            number=true
            value={props.open.draft.text(path)}
            problem={props.open.problem(path)}
            on_text={sets(&props.act, path)}
        />
    }
}

fn consent(props: &PageProps, path: &'static str, label: &'static str, hint: &'static str) -> Html {
    html! {
        <Tick
            id={path}
            {label}
            {hint}
            checked={props.open.draft.flag(path) == Some(true)}
            on_tick={props.act.reform(move |yes: bool| Action::SetFlag {
                path: path.to_owned(),
                yes: yes.then_some(true),
            })}
        />
    }
}

fn sets(act: &Callback<Action>, path: &'static str) -> Callback<String> {
    act.reform(move |typed| Action::Set {
        path: path.to_owned(),
        typed,
    })
}

fn unit(currency: Currency) -> &'static str {
    match currency {
        Currency::Pound => "£",
        Currency::Euro => "€",
        Currency::Dollar => "$",
        Currency::Other => "",
    }
}
