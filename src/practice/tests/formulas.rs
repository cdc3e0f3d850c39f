//! What is written beside a mark comes to what the formula comes to: read back by a reader that knows only the
//! order in which signs bind.

use super::super::Piece;
use super::super::formula::Figures;
use super::*;
use proptest::prelude::*;

/// Figures by name: `at` and steps alike.
struct Named;

impl Figures for Named {
    fn at(&self, path: &str) -> Option<f64> {
        path.parse().ok()
    }
    fn step(&self, key: &str) -> Option<(f64, Kind)> {
        key.parse().ok().map(|value| (value, Kind::Area))
    }
}

/// Reads what is written. A sign of rounding rounds all that stands before it between the brackets around it.
struct Reading<'a> {
    pieces: &'a [Piece],
}

impl Reading<'_> {
    fn next_is(&self, is: &str) -> bool {
        self.pieces.first().is_some_and(|piece| piece.is == is)
    }
    fn take(&mut self) -> Piece {
        let piece = self.pieces[0];
        self.pieces = &self.pieces[1..];
        piece
    }
    fn takes(&mut self, is: &str) -> bool {
        let there = self.next_is(is);
        if there {
            self.take();
        }
        there
    }
    fn whole(&mut self) -> f64 {
        let mut value = self.sum();
        loop {
            if self.takes("up") {
                value = (value - 1e-9).ceil();
            } else if self.takes("down") {
                value = (value + 1e-9).floor();
            } else {
                return value;
            }
        }
    }
    fn sum(&mut self) -> f64 {
        let mut value = self.product();
        loop {
            if self.takes("plus") {
                value += self.product();
            } else if self.takes("minus") {
                value -= self.product();
            } else {
                return value;
            }
        }
    }
    fn product(&mut self) -> f64 {
        let mut value = self.one();
        loop {
            if self.takes("times") {
                value *= self.one();
            } else if self.takes("over") {
                value /= self.one();
            } else {
                return value;
            }
        }
    }
    fn one(&mut self) -> f64 {
        let piece = self.take();
        match piece.is {
            "figure" => piece.value,
            "open" => {
                let value = self.whole();
                assert!(self.takes("close"));
                value
            }
            "root" => {
                assert!(self.takes("open"));
                let value = self.whole();
                assert!(self.takes("close"));
                value.sqrt()
            }
            "larger" | "smaller" => {
                assert!(self.takes("open"));
                let one = self.whole();
                assert!(self.takes("and"));
                let other = self.whole();
                assert!(self.takes("close"));
                if piece.is == "larger" { one.max(other) } else { one.min(other) }
            }
            other => panic!("`{other}` cannot stand here"),
        }
    }
}

fn read(pieces: &[Piece]) -> f64 {
    let mut reading = Reading { pieces };
    let value = reading.whole();
    assert!(reading.pieces.is_empty(), "left over: {:?}", reading.pieces);
    value
}

/// Signs in short, for a look at the brackets.
fn signs(formula: &Formula) -> String {
    let pieces = formula.written(&Named);
    let sign = |piece: &Piece| match piece.is {
        "figure" => crate::measure::decimal(piece.value, 3),
        "open" => "(".to_owned(),
        "close" => ")".to_owned(),
        "plus" => "+".to_owned(),
        "minus" => "−".to_owned(),
        "times" => "×".to_owned(),
        "over" => "÷".to_owned(),
        "root" => "√".to_owned(),
        "up" => "↑".to_owned(),
        "down" => "↓".to_owned(),
        other => other.to_owned(),
    };
    pieces.iter().map(sign).collect::<Vec<_>>().join(" ")
}

#[test]
fn brackets_stand_where_they_are_needed_and_nowhere_else() {
    let n = number;
    for (formula, wanted) in [
        (n(1.0) + n(2.0) * n(3.0), "1 + 2 × 3"),
        ((n(1.0) + n(2.0)) * n(3.0), "( 1 + 2 ) × 3"),
        (n(1.0) - (n(2.0) + n(3.0)), "1 − ( 2 + 3 )"),
        (n(1.0) - (n(2.0) - n(3.0)), "1 − ( 2 − 3 )"),
        (n(1.0) + (n(2.0) - n(3.0)), "1 + 2 − 3"),
        ((n(1.0) - n(2.0)) - n(3.0), "1 − 2 − 3"),
        (n(1.0) / (n(2.0) * n(3.0)), "1 ÷ ( 2 × 3 )"),
        (n(1.0) / (n(2.0) / n(3.0)), "1 ÷ ( 2 ÷ 3 )"),
        (n(1.0) / n(2.0) / n(3.0), "1 ÷ 2 ÷ 3"),
        (n(1.0) * (n(2.0) / n(3.0)), "1 × 2 ÷ 3"),
        ((n(1.0) + n(2.0)).root() * n(3.0), "√ ( 1 + 2 ) × 3"),
        ((n(1.0) / n(2.0)).up(), "1 ÷ 2 ↑"),
        ((n(1.0) / n(2.0)).up() * n(3.0), "( 1 ÷ 2 ↑ ) × 3"),
        (n(1.0) + (n(2.0) / n(3.0)).up(), "1 + ( 2 ÷ 3 ↑ )"),
        ((n(1.0) + n(2.0)).down(), "1 + 2 ↓"),
        ((n(1.0) / n(2.0)).up().larger(n(3.0) - n(1.0)), "larger ( 1 ÷ 2 ↑ and 3 − 1 )"),
        // A factor between units is not written, and what it stands before keeps its brackets.
        (area(n(2.0), n(3.0)) - area(n(4.0), n(5.0)) - share(n(6.0)), "2 × 3 − 4 × 5 − 6"),
        ((n(1.0) + n(2.0)).scaled(12.0) * n(3.0), "( 1 + 2 ) × 3"),
        (n(3.0) / (n(1.0) * n(2.0)).scaled(0.5), "3 ÷ ( 1 × 2 )"),
        (at("7", Kind::Length) + step("8"), "7 + 8"),
    ] {
        assert_eq!(signs(&formula), wanted);
    }
}

#[test]
fn nothing_is_written_where_a_figure_is_missing() {
    for formula in
        [number(1.0) + at("nowhere", Kind::Area), step("no such step").up(), at("", Kind::Area).root()]
    {
        assert_eq!((formula.written(&Named), formula.value(&Named)), (Vec::new(), None));
    }
    // No number comes of it.
    for formula in [number(1.0) / number(0.0), number(-1.0).root(), number(f64::MAX) * number(10.0)] {
        assert_eq!(formula.value(&Named), None);
    }
}

#[test]
fn a_billionth_beside_a_whole_number_is_that_number() {
    // 0.1 × 3 is a little above 0.3, so that a plain ceiling counts one kit too many.
    assert_eq!((number(0.1) * number(3.0) / number(0.1)).up().value(&Named), Some(3.0));
    assert_eq!(ratio(3.0 - 1e-10, 1.0).down().value(&Named), Some(3.0));
    assert_eq!(
        (ratio(7.0, 2.0).up().value(&Named), ratio(7.0, 2.0).down().value(&Named)),
        (Some(4.0), Some(3.0))
    );
    assert_eq!(
        (number(2.0).larger(number(3.0)).value(&Named), number(2.0).smaller(number(3.0)).value(&Named)),
        (Some(3.0), Some(2.0))
    );
    assert_eq!(share(number(86.0)).value(&Named), Some(0.86));
    assert_eq!(area(number(216.0), number(54.0)).value(&Named), Some(81.0));
}

#[test]
fn the_steps_and_paths_of_a_formula_are_told_once() {
    let formula =
        (step("a") + at("x", Kind::Area)) * step("b").larger(step("a")) - at("x", Kind::Area).root();
    let mut paths = vec!["y".to_owned()];
    formula.paths(&mut paths);
    assert_eq!((formula.steps(), paths), (vec!["a", "b"], vec!["y".to_owned(), "x".to_owned()]));
}

fn any_formula() -> impl Strategy<Value = Formula> {
    let leaf = prop_oneof![
        (1i32..40).prop_map(|n| number(f64::from(n) / 4.0)),
        (1i32..9).prop_map(|n| at(&n.to_string(), Kind::Length)),
        prop_oneof![Just("2"), Just("5.5")].prop_map(step),
    ];
    leaf.prop_recursive(5, 24, 2, |inner| {
        let two = || (inner.clone(), inner.clone());
        prop_oneof![
            two().prop_map(|(one, other)| one + other),
            two().prop_map(|(one, other)| one - other),
            two().prop_map(|(one, other)| one * other),
            two().prop_map(|(one, other)| one / other),
            two().prop_map(|(one, other)| one.larger(other)),
            two().prop_map(|(one, other)| one.smaller(other)),
            inner.clone().prop_map(Formula::up),
            inner.clone().prop_map(Formula::down),
            inner.clone().prop_map(Formula::root),
            inner.clone().prop_map(|of| of.scaled(1.0)),
        ]
    })
}

/// Every value on the way, and whether one lies where a last digit decides what it is rounded to.
fn on_edge(formula: &Formula) -> bool {
    match formula {
        Formula::Figure(..) | Formula::At(..) | Formula::Step(_) => false,
        Formula::Up(of) | Formula::Down(of) => {
            let near = |value: f64| {
                let from = (value - value.round()).abs();
                from < 1e-6 && from > 1e-12 || value.abs() > 1e6
            };
            on_edge(of) || of.value(&Named).is_none_or(near)
        }
        Formula::Scaled(_, of) | Formula::Root(of) | Formula::Class(of, _) => on_edge(of),
        Formula::Plus(one, other)
        | Formula::Minus(one, other)
        | Formula::Times(one, other)
        | Formula::Over(one, other)
        | Formula::Larger(one, other)
        | Formula::Smaller(one, other) => on_edge(one) || on_edge(other),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_written_comes_to_the_same(formula in any_formula()) {
        prop_assume!(!on_edge(&formula));
        let Some(value) = formula.value(&Named) else { return Ok(()) };
        let written = read(&formula.written(&Named));
        prop_assert!((written - value).abs() <= 1e-6 * value.abs().max(1.0), "{} is {written}, not {value}", signs(&formula));
    }
}
