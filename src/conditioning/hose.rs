//! What stands still in the hose.

/// The time in which standing liquid loses all but 1/e of its excess over the air, in minutes: liquid in a polyethylene
/// hose of ¼ in bore and 10 mm outside, k 0.4 W/mK, film 10 W/m²K. Own judgement of a usual hose.
pub const HOSE_MIN: f64 = 8.3;

/// Until standing liquid passes a limit, upward on the hot side and downward on the other, in minutes; none where this air
/// never brings it there.
pub fn hose(from: f64, air: f64, (limit, hot): (f64, bool)) -> Option<f64> {
    let beyond = if hot { air > limit } else { air < limit };
    let left = (limit - air) / (from - air);
    // Air as warm as the liquid, or warmer than it: on the wrong side of the limit already.
    let times = if left > 0.0 && left < 1.0 { -libm::log(left) } else { 0.0 };
    beyond.then_some(HOSE_MIN * times)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    #[test]
    fn the_time_is_that_of_a_usual_hose() {
        // τ = (ρcA of liquid + ρcA of wall) ÷ U′, U′ = 1/[ln(ro/ri)/2πk + 1/(h 2πro)]: Incropera, conduction in tubes.
        let (inner, outer): (f64, f64) = (0.125 * 0.0254, 0.005);
        let liquid = 1_170.0 * 1_900.0 * PI * inner * inner;
        let wall = 920.0 * 1_800.0 * PI * (outer * outer - inner * inner);
        let through = 1.0 / (libm::log(outer / inner) / (2.0 * PI * 0.4) + 1.0 / (10.0 * 2.0 * PI * outer));
        assert!(((liquid + wall) / through / 60.0 - HOSE_MIN).abs() < 0.02);
    }

    #[test]
    fn seventy_five_to_fifty_in_forty_takes_ten_minutes() {
        assert!((hose(75.0, 40.0, (50.0, false)).unwrap() - 10.4).abs() < 0.05);
        assert_eq!(hose(75.0, 72.0, (70.0, false)), None);
        // Nor does air that is as warm as the liquid, or warmer.
        assert_eq!(hose(75.0, 75.0, (70.0, false)), None);
        assert_eq!(hose(74.7, 80.0, (70.0, false)), None);
        assert_eq!(hose(75.0, 40.0, (75.0, false)), Some(0.0));
        assert!((hose(75.0, 110.0, (90.0, true)).unwrap() - 8.3 * libm::log(35.0 / 20.0)).abs() < 1e-9);
    }
}
