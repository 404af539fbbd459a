package lugbook.app

import android.content.res.Configuration
import lugbook.core.HoldingHand
import lugbook.core.Language
import lugbook.core.Manner
import lugbook.core.PhoneSettings
import lugbook.core.PositionLetters
import lugbook.core.ScreenGround
import lugbook.core.UnitSystem
import java.util.Locale

/** How this phone shows the book: what the core's settings hold, and what only a shell can set. */
data class Look(
    val manner: Manner,
    val hand: HoldingHand,
    val ground: ScreenGround,
    val staysOn: Boolean,
    val lettering: Lettering,
    val volumeKey: Boolean,
) {
    /** The device's configuration with what was chosen here. */
    fun over(device: Configuration): Configuration = Configuration().also { mine ->
        mine.setLocale(Locale.forLanguageTag(if (manner.language == Language.SPANISH) "es" else "en"))
        mine.fontScale = device.fontScale * lettering.times
        val night = when (ground) {
            ScreenGround.DEVICE -> device.uiMode and Configuration.UI_MODE_NIGHT_MASK
            ScreenGround.PAPER -> Configuration.UI_MODE_NIGHT_NO
            ScreenGround.RUBBER -> Configuration.UI_MODE_NIGHT_YES
        }
        mine.uiMode = (device.uiMode and Configuration.UI_MODE_NIGHT_MASK.inv()) or night
    }

    /** What a window has to be made anew for. */
    fun seen(device: Configuration): List<Any> = over(device).let { listOf(it.locales[0].language, it.fontScale, it.uiMode, hand) }

    companion object {
        /** What was chosen; where nothing was, the device's language and readings as they were read. */
        fun of(settings: PhoneSettings, kept: Kept, device: Configuration) = Look(
            settings.speech ?: ofDevice(device),
            settings.hand,
            settings.ground,
            settings.staysOn,
            Lettering.entries.firstOrNull { it.name == kept[Lettering.KEY] } ?: Lettering.AS_DEVICE,
            kept[VOLUME_KEY] == "yes",
        )

        /** As the device has it, until the settings came. */
        fun usual(device: Configuration) =
            Look(ofDevice(device), HoldingHand.RIGHT, ScreenGround.DEVICE, staysOn = false, Lettering.AS_DEVICE, volumeKey = false)

        /** How the person is spoken to until the settings say otherwise. */
        fun ofDevice(device: Configuration): Manner {
            val spanish = device.locales[0].language == "es"
            val language = if (spanish) Language.SPANISH else Language.ENGLISH
            return Manner(language, UnitSystem.AS_READ, PositionLetters.FRONT_FIRST, null)
        }

        const val VOLUME_KEY = "phone#volume-key"
    }
}

/** The size of lettering, beside the device's own. */
enum class Lettering(val times: Float, val label: Int) {
    AS_DEVICE(1f, R.string.text_as_phone),
    LARGER(1.25f, R.string.text_larger),
    LARGEST(1.5f, R.string.text_largest),
    ;

    companion object {
        const val KEY = "phone#text"
    }
}
