//! The languages spoken.

/// A language in which everything is said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Lang {
    /// English.
    En,
    /// Japanese.
    Ja,
}

impl Lang {
    /// Every language, in the order they are offered.
    pub const ALL: &'static [Lang] = &[Lang::En, Lang::Ja];

    /// The code of ISO 639-1, as in `lang="ja"`.
    pub const fn code(self) -> &'static str {
        match self {
            Lang::En => "en",
            Lang::Ja => "ja",
        }
    }

    /// The language of this code; `None` when it is not spoken here.
    pub fn from_code(code: &str) -> Option<Lang> {
        Lang::ALL.iter().copied().find(|lang| lang.code() == code)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_language_is_found_by_its_code() {
        for &lang in Lang::ALL {
            assert_eq!(Lang::from_code(lang.code()), Some(lang));
        }
        assert_eq!(Lang::from_code("EN"), None);
    }
}
