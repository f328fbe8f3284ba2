//! What one cleaning removes.

use crate::maths::at_least;

/// What a cleaning does to the silver and to the tarnish on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilmLoss {
    /// Sound silver removed beyond the tarnish, micrometres.
    pub sound_um: f64,
    /// Share of the silver in the tarnish that is lost, 0 to 1; the rest is returned as metal.
    pub share: f64,
}

/// Silver lost in one cleaning, in micrometres: (A + share x consumed x film/1000) x h.
///
/// `film_nm` is the thickness of tarnish as silver sulphide, in nanometres. `consumed` is the silver used up
/// per thickness of film (0.600 by stoichiometry and densities). `h` is 1, or more at high points and
/// edges (judgement). Never negative.
#[must_use]
pub fn film_loss_um(loss: FilmLoss, film_nm: f64, consumed: f64, h: f64) -> f64 {
    at_least(
        (loss.sound_um + loss.share * consumed * film_nm / 1000.0) * h,
        0.0,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_tarnish_only_sound_metal_is_lost() {
        let loss = FilmLoss {
            sound_um: 0.06,
            share: 1.0,
        };
        assert!((film_loss_um(loss, 0.0, 0.6, 1.0) - 0.06).abs() < 1e-12);
        assert!((film_loss_um(loss, 100.0, 0.6, 2.5) - 0.3).abs() < 1e-12);
        assert!(
            film_loss_um(
                FilmLoss {
                    sound_um: 0.0,
                    share: 0.0
                },
                100.0,
                0.6,
                5.0
            )
            .abs()
                < 1e-12
        );
    }
}
