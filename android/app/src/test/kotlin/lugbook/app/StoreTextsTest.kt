package lugbook.app

import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test

/** The texts that stores show: where F-Droid looks for them, and no longer than they may be. */
class StoreTextsTest {
    private val root = File(System.getProperty("lugbook.root.of.tree"))
    private val texts = File(root, "android/app/src/main/fastlane/metadata/android")
    private val languages = texts.listFiles()!!.filter { it.isDirectory }.sortedBy { it.name }
    private val versionCode = File(root, "android/app/src/main/AndroidManifest.xml").let { manifest ->
        val read = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(manifest)
        read.documentElement.getAttribute("android:versionCode")
    }

    @Test
    fun bothLanguagesHaveEveryText() {
        assertEquals(listOf("en-US", "es-US"), languages.map { it.name })
        val wanted = listOf("title.txt", "short_description.txt", "full_description.txt", "changelogs/$versionCode.txt")
        for (language in languages) for (name in wanted) assertTrue("$language/$name", File(language, name).isFile)
    }

    @Test
    fun noneIsLongerThanAStoreTakes() {
        for (language in languages) {
            fun text(name: String) = File(language, name).readText().trim()
            assertTrue("${language.name} title", text("title.txt").length in 1..30)
            assertTrue("${language.name} short", text("short_description.txt").length in 1..80)
            assertFalse("${language.name} short ends like a sentence", text("short_description.txt").endsWith("."))
            assertTrue("${language.name} full", text("full_description.txt").length in 1..4000)
            for (log in File(language, "changelogs").listFiles()!!) {
                assertTrue("${language.name} ${log.name}", log.readBytes().size in 1..500)
            }
        }
    }

    @Test
    fun theNameIsNotTranslated() {
        assertEquals(setOf("Lugbook"), languages.map { File(it, "title.txt").readText().trim() }.toSet())
    }

    @Test
    fun noClaimIsMadeThatNobodyCanHoldItTo() {
        val claims = Regex("\\b(best|easy|easily|simple|powerful|amazing|revolution\\w*|perfect|ultimate|fast|free|" +
            "mejor|fácil|sencill[oa]|potente|increíble|perfect[oa]|rápid[oa]|gratis)\\b", RegexOption.IGNORE_CASE)
        for (language in languages) for (name in listOf("short_description.txt", "full_description.txt")) {
            assertEquals("${language.name} $name", null, claims.find(File(language, name).readText())?.value)
        }
    }
}
