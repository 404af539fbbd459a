# Why a photo was not taken in, and what to do.
photo-unreachable = There is no such file, or this program may not read it. Check its name.
photo-empty = The file is empty. Take the photo again.
photo-too-many-bytes = The file has { $megabytes } MB; at most { $limit } MB are taken. Set the camera to a smaller size.
photo-too-many-pixels = The picture is { $width } × { $height } pixels, too large to open here. Set the camera to a smaller size.
photo-heic = This is a HEIC file. Set the camera to the most compatible format (JPEG) and take the photo again.
photo-other-kind = This is { $kind }, not a photo that can be kept. Give a JPEG, PNG or WebP file.
photo-unusual-form = This { $format } file is of a form that can't be opened. Save it again as a plain JPEG.
photo-not-a-picture = This file is not a picture. Give a JPEG, PNG or WebP file.
photo-damaged = This { $format } file is damaged or cut short. Take the photo again.

# The kinds of file that are recognized and not taken.
kind-avif = an AVIF picture
kind-bmp = a BMP picture
kind-gif = a GIF picture
kind-jpeg-xl = a JPEG XL picture
kind-tiff = a TIFF or raw file
kind-film = a film
kind-pdf = a PDF document

# What went wrong while keeping or showing one.
photo-no-space = No space is left, so the photo was not kept. Free { $megabytes } MB and give it again.
photo-storage-opening = The folder for photos can't be used ({ $cause }). Check the path.
photo-storage-source = The file can't be read ({ $cause }). Copy it again, then give the copy.
photo-storage-not-writable = The book's folder can't be written, so the photo was not kept. Give this program the right to write there, or copy the book.
photo-storage-writing = The photo could not be written ({ $cause }). Nothing was kept. Try again.
photo-storage-reading = The device could not read a photo ({ $cause }). Try again.
photo-storage-sweeping = An old file could not be removed ({ $cause }). Nothing else was touched.
photo-missing = Photo { $photo } is gone from this device. Bring it back from a backup.
photo-changed = Photo { $photo } is not what was kept: its file changed. Bring it back from a backup.
photo-unreadable = Photo { $photo } can't be read. Bring it back from a backup.

# What a check of the book found.
photo-copy-missing = A small copy of photo { $photo } is gone. It is made again when the photo is shown.
photo-copy-changed = A small copy of photo { $photo } changed. It is made again when the photo is shown.
photo-copy-unreadable = A small copy of photo { $photo } can't be read. It is made again when the photo is shown.

# What to do differently.
photo-good = The photo is sharp and light enough.
hint-blurred = Blurred: hold still, let it focus, wipe the lens.
hint-too-dark = Too dark: bring light from the side.
hint-too-bright = Too bright: turn away from the glare, no flash straight ahead.
hint-nothing-stands-out = Nothing stands out: wipe the lens, or step back.
hint-too-small = Few pixels: move closer, or set the camera to a larger size.
