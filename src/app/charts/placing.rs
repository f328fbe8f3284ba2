//! Places the labels of points that lie close together.

use super::figure::LINE;

/// Width of the narrowest chart, in pixels. Labels that fit there fit everywhere.
const NARROWEST: f64 = 290.0;
/// Approximate width of a letter, in pixels.
const LETTER: f64 = 7.2;

/// A point with its range and its label, before placement.
#[derive(Clone, Debug)]
pub(super) struct Marked {
    /// Horizontal position, in per cent of the width.
    pub(super) across: f64,
    /// Ends of its range, in per cent of the width.
    pub(super) range: (f64, f64),
    /// Vertical position, in pixels.
    pub(super) down: f64,
    /// The lines of its label.
    pub(super) words: Vec<String>,
}

/// The position of a label.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placement {
    /// The text anchor: `start`, `middle` or `end`.
    pub(super) anchor: &'static str,
    /// Pixels to the right of the point.
    pub(super) aside: f64,
    /// Top of the first line, in pixels.
    pub(super) top: f64,
    /// Whether the label is so far from its point that it needs a line to it.
    pub(super) far: bool,
}

#[derive(Clone, Copy)]
struct Patch {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Patch {
    fn meets(self, other: Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }
}

/// The position of each point's label, placed in order. A label avoids points and other labels first, then
/// lines, and then stays close to its point.
pub(super) fn placed(marked: &[Marked], top: f64, bottom: f64) -> Vec<Placement> {
    let mut taken: Vec<Patch> = Vec::new();
    let mut places = Vec::new();
    for (i, mark) in marked.iter().enumerate() {
        let cost = |(place, patch): &(Placement, Patch)| {
            let points = marked
                .iter()
                .enumerate()
                .filter(|(j, m)| *j != i && patch.meets(point(m)))
                .count();
            let words = taken.iter().filter(|t| patch.meets(**t)).count();
            let ranges = marked.iter().filter(|m| patch.meets(range(m))).count();
            let outside = (-patch.left).max(0.0)
                + (patch.right - NARROWEST).max(0.0)
                + (top - patch.top).max(0.0)
                + (patch.bottom - bottom).max(0.0);
            let middle = f64::midpoint(patch.top, patch.bottom);
            f64::from(u8::try_from(points + words).unwrap_or(u8::MAX)) * 100.0
                + f64::from(u8::try_from(ranges).unwrap_or(u8::MAX)) * 6.0
                + outside * 5.0
                + (middle - mark.down).abs() * 0.4
                + if place.far { 5.0 } else { 0.0 }
        };
        let best = candidates(mark)
            .into_iter()
            .min_by(|a, b| cost(a).total_cmp(&cost(b)));
        if let Some((place, patch)) = best {
            taken.push(patch);
            places.push(place);
        }
    }
    places
}

fn candidates(mark: &Marked) -> Vec<(Placement, Patch)> {
    const REACH: i8 = 14;
    let x = mark.across / 100.0 * NARROWEST;
    let longest = mark
        .words
        .iter()
        .map(|w| w.chars().count())
        .max()
        .unwrap_or(0);
    let width = f64::from(u16::try_from(longest).unwrap_or(u16::MAX)) * LETTER;
    let height = f64::from(u8::try_from(mark.words.len()).unwrap_or(u8::MAX)) * LINE;
    let mut all = Vec::new();
    for (anchor, aside, left) in [
        ("start", 12.0, x + 12.0),
        ("end", -12.0, x - 12.0 - width),
        ("middle", 0.0, x - width / 2.0),
    ] {
        for step in -REACH..=REACH {
            let centre = mark.down + f64::from(step) * LINE;
            let top = centre - height / 2.0;
            let patch = Patch {
                left,
                right: left + width,
                top,
                bottom: top + height,
            };
            // A centred label goes above or below its point, never on it.
            if anchor == "middle" && patch.meets(point(mark)) {
                continue;
            }
            let far = top > mark.down + 14.0 || top + height < mark.down - 14.0;
            all.push((
                Placement {
                    anchor,
                    aside,
                    top,
                    far,
                },
                patch,
            ));
        }
    }
    all
}

fn point(mark: &Marked) -> Patch {
    let x = mark.across / 100.0 * NARROWEST;
    Patch {
        left: x - 8.0,
        right: x + 8.0,
        top: mark.down - 8.0,
        bottom: mark.down + 8.0,
    }
}

fn range(mark: &Marked) -> Patch {
    let (low, high) = mark.range;
    Patch {
        left: low / 100.0 * NARROWEST,
        right: high / 100.0 * NARROWEST,
        top: mark.down - 1.0,
        bottom: mark.down + 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_of_close_points_do_not_overlap() {
        let mark = |across, down| Marked {
            across,
            range: (across, across),
            down,
            words: vec!["a plan".to_owned()],
        };
        let places = placed(&[mark(50.0, 50.0), mark(51.0, 52.0)], 0.0, 300.0);
        assert_eq!(places.len(), 2);
        let same_side = places[0].anchor == places[1].anchor;
        assert!(!same_side || (places[0].top - places[1].top).abs() >= LINE);
    }
}
