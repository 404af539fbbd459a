//! An instructor's code: told once, kept as a salted hash.

use argon2::password_hash::phc::PasswordHash;
use argon2::{Argon2, Params, PasswordHasher, PasswordVerifier};
use serde::{Deserialize, Serialize};

/// A code as it was typed. It shows itself nowhere.
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Code(String);

impl std::fmt::Debug for Code {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Code(…)")
    }
}

impl From<String> for Code {
    fn from(typed: String) -> Self {
        Self(typed)
    }
}

/// The most memory, in KiB, and rounds that are spent on a hash of another device: four times our own.
const MOST_MEMORY: u32 = 4 * Params::DEFAULT_M_COST;
const MOST_ROUNDS: u32 = 4 * Params::DEFAULT_T_COST;

impl Code {
    /// What was typed, without the blanks around it.
    pub(super) fn typed(&self) -> &str {
        self.0.trim()
    }

    /// Its hash as a PHC string: Argon2id with the library's own parameters (RFC 9106's algorithm; 19 MiB and
    /// two rounds, the least that OWASP's cheat sheet on password storage names, from memory).
    ///
    /// # Errors
    /// When the library can't hash it; nothing that a person types does that.
    pub(super) fn hash(&self, salt: &[u8; 16]) -> Result<String, String> {
        let hash = Argon2::default().hash_password_with_salt(self.typed().as_bytes(), salt);
        hash.map(|hash: PasswordHash| hash.to_string()).map_err(|why| why.to_string())
    }

    /// Whether it is the code that this hash was made of.
    pub(super) fn is(&self, hash: &str) -> bool {
        let Ok(parsed) = PasswordHash::new(hash) else { return false };
        let modest = Params::try_from(&parsed)
            .is_ok_and(|params| params.m_cost() <= MOST_MEMORY && params.t_cost() <= MOST_ROUNDS);
        modest && Argon2::default().verify_password(self.typed().as_bytes(), &parsed).is_ok()
    }
}
