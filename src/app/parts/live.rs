//! The live answer: one line that opens on a phone, a column beside the work on a wide screen.

use yew::prelude::*;

use crate::app::platform::clock;

/// How long the answer must stand still before it is read out, in milliseconds.
const SAY_AFTER_MS: u32 = 1_200;

/// What the live answer needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct LiveProps {
    /// The answer in one line.
    pub line: AttrValue,
    /// The answer in full: what the column shows below the line.
    pub children: Html,
}

/// The live answer. A button, not `details`, because the column must stand open on wide screens
/// whatever was chosen on a narrow one.
#[component]
pub fn Live(props: &LiveProps) -> Html {
    let open = use_state(|| false);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    let expanded = if *open { "true" } else { "false" };
    html! {
        <aside class="live" aria-label="The answer so far">
            <p class="live-line">{ props.line.clone() }</p>
            <button
                type="button"
                class="live-more"
                aria-expanded={expanded}
                aria-controls="live-body"
                onclick={toggle}
            >
                { if *open { "Show less" } else { "Show more" } }
            </button>
            <Said words={props.line.clone()} />
            <div id="live-body" class={classes!("live-body", open.then_some("is-open"))}>
                { props.children.clone() }
            </div>
        </aside>
    }
}

#[derive(PartialEq, Properties)]
struct SaidProps {
    words: AttrValue,
}

/// Reads the answer out once it stands still, without moving the focus.
#[component]
fn Said(props: &SaidProps) -> Html {
    let said = use_state(AttrValue::default);
    let first = use_mut_ref(|| true);
    use_effect_with(props.words.clone(), {
        let said = said.clone();
        move |words: &AttrValue| {
            let words = words.clone();
            // What stands there when a screen opens is read in its place.
            let wait = (!first.replace(false))
                .then(|| clock::after(SAY_AFTER_MS, move || said.set(words)));
            move || drop(wait)
        }
    });
    html! { <p class="unseen" role="status">{ (*said).clone() }</p> }
}
