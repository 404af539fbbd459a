# What is not as it should be, in one sentence. The place and the state stand beside it.
finding-seen = { $part }: se revisó.
finding-seen-note = { $part }: { $note }.
finding-thin = { $part }: { $thickness } de grueso; se imprime un mínimo de { $least }.
finding-tread-under = Profundidad más baja { $lowest }, por debajo del límite de { $limit }.
finding-tread-over = Profundidad más baja { $lowest }; el límite es { $limit }.
finding-tread-unlimited = Profundidad más baja { $lowest }; no se conoce límite para este lugar.
finding-tread-advice = Profundidad más baja { $lowest }, por debajo de los { $also } aconsejados o moldeados.
finding-deeper = Profundidad { $now }, más que los { $before } del { $day } por más de lo que pueden errar ambos medidores. Mida otra vez, o revise que sea la misma llanta.
finding-deeper-explained = Profundidad { $now }, más que los { $before } del { $day } por más de lo que pueden errar ambos medidores. Se dio una razón.
finding-uneven = Eje { $axle }: una llanta termina en { $most }, la otra en { $least }.
finding-uneven-set = Todas las ruedas tienen tracción, y el juego termina entre { $least } y { $most }. El manual dice cuánto pueden diferir.
finding-old = Hecha al menos { $age } antes de esta visita. Consejo: revísela en cada visita.
finding-not-placard-size = La llanta es { $fitted }; la etiqueta es para { $placard }, y su presión puede no valer.
finding-low-set = Puesta a { $pressure }, por debajo de los { $placard } de la etiqueta.
finding-low-found = Última lectura { $pressure }, por debajo de los { $placard } de la etiqueta.
finding-lamp-on = La luz de presión de llantas está encendida.
finding-clash = El torque está impreso como { $first } y como { $second }, que no concuerdan. Aclare cuál vale.
finding-no-torque = El torque se buscó y no se encontró.
finding-not-proven = { $count ->
    [one] La tuerca { $nuts } hizo clic sin girar: no está comprobada. Aflójela un cuarto de vuelta y apriete otra vez.
   *[other] Las tuercas { $nuts } hicieron clic sin girar: no están comprobadas. Afloje cada una un cuarto de vuelta y apriete otra vez.
}
finding-moved = { $count ->
    [one] La tuerca { $nuts } giró en el reapriete. Repita el reapriete.
   *[other] Las tuercas { $nuts } giraron en el reapriete. Repita el reapriete.
}
finding-wrench-not-known = { $tool }: nadie sabe cuándo se calibró por última vez.
finding-wrench-overdue = { $tool }: última calibración hace más de un año.
finding-wrench-in-the-future = { $tool }: su día de calibración todavía no llega. Una de las dos fechas está mal.

age-years-months = { $years ->
    [0] { $months ->
        [one] 1 mes
       *[other] { $months } meses
    }
    [one] 1 año, { $months ->
        [0] ningún mes
        [one] 1 mes
       *[other] { $months } meses
    }
   *[other] { $years } años, { $months ->
        [0] ningún mes
        [one] 1 mes
       *[other] { $months } meses
    }
}
age-years = { $years ->
    [one] 1 año
   *[other] { $years } años
}

source-eye = juzgado a ojo
finding-tool-overdue = { $tool }: su calibración se vencía el { $day }.
