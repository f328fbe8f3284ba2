//! The drawing of a piece with its parts.

use leavewell_model::case::{Form, PartName};
use yew::prelude::*;

use super::forms::shapes;
use super::shape::{Shape, Style};

/// What a drawing shows.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct PieceDrawingProps {
    /// Id, unique on the screen.
    #[prop_or(AttrValue::Static("piece-drawing"))]
    pub id: AttrValue,
    /// The form; a plain covered cup when not known.
    pub form: Option<Form>,
    /// The part in question, drawn in full ink; the whole piece when none is.
    #[prop_or_default]
    pub lit: Option<PartName>,
    /// Share of each part where base metal shows, where it is recorded.
    #[prop_or_default]
    pub bleeds: Vec<(PartName, f64)>,
}

/// A piece seen from the side, drawn by part. Copper stripes are as wide, beside the silver between
/// them, as the share of the part where base metal shows.
#[component]
pub fn PieceDrawing(props: &PieceDrawingProps) -> Html {
    let PieceDrawingProps {
        id,
        form,
        lit,
        bleeds,
    } = props;
    let (title_id, desc_id) = (format!("{id}-title"), format!("{id}-desc"));
    let name = form
        .filter(|f| *f != Form::Other)
        .map_or("piece", Form::label)
        .to_lowercase();
    html! {
        <svg
            id={id.clone()}
            class={classes!("piece-drawing", lit.is_some().then_some("has-lit"))}
            viewBox="0 0 400 300"
            role="img"
            aria-labelledby={format!("{title_id} {desc_id}")}
        >
            <title id={title_id}>{ format!("Drawing of a {name} from the side") }</title>
            <desc id={desc_id}>{ description(*lit, bleeds) }</desc>
            <defs>
                for (part, share) in bleeds.iter().filter(|(_, share)| *share > 0.0) {
                    { stripes(id, *part, *share) }
                }
            </defs>
            <g>
                for shape in shapes(*form) {
                    { drawn(id, &shape, *lit, bleeds) }
                }
            </g>
        </svg>
    }
}

/// One shape, and the copper over it where base metal shows.
fn drawn(id: &str, shape: &Shape, lit: Option<PartName>, bleeds: &[(PartName, f64)]) -> Html {
    let is_lit = lit == Some(shape.part);
    let style = match shape.style {
        Style::Area => "drawn-area",
        Style::Detail => "drawn-detail",
        Style::Hidden => "drawn-hidden",
    };
    let is_below = shape.style == Style::Hidden && shape.part == PartName::Base;
    let bled = bleeds
        .iter()
        .any(|(part, share)| *part == shape.part && *share > 0.0);
    // The inside is drawn over the body: its copper shows only when the inside is what is asked about.
    let shows = match shape.style {
        Style::Area => true,
        Style::Detail => false,
        Style::Hidden => is_lit || is_below,
    };
    let copper = if bled && shows {
        format!("url(#{})", pattern_id(id, shape.part))
    } else {
        "none".to_owned()
    };
    html! {
        <g class={classes!(style, is_lit.then_some("is-lit"), is_below.then_some("is-below"))}>
            <path d={shape.path.clone()} />
            <path class="drawn-copper" d={shape.path.clone()} fill={copper} />
        </g>
    }
}

/// The copper stripes of one part.
fn stripes(id: &str, part: PartName, share: f64) -> Html {
    const LEAST: f64 = 1.2;
    // A trace must still be seen: thin stripes stand further apart rather than grow thinner.
    let tile = (LEAST / share).clamp(9.0, 26.0);
    let width = (tile * share).clamp(LEAST, tile - LEAST);
    let tile = format!("{tile:.2}");
    html! {
        <pattern
            id={pattern_id(id, part)}
            patternUnits="userSpaceOnUse"
            width={tile.clone()}
            height={tile.clone()}
            patternTransform="rotate(45)"
        >
            <rect class="copper" x="0" y="0" width={format!("{width:.2}")} height={tile.clone()} />
            <line class="copper-edge" x1={format!("{width:.2}")} y1="0" x2={format!("{width:.2}")} y2={tile} />
        </pattern>
    }
}

fn pattern_id(id: &str, part: PartName) -> String {
    format!("{id}-copper-{}", part.id())
}

fn description(lit: Option<PartName>, bleeds: &[(PartName, f64)]) -> String {
    let lit = lit
        .map(|part| format!("In full ink: {}. ", part.label().to_lowercase()))
        .unwrap_or_default();
    let shown: Vec<String> = bleeds
        .iter()
        .filter(|(_, share)| *share > 0.0)
        .map(|(part, _)| part.label().to_lowercase())
        .collect();
    if shown.is_empty() {
        lit + "No base metal is recorded as showing."
    } else {
        format!(
            "{lit}Striped with copper where base metal shows: {}.",
            shown.join(", ")
        )
    }
}
