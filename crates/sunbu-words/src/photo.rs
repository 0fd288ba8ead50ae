//! Photos in words: sides, marks and where to put them.

use sunbu_core::photo::{Mark, Trust, View};

use crate::Words;

impl Words {
    /// From which side a photo shows the wearer.
    pub fn view(&self, view: View) -> String {
        self.get(&format!("photo-view-{}", view.key()))
    }

    /// A mark's name, such as “Fold, left end”.
    pub fn mark(&self, mark: Mark) -> String {
        self.get(&format!("photo-mark-{}", mark.key()))
    }

    /// Where to put a mark, in one line.
    pub fn mark_hint(&self, mark: Mark) -> String {
        self.get(&format!("photo-mark-{}.hint", mark.key()))
    }

    /// How sure a mark was set.
    pub fn trust(&self, trust: Trust) -> String {
        self.get(match trust {
            Trust::Sure => "photo-trust-sure",
            Trust::Unsure => "photo-trust-unsure",
        })
    }
}
