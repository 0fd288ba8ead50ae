//! `sunbu open` and `sunbu demo`: serves a studio to the browser on this machine alone.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use clap::ArgMatches;
use sunbu_core::demo;
use sunbu_store::Store;
use sunbu_web::App;
use sunbu_words::{Lang, Words};
use tokio::net::TcpListener;

use crate::answer::Answer;
use crate::trouble::Trouble;

/// Opens the dresser's own studio.
pub fn open(words: &Words, given: &ArgMatches) -> Answer {
    run(words, given, "studio.sunbu", |_| Ok(()))
}

/// Opens a studio of invented people and garments, filled when it is new.
pub fn demo(words: &Words, given: &ArgMatches) -> Answer {
    let language = match words.lang() {
        Lang::En => "en",
        Lang::Ja => "ja",
    };
    run(words, given, "demo.sunbu", |store| fill(store, language))
}

/// Puts the demo people and garments into an empty studio.
fn fill(store: &mut Store, language: &str) -> Result<(), String> {
    let said = |e: sunbu_store::StoreError| e.to_string();
    if !store.people().map_err(said)?.is_empty() {
        return Ok(());
    }
    let wrong = |problems: Vec<sunbu_core::problem::Problem>| {
        problems
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("; ")
    };
    let people: Vec<_> = demo::people()
        .map_err(wrong)?
        .iter()
        .map(|person| person.said(language).clone())
        .collect();
    let garments: Vec<_> = demo::garments()
        .map_err(wrong)?
        .iter()
        .map(|garment| garment.said(language).clone())
        .collect();
    store.add_all(&people, &garments, &now()).map_err(said)
}

fn run(
    words: &Words,
    given: &ArgMatches,
    usual: &str,
    prepare: impl FnOnce(&mut Store) -> Result<(), String>,
) -> Answer {
    let place = given
        .get_one::<PathBuf>("studio")
        .cloned()
        .unwrap_or_else(|| usual_place(usual));
    let port = given.get_one::<u16>("port").copied().unwrap_or(0);
    let served = opened(&place, prepare)
        .and_then(|store| serve(words, store, port, !given.get_flag("no-browser")));
    match served {
        Ok(()) => Answer::Done(String::new()),
        Err(reason) => {
            let place = place.display().to_string();
            let trouble = Trouble::at("studio", place, "trouble-studio").with("reason", reason);
            Answer::bad_input(words, &[trouble], false)
        }
    }
}

/// Where a studio lies when nobody says otherwise: the user's own data folder.
fn usual_place(name: &str) -> PathBuf {
    let from = |variable: &str| std::env::var_os(variable).map(PathBuf::from);
    let data = from("XDG_DATA_HOME")
        .or_else(|| from("HOME").map(|home| home.join(".local/share")))
        .unwrap_or_else(|| PathBuf::from("."));
    data.join("sunbu").join(name)
}

fn opened(
    place: &Path,
    prepare: impl FnOnce(&mut Store) -> Result<(), String>,
) -> Result<Store, String> {
    if let Some(folder) = place.parent() {
        std::fs::create_dir_all(folder).map_err(|e| e.to_string())?;
    }
    let mut store = Store::open(place, &now()).map_err(|e| e.to_string())?;
    prepare(&mut store)?;
    Ok(store)
}

/// Serves until Ctrl-C; says on stdout where.
fn serve(words: &Words, store: Store, port: u16, browser: bool) -> Result<(), String> {
    let runtime = tokio::runtime::Runtime::new().map_err(|e| e.to_string())?;
    runtime.block_on(async {
        let listener = TcpListener::bind(("127.0.0.1", port))
            .await
            .map_err(|e| e.to_string())?;
        let address = listener.local_addr().map_err(|e| e.to_string())?;
        let address = format!("http://{address}/");
        let line = words.with("studio-open", &[("address", address.as_str().into())]);
        // Nobody reading the line is no reason not to serve.
        let mut out = std::io::stdout();
        drop(writeln!(out, "{line}").and_then(|()| out.flush()));
        if browser {
            show(&address);
        }
        let stop = async { drop(tokio::signal::ctrl_c().await) };
        let app = App {
            store,
            clock: Box::new(now),
        };
        sunbu_web::serve(listener, app, stop)
            .await
            .map_err(|e| e.to_string())
    })
}

/// Asks the system to show the address; where it cannot, the printed line has it.
fn show(address: &str) {
    let program = if cfg!(target_os = "macos") {
        "open"
    } else {
        "xdg-open"
    };
    let quiet = Command::new(program)
        .arg(address)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn();
    drop(quiet);
}

/// The time now, ISO 8601 in UTC: the only clock of the program.
fn now() -> String {
    jiff::Timestamp::now().to_string()
}
