package lugbook.app

import java.time.LocalDate
import java.time.format.DateTimeFormatter
import java.time.format.DateTimeParseException

/** The calendar file that the core writes (iCalendar, RFC 5545): its events of whole days. */
object CalendarFile {
    /** What a file tells: an event without a name, a day or a summary is passed over. */
    fun events(file: String): List<Reminder> {
        // A line that begins with a space goes on from the one before it (RFC 5545, 3.1).
        val lines = file.replace("\r\n", "\n").replace("\n ", "").lines()
        val events = mutableListOf<Reminder>()
        var event: MutableMap<String, String>? = null
        for (line in lines) {
            when (line) {
                "BEGIN:VEVENT" -> event = mutableMapOf()
                "END:VEVENT" -> {
                    event?.let(::reminder)?.let(events::add)
                    event = null
                }
                else -> event?.put(line.substringBefore(':').substringBefore(';'), line.substringAfter(':'))
            }
        }
        return events
    }

    private fun reminder(event: Map<String, String>): Reminder? {
        val uid = event["UID"] ?: return null
        val title = event["SUMMARY"] ?: return null
        val day = try {
            LocalDate.parse(event["DTSTART"] ?: return null, DateTimeFormatter.BASIC_ISO_DATE)
        } catch (_: DateTimeParseException) {
            return null
        }
        return Reminder(uid, day, plain(title), plain(event["DESCRIPTION"].orEmpty()))
    }

    /** A text without its escapes (RFC 5545, 3.3.11). */
    private fun plain(text: String): String = ESCAPE.replace(text) { found -> if (found.value[1] in "nN") "\n" else found.value.substring(1) }

    private val ESCAPE = Regex("\\\\[nN,;\\\\]")
}
