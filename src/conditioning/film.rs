//! What stands between the steel and the air: the gap, the carton or box, and the film of air around it.

use super::cylinder::Body;
use core::f64::consts::PI;

/// Gap between cylinder and carton in m²K/W: corners averaged, free convection and radiation. Own judgement.
const GAP: f64 = 0.15;
/// What a carton stands on, in m²K/W. From memory.
const FLOOR: f64 = 0.10;
/// The same at a cylinder's own foot ring, in m²K/W. Own judgement.
const FOOT: f64 = 0.02;
/// A pair's carton is wider than both cylinders together, and higher than they are to the valve.
const WIDER_M: f64 = 0.012;
const HIGHER_M: f64 = 0.02;
/// Corrugated board 4 mm thick, in m²K/W. From memory: 0.06 to 0.08.
const CARTON: f64 = 0.07;
/// A box of R-5 in m²K/W; nominal.
const R5: f64 = 0.88;
/// Emissivity of board and paint; from memory.
const EMITS: f64 = 0.9;
/// Stefan–Boltzmann constant, W/m²K⁴ (CODATA).
const SIGMA: f64 = 5.670_374_419e-8;

/// The film's coefficients in W/m²K: convection at an upright plate (Churchill and Chu 1975, all Rayleigh numbers) and
/// radiation, for a difference in K, a height in m and the mean temperature of the film in °C.
///
/// Air: k = 0.0242 + 7×10⁻⁵ t W/mK, ν = 1.5233×10⁻⁵ m²/s at 22.5 °C and ∝ T^1.75, Pr 0.71: usual fits to tables.
pub fn film(difference: f64, height: f64, mean_c: f64) -> (f64, f64) {
    let kelvin = mean_c + 273.15;
    let k = 0.0242 + 7e-5 * mean_c;
    let viscosity = 1.5233e-5 * power(kelvin / 295.65, 1.75);
    let prandtl = 0.71;
    let rayleigh = 9.81 / kelvin * difference * height * height * height / (viscosity * viscosity) * prandtl;
    let below = power(1.0 + power(0.492 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
    let root = 0.825 + 0.387 * power(rayleigh, 1.0 / 6.0) / below;
    (k / height * root * root, 4.0 * EMITS * SIGMA * kelvin * kelvin * kelvin)
}

/// A power of a number of at least zero. The library's own is many times the code of exponent and logarithm, which
/// are there already.
fn power(base: f64, exponent: f64) -> f64 {
    libm::exp(exponent * libm::log(base))
}

/// How a cylinder is packed and how it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Packed {
    /// What it stands in: a word of the field `pack`.
    pub pack: &'static str,
    /// The share of its way to the air that neighbors take.
    pub blocked: f64,
}

/// From steel to air and from the bottom of the liquid to the air, in W/K, for one of a pair that starts at one
/// temperature in air of another (°F). The film is taken half-way: the side halves the difference, and the film's own
/// mean lies half-way again.
pub fn conductances(body: &Body, packed: Packed, start_f: f64, air_f: f64) -> (f64, f64) {
    let height = body.height + HIGHER_M;
    let mean_c = ((start_f + 3.0 * air_f) / 4.0 - 32.0) / 1.8;
    let (convection, radiation) = film((start_f - air_f).abs() / 3.6, height, mean_c);
    let h = convection + radiation;
    let steel = 2.0 * PI * body.radius * height;
    let board = match packed.pack {
        "bare" => 0.0,
        "box_r5" => CARTON + R5,
        "box_r10" => CARTON + 2.0 * R5,
        _ => CARTON,
    };
    let (long, wide) = (4.0 * body.radius + WIDER_M, 2.0 * body.radius + WIDER_M);
    let (sides, bottom) = ((long + wide) * height, long * wide / 2.0);
    // A pair's carton has the air around it; out of it each cylinder has.
    let side = match board > 0.0 {
        true => 1.0 / (GAP / steel + (board + 1.0 / h) / (sides + bottom)),
        false => h * steel,
    };
    (side * (1.0 - packed.blocked), 1.0 / (FOOT / body.section + (board + FLOOR) / bottom))
}
