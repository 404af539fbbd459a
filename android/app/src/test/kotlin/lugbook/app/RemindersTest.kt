package lugbook.app

import android.app.AlarmManager
import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.content.Intent
import java.io.File
import java.time.LocalDate
import java.time.ZoneId
import java.time.ZonedDateTime
import java.util.concurrent.TimeUnit
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

@RunWith(RobolectricTestRunner::class)
class RemindersTest {
    private val context = RuntimeEnvironment.getApplication()
    private val notices = context.getSystemService(NotificationManager::class.java)
    private val alarms = shadowOf(context.getSystemService(AlarmManager::class.java))
    private val reminders = Reminders(context)
    private val morning = ZonedDateTime.of(2026, 12, 1, 10, 0, 0, 0, ZoneId.of("America/Boise"))

    init {
        clock = { morning }
        shadowOf(context).grantPermissions(Reminders.NOTIFY)
    }

    @After
    fun goOn() {
        clock = ZonedDateTime::now
    }

    private fun wagon(days: Long, uid: String = "recheck-1-a") =
        Reminder(uid, morning.toLocalDate().plusDays(days), "gray wagon: recheck the nuts", "Recheck the nuts after 50 to 100 mi.\nMore")

    private fun shown(uid: String) = shadowOf(notices).activeNotifications.firstOrNull { it.tag == uid }?.notification

    /** What a tap in a notification does, as the phone does it: through its pending intent. */
    private fun Notification.answer(label: Int) {
        val action = actions.first { it.title == context.getString(label) }
        val intent = shadowOf(action.actionIntent).savedIntent
        Due().onReceive(context, intent)
        reminding.submit {}.get(1, TimeUnit.MINUTES)
    }

    @Test
    fun theAlarmIsSetForTheNextDayAndIsNotExact() {
        reminders.set(listOf(wagon(9), wagon(3, "b")), morning)
        val alarm = alarms.scheduledAlarms.single()
        val at = morning.toLocalDate().plusDays(3).atTime(8, 0).atZone(morning.zone).toInstant().toEpochMilli()
        assertEquals(at, alarm.triggerAtMs)
        assertEquals(AlarmManager.RTC_WAKEUP, alarm.type)
        // An exact one has a window of nothing.
        assertFalse(alarm.windowLengthMs == 0L)
        assertTrue(alarm.isAllowWhileIdle)
    }

    @Test
    fun onItsDayItIsToldWithWhatTheCoreSays() {
        reminders.set(listOf(wagon(3)), morning)
        assertNull(shown("recheck-1-a"))
        reminders.tell(morning.plusDays(3))
        val notice = shown("recheck-1-a")!!
        assertEquals("gray wagon: recheck the nuts", notice.extras.getString(Notification.EXTRA_TITLE))
        assertEquals("Recheck the nuts after 50 to 100 mi.\nMore", notice.extras.getCharSequence(Notification.EXTRA_BIG_TEXT).toString())
        assertEquals(Notification.VISIBILITY_PRIVATE, notice.visibility)
        assertTrue("nothing more is to come", alarms.scheduledAlarms.isEmpty())
    }

    @Test
    fun doneInTheNotificationEndsIt() {
        reminders.set(listOf(wagon(0)), morning)
        shown("recheck-1-a")!!.answer(R.string.reminder_done)
        assertNull(shown("recheck-1-a"))
        assertEquals(emptyList<Reminder>(), reminders.all())
    }

    @Test
    fun laterInTheNotificationBringsItAgain() {
        for ((label, days) in listOf(R.string.reminder_tomorrow to 1L, R.string.reminder_week to 7L)) {
            reminders.set(listOf(wagon(0)), morning)
            shown("recheck-1-a")!!.answer(label)
            assertNull(shown("recheck-1-a"))
            assertEquals(morning.toLocalDate().plusDays(days), reminders.all().single().day)
            assertNotNull(alarms.scheduledAlarms.singleOrNull())
            reminders.tell(morning.plusDays(days))
            assertNotNull("after $days days", shown("recheck-1-a"))
            reminders.done("recheck-1-a", morning)
        }
    }

    @Test
    fun afterThePhoneWasStartedItIsArmedAndWhatStoodThereStandsThereAgain() {
        reminders.set(listOf(wagon(0), wagon(4, "b")), morning)
        notices.cancelAll()
        alarms.scheduledAlarms.toList().forEach { context.getSystemService(AlarmManager::class.java).cancel(it.operation) }
        assertTrue(alarms.scheduledAlarms.isEmpty())
        Started().onReceive(context, Intent(Intent.ACTION_BOOT_COMPLETED))
        reminding.submit {}.get(1, TimeUnit.MINUTES)
        assertNotNull(shown("recheck-1-a"))
        assertEquals(1, alarms.scheduledAlarms.size)
    }

    @Test
    fun itSaysWhyOneMayNotCome() {
        assertEquals(emptyList<Hindrance>(), reminders.hindrances())
        shadowOf(context).denyPermissions(Reminders.NOTIFY)
        assertEquals(listOf(Hindrance.NOT_ALLOWED), reminders.hindrances())
        shadowOf(context).grantPermissions(Reminders.NOTIFY)
        shadowOf(notices).setNotificationsEnabled(false)
        assertEquals(listOf(Hindrance.ALL_OFF), reminders.hindrances())
        shadowOf(notices).setNotificationsEnabled(true)
        notices.deleteNotificationChannel(Reminders.CHANNEL)
        notices.createNotificationChannel(NotificationChannel(Reminders.CHANNEL, "x", NotificationManager.IMPORTANCE_NONE))
        assertEquals(listOf(Hindrance.CHANNEL_OFF), reminders.hindrances())
        for (hindrance in Hindrance.entries) assertNotNull(hindrance.settings(context).action)
    }

    @Test
    fun itSaysThatThePhoneHoldsTheAppBack() {
        shadowOf(context.getSystemService(android.app.ActivityManager::class.java)).setBackgroundRestricted(true)
        shadowOf(context.getSystemService(android.os.PowerManager::class.java)).setIsPowerSaveMode(true)
        notices.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
        assertEquals(listOf(Hindrance.RESTRICTED, Hindrance.SAVER, Hindrance.QUIET), reminders.hindrances())
    }

    @Test
    fun whatCouldNotBeToldIsToldOnceItMay() {
        shadowOf(notices).setNotificationsEnabled(false)
        reminders.set(listOf(wagon(0)), morning)
        assertNull(shown("recheck-1-a"))
        assertFalse(reminders.all().single().told)
        shadowOf(notices).setNotificationsEnabled(true)
        reminders.tell(morning)
        assertNotNull(shown("recheck-1-a"))
    }

    @Test
    fun whatIsSetAgainStandsOnce() {
        reminders.set(listOf(wagon(3)), morning)
        reminders.set(listOf(wagon(5)), morning)
        assertEquals(morning.toLocalDate().plusDays(5), reminders.all().single().day)
    }

    @Test
    fun aDamagedFileIsNoReminder() {
        reminders.set(listOf(wagon(3)), morning)
        val file = File(context.noBackupFilesDir, "reminders.json")
        file.writeText(file.readText().dropLast(20))
        assertEquals(emptyList<Reminder>(), reminders.all())
        reminders.set(listOf(wagon(3)), morning)
        assertEquals(1, reminders.all().size)
    }

    @Test
    fun beforeItsHourItIsNotTold() {
        val night = morning.withHour(0).withMinute(9)
        reminders.set(listOf(wagon(0)), night)
        assertNull(shown("recheck-1-a"))
        assertEquals(night.withHour(8).withMinute(0).toInstant().toEpochMilli(), alarms.scheduledAlarms.single().triggerAtMs)
        reminders.tell(night.withHour(8))
        assertNotNull(shown("recheck-1-a"))
    }

    @Test
    fun theCalendarFileOfTheCoreIsRead() {
        val file = listOf(
            "BEGIN:VCALENDAR", "VERSION:2.0", "BEGIN:VEVENT", "UID:recheck-1-a", "DTSTAMP:20261124T091500Z",
            "DTSTART;VALUE=DATE:20261126", "DTEND;VALUE=DATE:20261128", "SUMMARY:gray wagon: recheck\\, then go",
            "DESCRIPTION:Recheck the nuts after 50 to 100 mi.\\nThat is at 12\\,000 mi ", " a year\\; about.",
            "END:VEVENT", "BEGIN:VEVENT", "UID:no-day", "SUMMARY:x", "END:VEVENT", "END:VCALENDAR", "",
        ).joinToString("\r\n")
        val told = CalendarFile.events(file).single()
        val text = "Recheck the nuts after 50 to 100 mi.\nThat is at 12,000 mi a year; about."
        assertEquals(Reminder("recheck-1-a", LocalDate.of(2026, 11, 26), "gray wagon: recheck, then go", text), told)
    }
}
