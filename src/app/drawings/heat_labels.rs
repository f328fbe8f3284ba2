//! Where the words beside the bands of heat go: each at the end of a line from its ring, clear of all
//! others and inside the picture.

use super::outline::{Point, Silhouette, distance, ways};

/// Width of the picture.
pub(super) const WIDTH: f64 = 400.0;
/// Height of that part of it where the piece is drawn.
pub(super) const HEIGHT: f64 = 300.0;

/// Half the height of a line of words.
const HALF_LINE: f64 = 8.0;
/// Room a letter takes, with some to spare.
const LETTER: f64 = 7.0;
/// Between the end of the line and the words.
const GAP: f64 = 3.0;
/// Height of the stretches in which room beside the piece is looked for.
const STRETCH: f64 = 10.0;

/// How much longer a line may be to keep words off the piece.
const ON_THE_PIECE: f64 = 250.0;
/// How much longer a line may be to leave its ring where the ring is drawn.
const OFF_THE_PIECE: f64 = 350.0;

/// Words and the line to them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Label {
    /// Where the line leaves the ring.
    pub(super) from: Point,
    /// Where it ends.
    pub(super) to: Point,
    /// Whether the words stand before that end, not after it.
    pub(super) before: bool,
    /// What the words take up: left, top, right, bottom.
    room: [f64; 4],
}

impl Label {
    /// Where the words stand.
    pub(super) fn words_at(&self) -> Point {
        let side = if self.before { -GAP } else { GAP };
        (self.to.0 + side, self.to.1 + 4.5)
    }

    /// Whether the two lines run so nearly the same way that they would be taken for one.
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

/// Whether the line of one runs through the room of another.
fn crosses(label: &Label, [l, t, r, b]: [f64; 4]) -> bool {
    let ((x, y), (ex, ey)) = (label.from, label.to);
    // The stretch of the line, as shares of its length, that lies between two sides.
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

/// A place for each of these: how far its ring is from the joint, smallest first, and how many letters
/// it has. Best is a short line to words beside the piece; all lines point at the joint, so none crosses
/// another. Words close to the joint can bar the way to the rest: if any is left over, all move to the
/// sides.
pub(super) fn labels(
    piece: &Silhouette,
    joint: Point,
    rings: &[(f64, usize)],
) -> Vec<Option<Label>> {
    let spans = piece.spans(STRETCH, 30);
    let ways = ways();
    for sides in [false, true] {
        let mut placed: Vec<Option<Label>> = Vec::new();
        // The largest have the fewest places at the sides.
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

/// Where lines to words along the left and the right side end, one below the other.
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

/// Whether words there lie left or right of the piece, above or below it.
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
    use leavewell_model::record::Form;

    /// Every part of every form, with rings close together, far apart, and all alike: no words meet, none
    /// leaves the picture, none is left out.
    #[test]
    fn words_never_meet_and_stay_in_the_picture() {
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
                    // As long as words get: "303.7 °C: 100 to 200 mm".
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
    fn a_line_through_words_is_found() {
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
    fn two_lines_the_same_way_are_taken_for_one() {
        let a = label_to((0.0, 0.0), (10.0, 0.0));
        assert!(a.along(&label_to((3.0, 0.0), (20.0, 0.0))));
        assert!(!a.along(&label_to((0.0, 3.0), (10.0, 4.0))));
        assert!(!a.along(&label_to((0.0, 0.0), (-10.0, 0.0))));
    }

    fn label_to(from: Point, to: Point) -> Label {
        label(from, to, false, 1)
    }

    #[test]
    fn words_stand_beside_the_piece_where_there_is_room() {
        let shapes = shapes(Some(Form::Candlestick));
        let piece = Silhouette::of(shapes.iter().filter(|s| s.style == Style::Area));
        let spans = piece.spans(STRETCH, 30);
        let found = labels(&piece, (200.0, 188.0), &[(9.0, 12), (20.0, 12)]);
        assert!(found.iter().flatten().all(|l| beside(&spans, l.room)));
        assert_eq!(found.iter().flatten().count(), 2);
    }
}
