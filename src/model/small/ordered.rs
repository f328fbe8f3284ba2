//! Sorting for short lists.
//!
//! The library's sort brings 5 to 10 KB of code for each type it meets, and the program that goes to
//! the browser has a size budget; every list sorted here has at most a few dozen entries.

use std::cmp::Ordering;

/// Sorts a short list in place, keeping equal entries in their order. Insertion sort: fine for a few
/// dozen entries, slow for thousands.
pub fn sort_short<T>(list: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    for i in 1..list.len() {
        let mut j = i;
        while j > 0 && compare(&list[j - 1], &list[j]) == Ordering::Greater {
            list.swap(j - 1, j);
            j -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sorts_and_keeps_equals_in_order() {
        let mut list: Vec<(i32, usize)> = [3, 1, 2, 1, 3, 0, 2].into_iter().zip(0..).collect();
        sort_short(&mut list, |a, b| a.0.cmp(&b.0));
        assert_eq!(
            list,
            [(0, 5), (1, 1), (1, 3), (2, 2), (2, 6), (3, 0), (3, 4)]
        );
        sort_short::<i32>(&mut [], Ord::cmp);
    }
}
