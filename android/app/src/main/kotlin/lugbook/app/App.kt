package lugbook.app

import android.app.Application
import android.util.Log
import java.io.File
import java.security.SecureRandom
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.async
import kotlinx.coroutines.launch
import lugbook.core.Engine
import lugbook.core.Manner
import lugbook.core.PhoneHost

/** The process: it holds the open book, from its start to its end. */
open class App : Application() {
    /** What outlives a single screen runs here. */
    val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)

    /** Where the person was, and what was typed. */
    val kept by lazy { Kept(scope) { File(room(), "kept.json") } }

    /** How the book is shown; none until the settings came. */
    var look: Look? = null
        private set

    /** What the last tap came to, in sentences; and whether that is a refusal. */
    var said: List<String> = emptyList()
    var refused = false

    /** Ways out of the app and back. */
    open val ways: Ways by lazy { Ways(this) }

    /** The long work that goes on, whatever screen is in front. */
    var work: Work? = null

    private var opening: Deferred<Engine>? = null
    private val reading by lazy { scope.async { kept.read() } }

    /** How the person is spoken to. */
    val manner: Manner get() = look?.manner ?: Look.ofDevice(resources.configuration)

    override fun onCreate() {
        super.onCreate()
        begin()
    }

    /** What is begun before the first window. */
    protected open fun begin() {
        reading
        open()
        scope.launch(Dispatchers.IO) {
            Models.lay(models(), "${packageManager.getPackageInfo(packageName, 0).lastUpdateTime}") { name -> assets.open("models/$name") }
            val now = System.currentTimeMillis()
            Handover.sweep(this@App, now)
            Awaited.sweep(this@App, now)
        }
    }

    /** Where the app's own files lie: never in a backup that the system makes. Asked off the main thread. */
    open fun room(): File = noBackupFilesDir

    /** Where the secret is kept. */
    open fun vault(): Vault = KeystoreVault(File(room(), "seal"))

    /** The models that read photos, once they were laid there from the app's own files. */
    open fun models(): File = File(room(), "models")

    /** What the core asks of the phone. */
    open fun host(): PhoneHost = Phone(vault(), models())

    /** The book, opened off the main thread. A refusal is thrown; asking again opens anew. */
    suspend fun engine(): Engine = open().await()

    /** The book, with what was kept and how it is shown. */
    suspend fun ready(): Engine {
        reading.await()
        val engine = engine()
        if (look == null) lookAgain(engine)
        return engine
    }

    /** Takes over what the settings say now. */
    suspend fun lookAgain(engine: Engine) {
        look = Look.of(engine.settings(manner).settings, kept, resources.configuration)
    }

    /** Carries the last good backup to where it outlives this app, and has the core make them. */
    suspend fun carry() = Safekeeping(this).carry(engine(), manner)

    /** Begins to open the book, where that was not begun or has failed. */
    private fun open(): Deferred<Engine> {
        opening?.let { if (!(it.isCompleted && it.getCompletionExceptionOrNull() != null)) return it }
        val manner = manner
        return scope.async(Dispatchers.IO) {
            val folder = File(room(), "book")
            folder.mkdirs()
            Engine.open(folder.path, host(), manner)
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
