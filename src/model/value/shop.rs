//! Selling from a shop or a stand: what a dealer makes, and what a dealer can pay.

/// A dealer's terms. Money in the case's currency, rates as shares of 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shop {
    /// Shop price over hammer price.
    pub retail: f64,
    /// What selling there takes of the price: rent, cards, packing, the hours behind the counter.
    pub takes: f64,
    /// Months until it sells, work included.
    pub months: f64,
    /// What the money could earn in a year.
    pub rate: f64,
    /// Insurance and storage a year, of what was paid.
    pub holding: f64,
    /// Tax on the margin as a share of it; 0 where none is due.
    pub margin_tax: f64,
}

impl Shop {
    /// What is left of the price once the place is paid for, on the day it sells: (1 - takes) S, with S the
    /// shop price. Money; hammer price from 0 up. Definition.
    #[must_use]
    #[inline]
    pub fn kept(&self, hammer: f64) -> f64 {
        (1.0 - self.takes) * self.retail * hammer
    }

    /// Tax on the margin: its share of the sale price less the purchase price, nothing where there is
    /// no margin. UK margin scheme: one sixth; repairs do not count as part of the purchase price
    /// (gov.uk, VATMARG02100).
    #[must_use]
    pub fn tax(&self, hammer: f64, paid: f64) -> f64 {
        self.margin_tax * (self.retail * hammer - paid).max(0.0)
    }

    /// What is made, in today's money: (S - tax)/(1 + r)^(m/12) - P - C - holding, with S the shop
    /// price, P what was paid, C the cost of work paid at once. Hammer price, P and C from 0 up. Below
    /// nothing is a loss. Discounting: definition of present value.
    #[must_use]
    pub fn profit(&self, hammer: f64, paid: f64, cost: f64) -> f64 {
        (self.retail * hammer - self.tax(hammer, paid)) * self.discount()
            - paid * (1.0 + self.holding * self.months / 12.0)
            - cost
    }

    fn discount(&self) -> f64 {
        self.discount_over(self.months)
    }

    /// What one unit of money is worth today when it comes in so many months: (1 + r)^(-m/12).
    #[must_use]
    pub fn discount_over(&self, months: f64) -> f64 {
        libm::pow(1.0 + self.rate.max(0.0), -months / 12.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHOP: Shop = Shop {
        retail: 1.33,
        takes: 0.3,
        months: 9.0,
        rate: 0.1,
        holding: 0.01,
        margin_tax: 1.0 / 6.0,
    };

    #[test]
    fn no_margin_no_tax() {
        assert!(SHOP.tax(100.0, 133.0).abs() < 1e-12);
        assert!(SHOP.tax(100.0, 200.0).abs() < 1e-12);
        assert!(SHOP.tax(100.0, 132.0) > 0.0);
    }
}
