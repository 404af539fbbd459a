# The terminal's own lines. Commands, options and codes are the same in every language.
terminal-next = Sigue
terminal-type = Escriba
terminal-or = o
terminal-holds = espera:
terminal-order = orden:
terminal-wrench = torquímetro:
terminal-no-job = No hay trabajo abierto. Abra uno con “lugbook job open VEHÍCULO PROCEDIMIENTO”, o vea “lugbook book”.
terminal-job-stands = Trabajo { $job }, { $vehicle }: { $done } de { $of } pasos hechos. Manos: { $hands }.
terminal-sample-reason = RAZÓN
terminal-sample-label = etiqueta de la puerta
terminal-sample-page = MANUAL, PÁGINA
terminal-sample-file = ARCHIVO
terminal-sample-rack = ESTANTE
terminal-sample-mark = MARCA

terminal-done = hecho
terminal-skipped = omitido
terminal-ready = listo
terminal-held = espera
terminal-corrected = (corregido){ " " }

terminal-book-in = Libro en { $folder }
terminal-people = Personas
terminal-vehicles = Vehículos
terminal-tools = Herramientas
terminal-jobs = Trabajos
terminal-archived = Guardado
terminal-again = Otra vez
terminal-nothing-to-undo = No hay nada que retirar.
terminal-practice = , práctica
terminal-book-whole = El libro está completo: { $entries ->
    [one] 1 anotación
   *[other] { $entries } anotaciones
}, { $photos ->
    [one] 1 foto
   *[other] { $photos } fotos
}, { $problems } problemas.
terminal-book-damaged = El libro está dañado: { $entries ->
    [one] 1 anotación
   *[other] { $entries } anotaciones
}, { $photos ->
    [one] 1 foto
   *[other] { $photos } fotos
}, { $problems ->
    [one] 1 problema
   *[other] { $problems } problemas
}.
terminal-proof-proven = Probado
terminal-proof-not-proven = No probado
terminal-proof-refused = No se sostiene
terminal-no-card = { $name } no es el archivo HTML de una hoja: dé el archivo que escribió “lugbook card --out”.
terminal-device-short = Dé el aparato como está en la copia en papel: dieciséis dígitos y letras en dos grupos.
terminal-no-key = El secreto de este aparato en { $name } no sirve, así que no se sella nada: { $why }. Mueva ese archivo para que se haga otro.
terminal-key-damaged = no es lo que escribió este programa
terminal-card-written = Hoja escrita en { $file }
terminal-labels-written = Etiquetas escritas en { $file }
terminal-history-written = Historial escrito en { $file }
terminal-calendar-written = Calendario escrito en { $file }
terminal-table-written = Tabla escrita en { $file }
terminal-not-allowed = No permitido

# What a line lacks or has too much, as it was typed.
terminal-line-no-command-near = No hay comando “{ $word }”: ¿quiso decir { $near }, o prefiere ver “{ $command } --help”?
terminal-line-no-command = No hay comando “{ $word }”: vea “{ $command } --help”.
terminal-line-out-of-place = “{ $arg }” no va aquí: vea “{ $command } --help”.
terminal-line-no-value = { $arg } necesita un valor: vea “{ $command } --help”.
terminal-line-one-of = “{ $given }” no sirve para { $arg }: dé uno de { $good }.
terminal-line-bad-value = “{ $given }” no sirve para { $arg }: vea “{ $command } --help”.
terminal-line-missing = { $command } necesita { $arg }: vea “{ $command } --help”.
terminal-line-what-to-do = { $command } necesita saber qué hacer: vea “{ $command } --help”.
terminal-line-once = { $arg } se da una sola vez: vea “{ $command } --help”.
terminal-line-apart = { $arg } y { $other } no van juntos: vea “{ $command } --help”.
terminal-line-number-of-values = { $arg } tiene muy pocos o demasiados valores: vea “{ $command } --help”.
terminal-line-not-text = Lo escrito no es texto en UTF-8.
terminal-line-not-understood = Eso no se entendió: vea “{ $command } --help”.

# What can't be used or done. $why is what the system says.
terminal-not-json = La respuesta no se puede escribir como JSON: { $why }.
terminal-not-written-out = La respuesta no se puede mostrar: { $why }.
terminal-no-home = No hay carpeta personal para guardar el libro: nombre una con --book DIR.
terminal-no-time = “{ $given }” no es una hora: escríbala así: 2026-11-24T09:15:00Z.
terminal-time-to-come = { $at } todavía no llega: --at toma una hora pasada.
terminal-no-book = No hay libro en { $name }: empiece uno con “lugbook person add NOMBRE”.
terminal-no-room = No hay espacio para escribir { $name }: libere espacio e intente otra vez.
terminal-not-written = No se puede escribir { $name }: { $why }.
terminal-not-made = No se puede crear { $name }: { $why }.
terminal-not-read = No se puede leer { $name }: { $why }.
terminal-not-csv = { $name } no es CSV: { $why }.
terminal-not-found = { $name } no se encuentra a sí mismo: { $why }.
terminal-not-run = No se puede ejecutar { $name }: { $why }.
terminal-not-waited-for = No se puede esperar a { $name }: { $why }.
terminal-no-file = { $name } no es un archivo.
terminal-file-too-long = { $name } es más largo de lo que puede ser una pregunta.
terminal-file-not-text = { $name } no es texto en UTF-8.
terminal-folder-not-empty = { $name } no está vacía: nombre una carpeta vacía, o una por crear.
terminal-no-folder = { $name } no es una carpeta que se pueda usar: nombre una vacía, o una por crear.
terminal-no-nut = “{ $given }” no es una tuerca: las tuercas se cuentan desde 1, arriba.
terminal-no-click = “{ $given }” no es una respuesta: termine con moved o still.
terminal-no-state = “{ $given }” no es un estado: termine con sound, watch, at-limit, below-limit o unsafe.
terminal-no-part = “{ $given }” no es una parte de la rueda.
terminal-no-adapter = “{ $given }” no es un adaptador: escriba "12 in + 2 in @ 90".
terminal-no-printed-torque = “{ $given }” no es un torque como lo imprime un manual: escriba "125..150 N.m" o "100 ft.lb".
terminal-no-accuracy = “{ $given }” no es una exactitud: escríbala así: 4%.

# What a size says.
terminal-size = Medida
terminal-diameter = Diámetro
terminal-diameter-not-known = esta medida no lo dice
terminal-sidewall-height = Alto del costado
terminal-service = Servicio
terminal-load = Carga
terminal-speed = Velocidad
terminal-tin = DOT
terminal-made = Hecha
terminal-diameter-mm = Diámetro, mm
terminal-difference = Diferencia, %
terminal-true-at-100 = Real a 100
terminal-not-known = no se conoce
terminal-no-size = No hay medida en “{ $given }”.
terminal-no-size-next = Escríbala así: 225/45R17 91W.
terminal-no-size-no-tin = No hay medida ni número DOT en este texto.
terminal-no-size-no-tin-next = Escriba primero la medida, por ejemplo 225/45R17 91W; luego DOT y su número.
terminal-two-sizes = Se comparan dos medidas.

# The demo.
terminal-demo-introduction = Una visita inventada: Wren Tolliver, de un taller móvil, rota las llantas de una camioneta en el patio de una huerta, con un gato, cuatro soportes y una pistola eléctrica. Cada renglón que empieza con “lugbook” se ejecutó como un comando aparte, con LUGBOOK_BOOK nombrando el libro.
terminal-demo-type-them = Para escribirlos usted en un libro nuevo, desde esta carpeta:
terminal-demo-killed = Aquí se mató el programa (SIGKILL) mientras escribía la próxima foto.
terminal-demo-stopped = La visita se detuvo en “{ $line }”: { $why }
terminal-demo-card = La hoja:
terminal-demo-book = El libro:
terminal-demo-try = Abra la hoja en un navegador. Luego pruebe:
terminal-demo-truck = Camioneta de la huerta
terminal-limits-book = Libro
terminal-limits-job = Este trabajo
terminal-photo-written = Foto escrita en { $file }
terminal-sample-name = NOMBRE
terminal-also = también

terminal-backup-how = Escriba: lugbook backup into CARPETA
terminal-no-passphrase = Dé la frase de acceso con “--passphrase-file ARCHIVO”: aquí no se le puede preguntar a nadie.
terminal-passphrase = la frase de acceso
terminal-passphrase-ask = Frase de acceso:
terminal-passphrase-again = La misma otra vez:
terminal-passphrase-differs = Las dos frases no son iguales. No se cambió nada. Escríbala otra vez.
terminal-logbook-written = Cuaderno escrito en { $file }
terminal-why-rule = Regla
terminal-why-for = A favor
terminal-why-against = En contra, o por saber
terminal-why-source = Fuente
terminal-ask-code = Código de { $name }:
terminal-ask-old-code = Código anterior:
terminal-ask-new-code = Código nuevo:
terminal-ask-code-again = Código nuevo otra vez:
terminal-no-code-read = No se puede leer el código: { $why }.
terminal-no-code = No se dio ningún código: escríbalo cuando se pida, o envíelo en un renglón aparte.
terminal-codes-differ = Los dos códigos no son iguales: póngalo otra vez.
terminal-nothing-waits = Nada espera a un instructor.
terminal-sample-answer = RESPUESTA
terminal-bundle-written = Paquete escrito en { $file }
terminal-bundle-made = Hecho el { $day }: { $entries } anotaciones, { $photos } fotos.

# Lectura de fotos.
terminal-date = Fecha
terminal-molded-words = Palabras
terminal-arrow = Flecha
terminal-arrow-left = para el lado izquierdo del vehículo ({ $odds } %)
terminal-arrow-right = para el lado derecho del vehículo ({ $odds } %)
terminal-chalk = Marca de tiza
terminal-nothing-read = sin lectura
terminal-no-circle = “{ $given }” no es un círculo: dé el centro a lo ancho, el centro a lo alto y el radio en píxeles, como 2010,1480,1320.
terminal-one-folder = Nombre una sola carpeta, la que tiene las fotos de la tabla.
terminal-score-kind = Clase
terminal-score-field = Dato
terminal-score-right-first = Primera correcta
terminal-score-in-three = Entre tres
terminal-score-within-one = A una letra
terminal-score-confident-wrong = Segura y errónea
terminal-score-odds = Probabilidad
terminal-score-readings = Lecturas
terminal-score-right = Correctas
terminal-score-times = { $photos } fotos; primera sugerencia a los { $first } ms en la mediana, todo a los { $median } ms, { $worst } ms como máximo; { $false } palabras que no están ahí; { $nothing } lecturas seguras de lo que no se ve.
