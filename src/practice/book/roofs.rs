//! Rafters out of carpenters' manuals: from the span and the pitch to the length along the slope.

use super::super::Topic;
use super::super::formula::{at, figure, number, step};
use super::super::made::{Ask, Making};
use super::{exact_long, said_long};
use crate::job::Shape;
use crate::measure::Kind;

const RUN: &str = "surfaces.0.area.measures.plan_run";
const PITCH: &str = "surfaces.0.area.measures.pitch";

/// A roof plane over half of a span. The manuals give no length along the eave: the drawing shows as much as the run.
fn rafter(m: &mut Making, span: (&str, f64), run: (&str, f64), pitch: &str) {
    let along = exact_long(m, run.0, run.1);
    let entries = [("length", along.clone()), ("plan_run", along), ("pitch", pitch.to_owned())];
    m.surface(Shape::PitchedPlane, &entries);
    m.says("span", said_long(m, span.0, span.1));
    m.says("pitch", pitch);
    let span = || figure(span.1, Kind::Length);
    m.ask(
        Ask::new("rafter_run", Topic::Pitch, Kind::Length)
            .at(RUN)
            .by(span() / number(2.0))
            .slip("whole_span", span()),
    );
    let pitch = || at(PITCH, Kind::Pitch);
    let factor = || (number(1.0) + pitch() * pitch()).root();
    m.ask(
        Ask::new("slope_length", Topic::Pitch, Kind::Length)
            .within(0.125, 0.0)
            .at("surfaces.0.area.parts.slope_length")
            .by(step("rafter_run") * factor())
            .slip("slope_as_plan", step("rafter_run"))
            .slip("whole_span", number(2.0) * step("rafter_run") * factor())
            .slip("rise_for_slope", step("rafter_run") * pitch()),
    );
}

/// A span of 16 ft, 7 in 12.
pub fn seven_in_twelve(m: &mut Making) {
    rafter(m, ("16'", 192.0), ("8'", 96.0), "7/12");
}

/// A span of 25 ft, a quarter pitch: the rise is a quarter of the span, 6 in 12.
pub fn quarter_pitch(m: &mut Making) {
    rafter(m, ("25'", 300.0), ("12' 6\"", 150.0), "6/12");
}
