//! The simple solid that stands for the piece, drawn from the sizes used for its surface.

use super::block::Table;
use super::number_text::mm;
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::plating_picture as words;

const WIDTH: f64 = 320.0;
const HEIGHT: f64 = 190.0;
/// Width and height available for the drawing, in picture units.
const ROOM: (f64, f64) = (180.0, 130.0);

/// A simple solid; all sizes in mm, > 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Solid {
    /// Radius and height of the foot, the widest place and the top.
    Turned([(f64, f64); 3]),
    /// Length and width.
    Oval(f64, f64),
    /// Length, width, height.
    Box(f64, f64, f64),
}

/// Draws the solid, with the surfaces as its table.
pub(super) fn picture(solid: &Solid, table: Table) -> Picture {
    let (marks, what) = match *solid {
        Solid::Turned(profile) => (turned(profile), words::TURNED),
        Solid::Oval(l, w) => (oval(l, w), words::OVAL),
        Solid::Box(l, w, h) => (block(l, w, h), words::BOX),
    };
    Picture {
        id: "bench.plating.picture".to_owned(),
        title: words::title(what),
        description: words::description(what),
        width: WIDTH,
        height: HEIGHT,
        marks,
        table,
    }
}

fn turned(profile: [(f64, f64); 3]) -> Vec<Mark> {
    let widest = profile.iter().map(|p| p.0).fold(1e-6, f64::max);
    let tall = profile[2].1.max(1e-6);
    let scale = (ROOM.0 / (2.0 * widest)).min(ROOM.1 / tall);
    let (axis, floor) = (WIDTH / 2.0, 160.0);
    let at = |side: f64, (r, z): (f64, f64)| {
        format!("{:.1} {:.1}", axis + side * r * scale, floor - z * scale)
    };
    let [foot, wide, top] = profile;
    let outline = format!(
        "M{}L{}L{}L{}L{}L{}Z",
        at(-1.0, foot),
        at(-1.0, wide),
        at(-1.0, top),
        at(1.0, top),
        at(1.0, wide),
        at(1.0, foot)
    );
    let label = |(r, z): (f64, f64)| {
        Mark::text(
            Ink::Quiet,
            Anchor::Start,
            (
                (axis + r * scale + 6.0).min(WIDTH - 60.0),
                floor - z * scale + 4.0,
            ),
            words::across(&mm(2.0 * r)),
        )
    };
    vec![
        Mark::path(Ink::Silver, outline),
        label(foot),
        label(wide),
        label(top),
        Mark::text(
            Ink::Quiet,
            Anchor::Middle,
            (axis, floor + 20.0),
            words::high(&mm(tall)),
        ),
    ]
}

fn oval(length: f64, width: f64) -> Vec<Mark> {
    let scale = (ROOM.0 / length.max(1e-6)).min(ROOM.1 / width.max(1e-6));
    let (rx, ry) = (length * scale / 2.0, width * scale / 2.0);
    let (x, y) = (WIDTH / 2.0, 84.0);
    vec![
        Mark::path(
            Ink::Silver,
            format!(
                "M{:.1} {y:.1}a{rx:.1} {ry:.1} 0 1 0 {d:.1} 0a{rx:.1} {ry:.1} 0 1 0 -{d:.1} 0Z",
                x - rx,
                d = 2.0 * rx
            ),
        ),
        Mark::text(
            Ink::Quiet,
            Anchor::Middle,
            (x, 172.0),
            words::by(&mm(length), &mm(width)),
        ),
    ]
}

fn block(length: f64, width: f64, height: f64) -> Vec<Mark> {
    // Seen from the front and slightly from above, with depth drawn at half scale.
    let scale =
        (ROOM.0 / (length + width / 2.0).max(1e-6)).min(ROOM.1 / (height + width / 2.0).max(1e-6));
    let (l, w, h) = (length * scale, width * scale / 2.0, height * scale);
    let (x, y) = ((WIDTH - l - w) / 2.0, 155.0);
    vec![
        Mark::path(
            Ink::Silver,
            format!("M{x:.1} {y:.1}v-{h:.1}l{w:.1} -{w:.1}h{l:.1}v{h:.1}l-{w:.1} {w:.1}Z"),
        ),
        Mark::path(
            Ink::Detail,
            format!(
                "M{x:.1} {top:.1}h{l:.1}v{h:.1}m0 -{h:.1}l{w:.1} -{w:.1}",
                top = y - h
            ),
        ),
        Mark::text(
            Ink::Quiet,
            Anchor::Middle,
            (WIDTH / 2.0, 178.0),
            words::by_high(&mm(length), &mm(width), &mm(height)),
        ),
    ]
}
