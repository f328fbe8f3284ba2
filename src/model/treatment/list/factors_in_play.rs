//! Which condition factors a record brings into the price. What is learnt of prices and the list of factors on the
//! page of money read it here.

use super::{Value, as_found};
use crate::ledger::{FigureId, Ledger, signs};
use crate::record::{Case, Corrosion, FLAWS, Joint, Tarnish};
use crate::terms::ShortSort;
use crate::treatment::{Fault, Faults, Size};
use crate::value::{Class, factor_rows as rows};

/// The factors for a class of value, each once, in the order of the ledger.
#[must_use]
pub fn factors_in_play(case: &Case, class: Class, ledger: &Ledger) -> Vec<FigureId> {
    let faults = Faults::of(case, ledger);
    let of_faults = faults.0.iter().filter_map(|found| match found.fault {
        // Bright metal is no fault, and the first colour is part of the market's ordinary piece.
        Fault::Tarnish => tarnish(case, found.size),
        _ => match as_found(found).value {
            Value::Row(row) => Some(row),
            _ => None,
        },
    });
    let any_joint = |joint: Joint| case.parts.iter().any(|p| p.has_joint(joint));
    let neat = any_joint(Joint::NeatRepair) && !any_joint(Joint::GreyRepair);
    let others = [
        neat.then_some(rows::NEAT_REPAIR),
        case.has_seen_any(&signs::LET_IN)
            .then_some(rows::ARMS_ORIGINAL),
    ];
    let of_rows = of_faults.chain(others.into_iter().flatten());
    let flaws = FLAWS.iter().filter(|flaw| case.flaws.contains(flaw));
    let of_flaws = flaws.filter_map(|flaw| {
        let id = ["value.factor.", flaw, ".", class.group()].concat();
        FigureId::parse(&id)
    });
    let rusts = case.has_seen_any(&signs::RUST)
        || (case.parts.iter()).any(|p| p.corrosion == Some(Corrosion::Rust));
    let rust = (class == Class::B && rusts).then_some(FigureId::VALUE_FACTOR_RUST_A);
    let mut all: Vec<FigureId> = of_rows
        .map(|row| row[class.group_place()])
        .chain(of_flaws)
        .chain(rust)
        .collect();
    all.order_by(Ord::cmp);
    all.dedup();
    all
}

/// Tarnish in colours, or heavy; the first yellow changes no price.
fn tarnish(case: &Case, size: Size) -> Option<crate::value::ByGroup> {
    let coloured = |t: Tarnish| matches!(t, Tarnish::Brown | Tarnish::Purple | Tarnish::Blue);
    if size == Size::Large {
        return Some(rows::TARNISH_HEAVY);
    }
    let any = case.parts.iter().any(|p| p.tarnish.is_some_and(coloured));
    any.then_some(rows::TARNISH_COLOURED)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Draft;

    fn of(class: Class, set: &[(&str, &str)]) -> Vec<&'static str> {
        let mut draft = Draft::default();
        for (path, text) in set {
            draft.set(path, text);
        }
        let ids = factors_in_play(&draft.read().0, class, Ledger::standard());
        ids.into_iter().map(FigureId::text).collect()
    }

    #[test]
    fn each_recorded_fault_brings_the_factor_that_the_weighing_uses() {
        assert!(of(Class::A1, &[]).is_empty());
        for (path, text, factor) in [
            ("parts[part=handle].joint", "open", "loose"),
            ("parts[part=body].joint", "leaking", "leak"),
            ("parts[part=body].split", "through", "split"),
            ("parts[part=body].split", "crease", "dents_minor"),
            ("parts[part=body].dents", "moderate", "dents_moderate"),
            ("parts[part=body].tarnish", "brown", "tarnish_coloured"),
            ("parts[part=body].tarnish", "black", "tarnish_heavy"),
            ("parts[part=interior].interior", "bare", "lining_gone"),
            ("parts[part=interior].gilding", "gone", "gilding_gone"),
            ("parts[part=finial].loss", "small", "part_missing_minor"),
            ("parts[part=spout].joint", "neat_repair", "neat_repair"),
            ("parts[part=spout].joint", "grey_repair", "solder_repair"),
        ] {
            let expected = ["value.factor.", factor, ".A"].concat();
            assert_eq!(of(Class::A1, &[(path, text)]), [expected], "{path} {text}");
        }
        let rust = [("parts[part=body].corrosion", "rust")];
        assert_eq!(of(Class::B, &rust), ["value.factor.rust.A"]);
        assert!(of(Class::A1, &rust).is_empty());
    }
}
