//! Foam of uneven depth: heat goes where it is thin, so that R at the mean depth, and the mean of R, promise too much.

use super::super::Topic;
use super::super::formula::{Formula, at, number, step};
use super::super::made::{Ask, Making, R_OF_RSI, plain};
use super::Scene;
use super::sheet;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "uneven", levels: &[2], topics: &[Topic::TrueR], make };

const MEAN_R: &str = "surfaces.0.depth.planning_r";
/// The thicknesses of the sheet, in inches.
const LISTED: [f64; 7] = [1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0];

fn make(m: &mut Making, _level: u8) {
    let (foam, _) = sheet::drawn(m, &LISTED);
    let parts = if m.draw.heads() { 4 } else { 5 };
    // One thin place and one thick one, the others anything, read in an order that is drawn too.
    let mut depths = vec![m.draw.whole(0, 1), m.draw.whole(4, 6)];
    for _ in 2..parts {
        depths.push(m.draw.whole(0, 6));
    }
    depths.rotate_left(usize::try_from(m.draw.whole(0, 3)).unwrap_or_default());
    // Ten to twenty square feet a part.
    let area = 10.0 * f64::from(m.draw.whole(2, 5)) * f64::from(parts) / 2.0;

    let listed = |at: i32| usize::try_from(at).ok().and_then(|at| LISTED.get(at)).copied().unwrap_or(1.0);
    let depths: Vec<f64> = depths.into_iter().map(listed).collect();
    let inches: Vec<f64> = depths.iter().map(|inches| sheet::taped(m, *inches)).collect();
    let mean = inches.iter().sum::<f64>() / f64::from(parts);
    let mean =
        if m.metric() { format!("{} mm", plain(mean * 25.4, 2)) } else { format!("{} in", plain(mean, 4)) };
    let area = if m.metric() {
        format!("{} m2", plain(area / 10.763_91, 0))
    } else {
        format!("{} ft2", plain(area, 0))
    };
    m.of_job("under_aim", "0");
    m.surface(Shape::TypedArea, &[("area", area), ("depth", mean)]);
    for depth in &depths {
        let depth = m.tape(*depth, true);
        m.patch(&[("share", (100 / parts).to_string()), ("depth", depth)]);
    }
    m.gives("parts", f64::from(parts), Kind::Count);
    let id = m.job.surfaces.first().map_or(0, |one| one.id);
    m.shows("probes", id, &inches);
    m.shows("foam", foam, &[]);

    let probes = |field: &str, kind| -> Vec<Formula> {
        (0..depths.len()).map(|part| at(&format!("surfaces.0.lines.patches.{part}.{field}"), kind)).collect()
    };
    let sum = |all: Vec<Formula>| all.into_iter().reduce(|one, other| one + other);
    let count = || number(f64::from(parts));
    let Some(all) = sum(probes("depth_in", Kind::Length)) else { return };
    let smallest = probes("depth_in", Kind::Length).into_iter().reduce(Formula::smaller);
    let largest = probes("depth_in", Kind::Length).into_iter().reduce(Formula::larger);
    let ends = smallest.zip(largest).map(|(one, other)| (one + other) / number(2.0));
    let mut mean =
        Ask::new("mean_depth", Topic::TrueR, Kind::Length).short().within(0.04, 0.0).by(all / count());
    if let Some(ends) = ends {
        mean = mean.slip("middle_of_ends", ends);
    }
    m.ask(mean);

    let between = |end: &str, kind| at(&format!("surfaces.0.depth.planning_between.{end}"), kind);
    let (thin, thick) = (between("thinner_in", Kind::Length), between("thicker_in", Kind::Length));
    let (less, more) = (between("thinner_r", Kind::Resistance), between("thicker_r", Kind::Resistance));
    let first = at("foams.0.listed.0.r", Kind::Resistance);
    let first_in = at("foams.0.listed.0.thickness_in", Kind::Length);
    // As R is written, to a tenth, or to a hundredth of RSI: of a small one that is more than half a percent.
    let written = if m.metric() { 0.006 * R_OF_RSI } else { 0.06 };
    m.ask(
        Ask::new("mean_r", Topic::TrueR, Kind::Resistance)
            .within(written, 0.5)
            .at(MEAN_R)
            .by(less.clone() + (more - less.clone()) * (step("mean_depth") - thin.clone()) / (thick - thin))
            .slip("r_of_first_inch", first * (step("mean_depth") / first_in))
            .slip("r_of_row_below", less),
    );
    let each = || probes("promised_r", Kind::Resistance);
    let Some((u, r)) = sum(each().into_iter().map(|r| number(1.0) / r).collect()).zip(sum(each())) else {
        return;
    };
    m.ask(
        Ask::new("true_r", Topic::TrueR, Kind::Resistance)
            .within(written, 0.5)
            .by(count() / u)
            .slip("mean_of_r", r / count())
            .slip("r_of_mean_depth", step("mean_r")),
    );
}
