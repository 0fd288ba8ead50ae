//! The photos of checks with their marks.

use rusqlite::{OptionalExtension, Row, TransactionBehavior};
use sunbu_core::photo::{Hidden, Marking, View};

use crate::unread::Text;
use crate::{Store, StoreError, checks};

pub(crate) const MISSING: StoreError = StoreError::NotFound { what: "photo" };

/// A photo without its picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Photo {
    /// Its number: another picture never gets it.
    pub id: i64,
    /// The check it belongs to.
    pub check: i64,
    /// Which save of its marks this is, from 1. Give it back when saving.
    pub revision: i64,
    /// When it came in.
    pub added_at: String,
    /// From which side it shows her.
    pub view: View,
    /// Its size, side and lens, its marks, and how they were set; none when they no longer read,
    /// and the photo can only be looked at, replaced or erased.
    pub marking: Option<Marking>,
    /// What nobody is to see on a picture that leaves the studio; none when nothing is hidden.
    pub hidden: Option<Hidden>,
    /// Whether somebody has said what is to be hidden, or that nothing is.
    pub decided: bool,
}

/// A photo to keep.
#[derive(Debug, Clone, Copy)]
pub struct NewPhoto<'a> {
    /// The check it belongs to.
    pub check: i64,
    /// The photo of the same side whose place it takes, with its marks; none when there is none.
    pub instead_of: Option<i64>,
    /// Its size, side and lens, without marks.
    pub marking: &'a Marking,
    /// The picture as a JPEG that says nothing but what is seen.
    pub jpeg: &'a [u8],
}

impl Store {
    /// The photos of a check, in the order of their sides.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn photos(&self, check: i64) -> Result<Vec<Photo>, StoreError> {
        let mut statement = self
            .connection
            .prepare_cached(&format!("{SELECT} WHERE checkup_id = ?1"))?;
        let mut rows = statement.query([check])?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            found.push(read(row)?);
        }
        found.sort_by_key(|photo| photo.view);
        Ok(found)
    }

    /// One photo of a check.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn photo(&self, check: i64, id: i64) -> Result<Photo, StoreError> {
        let mut statement = self
            .connection
            .prepare_cached(&format!("{SELECT} WHERE checkup_id = ?1 AND id = ?2"))?;
        let mut rows = statement.query([check, id])?;
        rows.next()?.ok_or(MISSING).and_then(read)
    }

    /// The picture of a photo, as a JPEG.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn picture(&self, check: i64, id: i64) -> Result<Vec<u8>, StoreError> {
        let sql = "SELECT jpeg FROM photo WHERE checkup_id = ?1 AND id = ?2";
        let mut statement = self.connection.prepare_cached(sql)?;
        let jpeg = statement.query_row([check, id], |row| row.get(0));
        jpeg.optional()?.ok_or(MISSING)
    }

    /// Keeps a photo; answers its number. A check has one photo of each side at most.
    ///
    /// The bytes of a picture that it takes the place of go at once, or, while another program
    /// reads the file, with the next erasing or when the last program closes the file.
    ///
    /// # Errors
    /// [`StoreError::Taken`] when there is another photo of this side than the one it is to
    /// replace, [`StoreError::NotFound`] when there is no such check, or when the store cannot be
    /// written. Never [`StoreError::Traces`]: the new photo is kept by then, and its number would be
    /// lost with the answer.
    pub fn add_photo(&mut self, photo: &NewPhoto<'_>, now: &str) -> Result<i64, StoreError> {
        let text = json(photo.marking)?;
        let view = photo.marking.shot.view.key();
        let tx = self
            .connection
            .transaction_with_behavior(TransactionBehavior::Immediate)?;
        let check_is_there = tx
            .prepare_cached("SELECT 1 FROM checkup WHERE id = ?1")?
            .exists([photo.check])?;
        if !check_is_there {
            return Err(checks::MISSING);
        }
        if let Some(old) = photo.instead_of {
            tx.execute(
                "DELETE FROM photo WHERE checkup_id = ?1 AND id = ?2 AND view = ?3",
                (photo.check, old, view),
            )?;
        }
        let sql = "SELECT id FROM photo WHERE checkup_id = ?1 AND view = ?2";
        let there = tx.query_row(sql, (photo.check, view), |row| row.get(0));
        if let Some(by) = there.optional()? {
            return Err(StoreError::Taken { by });
        }
        tx.execute(
            "INSERT INTO photo (checkup_id, revision, view, added_at, marking_json, jpeg) \
             VALUES (?1, 1, ?2, ?3, ?4, ?5)",
            (photo.check, view, now, text, photo.jpeg),
        )?;
        let id = tx.last_insert_rowid();
        tx.commit()?;
        if photo.instead_of.is_some() {
            match self.scrub() {
                // Nobody asked for an erasing, and the old bytes go later: see above.
                Ok(()) | Err(StoreError::Traces(_)) => {}
                Err(other) => return Err(other),
            }
        }
        Ok(id)
    }

    /// Saves the marks of a photo, read at `revision`; answers the new revision.
    ///
    /// Side and size of a photo never change: those of `marking` are not looked at.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when someone saved since, [`StoreError::NotFound`], or when the store
    /// cannot be written.
    pub fn save_marking(
        &mut self,
        (check, id): (i64, i64),
        revision: i64,
        marking: &Marking,
    ) -> Result<i64, StoreError> {
        let tx = self
            .connection
            .transaction_with_behavior(TransactionBehavior::Immediate)?;
        let kept = tx
            .query_row(
                &format!("{SELECT} WHERE checkup_id = ?1 AND id = ?2"),
                [check, id],
                |row| Ok(read(row)),
            )
            .optional()?
            .ok_or(MISSING)??;
        if kept.revision != revision {
            return Err(StoreError::Stale {
                current: kept.revision,
            });
        }
        let mut marking = marking.clone();
        let own = kept.marking.ok_or_else(|| {
            StoreError::Damaged(format!("the marks of photo {id} cannot be read"))
        })?;
        let (shot, own) = (&mut marking.shot, own.shot);
        (shot.view, shot.size, shot.focal) = (own.view, own.size, own.focal);
        tx.execute(
            "UPDATE photo SET marking_json = ?2, revision = revision + 1 WHERE id = ?1",
            (id, json(&marking)?),
        )?;
        tx.commit()?;
        Ok(revision + 1)
    }

    /// Keeps what nobody is to see of a photo; with none, that all is shown. The last save counts.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be written.
    pub fn hide(
        &mut self,
        (check, id): (i64, i64),
        hidden: Option<Hidden>,
    ) -> Result<(), StoreError> {
        // No box is written as `null`: a column without a text was never decided on.
        let text =
            serde_json::to_string(&hidden).map_err(|why| StoreError::Other(why.to_string()))?;
        let tx = self.connection.transaction()?;
        let changed = tx.execute(
            "UPDATE photo SET hidden_json = ?3 WHERE checkup_id = ?1 AND id = ?2",
            (check, id, text),
        )?;
        if changed == 0 {
            return Err(MISSING);
        }
        Ok(tx.commit()?)
    }
}

const SELECT: &str =
    "SELECT id, checkup_id, revision, added_at, marking_json, view, hidden_json FROM photo";

fn json(marking: &Marking) -> Result<String, StoreError> {
    serde_json::to_string(marking).map_err(|why| StoreError::Other(why.to_string()))
}

fn read(row: &Row<'_>) -> Result<Photo, StoreError> {
    let id = row.get(0)?;
    let (Text(marking), Text(key)) = (row.get(4)?, row.get(5)?);
    let view = View::from_key(&key)
        .ok_or_else(|| StoreError::Damaged(format!("photo {id} is of no side: {key}")))?;
    let marking: Option<Marking> = serde_json::from_str(&marking).ok();
    let text: Option<Text> = row.get(6)?;
    let decided = text.is_some();
    // What was hidden must not show because it no longer reads.
    let hidden = text.and_then(|Text(text)| {
        let kept: Option<Hidden> = serde_json::from_str(&text).unwrap_or(Some(Hidden::WHOLE));
        kept
    });
    Ok(Photo {
        id,
        check: row.get(1)?,
        revision: row.get(2)?,
        added_at: row.get(3)?,
        view,
        marking: marking.filter(|marking| marking.shot.view == view),
        hidden,
        decided,
    })
}
