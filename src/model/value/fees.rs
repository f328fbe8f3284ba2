//! Selling charges and what is left of a hammer price.

use crate::maths::{at_least, at_most};

/// One seller's terms at auction. Money in the case's currency, rates as shares of 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fees {
    /// Commission on the hammer.
    pub commission: f64,
    /// Price from which each further unit pays the next rate; beyond any price when there is none.
    pub above: f64,
    /// Commission on what lies above that.
    pub commission_above: f64,
    /// Least commission.
    pub minimum: f64,
    /// Value-added tax on the commission.
    pub vat: f64,
    /// Lot fee, tax included.
    pub lot: f64,
    /// Insurance on the hammer.
    pub insurance: f64,
    /// Carriage.
    pub transport: f64,
    /// Chance that it sells at the first attempt.
    pub sold: f64,
    /// Price at the second attempt as a share of the first.
    pub reoffer: f64,
    /// Charge for a lot that does not sell, on top of the lot fee.
    pub unsold: f64,
}

impl Fees {
    /// What a seller keeps of a hammer price: H - max(C, least)(1 + v) - lot - iH - carriage, with C
    /// the commission by bands. Money; H from 0 up. Never above the hammer, and below nothing where
    /// the charges are more than the price. Common auction terms (a UK auction guide; see the ledger).
    #[must_use]
    #[inline]
    pub fn net(&self, hammer: f64) -> f64 {
        hammer
            - at_least(
                self.commission * at_most(hammer, self.above)
                    + self.commission_above * at_least(hammer - self.above, 0.0),
                self.minimum,
            ) * (1.0 + self.vat)
            - self.lot
            - self.insurance * hammer
            - self.transport
    }

    /// The least and the greatest share of one more unit of price that a seller keeps, with one
    /// re-offer: the steepest commission there is, or none while the minimum holds.
    #[must_use]
    pub fn slopes(&self) -> (f64, f64) {
        let steepest = self.commission.max(self.commission_above) * (1.0 + self.vat);
        let sold = self.sold + (1.0 - self.sold) * self.reoffer;
        let keeps = |commission: f64| (1.0 - commission - self.insurance) * sold;
        (keeps(steepest), keeps(0.0))
    }

    /// Expected proceeds with one re-offer: q net(H) + (1 - q)(net(delta H) - lot - unsold charge).
    #[must_use]
    #[inline]
    pub fn expected(&self, hammer: f64) -> f64 {
        self.sold * self.net(hammer)
            + (1.0 - self.sold) * (self.net(self.reoffer * hammer) - (self.lot + self.unsold))
    }
}
