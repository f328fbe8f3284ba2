//! Short lists put in order.
//!
//! The standard library's sort is compiled again for each type and each comparison, at some 5 KB of program: the program
//! in the workers held forty of them, a seventh of its code. Here one sort is compiled, over places in a list, and only
//! the exchange of the elements is compiled for each type. Lists of numbers by the thousand keep the standard sort.

use std::cmp::Ordering;

/// Puts a list in order. Equal elements keep their order.
pub trait ShortSort<T> {
    /// Sorts by a comparison.
    fn order_by(&mut self, compare: impl Fn(&T, &T) -> Ordering);

    /// Sorts by a key, the smallest first.
    fn order_by_key<K: Ord>(&mut self, key: impl Fn(&T) -> K) {
        self.order_by(|a, b| key(a).cmp(&key(b)));
    }
}

impl<T> ShortSort<T> for [T] {
    fn order_by(&mut self, compare: impl Fn(&T, &T) -> Ordering) {
        let mut from = places(self.len(), &|a, b| compare(&self[a], &self[b]));
        // Each element goes straight to its place, cycle by cycle.
        for start in 0..from.len() {
            let mut at = start;
            while from[at] != start {
                let next = from[at];
                self.swap(at, next);
                from[at] = at;
                at = next;
            }
            from[at] = at;
        }
    }
}

/// For each place of the ordered list, the place where its element stands now.
fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|a, b| compare(*a, *b));
    order
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every list of up to six letters out of three, each letter with its first place beside it.
    fn lists() -> Vec<Vec<(usize, usize)>> {
        let mut all = vec![Vec::new()];
        let mut longest = all.clone();
        for place in 0..6 {
            let longer = longest.iter().flat_map(|list: &Vec<(usize, usize)>| {
                (0..3).map(move |letter| [list.as_slice(), &[(letter, place)]].concat())
            });
            longest = longer.collect();
            all.extend_from_slice(&longest);
        }
        all
    }

    #[test]
    fn every_list_is_ordered_as_the_standard_sort_orders_it() {
        let all = lists();
        assert_eq!(all.len(), 1 + 3 + 9 + 27 + 81 + 243 + 729);
        for list in all {
            let (mut ours, mut standard) = (list.clone(), list.clone());
            ours.order_by(|a, b| b.0.cmp(&a.0));
            standard.sort_by_key(|it| std::cmp::Reverse(it.0));
            assert_eq!(ours, standard, "the largest first: {list:?}");
            ours.order_by_key(|it| it.0);
            standard.sort_by_key(|it| it.0);
            assert_eq!(ours, standard, "the smallest first: {list:?}");
        }
    }
}
