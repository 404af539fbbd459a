# Names of conditions, as short as a card needs them.
condition-approved = trabajo aprobado
condition-place-safe = lugar seguro para trabajar
condition-lock-key = llave de seguridad a la mano
condition-drive-known = tracción conocida
condition-plan-chosen = movimientos elegidos
condition-wheels-chosen = ruedas nombradas
condition-set-brought = juego que entra, listo
condition-cracked = tuercas aflojadas en el piso
condition-clear = ruedas apenas libres
condition-rocked = vehículo sacudido
condition-held = soportes o seguros vistos sosteniendo
condition-wheel-is-off = rueda quitada
condition-mark-fits = la marca va con el plan
condition-started = cada tuerca empezada a mano
condition-all-snug = todas las tuercas asentadas
condition-tray-empty = nada sobra en la charola
condition-all-clear = despejado debajo del vehículo
condition-down = vehículo sobre sus ruedas
condition-torque-known = torque conocido
condition-final-done = torque final en cada tuerca
condition-rechecked = reapriete hecho en cada tuerca
condition-unsafe-told = cliente avisado de lo inseguro
condition-seat-sound = asientos y espárragos sin daño inseguro
condition-in-order = sigue en el orden para levantar
condition-ready = listo para levantarse
condition-gear-rated = equipo con capacidad para el peso
condition-pair-matched = llantas dobles iguales
condition-pair-seen = válvulas y espacio de cada pareja vistos
condition-outer-loosened = tuercas exteriores aflojadas otra vez
condition-inner-set = tuercas interiores al torque final

# What a gate waits for, and what to do.
unmet-approved = El cliente todavía no aprueba el trabajo. Pregúntele primero.
unmet-approved-declined = El cliente no aprobó el trabajo. Pregúntele otra vez, o termine el trabajo sin firma.
unmet-place-safe = Nadie ha dicho si este lugar es seguro. Mire primero; un vehículo se puede llevar en grúa.
unmet-place-slope = Este lugar está en pendiente o cede. No empiece: pida grúa hasta piso firme y nivelado.
unmet-place-close = El tráfico pasa demasiado cerca. No empiece: pida grúa.
unmet-place-flat-side = { $at }: el tráfico pasa del lado de la llanta desinflada. No empiece: pida grúa.
unmet-lock-key = Nadie ha dicho si la llave de las tuercas de seguridad está a la mano. Búsquela primero.
unmet-lock-key-missing = Falta la llave de las tuercas de seguridad. Encuéntrela antes de levantar el vehículo.
unmet-drive-known = Aún no se sabe qué ejes tienen tracción. Lea el manual, o mire las mazas de ambos ejes.
unmet-plan-chosen = Todavía no hay movimientos elegidos. Elija a dónde va cada llanta.
unmet-wheels-chosen = Todavía no se nombra ninguna rueda. Elija las ruedas que se quitan.
unmet-set-brought = Todavía no se nombra el juego que entra. Traiga el guardado, o uno nuevo.
unmet-cracked = { $at }: las tuercas no están aflojadas. Afloje cada una un cuarto de vuelta con la llanta en el piso.
unmet-clear = Las ruedas todavía no están apenas libres. Levante el vehículo hasta que lo estén.
unmet-rocked = El vehículo no se ha sacudido. Sacúdalo antes de que alguien trabaje en él.
unmet-held = Nadie ha visto que los soportes o seguros sostengan. Mire primero cada uno.
unmet-wheel-is-off = { $at }: la rueda sigue puesta. Quítela primero.
unmet-mark-unread = { $at }: no se ha leído la marca. Lea la marca de la llanta antes de las tuercas.
unmet-mark-unchalked = { $at }: se leyó la marca { $read }, pero la llanta planeada aquí no lleva marca. Márquela primero con tiza.
unmet-mark-stranger = { $at }: ninguna llanta de este trabajo lleva la marca { $read }. El plan quiere aquí la llanta { $wanted }.
unmet-mark-other = { $at }: esta es la llanta { $read }, que va en { $belongs }. El plan quiere aquí la llanta { $wanted }.
unmet-not-counted = { $at }: las tuercas no están contadas. Cuente primero los espárragos de una rueda.
unmet-started = { $count ->
    [one] { $at }: la tuerca { $nuts } no está empezada a mano. Empiécela a mano primero.
   *[other] { $at }: las tuercas { $nuts } no están empezadas a mano. Empiece cada una a mano primero.
}
unmet-wheel-missing = { $at }: la rueda está quitada. Móntela y asiente sus tuercas primero.
unmet-snug = { $count ->
    [one] { $at }: la tuerca { $nuts } no está asentada. Asiéntela primero.
   *[other] { $at }: las tuercas { $nuts } no están asentadas. Asiéntelas primero en estrella.
}
unmet-tray-uncounted = Las tuercas y herramientas no están contadas. Cuente lo que sobra.
unmet-tray-left = { $left ->
    [one] Sobra una tuerca o herramienta. Encuentre dónde va.
   *[other] Sobran { $left } tuercas o herramientas. Encuentre dónde van.
}
unmet-all-clear = Nadie ha dicho que esté despejado debajo del vehículo. Mire debajo primero.
unmet-down = El vehículo no está sobre sus ruedas. Bájelo antes del torque final.
unmet-torque-known = No se conoce el torque. Léalo en el manual, o abra la barrera con una razón.
unmet-final-off = { $at }: la rueda está quitada. Móntela y apriete sus tuercas primero.
unmet-final = { $count ->
    [one] { $at }: la tuerca { $nuts } no tiene torque final comprobado. Apriétela; si hace clic sin girar, aflójela antes un cuarto de vuelta.
   *[other] { $at }: las tuercas { $nuts } no tienen torque final comprobado. Apriételas; la que haga clic sin girar se afloja antes un cuarto de vuelta.
}
unmet-rechecked = { $count ->
    [one] { $at }: falta el reapriete de la tuerca { $nuts }. Ponga el torquímetro y reapriétela.
   *[other] { $at }: falta el reapriete de las tuercas { $nuts }. Ponga el torquímetro y reapriete cada una.
}
unmet-unsafe-told = { $at }: { $part } en condición insegura, y el cliente no está avisado. Avise al cliente primero.
unmet-seat-sound = { $at }: { $part } en condición insegura. Cambie lo dañado antes de montar la rueda.
unmet-ready = El vehículo no está listo para levantarse. Vea primero lo que se pide antes.
unmet-gear-rated = Nadie ha dicho la capacidad del equipo. Lea el peso que se levanta, y la capacidad.
unmet-gear-overloaded = El equipo tiene capacidad de { $rating }, y se levantarían { $weight }. Use equipo con esa capacidad.
unmet-pair-not-known = { $at }: nadie puede saber si esta pareja es igual. Mida alrededor de ambas llantas con una cinta.
unmet-pair-apart = { $at }: las dos llantas difieren { $by } en diámetro, y se permiten { $allowed }. Use una llanta que vaya con la otra.
unmet-pair-larger-inside = { $at }: la llanta interior tiene { $by } más de diámetro. La mayor va afuera.
unmet-pair-seen = { $at }: no se han visto las válvulas y el espacio de esta pareja. Mire primero ambos.
unmet-outer-loosened = { $count ->
    [one] { $at }: la tuerca { $nuts } no está aflojada otra vez. Aflójela antes del torque de las interiores.
   *[other] { $at }: las tuercas { $nuts } no están aflojadas otra vez. Aflójelas antes del torque de las interiores.
}
unmet-inner-set = { $count ->
    [one] { $at }: la tuerca interior { $nuts } no tiene torque final comprobado. Apriétela antes de las exteriores.
   *[other] { $at }: las tuercas interiores { $nuts } no tienen torque final comprobado. Apriételas antes de las exteriores.
}

unmet-in-order = Primero va la acción { $n }. { $action }

list-and = { $before } y { $last }
place-vehicle = Vehículo
condition-instructor-saw = visto y firmado por un instructor
condition-answered-first = respuesta del aprendiz dada primero
unmet-instructor-saw = { $what }: ningún instructor lo ha firmado. Pida que lo vea y lo firme.
unmet-answered-first-drive = Diga primero qué ejes dan tracción.
unmet-answered-first-pattern = Diga primero qué patrón elegiría.
unmet-answered-first-lifts = Diga primero qué se levanta, un levantamiento tras otro.
unmet-answered-first-order = Diga primero en qué orden se aprietan las tuercas.
unmet-answered-first-target = Diga primero en cuánto se pone el torquímetro.
pair-not-known = no se sabe
pair-apart = { $by } de diferencia en diámetro; se permiten { $allowed }
pair-larger-inside = la interior { $by } mayor
