# A number with its unit, as written and as spoken. $value is already formatted;
# $count is the same number for choosing the plural.
unit-mm = { $value } mm
unit-mm-spoken = { $count ->
    [one] { $value } millimeter
   *[other] { $value } millimeters
}
unit-32 = { $value }/32 in
unit-32-spoken = { $count ->
    [one] { $value } thirty-second of an inch
   *[other] { $value } thirty-seconds of an inch
}
unit-nm = { $value } N·m
unit-nm-spoken = { $count ->
    [one] { $value } newton meter
   *[other] { $value } newton meters
}
unit-ftlb = { $value } ft·lb
unit-ftlb-spoken = { $count ->
    [one] { $value } foot-pound
   *[other] { $value } foot-pounds
}
unit-kgfm = { $value } kgf·m
unit-kgfm-spoken = { $value } kilogram-force meters
unit-psi = { $value } psi
unit-psi-spoken = { $value } P S I
unit-kpa = { $value } kPa
unit-kpa-spoken = { $count ->
    [one] { $value } kilopascal
   *[other] { $value } kilopascals
}
unit-bar = { $value } bar
unit-bar-spoken = { $value } bar
unit-km = { $value } km
unit-km-spoken = { $count ->
    [one] { $value } kilometer
   *[other] { $value } kilometers
}
unit-mi = { $value } mi
unit-mi-spoken = { $count ->
    [one] { $value } mile
   *[other] { $value } miles
}
unit-c = { $value } °C
unit-c-spoken = { $value } degrees Celsius
unit-f = { $value } °F
unit-f-spoken = { $value } degrees Fahrenheit
unit-kg = { $value } kg
unit-kg-spoken = { $count ->
    [one] { $value } kilogram
   *[other] { $value } kilograms
}
unit-lb = { $value } lb
unit-lb-spoken = { $count ->
    [one] { $value } pound
   *[other] { $value } pounds
}
unit-t = { $value } t
unit-t-spoken = { $value } metric tons
unit-kmh = { $value } km/h
unit-kmh-spoken = { $value } kilometers per hour
unit-mph = { $value } mph
unit-mph-spoken = { $value } miles per hour
unit-in = { $value } in
unit-in-spoken = { $count ->
    [one] { $value } inch
   *[other] { $value } inches
}

# A reading kept in one unit and shown in another.
unit-converted = { $shown } (read { $read })

misread-not-a-number = “{ $given }” is not a number. Type digits, like 7 or 5.2.
misread-thousands = “{ $given }” could mean two numbers. Type it without a thousands mark.
misread-no-unit = “{ $given }” has no unit. Add one: { $known }.
misread-wrong-unit = “{ $unit }” is not a unit for this. Use { $known }.
misread-too-low = “{ $given }” is too low for this reading. The lowest is { $bound }.
misread-too-high = “{ $given }” is too high for this reading. The highest is { $bound }.
