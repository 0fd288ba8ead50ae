//! Holds this repository to the guards.

use sunbu_guards::{book, files, layers, links, matter, messages};

fn no_findings(findings: &[String]) {
    assert!(
        findings.is_empty(),
        "{} found:\n{}",
        findings.len(),
        findings.join("\n")
    );
}

#[test]
fn dependencies_point_one_way() {
    no_findings(&layers::dependencies(&files().unwrap()));
}

#[test]
fn all_packages_of_the_program_are_seen() {
    let files = files().unwrap();
    for name in [
        "sunbu-core",
        "sunbu-draw",
        "sunbu-store",
        "sunbu-image",
        "sunbu-web",
        "sunbu",
    ] {
        let path = format!("crates/{name}/Cargo.toml");
        assert!(files.iter().any(|file| file.path == path), "no {path}");
    }
}

#[test]
fn sql_stays_in_the_store() {
    no_findings(&layers::sql_outside_the_store(&files().unwrap()));
}

#[test]
fn the_core_has_no_files_clock_or_network() {
    no_findings(&layers::impure_core(&files().unwrap()));
}

#[test]
fn every_file_is_source_that_people_can_read() {
    no_findings(&matter::unreadable(&files().unwrap()));
}

#[test]
fn no_file_names_a_folder_of_somebodys_machine() {
    no_findings(&matter::machine_paths(&files().unwrap()));
}

#[test]
fn every_link_between_documents_leads_somewhere() {
    no_findings(&links::broken(&files().unwrap()));
}

#[test]
fn every_chapter_is_reached_from_the_readme() {
    no_findings(&links::unreachable(&files().unwrap()));
}

#[test]
fn every_message_is_in_both_languages() {
    no_findings(&messages::incomplete(&files().unwrap()));
}

#[test]
fn every_name_of_a_garments_part_is_in_the_glossary() {
    no_findings(&book::unexplained_terms(&files().unwrap()));
}

#[test]
fn every_source_that_is_cited_is_listed() {
    no_findings(&book::sources(&files().unwrap()));
}
