//! When to read again, and what is nearest to turning GO into HOLD.

use super::*;

#[test]
fn what_grows_old_first_stands_first() {
    let site = good().taken(CylinderB, 12.0).taken(Surface, 100.0).taken(Air, 30.0);
    let (readiness, _) = site.said();
    let order: Vec<_> =
        readiness.next.iter().map(|one| (one.id, (one.until_ms - NOW.ms) / 60_000.0)).collect();
    // The surface 120 − 100, B 60 − 12, A 60 − 5, the air 120 − 30, humidity 120 − 5.
    assert_eq!(order, [(5, 20.0), (2, 48.0), (1, 55.0), (3, 90.0), (4, 115.0)]);
    assert_eq!(readiness.until_ms, Some(readiness.next[0].until_ms));
}

#[test]
fn what_does_not_count_has_nothing_to_grow_old() {
    let site = good().taken(CylinderA, 70.0).text(Air, "");
    let ids: Vec<_> = site.said().0.next.iter().map(|one| one.id).collect();
    assert!(!ids.contains(&1) && !ids.contains(&3) && ids.contains(&2), "{ids:?}");
    // A reading outside does: it counts as HOLD until then.
    assert!(good().text(CylinderA, "60").said().0.next.iter().any(|one| one.id == 1));
}

#[test]
fn the_nearest_limit_stands_first() {
    let site = good().text(Surface, "62").text(CylinderB, "87").text(CylinderA, "82.5");
    let (readiness, _) = site.said();
    let room: Vec<_> = readiness
        .nearest
        .iter()
        .map(|at| &readiness.checks[*at as usize])
        .map(|one| (one.of, one.inside_by_f.unwrap()))
        .collect();
    assert_eq!(room, [(Surface, 2.0), (CylinderB, 3.0), (CylinderA, 7.5), (Air, 10.0)]);
    assert_eq!(readiness.closest, Some(readiness.nearest[0]));
    // What is outside has no room left.
    let outside = good().text(Surface, "50").said().0;
    assert!(outside.nearest.iter().all(|at| outside.checks[*at as usize].of != Surface));
}
