//! Joins several of the site's modules into one script, for the single-file edition.
//!
//! It understands only the few forms of `import` and `export` that the project's scripts and the generated
//! ones use, each at the start of a line. It refuses any other form rather than guess.

use crate::trouble::{Fallible, Trouble};

/// The module as an expression that returns an object of its exports, including `default`.
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

/// The module with its imports inlined. `read` returns the text of a file of the site.
pub(crate) fn joined(entry: &str, read: &dyn Fn(&str) -> Fallible<String>) -> Fallible<String> {
    let mut taken = Vec::new();
    let mut text = String::new();
    let body = take(entry, read, &mut taken, &mut text)?;
    Ok(text + &body)
}

/// The most modules one script may import. More means that two modules import each other.
const DEEPEST: usize = 20;

/// Returns the module without its imports, and adds each imported module to `text` once.
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
        // An import for side effects only counts as an import of no names.
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

/// The module's text without `export`, and its exports as pairs of inner and outer name.
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
        format!("{file} has a line that the single-file edition cannot include: {line}"),
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
    fn a_module_becomes_one_expression() {
        let text =
            "export function a(x) {\n  return x;\n}\nconst b = 1;\nexport { b, c as default };\n";
        let text = expression(text, "x.js").unwrap_or_default();
        assert_eq!(
            text,
            "(() => {\nfunction a(x) {\n  return x;\n}\nconst b = 1;\n\nreturn { a, b, default: c };\n})()"
        );
    }

    #[test]
    fn each_import_comes_first_and_only_once() {
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
    fn a_side_effect_import_comes_first_too() {
        let text = joined("runs.js", &site).unwrap_or_default();
        assert!(text.starts_with("const module_deep_js = "), "{text}");
        assert!(text.ends_with(";\nrun();\n"), "{text}");
    }

    #[test]
    fn unknown_import_and_export_forms_are_refused() {
        assert!(joined("star.js", &site).is_err());
        assert!(expression("export default 3;\n", "x.js").is_err());
        assert!(expression("export * from \"./a.js\";\n", "x.js").is_err());
        assert!(joined("missing.js", &site).is_err());
    }
}
