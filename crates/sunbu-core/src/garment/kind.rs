//! What kind of garment it is, what it is made of, and from where its length was taken.

use crate::keyed::keyed_enum;

keyed_enum! {
    /// Kind of garment. Men's and children's kimono, juban and coats are sewn to other rules and
    /// are not among them.
    Kind {
        /// Women's long kimono, lined or unlined.
        Nagagi = "nagagi",
        /// Women's yukata, worn without juban.
        Yukata = "yukata",
    }
}

keyed_enum! {
    /// How the cloth handles: it decides how far the front edges are raised
    /// (soft cloth slides and is raised more; F6, dressing class: soft and stiff cloth raise).
    Cloth {
        /// Soft silk or what falls like it: chirimen, rinzu, most polyester.
        Soft = "soft",
        /// Stiff cloth: tsumugi, hemp, wool.
        Stiff = "stiff",
        /// Cotton, as for yukata.
        Cotton = "cotton",
    }
}

keyed_enum! {
    /// Where the length of a garment was taken from; the two differ by about 1 sun.
    MitakeFrom {
        /// From the shoulder ridge.
        Shoulder = "shoulder",
        /// From the collar seam at the back seam.
        BackSeam = "back_seam",
    }
}
