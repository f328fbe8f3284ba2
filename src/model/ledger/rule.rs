//! The hard and the soft rules as data: what each says and where it comes from. The code that checks them is
//! in `treatment`.

use std::sync::OnceLock;

use super::rule_id::RuleId;
use super::{embedded, table::rows};

/// A hard rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GuardText {
    /// Id, such as `H07a`.
    pub id: RuleId,
    /// Step in the order of decision: 1 people and law, 2 the piece destroying itself, 3 ethics and evidence,
    /// 4 food, 5 always.
    pub step: u8,
    /// What it says.
    pub rule: &'static str,
    /// What can lift it.
    pub lifts: Lifts,
    /// Source id.
    pub source: &'static str,
}

/// What can lift a hard rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lifts {
    /// Nothing.
    Nothing,
    /// A test, a look or a measurement.
    Knowledge,
    /// Something that is done first.
    Work,
    /// A conservator's opinion in writing.
    Opinion,
    /// The consent of whoever decides.
    Consent,
}

impl Lifts {
    fn parse(text: &str) -> Option<Self> {
        Some(match text {
            "nothing" => Self::Nothing,
            "knowledge" => Self::Knowledge,
            "work" => Self::Work,
            "opinion" => Self::Opinion,
            "consent" => Self::Consent,
            _ => return None,
        })
    }
}

/// A soft rule: it counts against a treatment but bars nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SoftText {
    /// Id, such as `S06`.
    pub id: &'static str,
    /// What it says.
    pub words: &'static str,
    /// Whether the figures of the answer include it; otherwise it is only stated.
    pub weighed: bool,
    /// Source id.
    pub source: &'static str,
}

/// Every hard rule, in order of id.
#[must_use]
pub fn guard_texts() -> &'static [GuardText] {
    static TEXTS: OnceLock<Vec<GuardText>> = OnceLock::new();
    TEXTS.get_or_init(|| embedded(read_guards(include_str!("data/guards.psv"))))
}

impl RuleId {
    /// What the rule says and what it rests on.
    #[must_use]
    pub fn fact(self) -> &'static GuardText {
        &guard_texts()[self.place()]
    }
}

/// Every soft rule, in order of id.
#[must_use]
pub fn soft_rules() -> &'static [SoftText] {
    static TEXTS: OnceLock<Vec<SoftText>> = OnceLock::new();
    TEXTS.get_or_init(|| embedded(read_soft(include_str!("data/soft.psv"))))
}

/// The soft rule with this id.
#[must_use]
pub(super) fn soft_rule(id: &str) -> Option<&'static SoftText> {
    soft_rules().iter().find(|s| s.id == id)
}

fn read_guards(text: &'static str) -> Result<Vec<GuardText>, String> {
    rows(
        "guards.psv",
        text,
        &["id", "step", "rule", "lifts", "source"],
    )?
    .into_iter()
    .map(|r| {
        let fault = |what: &str| format!("guards.psv: {}: {what}", r[0]);
        let step = match r[1].as_bytes() {
            [digit @ b'1'..=b'5'] => digit - b'0',
            _ => return Err(fault("no such step")),
        };
        Ok(GuardText {
            id: RuleId::parse(r[0]).ok_or_else(|| fault("not in the ids that were built"))?,
            step,
            rule: r[2],
            lifts: Lifts::parse(r[3]).ok_or_else(|| fault("nothing of that sort lifts a rule"))?,
            source: r[4],
        })
    })
    .collect()
}

fn read_soft(text: &'static str) -> Result<Vec<SoftText>, String> {
    rows("soft.psv", text, &["id", "words", "enters", "source"])?
        .into_iter()
        .map(|r| {
            Ok(SoftText {
                id: r[0],
                words: r[1],
                weighed: match r[2] {
                    "weighed" => true,
                    "shown" => false,
                    other => return Err(format!("soft.psv: {}: {other}", r[0])),
                },
                source: r[3],
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_occurs_once_and_in_order() {
        let mut hard: Vec<String> = (1..=31).map(|n| format!("H{n:02}")).collect();
        hard.insert(7, "H07a".to_owned());
        let ids: Vec<&str> = guard_texts().iter().map(|g| g.id.text()).collect();
        assert_eq!(ids, hard);
        let soft: Vec<String> = (1..=18).map(|n| format!("S{n:02}")).collect();
        assert_eq!(soft_rules().iter().map(|s| s.id).collect::<Vec<_>>(), soft);
    }

    #[test]
    fn nothing_entered_lifts_safety_or_law() {
        // Of the things that lift rules, only a conservator's opinion and consent are entered, and neither
        // lifts step 1 or 2.
        for g in guard_texts() {
            if g.step <= 2 || g.step == 4 {
                assert!(
                    ![Lifts::Opinion, Lifts::Consent].contains(&g.lifts),
                    "{}",
                    g.id
                );
            }
        }
        assert_eq!(RuleId::H14.fact().lifts, Lifts::Opinion);
    }
}
