package lugbook.app

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Context
import android.content.Intent
import android.graphics.Rect
import android.os.Build
import android.os.Bundle
import android.view.HapticFeedbackConstants
import android.view.KeyEvent
import android.view.View
import android.view.WindowManager
import android.view.inputmethod.InputMethodManager
import android.widget.EditText
import android.widget.ProgressBar
import android.window.OnBackInvokedCallback
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.Job
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext
import lugbook.core.ActionWeight
import lugbook.core.Engine
import lugbook.core.FieldKind
import lugbook.core.HoldingHand
import lugbook.core.Refusal

/** The one window: it shows a page of the book, and hands back what is tapped on it. */
open class Main : Activity() {
    private val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)
    private val app get() = application as App
    private val kept get() = app.kept

    private lateinit var pen: Pen
    private lateinit var stage: Stage

    /** How it was shown when this window was made. */
    private var shownAs: List<Any> = emptyList()
    private var sheet: Sheet? = null

    /** What was drawn last. */
    private var drawn: Page? = null
    private var loading: Job? = null

    /** The window was not there before: the system may have ended the app while the camera was open. */
    private var fresh = false

    /** Pages that were asked for, and the last of them that was drawn. */
    private var asked = 0
    private var answered = 0

    /** What is shown is what was asked for, and nothing goes on. */
    val rests: Boolean get() = drawn == page && answered == asked && app.work == null && seen() == shownAs
    private val secrets = HashMap<String, String>()
    private var chief: View? = null
    private var backWanted: OnBackInvokedCallback? = null

    /** The page in front. */
    val page: Page get() = kept.pages.lastOrNull() ?: Page.BAY

    override fun attachBaseContext(base: Context) {
        super.attachBaseContext(base)
        val look = (base.applicationContext as? App)?.look ?: return
        applyOverrideConfiguration(look.over(base.resources.configuration))
    }

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        shownAs = seen()
        pen = Pen(this)
        stage = Stage(pen, app.look?.hand ?: HoldingHand.RIGHT, ::root)
        setContentView(stage.root)
        stage.places(null)
        app.work?.told = ::worked
        fresh = state == null
        load()
        if (state == null) shortcut()
    }

    override fun onStart() {
        super.onStart()
        if (drawn != null) load()
    }

    override fun onStop() {
        super.onStop()
        // The screen only turns: nothing is let go of.
        if (isChangingConfigurations) return
        app.scope.launch {
            try {
                app.carry()
                app.engine().pause(app.manner)
            } catch (_: Refusal) {
                // Told at the next screen.
            }
        }
    }

    override fun onDestroy() {
        app.work?.told = {}
        scope.cancel()
        super.onDestroy()
    }

    private fun seen(): List<Any> = app.resources.configuration.let { device -> (app.look ?: Look.usual(device)).seen(device) }

    // Going from page to page.

    private fun hush() {
        app.said = emptyList()
        app.refused = false
    }

    /** Goes on to a page. */
    private fun go(to: Page) {
        Beside.of(this, to)?.let { return startActivity(it) }
        hush()
        if (to.place == Place.BAY && to.of.isEmpty() || to == Page(Place.BOOK)) kept.pages = listOf(to) else kept.pages = kept.pages + to
        load()
    }

    /** Goes to one of the five places. */
    private fun root(place: Place) {
        hush()
        kept.pages = listOf(Page(place))
        load()
    }

    private val canGoBack get() = stage.typing || kept.pages.size > 1 || page.place != Place.BAY && page.place != Place.FIRST_RUN

    /** Back from the page, whatever is being typed. */
    private fun leave() {
        stage.keypad(null)
        back()
    }

    private fun back() {
        if (stage.typing) return putAway()
        hush()
        kept.pages = if (kept.pages.size > 1) kept.pages.dropLast(1) else listOf(Page.BAY)
        load()
    }

    @Deprecated("Deprecated in Java")
    override fun onBackPressed() {
        @Suppress("DEPRECATION")
        if (canGoBack) back() else super.onBackPressed()
    }

    /** Tells the system whether back stays inside, so that it can show where back leads. */
    private fun tellBack() {
        if (Build.VERSION.SDK_INT < 33) return
        val wanted = backWanted
        if (canGoBack && wanted == null) {
            backWanted = OnBackInvokedCallback { back() }.also { onBackInvokedDispatcher.registerOnBackInvokedCallback(0, it) }
        } else if (!canGoBack && wanted != null) {
            onBackInvokedDispatcher.unregisterOnBackInvokedCallback(wanted)
            backWanted = null
        }
    }

    override fun dispatchKeyEvent(event: KeyEvent): Boolean {
        if (event.keyCode == KeyEvent.KEYCODE_VOLUME_DOWN && app.look?.volumeKey == true) {
            if (event.action == KeyEvent.ACTION_DOWN && event.repeatCount == 0) chief?.performClick()
            return true
        }
        return super.dispatchKeyEvent(event)
    }

    // Showing a page.

    /** Asks for the page in front, and draws it; what only the shell sets is taken over first where it was changed. */
    private fun load(lookAgain: Boolean = false) {
        loading?.cancel()
        asked += 1
        val number = asked
        val begun = scope.launch {
            try {
                val engine = app.ready()
                if (lookAgain) app.lookAgain(engine)
                if (fresh) recover()
                fresh = false
                if (seen() != shownAs) {
                    recreate()
                    return@launch
                }
                if (kept.pages.isEmpty()) kept.pages = listOf(firstPage())
                val wanted = page
                // What comes over is taken apart off the main thread.
                val sheet = sheets(engine).of(wanted)
                if (wanted == page) draw(wanted, sheet)
            } catch (refusal: Refusal) {
                val again = Piece.Go(getString(R.string.try_again), page).takeIf { refusal !is Refusal.MendInput && refusal !is Refusal.HeldByGate }
                draw(page, Sheet(getString(R.string.app_name), page.key, listOfNotNull(Piece.Told(sentence(refusal)), again)))
            }
            answered = number
        }
        // It may have ended already, and asked for another page.
        if (asked == number) loading = begun
    }

    private fun sheets(engine: Engine) = Sheets(resources, engine, app.manner, kept[Sheets.SEARCH].orEmpty())

    private suspend fun firstPage(): Page {
        val engine = app.engine()
        return when {
            !engine.firstRun(app.manner).over -> Page(Place.FIRST_RUN)
            engine.bay(manner = app.manner).job != null -> Page.BAY
            else -> Page(Place.BOOK)
        }
    }

    private fun sentence(refusal: Refusal): String = refusal.told(this)

    private fun draw(page: Page, sheet: Sheet) {
        val look = app.look ?: return
        val before = this.sheet
        val sameKey = before?.key == sheet.key && drawn == page
        val scrolled = stage.scroll.scrollY
        this.sheet = sheet
        chief = null
        tellBack()
        keepOn(look.staysOn && sheet.inWork)
        stage.places(kept.pages.first().place)
        val form = if (page.place == Place.FORM) sheet.offers.firstOrNull { page.of == it.name() } else null
        if (page.place == Place.FORM && form == null) {
            // What it asked for is done, or is no longer offered.
            kept.pages = kept.pages.dropLast(1)
            load()
            return
        }
        val leads = kept.pages.size > 1 || page.place !in Stage.PLACES.map { it.first } && page.place != Place.FIRST_RUN
        stage.heading(form?.action?.label ?: if (page.place == Place.MORE) getString(R.string.more) else sheet.title, if (leads) ::leave else null)
        val search = stage.content.getChildAt(0)?.takeIf { sameKey && it.tag == Sheets.SEARCH && form == null && page.place != Place.MORE }
        if (search == null) stage.content.removeAllViews() else stage.content.removeViews(1, stage.content.childCount - 1)
        stage.foot.removeAllViews()
        stage.pair(null, null)
        stage.keypad(null)
        val fields = when {
            form != null -> onForm(form)
            page.place == Place.MORE -> onMore(sheet)
            else -> onPage(page, sheet, look, search)
        }
        said()
        // A caution is read before the keys cover it.
        focus(fields, eager = form != null || sheet.pieces.none { it is Piece.Stated && it.warns && !it.quiet })
        stage.scroll.scrollTo(0, if (sameKey) scrolled else 0)
        drawn = page
    }

    private fun onPage(page: Page, sheet: Sheet, look: Look, search: View?): Fields? {
        val mains = sheet.offers(ActionWeight.MAIN)
        val first = mains.firstOrNull()
        val inline = first?.takeIf { sheet.onward == null && it.action.confirm == null && it.action.fields.isNotEmpty() && mains.count { other -> other.action.code == it.action.code } == 1 && page.place != Place.VISITS }
        val tapNut = first?.takeIf { it.action.code.startsWith("nut") }
        val pieces = Pieces(pen, look, kept, ::go, ::out, tapNut?.let { nut -> { _ -> tap(nut) } }, { load(lookAgain = true) })
        sheet.pieces.forEach { if (!(it is Piece.Search && search != null)) stage.content.put(pieces.draw(it), above(it)) }
        val fields = inline?.let { offered -> fields(offered).also { stage.content.put(it.of(offered.action.fields), 8) } }
        sheet.after.forEach { stage.content.put(pieces.draw(it), above(it) + 6) }
        val chiefs = when {
            sheet.onward != null -> emptyList()
            inline != null -> listOf(inline)
            mains.size <= MOST_CHIEFS && page.place != Place.VISITS -> mains
            else -> emptyList()
        }
        val listed = (if (sheet.onward != null) sheet.offers(ActionWeight.MAIN).filter { page.place != Place.BAY } else mains - chiefs.toSet()) + sheet.offers(ActionWeight.BESIDE)
        listed.forEach { stage.content.put(button(it), 10) }
        val asides = sheet.offers(ActionWeight.ASIDE, ActionWeight.GRAVE)
        val folded = page.place == Place.BAY && sheet.inWork || asides.size > MOST_ASIDES
        val held = asides.filter { it.action.weight == ActionWeight.GRAVE && it.action.at != null || it.action.code == "open-gate" }
        (if (folded) held else asides).forEach { stage.content.put(button(it), 10) }
        val undo = sheet.undo?.let { undo -> pen.button(undo.action.label, undo.action.spoken) { tap(undo) } }
        val more = if (folded) pen.button(getString(R.string.more), getString(R.string.more)) { go(Page(Place.MORE, base = page)) } else null
        stage.pair(more, undo)
        sheet.onward?.let { onward -> main(pen.button(onward.label, onward.label, chief = true) { go(onward.to) }) }
        chiefs.forEach { offered -> main(chief(offered)) }
        return fields
    }

    private fun above(piece: Piece): Int = when (piece) {
        is Piece.Heading, is Piece.Step -> 18
        is Piece.Depth -> 2
        else -> 8
    }

    private fun onForm(form: Offered): Fields {
        form.action.confirm?.let { confirm -> stage.content.put(Pieces(pen, app.look!!, kept, ::go, ::out, null) { load() }.draw(Piece.Stated("asked", "", confirm, confirm)), 8) }
        if (!app.refused) app.said.forEach { stage.content.put(pen.panel(pen.ink, 2).apply { put(pen.text(it)) }, 8) }
        val fields = fields(form)
        stage.content.put(fields.of(form.action.fields), 8)
        main(chief(form))
        return fields
    }

    /** Everything that can be done beside the page, and the ways that lead from a job. */
    private fun onMore(sheet: Sheet): Fields? {
        if (sheet.inWork) Sheets.ways(resources, sheet.inOrder).forEach { way -> stage.content.put(pen.button(way.label, way.label) { go(way.to) }, 8) }
        sheet.offers(ActionWeight.ASIDE, ActionWeight.GRAVE).forEach { stage.content.put(button(it), 8) }
        return null
    }

    private fun fields(offered: Offered) = Fields(pen, kept, Filled(kept, secrets, offered.key)) { field, way -> reach(offered, field, way) }

    private fun main(view: View) {
        if (chief == null) chief = view
        view.tag = CHIEF
        stage.foot.put(view, 6)
    }

    /** The next thing to do: to take a photo where one is still wanted. */
    private fun chief(offered: Offered): View {
        val photo = offered.action.fields.singleOrNull { it.kind == FieldKind.PHOTO && it.required && kept["${offered.key}#${it.code}"] == null }
            ?: return button(offered, chief = true)
        val label = getString(R.string.take_photo)
        return pen.button(label, "$label. ${offered.action.spoken}", chief = true) { reach(offered, photo, Fields.Reach.CAMERA) }
    }

    private fun button(offered: Offered, chief: Boolean = false): View {
        // What leads to the settings is called so; only the settings themselves are kept.
        val leads = !chief && offered.action.code == "settings"
        val label = if (leads) getString(R.string.settings) else offered.action.label
        return pen.button(label, if (leads) label else offered.action.spoken, chief) { tap(offered) }
    }

    private fun keepOn(on: Boolean) {
        if (on) window.addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON) else window.clearFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
    }

    /** Puts the focus where it was, or into the first number; the keypad comes with it. */
    private fun focus(fields: Fields?, eager: Boolean) {
        fields ?: return
        if (fields.boxes.isNotEmpty()) {
            val keypad = Keypad(pen, app.look!!.decimal)
            keypad.boxes = fields.boxes
            keypad.onLast = ::putAway
            fields.boxes.forEach { box ->
                box.onFocus = {
                    kept[FOCUS] = it.key
                    keypad.into(it)
                    stage.keypad(keypad)
                    tellBack()
                    // What was read last stands below it.
                    (it.parent as View).let { all -> all.post { all.requestRectangleOnScreen(Rect(0, 0, all.width, all.height + pen.dp(8))) } }
                    (getSystemService(INPUT_METHOD_SERVICE) as InputMethodManager).hideSoftInputFromWindow(it.windowToken, 0)
                }
            }
        }
        fields.typed.forEach { (key, view) ->
            if (view is EditText) {
                view.setOnFocusChangeListener { _, focused ->
                    if (focused) {
                        kept[FOCUS] = key
                        stage.keypad(null)
                    }
                }
            }
        }
        val last = kept[FOCUS]?.let { fields.typed[it] }
        val first = (fields.typed.values.firstOrNull() as? NumberBox).takeIf { eager }
        (last ?: first?.let { fields.boxes.firstOrNull { box -> box.text.isEmpty() } ?: first })?.requestFocus()
        (last as? EditText)?.let { it.setSelection(it.text.length) }
    }

    /** Takes the keypad away: the five places come back. */
    private fun putAway() {
        currentFocus?.clearFocus()
        stage.keypad(null)
        tellBack()
    }

    // Tapping.

    private fun Offered.name(): List<String> = listOf(action.code, action.at.orEmpty(), key.substringAfterLast('.'))

    private fun tap(offered: Offered) {
        if (app.work?.over == false) return
        val here = page
        val inPlace = here.place == Place.FORM || offered.action.fields.isEmpty() && offered.action.confirm == null
        if (!inPlace && !isInline(offered)) {
            go(Page(Place.FORM, offered.name(), if (here.place == Place.MORE) here.base else here))
            return
        }
        val work = Work(offered, here, app.scope)
        app.work = work
        val entered = Filled(kept, secrets, offered.key).entered(offered.action.fields)
        scope.launch {
            try {
                work.begin(app.engine(), entered, app.manner)
                work.told = ::worked
            } catch (refusal: Refusal) {
                refused(refusal, offered)
            }
        }
    }

    private fun isInline(offered: Offered): Boolean = sheet?.let { sheet ->
        val mains = sheet.offers(ActionWeight.MAIN)
        sheet.onward == null && offered.action.confirm == null && mains.firstOrNull()?.key == offered.key &&
            mains.count { it.action.code == offered.action.code } == 1 && page.place != Place.VISITS
    } ?: false

    /** What a tap comes to. */
    private fun worked(work: Work) {
        if (!work.over) {
            if (work.progress != null) said()
            return
        }
        if (app.work !== work) return
        val refusal = work.refusal
        if (refusal != null) {
            app.work = null
            refused(refusal, work.offered)
        } else {
            scope.launch { done(work) }
        }
    }

    private suspend fun done(work: Work) {
        val changed = work.changed ?: return
        val (code, here) = work.offered.action.code to work.page
        stage.root.performHapticFeedback(if (Build.VERSION.SDK_INT >= 30) HapticFeedbackConstants.CONFIRM else HapticFeedbackConstants.VIRTUAL_KEY)
        app.said = changed.said
        app.refused = false
        val engine = app.engine()
        if (code == "settings") app.lookAgain(engine)
        val base = if (here.place == Place.FORM) here.base else here
        // A calculator goes on with what was typed.
        if (base?.place != Place.BENCH) Filled(kept, secrets, work.offered.key).forget()
        changed.again?.let { again ->
            val job = engine.bay(manner = app.manner).job?.toString()
            val key = Sheets.bayKey(job, again.step, again.at)
            val step = if (again.step == null) Page.BAY else Page(Place.BAY, listOf(again.step!!, again.at.orEmpty()))
            kept.pages = listOf(step)
            val filled = Filled(kept, secrets, "$key/${again.code}@${again.at.orEmpty()}.0")
            val sheet = sheets(engine).of(step)
            val fields = sheet.offers.firstOrNull { it.key == filled.key }?.action?.fields.orEmpty()
            again.filled.forEach { said -> fields.firstOrNull { it.code == said.code }?.let { filled.again(it, said.value) } }
            app.work = null
            return load()
        }
        kept.pages = when {
            code == "begin" -> listOf(Page(Place.BOOK))
            base?.place == Place.VISITS || code.startsWith("resume-job") || base?.place == Place.PLAN -> listOf(Page.BAY)
            base?.place == Place.BAY && code != "sign" -> listOf(Page.BAY)
            code == "sign" -> listOf(Page.BAY, Page(Place.CARD))
            here.place == Place.FORM && base?.place != Place.BENCH -> kept.pages.dropLast(1)
            else -> kept.pages
        }
        app.work = null
        load()
    }

    private fun refused(refusal: Refusal, offered: Offered) {
        stage.root.performHapticFeedback(if (Build.VERSION.SDK_INT >= 30) HapticFeedbackConstants.REJECT else HapticFeedbackConstants.LONG_PRESS)
        app.said = listOf(sentence(refusal))
        val at = (refusal as? Refusal.MendInput)?.at
        offered.action.fields.firstOrNull { it.code == at }?.let { kept[FOCUS] = "${offered.key}#${it.code}" + if (it.boxes > 0) "/0" else "" }
        app.refused = true
        load()
    }

    /** What was said, refused, or goes on, above the keypad; it stays until the next tap. */
    private fun said() {
        stage.bar.removeAllViews()
        val work = app.work
        if (work?.progress != null && !work.over) {
            val bar = ProgressBar(this, null, android.R.attr.progressBarStyleHorizontal).apply {
                isIndeterminate = work.progress!!.of == 0uL
                max = work.progress!!.of.toInt()
                progress = work.progress!!.done.toInt()
                contentDescription = work.offered.action.spoken
            }
            stage.bar.put(bar, 4)
            stage.bar.put(pen.button(getString(R.string.stop), getString(R.string.stop)) { work.stop() }, 4)
            return
        }
        val said = app.said
        if (said.isEmpty() || page.place == Place.FORM && !app.refused) return
        val row = pen.row().apply {
            background = pen.box(pen.sheet, pen.ink, if (app.refused) 3 else 1, 0)
            setPadding(pen.dp(12), pen.dp(4), pen.dp(4), pen.dp(4))
        }
        val text = pen.text(said.joinToString("\n"), Pen.BODY, bold = app.refused).apply {
            gravity = android.view.Gravity.CENTER_VERTICAL
            val shape = StateShape(pen, if (app.refused) "unsafe" else "done")
            shape.setBounds(0, 0, shape.intrinsicWidth, shape.intrinsicHeight)
            setCompoundDrawablesRelative(shape, null, null, null)
            compoundDrawablePadding = pen.dp(12)
            accessibilityLiveRegion = if (app.refused) View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE else View.ACCESSIBILITY_LIVE_REGION_POLITE
        }
        row.put(text, weight = 1f)
        row.put(pen.button(getString(R.string.close), getString(R.string.close)) {
            hush()
            said()
        }, 8)
        stage.bar.put(row)
    }

    // What only another part of the phone can do.

    private fun reach(offered: Offered, field: lugbook.core.EntryField, way: Fields.Reach) {
        if (way == Fields.Reach.WAITING) {
            kept["${offered.key}#${field.code}"] = kept[PLATE]
            kept[PLATE] = null
            return load()
        }
        kept[WAITS] = "${way.name}\n${offered.key}#${field.code}"
        scope.launch {
            // That the camera opens is in the book before it opens.
            val pending = sheet?.offers?.firstOrNull { it.action.code == "open-camera" && it.action.at == offered.action.at }
            try {
                if (way == Fields.Reach.CAMERA && pending != null) app.engine().act(pending.action.token, emptyList(), app.manner)
            } catch (_: Refusal) {
                // The photo itself will be refused, and told.
            }
            val ringed = pending?.action?.at != null && sheet?.offers?.none { it.action.code == "read-photo" } ?: false
            val intent = app.ways.open(way)?.putExtra(Camera.RINGED, ringed)
            try {
                if (intent != null) {
                    @Suppress("DEPRECATION")
                    startActivityForResult(intent, REACHED)
                } else {
                    tell(getString(R.string.no_such_part))
                }
            } catch (_: ActivityNotFoundException) {
                tell(getString(R.string.no_such_part))
            }
        }
    }

    private fun tell(sentence: String) {
        app.said = listOf(sentence)
        app.refused = true
        said()
    }

    @Deprecated("Deprecated in Java")
    override fun onActivityResult(request: Int, result: Int, came: Intent?) {
        if (request != REACHED) return
        scope.launch {
            try {
                // After the camera ended the process, what was kept is read first.
                app.ready()
            } catch (_: Refusal) {
                return@launch load()
            }
            val (way, key) = kept[WAITS]?.split('\n')?.takeIf { it.size == 2 } ?: return@launch
            if (result != RESULT_OK) return@launch
            kept[WAITS] = null
            val path = withContext(Dispatchers.IO) { app.ways.path(Fields.Reach.valueOf(way), came) }
            if (path != null) kept[key] = path else tell(getString(R.string.nothing_came))
            // It belongs to the photo that came with it, which has no name yet; and no earlier one to this photo.
            if (way != Fields.Reach.FOLDER.name && way != Fields.Reach.FILE.name) kept[RingField.key(key)] = came?.getStringExtra(Camera.RING)?.let { "\n$it" }
            if (key == PLATE && path != null) {
                kept.pages = listOf(Page(Place.BOOK))
                app.said = listOf(getString(R.string.camera_waits))
            }
            load()
        }
    }

    /** The launcher's shortcut: a visit begins with a photo of the plate, which waits for the job that it belongs to. */
    @Suppress("DEPRECATION")
    private fun shortcut() {
        if (intent?.action != VISIT) return
        intent.action = null
        kept[WAITS] = "${Fields.Reach.CAMERA.name}\n$PLATE"
        app.ways.open(Fields.Reach.CAMERA)?.let { startActivityForResult(it, REACHED) }
    }

    override fun onNewIntent(intent: Intent) {
        super.onNewIntent(intent)
        setIntent(intent)
        shortcut()
    }

    /** What the camera took when the system ended this app: it comes back to where it was asked for. */
    @Suppress("DEPRECATION")
    private suspend fun recover() {
        val (way, key) = kept[WAITS]?.split('\n')?.takeIf { it.size == 2 } ?: return
        if (way != Fields.Reach.CAMERA.name) return
        val (found, unseen) = withContext(Dispatchers.IO) { app.ways.found() to app.ways.unseen() }
        if (unseen) app.ways.open(Fields.Reach.CAMERA)?.let { startActivityForResult(it, REACHED) }
        if (found == null) return
        kept[WAITS] = null
        kept[key] = found
    }

    private fun out(out: Piece.Out) {
        scope.launch {
            try {
                val folder = withContext(Dispatchers.IO) { app.ways.outgoing() }
                val file = app.engine().writeOut(out.what, out.of, folder.path, app.manner)
                startActivity(app.ways.share(java.io.File(file)))
            } catch (refusal: Refusal) {
                tell(sentence(refusal))
            } catch (_: ActivityNotFoundException) {
                tell(getString(R.string.no_such_part))
            }
        }
    }

    companion object {
        /** The tag of what is to be done next. */
        const val CHIEF = "chief"

        private const val FOCUS = "phone#focus"
        private const val WAITS = "phone#waits"

        /** The photo of a plate that waits for its job. */
        const val PLATE = "phone#plate"

        /** What the launcher's shortcut asks. */
        const val VISIT = "lugbook.app.VISIT"
        private const val REACHED = 1

        /** At most so many equal answers stand at the bottom. */
        private const val MOST_CHIEFS = 3

        /** More than so many taps aside stand on a page of their own. */
        private const val MOST_ASIDES = 4
    }
}
