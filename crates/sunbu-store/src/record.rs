//! People and garments as rows: one table with a revision, and their other fields as written.
//!
//! Both are kept the same way, so it is written once. Fields with a column of their own are the
//! ones that lists and other programs want; the rest lie one by one in a second table.

use rusqlite::{Connection, OptionalExtension, ToSql, Transaction, params_from_iter};
use sunbu_core::case::{Fields, Person, Piece};
use sunbu_core::problem::Problem;

use crate::unread::Text;
use crate::{Entry, Kept, Listed, StoreError, Unread};

/// What is kept with a revision, field by field.
pub(crate) trait Record: Sized {
    /// Its table; `TABLE_field` holds the rest, by `TABLE_id`.
    const TABLE: &'static str;
    /// What it is.
    const ENTRY: Entry;
    /// The fields with a column of their own.
    const COLUMNS: &'static [&'static str];

    /// All fields as written.
    fn fields(&self) -> Fields;
    /// Reads it from its fields, or says everything that is wrong.
    fn from_fields(fields: &Fields) -> Result<Self, Vec<Problem>>;
}

impl Record for Person {
    const TABLE: &'static str = "person";
    const ENTRY: Entry = Entry::Person;
    const COLUMNS: &'static [&'static str] = &["name", "sex", "note"];

    fn fields(&self) -> Fields {
        self.to_fields()
    }
    fn from_fields(fields: &Fields) -> Result<Self, Vec<Problem>> {
        Self::from_fields(fields)
    }
}

impl Record for Piece {
    const TABLE: &'static str = "piece";
    const ENTRY: Entry = Entry::Garment;
    const COLUMNS: &'static [&'static str] = &["name", "note"];

    fn fields(&self) -> Fields {
        self.to_fields()
    }
    fn from_fields(fields: &Fields) -> Result<Self, Vec<Problem>> {
        Self::from_fields(fields)
    }
}

/// The answer when there is no such row.
pub(crate) const fn missing<T: Record>() -> StoreError {
    StoreError::NotFound {
        what: T::ENTRY.word(),
    }
}

/// Whether there is one of this number, whether or not it can be read.
pub(crate) fn exists<T: Record>(connection: &Connection, id: i64) -> Result<bool, StoreError> {
    let sql = format!("SELECT 1 FROM {} WHERE id = ?1", T::TABLE);
    Ok(connection.prepare_cached(&sql)?.exists([id])?)
}

/// Refuses a number that nothing has.
pub(crate) fn must_be<T: Record>(connection: &Connection, id: i64) -> Result<(), StoreError> {
    exists::<T>(connection, id)?
        .then_some(())
        .ok_or(missing::<T>())
}

/// All of them, by name; those that do not read beside the others.
pub(crate) fn all<T: Record>(connection: &Connection) -> Result<Listed<T>, StoreError> {
    let tx = connection.unchecked_transaction()?;
    let ids = tx
        .prepare_cached(&format!("SELECT id FROM {} ORDER BY name, id", T::TABLE))?
        .query_map([], |row| row.get(0))?
        .collect::<Result<Vec<i64>, _>>()?;
    let mut listed = Listed {
        read: Vec::new(),
        unread: Vec::new(),
    };
    for id in ids {
        match read(&tx, id) {
            Ok(kept) => listed.read.push(kept),
            Err(StoreError::Unreadable(unread)) => listed.unread.push(*unread),
            Err(other) => return Err(other),
        }
    }
    Ok(listed)
}

/// One of them.
pub(crate) fn one<T: Record>(connection: &Connection, id: i64) -> Result<Kept<T>, StoreError> {
    read(&*connection.unchecked_transaction()?, id)
}

/// Keeps a new one, at revision 1; answers the number.
pub(crate) fn insert<T: Record>(
    tx: &Transaction<'_>,
    value: &T,
    now: &str,
) -> Result<i64, StoreError> {
    let fields = checked(value)?;
    let places: Vec<String> = (0..T::COLUMNS.len())
        .map(|i| format!("?{}", i + 2))
        .collect();
    tx.execute(
        &format!(
            "INSERT INTO {} (revision, saved_at, {}) VALUES (1, ?1, {})",
            T::TABLE,
            T::COLUMNS.join(", "),
            places.join(", ")
        ),
        params_from_iter([now].into_iter().chain(columns::<T>(&fields))),
    )?;
    let id = tx.last_insert_rowid();
    write_fields::<T>(tx, id, &fields)?;
    Ok(id)
}

/// Saves one that was read at `revision`, which then is one more.
pub(crate) fn save<T: Record>(
    connection: &mut Connection,
    id: i64,
    revision: i64,
    value: &T,
    now: &str,
) -> Result<(), StoreError> {
    let fields = checked(value)?;
    let table = T::TABLE;
    let set: Vec<String> = T::COLUMNS
        .iter()
        .enumerate()
        .map(|(i, column)| format!("{column} = ?{}", i + 4))
        .collect();
    let tx = connection.transaction()?;
    let texts: Vec<&str> = columns::<T>(&fields).collect();
    let given: [&dyn ToSql; 3] = [&id, &revision, &now];
    let changed = tx.execute(
        &format!(
            "UPDATE {table} SET revision = revision + 1, saved_at = ?3, {} \
             WHERE id = ?1 AND revision = ?2",
            set.join(", ")
        ),
        params_from_iter(
            given
                .into_iter()
                .chain(texts.iter().map(|text| text as &dyn ToSql)),
        ),
    )?;
    if changed == 0 {
        let current = tx
            .query_row(
                &format!("SELECT revision FROM {table} WHERE id = ?1"),
                [id],
                |row| row.get(0),
            )
            .optional()?;
        return Err(current.map_or(missing::<T>(), |current| StoreError::Stale { current }));
    }
    tx.execute(
        &format!("DELETE FROM {table}_field WHERE {table}_id = ?1"),
        [id],
    )?;
    write_fields::<T>(&tx, id, &fields)?;
    Ok(tx.commit()?)
}

/// The fields of a value that keeps every rule of the core.
fn checked<T: Record>(value: &T) -> Result<Fields, StoreError> {
    let fields = value.fields();
    T::from_fields(&fields).map_err(StoreError::Unfit)?;
    Ok(fields)
}

/// The texts of the fields with a column of their own, in the order of the columns.
fn columns<T: Record>(fields: &Fields) -> impl Iterator<Item = &str> {
    T::COLUMNS
        .iter()
        .map(|column| fields.get(*column).map_or("", String::as_str))
}

fn write_fields<T: Record>(
    tx: &Transaction<'_>,
    id: i64,
    fields: &Fields,
) -> Result<(), StoreError> {
    let table = T::TABLE;
    let mut statement = tx.prepare_cached(&format!(
        "INSERT INTO {table}_field ({table}_id, field, text) VALUES (?1, ?2, ?3)"
    ))?;
    for (field, text) in fields
        .iter()
        .filter(|(field, _)| !T::COLUMNS.contains(&field.as_str()))
    {
        statement.execute((id, field, text))?;
    }
    Ok(())
}

fn read<T: Record>(connection: &Connection, id: i64) -> Result<Kept<T>, StoreError> {
    let (table, mut fields) = (T::TABLE, Fields::new());
    let revision = connection
        .prepare_cached(&format!(
            "SELECT revision, {} FROM {table} WHERE id = ?1",
            T::COLUMNS.join(", ")
        ))?
        .query_row([id], |row| {
            for (at, column) in T::COLUMNS.iter().enumerate() {
                let Text(text) = row.get(at + 1)?;
                fields.insert((*column).to_owned(), text);
            }
            row.get(0)
        })
        .optional()?
        .ok_or(missing::<T>())?;
    let mut statement = connection.prepare_cached(&format!(
        "SELECT field, text FROM {table}_field WHERE {table}_id = ?1"
    ))?;
    for pair in statement.query_map([id], |row| Ok((row.get(0)?, row.get(1)?)))? {
        let (Text(field), Text(text)) = pair?;
        fields.insert(field, text);
    }
    match T::from_fields(&fields) {
        Ok(value) => Ok(Kept {
            id,
            revision,
            value,
        }),
        Err(problems) => Err(StoreError::Unreadable(Box::new(Unread {
            entry: T::ENTRY,
            id,
            revision,
            fields,
            problems,
        }))),
    }
}
