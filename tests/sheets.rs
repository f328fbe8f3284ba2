//! The sheets, the ledger page and the record of work done, for every worked example, an empty case, and a case
//! full of hostile text.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use std::collections::BTreeMap;
use std::path::Path;

use leavewell_model::Draft;
use leavewell_model::ledger::{FindingId, Ledger, Tag, caution};
use leavewell_model::terms::Treatment;
use leavewell_pages::markdown::markdown;
use leavewell_pages::markup::markup;
use leavewell_pages::sheet_text::{Form, Recipient, sheet_text};
use leavewell_pages::{Block, EntryField, PageName, Subject};
use serde_json::Value;

const SHEETS: [PageName; 4] = [
    PageName::SheetForClient,
    PageName::SheetForBuyer,
    PageName::SheetForFile,
    PageName::SheetForConservation,
];

fn cases() -> BTreeMap<String, Draft> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "json"))
        .map(|path| {
            let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
            let text = std::fs::read_to_string(&path).unwrap();
            (name, Draft::parse(&text).unwrap())
        })
        .collect()
}

fn case(name: &str) -> Draft {
    cases().remove(name).unwrap()
}

fn draft(rest: &str) -> Draft {
    Draft::parse(&format!(
        r#"{{"format":"leavewell-case","version":1{rest}}}"#
    ))
    .unwrap()
}

/// The readable text of these blocks, in order, one line each.
fn lines(blocks: &[Block]) -> Vec<String> {
    let mut out = Vec::new();
    let value = serde_json::to_value(blocks).unwrap();
    collect(&value, &mut out);
    out
}

const SHOWN: [&str; 13] = [
    "title",
    "text",
    "items",
    "rows",
    "caption",
    "columns",
    "label",
    "summary",
    "description",
    "hint",
    "problem",
    "missing",
    "blocks",
];

/// The nested content: blocks by type, and the marks of a picture.
const BLOCKS: [&str; 19] = [
    "Section",
    "Para",
    "List",
    "Facts",
    "Table",
    "Picture",
    "HeatOnPiece",
    "Field",
    "Choice",
    "Fold",
    "Lines",
    "Row",
    "Photos",
    "PlacesOnPiece",
    "Ticks",
    "Text",
    "Path",
    "table",
    "marks",
];

fn collect(value: &Value, out: &mut Vec<String>) {
    match value {
        Value::String(text) => out.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| collect(item, out)),
        Value::Object(fields) => {
            for (name, value) in fields {
                if SHOWN.contains(&name.as_str()) || BLOCKS.contains(&name.as_str()) {
                    collect(value, out);
                }
            }
        }
        _ => {}
    }
}

fn page(name: PageName, draft: &Draft) -> Vec<Block> {
    name.blocks(&Subject::new(draft.clone()))
}

fn words(name: PageName, draft: &Draft) -> String {
    lines(&page(name, draft)).join("\n")
}

/// The sheets match the accepted ones. `LEAVEWELL_ACCEPT=1 cargo test --test sheets as_accepted` rewrites
/// them; review the difference.
#[test]
fn sheets_are_as_accepted() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/sheets");
    let accepts = std::env::var_os("LEAVEWELL_ACCEPT").is_some();
    for name in [
        "daily_teapot",
        "replated_coffee_pot",
        "worn_tray",
        "pair_of_candlesticks",
    ] {
        for recipient in Recipient::ALL {
            let path = folder.join(format!("{name}.{}.md", recipient.id()));
            let now = sheet_text(&Subject::new(case(name)), recipient, Form::Markdown);
            if accepts {
                std::fs::create_dir_all(&folder).unwrap();
                std::fs::write(&path, &now).unwrap();
            }
            let before = std::fs::read_to_string(&path).unwrap();
            let mut both = now.lines().zip(before.lines());
            let first = both.find(|(now, before)| now != before);
            assert_eq!(first, None, "{} (now, accepted)", path.display());
            assert_eq!(
                now.lines().count(),
                before.lines().count(),
                "{}",
                path.display()
            );
        }
    }
}

fn para_of(blocks: &[Block], section: &str) -> String {
    blocks
        .iter()
        .find_map(|block| match block {
            Block::Section { id, blocks, .. } if id == section => match blocks.first() {
                Some(Block::Para { text, .. }) => Some(text.clone()),
                _ => None,
            },
            _ => None,
        })
        .unwrap_or_else(|| panic!("there is no {section}"))
}

fn buyer(draft: &Draft) -> [String; 2] {
    let blocks = page(PageName::SheetForBuyer, draft);
    [
        para_of(&blocks, "buyer.ticket"),
        para_of(&blocks, "buyer.catalogue"),
    ]
}

const HOSTILE: &str = "</dd></style><script>alert(1)</script><img src=x onerror=y> [l](javascript:1) | `c` &amp; \u{202e}rtl\u{0}";

/// A record with hostile text in every text field.
fn hostile() -> Draft {
    let mut draft = case("leaking_teapot");
    for path in [
        "piece.name",
        "looked.by",
        "looked.on",
        "looked.described",
        "parts[part=body].note",
        "parts[part=body].photos",
        "done[0].what",
        "done[0].by",
        "done[0].on",
        "done[0].materials",
        "done[0].before",
        "done[0].after",
        "done[0].method",
        "done[0].deviations",
        "done[0].kept",
        "parts[part=body].spots[id=e1].note",
        "parts[part=body].spots[id=e2].fault",
        "strange.field",
    ] {
        draft.set(path, HOSTILE);
    }
    draft.set("parts[part=body].spots[id=e1].fault", "other");
    draft.set("overrides.{fee.lot}.value", "12");
    draft.set("overrides.{fee.lot}.reason", HOSTILE);
    draft.set("overrides.{no.such}.value", HOSTILE);
    draft.set("parts[part=handle].replaced", HOSTILE);
    draft
}

#[test]
fn every_sheet_is_made_for_every_case() {
    let mut all = cases();
    assert!(all.len() >= 8);
    all.insert("hostile".to_owned(), hostile());
    for (name, draft) in &all {
        for sheet in SHEETS {
            let text = words(sheet, draft);
            // A buyer's sheet fits on one page, and a record of condition is as long as what is recorded.
            let least = match sheet {
                PageName::SheetForBuyer | PageName::SheetForConservation => 1000,
                _ => 2000,
            };
            assert!(text.len() > least, "{name} {sheet:?}");
            assert!(
                !text.contains("NaN") && !text.contains("inf "),
                "{name} {sheet:?}"
            );
        }
    }
}

#[test]
fn an_empty_case_says_what_is_missing_and_guesses_nothing() {
    for empty in [
        draft(""),
        draft(r#","findings":[{"id":"C01","answer":"unsure"}]"#),
    ] {
        for sheet in SHEETS {
            let text = words(sheet, &empty);
            for missing in [
                "What sort of piece it is.",
                "How it is made: no look is recorded.",
                "The condition of its parts is not recorded.",
                "no test is recorded",
            ] {
                assert!(text.contains(missing), "{sheet:?}: {missing}");
            }
            for guess in [
                "robably",
                "likeliest",
                "Undamaged",
                "plated ware",
                "Fused plate:",
            ] {
                assert!(!text.contains(guess), "{sheet:?}: {guess}");
            }
        }
        assert!(
            words(PageName::SheetForClient, &empty).contains("Too little is recorded to advise")
        );
        let [ticket, catalogue] = buyer(&empty);
        assert!(ticket.contains("Not examined") && ticket.contains("Not tested for lead"));
        assert!(catalogue.contains("has not been examined"));
    }
    // One answer is enough for a conclusion.
    let looked = draft(r#","findings":[{"id":"C01","answer":"seen"}]"#);
    assert!(!words(PageName::SheetForClient, &looked).contains("Too little is recorded"));
}

/// A hazard that is recorded is named on the sheets, also where it is all that is recorded.
#[test]
fn a_hazard_is_named_on_sheets_however_little_else_is_recorded() {
    let hot_work = caution("caution.T09").unwrap().text;
    let sheets = [PageName::SheetForClient, PageName::SheetForFile];
    let nothing = draft("");
    for (path, _) in leavewell_model::record::QUESTIONS {
        let mut recorded = nothing.clone();
        recorded.set(path, "yes");
        for sheet in sheets {
            let text = words(sheet, &recorded);
            assert!(text.contains(hot_work), "{path}");
        }
    }
    assert!(!words(PageName::SheetForClient, &nothing).contains(hot_work));
}

/// The treatments named in a text, as whole words.
fn named(text: &str) -> Vec<Treatment> {
    let text = text.to_lowercase();
    // The coat that is on a piece is not the work of lacquering.
    let coat = |at: usize| {
        ["old ", "broken "]
            .iter()
            .any(|adjective| text[..at].ends_with(adjective))
    };
    let alone = |at: usize, len: usize| {
        let before = text[..at].chars().next_back();
        let after = text[at + len..].chars().next();
        !before.is_some_and(char::is_alphanumeric) && !after.is_some_and(char::is_alphanumeric)
    };
    Treatment::ALL
        .into_iter()
        .filter(|t| {
            let name = t.name().to_lowercase();
            text.match_indices(&name)
                .any(|(at, m)| alone(at, m.len()) && !(*t == Treatment::Lacquer && coat(at)))
        })
        .collect()
}

#[test]
fn no_sheet_names_a_treatment_without_its_caution_and_the_deferral_line() {
    let deferral = caution("caution.deferral").unwrap().text;
    let mut all = cases();
    let mut worked = draft("");
    for (place, treatment) in Treatment::ALL.iter().enumerate() {
        worked.set(&format!("done[{place}].what"), treatment.id());
    }
    all.insert("everything done".to_owned(), worked);
    all.insert("empty".to_owned(), draft(""));
    let mut seen = 0;
    for (name, draft) in &all {
        for shown in [
            PageName::SheetForClient,
            PageName::SheetForBuyer,
            PageName::SheetForFile,
            PageName::SheetForConservation,
            PageName::Done,
            PageName::Ledger,
            PageName::Trace,
            PageName::Closer,
        ] {
            let blocks = page(shown, draft);
            let text = lines(&blocks).join("\n");
            assert!(text.contains(deferral), "{name} {shown:?}");
            // A caution and the glossary may use the everyday word "lacquer".
            let own: Vec<Block> = blocks
                .into_iter()
                .filter(|b| !matches!(b, Block::Section { id, .. } if id.starts_with("sheet.")))
                .collect();
            // So does the row on the coat of a part.
            let own = lines(&own).into_iter().filter(|line| line != "Lacquer");
            for treatment in named(&own.collect::<Vec<String>>().join("\n")) {
                seen += 1;
                let id = format!("caution.{}", treatment.id());
                assert!(
                    text.contains(caution(&id).unwrap().text),
                    "{name} {shown:?}: {}",
                    treatment.name()
                );
            }
        }
        // Every caution on the screen is also on the client's sheet and the file sheet.
        let (case, problems) = draft.read();
        let report = leavewell_model::counsel::weigh_at_once(&case, problems);
        if !leavewell_model::record::is_enough_to_advise(&case) {
            // The screen shows none of them either.
            continue;
        }
        for sheet in [PageName::SheetForClient, PageName::SheetForFile] {
            let text = words(sheet, draft);
            for c in &report.cautions {
                assert!(text.contains(&c.text), "{name} {sheet:?}: {}", c.id);
            }
        }
    }
    assert!(seen > 200, "{seen}");
}

#[test]
fn the_buyers_sheet_states_recorded_seen_or_probable_replating() {
    // Probable from the findings.
    let probable = case("replated_coffee_pot");
    for text in buyer(&probable) {
        // A ticket says it once, together with what the piece is.
        let is_said = text.to_lowercase().contains("re-plat")
            || text.contains("fused plate, electroplated later");
        assert!(is_said, "{text}");
    }
    // Recorded as done.
    let mut recorded = case("worn_tray");
    for text in buyer(&recorded) {
        assert!(!text.to_lowercase().contains("re-plat"), "{text}");
    }
    recorded.set("done[0].what", "T14a");
    recorded.set("done[0].on", "1998");
    for text in buyer(&recorded) {
        assert!(
            text.contains("Re-plated") && text.contains("1998"),
            "{text}"
        );
    }
    assert!(words(PageName::SheetForFile, &recorded).contains("One of the two is wrong"));
    // Plated only in places.
    recorded.set("done[0].what", "T13a");
    for text in buyer(&recorded) {
        assert!(text.contains("Re-plated in places"), "{text}");
    }
    // Seen, whatever the probability.
    let mut seen = case("worn_tray");
    seen.set_answer(FindingId::S08, "seen", "");
    for text in buyer(&seen) {
        assert!(text.to_lowercase().contains("re-plat"), "{text}");
    }
}

/// Checks that a field adds something to the buyer's sheet: ticket, then catalogue.
#[track_caller]
fn told(path: &str, typed: &str, words: [&str; 2]) {
    let mut draft = case("daily_teapot");
    let without = buyer(&draft);
    draft.set(path, typed);
    for ((text, before), words) in buyer(&draft).iter().zip(&without).zip(words) {
        let found = |text: &str| text.to_lowercase().contains(words);
        assert!(found(text), "{path} {typed}: {text}");
        assert!(!found(before), "{path} {typed}, before: {before}");
    }
}

#[test]
fn the_buyers_sheet_states_hazards_and_failing_work() {
    told(
        "parts[part=spout].repair",
        "failing",
        [
            "old repair failing: spout",
            "an old repair is failing: spout",
        ],
    );
    told(
        "parts[part=foot].split",
        "through",
        [
            "split through the metal: foot",
            "split through the metal: foot",
        ],
    );
    told(
        "parts[part=foot].split",
        "crease",
        ["creased: foot", "not through the metal: foot"],
    );
    told(
        "parts[part=interior].gilding",
        "worn",
        ["gilding worn", "gilding worn or gone"],
    );
    told(
        "parts[part=handle].material",
        "ivory",
        ["ivory: handle", "the law may forbid its sale"],
    );
    told(
        "catalogue.fire_gilding",
        "yes",
        ["may contain mercury", "may contain mercury"],
    );
    told(
        "catalogue.hard_repair",
        "yes",
        ["may contain cadmium", "may contain cadmium"],
    );
    told(
        "catalogue.insulator",
        "yes",
        ["may be asbestos", "may be asbestos"],
    );
}

#[test]
fn the_buyers_sheet_states_repairs_lead_and_replaced_parts() {
    let joint = "parts[part=spout].joint";
    told(
        joint,
        "neat_repair",
        ["old repair: spout", "neatly repaired"],
    );
    told(joint, "grey_repair", ["old grey repair", "grey metal"]);
    told(
        joint,
        "leaking",
        [
            "open, loose or leaking: spout",
            "open, loose or leaking: spout",
        ],
    );
    told(
        "parts[part=foot].fill",
        "lead",
        ["lead filling", "filled with lead"],
    );
    told(
        "parts[part=foot].lead",
        "present",
        ["lead found by a test", "a test found lead"],
    );
    let replaced = "parts[part=finial].replaced";
    told(
        replaced,
        "replaced",
        ["finial or knob replaced", "is a replacement"],
    );
    told(
        replaced,
        "doubtful",
        ["perhaps replaced", "may not be original"],
    );
    told(
        "parts[part=finial].lacquer",
        "yellowed",
        ["coated", "lacquered"],
    );
    told(
        "parts[part=foot].dents",
        "split",
        ["split or creased", "creased or split"],
    );
    told(
        "parts[part=foot].loss",
        "small",
        ["metal missing", "metal is missing"],
    );
    told(
        "parts[part=foot].corrosion",
        "green",
        ["corrosion: foot", "corroding"],
    );
    told(
        "done[0].what",
        "T09",
        ["repaired: solder repair", "repaired: solder repair"],
    );
    told("done[0].what", "T09b", ["low-melt", "low-melt"]);
    told("done[0].what", "T12", ["pin, screw", "pin, screw"]);
    told(
        "done[0].what",
        "T16",
        ["a part replaced", "one part is new"],
    );
    told(
        "done[0].materials",
        "solder_lead",
        ["solder that contains lead", "solder that contains lead"],
    );
    // The sheet says nothing about an unrecorded part.
    let mut draft = case("daily_teapot");
    let without = buyer(&draft);
    draft.set(replaced, "original");
    draft.set("parts[part=finial].lacquer", "none");
    for (text, before) in buyer(&draft).iter().zip(&without) {
        assert_eq!(text.contains("replace"), before.contains("replace"));
        assert!(
            !text.contains("oated") && !text.contains("acquered"),
            "{text}"
        );
    }
}

#[test]
fn sheets_show_the_numbers_of_the_report() {
    for (name, draft) in cases() {
        let (case, problems) = draft.read();
        let report = leavewell_model::counsel::solve_finely(&case).report(problems);
        let client = words(PageName::SheetForClient, &draft);
        let file = words(PageName::SheetForFile, &draft);
        for text in [&client, &file] {
            assert!(text.contains(&report.counsel.sentence), "{name}");
            assert!(text.contains(&report.identity.sentence), "{name}");
            for reason in &report.counsel.reasons {
                assert!(text.contains(&reason.text), "{name}: {}", reason.text);
            }
            let advised = report
                .courses
                .iter()
                .find(|c| c.steps == report.counsel.steps)
                .unwrap();
            let hundred = 100.0 * advised.p_best;
            let share = if hundred > 99.0 {
                "more than 99 of 100 cases".to_owned()
            } else {
                format!("{hundred:.0} of 100 cases")
            };
            assert!(
                text.contains(&format!("any option in {share}"))
                    || text.contains(&format!("any option in only {share}")),
                "{name}: {share}"
            );
        }
        assert!(file.contains(&report.seed.to_string()) && file.contains(&report.ledger_version));
        for kind in &report.identity.kinds {
            assert!(file.contains(&*kind.name), "{name}: {}", kind.name);
        }
        for option in &report.options {
            assert!(
                file.contains(&*option.name) && client.contains(&*option.name),
                "{name}"
            );
        }
    }
}

#[test]
fn hostile_text_is_shown_and_never_run() {
    let draft = hostile();
    for sheet in SHEETS {
        let blocks = page(sheet, &draft);
        let html = markup(HOSTILE, HOSTILE, &blocks);
        for bad in ["<script", "<img", "\u{0}", "</dd></style>"] {
            assert!(!html.contains(bad), "{sheet:?}: {bad}");
        }
        assert!(
            html.contains("&lt;script&gt;alert(1)&lt;/script&gt;"),
            "{sheet:?}"
        );
        assert_eq!(html.matches("</style>").count(), 1, "{sheet:?}");
        let text = markdown("A sheet", &blocks);
        assert!(text.contains(r"\<script\>alert(1)\</script\>"), "{sheet:?}");
        for (at, _) in text.match_indices(['<', '[', '`']) {
            assert!(text[..at].ends_with('\\'), "{sheet:?}: {}", &text[at..]);
        }
        // Direction control characters do not reach the page.
        assert!(
            !text.contains('\u{202e}') && !html[html.find("</h1>").unwrap()..].contains('\u{202e}')
        );
    }
    // The style sheet breaks a very long name; emoji and other scripts remain.
    let mut long = case("worn_tray");
    let name = ["🫖".repeat(500), "מ".repeat(500), "W".repeat(5000)].concat();
    long.set("piece.name", &name);
    for sheet in SHEETS {
        let blocks = page(sheet, &long);
        let html = markup("A sheet", "A sheet", &blocks);
        // A buyer does not see the owner's name for the piece.
        let is_named = sheet != PageName::SheetForBuyer;
        assert_eq!(html.contains(&name), is_named, "{sheet:?}");
        assert!(html.contains("overflow-wrap: anywhere") && html.contains("dir=\"auto\""));
    }
}

/// Counts the cells of tables and facts that are exactly a figure's id.
fn ids_listed(blocks: &[Block], out: &mut BTreeMap<String, usize>) {
    for block in blocks {
        let cells: Vec<&String> = match block {
            Block::Table(table) => table.rows.iter().flatten().collect(),
            Block::Facts { rows } => rows.iter().map(|(_, words)| words).collect(),
            Block::Section { blocks, .. } | Block::Fold { blocks, .. } | Block::Row { blocks } => {
                ids_listed(blocks, out);
                continue;
            }
            _ => continue,
        };
        for cell in cells {
            if Ledger::standard().find(cell).is_some() {
                *out.entry(cell.clone()).or_default() += 1;
            }
        }
    }
}

fn fields(blocks: &[Block]) -> Vec<&EntryField> {
    blocks
        .iter()
        .flat_map(|block| match block {
            Block::Field(field) => vec![field],
            Block::Section { blocks, .. } | Block::Fold { blocks, .. } | Block::Row { blocks } => {
                fields(blocks)
            }
            _ => Vec::new(),
        })
        .collect()
}

#[test]
fn the_ledger_lists_every_figure_exactly_once() {
    let all = Ledger::standard().figures().count();
    for draft in [case("worn_tray"), draft(""), hostile()] {
        let mut listed = BTreeMap::new();
        ids_listed(&page(PageName::Ledger, &draft), &mut listed);
        let twice: Vec<_> = listed.iter().filter(|(_, n)| **n != 1).collect();
        assert!(twice.is_empty(), "{twice:?}");
        assert_eq!(listed.len(), all);
    }
    // Small enough to rebuild at every keystroke.
    let json = serde_json::to_string(&page(PageName::Ledger, &case("worn_tray"))).unwrap();
    assert!(json.len() < 400_000, "{}", json.len());
    assert!(fields(&page(PageName::Ledger, &case("worn_tray"))).len() == 1);
}

#[test]
fn the_search_narrows_the_ledger_and_shows_fields() {
    let mut draft = case("worn_tray");
    draft.set("ledger.search", "commission HAMMER");
    let blocks = page(PageName::Ledger, &draft);
    let mut listed = BTreeMap::new();
    ids_listed(&blocks, &mut listed);
    assert!(listed.contains_key("fee.commission"), "{listed:?}");
    assert!(listed.len() < 10);
    let paths: Vec<&str> = fields(&blocks).iter().map(|f| f.path.as_str()).collect();
    assert!(
        paths.contains(&"overrides.{fee.commission}.value"),
        "{paths:?}"
    );
    draft.set("ledger.search", "zzzz");
    assert!(words(PageName::Ledger, &draft).contains("None of the"));
    draft.set("ledger.search", "e");
    let wide = page(PageName::Ledger, &draft);
    assert_eq!(fields(&wide).len(), 1 + 2 * 25);
}

#[test]
fn a_user_figure_is_entered_in_its_field_and_can_be_cleared() {
    let mut draft = case("worn_tray");
    let before = draft.read().0;
    draft.set("overrides.{fee.commission}.value", "0,25");
    draft.set("overrides.{fee.commission}.reason", "Their printed terms.");
    let (with, problems) = Draft::parse(&draft.to_json()).unwrap().read();
    assert!(problems.is_empty(), "{problems:?}");
    assert_eq!(with.overrides.len(), 1);
    assert!((with.overrides[0].value - 0.25).abs() < 1e-12);
    let text = words(PageName::Ledger, &draft);
    for wanted in [
        "Your own figures",
        "Without your figures the answer would be",
        "Their printed terms.",
        "0.15 share",
    ] {
        assert!(text.contains(wanted), "{wanted}");
    }
    assert!(words(PageName::SheetForFile, &draft).contains("Their printed terms."));
    // Clearing the field restores the shipped figure.
    draft.set("overrides.{fee.commission}.value", "");
    draft.set("overrides.{fee.commission}.reason", "");
    assert_eq!(draft.read().0, before);
    // A loosened safety limit is refused at its field, with the limit stated.
    draft.set("overrides.{guard.h06}.value", "90");
    draft.set("ledger.search", "guard.h06");
    let blocks = page(PageName::Ledger, &draft);
    let field = fields(&blocks)
        .into_iter()
        .find(|f| f.path == "overrides.{guard.h06}.value")
        .unwrap();
    assert_eq!(field.text, "90");
    assert!(
        field.problem.contains("loosest it may be is 60"),
        "{}",
        field.problem
    );
    assert!(lines(&blocks).join("\n").contains("never more than 60"));
}

#[test]
fn figures_the_trace_does_not_list_cannot_change_the_answer() {
    use leavewell_model::counsel::weigh_at_once;
    use leavewell_model::ledger::read_during;
    let (case, _) = case("worn_tray").read();
    let (report, used) = read_during(|| weigh_at_once(&case, Vec::new()));
    let all = Ledger::standard().figures().count();
    assert!(
        used.len() > 100 && used.len() < all,
        "{} of {all}",
        used.len()
    );
    // Every tenth of the others is moved far, and the answer stays the same, byte for byte.
    let idle = Ledger::standard()
        .figures()
        .filter(|f| !used.contains(f.id));
    let mut tried = 0;
    for figure in idle.step_by(10) {
        let mut moved = case.clone();
        moved.overrides.push(leavewell_model::record::Override {
            figure: figure.id.to_owned(),
            value: (figure.value / 2.0).max(figure.low.min(0.0)),
            reason: String::new(),
        });
        assert_eq!(weigh_at_once(&moved, Vec::new()), report, "{}", figure.id);
        tried += 1;
    }
    assert!(tried > 5);
    // A listed figure changes it.
    let mut moved = case;
    moved.overrides.push(leavewell_model::record::Override {
        figure: "fee.commission".to_owned(),
        value: 0.3,
        reason: String::new(),
    });
    assert!(used.contains("fee.commission"));
    assert_ne!(weigh_at_once(&moved, Vec::new()), report);
}

#[test]
fn the_trace_counts_weakly_sourced_figures() {
    let draft = case("worn_tray");
    let (case, _) = draft.read();
    let (_, used) = leavewell_model::ledger::read_during(|| {
        leavewell_model::counsel::weigh_at_once(&case, Vec::new())
    });
    let ledger = Ledger::standard();
    let weak = used
        .iter()
        .filter(|id| !matches!(ledger.find(id).unwrap().tag, Tag::Read | Tag::Computed))
        .count();
    let wanted = format!("It used {} figures; {weak} of them", used.len());
    let page = words(PageName::Ledger, &draft);
    let told = page.split("It used").nth(1).unwrap_or("");
    assert!(
        page.contains(&wanted),
        "{wanted}, not{}",
        told.chars().take(60).collect::<String>()
    );
}

#[test]
fn the_trace_leads_from_each_number_to_its_figures_and_sources() {
    for (name, draft) in cases() {
        let blocks = page(PageName::Trace, &draft);
        let mut sections = 0;
        for block in &blocks {
            let Block::Section { id, blocks, .. } = block else {
                continue;
            };
            if !id.starts_with("trace.") {
                continue;
            }
            sections += 1;
            let text = lines(blocks).join("\n");
            assert!(text.contains("figure \""), "{name} {id} has no figure");
            assert!(text.contains("Sources:"), "{name} {id}");
            assert!(!text.contains("no course"), "{name} {id}");
        }
        assert_eq!(sections, 5, "{name}");
    }
}

#[test]
fn the_record_of_work_always_has_room_for_one_more() {
    let sections = |draft: &Draft| {
        page(PageName::Done, draft)
            .iter()
            .filter(|b| matches!(b, Block::Section { id, .. } if id.starts_with("done.") && id != "done.happened"))
            .count()
    };
    let mut draft = draft("");
    assert_eq!(sections(&draft), 1);
    draft.set("done[0].what", "T09");
    assert_eq!(sections(&draft), 2);
    draft.set("done[1].by", "A smith");
    assert_eq!(sections(&draft), 3);
    draft.set("done[1].by", "");
    assert_eq!(sections(&draft), 2);
    let [_, catalogue] = buyer(&draft);
    assert!(
        catalogue.contains("On record: solder repair."),
        "{catalogue}"
    );
    for (typed, good) in [
        ("2026", true),
        ("2026-05", true),
        ("2026-05-31", true),
        ("2026-13", false),
        ("last year", false),
    ] {
        draft.set("done[0].on", typed);
        let blocks = page(PageName::Done, &draft);
        let field = fields(&blocks)
            .into_iter()
            .find(|f| f.path == "done[0].on")
            .unwrap();
        assert_eq!(field.problem.is_empty(), good, "{typed}");
        assert_eq!(field.text, typed);
    }
    // A value outside the choices is kept, reported and shown.
    draft.set("done[0].what", "rubbed with cork");
    assert!(words(PageName::Done, &draft).contains("rubbed with cork"));
    assert!(words(PageName::SheetForClient, &draft).contains("rubbed with cork"));
    // A value in place of the list is handled as well.
    for odd in [
        r#","done":7"#,
        r#","done":[7,null,"x"]"#,
        r#","done":{"what":"T09"}"#,
    ] {
        let text = format!(r#"{{"format":"leavewell-case","version":1{odd}}}"#);
        assert!(sections(&Draft::parse(&text).unwrap()) >= 1, "{odd}");
    }
}

#[test]
fn choices_of_work_offer_every_treatment() {
    let blocks = page(PageName::Done, &draft(""));
    let text = serde_json::to_string(&blocks).unwrap();
    for treatment in Treatment::ALL {
        assert!(
            text.contains(&format!("[\"{}\",", treatment.id())),
            "{}",
            treatment.id()
        );
    }
}

/// Every sheet quotes marks as they were typed, and lists the words in them that nobody has confirmed as not
/// counted yet, with or without any other finding.
#[test]
fn marks_are_quoted_as_typed_on_every_sheet() {
    let mut draft = draft("");
    draft.set("marks[0].id", "1");
    draft.set("marks[0].text", "E.P.N.S. 2745");
    draft.set("marks[0].part", "foot");
    for more in [None, Some(FindingId::S04)] {
        if let Some(finding) = more {
            draft.set_answer(finding, "seen", "");
        }
        for sheet in SHEETS {
            let words = words(sheet, &draft);
            assert!(
                words.contains("“E.P.N.S. 2745” (foot)"),
                "{sheet:?}: {words}"
            );
        }
        for sheet in [PageName::SheetForClient, PageName::SheetForFile] {
            let words = words(sheet, &draft);
            assert!(
                words.contains("Not counted yet: “EPNS”, “2745” as read in a mark"),
                "{sheet:?}: {words}"
            );
        }
    }
    // Once confirmed or dismissed, they are no longer listed.
    draft.set_answer(FindingId::M01, "seen", "foot");
    draft.set_answer(FindingId::M20, "unsure", "");
    for sheet in SHEETS {
        assert!(
            !words(sheet, &draft).contains("Not counted yet"),
            "{sheet:?}"
        );
    }
}

/// Given years are not presented as evidence.
#[test]
fn given_years_are_shown_as_given() {
    let draft = draft(
        r#","piece":{"from_year":1790,"to_year":1830,"came_from":"sale"},
           "findings":[{"id":"C01","answer":"seen"},{"id":"C08","answer":"seen"}]"#,
    );
    assert!(
        words(PageName::SheetForClient, &draft)
            .contains("Judging by the evidence and the years given by the seller, it dates from")
    );
    let [ticket, _] = buyer(&draft);
    assert!(
        ticket.contains("said to be from 1790 to 1830; taken with the evidence, probably 1"),
        "{ticket}"
    );
    let file = words(PageName::SheetForFile, &draft);
    assert!(
        file.contains("Years from the findings and those stated"),
        "{file}"
    );
    assert!(
        file.contains("the years given by the seller are 1790 to 1830"),
        "{file}"
    );
}

/// The years on a ticket belong to the family named beside them.
#[test]
fn the_years_on_a_ticket_belong_to_the_family_named() {
    let [ticket, catalogue] = buyer(&draft(r#","findings":[{"id":"S03","answer":"seen"}]"#));
    for words in [&ticket, &catalogue] {
        assert!(words.contains(" if it is fused plate, "), "{words}");
        let (_, years) = words.split_once("probably later than ").unwrap();
        assert!(years[4..].starts_with(" if it is electroplate"), "{words}");
    }
    let [ticket, _] = buyer(&draft(r#","findings":[{"id":"M01","answer":"seen"}]"#));
    let (_, years) = ticket.split_once("probably later than ").unwrap();
    let from: u16 = years[..4].parse().unwrap();
    assert!(from >= 1840 && years[4..].starts_with(". "), "{ticket}");
}

/// If parts are described but no finding was looked for, no family and no year is claimed: the prior is shown
/// only on the file sheet, and labelled as such.
#[test]
fn a_piece_not_looked_at_is_given_no_family_and_no_year() {
    let draft = draft(
        r#","piece":{"form":"teapot","from_year":1780,"to_year":1800},
           "parts":[{"part":"body","bleed":"some"}]"#,
    );
    let [ticket, catalogue] = buyer(&draft);
    for text in [&ticket, &catalogue] {
        for claim in ["plate", "silver", "probably", "evidence", "findings"] {
            assert!(
                !text.to_lowercase().replace("re-plated", "").contains(claim),
                "{claim}: {text}"
            );
        }
        assert!(text.contains("said to be from 1780 to 1800"), "{text}");
        assert!(
            text.to_lowercase()
                .contains("whether it was re-plated is not known"),
            "{text}"
        );
    }
    let client = words(PageName::SheetForClient, &draft);
    assert!(
        client.contains("Nothing has been looked at yet"),
        "{client}"
    );
    for claim in ["Made of copper, brass", "Judging by the evidence"] {
        assert!(!client.contains(claim), "{claim}: {client}");
    }
    let file = words(PageName::SheetForFile, &draft);
    assert!(
        file.contains("How common every kind is before anything is looked at"),
        "{file}"
    );
    assert!(!file.contains("if it is electroplate"), "{file}");
}

/// One threshold: where the answer advises nothing, no page and no plan does, and nothing is said of what work may set
/// free.
#[test]
fn where_nothing_was_looked_at_no_page_and_no_plan_advises() {
    let draft = draft(r#","piece":{"form":"teapot"},"market":{"likely":300}"#);
    let of_work = caution("caution.T14a").unwrap().text;
    for sheet in [PageName::SheetForClient, PageName::SheetForFile] {
        let text = words(sheet, &draft);
        assert!(text.contains(caution("caution.deferral").unwrap().text));
        assert!(!text.contains(of_work), "{sheet:?}");
    }
    let looked_at = |draft: &Draft| {
        let mut draft = draft.clone();
        draft.set_answer(FindingId::S03, "seen", "");
        draft
    };
    let is_said = |page: PageName, said: &str| {
        (
            words(page, &draft).contains(said),
            words(page, &looked_at(&draft)).contains(said),
        )
    };
    assert_eq!(
        is_said(PageName::Closer, "Too little is recorded to advise"),
        (true, false)
    );
    assert_eq!(is_said(PageName::Catalogue, "Advised."), (false, true));
    let choices = |draft: &Draft| {
        let solved = leavewell_model::counsel::solve(&draft.read().0);
        leavewell_model::counsel::offer::offer(&solved)
            .choices
            .len()
    };
    assert_eq!(choices(&draft), 1);
    assert!(choices(&looked_at(&draft)) > 1);
}
