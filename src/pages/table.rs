//! Rows under named columns.

use serde::{Deserialize, Serialize};

/// Rows under named columns; the first column names the row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Table {
    /// What it shows.
    pub caption: String,
    /// The rows; each has as many cells as there are columns.
    pub columns: Vec<String>,
    /// As many cells as there are columns.
    pub rows: Vec<Vec<String>>,
}
