//! Which figures were read: the record behind "what this answer used".
//!
//! Only in the program that shows the ledger (feature `trace`): the answer itself never asks, and a
//! program that only answers carries none of this.

use std::cell::RefCell;
use std::collections::BTreeSet;

thread_local! {
    static READ: RefCell<Option<BTreeSet<&'static str>>> = const { RefCell::new(None) };
}

/// Notes that a figure was read, while somebody asks.
pub(super) fn note(id: &'static str) {
    READ.with(|read| {
        if let Some(ids) = read.borrow_mut().as_mut() {
            ids.insert(id);
        }
    });
}

/// Does something and tells the ids of the figures looked up by it. A figure that was not looked up
/// cannot have changed what was done; one that was, may have.
///
/// One question at a time: asked within another, the outer one hears nothing of the inner.
pub fn read_during<T>(work: impl FnOnce() -> T) -> (T, BTreeSet<&'static str>) {
    let outer = READ.with(|read| read.replace(Some(BTreeSet::new())));
    let done = work();
    let ids = READ.with(|read| read.replace(outer)).unwrap_or_default();
    (done, ids)
}

#[cfg(test)]
mod tests {
    use super::read_during;
    use crate::ledger::Ledger;

    #[test]
    fn only_what_was_read_meanwhile_is_told() {
        let ledger = Ledger::standard();
        let _ = ledger.value(crate::ledger::FigureId::FEE_LOT);
        let ((), ids) = read_during(|| {
            let _ = ledger.value(crate::ledger::FigureId::FEE_COMMISSION);
            let _ = ledger.find("no.such");
        });
        assert_eq!(ids.into_iter().collect::<Vec<_>>(), ["fee.commission"]);
        let (_, none) = read_during(|| 1);
        assert!(none.is_empty());
    }
}
