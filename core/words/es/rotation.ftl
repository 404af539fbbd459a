# What a tech can shout across the shop.
shout-rearward-cross = Las traseras directo adelante, las delanteras cruzan atrás.
shout-forward-cross = Las delanteras directo atrás, las traseras cruzan adelante.
shout-x = Todas cruzan: cada delantera a la trasera opuesta, cada trasera a la delantera opuesta.
shout-front-to-rear = Delantera y trasera se cambian en cada lado.
shout-side-to-side = Izquierda y derecha se cambian en cada eje.
shout-rearward-cross-five = Las traseras directo adelante, la delantera derecha cruza atrás, el repuesto a la trasera derecha, la delantera izquierda queda de repuesto.
shout-forward-cross-five = Las traseras cruzan adelante, la delantera izquierda directo atrás, el repuesto a la trasera derecha, la delantera derecha queda de repuesto.
shout-x-five = Las traseras cruzan adelante, la delantera derecha cruza atrás, el repuesto a la trasera derecha, la delantera izquierda queda de repuesto.
shout-front-to-rear-five = Lado izquierdo: delantera y trasera se cambian; la trasera derecha directo adelante, el repuesto a la trasera derecha, la delantera derecha queda de repuesto.
shout-leave-as-is = Deje cada rueda donde está.
shout-flat = El repuesto va en { $at }, la desinflada sale.
shout-flat-forward = { $good } va a { $at }, el repuesto va en { $good }, la desinflada sale.
shout-swap = Cambie { $a } con { $b }.
shout-cycle = { $from } va a { $to }
shout-other = { $moves }.

# What a constraint saw. $tire is where the tire is now, $to where it would go.
why-against-arrow = La flecha de la llanta { $tire } apuntaría hacia atrás en { $to }: es para el lado { $side }.
why-directional-and-asymmetric = La llanta { $tire } tiene flecha y cara exterior: va solo en el lado { $side }, con su rin o sin él.
why-arrow-not-seen = La llanta { $tire } gira en un solo sentido, y nadie ha dicho para qué lado es.
why-studs-change-side = Los clavos de invierno de la llanta { $tire } girarían al contrario en { $to }.
why-size-differs = { $to } lleva { $axle }; la llanta { $tire } es { $size }.
why-offset-differs = { $to } lleva ruedas con offset de { $axle }; la rueda { $tire } tiene { $wheel }.
why-wheel-touches-brake = La rueda { $tire } es demasiado chica por dentro para el freno en { $to }.
why-seat-does-not-fit = Las tuercas a la mano no van con los asientos de la rueda { $tire }.
why-for-emergency-only = Un repuesto temporal es solo para emergencia: { $tire } a { $to } queda descartado.
why-too-shallow-to-steer = La llanta { $tire } tiene { $depth }; un eje de dirección necesita { $limit }.
why-retread-on-steer = La llanta { $tire } es recauchutada; un autobús no puede llevarla en la dirección.
why-regrooved-on-steer = La llanta { $tire } está reranurada; no debe ir en la dirección.
why-pair-apart = En { $to } las dos llantas de la pareja diferirían { $difference } en diámetro; se permite { $allowed }.
why-larger-inside = En { $to } la llanta mayor de la pareja quedaría adentro, por { $difference } en diámetro.
why-carries-too-little = La llanta { $tire } carga { $carries }; { $to } necesita { $needs }.
why-passenger-size-on-truck = Una medida de pasajeros cuenta menos en este vehículo: la llanta { $tire } carga { $carries }, { $to } necesita { $needs }.
why-placard-below-reference = Con los { $placard } de la etiqueta la llanta { $tire } puede cargar muy poco: su carga se da a { $reference }.
why-slower-than-needed = La llanta { $tire } sirve hasta { $speed }; el vehículo necesita { $needed }.
why-slower-than-needed-winter = La llanta de invierno { $tire } sirve hasta { $speed }: ponga un aviso donde lo vea el conductor.
why-old = La llanta { $tire } tiene { $years ->
    [one] { $years } año
   *[other] { $years } años
}.

# What would lift it.
lift-remount-on-rim = Se podría volteando la llanta en su rin.
lift-another-tire = Se podría con una llanta para ese lado, o una sin flecha.
lift-keep-side = Se evita dejando cada llanta en su lado.
lift-look-at-arrow = Mire la flecha en el costado.
lift-same-size-all-round = Se podría con una sola medida en todos los ejes, donde el manual del fabricante lo permita.
lift-like-wheels = Se podría con ruedas iguales en todos los ejes.
lift-fitting-nuts = Se podría con tuercas que vayan con esa rueda.
lift-full-size-spare = Se podría con un repuesto completo igual a las otras llantas.
lift-deeper-tire = Se podría con una llanta más profunda.
lift-new-tire = Se podría con una llanta ni recauchutada ni reranurada.
lift-closer-partner = Se podría con una pareja más cercana en diámetro.
lift-swap-pair = Cambie entre sí las dos llantas de la pareja.
lift-stronger-tire = Se podría con una llanta de índice de carga mayor.
lift-makers-word = Lo aclararía la palabra del fabricante del vehículo sobre carga y presión.
lift-drive-slower = Manténgase por debajo de la velocidad de la llanta.
lift-inspect-or-replace = Hágala inspeccionar, o instale una llanta más nueva.

# A pattern that is out.
refused = { $pattern }: descartado. { $because }
because = { $reason } { $lift } Fuente: { $source }.

# Why a plan.
reason-makers-pattern = Es el patrón del fabricante, y ningún pronóstico es claramente mejor.
reason-trades-front-drive = Es el patrón del oficio para tracción delantera (práctica común, sin fuente).
reason-trades-rear-drive = Es el patrón del oficio para tracción trasera (práctica común, sin fuente).
reason-trades-all-drive = Es el patrón del oficio para tracción en todas las ruedas (práctica común, sin fuente).
reason-trades-part-time-drive = Es el patrón del oficio para tracción conectable en las cuatro ruedas (práctica común, sin fuente).
reason-trades-nothing-drives = Nada tiene tracción: de adelante a atrás cada llanta sigue en su lado (práctica común, sin fuente).
reason-trades-arrows = Las llantas con flecha se quedan en su lado.
reason-trades-studs = Los clavos de invierno se quedan en su lado (práctica común, sin fuente).
reason-trades-unequal-sizes = Adelante y atrás llevan medidas distintas: solo pueden cambiar izquierda y derecha.
reason-drive-front-straight-back = Las delanteras tienen la tracción y la dirección y se gastan más rápido: van directo atrás a descansar, y las descansadas cruzan.
reason-drive-rear-straight-forward = Las traseras con tracción se gastan más rápido: van directo adelante a descansar, y las otras cruzan.
reason-no-history = Todavía no hay historial de desgaste: los pronósticos no se distinguen.
reason-within-uncertainty = Otro plan se veía { $better } más parejo; menos de { $band } no se distingue.
reason-keeps-above-limit = { $tires ->
    [one] Una llanta sigue por encima de su límite y donde está caería por debajo.
   *[other] { $tires } llantas siguen por encima de su límite y donde están caerían por debajo.
}
reason-below-limit = { $tires ->
    [one] Una llanta cae por debajo de su límite antes de la próxima visita.
   *[other] { $tires } llantas caen por debajo de su límite antes de la próxima visita.
}
reason-deepest-at-rear = Hay llantas nuevas: las dos más profundas van atrás.
reason-closes-spread = El juego termina con { $plan } de diferencia; sin mover, con { $left }.
reason-widens-spread = El juego termina con { $plan } de diferencia; sin mover, { $left }.
reason-fewest-moved = Entre planes iguales mueve menos ruedas: { $moved }.
reason-remounts = { $tires ->
    [one] Hay que voltear una llanta en su rin.
   *[other] Hay que voltear { $tires } llantas en sus rines.
}
reason-axle-means = Adelante y atrás promedian entonces { $front } y { $rear }.
reason-later-pair-apart = En la visita { $visit } una pareja de duales puede diferir demasiado: mida antes de mover.

# What each tire will have left, by where it is now.
forecast-next = Queda en la próxima visita: { $next }.
forecast = Queda en la próxima visita: { $next }; después de { $visits } visitas: { $end }.

# Statements about the answer.
note-nothing-may-move = Ninguna rueda puede cambiar de lugar.
note-only-with-remounting = No hay rotación posible con las llantas como van en sus rines. Volteándolas en los rines se podría: { $patterns }.
note-no-pattern-fits = Ningún patrón con nombre cabe, y sin datos de desgaste ningún otro movimiento tiene razón.
note-leaving-is-as-good = Dejar cada rueda donde está es igual de bueno, hasta donde se sabe.
note-below-limit-anywhere = La llanta { $tire } queda por debajo de su límite en cualquier lugar: cámbiela.
note-set-apart = Las llantas de este juego con tracción en todas las ruedas difieren { $spread }. Vea en el manual del fabricante cuánto permite.
note-some-say-x = Algunos dicen X para tracción permanente en todas las ruedas. Fuente: { $source }.
note-standing = Como está: { $reason } Fuente: { $source }.

# What to look at next.
look-which-axle-drives = Averigüe qué eje tiene tracción: busque un semieje en cada maza, y vea si gira con la rueda.
look-depths = Mida la banda de rodadura de cada llanta.
look-wear-rates = Mida otra vez en la próxima visita, con el odómetro: entonces se conoce el desgaste.
look-interval = Diga cuánto se maneja el vehículo entre visitas.
look-sizes = Lea la medida en cada costado.
look-arrows = Busque una flecha de rotación en cada costado.

# Requests that can’t be planned.
rotation-no-wheels = No hay ruedas que planear. Dé una llanta para cada lugar.
rotation-too-many-axles = { $axles } ejes son demasiados: se planean { $most } como máximo.
rotation-horizon = No se pueden planear { $visits } visitas: dé de 1 a { $most }.
rotation-two-at = Se dan dos llantas en { $at }. En un lugar va una llanta.
rotation-no-such-place = Este vehículo no tiene { $at }.
rotation-nothing-at = No se da llanta en { $at }.
rotation-figure = { $what }: no es un número que sirva.
rotation-figure-at = { $what } de la llanta { $at }: no es un número que sirva.
rotation-grooves = { $grooves } ranuras en { $at } son demasiadas: { $most } como máximo.
rotation-pattern-does-not-fit = El patrón del fabricante, { $pattern }, no va con estos ejes.
rotation-side-without-arrow = Se dice que la llanta { $at } es de un lado y que no tiene flecha.
rotation-temporary-but-worked = Se dice que la llanta { $at } es un repuesto temporal, y con clavos, recauchutada o reranurada.
rotation-dual-above-single = Se dice que la llanta { $at } carga más en pareja que sola.
rotation-spare-wears = Se da desgaste para el repuesto, que no rueda.
figure-interval = La distancia entre visitas
figure-next-visit = La distancia a la próxima visita
figure-rate = El desgaste
figure-diameter = El diámetro
figure-load = La carga
figure-speed = La velocidad
figure-offset = El offset de la rueda
figure-pressure = La presión
figure-margin = La incertidumbre o el costo de voltear
rotation-file = No se puede usar el renglón { $line }: { $message }.
rotation-file-place = Ningún lugar se llama “{ $text }”. Escriba FL, FR, RL, RR, 1L, 2LO … o SP.
rotation-file-pattern = Ningún patrón se llama “{ $text }”.
rotation-file-size = “{ $text }” no es una medida de llanta.
rotation-file-service = “{ $text }” no es una descripción de servicio.
rotation-file-number = { $field } de { $at }: { $why }
rotation-file-number-alone = { $field }: { $why }
