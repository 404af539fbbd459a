package lugbook.app

import android.Manifest
import android.app.NotificationManager
import android.content.pm.PackageManager
import android.os.PowerManager
import org.junit.Assert.assertEquals
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.ParameterizedRobolectricTestRunner
import org.robolectric.Robolectric
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** The windows beside the book's, as they look. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class BesidePictureTest(private val ground: String, private val qualifiers: String) {
    private val app = RuntimeEnvironment.getApplication() as TestApp

    @Before
    fun held() = RuntimeEnvironment.setQualifiers(qualifiers)

    private fun book() {
        app.lives(newRoom())
        aside { app.engine().beginCheck() }
    }

    private fun Beside.looks(name: String) {
        waitFor({ "it is drawn" }) { drawn }
        idle()
        Pictured.holds("$name-$ground", window.decorView)
    }

    @Test
    fun theCameraRefused() {
        shadowOf(app.packageManager).setSystemFeature(PackageManager.FEATURE_CAMERA_ANY, true)
        val camera = Robolectric.buildActivity(Camera::class.java).setup().visible().get()
        waitFor({ "the right is asked for" }) { shadowOf(camera).lastRequestedPermission != null }
        camera.onRequestPermissionsResult(1, arrayOf(Manifest.permission.CAMERA), intArrayOf(PackageManager.PERMISSION_DENIED))
        assertEquals(Camera.Shows.REFUSED, camera.shows)
        idle()
        Pictured.holds("camera-refused-$ground", camera.window.decorView)
    }

    @Test
    fun remindersAndWhatKeepsThemBack() {
        book()
        shadowOf(app).grantPermissions(Reminders.NOTIFY)
        shadowOf(app.getSystemService(NotificationManager::class.java)).setNotificationsEnabled(false)
        shadowOf(app.getSystemService(PowerManager::class.java)).setIsPowerSaveMode(true)
        Robolectric.buildActivity(Reminding::class.java, Reminding.of(app, "gray wagon")).setup().visible().get().looks("reminders")
    }

    @Test
    fun whereCopiesOfBackupsGo() {
        book()
        Robolectric.buildActivity(OutOfPhone::class.java).setup().visible().get().looks("copies")
    }

    companion object {
        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun grounds(): List<Array<Any>> =
            listOf(arrayOf("light", "w412dp-h892dp-port-notnight-mdpi"), arrayOf("dark", "w412dp-h892dp-port-night-mdpi"))
    }
}
