//! Look: what is to be seen on the piece, by place, and what it says about what the piece is.

use std::rc::Rc;

use leavewell_model::case::{Form, PartName, Seen};
use leavewell_model::facts::{FindingFact, Place, finding, findings};
use leavewell_model::report::IdentityReport;
use yew::prelude::*;

use super::PageProps;
use crate::app::charts::Families;
use crate::app::parts::choice::{Choice, Pick, Radios, choices};
use crate::app::parts::screen::Screen;
use crate::app::parts::words::{capital, count};
use crate::app::route::Route;
use crate::app::state::{Action, Open};

/// How many of the most telling looks a newcomer meets first.
const FEW: usize = 5;

/// Look.
#[component]
pub fn LookPage(props: &PageProps) -> Html {
    let open = &props.open;
    let few = use_few(open);
    html! {
        <Screen
            open={open.clone()}
            title="Look at the piece"
            purpose="Say what you see. \"Not sure\" is a good answer: it keeps the range wide and does not stop you."
            next={(Route::Condition, "Next: the state of each part".into())}
            line={open.report.identity.sentence.clone()}
            answer={what_it_is(&open.report.identity)}
        >
            <section aria-labelledby="few-title">
                <h2 id="few-title">{ "The few that tell most" }</h2>
                <p class="hint">
                    { "Start here. A loupe (a small magnifying glass) and daylight are enough for most. Never scratch, \
                       file or heat anything to see more." }
                </p>
                <div class="findings">
                    for id in few {
                        { finding_at(props, id, "few") }
                    }
                </div>
            </section>
            <section aria-labelledby="all-title">
                <h2 id="all-title">{ "Everything there is to look for" }</h2>
                <p class="hint">{ "By place on the piece. What you have answered above is answered here too." }</p>
                for place in Place::ALL {
                    { place_group(props, place) }
                }
            </section>
        </Screen>
    }
}

/// The looks that tell most, and those already answered. A look once shown stays where it is while
/// the screen is open: nothing may move under somebody's hand.
#[hook]
fn use_few(open: &Rc<Open>) -> Vec<&'static str> {
    let shown = use_mut_ref(Vec::<&'static str>::new);
    let mut shown = shown.borrow_mut();
    if shown.is_empty() {
        shown.extend(
            findings()
                .iter()
                .map(|f| f.id)
                .filter(|id| !open.draft.answer(id).0.is_empty()),
        );
    }
    let looks = &open.report.identity.next_looks;
    let waiting = shown
        .iter()
        .filter(|id| open.draft.answer(id).0.is_empty())
        .count();
    let more: Vec<&'static str> = looks
        .iter()
        .map(|look| look.finding)
        .filter(|id| !shown.contains(id))
        .collect();
    shown.extend(more.into_iter().take(FEW.saturating_sub(waiting)));
    shown.clone()
}

fn place_group(props: &PageProps, place: Place) -> Html {
    let here = || findings().iter().filter(|f| f.place == place);
    let answered = here()
        .filter(|f| !props.open.draft.answer(f.id).0.is_empty())
        .count();
    html! {
        <details class="group" key={place_name(place)}>
            <summary>
                <h3>{ place_name(place) }</h3>
                <span class="place-state">
                    { format!("{answered} of {} answered", count(here().count(), "look", "looks")) }
                </span>
            </summary>
            <p class="hint">{ place_hint(place) }</p>
            <div class="findings">
                for fact in here() {
                    { finding_at(props, fact.id, "all") }
                }
            </div>
        </details>
    }
}

/// Hands one finding only what concerns it, so that an answer draws one finding and not sixty.
fn finding_at(props: &PageProps, id: &'static str, group: &'static str) -> Html {
    let PageProps { open, act } = props;
    let (answer, part) = open.draft.answer(id);
    let form = open.form().unwrap_or(Form::Other).id();
    html! { <Finding key={id} {id} {group} {answer} {part} {form} act={act.clone()} /> }
}

#[derive(Clone, PartialEq, Properties)]
struct FindingProps {
    id: &'static str,
    group: &'static str,
    answer: AttrValue,
    part: AttrValue,
    form: &'static str,
    act: Callback<Action>,
}

#[component]
fn Finding(props: &FindingProps) -> Html {
    let FindingProps {
        id,
        group,
        answer,
        part,
        act,
        ..
    } = props;
    let id = *id;
    let on_answer = {
        let part = part.clone();
        act.reform(move |answer: String| Action::Answer {
            finding: id.to_owned(),
            // Where it was seen goes when it was not.
            part: if answer == Seen::Yes.id() {
                part.to_string()
            } else {
                String::new()
            },
            answer,
        })
    };
    let on_part = {
        let answer = answer.clone();
        act.reform(move |part: String| Action::Answer {
            finding: id.to_owned(),
            answer: answer.to_string(),
            part,
        })
    };
    let Some(fact) = finding(id) else {
        return html! { <div hidden=true /> };
    };
    html! {
        <article class="finding">
            <Radios
                id={format!("{group}-{id}")}
                label={fact.title}
                hint={fact.look_for}
                choices={choices!(Seen)}
                unsaid="Not looked"
                value={answer.clone()}
                on_choice={on_answer}
            />
            <div class="where" hidden={answer.as_str() != Seen::Yes.id()}>
                <Pick
                    id={format!("{group}-{id}-part")}
                    label={format!("On which part did you see it? ({})", fact.title)}
                    hint="If it is all over, or you cannot say, leave it."
                    choices={parts(props.form)}
                    unsaid="The piece as a whole"
                    value={part.clone()}
                    on_choice={on_part}
                />
            </div>
            <details class="how">
                <summary>{ "How to look" }</summary>
                <p>{ fact.how }</p>
                <p class="hint">{ format!("You need: {}. {}", fact.needs, effort(fact)) }</p>
            </details>
        </article>
    }
}

/// What the piece is, as far as the answers tell.
fn what_it_is(identity: &IdentityReport) -> Html {
    html! {
        <div>
            <h2>{ "What it is" }</h2>
            <Families bars={identity.family_bars.clone()} />
            <p class="window">{ dates(identity) }</p>
            <div class="contradictions">
                for odd in identity.contradictions.iter() {
                    <p class="care" key={odd.findings.concat()}>
                        <strong>{ "Does not fit: " }</strong>
                        { odd.text.clone() }
                    </p>
                }
            </div>
            <div class="next-look">
                if let Some(look) = identity.next_looks.first() {
                    <p><strong>{ "Look next: " }</strong>{ look.title }{ "." }</p>
                    <p class="hint">{ look.how }</p>
                }
            </div>
            <details hidden={identity.pushes.is_empty()}>
                <summary>{ "What your answers did" }</summary>
                <ul class="pushes">
                    for push in identity.pushes.iter() {
                        <li key={push.finding}>
                            { format!("{}: {}.", push.title, pushed(push.answer, push.log_odds)) }
                        </li>
                    }
                </ul>
            </details>
        </div>
    }
}

fn dates(identity: &IdentityReport) -> String {
    let Some(dates) = &identity.dates else {
        return "Your answers leave no year in which it could have been made: one of them, or the years told, must be \
                wrong."
            .to_owned();
    };
    let mut words = format!("Made between about {} and {}.", dates.from, dates.to);
    for why in &dates.reasons {
        words.push(' ');
        words.push_str(&capital(why.trim_end_matches('.')));
        words.push('.');
    }
    words
}

/// How far an answer moved the leading family, in words: steps a person can tell apart.
fn pushed(answer: &str, log_odds: f64) -> String {
    let how = if answer == Seen::Yes.id() {
        "seen"
    } else {
        "not there"
    };
    let strength = match log_odds.abs() {
        weak if weak < 0.2 => return format!("{how}; it hardly matters"),
        some if some < 1.0 => "a little",
        clear if clear < 2.5 => "clearly",
        _ => "strongly",
    };
    let side = if log_odds > 0.0 { "for" } else { "against" };
    format!("{how}; it speaks {strength} {side} the likeliest")
}

fn effort(fact: &FindingFact) -> &'static str {
    match fact.invasive {
        0 => "Looking is all it takes.",
        1 => "It takes a touch or a breath.",
        2 => "It means wetting or taking something apart: only if you are sure of the piece.",
        _ => "Somebody with the instrument does it.",
    }
}

fn parts(form: &str) -> Vec<Choice> {
    let parts = Form::parse(form).map_or(PartName::ALL, Form::parts);
    parts
        .iter()
        .map(|part| Choice {
            id: part.id(),
            label: part.label(),
        })
        .collect()
}

fn place_name(place: Place) -> &'static str {
    match place {
        Place::Marks => "Marks and words",
        Place::Wear => "Where it has worn",
        Place::Seam => "The seam and the inside",
        Place::Edges => "Edges and rim",
        Place::Mounts => "Borders, feet, spout, knobs",
        Place::Shield => "Arms and engraving",
        Place::Surface => "The colour of the silver",
        Place::Measures => "Magnet, weight and instruments",
    }
}

fn place_hint(place: Place) -> &'static str {
    match place {
        Place::Marks => {
            "Letters and small stamped pictures. A mark speaks for the part it is on, not for the whole piece."
        }
        Place::Wear => {
            "High points, feet and the most handled places show what lies below the silver."
        }
        Place::Seam => "How a round or hollow body was closed tells how it was made.",
        Place::Edges => "An edge is a cut through the metal: it shows the layers.",
        Place::Mounts => "What was made apart and put on.",
        Place::Shield => "Where arms were engraved, makers let in better silver.",
        Place::Surface => "How white the silver is beside silver you know.",
        Place::Measures => {
            "Some need an instrument and the person who has it. None is needed for an answer."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::pushed;

    #[test]
    fn pushes_are_told_in_words() {
        assert_eq!(
            pushed("seen", 3.0),
            "seen; it speaks strongly for the likeliest"
        );
        assert_eq!(
            pushed("absent", -0.5),
            "not there; it speaks a little against the likeliest"
        );
        assert_eq!(pushed("seen", 0.1), "seen; it hardly matters");
    }
}
