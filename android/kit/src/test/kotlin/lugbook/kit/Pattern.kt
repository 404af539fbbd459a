package lugbook.kit

import kotlin.reflect.KProperty1
import kotlin.reflect.KVisibility
import kotlin.reflect.full.memberProperties
import kotlinx.serialization.json.JsonArray
import kotlinx.serialization.json.JsonElement
import kotlinx.serialization.json.JsonNull
import kotlinx.serialization.json.JsonObject
import kotlinx.serialization.json.JsonPrimitive
import kotlinx.serialization.json.booleanOrNull
import kotlinx.serialization.json.double
import kotlinx.serialization.json.int

/** A record of the library as JSON: fields in snake case, the names of an enum in kebab case. */
fun tree(value: Any?): JsonElement =
    when (value) {
        null, Unit -> JsonNull
        is Boolean -> JsonPrimitive(value)
        is String -> JsonPrimitive(value)
        is Number -> JsonPrimitive(value)
        is UByte -> JsonPrimitive(value.toLong())
        is UShort -> JsonPrimitive(value.toLong())
        is UInt -> JsonPrimitive(value.toLong())
        is ULong -> JsonPrimitive(value.toLong())
        is Enum<*> -> JsonPrimitive(value.name.lowercase().replace('_', '-'))
        is List<*> -> JsonArray(value.map(::tree))
        is Map<*, *> -> JsonObject(value.entries.associate { (key, item) -> key.toString() to tree(item) })
        is Throwable -> JsonObject(mapOf("kind" to JsonPrimitive(kebab(value))) + fields(value))
        else -> JsonObject(fields(value))
    }

private fun fields(value: Any): Map<String, JsonElement> =
    value::class.memberProperties
        .filter { it.visibility == KVisibility.PUBLIC && it.name != "message" && it.name != "cause" }
        .associate { field ->
            @Suppress("UNCHECKED_CAST")
            snake(field.name) to tree((field as KProperty1<Any, *>).get(value))
        }

private fun snake(name: String): String = name.replace(Regex("[A-Z]")) { "_" + it.value.lowercase() }

private fun kebab(value: Any): String = snake(value::class.simpleName.orEmpty()).replace('_', '-').trimStart('-')

/**
 * Where a value differs from a pattern; nothing when it fits.
 *
 * An object fits when each of its keys does, a list when each of its elements does and there are no more. In place
 * of a list may stand `{"has": [...]}`, of which each is fitted by some element, or `{"count": 3}`.
 */
fun differences(pattern: JsonElement, value: JsonElement, path: String = ""): List<String> {
    val otherwise = listOf("$path: expected $pattern, found $value")
    return when {
        pattern is JsonObject && value is JsonArray && pattern.keys == setOf("count") ->
            if (value.size == (pattern.getValue("count") as JsonPrimitive).int) {
                emptyList()
            } else {
                listOf("$path: expected $pattern, found ${value.size}: $value")
            }
        pattern is JsonObject && value is JsonArray && pattern.keys == setOf("has") ->
            (pattern.getValue("has") as JsonArray)
                .filter { wanted -> value.none { differences(wanted, it).isEmpty() } }
                .map { "$path: nothing fits $it in $value" }
        pattern is JsonObject && value is JsonObject ->
            pattern.flatMap { (key, wanted) ->
                value[key]?.let { differences(wanted, it, "$path.$key") } ?: listOf("$path: there is no $key in $value")
            }
        pattern is JsonArray && value is JsonArray && pattern.size == value.size ->
            pattern.indices.flatMap { differences(pattern[it], value[it], "$path[$it]") }
        pattern is JsonPrimitive && value is JsonPrimitive && same(pattern, value) -> emptyList()
        else -> otherwise
    }
}

private fun same(one: JsonPrimitive, other: JsonPrimitive): Boolean =
    when {
        one is JsonNull || other is JsonNull -> one is JsonNull && other is JsonNull
        one.isString || other.isString -> one.isString && other.isString && one.content == other.content
        one.booleanOrNull != null || other.booleanOrNull != null -> one.booleanOrNull == other.booleanOrNull
        else -> one.double == other.double
    }
