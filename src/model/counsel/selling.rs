//! Where to sell the piece, and the most that a buyer who sells it on could pay.

use super::choice::{Rulings, Tested};
use super::outcome::{CourseOutcome, Weigher};
use super::search::course_of;
use super::sentences::money;
use super::wording::selling as words;
use super::{SEARCH_LOG2, Solved};
use crate::ledger::FigureId;
use crate::maths::{deciles, quantile_of};
use crate::record::{Case, Goal, Route};
use crate::report::{Band, RouteReport, SellingReport};
use crate::treatment::Treatment;
use crate::value::Bid;

/// Treatments that keep a piece for no longer than an afternoon.
const AT_HOME: [Treatment; 5] = [
    Treatment::Leave,
    Treatment::Keeping,
    Treatment::Wash,
    Treatment::Clean,
    Treatment::Foam,
];

impl Solved {
    /// What each way of selling leaves once the advised work is done, and which is best; `None` unless the
    /// piece is to be sold.
    /// `together` says whether several pieces go together or apart; empty for one.
    pub(super) fn selling(&self, together: &str) -> Option<SellingReport> {
        if self.goal != Goal::Sell {
            return None;
        }
        let outcome = &self.outcomes[self.advice.chosen];
        let hammer = &outcome.hammer;
        let selling = &self.draws.selling;
        let ways: Vec<Way> = Route::ALL
            .iter()
            .map(|route| {
                let seen = self.seen_on(*route, &self.courses[self.advice.chosen].steps);
                let kept = outcome
                    .over_lots(&|i, h| selling.kept(*route, &self.draws.fees.at(i), h * seen));
                // Later money is worth less by the same share in every draw.
                let months = selling.months(*route).unwrap_or(0.0);
                let mean = kept.iter().sum::<f64>() / kept.len().max(1) as f64;
                Way {
                    route: *route,
                    today: mean * selling.shop.discount_over(months),
                    kept: deciles(&kept),
                }
            })
            .collect();
        let best = ways
            .iter()
            .filter(|way| self.is_open_to_seller(way.route))
            .fold(None, |best: Option<&Way>, way| match best {
                Some(so_far) if so_far.today >= way.today => best,
                _ => Some(way),
            })?;
        let fees = self.draws.fees.middle();
        let middle = hammer.median();
        let bargain = self.ledger.value(FigureId::VALUE_COMPARABLE_BARGAIN);
        let by_ticket = [Route::Shop, Route::Fair].contains(&self.draws.route);
        let place = if self.draws.route == Route::Fair {
            selling.fair
        } else {
            selling.shop
        };
        Some(SellingReport {
            best: best.route,
            sentence: [&self.where_to_sell(&ways, best, middle), together]
                .map(str::trim)
                .join(" ")
                .trim()
                .to_owned(),
            besides: if matches!(best.route, Route::Auction | Route::Trade) {
                words::a_buyer_of_ones_own(&money(&self.case, best.kept[1]))
            } else {
                String::new()
            },
            // A reserve and a ticket are of one lot.
            reserve: (best.route == Route::Auction && outcome.lots.is_empty())
                .then(|| selling.reserve(&fees, middle))
                .flatten(),
            ticket: (by_ticket && outcome.lots.is_empty())
                .then(|| place.retail * middle / bargain.max(0.01)),
            routes: ways.iter().map(|way| way.report(selling)).collect(),
        })
    }

    /// How much more or less the buyers of a route give for it with this work done, as a ratio on average: 1
    /// where they are those it is weighed for.
    fn seen_on(&self, route: Route, steps: &[Treatment]) -> f64 {
        let Some(only) = self.case.as_sold(route) else {
            return 1.0;
        };
        let [usual, seen] = [&*self.case, &only].map(|case| share_kept(case, steps));
        if usual > 0.0 { seen / usual } else { 1.0 }
    }

    /// Whether the seller can take this way without more: an auction and the trade are there for anybody;
    /// a buyer already known, a shop or a stand only if the seller says so.
    fn is_open_to_seller(&self, route: Route) -> bool {
        matches!(route, Route::Auction | Route::Trade) || route == self.draws.route
    }

    fn where_to_sell(&self, ways: &[Way], best: &Way, middle: f64) -> String {
        let sum = |amount: f64| money(&self.case, amount);
        let of = |route: Route| ways.iter().find(|way| way.route == route);
        let kept = |route: Route| of(route).map_or(0.0, |way| way.kept[1]);
        let auction = kept(Route::Auction);
        let heavy = self.ledger.value(FigureId::VALUE_TRADE_CHARGES_HEAVY);
        let mut said = Vec::new();
        if auction <= 0.0 {
            said.push(words::NOT_AT_AUCTION.to_owned());
        } else if middle - auction > heavy * middle && best.route != Route::Auction {
            said.push(words::charges_take(&sum(middle - auction), &sum(middle)));
        }
        said.push(match best.route {
            Route::Auction => words::at_auction(&sum(auction), &sum(kept(Route::Trade))),
            Route::Trade => {
                words::to_the_trade(&sum(kept(Route::Trade)), auction > 0.0, &sum(auction))
            }
            Route::Private => words::privately(&sum(kept(Route::Private))),
            Route::Shop => words::from_a_shop(&sum(kept(Route::Shop))),
            Route::Fair => words::at_fairs(&sum(kept(Route::Fair))),
        });
        said.join(" ")
    }

    /// The terms that decide the most to pay for the piece with this work still to be done, on the seller's
    /// route.
    pub(super) fn bid(&self, steps: &[Treatment]) -> Bid {
        let selling = &self.draws.selling;
        let is_away = steps.iter().any(|t| !AT_HOME.contains(t));
        let away = if is_away { selling.work_months } else { 0.0 };
        let margin = self.ledger.value(FigureId::VALUE_TRADE_MARGIN).max(0.0);
        selling.bid(self.draws.route, margin, away)
    }

    /// The most to pay for the piece if this is done and it is then sold: the price that leaves the wanted
    /// gain in all draws except the accepted share of risk. `None` unless it is to be sold.
    pub(super) fn most_to_pay(&self, steps: &[Treatment], outcome: &CourseOutcome) -> Option<f64> {
        if self.goal != Goal::Sell {
            return None;
        }
        let bid = self.bid(steps);
        let sales = outcome.over_lots(&|i, h| bid.sale(&self.draws.fees.at(i), h));
        let each = sales.iter().zip(outcome.cost.iter());
        let most: Vec<f64> = each
            .map(|(sale, cost)| bid.most_for(*sale, *cost))
            .collect();
        let risk = self.ledger.value(FigureId::VALUE_TRADE_RISK);
        Some(quantile_of(&most, risk.clamp(0.01, 0.99)))
    }
}

/// What the price with this work done is of the price undamaged, on average over a small sample.
fn share_kept(case: &Case, steps: &[Treatment]) -> f64 {
    let solved = Solved::of(case, SEARCH_LOG2);
    let situation = solved.situation();
    let mut world = solved.world(&solved.draws, &situation, None);
    world.goal = Goal::Sell;
    let course = course_of(steps, Tested::AsRecorded, &Rulings::new(&world));
    let weighed = Weigher::new(&world).weigh(&course, solved.draws.n);
    let whole: f64 = solved.draws.level.iter().sum();
    weighed.hammer.iter().sum::<f64>() / whole.max(f64::MIN_POSITIVE)
}

/// One way to sell it.
struct Way {
    route: Route,
    /// What is kept, 10th, 50th and 90th percentile.
    kept: [f64; 3],
    /// Its mean in present value.
    today: f64,
}

impl Way {
    fn report(&self, selling: &crate::value::Selling) -> RouteReport {
        let [p10, p50, p90] = self.kept;
        RouteReport {
            route: self.route,
            name: self.route.label().into(),
            kept: Band { p10, p50, p90 },
            months: selling.months(self.route),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::counsel::weigh_at_once;
    use crate::record::Draft;
    use serde_json::{Value, json};

    fn report(change: impl Fn(&mut Value)) -> crate::Report {
        let mut case = json!({
            "format": "leavewell-case",
            "version": 2,
            "piece": {"form": "tray"},
            "findings": [{"id": "M01", "answer": "seen"}, {"id": "S04", "answer": "seen"}],
            "parts": [{"part": "body", "bleed": "slight", "dents": "minor"}],
            "aim": {"goal": "sell"},
            "market": {"low": 200, "likely": 300, "high": 450, "currency": "GBP"},
        });
        change(&mut case);
        let (case, problems) = Draft::parse(&case.to_string()).unwrap().read();
        assert_eq!(problems, []);
        weigh_at_once(&case, problems)
    }

    fn kept(report: &crate::Report, route: Route) -> f64 {
        let selling = report.counsel.selling.as_ref().unwrap();
        let way = selling.routes.iter().find(|way| way.route == route);
        way.unwrap().kept.p50
    }

    #[test]
    fn only_a_seller_is_shown_where_to_sell() {
        for goal in ["keep_show", "keep_use", "study", "insure"] {
            let report = report(|case| case["aim"]["goal"] = goal.into());
            assert_eq!(report.counsel.selling, None, "{goal}");
            assert!(report.courses.iter().all(|c| c.most_to_pay.is_none()));
        }
        let report = report(|_| {});
        assert!(report.courses.iter().all(|c| c.most_to_pay.is_some()));
        assert_eq!(
            report.counsel.selling.unwrap().routes.len(),
            Route::ALL.len()
        );
    }

    #[test]
    fn the_amount_a_route_leaves_is_the_amount_weighed() {
        for route in Route::ALL {
            let report = report(|case| case["market"]["route"] = route.id().into());
            let leave = report
                .courses
                .iter()
                .find(|c| c.steps == [Treatment::Leave])
                .unwrap();
            if report.counsel.steps == [Treatment::Leave] {
                assert!((leave.net.p50 - kept(&report, *route)).abs() < 1e-9);
            }
            let now = report.value.net_as_it_is.p50;
            assert!((leave.net.p50 - now).abs() < 1e-9, "{route:?}");
        }
    }

    #[test]
    fn a_cheap_piece_does_not_go_to_auction() {
        let cheap = report(|case| {
            case["market"] = json!({"low": 10, "likely": 15, "high": 25, "currency": "GBP"});
        });
        let selling = cheap.counsel.selling.as_ref().unwrap();
        assert_eq!(selling.best, Route::Trade);
        assert!(
            selling.sentence.starts_with(words::NOT_AT_AUCTION),
            "{}",
            selling.sentence
        );
        assert_eq!(selling.reserve, None);
        assert!(kept(&cheap, Route::Auction) < 0.0);
    }

    #[test]
    fn an_auction_house_with_low_fees_is_best_and_has_a_reserve() {
        let report = report(|case| {
            case["market"]["fees"] =
                json!({"commission_pct": 2, "minimum": 0, "lot": 0, "sold_pct": 100});
        });
        let selling = report.counsel.selling.as_ref().unwrap();
        assert_eq!(selling.best, Route::Auction);
        let reserve = selling.reserve.unwrap();
        assert!(
            reserve > 0.5 * kept(&report, Route::Auction) && reserve < 300.0,
            "{reserve}"
        );
    }

    #[test]
    fn a_shop_has_a_ticket_price_and_a_dealers_terms_count() {
        let usual = report(|case| case["market"]["route"] = "shop".into());
        let dear = report(|case| {
            case["market"]["route"] = "shop".into();
            case["worth"] = json!({"retail_over_hammer": 2.0});
        });
        let ticket =
            |report: &crate::Report| report.counsel.selling.as_ref().unwrap().ticket.unwrap();
        assert!((ticket(&dear) / ticket(&usual) - 2.0 / 1.33).abs() < 1e-9);
        let most = |report: &crate::Report| report.courses[0].most_to_pay.unwrap();
        assert!(most(&dear) > most(&usual));
        let greedy = self::report(|case| {
            case["market"]["route"] = "shop".into();
            case["worth"] = json!({"margin_pct": 100});
        });
        assert!(most(&greedy) < most(&usual));
        let taxed = self::report(|case| {
            case["market"]["route"] = "shop".into();
            case["worth"] = json!({"margin_tax": "yes"});
        });
        assert!(most(&taxed) < most(&usual));
    }

    #[test]
    fn the_trade_pays_no_more_than_the_hammer_price() {
        for times in [1.1, 1.33, 1.9] {
            let report = report(|case| case["worth"] = json!({"retail_over_hammer": times}));
            assert!(kept(&report, Route::Trade) <= kept(&report, Route::Private) + 1e-9);
        }
    }

    #[test]
    fn buyers_in_a_shop_count_in_a_shop_and_nowhere_else() {
        let collectors = |case: &mut Value| {
            case["parts"] = json!([{"part": "body", "bleed": "much"}]);
            case["worth"] = json!({"mix_shop": {"collector": 100}});
        };
        let plain = report(|case| case["parts"] = json!([{"part": "body", "bleed": "much"}]));
        let with = report(collectors);
        let moved = |route| kept(&with, route) / kept(&plain, route);
        assert!((moved(Route::Auction) - 1.0).abs() < 1e-9);
        assert!((moved(Route::Private) - 1.0).abs() < 1e-9);
        assert!(
            (moved(Route::Shop) - 1.0).abs() > 0.01,
            "{}",
            moved(Route::Shop)
        );
        assert!((moved(Route::Fair) - moved(Route::Shop)).abs() < 0.02);
        // Sold from a shop, the whole answer is for those buyers, and an auction for the usual ones.
        let in_shop = report(|case| {
            collectors(case);
            case["market"]["route"] = "shop".into();
        });
        let at_auction = |report: &crate::Report| report.value.as_it_is.p50;
        assert!((at_auction(&in_shop) / at_auction(&plain) - 1.0).abs() > 0.01);
        let auction = kept(&in_shop, Route::Auction) / kept(&plain, Route::Auction);
        assert!((auction - 1.0).abs() < 0.05, "{auction}");
    }

    #[test]
    fn shares_of_nobody_are_named_on_every_route() {
        let text = r#"{"format":"leavewell-case","version":1,"worth":{"mix_private":{"user":0}}}"#;
        let (case, problems) = Draft::parse(text).unwrap().read();
        assert_eq!(problems.len(), 1, "{problems:?}");
        assert_eq!(problems[0].field, "worth.mix_private.collector");
        assert_eq!(case.market.buyers.privately, None);
    }
}
