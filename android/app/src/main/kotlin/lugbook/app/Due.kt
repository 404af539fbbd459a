package lugbook.app

import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import java.io.IOException
import java.time.ZonedDateTime
import java.util.concurrent.ExecutorService
import java.util.concurrent.Executors

/** One thread for what a broadcast asks: files are never touched on the main one. */
internal val reminding: ExecutorService = Executors.newSingleThreadExecutor()

/** What time it is here. */
internal var clock: () -> ZonedDateTime = ZonedDateTime::now

private fun BroadcastReceiver.apart(work: () -> Unit) {
    val pending = goAsync()
    reminding.execute {
        try {
            work()
        } catch (_: IOException) {
            // The phone is full. What was set stands as before, and is told once more.
        } finally {
            pending?.finish()
        }
    }
}

/** The day has come, or somebody answered what was told. */
class Due : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val reminders = Reminders(context.applicationContext)
        val uid = intent.data?.schemeSpecificPart
        apart {
            val now = clock()
            when (intent.action) {
                TELL -> reminders.tell(now)
                DONE -> uid?.let { reminders.done(it, now) }
                TOMORROW -> uid?.let { reminders.later(it, DAY, now) }
                WEEK -> uid?.let { reminders.later(it, DAYS_OF_WEEK, now) }
            }
        }
    }

    companion object {
        const val TELL = "lugbook.app.TELL"
        const val DONE = "lugbook.app.DONE"
        const val TOMORROW = "lugbook.app.TOMORROW"
        const val WEEK = "lugbook.app.WEEK"
        const val DAY = 1L
        const val DAYS_OF_WEEK = 7L
    }
}

/** The phone was started, or its clock was set: it forgot what stood there, and its alarms. */
class Started : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        if (intent.action !in AFTER) return
        val reminders = Reminders(context.applicationContext)
        apart { reminders.tell(clock(), again = intent.action == Intent.ACTION_BOOT_COMPLETED) }
    }

    private companion object {
        val AFTER = setOf(
            Intent.ACTION_BOOT_COMPLETED,
            Intent.ACTION_MY_PACKAGE_REPLACED,
            Intent.ACTION_TIMEZONE_CHANGED,
            Intent.ACTION_TIME_CHANGED,
        )
    }
}
