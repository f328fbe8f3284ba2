//! What keeping and cleaning do to a layer over the years.

use super::{FilmLoss, Layer};

/// How a piece is kept and cleaned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Habit {
    /// Tarnish grown in a year, as silver sulphide, nanometres; 0 or more.
    pub film_nm_per_year: f64,
    /// Cleanings a year; 0 or more.
    pub cleanings_per_year: f64,
    /// What one cleaning takes.
    pub loss: FilmLoss,
}

impl Habit {
    /// Tarnish there is when the next cleaning comes, nanometres; `None` when none ever comes.
    /// Growth is taken as steady: it slows as the film thickens but never stops (Inaba, V&A
    /// Conservation Journal 18), so this errs on the side of loss.
    #[must_use]
    pub fn film_at_cleaning_nm(&self) -> Option<f64> {
        (self.cleanings_per_year > 0.0).then(|| self.film_nm_per_year / self.cleanings_per_year)
    }

    /// Silver gone in a year, micrometres: h (n A + share x consumed x film/1000), with n cleanings
    /// and the film of a year. However often it is cleaned, the film of a year is the same; each
    /// cleaning adds its own sound loss. With no cleaning the share is 1: the silver stays in the
    /// tarnish, which is no longer silver. `h` >= 1 for high points and edges. Never below zero.
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

/// The bare share once `taken_um` more has gone from a layer on which `seen` is bare now. Where
/// nothing shows the layer is only bounded by what is seen, and what it adds is added. Never less
/// than `seen`; nothing taken gives `seen` back.
#[must_use]
pub fn bleed_after(layer: &Layer, seen: f64, taken_um: f64) -> f64 {
    let added = layer.thinned(taken_um).bleed() - layer.bleed();
    (seen + added.max(0.0)).clamp(seen, 1.0)
}

/// Years until the share `target` is bare with `um_per_year` going; 0 when it is already, `None` when
/// nothing goes.
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
    fn cleaning_more_often_adds_sound_loss_only() {
        let (once, twice) = (habit(1.0, 1.0), habit(2.0, 1.0));
        let more = twice.silver_um_per_year(0.6, 1.0) - once.silver_um_per_year(0.6, 1.0);
        assert!((more - 0.06).abs() < 1e-12);
        assert_eq!(twice.film_at_cleaning_nm(), Some(40.0));
    }

    #[test]
    fn never_cleaned_loses_what_tarnishes() {
        let never = habit(0.0, 0.2);
        assert_eq!(never.film_at_cleaning_nm(), None);
        assert!((never.silver_um_per_year(0.6, 1.0) - 0.048).abs() < 1e-12);
        // What gives silver back loses less.
        assert!(habit(0.001, 0.2).silver_um_per_year(0.6, 1.0) < 0.048);
    }

    #[test]
    fn nothing_taken_gives_back_what_is_seen() {
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
