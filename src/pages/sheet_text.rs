//! A sheet as a text of its own, to print, to send or to keep: as Markdown or as HTML.

use serde::{Deserialize, Serialize};

use super::as_typed::as_typed;
use super::markdown::markdown;
use super::markup::markup;
use super::wording::sheet_text as words;
use super::{PageName, Subject};

/// Whom a sheet is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Recipient {
    /// Who decides on the work.
    Client,
    /// Who buys the piece.
    Buyer,
    /// Whoever looks after the piece later.
    File,
}

impl Recipient {
    /// Everybody a sheet can be for.
    pub const ALL: [Self; 3] = [Self::Client, Self::Buyer, Self::File];

    /// The word for it on the command line and in names of files.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Client => "client",
            Self::Buyer => "buyer",
            Self::File => "file",
        }
    }

    /// The recipient with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|recipient| recipient.id() == id)
    }

    /// The page that is the sheet.
    #[must_use]
    pub fn page(self) -> PageName {
        match self {
            Self::Client => PageName::SheetForClient,
            Self::Buyer => PageName::SheetForBuyer,
            Self::File => PageName::SheetForFile,
        }
    }

    /// The title of the sheet.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Client => words::FOR_THE_CLIENT,
            Self::Buyer => words::FOR_A_BUYER,
            Self::File => words::FOR_THE_FILE,
        }
    }
}

/// How a sheet is written out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Form {
    /// Plain text with few marks, for a letter.
    Markdown,
    /// A whole page that needs no other file.
    Html,
}

impl Form {
    /// Both forms.
    pub const ALL: [Self; 2] = [Self::Markdown, Self::Html];

    /// The ending of a file in this form, without the dot.
    #[must_use]
    pub fn extension(self) -> &'static str {
        match self {
            Self::Markdown => "md",
            Self::Html => "html",
        }
    }
}

/// The sheet for somebody, written out.
#[must_use]
pub fn sheet_text(subject: &Subject, recipient: Recipient, form: Form) -> String {
    let blocks = recipient.page().blocks(subject);
    let piece = as_typed(&subject.draft().text("piece.name"));
    let running = match piece.as_str() {
        "" => recipient.title().to_owned(),
        piece => words::titled(piece, recipient.title()),
    };
    match form {
        Form::Html => markup(&running, &running, &blocks),
        Form::Markdown => markdown(&running, &blocks),
    }
}
