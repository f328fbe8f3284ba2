//! The shapes of a drawn piece, and the ways to make their outlines.

use leavewell_model::terms::PartName;

use crate::app::parts::words::joined;

/// Half the width of the drawing: the axis of symmetry of turned work.
pub(super) const AXIS: f64 = 200.0;

/// How a shape is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Style {
    /// An area of metal with an outline.
    Area,
    /// A fine line on the surface.
    Detail,
    /// A dashed outline of something behind the surface.
    Hidden,
}

/// One outline with its part.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct PaintedShape {
    /// The part.
    pub(super) part: PartName,
    /// How it is drawn.
    pub(super) style: Style,
    /// SVG path data.
    pub(super) path: String,
}

/// The plan of a shape: its part, its style, and its outlines. Coordinates are whole numbers or halves.
pub(super) struct ShapePlan(
    pub(super) PartName,
    pub(super) Style,
    pub(super) &'static [Outline],
);

/// A part, and the position of its joint in the drawing.
pub(super) struct Joint(pub(super) PartName, pub(super) f32, pub(super) f32);

/// The plan of one outline.
pub(super) enum Outline {
    /// SVG path data.
    Path(&'static str),
    /// Computed path data.
    Made(fn() -> String),
    /// A closed outline of turned work. The profile gives one side from top to bottom, as distances from the
    /// axis.
    Turned((f32, f32), &'static [To]),
    /// A closed outline along a centre line, with its width at the start, middle and end; for handles and
    /// spouts.
    Ribbon((f32, f32), &'static [To], [f32; 3]),
    /// A level line across turned work: half-width and y.
    Level(f32, f32),
    /// Fine upright strokes around turned work, closer together towards its sides as in perspective: half-width,
    /// top, bottom, and the number of gaps.
    Strokes(f32, f32, f32, u8),
    /// Strokes that follow turned work from one width to another, as for the lobes of a bowl or a spreading
    /// foot: half-width and y at the top and at the bottom, and the number of strokes.
    Lobes((f32, f32), (f32, f32), u8),
    /// Slanting strokes around a border: half-width, top, bottom, and the number of strokes.
    Gadroons(f32, f32, f32, u8),
    /// The underside seen edge on, a thin strip below the foot: half-width and y.
    Underside(f32, f32),
    /// An ellipse: its centre, half-width and half-height.
    Ellipse(f32, f32, f32, f32),
    /// An engraved shield: its centre, top and size.
    Shield(f32, f32, f32),
}

/// One segment of an outline, from the end of the previous one.
#[derive(Clone, Copy, Debug)]
pub(super) enum To {
    /// A straight line.
    Line(f32, f32),
    /// A curve with its two control points and its end.
    Curve(f32, f32, f32, f32, f32, f32),
}

impl To {
    fn end(self) -> (f64, f64) {
        match self {
            Self::Line(x, y) | Self::Curve(_, _, _, _, x, y) => wide((x, y)),
        }
    }
}

impl ShapePlan {
    /// The shape with its path.
    pub(super) fn shape(&self) -> PaintedShape {
        let Self(part, style, outlines) = self;
        PaintedShape {
            part: *part,
            style: *style,
            path: outlines.iter().map(Outline::path).collect(),
        }
    }
}

impl Outline {
    fn path(&self) -> String {
        let w = f64::from;
        match *self {
            Self::Path(path) => path.to_owned(),
            Self::Made(made) => made(),
            Self::Turned(start, profile) => turned(wide(start), profile),
            Self::Ribbon(start, along, widths) => ribbon(wide(start), along, widths.map(w)),
            Self::Level(half_width, y) => level(w(half_width), w(y)),
            Self::Strokes(half_width, top, bottom, count) => {
                strokes(w(half_width), w(top), w(bottom), count)
            }
            Self::Lobes(top, low, count) => lobes(wide(top), wide(low), count),
            Self::Gadroons(half_width, top, bottom, count) => {
                gadroons(w(half_width), w(top), w(bottom), count)
            }
            Self::Underside(half_width, y) => turned(
                (w(half_width), w(y) + 3.0),
                &[To::Line(half_width, y + 8.0)],
            ),
            Self::Ellipse(cx, cy, rx, ry) => ellipse(w(cx), w(cy), w(rx), w(ry)),
            Self::Shield(cx, top, size) => shield(w(cx), w(top), w(size)),
        }
    }
}

fn wide((x, y): (f32, f32)) -> (f64, f64) {
    (f64::from(x), f64::from(y))
}

fn turned(start: (f64, f64), profile: &[To]) -> String {
    let right = |x: f64, y: f64| point(AXIS + x, y);
    let left = |x: f64, y: f64| point(AXIS - x, y);
    let mut path = "M".to_owned() + &right(start.0, start.1);
    let mut ends = vec![start];
    for to in profile {
        let (x, y) = to.end();
        if let To::Curve(ax, ay, bx, by, ..) = *to {
            path = path + "C" + &right(ax.into(), ay.into()) + " ";
            path = path + &right(bx.into(), by.into()) + " ";
        } else {
            path += "L";
        }
        path += &right(x, y);
        ends.push((x, y));
    }
    if let Some((x, y)) = ends.pop() {
        path = path + "L" + &left(x, y);
    }
    for (to, (x, y)) in profile.iter().zip(ends).rev() {
        if let To::Curve(ax, ay, bx, by, ..) = *to {
            path = path + "C" + &left(bx.into(), by.into()) + " ";
            path = path + &left(ax.into(), ay.into()) + " ";
        } else {
            path += "L";
        }
        path += &left(x, y);
    }
    path + "Z"
}

fn level(half_width: f64, y: f64) -> String {
    line((AXIS - half_width, y), (AXIS + half_width, y))
}

fn ribbon(start: (f64, f64), along: &[To], widths: [f64; 3]) -> String {
    const STEPS: usize = 14;
    let mut middle = vec![start];
    let mut from = start;
    for to in along {
        for step in 1..=STEPS {
            middle.push(between(from, *to, count(step) / count(STEPS)));
        }
        from = to.end();
    }
    let last = middle.len() - 1;
    let (mut there, mut back) = (String::new(), String::new());
    for (i, (x, y)) in middle.iter().enumerate() {
        let (before, after) = (middle[i.saturating_sub(1)], middle[(i + 1).min(last)]);
        let (dx, dy) = (after.0 - before.0, after.1 - before.1);
        let length = (dx * dx + dy * dy).sqrt().max(1e-9);
        let half = width_at(widths, count(i) / count(last)) / 2.0;
        let (nx, ny) = (-dy / length * half, dx / length * half);
        let joint = if i == 0 { "" } else { " " };
        there = there + joint + &point(x + nx, y + ny);
        back = point(x - nx, y - ny) + joint + &back;
    }
    joined(&["M", &there, "L", &back, "Z"])
}

/// A straight stroke.
fn line(from: (f64, f64), to: (f64, f64)) -> String {
    joined(&["M", &point(from.0, from.1), "L", &point(to.0, to.1)])
}

fn strokes(half_width: f64, top: f64, bottom: f64, count: u8) -> String {
    around(half_width, count)
        .map(|x| line((AXIS + x, top), (AXIS + x, bottom)))
        .collect()
}

fn lobes((top_half, top): (f64, f64), (low_half, low): (f64, f64), count: u8) -> String {
    let middle = f64::midpoint(top, low);
    around(1.0, count)
        .map(|t| {
            // Bowls stay wide and then close; feet stay narrow and then spread.
            let bend = if top_half > low_half {
                top_half
            } else {
                low_half * 0.55 + top_half * 0.45
            };
            joined(&[
                "M",
                &point(AXIS + t * top_half, top),
                "Q",
                &point(AXIS + t * bend, middle),
                " ",
                &point(AXIS + t * low_half, low),
            ])
        })
        .collect()
}

fn gadroons(half_width: f64, top: f64, bottom: f64, count: u8) -> String {
    around(half_width, count)
        .map(|x| {
            let slant = (bottom - top) * 0.5 * x / half_width;
            line((AXIS + x - slant, top), (AXIS + x, bottom))
        })
        .collect()
}

/// The side view of points evenly spaced around a turned surface.
fn around(half_width: f64, count: u8) -> impl Iterator<Item = f64> {
    (1..count).map(move |i| {
        let t = 2.0 * f64::from(i) / f64::from(count) - 1.0;
        // Approximates a sine: wide gaps in the middle, narrow ones at the ends.
        half_width * t * (1.57 - 0.57 * t * t)
    })
}

fn ellipse(cx: f64, cy: f64, rx: f64, ry: f64) -> String {
    let (left, right) = (point(cx - rx, cy), point(cx + rx, cy));
    let arc = joined(&["A", &point(rx, ry), " 0 1 1 "]);
    joined(&["M", &left, &arc, &right, &arc, &left, "Z"])
}

fn shield(cx: f64, top: f64, size: f64) -> String {
    // x as fractions of the half-width, y as fractions of the height, from the top left corner.
    const PLACES: [(&str, f64, f64); 14] = [
        ("M", -1.0, 0.0),
        ("C", -0.5, 0.07),
        (" ", -0.3, 0.02),
        (" ", 0.0, -0.05),
        ("C", 0.3, 0.02),
        (" ", 0.5, 0.07),
        (" ", 1.0, 0.0),
        ("L", 1.0, 0.45),
        ("C", 1.0, 0.72),
        (" ", 0.5, 0.88),
        (" ", 0.0, 1.0),
        ("C", -0.5, 0.88),
        (" ", -1.0, 0.72),
        (" ", -1.0, 0.45),
    ];
    let half = size * 0.42;
    let mut path = String::new();
    for (step, across, down) in PLACES {
        path = path + step + &point(cx + half * across, top + size * down);
    }
    path + "Z"
}

/// The point at fraction `t` of the way along.
fn between(from: (f64, f64), to: To, t: f64) -> (f64, f64) {
    match to {
        To::Line(..) => {
            let (x, y) = to.end();
            (from.0 + (x - from.0) * t, from.1 + (y - from.1) * t)
        }
        To::Curve(ax, ay, bx, by, x, y) => {
            let rest = 1.0 - t;
            // The Bernstein weights of the start, the two control points and the end.
            let [ax, ay, bx, by, x, y] = [ax, ay, bx, by, x, y].map(f64::from);
            let weights = [
                rest * rest * rest,
                3.0 * rest * rest * t,
                3.0 * rest * t * t,
                t * t * t,
            ];
            let mix = |at: [f64; 4]| {
                at.iter()
                    .zip(weights)
                    .map(|(place, weight)| place * weight)
                    .sum()
            };
            (mix([from.0, ax, bx, x]), mix([from.1, ay, by, y]))
        }
    }
}

/// A small number of steps as a float.
fn count(steps: usize) -> f64 {
    f64::from(u16::try_from(steps).unwrap_or(u16::MAX))
}

fn width_at([start, middle, end]: [f64; 3], t: f64) -> f64 {
    if t < 0.5 {
        start + (middle - start) * t * 2.0
    } else {
        middle + (end - middle) * (t * 2.0 - 1.0)
    }
}

fn point(x: f64, y: f64) -> String {
    joined(&[&number(x), " ", &number(y)])
}

/// A coordinate to one decimal, which is enough.
pub(super) fn number(x: f64) -> String {
    ((x * 10.0).round() / 10.0).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turned_work_is_symmetrical() {
        let path = turned(
            (10.0, 0.0),
            &[
                To::Line(20.0, 5.0),
                To::Curve(20.0, 6.0, 15.0, 9.0, 5.0, 10.0),
            ],
        );
        assert_eq!(
            path,
            "M210 0L220 5C220 6 215 9 205 10L195 10C185 9 180 6 180 5L190 0Z"
        );
    }

    #[test]
    fn a_ribbon_has_the_given_width() {
        let path = ribbon((0.0, 0.0), &[To::Line(14.0, 0.0)], [2.0, 2.0, 2.0]);
        assert!(
            path.starts_with("M0 1 1 1") && path.ends_with("0 -1Z"),
            "{path}"
        );
    }
}
