//! Look: what to look for on the piece, place by place, and what it tells about the piece.

use leavewell_model::identity::{Suggestion, suggested_findings};
use leavewell_model::ledger::EvidenceId;
use leavewell_model::ledger::{FindingFact, FindingId, Place, WordsIn, findings};
use leavewell_model::report::{AfterLook, IdentityReport, Text};
use leavewell_model::terms::capital;
use leavewell_model::terms::{Form, Instrument, PartName, Seen};
use leavewell_pages::PageName;
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::charts::families;
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::choice::{LabelledId, choices, list, radios_as, several};
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::field::{heard, text_field, trouble};
use crate::app::parts::marks::{fold, named, press, section};
use crate::app::parts::screen::screen;
use crate::app::parts::words::joined;
use crate::app::platform::page::looks;
use crate::app::route::Route;
use crate::app::state::{Action, Target};
use crate::app::wording::look as say;
use leavewell_model::terms::chance;

/// The instruments a person is asked about; a magnet and a loupe count as at hand.
const SAID: [Instrument; 3] = [Instrument::Scales, Instrument::Meter, Instrument::Xrf];
/// The list of marks in the record.
const MARKS: &str = "marks";
/// The id of a mark that is typed before the list has an entry.
const FIRST_MARK: &str = "1";

/// The screen Look.
pub fn look_page(page: Page) -> Html {
    let open = page.open;
    let first = open.first_looks.iter().map(|id| id.fact());
    let none = open.first_looks.is_empty();
    let few = group()
        .p("hint", say::FEW_HINT)
        .put(several(
            page,
            Target::Field("looked.instruments"),
            say::INSTRUMENTS,
            SAID.iter().map(|i| (i.id(), i.label())).collect(),
        ))
        .el(el("div", "findings").each(first, |fact| finding_of(page, fact, "few-")))
        // The first answer brings them.
        .el(el("div", "")
            .hidden(!none)
            .put(of_report(open, |_| el("p", "").html())));
    let every = group()
        .p("hint", say::EVERYTHING_HINT)
        .el(el("div", "").each(Place::ALL, |place| place_group(page, place)));
    screen(
        page,
        (Route::Look, Route::Condition),
        [say::TITLE, say::PURPOSE, say::NEXT],
        what_it_is(page),
        group()
            .put(section("", "words-title", say::IN_WORDS, in_words(page)))
            .put(section("", "few-title", say::FEW, few.html()))
            .put(section("", "all-title", say::EVERYTHING, every.html()))
            .put(fold(
                "more",
                say::READINGS,
                loaded_page(page, PageName::Measures),
            ))
            .html(),
    )
}

/// The typed marks and the description, with the findings that their words suggest.
fn in_words(page: Page) -> Html {
    let draft = &page.open.draft;
    let count = draft.count(MARKS);
    // The first mark can be typed before it has an entry.
    let marks = el("div", "marks").each(0..count.max(1), |place| mark(page, place, count));
    let described = Target::Field("looked.described");
    let of_marks = (0..count).flat_map(|place| {
        let typed = Target::Entry(MARKS, place, "text").text(page.open);
        let found = suggested_findings(WordsIn::Mark, &typed);
        found.into_iter().map(move |p| (p, Some(place)))
    });
    let of_description = suggested_findings(WordsIn::Description, &described.text(page.open))
        .into_iter()
        .map(|p| (p, None));
    let mut open: Vec<(Suggestion, Option<usize>)> = Vec::new();
    for (proposal, from) in of_marks.chain(of_description) {
        let again = open.iter().any(|(p, _)| p.finding == proposal.finding);
        if !again && draft.answer(proposal.finding).0.is_empty() {
            open.push((proposal, from));
        }
    }
    let none = open.is_empty();
    group()
        .el(marks)
        .el(el("p", "").hidden(count == 0).el(button("")
            .pressed(press(page.act, Action::Add(MARKS)))
            .text(say::ADD_MARK)))
        .put(text_field(
            page,
            described,
            [say::DESCRIPTION, say::DESCRIPTION_HINT, ""],
        ))
        .el(el("div", "suggested")
            .hidden(none)
            .p("hint", say::SUGGESTED)
            .el(el("ul", "").each(&open, |(p, from)| suggestion(page, p, *from))))
        .html()
}

/// One mark: what is struck, the part that carries it, and a way to take it off the list.
fn mark(page: Page, place: usize, count: usize) -> El {
    let is_entered = place < count;
    let id = if is_entered {
        page.open.draft.text(&entry_id(place))
    } else {
        FIRST_MARK.to_owned()
    };
    let text = if id == FIRST_MARK {
        Target::Field("marks[id=1].text")
    } else {
        Target::Entry(MARKS, place, "text")
    };
    let on = Target::Entry(MARKS, place, "part");
    let remove = {
        let act = page.act.clone();
        Callback::from(move |_: MouseEvent| act.emit(Action::Remove(MARKS, place)))
    };
    let mut more = el("div", "").hidden(!is_entered);
    if is_entered {
        more = more
            .put(list(
                &on.id(),
                say::mark_on(place + 1).into(),
                say::MARK_ON,
                &on.text(page.open),
                parts(page.open.form()),
                heard(page, on),
                trouble(&on.id(), on.problem(page.open)),
            ))
            .el(button("quiet")
                .pressed(remove)
                .words(say::remove_mark(place + 1)));
    }
    el("div", "mark")
        .key(&id)
        .put(text_field(page, text, [say::MARK, say::MARK_HINT, ""]))
        .el(more)
}

/// The path of a mark's id.
fn entry_id(place: usize) -> String {
    joined(&[MARKS, "[", &place.to_string(), "].id"])
}

/// One finding that typed words suggest, to be confirmed or put aside.
fn suggestion(page: Page, proposal: &Suggestion, from: Option<usize>) -> El {
    let id = proposal.finding;
    let title = id.fact().title;
    let answer = |seen: Seen| {
        let target = Target::Suggested(id, from);
        page.act
            .reform(move |_: MouseEvent| Action::Typed(target, seen.id().to_owned()))
    };
    el("li", "")
        .key(id.text())
        .words(say::suggestion(&proposal.words, title))
        .text(" ")
        .el(button("")
            .pressed(answer(Seen::Yes))
            .words(say::confirm(title)))
        .text(" ")
        .el(button("quiet")
            .pressed(answer(Seen::Unsure))
            .words(say::put_aside(title)))
}

fn place_group(page: Page, place: Place) -> El {
    let here: Vec<&FindingFact> = findings().iter().filter(|f| f.place == place).collect();
    let answered = here
        .iter()
        .filter(|f| !page.open.draft.answer(f.id).0.is_empty())
        .count();
    let state = say::answered(answered, here.len());
    let name = say::place(place);
    let summary = el("summary", "")
        .tag("h3", name)
        // A space keeps the two from being read as one word.
        .text(" ")
        .el(el("span", "place-state").words(state));
    // Fifty unseen questions would slow down every answer.
    let opened = page.state.groups.contains(&name);
    let shown = here.into_iter().filter(|_| opened);
    el("details", "group")
        .key(name)
        .toggled(page.act.reform(move |_: Event| Action::Group(name)))
        .el(summary)
        .p("hint", say::place_hint(place))
        .el(el("div", "findings").each(shown, |fact| finding_of(page, fact, "all-")))
}

fn finding_of(page: Page, fact: &FindingFact, group: &str) -> El {
    let id = joined(&[group, fact.id.text()]);
    let (answer, part) = page.open.draft.answer(fact.id);
    let seen = answer == Seen::Yes.id();
    let needs = say::needs(fact.needs, fact.invasive);
    let mut place = el("div", "where").hidden(!seen);
    // Sixty unseen lists would slow down every answer.
    if seen {
        place = place.put(list(
            &(id.clone() + "-part"),
            say::seen_on(fact.title).into(),
            say::SEEN_ON,
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
        [fact.title, fact.look_for, say::NOT_LOOKED],
        choices!(Seen),
    );
    let how = el("div", "").p("", fact.how).said("hint", needs);
    el("article", "finding")
        .key(fact.id.text())
        .put(answers)
        .el(drawing(fact.id))
        .el(place)
        .put(fold("how", say::HOW_TO_LOOK, how.html()))
}

/// The drawing of a finding, present and absent. The text beside it says the same to screen readers. The drawings
/// are in a separate file, which the browser fetches when this screen opens.
fn drawing(id: FindingId) -> El {
    let drawn = el("use", "").set("href", joined(&[looks(), id.text()]));
    el("figure", "look")
        .attr("aria-hidden", "true")
        .el(el("svg", "look-drawing")
            .attr("viewBox", "0 0 240 90")
            .el(drawn))
        .el(el("figcaption", "")
            .tag("span", say::THERE)
            .tag("span", say::NOT_THERE))
}

/// What the piece is, as far as the answers show.
fn what_it_is(page: Page) -> Html {
    let identity = &*page.open.identity;
    let meanings = el("div", "").each(&identity.family_bars, |f| {
        el("p", "").put(named(say::family(&f.name), f.meaning.get()))
    });
    let odd = |text: &String| el("p", "care").put(named(say::DOES_NOT_FIT, text.clone()));
    let contradictions = el("div", "contradictions")
        .each(&identity.date_conflicts, odd)
        .each(&identity.contradictions, |c| {
            odd(&c.text).key(&c.findings.map(EvidenceId::text).concat())
        });
    let mut next = el("div", "next-look");
    if let Some(report) = page.open.report() {
        for look in &report.identity.parting {
            next = next
                .el(el("p", "").put(named(say::LOOK_NEXT, joined(&[&look.title, "."]))))
                .p("hint", look.how.get())
                .said("hint", after_look([&look.if_seen, &look.if_absent]));
        }
        if let Some(open) = &report.identity.open {
            next = next.said("hint", open.clone());
        }
    }
    let did = el("ul", "").each(&identity.pushes, |push| {
        let did = say::pushed(&push.answer, push.log_odds);
        el("li", "").words(say::what_it_did(&push.title, &did))
    });
    let did = group().el(did).put(loaded_page(page, PageName::Why));
    let shares = if identity.nothing_found {
        fold("", say::BEFORE_LOOKING, families(&identity.family_bars))
    } else {
        families(&identity.family_bars)
    };
    group()
        .tag("h2", say::WHAT_IT_IS)
        .said("verdict-sentence", identity.sentence.clone())
        .put(shares)
        .put(fold("", say::MEANINGS, meanings.html()))
        .said(
            "hint",
            joined(&[&identity.body.sentence, " ", &identity.skin.sentence]),
        )
        .said("window", dates(identity))
        .said("hint", say::unconfirmed(&identity.unconfirmed))
        .el(contradictions)
        .el(next)
        .el(el("div", "pushes")
            .hidden(identity.pushes.is_empty())
            .put(fold("", say::WHAT_ANSWERS_DID, did.html())))
        .html()
}

/// The most likely family after each answer to a question.
pub(super) fn after_look([seen, absent]: [&AfterLook; 2]) -> String {
    let share = chance(absent.p);
    say::after_look(
        [&seen.name, &chance(seen.p)],
        absent.tells.then_some([absent.name.get(), &share]),
    )
}

fn dates(identity: &IdentityReport) -> String {
    if identity.nothing_found {
        return String::new();
    }
    let Some(dates) = &identity.dates else {
        return say::NO_YEAR.to_owned();
    };
    let given = dates.given.map(Text::get);
    let mut words = say::made_in(&dates.in_words(), given);
    for why in &dates.reasons {
        words.push(' ');
        words.push_str(&capital(why.trim_end_matches('.')));
        words.push('.');
    }
    words
}

fn parts(form: Option<Form>) -> Vec<LabelledId> {
    form.map_or(PartName::ALL, Form::parts)
        .iter()
        .map(|part| (part.id(), part.label()))
        .collect()
}
