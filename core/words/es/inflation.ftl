# What to set.
inflate-set = Póngala ahora a { $set }. En el frío de afuera eso es { $cold }.
inflate-set-cold-unknown = Déjela o ínflela ahora a { $set }. Revísela otra vez en frío.
inflate-no-figure = Todavía no se puede dar una cifra.

# What to know.
inflate-placard-not-known = No se conoce la etiqueta. Mire el marco de la puerta del conductor o el manual.
inflate-placard-void-by-size = La medida de la llanta difiere de la etiqueta, y la etiqueta no vale. Pida la presión al fabricante de la llanta.
inflate-placard-void-by-load = El rango o índice de carga de la llanta difiere de la etiqueta, y la etiqueta no vale. Pregunte al fabricante de la llanta.
inflate-fitted-not-compared = Nadie comparó la medida y la carga de la llanta con la etiqueta. Compárelas.
inflate-placard-over-sidewall = La etiqueta pide { $placard }, el costado permite { $sidewall }. Esta llanta no sirve para el vehículo.
inflate-sidewall-not-known = No se leyó el máximo del costado. Léalo antes de inflar.
inflate-raised-for-cold = { $by } por encima de la etiqueta, porque afuera hace más frío que aquí.
inflate-held-at-placard = Afuera hace más calor que aquí. Nunca la ponga por debajo de la etiqueta.
inflate-capped-at-sidewall = El frío de afuera pide { $wanted }, más que el máximo del costado. Revísela otra vez afuera, en frío.
inflate-under-placard-outside = En el frío de afuera quedará { $by } por debajo de la etiqueta. Revísela ahí.
inflate-over-sidewall-outside = Afuera quedará { $by } por encima del máximo del costado. Revísela ahí, en frío.
inflate-do-not-bleed-warm = La llanta está caliente, o puede estarlo. No le saque aire hasta la etiqueta; revísela en frío.
inflate-low-though-warm = Está por debajo de la etiqueta aun caliente, y en frío más baja. Ínflela y busque una fuga.
inflate-inspect-before-filling = A 80 por ciento de su presión o menos: quite la llanta e inspecciónela antes de meter aire.
inflate-may-have-run-flat = Tan baja que pudo rodar desinflada. Inspecciónela por dentro antes de meter aire.
inflate-step-too-coarse = El paso del medidor es más grande que el espacio entre etiqueta y costado.

standing-at-placard = En la etiqueta o más.
standing-low = Por debajo de la etiqueta. Ínflela, con luz o sin luz.
standing-low-with-lamp = Tan baja que la luz de advertencia debe encender. Ínflela y busque una fuga.

# After a rotation.
pressure-keep = { $to }: la misma presión, { $now }.
pressure-raise = { $to }: subir de { $was } a { $now }.
pressure-lower-when-cold = { $to }: bajar de { $was } a { $now }, solo en frío.
pressure-set = { $to }: poner a { $now }.
pressure-look-at-placard = { $to }: no se conoce la etiqueta. Mírela.

# Leaks.
leak-slow = Pierde cerca de { $rate } en 30 días: busque una fuga lenta.
leak-slow-unknown = Pierde cerca de { $rate } en 30 días. Parte puede ser el clima: no se anotaron temperaturas. Busque una fuga lenta.
leak-none = Pierde cerca de { $rate } en 30 días: no se ve fuga lenta.
leak-gained = No perdió nada entre visitas.
