//! A case's text without the hands of its dresser, whether or not the text still reads.

use super::CaseFile;

/// Every name at the top of a case file that holds nothing of the dresser.
const OTHERS: [&str; 7] = [
    "occasion", "shaku", "person", "garment", "garments", "dressing", "standard",
];

impl CaseFile {
    /// The text of a case file with nothing of its dresser in it.
    ///
    /// Of a text that [`CaseFile::parse`] refuses but that is TOML, only the parts stay that are
    /// known to hold nothing of the dresser: one under a name unknown here may be hers. A text
    /// that is no TOML cannot be taken apart, and nothing of it stays.
    pub fn without_dresser(text: &str) -> String {
        if let Ok(mut case) = CaseFile::parse(text) {
            case.dresser = None;
            return case.to_toml();
        }
        let Ok(mut table) = text.parse::<toml::Table>() else {
            return String::new();
        };
        table.retain(|name, _| OTHERS.contains(&name));
        table.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CASE: &str = r#"occasion = "formal"

[person]
name = "Tanabe Chiyo"
sex = "women"
stature = 158
hip_girth = 91

[garment]
name = "Grey tsumugi"
kind = "nagagi"
mitake_from = "shoulder"
mitake = 160
ushirohaba = 30

[dresser] # Mori, her teacher
name = "Mori Sayo"
sex = "women"
stature = 162
hip_girth = 93
"#;

    #[test]
    fn a_case_that_reads_loses_its_dresser_alone() {
        let mut case = CaseFile::parse(CASE).unwrap();
        case.dresser = None;
        let left = CaseFile::without_dresser(CASE);
        assert_eq!(CaseFile::parse(&left).unwrap(), case);
    }

    #[test]
    fn a_case_that_no_longer_reads_loses_the_dresser_and_every_part_that_may_be_hers() {
        let unread = CASE.replace("stature = 158", "stature = 999") + "\n[dreser]\nname = \"Mori\"";
        assert!(CaseFile::parse(&unread).is_err());
        let left = CaseFile::without_dresser(&unread);
        assert!(!left.contains("Mori"), "{left}");
        for kept in ["formal", "Tanabe Chiyo", "999", "Grey tsumugi"] {
            assert!(left.contains(kept), "{kept} in {left}");
        }
    }

    #[test]
    fn of_a_text_that_is_no_toml_nothing_stays() {
        for broken in ["[dresser\nname = \"Mori", "Mori", "name = \u{fffd}"] {
            assert_eq!(CaseFile::without_dresser(broken), "", "{broken}");
        }
    }
}
