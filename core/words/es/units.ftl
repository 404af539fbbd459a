# A number with its unit, as written and as spoken. $value is already formatted;
# $count is the same number for choosing the plural.
unit-mm = { $value } mm
unit-mm-spoken = { $count ->
    [one] { $value } milímetro
   *[other] { $value } milímetros
}
unit-32 = { $value }/32 pulg
unit-32-spoken = { $count ->
    [one] { $value } treintaidosavo de pulgada
   *[other] { $value } treintaidosavos de pulgada
}
unit-nm = { $value } N·m
unit-nm-spoken = { $count ->
    [one] { $value } newton metro
   *[other] { $value } newton metros
}
unit-ftlb = { $value } ft·lb
unit-ftlb-spoken = { $count ->
    [one] { $value } pie-libra
   *[other] { $value } pies-libra
}
unit-kgfm = { $value } kgf·m
unit-kgfm-spoken = { $count ->
    [one] { $value } kilogramo-fuerza metro
   *[other] { $value } kilogramos-fuerza metro
}
unit-psi = { $value } psi
unit-psi-spoken = { $count ->
    [one] { $value } libra por pulgada cuadrada
   *[other] { $value } libras por pulgada cuadrada
}
unit-kpa = { $value } kPa
unit-kpa-spoken = { $count ->
    [one] { $value } kilopascal
   *[other] { $value } kilopascales
}
unit-bar = { $value } bar
unit-bar-spoken = { $count ->
    [one] { $value } bar
   *[other] { $value } bares
}
unit-km = { $value } km
unit-km-spoken = { $count ->
    [one] { $value } kilómetro
   *[other] { $value } kilómetros
}
unit-mi = { $value } mi
unit-mi-spoken = { $count ->
    [one] { $value } milla
   *[other] { $value } millas
}
unit-c = { $value } °C
unit-c-spoken = { $count ->
    [one] { $value } grado Celsius
   *[other] { $value } grados Celsius
}
unit-f = { $value } °F
unit-f-spoken = { $count ->
    [one] { $value } grado Fahrenheit
   *[other] { $value } grados Fahrenheit
}
unit-kg = { $value } kg
unit-kg-spoken = { $count ->
    [one] { $value } kilogramo
   *[other] { $value } kilogramos
}
unit-lb = { $value } lb
unit-lb-spoken = { $count ->
    [one] { $value } libra
   *[other] { $value } libras
}
unit-t = { $value } t
unit-t-spoken = { $count ->
    [one] { $value } tonelada métrica
   *[other] { $value } toneladas métricas
}
unit-kmh = { $value } km/h
unit-kmh-spoken = { $count ->
    [one] { $value } kilómetro por hora
   *[other] { $value } kilómetros por hora
}
unit-mph = { $value } mph
unit-mph-spoken = { $count ->
    [one] { $value } milla por hora
   *[other] { $value } millas por hora
}
unit-in = { $value } pulg
unit-in-spoken = { $count ->
    [one] { $value } pulgada
   *[other] { $value } pulgadas
}

# A reading kept in one unit and shown in another.
unit-converted = { $shown } (leído { $read })

misread-not-a-number = “{ $given }” no es un número. Escriba cifras, como 7 o 5.2.
misread-thousands = “{ $given }” podría ser dos números. Escríbalo sin separador de miles.
misread-no-unit = “{ $given }” no tiene unidad. Agregue una: { $known }.
misread-wrong-unit = “{ $unit }” no es una unidad para esto. Use { $known }.
misread-too-low = “{ $given }” es demasiado bajo para esta lectura. Lo más bajo es { $bound }.
misread-too-high = “{ $given }” es demasiado alto para esta lectura. Lo más alto es { $bound }.
