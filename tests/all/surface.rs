//! What the phone library exports to Kotlin and Swift: a change of a name, a type or a docstring is seen here.

use camino::Utf8PathBuf;

#[test]
fn what_the_phone_library_exports_is_as_it_was_looked_at() {
    let program = Utf8PathBuf::try_from(std::env::current_exe().unwrap()).unwrap();
    let library = generate::library_beside(&program).unwrap();
    insta::assert_snapshot!(generate::surface(&library).unwrap());
}
