//! The condition a price rested on, in the terms the shifts are about.
//!
//! It is frozen as text with a prediction, so that later corrections of the record leave it as it was.

use super::shift::Shift;
use crate::counsel::{ExpectedOne, ExpectedPiece};
use crate::identity::Kind;
use crate::ledger::{FigureId, Ledger};
use crate::record::Case;
use crate::terms::ShortSort;
use crate::terms::Treatment;
use crate::treatment::factors_in_play;
use crate::value::{BUYERS, Class, ConditionTable, REPLATED_GROUPS};

/// Condition of a piece as far as prices go.
#[derive(Clone, Debug, PartialEq)]
pub struct PricedState {
    /// The class of value.
    pub class: Class,
    /// Bare share that shows, 0 to 1.
    pub bare: f64,
    /// Fused plate that was plated again long ago.
    pub plated_again: bool,
    /// Stripped and plated again.
    pub replated: bool,
    /// A joint was mended.
    pub repaired: bool,
    /// Rows of condition factors, each once.
    pub rows: Vec<FigureId>,
    /// What a bad result keeps of the price, of each work that went wrong.
    pub kept: Vec<FigureId>,
}

/// What stands between the states of several pieces that are frozen together, and after a share.
const NEXT: &str = " + ";
const OF: char = '*';

/// The states of everything in one record: one piece, or several with the share of each in what all are
/// worth when whole.
#[derive(Clone, Debug, PartialEq)]
pub struct PricedPieces {
    /// Share and state of each; at least one.
    pub each: Vec<(f64, PricedState)>,
    /// More than one piece went into the price.
    pub several: bool,
}

impl PricedPieces {
    /// The states of a case as it is recorded.
    #[must_use]
    pub fn of(case: &Case, expected: &ExpectedPiece) -> Self {
        if expected.each.is_empty() {
            return Self {
                each: vec![(1.0, PricedState::of(case, expected))],
                several: false,
            };
        }
        let of = |one: &ExpectedOne| {
            let of_one = ExpectedPiece {
                bare: one.bare,
                each: Vec::new(),
                ..expected.clone()
            };
            let state = PricedState::of(&case.of_piece(one.number), &of_one);
            (one.share, state)
        };
        Self {
            each: expected.each.iter().map(of).collect(),
            several: true,
        }
    }

    /// The states as they are frozen: that of one piece, or `share*state` of each with ` + ` between.
    #[must_use]
    pub fn to_text(&self) -> String {
        let each = self.each.iter().map(|(share, state)| {
            if self.several {
                format!("{share:.6}{OF}{}", state.to_text())
            } else {
                state.to_text()
            }
        });
        each.collect::<Vec<String>>().join(NEXT)
    }

    /// Frozen states; `None` when the text is none, or the shares are not above 0.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let several = text.contains(OF);
        let each = text.split(NEXT).map(|one| match one.split_once(OF) {
            Some((share, state)) => {
                let share: f64 = share.trim().parse().ok()?;
                let sound = share.is_finite() && share > 0.0;
                Some((share, PricedState::parse(state)?)).filter(|_| sound)
            }
            None => Some((1.0, PricedState::parse(one)?)).filter(|_| !several),
        });
        let each: Vec<(f64, PricedState)> = each.collect::<Option<_>>()?;
        Some(Self { each, several })
    }

    /// The class of value.
    #[must_use]
    pub fn class(&self) -> Option<Class> {
        self.each.first().map(|(_, state)| state.class)
    }

    /// ln of what condition leaves, the shifts it rests on, and how much of the variance of single levels
    /// is left in the sum: ln sum w M, x = sum pi x and sum pi^2, with pi the part of each in the sum.
    #[must_use]
    pub fn multiplier(&self, buyer: Option<usize>) -> (f64, Vec<(Shift, f64)>, f64) {
        if let [(_, one)] = &self.each[..]
            && !self.several
        {
            let (ln, row) = one.multiplier(buyer);
            return (ln, row, 1.0);
        }
        let all: f64 = self.each.iter().map(|(share, _)| share).sum();
        let each: Vec<(f64, Vec<(Shift, f64)>)> = (self.each.iter())
            .map(|(share, state)| {
                let (ln, row) = state.multiplier(buyer);
                (share / all * libm::exp(ln), row)
            })
            .collect();
        let sum: f64 = each.iter().map(|(part, _)| part).sum();
        let mut row: Vec<(Shift, f64)> = Vec::new();
        for (part, of_one) in &each {
            for (shift, x) in of_one {
                let x = part / sum * x;
                match row.iter_mut().find(|(known, _)| known == shift) {
                    Some((_, held)) => *held += x,
                    None => row.push((*shift, x)),
                }
            }
        }
        row.push((Shift::Lot, 1.0));
        let squares = each.iter().map(|(part, _)| (part / sum) * (part / sum));
        (libm::log(sum), row, squares.sum())
    }
}

/// ln of a price factor and what it rests on.
type Multiplier = (f64, Vec<(Shift, f64)>);

impl PricedState {
    /// The state of a case as it is recorded.
    #[must_use]
    pub fn of(case: &Case, expected: &ExpectedPiece) -> Self {
        let class = expected.class;
        let done = |works: &[Treatment]| {
            let done = |t: Option<Treatment>| t.is_some_and(|t| works.contains(&t));
            case.done.iter().any(|work| done(work.treatment))
        };
        let replated = done(&[Treatment::Replate]);
        Self {
            class,
            bare: if replated { 0.0 } else { expected.bare },
            plated_again: expected.kind == Kind::Rfp && !replated,
            replated,
            repaired: done(&[Treatment::Solder, Treatment::RemoveLead]),
            rows: factors_in_play(case, class, Ledger::standard()),
            kept: Vec::new(),
        }
    }

    /// The state as it is frozen: the class, then words such as `bare=0.05` or `leak.A`.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut text = format!("{} bare={:.6}", self.class.code(), self.bare);
        let flags = [
            (self.plated_again, "plated_again"),
            (self.replated, "replated"),
            (self.repaired, "repaired"),
        ];
        for (is, word) in flags {
            if is {
                text = [&text, " ", word].concat();
            }
        }
        for row in &self.rows {
            let row = row.text().trim_start_matches("value.factor.");
            text = [&text, " ", row].concat();
        }
        text
    }

    /// A frozen state; `None` when the text is none.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut words = text.split_whitespace();
        let code = words.next()?;
        let class = Class::ALL.into_iter().find(|c| c.code() == code)?;
        let mut state = Self {
            class,
            bare: 0.0,
            plated_again: false,
            replated: false,
            repaired: false,
            rows: Vec::new(),
            kept: Vec::new(),
        };
        for word in words {
            match word {
                "plated_again" => state.plated_again = true,
                "replated" => state.replated = true,
                "repaired" => state.repaired = true,
                _ => {
                    if let Some(share) = word.strip_prefix("bare=") {
                        state.bare = share.parse().ok().filter(|f| (0.0..=1.0).contains(f))?;
                    } else {
                        let id = ["value.factor.", word].concat();
                        state.rows.push(FigureId::parse(&id)?);
                    }
                }
            }
        }
        state.rows.order_by(Ord::cmp);
        state.rows.dedup();
        Some(state)
    }

    /// ln of what this condition leaves of an undamaged price at the shipped middles, and the shifts
    /// it rests on. `buyer`: which of [`BUYERS`] bought it; their usual mix when not known.
    #[must_use]
    pub fn multiplier(&self, buyer: Option<usize>) -> Multiplier {
        let ledger = Ledger::standard();
        let mut ln = 0.0;
        let mut row = Vec::new();
        let table = ConditionTable::of(self.class, ledger);
        let one = buyer.map(|buyer| std::array::from_fn(|b| f64::from(u8::from(b == buyer))));
        let mix: [f64; 3] = one.unwrap_or_else(|| table.mix());
        if self.replated || self.plated_again {
            let factors: [f64; 3] = std::array::from_fn(|b| mix[b] * table.replated_for(b, 0.0));
            let sum: f64 = factors.iter().sum();
            ln += libm::log(sum);
            let group = REPLATED_GROUPS
                .iter()
                .position(|code| *code == self.class.replated_group())
                .unwrap_or(0);
            for (b, factor) in factors.into_iter().enumerate() {
                if factor > 0.0 {
                    row.push((Shift::Replated(group, b), factor / sum));
                }
            }
            if self.replated {
                ln += libm::log(ledger.value(FigureId::VALUE_DETAIL_AFTER_REPLATE));
                row.push((Shift::Detail, 1.0));
            } else if self.bare > 0.0 {
                // It wears like electroplate on copper.
                let electroplate = ConditionTable::of(Class::C4, ledger);
                let mix = one.unwrap_or_else(|| electroplate.mix());
                ln += ln_wear(&electroplate, mix, self.bare);
                add_wear(&mut row, &electroplate, Class::C4, self.bare);
            }
        } else if self.bare > 0.0 && self.class != Class::Sil {
            ln += ln_wear(&table, mix, self.bare);
            add_wear(&mut row, &table, self.class, self.bare);
        }
        for id in &self.rows {
            ln += libm::log(ledger.value(*id));
            row.push((Shift::Row(*id), 1.0));
        }
        if self.repaired {
            ln += libm::log(ledger.value(FigureId::VALUE_AFTER_REPAIR));
            row.push((Shift::AfterRepair, 1.0));
        }
        for id in &self.kept {
            ln += libm::log(ledger.value(*id));
            row.push((Shift::Kept(*id), 1.0));
        }
        (ln, row)
    }
}

fn ln_wear(table: &ConditionTable, mix: [f64; 3], bare: f64) -> f64 {
    let sum: f64 = (0..BUYERS.len())
        .map(|b| mix[b] * table.wear_for(b, bare, 0.0))
        .sum();
    libm::log(sum)
}

fn add_wear(row: &mut Vec<(Shift, f64)>, table: &ConditionTable, class: Class, bare: f64) {
    let anchors = table.anchors_at(bare).into_iter();
    row.extend(anchors.map(|(anchor, share)| (Shift::Wear(class.group_place(), anchor), share)));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_state_survives_as_text() {
        for text in [
            "A2 bare=0.031000 leak.A tarnish_heavy.A",
            "C2 bare=0.000000 replated repaired",
            "A1 bare=0.200000 plated_again monogram_later.A",
        ] {
            let state = PricedState::parse(text).unwrap();
            assert_eq!(state.to_text(), text);
        }
        for bad in ["", "Z9", "A2 bare=2", "A2 no_such_row.A", "A2 bare=x"] {
            assert_eq!(PricedState::parse(bad), None, "{bad}");
        }
    }

    #[test]
    fn a_multiplier_is_that_of_the_condition_table() {
        let table = ConditionTable::of(Class::A2, Ledger::standard());
        let worn = PricedState::parse("A2 bare=0.1").unwrap();
        let (ln, row) = worn.multiplier(None);
        assert!((libm::exp(ln) - table.wear(0.1, 0.0)).abs() < 1e-12);
        let shares: f64 = row.iter().map(|(_, x)| x).sum();
        assert!((shares - 1.0).abs() < 1e-12 && row.len() == 2, "{row:?}");
        let replated = PricedState::parse("A2 bare=0 replated").unwrap();
        let (_, mixed) = replated.multiplier(None);
        let (_, named) = replated.multiplier(Some(0));
        assert_eq!(mixed.len(), 4);
        assert_eq!(named, [(Shift::Replated(1, 0), 1.0), (Shift::Detail, 1.0)]);
        let sound = PricedState::parse("SIL bare=0.3").unwrap();
        assert_eq!(sound.multiplier(None), (0.0, Vec::new()));
    }
}
