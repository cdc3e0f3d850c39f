//! How the answer of a step follows from what is given and from the steps before it: as data, so that it can be worked
//! out with a student's own figures and written beside the mark.

use crate::measure::Kind;
use core::ops;
use serde::Serialize;

/// A formula over figures of the estimate, answers of other steps and plain numbers.
///
/// Written with the usual signs: `area(at(LENGTH, Kind::Length), at(HEIGHT, Kind::Length)) - step("openings")`.
#[derive(Debug, Clone, PartialEq)]
pub enum Formula {
    /// A figure of the exercise's text, in the unit that its kind is held in.
    Figure(f64, Kind),
    /// A figure of the estimate by its path.
    At(String, Kind),
    /// The answer of another step.
    Step(&'static str),
    /// A factor between units that nobody writes down (÷ 12 from inches to feet).
    Scaled(f64, Box<Formula>),
    /// Both added.
    Plus(Box<Formula>, Box<Formula>),
    /// The second taken from the first.
    Minus(Box<Formula>, Box<Formula>),
    /// Both multiplied.
    Times(Box<Formula>, Box<Formula>),
    /// The first divided by the second.
    Over(Box<Formula>, Box<Formula>),
    /// Up to the next whole number; a billionth above one is that one, as when kits are counted.
    Up(Box<Formula>),
    /// Down to the whole number below; a billionth below one is that one.
    Down(Box<Formula>),
    /// The square root.
    Root(Box<Formula>),
    /// The larger of the two.
    Larger(Box<Formula>, Box<Formula>),
    /// The smaller of the two.
    Smaller(Box<Formula>, Box<Formula>),
    /// In which class it falls: how many of these limits it is above. Written as what is held against them.
    Class(Box<Formula>, &'static [f64]),
}

/// A piece of a formula as it is written beside a mark, in reading order.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Piece {
    /// `figure`, `open`, `close`, or a sign: `plus`, `minus`, `times`, `over`, `root`, `up`, `down`, `larger`, `smaller`, `and`;
    /// `liters`, of which so many are a board foot: what square meters times millimeters are divided by.
    pub is: &'static str,
    /// The figure, in the unit that its kind is held in; 0 for a sign.
    pub value: f64,
    /// What the figure measures.
    pub kind: Kind,
}

/// Where a formula finds its figures.
pub trait Figures {
    /// A figure of the estimate.
    fn at(&self, path: &str) -> Option<f64>;
    /// The answer of a step, and what it measures.
    fn step(&self, key: &str) -> Option<(f64, Kind)>;
    /// Whether they are written in metric units. Board feet stay board feet there, and are divided for.
    fn metric(&self) -> bool {
        false
    }
}

/// A figure of the exercise's text.
pub const fn figure(value: f64, kind: Kind) -> Formula {
    Formula::Figure(value, kind)
}

/// A plain number.
pub const fn number(value: f64) -> Formula {
    Formula::Figure(value, Kind::Number)
}

/// A figure of the estimate.
pub fn at(path: &str, kind: Kind) -> Formula {
    Formula::At(path.to_owned(), kind)
}

/// The answer of another step.
pub const fn step(key: &'static str) -> Formula {
    Formula::Step(key)
}

/// An area from two lengths: square feet from inches times inches.
pub fn area(one: Formula, other: Formula) -> Formula {
    Formula::Scaled(1.0 / 144.0, Box::new(one * other))
}

/// A share: percent over a hundred.
pub fn share(percent: Formula) -> Formula {
    Formula::Scaled(0.01, Box::new(percent))
}

impl Formula {
    /// By a factor between units that nobody writes down.
    pub fn scaled(self, by: f64) -> Self {
        Self::Scaled(by, Box::new(self))
    }
    /// Up to the next whole number.
    pub fn up(self) -> Self {
        Self::Up(Box::new(self))
    }
    /// Down to the whole number below.
    pub fn down(self) -> Self {
        Self::Down(Box::new(self))
    }
    /// The square root.
    pub fn root(self) -> Self {
        Self::Root(Box::new(self))
    }
    /// The larger of this and another.
    pub fn larger(self, other: Self) -> Self {
        Self::Larger(Box::new(self), Box::new(other))
    }
    /// The smaller of this and another.
    pub fn smaller(self, other: Self) -> Self {
        Self::Smaller(Box::new(self), Box::new(other))
    }

    /// In which class it falls: 0 up to the first of these limits, 1 up to the second, and so on; a billionth above one
    /// is still at it.
    pub fn class(self, limits: &'static [f64]) -> Self {
        Self::Class(Box::new(self), limits)
    }

    /// What it comes to; `None` where a figure is missing or the result is no finite number.
    pub fn value(&self, from: &dyn Figures) -> Option<f64> {
        let two = |one: &Self, other: &Self| Some((one.value(from)?, other.value(from)?));
        let value = match self {
            Self::Figure(value, _) => *value,
            Self::At(path, _) => from.at(path)?,
            Self::Step(key) => from.step(key)?.0,
            Self::Scaled(by, of) => by * of.value(from)?,
            Self::Plus(one, other) => two(one, other).map(|(one, other)| one + other)?,
            Self::Minus(one, other) => two(one, other).map(|(one, other)| one - other)?,
            Self::Times(one, other) => two(one, other).map(|(one, other)| one * other)?,
            Self::Over(one, other) => two(one, other).map(|(one, other)| one / other)?,
            Self::Up(of) => libm::ceil(of.value(from)? - 1e-9),
            Self::Down(of) => libm::floor(of.value(from)? + 1e-9),
            Self::Root(of) => libm::sqrt(of.value(from)?),
            Self::Larger(one, other) => two(one, other).map(|(one, other)| one.max(other))?,
            Self::Smaller(one, other) => two(one, other).map(|(one, other)| one.min(other))?,
            Self::Class(of, limits) => {
                let value = of.value(from)?;
                let above = limits.iter().filter(|limit| value > **limit + 1e-9).count();
                #[allow(clippy::cast_precision_loss, reason = "a handful of limits")]
                let above = above as f64;
                above
            }
        };
        value.is_finite().then_some(value)
    }

    /// Every path of the estimate that it needs.
    pub fn paths(&self, into: &mut Vec<String>) {
        self.visit(&mut |leaf| {
            if let Self::At(path, _) = leaf
                && !into.contains(path)
            {
                into.push(path.clone());
            }
        });
    }

    /// Every step that it takes over.
    pub fn steps(&self) -> Vec<&'static str> {
        let mut keys = Vec::new();
        self.visit(&mut |leaf| {
            if let Self::Step(key) = leaf
                && !keys.contains(key)
            {
                keys.push(key);
            }
        });
        keys
    }

    fn visit(&self, see: &mut dyn FnMut(&Self)) {
        match self {
            Self::Figure(..) | Self::At(..) | Self::Step(_) => see(self),
            Self::Scaled(_, of) | Self::Up(of) | Self::Down(of) | Self::Root(of) | Self::Class(of, _) => {
                of.visit(see);
            }
            Self::Plus(one, other)
            | Self::Minus(one, other)
            | Self::Times(one, other)
            | Self::Over(one, other)
            | Self::Larger(one, other)
            | Self::Smaller(one, other) => {
                one.visit(see);
                other.visit(see);
            }
        }
    }

    /// What it measures, as far as board feet are concerned: length × length is an area, and area × length is foam.
    fn kind(&self, from: &dyn Figures) -> Kind {
        let plain = |kind| matches!(kind, Kind::Number | Kind::Count | Kind::Percent | Kind::Pitch);
        match self {
            Self::Figure(_, kind) | Self::At(_, kind) => *kind,
            Self::Step(key) => from.step(key).map_or(Kind::Number, |(_, kind)| kind),
            Self::Class(..) | Self::Root(_) => Kind::Number,
            Self::Scaled(_, of) | Self::Up(of) | Self::Down(of) => of.kind(from),
            Self::Plus(one, _) | Self::Minus(one, _) | Self::Larger(one, _) | Self::Smaller(one, _) => {
                one.kind(from)
            }
            Self::Times(one, other) => match (one.kind(from), other.kind(from)) {
                (Kind::Length, Kind::Length) => Kind::Area,
                (Kind::Area, Kind::Length) | (Kind::Length, Kind::Area) => Kind::FoamVolume,
                (kind, other) if plain(other) => kind,
                (one, kind) if plain(one) => kind,
                _ => Kind::Number,
            },
            Self::Over(one, other) => match (one.kind(from), other.kind(from)) {
                (kind, other) if plain(other) => kind,
                _ => Kind::Number,
            },
        }
    }

    /// The area, where it is an area times a depth.
    pub(super) fn area_by_depth(&self, from: &dyn Figures) -> Option<&Self> {
        let Self::Times(one, other) = self else { return None };
        match (one.kind(from), other.kind(from)) {
            (Kind::Area, Kind::Length) => Some(one),
            (Kind::Length, Kind::Area) => Some(other),
            _ => None,
        }
    }

    /// Whether it is an area times a depth, which in metric comes to liters and not to board feet.
    fn in_liters(&self, from: &dyn Figures) -> bool {
        from.metric() && self.area_by_depth(from).is_some()
    }

    /// How it is written, with the figures put in; empty where one is missing.
    pub fn written(&self, from: &dyn Figures) -> Vec<Piece> {
        let mut pieces = Vec::new();
        match self.write(from, 0, &mut pieces) {
            Some(()) => pieces,
            None => Vec::new(),
        }
    }

    /// `binds`: how strongly what stands around it binds (0 nothing, 1 a sum, 2 a product, 3 what follows ÷ or −).
    fn write(&self, from: &dyn Figures, binds: u8, into: &mut Vec<Piece>) -> Option<()> {
        let sign = |is| Piece { is, value: 0.0, kind: Kind::Number };
        let leaf = |value, kind| Piece { is: "figure", value, kind };
        let mut pair = |one: &Self, is, other: &Self, own: u8, right: u8| {
            let around = binds > own;
            into.extend(around.then(|| sign("open")));
            one.write(from, own, into)?;
            into.push(sign(is));
            other.write(from, right, into)?;
            if self.in_liters(from) {
                into.extend([sign("over"), sign("liters")]);
            }
            into.extend(around.then(|| sign("close")));
            Some(())
        };
        match self {
            Self::Figure(value, kind) => into.push(leaf(*value, *kind)),
            Self::At(path, kind) => into.push(leaf(from.at(path)?, *kind)),
            Self::Step(key) => {
                let (value, kind) = from.step(key)?;
                into.push(leaf(value, kind));
            }
            Self::Scaled(_, of) | Self::Class(of, _) => of.write(from, binds, into)?,
            Self::Plus(one, other) => pair(one, "plus", other, 1, 1)?,
            Self::Minus(one, other) => pair(one, "minus", other, 1, 2)?,
            Self::Times(one, other) => pair(one, "times", other, 2, 2)?,
            Self::Over(one, other) => pair(one, "over", other, 2, 3)?,
            // The sign stands after everything that is rounded, so what is rounded within something larger has
            // brackets of its own: 3 × (10 ÷ 4 ↑).
            Self::Up(of) | Self::Down(of) => {
                let around = binds > 0;
                into.extend(around.then(|| sign("open")));
                of.write(from, 0, into)?;
                into.push(sign(if matches!(self, Self::Up(_)) { "up" } else { "down" }));
                into.extend(around.then(|| sign("close")));
            }
            Self::Root(of) => {
                into.extend([sign("root"), sign("open")]);
                of.write(from, 0, into)?;
                into.push(sign("close"));
            }
            Self::Larger(one, other) | Self::Smaller(one, other) => {
                into.extend([
                    sign(if matches!(self, Self::Larger(..)) { "larger" } else { "smaller" }),
                    sign("open"),
                ]);
                one.write(from, 0, into)?;
                into.push(sign("and"));
                other.write(from, 0, into)?;
                into.push(sign("close"));
            }
        }
        Some(())
    }
}

impl ops::Add for Formula {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::Plus(Box::new(self), Box::new(other))
    }
}

impl ops::Sub for Formula {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::Minus(Box::new(self), Box::new(other))
    }
}

impl ops::Mul for Formula {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::Times(Box::new(self), Box::new(other))
    }
}

impl ops::Div for Formula {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        Self::Over(Box::new(self), Box::new(other))
    }
}
