# Which axles drive, in one sentence.
verdict-front = La tracción es delantera.
verdict-rear = La tracción es trasera.
verdict-all = Todos los ejes tienen tracción.
verdict-part-time = Un eje siempre tiene tracción, y el conductor conecta el otro.
verdict-none = Ningún eje tiene tracción.
verdict-unknown = Aún no se sabe qué ejes tienen tracción.
verdict-or-part-time = Todos los ejes pueden tener tracción: siempre, o cuando el conductor los conecta.
verdict-contradiction = No todo lo encontrado puede ser cierto. { $one } { $other }
verdict-and-next = { $verdict } { $next }

# How one axle stands.
axle-driven = con tracción
axle-by-choice = con tracción cuando se conecta
axle-uncoupled = puede tener tracción, no estaba conectado
axle-not-driven = sin tracción
axle-unsettled = aún no se sabe
axle-contradicted = se contradice

# The one look that would settle it.
next-look-behind-hub = Mire detrás de la maza en { $at }: ¿le llega un semieje?
next-look-transfer-control = Busque una palanca, un interruptor o mazas de bloqueo que conecten el segundo eje.
next-look-manual = Lea en el manual del vehículo qué ejes tienen tracción.
next-look-vehicle-plate = Lea la tracción en la placa de datos del vehículo: un manual puede abarcar varios.

# Each thing that was seen, turned or told, and what it says.
evidence-shaft-seen = { $at }: un semieje entra en la maza.
evidence-no-shaft-seen = { $at }: nada entra en la maza por detrás.
evidence-shaft-end-seen = { $at }: en la maza se ve la punta de un semieje. Un muñón corto se vería igual.
evidence-hub-covered = { $at }: una tapa esconde la maza. Eso no dice nada.
evidence-capless-unit = { $at }: un balero cerrado se ve igual con semieje y sin él.
evidence-free-hubs-fitted = { $at }: las mazas de rueda libre son de un eje que el conductor conecta.
evidence-own-motor = { $at }: el eje tiene su propio motor.
evidence-engine-running = { $at }: se giró con el motor encendido. Eso no dice nada.
evidence-on-the-ground = { $at }: se giró con las ruedas en el piso. Eso no dice nada.
evidence-brake-set = { $at }: el freno de estacionamiento estaba puesto. Eso no dice nada.
evidence-brake-not-known = { $at }: algo detuvo la rueda, quizá el freno de estacionamiento. Eso no dice nada.
evidence-hubs-free = { $at }: las mazas de rueda libre estaban libres. Eso no dice nada de los semiejes.
evidence-shaft-turned = { $at }: el semieje giró con la rueda.
evidence-shaft-turned-not-held = { $at }: semieje y rueda giraron en park o en cambio: este eje no estaba conectado.
evidence-shaft-stayed = { $at }: el semieje quedó quieto al girar la rueda: esta rueda no estaba conectada.
evidence-other-way = { $at }: la rueda opuesta giró al contrario. Un diferencial las une.
evidence-same-way = { $at }: la rueda opuesta giró igual. Un diferencial las une.
evidence-same-way-not-held = { $at }: ambas ruedas giraron en park o en cambio: este eje no estaba conectado.
evidence-free-in-neutral = { $at }: la rueda giró sola en neutral. Eso no dice nada.
evidence-opposite-not-watched = { $at }: nadie miró la rueda opuesta. Eso no dice nada.
evidence-turns-alone-in-gear = { $at }: la rueda giró sola en park o en cambio. Un eje desconectado haría lo mismo.
evidence-motor-turns-along = { $at }: la rueda giró sola, y su motor pudo girar con ella. Eso no dice nada.
evidence-held-in-neutral = { $at }: algo detuvo la rueda en neutral. Roza un freno o un balero.
evidence-held-through-locking = { $at }: la transmisión detuvo la rueda por un diferencial con bloqueo.
evidence-held-in-gear = { $at }: algo detuvo la rueda en park o en cambio. Un freno que roza se sentiría igual.
evidence-held-only-in-gear = { $at }: la rueda quedó detenida en park o en cambio, y libre en neutral.
evidence-no-such-axle = Este vehículo no tiene eje { $axle }.
evidence-trailer-class = Es un remolque.
evidence-manual = El manual dice { $drive }.
evidence-owner = El dueño dice { $drive }.

# Before a hand turns a wheel.
turn-engine-running = El motor está encendido. Apáguelo y guarde la llave.
turn-not-on-lift-or-stands = Este eje no está asegurado. Levántelo en un elevador o ponga un soporte en cada extremo.
turn-others-not-chocked = Las ruedas que están en el piso no tienen calzas. Calce cada una por ambos lados.
