# Lectura del costado de una llanta en una foto.
sight-no-models = Los archivos para leer fotos no están en este aparato ({ $folder }). Ejecute core/models/fetch para obtenerlos, o escriba lo que dice el costado.
sight-not-the-models = Los archivos para leer fotos están dañados o son otros. Ejecute otra vez core/models/fetch, o escriba lo que dice el costado.
sight-ring-outside = El círculo no está sobre la foto. Dibújelo en el borde exterior de la llanta.

# Lo que vale una lectura.
sight-confirm = Compárelo con la llanta y luego confírmelo.
sight-unsure = La medida no se lee con seguridad. Escríbala o tome otra foto.

# El acercamiento que más aclara.
sight-ask-size = Tome un acercamiento de la medida, de frente al costado.
sight-ask-size-at = Tome un acercamiento cerca de las { $hour } en punto, donde parece estar la medida.
sight-ask-date = Para la fecha, tome un acercamiento de los cuatro dígitos detrás de DOT. Pueden estar en el otro lado.
sight-ask-date-at = Para la fecha, tome un acercamiento cerca de las { $hour } en punto, de los cuatro dígitos detrás de DOT.
sight-ask-number = Para el número DOT completo, tome un acercamiento de él, de frente al costado.
sight-ask-number-at = Para el número DOT completo, tome un acercamiento de él cerca de las { $hour } en punto.

# Lo que se puede hacer mejor.
sight-closer = Acérquese hasta que la rueda llene la foto.
sight-hold-square = Sostenga la cámara de frente a la rueda.
sight-light-from-the-side = Ilumine el costado desde un lado, para que las letras den sombra.
sight-wipe = Limpie las letras con un trapo húmedo y tome otra foto.
sight-nothing-to-read = No se encontraron letras. Muestre la rueda entera o un acercamiento de sus letras.

# Sugerencias en una pantalla.
sight-suggestion = { $text } ({ $odds } %)
sight-suggestion-spoken = { $text }, { $odds } por ciento probable
sight-odds = { $odds } % probable
sight-arrow-fits = La flecha de rotación corresponde a este lado del vehículo ({ $odds } %).
sight-arrow-other-side = La flecha de rotación parece ser del otro lado ({ $odds } %): mírela.
sight-chalk = La tiza parece decir { $mark } ({ $odds } %).
sight-chalk-fits = La tiza dice { $mark }, la marca de esta llanta ({ $odds } %).
sight-chalk-of-another = La tiza parece decir { $mark }, la marca de otra llanta ({ $odds } %): mírela.
sight-not-on-this-side = No está en este costado
sight-not-read = No se leyó nada
