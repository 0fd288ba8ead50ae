//! What the pages work with: the store, and the clock that comes from outside.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use sunbu_store::Store;

use crate::grays::Grays;

/// A studio to be served.
pub struct App {
    /// Where people, garments and plans are kept.
    pub store: Store,
    /// The time now, ISO 8601 with its offset, e.g. `2026-03-01T09:30:00+09:00`. The studio never
    /// looks at a clock itself.
    pub clock: Box<dyn Fn() -> String + Send + Sync>,
}

impl std::fmt::Debug for App {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("App").finish_non_exhaustive()
    }
}

/// The studio while it is open: shared by all requests.
#[derive(Clone)]
pub(crate) struct Room {
    store: Arc<Mutex<Store>>,
    clock: Arc<dyn Fn() -> String + Send + Sync>,
    /// The photos last marked, for their edges.
    pub grays: Arc<Grays>,
}

impl Room {
    /// Opens a studio.
    pub fn new(app: App) -> Self {
        Self {
            store: Arc::new(Mutex::new(app.store)),
            clock: app.clock.into(),
            grays: Arc::default(),
        }
    }

    /// The store, for as long as the guard is held.
    ///
    /// A handler that panicked leaves the store usable: what it had not finished was rolled back
    /// with its transaction.
    pub fn store(&self) -> MutexGuard<'_, Store> {
        self.store.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// The time now.
    pub fn now(&self) -> String {
        (self.clock)()
    }
}
