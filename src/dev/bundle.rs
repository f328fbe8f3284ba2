//! Several of the site's modules as one text, for the edition in one file.
//!
//! This reads the few forms that the project's scripts and the generated ones use, each at the start of a
//! line, and refuses any other rather than guess.

use crate::trouble::{Fallible, Trouble};

/// A module as an expression: an object with what it exports, `default` among them.
pub(crate) fn expression(source: &str, name: &str) -> Fallible<String> {
    let (body, exports) = without_exports(source, name)?;
    let fields: Vec<String> = exports
        .iter()
        .map(|(inner, outer)| {
            if inner == outer {
                inner.clone()
            } else {
                format!("{outer}: {inner}")
            }
        })
        .collect();
    Ok(format!(
        "(() => {{\n{body}\nreturn {{ {} }};\n}})()",
        fields.join(", ")
    ))
}

/// A module with those it imports put in its place. `read` gives the text of a file of the site.
pub(crate) fn joined(entry: &str, read: &dyn Fn(&str) -> Fallible<String>) -> Fallible<String> {
    let mut taken = Vec::new();
    let mut text = String::new();
    let body = take(entry, read, &mut taken, &mut text)?;
    Ok(text + &body)
}

/// Deepest chain of modules; more is a circle.
const DEEPEST: usize = 20;

/// The module without its imports; what it imports goes into `text` before it, each once.
fn take(
    name: &str,
    read: &dyn Fn(&str) -> Fallible<String>,
    taken: &mut Vec<String>,
    text: &mut String,
) -> Fallible<String> {
    let mut body = String::new();
    for line in read(name)?.lines() {
        let Some(import) = line.strip_prefix("import ") else {
            body.push_str(line);
            body.push('\n');
            continue;
        };
        // A module that is only to be run is one of which nothing is taken.
        let (names, from) = import
            .strip_suffix("\";")
            .and_then(|import| {
                let alone = import.strip_prefix("\"./").map(|from| ("{}", from));
                alone.or_else(|| import.split_once(" from \"./"))
            })
            .filter(|(names, _)| names.starts_with('{') && names.ends_with('}'))
            .ok_or_else(|| unknown(name, line))?;
        let variable = variable(from);
        if !taken.iter().any(|known| known == from) {
            taken.push(from.to_owned());
            if taken.len() > DEEPEST {
                return Err(unknown(name, line));
            }
            let inner = take(from, read, taken, text)?;
            let inner = expression(&inner, from)?;
            text.extend(["const ", &variable, " = ", &inner, ";\n"]);
        }
        if names == "{}" {
            continue;
        }
        let names = names.replace(" as ", ": ");
        body.extend(["const ", &names, " = ", &variable, ";\n"]);
    }
    Ok(body)
}

fn variable(file: &str) -> String {
    let plain = |letter: char| {
        if letter.is_ascii_alphanumeric() {
            letter
        } else {
            '_'
        }
    };
    format!("module_{}", file.chars().map(plain).collect::<String>())
}

/// The module's text without the word `export`, and what it exports: the name inside and outside.
fn without_exports(source: &str, file: &str) -> Fallible<(String, Vec<(String, String)>)> {
    let mut body = String::new();
    let mut exports = Vec::new();
    for line in source.lines() {
        if line.starts_with("import ") {
            return Err(unknown(file, line));
        }
        let Some(exported) = line.strip_prefix("export ") else {
            body.push_str(line);
            body.push('\n');
            continue;
        };
        if let Some(list) = exported
            .strip_prefix('{')
            .and_then(|list| list.trim_end_matches(';').strip_suffix('}'))
        {
            for entry in list.split(',').map(str::trim).filter(|e| !e.is_empty()) {
                let (inner, outer) = entry.split_once(" as ").unwrap_or((entry, entry));
                exports.push((inner.to_owned(), outer.to_owned()));
            }
            continue;
        }
        let named = ["function ", "async function ", "class ", "const ", "let "]
            .iter()
            .find_map(|kind| exported.strip_prefix(kind))
            .and_then(|rest| {
                rest.split(|letter: char| !letter.is_ascii_alphanumeric() && !"_$".contains(letter))
                    .next()
            })
            .filter(|named| !named.is_empty())
            .ok_or_else(|| unknown(file, line))?;
        exports.push((named.to_owned(), named.to_owned()));
        body.push_str(exported);
        body.push('\n');
    }
    Ok((body, exports))
}

fn unknown(file: &str, line: &str) -> Trouble {
    Trouble::new(
        format!("{file} has a line that the edition in one file cannot take in: {line}"),
        "write it as `import { a } from \"./file.js\";`, `import \"./file.js\";`, `export function a`, `export class A`, `export const a` or `export { a as b };`, on one line, and let no two files import each other.",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(name: &str) -> Fallible<String> {
        Ok(match name {
            "boot.js" => "import { a, b as c } from \"./parts.js\";\nimport { d } from \"./deep.js\";\na(c, d);\n",
            "parts.js" => "import { d } from \"./deep.js\";\nexport function a() {}\nexport const b = d;\n",
            "deep.js" => "const hidden = 1;\nexport class d {}\n",
            "round.js" => "import { r } from \"./round.js\";\nexport const r = 1;\n",
            "runs.js" => "import \"./deep.js\";\nrun();\n",
            "star.js" => "import * as all from \"./deep.js\";\n",
            "nameless.js" => "export default 3;\n",
            other => return Err(Trouble::new(format!("no {other}"), "")),
        }
        .to_owned())
    }

    #[test]
    fn a_module_is_one_expression() {
        let text =
            "export function a(x) {\n  return x;\n}\nconst b = 1;\nexport { b, c as default };\n";
        let text = expression(text, "x.js").unwrap_or_default();
        assert_eq!(
            text,
            "(() => {\nfunction a(x) {\n  return x;\n}\nconst b = 1;\n\nreturn { a, b, default: c };\n})()"
        );
    }

    #[test]
    fn imports_come_first_and_once() {
        let text = joined("boot.js", &site).unwrap_or_default();
        assert!(
            !text.contains("import") && !text.contains("export"),
            "{text}"
        );
        let at = |words: &str| {
            text.find(words)
                .unwrap_or_else(|| panic!("{words}: {text}"))
        };
        assert_eq!(text.matches("const module_deep_js = ").count(), 1);
        assert!(at("const module_deep_js = ") < at("const module_parts_js = "));
        assert!(at("const module_parts_js = ") < at("const { a, b: c } = module_parts_js;"));
        assert!(at("const { a, b: c }") < at("a(c, d);"));
    }

    #[test]
    fn a_module_that_is_only_run_comes_first_too() {
        let text = joined("runs.js", &site).unwrap_or_default();
        assert!(text.starts_with("const module_deep_js = "), "{text}");
        assert!(text.ends_with(";\nrun();\n"), "{text}");
    }

    #[test]
    fn other_forms_are_refused() {
        assert!(joined("star.js", &site).is_err());
        assert!(expression("export default 3;\n", "x.js").is_err());
        assert!(expression("export * from \"./a.js\";\n", "x.js").is_err());
        assert!(joined("missing.js", &site).is_err());
    }
}
