//! The two planes of a gable roof, from span and pitch.

use super::super::Topic;
use super::super::formula::{Formula, area, at, figure, number, step};
use super::super::made::{Ask, Making};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "roof", levels: &[2], topics: &[Topic::Areas, Topic::Pitch], make };

const LENGTH: &str = "surfaces.0.area.measures.length";
const RUN: &str = "surfaces.0.area.measures.plan_run";
const PITCH: &str = "surfaces.0.area.measures.pitch";
const SLOPE: &str = "surfaces.0.area.parts.slope_length";
const ONE: &str = "surfaces.0.area.one_ft2";
const BOTH: &str = "surfaces.0.area.gross_ft2";

fn length(path: &str) -> Formula {
    at(path, Kind::Length)
}

fn make(m: &mut Making, _level: u8) {
    let along = f64::from(m.draw.whole(168, 420));
    let run = f64::from(m.draw.whole(96, 192));
    let pitch = m.draw.whole(3, 10);
    // As the tape gives it, so that the span is twice the run to the last half centimeter.
    let run = if m.metric() { 5.0 * libm::round(run * 25.4 / 5.0) / 25.4 } else { run };

    let entries = [
        ("length", m.tape(along, false)),
        ("plan_run", m.tape(run, false)),
        ("pitch", format!("{pitch}/12")),
        ("times", "2".to_owned()),
    ];
    let surface = m.surface(Shape::PitchedPlane, &entries);
    m.says("length", m.tape(along, false));
    m.says("span", m.tape(2.0 * run, false));
    m.says("pitch", format!("{pitch}/12"));
    let id = m.job.surfaces.get(surface).map_or(0, |one| one.id);
    m.shows("outline", id, &[]);

    let pitch = || at(PITCH, Kind::Pitch);
    let span = || figure(2.0 * run, Kind::Length);
    let factor = || (number(1.0) + pitch() * pitch()).root();
    m.ask(
        Ask::new("plan_run", Topic::Pitch, Kind::Length)
            .at(RUN)
            .by(span() / number(2.0))
            .slip("whole_span", span()),
    );
    m.ask(
        Ask::new("slope_length", Topic::Pitch, Kind::Length)
            .at(SLOPE)
            .by(step("plan_run") * factor())
            .slip("rise_for_slope", step("plan_run") * pitch())
            .slip("slope_as_plan", step("plan_run"))
            .slip("whole_span", span() * factor())
            .slip("run_plus_rise", step("plan_run") * (number(1.0) + pitch())),
    );
    m.ask(
        Ask::new("roof_area", Topic::Areas, Kind::Area)
            .of("one_plane")
            .at(ONE)
            .by(area(length(LENGTH), step("slope_length")))
            .slip("slope_as_plan", area(length(LENGTH), step("plan_run"))),
    );
    m.ask(
        Ask::new("roof_area", Topic::Areas, Kind::Area)
            .of("both_planes")
            .at(BOTH)
            .by(number(2.0) * step("roof_area/one_plane"))
            .slip("one_plane", step("roof_area/one_plane"))
            .slip("slope_as_plan", area(length(LENGTH), span())),
    );
}
