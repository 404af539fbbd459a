package lugbook.app

import lugbook.core.ActionWeight
import lugbook.core.ChartSeries
import lugbook.core.NutCircle
import lugbook.core.Outgoing
import lugbook.core.OutgoingOf
import lugbook.core.ScreenAction
import lugbook.core.VehicleDrawing

/** A page's content: what stands on it from top to bottom, and what can be tapped. */
class Sheet(
    val title: String,
    /** What is typed here belongs to it. */
    val key: String,
    val pieces: List<Piece>,
    actions: List<ScreenAction> = emptyList(),
    /** The next thing to do, where that is another page. */
    val onward: Piece.Go? = null,
    /** Whether a job is in the bay. */
    val inWork: Boolean = false,
    /** What stands below the fields. */
    val after: List<Piece> = emptyList(),
    /** The job goes by an order of lifts. */
    val inOrder: Boolean = false,
) {
    /** Everything that the core offers here, each with a key that outlives its token. */
    val offers: List<Offered> = actions.mapIndexed { at, action ->
        val same = actions.take(at).count { it.code == action.code && it.at == action.at }
        Offered(action, "$key/${action.code}@${action.at.orEmpty()}.$same")
    }

    fun offers(vararg weights: ActionWeight): List<Offered> = offers.filter { it.action.weight in weights && it.action.code != UNDO }

    val undo: Offered? get() = offers.firstOrNull { it.action.code == UNDO }

    private companion object {
        const val UNDO = "undo"
    }
}

/** An action with the key that what is typed for it is kept under. */
class Offered(val action: ScreenAction, val key: String) {
    /** It needs a page of its own: there is something to fill in, or it is asked once more. */
    val asks: Boolean get() = action.fields.isNotEmpty() || action.confirm != null
}

/** One thing on a page. */
sealed interface Piece {
    /** A heading. */
    class Heading(val text: String) : Piece

    /** A sentence. */
    class Line(val text: String, val faint: Boolean = false, val spoken: String = text) : Piece

    /** What a person must be told first. */
    class Told(val text: String) : Piece

    /** The step in hand, with its place. */
    class Step(val at: String?, val text: String, val spoken: String) : Piece

    /** A caution, or anything else with a state: by its shape and its word. */
    class Stated(val state: String, val word: String, val text: String, val spoken: String = "$word. $text", val quiet: Boolean = false) : Piece {
        /** It stands before a step, and is no state: one of the four signal words. */
        val warns: Boolean get() = state in SIGNALS
    }

    /** A row, that may lead to a page. */
    class Row(val title: String, val lines: List<String>, val spoken: String, val to: Page?, val state: String? = null) : Piece

    /** A vehicle from above. */
    class Car(val drawing: VehicleDrawing, val inHand: String? = null, val to: ((String) -> Page)? = null) : Piece

    /** A wheel's nuts. */
    class Nuts(val circle: NutCircle) : Piece

    /** A chart. */
    class Chart(val series: ChartSeries, val distance: String, val depth: String) : Piece

    /** A depth beside a new tire's. */
    class Depth(val share: Double) : Piece

    /** What may stand on a sidewall, with how likely it is and what it was read from. */
    class Suggested(val text: String, val odds: String, val spoken: String, val cut: ByteArray?) : Piece

    /** A picture by its path. */
    class Picture(val path: String, val caption: String) : Piece

    /** A page of the core's own. */
    class Card(val html: String) : Piece

    /** A way to another page. */
    class Go(val label: String, val to: Page) : Piece

    /** Something that goes out as a file. */
    class Out(val label: String, val what: Outgoing, val of: OutgoingOf) : Piece

    /** What only a shell can set: one of some, by its key. */
    class Choice(val label: String, val key: String, val options: List<Pair<String, String>>, val usual: String) : Piece

    /** A search. */
    class Search(val label: String, val key: String) : Piece

    private companion object {
        /** The signal words' codes. */
        val SIGNALS = setOf("danger", "warning", "caution", "notice")
    }
}
