//! Charts with a known bare share, to train the eye that judges how much base metal shows.
//!
//! Each chart is a grid of cells of which exactly the stated number is bare. Charts of the same grain are
//! nested: every cell that is bare at 5 % is bare at 10 %.

use crate::maths::sobol_u32;

/// Cells across a chart.
pub const CHART_COLUMNS: usize = 40;
/// Cells down a chart.
pub const CHART_ROWS: usize = 25;
/// The shares drawn, in per cent.
pub const CHART_PERCENTS: [usize; 7] = [1, 2, 5, 10, 20, 30, 50];

/// The pattern of the bare metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// Single specks everywhere.
    Specks,
    /// A few large patches.
    Patches,
    /// Along raised lines, where wear starts.
    Highlights,
}

impl Grain {
    /// Every grain, finest first.
    pub const ALL: [Self; 3] = [Self::Specks, Self::Patches, Self::Highlights];

    /// Stable id, for files and pictures.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Specks => "specks",
            Self::Patches => "patches",
            Self::Highlights => "highlights",
        }
    }

    /// Name shown to people.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Specks => "fine specks",
            Self::Patches => "a few patches",
            Self::Highlights => "worn ridges",
        }
    }

    /// Sort key of a cell: cells with the lowest key go bare first.
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
            // Distance to the nearest of four seeds, larger seeds first, with a ragged edge.
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
            // Distance to the nearest of three slanting ridges; the middle one wears first.
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

/// The cells that are bare at `percent` per cent (clamped to 0 to 100), as (column, row), row by row. Exactly
/// that share of all cells is bare.
#[must_use]
pub fn chart_cells(grain: Grain, percent: usize) -> Vec<(usize, usize)> {
    let all = CHART_COLUMNS * CHART_ROWS;
    let wanted = all * percent.min(100) / 100;
    let specks = scatter();
    // Ties go to the first cell.
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

/// A rank for each cell such that the first n cells are evenly spread for any n: the index at which a
/// low-discrepancy sequence first falls into the cell.
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
    fn every_chart_has_exactly_its_stated_share() {
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
    fn charts_of_one_grain_are_nested() {
        for grain in Grain::ALL {
            for pair in CHART_PERCENTS.windows(2) {
                let more = chart_cells(grain, pair[1]);
                assert!(chart_cells(grain, pair[0]).iter().all(|c| more.contains(c)));
            }
        }
    }

    /// Edges between bare and covered cells: many for specks, few for patches.
    #[test]
    fn specks_are_more_broken_up_than_ridges_and_ridges_than_patches() {
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
