package lugbook.kit

import java.io.File
import kotlinx.coroutines.runBlocking
import kotlinx.serialization.json.Json
import kotlinx.serialization.json.jsonObject
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.junit.runners.Parameterized

/** The journeys of `tests/vectors/journeys`, as Rust and Swift go them too. */
@RunWith(Parameterized::class)
class JourneyTest(@Suppress("unused") private val name: String, private val file: File) {
    @get:Rule
    val scratch = TemporaryFolder()

    @Test
    fun comesOutAsTold() = runBlocking {
        Journey(Json.parseToJsonElement(file.readText()).jsonObject, scratch.root).go()
    }

    companion object {
        @JvmStatic
        @Parameterized.Parameters(name = "{0}")
        fun journeys(): List<Array<Any>> =
            File(System.getProperty("lugbook.journeys"))
                .listFiles { file -> file.extension == "json" }!!
                .sorted()
                .map { arrayOf(it.nameWithoutExtension, it) }
    }
}
