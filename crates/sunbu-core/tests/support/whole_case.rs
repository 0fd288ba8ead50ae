//! A case file with everything in it, and problems in a form to compare.

use sunbu_core::problem::Problem;

/// A case that uses every part of the form.
pub const WHOLE: &str = r#"
occasion = "formal"

[person]
name = "Tanabe Chiyo"
sex = "women"
stature = 158
hip_girth = { value = 91, sd = 0.5 }
waist_height = "95.5 cm"
spine_to_wrist = "1尺8寸"
note = "left shoulder lower"

[[garments]]
name = "Grey tsumugi"
kind = "nagagi"
cloth = "stiff"
mitake_from = "back_seam"
mitake = "4尺1寸5分"
ushirohaba = "7 sun 5 bu"
yuki = 65.5

[[garments]]
name = "Indigo yukata"
kind = "yukata"
mitake_from = "shoulder"
mitake = "161 cm"
maehaba = 23.0

[dressing]
nape_drop = 5
back_seam_hip = -1.25
koshihimo_back = "96 cm"

[dresser]
name = "Mori Sayo"
sex = "women"
stature = 162
hip_girth = 93
finger_breadth = 1.6
"#;

/// Places and codes of all problems, in order.
pub fn faults(problems: &[Problem]) -> Vec<(&str, String)> {
    problems
        .iter()
        .map(|p| (p.place.as_str(), p.code()))
        .collect()
}
