//! The sun, the air and the surfaces against `tests/published/weather.json` (remade by `tests/oracles/weather.py`),
//! and what has to hold of every day.

use super::day_curve::{Course, Shape};
use super::window::{EDGE_MIN, Spans, longest, spans};
use super::*;
use crate::foam::Window;
use proptest::prelude::*;
use serde_json::Value;
use std::path::Path;

/// The rows of a list of the file; there are as many as it says.
fn rows(list: &str, count: usize) -> Vec<Value> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published/weather.json");
    let stored: Value = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
    let rows = stored[list].as_array().unwrap().clone();
    assert_eq!(rows.len(), count, "{list}");
    rows
}

/// The air, and what surfaces do.
fn stretches(air: &Spans, surfaces: &[Spans]) -> Vec<Stretch> {
    let mut all = vec![air.clone()];
    all.extend_from_slice(surfaces);
    window::stretches(&all)
}

fn number(row: &Value, name: &str) -> f64 {
    row[name].as_f64().unwrap_or_else(|| panic!("no {name} in {row}"))
}

fn body(row: &Value) -> [f64; 3] {
    [0, 1, 2].map(|at| row["body"][at].as_f64().unwrap())
}

fn window(least: f64, most: f64) -> Window {
    Window { least_f: Fahrenheit(least), most_f: Fahrenheit(most), default: false }
}

/// Height and azimuth in degrees, from the same declination and equation of time as rise and set.
fn seen(place: (f64, f64), day: f64, clock_h: f64, hour: f64) -> (f64, f64) {
    let height = sun::height(day, place, clock_h * 60.0, hour * 60.0);
    let (declination, equation) = sun::sky(day + (hour - clock_h) / 24.0);
    let turn = ((hour - clock_h) * 60.0 + equation + 4.0 * place.1) / 4.0 - 180.0;
    let (turn, north) = (turn.to_radians(), place.0.to_radians());
    let west = libm::cos(declination) * libm::sin(turn);
    let up = libm::sin(declination) * libm::cos(north)
        - libm::cos(declination) * libm::sin(north) * libm::cos(turn);
    (libm::asin(height).to_degrees(), libm::atan2(-west, up).to_degrees().rem_euclid(360.0))
}

/// A full solar position algorithm: within 0.02 h and 0.02°, polar day and night included.
#[test]
fn the_sun_rises_and_sets_as_a_full_algorithm_has_it() {
    for row in rows("sun", 13) {
        let (day, clock_h) = (number(&row, "day"), number(&row, "clock_h"));
        let place = (number(&row, "latitude"), number(&row, "longitude"));
        let (light, odd) = sun::light(day, Some(place), clock_h * 60.0);
        assert_eq!(odd, None, "{row}");
        let stays = match light.sun {
            Sun::Rises => Value::Null,
            Sun::NeverSets => "up".into(),
            Sun::NeverRises => "down".into(),
            Sun::NoPlace => panic!("{row}"),
        };
        assert_eq!(stays, row["stays"], "{row}");
        assert!((light.noon_min() / 60.0 - number(&row, "noon_h")).abs() < 0.02, "{row}: {light:?}");
        if light.sun == Sun::Rises {
            let off = [(light.rise_min, "rise_h"), (light.set_min, "set_h")]
                .map(|(minute, name)| (minute / 60.0 - number(&row, name)).abs());
            assert!(off[0] < 0.02 && off[1] < 0.02, "{row}: {light:?}");
        }
        let (height, azimuth) = seen(place, day, clock_h, 10.0);
        assert!((height - number(&row, "height_10h_deg")).abs() < 0.02, "{row}: {height}");
        assert!((azimuth - number(&row, "azimuth_10h_deg")).abs() < 0.02, "{row}: {azimuth}");
    }
}

#[test]
fn a_clear_sky_on_a_wall() {
    for row in rows("on_wall", 3) {
        let (day, clock_h) = (number(&row, "day"), number(&row, "clock_h"));
        let place = (number(&row, "latitude"), number(&row, "longitude"));
        let (height, azimuth) = seen(place, day, clock_h, number(&row, "hour"));
        let turned = libm::cos((azimuth - number(&row, "looks_deg")).to_radians());
        let w_m2 = sun::on_wall(libm::sin(height.to_radians()), turned);
        assert!((w_m2 - number(&row, "w_m2")).abs() < 0.5, "{row}: {w_m2}");
    }
    assert_eq!(sun::on_wall(-0.01, 1.0), 0.0);
}

#[test]
fn the_air_by_the_form_as_it_was_published() {
    for row in rows("air_as_published", 3) {
        let of = |name| number(&row, name);
        let (low_f, high_f) = (of("low"), of("high"));
        let day_h = of("set") - of("rise");
        let before_f = (low_f, high_f);
        let course = Course { low_f, high_f, next_low_f: low_f, before_f, rise_h: of("rise"), day_h };
        let shape = Shape {
            after_noon_h: of("after_noon"),
            after_rise_h: of("after_rise"),
            falls: of("falls"),
            left: 0.0,
        };
        let air = course.by(shape, of("hour"));
        assert!((air - of("air")).abs() < 1e-4, "{row}: {air}");
    }
}

#[test]
fn the_air_by_the_form_that_reaches_the_next_low() {
    for row in rows("air", 25) {
        let of = |name| number(&row, name);
        let course = Course {
            low_f: of("low"),
            high_f: of("high"),
            next_low_f: of("next_low"),
            before_f: (row["before"][0].as_f64().unwrap(), row["before"][1].as_f64().unwrap()),
            rise_h: of("rise"),
            day_h: of("set") - of("rise"),
        };
        let air = course.air_f(of("hour"));
        assert!((air - of("air")).abs() < 1e-4, "{row}: {air}");
    }
}

#[test]
fn a_face_of_thick_masonry_swings_less_and_later() {
    for row in rows("masonry", 4) {
        let (size, lag_h) = surfaces::swing(body(&row), number(&row, "film"));
        assert!((size - number(&row, "size")).abs() < 1e-5, "{row}: {size}");
        assert!((lag_h - number(&row, "lag_h")).abs() < 1e-5, "{row}: {lag_h}");
    }
}

#[test]
fn an_inner_face_lies_between_room_and_air() {
    for row in rows("inner_face", 5) {
        let (outer, room) = (number(&row, "outer_f"), number(&row, "room_f"));
        let face = outer + (room - outer) * surfaces::share(number(&row, "outside"));
        assert!((face - number(&row, "face_f")).abs() < 0.01, "{row}: {face}");
    }
}

fn hours(body: [f64; 3], thick_m: f64, from_f: f64, to_f: f64, air_f: f64) -> Option<f64> {
    let [takes, passes] = heat_plan::plate(body, thick_m);
    Some(heat_plan::turns(from_f, to_f, air_f)? * takes / passes / 3_600.0)
}

/// The lumped form with a third of the plate's own resistance, against the exact series: within 4 %, of what is shown
/// as an order of magnitude.
#[test]
fn a_plate_is_warm_when_the_exact_series_says_so() {
    for row in rows("plate", 6) {
        let of = |name| number(&row, name);
        let taken = hours(body(&row), of("inches") * 0.0254, of("start_f"), of("to_f"), of("warm_f"));
        let off = taken.unwrap() / of("hours") - 1.0;
        assert!(off.abs() < 0.04, "{row}: {taken:?}, off by {off}");
    }
    // Air that is no warmer than what is wanted never brings it there; what is there already takes no time.
    assert_eq!(hours(surfaces::CONCRETE, 0.1, 40.0, 60.0, 60.0), None);
    assert_eq!(hours(surfaces::CONCRETE, 0.1, 60.0, 60.0, 50.0), Some(0.0));
}

/// The day of the check values: the air is between 60 and 90 °F from 10.25 h to 19.33 h.
fn fall_day() -> Course {
    let (low_f, high_f, next_low_f, before_f) = (44.0, 71.0, 46.0, (44.0, 68.0));
    Course { low_f, high_f, next_low_f, before_f, rise_h: 6.957, day_h: 11.072 }
}

#[test]
fn the_hours_inside_a_window() {
    let course = fall_day();
    let air = spans(&|hour| course.air_f(hour), window(60.0, 90.0));
    let (Some(from), Some(to)) = longest(&air) else { panic!("never inside") };
    assert!((from.0 / 60.0 - 10.25).abs() < 0.1 && (to.0 / 60.0 - 19.33).abs() < 0.1, "{from:?} {to:?}");
    let day = stretches(&air, &[]);
    let says: Vec<Says> = day.iter().map(|one| one.says).collect();
    use Says::{Inside, MeasureFirst, Outside};
    assert_eq!(says, [Outside, MeasureFirst, Inside, MeasureFirst, Outside]);
    assert_eq!((day[2].from_min.0, day[2].to_min.0), (from.0 + EDGE_MIN, to.0 - EDGE_MIN));
    // A surface that never is inside leaves nothing but "measure first"; a day that never is inside has no stretches.
    assert!(stretches(&air, &[Vec::new()]).iter().all(|one| one.says != Inside));
    let cold = spans(&|hour| course.air_f(hour), window(72.0, 90.0));
    assert_eq!((stretches(&cold, &[]), longest(&cold)), (Vec::new(), (None, None)));
    // Too hot at midday: the longer of two times is named. The air is above 65 °F about noon.
    let hot = spans(&|hour| course.air_f(hour), window(40.0, 65.0));
    assert_eq!(hot.len(), 2, "{hot:?}");
    let (from, _) = longest(&hot);
    assert_eq!(from, Some(Minutes(0.0)));
    // Inside all day and all night: no edge anywhere.
    let always = stretches(&spans(&|hour| course.air_f(hour), window(30.0, 90.0)), &[]);
    assert_eq!(always.len(), 1);
    assert_eq!(always[0].says, Inside);
}

fn a_course() -> impl Strategy<Value = Course> {
    let (low, swing, shift) = (-30.0..90.0_f64, 0.0..45.0_f64, -20.0..20.0_f64);
    (low, swing, shift, 0.0..45.0_f64, -20.0..20.0_f64, 4.0..22.0_f64, 11.0..14.5_f64).prop_map(
        |(low_f, swing, shift, swing_before, after, day_h, noon_h)| Course {
            low_f,
            high_f: low_f + swing,
            next_low_f: low_f + after,
            before_f: (low_f + shift, low_f + shift + swing_before),
            rise_h: noon_h - day_h / 2.0,
            day_h,
        },
    )
}

proptest! {
    /// The air lies between the lowest and the highest figure that it follows from, reaches the day's own, and a
    /// warmer forecast makes every hour warmer by as much.
    #[test]
    fn the_air_keeps_to_its_figures(course in a_course(), warmer in 0.0..30.0_f64) {
        let all = [course.low_f, course.high_f, course.next_low_f, course.before_f.0, course.before_f.1];
        let least = all.iter().copied().fold(f64::INFINITY, f64::min);
        let most = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let warm = Course {
            low_f: course.low_f + warmer,
            high_f: course.high_f + warmer,
            next_low_f: course.next_low_f + warmer,
            before_f: (course.before_f.0 + warmer, course.before_f.1 + warmer),
            ..course
        };
        for minute in minutes() {
            let air = course.air_f(minute / 60.0);
            prop_assert!(air >= least - 1e-9 && air <= most + 1e-9, "{air}");
            prop_assert!((warm.air_f(minute / 60.0) - air - warmer).abs() < 1e-9);
        }
        prop_assert!((course.air_f(course.warmest_h()) - course.high_f).abs() < 1e-9);
        prop_assert!((course.air_f(course.rise_h + 0.3) - course.low_f).abs() < 1e-9);
    }

    /// Stretches follow one another from midnight to midnight, each other than the one before; and whatever surfaces
    /// do, "outside" stays what it is and nothing but "inside" becomes "measure first".
    #[test]
    fn stretches_tile_the_day_and_surfaces_only_take_away(
        course in a_course(), surface in a_course(), least in 30.0..75.0_f64, wide in 0.0..50.0_f64,
    ) {
        let air = spans(&|hour| course.air_f(hour), window(least, least + wide));
        let face = spans(&|hour| surface.air_f(hour), window(least, least + wide));
        let bare = stretches(&air, &[]);
        let both = stretches(&air, &[face]);
        prop_assert_eq!(bare.is_empty(), both.is_empty());
        for day in [&bare, &both] {
            let mut at = 0.0;
            let mut before = None;
            for one in day {
                prop_assert_eq!(one.from_min.0, at);
                prop_assert!(one.to_min > one.from_min && before != Some(one.says));
                (at, before) = (one.to_min.0, Some(one.says));
            }
            prop_assert!(day.is_empty() || at == 1_440.0);
        }
        for minute in minutes() {
            let (alone, with) = (says_at(&bare, minute), says_at(&both, minute));
            prop_assert_eq!(alone == Says::Outside, with == Says::Outside);
            prop_assert!(with != Says::Inside || alone == Says::Inside);
            let air_f = course.air_f(minute / 60.0);
            prop_assert!(with == Says::Outside || (air_f > least - 1e-6 && air_f < least + wide + 1e-6), "{air_f}");
        }
    }

    /// Any place, any clock: rise, noon and set in their order, and a day as long as its course may take it.
    #[test]
    fn any_sun_is_in_order(
        north in -90.0..=90.0_f64, east in -180.0..=180.0_f64, day in 0.0..40_000.0_f64, off in -180.0..180.0_f64,
    ) {
        let (light, odd) = sun::light(day.floor(), Some((north, east)), off + east * 4.0);
        prop_assert!(light.rise_min <= light.set_min && light.set_min - light.rise_min <= 1_440.0);
        prop_assert!(light.hours() >= 4.0 && light.hours() <= 22.0);
        prop_assert_eq!(odd.is_some(), light.sun == Sun::NoPlace);
    }

    /// Warmer air under the tent never takes longer, a thicker plate never less.
    #[test]
    fn a_heat_plan_goes_the_right_way(thick in 0.01..0.4_f64, air in 61.0..120.0_f64, more in 0.0..40.0_f64) {
        let within = |thick, air| hours(surfaces::CONCRETE, thick, 40.0, 60.0, air).unwrap();
        prop_assert!(within(thick, air + more) <= within(thick, air));
        prop_assert!(within(thick + more / 100.0, air) >= within(thick, air));
    }
}
