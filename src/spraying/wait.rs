//! The wait between lifts.

use super::WaitBy;
use crate::measure::{Inches, Minutes};

/// The trade's wait between lifts. Common practice, no source.
const PRACTICE_MIN: f64 = 15.0;

/// Inches of a lift and minutes until its core is below 120 °F: on a board or stud, and on foam that is itself
/// still warm.
///
/// Source: this project's own model of a reacting lift on 70 °F sheathing (kinetics after Baser & Khakhar
/// 1994), rounded up: 5.2 minutes for 1 in, 18 (15 to 23) for 2 in; 53 for 2 in on a lift that is still at
/// 120 °F, and in that proportion for 1 in. Low confidence: the label governs, and a hand or thermometer on the foam.
type Row = (f64, f64);
const ON_BOARD: [Row; 3] = [(0.0, 0.0), (1.0, 6.0), (2.0, 20.0)];
const ON_FOAM: [Row; 3] = [(0.0, 0.0), (1.0, 15.0), (2.0, 53.0)];

/// The table of cooling: minutes to wait after a lift of this thickness where so many follow on one another.
///
/// After the first of two lifts the first lies on the wall; of three or more the later ones lie on warm foam,
/// and the longest wait is given for all. Straight between the rows: the true curve sags below, so this errs
/// on the long side. `None` outside 0 to 2 in: thicker lifts are a fire matter and no time is given.
///
/// ```
/// use foamwright::measure::{Inches, Minutes};
/// use foamwright::spraying::table_min;
/// assert_eq!(table_min(Inches(2.0), 2), Some(Minutes(20.0)));
/// assert_eq!(table_min(Inches(1.5), 2), Some(Minutes(13.0)));
/// assert_eq!(table_min(Inches(2.5), 2), None);
/// ```
pub fn table_min(each: Inches, count: u32) -> Option<Minutes> {
    let rows = if count > 2 { ON_FOAM } else { ON_BOARD };
    if each.0.is_nan() || each.0 < 0.0 {
        return None;
    }
    rows.iter()
        .zip(rows.iter().skip(1))
        .find(|(_, thick)| each.0 <= thick.0 + super::NOISE)
        .map(|(thin, thick)| Minutes(thin.1 + (thick.1 - thin.1) * ((each.0 - thin.0) / (thick.0 - thin.0))))
}

/// The longest of the label's wait, the trade's and the table's, and which it is; of equal ones the first.
pub(super) fn longest(label: Option<Minutes>, each: Inches, count: u32) -> (Minutes, WaitBy) {
    let waits = [
        (label, WaitBy::Label),
        (Some(Minutes(PRACTICE_MIN)), WaitBy::Practice),
        (table_min(each, count), WaitBy::Table),
    ];
    let mut longest = (Minutes(0.0), WaitBy::LabelOnly);
    for (wait, by) in waits {
        if let Some(wait) = wait
            && wait > longest.0
        {
            longest = (wait, by);
        }
    }
    longest
}
