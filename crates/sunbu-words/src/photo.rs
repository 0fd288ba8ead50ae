//! Photos in words: sides, marks and where to put them, and the hem as others see it.

use sunbu_core::dressing::{HemSeen, Leg, Onlooker, Viewer};
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

    /// Who looks, such as “by a camera”.
    pub fn onlooker(&self, onlooker: Onlooker) -> String {
        self.get(&format!("onlooker-{}", onlooker.key()))
    }

    /// Where an eye is: its height over the wearer's floor, and its distance.
    pub fn viewer(&self, viewer: &Viewer) -> String {
        let height = viewer.height_cm();
        let id = if height < 0.0 {
            "viewer-below"
        } else {
            "viewer-above"
        };
        let (height, distance) = (self.cm(height.abs()), self.cm(viewer.distance_cm()));
        self.with(
            id,
            &[
                ("height", (&height).into()),
                ("distance", (&distance).into()),
            ],
        )
    }

    /// The hem as somebody sees it, as a sentence: where on the leg, and what shows of the leg.
    pub fn hem_seen(&self, seen: &HemSeen) -> String {
        let id = match seen.leg() {
            Leg::Covered if seen.at_leg_cm < 0.0 => return self.get("hem-seen-floor"),
            Leg::Covered => "hem-seen-covered",
            Leg::Tabi => "hem-seen-tabi",
            Leg::Skin => "hem-seen-skin",
        };
        let height = self.length(seen.at_leg_cm, seen.at_leg_sd_cm);
        let amount = self.length(seen.bare_cm.abs(), seen.bare_sd_cm);
        self.with(
            id,
            &[("height", (&height).into()), ("amount", (&amount).into())],
        )
    }
}
