//! The smallest and largest people in the smallest and largest garments that may be entered.

mod program;

use program::run;

fn case(person: (f64, f64), garment: (f64, f64), kind: &str) -> String {
    let ((stature, hip), (mitake, ushirohaba)) = (person, garment);
    format!(
        "occasion = \"formal\"\n[person]\nname = \"P\"\nsex = \"women\"\nstature = {stature}\n\
         hip_girth = {hip}\n[garment]\nname = \"G\"\nkind = \"{kind}\"\n\
         mitake_from = \"back_seam\"\nmitake = {mitake}\nushirohaba = {ushirohaba}\n"
    )
}

#[test]
fn whatever_may_be_entered_gets_a_plan_in_numbers() {
    let (small, large) = ((100.0, 60.0), (215.0, 200.0));
    let (least, most) = ((95.0, 19.0), (210.0, 45.0));
    for (person, garment) in [(small, most), (large, least)] {
        let text = case(person, garment, "nagagi");
        let ran = run(&["plan", "-"], text.as_bytes());
        assert!(
            matches!(ran.code, Some(0 | 1)),
            "{person:?} in {garment:?}: {}",
            ran.err
        );
        assert!(
            ran.out.contains("\n15. "),
            "{person:?} in {garment:?}: no last step"
        );
        for bad in ["NaN", "inf", "panicked"] {
            let said = format!("{}{}", ran.out, ran.err);
            assert!(!said.contains(bad), "{person:?} in {garment:?}: {bad}");
        }
    }
}
