//! Fingers and mouse: real pointer actions at places of the screen.

use std::time::Duration;

use fantoccini::actions::{
    InputSource, MOUSE_BUTTON_LEFT, MouseActions, PointerAction, TouchActions,
};

use crate::browser::{Browser, command};
use crate::error::BrowserError;

/// A place on the screen, in CSS pixels from its upper left corner.
pub type Spot = [f64; 2];

impl Browser {
    /// Taps a place: with a finger on a phone, with the mouse at a desk.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when the place is beyond the screen.
    pub async fn tap(&self, at: Spot) -> Result<(), BrowserError> {
        self.drag(at, at).await
    }

    /// Presses at one place and lets go at another: through eight places between, a little past it,
    /// and back, as hands do.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when a place is beyond the screen.
    pub async fn drag(&self, from: Spot, to: Spot) -> Result<(), BrowserError> {
        const STEPS: u32 = 8;
        const PAST: f64 = 6.0;
        let go = |[x, y]: Spot| PointerAction::MoveTo {
            duration: Some(Duration::from_millis(4)),
            x,
            y,
        };
        let button = MOUSE_BUTTON_LEFT;
        let mut way = vec![go(from), PointerAction::Down { button }];
        if from != to {
            let past = to.map(|part| part + PAST);
            way.extend((1..=STEPS).map(|step| {
                let share = f64::from(step) / f64::from(STEPS);
                go([0, 1].map(|k| from[k] + share * (past[k] - from[k])))
            }));
            way.push(go(to));
        }
        way.push(PointerAction::Up { button });
        let id = "hand".to_owned();
        let done = if self.view().is_phone() {
            let finger = TouchActions::new(id);
            let all = way.into_iter().fold(finger, InputSource::then);
            self.client().perform_actions(all).await
        } else {
            let mouse = MouseActions::new(id);
            let all = way.into_iter().fold(mouse, InputSource::then);
            self.client().perform_actions(all).await
        };
        done.map_err(|source| command("point at the page", source))
    }
}
