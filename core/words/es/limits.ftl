# Sources and how far to trust them.
source-titled = { $title } ({ $grade })
grade-rule = norma, texto leído
grade-manual = manual del fabricante
grade-two-secondary = dos fuentes secundarias
grade-secondary = fuente secundaria
grade-computed = calculado
grade-common-practice = práctica común, sin fuente
grade-memory = de memoria
grade-design = decisión nuestra

# What a source is, where its title alone does not say it; behind “cited-” the title.
cited-geometry = geometría
cited-the-vehicle-s-own-specification-as-printed = la especificación del vehículo, como está impresa
cited-minimum-printed-on-the-part = mínimo impreso en la pieza
cited-the-vehicle-s-manual-as-recorded = el manual del vehículo, como está anotado
cited-generic-installer-chart = tabla genérica para instaladores
cited-load-range-page = página sobre rangos de carga
cited-engineering-data-on-nut-factors = datos de ingeniería sobre factores de tuerca
cited-the-load-printed-on-the-sidewall = la carga impresa en el costado
cited-load-index-tables-secondary = tablas de índices de carga, secundarias
cited-winter-tread-advice = consejo sobre la banda de rodadura en invierno
cited-uk-practice = práctica del Reino Unido
cited-france-order-text-jorfarti000038987859 = Francia, texto de la orden JORFARTI000038987859
cited-fmvss-109-119-wear-bars = FMVSS 109/119, indicadores de desgaste
cited-fmvss-139-wear-bars = FMVSS 139, indicadores de desgaste
cited-fmvss-119-s6-4-motorcycle = FMVSS 119 S6.4, motocicleta
cited-an-owner-s-manual-rotate-every-5-000-to-10-000-km = un manual del propietario: rotar cada 5000 a 10 000 km
cited-a-tire-maker-s-public-page-on-rotation = página pública de un fabricante de llantas sobre rotación
cited-tm-9-2610-200-14-table-2-1-dual-matching = TM 9-2610-200-14, tabla 2-1: parejas de duales
cited-owner-s-manuals-side-to-side-when-front-and-rear-sizes-differ = manuales del propietario: de lado a lado cuando difieren las medidas de adelante y atrás
cited-owner-s-manuals-no-dissimilar-spare-in-a-rotation = manuales del propietario: ningún repuesto distinto en una rotación
cited-49-cfr-393-75-d-quoted-in-an-nhtsa-letter-of-1974-buses-front-wheels = 49 CFR 393.75(d), citado en una carta de NHTSA de 1974: autobuses, ruedas delanteras
cited-49-cfr-393-75-e-regrooved-2-232-kg-and-more = 49 CFR 393.75(e): reranuradas, 2232 kg y más
cited-owner-s-manual-1998-keep-the-direction-of-rotation = manual del propietario, 1998: conservar el sentido de giro
cited-nhtsa-letter-11497-wear-bars-at-2-32-in = carta de NHTSA 11497: indicadores de desgaste a 2/32 pulg
cited-the-request = la pregunta
cited-maryland-comar-11-22-04-06-bias-and-radial-mixed-on-one-axle = Maryland COMAR 11.22.04.06, diagonal y radial mezcladas en un eje

# How a depth stands.
depth-refused = { $lowest } queda por debajo del límite de { $limit }. Cambie la llanta. Fuente: { $source }.
depth-below = { $lowest } queda por debajo de { $limit }. Cambie la llanta, o lea la norma que vale aquí. Fuente: { $source }.
depth-at-limit = { $lowest } está en el límite de { $limit }. Planee llantas nuevas ya. Fuente: { $source }.
depth-watch = { $lowest } está cerca de { $limit }. Mire otra vez pronto. Fuente: { $source }.
depth-sound = { $lowest } está lejos del límite de { $limit }. Fuente: { $source }.
depth-no-limit = { $lowest }: aquí no se conoce límite para este vehículo. Busque la norma local.
depth-advice = { $lowest } queda por debajo de los { $limit } aconsejados para invierno. Fuente: { $source }.
depth-wear-bar = { $lowest } queda por debajo de los indicadores de desgaste, de { $limit } de alto. Planee llantas nuevas ya. Fuente: { $source }.

spread-within = Las dos llantas difieren { $apart }; se permite hasta { $limit }. Fuente: { $source }.
spread-over = Las dos llantas de este eje difieren { $apart }, más de los { $limit } permitidos. Fuente: { $source }.

# Whose limits hold.
limits-held = Límites: { $chosen }.
limits-default = Límites, por omisión: { $chosen }.
limits-at-limit = en el límite hasta { $depth } por encima
limits-watch = vigilar hasta { $depth } por encima
region-us-federal = Estados Unidos
region-us-commercial = Estados Unidos, vehículos comerciales
region-us-maryland = Maryland
region-us-army = Ejército de los Estados Unidos
region-eu = Unión Europea
region-france = Francia
region-uk = Reino Unido
region-elsewhere = un lugar cuyas normas no se leyeron
season-summer = no se espera nieve ni hielo
season-winter = se espera nieve o hielo

# What makes a vehicle unsafe.
damage-unsafe = { $damage }. Condición insegura: no maneje. Fuente: { $source }.
damage-cord-visible = Se ven cuerdas o capas
damage-bulge = Un bulto, nudo o separación
damage-boot-or-patch = Una bota o un parche de reventón
damage-not-for-highway = La llanta está marcada como no apta para carretera
damage-marking-unreadable = No se puede leer ninguna marca de medida o carga
damage-bias-and-radial-mixed = Hay llantas diagonales y radiales en un mismo eje
damage-leaking-valve = La válvula tiene fuga
damage-touches-body = La llanta o la rueda toca la carrocería
damage-axle-over-rating = El eje pesa más que la capacidad de sus llantas
damage-fasteners-faulty = Hay pernos, espárragos o tuercas de rueda flojos, faltantes o dañados
damage-wheel-faulty = La rueda está doblada, agrietada o resoldada

# Who lifts it.
heavy-one = Una persona puede levantar esta rueda.
heavy-mass = Dos personas levantan esta rueda, una por lado, al quitar y al poner: pesa más de 50 lb (23 kg).
heavy-class = Dos personas levantan esta rueda, una por lado, al quitar y al poner: las ruedas de camión son pesadas.
heavy-size = Dos personas levantan esta rueda, una por lado, al quitar y al poner: las ruedas de esta medida son pesadas.
heavy-not-known = No se sabe cuánto pesa esta rueda. Mire su medida antes de levantarla.
cited-the-tool-s-papers-or-its-owner = los papeles de la herramienta o su dueño
cited-opposite-first-as-manuals-say = primero la de enfrente, como dicen los manuales
