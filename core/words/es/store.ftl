# What went wrong with a book: what is safe, what is missing, what to do now.
book-not-a-folder = “{ $path }” no es una carpeta. Nombre una carpeta para el libro.
book-unreachable = No se puede llegar a “{ $path }”. Revise la ruta.
book-not-a-book = “{ $path }” no es un libro de Lugbook y quedó como estaba. Nombre otra carpeta.
book-newer = Este libro lo escribió un programa más nuevo (versión { $version }; este conoce { $known }). Quedó como estaba. Actualice este programa.
book-newer-entry = El libro tiene una anotación que solo puede leer un programa más nuevo. No se cambió nada. Actualice este programa.
book-not-writable = No se puede escribir en “{ $path }”, y no se agregó nada. Dé a este programa permiso de escribir ahí, o copie el libro.
book-same-id = El id { $id } ya nombra otra anotación. No se agregó nada. Use un id nuevo.
book-unwritable = La anotación { $id } no se puede escribir. No se agregó nada. Revise sus números.
book-unchained = La anotación { $number } del aparato { $stream } no sigue a la anterior. No se tomó nada. Pida otra vez todas sus anotaciones.
book-forked = El aparato { $stream } da dos anotaciones { $number } distintas. No se tomó nada. Guarde las dos copias y pregunte quién cambió una.
book-seal-unfit = El sello en la anotación { $number } del aparato { $stream } no es de las anotaciones que hay. No se tomó nada. Pida otra vez todas sus anotaciones.
book-resealed = La anotación { $number } del aparato { $stream } lleva el sello de otro aparato que antes. No se tomó nada. Guarde las dos copias y pregunte quién selló una.
book-not-a-backup = “{ $path }” no es un respaldo de un libro. Elija otro archivo.
book-newer-backup = Este respaldo lo escribió un programa más nuevo (versión { $version }; este conoce { $known }). Actualice este programa.
book-backup-damaged = El respaldo “{ $path }” no se sostiene ({ $at }). No se tomó nada de él. Pruebe un respaldo anterior.
book-no-backup-folder = No se puede llegar a la carpeta “{ $path }” para respaldos. Conecte donde está, o elija otra.
book-backup-locked = El respaldo “{ $path }” está cerrado. Dé su frase de acceso.
book-wrong-passphrase = Esa frase de acceso no abre “{ $path }”. Escríbala otra vez, como era cuando se hizo este respaldo.
book-short-passphrase = Una frase de acceso necesita al menos { $least } letras. Cuatro palabras que solo usted junte aguantan bien.
book-no-entry = No hay anotación { $id } en este libro.
book-stream-in-use = La secuencia nueva { $stream } ya está en el libro. No se cambió nada. Ábralo otra vez.

book-free-space = No queda espacio. Todas las anotaciones guardadas están a salvo; esta no se guardó. Libere espacio y guárdela otra vez.
book-open-elsewhere = Otro programa tiene abierto este libro. Ciérrelo ahí e intente otra vez.
book-held = Otro programa está usando el archivo de este libro. Intente otra vez en un momento.
book-storage = El almacenamiento falló al leer o escribir. Todas las anotaciones guardadas están a salvo. Intente otra vez; si vuelve a fallar, haga un respaldo en otro lugar.
book-damaged = El libro está dañado: { $problem }. Las anotaciones guardadas quedan como están y no se escribe nada más. Abra otra vez el libro para recuperar lo que se sostiene.
book-unforeseen = Pasó algo imprevisto ({ $what }). Las anotaciones guardadas están a salvo. Repórtelo.

# What a check found, as a phrase.
problem-digest = cambiaron los bytes de una anotación
problem-unreadable = este programa no puede leer una anotación
problem-newer-entry = una anotación la escribió un programa más nuevo
problem-personal = un nombre o número no es de su anotación
problem-personal-gone = falta un nombre o número que nadie borró
problem-row = cambió el lugar o la hora de una anotación
problem-chain = una anotación no sigue a la anterior
problem-gap = { $count ->
    [one] falta la anotación { $first }
   *[other] faltan las anotaciones { $first } a { $last }
}
problem-head = el final de las anotaciones de un aparato no está donde estaba
problem-forgotten = faltan anotaciones guardadas al final: había { $had }, hay { $has }
problem-tables = cambiaron las tablas del libro
problem-file = el archivo está roto por dentro
problem-interrupted = se interrumpió la recuperación del libro
problem-header = el principio del archivo está roto
problem-file-gone = falta el archivo del libro
problem-seal = un sello no es de las anotaciones que hay
problem-other-device = otro aparato selló las anotaciones de un aparato
problem-at = { $problem } ({ $at })
spot-book = todo el libro
spot-row = fila { $row }
spot-stream = aparato { $stream }
spot-entry = aparato { $stream }, anotación { $number }

# What came back from a damaged book.
rescued-found = El libro estaba dañado: { $problem }.
rescued-safe = { $count ->
    [0] No se pudo recuperar ninguna anotación.
    [one] Se recuperó una anotación y se sostiene.
   *[other] Se recuperaron { $count } anotaciones, y todas se sostienen.
}
rescued-of = El libro tenía { $had }.
rescued-missing = { $count ->
    [one] Falta una anotación.
   *[other] Faltan { $count } anotaciones.
}
rescued-unfit = { $count ->
    [one] Una anotación no encaja en su cadena y quedó en los archivos dañados.
   *[other] { $count } anotaciones no encajan en su cadena y quedaron en los archivos dañados.
}
rescued-personal = { $count ->
    [one] Un nombre o número no se recuperó.
   *[other] { $count } nombres o números no se recuperaron.
}
rescued-unknown = No se sabe cuántas tenía.
rescued-whole = No se sabe que falte nada.
rescued-now = Los archivos dañados se guardan en “{ $aside }”. Si falta algo, recupérelo ahora de un respaldo.

# What a backup brought back.
restored = { $count ->
    [0] El libro tenía todas las anotaciones del respaldo.
    [one] Una anotación volvió del respaldo.
   *[other] { $count } anotaciones volvieron del respaldo.
}
restored-counts = Anotaciones antes: { $before }. Anotaciones ahora: { $after }.
restored-photos = { $count ->
    [one] Volvió una foto.
   *[other] Volvieron { $count } fotos.
}
restored-photos-missing = { $count ->
    [one] Una foto del respaldo no está entera y se dejó fuera. Búsquela en un respaldo anterior.
   *[other] { $count } fotos del respaldo no están enteras y se dejaron fuera. Búsquelas en un respaldo anterior.
}
rescued-from-backup = Se tomó el respaldo bueno más reciente.

# How backups stand.
backup-none = Todavía no hay respaldo. Un teléfono perdido se llevaría este libro.
backup-last-good = Último respaldo bueno: { $day }, { $clock } UTC, { $entries ->
    [one] 1 anotación
   *[other] { $entries } anotaciones
}, { $photos ->
    [one] 1 foto
   *[other] { $photos } fotos
}, en “{ $file }”. Se leyó de vuelta.
backup-not-in-it = { $count ->
    [one] Después vino una anotación.
   *[other] Después vinieron { $count } anotaciones.
}
backup-into = Los respaldos van solos a “{ $folder }” después de cada cambio.
backup-nowhere = No hay carpeta elegida para los respaldos. Elija una que dure más que este aparato.
backup-locked = Los respaldos nuevos van cerrados. Sin la frase de acceso nadie los abre, ni usted.
backup-failed = El último respaldo falló. { $why } Todas las anotaciones están a salvo en este aparato; { $count ->
    [0] no falta ninguna en el último respaldo bueno.
    [one] una no está todavía en ningún respaldo bueno.
   *[other] { $count } no están todavía en ningún respaldo bueno.
}
backup-note-unreadable = No se puede leer a dónde van los respaldos. Elija otra vez la carpeta.
stopped = Detenido. No se cambió nada.
