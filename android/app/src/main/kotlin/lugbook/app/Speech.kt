package lugbook.app

import android.content.res.Configuration
import lugbook.core.Language
import lugbook.core.Manner
import lugbook.core.PositionLetters
import lugbook.core.UnitSystem

/** How the person is spoken to, until the settings say otherwise. */
object Speech {
    /** In the device's language. */
    fun ofDevice(configuration: Configuration): Manner {
        val spanish = configuration.locales[0].language == "es"
        val language = if (spanish) Language.SPANISH else Language.ENGLISH
        return Manner(language, UnitSystem.AS_READ, PositionLetters.FRONT_FIRST, null)
    }
}
