//! What holds of any site.

use super::*;
use foamwright::findings::Severity;
use foamwright::measure::Units;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

prop_compose! {
    fn any_reading()(
        of in prop_oneof![
            Just(CylinderA), Just(CylinderB), Just(Air), Just(Humidity), Just(DewPoint), Just(Surface), Just(Surface),
            Just(WoodMoisture), Just(Wind), Just(NightLow), Just(Storage)
        ],
        tenths in prop_oneof![4 => 600..850_i32, 1 => -100..1200_i32],
        text in prop_oneof![9 => Just(None), 1 => "\\PC{0,12}".prop_map(Some)],
        minutes in prop_oneof![8 => -1..58_i32, 1 => -10..300_i32],
        stamped in prop::bool::weighted(0.97),
    ) -> SiteReading {
        let tenths = if of == Humidity { (tenths - 450).clamp(10, 1000) } else if of == DewPoint { tenths - 200 }
            else if matches!(of, WoodMoisture | Wind) { (tenths / 5).max(10) } else { tenths };
        let text = text.unwrap_or_else(|| format!("{}", f64::from(tenths) / 10.0));
        SiteReading { taken: ago(f64::from(minutes)).filter(|_| stamped), ..reading(of, &text) }
    }
}

prop_compose! {
    /// Mostly complete sites, some of them good.
    fn any_site()(
        extra in prop::collection::vec(any_reading(), 0..4),
        base in prop::collection::vec(any_reading(), 5),
        keep in prop::collection::vec(prop::bool::weighted(0.9), 5),
        answers in prop::collection::vec((prop::bool::weighted(0.15), 0..QUESTIONS.len(), 0..3_usize), 3),
        stock in prop::option::weighted(0.2, (0..40_i32, 0..40_i32)),
    ) -> Site {
        let mut readings = Vec::new();
        for ((of, one), keep) in [CylinderA, CylinderB, Air, Humidity, Surface].into_iter().zip(base).zip(keep) {
            if keep {
                let good_ones = good();
                let good_one = good_ones.job.readings.iter().find(|other| other.of == of).unwrap().clone();
                readings.push(if one.of == of { one } else { good_one });
            }
        }
        readings.extend(extra);
        let mut made = site(&readings);
        for (asked, question, word) in answers.into_iter().filter(|one| one.0) {
            let _ = asked;
            let (question, words) = QUESTIONS[question];
            made = made.answer(question, words[word % words.len()]);
        }
        if let Some((left, open)) = stock {
            let day = |days: i32| format!("2026-10-{:02}", 14 + days.clamp(-13, 17));
            made = made.kit(&[("expires", &day(left - 5)), ("opened", &day(-open)), ("state", "opened"), ("a_left", "50"), ("b_left", "50")]);
        }
        made
    }
}

/// Questions about the whole job, and what may be pressed; the last one is no answer.
const QUESTIONS: &[(&str, &[&str])] = &[
    ("flames_out", &["no", "yes", ""]),
    ("heater_lit", &["none", "vented", "unvented"]),
    ("heat_kept", &["yes", "no", ""]),
    ("outdoors", &["yes", "no", ""]),
];

/// Codes that hold the work without a reading that is outside.
const HOLDING: &[Code] =
    &[Code::FlamesLit, Code::HeaterLit, Code::KitPastDay, Code::MasonryDamp, Code::StorageTooHot];

/// The sites made up below are worth something: each verdict is common among them.
#[test]
fn made_up_sites_reach_every_verdict() {
    let mut runner = TestRunner::deterministic();
    let verdicts: Vec<Verdict> =
        (0..500).map(|_| any_site().new_tree(&mut runner).expect("a site").current().verdict()).collect();
    for wanted in [Verdict::Go, Verdict::Hold, Verdict::NotRead] {
        let count = verdicts.iter().filter(|one| **one == wanted).count();
        println!("{wanted:?}: {count} of 500");
        assert!(count >= 50, "{wanted:?}: {count} of 500");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    /// The verdict is the worst of what was found, a GO rests on everything, and blame names a stop.
    #[test]
    fn the_verdict_is_the_worst(site in any_site()) {
        let (readiness, findings) = site.said();
        let outside = readiness.checks.iter().any(|one| one.state == ReadState::Outside)
            || findings.iter().any(|one| HOLDING.contains(&one.code));
        let stop = findings.iter().any(|one| one.severity == Severity::Stop);
        let wanted = if outside { Verdict::Hold } else if stop { Verdict::NotRead } else { Verdict::Go };
        prop_assert_eq!(readiness.verdict, wanted);
        prop_assert_eq!(readiness.blame.is_some(), readiness.verdict != Verdict::Go);
        if let Some(blame) = readiness.blame {
            prop_assert_eq!(findings[blame as usize].severity, Severity::Stop);
        }
        prop_assert_eq!(readiness.until_ms.is_some(), readiness.verdict == Verdict::Go);
        if readiness.verdict == Verdict::Go {
            for of in [CylinderA, CylinderB, Air, Surface] {
                let inside = |state| matches!(state, ReadState::Inside | ReadState::Close);
                prop_assert!(readiness.checks.iter().any(|one| one.of == of && inside(one.state)));
            }
            let dew = readiness.dew.as_ref().expect("a dew point");
            for one in readiness.checks.iter().filter(|one| one.of == Surface) {
                prop_assert!(one.value_f.unwrap().0 >= dew.point_f.likely.0 + 5.0 - 1e-6);
            }
            prop_assert!(readiness.until_ms.unwrap() >= NOW.ms);
        }
        // Every listed reading has its line.
        for reading in &site.job.readings {
            prop_assert_eq!(readiness.checks.iter().filter(|one| one.id == reading.id).count(), 1);
        }
    }

    /// Making a surface that is under its window colder never turns a HOLD into a GO.
    #[test]
    fn colder_is_never_better(site in any_site(), surface in 40.0..66.0_f64, colder in 0.0..60.0_f64) {
        let spot = |value: f64| site.clone().and(reading(Surface, &format!("{value:.1}")));
        if spot(surface).verdict() != Verdict::Go {
            prop_assert_ne!(spot(surface - colder).verdict(), Verdict::Go);
        }
    }

    /// What has to be there cannot be taken away, and no reading gets better by being blank or older.
    #[test]
    fn less_is_never_a_go(site in any_site(), which in 0..9_usize, older in 0.0..500.0_f64) {
        for of in [CylinderA, CylinderB, Air, Surface] {
            prop_assert_ne!(site.clone().without(of).verdict(), Verdict::Go);
        }
        prop_assert_ne!(site.clone().without(Humidity).without(DewPoint).verdict(), Verdict::Go);
        let count = site.job.readings.len();
        if count > 0 && site.verdict() != Verdict::Go {
            let position = which % count;
            let mut aged = site.clone();
            if let Some(taken) = &mut aged.job.readings[position].taken {
                taken.ms -= older * 60_000.0;
            }
            let moisture = matches!(aged.job.readings[position].of, Humidity | DewPoint);
            let future = aged.job.readings[position].taken.is_none_or(|taken| taken.ms > NOW.ms - older * 60_000.0);
            if !moisture && !future {
                prop_assert_ne!(aged.verdict(), Verdict::Go);
            }
            let mut blank = site.clone();
            blank.job.readings[position].entries.clear();
            if !moisture {
                prop_assert_ne!(blank.verdict(), Verdict::Go);
            }
        }
    }

    /// The order in which readings are listed plays no part.
    #[test]
    fn order_plays_no_part(site in any_site()) {
        let mut turned = site.clone();
        turned.job.readings.reverse();
        prop_assert_eq!(turned.verdict(), site.verdict());
        prop_assert_eq!(turned.said().0.until_ms, site.said().0.until_ms);
    }

    /// A GO is a GO through its last instant, and none a moment later. (A second source of moisture may be
    /// fresh still when the first grows old; the end is then the earlier one.)
    #[test]
    fn a_go_ends_when_it_says(site in any_site()) {
        let sources = site.job.readings.iter().filter(|one| matches!(one.of, Humidity | DewPoint)).count();
        if let Some(until) = site.said().0.until_ms {
            let at = |ms: f64| Site { now: Now { ms, ..NOW }, ..site.clone() }.verdict();
            prop_assert_eq!(at(until), Verdict::Go);
            prop_assert!(sources > 1 || at(until + 1.0) != Verdict::Go);
        }
    }

    /// One stop more, whichever it is, never turns a HOLD or a NOT READ into a GO, and never leaves a GO.
    #[test]
    fn a_stop_more_is_never_a_go(site in any_site(), which in 0..9_usize) {
        let stopped = match which {
            0 => site.clone().answer("flames_out", "no"),
            1 => site.clone().answer("heater_lit", "vented"),
            2 => site.clone().kit(&[("expires", "2026-10-13")]),
            3 => site.clone().kit(&[]),
            4 => site.clone().and(reading(WoodMoisture, "19")),
            5 => site.clone().and(reading(NightLow, "41")).answer("heat_kept", "no"),
            6 => site.clone().and(reading(Storage, "121")),
            7 => site.clone().and(reading(Surface, "59")),
            _ => site.clone().answer("flames_out", ""),
        };
        prop_assert_ne!(stopped.verdict(), Verdict::Go);
        if site.verdict() == Verdict::Hold && which != 5 && which != 8 && which != 0 {
            prop_assert_eq!(stopped.verdict(), Verdict::Hold);
        }
    }

    /// A forecast, a wind or a kit that is in order, and every press about them, lift neither HOLD nor NOT
    /// READ of anything that was read.
    #[test]
    fn nothing_computed_or_forecast_lifts_a_stop(site in any_site(), low in 20.0..90.0_f64) {
        prop_assume!(!site.job.readings.iter().any(|one| one.of == NightLow));
        let before = site.verdict();
        let forecast = site.clone().and(reading(NightLow, &format!("{low:.1}"))).answer("heat_kept", "yes");
        prop_assert_eq!(forecast.verdict(), before);
        let kit = site.clone().kit(&[("expires", "2027-10-14")]);
        prop_assert_eq!(kit.verdict(), before);
    }

    /// Every answer that can be pressed about a surface leaves a site at most as good as it was.
    #[test]
    fn no_material_makes_a_site_better(
        site in any_site(),
        material in prop::sample::select(vec!["wood", "masonry", "metal", "old_foam", "other"]),
        how in prop::sample::select(vec!["contact", "infrared", ""]),
        dry in prop::sample::select(vec!["yes", "no", ""]),
    ) {
        prop_assume!(site.job.readings.iter().any(|one| one.of == Surface));
        let told = site.clone().surface(&[("material", material), ("how", how), ("masonry_dry", dry)]);
        if site.verdict() != Verdict::Go {
            prop_assert_ne!(told.verdict(), Verdict::Go);
        }
    }

    /// Nothing that can be typed or stamped makes it panic or says a thing that is no number.
    #[test]
    fn hostile_numbers(
        texts in prop::collection::vec("\\PC{0,24}|-?[0-9]{1,40}|[0-9]{1,3}e[0-9]{1,4}|NaN|inf", 10),
        stamps in prop::collection::vec(any::<f64>(), 10),
        now in any::<f64>(),
        limits in prop::collection::vec("\\PC{0,12}|[0-9]{1,9}", 13),
        dates in prop::collection::vec("\\PC{0,12}|[0-9]{4}-[0-9]{2}-[0-9]{2}", 4),
        metric in any::<bool>(),
    ) {
        let kinds =
            [CylinderA, CylinderB, Air, Humidity, DewPoint, Surface, WoodMoisture, Wind, NightLow, Storage];
        let mut readings: Vec<SiteReading> = Vec::new();
        for ((of, text), ms) in kinds.into_iter().zip(&texts).zip(&stamps) {
            readings.push(SiteReading { taken: Some(Now { ms: *ms, offset_min: i32::MIN }), ..reading(of, text) });
        }
        let mut site = site(&readings);
        site.now = Now { ms: now, offset_min: i32::MAX };
        site.job.units = if metric { Units::Metric } else { Units::Us };
        for (field, text) in
            ["dew_spread", "cylinders_apart", "site_age", "cylinder_age", "meter_rh_error", "meter_temp_error",
                "wood_most", "wood_age", "forecast_age", "outdoors", "heat_kept", "flames_out", "heater_lit"]
                .into_iter().zip(&limits)
        {
            site = site.limit(field, text);
        }
        let site = site.kit(&[
            ("expires", &dates[0]), ("opened", &dates[1]), ("last_purge", &dates[2]), ("storage", &dates[3]),
        ]);
        let (readiness, findings) = site.said();
        let text = serde_json::to_string(&readiness).unwrap();
        prop_assert!(!text.contains("NaN"));
        for one in &readiness.checks {
            for number in [one.value_f.map(|f| f.0), one.inside_by_f, one.age_min.map(|m| m.0), one.least_f.map(|f| f.0)]
                .into_iter().flatten()
            {
                prop_assert!(number.is_finite());
            }
        }
        let own = findings.iter().flat_map(|one| &one.figures).filter(|one| one.name != "text");
        prop_assert!(own.into_iter().all(|figure| !figure.text.contains("NaN")));
    }
}
