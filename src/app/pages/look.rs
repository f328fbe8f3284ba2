//! Look: what is to be seen on the piece, by place, and what it says about what the piece is.

use leavewell_model::case::{Form, PartName, Seen};
use leavewell_model::facts::{FindingFact, Place, finding, findings};
use leavewell_model::report::{AfterLook, IdentityReport, NextLook};
use leavewell_model::small::capital;
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::charts::families;
use crate::app::parts::blocks::leaf;
use crate::app::parts::choice::{Choice, choices, list, radios_as};
use crate::app::parts::element::{El, el, group};
use crate::app::parts::field::heard;
use crate::app::parts::marks::{fold, named, section};
use crate::app::parts::screen::screen;
use crate::app::parts::words::{count, joined, percent};
use crate::app::platform::page::looks;
use crate::app::route::Route;
use crate::app::state::{Action, Target};

/// Look.
pub fn look_page(page: Page) -> Html {
    let open = page.open;
    let first = open.first_looks.iter().filter_map(|id| finding(id));
    let none = open.first_looks.is_empty();
    let few = group()
        .p(
            "hint",
            "Start here. A loupe (a small magnifying glass) and daylight are enough for most. Never scratch, file \
             or heat anything to see more.",
        )
        .el(el("div", "findings").each(first, |fact| finding_of(page, fact, "few-")))
        // They come with the first answer.
        .el(el("div", "").hidden(!none).put(of_report(open, |_| el("p", "").html())));
    let every = group()
        .p(
            "hint",
            "By place on the piece. What you have answered above is answered here too.",
        )
        .el(el("div", "").each(Place::ALL, |place| place_group(page, place)));
    screen(
        page,
        (Route::Look, Route::Condition),
        [
            "Look at the piece",
            "Say what you see. \"Not sure\" is a good answer: it keeps the range wide and does not stop you.",
            "Next: the state of each part",
        ],
        what_it_is(page),
        group()
            .put(section(
                "",
                "few-title",
                "The few that tell most",
                few.html(),
            ))
            .put(section(
                "",
                "all-title",
                "Everything there is to look for",
                every.html(),
            ))
            .put(fold(
                "more",
                "Readings with a number: density, conductivity, X-ray",
                leaf(page, "measures"),
            ))
            .html(),
    )
}

fn place_group(page: Page, place: Place) -> El {
    let here: Vec<&FindingFact> = findings().iter().filter(|f| f.place == place).collect();
    let answered = here
        .iter()
        .filter(|f| !page.open.draft.answer(f.id).0.is_empty())
        .count();
    let looks = count(here.len(), "look", "looks");
    let state = joined(&[&answered.to_string(), " of ", &looks, " answered"]);
    let summary = el("summary", "")
        .tag("h3", place_name(place))
        // A space, so that the two are not read as one word.
        .text(" ")
        .el(el("span", "place-state").words(state));
    let name = place_name(place);
    // Fifty looks that nobody sees would make every answer slow.
    let opened = page.state.groups.contains(&name);
    let shown = here.into_iter().filter(|_| opened);
    el("details", "group")
        .key(name)
        .toggled(page.act.reform(move |_: Event| Action::Group(name)))
        .el(summary)
        .p("hint", place_hint(place))
        .el(el("div", "findings").each(shown, |fact| finding_of(page, fact, "all-")))
}

fn finding_of(page: Page, fact: &FindingFact, group: &str) -> El {
    let id = joined(&[group, fact.id]);
    let (answer, part) = page.open.draft.answer(fact.id);
    let seen = answer == Seen::Yes.id();
    let needs = joined(&["You need: ", fact.needs, ". ", effort(fact)]);
    let mut place = el("div", "where").hidden(!seen);
    // Sixty lists that nobody sees would make every answer slow.
    if seen {
        place = place.put(list(
            &(id.clone() + "-part"),
            joined(&["On which part did you see it? (", fact.title, ")"]).into(),
            [
                "If it is all over, or you cannot say, leave it.",
                "The piece as a whole",
            ],
            &part,
            parts(page.open.form()),
            heard(page, Target::SeenOn(fact.id)),
            el("span", "").hidden(true).html(),
        ));
    }
    let answers = radios_as(
        &id,
        page,
        Target::Answer(fact.id),
        [fact.title, fact.look_for, "Not looked"],
        choices!(Seen),
    );
    let how = el("div", "").p("", fact.how).said("hint", needs);
    el("article", "finding")
        .key(fact.id)
        .put(answers)
        .el(drawing(fact.id))
        .el(place)
        .put(fold("how", "How to look", how.html()))
}

/// What the eye sees when it is there, and when it is not. The words beside it say the same to listeners.
/// The sheet of drawings is a file of its own, fetched once this screen is opened.
fn drawing(id: &str) -> El {
    let drawn = el("use", "").set("href", joined(&[looks(), id]));
    el("figure", "look")
        .attr("aria-hidden", "true")
        .el(el("svg", "look-drawing")
            .attr("viewBox", "0 0 240 90")
            .el(drawn))
        .el(el("figcaption", "")
            .tag("span", "There")
            .tag("span", "Not there"))
}

/// What the piece is, as far as the answers tell.
fn what_it_is(page: Page) -> Html {
    let identity = &*page.open.identity;
    let meanings = el("div", "").each(&identity.family_bars, |f| {
        el("p", "").put(named(capital(&f.name) + ": ", f.meaning.get()))
    });
    let odd = |text: &String| el("p", "care").put(named("Does not fit: ", text.clone()));
    let contradictions = el("div", "contradictions")
        .each(&identity.date_conflicts, odd)
        .each(&identity.contradictions, |c| {
            odd(&c.text).key(&c.findings.concat())
        });
    let mut next = el("div", "next-look");
    let report = page.open.report();
    if let Some(look) = report.and_then(|r| r.identity.next_looks.first()) {
        next = next
            .el(el("p", "").put(named("Look next: ", joined(&[&look.title, "."]))))
            .p("hint", look.how.get())
            .said("hint", after_look(look));
    }
    let did = el("ul", "").each(&identity.pushes, |push| {
        let did = pushed(&push.answer, push.log_odds);
        el("li", "").words(joined(&[&push.title, ": ", &did, "."]))
    });
    let did = group().el(did).put(leaf(page, "why"));
    group()
        .tag("h2", "What it is")
        .put(families(&identity.family_bars))
        .put(fold("", "What these words mean", meanings.html()))
        .said(
            "hint",
            joined(&[&identity.body.sentence, " ", &identity.skin.sentence]),
        )
        .said("window", dates(identity))
        .el(contradictions)
        .el(next)
        .el(el("div", "pushes")
            .hidden(identity.pushes.is_empty())
            .put(fold("", "What your answers did", did.html())))
        .html()
}

/// What a look would make of it, for either answer.
pub(super) fn after_look(look: &NextLook) -> String {
    let then = |after: &AfterLook| joined(&[&after.name, " (", &percent(after.p), ")"]);
    joined(&[
        "If it is there: most likely ",
        &then(&look.if_seen),
        ". If not: ",
        &then(&look.if_absent),
        ".",
    ])
}

fn dates(identity: &IdentityReport) -> String {
    let Some(dates) = &identity.dates else {
        return "Your answers leave no year in which it could have been made: one of them, or the years told, must be \
                wrong."
            .to_owned();
    };
    let (from, to) = (dates.from.to_string(), dates.to.to_string());
    let mut words = joined(&["Made between about ", &from, " and ", &to, "."]);
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
        weak if weak < 0.2 => return joined(&[how, "; it hardly matters"]),
        some if some < 1.0 => "a little",
        clear if clear < 2.5 => "clearly",
        _ => "strongly",
    };
    let side = if log_odds > 0.0 { "for" } else { "against" };
    joined(&[how, "; it speaks ", strength, " ", side, " the likeliest"])
}

fn effort(fact: &FindingFact) -> &'static str {
    match fact.invasive {
        0 => "Looking is all it takes.",
        1 => "It takes a touch or a breath.",
        2 => "It means wetting or taking something apart: only if you are sure of the piece.",
        _ => "Somebody with the instrument does it.",
    }
}

fn parts(form: Option<Form>) -> Vec<Choice> {
    form.map_or(PartName::ALL, Form::parts)
        .iter()
        .map(|part| (part.id(), part.label()))
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
