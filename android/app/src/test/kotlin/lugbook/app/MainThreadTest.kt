package lugbook.app

import java.io.FileDescriptor
import java.security.Permission
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Assume.assumeTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** The main thread does no work of the disk's or the engine's: each file that the app touches there is a failure. */
@RunWith(RobolectricTestRunner::class)
@Suppress("DEPRECATION", "removal")
class MainThreadTest {
    private val touched = mutableListOf<String>()

    private inner class Strict(private val main: Thread) : SecurityManager() {
        override fun checkPermission(permission: Permission) = Unit

        override fun checkPermission(permission: Permission, context: Any) = Unit

        override fun checkRead(file: String) = told("reads $file")

        override fun checkRead(file: FileDescriptor) = Unit

        override fun checkWrite(file: String) = told("writes $file")

        override fun checkDelete(file: String) = told("deletes $file")

        private fun told(what: String) {
            if (Thread.currentThread() !== main) return
            val path = Thread.currentThread().stackTrace.drop(1)
            // Loading a class or a resource of the app is the system's affair.
            val loads = path.any { it.className.startsWith("java.lang.ClassLoader") || it.className.contains("ClassLoader") || it.className.startsWith("android.content.res") || it.className.startsWith("org.robolectric.res") || it.methodName == "<clinit>" || it.methodName == "getString" || it.className.startsWith("android.graphics") }
            val ours = path.any { it.className.startsWith("lugbook.app.") && !it.className.contains("Test") && !it.className.startsWith("lugbook.app.Hands") && !it.className.startsWith("lugbook.app.Demo") }
            if (ours && !loads) synchronized(touched) { touched += "$what at ${path.first { it.className.startsWith("lugbook.app.") }}" }
        }
    }

    @Test
    fun touchesNoFile() {
        val room = Demo.room("tread")
        val before = System.getSecurityManager()
        try {
            System.setSecurityManager(Strict(Thread.currentThread()))
        } catch (_: UnsupportedOperationException) {
            assumeTrue("this JDK has no security manager", false)
        }
        val hands: Hands
        try {
            hands = Hands(room)
            hands.type("outer groove", "7")
            hands.back()
            hands.tap("Book")
            hands.open("gray wagon")
            hands.tap("Settings")
            hands.choose("Text size", "Larger")
            hands.settle()
            hands.pause()
        } finally {
            System.setSecurityManager(before)
        }
        assertEquals(emptyList<String>(), touched)
        assertTrue("${hands.app.phone.threads}", hands.app.phone.threads.isNotEmpty() && Thread.currentThread() !in hands.app.phone.threads)
    }
}
