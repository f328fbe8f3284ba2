//! Reads the ledger's data files: one record per line, fields separated by ` | `, `#` for comments.
//!
//! The files are embedded in the program, so a fault in one is a build error and not the user's: [`rows`]
//! reports it with file and line, and a test reads every file.

/// One record, in the order of the header.
pub(crate) type Row<'a> = Vec<&'a str>;

/// Splits an embedded file into its records, after checking its header.
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

#[cfg(test)]
mod tests {
    use super::rows;

    #[test]
    fn comments_and_blank_lines_are_skipped() {
        let text = "# why\n\na | b\n1 | 2\n";
        assert_eq!(rows("t", text, &["a", "b"]), Ok(vec![vec!["1", "2"]]));
    }

    #[test]
    fn a_short_record_is_reported_with_file_and_line() {
        let fault = rows("t", "a | b\n1\n", &["a", "b"]).unwrap_err();
        assert!(fault.starts_with("t:2"), "{fault}");
        assert!(rows("t", "a | c\n", &["a", "b"]).is_err());
    }
}
