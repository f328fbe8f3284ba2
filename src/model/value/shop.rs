//! Selling from a shop: what a dealer makes, and what a dealer can pay.

/// A dealer's terms. Money in the case's currency, rates as shares of 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shop {
    /// Shop price over hammer price.
    pub retail: f64,
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

    /// The most that can be paid for a wanted gain, `margin` as a share of what is paid: the P at which
    /// the profit is margin P. Nothing when no price leaves that gain. Algebra on [`Shop::profit`].
    #[must_use]
    pub fn most_to_pay(&self, hammer: f64, cost: f64, margin: f64) -> f64 {
        let sale = self.retail * hammer;
        let d = self.discount();
        let wanted = 1.0 + margin + self.holding * self.months / 12.0;
        let untaxed = (sale * d - cost) / wanted;
        let taxed = ((1.0 - self.margin_tax) * sale * d - cost) / (wanted - self.margin_tax * d);
        // With a margin there is tax on it; bought for more than it sells for, there is none.
        if untaxed > sale { untaxed } else { taxed }.max(0.0)
    }

    fn discount(&self) -> f64 {
        libm::pow(1.0 + self.rate.max(0.0), -self.months / 12.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHOP: Shop = Shop {
        retail: 1.33,
        months: 9.0,
        rate: 0.1,
        holding: 0.01,
        margin_tax: 1.0 / 6.0,
    };

    #[test]
    fn the_most_to_pay_leaves_just_the_wanted_gain() {
        for (hammer, cost, margin) in [(300.0, 0.0, 0.33), (300.0, 120.0, 0.0), (80.0, 10.0, 1.0)] {
            let paid = SHOP.most_to_pay(hammer, cost, margin);
            let gain = SHOP.profit(hammer, paid, cost);
            assert!((gain - margin * paid).abs() < 1e-9, "{hammer} {gain}");
        }
        assert!(SHOP.most_to_pay(50.0, 500.0, 0.3).abs() < 1e-12);
    }

    #[test]
    fn no_margin_no_tax() {
        assert!(SHOP.tax(100.0, 133.0).abs() < 1e-12);
        assert!(SHOP.tax(100.0, 200.0).abs() < 1e-12);
        assert!(SHOP.tax(100.0, 132.0) > 0.0);
    }
}
