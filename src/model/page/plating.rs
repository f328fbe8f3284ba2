//! Plating arithmetic, for talking to a plater: how much surface, how much silver, how small a part
//! of the bill that is, and what is polished away first. No bath and no procedure.

use super::ask::{Question, choice, number};
use super::bench::Bench;
use super::block::{Block, Table, Tone};
use super::caution_blocks;
use super::heat::first;
use super::plating_picture::{Solid, picture};
use super::say::{figures, range};
use super::sources_fold::sources_fold;
use crate::bench::{box_cm2, charge_ah, coat_g, oval_cm2, plating_minutes, turned_cm2};
use crate::case::{Currency, Form};
use crate::treatment::Treatment;

/// The instrument.
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
        blocks.push(Block::said(
            Tone::Answer,
            "Give the sizes of the piece, and this says how much silver a coat would be.",
        ));
        blocks.extend(fields);
    }
    blocks.push(Block::said(
        Tone::Quiet,
        "Sums for a conversation with a plater, not a procedure: a coat is never even, and lies thinnest in hollows \
         and thickest on edges.",
    ));
    blocks.extend(caution_blocks::of_treatment(Treatment::Replate));
    blocks.extend(caution_blocks::named("caution.cyanide"));
    blocks.push(sources_fold(
        "bench.plating.sources",
        &bench.ledger,
        &[
            "metal.silver.density",
            "metal.silver.molar",
            "metal.faraday",
            "plating.valence",
            "silver.t0.new_plate",
            "silver.loss.buff_hard.um",
            "plating.polish_share",
            "plating.silver_price",
            "cost.T14a",
        ],
    ));
    Block::section("bench.plating", "Silver in a new coat", blocks)
}

/// One surface: what it is, how it was worked out, its area in cm2.
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
                "Handles, spout, borders".to_owned(),
                "as a share of the rest".to_owned(),
                format!("{} %", figures(100.0 * self.extra)),
            ]);
        }
        rows.push(vec![
            "All together".to_owned(),
            String::new(),
            format!("{} cm²", figures(self.total_cm2())),
        ]);
        Table {
            caption: "Surface to be covered".to_owned(),
            columns: ["Surface", "Worked out as", "Area"]
                .map(str::to_owned)
                .to_vec(),
            rows,
        }
    }
}

const SLANT: &str = "π (r + R) × slant, for each frustum";

fn surfaces(bench: &Bench<'_>) -> (Vec<Block>, Option<Surfaces>, Option<Solid>) {
    let guess = match bench.case.piece.form {
        Some(Form::Tray | Form::Basket) => "flat",
        Some(Form::Box) => "box",
        _ => "turned",
    };
    let (shape_field, shape) = choice(
        bench.draft,
        "bench.plating.shape",
        "Shape",
        "The one that stands in comes from the form of the piece.",
        &first(
            vec![
                ("turned", "Round: a pot, cup or candlestick"),
                ("flat", "Flat, round or oval: a tray or dish"),
                ("box", "A box"),
            ],
            guess,
        ),
    );
    let (sides_field, sides) = choice(
        bench.draft,
        "bench.plating.sides",
        "Which sides",
        "",
        &[
            ("outside", "Outside or upper side only"),
            ("both", "Both sides"),
        ],
    );
    let (extra_field, extra) = number(
        bench.draft,
        Question {
            path: "bench.plating.extra_pct",
            label: "Handles, spout and borders, beyond that",
            unit: "%",
            hint: "As a share of the rest.",
            range: (0.0, 300.0),
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
        Question {
            path,
            label,
            unit: "mm",
            hint: if stand_in.is_some() {
                "Stands in from the piece."
            } else {
                ""
            },
            range: (1.0, 2000.0),
            stand_in,
        },
    )
}

fn height(bench: &Bench<'_>) -> (Block, Option<f64>) {
    let recorded = bench
        .case
        .piece
        .height_mm
        .filter(|h| (1.0..=2000.0).contains(h));
    size(bench, "bench.plating.height_mm", "Height", recorded)
}

fn length_and_width(bench: &Bench<'_>) -> (Vec<Block>, Option<(f64, f64)>) {
    let (length_field, length) = size(bench, "bench.plating.length_mm", "Length", None);
    let (width_field, width) = size(bench, "bench.plating.width_mm", "Width", None);
    (vec![length_field, width_field], length.zip(width))
}

fn flat(bench: &Bench<'_>, faces: f64) -> Measured {
    let (fields, sizes) = length_and_width(bench);
    let list = sizes.map(|(l, w)| {
        vec![Surface {
            what: "Tray or dish",
            formula: "π × half the length × half the width",
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
            what: "Box",
            formula: "2 × (length × width + length × height + width × height)",
            cm2: faces * box_cm2(l, w, h),
        }]
    });
    (fields, list, all.map(|((l, w), h)| Solid::Box(l, w, h)))
}

/// Two frusta, from the foot to the widest place half-way up and on to the top, on a round bottom.
fn turned(bench: &Bench<'_>, faces: f64) -> Measured {
    let (height_field, high) = height(bench);
    let (top_field, top) = size(bench, "bench.plating.top_mm", "Across at the top", None);
    let (wide_field, wide) = size(
        bench,
        "bench.plating.widest_mm",
        "Across at the widest",
        None,
    );
    let (foot_field, foot) = size(bench, "bench.plating.foot_mm", "Across at the foot", None);
    let profile = high
        .zip(top)
        .zip(wide.zip(foot))
        .map(|((h, t), (w, f))| [(f / 2.0, 0.0), (w / 2.0, h / 2.0), (t / 2.0, h)]);
    let list = profile.map(|p| {
        vec![
            Surface {
                what: "Wall",
                formula: SLANT,
                cm2: faces * turned_cm2(&p),
            },
            Surface {
                what: "Bottom",
                formula: "π × half the foot, squared",
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
    milliampere: Option<f64>,
    unit: &'static str,
}

fn money(bench: &Bench<'_>) -> (Vec<Block>, Option<Money>) {
    let ledger = &bench.ledger;
    let unit = match bench.case.market.currency {
        Some(Currency::Pound) => "£",
        Some(Currency::Euro) => "€",
        Some(Currency::Dollar) => "$",
        Some(Currency::Other) | None => "",
    };
    let plain = |path: &'static str,
                 label: &'static str,
                 unit: &'static str,
                 hint: &'static str,
                 range: (f64, f64),
                 stand_in: Option<f64>| {
        number(
            bench.draft,
            Question {
                path,
                label,
                unit,
                hint,
                range,
                stand_in,
            },
        )
    };
    let (thick_field, thickness) = plain(
        "bench.plating.thickness_um",
        "Thickness of the new coat",
        "µm",
        "Ask the plater for it; this stands in.",
        (0.1, 500.0),
        Some(ledger.value("silver.t0.new_plate")),
    );
    let (price_field, price) = plain(
        "bench.plating.price_per_g",
        "Price of a gram of fine silver",
        unit,
        "It moves daily and this program looks nothing up: put in today's. What stands there is only a stand-in.",
        (0.001, 1000.0),
        Some(ledger.value("plating.silver_price")),
    );
    let quote = bench.case.quote(Treatment::Replate).map(|q| q.likely);
    let large = bench.case.piece.form.is_some_and(Form::large);
    let factor = if large {
        ledger.value("cost.large_factor")
    } else {
        1.0
    };
    let (bill_field, bill) = plain(
        "bench.plating.bill",
        "The plater's price for the whole job",
        unit,
        if quote.is_some() {
            "Your quote stands in."
        } else {
            "A wide guess stands in: no price list is known to us."
        },
        (0.0, 1_000_000.0),
        Some(quote.unwrap_or_else(|| factor * ledger.value("cost.T14a"))),
    );
    let (current_field, milliampere) = plain(
        "bench.plating.current",
        "Current for each cm², if the plater names it",
        "mA",
        "Only to turn the charge into a time.",
        (0.01, 1000.0),
        None,
    );
    let current_given = !bench.draft.text("bench.plating.current").trim().is_empty();
    let fields = vec![
        Block::Row {
            blocks: vec![thick_field, current_field],
        },
        Block::Row {
            blocks: vec![price_field, bill_field],
        },
    ];
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
            milliampere: milliampere.filter(|_| current_given),
            unit,
        })
    })();
    (fields, money)
}

struct Sums {
    area_cm2: f64,
    mass_g: f64,
    worth: f64,
    charge_ah: f64,
    minutes: Option<f64>,
    old_g: (f64, f64),
}

impl Sums {
    fn new(bench: &Bench<'_>, surfaces: &Surfaces, money: &Money) -> Self {
        let v = |id: &str| bench.ledger.value(id);
        let density = v("metal.silver.density");
        let area_cm2 = surfaces.total_cm2();
        let mass_g = coat_g(money.thickness_um, density, area_cm2);
        let charge_ah = charge_ah(
            mass_g,
            v("metal.silver.molar").max(1.0),
            v("plating.valence"),
            v("metal.faraday"),
        );
        let buff = bench.ledger.figure("silver.loss.buff_hard.um");
        Self {
            area_cm2,
            mass_g,
            worth: mass_g * money.price_per_g,
            charge_ah,
            minutes: money
                .milliampere
                .and_then(|i| plating_minutes(charge_ah, i, area_cm2)),
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
                ", which is more than the whole price: check both".to_owned()
            } else {
                format!(
                    ", about {} in 100 of the price of the job",
                    if share < 1.0 {
                        "1 or less".to_owned()
                    } else {
                        format!("{share:.0}")
                    }
                )
            }
        } else {
            String::new()
        };
        format!(
            "{} µm of silver on {} cm² is {} g: metal for {}{}{}.{}",
            figures(money.thickness_um),
            figures(self.area_cm2),
            figures(self.mass_g),
            money.unit,
            figures(self.worth),
            part,
            if money.own_price && money.own_bill {
                ""
            } else {
                " With stand-ins for what you have not given."
            }
        )
    }

    /// What goes before anything comes on.
    fn loss(&self, bench: &Bench<'_>) -> String {
        let buff = bench.ledger.figure("silver.loss.buff_hard.um");
        format!(
            "The silver is the small part. Of one replated tray, {:.0} in 100 minutes at the bench went into polishing the \
             old surface off, and hard polishing takes some {} µm: {} g of the piece's own surface over the same area, \
             with the edge of every mark and line. That is the real loss, and no coat puts it back.",
            100.0 * bench.ledger.value("plating.polish_share"),
            range(&figures(buff.low), &figures(buff.high)),
            range(&figures(self.old_g.0), &figures(self.old_g.1)),
        )
    }

    fn table(&self, money: &Money) -> Table {
        let row =
            |what: &str, how: &str, value: String| vec![what.to_owned(), how.to_owned(), value];
        let mut rows = vec![
            row(
                "Silver in the coat",
                "area × thickness × density",
                format!("{} g", figures(self.mass_g)),
            ),
            row(
                "Worth as metal",
                if money.own_price {
                    "times your price of a gram"
                } else {
                    "times a stand-in for the price of a gram"
                },
                format!("{}{}", money.unit, figures(self.worth)),
            ),
            row(
                "Charge",
                "mass × Faraday's constant ÷ molar mass, nothing wasted",
                format!("{} Ah", figures(self.charge_ah)),
            ),
        ];
        rows.push(row(
            "Time",
            "charge ÷ (current for each cm² × area)",
            self.minutes.map_or_else(
                || "needs the plater's current".to_owned(),
                |m| format!("{} min", figures(m)),
            ),
        ));
        Table {
            caption: "The sums".to_owned(),
            columns: ["What", "Worked out as", "Result"]
                .map(str::to_owned)
                .to_vec(),
            rows,
        }
    }
}
