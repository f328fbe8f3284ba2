//! How much of the piece was looked at.

use crate::ledger::Ledger;
use crate::record::{Case, Form, PartName};
use crate::silver::PART_AREA;

/// The share of the piece's area that was examined for bare metal or measured, 0 to 1, and the largest part
/// that was not. The inside counts only if it is recorded.
pub(super) fn looked_at(case: &Case, ledger: &Ledger) -> (f64, Option<PartName>) {
    let area = |name: PartName| ledger.value(PART_AREA[name as usize]).max(0.0);
    let looked = |name: PartName| {
        case.part(name)
            .is_some_and(|p| p.bleed.is_some() || !p.readings.is_empty())
    };
    let mut names: Vec<PartName> = case.piece.form.unwrap_or(Form::Other).parts().to_vec();
    for part in &case.parts {
        if !names.contains(&part.name) {
            names.push(part.name);
        }
    }
    names.retain(|n| *n != PartName::Interior || looked(*n));
    let all: f64 = names.iter().map(|n| area(*n)).sum();
    let seen: f64 = names.iter().filter(|n| looked(**n)).map(|n| area(*n)).sum();
    let largest = names
        .iter()
        .filter(|n| !looked(**n))
        .max_by(|a, b| area(**a).total_cmp(&area(**b)));
    (seen / all.max(f64::MIN_POSITIVE), largest.copied())
}
