//! House rules: what the source may name, where figures are kept, what the words may say, and whether the
//! colours have enough contrast. Each rule is checked on the files themselves.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use leavewell_model::ledger::{FindingId, Ledger, caution, findings};
use leavewell_model::record::schema::FIELDS;
use leavewell_model::terms::Treatment;

#[path = "tidy/rooms.rs"]
mod rooms;
#[path = "tidy/unused.rs"]
mod unused;
#[path = "tidy/worn.rs"]
mod worn;

/// Every file under a folder of the repository with one of these endings, with its text.
fn files(folder: &str, endings: &[&str]) -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut waiting: Vec<PathBuf> = vec![root.join(folder)];
    let mut found = Vec::new();
    while let Some(at) = waiting.pop() {
        for entry in fs::read_dir(&at).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                waiting.push(path);
            } else if path
                .extension()
                .is_some_and(|e| endings.iter().any(|end| e == *end))
            {
                let name = path.strip_prefix(root).unwrap();
                let name = name.to_str().unwrap().replace('\\', "/");
                found.push((name, fs::read_to_string(&path).unwrap()));
            }
        }
    }
    found.sort();
    assert!(!found.is_empty(), "no files under {folder}");
    found
}

/// Fails for every line outside comments that contains one of these words.
fn check_absent(files: &[(String, String)], words: &[&str], why: &str) {
    let faults: Vec<String> = files
        .iter()
        .flat_map(|(name, text)| {
            code_lines(text).filter_map(move |(n, line)| {
                let word = words.iter().find(|w| line.contains(**w))?;
                Some(format!("{name}:{n}: {word}"))
            })
        })
        .collect();
    assert!(faults.is_empty(), "{why}\n{}", faults.join("\n"));
}

/// The lines that are not comments, with their line numbers.
fn code_lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines()
        .enumerate()
        .map(|(i, line)| (i + 1, line))
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
}

#[test]
fn the_model_names_neither_the_web_nor_the_machine() {
    // The build script runs on the machine that builds; it is not part of the model.
    let model: Vec<(String, String)> = files("src/model", &["rs", "toml"])
        .into_iter()
        .filter(|(name, _)| name != "src/model/build.rs")
        .map(|(name, text)| {
            // The tests in a file may read the environment for the number of cases.
            let product = text.split("#[cfg(test)]\nmod ").next().unwrap().to_owned();
            (name, product)
        })
        .collect();
    check_absent(
        &model,
        &[
            "yew",
            "web_sys",
            "web-sys",
            "js_sys",
            "js-sys",
            "wasm_bindgen",
            "wasm-bindgen",
            "gloo",
            "Instant",
            "SystemTime",
            "std::fs",
            "std::net",
            "std::env",
            "std::process",
            "HashMap",
            "HashSet",
            "println!",
            "eprintln!",
            "dbg!",
        ],
        "the model is pure and the same on every machine",
    );
}

#[test]
fn the_app_computes_no_figure() {
    let app = files("src/app", &["rs"]);
    check_absent(
        &app,
        &[
            "libm",
            ".ln(",
            ".ln_1p(",
            ".log10(",
            ".log2(",
            ".log(",
            ".exp(",
            ".exp2(",
            ".powf(",
            ".powi(",
            ".sin(",
            ".cos(",
            ".tan(",
            ".sin_cos(",
            ".atan2(",
        ],
        "figures are worked out in the model",
    );
    // A `use` may span several lines: treat each as one.
    for (name, text) in &app {
        for statement in text.split(';') {
            let Some(from) = statement.find("leavewell_model") else {
                continue;
            };
            let named: String = statement[from..]
                .chars()
                .filter(|c| !c.is_whitespace())
                .collect();
            for inner in ["maths", "value", "silver", "bench", "treatment"] {
                let taken = [
                    format!("leavewell_model::{inner}::"),
                    format!("leavewell_model::{{{inner}::"),
                    format!(",{inner}::"),
                ];
                assert!(
                    !taken.iter().any(|t| named.contains(t.as_str())),
                    "{name} reaches into the model's {inner}"
                );
            }
        }
    }
}

#[test]
fn screens_are_not_empty_and_contain_no_raw_markup() {
    let app = files("src/app", &["rs"]);
    check_absent(
        &app,
        &[
            "Html::default()",
            "from_html_unchecked",
            "style=",
            "dangerously",
            "inner_html",
        ],
        "no empty returns, no raw markup, no inline styles",
    );
    for (name, text) in &app {
        let squeezed: String = text.chars().filter(|c| !c.is_whitespace()).collect();
        for empty in ["html!{}", "html!()", "html!{<></>}"] {
            assert!(!squeezed.contains(empty), "{name} draws nothing: {empty}");
        }
    }
}

#[test]
fn nothing_points_away_from_this_origin() {
    let sources = files("src", &["rs", "psv", "toml", "js", "mjs"]);
    let site = files(
        "www",
        &["html", "css", "js", "svg", "json", "webmanifest", "txt"],
    );
    for (name, text) in sources.iter().chain(&site) {
        for scheme in ["http://", "https://", "ws://", "wss://"] {
            for (at, _) in text.match_indices(scheme) {
                let target = &text[at + scheme.len()..];
                let ours = ["127.0.0.1", "www.w3.org/"]
                    .iter()
                    .any(|ok| target.starts_with(ok))
                    // The bare scheme, as code compares it.
                    || target.starts_with(['"', '\'', '`']);
                let shown: String = target.chars().take(40).collect();
                assert!(ours, "{name}: {scheme}{shown}");
            }
        }
    }
}

/// A string literal of Rust source.
struct Literal {
    /// The line it begins on.
    line: usize,
    /// The text between its quotes, as written, without line ends that a backslash removes.
    text: String,
    /// The function or macro it is the first argument of: `format!`, `expect`, `class`; empty if there is
    /// none.
    call: String,
    /// Whether it names the classes of an element: the second argument of `el("div", "screen is-wide")`.
    classes: bool,
}

/// String literals of Rust source, including raw ones. Comments, attributes and everything compiled only for
/// tests are left out, because a file's own tests may invent words.
fn literals(text: &str) -> Vec<Literal> {
    let chars: Vec<char> = text.chars().collect();
    let begins = |at: usize, what: &str| {
        what.chars()
            .enumerate()
            .all(|(i, c)| chars.get(at + i) == Some(&c))
    };
    let after = |from: usize, what: &str| {
        let at = (from..chars.len()).find(|at| begins(*at, what));
        at.map_or(chars.len(), |at| at + what.chars().count())
    };
    let (mut found, mut i, mut line) = (Vec::new(), 0, 1);
    while i < chars.len() {
        let mut end = i + 1;
        if begins(i, "//") {
            end = after(i, "\n");
        } else if begins(i, "/*") {
            end = after(i, "*/");
        } else if begins(i, "#[cfg(test)]\nmod tests {") {
            end = after(i, "\n}");
        } else if begins(i, "#[") || begins(i, "#![") {
            let mut depth = 0;
            let closes = |at: &usize| {
                depth += i32::from(chars[*at] == '[') - i32::from(chars[*at] == ']');
                chars[*at] == ']' && depth == 0
            };
            end = (i..chars.len()).find(closes).unwrap_or(i) + 1;
        } else if begins(i, "'\\") {
            // An escaped character, which may be the quote itself.
            end = after(i + 3, "'");
        } else if chars[i] == '\'' && chars.get(i + 2) == Some(&'\'') {
            end = i + 3;
        } else if chars[i] == '"' {
            let hashes = chars[..i].iter().rev().take_while(|c| **c == '#').count();
            let raw = i > hashes && chars[i - hashes - 1] == 'r';
            let stop: String = std::iter::once('"')
                .chain(std::iter::repeat_n('#', if raw { hashes } else { 0 }))
                .collect();
            let mut at = i + 1;
            let mut inside = String::new();
            while at < chars.len() && !begins(at, &stop) {
                if chars[at] == '\\' && !raw {
                    if chars.get(at + 1) == Some(&'\n') {
                        at += 1;
                        while chars.get(at).is_some_and(|c| c.is_whitespace()) {
                            at += 1;
                        }
                        continue;
                    }
                    inside.push(chars[at]);
                    at += 1;
                }
                inside.push(chars[at]);
                at += 1;
            }
            let before: String = chars[i.saturating_sub(80)..i].iter().collect();
            let before = before.trim_end();
            let call = before.strip_suffix('(').unwrap_or("");
            let call = call.rsplit(|c: char| !(c.is_alphanumeric() || "_!".contains(c)));
            found.push(Literal {
                line,
                text: inside,
                call: call.into_iter().next().unwrap_or("").to_owned(),
                classes: follows_a_tag(before),
            });
            end = at + stop.len();
        }
        line += chars[i..end.min(chars.len())]
            .iter()
            .filter(|c| **c == '\n')
            .count();
        i = end;
    }
    found
}

/// Whether source ends after the first argument of `el`, so that class names follow.
fn follows_a_tag(source: &str) -> bool {
    let tag = source.strip_suffix(',').map(str::trim_end);
    let called = tag
        .and_then(|tag| tag.strip_suffix('"'))
        .and_then(|tag| tag.rsplit_once('"'))
        .and_then(|(before, _)| before.trim_end().strip_suffix("el("));
    called.is_some_and(|before| !before.ends_with(|c: char| c.is_alphanumeric() || c == '_'))
}

/// Groups of the ledger's ids.
const GROUPS: [&str; 21] = [
    "attribute",
    "cost",
    "counsel",
    "fee",
    "food",
    "guard",
    "hazard",
    "heat",
    "identity",
    "lead",
    "learn",
    "look",
    "measure",
    "metal",
    "place",
    "plating",
    "silver",
    "solder",
    "value",
    "words",
    "work",
];

#[test]
fn every_group_of_the_ledger_is_listed_here() {
    for figure in Ledger::standard().figures() {
        let group = figure.id.split('.').next().unwrap();
        assert!(
            GROUPS.contains(&group),
            "{} is of no known group",
            figure.id
        );
    }
}

/// An id in the source that the ledger does not have is an error: each id written in the source must exist,
/// and each pattern must begin like an existing id.
#[test]
fn every_figure_and_caution_the_source_names_exists() {
    let ledger = Ledger::standard();
    let plain = |id: &str| {
        id.contains('.')
            && !id.ends_with('.')
            && id
                .chars()
                .all(|c| c.is_ascii_alphanumeric() || "._{}!|".contains(c))
    };
    let mut checked = 0;
    let sources = [
        files("src/model", &["rs"]),
        files("src/pages", &["rs"]),
        files("src/app", &["rs"]),
    ]
    .concat();
    for (name, text) in &sources {
        let ids = literals(text).into_iter().map(|literal| literal.text);
        for id in &ids.filter(|id| plain(id)).collect::<Vec<_>>() {
            let (group, _) = id.split_once('.').unwrap();
            let fixed = id.split('{').next().unwrap();
            if group == "caution" {
                let ok = fixed != id || caution(id).is_some();
                assert!(ok, "{name}: there is no {id}");
                checked += 1;
            } else if GROUPS.contains(&group) {
                let ok = if fixed == id {
                    ledger.find(id).is_some()
                } else {
                    ledger.figures().any(|f| f.id.starts_with(fixed))
                };
                assert!(ok, "{name}: the ledger has no {id}");
                checked += 1;
            }
        }
    }
    assert!(checked > 60, "only {checked} ids were found");
}

/// The same for finding and treatment ids in the source.
#[test]
fn every_finding_and_treatment_the_source_names_exists() {
    let mut checked = 0;
    let sources = [
        files("src/model", &["rs"]),
        files("src/pages", &["rs"]),
        files("src/app", &["rs"]),
    ]
    .concat();
    for (name, text) in &sources {
        for Literal { text: id, .. } in literals(text) {
            let digits = id.get(1..3).is_some_and(|d| {
                d.len() == 2 && d.bytes().all(|b| b.is_ascii_digit()) && id.len() <= 4
            });
            if !digits {
                continue;
            }
            let known = match id.as_bytes()[0] {
                b'T' => Treatment::parse(&id).is_some(),
                b'C' | b'S' | b'M' | b'P' => FindingId::parse(&id).is_some(),
                _ => continue,
            };
            assert!(known, "{name}: {id}");
            checked += 1;
        }
    }
    assert!(checked > 20, "only {checked} ids were found");
}

/// Words that a recipe needs. The program says what is done to a piece and what is lost, never how to do
/// hazardous work.
const RECIPE_WORDS: [&str; 25] = [
    "grams per",
    "grammes per",
    "g per litre",
    "ml per",
    "g/l",
    "mol/l",
    "molar solution",
    "normal solution",
    "% solution",
    "amps",
    "amperes per",
    "a/dm2",
    "volts",
    "current density of",
    "torch setting",
    "flame setting",
    "heat it to",
    "mix one part",
    "parts of water",
    "add the acid",
    "dissolve the",
    "dissolve in",
    "step 1",
    "step one",
    "for ten minutes",
];

#[test]
fn nothing_reads_like_a_recipe() {
    let mut sources = files("src/model/ledger/data", &["psv"]);
    sources.extend(files("src/app", &["rs"]));
    sources.extend(files("src/model", &["rs"]));
    sources.extend(files("src/pages", &["rs"]));
    sources.extend(files("www", &["html"]));
    let lowered: Vec<(String, String)> = sources
        .into_iter()
        .map(|(name, text)| (name, text.to_lowercase()))
        .collect();
    check_absent(&lowered, &RECIPE_WORDS, "no recipes");
    // The same words do detect a recipe.
    let recipe = "Dissolve the salt, 30 g per litre, and set it to two volts.".to_lowercase();
    assert!(RECIPE_WORDS.iter().filter(|w| recipe.contains(**w)).count() == 3);
}

/// Custom properties of each block of the stylesheet that defines a theme. Where the user forces system
/// colours, there is nothing to compute.
fn themes() -> Vec<(bool, BTreeMap<String, [f64; 3]>)> {
    let css = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("www/leavewell.css"));
    let css = css.unwrap();
    css.split('}')
        .filter(|block| block.contains("color-scheme:") && block.contains("--paper:"))
        .map(|block| {
            let body = block.rsplit('{').next().unwrap();
            let dark = body.contains("color-scheme: dark");
            let colours = body
                .split(';')
                .filter_map(|line| {
                    let (name, value) = line.rsplit_once("--")?.1.split_once(':')?;
                    Some((name.trim().to_owned(), rgb(value.trim())?))
                })
                .collect();
            (dark, colours)
        })
        .collect()
}

fn rgb(hex: &str) -> Option<[f64; 3]> {
    let digits = hex.strip_prefix('#').filter(|d| d.len() == 6)?;
    let at = |i: usize| u8::from_str_radix(&digits[i..i + 2], 16).ok();
    Some([at(0)?, at(2)?, at(4)?].map(|c| f64::from(c) / 255.0))
}

/// Contrast ratio (Web Content Accessibility Guidelines 2.2, definition of contrast ratio).
fn contrast(a: [f64; 3], b: [f64; 3]) -> f64 {
    #[allow(clippy::disallowed_methods)] // two decimals are enough; nothing is kept
    let linear = |c: f64| {
        if c <= 0.04045 {
            c / 12.92
        } else {
            ((c + 0.055) / 1.055).powf(2.4)
        }
    };
    let light = |c: [f64; 3]| {
        let [r, g, b] = c.map(linear);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let (x, y) = (light(a), light(b));
    (x.max(y) + 0.05) / (x.min(y) + 0.05)
}

#[test]
fn the_contrast_formula_matches_the_standard() {
    // Black on white is 21 to 1 by definition; #777777 on white is 4.48, computed by hand.
    let colour = |hex| rgb(hex).unwrap();
    assert!((contrast(colour("#000000"), colour("#ffffff")) - 21.0).abs() < 1e-9);
    assert!((contrast(colour("#777777"), colour("#ffffff")) - 4.48).abs() < 0.005);
}

/// Text needs 4.5 to 1 and lines that carry meaning 3 to 1 (WCAG 2.2, 1.4.3 and 1.4.11).
#[test]
fn colours_have_enough_contrast_with_the_page() {
    let themes = themes();
    assert!(
        themes.iter().any(|(dark, _)| *dark) && themes.iter().any(|(dark, _)| !dark),
        "a light and a dark theme"
    );
    for (dark, colours) in &themes {
        let of = |name: &str| {
            *colours
                .get(name)
                .unwrap_or_else(|| panic!("--{name} is not set (dark: {dark})"))
        };
        let check = |name: &str, ground: &str, least: f64| {
            let ratio = contrast(of(name), of(ground));
            assert!(
                ratio >= least,
                "--{name} on --{ground} (dark: {dark}) is only {ratio:.2}"
            );
        };
        for ground in ["paper", "sheet"] {
            for name in ["ink", "ink-quiet", "act", "copper", "stop", "care", "good"] {
                check(name, ground, 4.5);
            }
            check("edge", ground, 3.0);
            check("copper-fill", ground, 2.95);
        }
        // Areas are distinguished by their outline.
        check("outline", "silver-fill", 3.0);
        for metal in ["copper", "tin", "nickel", "brass", "rust", "bright"] {
            check("outline", &format!("{metal}-fill"), 3.0);
        }
    }
    // The dark theme is defined twice, for the system's choice and for the user's; the two are equal.
    let dark: Vec<_> = themes.iter().filter(|(dark, _)| *dark).collect();
    assert!(dark.windows(2).all(|pair| pair[0].1 == pair[1].1));
}

/// The text between quotes after each occurrence of this beginning.
fn quoted<'a>(text: &'a str, beginning: &'a str) -> Vec<&'a str> {
    text.split(beginning)
        .skip(1)
        .map(|rest| rest.split('"').next().unwrap())
        .collect()
}

/// The sheet of drawings: exactly one for each finding, in the ledger's order, and nothing that the page's
/// policy would block or that refers outside the file.
#[test]
fn every_finding_is_drawn() {
    let sheet = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/looks.svg");
    let sheet = fs::read_to_string(sheet).unwrap();
    let drawn = quoted(&sheet, "<symbol id=\"");
    let known: Vec<&str> = findings().iter().map(|f| f.id.text()).collect();
    assert_eq!(drawn, known);

    for symbol in sheet.split("<symbol ").skip(1) {
        let (head, body) = symbol.split_once('>').unwrap();
        let body = body.split("</symbol>").next().unwrap();
        assert!(head.ends_with("viewBox=\"0 0 240 90\""), "{head}");
        let halves: Vec<&str> = body.split("<g transform=\"translate(").collect();
        assert_eq!(halves.len(), 3, "two halves: {head}");
        assert_ne!(halves[1], halves[2], "{head}");
    }

    // A single syntax error stops browsers from drawing any of it.
    for (opened, closed) in [("<g", "</g>"), ("<symbol", "</symbol>"), ("<!--", "-->")] {
        let count = |word: &str| sheet.matches(word).count();
        assert_eq!(count(opened), count(closed), "{opened} and {closed}");
    }
    for comment in sheet.split("<!--").skip(1) {
        let comment = comment.split("-->").next().unwrap();
        assert!(!comment.contains("--"), "two hyphens in: {comment}");
    }

    // Comments may mention what the drawings must not contain.
    let drawings: String = sheet
        .split("<!--")
        .map(|part| part.split_once("-->").map_or(part, |(_, after)| after))
        .collect();
    for word in [
        "style", "class", "script", "<text", "<image", "<a ", "url(", "data:", " on",
    ] {
        assert!(!drawings.contains(word), "the drawings hold {word}");
    }
    let ids = quoted(&drawings, " id=\"");
    let all: std::collections::BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(all.len(), ids.len(), "an id stands twice");
    for target in quoted(&drawings, "href=\"") {
        let id = target.strip_prefix('#').unwrap();
        assert!(all.contains(id), "nothing is called {id}");
    }

    // Each colour named is one that the themes define.
    let themes = themes();
    for colour in drawings.split("var(--").skip(1) {
        let name = colour.split(')').next().unwrap();
        assert!(
            themes.iter().all(|(_, set)| set.contains_key(name)),
            "{name}"
        );
    }
    assert!(sheet.len() < 160_000, "{} bytes", sheet.len());
}

/// A screen with the code that only it uses: `pages/counsel.rs` with `pages/counsel/`.
fn screens() -> BTreeMap<String, String> {
    let mut screens: BTreeMap<String, String> = BTreeMap::new();
    for (name, text) in files("src/app/pages", &["rs"]) {
        let inside = name.strip_prefix("src/app/pages/").unwrap();
        let screen = inside.split(['/', '.']).next().unwrap().to_owned();
        let code = text.split("#[cfg(test)]").next().unwrap();
        screens.entry(screen).or_default().push_str(code);
    }
    screens.remove("mod");
    screens
}

/// Signs that a screen names treatments: their ids, or the model's lists of them.
fn names_treatments(code: &str) -> bool {
    let by_id = Treatment::ALL
        .iter()
        .any(|t| code.contains(&format!("\"{}\"", t.id())));
    let by_list = [
        ".courses",
        ".options",
        "treatment_text",
        "Treatment::",
        "counsel.sentence",
        "counsel.steps",
    ];
    by_id || by_list.iter().any(|sign| code.contains(sign))
}

#[test]
fn a_screen_that_names_a_treatment_shows_its_cautions() {
    let screens = screens();
    assert!(screens.len() >= 6, "{:?}", screens.keys());
    let mut naming = 0;
    for (screen, code) in &screens {
        if names_treatments(code) {
            naming += 1;
            assert!(
                code.contains("cautions(") || code.contains("cautions_of("),
                "the screen {screen} names treatments without their cautions"
            );
        }
    }
    assert!(naming >= 2, "no screen was found to name a treatment");
}

/// The line that defers to codes and people is in the shell, and so on every screen.
#[test]
fn the_shell_defers_on_every_screen() {
    let shell = files("src/app", &["rs"])
        .into_iter()
        .find(|(name, _)| name == "src/app/shell.rs")
        .unwrap()
        .1;
    assert!(shell.contains("caution.deferral"));
}

/// The fixed texts that every owner sees unchanged.
#[test]
fn fixed_texts_exist() {
    for id in [
        "caution.deferral",
        "caution.display_only",
        "caution.child",
        "caution.lead",
        "caution.corrosion",
        "caution.sealed",
        "caution.mercury",
    ] {
        assert!(caution(id).is_some_and(|c| c.text.len() > 20), "{id}");
    }
}

/// Whether a literal consists of words that a user reads: two adjacent words, a label (one word with a
/// capital), or a separate word beside a placeholder. Ids, paths, units, drawings and class names are not.
fn is_wording(literal: &str) -> bool {
    // Escapes are not letters, and a placeholder counts as a separate word.
    let mut plain = String::new();
    let mut chars = literal.chars();
    while let Some(c) = chars.next() {
        match c {
            '\\' => match chars.next() {
                Some('u') => drop(chars.by_ref().find(|c| *c == '}')),
                Some(kept @ ('"' | '\'')) => plain.push(kept),
                _ => plain.push(' '),
            },
            '{' => {
                chars.by_ref().find(|c| *c == '}');
                plain.push('\u{fffc}');
            }
            c => plain.push(c),
        }
    }
    let bare = |word: &str| -> Option<String> {
        let word = word.trim_matches(|c: char| ".,:;!?()[]\"'“”…".contains(c));
        // The end of an id, such as "-hint", is not a word.
        let letters = word.chars().all(|c| c.is_alphabetic() || "-'’".contains(c));
        (letters
            && !word.starts_with('-')
            && word.chars().filter(|c| c.is_alphabetic()).count() > 1)
            .then(|| word.to_owned())
    };
    let words: Vec<Option<String>> = plain.split_whitespace().map(bare).collect();
    let side_by_side = words
        .windows(2)
        .any(|pair| pair.iter().all(Option::is_some));
    let label = words.len() == 1
        && words[0].as_ref().is_some_and(|word| {
            let mut letters = word.chars();
            letters.next().is_some_and(char::is_uppercase) && letters.all(|c| !c.is_uppercase())
        });
    let spaced = plain.contains(' ');
    let free = words.iter().flatten().any(|word| {
        let small = word.chars().all(|c| c.is_lowercase() || "-'’".contains(c));
        spaced && small && word.chars().count() >= 4
    });
    side_by_side || label || free
}

/// Whether a literal lists class names or element ids: each has a hyphen, or one names a state, such as
/// `is-open`.
fn lists_names(literal: &str) -> bool {
    let names: Vec<&str> = literal.split_whitespace().collect();
    let plain = |name: &&str| {
        name.chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
    };
    let hyphens = !names.is_empty() && names.iter().all(|name| name.contains('-'));
    names.iter().all(plain) && (hyphens || names.iter().any(|name| name.starts_with("is-")))
}

/// Calls whose words only a developer reads.
const DEVELOPER_CALLS: [&str; 7] = [
    "expect",
    "panic!",
    "unreachable!",
    "todo!",
    "assert!",
    "debug_assert!",
    "expect_err",
];

/// Fails if wording occurs in files whose names begin with `code`, except those that begin with `wording`.
fn check_wording(code: &str, wording: &str, exceptions: &[(&str, &str, &str)]) {
    let (folder, _) = code.rsplit_once('/').unwrap();
    let mut files = files(folder, &["rs"]);
    files.retain(|(name, _)| {
        name.starts_with(code) && !name.starts_with(wording) && !name.ends_with("/tests.rs")
    });
    assert!(!files.is_empty(), "no files begin like {code}");
    let faults = wording_faults(&files, exceptions);
    assert!(
        faults.is_empty(),
        "these belong in {wording}:\n{}",
        faults.join("\n")
    );
}

/// Every text in these files that a user reads. An exception is the end of a file's name, the beginning of
/// the text and its reason; an exception that is no longer needed is also a fault.
fn wording_faults(files: &[(String, String)], exceptions: &[(&str, &str, &str)]) -> Vec<String> {
    let mut used = vec![false; exceptions.len()];
    let mut faults = Vec::new();
    for (name, source) in files {
        for literal in literals(source) {
            let Literal { line, text, .. } = &literal;
            let developers = DEVELOPER_CALLS.contains(&literal.call.as_str());
            if developers || literal.classes || lists_names(text) || !is_wording(text) {
                continue;
            }
            let excepted = |(file, begins, _): &(&str, &str, &str)| {
                // A folder covers all its files.
                let here = name.ends_with(file) || file.ends_with('/') && name.contains(file);
                here && text.starts_with(begins)
            };
            match exceptions.iter().position(excepted) {
                Some(at) => used[at] = true,
                None => faults.push(format!("{name}:{line}: \"{text}\"")),
            }
        }
    }
    for ((file, begins, why), used) in exceptions.iter().zip(used) {
        if !used {
            faults.push(format!(
                "{file}: no \"{begins}\" needs an exception ({why})"
            ));
        }
    }
    faults
}

#[test]
fn the_words_of_pages_are_in_their_folder() {
    let symbols = [
        "Pb", "Cd", "As", "Hg", "Cu", "Ni", "Ag", "Sn", "Sb", "Zn", "Fe", "Al", "Co", "Cr", "Mn",
        "Tl",
    ];
    let mut exceptions = vec![
        ("/markup.rs", "<", "markup"),
        ("/markup.rs", "said ", "two classes of the style sheet"),
    ];
    exceptions.extend(symbols.map(|symbol| ("/food.rs", symbol, "a chemical symbol")));
    check_wording("src/pages/", "src/pages/wording/", &exceptions);
}

#[test]
fn the_words_of_the_counsel_are_in_their_folder() {
    check_wording(
        "src/model/counsel/",
        "src/model/counsel/wording/",
        &[(
            "/shared.rs",
            "another scramble",
            "a reason that is never shown",
        )],
    );
}

/// The code in these folders without the tests of each file.
fn code_of(folders: &[&str]) -> Vec<(String, String)> {
    folders
        .iter()
        .flat_map(|folder| files(folder, &["rs"]))
        .filter(|(name, _)| !name.ends_with("tests.rs"))
        .map(|(name, text)| {
            let code = text.split("#[cfg(test)]\nmod tests {").next();
            (name, code.unwrap_or_default().to_owned())
        })
        .collect()
}

/// Only the record converts text into values, with one range and one message. Pages and screens show text as
/// typed and read typed values.
#[test]
fn pages_and_screens_parse_no_numbers() {
    check_absent(
        &code_of(&["src/pages", "src/app"]),
        &[
            "decimal(",
            "typed_number",
            ".parse()",
            ".parse::<",
            "from_str_radix",
            "parse(&draft.text",
        ],
        "text is parsed outside the record",
    );
}

/// A field of the schema that no code reads is useless. The last name of its path must occur in the reader, a
/// page or a screen.
#[test]
fn every_field_of_the_schema_is_read_by_name() {
    // From version 2: kept in the file and compared, but not yet used by any screen.
    let kept = [
        "findings[].from",
        "comparables[].of",
        "parts[].spots",
        "done[].bill_no",
        "done[].method",
        "done[].deviations",
        "done[].kept",
        "done[].bad",
    ];
    let code: String = code_of(&["src/model/record", "src/pages", "src/app"])
        .into_iter()
        .filter(|(name, _)| !name.starts_with("src/model/record/schema"))
        .map(|(_, code)| code)
        .collect();
    let asked_for = |path: &str| {
        let last = path.rsplit('.').next().unwrap();
        // In quotes, at the end of a path, or before a suffix that a page adds.
        ["\"", ".", "_"].iter().any(|before| {
            ["\"", "["]
                .iter()
                .any(|after| code.contains(&format!("{before}{last}{after}")))
        }) || last
            .split_once('_')
            .is_some_and(|(_, unit)| code.contains(&format!("\"_{unit}\"")))
    };
    let unasked: Vec<&str> = FIELDS
        .iter()
        .map(|field| field.path)
        .filter(|path| !kept.contains(path) && !asked_for(path))
        .collect();
    assert!(unasked.is_empty(), "{unasked:?}");
}

#[test]
fn the_words_of_reading_a_record_are_in_their_file() {
    check_wording(
        "src/model/record/reading",
        "src/model/record/reading/wording.rs",
        &[],
    );
}

#[test]
fn the_words_that_the_road_records_are_in_their_file() {
    check_wording("src/model/road/", "src/model/road/wording.rs", &[]);
}

/// A rule and its reason, a kind and its name, an entry and its label belong together. Other words may not
/// occur in the model outside the folders above.
#[test]
fn elsewhere_in_the_model_words_occur_only_with_what_they_name() {
    let folders = [
        "src/pages/",
        "src/model/counsel/",
        "src/model/record/reading",
        "src/model/road/",
    ];
    let rest: Vec<(String, String)> = files("src/model/", &["rs"])
        .into_iter()
        .filter(|(name, _)| !folders.iter().any(|folder| name.starts_with(folder)))
        .collect();
    let with_what_they_name = [
        ("bench/alloy.rs", "", "names of the metals in its table"),
        ("record/open_error.rs", "", "why a file is no case"),
        ("record/own_figures.rs", "", "why a file is none of figures"),
        ("record/schema/fields.rs", "", "the labels of its fields"),
        ("terms/vocabulary.rs", "", "the labels of its entries"),
        (
            "ledger/catalogue_text.rs",
            "",
            "faults in the data, for developers",
        ),
        ("ledger/duty.rs", "", "how a limit is qualified"),
        ("ledger/figure.rs", "", "the names of its tags"),
        (
            "ledger/finding.rs",
            "",
            "faults in the data, for developers",
        ),
        ("ledger/meaning_of_words.rs", "", "it is a list of words"),
        ("ledger/mod.rs", "", "faults in the data, for developers"),
        ("ledger/rule.rs", "", "faults in the data, for developers"),
        ("ledger/table.rs", "", "faults in the data, for developers"),
        (
            "ledger/treatment_text.rs",
            "",
            "faults in the data, for developers",
        ),
        ("identity/build.rs", "", "names of builds and surfaces"),
        (
            "identity/contradiction.rs",
            "",
            "why two findings do not agree",
        ),
        ("identity/dates.rs", "", "how a range of years is said"),
        ("identity/identified.rs", "", "how settled an identity is"),
        (
            "terms/kind.rs",
            "",
            "names of kinds and families, and what they mean",
        ),
        ("identity/measure.rs", "", "what a reading says"),
        ("silver/chart.rs", "", "names of the patterns"),
        ("terms/shares.rs", "", "here numbers become text"),
        ("terms/ordinal.rs", "", "here numbers of pieces become text"),
        ("terms/lists.rs", "", "here lists become text"),
        ("terms/capital.rs", "", "a name that keeps its capital"),
        ("terms/treatment.rs", "", "the names of its codes"),
        ("record/circumstances.rs", "", "the questions it asks"),
        (
            "record/sale_law.rs",
            "",
            "what the law may ask before a sale",
        ),
        ("/build.rs", "", "the code that the build script writes"),
        (
            "ledger/proposal.rs",
            "",
            "faults in the data, for developers",
        ),
        ("identity/parting.rs", "", "what two looks leave open"),
        ("identity/surety.rs", "", "the degrees of sureness"),
        ("model/report.rs", "", "how an open range of years reads"),
        ("terms/fault.rs", "", "the names of faults"),
        ("treatment/list/", "", "why there is nothing to do"),
        (
            "treatment/rules/",
            "",
            "the reasons of the rules, and what lifts them",
        ),
        ("treatment/situation.rs", "", "the reasons for display only"),
        ("treatment/testing.rs", "", "a stand-in for tests"),
    ];
    let faults = wording_faults(&rest, &with_what_they_name);
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_words_of_screens_are_in_their_folder() {
    check_wording(
        "src/app/",
        "src/app/wording/",
        &[
            ("parts/words.rs", "", "here numbers become text"),
            (
                "platform/page.rs",
                "main h1",
                "a place in the page: its heading",
            ),
            (
                "platform/page.rs",
                "input, select",
                "a place in the page: a field",
            ),
        ],
    );
}

#[test]
fn words_left_in_a_screen_are_found() {
    let found = |source: &str, exceptions: &[(&str, &str, &str)]| {
        wording_faults(&[("made/up.rs".to_owned(), source.to_owned())], exceptions)
    };
    let screen = r#"el("p", "hint is-open").attr("id", "piece-hint").text("Say how high it is.")"#;
    let fault = "made/up.rs:1: \"Say how high it is.\"";
    assert_eq!(found(screen, &[]), [fault]);
    let excepted = ("up.rs", "Say how", "made up");
    assert!(found(screen, &[excepted]).is_empty());
    // An exception for another file or another text does not cover the fault, and is itself reported.
    for other in [
        ("down.rs", "Say how", "made up"),
        ("up.rs", "Tell how", "made up"),
    ] {
        let faults = found(screen, &[other]);
        assert_eq!(faults.len(), 2, "{faults:?}");
        assert_eq!(faults[0], fault);
        assert!(faults[1].contains("needs an exception"), "{}", faults[1]);
    }
    // The same words as class names, as the words of an element, and for a developer.
    for (source, count) in [
        (r#"el("fieldset", "choice reader")"#, 0),
        (r#"el("p", "").tag("strong", "choice reader")"#, 1),
        (r#"panel("p", "choice reader")"#, 1),
        (r#"el(tag, "choice reader")"#, 1),
        (r#"x.expect("choice reader")"#, 0),
        (r#"let class = "caution is-stop";"#, 0),
        (r#"let label = "Caution";"#, 1),
        (r#"let label = "no value given";"#, 1),
    ] {
        assert_eq!(found(source, &[]).len(), count, "{source}");
    }
}

#[test]
fn class_names_are_distinguished_from_words() {
    for names in [
        "is-open",
        "chart-name chart-over",
        "caution is-stop",
        " is-lit",
        "piece-drawing-title piece-drawing-desc",
    ] {
        assert!(lists_names(names), "{names}");
    }
    for words in [
        "",
        "choice reader",
        "a half-open lid",
        "Close-plated is-open",
        "This is open",
    ] {
        assert!(!lists_names(words), "{words}");
    }
}

#[test]
fn words_are_distinguished_from_other_text() {
    for words in [
        "What is not known",
        "Cost",
        "Cost:",
        "No",
        " Signs of it: {}.",
        "{} across",
        "about {middle}",
        "{count} entries",
        "The record says \\\"{}\\\".",
        "Ce n'est rien",
    ] {
        assert!(is_wording(words), "{words}");
    }
    for other in [
        "",
        "sheet.cautions",
        "bench.heat.thickness_mm",
        "parts[part={}].{field}",
        "caution.{}",
        "not_needed",
        "S08",
        "RFP",
        "mm",
        "°C",
        "{} mg/kg",
        "{x:.0} mm",
        "{} cm²",
        " ({when})",
        "; ",
        "M{a} {top}H{b}V{}H{a}Z",
        "M{x:.1} {y:.1}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z",
        "<ul>\\n",
        " class=\\\"",
        "copper-line",
        "-hint ",
        "\\u{2009}",
    ] {
        assert!(!is_wording(other), "{other}");
    }
}

#[test]
fn literals_are_found_wherever_they_occur() {
    let source = r##"
//! A comment with "words of its own".
#[doc = "An attribute with words."] // and a comment
fn page<'a>(x: &'a str) -> Block {
    let quote = '"'; /* "no literal here" */
    let escaped = '\'';
    say("A sentence that \
         goes on.", r#"raw "words" too"#);
    x.expect("a developer reads this");
    format!("{x} \"said\" that")
}
#[cfg(test)]
mod tests {
    const INVENTED: &str = "Words of a test {";
}
const AFTER: &str = "After the tests";
"##;
    let found: Vec<(usize, String, String)> = literals(source)
        .into_iter()
        .map(|l| (l.line, l.call, l.text))
        .collect();
    let expected = [
        (7, "say", "A sentence that goes on."),
        (8, "", r#"raw "words" too"#),
        (9, "expect", "a developer reads this"),
        (10, "format!", r#"{x} \"said\" that"#),
        (16, "", "After the tests"),
    ];
    let expected = expected.map(|(n, call, text)| (n, call.to_owned(), text.to_owned()));
    assert_eq!(found, expected);
}
