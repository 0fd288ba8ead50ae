//! The plans kept, newest first.

use rusqlite::{OptionalExtension, Params, Row, TransactionBehavior};
use sunbu_core::case::{CaseFile, Person, Piece};
use sunbu_core::dressing::Occasion;
use sunbu_core::problem::Problem;

use crate::unread::Text;
use crate::{Store, StoreError, record};

pub(crate) const MISSING: StoreError = StoreError::NotFound { what: "plan" };
const NO_DRESSER: StoreError = StoreError::NotFound { what: "dresser" };

/// A plan in a list.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanRow {
    /// Its number.
    pub id: i64,
    /// What the studio calls it.
    pub title: String,
    /// When it was kept.
    pub made_at: String,
    /// What for; none when this version knows no such occasion.
    pub occasion: Option<Occasion>,
    /// Whose it is.
    pub person_id: Option<i64>,
    /// The garment, while the studio has it.
    pub garment_id: Option<i64>,
    /// The person's name as it was then.
    pub person: String,
    /// The garment's name as it was then.
    pub garment: String,
}

/// A plan with all that it was made from.
#[derive(Debug, Clone, PartialEq)]
pub struct SavedPlan {
    /// As it stands in lists.
    pub row: PlanRow,
    /// The case as it was then, or everything that is wrong with it when it no longer reads:
    /// the row and the choices can still be looked at, and the plan be erased.
    pub case: Result<CaseFile, Vec<Problem>>,
    /// The choices of the page it was made on.
    pub query: String,
}

/// A plan to keep.
#[derive(Debug, Clone, Copy)]
pub struct NewPlan<'a> {
    /// The numbers of the person and the garment.
    pub ids: (i64, i64),
    /// The number of the person whose hands the case names; none when it names none.
    pub dresser: Option<i64>,
    /// What the studio calls it.
    pub title: &'a str,
    /// What it is made from.
    pub case: &'a CaseFile,
    /// The choices of the page it is made on.
    pub query: &'a str,
}

impl Store {
    /// Every plan.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn plans(&self) -> Result<Vec<PlanRow>, StoreError> {
        self.rows("TRUE", [])
    }

    /// The plans of one person in one garment.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn plans_of(&self, person: i64, garment: i64) -> Result<Vec<PlanRow>, StoreError> {
        self.rows("person_id = ?1 AND garment_id = ?2", (person, garment))
    }

    /// The plans of one person.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn plans_of_person(&self, person: i64) -> Result<Vec<PlanRow>, StoreError> {
        self.rows("person_id = ?1", [person])
    }

    /// One plan, whole.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn plan(&self, id: i64) -> Result<SavedPlan, StoreError> {
        let tx = self.connection.unchecked_transaction()?;
        let row = self.rows("id = ?1", [id])?.pop().ok_or(MISSING)?;
        let (text, query): (String, String) = tx
            .query_row(
                "SELECT case_toml, query FROM plan WHERE id = ?1",
                [id],
                |row| {
                    let (Text(text), Text(query)) = (row.get(0)?, row.get(1)?);
                    Ok((text, query))
                },
            )
            .optional()?
            .ok_or(MISSING)?;
        let case = CaseFile::parse(&text);
        Ok(SavedPlan { row, case, query })
    }

    /// Keeps a plan; answers its number.
    ///
    /// # Errors
    /// [`StoreError::NotFound`] when the person, the garment or the dresser was erased meanwhile,
    /// or when the case names a dresser and the plan does not say which person that is: the
    /// measures could then never be taken out again. [`StoreError::Unfit`] when the case would not
    /// read back, or when the store cannot be written.
    pub fn add_plan(&mut self, plan: &NewPlan<'_>, now: &str) -> Result<i64, StoreError> {
        let text = plan.case.to_toml();
        let case = CaseFile::parse(&text).map_err(StoreError::Unfit)?;
        let (person, garment) = plan.ids;
        let dresser = match &case.dresser {
            Some(_) => Some(plan.dresser.ok_or(NO_DRESSER)?),
            None => None,
        };
        // Written at once, so that nobody can be erased between the look and the writing.
        let tx = self
            .connection
            .transaction_with_behavior(TransactionBehavior::Immediate)?;
        record::must_be::<Person>(&tx, person)?;
        record::must_be::<Piece>(&tx, garment)?;
        if let Some(dresser) = dresser
            && !record::exists::<Person>(&tx, dresser)?
        {
            return Err(NO_DRESSER);
        }
        let piece = case
            .garments
            .first()
            .map_or("", |piece| piece.name.as_str());
        tx.execute(
            "INSERT INTO plan (person_id, garment_id, dresser_id, title, made_at, occasion, \
             person_name, garment_name, case_toml, query) \
             VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
            (
                person,
                garment,
                dresser,
                plan.title,
                now,
                case.occasion.key(),
                &case.person.name,
                piece,
                &text,
                plan.query,
            ),
        )?;
        let id = tx.last_insert_rowid();
        tx.commit()?;
        Ok(id)
    }

    /// The rows that meet a condition written in this file.
    fn rows(
        &self,
        condition: &'static str,
        params: impl Params,
    ) -> Result<Vec<PlanRow>, StoreError> {
        let sql = format!(
            "SELECT id, title, made_at, occasion, person_id, garment_id, person_name, garment_name \
             FROM plan WHERE {condition} ORDER BY id DESC"
        );
        let mut statement = self.connection.prepare_cached(&sql)?;
        let mut rows = statement.query(params)?;
        let mut found = Vec::new();
        while let Some(row) = rows.next()? {
            found.push(read_row(row)?);
        }
        Ok(found)
    }
}

fn read_row(row: &Row<'_>) -> Result<PlanRow, StoreError> {
    let text = |at| row.get(at).map(|Text(text)| text);
    Ok(PlanRow {
        id: row.get(0)?,
        title: text(1)?,
        made_at: text(2)?,
        occasion: Occasion::from_key(&text(3)?),
        person_id: row.get(4)?,
        garment_id: row.get(5)?,
        person: text(6)?,
        garment: text(7)?,
    })
}
