//! Planning a stock: one choice for each piece, for the greatest total gain within budgets.
//!
//! This is the multiple-choice knapsack problem with one or more budgets, and with needs: a choice for one
//! piece may require a choice for another. Upper bounds come from pricing the budgets (Lagrange multipliers;
//! Fisher 1981, Management Science 27:1; for this problem Sinha & Zoltners 1979, Operations Research 27:503).
//! At any prices, the best net gain of each piece plus the budgets at their prices is at least the optimum.
//! Choices that the bound rules out are dropped. The rest is searched piece by piece, and a partial selection
//! is kept only if no other one beats it in gain and in every budget.

use super::TIE;
use crate::terms::ShortSort;

/// Most partial selections kept after each piece; beyond that, the least promising are dropped. The bound
/// accounts for what was dropped.
pub const MOST_HELD: usize = 10_000;

/// Rough limit on the steps tried from one piece to the next. Where many choices stay open, fewer partial
/// selections are kept, so that the answer still comes quickly.
const MOST_TRIED: usize = 2_000_000;

/// Most needs accepted: each takes two bits of the state of a partial selection.
pub const MOST_NEEDS: usize = 60;

/// One thing that can be done with a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockChoice<const K: usize> {
    /// Its gain, in money.
    pub gain: f64,
    /// Its use of each budget, 0 or more.
    pub uses: [f64; K],
    /// How much choice it leaves for later; on a tie, the greater wins.
    pub keeps: f64,
}

/// A requirement: `piece` takes one of `choices` only if the piece `of` takes one of `one_of`. All are
/// indices from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Need {
    /// The piece that has the need.
    pub piece: usize,
    /// The choices of that piece that have the need.
    pub choices: Vec<usize>,
    /// The piece that can meet it.
    pub of: usize,
    /// The choices of the other piece that meet the need.
    pub one_of: Vec<usize>,
}

/// One choice for each piece, with the total gain and use.
#[derive(Clone, Debug, PartialEq)]
pub struct Selection<const K: usize> {
    /// For each piece, the index of its choice.
    pub picks: Vec<usize>,
    /// Total gain.
    pub gain: f64,
    /// Total use of each budget.
    pub uses: [f64; K],
    /// Upper bound on the gain of any selection. Equals `gain` when the search was complete.
    pub bound: f64,
    /// Shadow prices: an upper limit, from the bound, on the gain from one more unit of each budget.
    pub prices: [f64; K],
}

impl<const K: usize> Selection<K> {
    /// Whether the selection is proved best.
    #[must_use]
    pub fn is_best(&self) -> bool {
        self.bound <= self.gain + slack(self.gain)
    }
}

/// The selection with the greatest gain within `limits` (infinite where there is no limit). A tie goes to
/// the one that uses less of the first budget, then to the one that leaves more choice for later.
///
/// The first choice of every piece must be to do nothing: it uses nothing and needs nothing. `held` is the
/// most partial selections kept, usually [`MOST_HELD`]. Returns `None` for invalid input: a first choice that
/// uses or needs something, a piece without choices, a number that is not finite, a negative use, a need that
/// names a missing piece or choice, or more than [`MOST_NEEDS`] needs.
#[must_use]
pub fn select<const K: usize>(
    pieces: &[Vec<StockChoice<K>>],
    needs: &[Need],
    limits: [f64; K],
    held: usize,
) -> Option<Selection<K>> {
    if !is_sound(pieces, needs, &limits) {
        return None;
    }
    let stock = Stock::new(pieces, needs, limits);
    let mut best = stock.begun();
    // A narrow search first; its result prunes the wide search.
    let mut open = 0.0_f64;
    for held in [held.min(200), held.max(1)] {
        open = stock.search(&mut best, held);
        if open <= best.gain + slack(best.gain) {
            break;
        }
    }
    best.bound = open.max(best.gain).min(stock.bound().max(best.gain));
    best.prices = stock.prices[0];
    Some(best)
}

fn is_sound<const K: usize>(
    pieces: &[Vec<StockChoice<K>>],
    needs: &[Need],
    limits: &[f64; K],
) -> bool {
    let choice_is_sound = |c: &StockChoice<K>| {
        c.gain.is_finite() && c.uses.iter().all(|u| u.is_finite() && *u >= 0.0)
    };
    let known = |piece: usize, choices: &[usize]| {
        let of = pieces.get(piece).map_or(0, Vec::len);
        choices.iter().all(|c| *c < of)
    };
    pieces.iter().all(|choices| {
        choices.iter().all(choice_is_sound)
            && choices
                .first()
                .is_some_and(|c| c.uses.iter().all(|u| *u <= 0.0))
    }) && limits.iter().all(|l| *l >= 0.0)
        && needs.len() <= MOST_NEEDS
        && needs.iter().all(|n| {
            n.piece != n.of
                && known(n.piece, &n.choices)
                && known(n.of, &n.one_of)
                && n.of < pieces.len()
                && !n.choices.contains(&0)
        })
}

/// Gains closer than this are equal.
fn slack(gain: f64) -> f64 {
    1e3 * TIE * gain.abs().max(1.0)
}

/// The problem, with the data for the bounds.
struct Stock<'a, const K: usize> {
    pieces: &'a [Vec<StockChoice<K>>],
    needs: &'a [Need],
    limits: [f64; K],
    /// The choices of each piece that no other choice of the same piece dominates.
    kept: Vec<Vec<usize>>,
    /// Sets of budget prices, each with its bound in `bounds`: first the set with the lowest bound found,
    /// then a price on one budget alone, then no prices at all.
    prices: Vec<[f64; K]>,
    bounds: Vec<f64>,
}

impl<'a, const K: usize> Stock<'a, K> {
    fn new(pieces: &'a [Vec<StockChoice<K>>], needs: &'a [Need], mut limits: [f64; K]) -> Self {
        for (k, limit) in limits.iter_mut().enumerate() {
            let most = |choices: &Vec<StockChoice<K>>| {
                choices.iter().map(|c| c.uses[k]).fold(0.0, f64::max)
            };
            // A finite limit that cannot bind, with a margin for sums that round differently.
            let all: f64 = pieces.iter().map(most).sum();
            *limit = limit.min(all * 2.0 + 1.0);
            *limit += slack(*limit);
        }
        let named = |piece: usize, choice: usize| {
            needs.iter().any(|n| {
                (n.piece == piece && n.choices.contains(&choice))
                    || (n.of == piece && n.one_of.contains(&choice))
            })
        };
        let kept = pieces
            .iter()
            .enumerate()
            .map(|(piece, choices)| {
                (0..choices.len())
                    .filter(|c| {
                        let fits = (0..K).all(|k| choices[*c].uses[k] <= limits[k]);
                        let beaten = |o: usize| {
                            beats(&choices[o], &choices[*c])
                                && (o < *c || !beats(&choices[*c], &choices[o]))
                        };
                        *c == 0 || (fits && (named(piece, *c) || !(0..choices.len()).any(beaten)))
                    })
                    .collect()
            })
            .collect();
        let mut stock = Self {
            pieces,
            needs,
            limits,
            kept,
            prices: Vec::new(),
            bounds: Vec::new(),
        };
        stock.price();
        stock
    }

    /// Index of the best choice of a piece at these prices, and its net gain.
    fn best_at(&self, piece: usize, prices: &[f64; K]) -> (usize, f64) {
        let choices = &self.pieces[piece];
        let mut top = (0, f64::NEG_INFINITY);
        for c in &self.kept[piece] {
            let net = choices[*c].net(prices);
            if net > top.1 {
                top = (*c, net);
            }
        }
        top
    }

    /// The bound at these prices, and what remains of each budget.
    fn bound_at(&self, prices: &[f64; K]) -> (f64, [f64; K]) {
        let mut left = self.limits;
        let mut bound: f64 = prices.iter().zip(&self.limits).map(|(p, l)| p * l).sum();
        for piece in 0..self.pieces.len() {
            let (choice, net) = self.best_at(piece, prices);
            bound += net;
            for (left, used) in left.iter_mut().zip(&self.pieces[piece][choice].uses) {
                *left -= used;
            }
        }
        (bound, left)
    }

    /// Searches for the prices with the lowest bound: one budget after another by bisection, then small
    /// subgradient steps. Any prices give a valid bound, so where this stops changes how long the search
    /// takes, not what it finds.
    fn price(&mut self) {
        let mut sets: Vec<[f64; K]> = Vec::new();
        let mut together = [0.0; K];
        for _ in 0..4 {
            for k in 0..K {
                self.price_one(&mut together, k);
            }
        }
        let (mut low, mut left) = self.bound_at(&together);
        let mut at = together;
        let mut reach = 1.0;
        for _ in 0..80 {
            let size: f64 = left.iter().map(|l| l * l).sum();
            if size <= 0.0 {
                break;
            }
            // No step needs to be larger than a twentieth of the bound.
            let step = reach * 0.05 * low.abs() / size;
            for (price, left) in at.iter_mut().zip(&left) {
                *price = (*price - step * left).max(0.0);
            }
            let (bound, now) = self.bound_at(&at);
            left = now;
            if bound < low {
                (low, together) = (bound, at);
            } else {
                reach *= 0.9;
            }
        }
        sets.push(together);
        if K > 1 {
            for k in 0..K {
                let mut alone = [0.0; K];
                self.price_one(&mut alone, k);
                sets.push(alone);
            }
        }
        sets.push([0.0; K]);
        self.bounds = sets.iter().map(|s| self.bound_at(s).0).collect();
        self.prices = sets;
    }

    /// Sets the price of one budget to minimise the bound, with the other prices unchanged. The bound falls
    /// as the price rises for as long as the budget is overdrawn.
    fn price_one(&self, prices: &mut [f64; K], k: usize) {
        prices[k] = 0.0;
        if self.bound_at(prices).1[k] >= 0.0 {
            return;
        }
        let steepest = self.pieces.iter().flatten().map(|c| {
            if c.uses[k] > 0.0 {
                c.gain.abs() / c.uses[k]
            } else {
                0.0
            }
        });
        let (mut low, mut high) = (0.0, 2.0 * steepest.fold(0.0, f64::max));
        for _ in 0..48 {
            prices[k] = 0.5 * (low + high);
            if self.bound_at(prices).1[k] >= 0.0 {
                high = prices[k];
            } else {
                low = prices[k];
            }
        }
        prices[k] = high;
    }

    fn bound(&self) -> f64 {
        self.bounds.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// An initial selection: the choices that the prices suggest, with prices raised until it fits, then
    /// improved one piece at a time.
    fn begun(&self) -> Selection<K> {
        let mut picks = vec![0; self.pieces.len()];
        let mut raise = 1.0;
        for _ in 0..60 {
            let prices = self.prices[0].map(|p| p * raise);
            for (piece, pick) in picks.iter_mut().enumerate() {
                *pick = self.best_at(piece, &prices).0;
            }
            self.meet_needs(&mut picks);
            if self.fits(&self.used(&picks)) {
                break;
            }
            raise *= 1.15;
        }
        if !self.fits(&self.used(&picks)) {
            picks.fill(0);
        }
        self.improve(&mut picks);
        self.selection(picks)
    }

    /// Sets every piece with an unmet need to doing nothing.
    fn meet_needs(&self, picks: &mut [usize]) {
        while let Some(broken) = self
            .needs
            .iter()
            .find(|n| n.choices.contains(&picks[n.piece]) && !n.one_of.contains(&picks[n.of]))
        {
            picks[broken.piece] = 0;
        }
    }

    fn meets_needs(&self, picks: &[usize]) -> bool {
        self.needs
            .iter()
            .all(|n| !n.choices.contains(&picks[n.piece]) || n.one_of.contains(&picks[n.of]))
    }

    fn improve(&self, picks: &mut [usize]) {
        let mut used = self.used(picks);
        for _ in 0..8 {
            let mut better = false;
            for piece in 0..picks.len() {
                for choice in &self.kept[piece] {
                    let was = picks[piece];
                    let (old, new) = (&self.pieces[piece][was], &self.pieces[piece][*choice]);
                    let then: [f64; K] =
                        std::array::from_fn(|k| used[k] - old.uses[k] + new.uses[k]);
                    if new.gain <= old.gain || !self.fits(&then) {
                        continue;
                    }
                    picks[piece] = *choice;
                    if self.meets_needs(picks) {
                        used = then;
                        better = true;
                    } else {
                        picks[piece] = was;
                    }
                }
            }
            if !better {
                return;
            }
        }
    }

    fn used(&self, picks: &[usize]) -> [f64; K] {
        let mut used = [0.0; K];
        for (choices, pick) in self.pieces.iter().zip(picks) {
            add(&mut used, &choices[*pick].uses);
        }
        used
    }

    fn fits(&self, used: &[f64; K]) -> bool {
        used.iter().zip(&self.limits).all(|(u, l)| u <= l)
    }

    fn selection(&self, picks: Vec<usize>) -> Selection<K> {
        let chosen = || self.pieces.iter().zip(&picks).map(|(c, pick)| &c[*pick]);
        Selection {
            gain: chosen().map(|c| c.gain).sum(),
            uses: self.used(&picks),
            bound: f64::INFINITY,
            prices: [0.0; K],
            picks,
        }
    }

    /// Searches for a better selection and stores it in `best`. Returns an upper bound on the gain that the
    /// dropped partial selections could have reached.
    fn search(&self, best: &mut Selection<K>, held: usize) -> f64 {
        let rest = Remaining::new(self, best.gain);
        let tried: usize = rest.choices.iter().map(Vec::len).sum();
        let held = held.min((MOST_TRIED / tried.max(1)).max(50));
        let mut trail = Trail::default();
        let mut partials = vec![rest.begun];
        let mut found = BestSelection::of(self, best);
        let mut open = f64::NEG_INFINITY;
        found.look_at(self, &rest, 0, &rest.begun);
        for (stage, piece) in rest.order.iter().enumerate() {
            let mut longer = Vec::new();
            for partial in &partials {
                for choice in &rest.choices[stage] {
                    let Some(pending) = self.pending(partial, (*piece, *choice), &rest, stage)
                    else {
                        continue;
                    };
                    let next = partial.with(&self.pieces[*piece][*choice], *choice, pending);
                    let promise = rest.at_most(self, stage + 1, &next);
                    if self.fits(&next.uses) && promise >= found.gain - slack(found.gain) {
                        longer.push(next);
                    }
                }
            }
            partials = unbeaten(longer);
            if partials.len() > held {
                let least =
                    most_promising(&mut partials, held, |p| rest.at_most(self, stage + 1, p));
                open = open.max(least);
            }
            for partial in &mut partials {
                partial.at = trail.note(partial.at, *piece, partial.choice);
                found.look_at(self, &rest, stage + 1, partial);
            }
        }
        if let Some((at, stage)) = found.at {
            let mut picks = rest.picks.clone();
            for piece in &rest.order[stage..] {
                picks[*piece] = rest.best[*piece];
            }
            for (piece, choice) in trail.back_from(at) {
                picks[piece] = choice;
            }
            *best = self.selection(picks);
        }
        open
    }

    /// State of the open needs once this piece has this choice; `None` when a need is broken.
    fn pending(
        &self,
        before: &Partial<K>,
        (piece, choice): (usize, usize),
        rest: &Remaining<K>,
        stage: usize,
    ) -> Option<u128> {
        let mut pending = before.pending;
        for (n, need) in self.needs.iter().enumerate() {
            let (takes, meets) = (1_u128 << (2 * n), 2_u128 << (2 * n));
            if need.piece == piece && need.choices.contains(&choice) {
                pending |= takes;
            }
            if need.of == piece && need.one_of.contains(&choice) {
                pending |= meets;
            }
            if rest.seen_by[n] <= stage {
                if pending & takes != 0 && pending & meets == 0 {
                    return None;
                }
                pending &= !(takes | meets);
            }
        }
        Some(pending)
    }
}

/// What is left to search after pruning, with upper bounds.
struct Remaining<const K: usize> {
    /// The open pieces, those with needs first.
    order: Vec<usize>,
    /// Their choices that may still be part of a better selection.
    choices: Vec<Vec<usize>>,
    /// The best choice of every piece at the prices, and the fixed choice of every piece that is not open.
    best: Vec<usize>,
    picks: Vec<usize>,
    /// Gain and use of the pieces that are not open.
    begun: Partial<K>,
    /// `[prices][stage]`: the greatest net gain from the open pieces of this stage and later.
    net_from: Vec<Vec<f64>>,
    /// `[stage]`: gain, use and choice kept of the best choices of this stage and later.
    best_from: Vec<(f64, [f64; K], f64)>,
    /// The stage after which all needs are settled, and the stage that settles each need.
    settled: usize,
    seen_by: Vec<usize>,
}

impl<const K: usize> Remaining<K> {
    fn new(stock: &Stock<K>, to_beat: f64) -> Self {
        let n = stock.pieces.len();
        let in_need = |piece: usize| {
            stock
                .needs
                .iter()
                .any(|n| n.piece == piece || n.of == piece)
        };
        let mut best = vec![0; n];
        let mut picks = vec![0; n];
        let mut open: Vec<(usize, Vec<usize>, f64)> = Vec::new();
        let mut begun = Partial {
            gain: 0.0,
            uses: [0.0; K],
            keeps: 0.0,
            at: 0,
            choice: 0,
            pending: 0,
        };
        for piece in 0..n {
            let tops: Vec<(usize, f64)> = stock
                .prices
                .iter()
                .map(|prices| stock.best_at(piece, prices))
                .collect();
            best[piece] = tops[0].0;
            let choices = &stock.pieces[piece];
            // The most that the whole can reach if this piece takes this choice.
            let at_most = |choice: usize| {
                let each = stock.prices.iter().zip(&stock.bounds).zip(&tops);
                each.map(|((prices, bound), top)| bound - (top.1 - choices[choice].net(prices)))
                    .fold(f64::INFINITY, f64::min)
            };
            let still: Vec<usize> = stock.kept[piece]
                .iter()
                .copied()
                .filter(|c| at_most(*c) >= to_beat - slack(to_beat))
                .collect();
            if still.len() == 1 && !in_need(piece) {
                picks[piece] = still[0];
                begun = begun.with(&choices[still[0]], 0, 0);
            } else {
                // How far the second best falls behind: pieces with the largest difference come first.
                let behind = |c: &usize| tops[0].1 - choices[*c].net(&stock.prices[0]);
                let (mut first, mut second) = (f64::INFINITY, f64::INFINITY);
                for by in still.iter().map(behind) {
                    second = second.min(by.max(first));
                    first = first.min(by);
                }
                open.push((piece, still, second));
            }
        }
        open.order_by(|a, b| {
            in_need(b.0)
                .cmp(&in_need(a.0))
                .then(b.2.total_cmp(&a.2))
                .then(a.0.cmp(&b.0))
        });
        let order: Vec<usize> = open.iter().map(|o| o.0).collect();
        let seen_by: Vec<usize> = stock
            .needs
            .iter()
            .map(|n| {
                let stage = |p: usize| order.iter().position(|o| *o == p).unwrap_or(0);
                stage(n.piece).max(stage(n.of))
            })
            .collect();
        let stages = order.len();
        let mut net_from = vec![vec![0.0; stages + 1]; stock.prices.len()];
        let mut best_from = vec![(0.0, [0.0; K], 0.0); stages + 1];
        for stage in (0..stages).rev() {
            let (piece, still, _) = &open[stage];
            let choices = &stock.pieces[*piece];
            for (from, prices) in net_from.iter_mut().zip(&stock.prices) {
                let top = still.iter().map(|c| choices[*c].net(prices));
                from[stage] = from[stage + 1] + top.fold(f64::NEG_INFINITY, f64::max);
            }
            let chosen = &choices[best[*piece]];
            let mut after = best_from[stage + 1];
            after.0 += chosen.gain;
            add(&mut after.1, &chosen.uses);
            after.2 += chosen.keeps;
            best_from[stage] = after;
        }
        Self {
            settled: seen_by.iter().map(|s| s + 1).max().unwrap_or(0),
            choices: open.into_iter().map(|o| o.1).collect(),
            order,
            best,
            picks,
            begun,
            net_from,
            best_from,
            seen_by,
        }
    }

    /// The most that a partial selection can reach when the pieces from this stage on are still open.
    fn at_most(&self, stock: &Stock<K>, stage: usize, partial: &Partial<K>) -> f64 {
        let each = stock.prices.iter().zip(&self.net_from);
        each.map(|(prices, from)| {
            let left: f64 = (0..K)
                .map(|k| prices[k] * (stock.limits[k] - partial.uses[k]))
                .sum();
            partial.gain + left + from[stage]
        })
        .fold(f64::INFINITY, f64::min)
    }
}

/// Choices for the open pieces up to some stage.
#[derive(Clone, Copy)]
struct Partial<const K: usize> {
    gain: f64,
    uses: [f64; K],
    keeps: f64,
    /// Where its choices are recorded in the trail, except the last, which is in `choice` until then.
    at: usize,
    choice: usize,
    /// Two bits for each open need: whether it has arisen, and whether it is met.
    pending: u128,
}

impl<const K: usize> Partial<K> {
    fn with(&self, made: &StockChoice<K>, choice: usize, pending: u128) -> Self {
        let mut longer = Self {
            gain: self.gain + made.gain,
            keeps: self.keeps + made.keeps,
            choice,
            pending,
            ..*self
        };
        add(&mut longer.uses, &made.uses);
        longer
    }
}

/// The choices behind every partial selection, as a linked list.
#[derive(Default)]
struct Trail(Vec<(usize, usize, usize)>);

impl Trail {
    /// Records a choice made after the one at `before`; 0 is the start.
    fn note(&mut self, before: usize, piece: usize, choice: usize) -> usize {
        self.0.push((before, piece, choice));
        self.0.len()
    }

    fn back_from(&self, at: usize) -> Vec<(usize, usize)> {
        let mut found = Vec::new();
        let mut at = at;
        while at > 0 {
            let (before, piece, choice) = self.0[at - 1];
            found.push((piece, choice));
            at = before;
        }
        found
    }
}

/// The best complete selection so far.
struct BestSelection<const K: usize> {
    gain: f64,
    uses: [f64; K],
    keeps: f64,
    /// Where its choices are recorded, and up to which stage; `None` while it is still the initial selection.
    at: Option<(usize, usize)>,
}

impl<const K: usize> BestSelection<K> {
    fn of(stock: &Stock<K>, best: &Selection<K>) -> Self {
        let picks = stock.pieces.iter().zip(&best.picks);
        Self {
            gain: best.gain,
            uses: best.uses,
            keeps: picks.map(|(c, pick)| c[*pick].keeps).sum(),
            at: None,
        }
    }

    /// Completes a partial selection with the best remaining choices, and keeps the result if it fits and is
    /// better.
    fn look_at(
        &mut self,
        stock: &Stock<K>,
        rest: &Remaining<K>,
        stage: usize,
        partial: &Partial<K>,
    ) {
        let (after_gain, after_uses, after_keeps) = &rest.best_from[stage];
        let mut uses = partial.uses;
        add(&mut uses, after_uses);
        if stage < rest.settled || !stock.fits(&uses) {
            return;
        }
        let gain = partial.gain + after_gain;
        let keeps = partial.keeps + after_keeps;
        let apart = slack(self.gain);
        let first = |uses: &[f64; K]| uses.first().copied().unwrap_or(0.0);
        let better = if (gain - self.gain).abs() > apart {
            gain > self.gain
        } else if (first(&uses) - first(&self.uses)).abs() > slack(first(&uses)) {
            first(&uses) < first(&self.uses)
        } else {
            keeps > self.keeps + TIE
        };
        if better {
            (self.gain, self.uses, self.keeps) = (gain, uses, keeps);
            self.at = Some((partial.at, stage));
        }
    }
}

/// Keeps the `held` most promising and returns the greatest promise among the dropped. The threshold is found
/// by bisection, so those kept stay in order.
fn most_promising<const K: usize>(
    partials: &mut Vec<Partial<K>>,
    held: usize,
    promise: impl Fn(&Partial<K>) -> f64,
) -> f64 {
    let each: Vec<f64> = partials.iter().map(promise).collect();
    let mut low = each.iter().copied().fold(f64::INFINITY, f64::min);
    let mut high = each.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    // More than `held` promise at least `low`; at most `held` promise more than `high`.
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if each.iter().filter(|p| **p >= middle).count() > held {
            low = middle;
        } else {
            high = middle;
        }
    }
    let above = each.iter().filter(|p| **p >= high && high > low).count();
    let (mut room, mut least) = (held.saturating_sub(above), f64::NEG_INFINITY);
    let mut promises = each.into_iter();
    partials.retain(|_| {
        let promise = promises.next().unwrap_or(f64::NEG_INFINITY);
        if promise >= high && high > low {
            return true;
        }
        let kept = promise >= low && room > 0;
        if kept {
            room -= 1;
        } else {
            least = least.max(promise);
        }
        kept
    });
    least
}

/// Drops partial selections that are dominated by another one with the same open needs. With more than two
/// budgets all are kept, and only the bound prunes.
fn unbeaten<const K: usize>(mut partials: Vec<Partial<K>>) -> Vec<Partial<K>> {
    if K > 2 {
        return partials;
    }
    let used = |p: &Partial<K>, k: usize| p.uses.get(k).copied().unwrap_or(0.0);
    partials.sort_unstable_by(|a, b| {
        a.pending
            .cmp(&b.pending)
            .then(b.gain.total_cmp(&a.gain))
            .then(used(a, 0).total_cmp(&used(b, 0)))
            .then(used(a, 1).total_cmp(&used(b, 1)))
            .then(b.keeps.total_cmp(&a.keeps))
            .then(a.at.cmp(&b.at))
    });
    let mut kept: Vec<Partial<K>> = Vec::new();
    // The selections kept so far with these needs: rising in the first budget, falling in the second.
    let mut stairs: Vec<(f64, f64)> = Vec::new();
    for partial in partials {
        if kept.last().is_some_and(|k| k.pending != partial.pending) {
            stairs.clear();
        }
        let (first, second) = (used(&partial, 0), used(&partial, 1));
        let after = stairs.partition_point(|s| s.0 <= first);
        if after > 0 && stairs[after - 1].1 <= second {
            continue;
        }
        let gone = stairs[after..].iter().take_while(|s| s.1 >= second).count();
        stairs.splice(after..after + gone, [(first, second)]);
        kept.push(partial);
    }
    kept
}

impl<const K: usize> StockChoice<K> {
    /// Gain minus use at these prices.
    fn net(&self, prices: &[f64; K]) -> f64 {
        let used: f64 = self.uses.iter().zip(prices).map(|(u, p)| u * p).sum();
        self.gain - used
    }
}

/// Whether choice `a` is at least as good as choice `b` in every respect.
fn beats<const K: usize>(a: &StockChoice<K>, b: &StockChoice<K>) -> bool {
    a.gain >= b.gain && a.keeps >= b.keeps && a.uses.iter().zip(&b.uses).all(|(a, b)| a <= b)
}

fn add<const K: usize>(sum: &mut [f64; K], more: &[f64; K]) {
    for (sum, more) in sum.iter_mut().zip(more) {
        *sum += more;
    }
}
