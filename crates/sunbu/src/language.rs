//! Which language the command line speaks: `--lang`, else the environment, else English.

use std::ffi::OsString;

use sunbu_words::Lang;

/// The language for these arguments and this environment.
///
/// It is needed before the arguments are read, since the help is in it too; a wrong `--lang` is
/// told when they are.
pub fn choose(arguments: &[OsString], env: impl Fn(&str) -> Option<String>) -> Lang {
    asked(arguments)
        .or_else(|| from_environment(env))
        .unwrap_or(Lang::En)
}

fn asked(arguments: &[OsString]) -> Option<Lang> {
    let texts: Vec<&str> = arguments.iter().filter_map(|a| a.to_str()).collect();
    let after = texts
        .windows(2)
        .find(|pair| pair[0] == "--lang")
        .map(|pair| pair[1]);
    let code = after.or_else(|| texts.iter().find_map(|text| text.strip_prefix("--lang=")))?;
    Lang::from_code(code)
}

/// The first of the variables that is set decides, as POSIX has it (from memory).
fn from_environment(env: impl Fn(&str) -> Option<String>) -> Option<Lang> {
    let set = ["LC_ALL", "LC_MESSAGES", "LANG"]
        .into_iter()
        .find_map(|name| env(name).filter(|value| !value.is_empty()))?;
    Lang::from_code(set.split(['_', '.', '@', '-']).next()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chosen(arguments: &[&str], env: &[(&str, &str)]) -> Lang {
        let arguments: Vec<OsString> = arguments.iter().map(OsString::from).collect();
        choose(&arguments, |name| {
            env.iter()
                .find(|(known, _)| *known == name)
                .map(|(_, value)| (*value).to_owned())
        })
    }

    #[test]
    fn what_is_asked_for_wins_over_the_environment() {
        let japanese = [("LANG", "ja_JP.UTF-8")];
        assert_eq!(
            chosen(&["sunbu", "plan", "--lang", "en"], &japanese),
            Lang::En
        );
        assert_eq!(chosen(&["sunbu", "--lang=ja"], &[]), Lang::Ja);
        assert_eq!(chosen(&["sunbu"], &japanese), Lang::Ja);
    }

    #[test]
    fn the_first_variable_that_is_set_decides() {
        assert_eq!(chosen(&[], &[("LC_ALL", "C"), ("LANG", "ja_JP")]), Lang::En);
        assert_eq!(chosen(&[], &[("LC_ALL", ""), ("LANG", "ja")]), Lang::Ja);
        assert_eq!(chosen(&[], &[("LANG", "de_DE")]), Lang::En);
        assert_eq!(chosen(&[], &[]), Lang::En);
    }
}
