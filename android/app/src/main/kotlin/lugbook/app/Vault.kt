package lugbook.app

import java.io.File
import java.io.FileOutputStream
import java.security.SecureRandom

/** Where this phone keeps the 32 secret bytes that it seals with. Never asked on the main thread. */
interface Vault {
    /** The bytes: made when they are first asked for, the same ever after; none where they can't be had. */
    fun secret(): ByteArray?
}

/** A vault that is a file. */
class FileVault(private val file: File) : Vault {
    @Synchronized
    override fun secret(): ByteArray? {
        if (!file.exists()) {
            val made = ByteArray(SIZE).also(SecureRandom()::nextBytes)
            val half = File(file.path + ".half")
            half.parentFile?.mkdirs()
            FileOutputStream(half).use { out ->
                out.write(made)
                out.fd.sync()
            }
            if (!half.renameTo(file)) return null
        }
        return file.readBytes().takeIf { it.size == SIZE }
    }

    private companion object {
        const val SIZE = 32
    }
}
