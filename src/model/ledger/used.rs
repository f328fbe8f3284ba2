//! Which figures were read: the record behind "what this answer used".
//!
//! Compiled only into the program that shows the ledger (feature `trace`): the answer itself never asks, and
//! a program that only answers does not carry this code.

use std::cell::RefCell;
use std::collections::BTreeSet;

thread_local! {
    static READ: RefCell<Option<BTreeSet<&'static str>>> = const { RefCell::new(None) };
}

/// Records that a figure was read, while [`read_during`] is running.
pub(super) fn note(id: &'static str) {
    READ.with(|read| {
        if let Some(ids) = read.borrow_mut().as_mut() {
            ids.insert(id);
        }
    });
}

/// Runs `work` and also returns the ids of the figures it looked up. A figure that was not looked up cannot
/// have changed the result; one that was looked up may have.
///
/// If calls are nested, the outer one does not see what is read in the inner one.
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
    fn only_figures_read_during_the_work_are_returned() {
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
