# Names that come up everywhere.
state-sound = en buen estado
state-watch = en observación
state-at-limit = en el límite
state-below-limit = por debajo del límite
state-unsafe = condición insegura: no maneje

part-hub-face = cara de la maza
part-studs = espárragos
part-seats = asientos
part-valve = válvula
part-tire = llanta
part-rim = rin
part-brake = freno
part-pads = balatas
part-disc = disco
part-hose = manguera de freno
part-boots = cubrepolvos
part-damper = amortiguador
part-bearing = balero de la rueda
part-hub-bore = centro de la maza
part-weights = contrapesos
part-other = otra parte

drive-front = tracción delantera
drive-rear = tracción trasera
drive-all = tracción en todas las ruedas
drive-part-time = tracción conectable en las cuatro ruedas
drive-unknown = tracción no conocida
drive-none = ningún eje con tracción

class-car = carro de pasajeros
class-light-truck = camioneta
class-truck = camión de carga
class-bus = autobús
class-light-trailer = remolque ligero
class-trailer = remolque
class-motorcycle = motocicleta

role-mechanic = mecánico
role-apprentice = aprendiz
role-instructor = instructor
role-customer = cliente

status-open = abierto
status-parked = en espera
status-signed = firmado
status-closed = terminado sin firma

pattern-rearward-cross = cruce hacia atrás
pattern-forward-cross = cruce hacia adelante
pattern-x = X
pattern-front-to-rear = de adelante a atrás
pattern-side-to-side = de lado a lado
pattern-leave-as-is = dejar como está
pattern-flat = cambio de una rueda desinflada
pattern-spare = repuesto en lugar de la llanta desinflada
pattern-other = otros movimientos
pattern-five = { $pattern }, con el repuesto

kind-torque = torque de las tuercas
kind-placard = presiones de la etiqueta
specification-from = { $value } ({ $source })
kind-lift-points = puntos de levantamiento
kind-drive = tracción
kind-pattern = patrón de rotación

photo-sidewall = costado
photo-tread = banda de rodadura
photo-hub = maza
photo-placard = etiqueta de llantas
photo-manual = página del manual
photo-damage = daño o hallazgo
photo-plate = placa
photo-odometer = odómetro

sidewall-outer = costado exterior
sidewall-inner = costado interior
tire-directional = flecha de rotación
tire-asymmetric = asimétrica
tire-studded = con clavos de invierno
tire-temporary = repuesto temporal
tire-retread = recauchutada
tire-regrooved = reranurada

sensors-direct = un sensor en cada rueda
sensors-indirect = se lee de la velocidad de las ruedas
sensors-none = sin sensores
sensors-unknown = sensores no conocidos

means-lift = en el elevador
means-stands = en soportes
means-jack = solo en un gato

tool-wrench = torquímetro
tool-depth-gauge = medidor de profundidad
tool-pressure-gauge = medidor de presión
tool-gun = pistola de impacto
tool-bar = barra limitadora de torque
tool-jack = gato
tool-stand = soporte
tool-lift = elevador

signature-name = por nombre
signature-drawn = con firma dibujada

hub-not-looked = maza sin mirar
hub-covered = una tapa esconde el centro de la maza
hub-capless-unit = un balero cerrado, que no dice nada
hub-shaft-end = una punta estriada o tuerca de eje en el centro de la maza
hub-shaft = un semieje entra en la maza por detrás
hub-no-shaft = nada entra en la maza por detrás
hub-axle = eje { $axle }, lado { $side }
side-left = izquierdo
side-right = derecho
wheel-turns = la rueda giró
wheel-held = algo detuvo la rueda
shaft-with-wheel = su semieje giró con ella
shaft-still = su semieje quedó quieto
shaft-not-seen = no se vio su semieje
opposite-other-way = la rueda opuesta giró al contrario
opposite-same-way = la rueda opuesta giró igual
opposite-still = la rueda opuesta quedó quieta
opposite-not-tried = no se miró la rueda opuesta
gear-neutral = en neutral
gear-park = en park
gear-in-gear = en cambio
brake-released = freno de estacionamiento suelto
brake-set = freno de estacionamiento puesto
brake-not-known = freno de estacionamiento no conocido
ground-none = ninguna rueda del eje en el aire
ground-one = una rueda del eje en el aire
ground-both = ambas ruedas del eje en el aire
engine-off = motor apagado
engine-running = motor encendido
differential-open = diferencial abierto
differential-locking = diferencial con bloqueo
free-hubs-not-fitted = sin mazas de rueda libre
free-hubs-free = mazas de rueda libre en libre
free-hubs-locked = mazas de rueda libre bloqueadas
motor-own = con motor propio
motor-none = sin motor propio

name-erased = nombre borrado
person-unknown = una persona que no está en este libro
tire-short = llanta { $short }
tire-marked = llanta { $mark }
tool-unknown = una herramienta que no está en este libro

# One plain sentence for each thing said. With a place before it: “FL: tread …”.
fact-at = { $at }: { $said }
fact-reason = { $said } Razón: { $reason }.

fact-person-added = Se agregó a { $person } como { $role }.
fact-vehicle-added = Vehículo agregado: { $name }, { $model }, { $class }.
fact-vehicle-added-own = Vehículo agregado: { $name }, { $model }, { $class }; vehículo propio.
fact-specification = Dato anotado para { $model }: { $what }, { $value }. Fuente: { $source }.
fact-specification-unsourced = Dato anotado para { $model }: { $what }, { $value }. Sin fuente.
fact-specification-unknown = Se buscó y no se encontró: { $what }.
fact-job-opened = Trabajo abierto: { $procedure }. { $circumstances }.
fact-job-opened-bare = Trabajo abierto: { $procedure }.
fact-job-parked = Trabajo puesto en espera.
fact-job-resumed = Trabajo retomado.
fact-job-closed = Trabajo terminado sin firma.
fact-job-signed = Trabajo firmado { $how }.
fact-hands-changed = Manos en el trabajo de aquí en adelante: { $person }.
fact-odometer = Odómetro { $reading }.
fact-odometer-estimated = Odómetro cerca de { $reading }, estimado.
fact-odometer-cluster-replaced = Odómetro { $reading }; se cambió el instrumento.
fact-complaint = Dicho sobre el vehículo: “{ $text }”.
fact-damage-none = daños previos: no se vio ninguno.
fact-damage = daños previos: { $text }.
fact-approved = Aprobado { $how }: { $what }.
fact-declined = No aprobado { $how }: { $what }.
approved-work = el trabajo
fact-unsafe-approved = Cliente avisado de lo inseguro; trabajo en ello aprobado { $how }.
fact-unsafe-declined = Cliente avisado de lo inseguro; trabajo en ello no aprobado { $how }.
fact-tire-fitted = { $tire } instalada.
fact-tire-removed = { $tire } quitada del vehículo para siempre.
fact-mark-chalked = marca { $mark } puesta con tiza en la llanta.
fact-mark-read = marca { $mark } leída.
fact-photo-pending = cámara abierta para una foto: { $of }.
fact-photo = foto tomada: { $of } ({ $digest }).
fact-photo-dated = foto tomada: { $of } ({ $digest }), según su propio registro el { $taken }.
fact-sidewall = { $side } dice “{ $text }”, { $by }.
fact-sidewall-looks = { $side } dice “{ $text }”, { $by }; { $looks }.
read-by-typed = a mano
read-by-camera = leído por { $reader } ({ $model }) y confirmado
fact-tread = banda de rodadura { $grooves }; lo más bajo { $lowest }.
fact-pressure-found = presión hallada { $pressure }{ $cold }.
fact-pressure-set = presión puesta a { $pressure }{ $cold }.
pressure-cold = , en frío
pressure-warm = , en caliente
pressure-untold = { "" }
fact-sensor = sensores de presión: { $told }.
sensor-number = número { $number }
lamp-on = luz de advertencia encendida
lamp-off = luz de advertencia apagada
relearned-yes = con reaprendizaje
relearned-no = sin reaprendizaje
fact-drive-hub = En { $place }: { $seen }.
fact-drive-manual = El manual dice: { $drive }.
fact-drive-owner = El dueño dice: { $drive }.
fact-plan = Movimientos elegidos: { $pattern }. { $moves }.
fact-plan-bare = Movimientos elegidos: { $pattern }; no se mueve ninguna llanta.
plan-move = { $from } a { $to }
fact-wheels-chosen = Ruedas que se quitan: { $at }.
fact-spare = El repuesto va en { $at } por la llanta desinflada: { $told }.
spare-nuts-same = con las tuercas de la rueda que se quitó
spare-nuts-own = con sus propias tuercas
spare-studs = { $count } tuercas
spare-limit = no más de { $limit }
spare-limit-unknown = no se encontró el límite de velocidad
spare-replace = se cambia antes de { $distance }
spare-replace-unknown = no se encontró la distancia para cambiarlo
fact-set-brought = El juego que entra está listo en { $at }.
fact-tire-stored = rueda guardada en { $rack }.
found-bulge = bulto
found-cut = corte, sin cuerdas a la vista
found-cord = cuerdas a la vista
found-nail-tread = objeto clavado en la banda de rodadura
found-nail-shoulder = objeto clavado en el hombro
found-nail-sidewall = objeto clavado en el costado
look-thickness = { $thickness } de grueso
relearn-drive = manejando
relearn-menu = desde el menú del vehículo
relearn-wheel-tool = con una herramienta de sensores en cada rueda
relearn-socket = en el conector de diagnóstico
fact-lifted-clear = levantado { $means } hasta dejar las ruedas apenas libres.
fact-lifted-full = levantado { $means } a la altura de trabajo.
fact-lifted-held = visto que sostiene { $means }.
fact-lifted-all-clear = nadie ni nada debajo.
fact-lifted-down = bajado al piso.
fact-wheel-off = rueda quitada.
fact-wheel-on = rueda montada, { $tire }.
fact-nuts = { $nuts }, { $pass }{ $turned }{ $setting }{ $tool }.
nuts-one = tuerca { $nut }
nuts-in-order = { $count ->
    [one] 1 tuerca
   *[other] las { $count } tuercas en orden
}
nut-pass-cracked = afloje de un cuarto de vuelta
nut-pass-started = inicio a mano
nut-pass-snug = asentado
nut-pass-final = apriete a torque final
nut-pass-recheck = reapriete
nut-moved = ; giro antes del clic
nut-still = ; clic sin giro
nut-held = ; clic sin giro, está firme
nut-setting = ; torquímetro a { $setting }
nut-tool = ; con { $tool }
fact-tool-added = Herramienta anotada: { $name }, { $told }.
fact-tool-used = Herramienta usada: { $name }.
fact-limits-book = Límites para el libro: { $chosen }.
fact-limits-job = Límites para este trabajo: { $chosen }.
fact-step-seen = “{ $step }” Visto.
fact-step-answer = “{ $step }” Respuesta: { $answer }.
fact-step-skipped = omitido: “{ $step }”
fact-gate-opened = barrera abierta en “{ $step }” sin esto: { $condition }.
fact-finding = { $part }, { $state }.
fact-finding-note = { $part }, { $state }; { $note }.
fact-recheck = Se avisó al conductor: reapretar las tuercas después de { $after }.
fact-recheck-none = Se avisó al conductor: reapretar las tuercas; no se dio distancia.
fact-corrected = Corrección: { $said }
fact-archived = Se guardó: { $what }.
fact-brought-back = Se usa otra vez: { $what }.
thing-unknown = (no está en este libro)
thing-vehicle = vehículo { $name }
thing-set = ruedas guardadas de { $name }
thing-person = { $name }
thing-tool = herramienta { $name }
fact-withdrawn = Se retiró una anotación anterior.

shelf-torque-studs = { $torque }, { $studs } espárragos
placard-axle = eje { $axle } { $printed }
placard-spare = repuesto { $printed }
placard-unread = sin imprimir o ilegible
placard-full = { $pressure } con carga completa
placard-size = medida { $size }
printed-range = { $low } a { $high }
printed-dry = rosca seca
printed-oiled = rosca aceitada
printed-words = “{ $words }”

tool-papers-wrench = ±{ $accuracy } %, paso { $step }
tool-papers-rating = marca { $rating }
tool-papers-resolution = muestra pasos de { $resolution }
tool-calibrated = calibrado el { $day }
tool-calibrated-unknown = calibración no conocida
fact-named = { $said }, por { $name }.
fact-covered = { $count ->
    [0] La foto { $digest } sale sin tapar.
    [one] Se tapa 1 parte de la foto { $digest } donde sale.
   *[other] Se tapan { $count } partes de la foto { $digest } donde sale.
}

tool-papers-scale = escala de { $low } a { $high }
tool-papers-highest = hasta { $highest }
tool-papers-socket = dado de { $hex }
tool-papers-for-guns = para pistolas de hasta { $most }
tool-papers-count = { $count ->
    [one] uno
   *[other] son { $count }
}
tool-calibrated-every = { $count ->
    [one] otra vez después de 1 mes
   *[other] otra vez después de { $count } meses
}
tool-line = { $name }: { $told }
tool-line-warned = { $line }; { $warning }
tool-due = se vencía el { $day }
tool-old = hace más de un año
power-air = de aire
power-electric = eléctrica
fact-tool-retired = Herramienta retirada: { $name }.
fact-wheel-shared-by = { $person } sostuvo el otro lado de la rueda.
fact-wheel-shared = otra persona sostuvo el otro lado de la rueda.
fact-answer-first = Desde aquí responde antes que Lugbook.
fact-answer-first-off = Desde aquí responde primero Lugbook.
fact-answer-given = Respondió primero. { $both }
fact-steps-seen = Visto por { $person } y firmado en el aparato del aprendiz: { $steps }.
fact-code-set = Código puesto para { $person }.
fact-code-refused = Se dio un código equivocado para { $person }.
fact-equipment = Lo que cambia cómo se levanta: { $has }.
fact-equipment-none = Ni suspensión de aire ni batería de alto voltaje.
equipment-air-suspension = suspensión de aire
equipment-high-voltage = batería de alto voltaje
fact-gear-rated = Peso que se levanta: { $weight }; menor capacidad del equipo: { $rating }.
fact-around = { $around } alrededor de la banda.
nut-pass-loosened = aflojada otra vez
shelf-brakes = por lo menos { $pads } de grueso
look-least = mínimo { $least } impreso en la pieza
part-centering-ring = anillo centrador
part-valve-cap = tapón de la válvula
photo-vehicle = vehículo completo
kind-brakes = balatas
