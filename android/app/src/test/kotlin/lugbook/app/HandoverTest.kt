package lugbook.app

import android.content.Intent
import android.net.Uri
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException
import java.nio.file.Files
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment

@RunWith(RobolectricTestRunner::class)
class HandoverTest {
    private val context = RuntimeEnvironment.getApplication()
    private val resolver = context.contentResolver

    @Before
    fun provide() {
        Robolectric.setupContentProvider(Handover::class.java, Handover.AUTHORITY)
    }

    private fun out(name: String) = File(Hand.OUT.folder(context), name).apply { writeText("what goes out") }

    @Test
    fun aFileOfTheOutgoingFolderIsReadWithItsNameSizeAndKind() {
        val file = out("card-3.pdf")
        val uri = Hand.OUT.uri(file)
        assertEquals("what goes out", resolver.openInputStream(uri)!!.use { it.readBytes().decodeToString() })
        assertEquals("application/pdf", resolver.getType(uri))
        resolver.query(uri, null, null, null, null)!!.use { row ->
            assertTrue(row.moveToFirst())
            assertEquals("card-3.pdf", row.getString(row.getColumnIndexOrThrow(OpenableColumns.DISPLAY_NAME)))
            assertEquals(13, row.getLong(row.getColumnIndexOrThrow(OpenableColumns.SIZE)))
        }
    }

    @Test
    fun nothingThatGoesOutCanBeWrittenOrDeleted() {
        val file = out("card.html")
        for (mode in listOf("w", "wt", "wa", "rw", "rwt")) {
            assertThrows(mode, FileNotFoundException::class.java) { resolver.openFileDescriptor(Hand.OUT.uri(file), mode) }
        }
        resolver.delete(Hand.OUT.uri(file), null, null)
        assertEquals("what goes out", file.readText())
    }

    @Test
    fun whatACameraIsAskedForCanBeWrittenAndNotRead() {
        val file = File(Hand.IN.folder(context), "photo-1.jpg").apply { createNewFile() }
        resolver.openOutputStream(Hand.IN.uri(file), "w")!!.use { it.write(byteArrayOf(1, 2, 3)) }
        assertEquals(3, file.length())
        for (mode in listOf("r", "rw")) {
            assertThrows(mode, FileNotFoundException::class.java) { resolver.openFileDescriptor(Hand.IN.uri(file), mode) }
        }
        val other = File(Hand.IN.folder(context), "another.jpg")
        assertThrows(FileNotFoundException::class.java) { resolver.openFileDescriptor(Hand.IN.uri(other), "w") }
        assertFalse(other.exists())
    }

    @Test
    fun noWayLeadsOutOfTheFolder() {
        val secret = File(context.noBackupFilesDir, "seal").apply { writeText("secret") }
        val folder = Hand.OUT.folder(context)
        val link = File(folder, "link.pdf")
        Files.deleteIfExists(link.toPath())
        Files.createSymbolicLink(link.toPath(), secret.toPath())
        val inner = File(folder, "inner").apply { mkdirs() }
        File(inner, "a.txt").writeText("deeper")
        val ways = listOf(
            "out/../seal", "out/..%2Fseal", "out/%2E%2E%2Fno_backup%2Fseal", "out/..", "out/.", "out/", "out",
            "out/link.pdf", "out/inner", "out/inner/a.txt", "out/inner%2Fa.txt", "out/${Uri.encode(secret.path)}", "../out/x",
            "arriving/awaited.json/..", "other/seal", "", "out//seal", "OUT/card.html",
        )
        out("card.html")
        for (way in ways) {
            val uri = Uri.parse("content://${Handover.AUTHORITY}/$way")
            assertThrows(way, FileNotFoundException::class.java) { resolver.openFileDescriptor(uri, "r") }
            assertNull(way, resolver.getType(uri))
            resolver.query(uri, null, null, null, null)!!.use { assertEquals(way, 0, it.count) }
        }
    }

    @Test
    fun sharingGrantsThatOneFileForReadingAndNothingElse() {
        val chooser = Handover.share(out("card-3.html"))
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        val send = chooser.getParcelableExtra(Intent.EXTRA_INTENT, Intent::class.java)!!
        assertEquals("text/html", send.type)
        assertEquals(Uri.parse("content://lugbook.app.handover/out/card-3.html"), send.clipData!!.getItemAt(0).uri)
        assertTrue(send.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
        assertEquals(0, send.flags and Intent.FLAG_GRANT_WRITE_URI_PERMISSION)
    }

    @Test
    fun whatWentOutADayAgoIsGoneAndWhatWentOutNowIsNot() {
        val (old, new) = out("old.pdf") to out("new.pdf")
        val now = System.currentTimeMillis()
        old.setLastModified(now - 25 * 60 * 60 * 1000L)
        Handover.sweep(context, now)
        assertFalse(old.exists())
        assertTrue(new.exists())
    }
}
