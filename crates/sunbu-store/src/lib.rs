//! The studio's store: the only place with SQL.
