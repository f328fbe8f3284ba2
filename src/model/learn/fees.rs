//! Fees from the newest statement of a house, and how often what is offered sells.

use super::evidence::{Closing, sold_on};
use crate::ledger::{FigureId, Ledger};
use crate::maths::Beta;
use crate::record::{Ending, TaughtFigure};

/// The fees of the newest statement, each exact, and the chance of a sale from all that was offered. Pieces
/// left out tell nothing.
#[must_use]
pub fn taught_fees(closings: &[Closing]) -> Vec<TaughtFigure> {
    let counted = || closings.iter().filter(|c| !c.case.closed.left_out);
    let mut taught = Vec::new();
    let newest = counted()
        .filter(|c| c.case.closed.outcome == Some(Ending::Sold))
        .filter(|c| c.case.closed.sale.statement != crate::record::Statement::default())
        // Of two on one day, or without a day, the key decides, whatever their order.
        .max_by(|a, b| (sold_on(&a.case), &a.id).cmp(&(sold_on(&b.case), &b.id)));
    if let Some(closing) = newest {
        let of = closing.case.closed.sale.statement;
        let fees = [
            (FigureId::FEE_COMMISSION, of.commission),
            (FigureId::FEE_LOT, of.lot),
            (FigureId::FEE_VAT, of.vat),
            (FigureId::FEE_INSURANCE, of.insurance),
        ];
        taught.extend(fees.into_iter().filter_map(|(figure, fee)| {
            fee.map(|value| TaughtFigure {
                figure,
                low: value,
                value,
                high: value,
            })
        }));
    }
    let ended = |ending| {
        let all = counted().filter(|c| c.case.closed.outcome == Some(ending));
        all.count() as f64
    };
    let (sold, unsold) = (ended(Ending::Sold), ended(Ending::Unsold));
    if sold + unsold > 0.0 {
        let ledger = Ledger::standard();
        let law = Beta::new(
            ledger.value(FigureId::LEARN_SOLD_YES) + sold,
            ledger.value(FigureId::LEARN_SOLD_NO) + unsold,
        );
        let at = |u: f64| law.quantile(u, f64::NAN);
        taught.push(TaughtFigure {
            figure: FigureId::FEE_SOLD,
            low: at(0.1),
            value: at(0.5),
            high: at(0.9),
        });
    }
    taught
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Draft;

    fn closing(id: &str, fields: &[(&str, &str)]) -> Closing {
        let mut draft = Draft::default();
        for (field, text) in fields {
            draft.set(&["closed.", field].concat(), text);
        }
        Closing {
            id: id.to_owned(),
            case: draft.read().0,
        }
    }

    #[test]
    fn the_newest_statement_counts_and_so_does_what_did_not_sell() {
        let sold = |on, commission| {
            [
                ("outcome", "sold"),
                ("sale.on", on),
                ("sale.statement.commission_pct", commission),
            ]
        };
        let mut closings = vec![
            closing("a", &sold("2026-05-01", "12")),
            closing("b", &sold("2025-05-01", "17")),
            closing("c", &[("outcome", "unsold")]),
        ];
        let taught = taught_fees(&closings);
        let of = |id| taught.iter().find(|t| t.figure == id).copied();
        let commission = of(FigureId::FEE_COMMISSION).unwrap();
        assert!((commission.value - 0.12).abs() < 1e-12);
        assert_eq!(commission.low.to_bits(), commission.high.to_bits());
        assert_eq!(of(FigureId::FEE_LOT), None);
        // Beta(10.5, 3.1), by an independent library.
        let chance = of(FigureId::FEE_SOLD).unwrap();
        assert!((chance.value - 0.785).abs() < 0.005, "{chance:?}");
        closings.reverse();
        assert_eq!(taught_fees(&closings), taught);
        assert!(taught_fees(&closings[3..]).is_empty());
    }
}
