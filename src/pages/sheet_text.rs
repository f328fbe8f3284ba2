//! A sheet as a self-contained text, to print, send or keep: Markdown or HTML.

use serde::{Deserialize, Serialize};

use super::as_typed::as_typed;
use super::markdown::markdown;
use super::markup::markup;
use super::sheet::public_name;
use super::wording::sheet_text as words;
use super::{PageName, Subject};

/// The reader of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Recipient {
    /// The person who decides on the work.
    Client,
    /// The person who buys the piece.
    Buyer,
    /// Whoever looks after the piece later.
    File,
    /// Whoever treats the piece, and the owner who agrees to it step by step.
    Conservation,
}

impl Recipient {
    /// Every recipient.
    pub const ALL: [Self; 4] = [Self::Client, Self::Buyer, Self::File, Self::Conservation];

    /// The id used on the command line and in file names.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Client => "client",
            Self::Buyer => "buyer",
            Self::File => "file",
            Self::Conservation => "conservation",
        }
    }

    /// The recipient with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|recipient| recipient.id() == id)
    }

    /// The page behind the sheet.
    #[must_use]
    pub fn page(self) -> PageName {
        match self {
            Self::Client => PageName::SheetForClient,
            Self::Buyer => PageName::SheetForBuyer,
            Self::File => PageName::SheetForFile,
            Self::Conservation => PageName::SheetForConservation,
        }
    }

    /// The title of the sheet.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Client => words::FOR_THE_CLIENT,
            Self::Buyer => words::FOR_A_BUYER,
            Self::File => words::FOR_THE_FILE,
            Self::Conservation => words::CONSERVATION,
        }
    }
}

/// The format of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Form {
    /// Plain text with light markup, for a letter.
    Markdown,
    /// A complete page that needs no other file.
    Html,
}

impl Form {
    /// Both formats.
    pub const ALL: [Self; 2] = [Self::Markdown, Self::Html];

    /// The file extension, without the dot.
    #[must_use]
    pub fn extension(self) -> &'static str {
        match self {
            Self::Markdown => "md",
            Self::Html => "html",
        }
    }
}

/// Renders the sheet for a recipient.
#[must_use]
pub fn sheet_text(subject: &Subject, recipient: Recipient, form: Form) -> String {
    let blocks = recipient.page().blocks(subject);
    let piece = match recipient {
        // A buyer is not told what the owner calls it.
        Recipient::Buyer => public_name(subject.case()),
        Recipient::Client | Recipient::File | Recipient::Conservation => {
            as_typed(&subject.draft().text("piece.name"))
        }
    };
    let running = match piece.as_str() {
        "" => recipient.title().to_owned(),
        piece => words::titled(piece, recipient.title()),
    };
    match form {
        Form::Html => markup(&running, &running, &blocks),
        Form::Markdown => markdown(&running, &blocks),
    }
}
