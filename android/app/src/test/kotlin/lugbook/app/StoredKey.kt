package lugbook.app

import java.io.File
import java.security.KeyStore
import javax.crypto.KeyGenerator
import javax.crypto.SecretKey

/** A wrapping key in a key store of the JVM's own, in a file: it can be lost, changed and kept from being asked. */
class StoredKey(private val file: File, private val provider: String = "PKCS12") : WrappingKey {
    private val password = "stands for the phone's lock".toCharArray()

    private fun store() = KeyStore.getInstance(provider).apply {
        if (file.exists()) file.inputStream().use { load(it, password) } else load(null, password)
    }

    override fun find(): SecretKey? = store().getKey(NAME, password) as? SecretKey

    override fun make(): SecretKey {
        val key = KeyGenerator.getInstance("AES").apply { init(256) }.generateKey()
        val store = store()
        store.setEntry(NAME, KeyStore.SecretKeyEntry(key), KeyStore.PasswordProtection(password))
        file.outputStream().use { store.store(it, password) }
        return key
    }

    private companion object {
        const val NAME = "seal"
    }
}
