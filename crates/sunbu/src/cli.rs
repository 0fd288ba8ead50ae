//! The command tree, its help in the language of the run, and the way from arguments to a command.

use std::ffi::OsString;

use clap::builder::{PossibleValuesParser, ValueParser};
use clap::error::ErrorKind;
use clap::{Arg, ArgAction, ArgGroup, ArgMatches, Command};
use sunbu_words::{Lang, Words};

use crate::answer::Answer;
use crate::commands;
use crate::language;
use crate::usage;

/// Runs the program on these arguments, the first being its own name.
pub fn run(arguments: Vec<OsString>) -> Answer {
    let words = Words::of(language::choose(&arguments, |name| {
        std::env::var(name).ok()
    }));
    match tree(words).try_get_matches_from(arguments) {
        Ok(matches) => dispatch(words, &matches),
        Err(error) => match error.kind() {
            ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => Answer::Done(error.to_string()),
            _ => Answer::BadInput {
                document: String::new(),
                complaint: usage::complaint(words, &error),
            },
        },
    }
}

fn dispatch(words: &'static Words, matches: &ArgMatches) -> Answer {
    match matches.subcommand() {
        Some(("plan", given)) => commands::plan::run(words, given),
        Some(("rank", given)) => commands::rank::run(words, given),
        Some(("figure", given)) => commands::figure::run(words, given),
        Some(("mark", given)) => commands::mark::run(words, given),
        Some(("check", given)) => commands::check::run(words, given),
        Some(("schema", given)) => commands::schema::run(words, given),
        Some(("open", given)) => commands::studio::open(words, given),
        Some(("demo", given)) => commands::studio::demo(words, given),
        Some(("backup", given)) => commands::studio::backup(words, given),
        Some(("restore", given)) => commands::studio::restore(words, given),
        Some(("erase", given)) => commands::studio::erase(words, given),
        Some(("help", given)) => commands::topics::run(words, given),
        // The tree asks for one of its subcommands.
        _ => Answer::Done(long_help(words, None).unwrap_or_default()),
    }
}

/// The long help of a command by its name, or of the program; `None` when there is no such one.
pub fn long_help(words: &Words, command: Option<&str>) -> Option<String> {
    let mut tree = tree(words);
    // Without this a subcommand does not know that it is called through the program.
    tree.build();
    let command = match command {
        None => &mut tree,
        Some(name) => tree.find_subcommand_mut(name)?,
    };
    Some(format!(
        "{}\n",
        command.render_long_help().to_string().trim_end()
    ))
}

/// The whole command tree with its help.
fn tree(words: &Words) -> Command {
    let program = Command::new("sunbu")
        .version(env!("CARGO_PKG_VERSION"))
        .about(words.get("cli-about"))
        .long_about(words.get("cli-long"))
        .after_long_help(words.get("cli-example"))
        .subcommand_help_heading(words.get("cli-commands"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .disable_help_subcommand(true)
        .disable_version_flag(true)
        .arg(
            Arg::new("version")
                .long("version")
                .short('V')
                .action(ArgAction::Version)
                .help(words.get("arg-version"))
                .help_heading(words.get("cli-options")),
        );
    let commands = [
        demo, open, plan, rank, figure, mark, check, backup, restore, erase, schema, help,
    ]
    .map(|make| with_common(words, make(words)));
    with_common(words, program).subcommands(commands)
}

/// A subcommand with its texts: `cli-NAME` in a line, `cli-NAME-long`, and `cli-NAME-example`.
fn command(words: &Words, name: &'static str) -> Command {
    let about = words.get(&format!("cli-{name}"));
    let long = format!("{about}\n\n{}", words.get(&format!("cli-{name}-long")));
    Command::new(name)
        .about(about)
        .long_about(long)
        .after_long_help(words.get(&format!("cli-{name}-example")))
}

/// The options that every command has, and the frame of its help.
fn with_common(words: &Words, command: Command) -> Command {
    let usage = words.get("cli-usage");
    command
        .help_template(format!(
            "{{about-with-newline}}\n{usage} {{usage}}\n\n{{all-args}}{{after-help}}"
        ))
        .disable_help_flag(true)
        .arg(
            Arg::new("lang")
                .long("lang")
                .value_name(words.get("value-lang"))
                .value_parser(PossibleValuesParser::new(
                    Lang::ALL.iter().map(|l| l.code()),
                ))
                .hide_possible_values(true)
                .help(words.get("arg-lang"))
                .help_heading(words.get("cli-options")),
        )
        .arg(
            Arg::new("help")
                .short('h')
                .long("help")
                .action(ArgAction::Help)
                .help(words.get("arg-help"))
                .help_heading(words.get("cli-options")),
        )
}

/// An option with a value: `arg-NAME` is its help.
fn option(words: &Words, name: &'static str, value: &str) -> Arg {
    Arg::new(name)
        .long(name)
        .value_name(words.get(value))
        .help(words.get(&format!("arg-{name}")))
        .help_heading(words.get("cli-options"))
}

/// An option that is there or not.
fn flag(words: &Words, name: &'static str) -> Arg {
    Arg::new(name)
        .long(name)
        .action(ArgAction::SetTrue)
        .help(words.get(&format!("arg-{name}")))
        .help_heading(words.get("cli-options"))
}

fn path(arg: Arg) -> Arg {
    arg.value_parser(ValueParser::path_buf())
}

/// The case file.
fn case(words: &Words) -> Arg {
    path(
        Arg::new("case")
            .value_name(words.get("value-case"))
            .help(words.get("arg-case"))
            .help_heading(words.get("cli-arguments")),
    )
}

/// The options that say what for and by which standard.
fn with_wishes(words: &Words, command: Command) -> Command {
    command
        .arg(option(words, "occasion", "value-occasion"))
        .arg(path(option(words, "standard", "value-file")))
}

fn plan(words: &Words) -> Command {
    with_wishes(
        words,
        command(words, "plan").arg(case(words).required(true)),
    )
    .arg(option(words, "garment", "value-name"))
    .arg(option(words, "set", "value-set").action(ArgAction::Append))
    .arg(seen_by(words))
    .arg(flag(words, "json"))
}

/// Who looks at the hem.
fn seen_by(words: &Words) -> Arg {
    option(words, "seen-by", "value-seen-by")
        .action(ArgAction::Append)
        // A floor below a stage is less than nothing.
        .allow_hyphen_values(true)
}

/// A command about photos of one of a case, or of a stranger.
fn with_shown(words: &Words, command: Command) -> Command {
    let sexes = sunbu_core::body::Sex::ALL.iter().map(|sex| sex.key());
    with_wishes(words, command.arg(case(words)))
        .arg(option(words, "garment", "value-name").conflicts_with("stranger"))
        .arg(
            option(words, "set", "value-set")
                .action(ArgAction::Append)
                .conflicts_with("stranger"),
        )
        .arg(flag(words, "stranger"))
        .arg(option(words, "stature", "value-length").conflicts_with("case"))
        .arg(
            option(words, "sex", "value-sex")
                .value_parser(PossibleValuesParser::new(sexes))
                .hide_possible_values(true)
                .conflicts_with("case"),
        )
        .group(
            ArgGroup::new("of")
                .args(["case", "stranger"])
                .required(true),
        )
}

fn mark(words: &Words) -> Command {
    let views = sunbu_core::photo::View::ALL.iter().map(|view| view.key());
    // Its own usage would not fit on a line.
    let names = ["value-case", "value-file", "value-side", "value-pixel"];
    let [case, file, side, place] = names.map(|id| words.get(id));
    let usage = format!(
        "sunbu mark [OPTIONS] <{case}|--stranger> --photo <{file}>\n    \
         --view <{side}> --floor <{place}> --crown <{place}>"
    );
    with_shown(words, command(words, "mark"))
        .override_usage(usage)
        .arg(path(option(words, "photo", "value-file").required(true)))
        .arg(
            option(words, "view", "value-side")
                .value_parser(PossibleValuesParser::new(views))
                .hide_possible_values(true)
                .help(words.get("arg-side"))
                .required(true),
        )
        .arg(option(words, "floor", "value-pixel").required(true))
        .arg(option(words, "crown", "value-pixel").required(true))
        .arg(flag(words, "mirrored"))
        .arg(flag(words, "no-snap"))
        .arg(path(option(words, "output", "value-file").short('o')))
        .arg(flag(words, "replace").requires("output"))
}

fn check(words: &Words) -> Command {
    let several = |name, value| path(option(words, name, value)).action(ArgAction::Append);
    with_shown(words, command(words, "check"))
        .arg(several("photo", "value-file").required(true))
        .arg(several("marks", "value-file").required(true))
        .arg(several("overlay", "value-file"))
        .arg(flag(words, "hide-face").requires("overlay"))
        .arg(seen_by(words))
        .arg(flag(words, "json"))
}

fn rank(words: &Words) -> Command {
    let one_of = ["case", "person", "garment"];
    with_wishes(words, command(words, "rank").arg(case(words)))
        .arg(option(words, "person", "value-name"))
        .arg(option(words, "garment", "value-name").help(words.get("arg-for-garment")))
        .arg(studio(words).conflicts_with("case"))
        .arg(flag(words, "json"))
        .group(ArgGroup::new("of").args(one_of).required(true))
}

fn figure(words: &Words) -> Command {
    with_wishes(
        words,
        command(words, "figure").arg(case(words).required(true)),
    )
    .arg(option(words, "garment", "value-name"))
    .arg(option(words, "set", "value-set").action(ArgAction::Append))
    .arg(
        option(words, "view", "value-view")
            .value_parser(PossibleValuesParser::new(commands::figure::VIEWS))
            .hide_possible_values(true)
            .default_value("sheet")
            .hide_default_value(true),
    )
    .arg(
        option(words, "show", "value-show")
            .value_parser(PossibleValuesParser::new(commands::figure::SHOWN))
            .hide_possible_values(true)
            .default_value("plan")
            .hide_default_value(true),
    )
    .arg(path(option(words, "output", "value-file").short('o')))
}

/// The studio's file.
fn studio(words: &Words) -> Arg {
    path(option(words, "studio", "value-file"))
}

/// The options that say how a studio is opened.
fn with_door(words: &Words, command: Command) -> Command {
    command
        .arg(studio(words))
        .arg(option(words, "port", "value-port"))
        .arg(flag(words, "no-browser"))
}

fn open(words: &Words) -> Command {
    with_door(words, command(words, "open"))
}

fn demo(words: &Words) -> Command {
    with_door(words, command(words, "demo"))
        .mut_arg("studio", |arg| arg.help(words.get("arg-demo-studio")))
}

/// The backup.
fn backup_file(words: &Words) -> Arg {
    path(
        Arg::new("file")
            .value_name(words.get("value-file"))
            .required(true)
            .help(words.get("arg-backup"))
            .help_heading(words.get("cli-arguments")),
    )
}

fn backup(words: &Words) -> Command {
    command(words, "backup")
        .arg(backup_file(words))
        .arg(studio(words))
}

fn restore(words: &Words) -> Command {
    command(words, "restore")
        .arg(backup_file(words))
        .arg(studio(words))
}

fn erase(words: &Words) -> Command {
    command(words, "erase")
        .arg(
            Arg::new("person")
                .value_name(words.get("value-name"))
                .required(true)
                .help(words.get("arg-erase"))
                .help_heading(words.get("cli-arguments")),
        )
        .arg(studio(words))
        .arg(flag(words, "yes"))
}

fn schema(words: &Words) -> Command {
    command(words, "schema").arg(
        Arg::new("name")
            .value_name(words.get("value-name"))
            .help(words.get("arg-schema"))
            .help_heading(words.get("cli-arguments")),
    )
}

fn help(words: &Words) -> Command {
    command(words, "help").arg(
        Arg::new("topic")
            .value_name(words.get("value-topic"))
            .help(words.get("arg-topic"))
            .help_heading(words.get("cli-arguments")),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tree_is_sound_in_every_language() {
        for &lang in Lang::ALL {
            tree(Words::of(lang)).debug_assert();
        }
    }

    #[test]
    fn every_command_has_long_help_with_an_example_it_really_takes() {
        for &lang in Lang::ALL {
            let words = Words::of(lang);
            let names: Vec<String> = tree(words)
                .get_subcommands()
                .map(|c| c.get_name().to_owned())
                .collect();
            for name in names {
                let help = long_help(words, Some(&name)).expect("a command of the tree");
                let examples: Vec<&str> = help
                    .lines()
                    .map(str::trim)
                    .filter(|line| line.starts_with("$ sunbu"))
                    .collect();
                assert!(!examples.is_empty(), "{name} shows no example");
                for example in examples {
                    let words_of_line = example.trim_start_matches("$ ").split_whitespace();
                    let parsed = tree(words).try_get_matches_from(words_of_line);
                    assert!(
                        parsed.is_ok(),
                        "{example}: {}",
                        parsed.expect_err("no match")
                    );
                }
            }
        }
    }
}
