//! A simulated trade that differs from the shipped figures, and what is learnt of it from closed pieces.
//! Everything here is CONSTRUCTED. It runs on request: `cargo test --release --test learning_simulation --
//! --ignored --nocapture`.
//!
//! The true trade: the share that replated pieces keep is the square root of our judgement, bills are 1.4
//! times ours, people estimate 10 % too high, 3 in 100 prices and bills are outliers, a reserve leaves some
//! pieces unsold, and 60 in 100 buyers are named.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]
#![allow(clippy::disallowed_methods)] // a simulation on the machine it runs on

use leavewell_model::learn::student4::WIDER;
use leavewell_model::learn::{
    Alarm, Closing, Learnt, MishapCount, Observed, PieceEvidence, PricedState, Scatter, Shift,
    Teaching, Topic, more_went_wrong, outside_the_range, record_of,
};
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::maths::{Z10, probit};
use leavewell_model::record::Draft;
use leavewell_model::value::{BUYERS, Class, ConditionTable};

/// A generator of pseudo-random numbers (`SplitMix64`: Steele, Lea & Flood 2014).
struct Luck(u64);

impl Luck {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn normal(&mut self, mean: f64, sd: f64) -> f64 {
        mean + sd * probit(self.share().clamp(1e-12, 1.0 - 1e-12))
    }

    fn is(&mut self, chance: f64) -> bool {
        self.share() < chance
    }

    fn one_of(&mut self, shares: &[f64]) -> usize {
        let mut u = self.share() * shares.iter().sum::<f64>();
        for (place, share) in shares.iter().enumerate() {
            u -= share;
            if u < 0.0 {
                return place;
            }
        }
        shares.len() - 1
    }
}

/// How the true trade differs from the shipped figures.
#[derive(Clone, Copy)]
struct Trade {
    differs: bool,
    guess_bias: f64,
    job_sd: f64,
}

const DIFFERENT: Trade = Trade {
    differs: true,
    guess_bias: 0.10,
    job_sd: 0.40,
};
const AS_SHIPPED: Trade = Trade {
    differs: false,
    guess_bias: 0.0,
    job_sd: 0.42,
};

impl Trade {
    /// The true distance of a shift from the shipped middle.
    fn truth(self, shift: Shift) -> f64 {
        match shift {
            Shift::Replated(..) if self.differs => {
                -0.5 * Ledger::standard().value(shift.figures()[0]).ln()
            }
            Shift::Cost(_) if self.differs => 1.4_f64.ln(),
            _ => 0.0,
        }
    }

    fn of_row(self, row: &[(Shift, f64)]) -> f64 {
        row.iter().map(|(shift, x)| x * self.truth(*shift)).sum()
    }
}

const CLASSES: [Class; 7] = [
    Class::A1,
    Class::A2,
    Class::B,
    Class::C1,
    Class::C2,
    Class::C3,
    Class::C4,
];
const COMMON: [f64; 7] = [0.05, 0.33, 0.08, 0.06, 0.26, 0.10, 0.12];

/// The evidence of one closed piece, and the data to compare predictions with.
struct Simulated {
    seen: Vec<Observed>,
    /// The price to compare a prediction with, if it sold.
    price: Option<Observed>,
    /// The reserve against what was predicted, in ln, where there was one.
    reserve: Option<f64>,
}

fn row_id(name: &str, class: Class) -> FigureId {
    FigureId::parse(&["value.factor.", name, ".", class.group()].concat()).unwrap()
}

fn piece(luck: &mut Luck) -> PricedState {
    let class = CLASSES[luck.one_of(&COMMON)];
    let mut state = PricedState::parse(class.code()).unwrap();
    if !luck.is(0.25) {
        state.bare = luck.normal(0.08_f64.ln(), 1.1).exp().min(0.8);
    }
    state.plated_again = class == Class::A2 && luck.is(0.15);
    let mut row = |name: &str| state.rows.push(row_id(name, class));
    let u = luck.share();
    if u < 0.30 {
        row("tarnish_coloured");
    } else if u < 0.45 {
        row("tarnish_heavy");
    }
    let u = luck.share();
    if u < 0.22 {
        row("dents_minor");
    } else if u < 0.32 {
        row("dents_moderate");
    } else if u < 0.35 {
        row("split");
    }
    let u = luck.share();
    if u < 0.15 {
        row("leak");
    } else if u < 0.25 {
        row("solder_repair");
    } else if u < 0.32 {
        row("neat_repair");
    }
    let fused = matches!(class, Class::A1 | Class::A2);
    for (name, chance) in [
        ("monogram_later", 0.12),
        ("arms_original", if fused { 0.08 } else { 0.0 }),
        ("marriage", 0.05),
        ("part_missing_minor", 0.06),
        ("part_replaced", 0.05),
    ] {
        if luck.is(chance) {
            row(name);
        }
    }
    state
}

/// Chooses works for a piece and applies them; returns the figures of their bills.
fn work(luck: &mut Luck, state: &mut PricedState) -> Vec<FigureId> {
    let has = |state: &PricedState, name: &str| {
        let start = ["value.factor.", name].concat();
        state.rows.iter().any(|row| row.text().starts_with(&start))
    };
    let without = |state: &mut PricedState, name: &str| {
        let start = ["value.factor.", name].concat();
        state.rows.retain(|row| !row.text().starts_with(&start));
    };
    let mut bills = Vec::new();
    if has(state, "solder_repair") && luck.is(0.3) {
        bills.push(FigureId::COST_T10A);
        without(state, "solder_repair");
        state.repaired = true;
    }
    if has(state, "leak") && luck.is(0.5) {
        bills.push(FigureId::COST_T09);
        without(state, "leak");
        state.repaired = true;
    }
    let plate = matches!(state.class, Class::C1 | Class::C2 | Class::C3 | Class::C4);
    let often = if plate || state.plated_again {
        0.55
    } else {
        0.25
    };
    if state.bare > 0.03 && luck.is(often) {
        bills.push(FigureId::COST_T14A);
        state.replated = true;
        state.plated_again = false;
        without(state, "tarnish");
    } else if has(state, "tarnish") && luck.is(0.5) {
        bills.push(FigureId::COST_T03_PAID);
        without(state, "tarnish");
    }
    bills
}

/// Simulates one closed piece of a trade.
fn close(luck: &mut Luck, trade: Trade, reserve: bool) -> Simulated {
    let ledger = Ledger::standard();
    let mut state = piece(luck);
    let bills = work(luck, &mut state);
    let class = state.class;
    let level = ledger.value(class.median()).ln() + luck.normal(0.4, 0.7);
    let guess = level + luck.normal(trade.guess_bias, 0.40);
    let mix = ConditionTable::of(class, ledger).mix();
    let buyer = luck.one_of(&mix);
    assert!(buyer < BUYERS.len());
    let shop = luck.is(0.2);
    let (ln, row) = state.multiplier(Some(buyer));
    // Pieces differ: each factor is drawn around its true middle, with a third of its range.
    let differs: f64 = row
        .iter()
        .map(|(shift, x)| x * luck.normal(0.0, shift.prior_sd() / 3.0))
        .sum();
    let wild = luck.is(0.03);
    let noise = luck.normal(0.0, if wild { 1.6 } else { 0.45 });
    let over = if shop {
        ledger.value(FigureId::VALUE_RETAIL_OVER_HAMMER).ln()
    } else {
        0.0
    };
    let price = level + ln + trade.of_row(&row) + differs + noise + over;
    let named = luck.is(0.6).then_some(buyer);
    let (ln_said, mut said) = state.multiplier(named);
    said.push((Shift::Guess(class), 1.0));
    if shop {
        said.push((Shift::Shop, 1.0));
    }
    let limit = guess + state.multiplier(None).0 + 0.65_f64.ln();
    let spread = std::f64::consts::LN_2 / Z10;
    let of = |y: f64, censored: bool| Observed {
        topic: Topic::Prices,
        row: said.clone(),
        y: y - guess - ln_said - over,
        sd: (spread * spread + 0.25).sqrt(),
        scatter: Scatter::Guess,
        weight: 1.0,
        censored,
    };
    let sold = shop || !reserve || price >= limit;
    let told = if sold {
        of(price, false)
    } else {
        of(limit, true)
    };
    let mut seen = vec![told.clone()];
    for id in bills {
        let shift = Shift::Cost(id);
        let wild = luck.is(0.03);
        let y = trade.truth(shift) + luck.normal(0.0, if wild { 1.2 } else { trade.job_sd });
        seen.push(Observed {
            topic: Topic::Bills,
            row: vec![(shift, 1.0)],
            y,
            sd: shift.job_sd(),
            scatter: Scatter::Bill,
            weight: 1.0,
            censored: false,
        });
    }
    Simulated {
        seen,
        price: sold.then_some(told),
        reserve: (reserve && !shop).then_some(limit - guess - ln_said),
    }
}

fn evidence_of(pieces: &[Simulated]) -> Vec<PieceEvidence> {
    pieces
        .iter()
        .enumerate()
        .map(|(number, piece)| PieceEvidence {
            id: format!("{number:05}"),
            name: String::new(),
            seen: piece.seen.clone(),
            results: Vec::new(),
            not_counted: Vec::new(),
        })
        .collect()
}

/// The shares of outcomes that fell into the bands of 50, 80 and 90 in 100.
fn coverage<'a>(learnt: &Learnt, tried: impl Iterator<Item = &'a Observed>) -> [f64; 3] {
    let mut hits = [0.0; 3];
    let mut n = 0.0;
    for seen in tried {
        let law = learnt.predict(&seen.row, seen.sd, seen.scatter);
        let u = law.share_below(seen.y);
        n += 1.0;
        for (hit, band) in hits.iter_mut().zip([0.5, 0.8, 0.9]) {
            *hit += f64::from(u8::from((u - 0.5).abs() <= 0.5 * band));
        }
    }
    hits.map(|hits| hits / n)
}

fn mean(numbers: &[f64]) -> f64 {
    numbers.iter().sum::<f64>() / numbers.len() as f64
}

const RUNS: u64 = 60;

#[test]
#[ignore = "a simulation, run on request"]
fn sixty_trades_find_what_bills_are() {
    let closed = [0_usize, 10, 30, 100, 200];
    let mut found: Vec<Vec<[f64; 8]>> = vec![Vec::new(); closed.len()];
    for run in 0..RUNS {
        let mut luck = Luck(run * 7_919 + 1);
        let pieces: Vec<Simulated> = (0..200)
            .map(|_| close(&mut luck, DIFFERENT, true))
            .collect();
        // Further pieces of the same trade, new in every run so that no single one decides.
        let tried: Vec<Simulated> = (0..500)
            .map(|_| close(&mut luck, DIFFERENT, false))
            .collect();
        let bills = || {
            let all = tried.iter().flat_map(|piece| &piece.seen);
            all.filter(|seen| seen.topic == Topic::Bills)
        };
        let prices = || tried.iter().filter_map(|piece| piece.price.as_ref());
        for (at, n) in closed.into_iter().enumerate() {
            let teaching = Teaching::new(&evidence_of(&pieces[..n]));
            let middle = |learnt: &Learnt, shift: Shift| {
                let shipped = Ledger::standard().value(shift.figures()[0]);
                shipped * learnt.shift(shift).0.exp()
            };
            let of_bills = coverage(&teaching.bills, bills());
            let of_prices = coverage(&teaching.prices, prices());
            found[at].push([
                middle(&teaching.bills, Shift::Cost(FigureId::COST_T14A)),
                middle(&teaching.prices, Shift::Replated(1, 0)),
                of_bills[0],
                of_bills[1],
                of_bills[2],
                of_prices[0],
                of_prices[1],
                of_prices[2],
            ]);
        }
    }
    let means: Vec<[f64; 8]> = found
        .iter()
        .map(|runs| std::array::from_fn(|k| mean(&runs.iter().map(|r| r[k]).collect::<Vec<_>>())))
        .collect();
    println!("closed: T14a bill, replated A collector, bills in 50/80/90, prices in 50/80/90");
    for (n, means) in closed.iter().zip(&means) {
        println!("{n}: {means:.3?}");
    }
    let truth = 220.0 * 1.4;
    assert!(
        (means[2][0] / truth - 1.0).abs() < 0.10,
        "after 30: {:?}",
        means[2]
    );
    for (held, band) in means[3][2..5].iter().zip([0.50, 0.80, 0.90]) {
        assert!((held - band).abs() <= 0.03, "after 100: {:?}", means[3]);
    }
    // More pieces bring the replated factor towards the truth, .632.
    assert!(means[4][1] > means[2][1] && means[2][1] > means[0][1]);
}

#[test]
#[ignore = "a simulation, run on request"]
fn right_figures_are_hardly_ever_accused() {
    let cost = Ledger::standard().figure(FigureId::COST_T14A);
    let expected = format!("T14a={}/{}/{}", cost.low, cost.value, cost.high);
    for n in [30, 100, 200] {
        let (mut side, mut narrow, mut wide) = (0, 0, 0);
        for run in 0..100_u64 {
            let mut luck = Luck(run * 104_729 + n);
            let closings: Vec<Closing> = (0..n)
                .map(|number| {
                    let wild = luck.is(0.03);
                    let sd = if wild { 1.2 } else { AS_SHIPPED.job_sd };
                    let bill = cost.value * luck.normal(0.0, sd).exp();
                    let mut draft = Draft::default();
                    for (path, text) in [
                        ("predicted[event=agreed].shipped.bills", expected.as_str()),
                        ("done[0].what", "T14a"),
                        ("done[0].bill", &format!("{bill:.2}")),
                    ] {
                        draft.set(path, text);
                    }
                    Closing {
                        id: format!("{number:05}"),
                        case: draft.read().0,
                    }
                })
                .collect();
            let record = record_of(Topic::Bills, &closings);
            assert_eq!(record.predictions.len() as u64, n);
            let has = |alarm: Alarm| u32::from(record.alarms.contains(&alarm));
            side += has(Alarm::TooLow) + has(Alarm::TooHigh);
            narrow += has(Alarm::TooNarrow);
            wide += has(Alarm::TooWide);
        }
        println!("{n} bills: off to one side {side} %, too narrow {narrow} %, too wide {wide} %");
        assert!(side <= 2 && narrow == 0, "{n}");
    }
}

/// A sold piece as a record: what was predicted of it before the sale, and the sale.
fn sold(id: usize, price: &Observed, reserve: Option<f64>) -> Closing {
    let said = 100.0;
    let far = (Z10 * price.sd).exp();
    let mut draft = Draft::default();
    for (path, text) in [
        (
            "predicted[event=offered].shipped.price",
            format!("{:.4}/{said:.4}/{:.4}", said / far, said * far),
        ),
        ("closed.outcome", "sold".to_owned()),
        ("closed.sale.price", format!("{:.4}", said * price.y.exp())),
        (
            "closed.sale.reserve",
            reserve.map_or(String::new(), |ln| format!("{:.4}", said * ln.exp())),
        ),
    ] {
        draft.set(path, &text);
    }
    Closing {
        id: format!("{id:05}"),
        case: draft.read().0,
    }
}

#[test]
#[ignore = "a simulation, run on request"]
fn right_prices_are_seldom_accused_and_wrong_ones_found() {
    for (n, most_accused, least_found) in [(30, 5, 0), (100, 8, 5), (200, 12, 15)] {
        let (mut accused, mut found) = (0, 0);
        for run in 0..100_u64 {
            for (trade, side) in [(AS_SHIPPED, &mut accused), (DIFFERENT, &mut found)] {
                let mut luck = Luck(run * 15_485_863 + n);
                let mut closings = Vec::new();
                while (closings.len() as u64) < n {
                    let piece = close(&mut luck, trade, true);
                    closings.extend(
                        piece
                            .price
                            .as_ref()
                            .map(|price| sold(closings.len(), price, piece.reserve)),
                    );
                }
                let record = record_of(Topic::Prices, &closings);
                assert_eq!(record.predictions.len() as u64, n);
                assert!(!record.alarms.contains(&Alarm::TooNarrow), "{n}");
                let off = [Alarm::TooLow, Alarm::TooHigh];
                *side += u32::from(off.iter().any(|alarm| record.alarms.contains(alarm)));
            }
        }
        println!("{n} prices: off to one side {accused} % if right, {found} % if not");
        assert!(accused <= most_accused && found >= least_found, "{n}");
    }
}

#[test]
#[ignore = "a simulation, run on request"]
fn right_figures_are_seldom_called_out_of_range() {
    for n in [30_u32, 100, 200] {
        let (mut outside, mut no_help, mut mishaps) = (0, 0, 0);
        for run in 0..100_u64 {
            let mut luck = Luck(run * 32_452_843 + u64::from(n));
            let pieces: Vec<Simulated> =
                (0..n).map(|_| close(&mut luck, AS_SHIPPED, true)).collect();
            let all = Teaching::new(&evidence_of(&pieces));
            let is_out = [&all.prices, &all.bills]
                .iter()
                .any(|learnt| !outside_the_range(learnt).is_empty());
            outside += u32::from(is_out);
            // Each piece is predicted as shipped, and with what the pieces before it taught, twenty at a time.
            let mut closings = Vec::new();
            for (at, piece) in pieces.iter().enumerate() {
                let before = Teaching::new(&evidence_of(&pieces[..at / 20 * 20]));
                let Some(price) = &piece.price else { continue };
                let law = before.prices.predict(&price.row, price.sd, price.scatter);
                let mut one = sold(at, price, piece.reserve);
                let taught =
                    [-Z10, 0.0, Z10].map(|z| 100.0 * (law.at + z * WIDER * law.scale).exp());
                one.case.predicted[0].taught_values.price = Some(taught);
                closings.push(one);
            }
            let record = record_of(Topic::Prices, &closings);
            no_help += u32::from(record.alarms.contains(&Alarm::LearningHasNotHelped));
            let bad = (0..n).filter(|_| luck.is(0.05)).count();
            mishaps += u32::from(more_went_wrong(&MishapCount {
                cells: Vec::new(),
                works: f64::from(n),
                bad: bad as f64,
                expected: 0.05 * f64::from(n),
                times: 1.0,
            }));
        }
        println!(
            "{n} pieces: out of range {outside} %, learning no help {no_help} %, mishaps {mishaps} %"
        );
        assert!(outside <= 3 && no_help <= 2 && mishaps <= 1, "{n}");
    }
}

/// The simulated trade has the differences on which the tests above rely.
#[test]
fn the_true_trade_differs_as_stated() {
    assert!((DIFFERENT.truth(Shift::Replated(1, 0)) + 0.5 * 0.4_f64.ln()).abs() < 1e-12);
    assert!(AS_SHIPPED.truth(Shift::Cost(FigureId::COST_T14A)).abs() < 1e-12);
    let mut luck = Luck(1);
    let pieces: Vec<Simulated> = (0..400)
        .map(|_| close(&mut luck, DIFFERENT, true))
        .collect();
    let unsold = pieces.iter().filter(|piece| piece.price.is_none()).count();
    assert!((40..120).contains(&unsold), "{unsold} of 400 did not sell");
    let bills = pieces.iter().filter(|piece| piece.seen.len() > 1).count();
    assert!(bills > 100, "{bills}");
}
