//! What a case file has to be, and why one could not be opened.

use super::Problem;

/// What `format` must say.
pub const CASE_FORMAT: &str = "leavewell-case";

/// The newest version this program writes and reads.
pub const CASE_VERSION: u64 = 2;

/// Largest file for one case without photographs, in bytes.
pub const MAX_BYTES: usize = 8 * 1024 * 1024;

/// Deepest nesting of a case file.
pub const MAX_DEPTH: usize = 64;

/// Most findings in a case file.
pub const MAX_FINDINGS: usize = 5_000;

/// Why a file could not be opened. The file itself is left as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenError {
    /// Larger than [`MAX_BYTES`].
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Nested deeper than [`MAX_DEPTH`].
    TooDeep,
    /// Not JSON, or cut short.
    NotJson {
        /// Line of the fault.
        line: usize,
        /// Column of the fault.
        column: usize,
        /// The text ends in the middle.
        cut_short: bool,
    },
    /// JSON, but not a case.
    NotACase,
    /// Written by a newer program.
    Newer {
        /// Its version.
        version: u64,
        /// The newest this program reads.
        newest: u64,
    },
    /// The version is not a whole number from 1.
    BadVersion,
    /// More than [`MAX_FINDINGS`].
    TooManyFindings {
        /// How many.
        count: usize,
    },
}

impl OpenError {
    /// The fault as a problem a person can act on.
    #[must_use]
    pub fn problem(&self) -> Problem {
        let (field, message, remedy) = match self {
            Self::TooLarge { bytes } => (
                "file",
                format!(
                    "The file is {} MB; a case without photographs is at most {} MB.",
                    bytes / 1_048_576,
                    MAX_BYTES / 1_048_576
                ),
                "Choose a Leavewell case file. The file was not changed.",
            ),
            Self::TooDeep => (
                "file",
                format!("The file is nested more than {MAX_DEPTH} levels deep, which no case is."),
                "Choose a Leavewell case file. The file was not changed.",
            ),
            Self::NotJson {
                line,
                column,
                cut_short: true,
            } => (
                "file",
                format!("The file breaks off at line {line}, column {column}."),
                "It was probably not copied whole. Copy it again from where it was saved.",
            ),
            Self::NotJson {
                line,
                column,
                cut_short: false,
            } => (
                "file",
                format!("The file is not readable at line {line}, column {column}."),
                "Open it in a text editor at that place, or use another copy.",
            ),
            Self::NotACase => (
                "format",
                format!("This is not a case file: \"format\" should say \"{CASE_FORMAT}\"."),
                "Choose a file that Leavewell saved.",
            ),
            Self::Newer { version, newest } => (
                "version",
                format!("The file has version {version}; this program reads up to {newest}."),
                "Update Leavewell, then open it again. The file was not changed.",
            ),
            Self::BadVersion => (
                "version",
                "\"version\" should be a whole number from 1.".to_owned(),
                "Choose a file that Leavewell saved, or set \"version\" to 1.",
            ),
            Self::TooManyFindings { count } => (
                "findings",
                format!("The file has {count} findings; a case has at most {MAX_FINDINGS}."),
                "Remove what repeats, then open it again.",
            ),
        };
        Problem {
            field: field.to_owned(),
            message,
            remedy: remedy.to_owned(),
        }
    }
}
