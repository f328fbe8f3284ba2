//! `cargo weigh`: the model on the command line, for tests and for people with many files.

use std::fs::File;
use std::io::{self, Read, Write};
use std::process::ExitCode;

use leavewell_pages::Subject;
use leavewell_pages::sheet_text::{Form, Recipient, sheet_text};

use crate::trouble::{Fallible, Trouble};

/// The size limit of a case file. Reading stops here, so that a wrong file cannot exhaust memory.
const LARGEST_BYTES: u64 = 8 * 1024 * 1024;

/// Weighs the case in a file, or on standard input for `-`, and prints the counsel as JSON.
///
/// If the model refuses the case, it prints JSON with a key `refused` and the exit code is 1.
pub(crate) fn weigh(file: &str) -> Fallible<ExitCode> {
    let text = case_text(file)?;
    let counsel = leavewell_model::weigh_json(&text);
    print(&counsel)?;
    Ok(if is_refusal(&counsel) {
        ExitCode::FAILURE
    } else {
        ExitCode::SUCCESS
    })
}

/// Prints one sheet of a case (`client`, `buyer`, `file` or `conservation`) as `markdown` or `html`.
///
/// # Errors
/// If the case cannot be read, or the sheet or the format is unknown.
pub(crate) fn sheet(file: &str, version: &str, form: &str) -> Fallible<ExitCode> {
    print(&sheet_of(&case_text(file)?, version, form)?)?;
    Ok(ExitCode::SUCCESS)
}

fn sheet_of(case: &str, recipient: &str, form: &str) -> Fallible<String> {
    let form = match form {
        "markdown" => Form::Markdown,
        "html" => Form::Html,
        _ => {
            return Err(Trouble::new(
                format!("a sheet cannot be printed as {form}"),
                "ask for markdown, or for html.",
            ));
        }
    };
    let recipient = Recipient::parse(recipient).ok_or_else(|| {
        Trouble::new(
            format!("there is no sheet called {recipient}"),
            "ask for one of: client, buyer, file, conservation.",
        )
    })?;
    let subject = Subject::parse(case).map_err(|error| {
        let problem = error.problem();
        let what = problem.message.trim_end_matches('.').to_owned();
        Trouble::new(what, problem.remedy)
    })?;
    Ok(sheet_text(&subject, recipient, form))
}

fn case_text(file: &str) -> Fallible<String> {
    if file == "-" {
        return read_case(io::stdin().lock(), "standard input");
    }
    let opened = File::open(file).map_err(|error| cannot_read(file, &error))?;
    read_case(opened, file)
}

fn read_case(source: impl Read, name: &str) -> Fallible<String> {
    let mut bytes = Vec::new();
    source
        .take(LARGEST_BYTES + 1)
        .read_to_end(&mut bytes)
        .map_err(|error| cannot_read(name, &error))?;
    if bytes.len() as u64 > LARGEST_BYTES {
        return Err(Trouble::new(
            format!("{name} is larger than {} MB", LARGEST_BYTES / 1024 / 1024),
            "give one case at a time; if it holds photographs, export it again without them.",
        ));
    }
    String::from_utf8(bytes).map_err(|_| {
        Trouble::new(
            format!("{name} is not UTF-8 text"),
            "give a case file as Leavewell exports it; if an editor saved it in another encoding, save it again as UTF-8.",
        )
    })
}

fn cannot_read(name: &str, error: &io::Error) -> Trouble {
    let cure = match error.kind() {
        io::ErrorKind::NotFound => {
            "check the name; a relative path starts from the folder you are in."
        }
        io::ErrorKind::PermissionDenied => "allow yourself to read the file.",
        io::ErrorKind::IsADirectory => "give the case file itself, not the folder it is in.",
        _ => "check the file, or pass the case on standard input: cargo weigh - < CASE.json",
    };
    Trouble::new(format!("{name} cannot be read: {error}"), cure)
}

/// Prints a line. A reader that closes the pipe early (`| head`) is not an error.
fn print(text: &str) -> Fallible<()> {
    let mut out = io::stdout().lock();
    match writeln!(out, "{text}").and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(Trouble::new(
            format!("the counsel could not be printed: {error}"),
            "check where the output goes, and its free space.",
        )),
        _ => Ok(()),
    }
}

fn is_refusal(counsel: &str) -> bool {
    serde_json::from_str::<serde_json::Value>(counsel)
        .is_ok_and(|value| value.get("refused").is_some())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_top_level_key_is_a_refusal() {
        assert!(is_refusal(r#"{"refused": {"what": "no case"}}"#));
        assert!(!is_refusal(r#"{"counsel": {"refused": 1}}"#));
    }

    const TRAY: &str = include_str!("../../tests/cases/worn_tray.json");

    #[test]
    fn each_sheet_is_printed_in_both_forms() {
        for recipient in Recipient::ALL {
            let (version, title) = (recipient.id(), recipient.title());
            let text = sheet_of(TRAY, version, "markdown").unwrap();
            // A buyer does not read what the owner calls it.
            let name = match recipient {
                Recipient::Buyer => "Tray or salver",
                _ => "Worn tray from the sale room",
            };
            let head = format!("# {name}: {title}\n");
            assert!(text.starts_with(&head), "{version}");
            let is_named = text.contains("Worn tray from the sale room");
            assert_eq!(is_named, recipient != Recipient::Buyer, "{version}");
            assert!(text.contains("They decide, not this tool."), "{version}");
            let page = sheet_of(TRAY, version, "html").unwrap();
            assert!(page.starts_with("<!DOCTYPE html>"), "{version}");
            assert!(page.trim_end().ends_with("</html>"), "{version}");
            assert!(page.contains("They decide, not this tool."), "{version}");
        }
    }

    #[test]
    fn an_unknown_sheet_is_answered_with_the_known_ones() {
        let message = |trouble: Trouble| trouble.to_string();
        assert!(
            message(sheet_of(TRAY, "seller", "html").unwrap_err())
                .contains("client, buyer, file, conservation")
        );
        assert!(message(sheet_of(TRAY, "buyer", "pdf").unwrap_err()).contains("html"));
        let cut = sheet_of("{\"format\":", "buyer", "html").unwrap_err();
        assert!(message(cut).contains("breaks off at line 1"));
    }

    #[test]
    fn oversized_and_binary_files_are_refused() {
        assert!(read_case(io::repeat(b' '), "blanks").is_err());
        assert!(read_case(&[0xff, 0xfe, 0x00][..], "bytes").is_err());
        assert_eq!(read_case(&b"{}"[..], "a case"), Ok("{}".to_owned()));
    }
}
