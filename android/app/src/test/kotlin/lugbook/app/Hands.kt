package lugbook.app

import android.app.Activity
import android.os.Looper
import android.view.View
import android.view.ViewGroup
import android.widget.TextView
import org.junit.Assert.fail
import org.robolectric.Shadows.shadowOf

/** Lets the main thread do what waits for it. */
fun idle() = shadowOf(Looper.getMainLooper()).idle()

/** Waits until something holds, while the main thread goes on: what comes from the core is posted to it. */
fun waitFor(what: String, holds: () -> Boolean) {
    val end = System.nanoTime() + 120_000_000_000
    while (!holds()) {
        if (System.nanoTime() > end) fail("it never came: $what")
        idle()
        Thread.sleep(2)
    }
}

/** The view and all that is in it. */
fun View.tree(): Sequence<View> = sequence {
    yield(this@tree)
    if (this@tree is ViewGroup) for (at in 0 until childCount) yieldAll(getChildAt(at).tree())
}

/** Everything that can be read in the window. */
fun Activity.read(): List<String> =
    window.decorView.tree().filter { it.isShown }.mapNotNull { (it as? TextView)?.text?.toString() }.toList()
