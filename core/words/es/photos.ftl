# Why a photo was not taken in, and what to do.
photo-unreachable = No hay tal archivo, o este programa no puede leerlo. Revise su nombre.
photo-empty = El archivo está vacío. Tome la foto otra vez.
photo-too-many-bytes = El archivo tiene { $megabytes } MB; se aceptan hasta { $limit } MB. Ponga la cámara a un tamaño menor.
photo-too-many-pixels = La imagen tiene { $width } × { $height } píxeles, demasiado grande para abrirla aquí. Ponga la cámara a un tamaño menor.
photo-heic = Este es un archivo HEIC. Ponga la cámara al formato más compatible (JPEG) y tome la foto otra vez.
photo-other-kind = Esto es { $kind }, no una foto que se pueda guardar. Dé un archivo JPEG, PNG o WebP.
photo-unusual-form = Este archivo { $format } tiene una forma que no se puede abrir. Guárdelo otra vez como JPEG simple.
photo-not-a-picture = Este archivo no es una imagen. Dé un archivo JPEG, PNG o WebP.
photo-damaged = Este archivo { $format } está dañado o cortado. Tome la foto otra vez.

# The kinds of file that are recognized and not taken.
kind-avif = una imagen AVIF
kind-bmp = una imagen BMP
kind-gif = una imagen GIF
kind-jpeg-xl = una imagen JPEG XL
kind-tiff = un archivo TIFF o sin procesar
kind-film = un video
kind-pdf = un documento PDF

# What went wrong while keeping or showing one.
photo-no-space = No queda espacio, y la foto no se guardó. Libere { $megabytes } MB y déla otra vez.
photo-storage-opening = No se puede usar la carpeta de fotos ({ $cause }). Revise la ruta.
photo-storage-source = No se puede leer el archivo ({ $cause }). Cópielo otra vez y dé la copia.
photo-storage-not-writable = No se puede escribir en la carpeta del libro, y la foto no se guardó. Dé a este programa permiso de escribir ahí, o copie el libro.
photo-storage-writing = No se pudo escribir la foto ({ $cause }). No se guardó nada. Intente otra vez.
photo-storage-reading = El aparato no pudo leer una foto ({ $cause }). Intente otra vez.
photo-storage-sweeping = No se pudo quitar un archivo viejo ({ $cause }). No se tocó nada más.
photo-missing = La foto { $photo } ya no está en este aparato. Recupérela de un respaldo.
photo-changed = La foto { $photo } no es la que se guardó: su archivo cambió. Recupérela de un respaldo.
photo-unreadable = No se puede leer la foto { $photo }. Recupérela de un respaldo.

# What a check of the book found.
photo-copy-missing = Falta una copia chica de la foto { $photo }. Se hace de nuevo al mostrar la foto.
photo-copy-changed = Una copia chica de la foto { $photo } cambió. Se hace de nuevo al mostrar la foto.
photo-copy-unreadable = No se puede leer una copia chica de la foto { $photo }. Se hace de nuevo al mostrar la foto.

# What to do differently.
photo-good = La foto está nítida y con luz suficiente.
hint-blurred = Borrosa: no se mueva, deje enfocar, limpie el lente.
hint-too-dark = Muy oscura: ponga luz de lado.
hint-too-bright = Muy clara: evite el reflejo, sin flash de frente.
hint-nothing-stands-out = Nada resalta: limpie el lente, o aléjese.
hint-too-small = Pocos píxeles: acérquese, o ponga la cámara a un tamaño mayor.
