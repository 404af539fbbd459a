package lugbook.app

import java.io.File
import java.nio.ByteBuffer
import java.nio.file.Files
import java.util.concurrent.CompletableFuture
import lugbook.core.PhoneHost

/** The app in a room that a test chooses, with a clock and chance that are the same each time. Nothing of the core is stood in for. */
class TestApp : App() {
    private val chosen = CompletableFuture<File>()
    val phone = SteadyPhone(SteadyPhone.NOVEMBER + Demo.APART_MS * 3)

    /** Where the book lies: whatever wants to know it waits until it is chosen. */
    fun lives(room: File) {
        chosen.complete(room)
    }

    /** Nothing is begun before a test wants it. */
    override fun begin() = Unit

    override fun room(): File {
        check(!mainLooper.isCurrentThread) { "files are for another thread" }
        return chosen.get()
    }

    /** The room, for a test to look into. */
    val roomOfTest: File get() = chosen.get()

    override fun host(): PhoneHost = phone
}

/** A phone whose clock stands where a test puts it, and whose chance is counted. */
class SteadyPhone(var clock: Long = NOVEMBER, private var drawn: Long = 1_000_000) : PhoneHost {
    /** The threads that asked it something. */
    val threads = mutableSetOf<Thread>()

    @Synchronized
    override fun clockMs(): Long {
        threads += Thread.currentThread()
        return clock
    }

    @Synchronized
    override fun random(): ByteArray = ByteBuffer.allocate(10).putLong(++drawn).array()

    override fun secret(): ByteArray = ByteArray(32) { 4 }

    /** Where the models lie. */
    var models: String? = null

    override fun models(): String? = models

    override fun log(line: String) = Unit

    companion object {
        /** A day in November 2026. */
        const val NOVEMBER = 1_794_645_000_000
    }
}

/** A new empty folder that goes away with the process. */
fun newRoom(): File = Files.createTempDirectory("room").toFile().also { room ->
    Runtime.getRuntime().addShutdownHook(Thread { room.deleteRecursively() })
}
