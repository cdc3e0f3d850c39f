//! How long a warm group stays usable outside, on the cold side and on the hot one.

use super::Circulation;
use super::room::{Room, march, meets};
use super::shells::{Shells, lumped_min, skin};
use super::{cylinder::Body, film};

/// Minutes until the liquid that touches the steel, and with it the steel, passes a limit, and until the mean of the liquid
/// does. A limit on the hot side is passed upward, another downward.
///
/// The earlier edge of both. Liquid that stirs itself less gives off its rim sooner, and liquid that stirs itself more
/// gives off its mean sooner: both ends of the band are followed, and the sooner time of each is taken.
pub fn cool(
    body: &Body,
    pack: &'static str,
    circulation: &Circulation,
    from: f64,
    air: f64,
    (limit, hot): (f64, bool),
) -> (Option<f64>, Option<f64>) {
    let sign = if hot { -1.0 } else { 1.0 };
    if sign * (from - limit) < 0.0 {
        return (Some(0.0), Some(0.0));
    }
    let (mut starts, mut use_by): (Option<f64>, Option<f64>) = (None, None);
    // Air on the good side of the limit brings nothing past it.
    if sign * (limit - air) <= 0.0 {
        return (None, None);
    }
    for m in [circulation.m.low, circulation.m.high] {
        let shells = outside(body, pack, m, from, air);
        let (mut rim, mut mean) = (None, None);
        march(
            &shells,
            from,
            &Room::steady(air),
            0.0,
            shells.step_min * 3_200.0,
            &mut |minutes, before, after| {
                let passed = |was: f64, is: f64| {
                    (sign * (is - limit) < 0.0).then(|| meets(minutes, shells.step_min, was, is, limit))
                };
                rim = rim.or_else(|| passed(skin(before), skin(after)));
                mean = mean.or_else(|| passed(shells.mean(before), shells.mean(after)));
                mean.is_some()
            },
        );
        starts = sooner(starts, rim);
        use_by = sooner(use_by, mean);
    }
    (starts, use_by)
}

/// The shells of a group that stands outside: short steps, the first minutes count.
pub fn outside(body: &Body, pack: &'static str, m: f64, from: f64, air: f64) -> Shells {
    let ways = film::conductances(body, film::Packed { pack, blocked: 0.0 }, from, air);
    Shells::new(body, ways, m, lumped_min(body, ways) / 400.0)
}

fn sooner(one: Option<f64>, other: Option<f64>) -> Option<f64> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    }
}
