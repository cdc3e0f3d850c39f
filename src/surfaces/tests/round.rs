//! Arches, cylinders, domes and ducts against closed forms as in the CRC Standard Mathematical Tables, from texts as
//! a person enters them.

use super::shapes::{codes, entered};
use super::*;
use crate::quantity;
use core::f64::consts::PI;

fn text(inches: f64) -> String {
    format!("{inches} in")
}

fn area_of(shape: Shape, entries: &[(&str, f64)]) -> SurfaceArea {
    let texts: Vec<String> = entries.iter().map(|(_, inches)| text(*inches)).collect();
    let mut all: Vec<(&str, &str)> =
        entries.iter().zip(&texts).map(|((field, _), text)| (*field, text.as_str())).collect();
    all.push(("side", "outside"));
    net::area(&entered(shape, false, &all).0.expect("complete"))
}

fn net(shape: Shape, entries: &[(&str, f64)]) -> f64 {
    area_of(shape, entries).net_ft2.likely.0
}

/// Published: a semicircle is π r long, a circle 2 π r; the arc over r of a chord r is a sixth of the circle.
#[test]
fn arcs() {
    let arch = |span, other, by| net(Shape::Arch, &[("span", span), (by, other), ("length", 144.0)]);
    assert!(close(arch(20.0, 10.0, "rise"), 10.0 * PI));
    assert!(close(arch(20.0, 10.0, "radius"), 10.0 * PI));
    assert!(close(arch(0.0, 20.0, "rise"), 20.0 * PI), "the whole circle");
    assert!(close(arch(12.0, 12.0, "radius"), 12.0 * PI / 3.0));
    assert!(close(arch(24.0, 0.0, "rise"), 24.0), "a flat one is its span");
    let (none, found) =
        entered(Shape::Arch, false, &[("span", "9 ft"), ("radius", "4 ft"), ("length", "1 ft")]);
    assert_eq!((none.is_none(), codes(&found)), (true, vec![(Code::RadiusTooShort, "radius")]));
}

/// Published: the cap of a sphere is 2 π R h; half a sphere 2 π R², the whole of it 4 π R².
#[test]
fn caps() {
    let dome = |diameter, rise| net(Shape::Dome, &[("diameter", diameter), ("rise", rise)]) * 144.0;
    assert!(close(dome(20.0, 10.0), 2.0 * PI * 100.0));
    assert!(close(dome(0.0, 20.0), 4.0 * PI * 100.0));
    // 3-4-5: half the chord 4, from the middle 3, rise 2 of a sphere of 5.
    assert!(close(dome(8.0, 2.0), 2.0 * PI * 5.0 * 2.0));
}

/// A drawing's faces, by the shoelace formula: in all the gross area; circles too.
#[test]
fn faces_are_the_area() {
    let on = |field| (field, "yes");
    let tank =
        [("diameter", "9 ft"), ("to_height", "5 ft"), ("side", "inside"), on("end_top"), on("end_bottom")];
    let duct = [("width", "12 in"), ("height", "8 in"), ("length", "28 ft"), ("side_left", "no")];
    for (shape, entries) in [(Shape::Cylinder, &tank[..]), (Shape::BoxDuct, &duct)] {
        let takeoff = entered(shape, false, entries).0.expect("complete");
        let outline = outline_of(&takeoff);
        let shoelace = |face: &Face| {
            let next = face.corners.iter().cycle().skip(1);
            face.corners.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 288.0
        };
        let sum: f64 = outline.faces.iter().filter(|face| face.foamed).map(shoelace).sum();
        assert!(close(sum, net_of(&takeoff)), "{shape:?}: {sum}");
        let inside = |(x, y): &(f64, f64)| {
            (-1e-9..=outline.width_in + 1e-9).contains(x) && (-1e-9..=outline.height_in + 1e-9).contains(y)
        };
        assert!(shape == Shape::Cylinder || outline.faces.iter().flat_map(|face| &face.corners).all(inside));
    }
}

proptest! {
    /// An arch with no span left is a cylinder, and two halves of one are the whole.
    #[test]
    fn a_full_circle_is_a_cylinder(across in 1.0..500.0_f64, length in 1.0..500.0_f64) {
        let whole = net(Shape::Arch, &[("span", 0.0), ("rise", across), ("length", length)]);
        prop_assert!(close(whole, net(Shape::Cylinder, &[("diameter", across), ("to_height", length)])));
        prop_assert!(close(whole, net(Shape::RoundDuct, &[("diameter", across), ("length", length)])));
        let half = net(Shape::Arch, &[("span", across), ("rise", across / 2.0), ("length", length)]);
        prop_assert!(close(whole, 2.0 * half));
        let dome = net(Shape::Dome, &[("diameter", across), ("rise", across / 2.0)]);
        prop_assert!(close(2.0 * dome, net(Shape::Dome, &[("diameter", 0.0), ("rise", across)])));
    }

    /// The two arcs of one circle over a chord are the circle.
    #[test]
    fn two_arcs_make_the_circle(span in 1.0..500.0_f64, share in 0.05..0.95_f64) {
        let rise = span / 2.0 * share;
        let other = span * span / 4.0 / rise;
        let arch = |rise| net(Shape::Arch, &[("span", span), ("rise", rise), ("length", 12.0)]) * 12.0;
        prop_assert!(close(arch(rise) + arch(other), PI * (rise + other)));
        let radius = (rise + other) / 2.0;
        let flat = net(Shape::Arch, &[("span", span), ("radius", radius), ("length", 12.0)]) * 12.0;
        prop_assert!((flat - arch(rise)).abs() < 1e-6 * flat);
    }

    /// More depth is never less foam, up to where a tank closes.
    #[test]
    fn more_depth_is_more_foam(
        across in 1.0..500.0_f64,
        tall in 1.0..500.0_f64,
        ends in 0_usize..3,
        share in 0.0..1.0_f64,
    ) {
        let (across, tall) = (text(across), text(tall));
        let mut entries = vec![("diameter", &*across), ("to_height", &*tall), ("side", "inside")];
        entries.extend([("end_top", "yes"), ("end_bottom", "yes")].into_iter().take(ends));
        let area = net::area(&entered(Shape::Cylinder, false, &entries).0.expect("complete"));
        let growth = quantity::growth(&area);
        let closes = quantity::closes_in(growth);
        prop_assert!(closes.is_finite());
        let foam = |depth: f64| {
            let (none, add) = (Band::exactly(Inches(0.0)), Band::exactly(Inches(depth)));
            quantity::spread(quantity::mean(area.net_ft2, none, add, growth), add).likely.0
        };
        let depth = closes * share;
        prop_assert!(foam(depth) <= foam(depth + (closes - depth) * 0.1) + 1e-9);
        if ends == 0 {
            // Full to the middle it is the cylinder: half the circumference's foam.
            prop_assert!(close(closes, area.measures[0].value.likely / 2.0));
        }
    }
}
