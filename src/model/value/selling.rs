//! Ways to sell: what a seller keeps by each, how long it takes, and what a buyer who sells on can pay.

use super::{Fees, Shop};
use crate::ledger::{FigureId, Ledger};
use crate::maths::at_most;
use crate::terms::Route;

/// The terms of every way to sell but those of the auction house, which differ from draw to draw. Money in
/// the case's currency.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Selling {
    /// A shop or a stand in one.
    pub shop: Shop,
    /// A stand at fairs.
    pub fair: Shop,
    /// What the trade pays at once, as a share of the hammer price; never more than that price.
    pub trade: f64,
    /// Months until an auction house pays.
    pub auction_months: f64,
    /// Months a piece is away for work.
    pub work_months: f64,
}

impl Selling {
    /// The terms of the ledger, with the person's own added to them. `taxed` is whether tax on the margin
    /// is to be taken off.
    #[must_use]
    pub fn of(ledger: &Ledger, taxed: bool) -> Self {
        let v = |id: FigureId| ledger.value(id).max(0.0);
        let share = |id: FigureId| ledger.value(id).clamp(0.0, 1.0);
        let retail = v(FigureId::VALUE_RETAIL_OVER_HAMMER);
        let shop = Shop {
            retail,
            takes: share(FigureId::VALUE_TRADE_SHOP_TAKES),
            months: v(FigureId::VALUE_TRADE_MONTHS_SHOP),
            rate: v(FigureId::VALUE_TRADE_RATE),
            holding: v(FigureId::VALUE_TRADE_HOLDING),
            margin_tax: if taxed {
                share(FigureId::VALUE_TRADE_MARGIN_TAX)
            } else {
                0.0
            },
        };
        Self {
            shop,
            fair: Shop {
                retail: retail * v(FigureId::VALUE_TRADE_FAIR_OVER_SHOP),
                takes: share(FigureId::VALUE_TRADE_FAIR_TAKES),
                months: v(FigureId::VALUE_TRADE_MONTHS_FAIR),
                ..shop
            },
            trade: at_most(retail * share(FigureId::VALUE_TRADE_STOCK_SHARE), 1.0),
            auction_months: v(FigureId::VALUE_TRADE_MONTHS_AUCTION),
            work_months: v(FigureId::VALUE_TRADE_MONTHS_WORK),
        }
    }

    /// What the seller keeps of a piece that would make `hammer` at auction, on the day it is paid for:
    /// after the terms of the auction house with one re-offer; the price itself on a private sale; the
    /// trade's share of it; the shop's or the fair's price less what selling there takes. Money; `hammer`
    /// from 0 up.
    #[must_use]
    #[inline]
    pub fn kept(&self, route: Route, fees: &Fees, hammer: f64) -> f64 {
        match route {
            Route::Auction => fees.expected(hammer),
            Route::Private => hammer,
            Route::Shop => self.shop.kept(hammer),
            Route::Trade => self.trade * hammer,
            Route::Fair => self.fair.kept(hammer),
        }
    }

    /// The least and the greatest share of one more unit of hammer price that the seller keeps.
    #[must_use]
    pub fn slopes(&self, route: Route, fees: &Fees) -> (f64, f64) {
        if route == Route::Auction {
            return fees.slopes();
        }
        let share = self.kept(route, fees, 1.0);
        (share, share)
    }

    /// Months until the money is there; `None` where nobody can say: until a private buyer is found.
    #[must_use]
    pub fn months(&self, route: Route) -> Option<f64> {
        match route {
            Route::Auction => Some(self.auction_months),
            Route::Private => None,
            Route::Shop => Some(self.shop.months),
            Route::Trade => Some(0.0),
            Route::Fair => Some(self.fair.months),
        }
    }

    /// What is kept, as it is worth on the day the piece is handed over: later money is worth less by what
    /// money earns elsewhere. Present value by definition.
    #[must_use]
    pub fn today(&self, route: Route, fees: &Fees, hammer: f64) -> f64 {
        self.kept(route, fees, hammer) * self.shop.discount_over(self.months(route).unwrap_or(0.0))
    }

    /// What decides the most to pay for a piece that is to be sold on by this route: the gain wanted, as a
    /// share of what is paid, and the months it is away for work first. The gain pays for the selling in a
    /// shop or at a fair too.
    #[must_use]
    pub fn bid(&self, route: Route, margin: f64, away: f64) -> Bid {
        let months = self.months(route).unwrap_or(self.auction_months) + away;
        let place = match route {
            Route::Shop => Some(self.shop),
            Route::Fair => Some(self.fair),
            Route::Auction | Route::Private | Route::Trade => None,
        };
        Bid {
            selling: *self,
            route,
            price: place.map(|place| place.retail),
            discount: self.shop.discount_over(months),
            wanted: 1.0 + margin + self.shop.holding * months / 12.0,
            margin_tax: place.map_or(0.0, |place| place.margin_tax),
        }
    }

    /// The hammer price below which the trade's offer for a piece of this hammer price is better than
    /// what is left of a sale at auction: what a reserve is for. `None` where an auction would leave less
    /// even at that price. Bisection on [`Fees::net`], which rises with the price, to a thousandth.
    #[must_use]
    pub fn reserve(&self, fees: &Fees, hammer: f64) -> Option<f64> {
        let offer = self.trade * hammer;
        if fees.net(hammer) < offer {
            return None;
        }
        let (mut low, mut high) = (0.0, hammer);
        while high - low > 0.001 * hammer {
            let middle = 0.5 * (low + high);
            if fees.net(middle) < offer {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(high)
    }
}

/// A piece to be bought and sold on by one route.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bid {
    selling: Selling,
    route: Route,
    /// The place's price over the hammer price, where it has a ticket.
    price: Option<f64>,
    /// What money that comes when it is sold is worth today.
    discount: f64,
    /// What one unit paid has to bring: itself, the gain and holding the piece.
    wanted: f64,
    margin_tax: f64,
}

impl Bid {
    /// The most that can be paid: the P at which S d - tax d - C = wanted P, with S what comes in, d the
    /// discount, C the cost of work paid for at once and the tax a share of the margin S - P, where there is
    /// one. Money, nothing where no price leaves the gain; hammer and C from 0 up. Algebra.
    #[must_use]
    pub fn most(&self, fees: &Fees, hammer: f64, cost: f64) -> f64 {
        self.most_for(self.sale(fees, hammer), cost)
    }

    /// What comes in for a piece that would make `hammer` at auction: S of [`Bid::most`].
    #[must_use]
    pub fn sale(&self, fees: &Fees, hammer: f64) -> f64 {
        match self.price {
            Some(times) => times * hammer,
            None => self.selling.kept(self.route, fees, hammer),
        }
    }

    /// The same as [`Bid::most`] for what comes in, of one lot or of several together.
    #[must_use]
    pub fn most_for(&self, sale: f64, cost: f64) -> f64 {
        let (d, tax) = (self.discount, self.margin_tax);
        let untaxed = (sale * d - cost) / self.wanted;
        let taxed = ((1.0 - tax) * sale * d - cost) / (self.wanted - tax * d);
        // With a margin there is tax on it; bought for more than it sells for, there is none.
        if untaxed > sale { untaxed } else { taxed }.max(0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FEES: Fees = Fees {
        commission: 0.15,
        above: 1e8,
        commission_above: 0.1,
        minimum: 20.0,
        vat: 0.2,
        lot: 10.0,
        insurance: 0.01,
        transport: 0.0,
        sold: 1.0,
        reoffer: 0.75,
        unsold: 0.0,
    };

    fn selling() -> Selling {
        Selling::of(Ledger::standard(), true)
    }

    #[test]
    fn the_trade_never_pays_more_than_the_hammer_price() {
        let mut ledger = Ledger::standard().clone();
        assert!(selling().trade <= 1.0);
        ledger
            .override_with("value.retail_over_hammer", 5.0, "a dear shop")
            .unwrap();
        let dear = Selling::of(&ledger, false);
        assert!((dear.kept(Route::Trade, &FEES, 200.0) - 200.0).abs() < 1e-12);
    }

    #[test]
    fn what_most_can_be_paid_leaves_just_the_wanted_gain() {
        let s = selling();
        let (away, holding) = (2.0, s.shop.holding);
        for (hammer, cost, margin) in [(400.0, 0.0, 0.33), (400.0, 50.0, 0.0), (900.0, 10.0, 1.0)] {
            for route in Route::ALL {
                let paid = s.bid(*route, margin, away).most(&FEES, hammer, cost);
                assert!(paid > 0.0, "{route:?}");
                let months = s.months(*route).unwrap_or(s.auction_months) + away;
                let gain = match route {
                    Route::Shop => Shop { months, ..s.shop }.profit(hammer, paid, cost),
                    Route::Fair => Shop { months, ..s.fair }.profit(hammer, paid, cost),
                    _ => {
                        s.kept(*route, &FEES, hammer) * s.shop.discount_over(months)
                            - paid * (1.0 + holding * months / 12.0)
                            - cost
                    }
                };
                assert!((gain - margin * paid).abs() < 1e-9, "{route:?} {gain}");
            }
        }
        let nothing = s.bid(Route::Shop, 0.3, 0.0).most(&FEES, 50.0, 500.0);
        assert!(nothing.abs() < 1e-12);
    }

    #[test]
    fn at_the_reserve_an_auction_leaves_what_the_trade_offers() {
        let mut s = selling();
        s.trade = 0.6;
        let reserve = s.reserve(&FEES, 500.0).unwrap();
        assert!((FEES.net(reserve) - 300.0).abs() < 1.0, "{reserve}");
        // Fifteen pounds at auction would not pay the least commission.
        assert_eq!(s.reserve(&FEES, 15.0), None);
    }

    #[test]
    fn slopes_bound_what_one_more_unit_leaves() {
        let s = selling();
        for route in Route::ALL {
            let (low, high) = s.slopes(*route, &FEES);
            for hammer in [5.0, 80.0, 140.0, 900.0] {
                let more = s.kept(*route, &FEES, hammer + 1.0) - s.kept(*route, &FEES, hammer);
                assert!(
                    low - 1e-9 <= more && more <= high + 1e-9,
                    "{route:?} {hammer}"
                );
            }
        }
    }
}
