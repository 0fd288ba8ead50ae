//! Where the studio lies on the disk when nobody says otherwise.

use std::path::PathBuf;

/// The studio's file in the user's folder for data, by the custom of the system (the XDG base
/// directory specification on Linux; from memory); `None` when the system names no such folder.
pub fn usual(env: impl Fn(&str) -> Option<String>) -> Option<PathBuf> {
    let folder = |name: &str| {
        let path = env(name).map(PathBuf::from);
        // The specification has relative paths passed over.
        path.filter(|path| path.is_absolute())
    };
    let data = if cfg!(windows) {
        folder("APPDATA")
    } else if cfg!(target_os = "macos") {
        folder("HOME").map(|home| home.join("Library/Application Support"))
    } else {
        folder("XDG_DATA_HOME").or_else(|| folder("HOME").map(|home| home.join(".local/share")))
    };
    data.map(|data| data.join("sunbu").join("studio.db"))
}

#[cfg(all(test, target_os = "linux"))]
mod tests {
    use super::*;

    fn found(env: &[(&str, &str)]) -> Option<PathBuf> {
        usual(|name| {
            let known = env.iter().find(|(known, _)| *known == name);
            known.map(|(_, value)| (*value).to_owned())
        })
    }

    #[test]
    fn the_studio_lies_where_the_system_keeps_data() {
        let home = ("HOME", "/home/d");
        let usual = PathBuf::from("/home/d/.local/share/sunbu/studio.db");
        assert_eq!(found(&[home]), Some(usual.clone()));
        assert_eq!(found(&[home, ("XDG_DATA_HOME", "data")]), Some(usual));
        let elsewhere = found(&[home, ("XDG_DATA_HOME", "/data")]);
        assert_eq!(elsewhere, Some(PathBuf::from("/data/sunbu/studio.db")));
        assert_eq!(found(&[]), None);
    }
}
