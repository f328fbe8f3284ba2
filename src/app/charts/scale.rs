//! Turns figures into positions in a chart, and wraps text to fit.

/// A small count as a float.
pub(super) fn count(things: usize) -> f64 {
    f64::from(u16::try_from(things).unwrap_or(u16::MAX))
}

/// A linear horizontal scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    low: f64,
    high: f64,
}

impl Scale {
    /// Margin at each end for marks and their outlines, in per cent of the width.
    const MARGIN: f64 = 2.0;

    /// The scale that covers all these values.
    pub(super) fn holding(values: &[f64]) -> Self {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for value in values.iter().copied().filter(|v| v.is_finite()) {
            low = low.min(value);
            high = high.max(value);
        }
        if low > high {
            return Self {
                low: 0.0,
                high: 1.0,
            };
        }
        if high <= low {
            return Self {
                low: low - 1.0,
                high: high + 1.0,
            };
        }
        Self { low, high }
    }

    /// The position of a value, in per cent of the width.
    pub(super) fn place(self, value: f64) -> f64 {
        let share = ((value - self.low) / (self.high - self.low)).clamp(0.0, 1.0);
        Self::MARGIN + share * (100.0 - 2.0 * Self::MARGIN)
    }

    /// The length of an interval, in per cent of the width.
    pub(super) fn stretch(self, from: f64, to: f64) -> f64 {
        self.place(to) - self.place(from)
    }

    /// The ends of the scale.
    pub(super) fn ends(self) -> (f64, f64) {
        (self.low, self.high)
    }
}

/// Per cent of the width, as an attribute value.
pub(super) fn percent(hundredths: f64) -> String {
    ((hundredths * 100.0).round() / 100.0).to_string() + "%"
}

/// Pixels to one decimal, as an attribute value.
pub(super) fn px(pixels: f64) -> String {
    ((pixels * 10.0).round() / 10.0).to_string()
}

/// The text anchor for a label beside a mark; `start` puts it to the right.
pub(super) fn anchor(hundredths: f64) -> &'static str {
    if hundredths < 34.0 {
        "start"
    } else if hundredths > 66.0 {
        "end"
    } else {
        "middle"
    }
}

/// An approximate base-2 logarithm, linear between powers of two. It is accurate enough for a position on a track.
pub(super) fn log_place(value: f64) -> f64 {
    let mut value = value.max(1e-9);
    let mut doublings = 0.0;
    while value >= 2.0 {
        value /= 2.0;
        doublings += 1.0;
    }
    while value < 1.0 {
        value *= 2.0;
        doublings -= 1.0;
    }
    doublings + value - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn positions_stay_inside_the_chart() {
        let scale = Scale::holding(&[-50.0, 150.0, f64::NAN]);
        let at = |scale: Scale, value| percent(scale.place(value));
        assert_eq!(
            (at(scale, -50.0), at(scale, 150.0)),
            ("2%".to_owned(), "98%".to_owned())
        );
        assert_eq!(at(scale, 1e9), "98%");
        assert_eq!(at(Scale::holding(&[]), 0.5), "50%");
        assert_eq!(at(Scale::holding(&[3.0]), 3.0), "50%");
    }
}
