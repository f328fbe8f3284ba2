//! What wear does to value in every draw: as it is, after one cleaning, and once replated.

use super::column::Column;
use super::sample::{Dim, Sample};
use crate::identity::Kind;
use crate::ledger::Ledger;
use crate::value::{Class, ConditionTable};

/// Wear factors over the sample.
#[derive(Clone)]
pub(super) struct Wear {
    pub(super) as_it_is: Column,
    pub(super) cleaned: Column,
    pub(super) replated: Column,
}

/// The wear factors as they were last made, and what from, for the next answer to go on from.
pub(super) struct WearBefore {
    tables: Tables,
    rows: Vec<Row>,
    shown: Column,
    shown_cleaned: Column,
    wear: Wear,
}

type Tables = [Option<ConditionTable>; 8];

/// What decides which factors a draw has.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Row {
    /// Solid silver shows no wear; replating it goes by the table of its class.
    Solid(Class),
    /// A fused body plated again carries the replated factor of its class, and wears like
    /// electroplate.
    PlatedAgain(Class),
    Plain(Class),
}

impl Row {
    fn of(kind: Kind, class: Class) -> Self {
        match kind {
            k if !k.has_layer() => Self::Solid(class),
            Kind::Rfp => Self::PlatedAgain(class),
            _ => Self::Plain(class),
        }
    }

    fn class(self) -> Class {
        match self {
            Self::Solid(class) | Self::PlatedAgain(class) | Self::Plain(class) => class,
        }
    }
}

impl Wear {
    /// For the kinds and classes drawn and the bare shares that show, as it is and cleaned. A draw
    /// whose row and shares are to the bit what they were has the factors it had.
    pub(super) fn new(
        ledger: &Ledger,
        kind: &[Kind],
        class: &[Class],
        (shown, shown_cleaned): (&Column, &Column),
        sample: &Sample,
    ) -> Self {
        let rows: Vec<Row> = (kind.iter().zip(class))
            .map(|(kind, class)| Row::of(*kind, *class))
            .collect();
        let again = rows.iter().any(|row| matches!(row, Row::PlatedAgain(_)));
        let tables = Class::ALL.map(|c| {
            let used = class.contains(&c) || (again && c == Class::C4);
            used.then(|| ConditionTable::of(c, ledger))
        });
        let before = (sample.before.borrow_mut().wear.take()).filter(|b| {
            let pairs = tables.iter().zip(&b.tables);
            pairs.into_iter().all(|(now, then)| match (now, then) {
                (Some(now), Some(then)) => now == then,
                _ => true,
            })
        });
        let wear = Self::drawn(
            &tables,
            &rows,
            (shown, shown_cleaned),
            sample,
            before.as_ref(),
        );
        sample.before.borrow_mut().wear = Some(WearBefore {
            tables,
            rows,
            shown: shown.clone(),
            shown_cleaned: shown_cleaned.clone(),
            wear: wear.clone(),
        });
        wear
    }

    fn drawn(
        tables: &Tables,
        rows: &[Row],
        (shown, shown_cleaned): (&Column, &Column),
        sample: &Sample,
        before: Option<&WearBefore>,
    ) -> Self {
        let n = rows.len();
        let (z, z_replated) = (sample.z(Dim::Wear), sample.z(Dim::Replated));
        let start = |of: fn(&Wear) -> &Column| {
            before.map_or_else(|| vec![1.0; n], |b| of(&b.wear).to_vec())
        };
        let mut as_it_is = start(|w| &w.as_it_is);
        let mut cleaned = start(|w| &w.cleaned);
        let mut replated = start(|w| &w.replated);
        let same = |a: &Column, b: &Column, i: usize| a[i].to_bits() == b[i].to_bits();
        for i in 0..n {
            let known = before.filter(|b| b.rows[i] == rows[i]);
            let Some(table) = &tables[rows[i].class() as usize] else {
                continue;
            };
            if known.is_none() {
                replated[i] = table.replated(z_replated[i]);
            }
            let factor = |share: f64| match (rows[i], &tables[Class::C4 as usize]) {
                (Row::Solid(_), _) => 1.0,
                (Row::PlatedAgain(_), Some(electroplate)) => {
                    replated[i] * electroplate.wear(share, z[i])
                }
                _ => table.wear(share, z[i]),
            };
            if !known.is_some_and(|b| same(&b.shown, shown, i)) {
                as_it_is[i] = factor(shown[i]);
            }
            if !known.is_some_and(|b| same(&b.shown_cleaned, shown_cleaned, i)) {
                cleaned[i] = factor(shown_cleaned[i]);
            }
        }
        Self {
            as_it_is: as_it_is.into(),
            cleaned: cleaned.into(),
            replated: replated.into(),
        }
    }
}
