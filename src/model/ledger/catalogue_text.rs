//! Text that the page of all treatments shows beyond the usual words about a treatment; no other page
//! includes it.

use std::sync::OnceLock;

use super::rule::{SoftText, soft_rule};
use super::{embedded, table::rows};

/// How the risk of a bad result on one sort of piece is described.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Risk {
    /// No significant risk.
    None,
    /// By the ledger's figures for this treatment.
    Ledger,
    /// By class: chance `1` to `4` and size `a` to `c`, figures `hazard.class.*`.
    Class(u8, char),
}

/// More about a treatment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CatalogueText {
    /// Id, such as `T09b`.
    pub id: &'static str,
    /// What has to be in place first.
    pub needs: &'static str,
    /// What it must not be combined with.
    pub not_with: &'static str,
    /// What it changes.
    pub does: &'static str,
    /// What can go wrong.
    pub bad: &'static str,
    /// How likely and how bad, on fused plate, close and French plate, nickel silver, Britannia
    /// metal, and other electroplate.
    pub risks: [Risk; 5],
    /// Questions for whoever would do it, beyond the first.
    pub ask: Vec<&'static str>,
    /// One thing to keep in mind.
    pub care: &'static str,
    /// What counts against it without barring it.
    pub soft: Vec<&'static SoftText>,
}

/// The further text of every treatment, in order of id.
#[must_use]
pub fn catalogue_texts() -> &'static [CatalogueText] {
    static TEXTS: OnceLock<Vec<CatalogueText>> = OnceLock::new();
    TEXTS.get_or_init(|| embedded(read(include_str!("data/catalogue.psv"))))
}

/// The further text of one treatment.
#[must_use]
pub fn catalogue_text(id: &str) -> Option<&'static CatalogueText> {
    catalogue_texts().iter().find(|t| t.id == id)
}

fn read(text: &'static str) -> Result<Vec<CatalogueText>, String> {
    let head = [
        "id",
        "needs",
        "not_with",
        "does",
        "bad",
        "fused",
        "close",
        "nickel",
        "britannia",
        "other",
        "ask",
        "care",
        "soft",
    ];
    rows("catalogue.psv", text, &head)?
        .into_iter()
        .map(|r| {
            let fault = |what: &str| format!("catalogue.psv: {}: {what} is unknown", r[0]);
            let mut risks = [Risk::None; 5];
            for (risk, code) in risks.iter_mut().zip(&r[5..10]) {
                *risk = risk_of(code).ok_or_else(|| fault(code))?;
            }
            Ok(CatalogueText {
                id: r[0],
                needs: r[1],
                not_with: r[2],
                does: r[3],
                bad: r[4],
                risks,
                ask: r[10].split(" / ").collect(),
                care: r[11],
                soft: list(r[12])
                    .into_iter()
                    .map(|id| soft_rule(id).ok_or_else(|| fault(id)))
                    .collect::<Result<_, _>>()?,
            })
        })
        .collect()
}

fn risk_of(code: &str) -> Option<Risk> {
    match code.as_bytes() {
        b"-" => Some(Risk::None),
        b"ledger" => Some(Risk::Ledger),
        [chance @ b'1'..=b'4', size @ b'a'..=b'c'] => {
            Some(Risk::Class(chance - b'0', char::from(*size)))
        }
        _ => None,
    }
}

pub(super) fn list(field: &'static str) -> Vec<&'static str> {
    if field == "none" {
        Vec::new()
    } else {
        field.split(',').map(str::trim).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::treatment_texts;

    #[test]
    fn every_treatment_has_its_row() {
        let ids: Vec<_> = catalogue_texts().iter().map(|t| t.id).collect();
        let expected: Vec<_> = treatment_texts().iter().map(|t| t.id).collect();
        assert_eq!(ids, expected);
        for t in catalogue_texts() {
            for words in [t.needs, t.not_with, t.does, t.bad, t.care] {
                assert!(words.ends_with('.'), "{}: {words}", t.id);
            }
            for q in &t.ask {
                assert!(q.ends_with('?'), "{}: {q}", t.id);
            }
        }
    }

    #[test]
    fn a_risk_is_one_of_the_codes() {
        assert_eq!(risk_of("2b"), Some(Risk::Class(2, 'b')));
        assert_eq!(risk_of("-"), Some(Risk::None));
        assert_eq!(risk_of("5a"), None);
        assert_eq!(risk_of("2d"), None);
    }
}
