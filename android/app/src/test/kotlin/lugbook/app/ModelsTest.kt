package lugbook.app

import java.io.ByteArrayInputStream
import java.io.File
import java.io.FileNotFoundException
import java.io.IOException
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder

class ModelsTest {
    @get:Rule
    val temporary = TemporaryFolder()

    private val folder get() = File(temporary.root, "models")

    @Test
    fun theyLieThereOnceForEachVersion() {
        var opened = 0
        fun lay(version: String, text: String) = Models.lay(folder, version) { opened += 1; ByteArrayInputStream(text.toByteArray()) }
        lay("1", "first")
        lay("1", "again")
        assertEquals(2, opened)
        assertEquals(setOf("first", "1"), folder.listFiles()!!.map { it.readText() }.toSet())
        lay("2", "second")
        assertEquals(setOf("second", "2"), folder.listFiles()!!.map { it.readText() }.toSet())
    }

    @Test
    fun withoutThemOrHalfWayThereIsNoFolder() {
        Models.lay(folder, "1") { throw FileNotFoundException() }
        assertFalse(folder.exists())
        Models.lay(folder, "1") { if ("rec" in it) throw IOException() else ByteArrayInputStream(byteArrayOf(1)) }
        assertFalse(folder.exists())
    }
}
