//! Piece: what it is for, what is known of it, and what is wanted.

use leavewell_model::case::{Doer, Form, Goal};
use leavewell_model::report::IdentityReport;
use yew::prelude::*;

use super::PageProps;
use crate::app::parts::choice::{Pick, Radios, Tick, YesNo, choices};
use crate::app::parts::field::TextField;
use crate::app::parts::screen::Screen;
use crate::app::route::Route;
use crate::app::state::Action;

/// Piece.
#[component]
pub fn PiecePage(props: &PageProps) -> Html {
    let PageProps { open, act } = props;
    let identity = &open.report.identity;
    html! {
        <Screen
            open={open.clone()}
            title="The piece, and what you want of it"
            purpose="A few things to begin with. Everything may be left open; the answer is only less sure then."
            next={(Route::Look, "Next: look at the piece".into())}
            line={identity.sentence.clone()}
            answer={begin(identity)}
        >
            <section aria-labelledby="piece-title">
                <h2 id="piece-title">{ "The piece" }</h2>
                { text(props, "piece.name", "What do you call it?", "For you to find it again.", "") }
                <Pick
                    id="piece.form"
                    label="What is it?"
                    hint="The form decides which parts there are, and whether food or drink belongs in it."
                    choices={choices!(Form)}
                    unsaid="Not said"
                    value={open.draft.text("piece.form")}
                    problem={open.problem("piece.form")}
                    on_choice={sets(act, "piece.form")}
                />
                { number(props, "piece.height_mm", "Height", "Its size tells how much work it would be.", "mm") }
                <fieldset class="choice">
                    <legend>{ "When was it made, as far as somebody has told you?" }</legend>
                    <p class="hint">
                        { "A year you are told narrows what it can be. Leave both open if nobody knows." }
                    </p>
                    <div class="side-by-side">
                        { number(props, "piece.from_year", "Not before", "", "") }
                        { number(props, "piece.to_year", "Not after", "", "") }
                    </div>
                </fieldset>
                <YesNo
                    id="piece.soldered_vessel"
                    label="Is it held together with solder?"
                    hint="Pots, jugs and baskets mostly are. Old solder often holds lead and lets go when it is warmed."
                    value={open.draft.flag("piece.soldered_vessel")}
                    on_answer={answers(act, "piece.soldered_vessel")}
                />
                { tick(
                    props,
                    "piece.rare",
                    "It is rare, early, or by a maker people look for",
                    "Such pieces lose most when their first surface goes.",
                ) }
                { tick(
                    props,
                    "piece.documented",
                    "Its history is written down",
                    "Papers, an old bill or a photograph: what can be shown is worth keeping unbroken.",
                ) }
            </section>
            <section aria-labelledby="aim-title">
                <h2 id="aim-title">{ "What do you want?" }</h2>
                <Radios
                    id="aim.goal"
                    label="What is to become of it?"
                    hint="A seller asks what it fetches; a keeper asks what stays. The answer can differ."
                    choices={choices!(Goal)}
                    unsaid="Not decided"
                    value={open.draft.text("aim.goal")}
                    problem={open.problem("aim.goal")}
                    on_choice={sets(act, "aim.goal")}
                />
                { tick(
                    props,
                    "aim.food",
                    "Food or drink is to be served from it",
                    "Old plate can give off lead or copper, so this is checked before anything else.",
                ) }
                { tick(
                    props,
                    "aim.store_food",
                    "Food or drink would stand in it for hours",
                    "The longer it stands, the more comes out of the metal.",
                ) }
                { tick(
                    props,
                    "aim.household_child_or_pregnant",
                    "A child, or somebody pregnant or breast-feeding, lives where it is kept or would use it",
                    "Lead harms them most.",
                ) }
                <Radios
                    id="aim.doer"
                    label="Who would do any work on it?"
                    hint="Some work is safe at home and most is not."
                    choices={choices!(Doer)}
                    unsaid="Not decided"
                    value={open.draft.text("aim.doer")}
                    problem={open.problem("aim.doer")}
                    on_choice={sets(act, "aim.doer")}
                />
            </section>
        </Screen>
    }
}

/// What a newcomer sees beside the first questions.
fn begin(identity: &IdentityReport) -> Html {
    let looks = identity.next_looks.iter().take(3);
    html! {
        <div>
            <h2>{ "How this goes on" }</h2>
            <p>
                { "Next you look at the piece, then say what state each part is in, then what it might fetch. You can \
                   read the counsel at any time: it says how sure it is." }
            </p>
            <p>{ "These looks would tell most:" }</p>
            <ul>
                for look in looks {
                    <li key={look.finding}>{ look.title }</li>
                }
            </ul>
        </div>
    }
}

fn sets(act: &Callback<Action>, path: &'static str) -> Callback<String> {
    act.reform(move |typed| Action::Set {
        path: path.to_owned(),
        typed,
    })
}

fn answers(act: &Callback<Action>, path: &'static str) -> Callback<Option<bool>> {
    act.reform(move |yes| Action::SetFlag {
        path: path.to_owned(),
        yes,
    })
}

fn text(
    props: &PageProps,
    path: &'static str,
    label: &'static str,
    hint: &'static str,
    unit: &'static str,
) -> Html {
    field(props, path, [label, hint, unit], false)
}

fn number(
    props: &PageProps,
    path: &'static str,
    label: &'static str,
    hint: &'static str,
    unit: &'static str,
) -> Html {
    field(props, path, [label, hint, unit], true)
}

fn field(
    props: &PageProps,
    path: &'static str,
    [label, hint, unit]: [&'static str; 3],
    number: bool,
) -> Html {
    html! {
        <TextField
            id={path}
            {label}
            {hint}
            {unit}
            {number}
            value={props.open.draft.text(path)}
            problem={props.open.problem(path)}
            on_text={sets(&props.act, path)}
        />
    }
}

fn tick(props: &PageProps, path: &'static str, label: &'static str, hint: &'static str) -> Html {
    html! {
        <Tick
            id={path}
            {label}
            {hint}
            checked={props.open.draft.flag(path) == Some(true)}
            on_tick={props.act.reform(move |yes: bool| Action::SetFlag {
                path: path.to_owned(),
                // Unticked is the same as never ticked.
                yes: yes.then_some(true),
            })}
        />
    }
}
