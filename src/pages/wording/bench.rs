//! Words at the head of the bench.

pub(crate) const WHAT_FOR: &str = "For talking to whoever would do the work. A field left empty \
    takes what stands in it, from the piece where it can.";
