# What is learned at the vehicle.
competence-drive = mirar qué ejes dan tracción
competence-sidewall = leer un costado
competence-tread = medir la profundidad de la banda
competence-moves = elegir adónde va cada llanta
competence-raising = levantar un vehículo
competence-locks = ver que los seguros o soportes sostienen
competence-wheel-off = quitar una rueda
competence-looks = mirar lo que tapa una rueda
competence-hanging = montar una rueda según su marca
competence-hand-start = enroscar tuercas a mano
competence-snug = asentar tuercas en orden
competence-before-lowering = ver que todo está libre antes de bajar
competence-final-torque = torque final
competence-recheck = reapriete de tuercas
competence-pressure = poner presiones

learner-done = { $count ->
    [one] hecho en 1 trabajo
   *[other] hecho en { $count } trabajos
}
learner-practice = { $count ->
    [one] 1 de ellos de práctica
   *[other] { $count } de ellos de práctica
}
learner-seen = { $count ->
    [one] visto en 1 trabajo, con firma de { $by }
   *[other] visto en { $count } trabajos, con firma de { $by }
}
learner-standing = { $name }: { $done }.
learner-standing-seen = { $name }: { $done }; { $seen }.

# What an instructor must have seen of an apprentice's work.
see-locks = seguros o soportes que sostienen
see-before-lowering = todo libre antes de bajar
see-final-torque = torque final

# Decisions that can be asked about, and answered first.
decision-drive = qué ejes dan tracción
decision-pattern = patrón de los cambios
decision-lifts = orden de levantamientos
decision-order = orden de las tuercas
decision-target = valor del torquímetro
answer-none = sin respuesta
answer-same = lo mismo
answer-differs = no es lo mismo
answer-open = sin comparar
answer-both = { $decision }: aprendiz { $own }, Lugbook { $core }: { $same }.

# Why a decision is as it is.
why-by-manual = Lo decide el manual: { $drive }.
why-gear = Equipo a mano: { $gear }.
why-printed = El manual dice { $printed }.
why-studs = La rueda tiene { $count } espárragos.
rule-drive = Un eje da tracción cuando un semieje entra en sus mazas. Lo aclaran el manual o los dos extremos vistos.
rule-pattern = Primero, cada llanta sobre su límite hasta la próxima visita; luego, fin de vida al mismo tiempo; si los pronósticos no se distinguen, el patrón del fabricante, o el del oficio.
rule-lifts = Los menos levantamientos; luego, caminar menos. Ninguna mano bajo una esquina sostenida solo por un gato, ninguna rueda sin tuerca.
rule-order = El orden del fabricante; si no hay, cada tuerca frente a la anterior, para que la rueda asiente pareja.
rule-target = De los valores dentro del rango impreso, el que en su peor lectura queda más lejos de los dos extremos.

# The card and the learner's logbook.
card-learning = Aprendizaje
card-seen-table = Lo que un instructor debe ver del trabajo de un aprendiz.
card-seen-what = Qué
card-seen-learner = Hecho por
card-seen-by = Con firma de
card-not-seen = sin firma
card-no-instructor = sin firma: no hay instructor en este libro
card-on-device = Firmado en el aparato del aprendiz, con el código del instructor. Eso prueba que alguien sabía el código, no quién.
card-answers-table = El aprendiz respondió antes que Lugbook.
card-decision = Decisión
card-own-answer = Aprendiz
card-core-answer = Lugbook
card-compared = Comparación
learner-title = Cuaderno del aprendiz: { $name }
learner-kicker = Cuaderno del aprendiz
learner-role = Función
learner-jobs-count = Trabajos
learner-practice-jobs = De ellos de práctica
learner-until = Hasta
learner-none = Todavía no se hizo nada con estas manos.
learner-competences = Competencias
learner-competences-table = Un trabajo cuenta una vez, aunque tenga varias ruedas.
learner-competence = Competencia
learner-done-count = Hecho
learner-seen-count = Visto
learner-job = Trabajo { $number }: { $name }, { $day }
learner-work = Trabajo
learner-state = Estado
learner-signed = Firmado por
learner-did = Hecho con sus propias manos
learner-answers = Respuestas
learner-seen-heading = Visto por un instructor
learner-photos = Fotos
learner-foot = Cada renglón es una anotación del aparato del aprendiz. Dice lo que se anotó; no prueba quién lo hizo.
learner-of = { $done }, { $practice } de práctica
learner-of-practice = { $done }, práctica
learner-seen-by = { $seen }, con firma de { $by }
learner-not-seen = todavía no
learner-line = { $clock } { $said }
learner-all-sound = { $at }: { $count ->
    [one] 1 parte revisada: en buen estado.
   *[other] { $count } partes revisadas: todas en buen estado.
}
learner-done-practice = { $count ->
    [one] hecho en 1 trabajo de práctica
   *[other] hecho en { $count } trabajos de práctica
}
learner-bundle-proves = Cada anotación y foto está como se escribió. No prueba que no falte ninguna ni quién las escribió.
