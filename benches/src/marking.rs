//! A photo on its page timed from outside: from sending it to its picture in the browser, and one
//! move of a hand on it.

use serde::Serialize;
use sunbu_core::photo::{Mark, Marking, Placed, Trust, View};

use crate::error::Error;
use crate::photo::phone_photo;
use crate::program::Studio;
use crate::timing::{Times, once};

/// How long a photo takes on its page.
#[derive(Debug, Clone, Serialize)]
pub struct MarkingTimes {
    /// A photo of twelve megapixels sent, its page and its picture fetched.
    pub ready: Times,
    /// A mark set by hand, brought to its edge, all others placed anew, saved and answered.
    pub nudge: Times,
}

/// What stands between the parts of a form with a file.
const LINE: &str = "----between-the-parts";

/// Times `runs` photos, each of a stranger's new check, with a few moves on each.
///
/// # Errors
/// [`Error::Studio`] when an answer is another than that all is well, [`Error::Photo`] when the photo
/// cannot be drawn.
pub fn marking(open: &Studio, runs: usize) -> Result<MarkingTimes, Error> {
    let (file, size) = phone_photo()?;
    let form = with_file(&file);
    let kind = format!("multipart/form-data; boundary={LINE}");
    let (mut ready, mut nudges) = (Vec::new(), Vec::new());
    for run in 0..=runs {
        let check = open.send("/checks/new", &[("name", "Student")])?;
        let (ms, page) = once(|| {
            let page = open.send_bytes(&format!("{check}/photos"), &kind, &form)?;
            open.get(&page, "en")?;
            open.bytes(&format!("{page}/picture.jpg"))?;
            Ok::<_, Error>(page)
        });
        let moved = moves(open, &page?, size)?;
        // The first is not counted, as with every other figure.
        if run > 0 {
            ready.push(ms);
            nudges.extend(moved);
        }
    }
    Ok(MarkingTimes {
        ready: Times::of(ready),
        nudge: Times::of(nudges),
    })
}

/// Sets floor and crown, and times each of a few moves of a hem's end.
fn moves(open: &Studio, page: &str, [width, height]: [u32; 2]) -> Result<Vec<f64>, Error> {
    let mut marking = Marking::new(View::Front, [width, height], None);
    let mut put = |mark: Mark, x: f64, y: f64| {
        let at = [x * f64::from(width), y * f64::from(height)];
        let trust = Trust::Sure;
        marking.shot.marks.insert(mark, Placed { at, trust });
        marking.moved.insert(mark);
        serde_json::to_string(&marking).map_err(|why| Error::Studio(why.to_string()))
    };
    put(Mark::Floor, 0.5, 0.92)?;
    let begun = put(Mark::Crown, 0.5, 0.1)?;
    let path = format!("{page}/marks");
    let mut revision = 1;
    let mut send = |marking: &str, hands: &str| {
        let told = revision.to_string();
        let form = [
            ("revision", told.as_str()),
            ("marking", marking),
            ("hands", hands),
        ];
        let (ms, answer) = once(|| open.told(&path, &form));
        revision += 1;
        answer.map(|_| ms)
    };
    send(&begun, "")?;
    let mut times = Vec::new();
    for step in 0..5 {
        let moved = put(Mark::HemLeft, 0.56, 0.88 + 0.002 * f64::from(step))?;
        times.push(send(&moved, "hem_left")?);
    }
    Ok(times)
}

/// The form that a browser sends with a photo from the front.
fn with_file(file: &[u8]) -> Vec<u8> {
    let head = format!(
        "--{LINE}\r\nContent-Disposition: form-data; name=\"view\"\r\n\r\nfront\r\n\
         --{LINE}\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.jpg\"\r\n\
         Content-Type: image/jpeg\r\n\r\n"
    );
    let end = format!("\r\n--{LINE}--\r\n");
    [head.as_bytes(), file, end.as_bytes()].concat()
}
