//! What bears on a place beside the depth of its foam.

use super::{Around, Bound, Mark, Rule};
use crate::climate::Component;
use crate::findings::Trust;

/// Reminders that a place brings with it.
///
/// The wall of a crawlspace without vents is foamed only where the ground is covered and the space gets supply or
/// exhaust air: IRC R408.3, as public texts retell it. The vapor of a room that is kept cold moves inward, so that its foam runs
/// unbroken around floor and door and the winter rules of the zones are not for it: common practice, no source.
pub(super) fn reminders(around: &Around<'_>) -> Vec<Mark> {
    let condition = |rule, section, edition, trust| Mark {
        section,
        edition,
        ..Mark::new(rule, Bound::Condition, None, trust)
    };
    match around.component {
        Some(Component::CrawlWall) => [Rule::CrawlGround, Rule::CrawlAir]
            .map(|rule| condition(rule, "R408.3", "IRC 2018", Trust::Retold))
            .to_vec(),
        Some(Component::ColdRoom) => vec![condition(Rule::ColdRoom, "", "", Trust::Practice)],
        _ => Vec::new(),
    }
}
