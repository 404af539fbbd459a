package lugbook.app

import android.graphics.Bitmap
import android.graphics.Color
import java.io.File
import kotlinx.coroutines.runBlocking
import lugbook.core.Entered
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment

@RunWith(RobolectricTestRunner::class)
class AwaitedTest {
    @get:Rule
    val folder = TemporaryFolder()

    @Test
    fun aPhotoThatWasTakenWhenTheProcessWasKilledIsFoundAndGoesIntoTheBook() {
        val root = folder.newFolder("phone")
        Second(TakesAPhotoAndIsKilled::class.java, root).killWhenReady()

        val context = Placed(RuntimeEnvironment.getApplication(), root)
        val found = Awaited.found(context)!!
        assertTrue("the camera's file is there", found.came)
        val engine = openBook(context)
        runBlocking {
            assertNotNull(engine.bay(null, null, ENGLISH).pendingPhoto)
            val action = engine.bay("sidewall", "FL", ENGLISH).actions.of("photo", "FL")
            engine.start(action.token, listOf(Entered("file", found.file.path)), ENGLISH).outcome()
            assertNull(engine.bay(null, null, ENGLISH).pendingPhoto)
            assertEquals(1, engine.photos(null, ENGLISH).photos.size)
            Awaited.forget(context)
            assertNull(Awaited.found(context))
            engine.closeBook()
        }
    }

    @Test
    fun aPhotoThatNeverCameIsFoundWithoutAPicture() {
        val context = Placed(RuntimeEnvironment.getApplication(), folder.root)
        val awaited = Awaited.expect(context)
        assertEquals(awaited, Awaited.found(context))
        assertFalse(awaited.came)
    }

    @Test
    fun oneThatIsWantedStaysWhenTheNextOneIsTaken() {
        val context = Placed(RuntimeEnvironment.getApplication(), folder.root)
        val first = Awaited.expect(context)
        first.file.writeText("a photo")
        assertTrue(Awaited.keep(context, first).kept)
        assertEquals(first.file.path, Ways(context).found())
        assertNull("it is handed over once", Ways(context).found())
        Awaited.expect(context)
        assertEquals("a photo", first.file.readText())
        Awaited.sweep(context, System.currentTimeMillis())
        assertTrue(first.file.exists())
        first.file.setLastModified(0)
        Awaited.sweep(context, System.currentTimeMillis())
        assertFalse(first.file.exists())
    }

    @Test
    fun aNoteThatIsNoneOfOursLeadsNowhere() {
        val context = Placed(RuntimeEnvironment.getApplication(), folder.root)
        val note = File(Hand.IN.folder(context), "awaited.json")
        for (text in listOf("", "{", "[]", "{}", "{\"file\":\"\"}")) {
            note.writeText(text)
            assertNull(text, Awaited.found(context))
        }
        note.writeText("{\"file\":\"../../seal\"}")
        assertEquals(Hand.IN.folder(context), Awaited.found(context)!!.file.parentFile)
    }
}

/** Not run by itself: the process that is killed between the camera and the book. */
@RunWith(RobolectricTestRunner::class)
class TakesAPhotoAndIsKilled {
    @Test
    fun go() {
        val context = Placed(RuntimeEnvironment.getApplication(), Second.root!!)
        val engine = openBook(context)
        runBlocking {
            engine.beginCheck()
            engine.tap(engine.bay("sidewall", "FL", ENGLISH).actions.of("open-camera"))
            val awaited = Awaited.expect(context)
            val picture = Bitmap.createBitmap(640, 480, Bitmap.Config.ARGB_8888).apply { eraseColor(Color.GRAY) }
            awaited.file.outputStream().use { picture.compress(Bitmap.CompressFormat.JPEG, 90, it) }
        }
        Second.waitForTheEnd()
    }
}
