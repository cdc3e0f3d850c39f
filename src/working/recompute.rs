//! Every step of the working, worked out again from its inputs alone.

mod air;
mod weather;

use super::{Scope, Step, steps};
use crate::job::{Job, Now};
use crate::readiness::moist_air;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::PI;
use std::path::Path;

/// What stands at a step's inputs, seen in one column of its bands.
struct Given<'a> {
    values: Vec<Value>,
    column: &'a str,
}

impl Given<'_> {
    /// The number at this input.
    fn one(&self, input: usize) -> f64 {
        number(&self.values[input], self.column)
            .unwrap_or_else(|| panic!("no number: {}", self.values[input]))
    }

    /// The other end of a band, for what is taken away: the least is left where the most is taken.
    fn other_column(&self) -> &'static str {
        match self.column {
            "low" => "high",
            "high" => "low",
            _ => "likely",
        }
    }

    /// The numbers of the list at this input.
    fn all(&self, input: usize) -> Vec<f64> {
        let list = self.values[input].as_array().unwrap_or_else(|| panic!("no list: {}", self.values[input]));
        list.iter().map(|one| number(one, self.column).expect("a number")).collect()
    }
}

fn sum(all: &[f64]) -> Value {
    all.iter().sum::<f64>().into()
}

/// How far from its start a walk ends that leaves its last legs out.
fn walked(given: &Given, left_out: usize) -> f64 {
    let (lengths, turns) = (given.all(0), given.all(1));
    let (mut east, mut north, mut heading) = (0.0, 0.0, 0.0_f64);
    for (length, turn) in lengths.iter().zip(&turns).take(lengths.len() - left_out) {
        east += length * libm::cos(heading.to_radians());
        north += length * libm::sin(heading.to_radians());
        heading += turn;
    }
    libm::hypot(east, north)
}

/// Where a vapor pressure saturates, by halving.
fn settles_at(pa: f64, saturation: fn(f64) -> Option<f64>) -> f64 {
    let (mut low, mut high) = (moist_air::COLDEST_F, moist_air::HOTTEST_F);
    for _ in 0..80 {
        let middle = (low + high) / 2.0;
        if saturation(middle).expect("in range") < pa {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// The formula of each step, by its code: an entry of every room's own.
fn formula(code: &str) -> Option<fn(&Given) -> Value> {
    Some(match code {
        // surfaces
        "gross_typed" => |given| given.one(0).into(),
        "gross_plane" | "gross_floor" => |given| (given.one(0) * given.one(1) / 144.0).into(),
        "gross_footprint" => |given| (2.0 * (given.one(0) + given.one(1)) * given.one(2) / 144.0).into(),
        "run_typed" | "run_landing" | "bays_typed" | "rise_typed" | "around_typed" => {
            |given| given.one(0).into()
        }
        "run_sides" => |given| (2.0 * (given.one(0) + given.one(1))).into(),
        "landing_length" | "landing_width" => |given| (2.0 * given.one(0)).into(),
        "landing_typed" => |given| given.one(0).min(given.one(1)).into(),
        "rim_band" | "rim_ledge" | "rim_lap" | "gross_pitched" | "gross_strip" | "gross_gap"
        | "gross_arch" | "gross_around" => |given| (given.one(0) * given.one(1) / 144.0).into(),
        "rim_cores" | "times" => |given| (given.one(0) * given.one(1)).into(),
        "room_floor" | "room_ceiling" | "room_front" | "room_right" | "room_back" | "room_left" => {
            |given| (given.one(0) * given.one(1) / 144.0).into()
        }
        "gross_rim" | "gross_room" | "gross_cylinder" => |given| sum(&given.all(0)),
        "bays_from_run" => |given| (given.one(0) / given.one(1) - 1e-9).ceil().into(),
        "gross_bays" => |given| ((0..4).map(|at| given.one(at)).product::<f64>() / 144.0).into(),
        "slope_length" => |given| (given.one(0) * libm::hypot(given.one(1), 1.0)).into(),
        "rise_pitch" => |given| (given.one(0) / 2.0 * given.one(1)).into(),
        "gross_gable" => |given| (given.one(0) * (given.one(1) + given.one(2) / 2.0) / 144.0).into(),
        "hip_rise" => |given| (given.one(0).min(given.one(1)) / 2.0 * given.one(2)).into(),
        "hip_slope" => |given| (given.one(0).min(given.one(1)) / 2.0 * libm::hypot(given.one(2), 1.0)).into(),
        "hip_length" => |given| {
            let run = given.one(0).min(given.one(1)) / 2.0;
            libm::hypot(libm::hypot(run, run), run * given.one(2)).into()
        },
        "ridge_length" => |given| (given.one(0).max(given.one(1)) - given.one(0).min(given.one(1))).into(),
        "gross_hip" => |given| (given.one(0) * given.one(1) * libm::hypot(given.one(2), 1.0) / 144.0).into(),
        "gross_triangle" => |given| (given.one(0) * given.one(1) / 288.0).into(),
        "gross_heron" => |given| {
            // By the law of cosines: half of two sides and the sine of the corner between them.
            let (a, b, c) = (given.one(0), given.one(1), given.one(2));
            let angle = libm::acos((a * a + b * b - c * c) / (2.0 * a * b));
            (a * b * libm::sin(angle) / 288.0).into()
        },
        "triangle_height" => |given| (given.one(0) * 288.0 / given.one(1)).into(),
        "gross_trapezoid" => |given| {
            let (base, top) = (given.one(0), given.one(1));
            ((base.min(top) + (base - top).abs() / 2.0) * given.one(2) / 144.0).into()
        },
        "walk_around" => |given| sum(&given.all(0)),
        "walk_gap" => |given| walked(given, 0).into(),
        "walk_closing" => |given| walked(given, 1).into(),
        "gross_polygon" => |given| {
            let (x, y) = (given.all(0), given.all(1));
            let twice: f64 = (0..x.len())
                .map(|one| {
                    let next = (one + 1) % x.len();
                    x[one] * y[next] - x[next] * y[one]
                })
                .sum();
            (twice.abs() / 288.0).into()
        },
        "spacing_share" => |given| (given.one(0) / given.one(1) * 100.0).into(),
        "gross_band" => |given| (given.one(0) * (given.one(2) - given.one(1)).max(0.0) / 144.0).into(),
        "gross_penetrations" => |given| {
            let ring = given.one(1) * given.one(1) - given.one(2) * given.one(2);
            (given.one(0) * PI / 4.0 * ring.max(0.0) / 144.0).into()
        },
        "arc_rise" => |given| {
            let (span, rise) = (given.one(0), given.one(1));
            let radius = (span * span / 4.0 + rise * rise) / (2.0 * rise);
            (4.0 * radius * libm::atan(2.0 * rise / span)).into()
        },
        "arc_radius" => |given| (2.0 * given.one(1) * libm::asin(given.one(0) / 2.0 / given.one(1))).into(),
        "around_diameter" => |given| (given.one(0) * PI).into(),
        "around_sides" => |given| (given.one(0) * given.one(1) + given.one(2) * given.one(3)).into(),
        "cylinder_wall" => |given| (given.one(0) * (given.one(2) - given.one(1)) / 144.0).into(),
        "cylinder_ends" => |given| (given.one(0) * given.one(1) * given.one(1) / PI / 4.0 / 144.0).into(),
        "gross_dome" => |given| {
            let (half, rise) = (given.one(0) / 2.0, given.one(1));
            (PI * (half * half + rise * rise) / 144.0).into()
        },
        "wrap_inside" => |given| {
            let wall = PI * given.one(0) / given.one(1);
            (-(wall + given.one(2) * given.one(1) / 144.0) / given.one(3) * given.one(4)).into()
        },
        "wrap_outside" => |given| {
            let wall = PI * given.one(0) / given.one(1);
            ((wall + given.one(2) * PI / 4.0 * given.one(1) / 144.0) / given.one(3) * given.one(4)).into()
        },
        "wrap_box_duct" => |given| {
            let corners = given.one(0) * given.one(1);
            (corners * PI / 4.0 * given.one(2) / 144.0 / given.one(3) * given.one(4)).into()
        },
        "wrap_round_duct" => |given| (PI * given.one(0) / 144.0 / given.one(1) * given.one(2)).into(),
        "opening" => |given| (given.one(0) * given.one(1) * given.one(2) / 144.0).into(),
        "openings" | "framing_pieces" => |given| sum(&given.all(0)),
        "counted_share" => |given| (given.all(0).iter().sum::<f64>() / given.one(1) * 100.0).into(),
        "framing_estimated" | "framing_share" => {
            |given| ((given.one(0) - given.one(1)) * given.one(2) / 100.0).into()
        }
        "net" => |given| (given.one(0) - given.one(1) - given.one(2)).into(),
        // depth
        "depth_needed" => |given| {
            let part = (given.one(0) - given.one(2)) / (given.one(4) - given.one(2));
            (given.one(1) + (given.one(3) - given.one(1)) * part).into()
        },
        "planning_r" => |given| {
            let part = (given.one(0) - given.one(1)) / (given.one(3) - given.one(1));
            (given.one(2) + (given.one(4) - given.one(2)) * part).into()
        },
        "both_r" => |given| (0..5).map(|at| given.one(at)).sum::<f64>().into(),
        "foam_path_r" => |given| (given.one(0) + given.one(1) - given.one(2) + given.one(3)).into(),
        "member_path_r" => |given| (given.one(0) + 1.25 * given.one(1)).into(),
        "u_framed" => |given| {
            let share = given.one(0) / 100.0;
            ((1.0 - share) / given.one(1) + share / given.one(2)).into()
        },
        "u_plain" | "effective_r" => |given| (1.0 / given.one(0)).into(),
        "u_isothermal" => |given| {
            let (both, share) = (given.one(0), given.one(1) / 100.0);
            let plane = (1.0 - share) / (given.one(2) - both) + share / (given.one(3) - both);
            (1.0 / (both + 1.0 / plane)).into()
        },
        // Of old foam the thickest counts against the promise.
        "aim_target_over_old" => |given| {
            let old = number(&given.values[2], "high").expect("a number");
            (given.one(0) + given.one(1) + old).into()
        },
        "promised_target_over_old" => {
            |given| (given.one(0) + number(&given.values[1], "high").expect("a number")).into()
        }
        "aim_kit_over_old" => |given| (given.one(0) / (given.one(1) * given.one(2)) + given.one(3)).into(),
        "aim_left" => |given| (given.one(0) / given.one(1)).into(),
        "aim_left_over_old" => |given| (given.one(0) / given.one(1) + given.one(2)).into(),
        "aim_wrapped" => |given| {
            // The root by halving: the area half-way through times what is added is the foam.
            let (mut low, mut high) = (0.0_f64, 1_000.0_f64);
            for _ in 0..200 {
                let added = (low + high) / 2.0;
                match (given.one(1) + given.one(2) * added) * added < given.one(0) {
                    true => low = added,
                    false => high = added,
                }
            }
            (given.one(3) + high).into()
        },
        "most_exposed" => |given| given.one(0).into(),
        "rules_gap" => |given| (given.one(0) - given.one(1)).into(),
        "to_add" => |given| {
            let old = number(&given.values[1], given.other_column()).expect("a number");
            (given.one(0) - old).max(0.0).into()
        },
        "cover_area" => |given| (given.one(0) - given.one(1)).max(0.0).into(),
        "cover_cost" => |given| (given.one(0) * given.one(1)).round().into(),
        "covers_cost" => |given| sum(&given.all(0)),
        "rest_area" => |given| {
            let list = given.values[1].as_array().expect("a list");
            let taken: f64 =
                list.iter().map(|one| number(one, given.other_column()).expect("a number")).sum();
            (given.one(0) - taken).max(0.0).into()
        },
        "mean_area" => |given| {
            let there = number(&given.values[3], given.other_column()).expect("a number");
            (given.one(0) * (1.0 + given.one(2) / given.one(1) * (2.0 * there + given.one(4)))).into()
        },
        "surface_wrapped" => |given| ((given.one(0) + given.one(1) * given.one(2)) * given.one(2)).into(),
        "rest_in_place" | "rest_wrapped" => |given| (given.one(0) * given.one(1)).into(),
        "patches_in_place" => |given| (given.one(0) + given.all(1).iter().sum::<f64>()).into(),
        "uneven" => |given| (given.one(0) * given.one(1) / 100.0).into(),
        "built_member" => |given| (given.one(0) * given.one(1)).into(),
        "until_area" => |given| (given.one(0) * given.one(1) / 144.0).into(),
        "until_feet" => |given| (given.one(0) * given.one(1) * (1.0 + given.one(2) / 100.0)).into(),
        "lines_in_place" => |given| (given.one(0) + given.one(1)).into(),
        "aim_target" | "aim_rules" | "most_aim" => |given| (given.one(0) + given.one(1)).into(),
        "aim_kit" => |given| (given.one(0) / (given.one(1) * given.one(2))).into(),
        "promised_aim" => |given| (given.one(0) - given.one(1)).max(0.0).into(),
        "promised_target" | "promised_rules" | "aim_rules_mean" | "wait_label" => |given| given.one(0).into(),
        "surface_in_place" => |given| (given.one(0) * given.one(1)).into(),
        // quantity
        "ground_ribbed" => |given| {
            let flats = given.one(0) + given.one(1);
            let run = ((given.one(3) - flats) / 2.0).max(0.0);
            (flats + 2.0 * (given.one(2) * given.one(2) + run * run).sqrt()).into()
        },
        // By the radius of the arc: rise h over the chord c has the radius (c²/4 + h²) ÷ 2h.
        "ground_wave" => |given| {
            let (half, rise) = (given.one(0) / 4.0, given.one(1) / 2.0);
            let radius = (half * half + rise * rise) / (2.0 * rise);
            let angle = 2.0 * libm::asin(half / radius);
            (2.0 * radius * angle).into()
        },
        "ground_ribs" => |given| (given.one(0) + 2.0 * given.one(1)).into(),
        "ground_more" => |given| ((given.one(0) / given.one(1) - 1.0) * 100.0).into(),
        "ground_typed" => |given| ((given.one(0) - 1.0) * 100.0).into(),
        "ground_uneven" => |given| {
            let (typed, more) = (1.0 + given.one(0) / 100.0, 1.0 + given.one(1) / 100.0);
            ((typed * more - 1.0) * 100.0).into()
        },
        "fill" => |given| (given.one(0) * given.one(1)).into(),
        "filled_in_place" => |given| (given.one(0) + given.one(1) + given.one(2)).into(),
        "in_place" => |given| sum(&given.all(0)),
        "over_depth" | "other_waste" => |given| (given.one(0) * given.one(1) / 100.0).into(),
        "to_spray" => |given| (given.one(0) + given.one(1) + given.one(2)).into(),
        "to_spray_up" => |given| (given.one(0) - 1e-9).ceil().max(0.0).into(),
        // kits
        "after_factor" => |given| (given.one(0) * given.one(1) / 100.0).into(),
        "usable" => |given| (given.one(0) - given.one(1)).max(0.0).into(),
        "stock_after_factor" => |given| (given.one(0) * given.one(1) / 100.0).into(),
        "share_a" | "share_b" => |given| (given.one(0) / given.one(1) * 100.0).min(100.0).into(),
        "least_share" => |given| given.one(0).min(given.one(1)).into(),
        "stock_sealed" => |given| (given.one(0) - given.one(1)).max(0.0).into(),
        "stock_opened" => |given| (given.one(0) * given.one(1) / 100.0 * given.one(2) / 100.0).into(),
        "from_stock" => |given| sum(&given.all(0)),
        "to_buy" => |given| (given.one(0) - given.one(1)).max(0.0).into(),
        "left_over_shelf" => |given| (given.one(0) + given.one(1) - given.one(2)).into(),
        "break_factor_shelf" => |given| {
            let losses = given.one(1) + given.one(2);
            ((given.one(0) + losses) / (given.one(3) + given.one(4)) * 100.0).into()
        },
        "nozzles_with_shelf" => |given| (given.all(0).iter().sum::<f64>() + given.one(1)).into(),
        "needs_weight" => |given| (given.one(0) * given.one(1) / 12.0).into(),
        "bought_label" | "bought_usable" | "bought_cost" | "all_lifts" | "nozzles_in_cartons" => {
            |given| sum(&given.all(0))
        }
        // In whole cents and millionths of a percent, so that half a cent is half a cent.
        "price_tax" => |given| {
            let millionths = (given.one(1) * 1e6).round() as i128;
            (((given.one(0) as i128 * millionths + 50_000_000) / 100_000_000) as f64).into()
        },
        "price_total" => |given| (0..3).map(|at| given.one(at)).sum::<f64>().into(),
        "wood_room" | "wind_room" => |given| (given.one(1) - given.one(0)).into(),
        "left_over" | "dearer_by" => |given| (given.one(0) - given.one(1)).into(),
        "break_factor" => |given| {
            let losses: f64 = given.all(1).iter().sum();
            ((given.one(0) + losses) / given.all(2).iter().sum::<f64>() * 100.0).into()
        },
        "largest_kits" => |given| (given.one(0) / given.one(1) - 1e-9).ceil().into(),
        // spraying
        "lifts_over_pockets" => |given| (given.one(0) + given.one(1)).into(),
        "lifts" => |given| ((given.one(0) - 1.0 / 32.0) / given.one(1) - 1e-9).ceil().max(1.0).into(),
        "lift_each" => |given| (given.one(0) / given.one(1)).into(),
        "wait_practice" => |_| 15.0.into(),
        "wait_table" => |given| {
            let (to_one, to_two) = if given.one(1) > 2.0 { (15.0, 53.0) } else { (6.0, 20.0) };
            let over_one = (given.one(0) - 1.0).max(0.0);
            (to_one * given.one(0).min(1.0) + (to_two - to_one) * over_one).into()
        },
        "waits" => |given| (given.one(0) * (given.one(1) - 1.0)).into(),
        "nozzles" => |given| ((given.one(0) / 40.0 - 1e-9).ceil() + given.one(1) + given.one(2)).into(),
        "run_in_place" => |given| (given.one(0) * given.one(1)).into(),
        "run_achieved" => |given| ((given.one(0) + given.one(1)) / given.one(2) * 100.0).into(),
        // conditioning
        "warm_plan" => |given| given.one(0).max(given.one(1)).into(),
        "warm_in_by" => |given| (given.one(0) - given.one(1)).into(),
        // readiness
        "dew_point" => |given| {
            let shift = match given.column {
                "low" => -1.0,
                "high" => 1.0,
                _ => 0.0,
            };
            let humidity = given.one(1) + shift * given.one(3);
            let air =
                moist_air::saturation_over_water(given.one(0) + shift * given.one(2)).expect("in range");
            settles_at(air * humidity.clamp(1.0, 100.0) / 100.0, moist_air::saturation_over_water).into()
        },
        "frost_point" => |given| {
            let vapor = moist_air::saturation_over_water(given.one(0)).expect("in range");
            settles_at(vapor, moist_air::saturation_over_ice).into()
        },
        "least_surface" => |given| (given.one(0) + given.one(1)).into(),
        "inside_by" => |given| (given.one(0) - given.one(1)).min(given.one(2) - given.one(0)).into(),
        _ => return weather::formula(code).or_else(|| air::formula(code)),
    })
}

fn number(value: &Value, column: &str) -> Option<f64> {
    value.as_f64().or_else(|| value.get(column)?.as_f64())
}

/// What stands at a path: see the head of `working.rs`.
fn at(from: &Value, path: &str) -> Option<Value> {
    let Some((name, rest)) = (match path.split_once('.') {
        Some((name, rest)) => Some((name, rest)),
        None if path.is_empty() => None,
        None => Some((path, "")),
    }) else {
        return (!from.is_null()).then(|| from.clone());
    };
    let Some(list) = from.as_array() else { return at(from.get(name)?, rest) };
    if list.iter().any(|one| one.get("field").is_some()) {
        let one = list.iter().find(|one| one.get("field").and_then(Value::as_str) == Some(name))?;
        return at(one.get("value")?, rest);
    }
    Some(Value::Array(list.iter().filter_map(|one| at(one.get(name)?, rest)).collect()))
}

/// The things that a step is about.
fn things(estimate: &Value, scope: Scope) -> Vec<Value> {
    let list = |path: &str| at(estimate, path).and_then(|list| list.as_array().cloned()).unwrap_or_default();
    match scope {
        Scope::Job => vec![estimate.clone()],
        Scope::Surface => list("surfaces"),
        Scope::Opening => list("surfaces")
            .iter()
            .filter_map(|one| at(one, "area.openings")?.as_array().cloned())
            .flatten()
            .collect(),
        Scope::Kit => list("purchase.sizes"),
        Scope::Run => list("day.runs"),
        Scope::Stock => list("purchase.stock"),
        Scope::Check => list("readiness.checks"),
        Scope::Forecast => list("weather.days"),
        Scope::Warming => list("conditioning"),
    }
}

fn holds(step: &Step, thing: &Value) -> bool {
    step.when.is_none_or(|when| {
        at(thing, when.at).is_some_and(|word| word.as_str().is_some_and(|word| when.is.contains(&word)))
    })
}

fn same(given: &Value, wanted: &Value, column: &str) -> bool {
    match (number(given, column), wanted.as_f64()) {
        (Some(given), Some(wanted)) => (given - wanted).abs() <= 1e-9 * wanted.abs().max(1.0),
        _ => given == wanted,
    }
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn json(path: &Path) -> Value {
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The estimate of every job of `tests/jobs/`.
fn estimates() -> BTreeMap<String, Value> {
    let folders = std::fs::read_dir(root().join("tests/jobs")).expect("tests/jobs");
    let mut all = BTreeMap::new();
    for folder in
        folders.map(|entry| entry.expect("entry").path()).filter(|path| path.join("job.json").is_file())
    {
        let job: Job = serde_json::from_value(json(&folder.join("job.json"))).expect("a job");
        let now: Now = serde_json::from_value(json(&folder.join("now.json"))).expect("an instant");
        let estimate = serde_json::to_value(crate::estimate(&job, now)).expect("serializes");
        all.insert(folder.file_name().expect("name").to_string_lossy().into_owned(), estimate);
    }
    all
}

#[test]
fn every_result_follows_from_its_inputs() {
    let mut faults = Vec::new();
    for step in steps().filter(|step| formula(step.code).is_none()) {
        faults.push(format!("{}: no formula in recompute.rs", step.code));
    }
    let mut stood = BTreeSet::new();
    for (job, estimate) in estimates() {
        for step in steps() {
            let Some(formula) = formula(step.code) else { continue };
            for thing in things(&estimate, step.scope) {
                // A list that holds nothing of that name is no result.
                let there = |result: &Value| result.as_array().is_none_or(|list| !list.is_empty());
                let result = at(&thing, step.result).filter(there).filter(|_| holds(step, &thing));
                let Some(result) = result else { continue };
                let values: Option<Vec<Value>> = step.inputs.iter().map(|path| at(&thing, path)).collect();
                let Some(values) = values else {
                    faults.push(format!("{job}: {}: an input is missing", step.code));
                    continue;
                };
                if values.iter().any(|value| value.as_array().is_some_and(Vec::is_empty)) {
                    continue;
                }
                stood.insert(step.code);
                let columns: &[&str] =
                    if result.get("likely").is_some() { &["low", "likely", "high"] } else { &["likely"] };
                for column in columns {
                    let wanted = formula(&Given { values: values.clone(), column });
                    if !same(&result, &wanted, column) {
                        faults.push(format!(
                            "{job}: {}: {column} is {result}, its inputs give {wanted}",
                            step.code
                        ));
                    }
                }
            }
        }
    }
    for step in steps().filter(|step| !stood.contains(step.code)) {
        faults.push(format!("{}: stands in none of tests/jobs/", step.code));
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn codes_and_placeholders_are_unambiguous() {
    let mut codes = BTreeSet::new();
    for step in steps() {
        assert!(codes.insert(step.code), "{} twice", step.code);
        let names: BTreeSet<_> = step.inputs.iter().map(|path| path.rsplit('.').next()).collect();
        assert_eq!(names.len(), step.inputs.len(), "{}: two inputs with one name", step.code);
    }
}

#[test]
fn every_step_has_words_and_a_source() {
    for language in ["en", "es"] {
        let words = root().join("www/words").join(language);
        let (steps_words, sources) = (json(&words.join("working.json")), json(&words.join("sources.json")));
        for step in steps() {
            let entry = &steps_words[step.code];
            for part in ["what", "formula", "why"] {
                let text = entry[part].as_str().unwrap_or_else(|| panic!("{language} {}: {part}", step.code));
                for name in text.split('{').skip(1).filter_map(|rest| rest.split('}').next()) {
                    let known = step.inputs.iter().any(|path| path.rsplit('.').next() == Some(name));
                    assert!(known, "{language} {}: {{{name}}} is no input", step.code);
                }
            }
            assert!(sources[step.source].is_string(), "{language} {}: source {}", step.code, step.source);
        }
        let known: BTreeSet<_> = steps().map(|step| step.code).collect();
        for code in steps_words.as_object().expect("an object").keys() {
            assert!(known.contains(code.as_str()), "{language}: words for no step: {code}");
        }
    }
}
