//! Break-evens: the most a treatment may cost, and the undamaged value at which it starts to pay.

/// From which undamaged value a treatment pays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PaysAbove {
    /// It lowers what is kept, or never raises it by what it costs.
    Never,
    /// From this value on.
    Value(f64),
    /// At every value looked at.
    Always,
}

/// The most a treatment may cost: what is kept of the price after it, less what is kept of the price
/// before it, of one lot or of several. Money; below nothing when the treatment lowers what is kept. Definition.
#[must_use]
pub fn most_to_pay<P>(before: P, after: P, kept: &dyn Fn(P) -> f64) -> f64 {
    kept(after) - kept(before)
}

/// The undamaged value at which a gain turns from a loss: `gain` at a value is what is kept after the
/// treatment, less what is kept before it, less the cost. Looks at 65 values evenly spaced in the
/// logarithm from `low` to `high`, both > 0, and halves the first stretch in which the gain turns
/// positive until it is known to a part in a million million.
#[must_use]
pub fn pays_above(gain: &dyn Fn(f64) -> f64, low: f64, high: f64) -> PaysAbove {
    const STEPS: u32 = 64;
    if gain(low) > 0.0 {
        return PaysAbove::Always;
    }
    let ratio = libm::log(high / low) / f64::from(STEPS);
    let (mut loses, mut gains) = (low, low);
    for i in 1..=STEPS {
        gains = low * libm::exp(ratio * f64::from(i));
        if gain(gains) > 0.0 {
            break;
        }
        loses = gains;
    }
    if loses >= gains {
        return PaysAbove::Never;
    }
    for _ in 0..60 {
        let middle = (loses * gains).sqrt();
        if gain(middle) > 0.0 {
            gains = middle;
        } else {
            loses = middle;
        }
    }
    PaysAbove::Value(gains)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_search_finds_what_algebra_says() {
        for (cost, before, after) in [(40.0, 0.8, 0.9), (500.0, 0.45, 0.63), (3.0, 0.2, 0.99)] {
            let share = 0.81;
            let gain = |v: f64| share * v * (after - before) - cost;
            let by_algebra = cost / (share * (after - before));
            match pays_above(&gain, 1.0, 1e6) {
                PaysAbove::Value(found) => assert!((found / by_algebra - 1.0).abs() < 1e-9),
                other => panic!("{other:?}"),
            }
        }
    }

    #[test]
    fn never_and_always() {
        assert_eq!(pays_above(&|_| -1.0, 1.0, 1e6), PaysAbove::Never);
        assert_eq!(pays_above(&|_| 0.0, 1.0, 1e6), PaysAbove::Never);
        assert_eq!(pays_above(&|_| 0.1, 1.0, 1e6), PaysAbove::Always);
    }
}
