//! The brightness of the photos last marked, kept in memory: to unpack a photo of twelve megapixels
//! at each nudge would take longer than the nudge.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use sunbu_core::photo::Gray;

/// How many are kept: the one under the hands and the one before (chosen; each takes a byte a
/// pixel, 12 MB of a phone's usual photo).
const KEPT: usize = 2;

/// Photos by their number, the last asked for at the end. A number is never given to another photo.
#[derive(Default)]
pub(crate) struct Grays {
    kept: Mutex<VecDeque<(i64, Arc<Gray>)>>,
}

impl Grays {
    /// The photo of this number, if it is kept.
    pub fn get(&self, photo: i64) -> Option<Arc<Gray>> {
        let mut kept = self.kept();
        let at = kept.iter().position(|(id, _)| *id == photo)?;
        let found = kept.remove(at)?;
        let gray = Arc::clone(&found.1);
        kept.push_back(found);
        Some(gray)
    }

    /// Keeps a photo, and lets go of the one that was asked for longest ago.
    pub fn put(&self, photo: i64, gray: Gray) -> Arc<Gray> {
        let gray = Arc::new(gray);
        let mut kept = self.kept();
        kept.retain(|(id, _)| *id != photo);
        kept.push_back((photo, Arc::clone(&gray)));
        while kept.len() > KEPT {
            kept.pop_front();
        }
        gray
    }

    /// Lets go of a photo that was erased.
    pub fn forget(&self, photo: i64) {
        self.kept().retain(|(id, _)| *id != photo);
    }

    fn kept(&self) -> MutexGuard<'_, VecDeque<(i64, Arc<Gray>)>> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gray(value: u8) -> Gray {
        Gray::new(1, 1, vec![value]).expect("a picture of one pixel")
    }

    #[test]
    fn the_two_photos_last_asked_for_are_kept() {
        let grays = Grays::default();
        for photo in 1..=2 {
            grays.put(photo, gray(9));
        }
        assert!(grays.get(1).is_some(), "asked for once more");
        grays.put(3, gray(7));
        let kept = [1, 2, 3].map(|photo| grays.get(photo).is_some());
        assert_eq!(kept, [true, false, true]);
        grays.forget(3);
        assert!(grays.get(3).is_none());
    }
}
