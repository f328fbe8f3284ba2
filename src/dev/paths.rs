//! Where things are: the project, the built site, and the user cache for tools.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use crate::trouble::{Fallible, Trouble};

/// The top folder of the project.
///
/// The place this crate was built in, unless the project was moved since; then the folder
/// the command was called in, or the nearest one above it that holds `Trunk.toml`.
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

/// The built site.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// The edition in one file.
pub(crate) fn one_file() -> PathBuf {
    root().join("dist-one/leavewell.html")
}

/// Every file under a folder, by its name from there with `/` between, sorted.
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

/// The folder for tools installed once per user, outside the project.
pub(crate) fn tools() -> Fallible<PathBuf> {
    cache_from(|name| env::var_os(name).filter(|value| !value.is_empty()))
        .map(|cache| cache.join("tools"))
        .ok_or_else(|| {
            Trouble::new(
                "no home folder is known, so there is no place to install tools",
                "set LEAVEWELL_CACHE to a folder you may write to, and run the command again.",
            )
        })
}

/// `LEAVEWELL_CACHE` as it is; else a folder of our own in the usual cache folder of the system.
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

/// The path without `..`, and on Windows without the `\\?\` prefix that other programs stumble over.
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
    fn the_nearest_setting_names_the_cache() {
        check_cache(&[("LEAVEWELL_CACHE", "/c"), ("HOME", "/h")], Some("/c"));
        check_cache(
            &[("XDG_CACHE_HOME", "/x"), ("HOME", "/h")],
            Some("/x/leavewell"),
        );
        check_cache(&[("HOME", "/h")], Some("/h/.cache/leavewell"));
        check_cache(&[], None);
    }

    #[test]
    fn the_root_holds_the_trunk_settings() {
        assert!(root().join("Trunk.toml").is_file());
    }
}
