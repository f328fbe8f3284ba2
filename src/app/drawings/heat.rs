//! The drawing of a piece with bands that show how far heat travels from a joint.

use leavewell_model::terms::{Form, PartName};
use yew::prelude::*;

use super::forms::{joint, shapes};
use super::heat_labels::{HEIGHT, Label, WIDTH, labels};
use super::outline::{Point, Silhouette};
use super::piece::drawn;
use super::shape::{PaintedShape, Style, number};
use crate::app::parts::element::{El, el};
use crate::app::parts::words::joined;
use crate::app::wording::drawings as text;

/// Height below the piece, for the scale and for temperatures that reach the whole piece.
const BELOW: f64 = 44.0;
/// The greatest drawn length of the scale.
const LONGEST_SCALE: f64 = 110.0;
/// Lengths of scale to choose from, mm.
const SCALES: [f64; 11] = [
    0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0,
];
/// The smallest drawn radius of the joint's mark.
const LEAST_MARK: f64 = 3.0;

/// The style of each band, coolest first: opacity of the tint, spacing and angle of the hatching, dashes of
/// the ring. The tint grows with the temperature, so the bands differ in grey print; hatching and dashes
/// differ without any tint.
const STYLES: [(&str, &str, &str, &str); 8] = [
    (".07", "14", "45", "2 5"),
    (".13", "12", "135", "6 4"),
    (".2", "10", "90", "12 4"),
    (".27", "9", "0", "12 3 2 3"),
    (".34", "8", "45", "4 2"),
    (".41", "7", "135", "18 3 2 3 2 3"),
    (".48", "6", "90", "9 2"),
    (".55", "5", "0", ""),
];

/// The data of the drawing.
#[derive(Clone, Debug, Default)]
pub struct HeatDrawing {
    /// The prefix of its element ids.
    pub id: String,
    /// The title: a sentence that says what the drawing shows.
    pub title: String,
    /// The description for screen readers.
    pub description: String,
    /// The form of the piece, if known.
    pub form: Option<Form>,
    /// The part with the joint.
    pub part: Option<PartName>,
    /// The size of the piece in mm: its height, or the length of a tray.
    pub size_mm: f64,
    /// Whether the size is assumed and not measured.
    pub assumed: bool,
    /// Radius of the heated spot, mm.
    pub hot_mm: f64,
    /// For each band, coolest first: the temperature, the reach in words, and the greatest reach in mm from
    /// the edge of the heated spot (`None` for the whole piece).
    pub zones: Vec<(String, String, Option<f64>)>,
}

/// A band of the drawing: its style, its ring if that lies on the piece, and its label.
struct HeatBand<'a> {
    style: usize,
    /// `None` if the whole piece lies inside it.
    radius: Option<f64>,
    at: &'a str,
    reach: &'a str,
}

/// The bands and the piece, in drawing units.
struct Overlay<'a> {
    shapes: Vec<PaintedShape>,
    piece: Silhouette,
    joint: Point,
    per_mm: f64,
    hot: f64,
    /// A radius beyond the whole piece.
    beyond: f64,
    bands: Vec<HeatBand<'a>>,
}

impl HeatDrawing {
    fn overlay(&self) -> Overlay<'_> {
        let shapes = shapes(self.form);
        let piece = Silhouette::of(shapes.iter().filter(|s| s.style == Style::Area));
        let joint = joint(self.form, self.part.unwrap_or(PartName::Body));
        let [left, top, right, bottom] = piece.bounds();
        let drawn = if self.form == Some(Form::Tray) {
            right - left
        } else {
            bottom - top
        };
        // The record rejects invalid sizes. This check keeps every number finite all the same.
        let size = if self.size_mm > 0.0 {
            self.size_mm
        } else {
            drawn
        };
        let per_mm = drawn / size;
        let farthest = piece.farthest(joint);
        let beyond = farthest + 10.0;
        let hot = self.hot_mm.max(0.0);
        let bands = self.zones.iter().zip(0..STYLES.len());
        let bands = bands.filter(|((_, _, most), _)| *most != Some(0.0));
        let bands = bands.map(|((at, reach, most), style)| HeatBand {
            style,
            radius: most
                .map(|mm| (hot + mm) * per_mm)
                .filter(|radius| *radius < farthest),
            at,
            reach,
        });
        Overlay {
            bands: bands.collect(),
            shapes,
            piece,
            joint,
            per_mm,
            hot: (hot * per_mm).clamp(LEAST_MARK, beyond),
            beyond,
        }
    }

    /// The drawing.
    pub fn html(&self) -> Html {
        let overlay = self.overlay();
        let id = |end: &str| joined(&[&self.id, end]);
        let view = joined(&["0 0 ", &number(WIDTH), " ", &number(HEIGHT + BELOW)]);
        let clip = el("clipPath", "").set("id", id("-clip"));
        let areas = overlay.shapes.iter().filter(|s| s.style == Style::Area);
        let clip = clip.each(areas, |shape| el("path", "").set("d", shape.path.clone()));
        let defs = el("defs", "")
            .el(clip)
            .each(&overlay.bands, |band| pattern(band.style, &id("-band")));
        let selected = self.part.unwrap_or(PartName::Body);
        let shapes = overlay.shapes.iter().cloned();
        let words: Vec<String> = overlay.rings().map(|(_, words)| words).collect();
        let rings: Vec<(f64, usize)> = overlay
            .rings()
            .map(|(radius, words)| (radius, words.chars().count()))
            .collect();
        let places = labels(&overlay.piece, overlay.joint, &rings);
        let lines = places.into_iter().zip(words);
        el("svg", "piece-drawing has-lit heat-piece")
            .set("viewBox", view)
            .attr("role", "img")
            .set("aria-labelledby", id("-title") + " " + &id("-desc"))
            .el(el("title", "")
                .set("id", id("-title"))
                .words(self.title.clone()))
            .el(el("desc", "")
                .set("id", id("-desc"))
                .words(self.description.clone()))
            .el(defs)
            .el(el("g", "").each(shapes, |shape| drawn(shape, selected, &[])))
            .el(el("g", "")
                .set("clip-path", joined(&["url(#", &id("-clip"), ")"]))
                .each(overlay.areas(), |(style, path)| {
                    el("path", "heat-band")
                        .set("d", path)
                        .attr("fill-rule", "evenodd")
                        .set(
                            "fill",
                            joined(&["url(#", &band_id(style, &id("-band")), ")"]),
                        )
                })
                .each(&overlay.bands, |band| match band.radius {
                    Some(radius) => circle("heat-ring", overlay.joint, radius)
                        .attr("stroke-dasharray", STYLES[band.style].3),
                    None => el("g", ""),
                }))
            .el(circle("heat-joint", overlay.joint, overlay.hot))
            .el(el("g", "").each(lines, |(place, words)| match place {
                Some(place) => spoken(&place, words),
                None => el("g", ""),
            }))
            .el(self.scale(overlay.per_mm))
            .el(said(
                "",
                (8.0, HEIGHT + BELOW - 6.0),
                "start",
                overlay.all_over(),
            ))
            .html()
    }

    /// The scale bar, with a note if the size of the piece is assumed.
    fn scale(&self, per_mm: f64) -> El {
        let fits = SCALES.iter().rev().find(|mm| *mm * per_mm <= LONGEST_SCALE);
        let mm = fits.copied().unwrap_or(SCALES[0]);
        let (left, right) = (8.0, 8.0 + (mm * per_mm).min(WIDTH / 2.0));
        let y = HEIGHT + 10.0;
        let path = joined(&[
            "M",
            &[left, y - 4.0].map(number).join(" "),
            "V",
            &number(y + 4.0),
            "M",
            &[left, y].map(number).join(" "),
            "H",
            &number(right),
            "M",
            &[right, y - 4.0].map(number).join(" "),
            "V",
            &number(y + 4.0),
        ]);
        let words = [&mm.to_string(), " mm"].concat();
        let words = if self.assumed {
            words + text::SIZE_ASSUMED
        } else {
            words
        };
        el("g", "")
            .el(el("path", "heat-line").set("d", path))
            .el(said("", (right + 6.0, y + 4.5), "start", words))
    }
}

impl Overlay<'_> {
    /// The rings on the piece with their labels, smallest first.
    fn rings(&self) -> impl Iterator<Item = (f64, String)> {
        self.bands.iter().rev().filter_map(|band| {
            band.radius
                .map(|radius| (radius, joined(&[band.at, ": ", band.reach])))
        })
    }

    /// The areas between the rings as style and path, hottest first.
    fn areas(&self) -> Vec<(usize, String)> {
        let mut inner = 0.0;
        let mut areas = Vec::new();
        for band in self.bands.iter().rev() {
            let outer = band.radius.unwrap_or(self.beyond);
            if outer > inner {
                let path = round(self.joint, outer) + &round(self.joint, inner);
                areas.push((band.style, path));
                inner = outer;
            }
        }
        areas
    }

    /// The temperatures that may reach the whole piece, in words; empty if there are none.
    fn all_over(&self) -> String {
        let all = self.bands.iter().filter(|band| band.radius.is_none());
        let all: Vec<&str> = all.map(|band| band.at).collect();
        if all.is_empty() {
            String::new()
        } else {
            text::all_over(&all.join(", "))
        }
    }
}

fn round((x, y): Point, radius: f64) -> String {
    if radius <= 0.0 {
        return String::new();
    }
    let (r, across) = (number(radius), number(2.0 * radius));
    joined(&[
        "M",
        &number(x - radius),
        " ",
        &number(y),
        "a",
        &r,
        " ",
        &r,
        " 0 1 0 ",
        &across,
        " 0a",
        &r,
        " ",
        &r,
        " 0 1 0 -",
        &across,
        " 0Z",
    ])
}

fn circle(class: &'static str, (x, y): Point, radius: f64) -> El {
    el("circle", class)
        .set("cx", number(x))
        .set("cy", number(y))
        .set("r", number(radius))
}

fn said(class: &'static str, (x, y): Point, anchor: &'static str, words: String) -> El {
    el("text", class)
        .set("x", number(x))
        .set("y", number(y))
        .attr("text-anchor", anchor)
        .words(words)
}

/// A label with a line to its ring.
fn spoken(place: &Label, words: String) -> El {
    let (from, to) = (place.from, place.to);
    let anchor = if place.before { "end" } else { "start" };
    el("g", "")
        .el(el("path", "heat-line").set(
            "d",
            joined(&[
                "M",
                &[from.0, from.1].map(number).join(" "),
                "L",
                &[to.0, to.1].map(number).join(" "),
            ]),
        ))
        .el(circle("heat-dot", from, 1.8))
        .el(said("", place.words_at(), anchor, words))
}

fn band_id(style: usize, begin: &str) -> String {
    joined(&[begin, &style.to_string()])
}

/// The tint and the hatching of a band.
fn pattern(style: usize, begin: &str) -> El {
    let (tint, tile, lean, _) = STYLES[style];
    let square = |class| el("rect", class).attr("width", tile).attr("height", tile);
    el("pattern", "")
        .set("id", band_id(style, begin))
        .attr("patternUnits", "userSpaceOnUse")
        .attr("width", tile)
        .attr("height", tile)
        .set("patternTransform", joined(&["rotate(", lean, ")"]))
        .el(square("heat-tint").attr("fill-opacity", tint))
        .el(el("rect", "heat-hatch")
            .attr("width", "1")
            .attr("height", tile))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawing(size_mm: f64, zones: &[Option<f64>]) -> HeatDrawing {
        let zones = zones.iter().enumerate().map(|(i, most)| {
            let reach = most.map_or("all of it".to_owned(), |mm| {
                [&mm.to_string(), " mm"].concat()
            });
            ([&(96 + i).to_string(), " °C"].concat(), reach, *most)
        });
        HeatDrawing {
            form: Some(Form::Teapot),
            part: Some(PartName::Spout),
            size_mm,
            hot_mm: 5.0,
            zones: zones.collect(),
            ..HeatDrawing::default()
        }
    }

    /// The drawn teapot spans 62 to 260 vertically: 198 units.
    #[test]
    fn a_piece_is_drawn_to_scale() {
        let drawing = drawing(99.0, &[Some(30.0), Some(10.0)]);
        let overlay = drawing.overlay();
        assert!((overlay.per_mm - 2.0).abs() < 0.01, "{}", overlay.per_mm);
        assert!((overlay.hot - 10.0).abs() < 0.1);
        let radii: Vec<f64> = overlay.bands.iter().filter_map(|b| b.radius).collect();
        assert!((radii[0] - 70.0).abs() < 0.5 && (radii[1] - 30.0).abs() < 0.2);
        assert_eq!(overlay.rings().next().unwrap().1, "97 °C: 10 mm");
        assert_eq!(overlay.areas().len(), 2);
        assert_eq!(overlay.all_over(), "");
    }

    #[test]
    fn a_band_of_zero_reach_is_dropped_and_one_beyond_the_piece_covers_it() {
        let drawing = drawing(99.0, &[None, Some(900.0), Some(10.0), Some(0.0)]);
        let overlay = drawing.overlay();
        assert_eq!(overlay.bands.len(), 3);
        assert_eq!(overlay.all_over(), "All of it may reach 96 °C, 97 °C");
        assert_eq!(overlay.rings().count(), 1);
        // The hotter of the two covers the cooler.
        let styles: Vec<usize> = overlay.areas().iter().map(|(style, _)| *style).collect();
        assert_eq!(styles, [2, 1]);
    }

    #[test]
    fn a_ring_is_drawn_only_up_to_the_far_end_of_the_piece() {
        let far = drawing(198.0, &[]).overlay().piece.farthest((115.0, 192.0));
        for (more, ringed) in [(-1.0, true), (1.0, false)] {
            let drawing = drawing(198.0, &[Some(far - 5.0 + more)]);
            let overlay = drawing.overlay();
            assert!((overlay.per_mm - 1.0).abs() < 0.001);
            assert_eq!(overlay.bands[0].radius.is_some(), ringed);
        }
    }

    #[test]
    fn absurd_sizes_give_finite_coordinates() {
        for size in [0.0, -3.0, f64::NAN, 1.0, 1e-9, 3000.0, 1e9, f64::INFINITY] {
            for reach in [Some(0.4), Some(1e9), None] {
                let drawing = drawing(size, &[reach, reach]);
                let overlay = drawing.overlay();
                let mut numbers = vec![overlay.per_mm, overlay.hot, overlay.beyond];
                numbers.extend(overlay.bands.iter().filter_map(|b| b.radius));
                assert!(numbers.iter().all(|n| n.is_finite()), "{size} {numbers:?}");
                assert!(overlay.hot >= LEAST_MARK && overlay.hot <= overlay.beyond);
                for (_, path) in overlay.areas() {
                    assert!(!path.contains("NaN") && !path.contains("inf"), "{path}");
                }
            }
        }
    }
}
