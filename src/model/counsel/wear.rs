//! The effect of wear on value in every draw: as it is, after one cleaning, and after replating.

use std::rc::Rc;

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
    tables: Rc<Tables>,
    rows: Rc<Vec<WearRow>>,
}

/// What the three buyers (collector, decorator and user) see in one draw.
#[derive(Clone, Copy)]
pub(super) struct Seen {
    /// Bare share as each of them counts it.
    pub(super) bare: [f64; 3],
    /// A factor that each of them applies.
    pub(super) factor: [f64; 3],
}

impl Wear {
    /// The wear factor of one draw if the buyers see different things, because of a patch or a tint.
    pub(super) fn for_buyers(&self, i: usize, (z, z_replated): (f64, f64), seen: Seen) -> f64 {
        let row = self.rows[i];
        let Some(table) = &self.tables[row.class() as usize] else {
            return 1.0;
        };
        let mixed = |table: &ConditionTable| -> f64 {
            let mix = table.mix();
            (0..3)
                .map(|b| mix[b] * table.wear_for(b, seen.bare[b], z) * seen.factor[b])
                .sum()
        };
        match (row, &self.tables[Class::C4 as usize]) {
            (WearRow::Solid(_), _) => 1.0,
            (WearRow::PlatedAgain(_), Some(electroplate)) => {
                table.replated(z_replated) * mixed(electroplate)
            }
            _ => mixed(table),
        }
    }

    /// The wear factor at one bare share that all buyers see.
    pub(super) fn at_share(&self, i: usize, z: (f64, f64), share: f64) -> f64 {
        self.for_buyers(
            i,
            z,
            Seen {
                bare: [share; 3],
                factor: [1.0; 3],
            },
        )
    }
}

/// The last wear factors with their inputs, reused if the inputs did not change.
pub(super) struct WearBefore {
    tables: Rc<Tables>,
    rows: Rc<Vec<WearRow>>,
    shown: Column,
    shown_cleaned: Column,
    wear: Wear,
}

pub(super) type Tables = [Option<ConditionTable>; 8];

/// What determines the factors of a draw.
#[derive(Clone, Copy, PartialEq, Eq)]
enum WearRow {
    /// Solid silver shows no wear; for replating, the table of its class applies.
    Solid(Class),
    /// A replated fused body has the replated factor of its class, and wears like electroplate.
    PlatedAgain(Class),
    Plain(Class),
}

impl WearRow {
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
    /// The wear factors for the kinds and classes drawn and the visible bare shares, as it is and cleaned.
    /// Draws whose row and shares did not change keep their cached factors.
    pub(super) fn new(
        ledger: &Ledger,
        kind: &[Kind],
        class: &[Class],
        (shown, shown_cleaned): (&Column, &Column),
        sample: &Sample,
    ) -> Self {
        let rows: Rc<Vec<WearRow>> = Rc::new(
            (kind.iter().zip(class))
                .map(|(kind, class)| WearRow::of(*kind, *class))
                .collect(),
        );
        let again = rows
            .iter()
            .any(|row| matches!(row, WearRow::PlatedAgain(_)));
        let tables = Rc::new(Class::ALL.map(|c| {
            let used = class.contains(&c) || (again && c == Class::C4);
            used.then(|| ConditionTable::of(c, ledger))
        }));
        let before = (sample.before.borrow_mut().wear.take()).filter(|b| {
            let pairs = tables.iter().zip(b.tables.iter());
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
        tables: &Rc<Tables>,
        rows: &Rc<Vec<WearRow>>,
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
                (WearRow::Solid(_), _) => 1.0,
                (WearRow::PlatedAgain(_), Some(electroplate)) => {
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
            tables: Rc::clone(tables),
            rows: Rc::clone(rows),
        }
    }
}
