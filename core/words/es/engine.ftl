# What a command came to.
said-person = { $name } está en el libro.
said-vehicle = { $name } está en el libro, con una llanta en cada lugar.
said-tool = { $name } está entre las herramientas.
said-job-opened = El trabajo { $job } está abierto: { $vehicle }, { $title }.
said-practice = Este es un trabajo de práctica. No cuenta para desgaste, vencimientos ni historial.
said-parked = El trabajo { $job } queda en espera. No se pierde nada.
said-closed = El trabajo { $job } terminó sin firma. Su hoja lo dice.
said-signed = { $name } firmó el trabajo { $job }.
said-declined = El cliente no aprobó el trabajo. No se puede desarmar nada.
trouble-whose-signature = Diga de quién es esta firma.
trouble-signature-drawn = No se puede leer la firma dibujada. Bórrela y firme otra vez.
trouble-signature-long = La firma dibujada tiene demasiados trazos. Bórrela y firme otra vez.
said-unit-clash = La página se contradice: { $first } no es { $second }. Use el valor en la unidad de su torquímetro y pregunte al fabricante.
said-torque-unknown = No se conoce el torque. La barrera final sigue cerrada hasta conocerlo, o se abre con una razón.
said-placard-unknown = No se conoce la etiqueta de presiones. Ponga presiones solo según la etiqueta o el manual del vehículo.
said-photo = La foto { $number } está guardada.
said-photo-duplicate = La misma foto ya estaba aquí. Se guarda una sola vez.
said-mark = La llanta lleva la marca { $mark }.
said-recheck = Avise al conductor: reapretar las tuercas después de { $after }.
said-gate-opened = La barrera está abierta. La hoja mostrará la razón.
said-corrected = El renglón { $line } está corregido. La hoja conserva los dos valores.
said-withdrawn = El renglón { $line } está retirado. Se queda en el libro.
said-finding-photo = Tómele una foto.
said-unsafe = Condición insegura: no maneje. Dígaselo al cliente antes que nada.
said-back-off = Hizo clic sin girar: no está comprobada. Aflójela un cuarto de vuelta y apriétela otra vez.
said-held = Hizo clic sin girar: está firme.
said-moved = Giró. Queda anotado. Reapriete otra vez después de las próximas millas.
said-below-placard = Eso está por debajo de la etiqueta, { $placard }. Una llanta fría nunca se pone por debajo de ella.

said-spare-no-limit = Un repuesto temporal tiene límite de velocidad. Léalo en el repuesto o en el manual, y avise al conductor.
said-set-from = El juego está en { $racks }. Lea cada etiqueta de rueda antes de llevarla a su esquina.
said-labels = Imprima las etiquetas, una por cada rueda guardada.

next-in-the-van = Esto se responde en la camioneta, lejos del camino.
next-nothing = Todos los pasos están hechos.

# What things are called in a refusal.
what-name = el nombre
what-model = el modelo
what-phone = el número de teléfono
what-plate = la placa
what-source = la fuente
what-torque = el torque
what-condition = el estado de la rosca
what-lift-points = los puntos de levantamiento
what-reason = la razón
what-complaint = la queja
what-damage = el daño
what-mark = la marca
what-note = la nota
what-rack = el estante
what-sensor = el número del sensor

trouble-empty = Diga { $what }: no se dio nada.
trouble-too-long = Escriba { $what } con menos de { $most } caracteres.
trouble-control = Escriba { $what } con letras normales: tiene signos que no se pueden imprimir.
trouble-no-person = Todavía no hay nadie en el libro. Agréguese usted primero.
trouble-which-person = Diga quién es usted: { $names }.
trouble-unknown-person = “{ $given }” no está en el libro. Conocidos: { $names }.
trouble-name-taken = “{ $name }” ya está en el libro. Elija otro nombre.
trouble-no-vehicle = “{ $given }” no está en el libro. Agregue primero el vehículo.
trouble-unknown-vehicle = “{ $given }” no está en el libro. Conocidos: { $names }.
trouble-which-vehicle = Nombre el vehículo: no hay trabajo abierto.
trouble-no-job = No hay trabajo abierto. Abra uno primero.
trouble-no-flat = No hay repuesto que poner en { $place }. Nombre una rueda en servicio, de un vehículo que lleve repuesto.
trouble-order-begun = En este trabajo ya se levantó el vehículo: termine estos movimientos, o el trabajo, antes de decirlo de nuevo.
trouble-no-order = Este procedimiento tiene su propio orden. El paso que sigue dice qué hacer.
trouble-order-waits = Todavía no hay orden para levantar: elija primero los movimientos y nombre el equipo.
trouble-no-wear = Todavía no se midió ninguna banda de rodadura con su odómetro.
trouble-job-parked = No hay trabajo abierto. Retome el que está en espera, o abra otro.
trouble-no-such-job = Ese trabajo no existe.
trouble-recheck-untold = En este trabajo no se avisó ningún reapriete. Avise primero al conductor.
trouble-unprintable = No se puede hacer el PDF. Repórtelo: { $why }
trouble-per-year = “{ $given }” al año no da ninguna fecha dentro de cincuenta años. Dé lo que maneja el dueño.
trouble-bay-taken = El trabajo { $job } está abierto. Fírmelo, póngalo en espera o termínelo primero.
trouble-nothing-parked = No hay tal trabajo en espera.
trouble-procedure = “{ $given }” no es un procedimiento. Conocidos: { $known }.
trouble-built-in = “{ $id }” es un procedimiento incluido. Dé al suyo otro nombre.
trouble-procedure-gone = El procedimiento “{ $id }” de este trabajo no está aquí. Agregue otra vez su archivo.
trouble-circumstance = Diga cuál es: { $known }.
trouble-unknown-circumstance = “{ $given }” no cabe aquí. Conocidos: { $known }.
trouble-no-place = “{ $given }” no es un lugar de este vehículo. Sus lugares: { $places }.
trouble-spare-has-no-hub = El repuesto va en su portallanta: ahí no hay tuercas de rueda.
trouble-no-axle = Este vehículo tiene { $count ->
    [one] un eje
   *[other] { $count } ejes
}. Nombre uno de ellos.
trouble-no-photo = No hay foto { $given }: este trabajo tiene { $count ->
    [0] ninguna todavía
    [one] una
   *[other] { $count }
}.
trouble-no-tire = No hay llanta instalada en { $place }.
trouble-accuracy = “{ $given }” no es una exactitud. Escríbala así: 4 %.
trouble-day = “{ $given }” no es un día. Escríbalo así: 2026-05-04.
trouble-future = El { $given } todavía no llega. Revise la fecha.
trouble-torque = “{ $given }” no es un torque impreso. Escríbalo así: 125..150 N.m o 100 ft.lb.
trouble-thread = “{ $given }” no es una rosca. Escríbala así: M12 x 1.5 o 1/2-20.
trouble-studs = Una rueda tiene de 3 a 12 tuercas. Cuente otra vez.
trouble-placard-axles = Dé una presión en frío para cada uno de los { $count } ejes, primero el delantero.
trouble-size = En “{ $given }” no se puede leer una medida de llanta. Escríbala así: 225/45R17 91W.
trouble-drive-unknown = Diga qué ejes tienen tracción, o mire debajo del vehículo.
trouble-pattern = “{ $given }” no es un patrón. Escríbalo así: rearward-cross o front-to-rear.
trouble-not-known = Solo de torque y etiqueta se puede decir que no se conocen.
trouble-odometer-behind = { $now } es menos que la última vez, { $before }. Léalo otra vez, o diga que cambiaron el instrumento.
trouble-no-tool = “{ $given }” no está entre las herramientas. Agréguela primero.
trouble-unknown-tool = “{ $given }” no está entre las herramientas. Conocidas: { $names }.
trouble-all-over = Todos los pasos están hechos. Firme el trabajo.
trouble-no-step = “{ $given }” no es un paso de este trabajo.
trouble-answer = “{ $given }” no responde a este paso. { $wanted }
trouble-steps-left = Sin firmar. Este paso sigue abierto: { $step }
trouble-limits-empty = Diga qué elegir: un lugar, una temporada o una profundidad.
trouble-limits-order = Vigilar, { $watch } por encima del límite, no puede ser menos que en el límite, { $at } por encima. Elija los dos.
trouble-no-skip = Este paso no se puede omitir: { $step }
trouble-no-gate = Ninguna barrera detiene este paso: { $step }
trouble-no-line = No hay renglón { $given }: el registro tiene { $count }.
trouble-not-correctable = El renglón { $line } no tiene un valor que corregir. Retírelo y dígalo de nuevo.
trouble-not-withdrawn = La apertura de un trabajo no se puede retirar. Termine el trabajo.
trouble-mark-long = Use una marca corta: 8 signos como máximo.
trouble-mark-twice = “{ $mark }” ya está en otra llanta. Elija otra marca.
trouble-no-mark = Ninguna llanta de este trabajo lleva la marca “{ $mark }”. Marcas: { $marks }.
trouble-depths = “{ $given }” no se puede leer como profundidades. Escriba las ranuras así: 7 6 7 /32, o 5.2 5.0 5.4 mm.
trouble-lowest = El punto más bajo no puede ser más profundo que las ranuras. Mídalo otra vez.
trouble-deeper = { $place }: { $now } es más profundo que la última vez, { $before }. Mida otra vez, revise que sea la misma llanta, o dé una razón.
trouble-no-plan = “{ $given }” no es uno de los { $count } planes.
trouble-already-off = La rueda en { $place } ya está quitada.
trouble-wheel-off = La rueda en { $place } está quitada. Móntela primero.
trouble-not-moved = La rueda en { $place } no se quitó en este trabajo.
trouble-count-nuts = Cuente primero las tuercas de una rueda.
trouble-no-nut = Esta rueda tiene { $count } tuercas, numeradas como un reloj desde arriba.
trouble-moved = Diga si la tuerca giró antes del clic, o hizo clic sin girar.
trouble-no-spare = Según el libro, este vehículo no lleva repuesto.
trouble-nothing-laid-out = No hay rueda del juego que entra lista en { $place }.
trouble-nothing-stored = No hay ruedas guardadas de este vehículo. Traiga un juego nuevo, o búsquelas en el libro.
trouble-nothing-to-store = No queda por guardar ninguna rueda de las que se quitaron.
trouble-no-relearn = Este trabajo no pregunta nada de sensores, o esa no es respuesta: done, owner-told o not-needed.
trouble-which-wheels = Nombre al menos una rueda que se quita.
trouble-which-part = Diga qué parte: cara de la maza, espárragos, asientos, válvula, llanta, rin, balatas, disco, manguera, cubrepolvos, amortiguador o balero.

ask-seen = Diga “seen” cuando haya mirado.
ask-choice = Elija una: { $choices }.
ask-count = Escriba un número.
ask-studs = Escriba un número de 3 a 12.
ask-other = Tiene su propio comando.

place-spare = repuesto
place-front-left = delantera izquierda
place-front-right = delantera derecha
place-rear-left = trasera izquierda
place-rear-right = trasera derecha
place-axle-left = eje { $axle } izquierda
place-axle-right = eje { $axle } derecha
place-axle-left-outer = eje { $axle } izquierda exterior
place-axle-left-inner = eje { $axle } izquierda interior
place-axle-right-outer = eje { $axle } derecha exterior
place-axle-right-inner = eje { $axle } derecha interior
said-covered = { $count ->
    [0] La foto { $number } sale sin tapar desde ahora.
    [one] Se tapa 1 parte de la foto { $number } en hojas y copias. La foto misma queda como está.
   *[other] Se tapan { $count } partes de la foto { $number } en hojas y copias. La foto misma queda como está.
}
trouble-box = “{ $given }” no es un recuadro. Dé izquierda, arriba, ancho y alto en píxeles, como 120,80,300,90.
trouble-box-outside = “{ $given }” no tapa nada: la foto mide { $width } píxeles de ancho y { $height } de alto.
said-tool-in-use = { $name } ya está en uso en este trabajo.
said-tool-retired = { $name } queda retirada. Las hojas de trabajos anteriores la siguen nombrando.
said-which-tool = Sirven varias: { $names }. Diga cuál se usa.
next-two-people = Esta rueda es para dos personas, una a cada lado: diga quién es la segunda.
trouble-scale = “{ $given }” no es una escala. Escriba los dos extremos, como 40..200 N.m.
trouble-months = Dé los meses entre calibraciones con un número de 1 a 120.
trouble-stands = Dé el número de soportes, por lo menos uno.
trouble-same-hands = { $name } ya hace el paso. Diga quién sostiene el otro lado.
trouble-practice-due = Este es un trabajo de práctica: después de él no se vence nada.
trouble-backup-inside = Esa carpeta está dentro de la del libro: lo que se lleve el libro se la lleva también. Elija otro lugar.
trouble-no-backup-folder = No hay carpeta elegida para los respaldos. Nombre una.
said-code-set = { $name } firma con este código desde ahora. Se guarda cifrado: nadie puede volver a leerlo.
said-steps-seen = { $name } firmó como visto: { $steps }.
said-answer-first = En este trabajo el aprendiz responde primero: tracción, patrón, levantamientos, orden, valor del torquímetro.
said-answer-first-off = Lugbook vuelve a responder primero.
said-look-kept = Lo visto queda guardado. Lo que dice se muestra después de su respuesta.
trouble-no-instructor = No hay instructor en el libro. Agregue uno primero.
trouble-not-instructor = “{ $given }” no es instructor. Instructores: { $names }.
trouble-no-code = { $name } todavía no tiene código. Ponga uno primero.
trouble-current-code = { $name } ya tiene código. Dé primero el anterior.
trouble-wrong-code = { $left ->
    [one] Ese no es el código de { $name }. Queda un intento antes de que se bloquee.
   *[other] Ese no es el código de { $name }. Quedan { $left } intentos antes de que se bloquee.
}
trouble-code-locked = Demasiados códigos equivocados para { $name }. Pruebe otra vez después de { $until }.
trouble-code-short = Elija un código de por lo menos 6 signos.
trouble-code-long = Elija un código de 64 signos como máximo.
trouble-code-row = Elija un código que no sea una serie ni un solo signo repetido.
trouble-code-name = Elija un código que no sea su nombre.
trouble-code-hash = No se puede cifrar el código. Avise de esto: { $why }
trouble-nothing-to-see = Nada de lo que hizo un aprendiz espera una firma así.
trouble-which-learner = Diga de quién es el cuaderno: { $names }.
trouble-answer-first-off = Este trabajo no pide respuestas primero. Actívelo antes de que Lugbook muestre la suya.
trouble-answered = Eso ya se respondió. Vale la primera respuesta.
trouble-answer-early = Lugbook todavía no tiene respuesta para comparar. Avance primero el trabajo.
trouble-answer-drive = “{ $given }” no es una tracción. Responda front, rear, all, part-time o none.
trouble-answer-pattern = “{ $given }” no es un patrón. Responda como rearward-cross o front-to-rear.
trouble-answer-lifts = “{ $given }” no nombra un levantamiento. Responda como FL+FR RL+RR.
trouble-answer-order = “{ $given }” no nombra cada tuerca una vez. Responda como 1 3 5 2 4.
trouble-answer-target = “{ $given }” no es un torque. Responda como 137 N.m.
trouble-why-drive = Todavía no se sabe nada de la tracción.
trouble-why-pattern = Todavía no es posible ningún plan. Lea y mida primero las llantas.
trouble-why-lifts = Todavía no hay orden de levantamientos en este trabajo.
trouble-why-order = Los espárragos todavía no están contados.
trouble-why-target = Todavía no se conoce el torque o el torquímetro.
trouble-no-bundle = Ese no es un paquete de aprendiz. Elija el archivo zip que se escribió para un aprendiz.
trouble-newer-bundle = Un Lugbook más nuevo hizo este paquete (versión { $version }). Actualice este primero.
trouble-bundle-damaged = El paquete está dañado en { $at }: una parte ya no es lo que era. Pídalo otra vez.
trouble-bundle-unpacked = No se puede empacar. Avise de esto: { $why }

# Taken back, put away, erased.
undo-reason = retirado enseguida
said-undone = Retirado: { $said }
said-undone-more = { $count ->
    [one] Y una anotación más de la misma orden.
   *[other] Y { $count } anotaciones más de la misma orden.
}
trouble-nothing-to-undo = No hay nada que este aparato pueda retirar.
said-archived = Guardado. Lo que se hizo con ello queda; se puede volver a usar.
said-brought-back = Se usa otra vez.
trouble-archived-already = Ya está guardado.
trouble-not-archived = No hay nada guardado con ese nombre. Vea la primera hoja del libro.
trouble-archive-in-work = Todavía hay un trabajo abierto en este vehículo. Fírmelo o ciérrelo primero.
trouble-archive-last = Nadie más podría trabajar con este libro. Agregue primero a otra persona.
trouble-archived-person = { $name } se guardó. Vuelva a poner primero a esa persona.
trouble-archived-vehicle = { $name } se guardó. Vuelva a poner primero el vehículo.
trouble-archived-set = Las ruedas guardadas de este vehículo ya no se usan. Vuelva a poner primero el juego.
trouble-nothing-to-erase = No se guarda nada con ese nombre que se pueda borrar. Revise cómo se escribe.
said-erased = { $count ->
    [one] Borrado junto a una anotación. La anotación queda, y el libro se sigue verificando.
   *[other] Borrado junto a { $count } anotaciones. Las anotaciones quedan, y el libro se sigue verificando.
}
said-erased-elsewhere = Los respaldos, copias y hojas de antes todavía lo tienen. Quítelos usted.
said-erased-older = Archivos anteriores en la carpeta del libro todavía lo tienen: { $names }.
said-erased-not = No se revisan fotos, el nombre de un vehículo, ni palabras escritas en quejas o razones.
said-overloaded = El equipo tiene capacidad de { $rating }, menos que { $weight } que se levantarían. Use otro equipo.
next-shows = En el estante, { $what }: { $printed }
next-shows-nothing = No hay { $what } en el estante: mire en el manual.
trouble-axles = “{ $given }” no dice los ejes. Escriba single o dual por cada uno, primero el de adelante, { $most } como máximo; un remolque puede tener uno.
trouble-not-this-vehicle = { $title } no es para este vehículo. Es para { $known }.
trouble-outer-on = { $place }: la rueda exterior sigue puesta. Quite primero { $outer }.
trouble-inner-off = { $place }: la rueda interior está quitada. Monte primero { $inner }.
trouble-nuts-at-outer = Un juego de tuercas sujeta aquí ambas ruedas. Nombre { $outer } en vez de { $place }.
trouble-not-loosened = Solo se aflojan otra vez las tuercas exteriores de las dobles centradas por los espárragos.
trouble-around = “{ $given }” no puede ser una cinta alrededor de { $place }. Mida alrededor del centro de la banda.
said-too-thin = Eso es menos que { $least }, lo impreso. Es un hallazgo.
