package lugbook.app

import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyPermanentlyInvalidatedException
import android.security.keystore.KeyProperties
import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import java.security.GeneralSecurityException
import java.security.KeyStore
import java.security.ProviderException
import java.security.SecureRandom
import java.security.UnrecoverableKeyException
import javax.crypto.BadPaddingException
import javax.crypto.Cipher
import javax.crypto.KeyGenerator
import javax.crypto.SecretKey
import javax.crypto.spec.GCMParameterSpec

/** The key that wraps the secret. It stays where it was made. */
interface WrappingKey {
    /** The key that was made before; none where there is none, which is also how a restored phone answers. */
    fun find(): SecretKey?

    /** A new one, in the place of any other. */
    fun make(): SecretKey
}

/** A key in the phone's own key store: no program reads its bytes, and no backup holds it. */
class PhoneKey(private val name: String = "lugbook.seal", private val store: String = "AndroidKeyStore") : WrappingKey {
    override fun find(): SecretKey? = KeyStore.getInstance(store).apply { load(null) }.getKey(name, null) as? SecretKey

    override fun make(): SecretKey {
        val purposes = KeyProperties.PURPOSE_ENCRYPT or KeyProperties.PURPOSE_DECRYPT
        val how = KeyGenParameterSpec.Builder(name, purposes)
            .setBlockModes(KeyProperties.BLOCK_MODE_GCM)
            .setEncryptionPaddings(KeyProperties.ENCRYPTION_PADDING_NONE)
            .setKeySize(KEY_BITS)
            .build()
        return KeyGenerator.getInstance(KeyProperties.KEY_ALGORITHM_AES, store).apply { init(how) }.generateKey()
    }

    private companion object {
        const val KEY_BITS = 256
    }
}

/**
 * A vault that is a file, wrapped by a key of the phone's.
 *
 * Where the key is lost for good, or the file is not what it wrapped, nothing brings the secret back. A new one is
 * made then and the old file set aside: the book goes on in a stream of its own, and what was sealed before still
 * verifies by the key that the book names. Where the key store only can't be asked now, there is no secret this
 * time and nothing is replaced: a passing trouble must not cost the phone its name.
 */
class KeystoreVault(private val file: File, private val key: WrappingKey = PhoneKey()) : Vault {
    @Synchronized
    override fun secret(): ByteArray? =
        try {
            val known = key.find()
            when {
                !file.exists() -> make(known ?: key.make())
                known == null -> anew()
                else -> unwrapped(known) ?: anew()
            }
        } catch (_: GeneralSecurityException) {
            null
        } catch (_: ProviderException) {
            null
        } catch (_: IOException) {
            null
        }

    /** What the file holds; none where this key can never open it. */
    private fun unwrapped(known: SecretKey): ByteArray? {
        val bytes = file.readBytes()
        val start = bytes.firstOrNull()?.toInt() ?: return null
        if (start < 1 || bytes.size != 1 + start + SIZE + TAG_BITS / Byte.SIZE_BITS) return null
        return try {
            val cipher = Cipher.getInstance(CIPHER)
            cipher.init(Cipher.DECRYPT_MODE, known, GCMParameterSpec(TAG_BITS, bytes, 1, start))
            cipher.doFinal(bytes, 1 + start, bytes.size - 1 - start).takeIf { it.size == SIZE }
        } catch (_: BadPaddingException) {
            null
        } catch (_: KeyPermanentlyInvalidatedException) {
            null
        } catch (_: UnrecoverableKeyException) {
            null
        }
    }

    private fun anew(): ByteArray? {
        val aside = File(file.path + ".lost")
        aside.delete()
        if (!file.renameTo(aside)) return null
        return make(key.make())
    }

    private fun make(with: SecretKey): ByteArray? {
        val secret = ByteArray(SIZE).also(SecureRandom()::nextBytes)
        val cipher = Cipher.getInstance(CIPHER).apply { init(Cipher.ENCRYPT_MODE, with) }
        val wrapped = byteArrayOf(cipher.iv.size.toByte()) + cipher.iv + cipher.doFinal(secret)
        val half = File(file.path + ".half")
        half.parentFile?.mkdirs()
        FileOutputStream(half).use { out ->
            out.write(wrapped)
            out.fd.sync()
        }
        return secret.takeIf { half.renameTo(file) }
    }

    private companion object {
        const val CIPHER = "AES/GCM/NoPadding"
        const val TAG_BITS = 128
        const val SIZE = 32
    }
}
