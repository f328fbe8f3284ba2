//! A fixed text of the model: an id, a name or a sentence from its data.

use std::borrow::Borrow;
use std::cell::RefCell;
use std::fmt;
use std::ops::Deref;

use serde::{Deserialize, Deserializer, Serialize};

/// A text that lives as long as the program, so that reports are cheap to copy.
///
/// A text deserialised from another program is looked up among those read before and interned if it is new.
/// There are only as many as the model's own data holds, so memory does not grow with use.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(transparent)]
pub struct Text(&'static str);

impl Text {
    /// The text itself.
    #[must_use]
    pub const fn get(self) -> &'static str {
        self.0
    }
}

thread_local! {
    /// In sorted order.
    static READ: RefCell<Vec<&'static str>> = const { RefCell::new(Vec::new()) };
}

impl<'de> Deserialize<'de> for Text {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        Ok(
            READ.with_borrow_mut(|read| match read.binary_search(&text.as_str()) {
                Ok(at) => Self(read[at]),
                Err(at) => {
                    let kept: &'static str = String::leak(text);
                    read.insert(at, kept);
                    Self(kept)
                }
            }),
        )
    }
}

impl From<&'static str> for Text {
    fn from(text: &'static str) -> Self {
        Self(text)
    }
}

impl From<Text> for String {
    fn from(text: Text) -> Self {
        text.0.to_owned()
    }
}

impl Deref for Text {
    type Target = str;

    fn deref(&self) -> &str {
        self.0
    }
}

impl Borrow<str> for Text {
    fn borrow(&self) -> &str {
        self.0
    }
}

impl PartialEq<str> for Text {
    fn eq(&self, other: &str) -> bool {
        self.0 == other
    }
}

impl PartialEq<&str> for Text {
    fn eq(&self, other: &&str) -> bool {
        self.0 == *other
    }
}

impl PartialEq<Text> for &str {
    fn eq(&self, other: &Text) -> bool {
        *self == other.0
    }
}

impl fmt::Debug for Text {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self.0, out)
    }
}

impl fmt::Display for Text {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_read_back_is_equal_and_interned_once() {
        let once: [Text; 2] = serde_json::from_str(r#"["T00", "T00"]"#).unwrap();
        let again: Text = serde_json::from_str(r#""T00""#).unwrap();
        assert_eq!(again, "T00");
        assert!(std::ptr::eq(once[0].get(), once[1].get()));
        assert!(std::ptr::eq(once[0].get(), again.get()));
        assert_eq!(
            serde_json::to_string(&Text::from("T00")).unwrap(),
            r#""T00""#
        );
    }
}
