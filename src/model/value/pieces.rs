//! What several pieces are worth: together, apart, and in the best lots.
//!
//! The value of a whole pair or set is 1, with a share for each piece. A piece is a multiplier by its
//! condition. Definitions and bounds are the project's own; the figures behind them are rows of the ledger.

use super::Class;
use crate::ledger::{FigureId, Ledger};
use crate::maths::{at_least, at_most};
use crate::record::Pieces;
use crate::terms::Relation;

/// What one left of a pair fetches of the price of the pair, by group of classes.
pub const LEFT_OF_PAIR: super::ByGroup = Class::by_group("value.factor.single_of_pair.");

/// Units that are tried in every division into lots: Bell's number of 6 is 203.
pub const MOST_UNITS: usize = 6;

/// What the pieces of a pair gain over two singles: G = 1/(2 s), with s what one of them fetches of the
/// price of the pair. Never below 1: two pieces can always be sold one by one.
#[must_use]
pub fn premium_of_pair(single: f64) -> f64 {
    at_least(0.5 / at_least(single, f64::MIN_POSITIVE), 1.0)
}

/// One or more alike pieces: their share of the whole together, how many, and what condition leaves of each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// Share of the value of the whole, above 0; of all of them together.
    pub share: f64,
    /// How many pieces; at least 1.
    pub count: usize,
    /// What condition leaves, above 0.
    pub multiplier: f64,
}

/// How pieces belong together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Belonging {
    /// What the whole gains over single pieces: 1 where they do not belong together.
    pub premium: f64,
    /// How strongly unlike condition counts against the whole: a power of the worst over the best.
    pub mismatch: f64,
    /// How many pieces the whole has; at least 1.
    pub count: usize,
}

impl Belonging {
    /// As the pieces of a record belong together, where the whole gains `premium`, at least 1.
    #[must_use]
    pub fn of(pieces: &Pieces, premium: f64, ledger: &Ledger) -> Self {
        Self {
            premium: match pieces.relation {
                Relation::Pair | Relation::Set => at_least(premium, 1.0),
                Relation::Single | Relation::OneOfPair | Relation::Alike => 1.0,
            },
            mismatch: ledger.value(FigureId::VALUE_SET_MISMATCH).clamp(0.0, 1.0),
            count: usize::from(pieces.count),
        }
    }

    /// What `some` of the pieces gain over single ones: 1 + (G - 1)(T - 1)/(n - 1), for T of n.
    #[must_use]
    pub fn premium_of(&self, some: usize) -> f64 {
        if self.count < 2 {
            return 1.0;
        }
        1.0 + (self.premium - 1.0) * some.saturating_sub(1) as f64 / (self.count - 1) as f64
    }

    /// What condition leaves of units sold as one: M = max(prod M^w (min/max)^mismatch, sum w M/G), with w
    /// their shares among themselves. Never less than they fetch one by one, and never less than if the best
    /// of them were no better than another: damage never raises a set.
    #[must_use]
    pub fn multiplier(&self, units: &[Unit], premium: f64) -> f64 {
        let all: f64 = units.iter().map(|u| u.share).sum();
        let (mut sum, mut least, mut most, mut of_best) = (0.0, f64::INFINITY, 0.0, 0.0);
        for unit in units {
            sum += unit.share / all * unit.multiplier;
            least = at_most(least, unit.multiplier);
            if unit.multiplier > most {
                (most, of_best) = (unit.multiplier, unit.share / all);
            }
        }
        if most <= least {
            return most;
        }
        let apart = sum / premium;
        if premium <= 1.0 {
            return apart;
        }
        let together = |best: f64| {
            let ln = |u: &Unit| {
                let m = at_least(at_most(u.multiplier, best), f64::MIN_POSITIVE);
                u.share / all * libm::log(m)
            };
            let ln: f64 = units.iter().map(ln).sum();
            libm::exp(ln) * libm::pow(least / best, self.mismatch)
        };
        let mut whole = together(most);
        if of_best < self.mismatch {
            for unit in units.iter().filter(|u| u.multiplier < most) {
                whole = at_least(whole, together(unit.multiplier));
            }
        }
        at_least(whole, apart)
    }

    /// What units sold as one lot fetch of the value of the whole: their gain over
    /// that of the whole, times their shares, times what condition leaves of them.
    #[must_use]
    pub fn lot(&self, units: &[Unit]) -> f64 {
        let count = units.iter().map(|u| u.count).sum();
        let premium = self.premium_of(count);
        let share: f64 = units.iter().map(|u| u.share).sum();
        premium / self.premium * share * self.multiplier(units, premium)
    }

    /// What one piece of a unit fetches of the value of the whole when sold by itself: w M/G.
    #[must_use]
    pub fn alone(&self, unit: &Unit) -> f64 {
        unit.share / unit.count.max(1) as f64 * unit.multiplier / self.premium
    }

    /// The division into lots that leaves a seller most, where `kept` says what is left of a lot that fetches
    /// this much of the whole: the places of the units in each lot, and what is left together. Units are
    /// kept whole, but all may also go piece by piece: then the list is empty. Every division is tried up to
    /// [`MOST_UNITS`] units; of more only all together and piece by piece.
    #[must_use]
    pub fn best_lots(&self, units: &[Unit], kept: &dyn Fn(f64) -> f64) -> (Vec<Vec<usize>>, f64) {
        let together = vec![(0..units.len()).collect()];
        let mut best = (together, kept(self.lot(units)));
        if units.len() <= MOST_UNITS {
            let mut place = vec![0; units.len()];
            self.divide(units, kept, &mut place, 0, &mut best);
        }
        let apart: f64 = units
            .iter()
            .map(|u| u.count as f64 * kept(self.alone(u)))
            .sum();
        if apart > best.1 {
            best = (Vec::new(), apart);
        }
        best
    }

    /// Tries every way to put the units from `at` on into lots; a unit goes into a lot there is or into a new
    /// one, so that each division comes once.
    fn divide(
        &self,
        units: &[Unit],
        kept: &dyn Fn(f64) -> f64,
        place: &mut Vec<usize>,
        at: usize,
        best: &mut (Vec<Vec<usize>>, f64),
    ) {
        let lots = place[..at].iter().max().map_or(0, |last| last + 1);
        if at == units.len() {
            let members = |lot| (0..units.len()).filter(|i| place[*i] == lot).collect();
            let all: Vec<Vec<usize>> = (0..lots).map(members).collect();
            let of = |lot: &Vec<usize>| {
                let of_lot: Vec<Unit> = lot.iter().map(|i| units[*i]).collect();
                kept(self.lot(&of_lot))
            };
            let sum: f64 = all.iter().map(of).sum();
            if sum > best.1 + 1e-9 {
                *best = (all, sum);
            }
            return;
        }
        for lot in 0..=lots {
            place[at] = lot;
            self.divide(units, kept, place, at + 1, best);
        }
    }
}

/// What the same work on several pieces costs: the sum of what each would cost, less a share of all but the
/// dearest. Money; `saved` 0 to 1.
#[must_use]
pub fn less_saved(sum: f64, dearest: f64, saved: f64) -> f64 {
    sum - saved * (sum - dearest)
}

/// A price shared out by weights, in hundredths of the currency by largest remainder: the shares sum to the
/// price to the penny. `None` where the price is below nothing or no number, or the weights are not all
/// numbers from 0 up with some above it.
#[must_use]
pub fn shared_out(price: f64, weights: &[f64]) -> Option<Vec<f64>> {
    let sum: f64 = weights.iter().sum();
    let sound = |x: f64| x.is_finite() && x >= 0.0;
    if !sound(price) || !weights.iter().all(|w| sound(*w)) || sum <= 0.0 || !sum.is_finite() {
        return None;
    }
    let pennies = libm::round(price * 100.0);
    let mut rest: Vec<f64> = weights.iter().map(|w| pennies * w / sum).collect();
    let mut shares: Vec<f64> = rest.iter().map(|x| libm::floor(*x)).collect();
    for (rest, share) in rest.iter_mut().zip(&shares) {
        *rest -= share;
    }
    let mut left = pennies - shares.iter().sum::<f64>();
    while left > 0.5 {
        let mut most = 0;
        for (i, of) in rest.iter().enumerate() {
            if *of > rest[most] {
                most = i;
            }
        }
        shares[most] += 1.0;
        rest[most] -= 1.0;
        left -= 1.0;
    }
    Some(shares.into_iter().map(|p| p / 100.0).collect())
}

#[cfg(test)]
mod tests {
    //! The worked values were computed outside the program, with the formulas above in another language.
    use super::*;
    use crate::value::Fees;

    const PAIR: Belonging = Belonging {
        premium: 1.0 / 0.76,
        mismatch: 0.25,
        count: 2,
    };
    const SET: Belonging = Belonging {
        premium: 1.3,
        mismatch: 0.25,
        count: 6,
    };
    const FEES: Fees = Fees {
        commission: 0.15,
        above: 1e8,
        commission_above: 0.1,
        minimum: 20.0,
        vat: 0.2,
        lot: 9.6,
        insurance: 0.01,
        transport: 0.0,
        sold: 1.0,
        reoffer: 0.75,
        unsold: 0.0,
    };

    fn units(multipliers: &[f64]) -> Vec<Unit> {
        let share = 1.0 / multipliers.len() as f64;
        let unit = |m: &f64| Unit {
            share,
            count: 1,
            multiplier: *m,
        };
        multipliers.iter().map(unit).collect()
    }

    fn close(a: f64, b: f64) {
        assert!((a - b).abs() < 5e-7, "{a} is not {b}");
    }

    #[test]
    fn a_pair_gains_over_two_singles_what_the_ledger_says_of_one_left() {
        close(premium_of_pair(0.38), 1.315_789_5);
        close(premium_of_pair(0.6), 1.0);
        close(PAIR.premium_of(1), 1.0);
        close(SET.premium_of(1), 1.0);
        close(SET.premium_of(6), 1.3);
        close(SET.premium_of(3), 1.12);
    }

    #[test]
    fn worked_values_of_pairs() {
        for (m, whole, singles) in [
            ([1.0, 1.0], 1.0, 0.76),
            ([0.948, 0.75], 0.795_240, 0.645_240),
            ([0.67, 0.948], 0.730_732, 0.614_840),
            ([0.95, 0.2], 0.437_000, 0.437_000),
            ([0.5, 0.5], 0.5, 0.38),
        ] {
            let units = units(&m);
            close(PAIR.lot(&units), whole);
            close(units.iter().map(|u| PAIR.alone(u)).sum(), singles);
        }
    }

    #[test]
    fn damage_to_one_piece_never_raises_a_set() {
        let mut tried = 0;
        for base in [0.3, 0.5, 0.8, 0.9, 1.0] {
            for other in [0.2, 0.5, 0.8, 0.9, 1.0] {
                let mut last = f64::NEG_INFINITY;
                for step in 1..=20 {
                    let m = [base, base, base, base, other, 0.05 * f64::from(step)];
                    let now = SET.lot(&units(&m));
                    assert!(now >= last - 1e-12, "{m:?}: {now} after {last}");
                    last = now;
                    tried += 1;
                }
            }
        }
        assert_eq!(tried, 500);
        close(SET.lot(&units(&[0.5, 0.5, 0.5, 0.5, 0.5, 1.0])), 0.5);
    }

    #[test]
    fn worked_values_of_keeping_a_pair_and_splitting_it() {
        let units = units(&[0.948, 0.75]);
        let kept = |share: f64| FEES.expected(400.0 * share);
        let together = kept(PAIR.lot(&units));
        let apart: f64 = units.iter().map(|u| kept(PAIR.alone(u))).sum();
        assert!((together - 248.0577).abs() < 5e-5 && (apart - 186.3778).abs() < 5e-5);
        let (lots, most) = PAIR.best_lots(&units, &kept);
        assert_eq!(lots, [[0, 1]]);
        close(most, together);
    }

    #[test]
    fn a_ruined_piece_is_left_out_of_the_lot_and_alike_pieces_go_piece_by_piece() {
        let (lots, _) = SET.best_lots(&units(&[1.0, 1.0, 1.0, 1.0, 1.0, 0.03]), &|x| x);
        assert_eq!(lots, [vec![0, 1, 2, 3, 4], vec![5]]);
        let alike = Belonging {
            premium: 1.0,
            count: 12,
            ..SET
        };
        let unit = Unit {
            share: 1.0,
            count: 12,
            multiplier: 0.9,
        };
        // With nothing to pay for a lot, one by one is as good; with something, together is better.
        let (lots, most) = alike.best_lots(&[unit], &|x| 100.0 * x - 2.0);
        assert_eq!(lots, [[0]]);
        close(most, 88.0);
        let (lots, most) = alike.best_lots(&[unit], &|x| if x > 0.5 { 0.0 } else { x });
        assert!(lots.is_empty());
        close(most, 0.9);
    }

    #[test]
    fn every_division_into_lots_is_tried_once() {
        for n in 1..=MOST_UNITS {
            let tried = std::cell::Cell::new(0);
            let _ = SET.best_lots(&units(&vec![1.0; n]), &|_| {
                tried.set(tried.get() + 1);
                0.0
            });
            // The lots of all divisions, then all together once more and each by itself.
            let lots: [usize; 7] = [0, 1, 3, 10, 37, 151, 674];
            assert_eq!(tried.get(), lots[n] + 1 + n);
        }
    }

    #[test]
    fn work_on_several_pieces_costs_less_than_each_by_itself() {
        close(less_saved(40.0, 40.0, 0.3), 40.0);
        close(less_saved(40.0 + 40.0, 40.0, 0.3), 68.0);
        close(less_saved(100.0 + 40.0 + 20.0, 100.0, 0.3), 142.0);
        close(less_saved(0.0, 0.0, 0.3), 0.0);
    }

    #[test]
    fn a_lot_is_shared_out_to_the_penny() {
        assert_eq!(
            shared_out(300.0, &[220.0, 120.0, 60.0]),
            Some(vec![165.0, 90.0, 45.0])
        );
        assert_eq!(
            shared_out(100.0, &[1.0; 3]),
            Some(vec![33.34, 33.33, 33.33])
        );
        for (price, weights) in [(0.05, vec![1.0; 7]), (1234.56, vec![0.1, 7.0, 0.0, 2.3])] {
            let shares = shared_out(price, &weights).unwrap();
            assert!((shares.iter().sum::<f64>() - price).abs() < 1e-9);
        }
        for (price, weights) in [
            (-1.0, vec![1.0]),
            (f64::NAN, vec![1.0]),
            (10.0, vec![]),
            (10.0, vec![0.0, 0.0]),
            (10.0, vec![1.0, -1.0]),
            (10.0, vec![f64::INFINITY]),
        ] {
            assert_eq!(shared_out(price, &weights), None, "{price} {weights:?}");
        }
    }
}
