# The job card.
card-title = Hoja de servicio de ruedas
card-title-of = Hoja de servicio de ruedas { $number }: { $name }
card-kicker = Hoja de servicio de ruedas, trabajo { $number }
card-no-vehicle = El vehículo de este trabajo no está en este libro.
card-because = Razón: { $reason }.
card-practice = Trabajo de práctica: no cuenta para desgaste, vencimientos ni historial.

card-model = Modelo
card-class = Clase
card-lift-points = Puntos de levantamiento
card-plate = Placa
card-drive = Tracción
card-odometer = Odómetro
card-work = Trabajo
card-opened = Abierto
card-ended = Terminado
card-people = Personas
card-moment = { $day } { $clock }
card-person = { $name }, { $role }: { $wrote ->
    [one] 1 anotación
   *[other] { $wrote } anotaciones
}, { $hands } con sus manos
card-signed-by = Firmado { $how }: { $name }
card-drawn = Firma dibujada: { $name }
card-estimated = estimado
card-cluster-replaced = instrumento cambiado
card-not-recorded = sin anotar
card-not-known = no se conoce
card-not-read = sin leer
card-places = Lugares: { $places }.
card-place-named = { $at } { $name }

card-findings = Hallazgos
card-nothing-found = { $count ->
    [0] No se halló nada, y no se revisó ninguna parte.
    [one] No se halló nada. Se revisó 1 parte.
   *[other] No se halló nada. Se revisaron { $count } partes.
}
card-looked = { $count ->
    [0] No se revisó ninguna parte a ojo.
    [one] Se revisó 1 parte a ojo.
   *[other] Se revisaron { $count } partes a ojo.
}
card-by-eye = juzgado a ojo
card-rule-broken = No se cumple una norma cuyo texto se leyó.

card-to-do = Sin hacer
card-next = Sigue:

card-moves = A dónde va cada llanta
card-spare = Repuesto en el vehículo
card-spare-limit = Velocidad máxima
card-spare-replace = Cambiar antes de
card-spare-replace-by = { $distance }: con { $odometer } en el odómetro
card-spare-nuts = Tuercas
card-goes-on = { $at }, entra
card-came-off = { $at }, se quitó
label-tread = Banda más baja
card-stored = Ruedas guardadas
card-stored-table = Dónde se quitó cada rueda y dónde se guarda.
card-rack = Estante
label-title = Etiquetas de ruedas guardadas
label-stored = Guardada
label-none = En este trabajo no se guardó ninguna rueda.
card-wheels = Ruedas quitadas y puestas
card-off-and-on = Quitadas y montadas en su mismo lugar: { $at }.
card-none-off = Todavía no se quitó ninguna rueda.
card-no-plan = No se eligieron movimientos.
card-drawing = El vehículo visto desde arriba, el frente hacia arriba
card-drawing-filled = Las ruedas llenas se quitaron en este trabajo.
card-raised = Levantado
card-raised-by = { $weight }, con equipo de { $rating } de capacidad
card-pairs = Ruedas dobles
card-pairs-held = Sujetas así: { $how }.
card-pairs-table = La llanta mayor de una pareja va afuera.
card-pair = Pareja
card-around-outer = Alrededor, exterior
card-around-inner = Alrededor, interior
card-pair-match = Igualdad
card-pair-looked-at = Revisado
card-not-measured = sin medir
card-pair-by-tape = iguales, por cinta
card-pair-by-tread = iguales, por medida y profundidad
card-pair-seen = válvulas y espacio vistos
card-pair-unseen = válvulas y espacio sin ver
card-drawing-still = No se mueve ninguna llanta.
card-front = frente
card-moves-table = Una flecha punteada está planeada; una continua es una rueda ya montada ahí.
card-tire = Llanta
card-was-at = Estaba en
card-planned = Planeado
card-hung = Montada en
card-stays = se queda
card-stayed = se quedó
card-on-carrier = en el portallanta del repuesto
card-not-hung = sin montar
card-tire-of = Llanta { $mark } en { $at }:
card-tire-of-to = Llanta { $mark }, de { $at } a { $to }:
card-tire-at = { $mark } en { $at }

card-tread = Profundidad de la banda de rodadura
card-no-tread = No se midió la banda de rodadura.
card-tread-how = Cada barra es la lectura más baja de una ranura alrededor de la llanta.
card-tread-places = Los lugares son los de antes de los movimientos.
card-bars = Profundidad de la llanta { $tire }
card-groove = Ranura { $number }
card-groove-outer = { $number }, exterior
card-groove-inner = { $number }, interior
card-lowest = Más baja
card-last-time = Anterior
card-limit = límite { $limit }
card-limit-printed = límite { $limit } ({ $printed })
card-readings = Todas las lecturas: { $readings }.
card-before = La vez anterior: { $day }, en { $at }.
card-before-at = La vez anterior: { $day }, { $odometer }, en { $at }.

card-sidewalls = Costados
card-no-sidewalls = No se leyó ningún costado.
card-sidewalls-table = Como se leyó en las llantas; edad del día en que se abrió el trabajo.
card-size = Medida
card-service = Servicio
card-tin = TIN
card-made = Hecha
card-age = Edad
card-more = También
card-nothing-more = nada
card-not-marked = sin marca
card-week = semana { $week } de { $year }, desde { $from }
card-years = en uno de estos años: { $years }
card-age-between = de { $least } a { $most }

card-nuts = Tuercas de rueda
card-no-nuts = No se quitó ninguna rueda ni se apretó ninguna tuerca.
card-torque = Torque impreso
card-thread = Rosca
card-hex = Dado
card-studs = Espárragos por rueda
card-source = Fuente
card-recorded = Anotado
card-torque-unknown = Especificación no conocida.
card-opened-because = La barrera final se abrió con esta razón: { $reason }.
card-nuts-of = Tuercas de rueda en { $at }, vistas desde afuera, con el orden dentro de cada tuerca
card-nuts-uncounted = No se contaron las tuercas.
card-nuts-final = { $count } de { $of } con torque final
card-nuts-held = { $count } de { $of } firmes: clic sin girar
card-nuts-moved-again = { $count } de { $of } con giro en el reapriete
card-nuts-not-proven = { $count } de { $of } con clic sin girar, sin comprobar
card-nuts-snug = { $count } de { $of } solo con asentado
card-nuts-begun = { $count } de { $of } solo con inicio a mano
card-nuts-nothing = { $count } de { $of } sin anotar
card-nuts-one-by-one = Anotado tuerca por tuerca.
card-nuts-in-order = Anotado como una rueda en orden.
card-nuts-both-ways = Anotado en parte tuerca por tuerca, en parte como una rueda en orden.
card-setting = Torquímetro a { $setting }.
card-setting-unknown = No se anotó a cuánto se puso el torquímetro.
card-rechecked = Reapriete: { $held } de { $of } sin girar.
card-legend-final = torque final: giró y luego hizo clic
card-legend-held = reapriete: firme
card-legend-moved-again = reapriete: giró
card-legend-not-proven = hizo clic sin girar: sin comprobar
card-legend-snug = asentada
card-legend-begun = empezada a mano
card-legend-nothing = sin anotar
card-order-how = El número es el orden de apriete; el lugar es la posición del reloj, doce arriba, visto desde afuera.
card-recheck = Reapriete
card-recheck-none-left = No falta otro reapriete para estas tuercas.
card-recheck-untold = A nadie se le avisó cuándo reapretar las tuercas.

card-pressures = Presiones
card-no-pressures = No se leyó ni se puso ninguna presión.
card-pressures-table = Halladas y puestas en este trabajo, frente a la etiqueta del lugar.
card-at = Lugar
card-placard = Etiqueta
card-found = Hallada
card-set = Puesta
card-placard-from = Etiqueta: { $source }.
card-no-placard = No se conoce la etiqueta.
card-sensor-table = Número de cada sensor donde están ahora las ruedas.
card-sensor-number = Sensor
card-sensors = Sensores y luz
card-no-sensors = No se revisaron sensores ni luz.

card-gates = Barreras abiertas y pasos omitidos
card-no-gates = Ninguno.
card-opened-gates = Barreras abiertas con una razón
card-skipped = Pasos omitidos con una razón

card-given = Aprobación y daños previos
card-own = Vehículo propio: no se pidió aprobación.
card-no-approval = No se anotó ninguna aprobación.
card-approvals = Aprobación
card-damage = Daños previos
card-no-damage = No se anotaron daños previos.
card-said-by = { $said } { $person }, { $at }.

card-tools = Herramientas
card-no-tools = No se nombró ninguna herramienta.
card-tools-table = Según sus papeles.
card-tool = Herramienta
card-kind = Tipo
card-calibration = Calibración
card-no-calibration = este tipo no la lleva

card-photos = Fotos
card-covered = Hay partes tapadas.
card-photo-missing = El archivo de esta foto no está a la mano.
card-see-photo = Vea su foto.

card-corrections = Correcciones
card-corrections-table = Los dos valores se quedan en el libro.
card-stood = Decía
card-holds = Vale
card-why = Razón
card-who = Quién
card-taken-back = Retirado
card-by-at = { $person }, { $at }

card-record = Todas las anotaciones
card-entries = { $count ->
    [one] 1 anotación de este trabajo, como se escribió.
   *[other] { $count } anotaciones de este trabajo, como se escribieron.
}
card-hands-of = { $person }; manos: { $hands }
card-not-sealed = Firmado { $how }, sin sello del aparato.
card-sealed = Firmado { $how } y sellado por el aparato { $device }.
card-sealed-after = { $count ->
    [one] Una anotación llegó después del sello.
   *[other] { $count } anotaciones llegaron después del sello.
}
card-provable = Escrito por el aparato { $device }. “lugbook card verify” dice si se cambió el archivo HTML de esta hoja; no prueba la hora, ni que una tuerca se apretó de verdad.
card-unsigned = Sin firmar.
card-digest = Última anotación: { $digest }. Estos diez signos distinguen dos hojas; no prueban nada.
card-deference = El manual del fabricante del vehículo, las normas locales y la práctica con licencia mandan sobre todo lo de esta hoja.
card-times = Las horas son de tiempo universal (UTC), según el reloj de este aparato.

# A calendar file.
calendar-recheck = Reapriete las tuercas de las ruedas: { $vehicle }
calendar-per-year = Eso es manejando { $distance } al año.
calendar-deference = El manual del fabricante, las normas locales y la práctica con licencia mandan sobre esto.

# The history of a vehicle.
history-title = Historial del vehículo: { $name }
history-kicker = Historial del vehículo
history-no-visit = Todavía no hay ninguna visita de este vehículo en el libro.
history-odometer-on = { $odometer } el { $day }
history-wear = Desgaste y pronóstico
history-no-tread = Todavía no se midió la banda de rodadura en una visita que leyera el odómetro.
history-left-out = { $count ->
    [one] 1 lectura queda fuera del pronóstico: su odómetro no se leyó, o no se sabe dónde rodó la llanta desde entonces.
   *[other] { $count } lecturas quedan fuera del pronóstico: su odómetro no se leyó, o no se sabe dónde rodó la llanta desde entonces.
}
history-slipped = Lecturas que no concuerdan
history-chart-how = Los puntos son lecturas de la ranura más baja; un punto abierto no concuerda con los demás. La línea punteada es el pronóstico donde está ahora la llanta; la franja a su alrededor la contiene 95 de 100 veces.
history-chart = Profundidad de la llanta { $tire } según la distancia
history-chart-read = Leído: { $readings }.
history-point = { $depth } con { $odometer }
history-depth-mm = Profundidad, mm
history-depth-32 = Profundidad, 1/32 pulg
history-distance-km = Odómetro, km
history-distance-mi = Odómetro, mi
history-forecast-how = Un pronóstico es aritmética sobre las lecturas de arriba. Mida en cada visita; un límite cuenta según lo medido.
history-visits = Visitas
history-visits-table = Todas las visitas menos las de práctica, la más antigua primero.
history-visit = { $day }, trabajo { $number }
history-day = Día
history-state = Estado
history-hands = Manos
history-worst = Peor hallazgo
history-nothing-found = sin hallazgos
history-places = Dónde estuvo cada llanta
history-places-table = La llanta que llegó en cada lugar, por su marca.
history-now = ahora
history-readings = Lecturas de la banda de rodadura
history-readings-table = Ranuras de la exterior hacia adentro; los lugares alrededor de la llanta van separados por punto y coma.
history-grooves = Ranuras

# On paper.
paper-contents = Contenido
paper-page = página { $number } de { $of }
card-papers = Papeles
card-second-hands = { $name } sostuvo el otro lado de la rueda en { $at }
