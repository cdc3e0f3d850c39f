//! A foam's data sheet read both ways: the depth for an R, and the R that may be promised at a depth.

use super::super::Topic;
use super::super::formula::{Formula, at, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::{DepthWay, Shape};
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "target", levels: &[2], topics: &[Topic::Depth], make };

/// A millimeter: between a sixteenth and a thirty-second of an inch.
const MILLIMETER_IN: f64 = 0.04;

/// How many inches the sheet lists.
const ROWS: usize = 5;

fn row(index: usize, name: &str, kind: Kind) -> Formula {
    at(&format!("foams.0.listed.{index}.{name}"), kind)
}

/// R of the first inch, and so for every inch.
fn first_inch() -> Formula {
    row(0, "r", Kind::Resistance) / row(0, "thickness_in", Kind::Length)
}

fn make(m: &mut Making, _level: u8) {
    // The first inch is R-5.7 to R-6.0, the second adds 0.5 or 0.6 more than it, each further one 0.2 more than the
    // one before: with less, hundredths of RSI might have it fall.
    let mut tenths = m.draw.whole(57, 60);
    let mut adds = tenths + m.draw.whole(5, 6);
    let mut rows = vec![(1.0, f64::from(tenths) / 10.0)];
    for inch in 2..=ROWS {
        tenths += adds;
        adds += 2;
        #[allow(clippy::cast_precision_loss, reason = "a handful of inches")]
        rows.push((inch as f64, f64::from(tenths) / 10.0));
    }
    // A whole R that lies well inside two rows, 2 to 5 in.
    let thin = m.draw.whole(2, 4);
    let tenth = f64::from(m.draw.whole(2, 8)) / 10.0;
    let r_at = |inch: i32| rows.iter().find(|row| row.0 >= f64::from(inch)).map_or(0.0, |row| row.1);
    let target = libm::round(r_at(thin) + tenth * (r_at(thin + 1) - r_at(thin)));
    let aim = f64::from(m.draw.whole(3, 5));
    let ft2 = (f64::from(m.draw.whole(80, 240)), f64::from(m.draw.whole(80, 240)));

    let under = m.tape(0.5, true);
    m.of_job("under_aim", under.clone());
    m.foam("F1", &rows, &[]);
    let (asked, aimed) = (m.r(target), m.tape(aim, true));
    let wall = m.surface(Shape::TypedArea, &[("area", m.area(ft2.0)), ("target_r", asked.clone())]);
    if let Some(wall) = m.job.surfaces.get_mut(wall) {
        wall.depth_way = DepthWay::TargetR;
    }
    m.surface(Shape::TypedArea, &[("area", m.area(ft2.1)), ("depth", aimed.clone())]);
    m.says("target", asked);
    m.says("under", under);
    m.says("aim", aimed);
    let foam = m.job.foam;
    m.shows("foam", foam, &[]);
    ask_depth(m);
    ask_promise(m);
}

/// The depth for the wall's R, and what to aim at for it.
fn ask_depth(m: &mut Making) {
    let between = |name: &str, kind| at(&format!("surfaces.0.depth.needed_between.{name}"), kind);
    let inches = |name: &str| between(name, Kind::Length);
    let r = |name: &str| between(name, Kind::Resistance);
    let target = || at("surfaces.0.depth.target_r", Kind::Resistance);
    let more = (target() - r("thinner_r")) / (r("thicker_r") - r("thinner_r"));
    let depth = || Ask::new("depth_for_r", Topic::Depth, Kind::Length).short().within(MILLIMETER_IN, 0.0);
    m.ask(
        depth()
            .of("wall")
            .at("surfaces.0.depth.needed_in")
            .by(inches("thinner_in") + more * (inches("thicker_in") - inches("thinner_in")))
            .slip("r_of_first_inch", target() / first_inch())
            .slip("depth_of_row_below", inches("thinner_in")),
    );
    m.ask(
        Ask::new("aim", Topic::Depth, Kind::Length)
            .of("wall")
            .short()
            .within(MILLIMETER_IN, 0.0)
            .at("surfaces.0.depth.aim_in")
            .by(step("depth_for_r/wall") + at("surfaces.0.depth.under_in", Kind::Length))
            .slip("promise_for_aim", step("depth_for_r/wall")),
    );
}

/// The least depth that is promised at the ceiling's aim, and its R.
fn ask_promise(m: &mut Making) {
    let aim = || at("surfaces.1.depth.aim_in", Kind::Length);
    let listed = || at("surfaces.1.depth.promised_r", Kind::Resistance);
    m.ask(
        Ask::new("promise", Topic::Depth, Kind::Length)
            .of("ceiling")
            .short()
            .within(MILLIMETER_IN, 0.0)
            .at("surfaces.1.depth.promised_in")
            .by(aim() - at("surfaces.1.depth.under_in", Kind::Length))
            .slip("promise_for_aim", aim()),
    );
    // The aim is a listed thickness, and the promise lies between it and the one below.
    let of_aim = || at("surfaces.1.depth.planning_r", Kind::Resistance);
    let promised_at = at("surfaces.1.depth.promised_r_at_in", Kind::Length);
    let part = (step("promise/ceiling") - promised_at.clone()) / (aim() - promised_at);
    m.ask(
        Ask::new("promised_r", Topic::Depth, Kind::Resistance)
            .of("ceiling")
            .at("surfaces.1.depth.promised_r")
            .slip("promise_for_aim", of_aim())
            .slip("r_between_rows", listed() + part * (of_aim() - listed()))
            .slip("r_of_first_inch", step("promise/ceiling") * first_inch()),
    );
}
