//! Nothing exists only for tests: every public item has a caller in the product, and every figure of the
//! ledger has a reader.
//!
//! Both checks read the source as text. A public item counts as used when its name occurs anywhere else in
//! the code outside tests, so an unused item that shares its name with another one can be missed, but no item
//! is reported by mistake. The compiler finds the private items that nobody uses.

use std::collections::{BTreeMap, BTreeSet};

use leavewell_model::ledger::Ledger;

use super::{files, literals};

/// Public items without a caller in the source, and why they stay.
const ENTRY_POINTS: &[(&str, &str)] = &[("share_done", "the loader of the worker calls it")];

/// The source without comments, string contents and code that is compiled only for tests.
fn product_code(text: &str) -> String {
    let mut code = String::new();
    let mut rest = text;
    while let Some(c) = rest.chars().next() {
        let skipped = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("/*") {
            rest.find("*/").map_or(rest.len(), |end| end + 2)
        } else if rest.starts_with("#[cfg(test)]\n") {
            // The item ends at the first line that closes it at the same depth, or with a semicolon.
            let depth = code.len() - code.trim_end_matches(' ').len();
            let closing = format!("\n{}}}", " ".repeat(depth));
            let brace = rest.find(&closing).map(|end| end + closing.len());
            let semicolon = rest.find(";\n").map(|end| end + 1);
            let opens = rest.find('{').unwrap_or(usize::MAX);
            match semicolon {
                Some(end) if end < opens => end,
                _ => brace.unwrap_or(rest.len()),
            }
        } else if let Some(hashes) = raw_string(rest) {
            let close = format!("\"{}", "#".repeat(hashes));
            let from = hashes + 2;
            rest[from..]
                .find(&close)
                .map_or(rest.len(), |end| from + end + close.len())
        } else if rest.starts_with("'\"'") || rest.starts_with("'\\") {
            rest[2..].find('\'').map_or(rest.len(), |end| end + 3)
        } else if c == '"' {
            let mut escaped = false;
            let end = rest[1..].find(|c| {
                let ends = c == '"' && !escaped;
                escaped = c == '\\' && !escaped;
                ends
            });
            end.map_or(rest.len(), |end| end + 2)
        } else {
            code.push(c);
            rest = &rest[c.len_utf8()..];
            continue;
        };
        rest = &rest[skipped..];
    }
    code
}

/// The number of `#` of a raw string that begins here.
fn raw_string(text: &str) -> Option<usize> {
    let after = text.strip_prefix('r')?;
    let hashes = after.len() - after.trim_start_matches('#').len();
    after[hashes..].starts_with('"').then_some(hashes)
}

/// The names in some code, in order.
fn names(code: &str) -> impl Iterator<Item = &str> {
    code.split(|c: char| !(c.is_alphanumeric() || c == '_'))
        .filter(|name| !name.is_empty())
}

/// The code without its `use` statements, because importing or re-exporting an item is not a use.
fn without_imports(code: &str) -> String {
    let mut kept = String::new();
    let mut importing = false;
    for line in code.lines() {
        let statement = line.trim_start();
        let begins = ["use ", "pub use ", "pub(crate) use ", "pub(super) use "]
            .iter()
            .any(|start| statement.starts_with(start));
        importing |= begins;
        if !importing {
            kept.push_str(line);
            kept.push('\n');
        }
        importing &= !line.contains(';');
    }
    kept
}

/// Names of the public items that some code defines.
fn public_items(code: &str) -> Vec<&str> {
    let mut found = Vec::new();
    for (at, _) in code.match_indices("pub ") {
        let mut words = names(&code[at + 4..]).take(4);
        let kinds = ["fn", "struct", "enum", "const", "static", "trait", "type"];
        let Some(kind) = words.next().filter(|w| kinds.contains(w)) else {
            continue;
        };
        let name = words.next().unwrap_or("");
        // `const fn name`, but `const NAME`.
        found.push(if kind == "const" && name == "fn" {
            words.next().unwrap_or("")
        } else {
            name
        });
    }
    found
}

/// The files of the product: no tests, no benchmarks.
fn product() -> Vec<(String, String)> {
    let sources = files("src", &["rs"]);
    let tests: BTreeSet<String> = sources
        .iter()
        .flat_map(|(name, text)| test_modules(name, text))
        .collect();
    sources
        .into_iter()
        .filter(|(name, _)| !name.contains("/benches/") && !tests.contains(name))
        .collect()
}

/// The files of modules that are declared for tests only.
fn test_modules(name: &str, text: &str) -> Vec<String> {
    let stem = name.trim_end_matches(".rs");
    let folder = match stem.rsplit_once('/') {
        Some((folder, "mod" | "lib" | "main")) => folder,
        _ => stem,
    };
    text.split("#[cfg(test)]")
        .skip(1)
        .filter_map(|after| {
            let declared = after.split(['{', ';']).next()?;
            let module = declared.trim().trim_start_matches("pub(crate) ");
            let module = module.trim_start_matches("pub(super) ");
            let is_file = after[declared.len()..].starts_with(';');
            let module = module.strip_prefix("mod ").filter(|_| is_file)?;
            Some(format!("{folder}/{module}.rs"))
        })
        .collect()
}

/// Public items of these files that occur nowhere else in them.
fn unused(sources: &[(String, String)]) -> Vec<String> {
    let code: Vec<(&str, String)> = sources
        .iter()
        .map(|(name, text)| (name.as_str(), without_imports(&product_code(text))))
        .collect();
    let mut count: BTreeMap<&str, usize> = BTreeMap::new();
    for (_, code) in &code {
        for name in names(code) {
            *count.entry(name).or_default() += 1;
        }
    }
    code.iter()
        .flat_map(|(file, code)| {
            public_items(code)
                .into_iter()
                .map(move |item| (*file, item))
        })
        .filter(|(_, item)| count.get(item) == Some(&1))
        .map(|(file, item)| format!("{file}: {item}"))
        .collect()
}

#[test]
fn every_public_item_has_a_caller_outside_tests() {
    let found = unused(&product());
    let excused = |fault: &String| {
        ENTRY_POINTS
            .iter()
            .any(|(item, _)| fault.ends_with(&format!(": {item}")))
    };
    let faults: Vec<&String> = found.iter().filter(|f| !excused(f)).collect();
    assert!(
        faults.is_empty(),
        "only tests, or nobody, use these: call them in the product or remove them with their tests\n{faults:#?}"
    );
    for (item, why) in ENTRY_POINTS {
        let needed = found.iter().any(|f| f.ends_with(&format!(": {item}")));
        assert!(needed, "{item} ({why}) needs no exception any more");
    }
}

#[test]
fn an_unused_public_item_is_found() {
    let source = r##"
pub fn used() -> u32 {
    "a \" quote and unused()".len();
    r#"unused()"#; // unused()
    helper()
}
fn helper() -> u32 { Used::ONE }
pub struct Used;
pub const fn unused() -> u32 { used() }
impl Used {
    pub const ONE: u32 = 1;
    #[cfg(test)]
    pub fn for_tests() { Self::made_up(); }
}
#[cfg(test)]
mod tests {
    fn calls() { unused(); }
}
"##;
    let other = "pub use crate::one::{\n    unused, used,\n};\nfn after() { let _ = Used; }\n";
    let sources = [("one.rs", source), ("two.rs", other)]
        .map(|(name, text)| (name.to_owned(), text.to_owned()));
    assert_eq!(unused(&sources), ["one.rs: unused"]);
}

/// The ways in which the source can name figures.
#[derive(Default)]
struct Named {
    /// Whole ids, as text.
    ids: BTreeSet<String>,
    /// `FigureId` constants.
    constants: BTreeSet<String>,
    /// Beginning and end of the ids of a family, with any text between them.
    families: Vec<(String, String)>,
}

impl Named {
    fn reads(&self, id: &str) -> bool {
        let constant: String = id
            .chars()
            .map(|c| if matches!(c, '.' | '-') { '_' } else { c })
            .collect();
        self.ids.contains(id)
            || self.constants.contains(&constant.to_ascii_uppercase())
            || self.families.iter().any(|(before, after)| {
                id.len() > before.len() + after.len()
                    && id.starts_with(before.as_str())
                    && id.ends_with(after.as_str())
            })
    }

    fn note(&mut self, text: &str) {
        for literal in literals(text) {
            let id = literal.text;
            // A pattern of `format!` names a family: the text before its first placeholder and after its
            // last.
            match (id.find('{'), id.rfind('}')) {
                (Some(open), Some(close)) if id[..open].contains('.') && !id.contains(' ') => {
                    let after = id.get(close + 1..).unwrap_or("").to_owned();
                    self.families.push((id[..open].to_owned(), after));
                }
                _ => {
                    self.ids.insert(id);
                }
            }
        }
        for (at, name) in text.match_indices("FigureId::") {
            let constant = names(&text[at + name.len()..]).next().unwrap_or("");
            self.constants.insert(constant.to_owned());
        }
        // `["work.hours.", code].concat()`: a beginning followed by a member.
        for (at, _) in text.match_indices(".concat()") {
            let list = text[..at].rsplit('[').next().unwrap_or("");
            let mut texts = list.split('"').skip(1).step_by(2);
            if let Some(before) = texts.next().filter(|before| before.contains('.')) {
                let after = texts.next().unwrap_or("");
                self.families.push((before.to_owned(), after.to_owned()));
            }
        }
        for name in ["family(", "family_if_any(", "by_origin(", "by_group("] {
            for (at, _) in text.match_indices(name) {
                let call = text[at + name.len()..].split(')').next().unwrap_or("");
                // The members may be written out between the first text and the last.
                let mut texts = call.split('"').skip(1).step_by(2);
                if let Some(before) = texts.next() {
                    let after = texts.last().unwrap_or("");
                    self.families.push((before.to_owned(), after.to_owned()));
                }
            }
        }
    }
}

#[test]
fn every_figure_of_the_ledger_has_a_reader() {
    let mut named = Named::default();
    for (_, text) in product() {
        named.note(&text);
    }
    let unread: Vec<&str> = Ledger::standard()
        .figures()
        .map(|f| f.id)
        .filter(|id| !named.reads(id))
        .collect();
    assert!(
        unread.is_empty(),
        "no code reads these figures: read them or remove their rows\n{unread:#?}"
    );
}

#[test]
fn a_figure_is_read_by_its_text_its_constant_or_its_family() {
    let mut named = Named::default();
    named.note(
        r#"
        ledger.value("fee.lot");
        ledger.value(FigureId::FEE_VAT);
        const ALL: [FigureId; 2] = FigureId::family("silver.loss.", WAYS, ".um");
        ledger.value(&format!("solder.{}", alloy));
        "#,
    );
    for id in ["fee.lot", "fee.vat", "silver.loss.dip.um", "solder.tin"] {
        assert!(named.reads(id), "{id}");
    }
    for id in ["fee.minimum", "silver.loss.dip.share", "silver.loss..um"] {
        assert!(!named.reads(id), "{id}");
    }
}
