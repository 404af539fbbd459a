package lugbook.app

import java.io.File
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder

class VaultTest {
    @get:Rule
    val folder = TemporaryFolder()

    private val sealed get() = File(folder.root, "seal")
    private val keys get() = File(folder.root, "keys")

    private fun vault(key: WrappingKey = StoredKey(keys)) = KeystoreVault(sealed, key)

    @Test
    fun theSecretIsTheSameEverAfterAndNowhereInTheClear() {
        val secret = vault().secret()!!
        assertEquals(32, secret.size)
        assertArrayEquals(secret, vault().secret())
        for (file in listOf(sealed, keys)) {
            assertFalse("${file.name} holds the secret itself", file.readBytes().toList().windowed(32).contains(secret.toList()))
        }
    }

    @Test
    fun twoPhonesHaveTwoSecrets() {
        val other = KeystoreVault(File(folder.root, "other"), StoredKey(File(folder.root, "other-keys")))
        assertFalse(vault().secret()!!.contentEquals(other.secret()!!))
    }

    @Test
    fun afterTheKeyIsLostThereIsANewSecretAndTheOldFileStandsAside() {
        val before = vault().secret()!!
        val old = sealed.readBytes()
        assertTrue(keys.delete())
        val after = vault().secret()!!
        assertFalse(before.contentEquals(after))
        assertArrayEquals(after, vault().secret())
        assertArrayEquals(old, File(folder.root, "seal.lost").readBytes())
    }

    @Test
    fun aKeyThatDoesNotFitOrADamagedFileLeadsToANewSecret() {
        val before = vault().secret()!!
        StoredKey(keys).make()
        val after = vault().secret()!!
        assertFalse(before.contentEquals(after))
        for (cut in listOf(0, 1, 5, 20)) {
            sealed.writeBytes(sealed.readBytes().copyOf(cut))
            assertNotNull("cut at $cut", vault().secret())
        }
    }

    @Test
    fun whereTheKeyStoreCannotBeAskedNothingIsReplaced() {
        val before = vault().secret()!!
        val silent = vault(StoredKey(keys, "no such key store"))
        assertNull(silent.secret())
        assertFalse(File(folder.root, "seal.lost").exists())
        assertArrayEquals(before, vault().secret())
    }

    @Test
    fun aFullPhoneGivesNoSecretRatherThanOneThatIsNotKept() {
        val nowhere = KeystoreVault(File(folder.newFile("a file"), "seal"), StoredKey(keys))
        assertNull(nowhere.secret())
    }
}
