//! Questions and answers, as types and as bytes.
//!
//! A question travels with a text: the record it is about, or the question itself for [`Ask::Plan`],
//! [`Ask::Learning`] and the asks about tables and lots.

use leavewell_model::Report;
use leavewell_model::counsel::Input;
use leavewell_model::report::{ChangeReport, MovedReport};
use leavewell_pages::learning::Learning;
use leavewell_pages::sheet_text::{Form, Recipient};
use leavewell_pages::stock_table::TablePreview;
use leavewell_pages::{Block, PageName};
use serde::{Deserialize, Serialize};

/// A question as it travels to a worker, beside its text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Question {
    /// What is asked.
    pub ask: Ask,
    /// The taught figures that apply to the record, in the form of `TaughtFigures::to_text`; empty without any.
    pub taught: String,
}

impl Question {
    /// The question, answered with these taught figures.
    #[must_use]
    pub fn with_taught(ask: Ask, taught: &str) -> Self {
        Self {
            ask,
            taught: taught.to_owned(),
        }
    }
}

impl From<Ask> for Question {
    fn from(ask: Ask) -> Self {
        Self::with_taught(ask, "")
    }
}

/// What the app asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Ask {
    /// The report, without what would change it.
    Report,
    /// What would change the advice.
    Changes,
    /// The answer with one input moved.
    Moved {
        /// The input.
        input: Input,
        /// How far, in steps of equal ratio.
        steps: i8,
    },
    /// A page about the record.
    Page(PageName),
    /// A sheet written out.
    Sheet {
        /// Whom it is for.
        recipient: Recipient,
        /// How it is written.
        form: Form,
    },
    /// The plan for the whole shelf. Its text is that of [`leavewell_pages::plan::plan`].
    Plan,
    /// The guide, with the record as its worked piece.
    Guide,
    /// The stock as a table for a spreadsheet. Its text is that of [`leavewell_pages::stock_table::write`].
    WriteTable,
    /// What the shelf says of a piece that was never opened here.
    Line,
    /// What a table holds. Its text is a [`leavewell_pages::stock_table::TableQuestion`] as JSON.
    ReadTable,
    /// The price of a lot shared out over its records. Its text is that of [`leavewell_pages::lot::share_out`].
    ShareLot,
    /// What the closed pieces of a shelf teach. Its text is that of [`leavewell_pages::learning::learning`].
    Learning,
    /// What is expected of the record, to be frozen because work was agreed.
    ExpectedWhenAgreed,
    /// What is expected of the record, to be frozen because it is offered for sale.
    ExpectedWhenOffered,
    /// The same of a piece on the shelf that was put up for sale together with others.
    ExpectedOfStock,
}

/// Which of the two workers answers. A long job never keeps a report waiting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worker {
    /// Answers what a person waits for while typing.
    Answers,
    /// Does what takes long: what would change the advice, sheets, the ledger, the closer look, the plan, files.
    LongJobs,
}

impl Worker {
    /// The name by which the page's script knows it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Answers => "answers",
            Self::LongJobs => "long",
        }
    }
}

impl Ask {
    /// The worker that answers it.
    #[must_use]
    pub fn worker(self) -> Worker {
        match self {
            Self::Page(
                PageName::Closer
                | PageName::Ledger
                | PageName::SheetForBuyer
                | PageName::SheetForClient
                | PageName::SheetForConservation
                | PageName::SheetForFile,
            )
            | Self::Changes
            | Self::Sheet { .. }
            | Self::Plan
            | Self::Guide
            | Self::WriteTable
            | Self::Line
            | Self::ReadTable
            | Self::ShareLot
            | Self::Learning
            | Self::ExpectedWhenAgreed
            | Self::ExpectedWhenOffered
            | Self::ExpectedOfStock => Worker::LongJobs,
            Self::Report | Self::Moved { .. } | Self::Page(_) => Worker::Answers,
        }
    }

    /// What it asks for, as a number. Of the questions with one topic that wait, only the newest is answered.
    #[must_use]
    pub fn topic(self) -> u32 {
        match self {
            Self::Report => 0,
            Self::Changes => 1,
            Self::Moved { .. } => 2,
            Self::Plan => 3,
            Self::WriteTable => 4,
            Self::ReadTable => 5,
            Self::Line => 6,
            Self::Guide => 7,
            Self::ShareLot => 8,
            Self::Learning => 30,
            Self::ExpectedWhenAgreed => 31,
            Self::ExpectedWhenOffered => 32,
            Self::ExpectedOfStock => 33,
            Self::Sheet { recipient, form } => 10 + 2 * recipient as u32 + form as u32,
            Self::Page(name) => 100 + name as u32,
        }
    }
}

/// What the worker answers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Reply {
    /// The report.
    Report(Box<Report>),
    /// What would change the advice.
    Changes(Vec<ChangeReport>),
    /// The answer with an input moved.
    Moved(MovedReport),
    /// A page, or the plan.
    Page(Vec<Block>),
    /// The guide, with the report on its piece, from which the app draws pictures.
    Guide(Box<Report>, Vec<Block>),
    /// A sheet written out.
    Sheet(String),
    /// What the shelf says of a piece: what it is most likely made of, the advice, and its treatments.
    Line {
        /// The likeliest family; empty when nothing was found.
        kind: String,
        /// The advice.
        sentence: String,
        /// Ids of the treatments advised.
        steps: Vec<String>,
        /// The most to pay for it with them; `None` unless it is to be sold.
        most: Option<f64>,
    },
    /// A table for a spreadsheet.
    TableText(String),
    /// What a table holds.
    Table(Box<TablePreview>),
    /// What closed pieces teach.
    Learning(Box<Learning>),
    /// What is expected: the fields to freeze, each with its text. Or the key of each record of a lot, with its share.
    Pairs(Vec<(String, String)>),
    /// The text is no case: why not, in words.
    Refused(String),
}

/// A question or an answer as bytes.
#[must_use]
pub fn to_bytes<T: Serialize>(value: &T) -> Vec<u8> {
    // Writing into memory that grows fails only for types these are not.
    postcard::to_allocvec(value).unwrap_or_default()
}

/// A question or an answer from its bytes.
///
/// # Errors
/// When the bytes are of another build.
pub fn from_bytes<T: for<'a> Deserialize<'a>>(bytes: &[u8]) -> Result<T, String> {
    postcard::from_bytes(bytes).map_err(|fault| fault.to_string())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use leavewell_pages::Subject;

    fn every_ask() -> Vec<Ask> {
        let mut asks = vec![
            Ask::Report,
            Ask::Changes,
            Ask::Moved {
                input: Input::Cost,
                steps: -3,
            },
            Ask::Plan,
            Ask::Guide,
            Ask::WriteTable,
            Ask::ReadTable,
            Ask::Line,
            Ask::ShareLot,
            Ask::Learning,
            Ask::ExpectedWhenAgreed,
            Ask::ExpectedWhenOffered,
            Ask::ExpectedOfStock,
        ];
        asks.extend(PageName::ALL.map(Ask::Page));
        for recipient in Recipient::ALL {
            asks.extend(Form::ALL.map(|form| Ask::Sheet { recipient, form }));
        }
        asks
    }

    #[test]
    fn each_ask_has_a_topic_of_its_own_and_survives_as_bytes() {
        let mut topics: Vec<u32> = Vec::new();
        for ask in every_ask() {
            let question = Question::with_taught(ask, "12");
            assert_eq!(from_bytes(&to_bytes(&question)), Ok(question));
            topics.push(ask.topic());
        }
        let count = topics.len();
        topics.sort_unstable();
        topics.dedup();
        assert_eq!(topics.len(), count);
    }

    #[test]
    fn pages_that_take_long_go_to_the_worker_for_long_jobs() {
        let mut long = 0;
        for page in PageName::ALL {
            let subject = Subject::parse(r#"{"format":"leavewell-case","version":1}"#).unwrap();
            if page.prepare(&subject).is_some() {
                assert_eq!(Ask::Page(page).worker(), Worker::LongJobs, "{page:?}");
                long += 1;
            }
        }
        assert!(long > 3);
    }

    #[test]
    fn bytes_of_something_else_are_refused() {
        assert!(from_bytes::<Question>(&[]).is_err());
        assert!(from_bytes::<Question>(&[200, 0]).is_err());
    }
}
