# What to set the wrench to.
tighten-set = Ponga el torquímetro a { $setting }.
tighten-set-adapter = Ponga el torquímetro a { $setting }; por el adaptador la tuerca recibe { $target }.
tighten-band-inside = El rango es de { $min } a { $max }. La peor lectura queda { $margin } adentro.
tighten-band-outside = El rango es de { $min } a { $max }. La peor lectura puede quedar { $margin } afuera.
tighten-no-band = El manual imprime un solo valor y ningún rango.
tighten-order = Apriete en este orden, visto desde afuera, 1 arriba: { $order }.
tighten-order-makers = Apriete en el orden del fabricante, visto desde afuera, 1 arriba: { $order }.

# What to know about the target.
tighten-unit-clash = El manual no concuerda consigo mismo: { $first } y { $second } difieren { $percent } por ciento. El objetivo cabe en ambos.
tighten-converted = El manual no imprime { $unit }. Se convirtió { $from }.
tighten-worst-outside = Este torquímetro es demasiado burdo para el rango: su peor lectura puede quedar { $by } afuera. Tome uno mejor.
tighten-not-on-scale = { $wanted } no está en la escala de este torquímetro. El valor más cercano difiere { $off } por ciento.
tighten-scale-ends = { $better } sería mejor, pero la escala de este torquímetro no llega.

# About the bar.
tighten-bar-may-click = Esta barra está tan cerca del objetivo que las tuercas pueden hacer clic sin girar. Tome una barra menor.
tighten-bar-gun-not-known = No se sabe qué fuerza da la pistola, o para qué pistola es la barra. Lo marcado puede no cumplirse.
tighten-bar-gun-too-strong = La pistola da hasta { $gun }, la barra es para { $bar }. Lo marcado no se cumple.
tighten-bar-hex-not-known = No se conoce el hexágono de la barra o el de la tuerca. Pruebe primero el dado a mano.
tighten-bar-hex-differs = El dado de la barra es { $bar }, la tuerca { $nut }. No entra.
tighten-bar-under = Barra de { $rating }: solo para el primer apriete; se aconseja hasta { $advised }. El torquímetro tiene la última palabra.
tighten-bar-near = Barra de { $rating }: pasa de los { $advised } aconsejados, cerca del objetivo.
tighten-bar-at-or-over = Barra de { $rating }: igual al objetivo o mayor. Tome una de { $advised } o menos.

# About wrench and nut.
tighten-calibration-not-known = Nadie sabe cuándo se calibró este torquímetro por última vez.
tighten-calibration-overdue = Este torquímetro se calibró por última vez hace más de un año.
tighten-calibration-in-the-future = La fecha de calibración del torquímetro todavía no llega. Una de las dos fechas está mal.
tighten-lubrication-not-known = No se sabe si las roscas deben ir secas o aceitadas, o cómo están. Lea el manual y mire.
tighten-lubrication-differs = El manual dice { $manual }; se encontró { $found }. Con el mismo torque el espárrago recibe otra carga.
tighten-thread-differs = El manual es para { $manual }, la rosca de aquí es { $found }. Puede ser de otro vehículo.
tighten-seat-not-known = No se sabe si los asientos de tuerca y rueda son iguales. Compárelos antes de apretar.
tighten-left-hand = Rosca izquierda: aprieta en contra del reloj.
tighten-lock-key = Tuerca de seguridad: gírela a mano y con torquímetro, nunca con la pistola.

lubrication-not-known = no indicado
lubrication-dry = seca
lubrication-oiled = aceitada

# What stops it.
tighten-stop-seat-shape = Alto: los asientos de tuerca y rueda tienen formas distintas. Así la tuerca se afloja.
tighten-stop-seat-cone-angle = Alto: los asientos de tuerca y rueda tienen ángulos distintos. Así la tuerca se afloja.
tighten-stop-seat-ball-radius = Alto: los asientos de tuerca y rueda tienen radios distintos. Así la tuerca se afloja.
tighten-stop-studs = Aquí no se conoce una rueda de { $given } espárragos. Cuéntelos otra vez: de 3 a 12.
tighten-stop-order = El orden del fabricante, como está anotado, no nombra cada espárrago una vez. Corríjalo.
tighten-nothing-printed = No hay torque anotado. Búsquelo en el manual del vehículo.
tighten-no-agreement = Las unidades del manual no concuerdan: { $first } y { $second } no tienen nada en común. Pregunte al fabricante del vehículo.
tighten-accuracy = La exactitud del torquímetro debe estar entre 0 y 50 por ciento. La mayoría tiene ±4 %.
tighten-no-step = Ningún valor de esta escala cae en el rango: { $below } queda abajo, { $above } arriba. Tome otro torquímetro.
tighten-outside-scale = La escala de este torquímetro no llega al torque. Tome otro torquímetro.
tighten-adapter-angle = El ángulo del adaptador debe estar entre 0 y 180 grados.
tighten-adapter-lever = La palanca del torquímetro no tiene largo. Mida desde el centro del mango hasta el cuadro.
tighten-adapter-folded-back = El adaptador lleva la tuerca demasiado atrás, hacia el mango. Póngalo hacia afuera o a escuadra.

# The rounds.
round-hand-start = Empiece cada tuerca a mano.
round-snug = Asiente las tuercas en orden, a cerca de { $percent } por ciento del objetivo.
round-snug-set = Asiente las tuercas en orden con el torquímetro a { $setting }.
round-final = Apriete en orden con el torquímetro a { $setting } y peso sobre la llanta.
round-loosen = Afloje las tuercas exteriores para poder apretar las interiores.
round-recheck = Reapriete en orden con el torquímetro a { $setting } y peso sobre la llanta.
round-of-inner = Tuercas interiores: { $round }
round-of-outer = Tuercas exteriores: { $round }

# What a nut’s answer means.
outcome-proven = Giró y luego hizo clic: apretada como se puso.
outcome-back-off-quarter-and-again = Hizo clic sin girar: no está comprobada. Aflójela un cuarto de vuelta y apriete otra vez.
outcome-held = Hizo clic sin girar: está firme.
outcome-moved-record-and-repeat = Giró. Anótelo y haga el reapriete otra vez.

overrun-within = No está más apretada de lo que permite el manual.
overrun-loosen-look-again = Está más apretada de lo que permite el manual. Aflójela, mire espárrago y asiento, apriete otra vez.
overrun-replace-stud = Giró sin apretarse más. Cambie el espárrago.

# When to come back.
recheck-by = Reapriete antes de { $by }, como dice el manual.
recheck-window = Reapriete después de { $from } a { $by }, como dice el manual.
recheck-trade = Reapriete después de { $from } a { $by }. El manual no imprime nada; es la costumbre del oficio.

torque-gate-open = Se conoce el torque.
torque-gate-shut = No se conoce el torque de este vehículo. Búsquelo en su manual y anótelo.
torque-gate-opened-without-specification = Especificación no conocida.

# The bench.
chart-row = { $diameter }: de { $low } a { $high } ft·lb, roscas secas. Valor de tabla, no para su carro.
chart-makers-disagree = No hay valor de tabla desde 14 mm: los fabricantes imprimen de { $low } a { $high } N·m para una rosca; la tabla dice de { $chartlow } a { $charthigh }.
chart-not-on-chart = La tabla no tiene esa rosca.
clamp-load = Carga de sujeción de unos { $low } a { $high } kN; una tuerca sola varía { $scatter } por ciento más. Solo informativo.
