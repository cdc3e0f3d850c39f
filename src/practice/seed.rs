//! Seeds: generator version, level and number as one text.

use core::fmt;

/// The generator that draws new exercises.
pub const VERSION: u32 = 1;

/// The highest level.
pub const MOST_LEVEL: u8 = 4;

/// Which exercise. Written `1-4-7f3a`: version 1, level 4, number 7f3a (hexadecimal). Level 0 is the book: worked
/// examples that somebody has published, by their number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seed {
    /// The generator's version.
    pub version: u32,
    /// 1 (one thing) to 4 (a whole job); 0: out of the book.
    pub level: u8,
    /// Which one of 65,536.
    pub number: u16,
}

/// Why a text is no seed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BadSeed {
    /// It has another form.
    Form,
    /// A newer version of the tool made it.
    Newer,
}

impl Seed {
    /// Reads a seed. Capitals, blanks around it and dashes of any length are as good.
    ///
    /// ```
    /// use foamwright::practice::{BadSeed, Seed};
    /// assert_eq!(Seed::read(" 1-4-7F3A "), Ok(Seed { version: 1, level: 4, number: 0x7f3a }));
    /// assert_eq!(Seed::read("1–4–7f3a").map(|seed| seed.to_string()), Ok("1-4-7f3a".into()));
    /// assert_eq!(Seed::read("2-4-7f3a"), Err(BadSeed::Newer));
    /// assert_eq!(Seed::read("1-5-7f3a"), Err(BadSeed::Form));
    /// ```
    pub fn read(text: &str) -> Result<Self, BadSeed> {
        let dashed = |letter: char| matches!(letter, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}');
        let mut parts = text.trim().split(dashed);
        let (Some(version), Some(level), Some(number), None) =
            (parts.next(), parts.next(), parts.next(), parts.next())
        else {
            return Err(BadSeed::Form);
        };
        let digits = |part: &str, most: usize| {
            (1..=most).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_hexdigit())
        };
        if !digits(version, 4) || !digits(level, 1) || !digits(number, 4) {
            return Err(BadSeed::Form);
        }
        let version: u32 = version.parse().map_err(|_| BadSeed::Form)?;
        let level: u8 = level.parse().map_err(|_| BadSeed::Form)?;
        let number = u16::from_str_radix(number, 16).map_err(|_| BadSeed::Form)?;
        match version {
            0 => Err(BadSeed::Form),
            1..=VERSION if level > MOST_LEVEL => Err(BadSeed::Form),
            1..=VERSION => Ok(Self { version, level, number }),
            _ => Err(BadSeed::Newer),
        }
    }
}

impl fmt::Display for Seed {
    fn fmt(&self, into: &mut fmt::Formatter) -> fmt::Result {
        write!(into, "{}-{}-{:04x}", self.version, self.level, self.number)
    }
}
