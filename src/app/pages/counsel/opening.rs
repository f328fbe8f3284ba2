//! The choice of reader, and the opening of the answer for that reader: three or four lines from the report. It
//! computes nothing, so every reader gets the same facts.

use leavewell_model::Report;
use leavewell_model::ledger::FigureId;
use leavewell_model::ledger::{Hand, TreatmentText};
use leavewell_model::record::ledger_of;
use leavewell_model::report::{Band, BandMean, CourseReport, OptionReport};
use leavewell_model::terms::capital;
use leavewell_model::terms::{Goal, Input, small};
use leavewell_pages::sheet_text::Recipient;
use yew::prelude::*;

use super::options::unbroken;
use crate::app::pages::Page;
use crate::app::parts::element::el;
use crate::app::parts::field::{hint, typed};
use crate::app::parts::words::{gain_band, joined, money_band, number};
use crate::app::reader::Reader;
use crate::app::route::Route;
use crate::app::state::{Action, Open};
use crate::app::wording::reader as text;

/// The choice of reader.
pub(super) fn who(page: Page) -> Html {
    let chosen = page
        .act
        .reform(|event: Event| Action::ReadAs(Reader::parse(&typed(&event)).unwrap_or_default()));
    let radios = el("div", "radios")
        .changed(chosen)
        .each(Reader::ALL, |reader| {
            let button = el("input", "")
                .attr("type", "radio")
                .attr("name", "reader")
                .value(reader.id().to_owned())
                .ticked(reader == page.state.reader);
            el("label", "radio")
                .key(reader.id())
                .el(button)
                .tag("span", text::label(reader))
        });
    el("fieldset", "choice reader")
        .attr("aria-describedby", "reader-hint")
        .tag("legend", text::WHO)
        .el(radios)
        .put(hint("reader", text::WHO_HINT))
        .html()
}

/// The opening for the chosen reader, or nothing if the report lacks the advised plan.
pub(super) fn opening(page: Page, report: &Report) -> Html {
    let reader = page.state.reader;
    let made = Opening::of(page, report);
    let lines = made.map_or_else(Vec::new, |made| made.lines(reader));
    let title = el("h3", "").text(text::title(reader));
    // An owner has just read the same in the answer.
    let opening = match reader {
        Reader::Owner => el("details", "opening").el(el("summary", "").el(title)),
        Reader::Restorer | Reader::Dealer => el("div", "opening").el(title),
    };
    opening
        .key(reader.id())
        .hidden(lines.is_empty())
        .el(el("dl", "facts").each(lines, |line| {
            let mut said = el("dd", "").words(line.text);
            if let Some((route, words)) = line.link {
                let link = el("a", "").attr("href", route.href()).text(words);
                said = said.text(" ").el(link);
            }
            el("div", "").tag("dt", line.what).el(said)
        }))
        .html()
}

/// One line of an opening.
struct Line {
    what: &'static str,
    text: String,
    /// A link to more about it.
    link: Option<(Route, &'static str)>,
}

fn line(what: &'static str, text: String) -> Line {
    Line {
        what,
        text,
        link: None,
    }
}

/// The sources of the lines.
struct Opening<'a> {
    open: &'a Open,
    report: &'a Report,
    course: &'a CourseReport,
    /// The steps, in the catalogue's words.
    steps: Vec<&'static TreatmentText>,
}

impl<'a> Opening<'a> {
    fn of(page: Page<'a>, report: &'a Report) -> Option<Self> {
        let advised = &report.counsel.steps;
        Some(Self {
            open: page.open,
            report,
            course: report.courses.iter().find(|c| c.steps == *advised)?,
            steps: advised.iter().map(|step| step.text()).collect(),
        })
    }

    fn lines(&self, reader: Reader) -> Vec<Line> {
        let lost = || line(text::LOST, self.lost() + ".");
        match reader {
            Reader::Owner => vec![
                line(text::DO, self.plainly()),
                line(text::COST, text::cost(&capital(&self.cost()), &self.gain())),
                lost(),
                line(text::ASK, self.questions()),
            ],
            Reader::Restorer => vec![
                line(text::STEPS, text::steps(&self.classed(), &self.cost())),
                line(text::BEFORE, self.conditions()),
                Line {
                    link: Some((Route::Sheet(Recipient::Client), text::CLIENT_SHEET)),
                    ..line(text::TELL_CLIENT, self.for_client())
                },
            ],
            Reader::Dealer => vec![
                line(text::NET, self.net()),
                Line {
                    link: Some((Route::Money, text::TO_MONEY)),
                    ..line(text::MOST, self.most())
                },
                line(text::AWAY, self.away()),
                Line {
                    link: Some((Route::Sheet(Recipient::Buyer), text::BUYER_SHEET)),
                    ..line(text::TELL_BUYER, self.for_buyer())
                },
            ],
        }
    }

    /// The steps by name with what each does, and a note if the owner should not do all of it.
    fn plainly(&self) -> String {
        let steps = self.steps.iter().map(|t| joined(&[t.name, ": ", t.plain]));
        let plain = steps.collect::<Vec<String>>().join(" ");
        if self.owner_may_do_all() {
            plain
        } else {
            plain + text::NOT_AT_HOME
        }
    }

    fn owner_may_do_all(&self) -> bool {
        self.steps.iter().all(|t| t.may_be_done_by(Hand::Owner))
    }

    fn classed(&self) -> String {
        let steps = self
            .steps
            .iter()
            .map(|t| joined(&[t.name, ": ", text::class(t.class)]));
        steps.collect::<Vec<String>>().join("; ")
    }

    fn questions(&self) -> String {
        let asked: Vec<&str> = self.steps.iter().map(|t| t.ask).collect();
        asked.join(" ")
    }

    /// The cost, worded as in the options.
    fn cost(&self) -> String {
        let cost = self.course.cost;
        if cost.p90 <= 0.0 {
            return small(text::NOTHING);
        }
        let costs = |option: &&OptionReport| {
            option.cost.p90 > 0.0 && self.course.steps.contains(&option.treatment)
        };
        let all = self
            .report
            .options
            .iter()
            .filter(costs)
            .all(|option| option.quoted);
        let basis = if all { "" } else { text::ESTIMATED };
        money_band(cost, self.open.currency()) + basis
    }

    fn gain(&self) -> String {
        let gain = self.course.net_gain;
        if gain.p10 == 0.0 && gain.p90 == 0.0 {
            return text::NO_CHANGE.to_owned();
        }
        unbroken(&gain_band(gain, self.open.currency()))
    }

    fn lost(&self) -> String {
        let lost: Vec<&str> = self
            .course
            .lost
            .iter()
            .map(|l| l.get())
            .filter(|l| *l != text::NOTHING)
            .collect();
        if lost.is_empty() {
            return text::NOTHING.to_owned();
        }
        lost.join("; ")
    }

    /// What the rules require before the work.
    fn conditions(&self) -> String {
        let asked: Vec<String> = self
            .course
            .conditions
            .iter()
            .map(|v| joined(&[&v.reason, " ", &v.lifted_by]))
            .collect();
        if asked.is_empty() {
            return text::NO_CONDITION.to_owned();
        }
        asked.join(" ")
    }

    fn for_client(&self) -> String {
        let undone = capital(&self.course.reversibility_words);
        text::tell_client(&small(&self.lost()), &undone)
    }

    /// The plan in words, with the usual names of its steps.
    fn named(&self) -> String {
        small(&self.course.name)
    }

    fn has_work(&self) -> bool {
        self.steps.iter().any(|t| !t.is_preventive())
    }

    fn net(&self) -> String {
        let currency = self.open.currency();
        let now = self.report.value.net_as_it_is;
        let now = text::net_now(&unbroken(&money_band(now, currency)));
        let sold = self.open.case.aim.goal_or_default() == Goal::Sell;
        let after = match (sold, self.has_work()) {
            (false, _) => text::NOT_FOR_SALE.to_owned(),
            (true, false) if self.course.cost.p90 <= 0.0 => text::net_same(&self.named()),
            _ => {
                let net = unbroken(&money_band(band(self.course.net), currency));
                text::net_after(&self.named(), &net, &self.gain())
            }
        };
        joined(&[&now, &after])
    }

    /// The cost at which the answer changes, in the report's words.
    fn most(&self) -> String {
        let mut changes = self.open.known_changes().iter();
        let turn = match changes.find(|c| c.input == Input::Cost) {
            Some(change) => change.text.clone(),
            None if matches!(self.open.changes.as_deref(), Some(Err(_))) => {
                text::NOT_FOUND.to_owned()
            }
            None => text::LOOKED_FOR.to_owned(),
        };
        let cost = if self.course.cost.p90 > 0.0 {
            self.cost()
        } else {
            String::new()
        };
        joined(&[&text::estimated(&self.course.name, &cost), &turn])
    }

    /// How long the piece is away. Work that its owner may not do is done elsewhere.
    fn away(&self) -> String {
        const MONTHS: FigureId = FigureId::VALUE_TRADE_MONTHS_WORK;
        if self.owner_may_do_all() {
            return text::NOT_AWAY.to_owned();
        }
        let case = &self.open.case;
        let is_own = case.market.terms.iter().any(|(id, _)| id == MONTHS.text());
        text::away(&number(ledger_of(case).value(MONTHS)), is_own)
    }

    fn for_buyer(&self) -> String {
        let mut told = if self.has_work() {
            text::tell_buyer(&self.named(), &small(&self.lost()))
        } else {
            text::NOTHING_DONE.to_owned()
        };
        if self.report.display_only.yes {
            told.push(' ');
            told.push_str(&self.report.display_only.label);
        }
        told
    }
}

fn band(of: BandMean) -> Band {
    Band {
        p10: of.p10,
        p50: of.p50,
        p90: of.p90,
    }
}

#[cfg(test)]
mod tests {
    use std::rc::Rc;

    use leavewell_model::Draft;
    use leavewell_model::counsel::weigh;

    use super::*;
    use crate::app::examples::EXAMPLES;
    use crate::app::state::State;
    use leavewell_model::terms::Treatment;

    /// The openings of a case for all three readers, each as one text.
    fn openings(text: &str) -> (Report, Open, [String; 3]) {
        let draft = Draft::parse(text).unwrap();
        let (case, problems) = draft.read();
        let report = weigh(&case, problems);
        let mut open = Open::new("a".to_owned(), draft);
        open.changes = Some(Rc::new(Ok(report.counsel.would_change.clone())));
        let state = State::default();
        let act = Callback::noop();
        let page = Page {
            state: &state,
            open: &open,
            act: &act,
        };
        let made = Opening::of(page, &report).unwrap();
        let texts = Reader::ALL.map(|reader| {
            let lines = made.lines(reader);
            assert!((3..=4).contains(&lines.len()), "{reader:?}");
            let lines: Vec<String> = lines
                .iter()
                .map(|line| joined(&[line.what, ": ", &line.text]))
                .collect();
            lines.join("\n")
        });
        (report, open, texts)
    }

    #[test]
    fn every_reader_gets_the_same_treatment_and_the_same_money() {
        for example in EXAMPLES {
            let (report, open, said) = openings(example.text);
            let advised = report
                .courses
                .iter()
                .find(|c| c.steps == report.counsel.steps);
            let advised = advised.unwrap();
            let cost = money_band(advised.cost, open.currency());
            for text in &said {
                // The wash before a cleaning is part of it and is not named by itself.
                let cleans = advised.steps.contains(&Treatment::Clean);
                let named = advised
                    .steps
                    .iter()
                    .filter(|step| !cleans || **step != Treatment::Wash);
                for step in named {
                    let name = step.text().name;
                    assert!(
                        text.to_lowercase().contains(&name.to_lowercase()),
                        "{name} in\n{text}"
                    );
                }
                if advised.cost.p90 > 0.0 {
                    assert!(text.to_lowercase().contains(&cost), "{cost} in\n{text}");
                }
                assert!(!text.contains(".."), "{text}");
            }
        }
    }

    #[test]
    fn every_reader_sees_what_is_lost_for_good() {
        let mut seen = 0;
        for example in EXAMPLES {
            let (report, _, said) = openings(example.text);
            let advised = report
                .courses
                .iter()
                .find(|c| c.steps == report.counsel.steps);
            for lost in &advised.unwrap().lost {
                seen += 1;
                // Inside a sentence it starts with a lower-case letter.
                let end = &lost.get()[1..];
                assert!(said.iter().all(|text| text.contains(end)), "{end}");
            }
        }
        assert!(seen > 0, "something is lost in one of the examples");
    }

    #[test]
    fn each_opening_answers_its_readers_question() {
        let tureen = include_str!("../../../../tests/cases/copper_reproduction_tureen.json");
        let (report, open, [owner, restorer, dealer]) = openings(tureen);
        let option = report
            .options
            .iter()
            .find(|o| o.treatment == Treatment::Replate)
            .unwrap();
        assert!(owner.contains(option.plain.get()) && owner.contains(option.ask.get()));
        assert!(restorer.contains("restoration") && restorer.contains("Cannot be undone"));
        let advised = &report
            .courses
            .iter()
            .find(|c| c.steps == report.counsel.steps)
            .unwrap();
        for verdict in &advised.conditions {
            assert!(
                restorer.contains(&verdict.lifted_by),
                "{:?}",
                verdict.ground
            );
        }
        let now = money_band(report.value.net_as_it_is, open.currency());
        let after = money_band(band(advised.net), open.currency());
        assert!(dealer.contains(&now) && dealer.contains(&after), "{dealer}");
        let turn = report
            .counsel
            .would_change
            .iter()
            .find(|c| c.input == Input::Cost)
            .unwrap();
        assert!(
            turn.flips_at.is_some() && dealer.contains(&turn.text),
            "{dealer}"
        );
        assert!(dealer.contains("About 2 months"), "{dealer}");

        // The person's months replace those of the ledger, unless they are not a number.
        let with = |months: &str| {
            let mut draft = Draft::parse(tureen).unwrap();
            draft.set("worth.work_months", months);
            openings(&draft.to_json()).2[2].clone()
        };
        assert!(with("5").contains("About 5 months away for the work: your figure."));
        assert!(with("some").contains("About 2 months"));
    }

    #[test]
    fn leaving_it_alone_takes_no_time_away_and_a_keepers_answer_weighs_no_sale() {
        let tray = include_str!("../../../../tests/cases/worn_tray.json");
        let (_, _, [_, restorer, dealer]) = openings(tray);
        assert!(dealer.contains(text::NOT_AWAY) && dealer.contains(text::NOTHING_DONE));
        assert!(restorer.contains("preventive conservation"));
        let mut draft = Draft::parse(tray).unwrap();
        draft.set("aim.goal", "keep_use");
        let kept = openings(&draft.to_json()).2[2].clone();
        draft.set("aim.goal", "sell");
        let sold = openings(&draft.to_json()).2[2].clone();
        assert!(kept.contains(text::NOT_FOR_SALE) && !sold.contains(text::NOT_FOR_SALE));
    }

    #[test]
    fn missing_results_are_not_made_up() {
        let draft = Draft::parse(EXAMPLES[0].text).unwrap();
        let (case, problems) = draft.read();
        let mut report = weigh(&case, problems);
        let open = Open::new("a".to_owned(), draft);
        let state = State::default();
        let act = Callback::noop();
        let page = Page {
            state: &state,
            open: &open,
            act: &act,
        };
        let made = Opening::of(page, &report).unwrap();
        assert!(made.most().ends_with(text::LOOKED_FOR));
        report.courses.clear();
        assert!(Opening::of(page, &report).is_none());
    }
}
