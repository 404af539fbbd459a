# What to do: a verb first, one action, at most 15 words. The place is shown apart.
# Common practice, no source; the vehicle's manual stands above it.
act-secure-site = Deténgase en un lugar seguro y nivelado, lejos del tráfico.
act-secure-vehicle = Ponga el freno de estacionamiento, con el motor apagado.
act-fetch-spare = Traiga el repuesto.
act-chock = Calce esta rueda por ambos lados.
act-unchock = Retire las calzas de esta rueda.
act-crack-nuts = Afloje cada tuerca un cuarto de vuelta con la llanta en el piso.
act-raise-runways = Levante las plataformas a la altura de trabajo.
act-lower-runways = Baje las plataformas.
act-set-arms = Ponga los brazos del elevador bajo los puntos de levantamiento del fabricante.
act-raise-clear = Levante el vehículo hasta que sus ruedas queden apenas libres.
act-set-jack = Ponga el gato bajo el punto de levantamiento del fabricante.
act-raise = Levante a la altura de trabajo.
act-set-stand = Ponga un soporte bajo el punto de apoyo del fabricante.
act-rest-on-stands = Baje despacio hasta que los soportes carguen el peso.
act-rest-on-locks = Baje despacio hasta que los seguros carguen el peso.
act-see-stands = Vea cada soporte derecho, trabado y cargando.
act-see-locks = Vea cada seguro enganchado y cargando.
act-rock = Sacuda el vehículo.
act-wheel-under = Acueste esta rueda bajo el estribo.
act-wheel-out = Saque esta rueda de debajo del estribo.
act-nuts-off = Quite todas las tuercas menos la de las doce.
act-wheel-off = Quite a mano la última tuerca y esta rueda.
act-hold-nut = Enrosque a mano una tuerca en la rueda interior.
act-wheel-on = Monte esta rueda en el espárrago de las doce.
act-start-nuts = Empiece cada tuerca a mano.
act-snug = Asiente las tuercas en estrella.
act-clear-under = Mire debajo de todo el vehículo: personas, herramientas y ruedas.
act-take-weight = Levante un poco, hasta liberar soportes o seguros.
act-remove-stand = Saque el soporte por un lado.
act-lower = Baje al piso.
act-stow = Guarde la rueda que sobra.
act-final-torque = Apriete cada tuerca al torque final en estrella.

# What else belongs to an action, shown smaller.
detail-secure-site = Luces encendidas, chaleco puesto, triángulo afuera. En pendiente o cerca del tráfico, pida grúa.
detail-secure-vehicle = En park, o con un cambio puesto en transmisión manual. Llave guardada, nadie adentro.
detail-set-jack = Piso firme y nivelado. El manual dice dónde están los puntos de levantamiento.
detail-rock = Un empujón leve por un lado. Si algo se mueve, baje y coloque otra vez.
detail-wheel-under = Con el costado hacia abajo, lejos del gato, empujada por un lado.
detail-nuts-off = Tuercas en una charola a la mano, contadas.
detail-wheel-off = Una rueda pesada es para dos personas, una por lado. Acostada en el piso, fuera del paso.
detail-wheel-on = Con pernos de rueda, un pasador guía a las doce hace de espárrago.
detail-start-nuts = Una tuerca que se traba se quita y se empieza otra vez.
detail-snug = Una persona empuja el borde inferior hacia adentro mientras corren las tuercas.
detail-final-torque = Con torquímetro y la llanta en el piso. La cifra es la del fabricante.

# An action with its place and wheel.
action-at = { $at }: { $do }
action-wheel = { $at }: { $do } Es la rueda de { $wheel }.

# Where an action stands in a job, and which tire it handles.
turn = Acción { $n } de { $of }, levantada { $lift } de { $lifts }.
turn-before = Acción { $n } de { $of }, antes de la primera levantada.
turn-mark = Es la llanta con la marca { $mark }.
turn-wheel = Es la rueda de { $wheel }.

# How many lifts.
lifts-none = No hay que levantar nada.
lifts-proved = { $count ->
    [one] Basta levantar una vez. Ningún orden necesita menos.
   *[other] Basta levantar { $lifts } veces. Ningún orden necesita menos.
}
lifts-not-proved = Basta levantar { $lifts } veces. No está probado que bastarían { $least }.

# What to know about the gear.
note-not-checked = { $part }: sin comparar con la carga, porque falta una capacidad o un peso.
note-axle-share-assumed = No se conocen los pesos por eje: cada eje se tomó como { $percent } % del vehículo.
note-corners-only = No se dio punto de levantamiento al centro de un eje, así que cada extremo se levanta solo.
gear-lift = El elevador
gear-bridge-jack = El gato de puente
gear-jack = El gato
gear-stand = Un soporte

# Why there is no order of work.
lift-no-axles = El vehículo no tiene ejes. Dé al menos uno.
lift-too-many-axles = Son más de { $most } ejes. Planee el vehículo por partes.
lift-too-much-gear = Son más de { $most } de un tipo de equipo. Dé { $most } como máximo.
lift-no-such-place = Este vehículo no tiene lugar { $at }. Nombre uno de { $known }.
lift-moved-twice = La rueda en { $at } se manda a dos lugares. Mándela a uno.
lift-two-wheels = Se mandan dos ruedas a { $at }. Mande una.
lift-nowhere-to-go = La rueda en { $at } debe dejar su lugar y no se manda a ninguno. Diga a dónde va.
lift-overloaded = { $part } tiene capacidad de { $rating } y tendría que cargar { $load }. Use equipo con esa capacidad.
lift-not-with-this-gear = No se puede hacer con este equipo.
lift-lacking = No se puede hacer con este equipo. Se podría con { $needs }.
lift-too-large = No se halló un orden en el tiempo dado. Divida los movimientos en dos trabajos.
need-stands = { $count ->
    [one] un soporte
   *[other] { $count } soportes
}
need-full-size-spare = un repuesto de tamaño completo
need-bridge-jacks = { $count ->
    [one] un gato de puente
   *[other] { $count } gatos de puente
}
need-other-gear = un elevador de otro tipo, o un gato y soportes
need-or = { $one } o { $other }

# Why a file is no request.
request-too-long = El archivo tiene más de { $most } caracteres. Dé solo la pregunta.
request-not-toml = No se puede leer el renglón { $line } del archivo: { $said }.
request-not-toml-whole = No se puede leer el archivo: { $said }.
request-reading = { $field }: { $why }
request-zero = { $field } es cero. Dé lo que está marcado en el equipo o lo que se pesó.
request-no-such-place = Este vehículo no tiene lugar “{ $given }”. Nombre sus lugares como FL, FR, RL, RR, 2LO o SP.
request-named-twice = “{ $given }” nombra un lugar ya nombrado. Nombre cada uno una vez.
request-no-such-axle = Este vehículo no tiene eje { $given }. Numere sus ejes desde adelante.
request-too-many-axles = Son más de { $most } ejes. Planee el vehículo por partes.
request-not-of-this-gear = { $field } no es de este tipo de equipo. Quítelo.
