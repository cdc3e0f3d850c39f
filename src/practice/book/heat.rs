//! Heat through framed walls, by parallel paths.

use super::super::Topic;
use super::super::formula::{Formula, at, figure, number, share};
use super::super::made::{Ask, Making, R_OF_RSI, plain};
use super::{exact, exact_foam, exact_r};
use crate::assembly::SOFTWOOD_R_IN;
use crate::job::Shape;
use crate::measure::Kind;

/// A layer: material, where it lies, its R where it is typed.
type Layer = (&'static str, &'static str, f64);

/// How deep a 2x4 stud is.
const STUD_IN: f64 = 3.5;

/// A wall of 2x4 studs with insulation of an R between them, so much of it studs, and these layers.
struct Wall {
    layers: &'static [Layer],
    between_r: f64,
    studs_pct: f64,
}

fn path(name: &str) -> Formula {
    at(&format!("surfaces.0.depth.assembly.{name}"), Kind::Resistance)
}

/// The three layers of either wall one by one, as they stand on the card.
fn layers() -> Formula {
    path("layers.0.r") + path("layers.1.r") + path("layers.2.r")
}

impl Wall {
    fn draw(&self, m: &mut Making) {
        let depth = exact(m, "3 1/2 in", 3.5);
        let area = if m.metric() { "10 m2" } else { "100 ft2" };
        let entries = [
            ("area", area.to_owned()),
            ("component", "wall".to_owned()),
            ("framing_share", plain(self.studs_pct, 0)),
            ("cavity", depth.clone()),
            ("depth", depth.clone()),
        ];
        m.surface(Shape::TypedArea, &entries);
        for (made_of, position, layer_r) in self.layers {
            let text = exact_r(m, *layer_r);
            let entries =
                [("made_of", (*made_of).to_owned()), ("position", (*position).to_owned()), ("layer_r", text)];
            m.layer(&entries);
        }
        let id = m.job.surfaces.last().map_or(0, |surface| surface.id);
        exact_foam(m, &[("3 1/2 in", 3.5, self.between_r)], &[]);
        m.gives("studs", self.studs_pct, Kind::Percent);
        m.gives("between", self.between_r, Kind::Resistance);
        m.shows("layers", id, &[]);
    }

    /// Both paths: what the films and layers of every path come to, and what lies between the studs or in them.
    fn ask_paths(m: &mut Making) {
        let films = || path("outside_film_r") + path("inside_film_r");
        // As the tool writes R: to a tenth, or to a hundredth of RSI.
        let within = if m.metric() { 0.01 * R_OF_RSI } else { 0.1 };
        let asked = |name| Ask::new(name, Topic::TrueR, Kind::Resistance).within(within, 0.0);
        m.ask(
            asked("foam_path_r")
                .at("surfaces.0.depth.assembly.foam_path_r")
                .by(films() + layers() + path("foam_r"))
                .slip("films_forgotten", layers() + path("foam_r")),
        );
        // By its own R, as it stands on the card.
        let stud = || figure(STUD_IN * SOFTWOOD_R_IN, Kind::Resistance);
        m.ask(
            asked("stud_path_r")
                .at("surfaces.0.depth.assembly.member_path_r")
                .by(films() + layers() + stud())
                .slip("films_forgotten", layers() + stud()),
        );
    }
}

/// The share of the studs, and that of the insulation.
fn shares() -> (Formula, Formula) {
    let studs = || at("surfaces.0.depth.assembly.framing_pct", Kind::Percent);
    (share(studs()), number(1.0) - share(studs()))
}

/// U by both paths, in Btu/h·ft²·°F.
fn parallel() -> Formula {
    let (studs, between) = shares();
    between / path("foam_path_r") + studs / path("member_path_r")
}

/// The mean of both R, which is not the R of the whole.
fn mean_r() -> Formula {
    let (studs, between) = shares();
    between * path("foam_path_r") + studs * path("member_path_r")
}

/// A wall of 2x4 studs at 16 in: siding, R-4 sheathing, R-13 between the studs, ½ in gypsum board.
pub fn frame_wall(m: &mut Making) {
    let wall = Wall {
        layers: &[("typed", "outside", 0.81), ("rigid_board", "outside", 4.0), ("typed", "inside", 0.45)],
        between_r: 13.0,
        studs_pct: 25.0,
    };
    wall.draw(m);
    Wall::ask_paths(m);
    // U in W/m²·K where the person works in metric.
    let by = if m.metric() { R_OF_RSI } else { 1.0 };
    let u = Ask::new("u_value", Topic::TrueR, Kind::Number)
        .within(0.0005 * by, 0.0)
        .by(parallel().scaled(by))
        .slip("studs_forgotten", (number(1.0) / path("foam_path_r")).scaled(by))
        .slip("r_across_framing", (number(1.0) / mean_r()).scaled(by));
    m.ask(if m.metric() { u } else { u.at("surfaces.0.depth.assembly.u") });
}

/// A wall of 2x4 studs with R-11 between them, plywood and siding outside, 15 % of it studs.
pub fn office_wall(m: &mut Making) {
    let wall = Wall {
        layers: &[("typed", "outside", 0.8), ("typed", "outside", 0.63), ("typed", "inside", 0.45)],
        between_r: 11.0,
        studs_pct: 15.0,
    };
    wall.draw(m);
    Wall::ask_paths(m);
    m.ask(
        Ask::new("whole_r", Topic::TrueR, Kind::Resistance)
            .at("surfaces.0.depth.assembly.effective_r")
            .by(number(1.0) / parallel())
            .slip("studs_forgotten", path("foam_path_r"))
            .slip("r_across_framing", mean_r()),
    );
}
