//! The single-file edition: the finished site as one page that opens from a disk, without a server.
//!
//! It is made from the site in `dist`, so both are the same build. The page contains the style sheet, the
//! drawings, the scripts and both programs. Its content policy allows exactly those scripts, by their
//! digests, and forbids every request.

use std::fs;
use std::path::Path;

use crate::bundle;
use crate::paths;
use crate::sum;
use crate::trouble::{Fallible, Trouble};

/// A larger page is a sign that something was included twice.
const LARGEST_BYTES: usize = 5_000_000;

/// Shown on every screen: what this edition cannot do.
const NOTE: &str = "Leavewell in one file. It cannot be installed or updated from here, and this browser may \
    clear what you enter: save your pieces as files.";

/// Makes the edition from the site in `dist` and prints its size.
pub(crate) fn make() -> Fallible<()> {
    let dist = paths::dist();
    let text = |name: &str| {
        paths::read(&dist.join(name)).map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
    };
    let bytes = |name: &str| paths::read(&dist.join(name));
    let page = page_of(&text, &bytes)?;
    if page.len() > LARGEST_BYTES {
        return Err(Trouble::new(
            format!(
                "the single-file edition takes {} bytes, over its budget of {LARGEST_BYTES}",
                page.len()
            ),
            "find what grew; `cargo run -p leavewell-dev -- pack` lists the parts.",
        ));
    }
    let path = paths::one_file();
    write(&path, &page)?;
    println!("{} ({} bytes)", path.display(), page.len());
    Ok(())
}

fn write(path: &Path, page: &str) -> Fallible<()> {
    let folder = path.parent().unwrap_or(path);
    fs::create_dir_all(folder)
        .and_then(|()| fs::write(path, page))
        .map_err(|error| {
            Trouble::new(
                format!("{} cannot be written: {error}", path.display()),
                "free some space or mend the permissions, then run the command again.",
            )
        })
}

/// Text that would end a script early, or keep it from ending.
const ENDING: [&str; 2] = ["</script", "<!--"];

/// The scripts of the page, as one.
const ALL: &str = "all.js";
const EACH: &str = "import \"./boot.js\";\nimport \"./shelf.js\";\nimport \"./pictures.js\";\nimport \"./plan.js\";\nimport \"./terms.js\";\nimport \"./said.js\";\n";

type Read<'a, T> = &'a dyn Fn(&str) -> Fallible<T>;

fn page_of(text: Read<String>, bytes: Read<Vec<u8>>) -> Fallible<String> {
    let mut page = text("index.html")?;
    let program = attribute(&page, "data-js")?;
    let wasm = attribute(&page, "data-wasm")?;

    let style_tag = tag_with(&page, "rel=\"stylesheet\"")?;
    let style = format!("\n{}", text(&attribute(&style_tag, "href")?)?);
    refuse(&style, &["</style", "url(", "@import"], "the style sheet")?;
    page = page.replace(&style_tag, &format!("<style>{style}</style>"));

    let icon = tag_with(&page, "rel=\"icon\"")?;
    let drawn = sum::base64(&bytes(&attribute(&icon, "href")?)?);
    page = page.replace(
        &icon,
        &format!("<link rel=\"icon\" href=\"data:image/svg+xml;base64,{drawn}\">"),
    );
    for gone in [
        "rel=\"manifest\"",
        "rel=\"modulepreload\"",
        "rel=\"preload\"",
    ] {
        let tag = tag_with(&page, gone)?;
        page = page.replace(&tag, "");
    }

    let script = format!(
        "\nglobalThis.leavewellCarried = {{\n  program: {},\n  wasm: () => Uint8Array.from(atob(document.getElementById(\"carried-wasm\").textContent), (c) => c.charCodeAt(0)),\n  worker: () => document.getElementById(\"carried-worker\").textContent,\n}};\n{}",
        bundle::expression(&text(&program)?, &program)?,
        bundle::joined(ALL, &|name| match name {
            // Elsewhere all but the first are fetched once the first screen stands.
            ALL => Ok(EACH.to_owned()),
            name => text(name),
        })?,
    );
    refuse(&script, &ENDING, "the start-up script")?;

    let boot = tag_with(&page, "id=\"boot\"")?;
    page = page.replace(&format!("{boot}</script>"), "");
    let mut carried = data("wasm", &sum::base64(&bytes(&wasm)?));
    carried += &data("worker", &worker(text, bytes)?);
    carried.extend(["<script type=\"module\">", &script, "</script>\n  </body>"]);
    page = page.replace("</body>", &carried);
    page = page.replace(
        "<body>",
        &format!(
            "<body>\n    <p id=\"one-file\">{NOTE}</p>\n    {}",
            sheet(&text("looks.svg")?)?
        ),
    );

    let policy = tag_with(&page, "http-equiv=\"Content-Security-Policy\"")?;
    let allowed = format!(
        "default-src 'none'; script-src '{}' 'wasm-unsafe-eval'; style-src '{}'; img-src blob: data:; worker-src blob:; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types app",
        sum::integrity(script.as_bytes()),
        sum::integrity(style.as_bytes()),
    );
    page = page.replace(
        &policy,
        &format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{allowed}\">"),
    );
    Ok(page)
}

/// A data block in the page, which browsers neither run nor show.
fn data(name: &str, text: &str) -> String {
    format!("<script type=\"text/plain\" id=\"carried-{name}\">{text}</script>\n")
}

/// The worker's script with its program included.
fn worker(text: Read<String>, bytes: Read<Vec<u8>>) -> Fallible<String> {
    let script = "leavewell-worker.js";
    let worker = format!(
        "self.leavewellCarried = {{\n  program: {},\n  wasm: () => Uint8Array.from(atob(\"{}\"), (c) => c.charCodeAt(0)),\n}};\n{}",
        bundle::expression(&text(script)?, script)?,
        sum::base64(&bytes("leavewell-worker_bg.wasm")?),
        bundle::joined("worker.js", text)?,
    )
    // A worker made from a blob is a classic script, and only modules have `import.meta`.
    .replace("import.meta.url", "self.location.href");
    refuse(&worker, &ENDING, script)?;
    refuse(&worker, &["import.meta"], script)?;
    Ok(worker)
}

/// The drawings as an inline SVG, with prefixed ids that cannot clash with others in the page.
fn sheet(looks: &str) -> Fallible<String> {
    let mut drawings = String::new();
    for (at, part) in looks.split("<!--").enumerate() {
        drawings.push_str(match part.split_once("-->") {
            Some((_, after)) if at > 0 => after,
            _ => part,
        });
    }
    let begin = "<svg xmlns=\"http://www.w3.org/2000/svg\">";
    if !drawings.starts_with(begin) {
        return Err(Trouble::new(
            format!("looks.svg does not begin with {begin}"),
            "restore that beginning, or change src/dev/one_file.rs to expect the new one.",
        ));
    }
    refuse(&drawings, &["<script", "style="], "the sheet of drawings")?;
    Ok(drawings
        .replacen(begin, "<svg id=\"looks\" hidden>", 1)
        .replace(" id=\"", " id=\"look-")
        .replace("<svg id=\"look-looks\"", "<svg id=\"looks\"")
        .replace("href=\"#", "href=\"#look-"))
}

fn refuse(text: &str, words: &[&str], what: &str) -> Fallible<()> {
    match words.iter().find(|word| text.contains(**word)) {
        None => Ok(()),
        Some(word) => Err(Trouble::new(
            format!("{what} holds {word}, which the single-file edition cannot include"),
            "write it another way.",
        )),
    }
}

/// The whole tag, from `<` to `>`, that contains this text.
fn tag_with(page: &str, words: &str) -> Fallible<String> {
    let found = page.find(words).and_then(|at| {
        let begin = page.get(..at)?.rfind('<')?;
        let end = at + page.get(at..)?.find('>')? + 1;
        page.get(begin..end)
    });
    found.map(str::to_owned).ok_or_else(|| missing(words))
}

/// The value of an attribute, without a leading `./`: the name of a file of the site.
fn attribute(text: &str, name: &str) -> Fallible<String> {
    text.split_once(&format!(" {name}=\""))
        .and_then(|(_, rest)| rest.split_once('"'))
        .map(|(value, _)| value.trim_start_matches("./").to_owned())
        .ok_or_else(|| missing(name))
}

fn missing(what: &str) -> Trouble {
    Trouble::new(
        format!("index.html of the built site has no {what}"),
        "build the site again: cargo run -p leavewell-dev -- build",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<html><head>\
        <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'\">\
        <link rel=\"icon\" href=\"./icon-1.svg\"/><link rel=\"manifest\" href=\"manifest.webmanifest\">\
        <link rel=\"stylesheet\" href=\"./a-1.css\" data-integrity=\"none\"/>\
        <script type=\"module\" src=\"boot.js\" id=\"boot\" data-build=\"b1\" data-js=\"./a-1.js\" data-wasm=\"./a-1.wasm\"></script>\
        <link rel=\"modulepreload\" href=\"./a-1.js\"><link rel=\"preload\" href=\"./a-1.wasm\"></head>\
        <body>\n<div id=\"app\"></div>\n</body></html>";
    const SHEET: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\"><!-- a -->\
        <g id=\"glass\"/><symbol id=\"C01\"><use href=\"#glass\"/></symbol></svg>";

    fn text(name: &str) -> Fallible<String> {
        Ok(match name {
            "index.html" => PAGE,
            "a-1.css" => "p { margin: 0 }",
            "a-1.js" | "leavewell-worker.js" => "function init() {}\nexport { init as default };\n",
            "boot.js" => "import { d } from \"./photos.js\";\nstart(d);\n",
            "photos.js" => "export const d = 1;\n",
            "plan.js" | "said.js" | "shelf.js" | "terms.js" => "",
            "pictures.js" => "import { d } from \"./photos.js\";\nshow(d);\n",
            "worker.js" => "answer();\n",
            "looks.svg" => SHEET,
            other => return Err(Trouble::new(format!("no {other}"), "")),
        }
        .to_owned())
    }

    fn bytes(name: &str) -> Fallible<Vec<u8>> {
        match name.rsplit_once('.') {
            Some((_, "wasm" | "svg")) => Ok(name.as_bytes().to_vec()),
            _ => Err(Trouble::new(format!("no {name}"), "")),
        }
    }

    #[test]
    fn the_page_refers_to_nothing_outside_it() {
        let page = page_of(&text, &bytes).unwrap_or_else(|trouble| panic!("{trouble}"));
        for outside in [
            "src=",
            "href=\"./",
            "manifest",
            "preload",
            "looks.svg",
            "import ",
        ] {
            assert!(!page.contains(outside), "{outside}: {page}");
        }
        for inside in [
            "<style>\np { margin",
            "start(d);",
            "id=\"carried-wasm\"",
            "id=\"carried-worker\"",
            NOTE,
        ] {
            assert_eq!(page.matches(inside).count(), 1, "{inside}: {page}");
        }
        assert!(
            page.contains(&sum::base64(b"a-1.wasm")),
            "the first program"
        );
        assert!(
            page.contains(&sum::base64(b"leavewell-worker_bg.wasm")),
            "the second"
        );
    }

    #[test]
    fn the_policy_names_the_digests_of_the_page_scripts_and_styles() {
        let page = page_of(&text, &bytes).unwrap_or_default();
        let inner = |begin: &str, end: &str| {
            let (_, rest) = page.split_once(begin).unwrap_or_default();
            rest.split_once(end).unwrap_or_default().0.to_owned()
        };
        let policy = inner("http-equiv=\"Content-Security-Policy\" content=\"", "\">");
        let script = sum::integrity(inner("<script type=\"module\">", "</script>").as_bytes());
        let style = sum::integrity(inner("<style>", "</style>").as_bytes());
        assert!(policy.contains(&format!("script-src '{script}' 'wasm-unsafe-eval';")));
        assert!(policy.contains(&format!("style-src '{style}';")));
        assert!(
            !policy.contains("connect-src"),
            "every request is forbidden"
        );
    }

    #[test]
    fn drawing_ids_get_a_prefix() {
        assert_eq!(
            sheet(SHEET),
            Ok(
                "<svg id=\"looks\" hidden><g id=\"look-glass\"/><symbol id=\"look-C01\">\
                <use href=\"#look-glass\"/></symbol></svg>"
                    .to_owned()
            )
        );
        assert!(sheet("<svg><g/></svg>").is_err());
    }

    #[test]
    fn text_that_would_break_the_page_is_refused() {
        let with = |name: &'static str, instead: &'static str| {
            move |asked: &str| {
                if asked == name {
                    Ok(instead.to_owned())
                } else {
                    text(asked)
                }
            }
        };
        for (name, instead) in [
            ("boot.js", "let a = \"</script>\";\n"),
            ("boot.js", "export default 1;\nimport a from \"b\";\n"),
            ("worker.js", "let a = \"<!-- \";\n"),
            ("worker.js", "let a = import.meta.resolve(\"b\");\n"),
            ("a-1.css", "p { background: url(a.png) }"),
            ("index.html", "<body></body>"),
        ] {
            assert!(page_of(&with(name, instead), &bytes).is_err(), "{name}");
        }
    }
}
