//! Wording at the top of the bench.

pub(crate) const WHAT_FOR: &str = "Sums to talk over with whoever would do the work. An empty \
    field uses the value shown in it, taken from your piece where possible.";
