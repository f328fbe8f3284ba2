//! Areas of known share, drawn, to train the eye that judges how much base metal shows.
//!
//! Each chart is a grid of cells with exactly the stated number of them bare: exact by construction,
//! whatever the shape. Charts of one grain grow into each other: what is bare at 5 % is bare at 10 %.

use crate::maths::sobol_u32;

/// Cells across a chart.
pub const CHART_COLUMNS: usize = 40;
/// Cells down a chart.
pub const CHART_ROWS: usize = 25;
/// The shares drawn, in hundredths.
pub const CHART_PERCENTS: [usize; 7] = [1, 2, 5, 10, 20, 30, 50];

/// How the bare metal lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// Single specks all over.
    Specks,
    /// A few patches.
    Patches,
    /// Along raised lines, as wear goes.
    Highlights,
}

impl Grain {
    /// Every grain, finest first.
    pub const ALL: [Self; 3] = [Self::Specks, Self::Patches, Self::Highlights];

    /// Stable id.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Specks => "specks",
            Self::Patches => "patches",
            Self::Highlights => "highlights",
        }
    }

    /// In words.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Specks => "fine specks",
            Self::Patches => "a few patches",
            Self::Highlights => "worn ridges",
        }
    }

    /// The lower, the sooner the cell goes bare.
    fn order(self, column: usize, row: usize, specks: &[u32]) -> f64 {
        let (x, y) = (column as f64, row as f64);
        let rough = f64::from(
            specks
                .get(row * CHART_COLUMNS + column)
                .copied()
                .unwrap_or(0),
        ) / f64::from(u32::MAX);
        match self {
            Self::Specks => rough,
            // Distance to the nearest of some seeds, larger seeds first, with a ragged edge.
            Self::Patches => {
                [
                    (9.0, 7.0, 0.0),
                    (30.0, 17.0, 1.0),
                    (21.0, 3.0, 3.0),
                    (5.0, 21.0, 4.0),
                ]
                .into_iter()
                .map(|(a, b, later): (f64, f64, f64)| {
                    let (dx, dy) = (x - a, y - b);
                    (dx * dx + dy * dy).sqrt() + later
                })
                .fold(f64::INFINITY, f64::min)
                    + rough
            }
            // Distance to the nearest of three leaning ridges, the middle one worn first.
            Self::Highlights => {
                [(0.0, 0.0), (-14.0, 1.0), (14.0, 1.5)]
                    .into_iter()
                    .map(|(shift, later): (f64, f64)| {
                        let across = x - 20.0 - shift + 0.5 * (y - 12.0);
                        let along = (y - 12.0).abs() / 12.0;
                        across.abs() + later + 1.5 * along
                    })
                    .fold(f64::INFINITY, f64::min)
                    + 0.8 * rough
            }
        }
    }
}

/// The cells that are bare at `percent` hundredths (held within 0 to 100), as (column, row), row by
/// row. There are exactly `percent` hundredths of all cells.
#[must_use]
pub fn chart_cells(grain: Grain, percent: usize) -> Vec<(usize, usize)> {
    let all = CHART_COLUMNS * CHART_ROWS;
    let wanted = all * percent.min(100) / 100;
    let specks = scatter();
    // A plain selection: the least is taken until enough are bare. Ties go to the first.
    let mut order: Vec<(f64, usize)> = (0..all)
        .map(|i| {
            (
                grain.order(i % CHART_COLUMNS, i / CHART_COLUMNS, &specks),
                i,
            )
        })
        .collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut bare: Vec<usize> = order.into_iter().take(wanted).map(|(_, i)| i).collect();
    bare.sort_unstable();
    bare.into_iter()
        .map(|i| (i % CHART_COLUMNS, i / CHART_COLUMNS))
        .collect()
}

/// For each cell, a rank that leaves the first cells evenly spread: the place at which a
/// low-discrepancy sequence first falls into it.
fn scatter() -> Vec<u32> {
    let all = CHART_COLUMNS * CHART_ROWS;
    let mut rank = vec![u32::MAX; all];
    let mut next = 0_u32;
    let step = u32::MAX / u32::try_from(all).unwrap_or(u32::MAX);
    for index in 0..1 << 14_u32 {
        let at = |dimension, cells: usize| {
            ((u64::from(sobol_u32(index, dimension)) * cells as u64) >> 32) as usize
        };
        let cell = at(1, CHART_ROWS) * CHART_COLUMNS + at(2, CHART_COLUMNS);
        if let Some(known) = rank.get_mut(cell).filter(|known| **known == u32::MAX) {
            *known = next * step;
            next += 1;
        }
    }
    rank
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_chart_holds_exactly_its_share() {
        for grain in Grain::ALL {
            for percent in CHART_PERCENTS.into_iter().chain([0, 100, 250]) {
                let cells = chart_cells(grain, percent);
                let wanted = percent.min(100) * CHART_COLUMNS * CHART_ROWS;
                assert_eq!(cells.len() * 100, wanted, "{grain:?} {percent}");
                assert!(
                    cells
                        .windows(2)
                        .all(|w| (w[0].1, w[0].0) < (w[1].1, w[1].0))
                );
                assert!(
                    cells
                        .iter()
                        .all(|(c, r)| *c < CHART_COLUMNS && *r < CHART_ROWS)
                );
            }
        }
    }

    #[test]
    fn charts_of_one_grain_grow_into_each_other() {
        for grain in Grain::ALL {
            for pair in CHART_PERCENTS.windows(2) {
                let more = chart_cells(grain, pair[1]);
                assert!(chart_cells(grain, pair[0]).iter().all(|c| more.contains(c)));
            }
        }
    }

    /// Sides a bare cell shares with a covered one: many for specks, few for patches.
    #[test]
    fn the_grains_differ_in_how_broken_they_are() {
        let sides = |grain| {
            let cells = chart_cells(grain, 10);
            let bare = |c: usize, r: usize| cells.contains(&(c, r));
            cells
                .iter()
                .map(|&(c, r)| {
                    usize::from(!bare(c + 1, r))
                        + usize::from(!bare(c, r + 1))
                        + usize::from(!bare(c.wrapping_sub(1), r))
                        + usize::from(!bare(c, r.wrapping_sub(1)))
                })
                .sum::<usize>()
        };
        let [specks, patches, highlights] = Grain::ALL.map(sides);
        assert!(
            specks > 2 * highlights && highlights > patches,
            "{specks} {highlights} {patches}"
        );
    }
}
