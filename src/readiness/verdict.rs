//! GO, HOLD or NOT READ from everything that was found, and the one finding to blame.

use super::{Next, Verdict};
use crate::job::Part;

/// What has been found so far.
///
/// HOLD comes before NOT READ, NOT READ before GO: a fresh reading outside its limits holds the work even
/// while others are missing, and nothing that is missing can give a GO.
#[derive(Debug, Clone, Default)]
pub(super) struct Tally {
    outside: Option<(f64, usize)>,
    unread: Option<usize>,
    next: Vec<Next>,
}

impl Tally {
    /// A fresh reading is outside its limit by so many degrees; 0 for what is no temperature, endless for what
    /// is a danger by itself. The furthest one is to blame; of two
    /// equally far, the first in the order of work.
    pub(super) fn outside(&mut self, by_f: f64, finding: usize) {
        if self.outside.is_none_or(|(most, _)| by_f > most) {
            self.outside = Some((by_f, finding));
        }
    }

    /// Something is missing, old or not understood. The first in the order of work is to blame.
    pub(super) fn unread(&mut self, finding: usize) {
        self.unread.get_or_insert(finding);
    }

    /// A reading or a kit counts until an instant.
    pub(super) fn counts_until(&mut self, part: Part, id: u32, until_ms: f64) {
        let place = self.next.partition_point(|one| one.until_ms.total_cmp(&until_ms).is_le());
        self.next.insert(place, Next { part, id, until_ms });
    }

    /// What ends a GO, the first to do so first.
    pub(super) fn next(&self) -> &[Next] {
        &self.next
    }

    /// The verdict, the instant until which a GO holds, and the finding to blame otherwise.
    pub(super) fn verdict(&self) -> (Verdict, Option<f64>, Option<u32>) {
        let position = |finding: usize| u32::try_from(finding).ok();
        match (self.outside, self.unread) {
            (Some((_, finding)), _) => (Verdict::Hold, None, position(finding)),
            (None, Some(finding)) => (Verdict::NotRead, None, position(finding)),
            (None, None) => (Verdict::Go, self.next.iter().map(|one| one.until_ms).reduce(f64::min), None),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_comes_before_missing_and_missing_before_go() {
        let mut tally = Tally::default();
        for (id, until_ms) in [(1, 500.0), (2, 300.0), (3, 400.0)] {
            tally.counts_until(Part::Reading, id, until_ms);
        }
        assert_eq!(tally.verdict(), (Verdict::Go, Some(300.0), None));
        assert_eq!(tally.next().iter().map(|one| one.id).collect::<Vec<_>>(), [2, 3, 1]);
        tally.unread(4);
        tally.unread(2);
        assert_eq!(tally.verdict(), (Verdict::NotRead, None, Some(4)));
        tally.outside(3.0, 7);
        tally.outside(5.0, 8);
        tally.outside(5.0, 9);
        tally.outside(1.0, 10);
        assert_eq!(tally.verdict(), (Verdict::Hold, None, Some(8)));
        tally.outside(f64::INFINITY, 11);
        tally.outside(f64::INFINITY, 12);
        assert_eq!(tally.verdict(), (Verdict::Hold, None, Some(11)));
        // What is no temperature holds too, and is to blame where nothing else is.
        let mut tally = Tally::default();
        tally.unread(1);
        tally.outside(0.0, 2);
        tally.outside(0.0, 3);
        assert_eq!(tally.verdict(), (Verdict::Hold, None, Some(2)));
        tally.outside(0.1, 4);
        assert_eq!(tally.verdict(), (Verdict::Hold, None, Some(4)));
    }
}
