//! What storage and cleaning do to a silver layer over the years.

use super::{FilmLoss, Layer};

/// How a piece is stored and cleaned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Habit {
    /// Tarnish grown in a year, as silver sulphide, nanometres; 0 or more.
    pub film_nm_per_year: f64,
    /// Cleanings per year; 0 or more.
    pub cleanings_per_year: f64,
    /// What one cleaning removes.
    pub loss: FilmLoss,
}

impl Habit {
    /// Silver lost in a year, in micrometres: h (n A + share x consumed x film/1000), with n cleanings and
    /// one year's film.
    ///
    /// One year's film is the same however often it is cleaned off; each cleaning adds its own loss of sound
    /// metal. Tarnish is assumed to grow steadily. In reality it slows as the film thickens but never stops
    /// (Inaba, V&A Conservation Journal 18), so the result overstates the loss. Without any cleaning the
    /// share is 1, since silver in tarnish is no longer silver. `consumed` is the silver used up per
    /// thickness of film; `h` is 1, or more at high points and edges. Never negative.
    #[must_use]
    pub fn silver_um_per_year(&self, consumed: f64, h: f64) -> f64 {
        let share = if self.cleanings_per_year > 0.0 {
            self.loss.share
        } else {
            1.0
        };
        let film = share * consumed * self.film_nm_per_year.max(0.0) / 1000.0;
        ((self.cleanings_per_year.max(0.0) * self.loss.sound_um + film) * h).max(0.0)
    }
}

/// Bare share after a further `taken_um` is removed from a layer of which the share `seen` is bare now. The
/// change in the layer's own bare share is added to `seen`, because a part that shows no bare metal only
/// bounds its layer. Never less than `seen`, and equal to it when nothing is taken.
#[must_use]
pub fn bleed_after(layer: &Layer, seen: f64, taken_um: f64) -> f64 {
    let added = layer.thinned(taken_um).bleed() - layer.bleed();
    (seen + added.max(0.0)).clamp(seen, 1.0)
}

/// Years until the share `target` is bare at a loss of `um_per_year`; 0 when it already is, `None` when
/// nothing is being lost.
#[must_use]
pub fn years_until(layer: &Layer, target: f64, um_per_year: f64) -> Option<f64> {
    layer.times_until(target, um_per_year)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn habit(cleanings: f64, share: f64) -> Habit {
        Habit {
            film_nm_per_year: 80.0,
            cleanings_per_year: cleanings,
            loss: FilmLoss {
                sound_um: 0.06,
                share,
            },
        }
    }

    #[test]
    fn cleaning_more_often_adds_only_loss_of_sound_metal() {
        let (once, twice) = (habit(1.0, 1.0), habit(2.0, 1.0));
        let more = twice.silver_um_per_year(0.6, 1.0) - once.silver_um_per_year(0.6, 1.0);
        assert!((more - 0.06).abs() < 1e-12);
    }

    #[test]
    fn a_piece_never_cleaned_loses_only_the_silver_that_tarnishes() {
        let never = habit(0.0, 0.2);
        assert!((never.silver_um_per_year(0.6, 1.0) - 0.048).abs() < 1e-12);
        // A cleaning that redeposits silver loses less.
        assert!(habit(0.001, 0.2).silver_um_per_year(0.6, 1.0) < 0.048);
    }

    #[test]
    fn bare_share_starts_at_the_share_seen_and_only_grows() {
        for f in [0.0, 0.002, 0.03, 0.4, 0.7, 0.99] {
            let layer = Layer::from_bleed(20.0, 0.5, 0.1, f64::max(f, 0.005));
            assert!((bleed_after(&layer, f, 0.0) - f).abs() < 1e-12);
            let mut last = f;
            for n in 1..60 {
                let now = bleed_after(&layer, f, f64::from(n));
                assert!(now >= last && now <= 1.0);
                last = now;
            }
        }
    }
}
