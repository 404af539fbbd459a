package lugbook.app

import android.app.Application
import android.util.Log
import java.io.File
import java.security.SecureRandom
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.CoroutineStart
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.async
import lugbook.core.Engine
import lugbook.core.PhoneHost

/** The process: it holds the open book, from its start to its end. */
open class App : Application() {
    /** What outlives a single screen runs here. */
    val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)

    private var opening: Deferred<Engine>? = null

    override fun onCreate() {
        super.onCreate()
        open()
    }

    /** Where the live book lies: never in a backup that the system makes. */
    open fun folder(): File = File(noBackupFilesDir, "book")

    /** Where the secret is kept. */
    open fun vault(): Vault = KeystoreVault(File(noBackupFilesDir, "seal"))

    /** The models that read photos, once they were laid there from the app's own files. */
    open fun models(): File = File(noBackupFilesDir, "models")

    /** What the core asks of the phone. */
    open fun host(): PhoneHost = Phone(vault(), models())

    /** The book, opened off the main thread. A refusal is thrown; asking again opens anew. */
    suspend fun engine(): Engine = open().await()

    /** Begins to open the book, where that was not begun or has failed. */
    private fun open(): Deferred<Engine> {
        opening?.let { if (!(it.isCompleted && it.getCompletionExceptionOrNull() != null)) return it }
        return scope.async(Dispatchers.IO, CoroutineStart.DEFAULT) {
            val folder = folder()
            folder.mkdirs()
            Engine.open(folder.path, host(), Speech.ofDevice(resources.configuration))
        }.also { opening = it }
    }
}

/** What only the phone has. */
class Phone(private val vault: Vault, private val models: File) : PhoneHost {
    private val chance = SecureRandom()

    override fun clockMs(): Long = System.currentTimeMillis()

    override fun random(): ByteArray = ByteArray(10).also(chance::nextBytes)

    override fun secret(): ByteArray? = vault.secret()

    override fun models(): String? = models.path.takeIf { models.isDirectory }

    override fun log(line: String) {
        Log.i("lugbook", line)
    }
}
