//! The last step of a build. It leaves the comments out of scripts and styles, and writes the build's name
//! into the page and the list of files into the service worker that caches the site. Trunk calls it before the new site replaces the old one.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use crate::paths;
use crate::sum;
use crate::trouble::{Fallible, Trouble};

/// The placeholder for the build's name, in the page and in the service worker.
const BUILD: &str = "@build@";
/// The placeholder for the list of files, in the service worker.
const FILES: &str = "/* @files@ */";
const PAGE: &str = "index.html";
const WORKER: &str = "sw.js";

/// Files that the service worker does not cache: itself, which the browser keeps, and the headers file,
/// which only servers read.
const NOT_KEPT: [&str; 2] = [WORKER, "_headers"];

/// Whether the service worker caches this file of the site.
pub(crate) fn is_kept(name: &str) -> bool {
    !NOT_KEPT.contains(&name)
}

/// Finishes the site in Trunk's staging folder, or else in `dist`.
pub(crate) fn finish() -> Fallible<()> {
    let folder = env::var_os("TRUNK_STAGING_DIR").map_or_else(paths::dist, PathBuf::from);
    finish_in(&folder)
}

fn finish_in(folder: &Path) -> Fallible<()> {
    let mut files = paths::files_in(folder)?
        .into_iter()
        .map(|name| Ok((paths::read(&folder.join(&name))?, name)))
        .collect::<Fallible<Vec<_>>>()?;
    for (bytes, name) in &mut files {
        if is_commented(name) {
            *bytes = without_comments(&String::from_utf8_lossy(bytes)).into_bytes();
            write(&folder.join(name), bytes)?;
        }
    }
    let named = name_of(&files);
    for (bytes, name) in &mut files {
        if name == PAGE {
            *bytes = with_build(bytes, &named)?.into_bytes();
        }
    }
    let worker = worker(&files, &named)?;
    for (bytes, name) in &files {
        if name == PAGE {
            write(&folder.join(name), bytes)?;
        }
    }
    write(&folder.join(WORKER), worker.as_bytes())
}

/// The build's name, which changes when a file or a file name changes.
fn name_of(files: &[(Vec<u8>, String)]) -> String {
    let mut all = String::new();
    for (bytes, name) in files {
        all.extend([name, " ", &sum::integrity(bytes), "\n"]);
    }
    sum::short_name(all.as_bytes())
}

/// Whether comments are left out of this file: of every script and style but the service worker, which has
/// a placeholder in one.
fn is_commented(name: &str) -> bool {
    let ending = Path::new(name).extension();
    ending.is_some_and(|ending| ending == "js" || ending == "css") && name != WORKER
}

/// A script or a style without the comments that fill whole lines. The files hold no text over several
/// lines, so a line that begins like a comment is one.
fn without_comments(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut in_comment = false;
    for line in text.lines() {
        let trimmed = line.trim();
        let begins = trimmed.starts_with("/*");
        if in_comment || begins {
            in_comment = !trimmed.ends_with("*/") && (in_comment || !trimmed.contains("*/"));
            // What follows a comment on its line is kept with it.
            if !begins || in_comment || trimmed.ends_with("*/") {
                continue;
            }
        }
        if !trimmed.is_empty() && !trimmed.starts_with("//") {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    kept
}

fn with_build(page: &[u8], named: &str) -> Fallible<String> {
    let page = String::from_utf8_lossy(page);
    once(&page, BUILD, PAGE)?;
    Ok(page.replace(BUILD, named))
}

/// The text of the service worker for these files. It requests the page as `./`, because some servers
/// redirect `index.html`.
fn worker(files: &[(Vec<u8>, String)], named: &str) -> Fallible<String> {
    let template = files
        .iter()
        .find(|(_, name)| name == WORKER)
        .map(|(bytes, _)| String::from_utf8_lossy(bytes))
        .unwrap_or_default();
    once(&template, BUILD, WORKER)?;
    once(&template, FILES, WORKER)?;
    let mut list = String::new();
    for (bytes, name) in files.iter().filter(|(_, name)| is_kept(name)) {
        let plain = |letter: char| letter.is_ascii_alphanumeric() || "-_./".contains(letter);
        if !name.chars().all(plain) {
            return Err(Trouble::new(
                format!("the site holds a file whose name would need escaping in a URL: {name}"),
                "give it a name of letters, digits, hyphens and dots.",
            ));
        }
        let address = if name == PAGE { "./" } else { name };
        let sum = sum::integrity(bytes);
        list.extend(["\n  [\"", address, "\", \"", &sum, "\"],"]);
    }
    Ok(template
        .replace(BUILD, named)
        .replace(FILES, list.trim_start()))
}

fn once(text: &str, mark: &str, name: &str) -> Fallible<()> {
    if text.matches(mark).count() == 1 {
        return Ok(());
    }
    Err(Trouble::new(
        format!("{name} should hold the placeholder {mark} exactly once"),
        "build the site again: cargo run -p leavewell-dev -- build",
    ))
}

fn write(path: &Path, bytes: &[u8]) -> Fallible<()> {
    fs::write(path, bytes).map_err(|error| {
        Trouble::new(
            format!("{} cannot be written: {error}", path.display()),
            "free some space or mend the permissions, then build the site again.",
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str = "const BUILD = \"@build@\";\nconst FILES = [\n  /* @files@ */\n];\n";

    fn file(name: &str, text: &str) -> (Vec<u8>, String) {
        (text.as_bytes().to_vec(), name.to_owned())
    }

    fn site() -> Vec<(Vec<u8>, String)> {
        vec![
            file("_headers", "/*"),
            file("a.js", "abc"),
            file("index.html", "<p data-build=\"@build@\">"),
            file("sw.js", TEMPLATE),
        ]
    }

    #[test]
    fn the_service_worker_lists_every_file_with_its_digest() {
        let text = worker(&site(), "b1").unwrap_or_default();
        assert!(text.contains("const BUILD = \"b1\";"), "{text}");
        assert!(
            text.contains(
                "  [\"a.js\", \"sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\"],\n"
            ),
            "{text}"
        );
        assert!(text.contains("  [\"./\", \"sha256-"), "{text}");
        for not_kept in ["index.html", "_headers", "\"sw.js", "@"] {
            assert!(!text.contains(not_kept), "{not_kept}: {text}");
        }
    }

    #[test]
    fn comments_that_fill_whole_lines_are_left_out() {
        let script = "// One.\n/** Two\n * three. */\nconst a = 1; // four\n\n/* five */ b();\ngo(\"a//b\");\n";
        assert_eq!(
            without_comments(script),
            "const a = 1; // four\n/* five */ b();\ngo(\"a//b\");\n"
        );
        let style = "/* One.\n   two */\n* { margin: 0; }\n";
        assert_eq!(without_comments(style), "* { margin: 0; }\n");
        assert!(is_commented("a.js") && is_commented("a-1.css"));
        assert!(!is_commented("sw.js") && !is_commented("looks.svg"));
    }

    #[test]
    fn any_change_renames_the_build() {
        let before = name_of(&site());
        assert_eq!(before.len(), 16);
        assert_eq!(before, name_of(&site()), "the same files keep the name");
        for at in 0..site().len() {
            let mut changed = site();
            changed[at].0.push(b' ');
            assert_ne!(before, name_of(&changed), "{}", changed[at].1);
            let mut renamed = site();
            renamed[at].1.push('x');
            assert_ne!(before, name_of(&renamed));
        }
    }

    #[test]
    fn a_site_without_its_placeholders_is_refused() {
        assert!(
            with_build(b"<p data-build=\"@build@\">", "b1").is_ok_and(|p| p.contains("\"b1\""))
        );
        assert!(with_build(b"<p>", "b1").is_err(), "finished already");
        assert!(worker(&[file("a.js", "")], "b1").is_err(), "no worker");
        assert!(worker(&[file("sw.js", "@build@")], "b1").is_err());
        let mut odd = site();
        odd.push(file("a b.js", ""));
        assert!(worker(&odd, "b1").is_err(), "a name that needs escaping");
    }

    #[test]
    fn a_folder_can_be_finished_only_once() {
        let folder = env::temp_dir().join(format!("leavewell-finish-{}", std::process::id()));
        let inner = folder.join("inner");
        fs::create_dir_all(&inner).unwrap_or_default();
        for (bytes, name) in site() {
            assert_eq!(write(&folder.join(name), &bytes), Ok(()));
        }
        assert_eq!(write(&inner.join("b.svg"), b"<svg/>"), Ok(()));
        let done = finish_in(&folder);
        let read = |name: &str| fs::read_to_string(folder.join(name)).unwrap_or_default();
        let (page, worker) = (read(PAGE), read(WORKER));
        let again = finish_in(&folder);
        fs::remove_dir_all(&folder).unwrap_or_default();
        assert_eq!(done, Ok(()));
        assert!(again.is_err());
        let named = page.split('"').nth(1).unwrap_or_default();
        assert_eq!(named.len(), 16, "{page}");
        assert!(worker.contains(&format!("const BUILD = \"{named}\";")));
        assert!(worker.contains("[\"inner/b.svg\", "), "{worker}");
        assert!(
            worker.contains(&sum::integrity(page.as_bytes())),
            "the digest is that of the finished page"
        );
    }
}
