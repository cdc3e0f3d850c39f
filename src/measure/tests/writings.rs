//! Writings, and what stands beside a field.

use super::*;

#[test]
fn written_forms() {
    for (kind, value, style, text) in [
        (Kind::Length, 150.5, Style::FeetInches, "12′-6½″"),
        (Kind::Length, 36.0, Style::FeetInches, "3′-0″"),
        (Kind::Length, 7.25, Style::FeetInches, "7¼″"),
        (Kind::Length, 0.5, Style::FeetInches, "½″"),
        (Kind::Length, 0.0, Style::FeetInches, "0″"),
        (Kind::Length, 144.5, Style::FeetInches, "12′-0½″"),
        (Kind::Length, 144.1875, Style::FeetInches, "12′-0\u{a0}3/16″"),
        (Kind::Length, -60.0, Style::FeetInches, "−5′-0″"),
        (Kind::Length, -0.001, Style::FeetInches, "0″"),
        (Kind::Length, 150.5, Style::DecimalFeet, "12.54\u{a0}ft"),
        (Kind::Length, 150.5, Style::Inches, "150½\u{a0}in"),
        (Kind::Length, 3.25, Style::Us, "3¼\u{a0}in"),
        (Kind::Length, 3.83, Style::Us, "3.83\u{a0}in"),
        (Kind::Length, 5.1875, Style::Us, "5\u{a0}3/16\u{a0}in"),
        (Kind::Length, 150.5, Style::Metric, "3.823\u{a0}m"),
        (Kind::Length, 15.04, Style::Metric, "382\u{a0}mm"),
        (Kind::Length, 39.36, Style::Metric, "1\u{a0}m"),
        (Kind::Length, 3.0, Style::MetricUsual, "76.2\u{a0}mm"),
        (Kind::Area, 124.3, Style::Us, "124.3\u{a0}ft²"),
        (Kind::Area, 1_044.0, Style::Us, "1,044\u{a0}ft²"),
        (Kind::Area, 124.3, Style::MetricUsual, "11.55\u{a0}m²"),
        (Kind::Temperature, 63.0, Style::Us, "63\u{a0}°F"),
        (Kind::Temperature, 63.0, Style::MetricUsual, "17.2\u{a0}°C"),
        (Kind::Temperature, -4.0, Style::MetricUsual, "−20\u{a0}°C"),
        (Kind::TemperatureStep, 5.0, Style::MetricUsual, "2.8\u{a0}°C"),
        (Kind::Weight, 0.74, Style::Us, "0.74\u{a0}lb"),
        (Kind::Density, 1.85, Style::MetricUsual, "29.6\u{a0}kg/m³"),
        (Kind::Count, 1_200.0, Style::Us, "1,200"),
        (Kind::Percent, 86.0, Style::Us, "86\u{a0}%"),
        (Kind::Resistance, 15.0, Style::Us, "R-15"),
        // 16 CFR 460.11: R to the nearest tenth (a whole number from 10 up may be used, and is not).
        (Kind::Resistance, 6.54, Style::Us, "R-6.5"),
        (Kind::Resistance, 9.96, Style::Us, "R-10"),
        (Kind::Resistance, 13.46, Style::Us, "R-13.5"),
        (Kind::Resistance, 15.0, Style::MetricUsual, "RSI\u{a0}2.64"),
        (Kind::Permeance, 0.8, Style::MetricUsual, "45.8\u{a0}ng/(s·m²·Pa)"),
        (Kind::FoamVolume, 812.0, Style::Us, "812\u{a0}bd\u{a0}ft"),
        (Kind::FoamVolume, 812.0, Style::MetricUsual, "1\u{202f}916\u{a0}L"),
        (Kind::Duration, 15.0, Style::Us, "15\u{a0}min"),
        (Kind::Duration, 1_440.0, Style::Us, "24\u{a0}h"),
        (Kind::Duration, 350.0, Style::Us, "5\u{a0}h\u{a0}50\u{a0}min"),
        (Kind::Duration, 0.75, Style::Us, "45\u{a0}s"),
        (Kind::Duration, 59.96, Style::Us, "1\u{a0}h"),
        (Kind::Money, 178_400.0, Style::Us, "$1,784"),
        (Kind::Money, 28_450.0, Style::Us, "$284.50"),
        (Kind::Money, 28_405.0, Style::Us, "$284.05"),
        (Kind::Money, 178_400.0, Style::MetricUsual, "$1\u{202f}784"),
        (Kind::Date, 20_742.0, Style::Us, "2026-10-16"),
        (Kind::Number, 25.0, Style::Us, "25"),
    ] {
        assert_eq!(write(kind, value, style), text, "{kind:?} {value} {style:?}");
    }
    assert_eq!(decimal(2.5, 0), "3");
    assert_eq!(decimal(2.004, 2), "2");
    assert_eq!(decimal(-0.001, 2), "0");
    assert_eq!(decimal(0.05, 2), "0.05");
    assert_eq!(decimal(1_234.5, 1), "1234.5");
    assert_eq!(decimal(1.0, 400), "–");
}

#[test]
fn what_stands_beside_a_field() {
    let us = echo("3.82 m", Kind::Length, Ft, None, Units::Us);
    assert_eq!((us.text.as_str(), us.state), ("≈\u{a0}12′-6⅜″", EchoState::Read));
    assert_eq!(us.other, ["150.39\u{a0}in", "3\u{202f}820\u{a0}mm"]);
    let metric = echo("12' 6 1/2\"", Kind::Length, M, None, Units::Metric);
    assert_eq!(metric.text, "≈\u{a0}3.823\u{a0}m");
    assert_eq!(metric.other, ["12′-6½″", "3\u{202f}823\u{a0}mm"]);
    let depth = echo("7–8 in", Kind::Length, In, None, Units::Us);
    assert_eq!(depth.text, "7\u{a0}in\u{a0}– 8\u{a0}in");
    assert_eq!((depth.low, depth.likely, depth.high), (Some(7.0), Some(7.5), Some(8.0)));
    let asked = echo("5.11", Kind::Length, Ft, None, Units::Us);
    let texts: Vec<_> = asked.meanings.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(texts, ["5′-11″", "5.11\u{a0}ft"]);
    assert_eq!(echo("5.11", Kind::Length, Ft, Some(Sense::DecimalFeet), Units::Us).text, "5.11\u{a0}ft");
    let lumber = echo("2x6", Kind::Member, In, None, Units::Us);
    assert_eq!(lumber.text, "1½\u{a0}in\u{a0}× 5½\u{a0}in");
    assert_eq!(echo("1'200 m²", Kind::Area, M2, None, Units::Metric).text, "1\u{202f}200\u{a0}m²");
    assert_eq!(echo("1 200", Kind::FoamVolume, BdFt, None, Units::Us).text, "1,200\u{a0}bd\u{a0}ft");
    assert_eq!(echo("62.26", Kind::Area, Ft2, None, Units::Us).text, "≈\u{a0}62.3\u{a0}ft²");
    // Rates of tax as they are set: three places and more are read as they were typed.
    assert_eq!(echo("8.875 %", Kind::Percent, Pct, None, Units::Us).text, "8.875\u{a0}%");
    assert_eq!(echo("9.2375", Kind::Percent, Pct, None, Units::Metric).text, "9.2375\u{a0}%");
    assert_eq!(echo("7 1/3", Kind::Percent, Pct, None, Units::Us).text, "≈\u{a0}7.3333\u{a0}%");
    let cold = echo("63", Kind::Temperature, F, None, Units::Us);
    assert_eq!((cold.text.as_str(), cold.other), ("63\u{a0}°F", vec!["17.2\u{a0}°C".to_owned()]));
    let refused = echo("-5'", Kind::Length, Ft, None, Units::Us);
    assert_eq!((refused.state, refused.fault), (EchoState::Refused, Some(Fault::Negative)));
    assert_eq!(echo(" ", Kind::Length, Ft, None, Units::Us).state, EchoState::Blank);
}
