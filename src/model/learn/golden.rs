//! The solver against results worked out independently, to 1e-9: eight closings with a limit among them, and three bills.

use super::*;
use crate::ledger::FigureId;
use crate::value::Class;

#[allow(clippy::unreadable_literal)] // as the prototype printed them
/// For each shift its middle and its standard deviation after the eight closings.
const EIGHT: [(Shift, f64, f64); 41] = [
    (
        Shift::AfterRepair,
        -0.0006687756853761733,
        0.043168357164786925,
    ),
    (Shift::Detail, 0.004661970883727955, 0.049191262389271344),
    (Shift::Bought, -0.06770972020127178, 0.27633835269322976),
    (
        Shift::Guess(Class::A1),
        0.00956098261892978,
        0.23450064832982465,
    ),
    (
        Shift::Guess(Class::A2),
        0.03019087072126452,
        0.20123015080087286,
    ),
    (
        Shift::Guess(Class::B),
        0.009560982618929782,
        0.23450064832982467,
    ),
    (
        Shift::Guess(Class::C1),
        0.00956098261892978,
        0.23450064832982465,
    ),
    (
        Shift::Guess(Class::C2),
        -0.0015079228644751795,
        0.21409899322032405,
    ),
    (
        Shift::Guess(Class::C3),
        0.009560982618929782,
        0.23450064832982465,
    ),
    (
        Shift::Guess(Class::C4),
        0.009560982618929783,
        0.23450064832982465,
    ),
    (
        Shift::Guess(Class::Sil),
        0.009560982618929783,
        0.23450064832982467,
    ),
    (
        Shift::Replated(1, 0),
        0.22997976420187877,
        0.28915345683648963,
    ),
    (
        Shift::Replated(1, 1),
        0.07321882074494193,
        0.19718414425845748,
    ),
    (
        Shift::Replated(1, 2),
        0.04531195156443609,
        0.13085328076518468,
    ),
    (
        Shift::Replated(0, 0),
        0.2512274772502601,
        0.43120623927933244,
    ),
    (
        Shift::Replated(0, 1),
        0.058575056595953516,
        0.20215464934375918,
    ),
    (
        Shift::Replated(0, 2),
        0.03624956125154883,
        0.13324482892423717,
    ),
    (
        Shift::Replated(2, 0),
        0.1001910861802002,
        0.17196773996993536,
    ),
    (
        Shift::Replated(2, 1),
        0.028433903874691076,
        0.09813129002865384,
    ),
    (
        Shift::Replated(2, 2),
        0.020678096687518063,
        0.07600780148723739,
    ),
    (
        Shift::Replated(3, 0),
        0.055675677621254485,
        0.09556159950798038,
    ),
    (
        Shift::Replated(3, 1),
        0.026911233063650224,
        0.0928762377630585,
    ),
    (
        Shift::Replated(3, 2),
        0.02424316289303052,
        0.0891121431745948,
    ),
    (
        Shift::Row(FigureId::VALUE_FACTOR_DENTS_MODERATE_A),
        0.014741967982757224,
        0.09263319873634576,
    ),
    (
        Shift::Row(FigureId::VALUE_FACTOR_DENTS_MODERATE_C1),
        0.014741967982757226,
        0.09263319873634576,
    ),
    (
        Shift::Row(FigureId::VALUE_FACTOR_DENTS_MODERATE_C2),
        0.02446673552029341,
        0.12284530044044345,
    ),
    (
        Shift::Row(FigureId::VALUE_FACTOR_LEAK_A),
        -0.033457430529059494,
        0.15958985743776763,
    ),
    (
        Shift::Row(FigureId::VALUE_FACTOR_LEAK_C1),
        -0.033457430529059494,
        0.1595898574377676,
    ),
    (
        Shift::Row(FigureId::VALUE_FACTOR_LEAK_C2),
        -0.041821788161324355,
        0.15862006579549157,
    ),
    (Shift::Wear(0, 1), -0.02314530734360117, 0.06324396405515617),
    (
        Shift::Wear(0, 2),
        -0.061376766830307565,
        0.16119566270213861,
    ),
    (Shift::Wear(0, 3), -0.12008601429838102, 0.25846963749828394),
    (Shift::Wear(0, 4), -0.15012010984576207, 0.4101993847001676),
    (
        Shift::Wear(1, 1),
        -0.020115538744486496,
        0.07079766921074031,
    ),
    (Shift::Wear(1, 2), -0.04790228088576066, 0.16242611995642894),
    (Shift::Wear(1, 3), -0.09153317913750983, 0.2582841039059165),
    (Shift::Wear(1, 4), -0.10898370145956973, 0.3835737209579592),
    (Shift::Wear(2, 1), -0.02510834219733044, 0.0883700967643186),
    (Shift::Wear(2, 2), -0.06090125476635835, 0.20650278711713754),
    (Shift::Wear(2, 3), -0.11332060758997976, 0.3197628648020777),
    (Shift::Wear(2, 4), -0.1483143700355574, 0.5220000240786371),
];
#[allow(clippy::unreadable_literal)]
/// Covariances of three pairs of shifts.
const TOGETHER: [(Shift, Shift, f64); 3] = [
    (Shift::Replated(1, 0), Shift::Bought, 0.01474498471732606),
    (
        Shift::Replated(1, 0),
        Shift::Wear(0, 3),
        0.01385029593950401,
    ),
    (
        Shift::Guess(Class::A2),
        Shift::Guess(Class::C2),
        0.016791517057337252,
    ),
];

fn seen(row: &[(Shift, f64)], y: f64, sd: f64, scatter: Scatter) -> Observed {
    Observed {
        topic: Topic::Prices,
        row: row.to_vec(),
        y,
        sd,
        scatter,
        weight: 1.0,
        censored: false,
    }
}

fn piece(number: usize, seen: Observed) -> PieceEvidence {
    PieceEvidence {
        id: format!("{number:04}"),
        name: String::new(),
        seen: vec![seen],
        results: Vec::new(),
        not_counted: Vec::new(),
    }
}

/// Scatter of a price against an estimate whose high end is twice its middle: ln 2 / 1.2816 and .5.
fn guess_sd() -> f64 {
    let g = std::f64::consts::LN_2 / crate::maths::Z10;
    (g * g + 0.25).sqrt()
}

fn eight() -> Vec<PieceEvidence> {
    let s = guess_sd();
    let guess = |row: &[(Shift, f64)], y: f64| seen(row, y, s, Scatter::Guess);
    let (fused, plate) = (
        (Shift::Guess(Class::A2), 1.0),
        (Shift::Guess(Class::C2), 1.0),
    );
    let (collector, decorator) = ((Shift::Replated(1, 0), 1.0), (Shift::Replated(1, 1), 1.0));
    let detail = (Shift::Detail, 1.0);
    let all = [
        guess(&[fused], 0.12),
        guess(
            &[fused, (Shift::Wear(0, 2), 0.4), (Shift::Wear(0, 3), 0.6)],
            -0.30,
        ),
        guess(&[fused, collector, detail], 0.55),
        Observed {
            weight: 0.5,
            ..guess(&[fused, decorator, detail], 0.20)
        },
        Observed {
            censored: true,
            ..guess(
                &[plate, (Shift::Row(FigureId::VALUE_FACTOR_LEAK_C2), 1.0)],
                -0.25,
            )
        },
        guess(
            &[
                plate,
                (Shift::Row(FigureId::VALUE_FACTOR_DENTS_MODERATE_C2), 1.0),
            ],
            2.60,
        ),
        seen(
            &[
                collector,
                detail,
                (Shift::Wear(0, 3), -1.0),
                (Shift::Bought, -1.0),
            ],
            0.60,
            std::f64::consts::FRAC_1_SQRT_2,
            Scatter::Pair,
        ),
        guess(&[plate, (Shift::AfterRepair, 1.0)], -0.10),
    ];
    all.into_iter()
        .enumerate()
        .map(|(number, seen)| piece(number, seen))
        .collect()
}

#[test]
fn eight_closings_give_the_prototypes_posterior() {
    let learnt = learn(Topic::Prices, &eight());
    assert_eq!(learnt.shifts.len(), EIGHT.len());
    for (shift, mean, sd) in EIGHT {
        let (at, spread) = learnt.shift(shift);
        assert!((at - mean).abs() < 1e-9, "{shift:?}: {at} {mean}");
        assert!((spread - sd).abs() < 1e-9, "{shift:?}: {spread} {sd}");
    }
    for (a, b, covariance) in TOGETHER {
        // Twice a covariance is the variance of the sum less both variances.
        let scale = |row: &[(Shift, f64)]| learnt.predict(row, 0.0, Scatter::Guess).scale;
        let variance = |row: &[(Shift, f64)]| {
            let sd = scale(row) * student4::WIDER;
            sd * sd
        };
        let sum = variance(&[(a, 1.0), (b, 1.0)]);
        let twice = sum - variance(&[(a, 1.0)]) - variance(&[(b, 1.0)]);
        assert!((0.5 * twice - covariance).abs() < 1e-9, "{a:?} {b:?}");
    }
    assert!((learnt.scatter(Scatter::Guess) - 0.896_437_388_043_586_5).abs() < 1e-9);
    assert!((learnt.scatter(Scatter::Pair) - 0.821_960_424_901_668_1).abs() < 1e-9);
    let figures = Teaching::new(&eight()).figures(Topic::Prices);
    let replated = figures
        .iter()
        .find(|taught| taught.figure.figure == FigureId::VALUE_REPLATED_A_COLLECTOR)
        .unwrap()
        .figure;
    for (found, known) in [
        (replated.low, 0.287_736),
        (replated.value, 0.503_430),
        (replated.high, 0.744_916),
    ] {
        assert!((found - known).abs() < 1e-6, "{found} {known}");
    }
}

#[test]
fn three_bills_give_the_prototypes_posterior() {
    let cost = Shift::Cost;
    let (replate, lead) = (cost(FigureId::COST_T14A), cost(FigureId::COST_T10A));
    let bill = |row: &[(Shift, f64)], y: f64| Observed {
        topic: Topic::Bills,
        ..seen(row, y, replate.job_sd(), Scatter::Bill)
    };
    let bills = [
        bill(&[(replate, 1.0)], libm::log(310.0 / 220.0)),
        bill(&[(replate, 1.0)], libm::log(280.0 / 220.0)),
        bill(&[(replate, 0.55), (lead, 0.45)], libm::log(560.0 / 400.0)),
    ];
    let evidence: Vec<PieceEvidence> = bills
        .into_iter()
        .enumerate()
        .map(|(number, seen)| piece(number, seen))
        .collect();
    let teaching = Teaching::new(&evidence);
    for (shift, mean, sd) in [
        (replate, 0.277_854_793, 0.167_069_197),
        (lead, 0.219_242_731, 0.311_517_213),
        (cost(FigureId::COST_T09), 0.172_802_749, 0.375_068_059),
    ] {
        let (at, spread) = teaching.bills.shift(shift);
        assert!((at - mean).abs() < 1e-9, "{shift:?}: {at}");
        assert!((spread - sd).abs() < 1e-9, "{shift:?}: {spread}");
    }
    assert!((teaching.bills.scatter(Scatter::Bill) - 0.589_829_509).abs() < 1e-9);
    let taught = teaching.figures(Topic::Bills);
    let taught = taught.iter().find(|t| t.shift == replate).unwrap().figure;
    for (found, known) in [
        (taught.low, 190.0098),
        (taught.value, 290.4648),
        (taught.high, 480.1795),
    ] {
        assert!((found - known).abs() < 1e-4, "{found} {known}");
    }
}

#[test]
fn the_order_of_the_pieces_changes_no_bit() {
    let forward = evidence_of(&eight());
    let mut turned = eight();
    turned.reverse();
    turned.sort_by(|a, b| a.id.cmp(&b.id));
    assert_eq!(evidence_of(&turned), forward);
}

fn evidence_of(evidence: &[PieceEvidence]) -> Vec<u64> {
    let learnt = learn(Topic::Prices, evidence);
    let both = |(a, b): (f64, f64)| [a.to_bits(), b.to_bits()];
    learnt
        .shifts
        .iter()
        .flat_map(|shift| both(learnt.shift(*shift)))
        .collect()
}

#[test]
fn one_slip_of_a_digit_hardly_moves_the_level() {
    // Thirty prices about the middle, one of them ten times too high.
    let fused = Shift::Guess(Class::A2);
    let pieces = |slip: f64| -> Vec<PieceEvidence> {
        (0..30_u8)
            .map(|n| {
                let u = (f64::from(n) + 0.5) / 30.0;
                let y = 0.6 * crate::maths::probit(u) + if n == 14 { slip } else { 0.0 };
                piece(
                    usize::from(n),
                    seen(&[(fused, 1.0)], y, guess_sd(), Scatter::Guess),
                )
            })
            .collect()
    };
    let level = |slip: f64| learn(Topic::Prices, &pieces(slip)).shift(fused).0;
    let moved = level(std::f64::consts::LN_10) - level(0.0);
    assert!(moved.abs() < 0.03, "{moved}");
    // What a mean would make of it.
    let by_mean = std::f64::consts::LN_10 / (30.0 + 16.0 * guess_sd() * guess_sd());
    assert!(by_mean > 0.05);
    assert!(learn(Topic::Prices, &pieces(0.0)).last_step() < 1e-9);
}

#[test]
fn the_pieces_that_pull_most_are_those_whose_absence_moves_it_most() {
    let all = eight();
    let learnt = learn(Topic::Prices, &all);
    let shift = Shift::Replated(1, 0);
    let pulls = learnt.pulls(shift);
    assert_eq!(pulls.len(), 8);
    for (id, said) in &pulls[..2] {
        let rest: Vec<PieceEvidence> = all.iter().filter(|one| one.id != *id).cloned().collect();
        let moved = learn(Topic::Prices, &rest).shift(shift).0 - learnt.shift(shift).0;
        assert!(
            (moved - said).abs() < 0.35 * moved.abs(),
            "{id}: {moved} {said}"
        );
    }
    assert_eq!(learnt.pieces_on(shift), 2);
}

#[test]
fn no_evidence_moves_nothing() {
    let teaching = Teaching::new(&[]);
    let on = TurnedOn {
        prices: true,
        works: true,
    };
    assert!(teaching.layer(on).is_empty());
    assert_eq!(
        teaching.layer(TurnedOn::default()),
        Teaching::new(&eight()).layer(TurnedOn::default())
    );
    assert!(!Teaching::new(&eight()).layer(on).is_empty());
}
