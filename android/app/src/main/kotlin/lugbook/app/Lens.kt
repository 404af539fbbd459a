package lugbook.app

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.ImageFormat
import android.graphics.SurfaceTexture
import android.hardware.camera2.CameraAccessException
import android.hardware.camera2.CameraCaptureSession
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraDevice
import android.hardware.camera2.CameraManager
import android.hardware.camera2.CaptureRequest
import android.media.ImageReader
import android.os.Handler
import android.os.HandlerThread
import android.util.Size
import android.view.Surface
import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import kotlin.math.abs

/**
 * The camera at the back of the phone, by camera2: a preview on a surface, and photos into files.
 *
 * Everything is told on the main thread.
 *
 * @property trouble told when the camera can't be had, or was taken away
 */
class Lens(context: Context, private val main: Handler, private val trouble: () -> Unit) {
    private val cameras = context.getSystemService(CameraManager::class.java)
    private val thread = HandlerThread("lens").apply { start() }
    private val apart = Handler(thread.looper)
    private var device: CameraDevice? = null
    private var session: CameraCaptureSession? = null
    private var reader: ImageReader? = null
    private var shown: Surface? = null

    /** Which camera it is; none where the phone has none. */
    private val id: String? by lazy {
        try {
            cameras.cameraIdList.firstOrNull { facing(it) == CameraCharacteristics.LENS_FACING_BACK } ?: cameras.cameraIdList.firstOrNull()
        } catch (_: CameraAccessException) {
            null
        }
    }

    private fun facing(id: String) = cameras.getCameraCharacteristics(id).get(CameraCharacteristics.LENS_FACING)

    private fun <T> of(key: CameraCharacteristics.Key<T>): T? = id?.let { cameras.getCameraCharacteristics(it).get(key) }

    /** Whether it has a light that stays on. */
    val hasLight: Boolean get() = of(CameraCharacteristics.FLASH_INFO_AVAILABLE) == true

    /** The light stays on. */
    var light = false
        set(value) {
            field = value
            preview()
        }

    /** How far the picture is turned against an upright phone, degrees. */
    val turned: Int get() = of(CameraCharacteristics.SENSOR_ORIENTATION) ?: 0

    /** The photo's size: the largest that is read at its full size. */
    val size: Size by lazy {
        val sizes = of(CameraCharacteristics.SCALER_STREAM_CONFIGURATION_MAP)?.getOutputSizes(ImageFormat.JPEG).orEmpty().toList()
        sizes.filter { maxOf(it.width, it.height) <= LONGEST }.maxByOrNull { it.width.toLong() * it.height }
            ?: sizes.minByOrNull { it.width.toLong() * it.height } ?: Size(LONGEST, LONGEST * 3 / 4)
    }

    /** The preview's size: of the photo's form, no larger than a screen. */
    val previewSize: Size by lazy {
        val form = size.width.toDouble() / size.height
        val sizes = of(CameraCharacteristics.SCALER_STREAM_CONFIGURATION_MAP)?.getOutputSizes(SurfaceTexture::class.java).orEmpty().toList()
        sizes.filter { it.width <= PREVIEW && abs(it.width.toDouble() / it.height - form) < SAME_FORM }.maxByOrNull { it.width } ?: Size(1280, 960)
    }

    /** Opens it and shows what it sees. The right to use it was given. */
    @SuppressLint("MissingPermission")
    fun open(surface: Surface) {
        shown = surface
        val id = id ?: return fail()
        val photos = ImageReader.newInstance(size.width, size.height, ImageFormat.JPEG, 2)
        reader = photos
        try {
            cameras.openCamera(id, object : CameraDevice.StateCallback() {
                override fun onOpened(camera: CameraDevice) {
                    device = camera
                    begin(camera, surface, photos)
                }

                override fun onDisconnected(camera: CameraDevice) = close().also { fail() }

                override fun onError(camera: CameraDevice, error: Int) = close().also { fail() }
            }, apart)
        } catch (_: CameraAccessException) {
            fail()
        } catch (_: SecurityException) {
            fail()
        } catch (_: IllegalArgumentException) {
            fail()
        }
    }

    @Suppress("DEPRECATION")
    private fun begin(camera: CameraDevice, surface: Surface, photos: ImageReader) {
        try {
            camera.createCaptureSession(listOf(surface, photos.surface), object : CameraCaptureSession.StateCallback() {
                override fun onConfigured(made: CameraCaptureSession) {
                    session = made
                    preview()
                }

                override fun onConfigureFailed(made: CameraCaptureSession) = fail()
            }, apart)
        } catch (_: CameraAccessException) {
            fail()
        } catch (_: IllegalStateException) {
            fail()
        }
    }

    private fun preview() {
        val (camera, session, surface) = Triple(device ?: return, session ?: return, shown ?: return)
        asking { session.setRepeatingRequest(asked(camera, CameraDevice.TEMPLATE_PREVIEW, surface).build(), null, apart) }
    }

    private fun asked(camera: CameraDevice, template: Int, surface: Surface): CaptureRequest.Builder =
        camera.createCaptureRequest(template).apply {
            addTarget(surface)
            set(CaptureRequest.CONTROL_AF_MODE, CaptureRequest.CONTROL_AF_MODE_CONTINUOUS_PICTURE)
            set(CaptureRequest.CONTROL_AE_MODE, CaptureRequest.CONTROL_AE_MODE_ON)
            set(CaptureRequest.FLASH_MODE, if (light) CaptureRequest.FLASH_MODE_TORCH else CaptureRequest.FLASH_MODE_OFF)
        }

    /** Takes a photo into a file. It is whole and on the disk when it is told; told false where it is not. */
    fun take(into: File, rotation: Int, taken: (Boolean) -> Unit) {
        val camera = device
        val session = session
        val photos = reader
        if (camera == null || session == null || photos == null) return taken(false)
        photos.setOnImageAvailableListener({ from ->
            val whole = from.acquireLatestImage()?.use { image ->
                val plane = image.planes[0].buffer
                write(into, ByteArray(plane.remaining()).also(plane::get))
            } ?: false
            main.post { taken(whole) }
        }, apart)
        asking {
            val request = asked(camera, CameraDevice.TEMPLATE_STILL_CAPTURE, photos.surface)
            request.set(CaptureRequest.JPEG_ORIENTATION, (turned - rotation + FULL_TURN) % FULL_TURN)
            request.set(CaptureRequest.JPEG_QUALITY, QUALITY)
            session.capture(request.build(), null, apart)
        }
    }

    private fun asking(ask: () -> Unit) {
        try {
            ask()
        } catch (_: CameraAccessException) {
            fail()
        } catch (_: IllegalStateException) {
            fail()
        }
    }

    private fun fail() {
        main.post(trouble)
    }

    /** Lets go of it, so that others can have it. */
    fun close() {
        session?.close()
        session = null
        device?.close()
        device = null
        reader?.close()
        reader = null
    }

    /** For good. */
    fun end() {
        close()
        thread.quitSafely()
    }

    companion object {
        /** What is read at its full size: the longer side of twelve megapixels. */
        private const val LONGEST = 4096
        private const val PREVIEW = 1920
        private const val SAME_FORM = 0.02
        private const val FULL_TURN = 360
        private const val QUALITY: Byte = 95

        /** Writes a photo whole or not at all. */
        fun write(into: File, bytes: ByteArray): Boolean = try {
            val half = File(into.path + ".half")
            FileOutputStream(half).use { out ->
                out.write(bytes)
                out.fd.sync()
            }
            half.renameTo(into)
        } catch (_: IOException) {
            false
        }
    }
}
