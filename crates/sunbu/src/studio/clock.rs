//! The time, which enters the program here and nowhere else.

/// Now, ISO 8601 with the offset of this machine: `2026-03-01T09:30:00+09:00`.
pub fn now() -> String {
    jiff::ZonedDateTime::now()
        .strftime("%Y-%m-%dT%H:%M:%S%:z")
        .to_string()
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_time_is_written_as_iso_8601_with_its_offset() {
        let now = super::now();
        let shape: String = now
            .chars()
            .map(|c| if c.is_ascii_digit() { '0' } else { c })
            .collect();
        let (date, offset) = shape.split_at("0000-00-00T00:00:00".len());
        assert_eq!(date, "0000-00-00T00:00:00", "{now}");
        assert!(["+00:00", "-00:00"].contains(&offset), "{now}");
    }
}
