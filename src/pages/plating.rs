//! Plating arithmetic for a talk with a plater: how much surface, how much silver, how small a share of the
//! bill that is, and what is polished away first. It gives no bath and no procedure.

use super::ask::{NumberField, choice, first, number};
use super::bench_inputs::Bench;
use super::block::{Block, Table, Tone};
use super::caution_blocks;
use super::number_text::{figures, range};
use super::plating_picture::{Solid, picture};
use super::sources_fold::sources_fold;
use super::wording::plating as words;
use leavewell_model::bench::{box_cm2, coat_g, oval_cm2, turned_cm2};
use leavewell_model::ledger::FigureId;
use leavewell_model::terms::Treatment;
use leavewell_model::terms::{Currency, Form};

/// Builds the section.
pub(super) fn section(bench: &Bench<'_>) -> Block {
    let (mut fields, surfaces, solid) = surfaces(bench);
    let (money_fields, money) = money(bench);
    fields.extend(money_fields);
    let mut blocks = Vec::new();
    if let (Some(surfaces), Some(money)) = (surfaces, money) {
        let sums = Sums::new(bench, &surfaces, &money);
        blocks.push(Block::said(Tone::Answer, sums.sentence(&money)));
        blocks.push(Block::para(sums.loss(bench)));
        blocks.extend(fields);
        if let Some(solid) = solid {
            blocks.push(Block::Picture(picture(&solid, surfaces.table())));
        }
        blocks.push(Block::Table(sums.table(&money)));
    } else {
        blocks.push(Block::said(Tone::Answer, words::NO_SIZES));
        blocks.extend(fields);
    }
    blocks.push(Block::said(Tone::Quiet, words::NO_PROCEDURE));
    blocks.extend(caution_blocks::of_treatment(Treatment::Replate));
    blocks.extend(caution_blocks::named("caution.cyanide"));
    blocks.push(sources_fold(
        "bench.plating.sources",
        bench.ledger,
        &[
            FigureId::METAL_SILVER_DENSITY,
            FigureId::SILVER_T0_NEW_PLATE,
            FigureId::SILVER_LOSS_BUFF_HARD_UM,
            FigureId::PLATING_POLISH_SHARE,
            FigureId::PLATING_SILVER_PRICE,
            FigureId::COST_T14A,
        ],
    ));
    Block::section("bench.plating", words::NEW_COAT, blocks)
}

/// One surface: its name, its formula and its area in cm2.
struct Surface {
    what: &'static str,
    formula: &'static str,
    cm2: f64,
}

struct Surfaces {
    list: Vec<Surface>,
    extra: f64,
}

impl Surfaces {
    fn total_cm2(&self) -> f64 {
        self.list.iter().map(|s| s.cm2).sum::<f64>() * (1.0 + self.extra)
    }

    fn table(&self) -> Table {
        let mut rows: Vec<Vec<String>> = self
            .list
            .iter()
            .map(|s| {
                vec![
                    s.what.to_owned(),
                    s.formula.to_owned(),
                    format!("{} cm²", figures(s.cm2)),
                ]
            })
            .collect();
        if self.extra > 0.0 {
            rows.push(vec![
                words::EXTRAS.to_owned(),
                words::SHARE_OF_THE_REST.to_owned(),
                format!("{} %", figures(100.0 * self.extra)),
            ]);
        }
        rows.push(vec![
            words::ALL.to_owned(),
            String::new(),
            format!("{} cm²", figures(self.total_cm2())),
        ]);
        Table {
            caption: words::SURFACE_CAPTION.to_owned(),
            columns: words::SURFACE_COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }
    }
}

const SLANT: &str = words::WALL_FORMULA;

fn surfaces(bench: &Bench<'_>) -> (Vec<Block>, Option<Surfaces>, Option<Solid>) {
    let guess = match bench.case.piece.form {
        Some(Form::Tray | Form::Basket) => "flat",
        Some(Form::Box) => "box",
        _ => "turned",
    };
    let (shape_field, shape) = choice(
        bench.draft,
        "bench.plating.shape",
        words::SHAPE,
        words::SHAPE_HINT,
        &first(
            vec![
                ("turned", words::TURNED),
                ("flat", words::FLAT),
                ("box", words::BOX),
            ],
            guess,
        ),
    );
    let (sides_field, sides) = choice(
        bench.draft,
        "bench.plating.sides",
        words::SIDES,
        "",
        &[("outside", words::OUTSIDE), ("both", words::BOTH_SIDES)],
    );
    let (extra_field, extra) = number(
        bench.draft,
        NumberField {
            path: "bench.plating.extra_pct",
            label: words::EXTRAS_FIELD,
            unit: "%",
            hint: words::EXTRAS_HINT,
            stand_in: Some(0.0),
        },
    );
    let faces = if sides == "both" { 2.0 } else { 1.0 };
    let (sizes, list, solid) = match shape {
        "flat" => flat(bench, faces),
        "box" => boxed(bench, faces),
        _ => turned(bench, faces),
    };
    let fields = vec![
        Block::Row {
            blocks: vec![shape_field, sides_field],
        },
        Block::Row { blocks: sizes },
        Block::Row {
            blocks: vec![extra_field],
        },
    ];
    let surfaces = list.zip(extra).map(|(list, extra)| Surfaces {
        list,
        extra: extra / 100.0,
    });
    (fields, surfaces, solid)
}

type Measured = (Vec<Block>, Option<Vec<Surface>>, Option<Solid>);

fn size(bench: &Bench<'_>, path: &str, label: &str, stand_in: Option<f64>) -> (Block, Option<f64>) {
    number(
        bench.draft,
        NumberField {
            path,
            label,
            unit: "mm",
            hint: if stand_in.is_some() {
                words::FROM_THE_PIECE
            } else {
                ""
            },
            stand_in,
        },
    )
}

fn height(bench: &Bench<'_>) -> (Block, Option<f64>) {
    let recorded = bench.case.piece.height_mm;
    size(bench, "bench.plating.height_mm", words::HEIGHT, recorded)
}

fn length_and_width(bench: &Bench<'_>) -> (Vec<Block>, Option<(f64, f64)>) {
    let piece = &bench.case.piece;
    let (length_field, length) = size(
        bench,
        "bench.plating.length_mm",
        words::LENGTH,
        piece.length_mm,
    );
    let (width_field, width) = size(
        bench,
        "bench.plating.width_mm",
        words::WIDTH,
        piece.width_mm,
    );
    (vec![length_field, width_field], length.zip(width))
}

fn flat(bench: &Bench<'_>, faces: f64) -> Measured {
    let (fields, sizes) = length_and_width(bench);
    let list = sizes.map(|(l, w)| {
        vec![Surface {
            what: words::TRAY,
            formula: words::TRAY_FORMULA,
            cm2: faces * oval_cm2(l, w),
        }]
    });
    (fields, list, sizes.map(|(l, w)| Solid::Oval(l, w)))
}

fn boxed(bench: &Bench<'_>, faces: f64) -> Measured {
    let (mut fields, sizes) = length_and_width(bench);
    let (height_field, high) = height(bench);
    fields.push(height_field);
    let all = sizes.zip(high);
    let list = all.map(|((l, w), h)| {
        vec![Surface {
            what: words::BOX_SURFACE,
            formula: words::BOX_FORMULA,
            cm2: faces * box_cm2(l, w, h),
        }]
    });
    (fields, list, all.map(|((l, w), h)| Solid::Box(l, w, h)))
}

/// The surface of two frusta on a round bottom: from the foot to the widest place half-way up, and on to
/// the top.
fn turned(bench: &Bench<'_>, faces: f64) -> Measured {
    let (height_field, high) = height(bench);
    let (top_field, top) = size(bench, "bench.plating.top_mm", words::TOP, None);
    let (wide_field, wide) = size(bench, "bench.plating.widest_mm", words::WIDEST, None);
    let (foot_field, foot) = size(bench, "bench.plating.foot_mm", words::FOOT, None);
    let profile = high
        .zip(top)
        .zip(wide.zip(foot))
        .map(|((h, t), (w, f))| [(f / 2.0, 0.0), (w / 2.0, h / 2.0), (t / 2.0, h)]);
    let list = profile.map(|p| {
        vec![
            Surface {
                what: words::WALL,
                formula: SLANT,
                cm2: faces * turned_cm2(&p),
            },
            Surface {
                what: words::BOTTOM,
                formula: words::BOTTOM_FORMULA,
                cm2: faces * oval_cm2(2.0 * p[0].0, 2.0 * p[0].0),
            },
        ]
    });
    (
        vec![height_field, top_field, wide_field, foot_field],
        list,
        profile.map(Solid::Turned),
    )
}

struct Money {
    thickness_um: f64,
    price_per_g: f64,
    own_price: bool,
    bill: f64,
    own_bill: bool,
    unit: &'static str,
}

fn money(bench: &Bench<'_>) -> (Vec<Block>, Option<Money>) {
    let ledger = bench.ledger;
    let unit = bench.case.market.currency.unwrap_or(Currency::Other).sign();
    let plain = |path: &'static str,
                 label: &'static str,
                 unit: &'static str,
                 hint: &'static str,
                 stand_in: Option<f64>| {
        number(
            bench.draft,
            NumberField {
                path,
                label,
                unit,
                hint,
                stand_in,
            },
        )
    };
    let (thick_field, thickness) = plain(
        "bench.plating.thickness_um",
        words::THICKNESS,
        "µm",
        words::THICKNESS_HINT,
        Some(ledger.value(FigureId::SILVER_T0_NEW_PLATE)),
    );
    let (price_field, price) = plain(
        "bench.plating.price_per_g",
        words::SILVER_PRICE,
        unit,
        words::SILVER_PRICE_HINT,
        Some(ledger.value(FigureId::PLATING_SILVER_PRICE)),
    );
    let quote = bench.case.quote(Treatment::Replate).map(|q| q.likely);
    let large = bench.case.piece.form.is_some_and(Form::large);
    let factor = if large {
        ledger.value(FigureId::COST_LARGE_FACTOR)
    } else {
        1.0
    };
    let (bill_field, bill) = plain(
        "bench.plating.bill",
        words::BILL,
        unit,
        if quote.is_some() {
            words::BILL_QUOTED
        } else {
            words::BILL_GUESSED
        },
        Some(quote.unwrap_or_else(|| factor * ledger.value(FigureId::COST_T14A))),
    );
    let fields = vec![Block::Row {
        blocks: vec![thick_field, price_field, bill_field],
    }];
    let money = (|| {
        Some(Money {
            thickness_um: thickness?,
            price_per_g: price?,
            own_price: !bench
                .draft
                .text("bench.plating.price_per_g")
                .trim()
                .is_empty(),
            bill: bill?,
            own_bill: quote.is_some() || !bench.draft.text("bench.plating.bill").trim().is_empty(),
            unit,
        })
    })();
    (fields, money)
}

struct Sums {
    area_cm2: f64,
    mass_g: f64,
    worth: f64,
    old_g: (f64, f64),
}

impl Sums {
    fn new(bench: &Bench<'_>, surfaces: &Surfaces, money: &Money) -> Self {
        let density = bench.ledger.value(FigureId::METAL_SILVER_DENSITY);
        let area_cm2 = surfaces.total_cm2();
        let mass_g = coat_g(money.thickness_um, density, area_cm2);
        let buff = bench.ledger.figure(FigureId::SILVER_LOSS_BUFF_HARD_UM);
        Self {
            area_cm2,
            mass_g,
            worth: mass_g * money.price_per_g,
            old_g: (
                coat_g(buff.low, density, area_cm2),
                coat_g(buff.high, density, area_cm2),
            ),
        }
    }

    fn sentence(&self, money: &Money) -> String {
        let part = if money.bill > 0.0 {
            let share = 100.0 * self.worth / money.bill;
            if share > 100.0 {
                words::MORE_THAN_THE_PRICE.to_owned()
            } else {
                words::share_of_price(&if share < 1.0 {
                    words::ONE_OR_LESS.to_owned()
                } else {
                    format!("{share:.0}")
                })
            }
        } else {
            String::new()
        };
        words::answer(
            &figures(money.thickness_um),
            &figures(self.area_cm2),
            &figures(self.mass_g),
            money.unit,
            &figures(self.worth),
            &part,
            if money.own_price && money.own_bill {
                ""
            } else {
                words::STAND_INS
            },
        )
    }

    /// What is polished away before any silver goes on.
    fn loss(&self, bench: &Bench<'_>) -> String {
        let buff = bench.ledger.figure(FigureId::SILVER_LOSS_BUFF_HARD_UM);
        words::real_loss(
            100.0 * bench.ledger.value(FigureId::PLATING_POLISH_SHARE),
            &range(&figures(buff.low), &figures(buff.high)),
            &range(&figures(self.old_g.0), &figures(self.old_g.1)),
        )
    }

    fn table(&self, money: &Money) -> Table {
        let row =
            |what: &str, how: &str, value: String| vec![what.to_owned(), how.to_owned(), value];
        let rows = vec![
            row(
                words::SILVER,
                words::SILVER_FORMULA,
                format!("{} g", figures(self.mass_g)),
            ),
            row(
                words::WORTH,
                if money.own_price {
                    words::TIMES_YOUR_PRICE
                } else {
                    words::TIMES_A_STAND_IN
                },
                format!("{}{}", money.unit, figures(self.worth)),
            ),
        ];
        Table {
            caption: words::SUMS.to_owned(),
            columns: words::SUMS_COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }
    }
}
