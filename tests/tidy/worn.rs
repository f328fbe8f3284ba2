//! Worn phrases are kept out of the words that users read, and out of sources that are already free of them.

use std::fs;
use std::path::Path;

use super::files;

/// Phrases that no owner or engineer would say, with plain replacements.
const WORN: [(&str, &str); 26] = [
    ("stands in", "replaces, is the default"),
    ("told", "says, shows, knows"),
    ("somebody", "a person, someone, you"),
    ("ways things may be", "cases"),
    ("what is so", "what is true"),
    ("of its own", "separate, different"),
    ("of their own", "separate, different"),
    ("of one's own", "the person's"),
    ("of your own", "your"),
    ("held against", "compared with"),
    ("laid over", "added to"),
    ("laid beside", "compared with"),
    ("likely more as less", "your best guess"),
    ("takes the place of", "replaces"),
    ("hold all the same", "still apply"),
    ("comes of", "result"),
    ("reckoned", "estimated"),
    ("anew", "again"),
    ("whoever is reading", "the reader"),
    ("nobody knows yet", "we do not know"),
    ("what stood there", "what you entered"),
    ("held a fault", "counts as a fault"),
    ("as can be", "as you can, as possible"),
    ("once one knows", "once you know"),
    ("put up with", "accept"),
    ("for ever", "permanent, for good"),
];

/// The folders and files in which no worn phrase may occur, including comments.
const CLEAN: [&str; 31] = [
    "src/app/wording",
    "src/app/parts",
    "src/app/charts",
    "src/app/drawings",
    "src/app/platform",
    "src/dev",
    "src/pages/wording",
    "src/model/bench",
    "src/model/learn",
    "src/model/road",
    "src/model/silver",
    "src/model/treatment",
    "src/model/value",
    "src/model/record/reading",
    "src/model/counsel/wording/caution_list.rs",
    "src/model/counsel/wording/change.rs",
    "src/model/counsel/wording/contrast.rs",
    "src/model/counsel/wording/course.rs",
    "src/model/counsel/wording/explain.rs",
    "src/model/counsel/wording/mod.rs",
    "src/model/counsel/wording/report.rs",
    "src/model/counsel/wording/sentences.rs",
    "src/model/ledger/meaning_of_words.rs",
    "src/model/ledger/data/catalogue.psv",
    "src/model/ledger/data/cautions.psv",
    "src/model/ledger/data/duties.psv",
    "src/model/ledger/data/guards.psv",
    "src/model/ledger/data/meanings.psv",
    "src/model/ledger/data/signposts.psv",
    "src/model/ledger/data/soft.psv",
    "src/model/ledger/data/treatments.psv",
];

/// Texts that may contain a phrase, because they are names and not prose.
const NAMES: [&str; 1] = ["leavewell-told"];

/// The worn phrases in a source. A string that a backslash continues on the next line counts as one line.
fn worn(source: &str) -> Vec<&'static str> {
    let mut text = String::new();
    for (at, part) in source.split("\\\n").enumerate() {
        text.push_str(if at == 0 { part } else { part.trim_start() });
    }
    for name in NAMES {
        text = text.replace(name, "");
    }
    let words: Vec<String> = text
        .split(|letter: char| !letter.is_alphanumeric() && letter != '\'' && letter != '_')
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    WORN.iter()
        .map(|(phrase, _)| *phrase)
        .filter(|phrase| {
            let phrase: Vec<&str> = phrase.split(' ').collect();
            words.windows(phrase.len()).any(|found| found == phrase)
        })
        .collect()
}

/// The sources in a folder, or one file.
fn sources(at: &str) -> Vec<(String, String)> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(at);
    if path.is_file() {
        vec![(at.to_owned(), fs::read_to_string(path).unwrap())]
    } else {
        files(at, &["rs"])
    }
}

#[test]
fn words_that_users_read_are_free_of_worn_phrases() {
    let mut faults = Vec::new();
    for (name, source) in CLEAN.iter().flat_map(|at| sources(at)) {
        for phrase in worn(&source) {
            let instead = WORN.iter().find(|(known, _)| *known == phrase);
            let instead = instead.map_or("", |(_, plain)| *plain);
            faults.push(format!("{name}: \"{phrase}\"; say: {instead}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn worn_phrases_are_found_in_any_case_and_across_line_breaks() {
    assert_eq!(worn("Somebody else"), ["somebody"]);
    assert_eq!(worn("Tick what is \\\n     so."), ["what is so"]);
    assert_eq!(worn("// It has a box\n// of its\n// own."), ["of its own"]);
    assert!(worn("It stands on the shelf; a stranger foretold it.").is_empty());
    assert!(worn("a \"leavewell-told\" event").is_empty());
    assert!(worn("let untold = told_twice;").is_empty());
}
