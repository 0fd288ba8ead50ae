//! Why a file is not taken as a photo, in words.

use sunbu_core::photo::{FileKind, PictureError};

use crate::{Arg, Words};

impl Words {
    /// Why a file is not taken as a photo, and what to do instead.
    pub fn picture_error(&self, error: &PictureError) -> String {
        let details: Vec<(&str, String)> = match error {
            PictureError::OtherKind { found } => vec![("found", self.file_kind(*found))],
            _ => error.details(),
        };
        let args: Vec<(&str, Arg<'_>)> = details
            .iter()
            .map(|(name, detail)| (*name, detail.into()))
            .collect();
        self.with(&format!("picture-{}", error.code()), &args)
    }

    /// What a file seems to be, as the end of a sentence.
    fn file_kind(&self, kind: FileKind) -> String {
        self.get(&format!("file-kind-{}", kind.key()))
    }
}
