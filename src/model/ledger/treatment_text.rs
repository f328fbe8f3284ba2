//! The words about treatments and hazards: what is done, what is lost, what to be careful of.

use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use super::{embedded, table::rows};
use crate::terms::{Reversibility, Treatment};

/// Whether a treatment is offered for these pieces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offered {
    /// Weighed as usual.
    Yes,
    /// Shown with the reason it never suits these pieces.
    Never,
}

/// What an owner should know about a treatment before asking for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TreatmentText {
    /// Id, such as `T09b`.
    pub id: &'static str,
    /// Short name in trade words.
    pub name: &'static str,
    /// What is done to the piece, for an owner.
    pub plain: &'static str,
    /// Worst reversibility code, `V0` to `V4`.
    pub reversibility: &'static str,
    /// Who may do it: letters O, S, C, P, L.
    pub who: &'static str,
    /// Effort class, `E0` to `E4`.
    pub effort: &'static str,
    /// Preventive, remedial, restoration, investigation.
    pub class: &'static str,
    /// What is gone for good.
    pub lost: &'static str,
    /// One question to ask the person who would do it.
    pub ask: &'static str,
    /// Whether it is weighed.
    pub offered: Offered,
}

/// Who may do a treatment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// The owner.
    Owner,
    /// A silversmith or plater.
    Silversmith,
    /// A conservator.
    Conservator,
    /// A plating works with a permit.
    PlatingWorks,
    /// A laboratory.
    Laboratory,
}

impl Hand {
    /// Its letter in the data and in the report.
    #[must_use]
    pub fn letter(self) -> char {
        match self {
            Self::Owner => 'O',
            Self::Silversmith => 'S',
            Self::Conservator => 'C',
            Self::PlatingWorks => 'P',
            Self::Laboratory => 'L',
        }
    }
}

impl TreatmentText {
    /// Whether this hand may do it.
    #[must_use]
    pub fn may_be_done_by(&self, hand: Hand) -> bool {
        self.who.contains(hand.letter())
    }

    /// Whether it is only preventive conservation, which changes nothing on the piece.
    #[must_use]
    pub fn is_preventive(&self) -> bool {
        self.class == "preventive"
    }
}

/// How serious a caution is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Stop: people or the piece would come to harm.
    Stop,
    /// Take care.
    Care,
    /// Worth knowing.
    Note,
}

/// A caution, with its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CautionText {
    /// Id, such as `caution.T09`.
    pub id: &'static str,
    /// How serious.
    pub level: Level,
    /// Ids of the treatments it covers.
    pub treatments: Vec<&'static str>,
    /// Harmful agents that the treatment can involve.
    pub agents: Vec<&'static str>,
    /// The words.
    pub text: &'static str,
    /// Source id.
    pub source: &'static str,
}

/// Every treatment's words, in order of id.
#[must_use]
pub fn treatment_texts() -> &'static [TreatmentText] {
    static TEXTS: OnceLock<Vec<TreatmentText>> = OnceLock::new();
    TEXTS.get_or_init(|| embedded(read_treatments(include_str!("data/treatments.psv"))))
}

/// The words of one treatment.
#[must_use]
pub fn treatment_text(id: &str) -> Option<&'static TreatmentText> {
    treatment_texts().iter().find(|t| t.id == id)
}

/// Every caution.
#[must_use]
pub fn cautions() -> &'static [CautionText] {
    static TEXTS: OnceLock<Vec<CautionText>> = OnceLock::new();
    TEXTS.get_or_init(|| embedded(read_cautions(include_str!("data/cautions.psv"))))
}

/// The caution with this id.
#[must_use]
pub fn caution(id: &str) -> Option<&'static CautionText> {
    cautions().iter().find(|c| c.id == id)
}

/// What the ledger says about a treatment.
impl Treatment {
    /// The words about it.
    ///
    /// # Panics
    /// Never with the shipped data: a test looks up every treatment.
    #[must_use]
    pub fn text(self) -> &'static TreatmentText {
        treatment_text(self.id()).unwrap_or_else(|| unreachable!("no words for {}", self.id()))
    }

    /// Short name in trade words.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.text().name
    }

    /// How far it can be undone.
    #[must_use]
    pub fn reversibility(self) -> Reversibility {
        Reversibility::parse(self.text().reversibility).unwrap_or(Reversibility::V0)
    }

    /// Whether it is weighed, or shown as one that never suits these pieces.
    #[must_use]
    pub fn offered(self) -> Offered {
        self.text().offered
    }
}

fn read_treatments(text: &'static str) -> Result<Vec<TreatmentText>, String> {
    let head = [
        "id",
        "name",
        "plain",
        "reversibility",
        "who",
        "effort",
        "class",
        "lost",
        "ask",
        "offered",
    ];
    rows("treatments.psv", text, &head)?
        .into_iter()
        .map(|r| {
            Ok(TreatmentText {
                id: r[0],
                name: r[1],
                plain: r[2],
                reversibility: r[3],
                who: r[4],
                effort: r[5],
                class: r[6],
                lost: r[7],
                ask: r[8],
                offered: match r[9] {
                    "yes" => Offered::Yes,
                    "never" => Offered::Never,
                    other => {
                        return Err(format!("treatments.psv: {}: offered is not {other}", r[0]));
                    }
                },
            })
        })
        .collect()
}

fn read_cautions(text: &'static str) -> Result<Vec<CautionText>, String> {
    rows(
        "cautions.psv",
        text,
        &["id", "level", "treatments", "agents", "text", "source"],
    )?
    .into_iter()
    .map(|r| {
        Ok(CautionText {
            id: r[0],
            level: match r[1] {
                "stop" => Level::Stop,
                "care" => Level::Care,
                "note" => Level::Note,
                other => return Err(format!("cautions.psv: {}: level is not {other}", r[0])),
            },
            treatments: r[2].split(',').map(str::trim).collect(),
            agents: if r[3] == "none" {
                Vec::new()
            } else {
                r[3].split(',').map(str::trim).collect()
            },
            text: r[4],
            source: r[5],
        })
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_treatment_has_words_and_a_known_reversibility() {
        for t in Treatment::ALL {
            assert!(!t.name().is_empty());
            assert!(
                Reversibility::parse(t.text().reversibility).is_some(),
                "{}",
                t.id()
            );
        }
    }

    #[test]
    fn the_lists_of_treatments_match_the_data() {
        for t in Treatment::ALL {
            assert_ne!(
                Treatment::WEIGHED.contains(&t),
                Treatment::NEVER.contains(&t),
                "{}",
                t.id()
            );
            let expected = if Treatment::WEIGHED.contains(&t) {
                Offered::Yes
            } else {
                Offered::Never
            };
            assert_eq!(t.offered(), expected, "{}", t.id());
        }
    }

    #[test]
    fn every_treatment_has_its_caution() {
        assert_eq!(treatment_texts().len(), 25);
        for t in treatment_texts() {
            assert!(
                caution(&format!("caution.{}", t.id)).is_some(),
                "{} has no caution",
                t.id
            );
        }
    }

    #[test]
    fn the_deferral_line_has_its_exact_words() {
        assert_eq!(
            caution("caution.deferral").map(|c| c.text),
            Some(
                "This is general information, not a work instruction. Follow the law and codes where you \
                 live and the product's safety sheet. If unsure, stop and ask a qualified conservator, licensed \
                 plater, or your safety regulator. They decide, not this tool."
            )
        );
    }
}
