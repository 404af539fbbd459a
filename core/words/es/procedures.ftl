# Steps: a verb first, one action, at most 15 words. The place is shown apart.
# US shop usage. What stands here is common practice; the maker's manual stands above it.
procedure-rotation-on-a-lift = Rotación de llantas en elevador
procedure-rotation-lift-by-lift = Rotación de llantas con un gato, levantando paso a paso
procedure-rotation-with-jack-and-stands = Rotación de llantas con un gato y cuatro soportes
procedure-wheel-off-and-on = Quitar y poner ruedas para otro trabajo
procedure-spare-at-the-roadside = Repuesto puesto a la orilla del camino
procedure-seasonal-changeover = Cambio de temporada
procedure-recheck-visit = Reapriete de tuercas de rueda
procedure-tread-and-age-check = Revisión de banda de rodadura y edad de llantas, ruedas en el piso

step-damage = Anote los daños que vea al rodear el vehículo.
step-approval = Pida al cliente que apruebe el trabajo.
step-lock-key = Busque la llave de las tuercas de seguridad.
step-odometer = Lea el odómetro.
step-placard = Lea las presiones en frío en la etiqueta de llantas.
step-torque = Lea el torque de las tuercas en el manual del vehículo.
step-studs = Cuente los espárragos de una rueda.
step-drive = Aclare qué ejes tienen tracción, por el manual o en las mazas.
step-sidewall-photo = Fotografíe el costado exterior.
step-sidewall = Lea en el costado la medida, la descripción de servicio y la fecha.
step-mark = Marque la llanta con tiza.
step-tread = Mida cada ranura en tres puntos, primero la ranura exterior.
step-plan = Elija a dónde va cada llanta.

step-place = Mire si este lugar está nivelado, firme y lejos del tráfico.
step-warned = Vea luces encendidas, chaleco, triángulo, freno puesto y calza en la rueda opuesta.
step-spare = Lea el repuesto: medida, edad, presión, tuercas, límite de velocidad.
step-clear-jack = Levante la esquina desinflada hasta que la rueda quede apenas libre.
step-hang-spare = Monte el repuesto, leída antes su marca.
step-all-clear-jack = Mire debajo del vehículo: personas, pies y herramientas.
step-flat-photo = Fotografíe lo que desinfló la llanta.
step-tell-spare = Avise al conductor el límite de velocidad del repuesto y cuándo cambiarlo.
step-set = Elija el juego que entra.
step-coming-sidewall = Lea el costado de la llanta que entra aquí.
step-coming-mark = Marque con tiza la llanta que entra aquí.
step-coming-tread = Mida cada ranura de la llanta que entra aquí.
step-own-nuts = Mire si las ruedas que entran necesitan sus propias tuercas.
step-stored = Guarde en su estante las ruedas que se quitaron.
step-wheels = Elija las ruedas que se quitan.
step-gear = Elija el gato y los soportes a la mano.
step-middles = Busque qué ejes levanta el manual por el centro.
step-tray-lift = Cuente las tuercas y herramientas que sobran de esta levantada.

step-lift-points = Ponga las almohadillas del elevador bajo los puntos de levantamiento del fabricante.
step-clear = Levante el vehículo hasta que sus ruedas queden apenas libres.
step-rock-lift = Sacuda el vehículo en el elevador.
step-full = Levante el vehículo a la altura de trabajo.
step-held-lift = Vea cada seguro del elevador enganchado y cargando.

step-chock-others = Calce las ruedas que quedan en el piso, por delante y por detrás.
step-clear-corner = Levante el vehículo hasta que las ruedas que se quitan queden apenas libres.
step-stands = Ponga un soporte bajo cada punto de apoyo junto al gato.
step-rest = Baje el vehículo sobre sus soportes.
step-rock = Sacuda el vehículo sobre lo que lo sostiene.
step-work-done = Vea el otro trabajo hecho y ninguna herramienta en los huecos de rueda.
step-off-stands = Levante el vehículo hasta liberar sus soportes.
step-stands-out = Saque los soportes por un lado.
step-brake = Ponga el freno de estacionamiento en piso firme y nivelado.
step-chock-rear = Calce ambas ruedas traseras, por delante y por detrás.
step-cracked = Afloje cada tuerca un cuarto de vuelta con la llanta en el piso.
step-jack-points = Busque los puntos del fabricante para gato y soportes.
step-front-up = Levante el frente hasta que ambas ruedas queden apenas libres.
step-front-stands = Ponga un soporte bajo cada punto de apoyo delantero.
step-front-rest = Baje el frente sobre sus soportes.
step-rear-up = Levante la parte trasera hasta que ambas ruedas queden apenas libres.
step-rear-stands = Ponga un soporte bajo cada punto de apoyo trasero.
step-rear-rest = Baje la parte trasera sobre sus soportes.
step-clear-stands = Vea que las cuatro ruedas cuelguen apenas libres.
step-rock-stands = Sacuda el vehículo sobre sus cuatro soportes.
step-held-stands = Vea cada soporte derecho, trabado y cargando.

step-wheel-off = Quite la rueda.
step-looks = Revise la cara de la maza, espárragos, asientos, válvula y llanta.
step-looks-behind = Revise balatas, disco, manguera, cubrepolvos, amortiguador y balero de la rueda.
step-finding-photo = Fotografíe lo que aquí no está bien.
step-mark-read = Lea la marca de la llanta antes de las tuercas.
step-started = Empiece cada tuerca a mano.
step-snug = Asiente las tuercas en estrella.
step-tray = Cuente las tuercas y herramientas que sobran.
step-all-clear = Mire debajo de todo el vehículo: personas, herramientas y ruedas.
step-lower = Baje el vehículo al piso.

step-rear-off-stands = Levante la parte trasera hasta liberar ambos soportes.
step-rear-stands-out = Saque ambos soportes traseros por un lado.
step-rear-down = Baje la parte trasera al piso.
step-chock-rear-again = Calce otra vez ambas ruedas traseras, por delante y por detrás.
step-front-off-stands = Levante el frente hasta liberar ambos soportes.
step-front-stands-out = Saque ambos soportes delanteros por un lado.
step-front-down = Baje el frente al piso.

step-final = Apriete cada tuerca al torque final en estrella.
step-rechecked = Reapriete cada tuerca al torque final, en estrella.
step-recheck-again = Avise al conductor cuándo toca el próximo reapriete.
step-pressure-found = Mida la presión como está.
step-pressure = Ponga la presión en frío de la etiqueta.
step-lamp-before = Mire la luz de presión de llantas antes del trabajo, con el encendido puesto.
step-lamp = Mire la luz de presión de llantas con el encendido puesto.
step-relearn = Haga el reaprendizaje de los sensores donde el vehículo lo pida.
step-key-back = Regrese la llave de seguridad a su lugar.
step-recheck = Avise al conductor cuándo se reaprietan las tuercas.
step-sign = Firme el trabajo.

choice-away = nivelado, firme, tráfico bien lejos
choice-traffic-left = nivelado, firme, el tráfico pasa por la izquierda
choice-traffic-right = nivelado, firme, el tráfico pasa por la derecha
choice-close = el tráfico pasa cerca: grúa
choice-slope = piso en pendiente o blando: grúa
choice-same-nuts = sirven las tuercas que se quitaron
choice-own-nuts = sus propias tuercas
choice-at-hand = a la mano
choice-none-fitted = sin tuercas de seguridad
choice-missing = falta
choice-jack-two-stands = un gato de piso y dos soportes
choice-jack-alone = solo un gato de piso, con un repuesto de tamaño completo
choice-roadside-jack = el gato del vehículo a la orilla del camino: una rueda
choice-corners-only = ninguno, o no se sabe: cada esquina por sí sola
choice-front-middle = el eje delantero
choice-rear-middle = el eje trasero
choice-both-middles = ambos ejes
choice-done = hecho
choice-owner-told = se explicó al dueño
choice-not-needed = no hace falta

circumstance-lift = en elevador
circumstance-stands = en soportes
circumstance-roadside = a la orilla del camino
circumstance-customer = vehículo de cliente
circumstance-own = vehículo propio
circumstance-air = pistola de aire
circumstance-electric = pistola eléctrica
circumstance-hand-tools = herramientas de mano
circumstance-recheck-left = falta otro reapriete

# Why a procedure's file is not taken. $reason ends the sentence.
bad-procedure = { $file }, renglón { $line }: { $reason } No se usa nada de este archivo.
bad-unreadable = esto no se puede leer: { $why }.
bad-too-large = el archivo pasa de 256 kB.
bad-step-count = { $count ->
    [0] no hay pasos.
   *[other] hay { $count } pasos; se aceptan hasta 200.
}
bad-twice-the-id = otro paso tiene ya el id “{ $step }”.
bad-no-sentence = el paso “{ $step }” necesita “says” o “text”, no ambos.
bad-choices = el paso “{ $step }” y sus opciones no concuerdan; solo un paso de elección las tiene.
bad-after = va después de “{ $step }”, que no está antes con esa opción.
bad-caution = no se conoce la precaución “{ $code }”.
bad-circumstance = no se conoce la circunstancia “{ $code }”.
bad-id = el id debe tener letras, cifras y guiones, 64 como máximo.
bad-nothing-to-meet = el paso “{ $step }” espera “{ $condition }”, y ningún paso anterior lo pide.
bad-danger-left-out = ningún paso lleva el peligro “{ $code }”; ningún archivo puede omitir un peligro.
bad-no-signature = el último paso debe ser la firma.
bad-no-gate = el paso “{ $step }” debe esperar “{ $condition }”; ningún archivo puede omitir esa barrera.
