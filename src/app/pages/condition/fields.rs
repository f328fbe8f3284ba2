//! What can be said of one part.

use std::rc::Rc;

use leavewell_model::case::{
    BleedWord, Corrosion, Dents, Fill, Form, Interior, Joint, Lead, PartName, Tarnish,
};
use yew::prelude::*;

use crate::app::parts::choice::{Choice, Pick, Radios, choices};
use crate::app::parts::field::TextField;
use crate::app::state::{Action, Open};

/// Words for the choice that says nothing.
const UNSAID: &str = "Not looked";

/// What the fields of a part need.
#[derive(Clone, Debug, Properties)]
pub(super) struct PartFieldsProps {
    /// The piece.
    pub open: Rc<Open>,
    /// Where to say what happened.
    pub act: Callback<Action>,
    /// The part.
    pub part: PartName,
}

impl PartialEq for PartFieldsProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.open, &other.open) && self.act == other.act && self.part == other.part
    }
}

/// The fields of one part. Which ones there are depends on the part; fields that come and go are
/// hidden, not taken out, so that those beside them are never drawn anew.
#[component]
pub(super) fn PartFields(props: &PartFieldsProps) -> Html {
    let part = props.part;
    let text = |field: &str| props.open.draft.part_text(part.id(), field);
    let faulty = Joint::parse(&text("joint"))
        .is_some_and(|j| !matches!(j, Joint::Sound | Joint::NeatRepair));
    let filled = may_be_filled(props.open.form(), part) || !text("fill").is_empty();
    let lined = part == PartName::Interior || !text("interior").is_empty();
    html! {
        <section class="part-fields" aria-labelledby="part-title">
            <h2 id="part-title">{ part.label() }</h2>
            { bleed(props) }
            <div class="field-grid">
                { pick(props, "tarnish", "Tarnish", "The darkest colour over most of the part.", choices!(Tarnish)) }
                { pick(props, "joint", "Joints and seams", "Where this part meets another, and any seam in it.", choices!(Joint)) }
                { pick(props, "dents", "Dents", "", choices!(Dents)) }
                { pick(props, "corrosion", "Powder, crust or rust", "Not tarnish: something that grows or crumbles.", choices!(Corrosion)) }
                { pick(props, "lead", "Lead", "Only what a test has shown. A guess is not needed.", choices!(Lead)) }
                <div hidden={!lined}>
                    { pick(props, "interior", "What lines the inside", "Look with a torch.", choices!(Interior)) }
                </div>
                <div hidden={!filled}>
                    { pick(
                        props,
                        "fill",
                        "What fills it",
                        "Hollow parts were often filled. Do not open anything to find out.",
                        choices!(Fill),
                    ) }
                </div>
                <div hidden={!faulty}>
                    <TextField
                        id={field_id(part, "joint_distance_mm")}
                        label="From the faulty joint to the next soft joint or filling"
                        hint="Heat travels: what is near may let go too. A rough measure will do."
                        unit="mm"
                        number=true
                        value={text("joint_distance_mm")}
                        problem={props.open.part_problem(part.id(), "joint_distance_mm")}
                        on_text={set(props, "joint_distance_mm")}
                    />
                </div>
            </div>
        </section>
    }
}

/// How much base metal shows: in words, or as a share.
fn bleed(props: &PartFieldsProps) -> Html {
    let part = props.part;
    let stored = props.open.draft.part_text(part.id(), "bleed");
    let is_word = stored.is_empty() || BleedWord::parse(&stored).is_some();
    let counted = stored.starts_with('{');
    // Neither a word nor nothing: no button is pressed.
    let value = if is_word {
        stored.clone()
    } else {
        "own".to_owned()
    };
    let hint = if counted {
        "A point count is recorded for this part. Anything typed here takes its place."
    } else {
        "Takes the place of the choice above. Leave it empty if the words fit."
    };
    let on_text = props.act.reform(move |typed: String| {
        let typed = typed.trim().trim_end_matches('%').trim_end();
        let typed = if typed.is_empty() {
            String::new()
        } else {
            format!("{typed} %")
        };
        Action::SetPart {
            part: part.id().to_owned(),
            field: "bleed".to_owned(),
            typed,
        }
    });
    html! {
        <div class="bleed-fields">
            <Radios
                id={field_id(part, "bleed")}
                label="Base metal showing through"
                hint="Copper red, brass yellow or grey where the silver has gone. Judge over the whole of this part."
                choices={choices!(BleedWord)}
                unsaid={UNSAID}
                {value}
                on_choice={set(props, "bleed")}
            />
            <TextField
                id={field_id(part, "bleed-share")}
                label="Or a percentage you judged, such as 5"
                {hint}
                unit="%"
                number=true
                value={if is_word || counted { String::new() } else { share_text(&stored) }}
                problem={props.open.part_problem(part.id(), "bleed")}
                {on_text}
            />
        </div>
    }
}

fn pick(
    props: &PartFieldsProps,
    field: &'static str,
    label: &'static str,
    hint: &'static str,
    choices: Vec<Choice>,
) -> Html {
    let part = props.part;
    html! {
        <Pick
            id={field_id(part, field)}
            {label}
            {hint}
            {choices}
            unsaid={UNSAID}
            value={props.open.draft.part_text(part.id(), field)}
            problem={props.open.part_problem(part.id(), field)}
            on_choice={set(props, field)}
        />
    }
}

fn set(props: &PartFieldsProps, field: &'static str) -> Callback<String> {
    let part = props.part;
    props.act.reform(move |typed| Action::SetPart {
        part: part.id().to_owned(),
        field: field.to_owned(),
        typed,
    })
}

fn field_id(part: PartName, field: &str) -> String {
    format!("{}-{field}", part.id())
}

/// Parts that are often hollow and filled.
fn may_be_filled(form: Option<Form>, part: PartName) -> bool {
    matches!(
        part,
        PartName::Base | PartName::Handle | PartName::Border | PartName::Foot
    ) || (form == Some(Form::Candlestick) && part == PartName::Body)
}

/// A share as it is typed here: hundredths, without the sign. A file may hold it as a part of 1.
pub(super) fn share_text(stored: &str) -> String {
    if let Some(hundredths) = stored.trim().strip_suffix('%') {
        return hundredths.trim().to_owned();
    }
    match stored.trim().parse::<f64>() {
        Ok(share) if (0.0..=1.0).contains(&share) => {
            format!("{}", (share * 100_000.0).round() / 1_000.0)
        }
        _ => stored.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::share_text;

    #[test]
    fn a_share_is_shown_in_hundredths() {
        for (stored, shown) in [
            ("5 %", "5"),
            ("0.07", "7"),
            ("0.125", "12.5"),
            ("140", "140"),
            ("ab %", "ab"),
        ] {
            assert_eq!(share_text(stored), shown);
        }
    }
}
