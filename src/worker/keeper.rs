//! Answers questions, and keeps what was solved for the newest record.
//!
//! Invariant: an answer depends on the question and its text alone. What is kept changes speed, never an answer.

use leavewell_model::learn::freeze;
use leavewell_model::record::{PredictedWhen, TaughtFigures, shelf_file};
use leavewell_model::weigh_json;
use leavewell_pages::guide::guide;
use leavewell_pages::learning::learning;
use leavewell_pages::lot::share_out;
use leavewell_pages::plan::{Planned, offers_json, plan};
use leavewell_pages::sheet_text::sheet_text;
use leavewell_pages::stock_table;
use leavewell_pages::{Subject, compare};

use crate::ask::{Ask, Question, Reply};

/// What the page's scripts may ask, by name. Question and answer are JSON text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScriptAsk {
    /// The whole report of a case, byte for byte as `cargo weigh` prints it.
    Weigh,
    /// Two records side by side, or made into one.
    Compare,
    /// What pieces have to offer a plan.
    Offers,
    /// The plan for a shelf, without its page.
    Plan,
    /// The records in a file.
    OpenFile,
}

impl ScriptAsk {
    /// The question of this name.
    #[must_use]
    pub fn parse(name: &str) -> Option<Self> {
        Some(match name {
            "weigh" => Self::Weigh,
            "compare" => Self::Compare,
            "offers" => Self::Offers,
            "plan" => Self::Plan,
            "open-file" => Self::OpenFile,
            _ => return None,
        })
    }
}

/// How far an answer is.
#[derive(Clone, Debug, PartialEq)]
pub enum Progress {
    /// More is to be done: the share that is done, from 0 to below 1. Asking the same again goes on with it.
    Working(f64),
    /// The answer.
    Done(Reply),
}

/// A record as it was read and solved, with the taught figures and the text it was read from.
struct KeptSubject {
    taught: String,
    text: String,
    subject: Subject,
}

/// Answers questions. It keeps the newest record as it was read and solved, and the newest plan.
#[derive(Default)]
pub struct Keeper {
    subject: Option<KeptSubject>,
    planned: Option<(String, Planned)>,
}

impl Keeper {
    /// Does one slice of the work for an answer, or gives the answer.
    pub fn advance(&mut self, question: &Question, text: &str) -> Progress {
        let ask = question.ask;
        match ask {
            Ask::Plan => return Progress::Done(Reply::Page(self.plan(text).blocks.clone())),
            Ask::WriteTable => {
                return Progress::Done(Reply::TableText(stock_table::write(text)));
            }
            Ask::ReadTable => {
                let question = serde_json::from_str(text);
                let preview = question.map(|question| stock_table::read(&question));
                return Progress::Done(match preview {
                    Ok(preview) => Reply::Table(Box::new(preview)),
                    Err(fault) => Reply::Refused(fault.to_string()),
                });
            }
            _ => {}
        }
        if ask == Ask::ShareLot {
            return Progress::Done(share_out(text).map_or_else(Reply::Refused, Reply::Pairs));
        }
        if ask == Ask::Learning {
            return Progress::Done(Reply::Learning(Box::new(learning(text))));
        }
        let subject = match self.subject(&question.taught, text) {
            Ok(subject) => subject,
            Err(why) => return Progress::Done(Reply::Refused(why)),
        };
        let page = match ask {
            Ask::Page(name) => Some(name),
            Ask::Sheet { recipient, .. } => Some(recipient.page()),
            _ => None,
        };
        if let Some(share) = page.and_then(|page| page.prepare(subject)) {
            return Progress::Working(share);
        }
        Progress::Done(match ask {
            Ask::Report => Reply::Report(Box::new(subject.report().clone())),
            Ask::Line => line(subject),
            Ask::Guide => {
                let blocks = guide(subject);
                Reply::Guide(Box::new(subject.report().clone()), blocks)
            }
            Ask::Changes => Reply::Changes(subject.changes().to_vec()),
            Ask::Moved { input, steps } => Reply::Moved(subject.solved().moved(input, steps)),
            Ask::Page(name) => Reply::Page(name.blocks(subject)),
            Ask::Sheet { recipient, form } => Reply::Sheet(sheet_text(subject, recipient, form)),
            Ask::ExpectedWhenAgreed => Reply::Pairs(freeze(subject.case(), PredictedWhen::Agreed)),
            Ask::ExpectedWhenOffered | Ask::ExpectedOfStock => {
                Reply::Pairs(freeze(subject.case(), PredictedWhen::Offered))
            }
            // Answered above: they are about no single record.
            Ask::Plan | Ask::Learning | Ask::WriteTable | Ask::ReadTable | Ask::ShareLot => {
                Reply::Page(Vec::new())
            }
        })
    }

    /// The answer, however long it takes.
    pub fn answer(&mut self, question: impl Into<Question>, text: &str) -> Reply {
        let question = question.into();
        loop {
            if let Progress::Done(answer) = self.advance(&question, text) {
                return answer;
            }
        }
    }

    /// The answer to a script of the page.
    pub fn answer_script(&mut self, ask: ScriptAsk, text: &str) -> String {
        match ask {
            ScriptAsk::Weigh => weigh_json(text),
            ScriptAsk::Compare => compare::compare_json(text),
            ScriptAsk::Offers => offers_json(text),
            ScriptAsk::Plan => serde_json::to_string(self.plan(text)).unwrap_or_default(),
            ScriptAsk::OpenFile => shelf_file::open_json(text),
        }
    }

    fn subject(&mut self, taught: &str, text: &str) -> Result<&Subject, String> {
        let known = self.subject.take();
        let kept = match known.filter(|known| known.text == text && known.taught == taught) {
            Some(known) => known,
            None => KeptSubject {
                taught: taught.to_owned(),
                text: text.to_owned(),
                subject: Subject::parse(text)
                    .map_err(|fault| fault.problem().message)?
                    .with_taught(TaughtFigures::parse(taught)),
            },
        };
        Ok(&self.subject.insert(kept).subject)
    }

    fn plan(&mut self, question: &str) -> &Planned {
        let (_, planned) = match self.planned.take() {
            Some(known) if known.0 == question => self.planned.insert(known),
            _ => self.planned.insert((question.to_owned(), plan(question))),
        };
        planned
    }
}

fn line(subject: &Subject) -> Reply {
    let report = subject.report();
    let identity = &report.identity;
    let likeliest = identity.family_bars.first();
    let kind = likeliest.filter(|_| !identity.nothing_found);
    Reply::Line {
        kind: kind
            .map(|family| family.name.to_string())
            .unwrap_or_default(),
        sentence: report.counsel.sentence.clone(),
        steps: report
            .counsel
            .steps
            .iter()
            .map(|step| step.id().to_owned())
            .collect(),
        most: report.most_to_pay(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ask::{from_bytes, to_bytes};
    use leavewell_model::counsel::{Input, weigh_at_once, what_would_change};
    use leavewell_model::record::Draft;
    use leavewell_pages::PageName;
    use leavewell_pages::sheet_text::{Form, Recipient};

    const TEAPOT: &str = include_str!("../../tests/cases/daily_teapot.json");
    const TRAY: &str = include_str!("../../tests/cases/worn_tray.json");

    #[test]
    fn answers_are_those_of_the_model() {
        let mut keeper = Keeper::default();
        for text in [TEAPOT, TRAY, TEAPOT] {
            let (case, problems) = Draft::parse(text).unwrap().read();
            let report = weigh_at_once(&case, problems);
            assert_eq!(
                keeper.answer(Ask::Report, text),
                Reply::Report(Box::new(report))
            );
            let changes = what_would_change(&case);
            assert_eq!(keeper.answer(Ask::Changes, text), Reply::Changes(changes));
        }
    }

    #[test]
    fn answers_survive_as_bytes() {
        let mut keeper = Keeper::default();
        let moved = Ask::Moved {
            input: Input::Value,
            steps: 4,
        };
        let sheet = Ask::Sheet {
            recipient: Recipient::Buyer,
            form: Form::Html,
        };
        let pages = PageName::ALL.map(Ask::Page);
        for ask in [Ask::Report, Ask::Changes, Ask::Line, moved, sheet]
            .into_iter()
            .chain(pages)
        {
            let answer = keeper.answer(ask, TRAY);
            assert_eq!(from_bytes(&to_bytes(&answer)), Ok(answer), "{ask:?}");
        }
    }

    #[test]
    fn taught_figures_travel_beside_the_record_and_what_is_expected_comes_back() {
        let mut keeper = Keeper::default();
        let as_shipped = keeper.answer(Ask::Report, TRAY);
        let taught = "12\nvalue.guess_bias.A2=0.4/0.5/0.6\nvalue.guess_bias.C2=0.4/0.5/0.6\ncost.T14a=900/1000/1100";
        let with = |ask| Question::with_taught(ask, taught);
        let answer = keeper.answer(with(Ask::Report), TRAY);
        assert_eq!(keeper.answer(Ask::Report, TRAY), as_shipped);
        assert!(matches!(&answer, Reply::Report(_)) && answer != as_shipped);
        let frozen = keeper.answer(with(Ask::ExpectedWhenOffered), TRAY);
        let Reply::Pairs(fields) = &frozen else {
            panic!("{frozen:?}");
        };
        assert!(
            fields
                .iter()
                .any(|(field, _)| field == "taught_values.bills")
        );
        assert_eq!(from_bytes(&to_bytes(&frozen)), Ok(frozen.clone()));
        let question =
            r#"{"today":"2026-11-30","prices":true,"works":true,"example":true,"pieces":[]}"#;
        let Reply::Learning(learning) = keeper.answer(Ask::Learning, question) else {
            panic!("what pieces teach");
        };
        assert!(learning.layer.is_empty(), "invented pieces teach nothing");
        assert!(learning.pulls.len() == 5 && learning.blocks.len() > 4);
    }

    #[test]
    fn long_pages_say_how_far_they_are() {
        let mut keeper = Keeper::default();
        let mut shares = Vec::new();
        let closer = Ask::Page(PageName::Closer).into();
        while let Progress::Working(share) = keeper.advance(&closer, TRAY) {
            shares.push(share);
        }
        assert!(shares.len() > 4, "{shares:?}");
        assert!(shares.is_sorted() && shares.iter().all(|share| (0.0..1.0).contains(share)));
    }

    #[test]
    fn a_text_that_is_no_case_is_refused_and_the_next_is_answered() {
        let mut keeper = Keeper::default();
        let refused = keeper.answer(Ask::Page(PageName::Bleed), "{\"format\":");
        assert!(matches!(&refused, Reply::Refused(why) if !why.is_empty()));
        assert!(matches!(keeper.answer(Ask::Report, TRAY), Reply::Report(_)));
    }

    #[test]
    fn the_plan_is_the_same_for_the_script_and_for_the_page() {
        let mut keeper = Keeper::default();
        let record = serde_json::json!([{ "id": "a", "text": TRAY }]).to_string();
        let offers = keeper.answer_script(ScriptAsk::Offers, &record);
        let question = format!("{{\"pieces\":{offers}}}");
        let script = keeper.answer_script(ScriptAsk::Plan, &question);
        let Reply::Page(blocks) = keeper.answer(Ask::Plan, &question) else {
            panic!("the plan is a page");
        };
        let sentence = match &blocks[0] {
            leavewell_pages::Block::Para { text, .. } => text,
            other => panic!("{other:?}"),
        };
        assert!(script.contains(sentence.as_str()), "{script}");
        assert_ne!(keeper.answer(Ask::Plan, "{}"), Reply::Page(blocks));
    }

    #[test]
    fn a_table_is_written_and_read_back() {
        let mut keeper = Keeper::default();
        let pieces = serde_json::json!([{ "record": TRAY, "advised": "Leave it." }]).to_string();
        let Reply::TableText(text) = keeper.answer(Ask::WriteTable, &pieces) else {
            panic!("it is a table");
        };
        let question = serde_json::json!({
            "text": text.trim_start_matches('\u{feff}'), "encoding": "Utf8", "columns": [], "asked_on": "2026-05-31",
        });
        let answer = keeper.answer(Ask::ReadTable, &question.to_string());
        assert_eq!(from_bytes(&to_bytes(&answer)).as_ref(), Ok(&answer));
        let Reply::Table(preview) = answer else {
            panic!("it is a preview");
        };
        assert_eq!(preview.pieces.len(), 1);
        let refused = keeper.answer(Ask::ReadTable, "no question");
        assert!(matches!(refused, Reply::Refused(_)));
    }

    #[test]
    fn scripts_ask_by_name() {
        let names = ["weigh", "compare", "offers", "plan", "open-file"];
        assert!(names.iter().all(|name| ScriptAsk::parse(name).is_some()));
        assert_eq!(ScriptAsk::parse("report"), None);
    }
}
