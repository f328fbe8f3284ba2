//! Past work on a sheet: one section for each, with its photographs.

use super::block::{Block, Tone};
use super::sheet::Paper;
use super::sheet_done::RecordedWork;
use super::sheet_photos::before_and_after;
use super::wording::sheet as words;
use leavewell_model::ledger::FigureId;

impl Paper<'_> {
    /// Past work as sections of a sheet, in the order of the record; empty if none is recorded.
    pub(super) fn history(&self, id: &str) -> Vec<Block> {
        if self.done.is_empty() {
            return Vec::new();
        }
        let mut blocks = vec![Block::para(words::WORK_IN_ORDER)];
        let first_silver = self.report.identity.families.fused;
        if self.done.iter().any(RecordedWork::plates)
            && first_silver >= self.ledger.value(FigureId::WORDS_EVEN)
        {
            blocks.push(Block::said(
                Tone::Note,
                words::plated_yet_fused(&self.likely(first_silver)),
            ));
        }
        blocks.extend(self.work_sections(id));
        vec![Block::section(id, words::WORK_DONE, blocks)]
    }

    /// One section for each recorded work, with photographs from before and after side by side where there
    /// are any from after it.
    pub(super) fn work_sections(&self, id: &str) -> Vec<Block> {
        let section = |work: &RecordedWork| {
            let id = format!("{id}.{}", work.place);
            let mut of_it = vec![Block::Facts { rows: work.rows() }];
            if !work.photos.is_empty() {
                of_it.extend(before_and_after(self, &id, work));
            }
            Block::section(&id, &words::work(work.place + 1, &work.name()), of_it)
        };
        self.done.iter().map(section).collect()
    }
}
