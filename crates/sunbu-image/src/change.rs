//! Changing a picture: a part of it, a part made soft, a part hidden.

use image::{Rgb, imageops};

use crate::Picture;

/// A rectangle of pixels. It may reach beyond the picture; what lies within counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Area {
    /// Its first column.
    pub left: u32,
    /// Its first row.
    pub top: u32,
    /// How many columns.
    pub width: u32,
    /// How many rows.
    pub height: u32,
}

impl Area {
    /// The part that lies within a picture of this size; none when nothing does.
    fn within(self, [width, height]: [u32; 2]) -> Option<Area> {
        let area = Area {
            width: self.width.min(width.checked_sub(self.left)?),
            height: self.height.min(height.checked_sub(self.top)?),
            ..self
        };
        (area.width > 0 && area.height > 0).then_some(area)
    }
}

impl Picture {
    /// That part of the picture alone; none when nothing of the area lies within.
    ///
    /// Its focal length is gone: the lens looks at the middle of the whole picture, not of a part.
    pub fn crop(&self, area: Area) -> Option<Picture> {
        let area = area.within(self.size())?;
        let part = imageops::crop_imm(&self.pixels, area.left, area.top, area.width, area.height);
        Some(Picture {
            pixels: part.to_image(),
            whole: [area.width, area.height],
            focal: None,
        })
    }

    /// Softens that part by an eighth of its shorter side, to draw the eye elsewhere.
    ///
    /// It hides nobody: a blur can be undone in part. For that there is [`Picture::hide`].
    pub fn blur(&mut self, area: Area) {
        let Some(area) = area.within(self.size()) else {
            return;
        };
        let part = imageops::crop_imm(&self.pixels, area.left, area.top, area.width, area.height);
        let width = area.width.min(area.height) as f32 / 8.0;
        let soft = imageops::fast_blur(&part.to_image(), width.max(0.5));
        imageops::replace(
            &mut self.pixels,
            &soft,
            i64::from(area.left),
            i64::from(area.top),
        );
    }

    /// Paints that part in one colour, so that nothing of what was there is left in the picture or in
    /// any JPEG of it.
    pub fn hide(&mut self, area: Area, colour: [u8; 3]) {
        let Some(area) = area.within(self.size()) else {
            return;
        };
        for y in area.top..area.top + area.height {
            for x in area.left..area.left + area.width {
                self.pixels.put_pixel(x, y, Rgb(colour));
            }
        }
    }
}
