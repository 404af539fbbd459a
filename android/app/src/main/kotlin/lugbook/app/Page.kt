package lugbook.app

import org.json.JSONArray
import org.json.JSONObject

/** The places of the app. */
enum class Place {
    FIRST_RUN, BAY, STEPS, PLAN, LIFTS, FINDINGS, LOG, PHOTOS, CARD, WHY, BOOK, VEHICLE, VISITS, TIRE, HISTORY,
    CREW, BENCH, SETTINGS, BACKUPS, PROOF, ABOUT, MORE, FORM,

    /** Windows beside the book's: see [Beside]. */
    REMINDERS, COPIES,
}

/** Where the person is: a place, what of, and for a form or a list of further taps the page that it belongs to. */
data class Page(val place: Place, val of: List<String> = emptyList(), val base: Page? = null) {
    /** What is typed on this page is kept under it. */
    val key: String get() = (listOf(place.name) + of).joinToString("/") + (base?.let { "<" + it.key } ?: "")

    fun json(): JSONObject = JSONObject().put("place", place.name).put("of", JSONArray(of)).also { json ->
        base?.let { json.put("base", it.json()) }
    }

    companion object {
        val BAY = Page(Place.BAY)

        /** The page that was kept, or none that this version knows. */
        fun of(json: JSONObject): Page? {
            val place = Place.entries.firstOrNull { it.name == json.optString("place") } ?: return null
            val of = json.optJSONArray("of") ?: JSONArray()
            val base = json.optJSONObject("base")
            return Page(place, List(of.length()) { of.getString(it) }, base?.let { of(it) ?: return null })
        }
    }
}
