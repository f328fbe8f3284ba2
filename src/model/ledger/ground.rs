//! What a verdict rests on.

use std::fmt;

use super::rule_id::RuleId;
use crate::terms::as_ids;

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

as_ids!(Ground by text);

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
