package lugbook.app

import android.Manifest
import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Context
import android.content.Intent
import android.content.pm.PackageManager
import android.content.res.Configuration
import android.graphics.Bitmap
import android.graphics.ImageDecoder
import android.net.Uri
import android.os.Build
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.provider.MediaStore
import android.provider.Settings
import android.view.HapticFeedbackConstants
import android.view.KeyEvent
import android.view.SurfaceHolder
import android.view.SurfaceView
import android.view.View
import android.view.ViewGroup
import android.view.WindowInsets
import android.widget.FrameLayout
import android.widget.ImageView
import android.widget.LinearLayout
import android.widget.ScrollView
import java.io.File
import java.io.IOException
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/**
 * Takes one photo: by the camera in this window, by the phone's own camera, or from those that are there. The person
 * sees it and may take it again before it is handed back, by its path.
 */
open class Camera : Activity() {
    /** What the window shows. */
    enum class Shows { NOTHING, LIVE, PHOTO, REFUSED, NONE, FULL }

    private val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)
    private lateinit var pen: Pen
    private lateinit var view: FrameLayout
    private lateinit var foot: LinearLayout
    private var lens: Lens? = null
    private var awaited: Awaited? = null
    private var found = false
    private var ring: Ring? = null
    private val ringed get() = intent.getBooleanExtra(RINGED, false)
    private var chief: View? = null

    /** What it shows now. */
    var shows = Shows.NOTHING
        private set

    override fun attachBaseContext(base: Context) {
        super.attachBaseContext(base)
        val look = (base.applicationContext as? App)?.look ?: return
        applyOverrideConfiguration(look.over(base.resources.configuration))
    }

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        pen = Pen(this)
        view = FrameLayout(this)
        foot = pen.column().apply { setPadding(pen.dp(12), pen.dp(6), pen.dp(12), pen.dp(6)) }
        val wide = resources.configuration.orientation == Configuration.ORIENTATION_LANDSCAPE
        val root = LinearLayout(this).apply {
            orientation = if (wide) LinearLayout.HORIZONTAL else LinearLayout.VERTICAL
            setBackgroundColor(pen.ground)
            addView(view, if (wide) LinearLayout.LayoutParams(0, MATCH, 1f) else LinearLayout.LayoutParams(MATCH, 0, 1f))
            val taps = ScrollView(context).apply { addView(foot) }
            addView(taps, if (wide) LinearLayout.LayoutParams(pen.dp(320), MATCH) else LinearLayout.LayoutParams(MATCH, WRAP))
            setOnApplyWindowInsetsListener { view, insets ->
                if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
                    val bars = insets.getInsets(WindowInsets.Type.systemBars() or WindowInsets.Type.displayCutout())
                    view.setPadding(bars.left, bars.top, bars.right, bars.bottom)
                } else {
                    @Suppress("DEPRECATION")
                    view.setPadding(insets.systemWindowInsetLeft, insets.systemWindowInsetTop, insets.systemWindowInsetRight, insets.systemWindowInsetBottom)
                }
                insets
            }
        }
        setContentView(root)
        begin()
    }

    override fun onStart() {
        super.onStart()
        // The right may have been given or taken away in the phone's settings.
        if (shows in setOf(Shows.LIVE, Shows.REFUSED, Shows.NONE)) live()
    }

    override fun onStop() {
        lens?.end()
        lens = null
        super.onStop()
    }

    override fun onDestroy() {
        scope.cancel()
        super.onDestroy()
    }

    /** The photo that an earlier process took is shown first; else one is noted, and only then the camera opens. */
    private fun begin() {
        scope.launch {
            val before = withContext(Dispatchers.IO) { Awaited.found(this@Camera) }
            if (before != null && before.came && !before.kept) {
                awaited = before
                found = true
                return@launch photo()
            }
            try {
                awaited = withContext(Dispatchers.IO) { Awaited.expect(this@Camera) }
                live()
            } catch (_: IOException) {
                plain(Shows.FULL, R.string.camera_full)
            }
        }
    }

    private val allowed get() = checkSelfPermission(Manifest.permission.CAMERA) == PackageManager.PERMISSION_GRANTED

    /** What the camera sees, with a ring that shows where the tire goes. */
    private fun live() {
        if (!allowed) {
            if (shows == Shows.NOTHING) requestPermissions(arrayOf(Manifest.permission.CAMERA), ASKED) else refused()
            if (shows == Shows.NOTHING) shows = Shows.REFUSED
            return
        }
        if (!packageManager.hasSystemFeature(PackageManager.FEATURE_CAMERA_ANY)) return plain(Shows.NONE, R.string.camera_none)
        shows = Shows.LIVE
        lens?.end()
        val lens = Lens(this, Handler(Looper.getMainLooper())) { plain(Shows.NONE, R.string.camera_none) }
        this.lens = lens
        view.removeAllViews()
        val seen = SurfaceView(this).apply { importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO }
        seen.holder.setFixedSize(lens.previewSize.width, lens.previewSize.height)
        seen.holder.addCallback(object : SurfaceHolder.Callback {
            override fun surfaceCreated(holder: SurfaceHolder) = lens.open(holder.surface)

            override fun surfaceChanged(holder: SurfaceHolder, format: Int, width: Int, height: Int) = Unit

            override fun surfaceDestroyed(holder: SurfaceHolder) = lens.close()
        })
        view.addView(seen, FrameLayout.LayoutParams(MATCH, MATCH, android.view.Gravity.CENTER))
        if (ringed) view.addView(Ring(this, pen).apply { guides() }, FrameLayout.LayoutParams(MATCH, MATCH))
        view.addOnLayoutChangeListener { _, left, top, right, bottom, _, _, _, _ -> fit(seen, right - left, bottom - top, lens) }
        foot.removeAllViews()
        if (lens.hasLight) {
            val light = pen.button(getString(R.string.camera_light_on), getString(R.string.camera_light_on)) {}
            light.setOnClickListener {
                lens.light = !lens.light
                light.text = getString(if (lens.light) R.string.camera_light_off else R.string.camera_light_on)
                light.contentDescription = light.text
            }
            foot.put(light, 6)
        }
        others()
        main(R.string.camera_take) { take() }
    }

    /** The preview keeps its form. */
    private fun fit(seen: SurfaceView, width: Int, height: Int, lens: Lens) {
        if (width == 0 || height == 0) return
        val upright = height > width
        val form = lens.previewSize.let { if (upright) it.height.toFloat() / it.width else it.width.toFloat() / it.height }
        val wide = minOf(width, Math.round(height * form))
        val params = seen.layoutParams
        if (params.width != wide) seen.post { seen.layoutParams = FrameLayout.LayoutParams(wide, Math.round(wide / form), android.view.Gravity.CENTER) }
    }

    private fun take() {
        val into = awaited?.file ?: return
        val rotation = windowManager.defaultDisplay.rotation * QUARTER
        lens?.take(into, rotation) { whole -> if (whole) photo() else tell(R.string.camera_lost) }
    }

    /** The photo that was taken, to be seen before it is handed back. */
    private fun photo() {
        shows = Shows.PHOTO
        lens?.end()
        lens = null
        val file = awaited?.file ?: return
        view.removeAllViews()
        if (ringed) {
            val ring = Ring(this, pen)
            this.ring = ring
            view.addView(ring, FrameLayout.LayoutParams(MATCH, MATCH))
            seen(file) { ring.picture = it }
        } else {
            val shown = ImageView(this).apply {
                contentDescription = getString(R.string.photo_shown)
                scaleType = ImageView.ScaleType.FIT_CENTER
            }
            view.addView(shown, FrameLayout.LayoutParams(MATCH, MATCH))
            seen(file, shown::setImageBitmap)
        }
        foot.removeAllViews()
        if (found) foot.put(pen.text(getString(R.string.camera_found)), 6)
        foot.put(pen.button(getString(R.string.camera_again), getString(R.string.camera_again)) { again() }, 6)
        main(R.string.camera_keep) { keep() }
    }

    private fun seen(file: File, show: (Bitmap) -> Unit) {
        scope.launch { withContext(Dispatchers.IO) { decode(file, resources.displayMetrics.heightPixels) }?.let(show) }
    }

    private fun again() {
        found = false
        shows = Shows.NOTHING
        scope.launch {
            withContext(Dispatchers.IO) { Awaited.forget(this@Camera) }
            begin()
        }
    }

    private fun keep() {
        val photo = awaited ?: return
        scope.launch {
            try {
                withContext(Dispatchers.IO) { Awaited.keep(this@Camera, photo) }
            } catch (_: IOException) {
                // The phone is full. The photo is whole, and the note still names it.
            }
            setResult(RESULT_OK, Intent().putExtra(PATH, photo.file.path).putExtra(RING, ring?.value?.takeIf { it.isNotEmpty() }))
            finish()
        }
    }

    /** Without the right to use it, and what can be done all the same. */
    private fun refused() {
        plain(Shows.REFUSED, R.string.camera_refused)
    }

    /** A sentence in the place of a picture, with what else can be done. */
    private fun plain(what: Shows, sentence: Int) {
        shows = what
        lens?.end()
        lens = null
        view.removeAllViews()
        val told = pen.text(getString(sentence), Pen.HEADING).apply {
            setPadding(pen.dp(20), pen.dp(24), pen.dp(20), pen.dp(24))
            accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
        }
        view.addView(ScrollView(this).apply { addView(told) }, FrameLayout.LayoutParams(MATCH, MATCH))
        foot.removeAllViews()
        if (what == Shows.REFUSED) {
            val ask = shouldShowRequestPermissionRationale(Manifest.permission.CAMERA)
            val label = getString(if (ask) R.string.camera_allow else R.string.camera_settings)
            foot.put(pen.button(label, label) { if (ask) requestPermissions(arrayOf(Manifest.permission.CAMERA), ASKED) else settings() }, 6)
        }
        if (what != Shows.FULL) others()
        main(R.string.camera_without) { finish() }
    }

    /** The other ways to a photo. An app that names the camera among its rights can't ask another for a photo without it. */
    private fun others() {
        if (allowed) foot.put(pen.button(getString(R.string.camera_phone), getString(R.string.camera_phone)) { phoneCamera() }, 6)
        foot.put(pen.button(getString(R.string.camera_pick), getString(R.string.camera_pick)) { pick() }, 6)
    }

    private fun main(label: Int, tapped: () -> Unit) {
        chief = foot.put(pen.button(getString(label), getString(label), chief = true, tapped = tapped), 6)
    }

    private fun phoneCamera() {
        val into = Hand.IN.uri(awaited?.file ?: return)
        val intent = Intent(MediaStore.ACTION_IMAGE_CAPTURE).putExtra(MediaStore.EXTRA_OUTPUT, into)
        intent.clipData = ClipData.newRawUri(null, into)
        reach(intent.addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION), CAPTURED)
    }

    private fun pick() = reach(picker(), PICKED)

    private fun settings() =
        reach(Intent(Settings.ACTION_APPLICATION_DETAILS_SETTINGS, Uri.fromParts("package", packageName, null)), NOTHING)

    @Suppress("DEPRECATION")
    private fun reach(intent: Intent, request: Int) {
        try {
            startActivityForResult(intent, request)
        } catch (_: ActivityNotFoundException) {
            tell(R.string.no_such_part)
        } catch (_: SecurityException) {
            tell(R.string.no_such_part)
        }
    }

    @Deprecated("Deprecated in Java")
    override fun onActivityResult(request: Int, result: Int, came: Intent?) {
        scope.launch {
            // The system may have ended this process meanwhile: the note knows the file.
            val into = awaited ?: withContext(Dispatchers.IO) { Awaited.found(this@Camera) } ?: return@launch
            awaited = into
            if (result == RESULT_OK && request == PICKED) came?.data?.let { from -> withContext(Dispatchers.IO) { copy(from, into.file) } }
            if (request == NOTHING) return@launch
            if (result == RESULT_OK && withContext(Dispatchers.IO) { into.came }) photo() else if (result == RESULT_OK) tell(R.string.camera_lost)
        }
    }

    private fun copy(from: Uri, into: File) {
        try {
            contentResolver.openInputStream(from)?.use { Lens.write(into, it.readBytes()) }
        } catch (_: IOException) {
            // Nothing came: told as such.
        } catch (_: SecurityException) {
            // Nothing came: told as such.
        }
    }

    override fun onRequestPermissionsResult(request: Int, rights: Array<out String>, given: IntArray) {
        if (allowed) live() else refused()
    }

    override fun dispatchKeyEvent(event: KeyEvent): Boolean {
        if (event.keyCode != KeyEvent.KEYCODE_VOLUME_DOWN && event.keyCode != KeyEvent.KEYCODE_VOLUME_UP || shows != Shows.LIVE) {
            return super.dispatchKeyEvent(event)
        }
        if (event.action == KeyEvent.ACTION_DOWN && event.repeatCount == 0) chief?.performClick()
        return true
    }

    private fun tell(sentence: Int) {
        chief?.performHapticFeedback(HapticFeedbackConstants.LONG_PRESS)
        val told = foot.findViewWithTag<View>(TOLD)
        told?.let(foot::removeView)
        val text = pen.text(getString(sentence), bold = true).apply {
            tag = TOLD
            accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE
        }
        foot.addView(text, 0)
    }

    companion object {
        /** What is handed back: where the photo lies. */
        const val PATH = "path"

        /** Where the ring was dragged to, where it was. */
        const val RING = "ring"

        /** What is asked: a ring stands over the photo. */
        const val RINGED = "ringed"
        private const val ASKED = 1
        private const val CAPTURED = 2
        private const val PICKED = 3
        private const val NOTHING = 4
        private const val TOLD = "told"
        private const val QUARTER = 90
        private const val MATCH = ViewGroup.LayoutParams.MATCH_PARENT
        private const val WRAP = ViewGroup.LayoutParams.WRAP_CONTENT

        /** What picks a photo without any right to see the others. */
        fun picker(): Intent =
            if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) Intent(MediaStore.ACTION_PICK_IMAGES)
            else Intent(Intent.ACTION_OPEN_DOCUMENT).setType("image/*").addCategory(Intent.CATEGORY_OPENABLE)

        /** A photo, upright and small enough for a screen; none where it is no picture. */
        fun decode(file: File, longest: Int): Bitmap? = try {
            ImageDecoder.decodeBitmap(ImageDecoder.createSource(file)) { decoder, info, _ ->
                val most = maxOf(info.size.width, info.size.height)
                decoder.setTargetSampleSize(maxOf(1, most / longest))
            }
        } catch (_: IOException) {
            null
        }
    }
}
