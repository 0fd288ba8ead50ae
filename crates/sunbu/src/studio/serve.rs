//! Opening a studio for the browser of this machine, until it is told to stop.

use std::io::Write;
use std::net::{Ipv4Addr, SocketAddr};
use std::time::Duration;

use sunbu_store::Store;
use sunbu_web::App;
use tokio::net::TcpListener;
use tokio::sync::oneshot;

use super::{browser, now};
use crate::trouble::Trouble;

/// Where the studio is found when nobody says otherwise and nothing else is there: chosen, so
/// that a bookmark keeps its meaning.
const USUAL_PORT: u16 = 8256;

/// How long answers under way may take once the studio is told to stop.
const LAST_ANSWERS: Duration = Duration::from_secs(3);

/// How a studio is to be opened.
#[derive(Debug, Clone, Copy)]
pub struct Door {
    /// The port that was asked for, 0 for any that is free; the usual one when none was.
    pub port: Option<u16>,
    /// Whether to show it in the browser.
    pub browser: bool,
}

/// Opens the studio and stays until Ctrl-C or a request to end. `said` is printed below the line
/// with the address.
///
/// # Errors
/// When the port that was asked for is taken, or the system gives none.
pub fn open(store: Store, door: Door, said: &str) -> Result<(), Vec<Trouble>> {
    let failed = |error: std::io::Error| {
        vec![Trouble::at("sunbu", "", "trouble-network").with("why", error.to_string())]
    };
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .map_err(failed)?;
    runtime.block_on(async {
        let listener = listen(door.port).await?;
        let address = format!("http://{}/", listener.local_addr().map_err(failed)?);
        // Before the address is out: whoever reads it may at once ask the studio to stop.
        let told_to_stop = told_to_stop().map_err(failed)?;
        announce(&address, said);
        if door.browser {
            browser::show(&address);
        }
        let (stop, stopped) = oneshot::channel::<()>();
        let app = App {
            store,
            clock: Box::new(now),
        };
        let served = sunbu_web::serve(listener, app, async {
            // A sender that is gone means the same as a word from it.
            let _ = stopped.await;
        });
        let limit = async {
            told_to_stop.await;
            let _ = stop.send(());
            tokio::time::sleep(LAST_ANSWERS).await;
        };
        tokio::select! {
            ended = served => ended.map_err(failed),
            () = limit => Ok(()),
        }
    })
}

/// Listens on this machine alone: nothing from another one reaches the studio.
async fn listen(port: Option<u16>) -> Result<TcpListener, Vec<Trouble>> {
    let on = |port: u16| TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port)));
    let bound = match port {
        Some(port) => on(port).await,
        // Another studio may be open at the usual place already.
        None => match on(USUAL_PORT).await {
            Err(_) => on(0).await,
            listening => listening,
        },
    };
    bound.map_err(|error| {
        let typed = port.map(|port| port.to_string()).unwrap_or_default();
        vec![Trouble::at("--port", typed, "trouble-port").with("why", error.to_string())]
    })
}

/// Prints the address at once, for people and for programs that wait for it.
///
/// Whoever started the studio may not be reading; it is open all the same.
fn announce(address: &str, said: &str) {
    let mut out = std::io::stdout().lock();
    let _ = write!(out, "Sunbu is open at {address}\n{said}").and_then(|()| out.flush());
}

/// What ends when the user or the system asks the program to stop; it listens from now on.
#[cfg(unix)]
fn told_to_stop() -> std::io::Result<impl Future<Output = ()>> {
    use tokio::signal::unix::{SignalKind, signal};
    let mut interrupt = signal(SignalKind::interrupt())?;
    let mut terminate = signal(SignalKind::terminate())?;
    // The terminal closes: what is temporary goes with it. Whoever was started so as to outlive the
    // terminal (`nohup`) was told to pass this over, and listening would undo that.
    let mut hangup = match hangup_is_passed_over() {
        true => None,
        false => Some(signal(SignalKind::hangup())?),
    };
    let hung_up = async move {
        match &mut hangup {
            Some(hangup) => hangup.recv().await,
            None => std::future::pending().await,
        }
    };
    Ok(async move {
        tokio::select! {
            _ = interrupt.recv() => {}
            _ = terminate.recv() => {}
            _ = hung_up => {}
        }
    })
}

/// Whether the program was started with the hangup passed over, as far as the system tells it: Linux
/// does, in `/proc/self/status` (from memory).
#[cfg(unix)]
fn hangup_is_passed_over() -> bool {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let ignored = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    // Signal n is bit n - 1, and the hangup is signal 1 (POSIX).
    let mask = ignored.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok());
    mask.is_some_and(|mask| mask & 1 == 1)
}

/// What ends when the user or the system asks the program to stop; it listens from now on.
#[cfg(windows)]
fn told_to_stop() -> std::io::Result<impl Future<Output = ()>> {
    let mut interrupt = tokio::signal::windows::ctrl_c()?;
    Ok(async move {
        interrupt.recv().await;
    })
}
