package lugbook.app

import android.widget.EditText
import java.io.File
import java.util.concurrent.TimeUnit
import org.junit.AfterClass
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.ParameterizedRobolectricTestRunner

/** What is typed before the process is killed: in the first field of the step, else in a complaint. */
internal fun Hands.typeSomething() {
    val field = shown.firstOrNull { it is NumberBox || it is EditText }
    when (field) {
        is NumberBox -> {
            touch(field)
            key("7")
        }
        is EditText -> {
            field.requestFocus()
            field.setText("half a wor")
        }
        else -> {
            tap("More")
            tap("Note a complaint")
            shown.filterIsInstance<EditText>().first().apply {
                requestFocus()
                setText("half a wor")
            }
        }
    }
    waitFor({ "the last key on the disk" }) { app.kept.settled }
}

/** Another process, killed with SIGKILL at each kind of step with something half typed: this one takes up there. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class KillTest(private val kind: String) {
    @Test
    fun takesUpWhereItWas() {
        val hands = Hands(rooms.getValue(kind))
        val box = hands.shown.filterIsInstance<NumberBox>().firstOrNull { it.text.isNotEmpty() }
        val text = hands.shown.filterIsInstance<EditText>().firstOrNull { it.text.toString() == "half a wor" }
        assertTrue("${hands.main.page}: ${hands.read()}", box?.text?.toString() == "7" || text != null)
        assertTrue("the field in hand", (if (text != null) text.isFocused else box!!.isFocused))
        assertEquals(kind, hands.ask { it.bay(manner = Demo.ENGLISH) }.step?.asks)
    }

    companion object {
        /** Rooms that the killed process left. */
        private val rooms: Map<String, File> by lazy {
            val all = newRoom()
            val made = Demo.KINDS.associateWith { kind -> File(all, "%02d-%s".format(Demo.KINDS.indexOf(kind), kind)).also { Demo.room(kind).copyRecursively(it) } }
            val ready = File(all, "ready")
            val properties = listOf("jna.library.path", "robolectric.offline", "robolectric.dependency.dir").mapNotNull { name -> System.getProperty(name)?.let { "-D$name=$it" } }
            val path = System.getProperty("surefire.test.class.path") ?: System.getProperty("java.class.path")
            val command = listOf(System.getProperty("java.home") + "/bin/java") + System.getProperty("lugbook.jvm").split(' ') + listOf("-cp", path) +
                properties + listOf("-Dlugbook.rooms=$all", "org.junit.runner.JUnitCore", Victim::class.java.name)
            val log = File(all, "log")
            val victim = ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log).start()
            while (!ready.exists() && victim.isAlive) Thread.sleep(20)
            assertTrue("it came to its last step: ${log.readText()}", ready.exists())
            victim.destroyForcibly()
            assertTrue(victim.waitFor(60, TimeUnit.SECONDS))
            assertEquals("by SIGKILL", 137, victim.exitValue())
            made
        }

        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun kinds(): List<Array<Any>> = Demo.KINDS.map { arrayOf(it) }

        @JvmStatic
        @AfterClass
        fun everyKindIsListed() = assertTrue("${Demo.rooms.keys}", Demo.rooms.keys.containsAll(Demo.KINDS))
    }
}

/** Not a test by itself: the process that [KillTest] kills. Each window is left open with something half typed. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class Victim(private val room: String) {
    @Test
    fun types() {
        if (room == LAST) {
            File(System.getProperty("lugbook.rooms"), "ready").writeText("")
            while (true) Thread.sleep(1_000)
        }
        Hands(File(System.getProperty("lugbook.rooms"), room)).typeSomething()
    }

    companion object {
        private const val LAST = "last"

        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun rooms(): List<Array<Any>> =
            File(System.getProperty("lugbook.rooms")).list()!!.filter { "-" in it }.sorted().plus(LAST).map { arrayOf(it) }
    }
}
