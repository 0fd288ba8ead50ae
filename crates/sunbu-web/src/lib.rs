//! The studio's pages: the only place with HTTP and HTML.
//!
//! [`router`] makes the pages of a studio, [`serve`] serves them to this machine's browser. Each
//! request is read whole, handled on a thread that may wait for the disk, and answered with a
//! page that works without scripts wherever a form suffices.

mod amount;
mod answer;
mod app;
mod ask;
mod assets;
mod conflict;
mod entry;
mod error;
mod grays;
mod guard;
mod language;
mod pages;
mod parts;
mod routes;
mod search;
mod state;

use std::future::Future;

use axum::serve::ListenerExt;
use tokio::net::TcpListener;

pub use app::App;
pub use routes::{page_list, router};

/// Serves a studio on `listener` until `shutdown` is ready; answers under way are finished.
///
/// # Errors
/// What the listener says when it cannot be listened on any more.
pub async fn serve(
    listener: TcpListener,
    app: App,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> std::io::Result<()> {
    // Small answers while a slider moves are not to wait for each other on the wire. Where the
    // option cannot be set the answers are slower and still right.
    let listener = listener.tap_io(|stream| drop(stream.set_nodelay(true)));
    axum::serve(listener, router(app))
        .with_graceful_shutdown(shutdown)
        .await
}
