//! A whole attic under its roof: two gables and two slopes, or a hip roof with skylights; depth for an R, kits of two
//! sizes, the bill, the lifts.

use super::super::formula::{area, at, number, step};
use super::super::made::{Ask, Making, plain};
use super::super::{Formula, Topic};
use super::Scene;
use super::attic_kits;
use super::trade::{aim, aims_over, between, lifts, long, oversprays, rows, short, to_spray, yields};
use crate::job::{DepthWay, Shape};
use crate::measure::Kind;

/// Two gables with a window each, two slopes.
pub const SCENE: Scene = Scene { key: "attic", levels: &[4], topics: TOPICS, make: |m, _| make(m, false) };
/// A hip roof with skylights.
pub const HIP: Scene = Scene { key: "attic_hip", levels: &[4], topics: TOPICS, make: |m, _| make(m, true) };

const TOPICS: &[Topic] = &[
    Topic::Areas,
    Topic::Pitch,
    Topic::Depth,
    Topic::BoardFeet,
    Topic::Allowances,
    Topic::Kits,
    Topic::Lifts,
    Topic::Price,
];

/// What is drawn, in inches, ft² and R.
struct Attic {
    length: f64,
    width: f64,
    /// Inches in twelve.
    pitch: f64,
    /// Width and height of a window or skylight, and how many.
    hole: (f64, f64),
    holes: i32,
    hip: bool,
}

impl Attic {
    /// About what gets foam.
    fn net_ft2(&self) -> f64 {
        let pitch = self.pitch / 12.0;
        let roof = self.length * self.width * libm::sqrt(1.0 + pitch * pitch);
        let gables = if self.hip { 0.0 } else { self.width * self.width * pitch / 2.0 };
        (roof + gables - f64::from(self.holes) * self.hole.0 * self.hole.1) / 144.0
    }
}

fn make(m: &mut Making, hip: bool) {
    let length = f64::from(m.draw.whole(192, 252));
    let width = f64::from(m.draw.whole(144, 188));
    let pitch = f64::from(m.draw.whole(5, 9));
    let window = (f64::from(m.draw.whole(12, 18)), f64::from(m.draw.whole(12, 16)));
    let skylight = (f64::from(m.draw.whole(20, 30)), f64::from(m.draw.whole(28, 40)));
    let skylights = m.draw.whole(2, 3);
    let foam_rows = rows(m);
    // Targets whose aim lies clear of a whole number of lifts, in inches and in millimeters.
    let target = m.draw.one_of(&[14.0, 15.0, 19.0]).unwrap_or(15.0);
    let lift = m.draw.one_of(&[1.0, 1.5, 2.0]).unwrap_or(1.0);
    let attic = match hip {
        true => Attic { length, width, pitch, hole: skylight, holes: skylights, hip },
        false => Attic { length, width, pitch, hole: window, holes: 2, hip },
    };

    let pitch_said = format!("{}/12", plain(pitch, 0));
    let goal = [("pitch", pitch_said.clone()), ("target_r", m.r(target))];
    let (length_said, width_said) = (long(m, length), long(m, width));
    let (wide, high) = (short(m, attic.hole.0), short(m, attic.hole.1));
    let hole = [("width", wide.clone()), ("height", high.clone())];
    if hip {
        m.says("holes", skylights.to_string());
        let plan = [("length", length_said.clone()), ("width", width_said.clone())];
        m.surface(Shape::HipRoof, &[&plan[..], &goal].concat());
        let count = [("count", skylights.to_string())];
        m.opening(&[&hole[..], &count].concat());
    } else {
        let base = [("length", width_said.clone()), ("times", "2".to_owned())];
        m.surface(Shape::Gable, &[&base[..], &goal].concat());
        let place =
            [("from_left", short(m, libm::round((width - attic.hole.0) / 2.0))), ("sill", short(m, 4.0))];
        m.opening(&[&hole[..], &place].concat());
        let run = long(m, width / 2.0);
        m.says("run", run.clone());
        let plan = [("length", length_said.clone()), ("plan_run", run), ("times", "2".to_owned())];
        m.surface(Shape::PitchedPlane, &[&plan[..], &goal].concat());
    }
    m.job.surfaces.iter_mut().for_each(|surface| surface.depth_way = DepthWay::TargetR);
    let target_said = m.r(target);
    for (key, text) in [
        ("length", length_said),
        ("width", width_said),
        ("pitch", pitch_said),
        ("hole_width", wide),
        ("hole_height", high),
        ("target", target_said),
    ] {
        m.says(key, text);
    }
    aims_over(m);
    let over = oversprays(m);
    let (factor, loss) = yields(m);
    let entries = [("largest_lift", short(m, lift))];
    m.foam("F1", &foam_rows, &entries);
    // Metric readings come out a little below: half of the difference is taken off.
    let depth = between(&foam_rows, target).unwrap_or_default() + 0.5;
    let feet = 0.992 * attic.net_ft2() * depth * (1.0 + over / 100.0);
    attic_kits::shelf(m, feet, factor, loss);

    let ids: Vec<u32> = m.job.surfaces.iter().map(|surface| surface.id).collect();
    ids.iter().for_each(|id| m.shows("outline", *id, &[]));
    m.shows("foam", m.job.foam, &[]);
    m.shows("kits", 0, &[]);

    let roof = ids.len().saturating_sub(1);
    let net: &dyn Fn() -> Formula = match hip {
        true => &|| step("net_area/roof"),
        false => &|| step("gables_area") + step("roof_area"),
    };
    if hip {
        hip_areas(m)
    } else {
        gable_areas(m)
    }
    m.ask(aim(roof, "roof"));
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at("quantity.in_place")
            .by(net() * step("aim/roof"))
            .slip(
                if hip { "openings_forgotten" } else { "one_surface_only" },
                step("roof_area") * step("aim/roof"),
            ),
    );
    m.ask(to_spray(&|| step("board_feet")));
    attic_kits::ask(m);
    m.ask(lifts(roof, step("aim/roof")));
}

/// A measure of a surface.
fn of(surface: usize, measure: &str, kind: Kind) -> Formula {
    at(&format!("surfaces.{surface}.area.measures.{measure}"), kind)
}

/// Along the slope, from the run in the plan: run × √(1 + pitch²).
fn slope(surface: usize, run: &dyn Fn() -> Formula) -> Ask {
    let pitch = || of(surface, "pitch", Kind::Pitch);
    let factor = || (number(1.0) + pitch() * pitch()).root();
    Ask::new("slope_length", Topic::Pitch, Kind::Length)
        .at(format!("surfaces.{surface}.area.parts.slope_length"))
        .by(run() * factor())
        .slip("slope_as_plan", run())
        .slip("whole_span", number(2.0) * run() * factor())
        .slip("rise_for_slope", run() * pitch())
}

fn gable_areas(m: &mut Making) {
    let base = || of(0, "length", Kind::Length);
    let rise = || base() / number(2.0) * of(0, "pitch", Kind::Pitch);
    let window = |name: &str| at(&format!("surfaces.0.area.openings.0.{name}"), Kind::Length);
    let windows = || number(2.0) * area(window("width_in"), window("height_in"));
    // Two triangles, each half of base × rise.
    m.ask(
        Ask::new("gables_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.net_ft2")
            .within(0.2, 0.5)
            .by(area(base(), rise()) - windows())
            .slip("openings_forgotten", area(base(), rise()))
            .slip("whole_rectangle", number(2.0) * area(base(), rise()) - windows())
            .slip("one_gable", area(base(), rise()) / number(2.0) - windows() / number(2.0))
            .slip("openings_twice", area(base(), rise()) - windows() - windows()),
    );
    let run = || of(1, "plan_run", Kind::Length);
    m.ask(slope(1, &run));
    let eave = || of(1, "length", Kind::Length);
    m.ask(
        Ask::new("roof_area", Topic::Pitch, Kind::Area)
            .at("surfaces.1.area.gross_ft2")
            .by(number(2.0) * area(eave(), step("slope_length")))
            .slip("one_plane", area(eave(), step("slope_length")))
            .slip("slope_as_plan", number(2.0) * area(eave(), run())),
    );
}

fn hip_areas(m: &mut Making) {
    let (length, width) = (|| of(0, "length", Kind::Length), || of(0, "width", Kind::Length));
    let run = || width() / number(2.0);
    m.ask(slope(0, &run));
    // Under one pitch every face is as much larger than its plan as the slope is longer than its run.
    m.ask(
        Ask::new("roof_area", Topic::Pitch, Kind::Area)
            .at("surfaces.0.area.gross_ft2")
            .by(area(length(), width()) * (step("slope_length") / run()))
            .slip("slope_as_plan", area(length(), width()))
            .slip("ends_forgotten", number(2.0) * area(length() - run(), step("slope_length"))),
    );
    let hole = |name: &str, kind| at(&format!("surfaces.0.area.openings.0.{name}"), kind);
    let one = || area(hole("width_in", Kind::Length), hole("height_in", Kind::Length));
    let all = || hole("count", Kind::Count) * one();
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .of("roof")
            .at("surfaces.0.area.net_ft2")
            .by(step("roof_area") - all())
            .slip("openings_forgotten", step("roof_area"))
            .slip("one_of_several", step("roof_area") - one())
            .slip("openings_twice", step("roof_area") - all() - all()),
    );
}
