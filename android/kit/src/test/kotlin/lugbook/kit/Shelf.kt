package lugbook.kit

import java.io.File
import lugbook.core.Changed
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.ScreenAction

/** Opens the book in a folder. */
suspend fun openBook(folder: File, phone: SteadyPhone = SteadyPhone(1_790_000_000_000)): Engine =
    Engine.open(folder.path, phone, ENGLISH)

/** Taps an action with what is filled in. */
suspend fun Engine.tap(action: ScreenAction, vararg entered: Pair<String, String>): Changed =
    act(action.token, entered.map { (code, value) -> Entered(code, value) }, ENGLISH)

/** The action of a screen that has a code. */
fun List<ScreenAction>.of(code: String): ScreenAction =
    firstOrNull { it.code == code } ?: throw AssertionError("$code is not among ${map { it.code }}")

/** Fills an empty book: a mechanic, and so many vehicles. */
suspend fun Engine.fill(vehicles: Int) {
    tap(firstRun(ENGLISH).actions.of("add-person"), "name" to "Sam", "role" to "mechanic")
    repeat(vehicles) { number ->
        tap(book("", ENGLISH).actions.of("add-vehicle"), "name" to "Truck ${number + 1}", "model" to "Hauler 3500", "class" to "car")
    }
}
