//! The words that a reading may hold, in English and Spanish, without accents and in lower case.

use super::Unit;

/// What a word does in a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Word {
    /// A unit.
    Unit(Unit),
    /// A unit that the tool knows of but measures nothing in.
    OtherUnit,
    /// `square` before a length.
    Square,
    /// `cubic` before a length.
    Cubic,
    /// `cuadrado` after a length.
    Squared,
    /// `cúbico` after a length.
    Cubed,
    /// `board`, `bd` before feet.
    Board,
    /// `tablar` after feet.
    Tablar,
    /// Not exactly.
    About,
    /// Opens a range; in Spanish it also joins (`16 de octubre`).
    From,
    /// Opens a range that `and` goes on with.
    Between,
    /// From one end of a range to the other.
    To,
    /// The Spanish `to`: only as a word by itself.
    A,
    /// Joins.
    And,
    /// Times, of two lengths.
    Times,
    /// Per, of two units.
    Per,
    /// Degrees.
    Degrees,
    /// A number in words.
    Number(u8),
    /// A month.
    Month(u8),
    /// What makes `16` a `16th`.
    Ordinal,
    /// `metric` before perm.
    Metric,
    /// `ciento` after `por`.
    Ciento,
    /// `US` before a dollar sign or perm.
    Us,
    /// `o.c.` in one piece.
    OnCenter,
    /// `on` before center.
    On,
    /// `o.` before center; the Spanish west.
    O,
    /// `center` after on.
    Center,
    /// Nanograms.
    Nanograms,
    /// Kilometers: only of a speed.
    Kilometers,
    /// Miles: only of a speed.
    Miles,
    /// Pascals.
    Pascals,
    /// Kelvins.
    Kelvins,
    /// Watts; of a place west.
    Watts,
    /// Before noon.
    Am,
    /// After noon.
    Pm,
    /// The Spanish `noche`: from 6 on in the evening.
    Night,
    /// An hour with a name.
    Hour(u8),
    /// The Spanish `la` between an hour and its part of the day.
    The,
    /// North or east.
    North,
    /// South or west.
    South,
    /// Courses of block.
    Course,
    /// `block` after courses of.
    Block,
    /// What a steel stud or an engineered joist is called before its sizes.
    Section,
}

use Unit as U;
use Word as W;

/// What each word does, the words of one doing together and those that are written most first.
const WORDS: &[(Word, &str)] = &[
    (W::Unit(U::Ft), "ft pie feet foot pies"),
    (W::Unit(U::In), "in ins plg inch pulg inches pulgada pulgadas"),
    (W::Unit(U::Mm), "mm milimetro milimetros millimeter millimetre millimeters millimetres"),
    (W::Unit(U::M), "m meter metre metro meters metres metros"),
    (W::Unit(U::Cm), "cm cms centimeter centimetre centimetro centimeters centimetres centimetros"),
    (W::Times, "x by por"),
    (W::A, "a"),
    (
        W::About,
        "ca unas unos about aprox cerca circa approx around roughly alrededor approximately aproximadamente",
    ),
    (W::Month(4), "abr apr abril april"),
    (W::Month(8), "ago aug agosto august"),
    (W::And, "y and con"),
    (W::Board, "bd board"),
    (W::Unit(U::BdFt), "bf bdft"),
    (W::Between, "entre between"),
    (W::Unit(U::C), "c celsius centigrados"),
    (W::Center, "center centers"),
    (W::Unit(U::Ft3), "cf"),
    (W::Ciento, "ciento"),
    (W::Number(5), "five cinco"),
    (W::Cubic, "cu cubic"),
    (W::Squared, "cuadrada cuadrado cuadradas cuadrados"),
    (W::Number(4), "four cuatro"),
    (W::Cubed, "cubico cubicos"),
    (W::Unit(U::Day), "d day dia days dias"),
    (W::From, "de of del from desde"),
    (W::Month(12), "dec dic december diciembre"),
    (W::Degrees, "deg grado degree grados degrees"),
    (W::Number(10), "ten diez"),
    (W::Number(12), "doce twelve"),
    (W::Unit(U::Usd), "usd dolar dollar dolares dollars"),
    (W::Number(2), "dos two"),
    (W::Unit(U::Each), "ea pc pcs each pieza piezas"),
    (W::Number(8), "ocho eight"),
    (W::Number(11), "once eleven"),
    (W::Month(1), "ene jan enero january"),
    (W::Unit(U::F), "f fahrenheit"),
    (W::Month(2), "feb febrero february"),
    (W::Unit(U::G), "g gram gramo grams gramos"),
    (W::OtherUnit, "yd gal mil psi yds mils yard yards gallons"),
    (W::Kilometers, "km kilometers kilometros"),
    (W::Miles, "mi mile miles millas"),
    (W::Unit(U::Kmh), "kmh kph"),
    (W::Unit(U::Mph), "mph"),
    (W::Unit(U::Mps), "mps"),
    (W::Unit(U::Hr), "h hr hrs hora hour horas hours"),
    (W::To, "to hasta"),
    (W::Month(7), "jul july julio"),
    (W::Month(6), "jun june junio"),
    (W::Kelvins, "k"),
    (W::Unit(U::Kg), "kg kgs kilo kilos kilogram kilogramo kilograms kilogramos"),
    (W::Unit(U::L), "l liter litre litro liters litres litros"),
    (W::Unit(U::Lb), "lb lbs libra pound libras pounds"),
    (W::Month(3), "mar march marzo"),
    (W::Month(5), "may mayo"),
    (W::Metric, "metric"),
    (W::Unit(U::Min), "min mins minute minuto minutes minutos"),
    (W::Ordinal, "nd rd st th"),
    (W::Nanograms, "ng"),
    (W::Number(9), "nine nueve"),
    (W::Month(11), "nov november noviembre"),
    (W::On, "on en"),
    (W::O, "o"),
    (W::OnCenter, "oc"),
    (W::Month(10), "oct october octubre"),
    (W::Number(1), "one uno"),
    (W::Unit(U::Oz), "oz onza onzas ounce ounces"),
    (W::Pascals, "pa"),
    (W::Unit(U::LbFt3), "pcf"),
    (W::Unit(U::Pct), "pct percent"),
    (W::Per, "per"),
    (W::Unit(U::Perm), "perm perms"),
    (W::Unit(U::R), "r"),
    (W::Unit(U::Rsi), "rsi"),
    (W::Unit(U::Sec), "s sec secs second seconds segundo segundos"),
    (W::Number(6), "six seis"),
    (W::Month(9), "sep sept september setiembre septiembre"),
    (W::Number(7), "seven siete"),
    (W::Unit(U::Ft2), "sf sqft"),
    (W::Square, "sq square"),
    (W::Unit(U::M2), "sqm"),
    (W::Tablar, "tablar tablares"),
    (W::Number(3), "tres three"),
    (W::Us, "us"),
    (W::Watts, "w watt watts vatios"),
    (W::Am, "am manana"),
    (W::Pm, "pm p tarde"),
    (W::Night, "noche"),
    (W::Hour(12), "noon mediodia"),
    (W::Hour(0), "midnight medianoche"),
    (W::The, "la"),
    (W::North, "n e north east norte este"),
    (W::South, "south west sur oeste"),
    (W::Unit(U::Btuh), "btu btus btuh"),
    (W::Unit(U::Kw), "kw"),
    (W::Unit(U::Cfm), "cfm pcm"),
    (W::Course, "course courses hilada hiladas"),
    (W::Block, "block blocks bloque bloques"),
    (W::Section, "i metal steel stud studs joist joists acero viga vigueta viguetas montante montantes"),
];

/// The word spelled so, already in lower case and without accents.
pub(super) fn word(spelled: &str) -> Option<Word> {
    let stands_in =
        |list: &str| list.as_bytes().split(|&byte| byte == b' ').any(|known| known == spelled.as_bytes());
    WORDS.iter().find_map(|&(word, list)| stands_in(list).then_some(word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_does_one_thing() {
        for &(meant, list) in WORDS {
            for spelled in list.split(' ') {
                assert_eq!(word(spelled), Some(meant), "{spelled} stands twice");
                assert!(spelled.bytes().all(|letter| letter.is_ascii_lowercase()), "{spelled}");
            }
        }
        assert_eq!(word("furlong"), None);
        assert_eq!(word("ft in"), None);
    }
}
