package lugbook.app

import android.app.ActivityManager
import android.app.AlarmManager
import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.app.usage.UsageStatsManager
import android.content.Context
import android.content.Intent
import android.content.pm.PackageManager
import android.net.Uri
import android.os.Build
import android.os.PowerManager
import android.provider.Settings
import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import java.time.LocalDate
import java.time.LocalTime
import java.time.ZonedDateTime
import java.util.Locale
import org.json.JSONArray
import org.json.JSONException
import org.json.JSONObject

/**
 * One thing to be told on a day.
 *
 * @property uid its name, the same when it is set again
 * @property day when
 * @property title what, in a few words of the core's
 * @property text all of it, as the core words it
 * @property told it was shown on that day
 */
data class Reminder(val uid: String, val day: LocalDate, val title: String, val text: String, val told: Boolean = false)

/** What may keep a reminder from being seen, and where that is mended. */
enum class Hindrance(val sentence: Int) {
    NOT_ALLOWED(R.string.hinders_not_allowed),
    ALL_OFF(R.string.hinders_all_off),
    CHANNEL_OFF(R.string.hinders_channel_off),
    RESTRICTED(R.string.hinders_restricted),
    SAVER(R.string.hinders_saver),
    QUIET(R.string.hinders_quiet),
    ;

    /** The phone's page where it is set otherwise. */
    fun settings(context: Context): Intent = when (this) {
        NOT_ALLOWED, ALL_OFF -> Intent(Settings.ACTION_APP_NOTIFICATION_SETTINGS)
            .putExtra(Settings.EXTRA_APP_PACKAGE, context.packageName)
        CHANNEL_OFF -> Intent(Settings.ACTION_CHANNEL_NOTIFICATION_SETTINGS)
            .putExtra(Settings.EXTRA_APP_PACKAGE, context.packageName)
            .putExtra(Settings.EXTRA_CHANNEL_ID, Reminders.CHANNEL)
        RESTRICTED -> Intent(Settings.ACTION_APPLICATION_DETAILS_SETTINGS, Uri.fromParts("package", context.packageName, null))
        SAVER -> Intent(Settings.ACTION_BATTERY_SAVER_SETTINGS)
        QUIET -> Intent(Settings.ACTION_SOUND_SETTINGS)
    }
}

/**
 * What is to be told on which day, and telling it. It lies in a file of the shell's own; the book knows nothing of it.
 *
 * The phone's alarm is set for the next day only, and need not be exact. Nothing here is asked on the main thread.
 */
class Reminders(private val context: Context) {
    private val file by lazy { File(context.noBackupFilesDir, "reminders.json") }
    private val notices = context.getSystemService(NotificationManager::class.java)
    private val alarms = context.getSystemService(AlarmManager::class.java)

    /** All of them, the next first. */
    fun all(): List<Reminder> = synchronized(LOCK) {
        try {
            val list = JSONObject(file.readText()).getJSONArray("reminders")
            (0 until list.length()).map { read(list.getJSONObject(it)) }
        } catch (_: IOException) {
            emptyList()
        } catch (_: JSONException) {
            emptyList()
        }
    }

    /** Sets some, each in the place of the one of its name. */
    @Throws(IOException::class)
    fun set(new: List<Reminder>, now: ZonedDateTime) {
        change { all -> all.filter { old -> new.none { it.uid == old.uid } } + new }
        tell(now)
    }

    /** One is done: it is not told again. */
    @Throws(IOException::class)
    fun done(uid: String, now: ZonedDateTime) {
        change { all -> all.filter { it.uid != uid } }
        notices.cancel(uid, NUMBER)
        arm(now)
    }

    /** One is told again in so many days. */
    @Throws(IOException::class)
    fun later(uid: String, days: Long, now: ZonedDateTime) {
        change { all -> all.map { if (it.uid == uid) it.copy(day = now.toLocalDate().plusDays(days), told = false) else it } }
        notices.cancel(uid, NUMBER)
        arm(now)
    }

    /** Tells what is due: what was not told yet, or all of it where the phone forgot what stood there. */
    @Throws(IOException::class)
    fun tell(now: ZonedDateTime, again: Boolean = false) {
        val due = all().filter { !it.comes(now) && (again || !it.told) }
        if (due.isNotEmpty() && allowed()) {
            due.forEach { notices.notify(it.uid, NUMBER, notice(it)) }
            change { all -> all.map { if (due.any { told -> told.uid == it.uid }) it.copy(told = true) else it } }
        }
        arm(now)
    }

    /** Sets the phone's alarm for the next one, or takes it away. */
    fun arm(now: ZonedDateTime) {
        val next = all().filter { !it.told && it.comes(now) }.minOfOrNull { it.day }
        val alarm = asked(Due.TELL, null)
        if (next == null) {
            alarms.cancel(alarm)
        } else {
            val at = next.atTime(HOUR).atZone(now.zone).toInstant().toEpochMilli()
            // Not exact, but also while the phone sleeps: the day matters, not the minute.
            alarms.setAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, at, alarm)
        }
    }

    /** Its hour is still to come. */
    private fun Reminder.comes(now: ZonedDateTime) = day.atTime(HOUR).isAfter(now.toLocalDateTime())

    /** Whether anything can be shown now. */
    private fun allowed(): Boolean {
        makeChannel()
        return notices.areNotificationsEnabled() && notices.getNotificationChannel(CHANNEL).importance != NotificationManager.IMPORTANCE_NONE
    }

    /** Why one may not come, or not be noticed; empty when nothing hinders. */
    fun hindrances(): List<Hindrance> {
        makeChannel()
        val found = mutableListOf<Hindrance>()
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU &&
            context.checkSelfPermission(NOTIFY) != PackageManager.PERMISSION_GRANTED
        ) {
            found += Hindrance.NOT_ALLOWED
        } else if (!notices.areNotificationsEnabled()) {
            found += Hindrance.ALL_OFF
        }
        if (notices.getNotificationChannel(CHANNEL).importance == NotificationManager.IMPORTANCE_NONE) found += Hindrance.CHANNEL_OFF
        val usage = context.getSystemService(UsageStatsManager::class.java)
        if (context.getSystemService(ActivityManager::class.java).isBackgroundRestricted || usage.appStandbyBucket >= RESTRICTED_BUCKET) {
            found += Hindrance.RESTRICTED
        }
        if (context.getSystemService(PowerManager::class.java).isPowerSaveMode) found += Hindrance.SAVER
        if (notices.currentInterruptionFilter !in setOf(NotificationManager.INTERRUPTION_FILTER_ALL, NotificationManager.INTERRUPTION_FILTER_UNKNOWN)) {
            found += Hindrance.QUIET
        }
        return found
    }

    private fun makeChannel() {
        val channel = NotificationChannel(CHANNEL, words().getString(R.string.reminders), NotificationManager.IMPORTANCE_DEFAULT)
        notices.createNotificationChannel(channel)
    }

    private fun notice(reminder: Reminder): Notification {
        val words = words()
        val open = Intent(context, Main::class.java).addFlags(Intent.FLAG_ACTIVITY_NEW_TASK)
        fun action(label: Int, what: String) =
            Notification.Action.Builder(null, words.getString(label), asked(what, reminder.uid)).build()
        return Notification.Builder(context, CHANNEL)
            .setSmallIcon(R.drawable.icon_told)
            .setContentTitle(reminder.title)
            .setContentText(reminder.text.lineSequence().first())
            .setStyle(Notification.BigTextStyle().bigText(reminder.text))
            .setCategory(Notification.CATEGORY_REMINDER)
            // Names of vehicles are nobody's business on a locked phone.
            .setVisibility(Notification.VISIBILITY_PRIVATE)
            .setContentIntent(PendingIntent.getActivity(context, 0, open, PendingIntent.FLAG_IMMUTABLE))
            .addAction(action(R.string.reminder_done, Due.DONE))
            .addAction(action(R.string.reminder_tomorrow, Due.TOMORROW))
            .addAction(action(R.string.reminder_week, Due.WEEK))
            .build()
    }

    private fun asked(what: String, uid: String?): PendingIntent {
        val intent = Intent(context, Due::class.java).setAction(what)
        uid?.let { intent.setData(Uri.fromParts("reminder", it, null)) }
        return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_UPDATE_CURRENT or PendingIntent.FLAG_IMMUTABLE)
    }

    /** The words of the language that was chosen last. */
    private fun words(): Context {
        val tag = language() ?: return context
        val mine = android.content.res.Configuration(context.resources.configuration).apply { setLocale(Locale.forLanguageTag(tag)) }
        return context.createConfigurationContext(mine)
    }

    private fun language(): String? = synchronized(LOCK) {
        try {
            JSONObject(file.readText()).optString("language").ifEmpty { null }
        } catch (_: IOException) {
            null
        } catch (_: JSONException) {
            null
        }
    }

    /** The language that reminders are told in from now on. */
    @Throws(IOException::class)
    fun speak(tag: String) = synchronized(LOCK) { if (language() != tag) write(all(), tag) }

    private fun change(how: (List<Reminder>) -> List<Reminder>) = synchronized(LOCK) { write(how(all()).sortedBy { it.day }, language()) }

    private fun write(all: List<Reminder>, language: String?) {
        val json = JSONObject().put("reminders", JSONArray(all.map(::written))).put("language", language)
        val half = File(file.path + ".half")
        FileOutputStream(half).use { out ->
            out.write(json.toString().toByteArray())
            out.fd.sync()
        }
        if (!half.renameTo(file)) throw IOException()
    }

    private fun written(reminder: Reminder): JSONObject = JSONObject()
        .put("uid", reminder.uid)
        .put("day", reminder.day.toString())
        .put("title", reminder.title)
        .put("text", reminder.text)
        .put("told", reminder.told)

    private fun read(json: JSONObject) = Reminder(
        json.getString("uid"),
        LocalDate.parse(json.getString("day")),
        json.getString("title"),
        json.getString("text"),
        json.getBoolean("told"),
    )

    companion object {
        const val CHANNEL = "reminders"
        const val NOTIFY = "android.permission.POST_NOTIFICATIONS"
        private const val NUMBER = 1

        /** From this bucket on the system holds alarms back. */
        private const val RESTRICTED_BUCKET = 45

        /** Within the day: when a shop opens, about. */
        private val HOUR: LocalTime = LocalTime.of(8, 0)
        private val LOCK = Any()
    }
}
