//! What a verdict rests on.

use std::fmt;

use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::rule_id::RuleId;

/// What a verdict rests on.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ground {
    /// A hard rule.
    Rule(RuleId),
    /// Something the work plainly needs, such as work that comes first; no rule has to say so.
    Need,
}

impl Ground {
    /// The id as text.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::Rule(id) => id.text(),
            Self::Need => "needs",
        }
    }

    /// The ground with this id.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        match text {
            "needs" => Some(Self::Need),
            id => RuleId::parse(id).map(Self::Rule),
        }
    }

    /// The rule, if it is one.
    #[must_use]
    pub fn rule(self) -> Option<RuleId> {
        match self {
            Self::Rule(id) => Some(id),
            Self::Need => None,
        }
    }
}

impl From<RuleId> for Ground {
    fn from(id: RuleId) -> Self {
        Self::Rule(id)
    }
}

impl PartialEq<RuleId> for Ground {
    fn eq(&self, id: &RuleId) -> bool {
        self.rule() == Some(*id)
    }
}

impl fmt::Debug for Ground {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.text())
    }
}

impl Serialize for Ground {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.text())
    }
}

impl<'de> Deserialize<'de> for Ground {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let text = String::deserialize(reader)?;
        Self::parse(&text).ok_or_else(|| D::Error::custom(text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_ground_is_found_by_its_text() {
        for ground in RuleId::all().map(Ground::Rule).chain([Ground::Need]) {
            assert_eq!(Ground::parse(ground.text()), Some(ground));
        }
        assert_eq!(Ground::parse("need"), None);
    }
}
