//! The reach of heat as a picture: a round body from above, or a strip, with distances marked.

use super::block::Table;
use super::heat_reach::ReachRow;
use super::number_text::mm;
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::heat_picture as words;
use leavewell_model::bench::{Reach, Spread};

const WIDTH: f64 = 320.0;
/// Least distance between two labels, in picture units.
const APART: f64 = 13.0;

/// Draws the picture for the entered values.
pub(super) fn picture(
    spread: &Spread,
    rod: bool,
    rows: &[ReachRow],
    next_mm: Option<f64>,
    table: Table,
) -> Picture {
    let (marks, height) = match *spread {
        Spread::Disk { patch_mm, end_mm } => (disk(patch_mm, end_mm, rows, next_mm), 264.0),
        Spread::Strip { end_mm } => (strip(end_mm, rod, rows, next_mm), 150.0),
    };
    let reached: Vec<String> = rows
        .iter()
        .filter_map(|r| match r.far {
            Reach::Never => None,
            Reach::To(x) => Some(words::as_far_as(r.at_c, &mm(x))),
            Reach::Whole => Some(words::everywhere(r.at_c)),
        })
        .collect();
    let title = if reached.is_empty() {
        words::OPENS_NOTHING.to_owned()
    } else {
        words::at_most(&reached.join("; "))
    };
    Picture {
        id: "bench.heat.picture".to_owned(),
        title,
        description: match spread {
            Spread::Disk { .. } => words::FROM_ABOVE,
            Spread::Strip { .. } => words::FROM_THE_SIDE,
        }
        .to_owned(),
        width: WIDTH,
        height,
        marks,
        table,
    }
}

/// How much of the metal is drawn, in mm: all of it, or slightly more than the farthest reach.
fn in_view(end_mm: f64, rows: &[ReachRow], next_mm: Option<f64>) -> f64 {
    let farthest = rows
        .iter()
        .filter_map(|r| ring(r.far, end_mm))
        .chain(next_mm.filter(|d| *d <= end_mm))
        .fold(0.0, f64::max);
    if farthest > 0.0 {
        (1.2 * farthest).min(end_mm)
    } else {
        end_mm
    }
}

/// Index of the threshold drawn with its uncertainty: old soft solder.
pub(super) const BANDED: usize = 2;

fn disk(patch_mm: f64, end_mm: f64, rows: &[ReachRow], next_mm: Option<f64>) -> Vec<Mark> {
    let centre = (WIDTH / 2.0, 138.0);
    let view = in_view(end_mm, rows, next_mm);
    let scale = 112.0 / (patch_mm + view).max(1e-6);
    let radius = |x: f64| (patch_mm + x.clamp(0.0, view)) * scale;
    let mut marks = vec![Mark::path(
        Ink::Silver,
        if view < end_mm {
            // The metal continues beyond the picture.
            format!("M8 14H{:.0}V260H8Z", WIDTH - 8.0)
        } else {
            circle(centre, radius(view))
        },
    )];
    if let Some(row) = rows.get(BANDED)
        && let Some(far) = ring(row.far, end_mm)
    {
        let near = ring(row.near, end_mm).unwrap_or(0.0);
        // The inner outline runs in the opposite direction, so that the centre stays clear.
        marks.push(Mark::path(
            Ink::Band,
            format!(
                "{}{}",
                circle(centre, radius(far)),
                circle_back(centre, radius(near))
            ),
        ));
    }
    let mut labelled = f64::INFINITY;
    for row in rows {
        let Reach::To(x) = row.far else { continue };
        let r = radius(x);
        marks.push(Mark::path(Ink::Detail, ring_line(centre, r)));
        if labelled - r >= APART {
            labelled = r;
            marks.push(Mark::text(
                Ink::Outline,
                Anchor::Middle,
                (centre.0, centre.1 - r - 3.0),
                format!("{} °C: {}", row.at_c, mm(x)),
            ));
        }
    }
    let core = radius(0.0).max(2.0);
    marks.push(Mark::path(Ink::Outline, ring_line(centre, core)));
    marks.push(Mark::text(
        Ink::Quiet,
        Anchor::Middle,
        (centre.0, centre.1 + core + 11.0),
        words::HOT_PATCH,
    ));
    if let Some(d) = next_mm.filter(|d| *d <= end_mm) {
        let x = centre.0 + radius(d);
        marks.extend(cross(x, centre.1));
        marks.push(Mark::text(
            Ink::Outline,
            Anchor::Middle,
            (x.min(WIDTH - 30.0), centre.1 + 16.0),
            words::NEXT_JOINT,
        ));
    }
    marks
}

fn strip(end_mm: f64, rod: bool, rows: &[ReachRow], next_mm: Option<f64>) -> Vec<Mark> {
    let (left, right) = (16.0, WIDTH - 16.0);
    let (top, bottom) = if rod { (66.0, 92.0) } else { (74.0, 84.0) };
    let view = in_view(end_mm, rows, next_mm);
    let at = |x: f64| left + (right - left) * (x / view.max(1e-6)).clamp(0.0, 1.0);
    let mut marks = vec![Mark::path(
        Ink::Silver,
        format!("M{left} {top}H{right}V{bottom}H{left}Z"),
    )];
    if let Some(row) = rows.get(BANDED)
        && let Some(far) = ring(row.far, end_mm)
    {
        let (a, b) = (at(ring(row.near, end_mm).unwrap_or(0.0)), at(far));
        marks.push(Mark::path(
            Ink::Band,
            format!("M{a:.1} {top}H{b:.1}V{bottom}H{a:.1}Z"),
        ));
    }
    // Labels take turns at three heights, so that neighbours do not overlap.
    let mut turn = 0_u8;
    for row in rows {
        let Reach::To(x) = row.far else { continue };
        let from = at(x);
        let y = 56.0 - 14.0 * f64::from(turn % 4);
        turn += 1;
        marks.push(Mark::path(
            Ink::Detail,
            format!("M{from:.1} {:.1}V{bottom}", y + 3.0),
        ));
        let (anchor, place) = if from > WIDTH / 2.0 {
            (Anchor::End, from - 2.0)
        } else {
            (Anchor::Start, from + 2.0)
        };
        marks.push(Mark::text(
            Ink::Outline,
            anchor,
            (place, y + 3.0),
            format!("{} °C: {}", row.at_c, mm(x)),
        ));
    }
    marks.push(Mark::path(
        Ink::Outline,
        format!("M{left} {:.1}V{:.1}", top - 5.0, bottom + 5.0),
    ));
    marks.push(Mark::text(
        Ink::Quiet,
        Anchor::Start,
        (left, bottom + 18.0),
        words::HOT_END,
    ));
    if let Some(d) = next_mm.filter(|d| *d <= end_mm) {
        marks.extend(cross(at(d), f64::midpoint(top, bottom)));
        marks.push(Mark::text(
            Ink::Outline,
            Anchor::Middle,
            (at(d).clamp(30.0, WIDTH - 30.0), bottom + 34.0),
            words::NEXT_JOINT,
        ));
    }
    marks
}

/// Radius at which a reach is drawn; `None` if there is none.
fn ring(reach: Reach, end_mm: f64) -> Option<f64> {
    match reach {
        Reach::Never => None,
        Reach::To(x) => Some(x.min(end_mm)),
        Reach::Whole => Some(end_mm),
    }
}

fn circle((x, y): (f64, f64), r: f64) -> String {
    format!(
        "M{:.1} {y:.1}a{r:.1} {r:.1} 0 1 0 {d:.1} 0a{r:.1} {r:.1} 0 1 0 -{d:.1} 0Z",
        x - r,
        d = 2.0 * r
    )
}

fn circle_back((x, y): (f64, f64), r: f64) -> String {
    format!(
        "M{:.1} {y:.1}a{r:.1} {r:.1} 0 1 1 {d:.1} 0a{r:.1} {r:.1} 0 1 1 -{d:.1} 0Z",
        x - r,
        d = 2.0 * r
    )
}

/// A circle as an open path, so that it is not drawn as an area.
fn ring_line((x, y): (f64, f64), r: f64) -> String {
    format!(
        "M{:.1} {y:.1}a{r:.1} {r:.1} 0 1 0 {d:.1} 0a{r:.1} {r:.1} 0 1 0 -{d:.1} 0",
        x - r,
        d = 2.0 * r
    )
}

fn cross(x: f64, y: f64) -> [Mark; 1] {
    [Mark::path(
        Ink::Outline,
        format!("M{:.1} {:.1}l8 8m0 -8l-8 8", x - 4.0, y - 4.0),
    )]
}
