//! Checks of finished dressings, newest first: whom they show and what was seen by eye.

use rusqlite::{Connection, OptionalExtension, Params, Row, TransactionBehavior};
use sunbu_core::case::{CaseFile, Fields, Person, Stranger};
use sunbu_core::dressing::Occasion;
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::photo::View;
use sunbu_core::problem::Problem;

use crate::unread::Text;
use crate::{Kept, Store, StoreError, record};

pub(crate) const MISSING: StoreError = StoreError::NotFound { what: "check" };

/// A check in a list.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckRow {
    /// Its number.
    pub id: i64,
    /// What the studio calls it.
    pub title: String,
    /// When it was begun.
    pub made_at: String,
    /// What the dressing is judged for; none when this version knows no such occasion.
    pub occasion: Option<Occasion>,
    /// Whom it shows; none for a stranger.
    pub person_id: Option<i64>,
    /// The kept plan it was begun from, while there is one.
    pub plan_id: Option<i64>,
    /// The name of whom it shows, as it was then.
    pub person: String,
    /// The garment's name as it was then; empty for a stranger.
    pub garment: String,
    /// The sides of which there are photos.
    pub views: Vec<View>,
}

/// Whom a check shows.
#[derive(Debug, Clone, PartialEq)]
pub enum Shown {
    /// Somebody of the studio, as she was to be dressed: the case with every decision taken.
    Planned(Box<CaseFile>),
    /// Somebody known from the photo alone.
    Stranger(Stranger),
}

/// A check, whole but for its photos.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// As it stands in lists.
    pub row: CheckRow,
    /// Whom it shows, or everything that is wrong with it when it no longer reads: the photos can
    /// still be looked at, and the check be erased.
    pub shown: Result<Shown, Vec<Problem>>,
    /// The faults seen by eye, with the revision to give back when saving them. Faults that this
    /// version does not know are not among them.
    pub ticks: Kept<Ticks>,
}

/// A check to begin.
#[derive(Debug, Clone, Copy)]
pub enum NewCheck<'a> {
    /// Of somebody of the studio.
    Planned {
        /// Whom it shows.
        person: i64,
        /// The kept plan it is begun from; none when the plan was not kept.
        plan: Option<i64>,
        /// What the studio calls it.
        title: &'a str,
        /// The case with every decision taken. A dresser in it is not kept: a check needs no hands.
        case: &'a CaseFile,
    },
    /// Of a stranger; it is called by her name.
    Stranger {
        /// Who it is.
        stranger: &'a Stranger,
        /// What the dressing is judged for.
        occasion: Occasion,
    },
}

impl Store {
    /// Every check.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn checks(&self) -> Result<Vec<CheckRow>, StoreError> {
        rows(&*self.connection.unchecked_transaction()?, "TRUE", [])
    }

    /// The checks of one person.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn checks_of_person(&self, person: i64) -> Result<Vec<CheckRow>, StoreError> {
        let tx = self.connection.unchecked_transaction()?;
        rows(&tx, "person_id = ?1", [person])
    }

    /// The checks begun from one kept plan.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn checks_of_plan(&self, plan: i64) -> Result<Vec<CheckRow>, StoreError> {
        rows(
            &*self.connection.unchecked_transaction()?,
            "plan_id = ?1",
            [plan],
        )
    }

    /// One check.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn check(&self, id: i64) -> Result<Check, StoreError> {
        let tx = self.connection.unchecked_transaction()?;
        let row = rows(&tx, "id = ?1", [id])?.pop().ok_or(MISSING)?;
        let sql = "SELECT revision, ticks_json, case_toml, sex, stature, note \
                   FROM checkup WHERE id = ?1";
        let (revision, ticks, case, words) = tx.query_row(sql, [id], |row| {
            let text = |at| {
                let text: rusqlite::Result<Option<Text>> = row.get(at);
                text.map(|text| text.map(|Text(text)| text))
            };
            let words = [text(3)?, text(4)?, text(5)?];
            Ok((row.get(0)?, text(1)?, text(2)?, words))
        })?;
        let shown = match case {
            Some(text) => CaseFile::parse(&text).map(|case| Shown::Planned(Box::new(case))),
            None => stranger(&row.person, words).map(Shown::Stranger),
        };
        let value = ticks.map_or_else(Ticks::new, |text| known(&text));
        let ticks = Kept {
            id,
            revision,
            value,
        };
        Ok(Check { row, shown, ticks })
    }

    /// Begins a check without photos; answers its number.
    ///
    /// # Errors
    /// [`StoreError::NotFound`] when the person or the plan was erased meanwhile,
    /// [`StoreError::Unfit`] when the case or the stranger would not read back, or when the store
    /// cannot be written.
    pub fn add_check(&mut self, check: &NewCheck<'_>, now: &str) -> Result<i64, StoreError> {
        let columns = Columns::of(check)?;
        // Written at once, so that nobody can be erased between the look and the writing.
        let tx = self
            .connection
            .transaction_with_behavior(TransactionBehavior::Immediate)?;
        if let NewCheck::Planned { person, plan, .. } = *check {
            record::must_be::<Person>(&tx, person)?;
            let plan_is_there = match plan {
                Some(plan) => tx
                    .prepare_cached("SELECT 1 FROM plan WHERE id = ?1")?
                    .exists([plan])?,
                None => true,
            };
            if !plan_is_there {
                return Err(crate::plans::MISSING);
            }
        }
        let [case, sex, stature, note] = &columns.texts;
        let (person, plan) = columns.ids;
        tx.execute(
            "INSERT INTO checkup (revision, person_id, plan_id, title, made_at, occasion, \
             person_name, garment_name, case_toml, sex, stature, note, ticks_json) \
             VALUES (1, ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, '[]')",
            (
                person,
                plan,
                &columns.title,
                now,
                columns.occasion.key(),
                &columns.person,
                &columns.garment,
                case,
                sex,
                stature,
                note,
            ),
        )?;
        let id = tx.last_insert_rowid();
        tx.commit()?;
        Ok(id)
    }

    /// Saves the faults seen by eye, read at `revision`, which then is one more.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when someone saved since, [`StoreError::NotFound`], or when the store
    /// cannot be written.
    pub fn save_ticks(
        &mut self,
        check: i64,
        revision: i64,
        ticks: &Ticks,
    ) -> Result<(), StoreError> {
        let text =
            serde_json::to_string(ticks).map_err(|why| StoreError::Other(why.to_string()))?;
        let tx = self.connection.transaction()?;
        let changed = tx.execute(
            "UPDATE checkup SET ticks_json = ?3, revision = revision + 1 \
             WHERE id = ?1 AND revision = ?2",
            (check, revision, text),
        )?;
        if changed == 0 {
            let sql = "SELECT revision FROM checkup WHERE id = ?1";
            let current = tx.query_row(sql, [check], |row| row.get(0)).optional()?;
            return Err(current.map_or(MISSING, |current| StoreError::Stale { current }));
        }
        Ok(tx.commit()?)
    }
}

/// What a new check writes.
struct Columns {
    ids: (Option<i64>, Option<i64>),
    title: String,
    occasion: Occasion,
    person: String,
    garment: String,
    /// Case, sex, stature, note.
    texts: [Option<String>; 4],
}

impl Columns {
    fn of(check: &NewCheck<'_>) -> Result<Self, StoreError> {
        match *check {
            NewCheck::Planned {
                person,
                plan,
                title,
                case,
            } => {
                let case = CaseFile {
                    dresser: None,
                    ..case.clone()
                };
                let text = case.to_toml();
                CaseFile::parse(&text).map_err(StoreError::Unfit)?;
                let piece = case.garments.first();
                Ok(Self {
                    ids: (Some(person), plan),
                    title: title.to_owned(),
                    occasion: case.occasion,
                    garment: piece.map_or_else(String::new, |piece| piece.name.clone()),
                    person: case.person.name,
                    texts: [Some(text), None, None, None],
                })
            }
            NewCheck::Stranger { stranger, occasion } => {
                let fields = stranger.to_fields();
                Stranger::from_fields(&fields).map_err(StoreError::Unfit)?;
                let text = |name: &str| Some(fields.get(name).cloned().unwrap_or_default());
                Ok(Self {
                    ids: (None, None),
                    title: stranger.name.clone(),
                    occasion,
                    person: stranger.name.clone(),
                    garment: String::new(),
                    texts: [None, text("sex"), text("stature"), text("note")],
                })
            }
        }
    }
}

/// The stranger of a row, read as her form is.
fn stranger(
    name: &str,
    [sex, stature, note]: [Option<String>; 3],
) -> Result<Stranger, Vec<Problem>> {
    let mut fields = Fields::from([("name".to_owned(), name.to_owned())]);
    for (field, text) in [("sex", sex), ("stature", stature), ("note", note)] {
        fields.insert(field.to_owned(), text.unwrap_or_default());
    }
    Stranger::from_fields(&fields)
}

/// The faults of a list of keys that this version knows.
fn known(text: &str) -> Ticks {
    let keys: Vec<String> = serde_json::from_str(text).unwrap_or_default();
    keys.iter().filter_map(|key| Fault::from_key(key)).collect()
}

/// The rows that meet a condition written in this file, newest first.
fn rows(
    connection: &Connection,
    condition: &'static str,
    params: impl Params,
) -> Result<Vec<CheckRow>, StoreError> {
    let sql = format!(
        "SELECT id, title, made_at, occasion, person_id, plan_id, person_name, garment_name, \
         (SELECT group_concat(view) FROM photo WHERE checkup_id = checkup.id) \
         FROM checkup WHERE {condition} ORDER BY id DESC"
    );
    let mut statement = connection.prepare_cached(&sql)?;
    let mut rows = statement.query(params)?;
    let mut found = Vec::new();
    while let Some(row) = rows.next()? {
        found.push(read_row(row)?);
    }
    Ok(found)
}

fn read_row(row: &Row<'_>) -> Result<CheckRow, StoreError> {
    let text = |at| row.get(at).map(|Text(text)| text);
    let keys: Option<Text> = row.get(8)?;
    let has = |view: &View| {
        let mut keys = keys.iter().flat_map(|Text(keys)| keys.split(','));
        keys.any(|key| key == view.key())
    };
    Ok(CheckRow {
        id: row.get(0)?,
        title: text(1)?,
        made_at: text(2)?,
        occasion: Occasion::from_key(&text(3)?),
        person_id: row.get(4)?,
        plan_id: row.get(5)?,
        person: text(6)?,
        garment: text(7)?,
        views: View::ALL.iter().copied().filter(has).collect(),
    })
}
