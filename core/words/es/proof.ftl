# What is proven of a card's file or a book.
proof-page = Esta hoja está como la escribió el aparato { $device }.
proof-entries = { $count ->
    [0] No lleva ninguna anotación.
    [one] La única anotación del trabajo sigue igual desde entonces.
   *[other] Las { $count } anotaciones del trabajo siguen igual desde entonces.
}
proof-sealed = { $count ->
    [one] Una anotación sigue igual desde que el aparato { $device } selló el trabajo al terminar.
   *[other] { $count } anotaciones siguen igual desde que el aparato { $device } selló el trabajo al terminar.
}
proof-stream = { $count ->
    [one] Secuencia { $stream }: la primera anotación sigue igual desde que el aparato { $device } la selló.
   *[other] Secuencia { $stream }: las anotaciones 1 a { $count } siguen igual desde que el aparato { $device } las selló.
}

# What is not proven.
proof-no-seal = El trabajo no lleva sello de su final.
proof-after = { $count ->
    [one] Una anotación llegó después del sello; solo la cubre la firma de la hoja.
   *[other] { $count } anotaciones llegaron después del sello; solo las cubre la firma de la hoja.
}
proof-not-device = De quién es el aparato { $device }: compárelo con la copia en papel, o pregunte en el taller.
proof-not-time = Cuándo fue: las horas son las que dio el reloj del aparato.
proof-not-work = Que una tuerca se apretó de verdad: solo que así se escribió.
proof-stream-rest = { $count ->
    [one] Secuencia { $stream }: la última anotación todavía no está sellada.
   *[other] Secuencia { $stream }: las últimas { $count } anotaciones todavía no están selladas.
}
proof-stream-without = { $count ->
    [one] Secuencia { $stream }: su única anotación no lleva sello.
   *[other] Secuencia { $stream }: sus { $count } anotaciones no llevan sello.
}
proof-missing = { $count ->
    [one] Se sabe que falta una anotación.
   *[other] Se sabe que faltan { $count } anotaciones.
}

# Where something does not hold.
proof-at-page = la hoja
proof-at-entry = anotación { $line } de la hoja
proof-at-seal = el sello
proof-at-end = el final del archivo

# What does not hold in a card's file.
card-fault-no-proof = Este archivo no lleva prueba: no es una hoja HTML de un aparato que sella, o está cortado. Pida el archivo HTML de la hoja.
card-fault-proof-unreadable = La prueba al final del archivo se cambió o se cortó. Pida otra vez el archivo HTML de la hoja.
card-fault-newer = Un programa más nuevo escribió esta hoja (versión { $version }). Actualice este programa.
card-fault-page-unsigned = El aparato que escribió la hoja no la firmó.
card-fault-page-signature = La firma de la hoja no es del aparato que nombra.
card-fault-page-changed = La hoja se cambió después de que el aparato la firmó.
card-fault-entry-changed = La anotación { $line } se cambió después de que el aparato la firmó.
card-fault-entry-missing = La anotación { $line } se quitó después de que el aparato la firmó.
card-fault-entry-moved = La anotación { $line } no está donde estaba cuando el aparato la firmó.
card-fault-entry-added = La anotación { $line } se agregó después de que el aparato firmó.
card-fault-seal-signature = El sello no es del aparato que nombra.
card-fault-seal-of-another = El sello es de otro trabajo.
card-fault-seal-unfit = La anotación { $number } del aparato { $stream } no es lo que se selló al terminar el trabajo.
card-fault-other-device = Esto lo firmó el aparato { $device }, no el que se pidió.
