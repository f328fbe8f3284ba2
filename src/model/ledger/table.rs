//! Reads the ledger's data files: one record a line, fields parted by ` | `, `#` for comments.
//!
//! The files are embedded in the program, so a fault in one is a fault of the build and not of a
//! person: [`rows`] reports it with file and line, and a test reads every file.

/// One record, in the order of the header.
pub(crate) type Row<'a> = Vec<&'a str>;

/// Splits an embedded file into its records, checked against the header it must have.
///
/// # Errors
/// Names the file and line when the header differs or a record has too few or too many fields.
pub(crate) fn rows<'a>(file: &str, text: &'a str, header: &[&str]) -> Result<Vec<Row<'a>>, String> {
    let mut records = Vec::new();
    let mut seen_header = false;
    for (i, line) in text.lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let fields: Row = line.split(" | ").map(str::trim).collect();
        if !seen_header {
            if fields != header {
                return Err(format!("{file}:{}: the header should be {header:?}", i + 1));
            }
            seen_header = true;
            continue;
        }
        if fields.len() != header.len() {
            return Err(format!(
                "{file}:{}: {} fields, not {}",
                i + 1,
                fields.len(),
                header.len()
            ));
        }
        records.push(fields);
    }
    Ok(records)
}

/// The text of an embedded file without its comments, stripped while the program is built: they are
/// for whoever edits the file, and would be a fifth of what a visitor downloads of it. Lines keep
/// their numbers.
macro_rules! without_comments {
    ($path:literal) => {{
        const WHOLE: &[u8] = include_bytes!($path);
        const BARE: [u8; $crate::ledger::table::bare_length(WHOLE)] =
            $crate::ledger::table::bare(WHOLE);
        const TEXT: &str = match core::str::from_utf8(&BARE) {
            Ok(text) => text,
            Err(_) => "",
        };
        TEXT
    }};
}
pub(crate) use without_comments;

/// Bytes that are left once comments are out.
pub(crate) const fn bare_length(text: &[u8]) -> usize {
    let (mut i, mut kept, mut comment) = (0, 0, false);
    while i < text.len() {
        comment = in_comment(text, i, comment);
        if !comment {
            kept += 1;
        }
        i += 1;
    }
    kept
}

/// The bytes that are left; `N` is [`bare_length`].
pub(crate) const fn bare<const N: usize>(text: &[u8]) -> [u8; N] {
    let mut out = [b'\n'; N];
    let (mut i, mut kept, mut comment) = (0, 0, false);
    while i < text.len() {
        comment = in_comment(text, i, comment);
        if !comment {
            out[kept] = text[i];
            kept += 1;
        }
        i += 1;
    }
    out
}

/// Whether the byte at `i` belongs to a comment, a `#` at the start of a line up to its end.
const fn in_comment(text: &[u8], i: usize, before: bool) -> bool {
    let starts = text[i] == b'#' && (i == 0 || text[i - 1] == b'\n');
    (before || starts) && text[i] != b'\n'
}

#[cfg(test)]
mod tests {
    use super::{bare, bare_length, rows};

    #[test]
    fn comments_are_stripped_and_lines_keep_their_numbers() {
        const TEXT: &[u8] = b"# why\n\na | b\n1 | #2\n# end";
        const LENGTH: usize = bare_length(TEXT);
        let bare: [u8; LENGTH] = bare(TEXT);
        assert_eq!(&bare, b"\n\na | b\n1 | #2\n");
    }

    #[test]
    fn comments_and_blank_lines_are_passed_over() {
        let text = "# why\n\na | b\n1 | 2\n";
        assert_eq!(rows("t", text, &["a", "b"]), Ok(vec![vec!["1", "2"]]));
    }

    #[test]
    fn a_short_record_is_named_by_file_and_line() {
        let fault = rows("t", "a | b\n1\n", &["a", "b"]).unwrap_err();
        assert!(fault.starts_with("t:2"), "{fault}");
        assert!(rows("t", "a | c\n", &["a", "b"]).is_err());
    }
}
