package lugbook.kit

import kotlinx.serialization.json.Json
import lugbook.core.Language
import lugbook.core.PositionLetters
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** A pattern that fits anything would let every journey pass. */
class PatternTest {
    private fun fits(pattern: String, value: String) =
        differences(Json.parseToJsonElement(pattern), Json.parseToJsonElement(value)).isEmpty()

    data class Wheel(val hubFace: String?, val nuts: UInt, val letters: List<PositionLetters>)

    @Test
    fun aRecordIsReadByItsFields() {
        val value = tree(Wheel(null, 4_000_000_000u, listOf(PositionLetters.FRONT_FIRST)))
        assertEquals("""{"hub_face":null,"letters":["front-first"],"nuts":4000000000}""", value.toString())
        assertEquals("\"spanish\"", tree(Language.SPANISH).toString())
    }

    @Test
    fun whatFitsFits() {
        assertTrue(fits("""{"a": 1}""", """{"a": 1.0, "b": 2}"""))
        assertTrue(fits("""[{"a": null}, true]""", """[{"a": null}, true]"""))
        assertTrue(fits("""{"has": [3, 1]}""", "[1, 2, 3]"))
        assertTrue(fits("""{"count": 2}""", """["x", "y"]"""))
    }

    @Test
    fun whatDiffersIsFound() {
        assertTrue(!fits("""{"a": 1}""", """{"a": 2}"""))
        assertTrue(!fits("""{"a": null}""", "{}"))
        assertTrue(!fits("""{"a": 1}""", """{"a": "1"}"""))
        assertTrue(!fits("true", "\"true\""))
        assertTrue(!fits("null", "0"))
        assertTrue(!fits("[1]", "[1, 2]"))
        assertTrue(!fits("[]", "[1]"))
        assertTrue(!fits("""{"has": [4]}""", "[1, 2, 3]"))
        assertTrue(!fits("""{"count": 1}""", "[]"))
        assertTrue(!fits("\"a\"", "[]"))
    }
}
