<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>skyalidade</name>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>In metres, also from a field; the dialog takes other units.</source>
        <translation>En metros, también desde un campo; el diálogo admite otras unidades.</translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>In metres; the dialog takes other units.</source>
        <translation>En metros; el diálogo admite otras unidades.</translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Lines of sight</source>
        <translation>Líneas de visión</translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Where to stand</source>
        <translation>Dónde situarse</translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Nights and alignments</source>
        <translation>Noches y alineaciones</translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Sky</source>
        <translation>Cielo</translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Several steps at once</source>
        <translation>Varios pasos a la vez</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{few} and {n:,} more</source>
        <translation>{few} y {n:,} más</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>with no geometry</source>
        <translation>sin geometría</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>Closed ground: {n:,} polygons, {seasonal:,} of them in seasons.</source>
        <translation>Terreno cerrado: {n:,} polígonos, {seasonal:,} de ellos por temporadas.</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{label}: skipped {reasons}.</source>
        <translation>{label}: omitidos {reasons}.</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{label}: {n:,} polygons were not valid and have been repaired: features {ids}.</source>
        <translation>{label}: {n:,} polígonos no eran válidos y se han reparado: objetos {ids}.</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{label}: the season of {n:,} polygons cannot be read; they are taken as always closed: {features}</source>
        <translation>{label}: no se puede leer la temporada de {n:,} polígonos; se toman como siempre cerrados: {features}</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{name}: feature {fid} is no polygon. Remove it.</source>
        <translation>{name}: el objeto {fid} no es un polígono. Elimínelo.</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{name}: the polygon of feature {fid} crosses itself and cannot be repaired. Draw it again.</source>
        <translation>{name}: el polígono del objeto {fid} se cruza a sí mismo y no se puede reparar. Dibújelo de nuevo.</translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{name}: the polygon of feature {fid} has no place in the CRS of the paths. Choose another CRS for the paths.</source>
        <translation>{name}: el polígono del objeto {fid} no se puede situar en el SRC de los senderos. Elija otro SRC para los senderos.</translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>Magnetic bearings are null outside {first:g} to {last:g}, the years for which {model} holds.</source>
        <translation>Los rumbos magnéticos son nulos fuera del periodo de {first:g} a {last:g}, los años para los que vale {model}.</translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>Near a magnetic pole a compass needle hardly turns: of {total:,} points {found}. Steer by true bearings there.</source>
        <translation>Cerca de un polo magnético la aguja de la brújula apenas gira: de {total:,} puntos, {found}. Oriéntese allí por rumbos verdaderos.</translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>{n:,} where it may err by degrees</source>
        <translation>{n:,} donde puede errar en varios grados</translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>{n:,} where it is of no use</source>
        <translation>{n:,} donde no sirve</translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter (ISO 12312-2 for the eye).</source>
        <translation>No mire nunca al Sol ni le apunte con un visor óptico o un teleobjetivo sin un filtro solar certificado (ISO 12312-2 para los ojos).</translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>Walking in the dark: cliffs, tides, water levels, weather, animals. Arrive before dark, not alone, and tell someone. The result knows nothing of footing, tide or weather.</source>
        <translation>Caminar a oscuras: acantilados, mareas, nivel del agua, meteorología, animales. Llegue antes de que oscurezca, no vaya en solitario y avise a alguien. El resultado no sabe nada del suelo que se pisa, de la marea ni de la meteorología.</translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>A planning aid, not a survey and not a permit: access, closures and night hours are decided by the land manager and local law. Only the closures of the layers given are known here.</source>
        <translation>Una ayuda para planificar, no un levantamiento ni un permiso: los accesos, los cierres y los horarios nocturnos los deciden el gestor del terreno y la normativa local. Aquí solo se conocen los cierres de las capas indicadas.</translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>The terrain is that of '{dem}', in cells of {size} m. Elevation data have errors, and no trees or buildings: what is clear by them may be hidden. Look from the place by day.</source>
        <translation>El terreno es el de '{dem}', en celdas de {size} m. Los datos de elevaciones tienen errores y no incluyen árboles ni edificios: lo que según ellos está despejado puede quedar oculto. Mire desde el lugar de día.</translation>
    </message>
    <message>
        <location filename="../adapters/clashes.py"/>
        <source>{name}: the name {path} holds '|', behind which QGIS reads the name of a layer. Leave it out; a table in a GeoPackage is written as ogr:dbname='FILE.gpkg' table="NAME" (geom).</source>
        <translation>{name}: el nombre {path} contiene '|', tras el que QGIS lee el nombre de una capa. Suprímalo; una tabla de un GeoPackage se escribe como ogr:dbname='FILE.gpkg' table="NAME" (geom).</translation>
    </message>
    <message>
        <location filename="../adapters/clashes.py"/>
        <source>{name}: {path} is the layer of {source}, which would be lost. Choose another name.</source>
        <translation>{name}: {path} es la capa de {source}, que se perdería. Elija otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/clashes.py"/>
        <source>{name} and {other} are both to be written to {path}. Give each a name of its own.</source>
        <translation>{name} y {other} se escribirían ambos en {path}. Dé a cada uno un nombre propio.</translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>always</source>
        <translation>siempre</translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>{first} to {last}</source>
        <translation>{first} a {last}</translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>each year {first} to {last}</source>
        <translation>cada año del {first} al {last}</translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>until {last}</source>
        <translation>hasta el {last}</translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>from {first}</source>
        <translation>desde el {first}</translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>closure {fid}</source>
        <translation>cierre {fid}</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>{provider}: {n:,} rows, whole.</source>
        <translation>{provider}: {n:,} filas, completa.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>the connection was lost for a while.</source>
        <translation>la conexión se perdió durante un tiempo.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>{name}: writing to the table {table} stopped after {n:,} of {total:,} rows: {error} The table is not whole.</source>
        <translation>{name}: la escritura en la tabla {table} se detuvo tras {n:,} de {total:,} filas: {error} La tabla no está completa.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>All rows are kept in the file {path}: load them into the database, or run again.</source>
        <translation>Todas las filas se conservan en el archivo {path}: cárguelas en la base de datos o ejecute de nuevo.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The database {database} is named without a table. Name one.</source>
        <translation>La base de datos {database} se indica sin tabla. Indique una.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The schema {schema} does not exist. Make it, or choose another one.</source>
        <translation>El esquema {schema} no existe. Créelo o elija otro.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>No table may be made in the schema {schema} by this user. Choose another one.</source>
        <translation>Este usuario no puede crear tablas en el esquema {schema}. Elija otro.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The database of the table {table} has no PostGIS. Run CREATE EXTENSION postgis in it.</source>
        <translation>La base de datos de la tabla {table} no tiene PostGIS. Ejecute en ella CREATE EXTENSION postgis.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>it could not be made.</source>
        <translation>no se pudo crear.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>the connection was lost before they could be counted.</source>
        <translation>la conexión se perdió antes de poder contarlas.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The database of the table {table} does not answer. Look whether it runs and whether the connection is right.</source>
        <translation>La base de datos de la tabla {table} no responde. Compruebe que está en marcha y que la conexión es correcta.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>cancelled.</source>
        <translation>cancelado.</translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>All rows are in the table {table}, but it could not be marked as whole.</source>
        <translation>Todas las filas están en la tabla {table}, pero no se pudo marcar como completa.</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>there is no sightline that can be used</source>
        <translation>no hay ninguna línea de visión utilizable</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>whose bearing_deg, dist_m or top_alt_deg is blank</source>
        <translation>con bearing_deg, dist_m o top_alt_deg en blanco</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>whose dist_m, altitudes or width_deg no subject has</source>
        <translation>con una dist_m, unas alturas o una width_deg que no puede tener ningún motivo</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>with no place on the Earth</source>
        <translation>sin una posición en la Tierra</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES has no base_alt_deg: each subject is taken as its top alone, and whether its foot fits is not known.</source>
        <translation>SIGHTLINES no tiene base_alt_deg: de cada motivo se toma solo la cima, y no se sabe si su pie cabe.</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES has no width_deg: each subject is taken as having no width.</source>
        <translation>SIGHTLINES no tiene width_deg: se toma cada motivo como si no tuviera anchura.</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES: '{layer}' has no field {fields}. Choose a result of sightlines or alignments.</source>
        <translation>SIGHTLINES: '{layer}' no tiene el campo {fields}. Elija un resultado de sightlines o de alignments.</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES: {n:,} lines from {total:,} features.</source>
        <translation>SIGHTLINES: líneas: {n:,}; objetos: {total:,}.</translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES: skipped {reasons}.</source>
        <translation>SIGHTLINES: omitidas {reasons}.</translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>Field plan</source>
        <translation>Plan de campo</translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>Subject: {aim}</source>
        <translation>Motivo: {aim}</translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>{body}: {where}</source>
        <translation>{body}: {where}</translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>and {n:,} more</source>
        <translation>y {n:,} más</translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>{body} over {subject}</source>
        <translation>{body} sobre {subject}</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>{blank} knows of this and hears from us by {blank} (the plan ends at {date} {clock}); if not, alert: {blank}</source>
        <translation>{blank} lo sabe y tendrá noticias nuestras antes de las {blank} (el plan termina el {date} a las {clock}); si no, avisar a: {blank}</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>From {parking} along {walk}: {dist}, {time} at {speed:g} km/h. Slopes and rests are not counted.</source>
        <translation>De {parking} por {walk}: {dist}, {time} a {speed:g} km/h. No se cuentan pendientes ni descansos.</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Magnetic bearings are not known: the magnetic model holds from 2025 to 2030.</source>
        <translation>No se conocen los rumbos magnéticos: el modelo magnético vale de 2025 a 2030.</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>east</source>
        <translation>este</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>west</source>
        <translation>oeste</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Daylight, twilight, darkness; the alignments; broken lines: arrive, leave. Bar beneath: the Moon is up.</source>
        <translation>Luz diurna, crepúsculo, oscuridad; las alineaciones; líneas discontinuas: llegada, salida. Barra inferior: la Luna está sobre el horizonte.</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Azimuth, true</source>
        <translation>Acimut verdadero</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>magnetic</source>
        <translation>magnético</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Altitude</source>
        <translation>Altura</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Subject</source>
        <translation>Motivo</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Bearing, true</source>
        <translation>Rumbo verdadero</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Distance</source>
        <translation>Distancia</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Altitude of its top</source>
        <translation>Altura de su cima</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Sightlines</source>
        <translation>Líneas de visión</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Nearest parking: {parking}, {dist} off as the crow flies (bearing {bearing}). No walk is known: nor is its time.</source>
        <translation>Aparcamiento más cercano: {parking}, a {dist} en línea recta (rumbo {bearing}). No se conoce el camino ni, por tanto, su duración.</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Black on white</source>
        <translation>Negro sobre blanco</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Nothing to plan</source>
        <translation>Nada que planificar</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Magnetic declination {deg} {side}</source>
        <translation>Declinación magnética {deg} {side}</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Bearings of the subjects, true north up</source>
        <translation>Rumbos de los motivos, con el norte verdadero arriba</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>its farther end</source>
        <translation>su extremo más lejano</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Time</source>
        <translation>Hora</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>What</source>
        <translation>Qué</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>for {s:.0f} s</source>
        <translation>durante {s:.0f} s</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Walk</source>
        <translation>Acceso a pie</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>No way from a car is known: add the time that you need for it.</source>
        <translation>No se conoce ningún camino desde un coche: sume el tiempo que necesite para él.</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>The night from left to right</source>
        <translation>La noche de izquierda a derecha</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>in the dark: lamp, known path</source>
        <translation>a oscuras: linterna y camino conocido</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Camera</source>
        <translation>Cámara</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Place</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Night of {night}</source>
        <translation>Noche del {night}</translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Times: {zone}</source>
        <translation>Horas: {zone}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Walking in the dark: cliffs, tides, water levels, weather, animals. Not alone; tell someone. This plan knows nothing of footing, tide or weather.</source>
        <translation>Caminar a oscuras: acantilados, mareas, nivel del agua, meteorología, animales. No vaya en solitario; avise a alguien. Este plan no sabe nada del suelo que se pisa, de la marea ni de la meteorología.</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>A planning aid, not a survey and not a permit: access, closures, night hours, artificial light and group size are decided by the land manager and local law.</source>
        <translation>Una ayuda para planificar, no un levantamiento ni un permiso: los accesos, los cierres, los horarios nocturnos, la luz artificial y el tamaño del grupo los deciden el gestor del terreno y la normativa local.</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{lat}, {lon}</source>
        <translation>{lat}; {lon}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>N</source>
        <translation>N</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>S</source>
        <translation>S</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>E</source>
        <translation>E</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>W</source>
        <translation>O</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>camera</source>
        <translation>cámara</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>subject</source>
        <translation>motivo</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{deg} above its top</source>
        <translation>{deg} por encima de su cima</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{deg} below its top</source>
        <translation>{deg} por debajo de su cima</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sun: never look at it, nor point an optical viewfinder or a long lens at it, without a certified solar filter (ISO 12312-2 for the eye).</source>
        <translation>Sol: nunca lo mire ni le apunte con un visor óptico o un teleobjetivo sin un filtro solar certificado (ISO 12312-2 para los ojos).</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Terrain is that of an elevation model, with its errors, without trees or buildings. Look from the place by day.</source>
        <translation>El terreno es el de un modelo digital de elevaciones, con sus errores, sin árboles ni edificios. Mire desde el lugar de día.</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{m:,.0f} m</source>
        <translation>{m:,.0f} m</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{km:,.0f} km</source>
        <translation>{km:,.0f} km</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{h} h {m:02} min</source>
        <translation>{h} h {m:02} min</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{m} min</source>
        <translation>{m} min</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>body</source>
        <translation>astro</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>bearing {true} true, {magnetic} magnetic; distance {dist}</source>
        <translation>rumbo {true} verdadero, {magnetic} magnético; distancia {dist}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>azimuth {true} true, {magnetic} magnetic, altitude {alt}</source>
        <translation>acimut {true} verdadero, {magnetic} magnético, altura {alt}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{date} {time} ({zone})</source>
        <translation>{date} {time} ({zone})</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{begin} to {end}, closest {moment}</source>
        <translation>de {begin} a {end}; más cerca, {moment}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moon down</source>
        <translation>Luna bajo el horizonte</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{camera} lies in closed ground, or outside the area allowed.</source>
        <translation>{camera} está en terreno cerrado o fuera del área permitida.</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{lit:.0f} % lit</source>
        <translation>iluminada al {lit:.0f} %</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moon up at {deg}</source>
        <translation>Luna a {deg} de altura</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>its light {side}</source>
        <translation>su luz viene {side}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Milky Way core</source>
        <translation>Núcleo de la Vía Láctea</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Top of the Milky Way's arch</source>
        <translation>Cima del arco de la Vía Láctea</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sun</source>
        <translation>Sol</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moon</source>
        <translation>Luna</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Celestial pole</source>
        <translation>Polo celeste</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Star</source>
        <translation>Estrella</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Place on the Milky Way</source>
        <translation>Punto de la Vía Láctea</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Leave the car</source>
        <translation>Dejar el coche</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Be at the camera</source>
        <translation>Estar junto a la cámara</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sunset</source>
        <translation>Puesta de Sol</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Civil twilight ends</source>
        <translation>Fin del crepúsculo civil</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Nautical twilight ends</source>
        <translation>Fin del crepúsculo náutico</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Astronomical twilight ends: full darkness</source>
        <translation>Fin del crepúsculo astronómico: oscuridad total</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moonset</source>
        <translation>Puesta de la Luna</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moonrise</source>
        <translation>Salida de la Luna</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Astronomical twilight begins</source>
        <translation>Comienzo del crepúsculo astronómico</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Nautical twilight begins</source>
        <translation>Comienzo del crepúsculo náutico</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Civil twilight begins</source>
        <translation>Comienzo del crepúsculo civil</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sunrise</source>
        <translation>Salida del Sol</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{body} comes over {subject}</source>
        <translation>{body}: empieza a estar sobre {subject}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{body} closest to the bearing of {subject}</source>
        <translation>{body}: más cerca del rumbo de {subject}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{body} leaves {subject}</source>
        <translation>{body}: deja de estar sobre {subject}</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Leave</source>
        <translation>Partida</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Back at the car</source>
        <translation>De vuelta en el coche</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>daylight</source>
        <translation>luz diurna</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>civil twilight</source>
        <translation>crepúsculo civil</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>nautical twilight</source>
        <translation>crepúsculo náutico</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>astronomical twilight</source>
        <translation>crepúsculo astronómico</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>full darkness</source>
        <translation>oscuridad total</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>from ahead</source>
        <translation>de frente</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>from the side</source>
        <translation>de lado</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>from behind the camera</source>
        <translation>desde detrás de la cámara</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>The terrain hides the top of {subject} from {camera}.</source>
        <translation>El terreno oculta la cima de {subject} desde {camera}.</translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Whether the terrain hides the top of {subject} from {camera} is uncertain.</source>
        <translation>No se sabe con certeza si el terreno oculta la cima de {subject} desde {camera}.</translation>
    </message>
    <message>
        <location filename="../adapters/files.py"/>
        <source>{path} could not be written: {reason}</source>
        <translation>No se pudo escribir {path}: {reason}</translation>
    </message>
    <message>
        <location filename="../adapters/files.py"/>
        <source>The folder {folder} cannot be made: {reason}</source>
        <translation>No se puede crear la carpeta {folder}: {reason}</translation>
    </message>
    <message>
        <location filename="../adapters/keeping.py"/>
        <source>{field} is {new}</source>
        <translation>{field} pasa a ser {new}</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Focal length [mm]</source>
        <translation>Distancia focal [mm]</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Held: landscape or portrait</source>
        <translation>Posición: landscape o portrait</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>F-number</source>
        <translation>Número f</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Shutter [s]; blank: the longest by the NPF rule</source>
        <translation>Tiempo de exposición [s]; en blanco: el más largo según la regla NPF</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Distance focused on; blank: that of the subject</source>
        <translation>Distancia de enfoque; en blanco: la del motivo</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Camera kept level: turned to the aim, but not tilted up</source>
        <translation>Cámara nivelada: girada hacia donde se apunta, pero sin inclinarla hacia arriba</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Part of the frame to keep free on each side [%]</source>
        <translation>Parte del encuadre que se deja libre a cada lado [%]</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Overlap of a panorama's frames [%]</source>
        <translation>Solape de los fotogramas de una panorámica [%]</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Sensor: full_frame, crop_1_5, four_thirds or medium</source>
        <translation>Sensor: full_frame, crop_1_5, four_thirds o medium</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Long side of the sensor [mm]; blank: that of PRESET</source>
        <translation>Lado largo del sensor [mm]; en blanco: el de PRESET</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Short side of the sensor [mm]; blank: that of PRESET</source>
        <translation>Lado corto del sensor [mm]; en blanco: el de PRESET</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Pixels along the long side; blank: those of PRESET</source>
        <translation>Píxeles a lo largo del lado largo; en blanco: los de PRESET</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Circle of confusion [mm]; blank: 0.030 on 24 x 36 mm, less on smaller sensors</source>
        <translation>Círculo de confusión [mm]; en blanco: 0,030 en 24 x 36 mm, menos en sensores menores</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Stars blurred this much are still sharp [px]</source>
        <translation>Desenfoque con el que las estrellas aún se ven nítidas [px]</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Aimed: between, subject or body</source>
        <translation>Apuntado: between, subject o body</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>A panorama is to hold: pair or arch</source>
        <translation>Una panorámica debe abarcar: pair o arch</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>SENSOR_H_MM ({height:g}) is more than SENSOR_W_MM ({width:g}), which is the long side. Exchange them; ORIENTATION=portrait holds the camera upright.</source>
        <translation>SENSOR_H_MM ({height:g}) es mayor que SENSOR_W_MM ({width:g}), que es el lado largo. Intercámbielos; ORIENTATION=portrait pone la cámara en vertical.</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>FOCAL_MM is {focal:g}: the frame would be {narrow:.2g}° wide or high, under {least:g}°. Give a shorter one.</source>
        <translation>FOCAL_MM es {focal:g}: el encuadre tendría {narrow:.2g}° de ancho o de alto, menos de {least:g}°. Indique una más corta.</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>FOCUS_M is {focus:g} m, within the focal length of {focal:g} mm. Give a distance in metres, such as 20.</source>
        <translation>FOCUS_M es {focus:g} m, no más que la distancia focal de {focal:g} mm. Indique una distancia en metros, como 20.</translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>{name} is {value:g}. Give a number greater than 0, such as {example:g}.</source>
        <translation>{name} es {value:g}. Indique un número mayor que 0, como {example:g}.</translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>with an empty geometry</source>
        <translation>con una geometría vacía</translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>that are no lines</source>
        <translation>que no son líneas</translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>of no length</source>
        <translation>sin longitud</translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>{label}: {n:,} lines from {total:,} features.</source>
        <translation>{label}: líneas: {n:,}; objetos: {total:,}.</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>Symbols, labels, aliases and times</source>
        <translation>Símbolos, etiquetas, alias y tiempos</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>The style could not be saved beside the rows of {layer}: {error} The rows are whole.</source>
        <translation>No se pudo guardar el estilo junto a las filas de {layer}: {error} Las filas están completas.</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>plane</source>
        <translation>plano</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>core</source>
        <translation>núcleo</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>arch</source>
        <translation>arco</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>pole</source>
        <translation>polo</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>star</source>
        <translation>estrella</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>fits</source>
        <translation>cabe</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>does not fit</source>
        <translation>no cabe</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>, up to </source>
        <translation>, hasta </translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>, would at </source>
        <translation>, cabría con </translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>° up</source>
        <translation>° de altura</translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source> nights, </source>
        <translation> noches, </translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source> to </source>
        <translation> a </translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>skyline from </source>
        <translation>perfil desde </translation>
    </message>
    <message>
        <location filename="../adapters/minutes_file.py"/>
        <source>{hours:g} h</source>
        <translation>{hours:g} h</translation>
    </message>
    <message>
        <location filename="../adapters/minutes_file.py"/>
        <source>This may write up to {need:,} MB, but {folder} has {free:,} MB left. Choose a smaller AREA, or another folder.</source>
        <translation>Esto puede escribir hasta {need:,} MB, pero en {folder} quedan {free:,} MB. Elija un AREA menor u otra carpeta.</translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>{n:.3g} times lie a STEP of {step:g} min apart from the first to the last, over {most:,}. Give a longer STEP.</source>
        <translation>De la primera fecha a la última hay {n:.3g} momentos separados por un STEP de {step:g} min, más de {most:,}. Indique un STEP más largo.</translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>{last} is before {first}. Exchange them, or mind their offsets from UTC.</source>
        <translation>{last} es anterior a {first}. Intercámbielos o tenga en cuenta sus desfases respecto a UTC.</translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>'{text}' is no time. Write it as 2027-06-06 23:30:00, with Z or an offset such as -06:00 if it is not the local clock.</source>
        <translation>'{text}' no es una fecha y hora. Escríbala como 2027-06-06 23:30:00, con Z o un desfase como -06:00 si no es la hora local.</translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>'{text}' is no date. Write it as 2027-06-06.</source>
        <translation>'{text}' no es una fecha. Escríbala como 2027-06-06.</translation>
    </message>
    <message>
        <location filename="../adapters/packages.py"/>
        <source>{provider}: {n:,} rows, then cancelled, not whole.</source>
        <translation>{provider}: {n:,} filas y después cancelada, incompleta.</translation>
    </message>
    <message>
        <location filename="../adapters/packages.py"/>
        <source>{provider}: being written, not whole.</source>
        <translation>{provider}: escribiéndose, incompleta.</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>there is no camera that can be used</source>
        <translation>no hay ninguna cámara utilizable</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>there is no subject that can be used</source>
        <translation>no hay ningún motivo utilizable</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>{n:,} pairs of camera and subject.</source>
        <translation>{n:,} pares de cámara y motivo.</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>Heights: {sources}.</source>
        <translation>Altitudes: {sources}.</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>Left out: {reasons}.</source>
        <translation>Excluidos: {reasons}.</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>with the camera on its subject</source>
        <translation>con la cámara sobre su motivo</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>farther apart than MAX_DISTANCE</source>
        <translation>más separados que MAX_DISTANCE</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>cameras whose PAIR_FIELD is blank</source>
        <translation>cámaras cuyo PAIR_FIELD está en blanco</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>subjects whose PAIR_FIELD is blank</source>
        <translation>motivos cuyo PAIR_FIELD está en blanco</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>cameras whose PAIR_FIELD no subject has</source>
        <translation>cámaras cuyo PAIR_FIELD no tiene ningún motivo</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>subjects whose PAIR_FIELD no camera has</source>
        <translation>motivos cuyo PAIR_FIELD no tiene ninguna cámara</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>outside FACE_FROM to FACE_TO</source>
        <translation>fuera de FACE_FROM a FACE_TO</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>cameras with no subject within MAX_DISTANCE</source>
        <translation>cámaras sin ningún motivo dentro de MAX_DISTANCE</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>pairs from the DEM</source>
        <translation>pares con altitudes del MDE</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>pairs from the Z of both points</source>
        <translation>pares con la Z de ambos puntos</translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>pairs taken as level, as not both points have a Z</source>
        <translation>pares tomados al mismo nivel, pues falta la Z de algún punto</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS; each point of a multipoint counts by itself. The standpoints that 'standpoints' finds will do.</source>
        <translation>Puntos en cualquier SRC; cada punto de un multipunto cuenta por sí mismo. Sirven los puntos de toma que encuentra 'standpoints'.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS: the foot of a rock, a tower, a tree. Each point of a multipoint counts by itself.</source>
        <translation>Puntos en cualquier SRC: el pie de una roca, una torre, un árbol. Cada punto de un multipunto cuenta por sí mismo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS; each point of a multipoint counts by itself.</source>
        <translation>Puntos en cualquier SRC; cada punto de un multipunto cuenta por sí mismo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Lines in any CRS, straight between their vertices in that CRS.</source>
        <translation>Líneas en cualquier SRC, rectas entre sus vértices en ese SRC.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Lines that 'sightlines' made, with its fields.</source>
        <translation>Líneas hechas por 'sightlines', con sus campos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points that 'standpoints' made, with its fields.</source>
        <translation>Puntos hechos por 'standpoints', con sus campos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS. The one that lies on the walk is taken.</source>
        <translation>Puntos en cualquier SRC. Se toma el que está en el acceso a pie.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a camera. Blank: 'camera' and the number of the feature.</source>
        <translation>Cómo llaman los resultados a una cámara. En blanco: 'camera' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a subject. Blank: 'subject' and the number of the feature.</source>
        <translation>Cómo llaman los resultados a un motivo. En blanco: 'subject' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a site. Blank: 'site' and the number of the feature.</source>
        <translation>Cómo llaman los resultados a un lugar. En blanco: 'site' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a path. Blank: 'path' and the number of the feature.</source>
        <translation>Cómo llaman los resultados a un sendero. En blanco: 'path' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a parking place. Blank: 'parking' and the number of the feature.</source>
        <translation>Cómo llaman los resultados a un aparcamiento. En blanco: 'parking' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a walk. Blank: 'walk' and the number of the feature.</source>
        <translation>Cómo llaman los resultados a un acceso a pie. En blanco: 'walk' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Tripod and camera: from the ground to the middle of the lens.</source>
        <translation>Trípode y cámara: del suelo al centro del objetivo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>From its foot upward, so that what stands above it can be told.</source>
        <translation>Desde su pie hacia arriba, para poder decir qué queda por encima.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>More than 0 for what does not stand on the ground, such as a window.</source>
        <translation>Más de 0 para lo que no se apoya en el suelo, como una ventana.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For its apparent width in degrees and in the picture.</source>
        <translation>Para su anchura aparente en grados y en la imagen.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For a subject worth a picture from one side only. Clockwise from true north; a field or expression gives degrees.</source>
        <translation>Para un motivo que merece una foto desde un solo lado. En sentido horario desde el norte verdadero; un campo o una expresión da grados.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Clockwise from the bearing above: 300 to 60 runs through north. A field or expression gives degrees.</source>
        <translation>En sentido horario desde el rumbo anterior: de 300 a 60 pasa por el norte. Un campo o una expresión da grados.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A camera looks at the subjects that hold the same value in their field.</source>
        <translation>Una cámara mira a los motivos que tienen el mismo valor en su campo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It holds the same values as the cameras' field.</source>
        <translation>Contiene los mismos valores que el campo de las cámaras.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Pairs farther apart, along the Earth's surface, are left out and counted.</source>
        <translation>Los pares más separados, por la superficie de la Tierra, se excluyen y se cuentan.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Nearer, the subject may not fit the picture, or the bearing changes with every step.</source>
        <translation>Más cerca, el motivo puede no caber en la imagen, o el rumbo cambia con cada paso.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>They are carried over to every row of the result; a name that is taken gets a number.</source>
        <translation>Se copian a cada fila del resultado; a un nombre ya ocupado se le añade un número.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Blank: anywhere. Polygons in any CRS.</source>
        <translation>En blanco: en cualquier parte. Polígonos en cualquier SRC.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons in any CRS, with the dates of the closure in two fields; without dates they are closed all year.</source>
        <translation>Polígonos en cualquier SRC, con las fechas del cierre en dos campos; sin fechas están cerrados todo el año.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What the sheet calls a closed area.</source>
        <translation>Cómo llama la hoja a una zona cerrada.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A date, or MM-DD for each year; that day is still closed. It may run over New Year.</source>
        <translation>Una fecha, o MM-DD para cada año; ese día aún está cerrado. Puede pasar de un año al siguiente.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>By map or receiver. It tells how far a bearing may be off.</source>
        <translation>Con mapa o receptor. Indica cuánto puede desviarse un rumbo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Places farther off, along the Earth's surface, are left out.</source>
        <translation>Los lugares más lejanos, por la superficie de la Tierra, se excluyen.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Looked for no farther out than this: near the horizon a shadow has no end.</source>
        <translation>No se busca más lejos: con el astro cerca del horizonte una sombra no tiene fin.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For the body 'star'. Vega, for one: 279.23,38.78.</source>
        <translation>Para el astro 'star'. Vega, por ejemplo: 279.23,38.78.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For the body 'galactic'. 0 is the core, 80 lies in Cygnus.</source>
        <translation>Para el astro 'galactic'. 0 es el núcleo; 80 está en el Cisne.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A night has the date of its evening: what happens after midnight belongs to the day before.</source>
        <translation>Una noche lleva la fecha del día en que comienza: lo que ocurre después de medianoche pertenece al día anterior.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Included.</source>
        <translation>Incluida.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>With an offset or Z that instant; without, the clock of TIME_ZONE, or of each site where that is blank.</source>
        <translation>Con un desfase o Z, ese instante; sin él, la hora de TIME_ZONE, o la de cada lugar si está en blanco.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As the first time. Included, if a step falls on it.</source>
        <translation>Como la inicial. Incluida si un paso cae en ella.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As the time above. Included, if a step falls on it.</source>
        <translation>Como la anterior. Incluida si un paso cae en ella.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>From one time to the next, in minutes.</source>
        <translation>De un momento al siguiente, en minutos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>From one time to the next, in minutes: through each night, or from the time above to the end.</source>
        <translation>De un momento al siguiente, en minutos: a lo largo de cada noche, o desde la hora anterior hasta la final.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Above the level horizon, refraction included. For the arch it is the core's altitude. Blank: no limit.</source>
        <translation>Sobre el horizonte astronómico, con la refracción incluida. Para el arco es la altura del núcleo. En blanco: sin límite.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The body's centre, refraction included. Less than 0: behind or below the subject. Blank: no condition.</source>
        <translation>El centro del astro, con la refracción incluida. Menos de 0: detrás o por debajo del motivo. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The body's centre, refraction included. Blank: no condition.</source>
        <translation>El centro del astro, con la refracción incluida. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The angle between band and horizon at the core: 90 is the upright column. Blank: no condition.</source>
        <translation>El ángulo entre la banda y el horizonte en el núcleo: 90 es la columna vertical. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The angle between band and horizon at the core: little is the low, flat arch. Blank: no condition.</source>
        <translation>El ángulo entre la banda y el horizonte en el núcleo: un valor pequeño es el arco bajo y tendido. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The highest point of the galactic plane, without refraction. Blank: no condition.</source>
        <translation>El punto más alto del plano galáctico, sin refracción. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Without the core the arch is not the bright part of the band.</source>
        <translation>Sin el núcleo el arco no es la parte brillante de la banda.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For 'down_or_thin'. 0 is new Moon, 0.5 a half, 1 full.</source>
        <translation>Para 'down_or_thin'. 0 es Luna nueva, 0,5 media, 1 llena.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The Moon over a subject at dusk wants the Sun between -8° and 0°. Blank: no condition.</source>
        <translation>La Luna sobre un motivo al anochecer requiere el Sol entre -8° y 0°. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>0 is new Moon, 0.5 a half, 1 full. Blank: no condition.</source>
        <translation>0 es Luna nueva, 0,5 media, 1 llena. En blanco: sin condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Cold air bends light more: by about 4 % for 10 °C.</source>
        <translation>El aire frío curva más la luz: cerca de un 4 % por cada 10 °C.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>1 unless the file holds something else first.</source>
        <translation>1, salvo que el archivo tenga otra cosa primero.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Ground farther off is not looked at. Far mountains want more, and time.</source>
        <translation>No se tiene en cuenta el terreno más lejano. Las montañas lejanas requieren un valor mayor, y más tiempo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>0.13 on a usual day; 0: light runs straight; over cold water it may be more.</source>
        <translation>0,13 en un día normal; 0: la luz va recta; sobre agua fría puede ser más.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points with a number of people. Their glow toward the body is told by a rule of thumb (Walker 1977).</source>
        <translation>Puntos con un número de habitantes. Su resplandor hacia el astro se estima con una regla empírica (Walker 1977).</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How many people live there.</source>
        <translation>Cuántas personas viven allí.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>So that the town that glows most can be named. Blank: 'town' and the number of the feature.</source>
        <translation>Para nombrar la población que más resplandece. En blanco: 'town' y el número del objeto.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As engraved on the lens, not an equivalent.</source>
        <translation>La grabada en el objetivo, no una equivalente.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>landscape: the long side level; portrait: upright.</source>
        <translation>landscape: el lado largo horizontal; portrait: vertical.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>However the camera is held.</source>
        <translation>Sea cual sea la posición de la cámara.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>However the camera is held. Trails and blur are counted in these pixels.</source>
        <translation>Sea cual sea la posición de la cámara. Trazas y desenfoque se cuentan en estos píxeles.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>On: verticals stay upright, and the horizon lies in the middle of the picture.</source>
        <translation>Activado: las verticales siguen rectas y el horizonte queda en el centro de la imagen.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What comes nearer to the edge does not fit.</source>
        <translation>Lo que se acerca más al borde no cabe.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What neighbouring frames share of their width and height.</source>
        <translation>Lo que comparten fotogramas vecinos de su anchura y altura.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As it is set: 2.8 for f/2.8. It decides on depth of field and on the NPF rule.</source>
        <translation>El que se ajusta: 2,8 para f/2,8. Determina la profundidad de campo y la regla NPF.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How long the stars are exposed, to know their trails.</source>
        <translation>Cuánto se exponen las estrellas, para conocer sus trazos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>To know what is sharp before and behind it.</source>
        <translation>Para saber qué es nítido delante y detrás.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The blur on the sensor that still counts as sharp in the foreground.</source>
        <translation>El desenfoque en el sensor que aún se tiene por nítido en el primer plano.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How far a focus nearer than the stars may blur them.</source>
        <translation>Cuánto puede desenfocar las estrellas un enfoque más cercano que ellas.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A mark every ten minutes, the clock every half hour. 0: not drawn.</source>
        <translation>Una marca cada diez minutos, la hora cada media hora. 0: no se dibuja.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>print: dark on white, for paper; night: red on black, for reading in the dark.</source>
        <translation>print: oscuro sobre blanco, para papel; night: rojo sobre negro, para leer a oscuras.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>So that the place is known before it is dark. Where the Sun does not set, before the first alignment.</source>
        <translation>Para conocer el lugar antes de que oscurezca. Donde el Sol no se pone, antes de la primera alineación.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Then the way back begins.</source>
        <translation>Entonces empieza el regreso.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>On the level, with the camera on one's back. Slopes are not known: choose less where it is steep.</source>
        <translation>En llano, con el equipo a la espalda. No se conocen las pendientes: elija menos donde sea empinado.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons on which people will stand; they are checked against closed ground.</source>
        <translation>Polígonos en los que habrá personas; se cotejan con el terreno cerrado.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Drawn only.</source>
        <translation>Solo se dibujan.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It stands on every sheet, before the name of the site.</source>
        <translation>Figura en cada hoja, antes del nombre del lugar.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Who asks for the permit: a person or a company.</source>
        <translation>Quién solicita el permiso: una persona o una empresa.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How many, where they stand, and their number plates if asked for.</source>
        <translation>Cuántos, dónde quedan y, si se pide, sus matrículas.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Telephone or address at which the applicant is reached before and on the night.</source>
        <translation>Teléfono o dirección en que se localiza al solicitante antes de la noche y durante ella.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A guard against a run that fills a folder. Nothing is drawn if it would be more.</source>
        <translation>Una protección contra una ejecución que llene una carpeta.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>One page of A4 or Letter for each night and place; black on white on paper, dark red on black on a screen.</source>
        <translation>Una página A4 o Carta por noche y lugar; negro sobre blanco en papel, rojo oscuro sobre negro en pantalla.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Version 1.1: cameras, subjects, parking and the walk, for a phone or a receiver.</source>
        <translation>Versión 1.1: cámaras, motivos, aparcamiento y acceso a pie, para un teléfono o un receptor.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>iCalendar, an event for each alignment.</source>
        <translation>iCalendar, un evento por alineación.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It is made where it is missing. Files of an earlier run with the same names are written over.</source>
        <translation>Se crea si no existe. Los archivos de una ejecución anterior con los mismos nombres se sobrescriben.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It is made where it is missing. A picture for each sheet.</source>
        <translation>Se crea si no existe. Una imagen por hoja.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A line for each pair, along the Earth's surface.</source>
        <translation>Una línea por par, a lo largo de la superficie de la Tierra.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A sightline for each stretch of time, with its times, angles and light; ready for the Temporal Controller.</source>
        <translation>Una línea de visión por tramo de tiempo, con sus horas, ángulos y luz; lista para el controlador temporal.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each pair and body without a result, with the reason.</source>
        <translation>Un punto por par y astro sin resultado, con la razón.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each site and night, with its longest window or the reason why there is none.</source>
        <translation>Un punto por lugar y noche, con su ventana más larga o la razón de que no haya ninguna.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each window, where the Moon or the ground parts a night.</source>
        <translation>Un punto por ventana, donde la Luna o el terreno parten una noche.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each site and month: usable nights, hours, the best night.</source>
        <translation>Un punto por lugar y mes: noches útiles, horas, la mejor noche.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each site, body and time.</source>
        <translation>Un punto por lugar, astro y momento.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Tripod and camera: from the ground of each cell to the middle of the lens.</source>
        <translation>Trípode y cámara: del suelo de cada celda al centro del objetivo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A GeoTIFF in the cells of the elevation model, in minutes, with a legend in hours.</source>
        <translation>Un GeoTIFF en las celdas del modelo digital de elevaciones, en minutos, con una leyenda en horas.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each place to stand; the CAMERAS of every other algorithm.</source>
        <translation>Un punto por cada sitio donde situarse; las CAMERAS de todos los demás algoritmos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Lines: the parts of the paths from which the direction is within the tolerance.</source>
        <translation>Líneas: las partes de los senderos desde las que la dirección está dentro de la tolerancia.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons: all ground from which the direction is within the tolerance, path or no path.</source>
        <translation>Polígonos: todo el terreno desde el que la dirección está dentro de la tolerancia, con sendero o sin él.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each subject, time and crossing of the ground.</source>
        <translation>Un punto por motivo, momento y cruce con el terreno.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>They join the first crossings of times that follow each other.</source>
        <translation>Unen los primeros cruces de momentos consecutivos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point on the skyline for each site and azimuth.</source>
        <translation>Un punto del perfil del horizonte por lugar y acimut.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A polygon around each site, through those points.</source>
        <translation>Un polígono alrededor de cada lugar, por esos puntos.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons: the ground between the sides of the frame, with the numbers of the picture.</source>
        <translation>Polígonos: el terreno entre los lados del encuadre, con los números de la imagen.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each frame of a panorama: where to turn the tripod's head.</source>
        <translation>Un punto por fotograma de una panorámica: hacia dónde girar la rótula.</translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A sheet for each value of SHEET_BY, and more where a table does not fit.</source>
        <translation>Una hoja por valor de SHEET_BY, y más donde una tabla no cabe.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Body of the sky</source>
        <translation>Astro</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Body of the sky, in place of BEARING</source>
        <translation>Astro, en lugar de BEARING</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: -18°, full darkness, for all bodies but Sun and Moon. -12° lets the last of twilight in.</source>
        <translation>En blanco: -18°, oscuridad total, para todos los astros salvo el Sol y la Luna. -12° admite el final del crepúsculo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: 10° for the core and a place on the plane, 0° for the rest. For the arch it is the core's.</source>
        <translation>En blanco: 10° para el núcleo y un punto del plano, 0° para los demás. Para el arco es la del núcleo.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: looked up from the place, offline; on the open sea the nautical zone of the longitude, such as UTC-02:00.</source>
        <translation>En blanco: se busca según el lugar, sin conexión; en alta mar, la zona náutica de la longitud, como UTC-02:00.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>; blank: ground is not looked at</source>
        <translation>; en blanco: no se tiene en cuenta el terreno</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Look for the terrain skyline as far as</source>
        <translation>Buscar el perfil del terreno hasta</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Off: the skyline is told in ground_deg, but is no condition.</source>
        <translation>Desactivado: el perfil se indica en ground_deg, pero no es condición.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Cameras: the points to photograph from</source>
        <translation>Cámaras: los puntos desde los que se fotografía</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Subjects: the points to photograph</source>
        <translation>Motivos: los puntos que se fotografían</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Height of the lens above the ground</source>
        <translation>Altura del objetivo sobre el suelo</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the name of a camera</source>
        <translation>Campo con el nombre de una cámara</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the name of a subject</source>
        <translation>Campo con el nombre de un motivo</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Height of the subject's top above its foot</source>
        <translation>Altura de la cima del motivo sobre su pie</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Longest sightline</source>
        <translation>Línea de visión más larga</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Area in which one may stand</source>
        <translation>Zona en la que se puede estar</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Closed ground, never stood on</source>
        <translation>Terreno cerrado, que nunca se pisa</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>For the arch: the core at least this high [°]</source>
        <translation>Para el arco: núcleo al menos a esta altura [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Sun at most this high, without refraction [°]</source>
        <translation>Sol como mucho a esta altura, sin refracción [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Body at least this high above the level horizon [°]</source>
        <translation>Astro al menos a esta altura sobre el horizonte astronómico [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Time zone, such as Europe/Lisbon; blank: the zone of each site</source>
        <translation>Zona horaria, como Europe/Lisbon; en blanco: la de cada lugar</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Terrestrial refraction: how much of the Earth's curvature the air undoes</source>
        <translation>Refracción terrestre: cuánto de la curvatura de la Tierra deshace el aire</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Heights in the unit that the file tells, else in metres; in any CRS. Only the part that is needed is read.</source>
        <translation>Altitudes en la unidad que indica el archivo; si no, en metros; en cualquier SRC. Solo se lee la parte necesaria.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Within a cell or two of the tripod an elevation model knows nothing of what stands in the way.</source>
        <translation>A una o dos celdas del trípode, un modelo digital de elevaciones no sabe nada de lo que estorba.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>A line of sight that clears the terrain, or is blocked, by less than this is uncertain.</source>
        <translation>Una línea de visión que salva el terreno, o queda tapada, por menos de esto es incierta.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>The body must stand above the terrain skyline (with an elevation model)</source>
        <translation>El astro debe estar por encima del perfil del terreno (con un modelo digital de elevaciones)</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>A guard against a run that fills the disk.</source>
        <translation>Una protección contra una ejecución que llene el disco.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Refuse to draw more pictures than</source>
        <translation>Número máximo de imágenes; si son más, no se dibuja ninguna</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Height of the subject's foot, or of a window's sill, above the ground</source>
        <translation>Altura del pie del motivo, o del alféizar de una ventana, sobre el suelo</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Width of the subject</source>
        <translation>Anchura del motivo</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Subject is usable from this bearing, camera to subject, clockwise ... [°]</source>
        <translation>El motivo sirve desde este rumbo, de cámara a motivo, en sentido horario ... [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>... to this bearing [°]; both blank: from all sides</source>
        <translation>... hasta este rumbo [°]; ambos en blanco: desde todos los lados</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Pair cameras and subjects: all, by_field or closest</source>
        <translation>Emparejar cámaras y motivos: all, by_field o closest</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field of the cameras that pairs them (by_field)</source>
        <translation>Campo de las cámaras que las empareja (by_field)</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field of the subjects that pairs them; blank: of the same name (by_field)</source>
        <translation>Campo de los motivos que los empareja; en blanco: el del mismo nombre (by_field)</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>A date, or MM-DD for each year. Closed on the date of the evening or of the moment counts as closed.</source>
        <translation>Una fecha, o MM-DD para cada año. Cuenta como cerrado lo que lo está en la fecha de la noche o en la del momento.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the last day of a closure</source>
        <translation>Campo con el último día de un cierre</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>On: kept with the field allowed false. Off: dropped, and counted in the log.</source>
        <translation>Activado: se conservan con el campo allowed en falso. Desactivado: se descartan y se cuentan en el registro.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Bodies of the sky, one or several</source>
        <translation>Astros, uno o varios</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Place of the star: right ascension and declination, ICRS, as 'RA,Dec' [°]</source>
        <translation>Posición de la estrella: ascensión recta y declinación, ICRS, como 'AR,Dec' [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Galactic longitude of the place on the Milky Way's plane [°]</source>
        <translation>Longitud galáctica del punto en el plano de la Vía Láctea [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Moon: any, down or down_or_thin</source>
        <translation>Luna: any, down o down_or_thin</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>The Moon is thin while less than this part is lit, 0 to 1</source>
        <translation>La Luna se considera delgada si su parte iluminada es menor que esta, de 0 a 1</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Milky Way tilted at least this much, 0 flat to 90 upright [°]</source>
        <translation>Vía Láctea inclinada al menos esto, de 0 tendida a 90 vertical [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Milky Way tilted at most this much [°]</source>
        <translation>Vía Láctea inclinada como mucho esto [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Top of the Milky Way's arch at least this high [°]</source>
        <translation>Cima del arco de la Vía Láctea al menos a esta altura [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: 60° for the body arch, since higher its direction swings; no limit for other bodies.</source>
        <translation>En blanco: 60° para el astro arch, pues más arriba su dirección cambia muy deprisa; sin límite para los demás.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Refraction lifts what is seen, 0.5° at the horizon.</source>
        <translation>La refracción eleva lo que se ve, 0,5° en el horizonte.</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Air temperature at the site [°C]</source>
        <translation>Temperatura del aire en el lugar [°C]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Band of the elevation model that holds the heights</source>
        <translation>Banda del modelo digital de elevaciones que contiene las altitudes</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Pass over terrain nearer to the camera than this; blank: two cells of the elevation model</source>
        <translation>Pasar por alto el terreno más cercano a la cámara que esto; en blanco: dos celdas del modelo digital de elevaciones</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Heights of the elevation model are good to</source>
        <translation>Exactitud de las altitudes del modelo digital de elevaciones</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Refuse to write more rows than</source>
        <translation>Número máximo de filas; si son más, no se escribe ninguna</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the first day of a closure</source>
        <translation>Campo con el primer día de un cierre</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Keep what is not allowed, marked as such</source>
        <translation>Conservar lo no permitido, marcado como tal</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Top of the Milky Way's arch at most this high [°]</source>
        <translation>Cima del arco de la Vía Láctea como mucho a esta altura [°]</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Air pressure at the site [hPa]; blank: standard air at its height; 0: no refraction</source>
        <translation>Presión del aire en el lugar [hPa]; en blanco: la de la atmósfera estándar a su altitud; 0: sin refracción</translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Elevation model, a raster file</source>
        <translation>Modelo digital de elevaciones (MDE), un archivo ráster</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>with no time in t_utc (standpoints in a BEARING belong to no night)</source>
        <translation>sin hora en t_utc (los puntos de toma de un BEARING no pertenecen a ninguna noche)</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>whose t_utc lies outside the years of the ephemeris</source>
        <translation>cuyo t_utc está fuera de los años que abarcan las efemérides</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>whose bearing_deg or dist_m is blank</source>
        <translation>cuyo bearing_deg o dist_m está en blanco</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>whose t_start, t_utc and t_end are not in that order</source>
        <translation>cuyos t_start, t_utc y t_end no están en ese orden</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: there is no layer that can be read. Choose a result of alignments, or the POINTS of standpoints.</source>
        <translation>ALIGNMENTS: no hay ninguna capa que se pueda leer. Elija un resultado de alignments o los POINTS de standpoints.</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: '{layer}' has no field {fields}. Choose a result of alignments, or the POINTS of standpoints.</source>
        <translation>ALIGNMENTS: '{layer}' no tiene el campo {fields}. Elija un resultado de alignments o los POINTS de standpoints.</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: {n:,} rows from {total:,} features.</source>
        <translation>ALIGNMENTS: filas: {n:,}; objetos: {total:,}.</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: '{layer}' holds {found}. Choose the lines of alignments, or the POINTS of standpoints.</source>
        <translation>ALIGNMENTS: '{layer}' contiene {found}. Elija las líneas de alignments o los POINTS de standpoints.</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: skipped {reasons}.</source>
        <translation>ALIGNMENTS: omitidas {reasons}.</translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: '{layer}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.</source>
        <translation>ALIGNMENTS: '{layer}' no tiene SRC, así que nadie sabe dónde está. Asigne primero el SRC de la capa.</translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>DEM '{name}': heights in {unit}.</source>
        <translation>MDE '{name}': altitudes en {unit}.</translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>DEM: the middle of '{name}' is no place on the Earth. Check the layer's CRS.</source>
        <translation>DEM: el centro de '{name}' no está en la Tierra. Compruebe el SRC de la capa.</translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>DEM: a part of '{name}' is no place on the Earth. Choose an AREA within its map.</source>
        <translation>DEM: una parte de '{name}' no está en la Tierra. Elija un AREA dentro de su mapa.</translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>metres, as no known unit is told</source>
        <translation>metros, pues no se indica ninguna unidad conocida</translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>AREA does not meet the DEM '{name}'. Choose an extent on it, or leave AREA blank.</source>
        <translation>AREA no toca el MDE '{name}'. Elija una extensión que lo abarque en parte o deje AREA en blanco.</translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>that hold no point</source>
        <translation>que no contienen ningún punto</translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>{label}: {n:,} points from {total:,} features.</source>
        <translation>{label}: puntos: {n:,}; objetos: {total:,}.</translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>{label}: {name} is blank in {n:,} features: its default is taken.</source>
        <translation>{label}: {name} está en blanco en {n:,} objetos: se toma su valor predeterminado.</translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>{label}: {n:,} points have a Z that no ground has, such as -9999 or more than {high:,} m: it counts as none.</source>
        <translation>{label}: {n:,} puntos tienen una Z que no tiene ningún terreno, como -9999 o más de {high:,} m: se toman como puntos sin Z.</translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>whose {name} is no finite number</source>
        <translation>cuyo {name} no es un número finito</translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>whose {name} is less than {low:g}</source>
        <translation>cuyo {name} es menor que {low:g}</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: there is no raster that can be read. Choose an elevation model, or leave it blank.</source>
        <translation>DEM: no hay ningún ráster que se pueda leer. Elija un modelo digital de elevaciones o déjelo en blanco.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' is no file but comes from '{provider}'. Export it to a GeoTIFF first, and choose that.</source>
        <translation>DEM: '{name}' no es un archivo, sino que viene de '{provider}'. Expórtelo primero a GeoTIFF y elija ese archivo.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.</source>
        <translation>DEM: '{name}' no tiene SRC, así que nadie sabe dónde está. Asigne primero el SRC de la capa.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>{name}: the CRS of '{layer}' ({crs}) is one of another body than the Earth. Choose another layer, or set its CRS.</source>
        <translation>{name}: el SRC de '{layer}' ({crs}) es de un astro distinto de la Tierra. Elija otra capa o corrija su SRC.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM_BAND is {band}, but the bands of '{name}' are numbered 1 to {last}. Choose one of them.</source>
        <translation>DEM_BAND es {band}, pero las bandas de '{name}' están numeradas de 1 a {last}. Elija una de ellas.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: band {band} of '{name}' holds colours, not heights. Choose another DEM_BAND, or another raster.</source>
        <translation>DEM: la banda {band} de '{name}' contiene colores, no altitudes. Elija otro DEM_BAND u otro ráster.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM '{name}': {n:,} heights that no ground has, such as -9999, are taken as not known.</source>
        <translation>MDE '{name}': {n:,} altitudes que no tiene ningún terreno, como -9999, se toman por desconocidas.</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{file}' cannot be opened. Is it still there?</source>
        <translation>DEM: no se puede abrir '{file}'. ¿Sigue ahí?</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' has no georeference, or one by control points alone. Warp it to a map first.</source>
        <translation>DEM: '{name}' no está georreferenciado, o solo por puntos de control. Transfórmelo primero a un SRC con «Combar (reproyectar)».</translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' cannot be read at column {col}, row {row}: the file is damaged or cut short. Get it anew.</source>
        <translation>DEM: no se puede leer '{name}' en la columna {col}, fila {row}: el archivo está dañado o cortado. Obténgalo de nuevo.</translation>
    </message>
    <message>
        <location filename="../adapters/reasons.py"/>
        <source>{n:,} of {total:,} pairs and bodies without an alignment, such as {camera} to {subject}: {reason}</source>
        <translation>{n:,} de {total:,} pares y astros sin alineación, como {camera} a {subject}: {reason}</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: {layer} has no field '{field}'. Choose one of: {fields}.</source>
        <translation>{name}: {layer} no tiene el campo '{field}'. Elija uno de: {fields}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>MAX_DISTANCE is 0, which no sightline is shorter than. Give the longest one in metres, such as 50000.</source>
        <translation>MAX_DISTANCE es 0, y ninguna línea de visión es más corta. Indique la más larga en metros, como 50000.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>PAIRING is by_field, but no field is named. Choose PAIR_FIELD, a field of the cameras.</source>
        <translation>PAIRING es by_field, pero no se indica ningún campo. Elija PAIR_FIELD, un campo de las cámaras.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>DEM is blank. Choose an elevation model: a raster of heights.</source>
        <translation>DEM está en blanco. Elija un modelo digital de elevaciones: un ráster de altitudes.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>TERRAIN_RADIUS is {radius:g} m: no ground lies between SKIP_NEAR ({near:g} m) and it. Give more, such as 40000.</source>
        <translation>TERRAIN_RADIUS es {radius:g} m: no hay terreno entre SKIP_NEAR ({near:g} m) y ese radio. Indique más, como 40000.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>Only {name} is given. Give both FACE_FROM and FACE_TO, or leave both blank.</source>
        <translation>Solo se indica {name}. Indique FACE_FROM y FACE_TO, o deje ambos en blanco.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} holds galactic, but GALACTIC_LON is blank. Give the galactic longitude in degrees, such as GALACTIC_LON=80.</source>
        <translation>{name} contiene galactic, pero GALACTIC_LON está en blanco. Indique la longitud galáctica en grados, como GALACTIC_LON=80.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{last_name} ({last}) is before {first_name} ({first}). Exchange them.</source>
        <translation>{last_name} ({last}) es anterior a {first_name} ({first}). Intercámbielos.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>LAST_NIGHT ({last}) is before FIRST_NIGHT ({first}). Exchange them.</source>
        <translation>LAST_NIGHT ({last}) es anterior a FIRST_NIGHT ({first}). Intercámbielos.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>LAST_NIGHT ({last}) has passed, and FIRST_NIGHT is blank, which means today. Give FIRST_NIGHT too.</source>
        <translation>LAST_NIGHT ({last}) ya ha pasado, y FIRST_NIGHT está en blanco, lo que significa hoy. Indique también FIRST_NIGHT.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} ({shown}) lies before the ephemeris (begins {first}). Choose a later date.</source>
        <translation>{name} ({shown}) es anterior a las efemérides (empiezan el {first}). Elija una fecha posterior.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{output}: {path} is no GeoTIFF. Give it a name that ends in .tif.</source>
        <translation>{output}: {path} no es un GeoTIFF. Dele un nombre que acabe en .tif.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{output}: the elevation model is read from {path}, which would be lost. Choose another name.</source>
        <translation>{output}: el modelo digital de elevaciones se lee de {path}, que se perdería. Elija otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: there is no layer that can be read. Choose a layer of {kind} for the {label}.</source>
        <translation>{name}: no hay ninguna capa que se pueda leer. Elija una capa de {kind} para {label}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} is '{value}', which is no finite number. Give one, such as {example:g}.</source>
        <translation>{name} es '{value}', que no es un número finito. Indique uno, como {example:g}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>at least {low:g}</source>
        <translation>de al menos {low:g}</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{value}' is not known. Choose from: {ids}.</source>
        <translation>{name}: no se conoce '{value}'. Elija de: {ids}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{low_name} ({low:g}) is above {high_name} ({high:g}), so nothing can lie between them. Exchange them.</source>
        <translation>{low_name} ({low:g}) está por encima de {high_name} ({high:g}), así que no puede haber nada entre ambos. Intercámbielos.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>STAR is '{text}'. Write right ascension (0 to 360) and declination (-90 to 90) in degrees, such as 279.23,38.78.</source>
        <translation>STAR es '{text}'. Escriba la ascensión recta (de 0 a 360) y la declinación (de -90 a 90) en grados, como 279.23,38.78.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} holds star ({shown}), but STAR is blank. Give its place, such as STAR=279.23,38.78.</source>
        <translation>{name} contiene star ({shown}), pero STAR está en blanco. Indique su posición, como STAR=279.23,38.78.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} ({shown}) lies after the ephemeris (ends {last}). Choose an earlier date.</source>
        <translation>{name} ({shown}) es posterior a las efemérides (terminan el {last}). Elija una fecha anterior.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: {reason}</source>
        <translation>{name}: {reason}</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{layer}' holds {found}, not {kind}. Choose a layer of {kind} for the {label}.</source>
        <translation>{name}: '{layer}' contiene {found}, no {kind}. Elija una capa de {kind} para {label}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} is {value:g} m, but it is measured upward from the ground. Give 0 or more.</source>
        <translation>{name} es {value:g} m, pero se mide hacia arriba desde el suelo. Indique 0 o más.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>at most {high:g}</source>
        <translation>de {high:g} como mucho</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>from {low:g} to {high:g}</source>
        <translation>de {low:g} a {high:g}</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: the expression {text} cannot be read: {error}</source>
        <translation>{name}: no se puede leer la expresión {text}: {error}</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{value}' are several. Choose one of: {ids}.</source>
        <translation>{name}: '{value}' son varios. Elija uno de: {ids}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>TIME_ZONE: {reason}</source>
        <translation>TIME_ZONE: {reason}</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>SUBJECTS has no field '{field}'. Choose PAIR_FIELD_SUBJECT, the field that matches PAIR_FIELD.</source>
        <translation>SUBJECTS no tiene el campo '{field}'. Elija PAIR_FIELD_SUBJECT, el campo que corresponde a PAIR_FIELD.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: the table {table} is the layer of {layer}, which would be lost. Give another name.</source>
        <translation>{name}: la tabla {table} es la capa de {layer}, que se perdería. Indique otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{layer}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.</source>
        <translation>{name}: '{layer}' no tiene SRC, así que nadie sabe dónde está. Asigne primero el SRC de la capa.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} is {value:g}. Give a number {bounds}.</source>
        <translation>{name} es {value:g}. Indique un número {bounds}.</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>points</source>
        <translation>puntos</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>lines</source>
        <translation>líneas</translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>polygons</source>
        <translation>polígonos</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>outside it</source>
        <translation>fuera de él</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>on ground of no known height</source>
        <translation>en terreno de altitud desconocida</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>DEM '{name}': {mb:,.0f} MB of it in memory; heights in {unit}.</source>
        <translation>MDE '{name}': {mb:,.0f} MB en memoria; altitudes en {unit}.</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>What is wanted of the DEM '{name}' takes {need:,.0f} MB of memory, more than half of the {free:,.0f} MB free. Take fewer points, a shorter TERRAIN_RADIUS or MAX_DISTANCE, or a DEM of larger cells.</source>
        <translation>Lo que se necesita del MDE '{name}' ocupa {need:,.0f} MB de memoria, más de la mitad de los {free:,.0f} MB libres. Tome menos puntos, un TERRAIN_RADIUS o MAX_DISTANCE más corto, o un MDE de celdas mayores.</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>{label}: the DEM tells nothing of {n:,} of {total:,} points: {why}.</source>
        <translation>{label}: el MDE no dice nada de {n:,} de {total:,} puntos: {why}.</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>Skylines: {n:,} of {total:,} rays find their highest ground at TERRAIN_RADIUS ({radius:,.0f} m). Raise it.</source>
        <translation>Perfiles: {n:,} de {total:,} rayos hallan su terreno más alto en TERRAIN_RADIUS ({radius:,.0f} m). Auméntelo.</translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>Skylines: {n:,} of {total:,} rays end with the DEM, or where it has a gap, before TERRAIN_RADIUS.</source>
        <translation>Perfiles: {n:,} de {total:,} rayos acaban con el MDE, o donde tiene un hueco, antes de TERRAIN_RADIUS.</translation>
    </message>
    <message>
        <location filename="../adapters/scene.py"/>
        <source>there is no path that can be used</source>
        <translation>no hay ningún sendero utilizable</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_background.py"/>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_flow.py"/>
        <source>(continued)</source>
        <translation>(continuación)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_ground.py"/>
        <source>{name}: feature {fid} is of another kind. Remove it.</source>
        <translation>{name}: el objeto {fid} es de otra clase. Elimínelo.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Refuse to make more sheets than</source>
        <translation>Número máximo de hojas; si son más, no se hace ninguna</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Sightlines: the result of sightlines</source>
        <translation>Líneas de visión: el resultado de sightlines</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>They fill the timetable. Select the few that are meant, and run on the selected features only.</source>
        <translation>Llenan el horario. Seleccione las pocas que interesan y ejecute con «Objetos seleccionados solamente».</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Standpoints: the POINTS of standpoints</source>
        <translation>Puntos de toma: los POINTS de standpoints</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Zones: the ZONES of standpoints, or any ground on which people will stand</source>
        <translation>Zonas: las ZONES de standpoints, o cualquier terreno en el que habrá personas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Paths</source>
        <translation>Senderos</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Drawn either way round. Each camera takes the one that passes by it; it is checked against closed ground and timed.</source>
        <translation>Dibujado en un sentido u otro. Cada cámara toma el que pasa por ella; se coteja con el terreno cerrado y se calcula su duración.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Parking: where the walk in begins</source>
        <translation>Aparcamiento: donde empieza el acceso a pie</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Field with the name of a parking</source>
        <translation>Campo con el nombre de un aparcamiento</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Field with the name of a walk</source>
        <translation>Campo con el nombre de un acceso a pie</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Closed ground</source>
        <translation>Terreno cerrado</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Field with the name of a closure</source>
        <translation>Campo con el nombre de un cierre</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A date, or MM-DD for each year. Closed on the date of the evening, or of any hour out there, counts as closed.</source>
        <translation>Una fecha, o MM-DD para cada año. Cuenta como cerrado lo que lo está en la fecha de la noche o en cualquier hora de la salida.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A field of the layers above, such as camera, subject, night or path. Layers without it are drawn on every sheet.</source>
        <translation>Un campo de las capas anteriores, como camera, subject, night o path. Las capas que no lo tienen se dibujan en todas las hojas.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Title of the sheets; blank: Site map</source>
        <translation>Título de las hojas; en blanco: Plano del lugar</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Blank: the largest usual scale at which cameras and subjects fit. What lies off the map is told.</source>
        <translation>En blanco: la mayor escala habitual en la que caben cámaras y motivos. Se indica lo que queda fuera del plano.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Sheets</source>
        <translation>Hojas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>PDF files (*.pdf)</source>
        <translation>Archivos PDF (*.pdf)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Folder for a file each</source>
        <translation>Carpeta para un archivo por hoja</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Folder for pictures (PNG)</source>
        <translation>Carpeta para imágenes (PNG)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Alignments: the result of alignments</source>
        <translation>Alineaciones: el resultado de alignments</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Walk in: the lines from the car to the camera</source>
        <translation>Acceso a pie: las líneas del coche a la cámara</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Only its name and the size of its cells are told: the sheet says by which ground lines were called clear.</source>
        <translation>Solo se indican su nombre y el tamaño de sus celdas: la hoja dice según qué terreno se dieron por despejadas las líneas.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A sheet for each value of this field; blank: one sheet</source>
        <translation>Una hoja por valor de este campo; en blanco: una hoja</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Be at the camera this long before sunset [min]</source>
        <translation>Estar junto a la cámara este tiempo antes de la puesta de Sol [min]</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Stay this long after the last alignment [min]</source>
        <translation>Quedarse este tiempo después de la última alineación [min]</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A position in the field is known to</source>
        <translation>Una posición en el campo se conoce con una precisión de</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Walking speed [km/h]</source>
        <translation>Velocidad a pie [km/h]</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Paper: a4 or letter</source>
        <translation>Papel: a4 o letter</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Paper upright (portrait) or across (landscape)</source>
        <translation>Papel vertical (portrait) o apaisado (landscape)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Scale of the map, 1 to ...</source>
        <translation>Escala del plano, 1 a ...</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>As they look in the project; the layers given above are left out of it, since they have their own look here.</source>
        <translation>Como se ven en el proyecto; las capas indicadas arriba se excluyen de él, pues aquí tienen su propio aspecto.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Copy one of those in the plugin's folder 'layouts' and change it. PAPER and ORIENTATION are then the template's.</source>
        <translation>Copie una de las de la carpeta 'layouts' del complemento y modifíquela. PAPER y ORIENTATION son entonces los de la plantilla.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Elevation model by which the results were made</source>
        <translation>Modelo digital de elevaciones con el que se hicieron los resultados</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Draw the visible layers of the project beneath</source>
        <translation>Dibujar debajo las capas visibles del proyecto</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Layout template of your own</source>
        <translation>Plantilla de composición propia</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Applicant</source>
        <translation>Solicitante</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Activity</source>
        <translation>Actividad</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Group size</source>
        <translation>Tamaño del grupo</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Vehicles</source>
        <translation>Vehículos</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Dates and hours</source>
        <translation>Fechas y horas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Lighting used</source>
        <translation>Iluminación utilizada</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Contact</source>
        <translation>Contacto</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>In an emergency</source>
        <translation>En caso de emergencia</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Permit number</source>
        <translation>Número de permiso</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>What is done, such as: night photography from tripods, no structures, nothing left behind.</source>
        <translation>Qué se hace, por ejemplo: fotografía nocturna con trípodes, sin estructuras, sin dejar nada.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>How many people, guides included.</source>
        <translation>Cuántas personas, incluidos los guías.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>When the ground is used. Blank: arrival and departure of each night are those of the timetable.</source>
        <translation>Cuándo se usa el terreno. En blanco: la llegada y la salida de cada noche son las del horario.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Lamps and how they are used, such as: red headlamps for walking; no light on the subject.</source>
        <translation>Luces y cómo se usan, por ejemplo: frontales rojos para caminar; ninguna luz sobre el motivo.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Whom to call, and until when you want to be back.</source>
        <translation>A quién llamar, y a qué hora quiere estar de vuelta a más tardar.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>The number that the land manager gave, or 'applied for'.</source>
        <translation>El número que dio el gestor del terreno, o 'solicitado'.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_print.py"/>
        <source>the system does not let it be written</source>
        <translation>el sistema no permite escribirlo</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_print.py"/>
        <source>the file is not whole; the disk may be full</source>
        <translation>el archivo no está completo; quizá el disco esté lleno</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{walk}, to {mark}</source>
        <translation>{walk}, hasta {mark}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>Zones</source>
        <translation>Zonas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>This asks for {n:,} sheets, over MAX_PICTURES ({limit:,}). Select fewer features, choose another SHEET_BY, or raise MAX_PICTURES.</source>
        <translation>Esto pide {n:,} hojas, más que MAX_PICTURES ({limit:,}). Seleccione menos objetos, elija otro SHEET_BY o aumente MAX_PICTURES.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>of {table}</source>
        <translation>de {table}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>Rows that belong to no sheet: {reasons}. Cameras are known by their names: give CAMERA_NAME as in the run that made them.</source>
        <translation>Filas que no pertenecen a ninguna hoja: {reasons}. Las cámaras se reconocen por su nombre: indique CAMERA_NAME como en la ejecución que las hizo.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>The places of sheet '{sheet}' lie more than {km:g} km apart, which no site map shows. Choose a SHEET_BY that gives each site a sheet, such as camera.</source>
        <translation>Los lugares de la hoja '{sheet}' distan más de {km:g} km, lo que ningún plano muestra. Elija un SHEET_BY que dé a cada lugar una hoja, como camera.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>CLOSED: the season of {n:,} polygons cannot be read; they are taken as always closed: features {ids}.</source>
        <translation>CLOSED: no se puede leer la temporada de {n:,} polígonos; se toman como siempre cerrados: objetos {ids}.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{n:,} in all</source>
        <translation>{n:,} en total</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{label}: {n:,} polygons were not valid and have been repaired; look at them.</source>
        <translation>{label}: {n:,} polígonos no eran válidos y se han reparado; revíselos.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{label}: {n:,} shapes have no place on the grid of a sheet's map and are left out.</source>
        <translation>{label}: {n:,} formas no se pueden situar en la cuadrícula del plano de una hoja y se excluyen.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Parking</source>
        <translation>Aparcamiento</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Site</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Standpoint</source>
        <translation>Punto de toma</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Sightline</source>
        <translation>Línea de visión</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Walk in</source>
        <translation>Acceso a pie</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Path</source>
        <translation>Sendero</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Zone to stand in</source>
        <translation>Zona donde situarse</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Closed on these dates</source>
        <translation>Cerrado en estas fechas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Closed at other times</source>
        <translation>Cerrado en otras épocas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>to {subject}, {distance}</source>
        <translation>a {subject}, {distance}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Camera and where it looks</source>
        <translation>Cámara y adónde mira</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Standpoint, where it looks</source>
        <translation>Punto de toma, adónde mira</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Sightline, hidden</source>
        <translation>Línea oculta</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Sightline, too close to tell</source>
        <translation>Línea dudosa</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Sightline, not tested</source>
        <translation>Línea sin comprobar</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>There is nothing to make a sheet of. Give {names}, or several of them.</source>
        <translation>No hay nada de lo que hacer una hoja. Indique {names}, o varios de ellos.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>SHEET_BY: none of {names} has a field '{field}'. Choose a field of theirs, or leave it blank for one sheet.</source>
        <translation>SHEET_BY: ninguna de {names} tiene el campo '{field}'. Elija un campo suyo o déjelo en blanco para una sola hoja.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>{label}: {n:,} rows from {total:,} features.</source>
        <translation>{label}: filas: {n:,}; objetos: {total:,}.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>{name}: '{layer}' has no field {fields}. Choose a result of {made_by}.</source>
        <translation>{name}: '{layer}' no tiene el campo {fields}. Elija un resultado de {made_by}.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>sightlines or alignments</source>
        <translation>sightlines o alignments</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>standpoints (POINTS)</source>
        <translation>standpoints (POINTS)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>it is no text</source>
        <translation>no es un texto</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} has no item with the id {ids}. Copy one of those in {folder}, and keep these items.</source>
        <translation>TEMPLATE: {path} no tiene ningún elemento con el id {ids}. Copie una de las de {folder} y conserve esos elementos.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: in {path} 'map' must be a map, 'body' and 'body_continued' labels.</source>
        <translation>TEMPLATE: en {path}, 'map' debe ser un mapa, y 'body' y 'body_continued', etiquetas.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} must have two pages, the sheet with 'body', and its further pages with 'body_continued'.</source>
        <translation>TEMPLATE: {path} debe tener dos páginas: la hoja, con 'body', y sus páginas siguientes, con 'body_continued'.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} must show [% {notice} %] in a label on both pages: no sheet goes without it.</source>
        <translation>TEMPLATE: {path} debe mostrar [% {notice} %] en una etiqueta en ambas páginas: ninguna hoja va sin él.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} is no layout template of QGIS. Copy one of those in {folder}.</source>
        <translation>TEMPLATE: {path} no es una plantilla de composición de QGIS. Copie una de las de {folder}.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} cannot be read: {reason}.</source>
        <translation>TEMPLATE: no se puede leer {path}: {reason}.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>outside</source>
        <translation>fuera</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Lines every {lat:g}°</source>
        <translation>Líneas cada {lat:g}°</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Lines every {lat:g}° lat., {lon:g}° lon.</source>
        <translation>Líneas cada {lat:g}° lat., {lon:g}° lon.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{n} nights from {first} to {last}</source>
        <translation>{n} noches del {first} al {last}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Grid north is true north here</source>
        <translation>El norte de cuadrícula es aquí el norte verdadero</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Latitude</source>
        <translation>Latitud</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Longitude</source>
        <translation>Longitud</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Easting</source>
        <translation>X (este)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Northing</source>
        <translation>Y (norte)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>From</source>
        <translation>Desde</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>To</source>
        <translation>Hasta</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Back</source>
        <translation>Inverso</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic</source>
        <translation>Magnético</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Line of sight</source>
        <translation>Visibilidad</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Night</source>
        <translation>Noche</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Be there</source>
        <translation>Llegada</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Begins</source>
        <translation>Comienza</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Closest</source>
        <translation>Más cerca</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Ends</source>
        <translation>Termina</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Az.</source>
        <translation>Ac.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Alt.</source>
        <translation>Alt.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Light</source>
        <translation>Luz</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>On the dates of the timetable, evening and morning</source>
        <translation>En las fechas del horario, al anochecer y al amanecer</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No dates are known: every season counts</source>
        <translation>No se conocen fechas: cuentan todas las temporadas</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Against closed ground</source>
        <translation>Terreno cerrado</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Closure</source>
        <translation>Cierre</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Closed</source>
        <translation>Cerrado</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>INSIDE</source>
        <translation>DENTRO</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>1 : {scale:,.0f}; grid every {length}
{zone}</source>
        <translation>1 : {scale:,.0f}; cuadrícula cada {length}
{zone}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Made by {provider} {version}, {when}</source>
        <translation>Hecho con {provider} {version}, {when}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Nights of {nights}</source>
        <translation>Noches: {nights}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Application</source>
        <translation>Solicitud</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Places</source>
        <translation>Lugares</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Bearings and distances</source>
        <translation>Rumbos y distancias</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Timetable</source>
        <translation>Horario</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Data</source>
        <translation>Datos</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Datum and grid</source>
        <translation>Datum y cuadrícula</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic north</source>
        <translation>Norte magnético</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Elevation model</source>
        <translation>Modelo digital de elevaciones</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Cautions</source>
        <translation>Precauciones</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Artificial light, drones, group size and commercial work are decided by them too; where the work needs a licensed guide, surveyor or engineer, their word stands.</source>
        <translation>También deciden ellos la luz artificial, los drones, el tamaño del grupo y el trabajo comercial; donde el trabajo exija un guía, topógrafo o ingeniero habilitado, prevalece su criterio.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84 / UTM zone {zone}</source>
        <translation>WGS 84 / UTM zona {zone}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84 / {zone}</source>
        <translation>WGS 84 / {zone}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>touches it</source>
        <translation>lo toca</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{km:g} km</source>
        <translation>{km:g} km</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{m:g} m</source>
        <translation>{m:g} m</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic north {deg} {side} of true north ({model}, {date})</source>
        <translation>Norte magnético {deg} al {side} del norte verdadero ({model}, {date})</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic north not known for {date}: the model holds from 2025 to 2030</source>
        <translation>Norte magnético desconocido para {date}: el modelo vale de 2025 a 2030</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Grid north {deg} {side} of true north</source>
        <translation>Norte de cuadrícula {deg} al {side} del norte verdadero</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No sightlines were given for this sheet.</source>
        <translation>No se indicaron líneas de visión para esta hoja.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No layer of closed ground was given: nothing was checked.</source>
        <translation>No se indicó ninguna capa de terreno cerrado: no se comprobó nada.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No walk was given: the way in was not checked.</source>
        <translation>No se indicó ningún acceso a pie: no se comprobó.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>none named</source>
        <translation>ninguno indicado</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>over {km:g} km</source>
        <translation>más de {km:g} km</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{nights}; hours as in the timetable</source>
        <translation>{nights}; horas según el horario</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{name} (beyond the map's edge)</source>
        <translation>{name} (más allá del borde del plano)</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84; grid coordinates of {zone}, in metres</source>
        <translation>WGS 84; coordenadas de cuadrícula de {zone}, en metros</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Clockwise from true north at the camera, along the geodesic; ± is, at most, what a position known to {m:g} m is worth</source>
        <translation>En sentido horario desde el norte verdadero en la cámara, a lo largo de la geodésica; ± es, como mucho, lo que supone un error de posición de {m:g} m</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No alignment falls on this sheet: there are no times to tell.</source>
        <translation>Ninguna alineación corresponde a esta hoja: no hay horas que indicar.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No alignments were given: there are no times to tell.</source>
        <translation>No se indicaron alineaciones: no hay horas que indicar.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Times of {zones}; a night bears the date of its evening, times after midnight belong to the next morning</source>
        <translation>Horas de {zones}; una noche lleva la fecha del día en que comienza; las horas después de medianoche son de la mañana siguiente</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{walk} to {mark}: {length}, {time} at {speed:g} km/h, each way, before being there and after leaving.</source>
        <translation>{walk} hasta {mark}: {length}, {time} a {speed:g} km/h por trayecto, antes de la llegada y después de la salida.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>On {dark} of {n} nights people come or go in the dark.</source>
        <translation>En {dark} de {n} noches se llega o se sale a oscuras.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No drawn walk passes within 500 m: the way in was not checked.</source>
        <translation>Ningún acceso dibujado pasa a menos de 500 m: el acceso no se comprobó.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84 (EPSG:4326), to 0.00001° (1 m); {zone} (EPSG:{epsg}), metres</source>
        <translation>WGS 84 (EPSG:4326), a 0,00001° (1 m); {zone} (EPSG:{epsg}), metros</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{model} for {date}</source>
        <translation>{model} para {date}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>INSIDE closed ground ({closure}): {what}</source>
        <translation>DENTRO de terreno cerrado ({closure}): {what}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Of a walk only the drawn part was checked.</source>
        <translation>De un acceso a pie solo se comprobó la parte dibujada.</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>NOT ALLOWED, as the layer of standpoints says: {name}</source>
        <translation>NO PERMITIDO, según la capa de puntos de toma: {name}</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{name}, cells of {size} m</source>
        <translation>{name}, celdas de {size} m</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>standpoint</source>
        <translation>punto de toma</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>parking</source>
        <translation>aparcamiento</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>in sight</source>
        <translation>a la vista</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>hidden by terrain</source>
        <translation>oculto por el terreno</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>too close to tell</source>
        <translation>demasiado justo para saberlo</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>not tested</source>
        <translation>no comprobado</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{m:,.0f} m of it</source>
        <translation>{m:,.0f} m dentro</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{m:,.0f} m² of it</source>
        <translation>{m:,.0f} m² dentro</translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Applicant's map. Not issued or approved by the land manager.</source>
        <translation>Plano del solicitante. No emitido ni aprobado por el gestor del terreno.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The name of the file holds a sign of code 0, which no file may have. Give another name.</source>
        <translation>El nombre del archivo contiene un carácter de código 0, que ningún archivo puede tener. Indique otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The name of the file holds half a letter, which cannot be written. Give another name.</source>
        <translation>El nombre del archivo contiene media letra, que no se puede escribir. Indique otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>the disk is full. Make room, or write elsewhere</source>
        <translation>el disco está lleno. Haga sitio o escriba en otra parte</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The name {name}… is longer than {n} bytes. Give a shorter one.</source>
        <translation>El nombre {name}… ocupa más de {n} bytes. Indique uno más corto.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{path} is a folder. Give the name of a file in it.</source>
        <translation>{path} es una carpeta. Indique el nombre de un archivo dentro de ella.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{path} is a device, not a file. Choose another name.</source>
        <translation>{path} es un dispositivo, no un archivo. Elija otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The folder {folder} does not exist. Make it, or choose another one.</source>
        <translation>La carpeta {folder} no existe. Créela o elija otra.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The folder {folder} may not be written to. Choose another one.</source>
        <translation>No se puede escribir en la carpeta {folder}. Elija otra.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The file {path} may not be written to. Choose another name.</source>
        <translation>No se puede escribir en el archivo {path}. Elija otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>Another program is writing to {path}. Close it there, or choose another name.</source>
        <translation>Otro programa está escribiendo en {path}. Ciérrelo allí o elija otro nombre.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: writing stopped after {n:,} rows: {error}.</source>
        <translation>{name}: la escritura se detuvo tras {n:,} filas: {error}.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>This may write up to {n:,} rows, more than MAX_ROWS ({limit:,}). Ask for less, or raise MAX_ROWS.</source>
        <translation>Esto puede escribir hasta {n:,} filas, más que MAX_ROWS ({limit:,}). Pida menos o aumente MAX_ROWS.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>the rows cannot be read back</source>
        <translation>las filas no se pueden volver a leer</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>This may write up to {n:,} rows, {need:,} MB, but {folder} has {free:,} MB left. Ask for less.</source>
        <translation>Esto puede escribir hasta {n:,} filas, {need:,} MB, pero en {folder} quedan {free:,} MB. Pida menos.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: kept fields whose names were taken: {renamed}.</source>
        <translation>{name}: campos conservados cuyos nombres estaban ocupados: {renamed}.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: a Shapefile holds no times of day, only texts and dates. A GeoPackage keeps them.</source>
        <translation>{name}: un Shapefile no guarda horas del día, solo textos y fechas. Un GeoPackage las conserva.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>What was written is taken away.</source>
        <translation>Lo escrito se ha borrado.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: cancelled before the table was written; it is as it was.</source>
        <translation>{name}: cancelado antes de escribir la tabla; está como estaba.</translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: all rows are written, but {path} could not be marked as whole: {reason}.</source>
        <translation>{name}: todas las filas están escritas, pero {path} no se pudo marcar como completo: {reason}.</translation>
    </message>
    <message>
        <location filename="../adapters/skies.py"/>
        <source>{n:,} sightlines whose body is below the horizon at that time: the camera is aimed at the subject.</source>
        <translation>{n:,} líneas de visión cuyo astro está bajo el horizonte a esa hora: la cámara se apunta al motivo.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>... and so on, for more pairs of path and subject.</source>
        <translation>... y así sucesivamente, para más pares de sendero y motivo.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{first:.1f}° to {last:.1f}° from the first time to the last</source>
        <translation>{first:.1f}° a {last:.1f}° de la hora inicial a la final</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{n:,} {what}</source>
        <translation>{n:,} {what}</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{bearing:.1f}°</source>
        <translation>{bearing:.1f}°</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>Places left out: {reasons}.</source>
        <translation>Lugares excluidos: {reasons}.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>ZONES: {n:,} left out, as MAX_DISTANCE reaches over {part:.0f} % of the way from subject to pole, where one bearing bounds no ground. Choose a smaller MAX_DISTANCE, or BODY in place of BEARING.</source>
        <translation>ZONES: {n:,} excluidas, pues MAX_DISTANCE abarca más del {part:.0f} % del camino del motivo al polo, donde un rumbo no delimita ningún terreno. Elija un MAX_DISTANCE menor, o BODY en lugar de BEARING.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>stretches of path</source>
        <translation>tramos de sendero</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>zones of ground</source>
        <translation>zonas de terreno</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{n:,} standpoints</source>
        <translation>{n:,} puntos de toma</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>Cancelled: {found} written.</source>
        <translation>Cancelado: {found} escritos.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{path} sees {subject} at bearings from {az_from:.1f}° clockwise to {az_to:.1f}°; wanted: {wanted}.</source>
        <translation>{path} ve {subject} en rumbos de {az_from:.1f}° en sentido horario hasta {az_to:.1f}°; se busca: {wanted}.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>No path comes within MAX_DISTANCE ({most:,.0f} m) of a subject.</source>
        <translation>Ningún sendero se acerca a un motivo a menos de MAX_DISTANCE ({most:,.0f} m).</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>No standpoints: {reason}.</source>
        <translation>Ningún punto de toma: {reason}.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>No standpoints ({found}).</source>
        <translation>Ningún punto de toma ({found}).</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{found}.</source>
        <translation>{found}.</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>nearer than MIN_DISTANCE</source>
        <translation>más cerca que MIN_DISTANCE</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>farther than MAX_DISTANCE</source>
        <translation>más lejos que MAX_DISTANCE</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>outside AREA or in closed ground</source>
        <translation>fuera de AREA o en terreno cerrado</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>with the body outside GAP_MIN to GAP_MAX</source>
        <translation>con el astro fuera de GAP_MIN a GAP_MAX</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>with the body behind the terrain</source>
        <translation>con el astro detrás del terreno</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>from the DEM</source>
        <translation>del MDE</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>from the Z of path and subject</source>
        <translation>de la Z del sendero y del motivo</translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>taken as level</source>
        <translation>tomados al mismo nivel</translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>NIGHTS: '{layer}' has no field {fields}. Choose the nights that night_windows gives.</source>
        <translation>NIGHTS: '{layer}' no tiene el campo {fields}. Elija las noches que da night_windows.</translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>whose night is no date</source>
        <translation>cuyo night no es una fecha</translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>whose tz is no time zone</source>
        <translation>cuyo tz no es una zona horaria</translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>with a local time that cannot be read</source>
        <translation>con una hora local que no se puede leer</translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>that tell a night of a site again</source>
        <translation>que repiten una noche de un lugar</translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>NIGHTS: skipped rows {reasons}.</source>
        <translation>NIGHTS: filas omitidas {reasons}.</translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>TOWNS is given, but {name} is blank. Choose the field of the towns that holds how many people live there.</source>
        <translation>Se indica TOWNS, pero {name} está en blanco. Elija el campo de las poblaciones que dice cuántas personas viven allí.</translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>{name}: the field '{field}' of TOWNS holds {kind}, not numbers. Choose one with the number of people.</source>
        <translation>{name}: el campo '{field}' de TOWNS contiene {kind}, no números. Elija uno con el número de habitantes.</translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>{name} is given, but TOWNS is blank. Choose the layer of towns, or leave both blank.</source>
        <translation>Se indica {name}, pero TOWNS está en blanco. Elija la capa de poblaciones o deje ambos en blanco.</translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>values of another kind</source>
        <translation>valores de otra clase</translation>
    </message>
    <message>
        <location filename="../adapters/walks.py"/>
        <source>The drawn walk passes {m:,.0f} m from the camera: the rest is counted as the crow flies.</source>
        <translation>El acceso dibujado pasa a {m:,.0f} m de la cámara: el resto se cuenta en línea recta.</translation>
    </message>
    <message>
        <location filename="../adapters/walks.py"/>
        <source>The drawn walk passes {m:,.0f} m from the parking: the rest is counted as the crow flies.</source>
        <translation>El acceso dibujado pasa a {m:,.0f} m del aparcamiento: el resto se cuenta en línea recta.</translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>{n:,} in {own} near {other} ({names})</source>
        <translation>{n:,} en {own} cerca de {other} ({names})</translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>Time zone of each place, as TIME_ZONE is blank: {zones}.</source>
        <translation>Zona horaria de cada lugar, pues TIME_ZONE está en blanco: {zones}.</translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>in {zone}</source>
        <translation>en {zone}</translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>{n:,} of {total:,} points lie within {km:g} km of a zone whose clock differs during this run, or where two are in use: {borders}. Ask which clock holds there; TIME_ZONE sets it.</source>
        <translation>{n:,} de {total:,} puntos están a menos de {km:g} km de una zona cuyo reloj difiere durante esta ejecución, o donde se usan dos: {borders}. Pregunte qué hora rige allí; TIME_ZONE la fija.</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Alignments of sky and subject</source>
        <translation>Alineaciones de cielo y motivo</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>When the Milky Way, the Moon, the Sun or a star stands over a subject, seen from a camera: every stretch of time</source>
        <translation>Cuándo la Vía Láctea, la Luna, el Sol o una estrella está sobre un motivo, visto desde una cámara: cada tramo de tiempo</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Milky Way</source>
        <translation>Vía Láctea</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>galactic core</source>
        <translation>núcleo galáctico</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>night</source>
        <translation>noche</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>photography</source>
        <translation>fotografía</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>bearing</source>
        <translation>rumbo</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>azimuth</source>
        <translation>acimut, azimut</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>First night, the date of its evening; blank: today</source>
        <translation>Primera noche, la fecha del día en que comienza; en blanco: hoy</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Fields of the cameras to keep</source>
        <translation>Campos de las cámaras que se conservan</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Alignments</source>
        <translation>Alineaciones</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Pairs without an alignment, and why</source>
        <translation>Pares sin alineación, y por qué</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Blank: core 3°, arch and place on the plane 5°, pole 2°, star 1°, Sun and Moon 0.5°.</source>
        <translation>En blanco: núcleo 3°, arco y punto del plano 5°, polo 2°, estrella 1°, Sol y Luna 0,5°.</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Body at most this high [°]</source>
        <translation>Astro como mucho a esta altura [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Body at least this far above the subject's top [°]</source>
        <translation>Astro al menos esto por encima de la cima del motivo [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Body at most this far above the subject's top [°]</source>
        <translation>Astro como mucho esto por encima de la cima del motivo [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>pairs: {pairs:,}, bodies: {bodies}, nights: {nights}</source>
        <translation>pares: {pairs:,}, astros: {bodies}, noches: {nights}</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>The body is over the subject within this angle to either side [°]</source>
        <translation>El astro está sobre el motivo dentro de este ángulo a cada lado [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Sun at least this high: for dusk and dawn [°]</source>
        <translation>Sol al menos a esta altura: para el anochecer y el amanecer [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>For the Moon: at least this part lit, 0 to 1</source>
        <translation>Para la Luna: iluminada al menos esta parte, de 0 a 1</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>For the Moon: at most this part lit, 0 to 1</source>
        <translation>Para la Luna: iluminada como mucho esta parte, de 0 a 1</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Last night; blank: {n} nights in all</source>
        <translation>Última noche; en blanco: {n} noches en total</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>AZ_TOLERANCE is {value:g}. Give a half-width of more than 0 and less than 90 degrees, or leave it blank.</source>
        <translation>AZ_TOLERANCE es {value:g}. Indique una semianchura de más de 0 y menos de 90 grados, o déjelo en blanco.</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Cancelled: {n:,} alignments written ({searched}).</source>
        <translation>Cancelado: {n:,} alineaciones escritas ({searched}).</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>UNMET tells why for each pair</source>
        <translation>UNMET dice por qué para cada par</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>ask for the output UNMET to see why for each pair</source>
        <translation>pida la salida UNMET para ver por qué en cada par</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>{low_name} is {low:g} and {high_name} {high:g} for {body} where one is blank: nothing lies between. Give both.</source>
        <translation>{low_name} es {low:g} y {high_name} {high:g} para {body} donde uno está en blanco: no hay nada entre ambos. Indique los dos.</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>No alignments: {reason}.</source>
        <translation>Ninguna alineación: {reason}.</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>No alignments ({searched}): {advice}.</source>
        <translation>Ninguna alineación ({searched}): {advice}.</translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>{n:,} alignments ({searched}).</source>
        <translation>{n:,} alineaciones ({searched}).</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>A timetable for each night in the field: when to leave the car, sunset, darkness, Moon, alignments, and when to be back</source>
        <translation>Un horario para cada noche de campo: cuándo dejar el coche, la puesta de Sol, la oscuridad, la Luna, las alineaciones y cuándo estar de vuelta</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>timetable</source>
        <translation>horario</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>itinerary</source>
        <translation>itinerario</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>GPX</source>
        <translation>GPX</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>iCalendar</source>
        <translation>iCalendar</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>waypoints</source>
        <translation>waypoints, puntos de paso</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>print</source>
        <translation>imprimir</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>walk</source>
        <translation>acceso a pie</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>safety</source>
        <translation>seguridad</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>The layer holds no alignment.</source>
        <translation>La capa no contiene ninguna alineación.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>No row of the layer can be planned: its rows have no time, no place or no bearing.</source>
        <translation>No se puede planificar ninguna fila de la capa: sus filas no tienen hora, lugar o rumbo.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Select the few that are meant, and run on the selected features only: each night and place gets a sheet.</source>
        <translation>Seleccione las pocas que interesan y ejecute con «Objetos seleccionados solamente»: cada noche y lugar recibe una hoja.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Parking: where the car stands</source>
        <translation>Aparcamiento: dónde queda el coche</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Drawn either way round. Each camera takes the one that passes by it.</source>
        <translation>Dibujado en un sentido u otro. Cada cámara toma el que pasa por ella.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Page to print</source>
        <translation>Página para imprimir</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>HTML files (*.html)</source>
        <translation>Archivos HTML (*.html)</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Waypoints and walk</source>
        <translation>Puntos de paso (waypoints) y acceso a pie</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>GPX files (*.gpx)</source>
        <translation>Archivos GPX (*.gpx)</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Calendar</source>
        <translation>Calendario</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>iCalendar files (*.ics)</source>
        <translation>Archivos iCalendar (*.ics)</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Nothing is to be written. Give a file for HTML, GPX or CALENDAR, or several of them.</source>
        <translation>No hay nada que escribir. Indique un archivo para HTML, GPX o CALENDAR, o para varios de ellos.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Cancelled: nothing was written.</source>
        <translation>Cancelado: no se escribió nada.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Made by {provider}, {when}. Bearings are from true north unless called magnetic.</source>
        <translation>Hecho con {provider}, {when}. Los rumbos parten del norte verdadero salvo los llamados magnéticos.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Alignments, or the points of standpoints</source>
        <translation>Alineaciones, o los puntos de standpoints</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Walks: the lines from the car to the camera</source>
        <translation>Accesos a pie: las líneas del coche a la cámara</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>{n:,} alignments on {sheets:,} sheets, one a night and place; on {dark:,} of them a walk lies in the dark.</source>
        <translation>Alineaciones: {n:,}; hojas: {sheets:,}, una por noche y lugar; en {dark:,} de ellas se camina a oscuras.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>{n:,} alignments are more than MAX_ROWS ({most:,}). Select the nights that are meant, or raise MAX_ROWS.</source>
        <translation>{n:,} alineaciones son más que MAX_ROWS ({most:,}). Seleccione las noches que interesan o aumente MAX_ROWS.</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Nothing to plan: {reason}</source>
        <translation>Nada que planificar: {reason}</translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>{names} are the same file, {path}. Give each its own.</source>
        <translation>{names} son el mismo archivo, {path}. Dé a cada uno el suyo.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Framing</source>
        <translation>Encuadre</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Whether a subject and a body of the sky fit the lens, how large the subject is in the picture, the longest shutter without star trails, where to focus, and the frames of a panorama</source>
        <translation>Si un motivo y un astro caben en el encuadre del objetivo, cuánto ocupa el motivo en la imagen, el tiempo de exposición más largo sin trazas de estrellas, dónde enfocar y los fotogramas de una panorámica</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>lens</source>
        <translation>objetivo</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>focal length</source>
        <translation>distancia focal</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>field of view</source>
        <translation>campo de visión</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>panorama</source>
        <translation>panorámica</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>shutter</source>
        <translation>tiempo de exposición, obturador</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>NPF</source>
        <translation>NPF</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>hyperfocal</source>
        <translation>hiperfocal</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>focus</source>
        <translation>enfoque</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Alignments bring their own body and time.</source>
        <translation>Las alineaciones traen su propio astro y hora.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>With an offset or Z that instant, else the clock of TIME_ZONE.</source>
        <translation>Con un desfase o Z, ese instante; si no, la hora de TIME_ZONE.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Its sides are those of the frame on the level horizon.</source>
        <translation>Sus lados son los del encuadre en el horizonte astronómico.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Fields of the cameras, or of the sightlines, to keep</source>
        <translation>Campos de las cámaras, o de las líneas de visión, que se conservan</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Fields of view</source>
        <translation>Campos de visión</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Head positions of the panoramas</source>
        <translation>Posiciones de la rótula de las panorámicas</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>SIGHTLINES and CAMERAS or SUBJECTS are given. Give either the sightlines, or the cameras and their subjects.</source>
        <translation>Se indican SIGHTLINES y CAMERAS o SUBJECTS. Indique o bien las líneas de visión, o bien las cámaras y sus motivos.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>REACH is 0. Give the metres that the field of view is to be drawn, such as 2000, or leave it blank.</source>
        <translation>REACH es 0. Indique hasta cuántos metros se dibuja el campo de visión, como 2000, o déjelo en blanco.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Or sightlines: a result of sightlines or alignments, in place of cameras and subjects</source>
        <translation>O líneas de visión: un resultado de sightlines o alignments, en lugar de cámaras y motivos</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Time; blank: that of each sightline, or no body at all</source>
        <translation>Fecha y hora; en blanco: la de cada línea de visión, o ningún astro</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Draw the field of view as far as this; blank: a quarter farther than the subject</source>
        <translation>Dibujar el campo de visión hasta esta distancia; en blanco: un cuarto más lejos que el motivo</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{n:,} fields of view.</source>
        <translation>Campos de visión: {n:,}.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{n:,} fields of view, {heads:,} head positions.</source>
        <translation>Campos de visión: {n:,}; posiciones de la rótula: {heads:,}.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>The panoramas would take {n:,} frames and more, above MAX_ROWS ({limit:,}). Take a shorter lens, or raise MAX_ROWS.</source>
        <translation>Las panorámicas llevarían {n:,} fotogramas o más, por encima de MAX_ROWS ({limit:,}). Tome un objetivo más corto o aumente MAX_ROWS.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Cancelled: {n:,} fields of view written.</source>
        <translation>Cancelado: {n:,} campos de visión escritos.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>No fields of view: {reason}.</source>
        <translation>Ningún campo de visión: {reason}.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{name} is {choice}, but TIME is blank, and without a time nothing stands in the sky. Give TIME.</source>
        <translation>{name} es {choice}, pero TIME está en blanco, y sin hora no hay nada en el cielo. Indique TIME.</translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{name} is blank. Choose cameras and subjects, or SIGHTLINES.</source>
        <translation>{name} está en blanco. Elija cámaras y motivos, o SIGHTLINES.</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Night windows</source>
        <translation>Ventanas nocturnas</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>When it is dark, the Moon away and the Milky Way high, for each site and night: sunset to sunrise, windows, best months</source>
        <translation>Cuándo está oscuro, la Luna lejos y la Vía Láctea alta, por lugar y noche: de la puesta a la salida del Sol, ventanas, mejores meses</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>darkness</source>
        <translation>oscuridad</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>twilight</source>
        <translation>crepúsculo</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>moonrise</source>
        <translation>salida de la Luna</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>moonset</source>
        <translation>puesta de la Luna</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>sunset</source>
        <translation>puesta de Sol, ocaso</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>sunrise</source>
        <translation>salida del Sol, orto</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>new moon</source>
        <translation>luna nueva</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>season</source>
        <translation>temporada</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Sites: the points under the sky</source>
        <translation>Lugares: los puntos bajo el cielo</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Towns whose glow is reckoned</source>
        <translation>Poblaciones cuyo resplandor se calcula</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Field with the number of people of a town</source>
        <translation>Campo con el número de habitantes de una población</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Field with the name of a town</source>
        <translation>Campo con el nombre de una población</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Field with the name of a site</source>
        <translation>Campo con el nombre de un lugar</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Fields of the sites to keep</source>
        <translation>Campos de los lugares que se conservan</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Nights</source>
        <translation>Noches</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Every window</source>
        <translation>Todas las ventanas</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Months</source>
        <translation>Meses</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>sites: {sites:,}, nights: {nights:,}</source>
        <translation>lugares: {sites:,}, noches: {nights:,}</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>No nights: there is no point that can be used.</source>
        <translation>Ninguna noche: no hay ningún punto utilizable.</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>APEX_MIN is {low:g}, but APEX_MAX is blank, which means {high:g} for {body}: nothing lies between. Give both.</source>
        <translation>APEX_MIN es {low:g}, pero APEX_MAX está en blanco, lo que significa {high:g} para {body}: no hay nada entre ambos. Indique los dos.</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Cancelled: {n:,} nights written.</source>
        <translation>Cancelado: {n:,} noches escritas.</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>{n:,} nights without a window: {reason}.</source>
        <translation>{n:,} noches sin ventana: {reason}.</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>{n:,} nights with a window ({searched}).</source>
        <translation>{n:,} noches con ventana ({searched}).</translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>No night has a window ({searched}): the field reason tells why.</source>
        <translation>Ninguna noche tiene ventana ({searched}): el campo reason dice por qué.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Season chart</source>
        <translation>Gráfico de temporada</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>A year in one picture, from night windows: every night a column, with its dark hours, window, Moon and the tilt of the band</source>
        <translation>Un año en una imagen, a partir de las ventanas nocturnas: cada noche una columna, con sus horas oscuras, ventana, Luna e inclinación de la banda</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>picture</source>
        <translation>imagen</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>year</source>
        <translation>año</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>calendar</source>
        <translation>calendario</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>chart</source>
        <translation>gráfico</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{lat:.4f}° {ns}, {lon:.4f}° {ew}. Clock on the wall of {zone}, upward from {foot:02d}:00; a night bears its evening's date.</source>
        <translation>{lat:.4f}° {ns}; {lon:.4f}° {ew}. Hora oficial de {zone}, hacia arriba desde las {foot:02d}:00; una noche lleva la fecha del día en que comienza.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>the body</source>
        <translation>el astro</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Moon up: the wider the bar, the more of it is lit</source>
        <translation>Luna: más ancha, más iluminada</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>new</source>
        <translation>nueva</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>full</source>
        <translation>llena</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>clock {hours:+g} h</source>
        <translation>reloj {hours:+g} h</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Tilt of the band: 0° flat, 90° upright. Dot: at a window's best minute; tick: at its start; bar: from these to its end</source>
        <translation>Inclinación de la banda: 0° tendida, 90° vertical. Punto: en el mejor minuto de una ventana; raya: a su comienzo; barra: de estos a su final</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>how the band rises from the core (the dot) at the best minute</source>
        <translation>subida de la banda desde el núcleo (punto)</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>A planning aid, not a survey and not a permit: it knows nothing of clouds, closures, access or footing. Arrive before dark, not alone.</source>
        <translation>Una ayuda para planificar, no un levantamiento ni un permiso: no sabe nada de nubes, cierres, accesos ni del suelo que se pisa. Llegue antes de que oscurezca y no vaya en solitario.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Every night is a column, from noon up to noon by the clock on the wall; the hour that clocks skip in spring is empty.</source>
        <translation>Cada noche es una columna, de mediodía a mediodía en hora oficial; la hora que los relojes saltan en primavera queda vacía.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Access, closures and night hours are decided by the land manager and local law. Walking in the dark is dangerous.</source>
        <translation>Los accesos, los cierres y los horarios nocturnos los deciden el gestor del terreno y la normativa local. Caminar a oscuras es peligroso.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Site and body</source>
        <translation>Lugar y astro</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Month</source>
        <translation>Mes</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>A year of nights reads best. Select some sites and run on the selected features only, if there are many.</source>
        <translation>Lo que mejor se lee es un año de noches. Si los lugares son muchos, seleccione algunos y ejecute con «Objetos seleccionados solamente».</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Folder for the pictures</source>
        <translation>Carpeta para las imágenes</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Page of the pictures</source>
        <translation>Página de las imágenes</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Pictures drawn</source>
        <translation>Imágenes dibujadas</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{who}, nights {first} to {last}</source>
        <translation>{who}, noches del {first} al {last}</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>dark</source>
        <translation>oscuridad</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>first night</source>
        <translation>primera noche</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>nights with a window</source>
        <translation>noches con ventana</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>hours</source>
        <translation>horas</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>longest window</source>
        <translation>ventana más larga</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{n:,} of {total:,} nights have a window, {hours:.0f} h in all (of each night the longest); season {season}; longest: {window}.</source>
        <translation>{n:,} de {total:,} noches tienen ventana, {hours:.0f} h en total (de cada noche la más larga); temporada {season}; la más larga: {window}.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Why nights have no window, the most frequent reasons: {reasons}.</source>
        <translation>Por qué hay noches sin ventana, las razones más frecuentes: {reasons}.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>best night</source>
        <translation>mejor noche</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>its window</source>
        <translation>su ventana</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Saturdays at new Moon</source>
        <translation>Sábados de Luna nueva</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Nights: the first result of night_windows</source>
        <translation>Noches: el primer resultado de night_windows</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Theme: print or night</source>
        <translation>Tema: print o night</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>No pictures: there is no night that can be used.</source>
        <translation>Ninguna imagen: no hay ninguna noche utilizable.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{body} usable, as asked</source>
        <translation>{body}, según lo pedido</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>dark: Sun under {limit:.3g}°</source>
        <translation>oscuridad: Sol por debajo de {limit:.3g}°</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>None of {total:,} nights has a window.</source>
        <translation>Ninguna de {total:,} noches tiene ventana.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>This asks for {n:,} pictures, a site each, over MAX_PICTURES ({limit:,}). Select fewer sites and run on the selected features only, or raise MAX_PICTURES.</source>
        <translation>Esto pide {n:,} imágenes, una por lugar, más que MAX_PICTURES ({limit:,}). Seleccione menos lugares y ejecute con «Objetos seleccionados solamente», o aumente MAX_PICTURES.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Cancelled: {n:,} pictures drawn.</source>
        <translation>Cancelado: {n:,} imágenes dibujadas.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{night} ({hours:+g} h)</source>
        <translation>{night} ({hours:+g} h)</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{n:,} nights are not in the layer: hatched.</source>
        <translation>{n:,} noches no están en la capa: rayadas.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Season charts</source>
        <translation>Gráficos de temporada</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{n:,} pictures of {sites:,} sites and bodies in {folder}.</source>
        <translation>Imágenes: {n:,}, de {sites:,} pares de lugar y astro, en {folder}.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Clocks change in the night of {nights}.</source>
        <translation>Los relojes cambian en la noche del {nights}.</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>the star</source>
        <translation>la estrella</translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>the place on the plane</source>
        <translation>el punto del plano</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Shadow tracks</source>
        <translation>Recorridos de la sombra</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Where on the ground the Milky Way, the Moon or the Sun sits at a height over a subject's top: how the standpoint moves with it</source>
        <translation>Dónde, sobre el terreno, la Vía Láctea, la Luna o el Sol queda a una altura sobre la cima de un motivo: cómo se desplaza el punto de toma con el astro</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>shadow</source>
        <translation>sombra</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>ground track</source>
        <translation>traza sobre el terreno</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>where to stand</source>
        <translation>dónde situarse</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>First time</source>
        <translation>Fecha y hora iniciales</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Last time; blank: the first time alone</source>
        <translation>Fecha y hora finales; en blanco: solo las iniciales</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Step between times [min]</source>
        <translation>Paso entre momentos [min]</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>0: where the tip of the shadow of the top falls, at the height of the lens.</source>
        <translation>0: donde cae la punta de la sombra de la cima, a la altura del objetivo.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Stand at most this far from the subject</source>
        <translation>Situarse como mucho a esta distancia del motivo</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Shadow track</source>
        <translation>Recorrido de la sombra</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Lines of the track</source>
        <translation>Líneas del recorrido</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>START is blank. Give the first time, such as 2027-06-06 23:30:00.</source>
        <translation>START está en blanco. Indique la fecha y hora iniciales, como 2027-06-06 23:30:00.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 5.</source>
        <translation>STEP es 0. Indique los minutos entre dos momentos, como 5.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>MAX_DISTANCE is 0 and lets nothing through. Give the metres within which to stand, such as 5000.</source>
        <translation>MAX_DISTANCE es 0 y no deja pasar nada. Indique los metros hasta los que situarse, como 5000.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>The body's centre this far above the subject's top [°]</source>
        <translation>El centro del astro a esta altura sobre la cima del motivo [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>{n:,} places</source>
        <translation>{n:,} lugares</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>No places.</source>
        <translation>Ningún lugar.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>{n:,} subjects and times are left out: {body} stands at {low:.1f}° to {high:.1f}° then, below the horizon, or as an arch too high or without its core.</source>
        <translation>{n:,} pares de motivo y momento se excluyen: {body} está entonces de {low:.1f}° a {high:.1f}°, bajo el horizonte, o como arco demasiado alto o sin su núcleo.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>{n:,} subjects and times have no first place within MAX_DISTANCE ({most:,.0f} m) and allowed ground: the shadow is longer, or falls elsewhere.</source>
        <translation>{n:,} pares de motivo y momento no tienen un primer lugar dentro de MAX_DISTANCE ({most:,.0f} m) y del terreno permitido: la sombra es más larga o cae en otra parte.</translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>, {n:,} lines</source>
        <translation>, {n:,} líneas</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>True bearing, distance, altitude and angular size of each subject, seen from each camera, whether terrain hides it, with the line drawn along the Earth</source>
        <translation>Rumbo verdadero, distancia, altura y tamaño angular de cada motivo visto desde cada cámara, y si el terreno lo oculta, con la línea dibujada a lo largo de la Tierra</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>distance</source>
        <translation>distancia</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>line of sight</source>
        <translation>línea de visión</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>geodesic</source>
        <translation>geodésica</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>A compass needle turns by some 0.1° a year.</source>
        <translation>La aguja de una brújula se desvía unos 0,1° más cada año.</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>Date of the magnetic bearings; blank: today</source>
        <translation>Fecha de los rumbos magnéticos; en blanco: hoy</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>Cancelled: {n:,} sightlines written.</source>
        <translation>Cancelado: {n:,} líneas de visión escritas.</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>No sightlines: {reason}.</source>
        <translation>Ninguna línea de visión: {reason}.</translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>{n:,} sightlines (cameras: {cameras:,}, subjects: {subjects:,}).</source>
        <translation>{n:,} líneas de visión (cámaras: {cameras:,}, motivos: {subjects:,}).</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Site map</source>
        <translation>Plano del lugar</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>A map for a permit: where people stand and walk, closed ground, coordinates, bearings and a timetable, a sheet a site</source>
        <translation>Un plano para un permiso: dónde se está y se camina, terreno cerrado, coordenadas, rumbos y un horario, una hoja por lugar</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>permit</source>
        <translation>permiso</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>layout</source>
        <translation>composición, diseño de impresión</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>PDF</source>
        <translation>PDF</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>map</source>
        <translation>plano</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>sheet</source>
        <translation>hoja</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>closure</source>
        <translation>cierre</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>application</source>
        <translation>solicitud</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Page</source>
        <translation>Página</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Sheets made</source>
        <translation>Hojas creadas</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Cancelled: nothing was written to OUTPUT.</source>
        <translation>Cancelado: no se escribió nada en OUTPUT.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Layers (file written)</source>
        <translation>Capas (archivo escrito)</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Background</source>
        <translation>Fondo</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>There is no place to draw. Give CAMERAS, SIGHTLINES, ALIGNMENTS, STANDPOINTS or SUBJECTS that hold one.</source>
        <translation>No hay ningún lugar que dibujar. Indique CAMERAS, SIGHTLINES, ALIGNMENTS, STANDPOINTS o SUBJECTS que contengan alguno.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>{n:,} sheets on {pages:,} pages in {file}.</source>
        <translation>Hojas: {n:,}; páginas: {pages:,}; en {file}.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Sheet {n} of {count}</source>
        <translation>Hoja {n} de {count}</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>TITLE is {n} letters long, and a sheet has room for {most}. Shorten it.</source>
        <translation>TITLE tiene {n} caracteres, y en una hoja caben {most}. Acórtelo.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>OUTPUT: {path} is the TEMPLATE, which would be lost. Choose another name.</source>
        <translation>OUTPUT: {path} es la plantilla TEMPLATE, que se perdería. Elija otro nombre.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>The template asks for the font {fonts}, which this computer has not: {fallback} is taken.</source>
        <translation>La plantilla pide la fuente {fonts}, que este equipo no tiene: se toma {fallback}.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>No font of this computer draws {letters}: they are boxes on the sheets. Install one that has them.</source>
        <translation>Ninguna fuente de este equipo dibuja {letters}: aparecen como cuadros en las hojas. Instale una que las tenga.</translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Permit {number}</source>
        <translation>Permiso {number}</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Sky exposure</source>
        <translation>Exposición al cielo</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>For how many minutes a night the body stands clear of the ridges in the dark, from each cell of an elevation model</source>
        <translation>Cuántos minutos por noche el astro queda libre de las crestas en la oscuridad, desde cada celda de un modelo digital de elevaciones</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>raster</source>
        <translation>ráster</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>elevation model</source>
        <translation>modelo digital de elevaciones</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>DEM</source>
        <translation>MDE, DEM</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>terrain</source>
        <translation>terreno</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>skyline</source>
        <translation>perfil del horizonte</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>visibility</source>
        <translation>visibilidad</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>month</source>
        <translation>mes</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Cancelled: nothing is written.</source>
        <translation>Cancelado: no se escribe nada.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Off: one band, the mean of all nights. On: the mean of the nights of each month, in bands named such as 2027-06.</source>
        <translation>Desactivado: una banda, la media de todas las noches. Activado: la media de las noches de cada mes, en bandas con nombres como 2027-06.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Ground outside it still hides what it hides.</source>
        <translation>El terreno exterior sigue ocultando lo que oculta.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Usable minutes a night</source>
        <translation>Minutos útiles por noche</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>SKY_STEP is 0. Give the degrees between two positions of the body, such as 1, or leave it blank.</source>
        <translation>SKY_STEP es 0. Indique los grados entre dos posiciones del astro, como 1, o déjelo en blanco.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>No night has a minute in which all conditions hold: the raster holds 0 everywhere.</source>
        <translation>Ninguna noche tiene un minuto en que se cumplan todas las condiciones: el ráster contiene 0 en todas partes.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>A band for each month</source>
        <translation>Una banda por mes</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Area for which it is told; blank: the whole elevation model</source>
        <translation>Zona para la que se calcula; en blanco: todo el modelo digital de elevaciones</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Blank: 1° of its daily turn, 4 minutes; 2° for Sun and Moon, which take many more positions.</source>
        <translation>En blanco: 1° de su giro diario, 4 minutos; 2° para el Sol y la Luna, que toman muchas más posiciones.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>{n:,} positions of the body, {step:g}° of its daily turn apart: when it rises over a ridge or sinks behind one is told to {minutes:.0f} minutes, half of that on average.</source>
        <translation>{n:,} posiciones del astro, separadas {step:g}° de su giro diario: el momento en que asoma sobre una cresta o se oculta tras ella se conoce con un error de hasta {minutes:.0f} minutos, la mitad en promedio.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>{cells:,} cells in {tiles:,} tiles; {rate:.1f} million cells and positions a second.</source>
        <translation>{cells:,} celdas en {tiles:,} teselas; {rate:.1f} millones de celdas y posiciones por segundo.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Positions of the body closer together than this are taken as one [°]</source>
        <translation>Las posiciones del astro más próximas entre sí que esto se toman como una [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>DEM: '{name}' knows no height in the area. Choose another AREA, or another DEM_BAND.</source>
        <translation>DEM: '{name}' no tiene ninguna altitud en la zona. Elija otra AREA u otro DEM_BAND.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>Sky positions</source>
        <translation>Posiciones en el cielo</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>Azimuth and altitude of the Milky Way's core and arch, the Sun, the Moon or a star over points, at a time or through a span of it</source>
        <translation>Acimut y altura del núcleo y del arco de la Vía Láctea, del Sol, de la Luna o de una estrella sobre puntos, en un momento o a lo largo de un intervalo</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>altitude</source>
        <translation>altura</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 10.</source>
        <translation>STEP es 0. Indique los minutos entre dos momentos, como 10.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>No positions: there is no point that can be used.</source>
        <translation>Ninguna posición: no hay ningún punto utilizable.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>Cancelled: {n:,} of {total:,} positions written.</source>
        <translation>Cancelado: {n:,} de {total:,} posiciones escritas.</translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>{n:,} positions (sites: {sites:,}, bodies: {bodies}, times: {times:,}).</source>
        <translation>{n:,} posiciones (lugares: {sites:,}, astros: {bodies}, momentos: {times:,}).</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Skyline view</source>
        <translation>Vista del horizonte</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Pictures of what the camera sees: terrain, subjects, the Milky Way's band, Sun and Moon in true proportions, with the lens's frame</source>
        <translation>Imágenes de lo que ve la cámara: terreno, motivos, la banda de la Vía Láctea, Sol y Luna en sus proporciones reales, con el encuadre del objetivo</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>view</source>
        <translation>vista</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>frame</source>
        <translation>encuadre</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>No elevation model here: the horizon is level, hills are not shown. A planning aid, not a survey and not a permit.</source>
        <translation>Sin modelo digital de elevaciones: el horizonte es plano y no se muestran relieves. Una ayuda para planificar, no un levantamiento ni un permiso.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Body less bearing</source>
        <translation>Astro menos rumbo</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Body above the subject's top</source>
        <translation>Astro por encima de la cima del motivo</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Subject's height in the frame</source>
        <translation>Altura del motivo en el encuadre</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Longest focal length at which all fits</source>
        <translation>Mayor distancia focal con la que todo cabe</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Tilt of the band at the core</source>
        <translation>Inclinación de la banda en el núcleo</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Top of the arch</source>
        <translation>Cima del arco</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Access, closures and night hours are decided by the land manager; walking in the dark is dangerous.</source>
        <translation>Los accesos, los cierres y los horarios nocturnos los decide el gestor del terreno; caminar a oscuras es peligroso.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter.</source>
        <translation>No mire nunca al Sol ni le apunte con un visor óptico o un teleobjetivo sin un filtro solar certificado.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Draw the body's way this long before and after [min]</source>
        <translation>Dibujar la trayectoria del astro este tiempo antes y después [min]</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 30.</source>
        <translation>STEP es 0. Indique los minutos entre dos momentos, como 30.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>END is before START. Exchange them, or mind their offsets from UTC.</source>
        <translation>END es anterior a START. Intercámbielos o tenga en cuenta sus desfases respecto a UTC.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>all fits</source>
        <translation>todo cabe</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Terrain: '{dem}', cells of {size:.3g} m, known to {reach:.1f} km, no trees or buildings. A planning aid, not a survey and not a permit.</source>
        <translation>Terreno: '{dem}', celdas de {size:.3g} m, conocido hasta {reach:.1f} km, sin árboles ni edificios. Una ayuda para planificar, no un levantamiento ni un permiso.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>{place}: {body} at azimuth {az:.1f}°, altitude {alt:.1f}°; Moon lit {lit:.0f} %, {moon:.1f}° high; Sun {sun:.1f}°</source>
        <translation>{place}: {body} en acimut {az:.1f}°, altura {alt:.1f}°; Luna iluminada al {lit:.0f} %, a {moon:.1f}° de altura; Sol a {sun:.1f}°</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>{subject} bears {bearing:.1f}° at {dist:,.0f} m. {lens}, aimed at azimuth {az:.1f}°, altitude {alt:.1f}°: {fits}.</source>
        <translation>{subject} en rumbo {bearing:.1f}° a {dist:,.0f} m. {lens}, apuntado a acimut {az:.1f}°, altura {alt:.1f}°: {fits}.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>azimuth {az:.1f}°, altitude {alt:.1f}°</source>
        <translation>acimut {az:.1f}°, altura {alt:.1f}°</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>This may draw up to {n:,} pictures (cameras: {cameras:,}), more than MAX_PICTURES ({limit:,}). Choose fewer cameras or times, or raise MAX_PICTURES.</source>
        <translation>Esto puede dibujar hasta {n:,} imágenes (cámaras: {cameras:,}), más que MAX_PICTURES ({limit:,}). Elija menos cámaras o momentos, o aumente MAX_PICTURES.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Cancelled: {n:,} of {total:,} pictures drawn.</source>
        <translation>Cancelado: {n:,} de {total:,} imágenes dibujadas.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Skyline views</source>
        <translation>Vistas del horizonte</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>No pictures: {reason}.</source>
        <translation>Ninguna imagen: {reason}.</translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>{n:,} pictures in {folder}.</source>
        <translation>Imágenes: {n:,}, en {folder}.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Standpoints on paths</source>
        <translation>Puntos de toma en senderos</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Where to stand on a path, or on which ground, so that a subject lies in a bearing, or under the Milky Way, the Moon or the Sun</source>
        <translation>Dónde situarse en un sendero, o en qué terreno, para que un motivo quede en un rumbo, o bajo la Vía Láctea, la Luna o el Sol</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>path</source>
        <translation>sendero</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>viewpoint</source>
        <translation>mirador</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Paths: the lines to stand on</source>
        <translation>Senderos: las líneas en las que situarse</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>For STRETCHES and ZONES, and for ends and bends of a path that come near the direction and do not reach it.</source>
        <translation>Para STRETCHES y ZONES, y para los extremos y curvas de un sendero que se acercan a la dirección sin alcanzarla.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Stand at least this far from the subject</source>
        <translation>Situarse al menos a esta distancia del motivo</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Field with the name of a path</source>
        <translation>Campo con el nombre de un sendero</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Fields of the paths to keep</source>
        <translation>Campos de los senderos que se conservan</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Standpoints</source>
        <translation>Puntos de toma</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Parts of the paths within tolerance</source>
        <translation>Partes de los senderos dentro de la tolerancia</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Ground within tolerance</source>
        <translation>Terreno dentro de la tolerancia</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Give this, or BODY: alone with nights, or with TIME.</source>
        <translation>Indique esto, o BODY: solo con noches, o con TIME.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>The wall clock at the subject, or a time with its offset from UTC. Blank: nights.</source>
        <translation>La hora oficial en el motivo, o una hora con su desfase respecto a UTC. En blanco: noches.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>... and every STEP until this time</source>
        <translation>... y cada STEP hasta esta hora</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Without TIME: first night, the date of its evening; blank: today</source>
        <translation>Sin TIME: primera noche, la fecha del día en que comienza; en blanco: hoy</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 15.</source>
        <translation>STEP es 0. Indique los minutos entre dos momentos, como 15.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>BEARING and BODY are both given, and each is a direction. Leave one of them blank.</source>
        <translation>Se indican BEARING y BODY, y cada uno es una dirección. Deje uno de ellos en blanco.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{name} stands at {alt}</source>
        <translation>{name} está a {alt}</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{where} of altitude, below the horizon or outside the limits asked</source>
        <translation>{where} de altura, bajo el horizonte o fuera de los límites pedidos</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{low} to {high}</source>
        <translation>{low} a {high}</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>In the direction wanted within this angle to either side [°]</source>
        <translation>En la dirección buscada dentro de este ángulo a cada lado [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>True bearing, looking from the camera to the subject [°]</source>
        <translation>Rumbo verdadero, mirando de la cámara al motivo [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>The body at this time</source>
        <translation>El astro a esta hora</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>No direction is given. Give BEARING, a true bearing from camera to subject, or BODY with TIME or with nights.</source>
        <translation>No se indica ninguna dirección. Indique BEARING, un rumbo verdadero de cámara a motivo, o BODY con TIME o con noches.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source> and the core at {alt}</source>
        <translation> y el núcleo a {alt}</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{lost:,} of {all:,} subjects and times are left out: {sentence}.</source>
        <translation>{lost:,} de {all:,} pares de motivo y momento se excluyen: {sentence}.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>AZ_TOLERANCE is {value:g}. Give a half-width of more than 0 and less than 90 degrees.</source>
        <translation>AZ_TOLERANCE es {value:g}. Indique una semianchura de más de 0 y menos de 90 grados.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>in these nights {body} never meets the conditions</source>
        <translation>en estas noches {body} nunca cumple las condiciones</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{n:,} moments every {step:g} min in which the conditions hold at one of the subjects.</source>
        <translation>{n:,} momentos cada {step:g} min en que se cumplen las condiciones en uno de los motivos.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{names}: for nights only. The times given are taken as they are.</source>
        <translation>{names}: solo para noches. Las horas indicadas se toman tal cual.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>TIME_END is given without TIME. Give the first time too.</source>
        <translation>Se indica TIME_END sin TIME. Indique también la hora inicial.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>BEARING is given, and beside it {names}, which belong to a body. Leave them blank, or give BODY in place of BEARING.</source>
        <translation>Se indica BEARING y, a su lado, {names}, que pertenecen a un astro. Déjelos en blanco, o indique BODY en lugar de BEARING.</translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>TIME and nights are both given. Leave TIME blank, or FIRST_NIGHT and LAST_NIGHT.</source>
        <translation>Se indican TIME y noches. Deje en blanco TIME, o FIRST_NIGHT y LAST_NIGHT.</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Terrain horizon</source>
        <translation>Horizonte del terreno</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>How high the terrain stands against the sky around points, direction by direction, and where the ground is that makes the skyline</source>
        <translation>A qué altura se alza el terreno contra el cielo alrededor de puntos, dirección a dirección, y dónde está el terreno que forma el perfil</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>horizon</source>
        <translation>horizonte</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Sites: the points to look from</source>
        <translation>Lugares: los puntos desde los que se mira</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>A summit narrower than the step may fall between two azimuths.</source>
        <translation>Una cumbre más estrecha que el paso puede caer entre dos acimutes.</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Points on the skyline</source>
        <translation>Puntos del perfil del horizonte</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Skylines, as polygons</source>
        <translation>Perfiles del horizonte, como polígonos</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>AZ_STEP is 0. Give the degrees between two azimuths, such as 1.</source>
        <translation>AZ_STEP es 0. Indique los grados entre dos acimutes, como 1.</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Step between azimuths, from north clockwise [°]</source>
        <translation>Paso entre acimutes, desde el norte en sentido horario [°]</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>No skyline: there is no site on ground whose height the DEM knows.</source>
        <translation>Ningún perfil: no hay ningún lugar en terreno cuya altitud conozca el MDE.</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Cancelled: {n:,} points on skylines written.</source>
        <translation>Cancelado: {n:,} puntos de perfiles escritos.</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>AZ_STEP is {step:g}: too many azimuths to be held. Give {least:g} or more, such as 1.</source>
        <translation>AZ_STEP es {step:g}: demasiados acimutes para la memoria. Indique {least:g} o más, como 1.</translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>{n:,} points on skylines (sites: {sites:,}, azimuths: {azimuths:,}).</source>
        <translation>{n:,} puntos de perfiles (lugares: {sites:,}, acimutes: {azimuths:,}).</translation>
    </message>
    <message>
        <location filename="../charts/sheets.py"/>
        <source>Pictures are drawn with matplotlib, which this Python has not. Install it (Debian: python3-matplotlib), then run again.</source>
        <translation>Las imágenes se dibujan con matplotlib, que este Python no tiene. Instálelo (Debian: python3-matplotlib) y ejecute de nuevo.</translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>NE</source>
        <translation>NE</translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>SE</source>
        <translation>SE</translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>SW</source>
        <translation>SO</translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>NW</source>
        <translation>NO</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a point, where the camera stands; its Z, if it has one, is the height above sea level in metres</source>
        <translation>un punto, donde está la cámara; su Z, si la tiene, es la altura sobre el nivel del mar en metros</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a point, where the camera stands</source>
        <translation>un punto, donde está la cámara</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a point, where the subject stands</source>
        <translation>un punto, donde está el motivo</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>the CRS of the points: a text such as 'EPSG:4326', or @layer_crs</source>
        <translation>el SRC de los puntos: un texto como 'EPSG:4326', o @layer_crs</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a time, or a text such as '2027-06-06T23:30:00-06:00'. Without an offset it is UTC, as it is in the field t_utc and in the Temporal Controller. A number counts milliseconds of UTC since 1970: epoch(now()) is this moment, while now() alone is what the computer's clock shows</source>
        <translation>una fecha y hora, o un texto como '2027-06-06T23:30:00-06:00'. Sin desfase es UTC, como en el campo t_utc y en el controlador temporal. Un número cuenta milisegundos de UTC desde 1970: epoch(now()) es este momento, mientras que now() por sí solo es lo que muestra el reloj del equipo</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>the plugin Sky Alidade is not loaded. Switch it on in the plugin manager.</source>
        <translation>el complemento Sky Alidade no está cargado. Actívelo en el administrador de complementos.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the true bearing from a camera to a subject: at the camera, in degrees clockwise from true north, along the WGS 84 ellipsoid. NULL where the two are one place.</source>
        <translation>Devuelve el rumbo verdadero de una cámara a un motivo: en la cámara, en grados en sentido horario desde el norte verdadero, a lo largo del elipsoide WGS 84. NULL si ambos coinciden.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the distance from a camera to a subject along the WGS 84 ellipsoid, in metres.</source>
        <translation>Devuelve la distancia de una cámara a un motivo a lo largo del elipsoide WGS 84, en metros.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the angle of the Milky Way to the horizontal at its core, in degrees, from 0 (flat) to 90 (upright). NULL while the core is down.</source>
        <translation>Devuelve el ángulo de la Vía Láctea con la horizontal en su núcleo, en grados, de 0 (tendida) a 90 (vertical). NULL mientras el núcleo está bajo el horizonte.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>; 'star:RA,Dec': a fixed place, ICRS in degrees; 'galactic:LON': a place on the galactic plane, in degrees</source>
        <translation>; 'star:AR,Dec': un punto fijo, ICRS en grados; 'galactic:LON': un punto del plano galáctico, en grados</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Syntax</source>
        <translation>Sintaxis</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Arguments</source>
        <translation>Argumentos</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Examples</source>
        <translation>Ejemplos</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{body}' is no body. Choose from: {known}.</source>
        <translation>'{body}' no es un astro. Elija de: {known}.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the azimuth of a body of the sky, in degrees clockwise from true north.</source>
        <translation>Devuelve el acimut de un astro, en grados en sentido horario desde el norte verdadero.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the altitude of a body's centre above the level horizon, in degrees, as it is seen: with the refraction of standard air.</source>
        <translation>Devuelve la altura del centro de un astro sobre el horizonte astronómico, en grados, tal como se ve: con la refracción de la atmósfera estándar.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{value}' is no geometry. Give a point, such as $geometry.</source>
        <translation>'{value}' no es una geometría. Indique un punto, como $geometry.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>{kind} is not one point. Take one of it, such as centroid($geometry).</source>
        <translation>{kind} no es un solo punto. Tome uno de ella, como centroid($geometry).</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>{x:g}, {y:g} is no place in {crs}. Check the CRS.</source>
        <translation>{x:g}; {y:g} no es una posición válida en {crs}. Compruebe el SRC.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{crs}' is no CRS. Give one such as 'EPSG:4326', @layer_crs or @project_crs.</source>
        <translation>'{crs}' no es un SRC. Indique uno como 'EPSG:4326', @layer_crs o @project_crs.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>function {name}</source>
        <translation>función {name}</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{text}' is no number of degrees. Write it as in galactic:80.</source>
        <translation>'{text}' no es un número de grados. Escríbalo como en galactic:80.</translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{value}' is no time. Write it as 2027-06-06T23:30:00Z, or with an offset such as -06:00; without one it is UTC.</source>
        <translation>'{value}' no es una fecha y hora. Escríbala como 2027-06-06T23:30:00Z, o con un desfase como -06:00; sin él es UTC.</translation>
    </message>
    <message>
        <location filename="../ground/geodesic.py"/>
        <source>{n} of {total} places are not on the Earth (not a number, or latitude beyond 90 degrees): leave them out, or check their CRS.</source>
        <translation>{n} de {total} lugares no están en la Tierra (no son números, o la latitud pasa de 90 grados): exclúyalos o compruebe su SRC.</translation>
    </message>
    <message>
        <location filename="../ground/magnetic.py"/>
        <source>{n} of {total} latitudes lie beyond 90°: give coordinates as longitude, then latitude, in degrees.</source>
        <translation>{n} de {total} latitudes pasan de 90°: indique las coordenadas como longitud y después latitud, en grados.</translation>
    </message>
    <message>
        <location filename="../ground/skyline.py"/>
        <source>Within {radius:g} m there is no ground beyond the {near:g} m passed over. Look farther.</source>
        <translation>Dentro de {radius:g} m no hay terreno más allá de los {near:g} m pasados por alto. Mire más lejos.</translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>Heights between cells need a raster of at least 2 x 2 cells. Choose a larger elevation model.</source>
        <translation>Las altitudes entre celdas necesitan un ráster de al menos 2 x 2 celdas. Elija un modelo digital de elevaciones mayor.</translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>A vertical unit of {unit} m is no length. Give 1 for metres, 0.3048 for feet.</source>
        <translation>Una unidad vertical de {unit} m no es una longitud. Indique 1 para metros, 0,3048 para pies.</translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>The elevation model holds no height. Choose another band, or another model.</source>
        <translation>El modelo digital de elevaciones no contiene ninguna altitud. Elija otra banda u otro modelo.</translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>The elevation model's cells have no area. Give it a georeference first.</source>
        <translation>Las celdas del modelo digital de elevaciones no tienen superficie. Georreferéncielo primero.</translation>
    </message>
    <message>
        <location filename="../lens/frame.py"/>
        <source>The frame's {name} is {value}: give a number greater than 0.</source>
        <translation>El valor {name} del encuadre es {value}: indique un número mayor que 0.</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Camera id</source>
        <translation>Id de cámara</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject id</source>
        <translation>Id de motivo</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Site id</source>
        <translation>Id de lugar</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Path id</source>
        <translation>Id de sendero</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body</source>
        <translation>Astro</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Night (date of its evening)</source>
        <translation>Noche (fecha en que comienza)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Time (UTC)</source>
        <translation>Hora (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Time (local)</source>
        <translation>Hora (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Time zone</source>
        <translation>Zona horaria</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Start (UTC)</source>
        <translation>Comienzo (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Start (local)</source>
        <translation>Comienzo (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>End (UTC)</source>
        <translation>Final (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>End (local)</source>
        <translation>Final (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Length [min]</source>
        <translation>Duración [min]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth [° true]</source>
        <translation>Acimut [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the body, apparent [°]</source>
        <translation>Altura del astro, aparente [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Semidiameter [°]</source>
        <translation>Semidiámetro [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance along the path from its start [m]</source>
        <translation>Distancia por el sendero desde su comienzo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Along the path, from [m]</source>
        <translation>Por el sendero, desde [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Along the path, to [m]</source>
        <translation>Por el sendero, hasta [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearing wanted [° true]</source>
        <translation>Rumbo buscado [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearing less the one wanted [°]</source>
        <translation>Rumbo menos el buscado [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Error of the bearing by that of the position [°]</source>
        <translation>Error del rumbo por el de la posición [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearings, clockwise from [° true]</source>
        <translation>Rumbos, en sentido horario desde [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearings, clockwise to [° true]</source>
        <translation>Rumbos, en sentido horario hasta [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>In the area and not in closed ground</source>
        <translation>En la zona y no en terreno cerrado</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunset (UTC)</source>
        <translation>Puesta de Sol (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunset (local)</source>
        <translation>Puesta de Sol (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark from (UTC)</source>
        <translation>Oscuro desde (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark from (local)</source>
        <translation>Oscuro desde (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark until (UTC)</source>
        <translation>Oscuro hasta (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark until (local)</source>
        <translation>Oscuro hasta (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunrise (UTC)</source>
        <translation>Salida del Sol (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunrise (local)</source>
        <translation>Salida del Sol (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonrise (UTC)</source>
        <translation>Salida de la Luna (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonrise (local)</source>
        <translation>Salida de la Luna (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonset (UTC)</source>
        <translation>Puesta de la Luna (UTC)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonset (local)</source>
        <translation>Puesta de la Luna (local)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the body at the start [° true]</source>
        <translation>Acimut del astro al comienzo [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the body at the end [° true]</source>
        <translation>Acimut del astro al final [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Tilt of the band at the start [°]</source>
        <translation>Inclinación de la banda al comienzo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Tilt of the band at the end [°]</source>
        <translation>Inclinación de la banda al final [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Darkness of the night [min]</source>
        <translation>Oscuridad de la noche [min]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Darkness without Moon [min]</source>
        <translation>Oscuridad sin Luna [min]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Glow of towns toward the body, of the natural sky</source>
        <translation>Resplandor de poblaciones hacia el astro, respecto al cielo natural</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Town that glows most</source>
        <translation>Población que más resplandece</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Usable nights</source>
        <translation>Noches útiles</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Hours of all windows [h]</source>
        <translation>Horas de todas las ventanas [h]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Night of the longest window</source>
        <translation>Noche de la ventana más larga</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest window [min]</source>
        <translation>Ventana más larga [min]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>First usable night of the season</source>
        <translation>Primera noche útil de la temporada</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Last usable night of the season</source>
        <translation>Última noche útil de la temporada</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Saturdays of new-moon weekends</source>
        <translation>Sábados de fines de semana de Luna nueva</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance [m]</source>
        <translation>Distancia [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearing, camera to subject [° true]</source>
        <translation>Rumbo, de cámara a motivo [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Back bearing, subject to camera [° true]</source>
        <translation>Rumbo inverso, de motivo a cámara [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Magnetic bearing [°]</source>
        <translation>Rumbo magnético [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Magnetic declination, east positive [°]</source>
        <translation>Declinación magnética, positiva al este [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Grid bearing [°]</source>
        <translation>Rumbo de cuadrícula [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the lens [m]</source>
        <translation>Altitud del objetivo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the subject's foot [m]</source>
        <translation>Altitud del pie del motivo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the subject's top [m]</source>
        <translation>Altitud de la cima del motivo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the subject's foot [°]</source>
        <translation>Altura angular del pie del motivo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the subject's top [°]</source>
        <translation>Altura angular de la cima del motivo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Width of the subject [°]</source>
        <translation>Anchura del motivo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the subject [°]</source>
        <translation>Alto del motivo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Top in line of sight</source>
        <translation>Cima a la vista</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance to the least clearance [m]</source>
        <translation>Distancia al margen mínimo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Least clearance [m]</source>
        <translation>Margen mínimo sobre el terreno [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Hidden part of the subject [m]</source>
        <translation>Parte oculta del motivo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Source of heights</source>
        <translation>Origen de las altitudes</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body less bearing [°]</source>
        <translation>Astro menos rumbo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body above the subject's top [°]</source>
        <translation>Astro por encima de la cima del motivo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body against the subject</source>
        <translation>Astro respecto al motivo</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the terrain skyline [°]</source>
        <translation>Altura angular del perfil del terreno [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the ground [m]</source>
        <translation>Altitud del terreno [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Crossing, counted outward</source>
        <translation>Cruce, contado hacia fuera</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Ground known as far as [m]</source>
        <translation>Terreno conocido hasta [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the Sun, geometric [°]</source>
        <translation>Altura del Sol, geométrica [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Darkness of the sky</source>
        <translation>Oscuridad del cielo</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the Moon, geometric [°]</source>
        <translation>Altura de la Luna, geométrica [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the Moon [° true]</source>
        <translation>Acimut de la Luna [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Lit fraction of the Moon</source>
        <translation>Fracción iluminada de la Luna</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body to Moon [°]</source>
        <translation>Del astro a la Luna [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonlight comes from</source>
        <translation>La luz de la Luna viene de</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Brightening by moonlight [mag/arcsec²]</source>
        <translation>Aumento de brillo por la luz de la Luna [mag/arcsec²]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the core, apparent [°]</source>
        <translation>Altura del núcleo, aparente [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Tilt of the band at the core [°]</source>
        <translation>Inclinación de la banda en el núcleo [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Side to which the band rises</source>
        <translation>Lado hacia el que sube la banda</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the arch's top, geometric [°]</source>
        <translation>Altura de la cima del arco, geométrica [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the arch's top [° true]</source>
        <translation>Acimut de la cima del arco [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Galactic longitude of the arch's top [°]</source>
        <translation>Longitud galáctica de la cima del arco [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Field of view across [°]</source>
        <translation>Campo de visión a lo ancho [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Field of view, bottom to top [°]</source>
        <translation>Campo de visión, de abajo arriba [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Aim: azimuth [° true]</source>
        <translation>Apuntado: acimut [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Aim: altitude [°]</source>
        <translation>Apuntado: altura [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Left side on the horizon [° true]</source>
        <translation>Lado izquierdo en el horizonte [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Right side on the horizon [° true]</source>
        <translation>Lado derecho en el horizonte [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject fits</source>
        <translation>El motivo cabe</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body fits</source>
        <translation>El astro cabe</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>All fits</source>
        <translation>Todo cabe</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest focal length at which all fits [mm]</source>
        <translation>Mayor distancia focal con la que todo cabe [mm]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject's height in the frame [%]</source>
        <translation>Altura del motivo en el encuadre [%]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject's height [px]</source>
        <translation>Altura del motivo [px]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject's width [px]</source>
        <translation>Anchura del motivo [px]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Panorama: rows</source>
        <translation>Panorámica: filas</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Panorama: columns, of the longest row</source>
        <translation>Panorámica: columnas, de la fila más larga</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Panorama: frames in all</source>
        <translation>Panorámica: fotogramas en total</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Row, from the lowest up</source>
        <translation>Fila, de la más baja hacia arriba</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Column, from the left</source>
        <translation>Columna, desde la izquierda</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Head: azimuth [° true]</source>
        <translation>Rótula: acimut [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Head: altitude [°]</source>
        <translation>Rótula: altura [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Declination of the fastest star [°]</source>
        <translation>Declinación de la estrella más rápida [°]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest shutter by the rule of 500 [s]</source>
        <translation>Exposición más larga según la regla del 500 [s]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest shutter by the NPF rule [s]</source>
        <translation>Exposición más larga según la regla NPF [s]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Shutter [s]</source>
        <translation>Tiempo de exposición [s]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest star trail [px]</source>
        <translation>Traza de estrella más largo [px]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Hyperfocal distance [m]</source>
        <translation>Distancia hiperfocal [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Focus [m]</source>
        <translation>Enfoque [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Blur of stars at that focus [px]</source>
        <translation>Desenfoque de las estrellas con ese enfoque [px]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sharp from, at that focus [m]</source>
        <translation>Nítido desde, con ese enfoque [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sharp to, at that focus; null: without end [m]</source>
        <translation>Nítido hasta, con ese enfoque; nulo: sin fin [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Nearest focus that keeps stars sharp [m]</source>
        <translation>Enfoque más cercano que mantiene nítidas las estrellas [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sharp from, at the nearest focus that keeps stars sharp [m]</source>
        <translation>Nítido desde, con el enfoque más cercano que mantiene nítidas las estrellas [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Focus once, or twice and blend</source>
        <translation>Enfocar una vez, o dos y fusionar</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance at which the disc is as wide as the subject [m]</source>
        <translation>Distancia a la que el disco es tan ancho como el motivo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance at which the disc is as high as the subject [m]</source>
        <translation>Distancia a la que el disco es tan alto como el motivo [m]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuths reached, from [° true]</source>
        <translation>Acimutes alcanzados, desde [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuths reached, to [° true]</source>
        <translation>Acimutes alcanzados, hasta [° verdaderos]</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Reason</source>
        <translation>Razón</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Milky Way arch (its top)</source>
        <translation>Arco de la Vía Láctea (su cima)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Celestial pole above the horizon</source>
        <translation>Polo celeste sobre el horizonte</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Star or other fixed place (STAR)</source>
        <translation>Estrella u otro punto fijo (STAR)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Place on the galactic plane (GALACTIC_LON)</source>
        <translation>Punto del plano galáctico (GALACTIC_LON)</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>every camera with every subject</source>
        <translation>cada cámara con cada motivo</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>cameras and subjects with the same value in a field</source>
        <translation>cámaras y motivos con el mismo valor en un campo</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>each camera with its closest subject</source>
        <translation>cada cámara con su motivo más cercano</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moon up or down</source>
        <translation>Luna por encima o por debajo del horizonte</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moon down, or lit less than MOON_LIT_MAX</source>
        <translation>Luna bajo el horizonte, o iluminada menos de MOON_LIT_MAX</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>24 x 36 mm, 6000 pixels wide</source>
        <translation>24 x 36 mm, 6000 píxeles de ancho</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>16 x 24 mm (crop 1.5), 6000 pixels wide</source>
        <translation>16 x 24 mm (factor 1,5), 6000 píxeles de ancho</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>13 x 17.3 mm (4/3), 5200 pixels wide</source>
        <translation>13 x 17,3 mm (4/3), 5200 píxeles de ancho</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>33 x 44 mm (medium format), 8300 pixels wide</source>
        <translation>33 x 44 mm (formato medio), 8300 píxeles de ancho</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>the long side level</source>
        <translation>el lado largo horizontal</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>upright</source>
        <translation>vertical</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>210 x 297 mm</source>
        <translation>210 x 297 mm</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>8.5 x 11 in</source>
        <translation>8,5 x 11 in</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>across</source>
        <translation>apaisado</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>at the middle between subject and body</source>
        <translation>al punto medio entre motivo y astro</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>at the subject</source>
        <translation>al motivo</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>at the body</source>
        <translation>al astro</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>dark on white, for paper</source>
        <translation>oscuro sobre blanco, para papel</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>red on black, for reading in the dark</source>
        <translation>rojo sobre negro, para leer a oscuras</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>subject and body</source>
        <translation>motivo y astro</translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>the whole arch of the Milky Way, and the subject</source>
        <translation>todo el arco de la Vía Láctea y el motivo</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>There is no time zone '{zone}'.{hint} Give an IANA name such as Europe/Berlin, or a fixed offset such as UTC-02:00.</source>
        <translation>No existe la zona horaria '{zone}'.{hint} Indique un nombre IANA como Europe/Berlin, o un desfase fijo como UTC-02:00.</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{time} occurs twice in {zone}, where the clocks go back; the first, at {offset}, is taken.</source>
        <translation>{time} ocurre dos veces en {zone}, donde los relojes se atrasan; se toma la primera, con {offset}.</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>The time zone '{zone}' cannot be looked up: this Python holds no time zone data. Install its package tzdata, or give a fixed offset such as UTC-02:00.</source>
        <translation>No se puede consultar la zona horaria '{zone}': este Python no tiene datos de zonas horarias. Instale su paquete tzdata, o indique un desfase fijo como UTC-02:00.</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source> Did you mean {zone}?</source>
        <translation> ¿Quiso decir {zone}?</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{n} of {total} longitudes are not numbers: a place without longitude has no time zone.</source>
        <translation>{n} de {total} longitudes no son números: un lugar sin longitud no tiene zona horaria.</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{n} of {total} moments lie outside the years 1 to 9999: check their unit, seconds since 1970.</source>
        <translation>{n} de {total} momentos están fuera de los años 1 a 9999: compruebe su unidad, segundos desde 1970.</translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{time} does not exist in {zone}: the clocks go forward over it. Choose another time, or give the time with its offset from UTC.</source>
        <translation>{time} no existe en {zone}: los relojes la saltan al adelantarse. Elija otra hora, o indíquela con su desfase respecto a UTC.</translation>
    </message>
    <message>
        <location filename="../plan/exposure.py"/>
        <source>Rays of {km:g} km about latitude {lat:.1f}° are no smooth lines on the elevation model's map. Warp it to a polar map, or give a shorter TERRAIN_RADIUS.</source>
        <translation>Los rayos de {km:g} km en torno a la latitud {lat:.1f}° no son líneas suaves en la proyección del modelo digital de elevaciones. Reproyéctelo a una proyección polar, o indique un TERRAIN_RADIUS más corto.</translation>
    </message>
    <message>
        <location filename="../plan/lattice.py"/>
        <source>{n:.3g} subjects and times would have to be looked at, a STEP of {step:g} min apart, over {most:,}. Give a longer STEP, fewer nights or fewer subjects.</source>
        <translation>Habría que examinar {n:.3g} pares de motivo y momento, separados por un STEP de {step:g} min, más de {most:,}. Indique un STEP más largo, menos noches o menos motivos.</translation>
    </message>
    <message>
        <location filename="../plan/lattice.py"/>
        <source>{n:.3g} subjects and times would have to be looked at, over {most:,}. Give a longer STEP, less time or fewer subjects.</source>
        <translation>Habría que examinar {n:.3g} pares de motivo y momento, más de {most:,}. Indique un STEP más largo, menos tiempo o menos motivos.</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>arch's top</source>
        <translation>cima del arco</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>celestial pole</source>
        <translation>polo celeste</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} does not climb to {least:g}° at any of these sites: it does so only between latitude {south:.1f}° and {north:.1f}°. Lower ALT_MIN.</source>
        <translation>{who} no sube a {least:g}° en ninguno de estos lugares: solo lo hace entre las latitudes {south:.1f}° y {north:.1f}°. Reduzca ALT_MIN.</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the core</source>
        <translation>el núcleo</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} does not climb to {least:g}° at any of these sites: it does so only south of latitude {south:.1f}° or north of {north:.1f}°. Lower ALT_MIN.</source>
        <translation>{who} no sube a {least:g}° en ninguno de estos lugares: solo lo hace al sur de la latitud {south:.1f}° o al norte de {north:.1f}°. Reduzca ALT_MIN.</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the window is told with the night beside this one, in which the best minute lies</source>
        <translation>la ventana se indica con la noche contigua, en la que está el mejor minuto</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>no darkness this night: the Sun stays above {limit:g}°</source>
        <translation>sin oscuridad esta noche: el Sol permanece por encima de {limit:g}°</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} is never {seen}</source>
        <translation>{who}: nunca {seen}</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} stays below {least:g}°</source>
        <translation>{who}: permanece por debajo de {least:g}°</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>Moon {up} all night</source>
        <translation>Luna {up} toda la noche</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the band's tilt is never {tilt} while {who} is {seen}</source>
        <translation>la inclinación de la banda nunca está {tilt} con el astro {seen} ({who})</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the arch's top never stands {apex} while {who} is {seen}</source>
        <translation>la cima del arco nunca está {apex} con el astro {seen} ({who})</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} is {seen} only by day or in twilight</source>
        <translation>{who}: {seen} solo de día o en el crepúsculo</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>Moon {up} while {who} is {seen} in the dark</source>
        <translation>Luna {up} con el astro {seen} en la oscuridad ({who})</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} stays behind the terrain skyline while all else holds</source>
        <translation>{who}: permanece detrás del perfil del terreno mientras se cumple todo lo demás</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{seen} and the band's tilt {tilt}</source>
        <translation>{seen} y la inclinación de la banda {tilt}</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{seen} with the band's tilt {tilt}</source>
        <translation>{seen} con la inclinación de la banda {tilt}</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{seen} with the arch's top {apex}</source>
        <translation>{seen} con la cima del arco {apex}</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>plane at galactic longitude {lon:g}°</source>
        <translation>plano en la longitud galáctica {lon:g}°</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>up</source>
        <translation>sobre el horizonte</translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>up and lit over {lit:g}</source>
        <translation>sobre el horizonte e iluminada más de {lit:g}</translation>
    </message>
    <message>
        <location filename="../plan/nights.py"/>
        <source>The last night, {last}, lies before the first, {first}. Exchange them, or leave one blank.</source>
        <translation>La última noche, {last}, es anterior a la primera, {first}. Intercámbielas, o deje una en blanco.</translation>
    </message>
    <message>
        <location filename="../plan/pairs.py"/>
        <source>The largest distance is {most} m and lets nothing through: give one greater than 0.</source>
        <translation>La distancia mayor es {most} m y no deja pasar nada: indique una mayor que 0.</translation>
    </message>
    <message>
        <location filename="../plan/seasons.py"/>
        <source>'{text}' is no day. Write 2027-03-01, or 03-01 for each year.</source>
        <translation>'{text}' no es un día. Escriba 2027-03-01, o 03-01 para cada año.</translation>
    </message>
    <message>
        <location filename="../plan/seasons.py"/>
        <source>'{first}' and '{last}' are not of one kind: give two dates with a year, or two days without.</source>
        <translation>'{first}' y '{last}' no son de la misma clase: indique dos fechas con año, o dos días sin él.</translation>
    </message>
    <message>
        <location filename="../plan/seasons.py"/>
        <source>'{last}' lies before '{first}'. Exchange them.</source>
        <translation>'{last}' es anterior a '{first}'. Intercámbielos.</translation>
    </message>
    <message>
        <location filename="../plan/sightlines.py"/>
        <source>{n} of {total} subjects have only one of the two bearings between which they may be seen: give both, or leave both blank.</source>
        <translation>{n} de {total} motivos tienen solo uno de los dos rumbos entre los que se pueden ver: indique ambos, o deje ambos en blanco.</translation>
    </message>
    <message>
        <location filename="../plan/sightlines.py"/>
        <source>{n} of {total} {what} have no {name} of 0 or more: it is measured upward. Correct them, or leave them out.</source>
        <translation>{n} de {total} {what} no tienen un {name} de 0 o más: se mide hacia arriba. Corríjalos o exclúyalos.</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the plane at galactic longitude {lon:g}°</source>
        <translation>el plano en la longitud galáctica {lon:g}°</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the arch's top</source>
        <translation>la cima del arco</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the Sun</source>
        <translation>el Sol</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the Moon</source>
        <translation>la Luna</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the celestial pole</source>
        <translation>el polo celeste</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>There is no body '{body}'. Choose from {known}.</source>
        <translation>No existe el astro '{body}'. Elija de {known}.</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>The body 'star' needs STAR: right ascension and declination in degrees (ICRS), such as 279.235,38.784.</source>
        <translation>El astro 'star' necesita STAR: ascensión recta y declinación en grados (ICRS), como 279.235,38.784.</translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>The body 'galactic' needs GALACTIC_LON: a galactic longitude in degrees, 0 at the core.</source>
        <translation>El astro 'galactic' necesita GALACTIC_LON: una longitud galáctica en grados, 0 en el núcleo.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never while the arch's top stands {limits}.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca mientras la cima del arco está {limits}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never {gap} over the subject's top, which stands at {top:.1f}°.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca {gap} respecto a la cima del motivo, que está a {top:.1f}°.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never above the terrain skyline, which is {ground:.1f}° high there.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca por encima del perfil del terreno, que allí tiene {ground:.1f}° de altura.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never with the Sun {limits}.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca con el Sol {limits}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never with the Moon down or lit under {lit:g}.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca con la Luna bajo el horizonte o iluminada menos de {lit:g}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never while the band's tilt at the core is {limits}.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca mientras la inclinación de la banda en el núcleo está {limits}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached: {who} stands between {first:.1f}° and {last:.1f}° through north while {height}.</source>
        <translation>El rumbo {bearing:.1f}° no se alcanza nunca: {who} está entre {first:.1f}° y {last:.1f}° pasando por el norte mientras está {height}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached: {who} stands between {first:.1f}° and {last:.1f}° while {height}.</source>
        <translation>El rumbo {bearing:.1f}° no se alcanza nunca: {who} está entre {first:.1f}° y {last:.1f}° mientras está {height}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} is closest to the bearing just outside the nights asked: ask for a night more at either end.</source>
        <translation>{who} está más cerca del rumbo justo fuera de las noches pedidas: pida una noche más en cada extremo.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} is never seen {height} in these nights.</source>
        <translation>{who} no se ve nunca {height} en estas noches.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never with the Moon down.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca con la Luna bajo el horizonte.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never lit {limits}.</source>
        <translation>{who} pasa por el rumbo {bearing:.1f}°, pero nunca con una parte iluminada de {limits}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} stays in the zenith, over no bearing.</source>
        <translation>{who} permanece en el cenit, sobre ningún rumbo.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached by {who} {height}.</source>
        <translation>El rumbo {bearing:.1f}° no se alcanza nunca: {who} no llega a él {height}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached: {who} stands at {first:.1f}° while {height}.</source>
        <translation>El rumbo {bearing:.1f}° no se alcanza nunca: {who} está en {first:.1f}° mientras está {height}.</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>at least {least:g}</source>
        <translation>al menos {least:g}</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>at most {most:g}</source>
        <translation>como mucho {most:g}</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>at least {least:g} and at most {most:g}</source>
        <translation>al menos {least:g} y como mucho {most:g}</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>below {most:g}°</source>
        <translation>por debajo de {most:g}°</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>above {least:g}°</source>
        <translation>por encima de {least:g}°</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>between {least:g}° and {most:g}°</source>
        <translation>entre {least:g}° y {most:g}°</translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{apex} with the core {limits}</source>
        <translation>{apex} con el núcleo {limits}</translation>
    </message>
    <message>
        <location filename="../plan/zones.py"/>
        <source>{n} of {total} places have no longitude, or no latitude from -90 to 90: a place without both has no time zone.</source>
        <translation>{n} de {total} lugares no tienen longitud, o no tienen una latitud de -90 a 90: un lugar sin ambas no tiene zona horaria.</translation>
    </message>
    <message>
        <location filename="../sky/bodies.py"/>
        <source>There is no place at right ascension {ra}°, declination {dec}°: declination runs from -90 to 90.</source>
        <translation>No existe ningún punto en la ascensión recta {ra}°, declinación {dec}°: la declinación va de -90 a 90.</translation>
    </message>
    <message>
        <location filename="../sky/ephemeris.py"/>
        <source>The ephemeris {path} is missing. Stage the plugin with package.py, or install the release again.</source>
        <translation>Falta el archivo de efemérides {path}. Prepare el complemento con package.py, o instale de nuevo la versión publicada.</translation>
    </message>
    <message>
        <location filename="../sky/ephemeris.py"/>
        <source>The dates asked reach beyond the ephemeris, which can be used from {first} to {last}. Choose dates between.</source>
        <translation>Las fechas pedidas salen de las efemérides, que se pueden usar de {first} a {last}. Elija fechas intermedias.</translation>
    </message>
    <message>
        <location filename="../styles/alignments.qml"/>
        <source>Star or other fixed place</source>
        <translation>Estrella u otro punto fijo</translation>
    </message>
    <message>
        <location filename="../styles/alignments.qml"/>
        <source>Place on the galactic plane</source>
        <translation>Punto del plano galáctico</translation>
    </message>
    <message>
        <location filename="../styles/night_windows.qml"/>
        <source>with a window</source>
        <translation>con ventana</translation>
    </message>
    <message>
        <location filename="../styles/night_windows.qml"/>
        <source>without</source>
        <translation>sin ventana</translation>
    </message>
    <message>
        <location filename="../styles/shadow_track.qml"/>
        <source>standpoint: the first place outward</source>
        <translation>punto de toma: el primer lugar hacia fuera</translation>
    </message>
    <message>
        <location filename="../styles/shadow_track.qml"/>
        <source>a later place, farther out</source>
        <translation>un lugar posterior, más alejado</translation>
    </message>
    <message>
        <location filename="../styles/shadow_track.qml"/>
        <source>not allowed: outside the area, or closed</source>
        <translation>no permitido: fuera de la zona, o cerrado</translation>
    </message>
    <message>
        <location filename="../styles/sightlines.qml"/>
        <source>in sight or not: too close to tell</source>
        <translation>a la vista o no: demasiado justo para saberlo</translation>
    </message>
    <message>
        <location filename="../styles/sightlines.qml"/>
        <source>terrain not tested</source>
        <translation>terreno no comprobado</translation>
    </message>
    <message>
        <location filename="../styles/standpoints.qml"/>
        <source>top in sight</source>
        <translation>cima a la vista</translation>
    </message>
    <message>
        <location filename="../styles/standpoints.qml"/>
        <source>top hidden by terrain</source>
        <translation>cima oculta por el terreno</translation>
    </message>
    <message>
        <location filename="../styles/stretches.qml"/>
        <source>within tolerance</source>
        <translation>dentro de la tolerancia</translation>
    </message>
    <message>
        <location filename="../styles/track_lines.qml"/>
        <source>the way of the standpoint</source>
        <translation>el camino del punto de toma</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Season of a park</source>
        <translation>Temporada de un parque</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Elevation model, a raster file; blank: ground is not looked at</source>
        <translation>Modelo digital de elevaciones (MDE), un archivo ráster; en blanco: no se tiene en cuenta el terreno</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Draw a chart of each viewpoint</source>
        <translation>Dibujar un gráfico de cada mirador</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Last night; blank: 365 nights in all</source>
        <translation>Última noche; en blanco: 365 noches en total</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Charts</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Sky Alidade</source>
        <translation>Sky Alidade</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>The first question for a whole park: when. Each night of each viewpoint has its window, in which it is dark, the Moon is away and the body stands where it is wanted, or the reason why there is none; each month has its usable nights, its hours and its best night; the new-moon weekends are marked. Charts, where they are wanted, show the year of each viewpoint in one picture.</source>
        <translation>La primera pregunta para todo un parque: cuándo. Cada noche de cada mirador tiene su ventana, en la que está oscuro, la Luna está lejos y el astro está donde se quiere, o la razón de que no haya ninguna; cada mes tiene sus noches útiles, sus horas y su mejor noche; se marcan los fines de semana de Luna nueva. Los gráficos, si se piden, muestran el año de cada mirador en una imagen.</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>core: Milky Way core; arch: Milky Way arch (its top); sun: Sun; moon: Moon; pole: Celestial pole above the horizon; star: Star or other fixed place (STAR); galactic: Place on the galactic plane (GALACTIC_LON)</source>
        <translation>core: Núcleo de la Vía Láctea; arch: Arco de la Vía Láctea (su cima); sun: Sol; moon: Luna; pole: Polo celeste sobre el horizonte; star: Estrella u otro punto fijo (STAR); galactic: Punto del plano galáctico (GALACTIC_LON)</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>The folder of the pictures, with the page season_chart.html.</source>
        <translation>La carpeta de las imágenes, con la página season_chart.html.</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>A picture a viewpoint, half a second each, and a page that gathers them; for no more viewpoints than MAX_PICTURES.</source>
        <translation>Una imagen por mirador, medio segundo cada una, y una página que las reúne; para no más miradores que MAX_PICTURES.</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>A point for each viewpoint and month: usable nights, hours, best night, new-moon weekends.</source>
        <translation>Un punto por mirador y mes: noches útiles, horas, mejor noche, fines de semana de Luna nueva.</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>any: Moon up or down; down: Moon down; down_or_thin: Moon down, or lit less than MOON_LIT_MAX</source>
        <translation>any: Luna por encima o por debajo del horizonte; down: Luna bajo el horizonte; down_or_thin: Luna bajo el horizonte, o iluminada menos de MOON_LIT_MAX</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>A point for each viewpoint and night, with its window or the reason why there is none.</source>
        <translation>Un punto por mirador y noche, con su ventana o la razón de que no haya ninguna.</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>For every viewpoint of a layer: the dark windows of each night, the months with their best nights, and a chart of the year</source>
        <translation>Para cada mirador de una capa: las ventanas oscuras de cada noche, los meses con sus mejores noches y un gráfico del año</translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>print: dark on white, for paper; night: red on black, for reading in the dark</source>
        <translation>print: oscuro sobre blanco, para papel; night: rojo sobre negro, para leer a oscuras</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Permit package</source>
        <translation>Paquete para un permiso</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Last night; blank: 30 nights in all</source>
        <translation>Última noche; en blanco: 30 noches en total</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Field with the height of a subject</source>
        <translation>Campo con la altura de un motivo</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>When the body is to stand over the subject</source>
        <translation>Cuándo debe estar el astro sobre el motivo</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Finds the places on the paths from which each subject lies under the body at the time given, leaves out closed ground, looks up every night of the season on which the body stands over the subject from there, and makes a sheet for each place: map, coordinates, bearings, timetable, closures.

The sheets are the applicant's map. They are not a permit: access, closures, night hours, lights, group size and commercial work are decided by the land manager and local law. Walking in the dark is dangerous, and the results know nothing of footing, tide or weather.</source>
        <translation>Encuentra los lugares de los senderos desde los que cada motivo queda bajo el astro a la hora indicada, excluye el terreno cerrado, busca todas las noches de la temporada en que el astro está sobre el motivo desde allí y hace una hoja por lugar: plano, coordenadas, rumbos, horario, cierres.

Las hojas son el plano del solicitante. No son un permiso: los accesos, los cierres, los horarios nocturnos, las luces, el tamaño del grupo y el trabajo comercial los deciden el gestor del terreno y la normativa local. Caminar a oscuras es peligroso, y los resultados no saben nada del suelo que se pisa, de la marea ni de la meteorología.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>A line for each stretch of time, with times for the Temporal Controller.</source>
        <translation>Una línea por tramo de tiempo, con horas para el controlador temporal.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Tripod and camera: from the ground to the middle of the lens. In metres, also from a field; the dialog takes other units.</source>
        <translation>Trípode y cámara: del suelo al centro del objetivo. En metros, también desde un campo; el diálogo admite otras unidades.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Places farther off, along the Earth's surface, are left out. In metres; the dialog takes other units.</source>
        <translation>Los lugares más lejanos, por la superficie de la Tierra, se excluyen. En metros; el diálogo admite otras unidades.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>portrait: upright; landscape: across</source>
        <translation>portrait: vertical; landscape: apaisado</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>a4: 210 x 297 mm; letter: 8.5 x 11 in</source>
        <translation>a4: 210 x 297 mm; letter: 8,5 x 11 in</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>The sheets, a PDF.</source>
        <translation>Las hojas, un PDF.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>From paths and subjects to what a land manager reads: where to stand, on which nights, and a sheet for each place</source>
        <translation>De senderos y motivos a lo que lee un gestor del terreno: dónde situarse, en qué noches, y una hoja por lugar</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>A line from each place to its subject, with bearing, distance and altitude.</source>
        <translation>Una línea de cada lugar a su motivo, con rumbo, distancia y altura.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>A point for each place to stand, with its bearing, distance and line of sight.</source>
        <translation>Un punto por cada sitio donde situarse, con su rumbo, distancia y línea de visión.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>From its foot upward, so that what stands above it can be told. In metres, also from a field; the dialog takes other units.</source>
        <translation>Desde su pie hacia arriba, para poder decir qué queda por encima. En metros, también desde un campo; el diálogo admite otras unidades.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>In metres, where subjects differ: taken in place of the one height.</source>
        <translation>En metros, donde los motivos difieren: se toma en lugar de la altura única.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>One moment, such as 2027-06-06T23:30:00: the clock on the wall at the subject, or with an offset or Z. It decides where to stand; on other nights the body comes there at another minute.</source>
        <translation>Un momento, como 2027-06-06T23:30:00: la hora oficial en el motivo, o con un desfase o Z. Decide dónde situarse; otras noches el astro llega allí en otro minuto.</translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>The ground from which the subject lies in the direction wanted.</source>
        <translation>El terreno desde el que el motivo queda en la dirección buscada.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Plan one subject</source>
        <translation>Planificar un motivo</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Where the camera stands</source>
        <translation>Dónde está la cámara</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Name of the camera's place</source>
        <translation>Nombre del lugar de la cámara</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Where the subject stands</source>
        <translation>Dónde está el motivo</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Name of the subject</source>
        <translation>Nombre del motivo</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Unmet</source>
        <translation>Sin alineación</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Two clicks on the map, and no layer to build first. The sightline tells bearing, distance and altitude; the alignments tell every stretch of time in which the Milky Way, the Moon, the Sun or a star stands over the subject while the sky is dark.

Without an elevation model camera and subject stand on the same level ground and no hill is known.</source>
        <translation>Dos clics en el mapa, sin crear antes ninguna capa. La línea de visión dice rumbo, distancia y altura; las alineaciones, cada tramo de tiempo en que la Vía Láctea, la Luna, el Sol o una estrella está sobre el motivo mientras el cielo está oscuro.

Sin modelo digital de elevaciones, cámara y motivo están en el mismo terreno llano y no se conoce ninguna colina.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Click on the map, or write 'longitude,latitude [EPSG:4326]'.</source>
        <translation>Haga clic en el mapa, o escriba 'longitud,latitud [EPSG:4326]'.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>As it is to stand in the tables and reports.</source>
        <translation>Tal como debe figurar en las tablas y los informes.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Click where the camera stands and where the subject is: the sightline between them, and when the sky stands over it</source>
        <translation>Haga clic donde está la cámara y donde está el motivo: la línea de visión entre ambos, y cuándo queda el cielo sobre el motivo</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>The line from camera to subject, with bearing, distance and altitude.</source>
        <translation>La línea de cámara a motivo, con rumbo, distancia y altura.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>The middle of its foot, as far as you know it.</source>
        <translation>El centro de su pie, hasta donde lo conozca.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>For its apparent width in degrees and in the picture. In metres, also from a field; the dialog takes other units.</source>
        <translation>Para su anchura aparente en grados y en la imagen. En metros, también desde un campo; el diálogo admite otras unidades.</translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>The bodies that never stand over the subject, and why.</source>
        <translation>Los astros que nunca están sobre el motivo, y por qué.</translation>
    </message>
</context>
</TS>
