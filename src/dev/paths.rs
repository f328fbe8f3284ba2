//! Paths: the project, the built site, and the user cache for tools.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use crate::trouble::{Fallible, Trouble};

/// The project's root folder.
///
/// This is where the crate was built. If the project has moved since, it is the current folder or the
/// nearest parent that holds `Trunk.toml`.
pub(crate) fn root() -> PathBuf {
    let built_in = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    if let Ok(found) = plain(&built_in)
        && found.join("Trunk.toml").is_file()
    {
        return found;
    }
    let here = env::current_dir().unwrap_or_default();
    here.ancestors()
        .find(|folder| folder.join("Trunk.toml").is_file())
        .map_or_else(|| here.clone(), Path::to_path_buf)
}

/// The folder of the built site.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// The file of the single-file edition.
pub(crate) fn one_file() -> PathBuf {
    root().join("dist-one/leavewell.html")
}

/// Every file under a folder as a sorted list of relative paths with `/` separators.
pub(crate) fn files_in(folder: &Path) -> Fallible<Vec<String>> {
    fn collect(top: &Path, folder: &Path, names: &mut Vec<String>) -> std::io::Result<()> {
        for entry in fs::read_dir(folder)? {
            let path = entry?.path();
            if path.is_dir() {
                collect(top, &path, names)?;
            } else {
                let name = path.strip_prefix(top).unwrap_or(&path);
                names.push(name.to_string_lossy().replace('\\', "/"));
            }
        }
        Ok(())
    }
    let mut names = Vec::new();
    collect(folder, folder, &mut names).map_err(|error| unreadable(folder, &error))?;
    names.sort();
    Ok(names)
}

/// The bytes of a file of the built site.
pub(crate) fn read(path: &Path) -> Fallible<Vec<u8>> {
    fs::read(path).map_err(|error| unreadable(path, &error))
}

fn unreadable(path: &Path, error: &std::io::Error) -> Trouble {
    Trouble::new(
        format!("{} cannot be read: {error}", path.display()),
        "build the site first: cargo run -p leavewell-dev -- build",
    )
}

/// The folder for tools, which are installed once per user and outside the project.
pub(crate) fn tools() -> Fallible<PathBuf> {
    cache_from(|name| env::var_os(name).filter(|value| !value.is_empty()))
        .map(|cache| cache.join("tools"))
        .ok_or_else(|| {
            Trouble::new(
                "the home folder is unknown, so there is nowhere to install tools",
                "set LEAVEWELL_CACHE to a folder you may write to, and run the command again.",
            )
        })
}

/// `LEAVEWELL_CACHE` as given, or else a `leavewell` folder in the system's usual cache folder.
fn cache_from(variable: impl Fn(&str) -> Option<std::ffi::OsString>) -> Option<PathBuf> {
    let variable = |name: &str| variable(name).map(PathBuf::from);
    variable("LEAVEWELL_CACHE").or_else(|| {
        variable("XDG_CACHE_HOME")
            .or_else(|| variable("LOCALAPPDATA").filter(|_| cfg!(windows)))
            .or_else(|| variable("HOME").map(|home| home.join(".cache")))
            .or_else(|| variable("USERPROFILE").map(|home| home.join(".cache")))
            .map(|caches| caches.join("leavewell"))
    })
}

/// The path without `..`, and on Windows without the `\\?\` prefix, which some programs reject.
fn plain(path: &Path) -> std::io::Result<PathBuf> {
    let whole = path.canonicalize()?;
    let text = whole.to_string_lossy();
    Ok(text
        .strip_prefix(r"\\?\")
        .map_or_else(|| whole.clone(), PathBuf::from))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check_cache(set: &[(&str, &str)], expected: Option<&str>) {
        let found = cache_from(|name| {
            set.iter()
                .find(|(known, _)| *known == name)
                .map(|(_, value)| (*value).into())
        });
        assert_eq!(found, expected.map(PathBuf::from));
    }

    #[test]
    fn the_most_specific_variable_sets_the_cache_folder() {
        check_cache(&[("LEAVEWELL_CACHE", "/c"), ("HOME", "/h")], Some("/c"));
        check_cache(
            &[("XDG_CACHE_HOME", "/x"), ("HOME", "/h")],
            Some("/x/leavewell"),
        );
        check_cache(&[("HOME", "/h")], Some("/h/.cache/leavewell"));
        check_cache(&[], None);
    }

    #[test]
    fn the_root_folder_holds_trunk_toml() {
        assert!(root().join("Trunk.toml").is_file());
    }
}
