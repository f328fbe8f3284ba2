//! Laws and limits behind the rules, in words, and whom to call.

use std::sync::OnceLock;

use super::catalogue_text::list;
use super::{embedded, table::rows};

/// How reliably a duty is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Seen in force on the stated day.
    Current,
    /// Being changed.
    Revision,
    /// From memory.
    Recalled,
}

/// A law or a limit, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Duty {
    /// Id.
    pub id: &'static str,
    /// The agents it covers.
    pub agents: Vec<&'static str>,
    /// Where it applies.
    pub place: &'static str,
    /// What it says.
    pub words: &'static str,
    /// How reliably it is known.
    pub status: Status,
    /// When it was seen; `-` when recalled.
    pub seen: &'static str,
    /// Source id.
    pub source: &'static str,
}

impl Duty {
    /// The words, with how far they can be relied on.
    #[must_use]
    pub fn told(&self) -> String {
        match self.status {
            Status::Current => format!("{} As seen: {}.", self.words, self.seen),
            Status::Revision => format!(
                "{} Under revision (seen {}): check the current figure with the regulator.",
                self.words, self.seen
            ),
            Status::Recalled => format!(
                "{} Recalled: check the current figure or rule with the regulator.",
                self.words
            ),
        }
    }
}

/// Every duty.
#[must_use]
pub fn duties() -> &'static [Duty] {
    static TEXTS: OnceLock<Vec<Duty>> = OnceLock::new();
    TEXTS.get_or_init(|| embedded(read(include_str!("data/duties.psv"))))
}

/// Whom to call and what to do meanwhile, as pairs of an event and the words for it.
#[must_use]
pub fn signposts() -> Vec<(&'static str, &'static str)> {
    embedded(rows(
        "signposts.psv",
        include_str!("data/signposts.psv"),
        &["id", "what", "words"],
    ))
    .into_iter()
    .map(|r| (r[1], r[2]))
    .collect()
}

fn read(text: &'static str) -> Result<Vec<Duty>, String> {
    let head = ["id", "agents", "where", "words", "status", "seen", "source"];
    rows("duties.psv", text, &head)?
        .into_iter()
        .map(|r| {
            Ok(Duty {
                id: r[0],
                agents: list(r[1]),
                place: r[2],
                words: r[3],
                status: match r[4] {
                    "current" => Status::Current,
                    "revision" => Status::Revision,
                    "recalled" => Status::Recalled,
                    other => return Err(format!("duties.psv: {}: {other}", r[0])),
                },
                seen: r[5],
                source: r[6],
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_recalled_or_changing_duty_refers_to_the_regulator() {
        for duty in duties() {
            let sends = duty.told().contains("check the current figure");
            assert_eq!(sends, duty.status != Status::Current, "{}", duty.id);
            assert_eq!(
                duty.seen == "-",
                duty.status == Status::Recalled,
                "{}",
                duty.id
            );
            assert_eq!(duty.source == "recalled", duty.status == Status::Recalled);
        }
        assert!(duties().iter().any(|d| d.status == Status::Revision));
        assert!(signposts().len() >= 6);
    }
}
