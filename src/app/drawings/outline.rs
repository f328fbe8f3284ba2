//! The outline of a drawn piece as straight segments, for questions about inside, bounds and distance.

use leavewell_model::terms::decimal;

use super::shape::PaintedShape;

/// A point in drawing units: x to the right, y down.
pub(super) type Point = (f64, f64);

/// Closed polygons with short sides.
#[derive(Debug)]
pub(super) struct Silhouette(Vec<Vec<Point>>);

impl Silhouette {
    /// The combined outline of these shapes.
    pub(super) fn of<'a>(shapes: impl IntoIterator<Item = &'a PaintedShape>) -> Self {
        Self(shapes.into_iter().flat_map(|s| loops(&s.path)).collect())
    }

    /// Whether a point is on the metal.
    pub(super) fn holds(&self, (x, y): Point) -> bool {
        self.0.iter().any(|ring| {
            sides(ring)
                .filter(|((ax, ay), (bx, by))| {
                    (*ay > y) != (*by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)
                })
                .count()
                % 2
                == 1
        })
    }

    /// The bounding box: left, top, right, bottom.
    pub(super) fn bounds(&self) -> [f64; 4] {
        let far = f64::INFINITY;
        self.spots()
            .fold([far, far, -far, -far], |[l, t, r, b], (x, y)| {
                [l.min(x), t.min(y), r.max(x), b.max(y)]
            })
    }

    /// The distance from a point to the farthest point of the outline.
    pub(super) fn farthest(&self, from: Point) -> f64 {
        self.spots()
            .map(|spot| distance(from, spot))
            .fold(0.0, f64::max)
    }

    /// The left and right limits of the piece in each horizontal strip of this height, from the top.
    pub(super) fn spans(&self, step: f64, count: usize) -> Vec<(f64, f64)> {
        let mut spans = vec![(f64::INFINITY, f64::NEG_INFINITY); count];
        for (a, b) in self.0.iter().flat_map(|ring| sides(ring)) {
            let pieces = (distance(a, b) / (step / 2.0)).ceil().max(1.0);
            let mut walked = 0.0;
            while walked <= pieces {
                let (x, y) = along(a, b, walked / pieces);
                #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
                // negative becomes 0
                if let Some(span) = spans.get_mut((y / step) as usize) {
                    *span = (span.0.min(x), span.1.max(x));
                }
                walked += 1.0;
            }
        }
        spans
    }

    /// The distance from a point to the metal; 0 on the metal.
    #[cfg(test)]
    pub(super) fn gap(&self, at: Point) -> f64 {
        if self.holds(at) {
            return 0.0;
        }
        let near = |((ax, ay), (bx, by)): (Point, Point)| {
            let (dx, dy) = (bx - ax, by - ay);
            let t = ((at.0 - ax) * dx + (at.1 - ay) * dy) / (dx * dx + dy * dy).max(1e-12);
            distance(at, along((ax, ay), (bx, by), t.clamp(0.0, 1.0)))
        };
        let all = self.0.iter().flat_map(|ring| sides(ring));
        all.map(near).fold(f64::INFINITY, f64::min)
    }

    /// The point of the outline farthest from another point.
    pub(super) fn far_end(&self, from: Point) -> Option<Point> {
        self.spots()
            .max_by(|a, b| distance(*a, from).total_cmp(&distance(*b, from)))
    }

    fn spots(&self) -> impl Iterator<Item = Point> {
        self.0.iter().flatten().copied()
    }
}

/// The distance between two points.
pub(super) fn distance(a: Point, b: Point) -> f64 {
    let (dx, dy) = (a.0 - b.0, a.1 - b.1);
    (dx * dx + dy * dy).sqrt()
}

/// The point at fraction `t` of the way from one to the other.
pub(super) fn along(a: Point, b: Point, t: f64) -> Point {
    (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t)
}

/// Unit vectors in all directions. They come from the rational parametrisation of the circle, which needs no
/// sine.
pub(super) fn ways() -> Vec<Point> {
    const STEPS: u8 = 12;
    let quarter = (0..STEPS).map(|k| {
        let t = f64::from(k) / f64::from(STEPS);
        let whole = 1.0 + t * t;
        ((1.0 - t * t) / whole, 2.0 * t / whole)
    });
    let mut ways: Vec<Point> = quarter.collect();
    for _ in 0..3 {
        for i in ways.len() - usize::from(STEPS)..ways.len() {
            let (x, y) = ways[i];
            ways.push((-y, x));
        }
    }
    ways
}

/// Each point with the next, and the last with the first.
fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    let next = ring.iter().skip(1).chain(ring.first());
    ring.iter().copied().zip(next.copied())
}

/// The polygons of SVG path data, limited to what our drawings use: moves, lines, curves, and ellipses made of
/// two arcs.
fn loops(path: &str) -> Vec<Vec<Point>> {
    let mut loops: Vec<Vec<Point>> = Vec::new();
    // Each command is a letter with the numbers that follow it.
    let starts = path.match_indices(|c: char| c.is_ascii_alphabetic());
    for (start, letter) in starts {
        let rest = &path[start + 1..];
        let end = rest.find(|c: char| c.is_ascii_alphabetic());
        let numbers: Vec<f64> = rest[..end.unwrap_or(rest.len())]
            .split([' ', ','])
            .filter_map(decimal)
            .collect();
        if letter == "M" {
            loops.push(Vec::new());
        }
        let Some(line) = loops.last_mut() else {
            continue;
        };
        match letter {
            "C" => {
                for way in numbers.chunks_exact(6) {
                    curve(line, way);
                }
            }
            "A" => arc(line, &numbers),
            _ => line.extend(numbers.chunks_exact(2).map(|p| (p[0], p[1]))),
        }
    }
    loops
}

fn curve(line: &mut Vec<Point>, way: &[f64]) {
    const STEPS: u8 = 8;
    let (Some(from), &[ax, ay, bx, by, x, y]) = (line.last().copied(), way) else {
        return;
    };
    for k in 1..=STEPS {
        let t = f64::from(k) / f64::from(STEPS);
        let (first, second, third) = (
            along(from, (ax, ay), t),
            along((ax, ay), (bx, by), t),
            along((bx, by), (x, y), t),
        );
        let (left, right) = (along(first, second, t), along(second, third, t));
        line.push(along(left, right, t));
    }
}

/// Half an ellipse. The first half goes over the top from left to right, the second back below.
fn arc(line: &mut Vec<Point>, way: &[f64]) {
    let (Some(from), &[rx, ry, _, _, _, x, y]) = (line.last().copied(), way) else {
        return;
    };
    let middle = along(from, (x, y), 0.5);
    let side = if from.0 < x { -1.0 } else { 1.0 };
    let ways = ways();
    let half = ways.iter().take(ways.len() / 2);
    line.extend(half.map(|(c, s)| (middle.0 + side * c * rx, middle.1 + side * s * ry)));
    line.push((x, y));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::drawings::shape::Style;
    use leavewell_model::terms::PartName;

    fn of(path: &str) -> Silhouette {
        Silhouette::of(&[PaintedShape {
            part: PartName::Body,
            style: Style::Area,
            path: path.to_owned(),
        }])
    }

    fn close(a: f64, b: f64) -> bool {
        (a - b).abs() < 0.5
    }

    #[test]
    fn a_square_is_measured() {
        let square = of("M10 20L30 20 30 40L10 40Z");
        assert!(square.holds((20.0, 30.0)) && !square.holds((31.0, 30.0)));
        let bounds = square.bounds().into_iter().zip([10.0, 20.0, 30.0, 40.0]);
        assert!(bounds.into_iter().all(|(is, should)| close(is, should)));
        assert!(close(square.farthest((10.0, 20.0)), 28.3));
        assert!(close(square.gap((36.0, 30.0)), 6.0));
        let spans = square.spans(10.0, 5);
        assert!(spans[0].0 > spans[0].1, "nothing above it");
        assert!(close(spans[2].0, 10.0) && close(spans[2].1, 30.0));
    }

    #[test]
    fn curves_and_ellipses_bulge_the_right_way() {
        let ellipse = of("M47 148A153 84 0 1 1 353 148A153 84 0 1 1 47 148Z");
        let [left, top, right, bottom] = ellipse.bounds();
        assert!(close(left, 47.0) && close(right, 353.0));
        assert!(close(top, 64.0) && close(bottom, 232.0));
        assert!(ellipse.holds((200.0, 70.0)) && ellipse.holds((200.0, 225.0)));
        assert!(!ellipse.holds((60.0, 80.0)));
        // A curve with both control points at 80 comes to three quarters of that.
        let curve = of("M0 0C0 80 100 80 100 0Z");
        assert!(close(curve.bounds()[3], 60.0));
    }

    #[test]
    fn the_unit_vectors_cover_all_directions() {
        let ways = ways();
        assert_eq!(ways.len(), 48);
        let (x, y) = ways
            .iter()
            .fold((0.0, 0.0), |(a, b), (x, y)| (a + x, b + y));
        assert!(f64::abs(x) < 1e-9 && f64::abs(y) < 1e-9);
        assert!(
            ways.iter()
                .all(|w| (distance(*w, (0.0, 0.0)) - 1.0).abs() < 1e-12)
        );
    }
}
