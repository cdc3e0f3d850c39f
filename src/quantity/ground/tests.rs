//! Closed forms of every ground, and what must hold of any.

use super::ribbed::{ribbed_in, wave_in};
use super::ribs::over_ribs_in;
use super::*;
use crate::job::Shape;
use crate::measure::Units;
use core::f64::consts::PI;
use proptest::prelude::*;

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(1.0)
}

fn entered(entries: &[(&str, &str)]) -> (Option<Ground>, Vec<(Code, String)>) {
    let surface = Surface::typed(7, Shape::Rectangle, entries);
    let mut reader = Reader::new(Units::Us);
    let ground = ground(&surface, &mut reader);
    (ground, reader.findings.into_iter().map(|one| (one.code, one.at.field)).collect())
}

/// Webs of a 3-4-5 triangle: 12 in with a top flat of 2 and 2 in between leave webs 4 in long on plan; 3 in deep
/// they are 5 in each: 2 + 2 + 10 = 14. Upright ones of 3 in add 6.
#[test]
fn a_rib_by_its_triangles() {
    assert!(close(ribbed_in(12.0, 3.0, 2.0, 2.0), 14.0));
    assert!(close(ribbed_in(12.0, 3.0, 2.0, 10.0), 18.0));
    assert!(close(over_ribs_in(24.0, 3.0), 30.0));
}

/// A wave as deep as half its pitch is made of half circles: π ÷ 2 of its plane. A flat one is its plane.
#[test]
fn a_wave_of_half_circles() {
    assert!(close(wave_in(4.0, 2.0), 2.0 * PI));
    assert!(close(wave_in(4.0, 0.0), 4.0));
    assert!(wave_in(4.0, 1e-8) >= 4.0);
    // The smallest corrugation sold, 2⅔ × ½ in: published tables of culvert sheet (from memory) give 1.08 for arcs
    // joined by straight pieces, which are shorter than arcs alone.
    let factor = wave_in(8.0 / 3.0, 0.5) / (8.0 / 3.0);
    assert!((1.08..1.10).contains(&factor), "{factor}");
}

#[test]
fn grounds_from_entries() {
    let ribbed = [("ground", "ribbed"), ("rib_pitch", "12 in"), ("rib_depth", "3 in"), ("rib_top", "2 in")];
    let (upright, found) = entered(&ribbed);
    assert_eq!(found, []);
    assert!(close(upright.expect("complete").uneven_pct().likely, 50.0));
    let sloping = [&ribbed[..], &[("rib_bottom", "2 in"), ("uneven", "20")]].concat();
    let sloping = entered(&sloping).0.expect("complete");
    // 14 ÷ 12, and a curve of 20 % besides: 1.2 × 14/12 = 1.4.
    assert!(close(sloping.more_pct.likely, 200.0 / 12.0) && close(sloping.uneven_pct().likely, 40.0));
    let factor = entered(&[("ground", "factor"), ("ground_factor", "1.06")]).0.expect("complete");
    assert!(close(factor.uneven_pct().likely, 6.0));
    let flat = entered(&[("uneven", "5 to 10")]).0.expect("complete");
    assert_eq!((flat.on, flat.uneven_pct().low, flat.uneven_pct().high), ("flat", 5.0, 10.0));
    // Entries of another ground are not looked at.
    let other = entered(&[("ground", "ribs"), ("rib_pitch", "24"), ("rib_depth", "3"), ("rib_top", "x")]);
    assert!(close(other.0.expect("complete").more_pct.likely, 25.0) && other.1.is_empty());
}

#[test]
fn what_cannot_be() {
    let impossible = |entries: &[(&str, &str)]| {
        let (none, found) = entered(entries);
        assert!(none.is_none());
        found
    };
    let said = |field: &str| vec![(Code::ProfileImpossible, field.to_owned())];
    let rib = [("ground", "ribbed"), ("rib_pitch", "12"), ("rib_depth", "1")];
    assert_eq!(impossible(&[&rib[..], &[("rib_top", "13")]].concat()), said("rib_top"));
    let both = [("rib_top", "7"), ("rib_bottom", "6")];
    assert_eq!(impossible(&[&rib[..], &both].concat()), said("rib_bottom"));
    let wave = [("ground", "wave"), ("rib_pitch", "2 to 3"), ("rib_depth", "1.1")];
    assert_eq!(impossible(&wave), said("rib_depth"));
    assert_eq!(impossible(&[("ground", "ribs"), ("rib_depth", "1")]), [(Code::Needed, "rib_pitch".into())]);
    assert_eq!(impossible(&[("ground", "stone")]), [(Code::Needed, "stone_way".into())]);
    let fill = [("ground", "stone"), ("stone_way", "fill")];
    assert_eq!(impossible(&fill), [(Code::Needed, "pockets".into())]);
    let thin = [("ground", "factor"), ("ground_factor", "0.9")];
    assert_eq!(impossible(&thin), [(Code::BelowLimit, "ground_factor".into())]);
}

/// The readings of a forum's stone wall: 0, 1, 2½, ½, 3, 1½, 0, 2 in, mean 1 5/16 in.
#[test]
fn pockets_of_stone() {
    let pockets = [("ground", "stone"), ("pockets", "0, 1, 2 1/2, 1/2, 3, 1 1/2, 0, 2")];
    let fill = entered(&[&pockets[..], &[("stone_way", "fill")]].concat()).0.expect("complete");
    assert_eq!((fill.pocket_in, fill.deepest_in), (Inches(1.3125), Inches(3.0)));
    assert_eq!(fill.uneven_pct().likely, 0.0);
    let (follow, found) = entered(&[&pockets[..], &[("stone_way", "follow")]].concat());
    let follow = follow.expect("complete");
    assert_eq!((follow.pocket_in, follow.deepest_in), (Inches(0.0), Inches(3.0)));
    assert_eq!(found, [(Code::ContourNotCounted, "uneven".to_owned())]);
}

/// Every word of the field that asks for something has its row, and every row its word.
#[test]
fn a_row_for_every_ground() {
    let words = crate::job::field(Part::Surface, "ground").expect("a field").choices;
    let rows: Vec<_> = grounds().map(|form| form.ground).collect();
    assert_eq!(words.iter().copied().filter(|word| *word != "flat").collect::<Vec<_>>(), rows);
    for asked in grounds().flat_map(|form| form.entries) {
        assert!(crate::job::field(Part::Surface, asked.field).is_some(), "{}", asked.field);
    }
}

proptest! {
    /// Never less than the plane, never more than it with upright flanks; a deeper profile is never shorter, and a
    /// range runs from less to more.
    #[test]
    fn a_profile_is_never_less_than_its_plane(
        pitch in 0.2..100.0_f64, depth in 0.0..50.0_f64, deeper in 0.0..10.0_f64,
        top in 0.0..1.0_f64, bottom in 0.0..1.0_f64,
    ) {
        let (top, bottom) = (top * pitch, bottom * (1.0 - top) * pitch);
        for of in [
            &(|depth| ribbed_in(pitch, depth, top, bottom)) as &dyn Fn(f64) -> f64,
            &|depth| wave_in(pitch, depth.min(pitch / 2.0)),
            &|depth| over_ribs_in(pitch, depth),
        ] {
            let long = of(depth);
            prop_assert!(long >= pitch * (1.0 - 1e-12), "{long} {pitch}");
            prop_assert!(long <= pitch + 2.0 * depth + 1e-9 * pitch);
            prop_assert!(of(depth + deeper) >= long - 1e-9 * long);
        }
        // A wider pitch has fewer ribs.
        let share = |pitch: f64| ribbed_in(pitch, depth, top, bottom) / pitch;
        prop_assert!(share(pitch + deeper) <= share(pitch) + 1e-9);
    }

    #[test]
    fn a_range_of_a_profile_runs_from_less_to_more(
        pitch in 4.0..45.0_f64, wider in 0.0..10.0_f64, depth in 0.0..1.5_f64, deeper in 0.0..0.4_f64,
        kind in 0..3_usize,
    ) {
        let range = |from: f64, more: f64| format!("{from} to {} in", from + more);
        let (pitch, depth) = (range(pitch, wider), range(depth, deeper));
        let word = ["ribbed", "wave", "ribs"][kind];
        let entries = [("ground", word), ("rib_pitch", &*pitch), ("rib_depth", &*depth), ("rib_top", "1 in")];
        let (found, said) = entered(&entries);
        prop_assert!(said.is_empty(), "{said:?}");
        let more = found.expect("complete").uneven_pct();
        prop_assert!(0.0 <= more.low && more.low <= more.likely + 1e-9 && more.likely <= more.high + 1e-9);
    }
}
