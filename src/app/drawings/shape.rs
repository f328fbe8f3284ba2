//! Shapes a piece is drawn from, and the few ways of making their outlines.

use leavewell_model::case::PartName;

/// Half the width of the drawing: the axis that turned work is symmetrical about.
pub(super) const AXIS: f64 = 200.0;

/// How a shape is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Style {
    /// An outlined area of metal.
    Area,
    /// A fine line on the surface.
    Detail,
    /// The outline of something behind the surface: dashed.
    Hidden,
}

/// One outline and the part it belongs to.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Shape {
    /// The part.
    pub(super) part: PartName,
    /// How it is drawn.
    pub(super) style: Style,
    /// SVG path data.
    pub(super) path: String,
}

/// One stretch of an outline, from where the last one ended.
#[derive(Clone, Copy, Debug)]
pub(super) enum To {
    /// A straight line.
    Line(f64, f64),
    /// A curve with its two control points and its end.
    Curve(f64, f64, f64, f64, f64, f64),
}

impl To {
    fn end(self) -> (f64, f64) {
        match self {
            Self::Line(x, y) | Self::Curve(_, _, _, _, x, y) => (x, y),
        }
    }
}

/// An outlined area.
pub(super) fn area(part: PartName, path: impl Into<String>) -> Shape {
    Shape {
        part,
        style: Style::Area,
        path: path.into(),
    }
}

/// A fine line.
pub(super) fn detail(part: PartName, path: impl Into<String>) -> Shape {
    Shape {
        part,
        style: Style::Detail,
        path: path.into(),
    }
}

/// A dashed outline of what cannot be seen from the side.
pub(super) fn hidden(part: PartName, path: impl Into<String>) -> Shape {
    Shape {
        part,
        style: Style::Hidden,
        path: path.into(),
    }
}

/// A closed outline turned about the axis: the profile is given for one side, as distances from the
/// axis, from top to bottom.
pub(super) fn turned(start: (f64, f64), profile: &[To]) -> String {
    let right = |x: f64, y: f64| point(AXIS + x, y);
    let left = |x: f64, y: f64| point(AXIS - x, y);
    let mut path = vec![format!("M{}", right(start.0, start.1))];
    let mut ends = vec![start];
    for to in profile {
        path.push(match *to {
            To::Line(x, y) => format!("L{}", right(x, y)),
            To::Curve(ax, ay, bx, by, x, y) => {
                format!("C{} {} {}", right(ax, ay), right(bx, by), right(x, y))
            }
        });
        ends.push(to.end());
    }
    if let Some((x, y)) = ends.pop() {
        path.push(format!("L{}", left(x, y)));
    }
    for (to, (x, y)) in profile.iter().zip(ends).rev() {
        path.push(match *to {
            To::Line(..) => format!("L{}", left(x, y)),
            To::Curve(ax, ay, bx, by, ..) => {
                format!("C{} {} {}", left(bx, by), left(ax, ay), left(x, y))
            }
        });
    }
    path.concat() + "Z"
}

/// A level line across turned work.
pub(super) fn level(half_width: f64, y: f64) -> String {
    format!(
        "M{}L{}",
        point(AXIS - half_width, y),
        point(AXIS + half_width, y)
    )
}

/// A closed outline along a middle line, `widths` wide at its start, middle and end: handles and spouts.
pub(super) fn ribbon(start: (f64, f64), along: &[To], widths: [f64; 3]) -> String {
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
    let (mut there, mut back) = (Vec::new(), Vec::new());
    for (i, (x, y)) in middle.iter().enumerate() {
        let (before, after) = (middle[i.saturating_sub(1)], middle[(i + 1).min(last)]);
        let (dx, dy) = (after.0 - before.0, after.1 - before.1);
        let length = (dx * dx + dy * dy).sqrt().max(1e-9);
        let half = width_at(widths, count(i) / count(last)) / 2.0;
        let (nx, ny) = (-dy / length * half, dx / length * half);
        there.push(point(x + nx, y + ny));
        back.push(point(x - nx, y - ny));
    }
    back.reverse();
    format!("M{}L{}Z", there.join(" "), back.join(" "))
}

/// Fine upright strokes round turned work, closing up towards its sides as they do to the eye.
pub(super) fn strokes(half_width: f64, top: f64, bottom: f64, count: u32) -> String {
    around(half_width, count)
        .map(|x| format!("M{}L{}", point(AXIS + x, top), point(AXIS + x, bottom)))
        .collect::<Vec<_>>()
        .concat()
}

/// Strokes that follow turned work from one width to another: the lobes of a bowl or a spreading foot.
pub(super) fn lobes(
    (top_half, top): (f64, f64),
    (low_half, low): (f64, f64),
    count: u32,
) -> String {
    let middle = f64::midpoint(top, low);
    around(1.0, count)
        .map(|t| {
            // Bowls stay wide and then close; feet stay narrow and then spread.
            let bend = if top_half > low_half {
                top_half
            } else {
                low_half * 0.55 + top_half * 0.45
            };
            format!(
                "M{}Q{} {}",
                point(AXIS + t * top_half, top),
                point(AXIS + t * bend, middle),
                point(AXIS + t * low_half, low)
            )
        })
        .collect::<Vec<_>>()
        .concat()
}

/// Slanting strokes round a border.
pub(super) fn gadroons(half_width: f64, top: f64, bottom: f64, count: u32) -> String {
    around(half_width, count)
        .map(|x| {
            let slant = (bottom - top) * 0.5 * x / half_width;
            format!(
                "M{}L{}",
                point(AXIS + x - slant, top),
                point(AXIS + x, bottom)
            )
        })
        .collect::<Vec<_>>()
        .concat()
}

/// The underside, seen edge on: a thin strip just below where the piece stands.
pub(super) fn underside(half_width: f64, y: f64) -> String {
    turned((half_width, y + 3.0), &[To::Line(half_width, y + 8.0)])
}

/// Evenly spaced places round a turned surface, as seen from the side.
fn around(half_width: f64, count: u32) -> impl Iterator<Item = f64> {
    (1..count).map(move |i| {
        let t = 2.0 * f64::from(i) / f64::from(count) - 1.0;
        // Close to a sine, without one: the middle is wide, the ends crowd together.
        half_width * t * (1.57 - 0.57 * t * t)
    })
}

/// An ellipse as path data.
pub(super) fn ellipse(cx: f64, cy: f64, rx: f64, ry: f64) -> String {
    format!(
        "M{}A{} {} 0 1 1 {}A{} {} 0 1 1 {}Z",
        point(cx - rx, cy),
        number(rx),
        number(ry),
        point(cx + rx, cy),
        number(rx),
        number(ry),
        point(cx - rx, cy)
    )
}

/// An engraved shield about the axis.
pub(super) fn shield(cx: f64, top: f64, size: f64) -> String {
    let (w, h) = (size * 0.42, size);
    format!(
        "M{}C{} {} {}C{} {} {}L{}C{} {} {}C{} {} {}Z",
        point(cx - w, top),
        point(cx - w * 0.5, top + h * 0.07),
        point(cx - w * 0.3, top + h * 0.02),
        point(cx, top - h * 0.05),
        point(cx + w * 0.3, top + h * 0.02),
        point(cx + w * 0.5, top + h * 0.07),
        point(cx + w, top),
        point(cx + w, top + h * 0.45),
        point(cx + w, top + h * 0.72),
        point(cx + w * 0.5, top + h * 0.88),
        point(cx, top + h),
        point(cx - w * 0.5, top + h * 0.88),
        point(cx - w, top + h * 0.72),
        point(cx - w, top + h * 0.45)
    )
}

/// The place a share `t` of the way along.
fn between(from: (f64, f64), to: To, t: f64) -> (f64, f64) {
    match to {
        To::Line(x, y) => (from.0 + (x - from.0) * t, from.1 + (y - from.1) * t),
        To::Curve(ax, ay, bx, by, x, y) => {
            let rest = 1.0 - t;
            // The weights of the start, the two control points and the end.
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

/// A small number of steps, as a share can be made of.
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
    format!("{} {}", number(x), number(y))
}

/// Tenths of a pixel are enough.
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
    fn a_ribbon_has_its_width() {
        let path = ribbon((0.0, 0.0), &[To::Line(14.0, 0.0)], [2.0, 2.0, 2.0]);
        assert!(
            path.starts_with("M0 1 1 1") && path.ends_with("0 -1Z"),
            "{path}"
        );
    }
}
