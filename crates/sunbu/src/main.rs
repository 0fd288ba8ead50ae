//! The command line of Sunbu.

fn main() {}
