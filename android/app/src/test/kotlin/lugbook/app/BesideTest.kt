package lugbook.app

import android.Manifest
import android.app.Activity
import android.app.NotificationManager
import android.content.Intent
import android.content.pm.PackageManager
import android.graphics.Bitmap
import android.graphics.Color
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraManager
import android.net.Uri
import android.os.SystemClock
import android.provider.MediaStore
import android.view.MotionEvent
import android.widget.Button
import android.widget.TextView
import java.io.ByteArrayInputStream
import java.io.ByteArrayOutputStream
import java.io.File
import java.nio.file.Files
import java.time.LocalDate
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController
import org.robolectric.shadows.ShadowCameraCharacteristics

/** The windows beside the book's: camera, reminders, where copies of backups go. */
@RunWith(RobolectricTestRunner::class)
class BesideTest {
    private val app = RuntimeEnvironment.getApplication() as TestApp
    private val photo = ByteArrayOutputStream().also { out ->
        Bitmap.createBitmap(640, 480, Bitmap.Config.ARGB_8888).apply { eraseColor(Color.GRAY) }.compress(Bitmap.CompressFormat.JPEG, 90, out)
    }.toByteArray()

    private fun Activity.read(): List<String> =
        window.decorView.tree().filter { it.isShown }.mapNotNull { (it as? TextView)?.text?.toString() }.toList()

    private fun Activity.sees(id: Int) = getString(id) in read()

    private fun Activity.tap(id: Int) {
        val button = window.decorView.tree().first { it is Button && it.isShown && it.text == getString(id) }
        button.performClick()
        idle()
    }

    private fun hasCamera() {
        shadowOf(app.packageManager).setSystemFeature(PackageManager.FEATURE_CAMERA_ANY, true)
        val back = ShadowCameraCharacteristics.newCameraCharacteristics()
        shadowOf(back).set(CameraCharacteristics.LENS_FACING, CameraCharacteristics.LENS_FACING_BACK)
        shadowOf(back).set(CameraCharacteristics.FLASH_INFO_AVAILABLE, true)
        shadowOf(app.getSystemService(CameraManager::class.java)).addCamera("0", back)
    }

    private fun camera(): ActivityController<Camera> = Robolectric.buildActivity(Camera::class.java).setup()

    private fun Camera.shows(what: Camera.Shows) = waitFor({ "$what and not $shows: ${read()}" }) { shows == what }

    private fun Camera.handsBack(): File {
        tap(R.string.camera_keep)
        waitFor({ "the photo handed back" }) { isFinishing }
        assertEquals(Activity.RESULT_OK, shadowOf(this).resultCode)
        return File(shadowOf(this).resultIntent.getStringExtra(Camera.PATH)!!)
    }

    private fun holds(activity: Activity, inWork: Boolean = true) =
        assertEquals("", Access(activity.window.decorView, inWork).wrong().joinToString("\n"))

    // The camera.

    @Test
    fun thePhotoIsNotedBeforeTheCameraOpens() {
        val camera = camera().get()
        waitFor({ "the note" }) { Awaited.found(app) != null }
        assertFalse(Awaited.found(app)!!.came)
        assertFalse(Awaited.found(app)!!.kept)
        camera.finish()
    }

    @Test
    fun withoutTheRightItSaysWhatElseCanBeDone() {
        hasCamera()
        val camera = camera().get()
        waitFor({ "the right is asked for" }) { shadowOf(camera).lastRequestedPermission != null }
        assertEquals(listOf(Manifest.permission.CAMERA), shadowOf(camera).lastRequestedPermission.requestedPermissions.toList())
        camera.onRequestPermissionsResult(1, arrayOf(Manifest.permission.CAMERA), intArrayOf(PackageManager.PERMISSION_DENIED))
        assertEquals(Camera.Shows.REFUSED, camera.shows)
        assertTrue(camera.sees(R.string.camera_refused))
        // An app that names the right and has not got it may not ask another camera either.
        assertFalse(camera.sees(R.string.camera_phone))
        holds(camera)
        camera.tap(R.string.camera_pick)
        val asked = shadowOf(camera).nextStartedActivityForResult
        assertEquals(MediaStore.ACTION_PICK_IMAGES, asked.intent.action)
        val from = Uri.parse("content://pictures/1")
        shadowOf(app.contentResolver).registerInputStream(from, ByteArrayInputStream(photo))
        shadowOf(camera).receiveResult(asked.intent, Activity.RESULT_OK, Intent().setData(from))
        camera.shows(Camera.Shows.PHOTO)
        holds(camera)
        assertTrue(photo.contentEquals(camera.handsBack().readBytes()))
    }

    @Test
    fun thePhonesOwnCameraWritesIntoTheOneFileThatWasNoted() {
        Robolectric.setupContentProvider(Handover::class.java, Handover.AUTHORITY)
        hasCamera()
        shadowOf(app).grantPermissions(Manifest.permission.CAMERA)
        val camera = camera().get()
        camera.shows(Camera.Shows.LIVE)
        holds(camera)
        camera.tap(R.string.camera_phone)
        val asked = shadowOf(camera).nextStartedActivityForResult
        assertEquals(MediaStore.ACTION_IMAGE_CAPTURE, asked.intent.action)
        assertTrue(asked.intent.flags and Intent.FLAG_GRANT_WRITE_URI_PERMISSION != 0)
        assertEquals(0, asked.intent.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION)
        val into = asked.intent.clipData!!.getItemAt(0).uri
        app.contentResolver.openOutputStream(into)!!.use { it.write(photo) }
        shadowOf(camera).receiveResult(asked.intent, Activity.RESULT_OK, null)
        camera.shows(Camera.Shows.PHOTO)
        assertTrue(photo.contentEquals(camera.handsBack().readBytes()))
    }

    @Test
    fun whatAnEarlierProcessTookIsShownFirstAndCanBeTakenAgain() {
        val before = Awaited.expect(app).apply { file.writeBytes(photo) }
        val camera = camera().get()
        camera.shows(Camera.Shows.PHOTO)
        assertTrue(camera.sees(R.string.camera_found))
        camera.tap(R.string.camera_again)
        waitFor({ "a new note" }) { Awaited.found(app)?.let { it.file != before.file } ?: false }
        assertFalse(before.file.exists())
    }

    @Test
    fun onAFullPhoneItSaysSoAndGoesBack() {
        // Every byte of the note goes to a device that is full.
        val note = File(Hand.IN.folder(app), "awaited.json.half")
        Files.createSymbolicLink(note.toPath(), File("/dev/full").toPath())
        val camera = camera().get()
        camera.shows(Camera.Shows.FULL)
        assertTrue(camera.sees(R.string.camera_full))
        holds(camera)
        camera.tap(R.string.camera_without)
        assertTrue(camera.isFinishing)
        Files.delete(note.toPath())
    }

    @Test
    fun theRingIsDraggedByItsMiddleAndWidenedByItsEdge() {
        val activity = Robolectric.buildActivity(Camera::class.java).get()
        val ring = Ring(activity, Pen(activity)).apply { picture = Bitmap.createBitmap(400, 300, Bitmap.Config.ARGB_8888) }
        ring.layout(0, 0, 800, 1000)
        assertFalse(ring.moved)
        assertEquals("", ring.value)
        fun drag(fromX: Float, fromY: Float, toX: Float, toY: Float) {
            val at = SystemClock.uptimeMillis()
            for ((action, x, y) in listOf(Triple(MotionEvent.ACTION_DOWN, fromX, fromY), Triple(MotionEvent.ACTION_MOVE, toX, toY), Triple(MotionEvent.ACTION_UP, toX, toY))) {
                MotionEvent.obtain(at, at, action, x, y, 0).also(ring::onTouchEvent).recycle()
            }
        }
        // The picture is 800 wide here, its top at 200: by its middle to the left, then by its edge outward.
        drag(400f, 500f, 320f, 540f)
        assertTrue(ring.moved)
        val (x, y, r) = ring.value.split(" ").map { it.toDouble() }
        assertEquals(0.4, x, 0.001)
        assertEquals(0.425, y, 0.001)
        val edge = (320 + r * 800).toFloat()
        drag(edge, 540f, edge + 40, 540f)
        assertEquals(r + 0.05, ring.value.split(" ")[2].toDouble(), 0.001)
        assertEquals(listOf(x, y), ring.value.split(" ").take(2).map { it.toDouble() })
    }

    @Test
    fun theLaunchersShortcutBeginsWithAPhotoOfThePlateThatWaitsForItsJob() {
        book()
        val window = Robolectric.buildActivity(Main::class.java, Intent(Main.VISIT)).setup()
        val main = window.get()
        val asked = shadowOf(main).nextStartedActivityForResult
        assertEquals(Camera::class.java.name, asked.intent.component!!.className)
        waitFor({ "a first page" }) { main.rests }
        val taken = File(Hand.IN.folder(app), "plate.jpg").apply { writeBytes(photo) }
        shadowOf(main).receiveResult(asked.intent, Activity.RESULT_OK, Intent().putExtra(Camera.PATH, taken.path))
        waitFor({ "the photo waits: ${main.read()}" }) { app.kept[Main.PLATE] == taken.path && main.rests }
        assertTrue("${main.read()}", main.sees(R.string.camera_waits))
    }

    // Reminders.

    private fun book() {
        val room = newRoom()
        app.lives(room)
        aside {
            val engine = app.engine()
            engine.beginCheck()
        }
    }

    private fun reminding(vehicle: String? = null): Reminding =
        Robolectric.buildActivity(Reminding::class.java, Reminding.of(app, vehicle)).setup().get()

    private fun Beside.settles() {
        waitFor({ "it is drawn: ${read()}" }) { drawn }
        idle()
    }

    @Test
    fun aReminderForADayStandsThereInTheCoresWords() {
        book()
        shadowOf(app).grantPermissions(Reminders.NOTIFY)
        val page = reminding("gray wagon").apply { settles() }
        assertTrue(page.sees(R.string.reminders_none))
        assertTrue(page.sees(R.string.reminders_free))
        page.on(LocalDate.now().plusDays(5))
        page.settles()
        assertTrue("${page.read()}", "gray wagon" in page.read())
        holds(page, inWork = false)
        page.tap(R.string.reminder_done)
        page.settles()
        assertTrue(page.sees(R.string.reminders_none))
    }

    @Test
    fun theRightIsAskedWhenTheFirstOneIsSetAndARefusalIsTold() {
        book()
        shadowOf(app).denyPermissions(Reminders.NOTIFY)
        val page = reminding("gray wagon").apply { settles() }
        assertNull(shadowOf(page).lastRequestedPermission)
        page.on(LocalDate.now().plusDays(5))
        waitFor({ "the right is asked for" }) { shadowOf(page).lastRequestedPermission != null }
        page.onRequestPermissionsResult(1, arrayOf(Reminders.NOTIFY), intArrayOf(PackageManager.PERMISSION_DENIED))
        page.settles()
        assertTrue("it is set all the same", "gray wagon" in page.read())
        assertTrue(page.sees(R.string.hinders_not_allowed))
        holds(page, inWork = false)
    }

    @Test
    fun everyHindranceStandsThereWithAWayToMendIt() {
        book()
        shadowOf(app).grantPermissions(Reminders.NOTIFY)
        shadowOf(app.getSystemService(NotificationManager::class.java)).setNotificationsEnabled(false)
        shadowOf(app.getSystemService(android.os.PowerManager::class.java)).setIsPowerSaveMode(true)
        val page = reminding().apply { settles() }
        assertTrue(page.sees(R.string.hinders_all_off))
        assertTrue(page.sees(R.string.hinders_saver))
        page.tap(R.string.reminder_settings)
        assertNotNull(shadowOf(page).nextStartedActivity)
        holds(page, inWork = false)
    }

    // Copies of backups.

    @Test
    fun whatBecameOfTheLastCopyIsTold() {
        book()
        val safe = Safekeeping(app)
        for (night in listOf(false, true)) {
            RuntimeEnvironment.setQualifiers(if (night) "+night" else "+notnight")
            val page = Robolectric.buildActivity(OutOfPhone::class.java).setup().get().apply { settles() }
            assertTrue(page.sees(R.string.away_why))
            assertNull(safe.chosen())
            holds(page, inWork = false)
            page.tap(R.string.away_choose)
            assertEquals(Intent.ACTION_OPEN_DOCUMENT_TREE, shadowOf(page).nextStartedActivityForResult.intent.action)
        }
    }
}
