package lugbook.app

import android.content.Context
import lugbook.core.Refusal

/** What a refusal says to the person. */
fun Refusal.told(context: Context): String = when (this) {
    is Refusal.MendInput -> sentence
    is Refusal.HeldByGate -> sentence
    is Refusal.FreeSpace -> sentence
    is Refusal.TryAgain -> sentence
    is Refusal.Restore -> sentence
    is Refusal.Report -> sentence
    is Refusal.Closed -> context.getString(R.string.closed)
}
