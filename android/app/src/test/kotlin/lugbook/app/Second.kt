package lugbook.app

import android.content.Context
import android.content.ContextWrapper
import java.io.File
import java.util.concurrent.TimeUnit
import kotlinx.coroutines.runBlocking
import lugbook.core.Changed
import lugbook.core.DecimalSign
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.Language
import lugbook.core.Manner
import lugbook.core.PositionLetters
import lugbook.core.ScreenAction
import lugbook.core.UnitSystem
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue

val ENGLISH = Manner(Language.ENGLISH, UnitSystem.AS_READ, PositionLetters.FRONT_FIRST, DecimalSign.POINT)

/** A phone whose folders lie where a second process finds them. */
class Placed(base: Context, private val root: File) : ContextWrapper(base) {
    override fun getNoBackupFilesDir(): File = File(root, "no_backup").apply { mkdirs() }

    override fun getFilesDir(): File = File(root, "files").apply { mkdirs() }

    override fun getCacheDir(): File = File(root, "cache").apply { mkdirs() }
}

/** A test class that is run in a JVM of its own. */
class Second(private val test: Class<*>, private val root: File, before: String = "") {
    val ready = File(root, "ready")
    private val told = File(root, "told")

    private val process: Process

    init {
        root.mkdirs()
        val handed = listOf(
            "jna.library.path", "robolectric.offline", "robolectric.dependency.dir", "robolectric.pixelCopyRenderMode",
            "lugbook.pictures", "lugbook.drawn", "lugbook.jvm", "java.io.tmpdir",
        ).mapNotNull { key -> System.getProperty(key)?.let { "-D$key=$it" } }
        val classes = System.getProperty("surefire.test.class.path") ?: System.getProperty("java.class.path")
        val java = listOf("${System.getProperty("java.home")}/bin/java") +
            System.getProperty("lugbook.jvm").split(" ") + listOf("-cp", classes) + handed +
            listOf("-Dlugbook.root=$root", "org.junit.runner.JUnitCore", test.name)
        val command = if (before.isEmpty()) java else listOf("sh", "-c", "$before; exec \"\$@\"", "sh") + java
        process = ProcessBuilder(command).redirectErrorStream(true).redirectOutput(told).start()
    }

    /** Waits until it says that it is where it is to be killed, and kills it. */
    fun killWhenReady() {
        val end = System.nanoTime() + TimeUnit.MINUTES.toNanos(4)
        while (!ready.exists() && process.isAlive && System.nanoTime() < end) Thread.sleep(5)
        assertTrue("it never came to the place: ${told.readText()}", ready.exists())
        process.destroyForcibly()
        process.waitFor()
        assertEquals(137, process.exitValue())
    }

    /** Waits until it ended by itself, with every test in it passed. */
    fun passes() {
        assertTrue("it did not end", process.waitFor(4, TimeUnit.MINUTES))
        assertEquals(told.readText(), 0, process.exitValue())
    }

    companion object {
        /** Where the second process is to work; none in the first. */
        val root: File? get() = System.getProperty("lugbook.root")?.let(::File)

        /** Tells the first process to kill this one, and waits for it. */
        fun waitForTheEnd() {
            File(root!!, "ready").writeText("here")
            while (true) Thread.sleep(1000)
        }
    }
}

/** The book of a phone, opened. */
fun openBook(context: Context, vault: Vault = NoVault): Engine = runBlocking {
    Engine.open(File(context.noBackupFilesDir, "book").apply { mkdirs() }.path, Phone(vault, File(context.noBackupFilesDir, "models")), ENGLISH)
}

/** A phone without a vault. */
object NoVault : Vault {
    override fun secret(): ByteArray? = null
}

fun List<ScreenAction>.of(code: String, at: String? = null): ScreenAction =
    firstOrNull { it.code == code && (at == null || it.at == at) } ?: throw AssertionError("$code is not among ${map { it.code to it.at }}")

suspend fun Engine.tap(action: ScreenAction, vararg filled: Pair<String, String>): Changed =
    act(action.token, filled.map { (field, value) -> Entered(field, value) }, ENGLISH)

/** A book with a mechanic, a wagon, and a check of tread and age in the bay. */
suspend fun Engine.beginCheck() {
    tap(firstRun(ENGLISH).actions.of("add-person"), "name" to "Nell Varga", "role" to "mechanic")
    tap(book("", ENGLISH).actions.of("add-vehicle"), "name" to "gray wagon", "model" to "Basalt 480, 2015", "class" to "car")
    tap(vehicle("gray wagon", ENGLISH).actions.of("open-tread-and-age-check"))
}
