//! Places the labels of the heat bands: each at the end of a line from its ring, inside the drawing, with no
//! overlaps.

use super::outline::{Point, Silhouette, distance, ways};

/// Width of the drawing.
pub(super) const WIDTH: f64 = 400.0;
/// Height of the area with the piece.
pub(super) const HEIGHT: f64 = 300.0;

/// Half the height of a line of text.
const HALF_LINE: f64 = 8.0;
/// Width of a letter, with some margin.
const LETTER: f64 = 7.0;
/// Gap between the line's end and the label.
const GAP: f64 = 3.0;
/// Height of the strips used to measure the free space beside the piece.
const STRETCH: f64 = 10.0;

/// How much longer a line may be to keep its label off the piece.
const ON_THE_PIECE: f64 = 250.0;
/// How much longer a line may be to start on a visible part of its ring.
const OFF_THE_PIECE: f64 = 350.0;

/// A label and the line to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Label {
    /// Where the line starts, on the ring.
    pub(super) from: Point,
    /// Where the line ends.
    pub(super) to: Point,
    /// Whether the label is to the left of that end.
    pub(super) before: bool,
    /// The box of the label: left, top, right, bottom.
    room: [f64; 4],
}

impl Label {
    /// The position of the label's text.
    pub(super) fn words_at(&self) -> Point {
        let side = if self.before { -GAP } else { GAP };
        (self.to.0 + side, self.to.1 + 4.5)
    }

    /// Whether the two lines are so nearly parallel that they look like one.
    fn along(&self, other: &Self) -> bool {
        const ALIKE: f64 = 0.9995;
        let way = |l: &Self| (l.to.0 - l.from.0, l.to.1 - l.from.1);
        let ((ax, ay), (bx, by)) = (way(self), way(other));
        let lengths = distance(self.from, self.to) * distance(other.from, other.to);
        ax * bx + ay * by > ALIKE * lengths
    }

    fn meets(&self, other: &Self) -> bool {
        let [l, t, r, b] = self.room;
        let [ol, ot, or, ob] = other.room;
        (l < or && ol < r && t < ob && ot < b)
            || self.along(other)
            || crosses(self, other.room)
            || crosses(other, self.room)
    }
}

/// Whether a line crosses the box of another label.
fn crosses(label: &Label, [l, t, r, b]: [f64; 4]) -> bool {
    let ((x, y), (ex, ey)) = (label.from, label.to);
    // The part of the line between two sides of the box, as fractions of its length.
    let between = |from: f64, to: f64, low: f64, high: f64| {
        let run = to - from;
        if run.abs() > 1e-9 {
            let (a, b) = ((low - from) / run, (high - from) / run);
            (a.min(b), a.max(b))
        } else if low < from && from < high {
            (0.0, 1.0)
        } else {
            (1.0, 0.0)
        }
    };
    let (across, down) = (between(x, ex, l, r), between(y, ey, t, b));
    let (enters, leaves) = (across.0.max(down.0).max(0.0), across.1.min(down.1).min(1.0));
    enters < leaves - 1e-9
}

/// Places a label for each ring, given the ring's distance from the joint (smallest first) and the number of
/// letters. A short line to a label beside the piece is best. All lines point at the joint, so none cross.
/// Labels close to the joint can block the others; if one finds no place, all move to the sides.
pub(super) fn labels(
    piece: &Silhouette,
    joint: Point,
    rings: &[(f64, usize)],
) -> Vec<Option<Label>> {
    let spans = piece.spans(STRETCH, 30);
    let ways = ways();
    for sides in [false, true] {
        let mut placed: Vec<Option<Label>> = Vec::new();
        // The largest rings have the fewest free positions at the sides.
        for (radius, letters) in rings.iter().rev() {
            let mut best: Option<(f64, Label)> = None;
            let along = |way: Point, r: f64| (joint.0 + way.0 * r, joint.1 + way.1 * r);
            let off = |way: Point| {
                if piece.holds(along(way, *radius)) {
                    0.0
                } else {
                    OFF_THE_PIECE
                }
            };
            let mut consider = |way: Point, line: f64, off: f64| {
                let (from, to) = (along(way, *radius), along(way, radius + line));
                let label = label(from, to, way.0 < 0.0, *letters);
                let covers = if beside(&spans, label.room) {
                    0.0
                } else {
                    ON_THE_PIECE
                };
                let cost = line + off + covers;
                if inside(label.room)
                    && best.is_none_or(|(least, _)| cost < least)
                    && !placed.iter().flatten().any(|other| label.meets(other))
                {
                    best = Some((cost, label));
                }
            };
            if sides {
                for end in side_ends(*letters) {
                    let far = distance(joint, end);
                    let way = ((end.0 - joint.0) / far, (end.1 - joint.1) / far);
                    if far > radius + GAP && (way.0 < 0.0) == (end.0 < WIDTH / 2.0) {
                        consider(way, far - radius, off(way));
                    }
                }
            } else {
                for way in &ways {
                    let mut line = STRETCH;
                    let off = off(*way);
                    while line <= WIDTH {
                        consider(*way, line, off);
                        line += STRETCH;
                    }
                }
            }
            placed.push(best.map(|(_, label)| label));
        }
        if sides || placed.iter().all(Option::is_some) {
            placed.reverse();
            return placed;
        }
    }
    Vec::new()
}

/// The ends of the lines for labels stacked along the left and right sides.
fn side_ends(letters: usize) -> impl Iterator<Item = Point> {
    let wide = 2.5 + width(letters);
    (0..17).flat_map(move |row: u8| {
        let y = 11.0 + (2.0 * HALF_LINE + 1.0) * f64::from(row);
        [(wide, y), (WIDTH - wide, y)]
    })
}

fn width(letters: usize) -> f64 {
    GAP + LETTER * letters as f64
}

fn label(from: Point, to: Point, before: bool, letters: usize) -> Label {
    let wide = width(letters);
    let (left, right) = if before {
        (to.0 - wide, to.0)
    } else {
        (to.0, to.0 + wide)
    };
    Label {
        from,
        to,
        before,
        room: [left, to.1 - HALF_LINE, right, to.1 + HALF_LINE],
    }
}

fn inside([l, t, r, b]: [f64; 4]) -> bool {
    l >= 2.0 && t >= 2.0 && r <= WIDTH - 2.0 && b <= HEIGHT - 2.0
}

/// Whether this box lies clear of the piece: left or right of it, above or below it.
fn beside(spans: &[(f64, f64)], [l, t, r, b]: [f64; 4]) -> bool {
    let mut top = 0.0;
    spans.iter().all(|(from, to)| {
        let here = top < b && t < top + STRETCH;
        top += STRETCH;
        !here || r < *from || l > *to
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::drawings::forms::{joint, shapes};
    use crate::app::drawings::shape::Style;
    use leavewell_model::terms::Form;

    /// For every part of every form, with rings close together, far apart and equal: no labels overlap, none
    /// leaves the drawing, and none is missing.
    #[test]
    fn labels_never_overlap_and_stay_in_the_drawing() {
        let sets: [&[f64]; 5] = [
            &[3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 9.0, 12.0],
            &[10.0, 20.0, 30.0, 40.0, 55.0, 70.0, 90.0, 110.0],
            &[20.0, 60.0, 120.0],
            &[8.0, 8.0, 8.0, 8.0, 8.0, 8.0, 8.0, 8.0],
            &[0.0],
        ];
        for form in Form::ALL {
            let shapes = shapes(Some(*form));
            let piece = Silhouette::of(shapes.iter().filter(|s| s.style == Style::Area));
            for part in form.parts() {
                let at = joint(Some(*form), *part);
                for set in sets {
                    // The longest label: "303.7 °C: 100 to 200 mm".
                    let rings: Vec<(f64, usize)> = set.iter().map(|r| (*r, 23)).collect();
                    let labels = labels(&piece, at, &rings);
                    let name = [form.label(), ", ", part.label()].concat();
                    assert!(labels.iter().all(Option::is_some), "{name}: {set:?}");
                    let labels: Vec<Label> = labels.into_iter().flatten().collect();
                    for (i, label) in labels.iter().enumerate() {
                        assert!(inside(label.room), "{name}: {label:?}");
                        assert!((distance(label.from, at) - set[i]).abs() < 1e-9);
                        for other in &labels[..i] {
                            assert!(!label.meets(other), "{name}: {label:?} {other:?}");
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn a_line_through_a_label_is_detected() {
        let room = [10.0, 10.0, 30.0, 20.0];
        assert!(crosses(&label_to((0.0, 15.0), (40.0, 15.0)), room));
        assert!(crosses(&label_to((20.0, 0.0), (20.0, 40.0)), room));
        assert!(crosses(&label_to((0.0, 0.0), (30.0, 30.0)), room));
        assert!(!crosses(&label_to((0.0, 5.0), (40.0, 5.0)), room));
        assert!(!crosses(&label_to((0.0, 15.0), (9.0, 15.0)), room));
        assert!(!crosses(&label_to((0.0, 15.0), (10.0, 15.0)), room));
        assert!(!crosses(&label_to((0.0, 22.0), (22.0, 44.0)), room));
    }

    #[test]
    fn nearly_parallel_lines_are_detected() {
        let a = label_to((0.0, 0.0), (10.0, 0.0));
        assert!(a.along(&label_to((3.0, 0.0), (20.0, 0.0))));
        assert!(!a.along(&label_to((0.0, 3.0), (10.0, 4.0))));
        assert!(!a.along(&label_to((0.0, 0.0), (-10.0, 0.0))));
    }

    fn label_to(from: Point, to: Point) -> Label {
        label(from, to, false, 1)
    }

    #[test]
    fn labels_go_beside_the_piece_if_they_fit() {
        let shapes = shapes(Some(Form::Candlestick));
        let piece = Silhouette::of(shapes.iter().filter(|s| s.style == Style::Area));
        let spans = piece.spans(STRETCH, 30);
        let found = labels(&piece, (200.0, 188.0), &[(9.0, 12), (20.0, 12)]);
        assert!(found.iter().flatten().all(|l| beside(&spans, l.room)));
        assert_eq!(found.iter().flatten().count(), 2);
    }
}
