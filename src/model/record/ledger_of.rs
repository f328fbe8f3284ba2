//! The figures that hold for one case.

use std::borrow::Cow;

use super::Case;
use crate::ledger::Ledger;

/// The figures of a case: the standard ones, over them what closed pieces taught, over that the case's
/// own.
#[must_use]
pub fn ledger_of(case: &Case) -> Cow<'static, Ledger> {
    let mut ledger = Cow::Borrowed(Ledger::standard());
    for taught in case.taught.figures() {
        ledger
            .to_mut()
            .teach(taught.figure, [taught.low, taught.value, taught.high]);
    }
    for own in &case.overrides {
        // A case built in code may hold an override that a file could not; it is then left out.
        let _ = ledger
            .to_mut()
            .override_with(&own.figure, own.value, &own.reason);
    }
    for (figure, value) in &case.market.terms {
        let _ = ledger.to_mut().override_with(figure, *value, "");
    }
    ledger
}
