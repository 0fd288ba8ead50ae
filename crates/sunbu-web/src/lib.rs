//! The studio's pages: the only place with HTTP and HTML.
