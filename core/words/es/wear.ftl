# How wear lies.
tread-even = gastada pareja
tread-center = gastada en el centro
tread-both-shoulders = gastada en ambos hombros
tread-outer-shoulder = gastada en el hombro exterior
tread-inner-shoulder = gastada en el hombro interior
tread-spot = gastada de más en un punto

# Something to check, never a verdict.
check-pressure-high = Revise si la presión está muy alta.
check-pressure-low = Revise si la presión está baja o hay una fuga lenta.
check-overload = Revise si hay sobrecarga.
check-alignment = Revise la alineación: camber y convergencia.
check-cornering = Revise si se toman las curvas con fuerza.
check-suspension = Revise las rótulas de suspensión y dirección.
check-shocks = Revise los amortiguadores.
check-balance = Revise el balanceo de las ruedas.
check-brakes = Revise si se bloqueó una rueda, o si un freno se pega.
check-rotation-interval = Revise si se omitieron rotaciones.

wear-rate = { $rate } mm por 1000 km
wear-rate-us = { $rate }/32 pulg por 1000 mi
wear-left = { $at }: quedan { $mid } hasta { $limit }, entre { $low } y { $high }.
wear-left-open = { $at }: quedan { $mid } hasta { $limit }, al menos { $low }.
wear-left-none = { $at }: ya está en { $limit } o menos.
wear-left-unseen = { $at }: no se vio desgaste; quedan al menos { $low } hasta { $limit }.
wear-no-rate = { $at }: { $depth }; todavía no se conoce su desgaste.
wear-off-axle = { $at }: { $depth }; en su portallanta no se gasta.
wear-looks = { $at } está { $pattern }. { $checks }

wear-unknown-one-visit = Se leyó una visita: no se conoce el desgaste hasta la próxima, con su odómetro.
wear-unknown-no-tire-twice = Ninguna llanta se leyó dos veces: hasta entonces no se conoce el desgaste.
wear-unknown-some-positions = Algunos lugares todavía no se distinguen: lea todas las llantas en la próxima visita.

wear-next-interval = Próxima visita con { $odometer } en el odómetro.
wear-next-unknown-wear = Próxima visita con { $odometer } en el odómetro: aún no se conoce el desgaste, por eso temprano. Fuente: { $source }.
wear-next-limit = Próxima visita con { $odometer } en el odómetro: una llanta puede llegar a su límite.

wear-slipped = Fila { $row }, { $at } con { $odometer }: se leyó { $read }, concordaría { $expected }. Mida otra vez.
wear-slipped-reading = { $at } con { $odometer }: se leyó { $read }, { $expected } concordaría con los demás.

wear-no-readings = No hay lectura. Dé al menos una fila.
wear-too-many-readings = { $readings } lecturas son demasiadas: { $most } como máximo.
wear-no-depth = La fila { $row } no tiene profundidad.
wear-two-at = Se leyeron dos llantas en { $at } con { $odometer }.
wear-figure = El desgaste esperado no es un número que sirva.
wear-row-missing-column = Falta la columna { $column }.
wear-row-no-such-place = Fila { $row }: ningún lugar se llama “{ $text }”.
wear-row-unreadable = Fila { $row }, { $column }: { $why }
wear-row-no-depth = La fila { $row } no tiene profundidad.
wear-row-too-many = Son más de { $most } filas.
