//! GO, HOLD or NOT READ from everything that was found, and the one finding to blame.

use super::Verdict;

/// What has been found so far.
///
/// HOLD comes before NOT READ, NOT READ before GO: a fresh reading outside its limits holds the work even
/// while others are missing, and nothing that is missing can give a GO.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Tally {
    outside: Option<(f64, usize)>,
    unread: Option<usize>,
    until_ms: Option<f64>,
}

impl Tally {
    /// A fresh reading is outside its limit by so many degrees. The furthest one is to blame; of two
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

    /// A reading counts until an instant.
    pub(super) fn counts_until(&mut self, until_ms: f64) {
        self.until_ms = Some(self.until_ms.map_or(until_ms, |first| first.min(until_ms)));
    }

    /// The verdict, the instant until which a GO holds, and the finding to blame otherwise.
    pub(super) fn verdict(self) -> (Verdict, Option<f64>, Option<u32>) {
        let position = |finding: usize| u32::try_from(finding).ok();
        match (self.outside, self.unread) {
            (Some((_, finding)), _) => (Verdict::Hold, None, position(finding)),
            (None, Some(finding)) => (Verdict::NotRead, None, position(finding)),
            (None, None) => (Verdict::Go, self.until_ms, None),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_comes_before_missing_and_missing_before_go() {
        let mut tally = Tally::default();
        tally.counts_until(500.0);
        tally.counts_until(300.0);
        tally.counts_until(400.0);
        assert_eq!(tally.verdict(), (Verdict::Go, Some(300.0), None));
        tally.unread(4);
        tally.unread(2);
        assert_eq!(tally.verdict(), (Verdict::NotRead, None, Some(4)));
        tally.outside(3.0, 7);
        tally.outside(5.0, 8);
        tally.outside(5.0, 9);
        tally.outside(1.0, 10);
        assert_eq!(tally.verdict(), (Verdict::Hold, None, Some(8)));
    }
}
