//! The frame of every picture: title, description, the drawing, and the same as a table.

use yew::prelude::*;

use super::scale::count;

/// What the frame needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct FigureProps {
    /// Id, unique on the screen.
    pub id: AttrValue,
    /// What the picture shows, as a finding.
    pub title: AttrValue,
    /// How to read it.
    pub desc: AttrValue,
    /// Height of the drawing in pixels.
    pub height: f64,
    /// Heads of the table's columns.
    pub head: Vec<AttrValue>,
    /// Rows of the table; the first cell names the row.
    pub rows: Vec<Vec<String>>,
    /// The drawing.
    pub children: Html,
}

/// A picture with its table twin.
#[component]
pub(super) fn Figure(props: &FigureProps) -> Html {
    let FigureProps {
        id,
        title,
        desc,
        height,
        head,
        rows,
        children,
    } = props;
    let (title_id, desc_id) = (format!("{id}-title"), format!("{id}-desc"));
    html! {
        <figure class="chart">
            <figcaption>{ title.clone() }</figcaption>
            <svg
                class="chart-drawing"
                width="100%"
                height={format!("{height:.0}")}
                role="img"
                aria-labelledby={format!("{title_id} {desc_id}")}
            >
                <title id={title_id}>{ title.clone() }</title>
                <desc id={desc_id}>{ desc.clone() }</desc>
                { children.clone() }
            </svg>
            <details class="chart-table">
                <summary>{ "The same as a table" }</summary>
                <div class="table-scroll" role="region" aria-label={format!("Table: {title}")} tabindex="0">
                    <table>
                        <caption>{ desc.clone() }</caption>
                        <thead>
                            <tr>
                                for cell in head.iter() {
                                    <th scope="col">{ cell.clone() }</th>
                                }
                            </tr>
                        </thead>
                        <tbody>
                            for row in rows.iter() {
                                <tr>
                                    for (i, cell) in row.iter().enumerate() {
                                        if i == 0 {
                                            <th scope="row">{ cell.clone() }</th>
                                        } else {
                                            <td>{ cell.clone() }</td>
                                        }
                                    }
                                </tr>
                            }
                        </tbody>
                    </table>
                </div>
            </details>
        </figure>
    }
}

/// Words in a picture, one line under another from `y`.
pub(super) fn words(
    lines: &[String],
    x: &str,
    y: f64,
    class: &'static str,
    anchor: &'static str,
) -> Html {
    html! {
        <text class={class} text-anchor={anchor}>
            for (i, line) in lines.iter().enumerate() {
                <tspan x={x.to_owned()} y={format!("{:.1}", y + LINE * count(i))}>{ line.clone() }</tspan>
            }
        </text>
    }
}

/// Height of a line of words in a picture.
pub(super) const LINE: f64 = 17.0;
