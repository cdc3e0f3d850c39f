//! Lines of plain text: headings, rows of name and value, and wrapped sentences.

const WIDTH: usize = 88;
const NAME: usize = 24;

/// The text so far.
#[derive(Debug, Default)]
pub struct Lines {
    text: String,
}

impl Lines {
    /// The whole text.
    pub fn text(self) -> String {
        self.text
    }

    /// A line as it is.
    pub fn line(&mut self, text: &str) {
        self.text.push_str(text.trim_end());
        self.text.push('\n');
    }

    /// A heading after an empty line.
    pub fn heading(&mut self, text: &str) {
        self.line("");
        self.line(text);
        self.line(&"─".repeat(text.chars().count()));
    }

    /// A name and what belongs to it.
    pub fn row(&mut self, name: &str, value: &str) {
        let gap = NAME.saturating_sub(name.chars().count()).max(1);
        self.wrapped(&format!("  {name}{}{value}", " ".repeat(gap)), NAME + 2);
    }

    /// A sentence, wrapped; every line but the first starts after so many spaces.
    pub fn wrapped(&mut self, text: &str, indent: usize) {
        let lead = text.chars().take_while(|one| *one == ' ').count();
        let mut line = " ".repeat(lead);
        let mut used = lead;
        let mut fresh = true;
        for word in text.trim_start().split(' ') {
            let length = word.chars().count();
            if !fresh && used + 1 + length > WIDTH {
                self.line(&line);
                line = " ".repeat(indent);
                used = indent;
                fresh = true;
            }
            if !fresh {
                line.push(' ');
                used += 1;
            }
            line.push_str(word);
            used += length;
            fresh = false;
        }
        self.line(&line);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_rows_are_wrapped_under_their_value() {
        let mut lines = Lines::default();
        lines.row("Name", &"word ".repeat(30));
        let text = lines.text();
        assert!(text.lines().count() > 1);
        assert!(text.lines().all(|line| line.chars().count() <= WIDTH));
        assert!(text.lines().skip(1).all(|line| line.starts_with(&" ".repeat(NAME + 2))));
    }
}
