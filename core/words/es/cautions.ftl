# The four signal words of ANSI Z535.
signal-danger = PELIGRO
signal-warning = ADVERTENCIA
signal-caution = PRECAUCIÓN
signal-notice = AVISO

# Cautions: the hazard and what follows from it, at most 20 words, no action in
# them. Common practice, no source.
caution-chips-and-noise = Una herramienta eléctrica o de aire lanza partículas y ruido que dañan ojos y oídos para siempre.
caution-turning-socket = Un dado que gira enreda mangas y guantes sueltos y puede arrancar dedos.
caution-thrown-socket = Una pistola que se prueba con el dado puesto puede lanzarlo.
caution-gun-direction = Una pistola que gira al revés aprieta de más la tuerca o rompe su espárrago.
caution-socket-slips = Un dado que no entra a fondo y derecho se zafa, redondea la tuerca y lastima manos.
caution-nut-in-socket = Una tuerca atorada en el dado empieza torcida y arruina la rosca del espárrago.
caution-falling-wheel = La rueda puede caerse de sus espárragos en cuanto sale la última tuerca.
caution-unheld-wheel = Una rueda sin tuerca se cae en cuanto nadie la sostiene.
caution-heavy-wheel = Esta rueda pesa demasiado para una persona: puede lesionar espalda, manos y pies para siempre.
caution-inner-wheel = La rueda interior puede deslizarse de la maza cuando ya no está la exterior.
caution-loose-wheel = Una rueda suelta se va rodando, se vuelca o hace tropezar.
caution-falling-tools = Las herramientas puestas en alto caen sobre quien trabaja abajo.
caution-lost-nuts = Una tuerca perdida en el piso le falta a la rueda.
caution-hose-underfoot = Una manguera torcida en el paso hace tropezar.
caution-vehicle-rolls = Un vehículo que puede rodar puede caerse del gato.
caution-jack-alone = Un vehículo sostenido solo por un gato cae sin avisar y mata a quien esté debajo.
caution-under-vehicle = Un vehículo que resbala de sus soportes o seguros aplasta a quien esté debajo.
caution-lift-points = Un vehículo levantado fuera de sus puntos de levantamiento puede resbalar, y su carrocería se dobla.
caution-crack-on-ground = La fuerza sobre las tuercas de una rueda levantada puede tirar el vehículo del gato.
caution-overloaded-gear = El equipo cargado más allá de su capacidad puede ceder sin avisar.
caution-lowering = Un vehículo que baja aplasta a toda persona y cosa que esté debajo.
caution-turning-wheel = Una rueda movida por el motor puede tirar el vehículo de sus soportes.
caution-hot-brakes = Los frenos siguen calientes mucho después del viaje y queman las manos.
caution-brake-dust = El polvo de frenos en el aire puede dañar los pulmones para siempre.
caution-pinched-fingers = Los dedos entre la rueda y la maza quedan atrapados.
caution-crossed-thread = Una tuerca que no se empieza a mano puede cruzar la rosca y arruinar el espárrago.
caution-crooked-seat = Una rueda apretada torcida puede aflojarse en el camino.
caution-limiting-bar = Una barra limitadora de torque puede dejar tuercas flojas o apretadas de más, y la rueda puede soltarse.
caution-wheel-turns = Una rueda sin peso gira con el torquímetro: las tuercas quedan flojas y la rueda puede soltarse.
caution-tire-bursts = Una llanta que revienta al inflarse puede matar a quien esté al lado.
caution-run-flat = Una llanta que rodó desinflada esconde daños y puede reventar al inflarla de nuevo.
caution-nuts-settle = Las tuercas pueden aflojarse en las primeras millas, y la rueda puede soltarse.
caution-old-marks = Las marcas de un trabajo anterior mandan una llanta a la esquina equivocada.
caution-passing-traffic = El tráfico que pasa puede matar a quien trabaja a la orilla del camino.
caution-not-seen = Un vehículo detenido que se ve demasiado tarde puede ser golpeado a toda velocidad.
caution-slope = Un vehículo levantado en una pendiente se sale del gato y rueda sobre quien esté al lado.
