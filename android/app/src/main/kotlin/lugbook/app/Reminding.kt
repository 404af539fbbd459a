package lugbook.app

import android.app.DatePickerDialog
import android.content.Context
import android.content.Intent
import android.os.Build
import android.os.Bundle
import android.widget.EditText
import java.io.File
import java.io.IOException
import java.time.LocalDate
import java.time.ZonedDateTime
import java.time.format.DateTimeFormatter
import java.time.format.FormatStyle
import java.util.Locale
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext
import lugbook.core.Language
import lugbook.core.Outgoing
import lugbook.core.OutgoingOf
import lugbook.core.Refusal

/**
 * Reminders by day: those that are set, a new one for the vehicle or the job that it was opened for, and what may keep
 * one from being seen.
 */
class Reminding : Beside() {
    private val reminders by lazy { Reminders(applicationContext) }
    private val vehicle get() = intent.getStringExtra(VEHICLE)
    private val job get() = intent.getIntExtra(JOB, 0).takeIf { it > 0 }
    private var perYear = ""

    /** What was set when somebody asked for a right first. */
    private var waits: List<Reminder>? = null

    override val title = R.string.reminders

    override fun onCreate(state: Bundle?) {
        perYear = state?.getString(PER_YEAR).orEmpty()
        super.onCreate(state)
    }

    override fun onSaveInstanceState(state: Bundle) {
        super.onSaveInstanceState(state)
        state.putString(PER_YEAR, perYear)
    }

    override suspend fun fill() {
        val (all, hindered) = withContext(Dispatchers.IO) {
            reminders.speak(if (app.manner.language == Language.SPANISH) "es" else "en")
            reminders.tell(ZonedDateTime.now())
            reminders.all() to reminders.hindrances()
        }
        content.removeAllViews()
        val told = getString(if (hindered.isEmpty()) R.string.reminders_free else R.string.reminders_hindered)
        content.put(pen.text(told, bold = hindered.isNotEmpty()), 12)
        for (hindrance in hindered) {
            val panel = pen.panel(pen.ink, 2)
            panel.put(pen.text(getString(hindrance.sentence)))
            val label = getString(if (hindrance == Hindrance.NOT_ALLOWED) R.string.reminders_allow else R.string.reminder_settings)
            panel.put(pen.button(label, "$label. ${getString(hindrance.sentence)}") { mend(hindrance) }, 8)
            content.put(panel, 8)
        }
        val day = DateTimeFormatter.ofLocalizedDate(FormatStyle.FULL).withLocale(resources.configuration.locales[0] ?: Locale.getDefault())
        if (all.isEmpty()) content.put(pen.text(getString(R.string.reminders_none)), 16)
        for (reminder in all) {
            val panel = pen.panel()
            panel.put(pen.heading(reminder.title))
            panel.put(pen.text(reminder.day.format(day), bold = true), 4)
            if (reminder.text.isNotEmpty()) panel.put(pen.text(reminder.text), 4)
            val taps = listOf<Pair<Int, (ZonedDateTime) -> Unit>>(
                R.string.reminder_done to { reminders.done(reminder.uid, it) },
                R.string.reminder_tomorrow to { reminders.later(reminder.uid, Due.DAY, it) },
                R.string.reminder_week to { reminders.later(reminder.uid, Due.DAYS_OF_WEEK, it) },
            )
            for ((label, tap) in taps) {
                panel.put(pen.button(getString(label), "${getString(label)}. ${reminder.title}") { change(tap) }, 8)
            }
            content.put(panel, 16)
        }
        if (vehicle != null || job != null) byDay()
        if (job != null) byDistance()
    }

    /** A day that the person chooses. */
    private fun byDay() {
        content.put(pen.button(getString(R.string.reminder_by_day), getString(R.string.reminder_by_day)) {
            val tomorrow = LocalDate.now().plusDays(1)
            DatePickerDialog(this, { _, year, month, day -> on(LocalDate.of(year, month + 1, day)) }, tomorrow.year, tomorrow.monthValue - 1, tomorrow.dayOfMonth).show()
        }, 20)
    }

    /** Sets one for a day, in the core's words. */
    fun on(day: LocalDate) = asking {
        val engine = app.ready()
        val name = vehicle ?: engine.bay(manner = app.manner).vehicle
        val seen = engine.vehicle(name, app.manner)
        set(listOf(Reminder("day-$name", day, seen.name, seen.due ?: seen.model)))
    }

    /** The day that the core reckons from what the owner drives in a year. */
    private fun byDistance() {
        val field = EditText(this).apply {
            setText(perYear)
            contentDescription = getString(R.string.reminder_a_year)
            minimumHeight = pen.dp(Pen.REACH)
            setTextColor(pen.ink)
            background = pen.face(pen.sheet, pen.sheet, pen.line)
            setPadding(pen.dp(14), pen.dp(12), pen.dp(14), pen.dp(12))
        }
        content.put(pen.text(getString(R.string.reminder_a_year)), 20)
        content.put(field, 4)
        content.put(pen.button(getString(R.string.reminder_by_distance), getString(R.string.reminder_by_distance)) {
            perYear = field.text.toString()
            reckon(perYear)
        }, 8)
    }

    /** Sets those that the core dates by a distance in a year. */
    fun reckon(perYear: String) = asking {
        val folder = withContext(Dispatchers.IO) { Hand.OUT.folder(this@Reminding) }
        val of = OutgoingOf(job = job?.toUInt(), perYear = perYear)
        val file = app.ready().writeOut(Outgoing.RECHECKS, of, folder.path, app.manner)
        set(withContext(Dispatchers.IO) { CalendarFile.events(File(file).readText()) })
    }

    private suspend fun set(new: List<Reminder>) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU && Hindrance.NOT_ALLOWED in withContext(Dispatchers.IO) { reminders.hindrances() }) {
            // Asked when the first one is set, and not before.
            waits = new
            requestPermissions(arrayOf(Reminders.NOTIFY), ASKED)
            return
        }
        withContext(Dispatchers.IO) { reminders.set(new, ZonedDateTime.now()) }
        fill()
    }

    override fun onRequestPermissionsResult(request: Int, rights: Array<out String>, given: IntArray) {
        val new = waits
        waits = null
        // Set all the same: it stands here, and this page says why it will not come.
        asking {
            new?.let { withContext(Dispatchers.IO) { reminders.set(it, ZonedDateTime.now()) } }
            fill()
        }
    }

    private fun change(how: (ZonedDateTime) -> Unit) = asking {
        withContext(Dispatchers.IO) { how(ZonedDateTime.now()) }
        fill()
    }

    private fun mend(hindrance: Hindrance) {
        if (hindrance == Hindrance.NOT_ALLOWED && Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU && shouldShowRequestPermissionRationale(Reminders.NOTIFY)) {
            requestPermissions(arrayOf(Reminders.NOTIFY), ASKED)
        } else {
            reach(hindrance.settings(this))
        }
    }

    companion object {
        private const val VEHICLE = "vehicle"
        private const val JOB = "job"
        private const val PER_YEAR = "per-year"
        private const val ASKED = 1

        /** Opens it for a vehicle, a job, or neither. */
        fun of(context: Context, vehicle: String? = null, job: Int? = null): Intent =
            Intent(context, Reminding::class.java).putExtra(VEHICLE, vehicle).putExtra(JOB, job ?: 0)
    }
}
