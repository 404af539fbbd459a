package lugbook.app

import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import org.junit.Assert.assertEquals
import org.junit.Test

/** The app holds no sentence, no unit and no figure of the trade: these come from the core. */
class ThinnessTest {
    private val main = File(System.getProperty("lugbook.root.of.tree"), "android/app/src/main")
    private val kotlin = main.walk().filter { it.extension == "kt" }.sortedBy { it.path }.toList()

    /** A piece of a program: what it says, and where. */
    private class Piece(val text: String, val at: String)

    /** The literals of a file, without what stands in comments. */
    private fun literals(file: File): List<Piece> {
        val found = mutableListOf<Piece>()
        code(file).forEachIndexed { at, line -> if (!ANNOTATION.containsMatchIn(line)) LITERAL.findAll(line).forEach { found += Piece(it.groupValues[1], "${file.name}:${at + 1}") } }
        return found
    }

    private fun code(file: File): List<String> {
        val text = COMMENT.replace(file.readText()) { found -> "\n".repeat(found.value.count { it == '\n' }) }
        return text.lines().map { line -> if ("//" in line) LINE_COMMENT.replace(line, "$1") else line }
    }

    @Test
    fun noSentenceStandsInKotlin() {
        val sentences = kotlin.flatMap(::literals).filter { SENTENCE.containsMatchIn(it.text.replace(Regex("\\$\\{[^}]*}|\\$\\w+"), "#")) }
        assertEquals("", sentences.joinToString("\n") { "${it.at}: ${it.text}" })
    }

    @Test
    fun noUnitStandsInKotlin() {
        val units = kotlin.flatMap(::literals).filter { literal -> literal.text.split(Regex("[^\\p{L}/.·]+")).any { it in UNITS } }
        assertEquals("", units.joinToString("\n") { "${it.at}: ${it.text}" })
    }

    @Test
    fun noFigureOfTheTradeStandsInKotlin() {
        val figures = kotlin.flatMap { file ->
            code(file).flatMapIndexed { at, line ->
                FIGURE.findAll(line).filter { it.value.trimEnd('f', 'F', 'L') in FIGURES }.map { "${file.name}:${at + 1}: ${it.value}" }.toList()
            }
        }
        assertEquals("", figures.joinToString("\n"))
    }

    @Test
    fun whatALayoutShowsIsAResource() {
        val written = main.walk().filter { it.extension == "xml" && "/layout" in it.path }.flatMap { file ->
            WRITTEN.findAll(file.readText()).map { "${file.name}: ${it.value}" }
        }
        assertEquals("", written.joinToString("\n"))
    }

    @Test
    fun wordsOfTheShellHoldNoUnitAndNoFigureAndStandInBothLanguages() {
        fun words(folder: String) = File(main, "res/$folder").listFiles()!!.filter { it.extension == "xml" }.flatMap { file ->
            val strings = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file).getElementsByTagName("string")
            (0 until strings.length).map { strings.item(it).attributes.getNamedItem("name").nodeValue to strings.item(it).textContent }
        }.toMap()
        val (english, spanish) = words("values") to words("values-es")
        assertEquals(english.keys.sorted(), spanish.keys.sorted())
        for ((name, text) in english + spanish.mapKeys { "es/${it.key}" }) {
            val plain = text.replace(Regex("%\\d+\\$[sd]"), "").replace(Regex("Apache( License)? \\d\\.\\d"), "")
            assertEquals("$name: $text", null, plain.split(Regex("[^\\p{L}/.·]+")).firstOrNull { it in UNITS && it != "in" })
            assertEquals("$name: $text", null, Regex("\\d").find(plain)?.value)
        }
    }

    @Test
    fun itsSizeIsAFigure() {
        val lines = kotlin.sumOf { file -> code(file).count { it.isNotBlank() } }
        println("Kotlin of the app: ${kotlin.size} files, ${kotlin.sumOf { it.readLines().size }} lines, $lines of them code")
    }

    private companion object {
        val COMMENT = Regex("/\\*.*?\\*/", RegexOption.DOT_MATCHES_ALL)
        val LINE_COMMENT = Regex("^((?:[^\"/]|\"(?:[^\"\\\\]|\\\\.)*\"|/(?!/))*)//.*$")
        val ANNOTATION = Regex("^\\s*@(Deprecated|Suppress\\w*)\\(")
        val LITERAL = Regex("\"((?:[^\"\\\\]|\\\\.)*)\"")

        /** Two words in a row, or one that ends like a sentence. */
        val SENTENCE = Regex("\\p{L}{2,}[,:;]? \\p{L}{2,}|^\\p{Lu}\\p{L}+[.!?]$")

        val UNITS = setOf(
            "mm", "cm", "in", "inch", "ft", "mi", "km", "psi", "kPa", "kpa", "bar", "Nm", "N.m", "N·m", "lbf", "lb", "lbs", "kg",
            "lbf.ft", "lbf·ft", "ft-lb", "32nds", "1/32", "in/32", "miles", "millas", "pulgadas",
        )
        val FIGURE = Regex("(?<![\\w.])\\d+\\.\\d+[fF]?")

        /** What turns one unit into another, and limits that are no measure of a drawing. */
        val FIGURES = setOf(
            "25.4", "0.03937", "0.0394", "6.894", "6.895", "6.89", "0.145", "14.5", "1.609", "1.60934", "0.621", "0.6214", "1.3558",
            "1.356", "0.7376", "0.738", "0.4536", "2.2046", "2.205", "1.59", "1.588", "0.79375", "0.794",
        )
        val WRITTEN = Regex("android:(text|hint|contentDescription|title)=\"(?!@)[^\"]+\"")
    }
}
