package lugbook.app

import android.content.pm.ProviderInfo
import android.database.Cursor
import android.database.MatrixCursor
import android.os.CancellationSignal
import android.os.ParcelFileDescriptor
import android.provider.DocumentsContract
import android.provider.DocumentsContract.Document
import android.provider.DocumentsProvider
import java.io.File
import java.io.FileNotFoundException
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment

@RunWith(RobolectricTestRunner::class)
class SafekeepingTest {
    @get:Rule
    val temporary = TemporaryFolder()

    private val context = RuntimeEnvironment.getApplication()
    private val safe = Safekeeping(context)
    private val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, "root")

    @Before
    fun provide() {
        Shelf.folder = temporary.newFolder("shelf")
        Shelf.mood = Shelf.Mood.WELL
        val info = ProviderInfo().apply {
            authority = Shelf.AUTHORITY
            exported = true
            grantUriPermissions = true
            readPermission = "android.permission.MANAGE_DOCUMENTS"
            writePermission = readPermission
        }
        Robolectric.buildContentProvider(Shelf::class.java).create(info)
    }

    private fun backup(name: String, text: String) = File(temporary.root, name).apply { writeText(text) }

    @Test
    fun theGoodBackupLiesInTheChosenFolderAndWasReadBack() {
        assertNull(safe.intoFolder(backup("book-1.zip", "one")))
        safe.choose(tree)
        assertEquals(Carried.SAME, safe.intoFolder(backup("book-1.zip", "one")))
        assertEquals("one", File(Shelf.folder, "book-1.zip").readText())
        assertEquals(Carried.SAME, safe.last())
        assertEquals("book-1.zip", safe.lastName())
    }

    @Test
    fun whatGoesWrongIsToldAndTheLastGoodCopyIsStillNamed() {
        safe.choose(tree)
        safe.intoFolder(backup("book-1.zip", "one"))
        val wrong = mapOf(
            Shelf.Mood.GONE to Carried.NO_FOLDER,
            Shelf.Mood.FULL to Carried.NOT_WRITTEN,
            Shelf.Mood.LOSES to Carried.NOT_THE_SAME,
        )
        for ((mood, told) in wrong) {
            Shelf.mood = mood
            assertEquals("$mood", told, safe.intoFolder(backup("book-2.zip", "two, and longer")))
            assertEquals("$mood", told, safe.last())
            assertEquals("$mood", "book-1.zip", safe.lastName())
        }
        Shelf.mood = Shelf.Mood.WELL
        assertEquals(Carried.SAME, safe.intoFolder(backup("book-2.zip", "two, and longer")))
        assertEquals("two, and longer", File(Shelf.folder, "book-2.zip").readText())
    }

    @Test
    fun aCopyThatSomebodyRemovedIsMadeAgain() {
        safe.choose(tree)
        val good = backup("book-1.zip", "one")
        safe.intoFolder(good)
        assertTrue(File(Shelf.folder, "book-1.zip").delete())
        assertEquals(Carried.SAME, safe.intoFolder(good))
        assertTrue(File(Shelf.folder, "book-1.zip").exists())
    }

    @Test
    fun aPhonesBackupHoldsTheLastGoodOneAndNothingElse() {
        safe.intoPhone(backup("book-1.zip", "one"))
        safe.intoPhone(backup("book-2.zip", "two"))
        assertEquals(listOf("book-2.zip"), safe.phone.list()!!.toList())
        assertEquals("two", safe.restored()!!.readText())
        // What the rules of the package include is this folder: the live book, the seal and all else lie elsewhere.
        assertEquals(File(context.filesDir, "phone-backup"), safe.phone)
        for (other in listOf(safe.made, File(context.noBackupFilesDir, "book"), File(context.noBackupFilesDir, "seal"))) {
            assertFalse(other.path, other.startsWith(context.filesDir))
        }
    }
}

/** A folder of another app, as the phone's file picker offers it; it can be gone, full, or lose what is written. */
class Shelf : DocumentsProvider() {
    enum class Mood { WELL, GONE, FULL, LOSES }

    override fun onCreate() = true

    override fun queryRoots(projection: Array<out String>?): Cursor = MatrixCursor(arrayOf(DocumentsContract.Root.COLUMN_ROOT_ID))

    override fun isChildDocument(parent: String, document: String) = true

    override fun queryDocument(document: String, projection: Array<out String>?): Cursor = rows(listOf(document))

    override fun queryChildDocuments(parent: String, projection: Array<out String>?, sort: String?): Cursor {
        if (mood == Mood.GONE) throw FileNotFoundException()
        return rows(folder.list()!!.toList())
    }

    private fun rows(names: List<String>) = MatrixCursor(arrayOf(Document.COLUMN_DOCUMENT_ID, Document.COLUMN_DISPLAY_NAME))
        .apply { names.forEach { addRow(arrayOf(it, it)) } }

    override fun createDocument(parent: String, kind: String, name: String): String {
        if (mood == Mood.GONE) throw FileNotFoundException()
        File(folder, name).createNewFile()
        return name
    }

    override fun openDocument(document: String, mode: String, signal: CancellationSignal?): ParcelFileDescriptor {
        val writes = mode.startsWith("w")
        // A device that takes nothing more.
        if (writes && mood == Mood.FULL) return ParcelFileDescriptor.open(File("/dev/full"), ParcelFileDescriptor.MODE_WRITE_ONLY)
        if (writes && mood == Mood.LOSES) return ParcelFileDescriptor.open(File("/dev/null"), ParcelFileDescriptor.MODE_WRITE_ONLY)
        return ParcelFileDescriptor.open(File(folder, document), ParcelFileDescriptor.parseMode(mode))
    }

    companion object {
        const val AUTHORITY = "lugbook.app.test.shelf"
        lateinit var folder: File
        var mood = Mood.WELL
    }
}
