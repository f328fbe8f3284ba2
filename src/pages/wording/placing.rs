//! Wording of the places of faults on Condition, for a script of the page. `{}` in a text is the name of a
//! part, or a number and a name.

/// Every text by the name the script knows it by, as JSON.
pub(crate) const ALL: &str = r#"{
"title": "Where the faults are",
"means": "Show a fault where it is, and it counts as if it were chosen above. Several of a kind on one part add to the cost of the work; what they take off the value is counted once.",
"onDrawing": "Show a fault of the {} on the drawing",
"onPhoto": "Show one on photo {} of the {}",
"wholePiece": "whole piece",
"tap": "Tap where it is, or move the cross with the arrow keys.",
"picture": "The place of the fault: arrow keys move it, with Shift by ten",
"fault": "What is wrong there",
"count": "How many there",
"x": "From the left",
"y": "From the top",
"note": "Note",
"keep": "Keep this place",
"back": "Back without a place",
"kept": "The place is kept.",
"removed": "The place is removed.",
"change": "Change",
"remove": "Remove",
"atDrawing": "on the drawing",
"atPhoto": "on a photo",
"inWords": "without a place",
"photoMissing": "The photo is not in this browser. Show the fault on another photo or on the drawing."
}"#;
