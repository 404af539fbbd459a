package lugbook.app

import lugbook.core.EntryField
import lugbook.core.Entered
import lugbook.core.FieldKind

/** What is typed in the fields of one action, kept until it is sent. */
class Filled(private val kept: Kept, private val secrets: MutableMap<String, String>, val key: String) {
    private fun at(field: EntryField, part: String = "") = "$key#${field.code}$part"

    /** What a field holds: what was typed, else what the core filled in. */
    operator fun get(field: EntryField): String =
        if (field.kind == FieldKind.SECRET) secrets[at(field)].orEmpty() else kept[at(field)] ?: field.filled.orEmpty()

    operator fun set(field: EntryField, value: String) {
        if (field.kind == FieldKind.SECRET) secrets[at(field)] = value else kept[at(field)] = value
    }

    /** What a box of the keypad holds: one of several in a row, or the only one. */
    fun box(field: EntryField, number: Int): String =
        kept[at(field, "/$number")] ?: field.filled.orEmpty().takeIf { number == 0 && field.kind != FieldKind.GROOVES }.orEmpty()

    fun setBox(field: EntryField, number: Int, value: String) {
        kept[at(field, "/$number")] = value
    }

    /** The unit that was chosen for a field, by its code. */
    fun unit(field: EntryField): String? = kept[at(field, "/unit")] ?: field.unit

    fun setUnit(field: EntryField, unit: String) {
        kept[at(field, "/unit")] = unit
    }

    /** Everything that was typed, as the core takes it. */
    fun entered(fields: List<EntryField>): List<Entered> = fields.mapNotNull { field ->
        val value = if (field.boxes > 0) boxed(field) else get(field)
        Entered(field.code, value).takeIf { value.isNotBlank() }
    }

    private fun boxed(field: EntryField): String {
        val typed = (0 until field.boxes).map { box(field, it).trim() }.filter { it.isNotEmpty() }.joinToString(" ")
        val unit = unit(field)
        return if (typed.isEmpty() || unit == null || unit == field.unit) typed else "$typed $unit"
    }

    /** Takes over what was said before, to be said again. */
    fun again(field: EntryField, value: String) {
        if (field.boxes == 0) set(field, value) else setBox(field, 0, value)
    }

    /** Forgets it: it was sent. */
    fun forget() {
        kept.forget(key)
        secrets.keys.removeAll { it.startsWith("$key#") }
    }
}

/** So many boxes of the keypad a field has. */
val EntryField.boxes: Int
    get() = when (kind) {
        FieldKind.GROOVES -> grooves.size.coerceAtLeast(1)
        FieldKind.READING, FieldKind.COUNT -> 1
        else -> 0
    }
