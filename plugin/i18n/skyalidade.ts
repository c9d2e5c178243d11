<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" sourcelanguage="en">
<context>
    <name>skyalidade</name>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>In metres, also from a field; the dialog takes other units.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>In metres; the dialog takes other units.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Lines of sight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Where to stand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Nights and alignments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Sky</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/algorithm.py"/>
        <source>Several steps at once</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{few} and {n:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>with no geometry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>Closed ground: {n:,} polygons, {seasonal:,} of them in seasons.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{label}: skipped {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{label}: {n:,} polygons were not valid and have been repaired: features {ids}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{label}: the season of {n:,} polygons cannot be read; they are taken as always closed: {features}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{name}: feature {fid} is no polygon. Remove it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{name}: the polygon of feature {fid} crosses itself and cannot be repaired. Draw it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/areas.py"/>
        <source>{name}: the polygon of feature {fid} has no place in the CRS of the paths. Choose another CRS for the paths.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>Magnetic bearings are null outside {first:g} to {last:g}, the years for which {model} holds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>Near a magnetic pole a compass needle hardly turns: of {total:,} points {found}. Steer by true bearings there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>{n:,} where it may err by degrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/bearings.py"/>
        <source>{n:,} where it is of no use</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter (ISO 12312-2 for the eye).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>Walking in the dark: cliffs, tides, water levels, weather, animals. Arrive before dark, not alone, and tell someone. The result knows nothing of footing, tide or weather.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>A planning aid, not a survey and not a permit: access, closures and night hours are decided by the land manager and local law. Only the closures of the layers given are known here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/cautions.py"/>
        <source>The terrain is that of '{dem}', in cells of {size} m. Elevation data have errors, and no trees or buildings: what is clear by them may be hidden. Look from the place by day.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/clashes.py"/>
        <source>{name}: the name {path} holds '|', behind which QGIS reads the name of a layer. Leave it out; a table in a GeoPackage is written as ogr:dbname='FILE.gpkg' table="NAME" (geom).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/clashes.py"/>
        <source>{name}: {path} is the layer of {source}, which would be lost. Choose another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/clashes.py"/>
        <source>{name} and {other} are both to be written to {path}. Give each a name of its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>always</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>{first} to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>each year {first} to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>until {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>from {first}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/closed_ground.py"/>
        <source>closure {fid}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>{provider}: {n:,} rows, whole.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>the connection was lost for a while.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>{name}: writing to the table {table} stopped after {n:,} of {total:,} rows: {error} The table is not whole.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>All rows are kept in the file {path}: load them into the database, or run again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The database {database} is named without a table. Name one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The schema {schema} does not exist. Make it, or choose another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>No table may be made in the schema {schema} by this user. Choose another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The database of the table {table} has no PostGIS. Run CREATE EXTENSION postgis in it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>it could not be made.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>the connection was lost before they could be counted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>The database of the table {table} does not answer. Look whether it runs and whether the connection is right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>cancelled.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/databases.py"/>
        <source>All rows are in the table {table}, but it could not be marked as whole.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>there is no sightline that can be used</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>whose bearing_deg, dist_m or top_alt_deg is blank</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>whose dist_m, altitudes or width_deg no subject has</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>with no place on the Earth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES has no base_alt_deg: each subject is taken as its top alone, and whether its foot fits is not known.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES has no width_deg: each subject is taken as having no width.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES: '{layer}' has no field {fields}. Choose a result of sightlines or alignments.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES: {n:,} lines from {total:,} features.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/drawn.py"/>
        <source>SIGHTLINES: skipped {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>Field plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>Subject: {aim}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>{body}: {where}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>and {n:,} more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_files.py"/>
        <source>{body} over {subject}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>{blank} knows of this and hears from us by {blank} (the plan ends at {date} {clock}); if not, alert: {blank}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>From {parking} along {walk}: {dist}, {time} at {speed:g} km/h. Slopes and rests are not counted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Magnetic bearings are not known: the magnetic model holds from 2025 to 2030.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>east</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>west</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Daylight, twilight, darkness; the alignments; broken lines: arrive, leave. Bar beneath: the Moon is up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Azimuth, true</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>magnetic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Altitude</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Bearing, true</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Distance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Altitude of its top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Sightlines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Nearest parking: {parking}, {dist} off as the crow flies (bearing {bearing}). No walk is known: nor is its time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Black on white</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Nothing to plan</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Magnetic declination {deg} {side}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Bearings of the subjects, true north up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>its farther end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>What</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>for {s:.0f} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Walk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>No way from a car is known: add the time that you need for it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>The night from left to right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>in the dark: lamp, known path</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Night of {night}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_page.py"/>
        <source>Times: {zone}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Walking in the dark: cliffs, tides, water levels, weather, animals. Not alone; tell someone. This plan knows nothing of footing, tide or weather.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>A planning aid, not a survey and not a permit: access, closures, night hours, artificial light and group size are decided by the land manager and local law.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{lat}, {lon}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>S</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>E</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>W</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{deg} above its top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{deg} below its top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sun: never look at it, nor point an optical viewfinder or a long lens at it, without a certified solar filter (ISO 12312-2 for the eye).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Terrain is that of an elevation model, with its errors, without trees or buildings. Look from the place by day.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{m:,.0f} m</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{km:,.0f} km</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{h} h {m:02} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{m} min</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>bearing {true} true, {magnetic} magnetic; distance {dist}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>azimuth {true} true, {magnetic} magnetic, altitude {alt}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{date} {time} ({zone})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{begin} to {end}, closest {moment}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moon down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{camera} lies in closed ground, or outside the area allowed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{lit:.0f} % lit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moon up at {deg}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>its light {side}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Milky Way core</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Top of the Milky Way's arch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sun</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Celestial pole</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Star</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Place on the Milky Way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Leave the car</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Be at the camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sunset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Civil twilight ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Nautical twilight ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Astronomical twilight ends: full darkness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moonset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Moonrise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Astronomical twilight begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Nautical twilight begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Civil twilight begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Sunrise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{body} comes over {subject}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{body} closest to the bearing of {subject}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>{body} leaves {subject}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Leave</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Back at the car</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>daylight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>civil twilight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>nautical twilight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>astronomical twilight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>full darkness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>from ahead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>from the side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>from behind the camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>The terrain hides the top of {subject} from {camera}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/field_words.py"/>
        <source>Whether the terrain hides the top of {subject} from {camera} is uncertain.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/files.py"/>
        <source>{path} could not be written: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/files.py"/>
        <source>The folder {folder} cannot be made: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/keeping.py"/>
        <source>{field} is {new}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Focal length [mm]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Held: landscape or portrait</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>F-number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Shutter [s]; blank: the longest by the NPF rule</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Distance focused on; blank: that of the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Camera kept level: turned to the aim, but not tilted up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Part of the frame to keep free on each side [%]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Overlap of a panorama's frames [%]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Sensor: full_frame, crop_1_5, four_thirds or medium</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Long side of the sensor [mm]; blank: that of PRESET</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Short side of the sensor [mm]; blank: that of PRESET</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Pixels along the long side; blank: those of PRESET</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Circle of confusion [mm]; blank: 0.030 on 24 x 36 mm, less on smaller sensors</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Stars blurred this much are still sharp [px]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>Aimed: between, subject or body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>A panorama is to hold: pair or arch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>SENSOR_H_MM ({height:g}) is more than SENSOR_W_MM ({width:g}), which is the long side. Exchange them; ORIENTATION=portrait holds the camera upright.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>FOCAL_MM is {focal:g}: the frame would be {narrow:.2g}° wide or high, under {least:g}°. Give a shorter one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>FOCUS_M is {focus:g} m, within the focal length of {focal:g} mm. Give a distance in metres, such as 20.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lens.py"/>
        <source>{name} is {value:g}. Give a number greater than 0, such as {example:g}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>with an empty geometry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>that are no lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>of no length</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/lines.py"/>
        <source>{label}: {n:,} lines from {total:,} features.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>Symbols, labels, aliases and times</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>The style could not be saved beside the rows of {layer}: {error} The rows are whole.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>plane</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>core</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>arch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>pole</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>star</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>does not fit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>, up to </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>, would at </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>° up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source> nights, </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source> to </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/looks.py"/>
        <source>skyline from </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/minutes_file.py"/>
        <source>{hours:g} h</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/minutes_file.py"/>
        <source>This may write up to {need:,} MB, but {folder} has {free:,} MB left. Choose a smaller AREA, or another folder.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>{n:.3g} times lie a STEP of {step:g} min apart from the first to the last, over {most:,}. Give a longer STEP.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>{last} is before {first}. Exchange them, or mind their offsets from UTC.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>'{text}' is no time. Write it as 2027-06-06 23:30:00, with Z or an offset such as -06:00 if it is not the local clock.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/moments.py"/>
        <source>'{text}' is no date. Write it as 2027-06-06.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/packages.py"/>
        <source>{provider}: {n:,} rows, then cancelled, not whole.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/packages.py"/>
        <source>{provider}: being written, not whole.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>there is no camera that can be used</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>there is no subject that can be used</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>{n:,} pairs of camera and subject.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>Heights: {sources}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>Left out: {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>with the camera on its subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>farther apart than MAX_DISTANCE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>cameras whose PAIR_FIELD is blank</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>subjects whose PAIR_FIELD is blank</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>cameras whose PAIR_FIELD no subject has</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>subjects whose PAIR_FIELD no camera has</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>outside FACE_FROM to FACE_TO</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>cameras with no subject within MAX_DISTANCE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>pairs from the DEM</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>pairs from the Z of both points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/pairing.py"/>
        <source>pairs taken as level, as not both points have a Z</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS; each point of a multipoint counts by itself. The standpoints that 'standpoints' finds will do.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS: the foot of a rock, a tower, a tree. Each point of a multipoint counts by itself.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS; each point of a multipoint counts by itself.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Lines in any CRS, straight between their vertices in that CRS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Lines that 'sightlines' made, with its fields.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points that 'standpoints' made, with its fields.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points in any CRS. The one that lies on the walk is taken.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a camera. Blank: 'camera' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a subject. Blank: 'subject' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a site. Blank: 'site' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a path. Blank: 'path' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a parking place. Blank: 'parking' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What results call a walk. Blank: 'walk' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Tripod and camera: from the ground to the middle of the lens.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>From its foot upward, so that what stands above it can be told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>More than 0 for what does not stand on the ground, such as a window.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For its apparent width in degrees and in the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For a subject worth a picture from one side only. Clockwise from true north; a field or expression gives degrees.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Clockwise from the bearing above: 300 to 60 runs through north. A field or expression gives degrees.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A camera looks at the subjects that hold the same value in their field.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It holds the same values as the cameras' field.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Pairs farther apart, along the Earth's surface, are left out and counted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Nearer, the subject may not fit the picture, or the bearing changes with every step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>They are carried over to every row of the result; a name that is taken gets a number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Blank: anywhere. Polygons in any CRS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons in any CRS, with the dates of the closure in two fields; without dates they are closed all year.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What the sheet calls a closed area.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A date, or MM-DD for each year; that day is still closed. It may run over New Year.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>By map or receiver. It tells how far a bearing may be off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Places farther off, along the Earth's surface, are left out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Looked for no farther out than this: near the horizon a shadow has no end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For the body 'star'. Vega, for one: 279.23,38.78.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For the body 'galactic'. 0 is the core, 80 lies in Cygnus.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A night has the date of its evening: what happens after midnight belongs to the day before.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Included.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>With an offset or Z that instant; without, the clock of TIME_ZONE, or of each site where that is blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As the first time. Included, if a step falls on it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As the time above. Included, if a step falls on it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>From one time to the next, in minutes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>From one time to the next, in minutes: through each night, or from the time above to the end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Above the level horizon, refraction included. For the arch it is the core's altitude. Blank: no limit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The body's centre, refraction included. Less than 0: behind or below the subject. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The body's centre, refraction included. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The angle between band and horizon at the core: 90 is the upright column. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The angle between band and horizon at the core: little is the low, flat arch. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The highest point of the galactic plane, without refraction. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Without the core the arch is not the bright part of the band.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>For 'down_or_thin'. 0 is new Moon, 0.5 a half, 1 full.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The Moon over a subject at dusk wants the Sun between -8° and 0°. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>0 is new Moon, 0.5 a half, 1 full. Blank: no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Cold air bends light more: by about 4 % for 10 °C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>1 unless the file holds something else first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Ground farther off is not looked at. Far mountains want more, and time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>0.13 on a usual day; 0: light runs straight; over cold water it may be more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Points with a number of people. Their glow toward the body is told by a rule of thumb (Walker 1977).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How many people live there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>So that the town that glows most can be named. Blank: 'town' and the number of the feature.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As engraved on the lens, not an equivalent.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>landscape: the long side level; portrait: upright.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>However the camera is held.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>However the camera is held. Trails and blur are counted in these pixels.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>On: verticals stay upright, and the horizon lies in the middle of the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What comes nearer to the edge does not fit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>What neighbouring frames share of their width and height.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>As it is set: 2.8 for f/2.8. It decides on depth of field and on the NPF rule.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How long the stars are exposed, to know their trails.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>To know what is sharp before and behind it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>The blur on the sensor that still counts as sharp in the foreground.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How far a focus nearer than the stars may blur them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A mark every ten minutes, the clock every half hour. 0: not drawn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>print: dark on white, for paper; night: red on black, for reading in the dark.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>So that the place is known before it is dark. Where the Sun does not set, before the first alignment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Then the way back begins.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>On the level, with the camera on one's back. Slopes are not known: choose less where it is steep.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons on which people will stand; they are checked against closed ground.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Drawn only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It stands on every sheet, before the name of the site.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Who asks for the permit: a person or a company.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>How many, where they stand, and their number plates if asked for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Telephone or address at which the applicant is reached before and on the night.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A guard against a run that fills a folder. Nothing is drawn if it would be more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>One page of A4 or Letter for each night and place; black on white on paper, dark red on black on a screen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Version 1.1: cameras, subjects, parking and the walk, for a phone or a receiver.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>iCalendar, an event for each alignment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It is made where it is missing. Files of an earlier run with the same names are written over.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>It is made where it is missing. A picture for each sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A line for each pair, along the Earth's surface.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A sightline for each stretch of time, with its times, angles and light; ready for the Temporal Controller.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each pair and body without a result, with the reason.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each site and night, with its longest window or the reason why there is none.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each window, where the Moon or the ground parts a night.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each site and month: usable nights, hours, the best night.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each site, body and time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Tripod and camera: from the ground of each cell to the middle of the lens.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A GeoTIFF in the cells of the elevation model, in minutes, with a legend in hours.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each place to stand; the CAMERAS of every other algorithm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Lines: the parts of the paths from which the direction is within the tolerance.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons: all ground from which the direction is within the tolerance, path or no path.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each subject, time and crossing of the ground.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>They join the first crossings of times that follow each other.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point on the skyline for each site and azimuth.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A polygon around each site, through those points.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>Polygons: the ground between the sides of the frame, with the numbers of the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A point for each frame of a panorama: where to turn the tripod's head.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameter_help.py"/>
        <source>A sheet for each value of SHEET_BY, and more where a table does not fit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Body of the sky</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Body of the sky, in place of BEARING</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: -18°, full darkness, for all bodies but Sun and Moon. -12° lets the last of twilight in.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: 10° for the core and a place on the plane, 0° for the rest. For the arch it is the core's.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: looked up from the place, offline; on the open sea the nautical zone of the longitude, such as UTC-02:00.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>; blank: ground is not looked at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Look for the terrain skyline as far as</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Off: the skyline is told in ground_deg, but is no condition.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Cameras: the points to photograph from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Subjects: the points to photograph</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Height of the lens above the ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the name of a camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the name of a subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Height of the subject's top above its foot</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Longest sightline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Area in which one may stand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Closed ground, never stood on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>For the arch: the core at least this high [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Sun at most this high, without refraction [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Body at least this high above the level horizon [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Time zone, such as Europe/Lisbon; blank: the zone of each site</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Terrestrial refraction: how much of the Earth's curvature the air undoes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Heights in the unit that the file tells, else in metres; in any CRS. Only the part that is needed is read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Within a cell or two of the tripod an elevation model knows nothing of what stands in the way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>A line of sight that clears the terrain, or is blocked, by less than this is uncertain.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>The body must stand above the terrain skyline (with an elevation model)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>A guard against a run that fills the disk.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Refuse to draw more pictures than</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Height of the subject's foot, or of a window's sill, above the ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Width of the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Subject is usable from this bearing, camera to subject, clockwise ... [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>... to this bearing [°]; both blank: from all sides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Pair cameras and subjects: all, by_field or closest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field of the cameras that pairs them (by_field)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field of the subjects that pairs them; blank: of the same name (by_field)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>A date, or MM-DD for each year. Closed on the date of the evening or of the moment counts as closed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the last day of a closure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>On: kept with the field allowed false. Off: dropped, and counted in the log.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Bodies of the sky, one or several</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Place of the star: right ascension and declination, ICRS, as 'RA,Dec' [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Galactic longitude of the place on the Milky Way's plane [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Moon: any, down or down_or_thin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>The Moon is thin while less than this part is lit, 0 to 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Milky Way tilted at least this much, 0 flat to 90 upright [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Milky Way tilted at most this much [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Top of the Milky Way's arch at least this high [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Blank: 60° for the body arch, since higher its direction swings; no limit for other bodies.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Refraction lifts what is seen, 0.5° at the horizon.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Air temperature at the site [°C]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Band of the elevation model that holds the heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Pass over terrain nearer to the camera than this; blank: two cells of the elevation model</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Heights of the elevation model are good to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Refuse to write more rows than</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Field with the first day of a closure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Keep what is not allowed, marked as such</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Top of the Milky Way's arch at most this high [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Air pressure at the site [hPa]; blank: standard air at its height; 0: no refraction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/parameters.py"/>
        <source>Elevation model, a raster file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>with no time in t_utc (standpoints in a BEARING belong to no night)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>whose t_utc lies outside the years of the ephemeris</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>whose bearing_deg or dist_m is blank</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>whose t_start, t_utc and t_end are not in that order</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: there is no layer that can be read. Choose a result of alignments, or the POINTS of standpoints.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: '{layer}' has no field {fields}. Choose a result of alignments, or the POINTS of standpoints.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: {n:,} rows from {total:,} features.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: '{layer}' holds {found}. Choose the lines of alignments, or the POINTS of standpoints.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: skipped {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/planned.py"/>
        <source>ALIGNMENTS: '{layer}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>DEM '{name}': heights in {unit}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>DEM: the middle of '{name}' is no place on the Earth. Check the layer's CRS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>DEM: a part of '{name}' is no place on the Earth. Choose an AREA within its map.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>metres, as no known unit is told</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/plots.py"/>
        <source>AREA does not meet the DEM '{name}'. Choose an extent on it, or leave AREA blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>that hold no point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>{label}: {n:,} points from {total:,} features.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>{label}: {name} is blank in {n:,} features: its default is taken.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>{label}: {n:,} points have a Z that no ground has, such as -9999 or more than {high:,} m: it counts as none.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>whose {name} is no finite number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/points.py"/>
        <source>whose {name} is less than {low:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: there is no raster that can be read. Choose an elevation model, or leave it blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' is no file but comes from '{provider}'. Export it to a GeoTIFF first, and choose that.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>{name}: the CRS of '{layer}' ({crs}) is one of another body than the Earth. Choose another layer, or set its CRS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM_BAND is {band}, but the bands of '{name}' are numbered 1 to {last}. Choose one of them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: band {band} of '{name}' holds colours, not heights. Choose another DEM_BAND, or another raster.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM '{name}': {n:,} heights that no ground has, such as -9999, are taken as not known.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{file}' cannot be opened. Is it still there?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' has no georeference, or one by control points alone. Warp it to a map first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/raster.py"/>
        <source>DEM: '{name}' cannot be read at column {col}, row {row}: the file is damaged or cut short. Get it anew.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/reasons.py"/>
        <source>{n:,} of {total:,} pairs and bodies without an alignment, such as {camera} to {subject}: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: {layer} has no field '{field}'. Choose one of: {fields}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>MAX_DISTANCE is 0, which no sightline is shorter than. Give the longest one in metres, such as 50000.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>PAIRING is by_field, but no field is named. Choose PAIR_FIELD, a field of the cameras.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>DEM is blank. Choose an elevation model: a raster of heights.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>TERRAIN_RADIUS is {radius:g} m: no ground lies between SKIP_NEAR ({near:g} m) and it. Give more, such as 40000.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>Only {name} is given. Give both FACE_FROM and FACE_TO, or leave both blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} holds galactic, but GALACTIC_LON is blank. Give the galactic longitude in degrees, such as GALACTIC_LON=80.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{last_name} ({last}) is before {first_name} ({first}). Exchange them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>LAST_NIGHT ({last}) is before FIRST_NIGHT ({first}). Exchange them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>LAST_NIGHT ({last}) has passed, and FIRST_NIGHT is blank, which means today. Give FIRST_NIGHT too.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} ({shown}) lies before the ephemeris (begins {first}). Choose a later date.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{output}: {path} is no GeoTIFF. Give it a name that ends in .tif.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{output}: the elevation model is read from {path}, which would be lost. Choose another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: there is no layer that can be read. Choose a layer of {kind} for the {label}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} is '{value}', which is no finite number. Give one, such as {example:g}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>at least {low:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{value}' is not known. Choose from: {ids}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{low_name} ({low:g}) is above {high_name} ({high:g}), so nothing can lie between them. Exchange them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>STAR is '{text}'. Write right ascension (0 to 360) and declination (-90 to 90) in degrees, such as 279.23,38.78.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} holds star ({shown}), but STAR is blank. Give its place, such as STAR=279.23,38.78.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} ({shown}) lies after the ephemeris (ends {last}). Choose an earlier date.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{layer}' holds {found}, not {kind}. Choose a layer of {kind} for the {label}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} is {value:g} m, but it is measured upward from the ground. Give 0 or more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>at most {high:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>from {low:g} to {high:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: the expression {text} cannot be read: {error}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{value}' are several. Choose one of: {ids}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>TIME_ZONE: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>SUBJECTS has no field '{field}'. Choose PAIR_FIELD_SUBJECT, the field that matches PAIR_FIELD.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: the table {table} is the layer of {layer}, which would be lost. Give another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name}: '{layer}' has no CRS, so nobody knows where it lies. Set the layer's CRS first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>{name} is {value:g}. Give a number {bounds}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>points</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/refusals.py"/>
        <source>polygons</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>outside it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>on ground of no known height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>DEM '{name}': {mb:,.0f} MB of it in memory; heights in {unit}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>What is wanted of the DEM '{name}' takes {need:,.0f} MB of memory, more than half of the {free:,.0f} MB free. Take fewer points, a shorter TERRAIN_RADIUS or MAX_DISTANCE, or a DEM of larger cells.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>{label}: the DEM tells nothing of {n:,} of {total:,} points: {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>Skylines: {n:,} of {total:,} rays find their highest ground at TERRAIN_RADIUS ({radius:,.0f} m). Raise it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/relief.py"/>
        <source>Skylines: {n:,} of {total:,} rays end with the DEM, or where it has a gap, before TERRAIN_RADIUS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/scene.py"/>
        <source>there is no path that can be used</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_background.py"/>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_flow.py"/>
        <source>(continued)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_ground.py"/>
        <source>{name}: feature {fid} is of another kind. Remove it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Refuse to make more sheets than</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Sightlines: the result of sightlines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>They fill the timetable. Select the few that are meant, and run on the selected features only.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Standpoints: the POINTS of standpoints</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Zones: the ZONES of standpoints, or any ground on which people will stand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Paths</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Drawn either way round. Each camera takes the one that passes by it; it is checked against closed ground and timed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Parking: where the walk in begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Field with the name of a parking</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Field with the name of a walk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Closed ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Field with the name of a closure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A date, or MM-DD for each year. Closed on the date of the evening, or of any hour out there, counts as closed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A field of the layers above, such as camera, subject, night or path. Layers without it are drawn on every sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Title of the sheets; blank: Site map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Blank: the largest usual scale at which cameras and subjects fit. What lies off the map is told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Sheets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>PDF files (*.pdf)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Folder for a file each</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Folder for pictures (PNG)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Alignments: the result of alignments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Walk in: the lines from the car to the camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Only its name and the size of its cells are told: the sheet says by which ground lines were called clear.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A sheet for each value of this field; blank: one sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Be at the camera this long before sunset [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Stay this long after the last alignment [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>A position in the field is known to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Walking speed [km/h]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Paper: a4 or letter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Paper upright (portrait) or across (landscape)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Scale of the map, 1 to ...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>As they look in the project; the layers given above are left out of it, since they have their own look here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Copy one of those in the plugin's folder 'layouts' and change it. PAPER and ORIENTATION are then the template's.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Elevation model by which the results were made</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Draw the visible layers of the project beneath</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Layout template of your own</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Applicant</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Activity</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Group size</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Vehicles</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Dates and hours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Lighting used</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Contact</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>In an emergency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Permit number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>What is done, such as: night photography from tripods, no structures, nothing left behind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>How many people, guides included.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>When the ground is used. Blank: arrival and departure of each night are those of the timetable.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Lamps and how they are used, such as: red headlamps for walking; no light on the subject.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>Whom to call, and until when you want to be back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_parameters.py"/>
        <source>The number that the land manager gave, or 'applied for'.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_print.py"/>
        <source>the system does not let it be written</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_print.py"/>
        <source>the file is not whole; the disk may be full</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{walk}, to {mark}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>Zones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>This asks for {n:,} sheets, over MAX_PICTURES ({limit:,}). Select fewer features, choose another SHEET_BY, or raise MAX_PICTURES.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>of {table}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>Rows that belong to no sheet: {reasons}. Cameras are known by their names: give CAMERA_NAME as in the run that made them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>The places of sheet '{sheet}' lie more than {km:g} km apart, which no site map shows. Choose a SHEET_BY that gives each site a sheet, such as camera.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>CLOSED: the season of {n:,} polygons cannot be read; they are taken as always closed: features {ids}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{n:,} in all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{label}: {n:,} polygons were not valid and have been repaired; look at them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sites.py"/>
        <source>{label}: {n:,} shapes have no place on the grid of a sheet's map and are left out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Parking</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Site</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Standpoint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Sightline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Walk in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Path</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Zone to stand in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Closed on these dates</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>Closed at other times</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_sketch.py"/>
        <source>to {subject}, {distance}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Camera and where it looks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Standpoint, where it looks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Sightline, hidden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Sightline, too close to tell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_symbols.py"/>
        <source>Sightline, not tested</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>There is nothing to make a sheet of. Give {names}, or several of them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>SHEET_BY: none of {names} has a field '{field}'. Choose a field of theirs, or leave it blank for one sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>{label}: {n:,} rows from {total:,} features.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>{name}: '{layer}' has no field {fields}. Choose a result of {made_by}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>sightlines or alignments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_tables.py"/>
        <source>standpoints (POINTS)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>it is no text</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} has no item with the id {ids}. Copy one of those in {folder}, and keep these items.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: in {path} 'map' must be a map, 'body' and 'body_continued' labels.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} must have two pages, the sheet with 'body', and its further pages with 'body_continued'.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} must show [% {notice} %] in a label on both pages: no sheet goes without it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} is no layout template of QGIS. Copy one of those in {folder}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_template.py"/>
        <source>TEMPLATE: {path} cannot be read: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>outside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Lines every {lat:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Lines every {lat:g}° lat., {lon:g}° lon.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{n} nights from {first} to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Grid north is true north here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Latitude</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Longitude</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Easting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Northing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>From</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>To</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Line of sight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Be there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Begins</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Closest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Az.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Alt.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>On the dates of the timetable, evening and morning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No dates are known: every season counts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Against closed ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Closure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Closed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>INSIDE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>1 : {scale:,.0f}; grid every {length}
{zone}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Made by {provider} {version}, {when}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Nights of {nights}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Application</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Places</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Bearings and distances</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Timetable</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Data</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Datum and grid</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic north</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Elevation model</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Cautions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Artificial light, drones, group size and commercial work are decided by them too; where the work needs a licensed guide, surveyor or engineer, their word stands.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84 / UTM zone {zone}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84 / {zone}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>touches it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{km:g} km</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{m:g} m</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic north {deg} {side} of true north ({model}, {date})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Magnetic north not known for {date}: the model holds from 2025 to 2030</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Grid north {deg} {side} of true north</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No sightlines were given for this sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No layer of closed ground was given: nothing was checked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No walk was given: the way in was not checked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>none named</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>over {km:g} km</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{nights}; hours as in the timetable</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{name} (beyond the map's edge)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84; grid coordinates of {zone}, in metres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Clockwise from true north at the camera, along the geodesic; ± is, at most, what a position known to {m:g} m is worth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No alignment falls on this sheet: there are no times to tell.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No alignments were given: there are no times to tell.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Times of {zones}; a night bears the date of its evening, times after midnight belong to the next morning</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{walk} to {mark}: {length}, {time} at {speed:g} km/h, each way, before being there and after leaving.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>On {dark} of {n} nights people come or go in the dark.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>No drawn walk passes within 500 m: the way in was not checked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>WGS 84 (EPSG:4326), to 0.00001° (1 m); {zone} (EPSG:{epsg}), metres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{model} for {date}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>INSIDE closed ground ({closure}): {what}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Of a walk only the drawn part was checked.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>NOT ALLOWED, as the layer of standpoints says: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{name}, cells of {size} m</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>standpoint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>parking</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>in sight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>hidden by terrain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>too close to tell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>not tested</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{m:,.0f} m of it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>{m:,.0f} m² of it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sheet_words.py"/>
        <source>Applicant's map. Not issued or approved by the land manager.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The name of the file holds a sign of code 0, which no file may have. Give another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The name of the file holds half a letter, which cannot be written. Give another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>the disk is full. Make room, or write elsewhere</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The name {name}… is longer than {n} bytes. Give a shorter one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{path} is a folder. Give the name of a file in it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{path} is a device, not a file. Choose another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The folder {folder} does not exist. Make it, or choose another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The folder {folder} may not be written to. Choose another one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>The file {path} may not be written to. Choose another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>Another program is writing to {path}. Close it there, or choose another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: writing stopped after {n:,} rows: {error}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>This may write up to {n:,} rows, more than MAX_ROWS ({limit:,}). Ask for less, or raise MAX_ROWS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>the rows cannot be read back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>This may write up to {n:,} rows, {need:,} MB, but {folder} has {free:,} MB left. Ask for less.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: kept fields whose names were taken: {renamed}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: a Shapefile holds no times of day, only texts and dates. A GeoPackage keeps them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>What was written is taken away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: cancelled before the table was written; it is as it was.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/sinks.py"/>
        <source>{name}: all rows are written, but {path} could not be marked as whole: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/skies.py"/>
        <source>{n:,} sightlines whose body is below the horizon at that time: the camera is aimed at the subject.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>... and so on, for more pairs of path and subject.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{first:.1f}° to {last:.1f}° from the first time to the last</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{n:,} {what}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{bearing:.1f}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>Places left out: {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>ZONES: {n:,} left out, as MAX_DISTANCE reaches over {part:.0f} % of the way from subject to pole, where one bearing bounds no ground. Choose a smaller MAX_DISTANCE, or BODY in place of BEARING.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>stretches of path</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>zones of ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{n:,} standpoints</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>Cancelled: {found} written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{path} sees {subject} at bearings from {az_from:.1f}° clockwise to {az_to:.1f}°; wanted: {wanted}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>No path comes within MAX_DISTANCE ({most:,.0f} m) of a subject.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>No standpoints: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>No standpoints ({found}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>{found}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>nearer than MIN_DISTANCE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>farther than MAX_DISTANCE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>outside AREA or in closed ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>with the body outside GAP_MIN to GAP_MAX</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>with the body behind the terrain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>from the DEM</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>from the Z of path and subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/standing.py"/>
        <source>taken as level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>NIGHTS: '{layer}' has no field {fields}. Choose the nights that night_windows gives.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>whose night is no date</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>whose tz is no time zone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>with a local time that cannot be read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>that tell a night of a site again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/told_nights.py"/>
        <source>NIGHTS: skipped rows {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>TOWNS is given, but {name} is blank. Choose the field of the towns that holds how many people live there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>{name}: the field '{field}' of TOWNS holds {kind}, not numbers. Choose one with the number of people.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>{name} is given, but TOWNS is blank. Choose the layer of towns, or leave both blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/towns.py"/>
        <source>values of another kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/walks.py"/>
        <source>The drawn walk passes {m:,.0f} m from the camera: the rest is counted as the crow flies.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/walks.py"/>
        <source>The drawn walk passes {m:,.0f} m from the parking: the rest is counted as the crow flies.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>{n:,} in {own} near {other} ({names})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>Time zone of each place, as TIME_ZONE is blank: {zones}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>in {zone}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../adapters/zones.py"/>
        <source>{n:,} of {total:,} points lie within {km:g} km of a zone whose clock differs during this run, or where two are in use: {borders}. Ask which clock holds there; TIME_ZONE sets it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Alignments of sky and subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>When the Milky Way, the Moon, the Sun or a star stands over a subject, seen from a camera: every stretch of time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Milky Way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>galactic core</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>photography</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>bearing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>azimuth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>First night, the date of its evening; blank: today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Fields of the cameras to keep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Alignments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Pairs without an alignment, and why</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Blank: core 3°, arch and place on the plane 5°, pole 2°, star 1°, Sun and Moon 0.5°.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Body at most this high [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Body at least this far above the subject's top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Body at most this far above the subject's top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>pairs: {pairs:,}, bodies: {bodies}, nights: {nights}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>The body is over the subject within this angle to either side [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Sun at least this high: for dusk and dawn [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>For the Moon: at least this part lit, 0 to 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>For the Moon: at most this part lit, 0 to 1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Last night; blank: {n} nights in all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>AZ_TOLERANCE is {value:g}. Give a half-width of more than 0 and less than 90 degrees, or leave it blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>Cancelled: {n:,} alignments written ({searched}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>UNMET tells why for each pair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>ask for the output UNMET to see why for each pair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>{low_name} is {low:g} and {high_name} {high:g} for {body} where one is blank: nothing lies between. Give both.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>No alignments: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>No alignments ({searched}): {advice}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/alignments.py"/>
        <source>{n:,} alignments ({searched}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>A timetable for each night in the field: when to leave the car, sunset, darkness, Moon, alignments, and when to be back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>timetable</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>itinerary</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>GPX</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>iCalendar</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>waypoints</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>print</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>walk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>safety</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>The layer holds no alignment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>No row of the layer can be planned: its rows have no time, no place or no bearing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Select the few that are meant, and run on the selected features only: each night and place gets a sheet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Parking: where the car stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Drawn either way round. Each camera takes the one that passes by it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Page to print</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>HTML files (*.html)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Waypoints and walk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>GPX files (*.gpx)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Calendar</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>iCalendar files (*.ics)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Nothing is to be written. Give a file for HTML, GPX or CALENDAR, or several of them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Cancelled: nothing was written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Made by {provider}, {when}. Bearings are from true north unless called magnetic.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Alignments, or the points of standpoints</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Walks: the lines from the car to the camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>{n:,} alignments on {sheets:,} sheets, one a night and place; on {dark:,} of them a walk lies in the dark.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>{n:,} alignments are more than MAX_ROWS ({most:,}). Select the nights that are meant, or raise MAX_ROWS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>Nothing to plan: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/field_plan.py"/>
        <source>{names} are the same file, {path}. Give each its own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Framing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Whether a subject and a body of the sky fit the lens, how large the subject is in the picture, the longest shutter without star trails, where to focus, and the frames of a panorama</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>lens</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>focal length</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>field of view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>panorama</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>shutter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>NPF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>hyperfocal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>focus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Alignments bring their own body and time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>With an offset or Z that instant, else the clock of TIME_ZONE.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Its sides are those of the frame on the level horizon.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Fields of the cameras, or of the sightlines, to keep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Fields of view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Head positions of the panoramas</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>SIGHTLINES and CAMERAS or SUBJECTS are given. Give either the sightlines, or the cameras and their subjects.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>REACH is 0. Give the metres that the field of view is to be drawn, such as 2000, or leave it blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Or sightlines: a result of sightlines or alignments, in place of cameras and subjects</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Time; blank: that of each sightline, or no body at all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Draw the field of view as far as this; blank: a quarter farther than the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{n:,} fields of view.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{n:,} fields of view, {heads:,} head positions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>The panoramas would take {n:,} frames and more, above MAX_ROWS ({limit:,}). Take a shorter lens, or raise MAX_ROWS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>Cancelled: {n:,} fields of view written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>No fields of view: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{name} is {choice}, but TIME is blank, and without a time nothing stands in the sky. Give TIME.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/framing.py"/>
        <source>{name} is blank. Choose cameras and subjects, or SIGHTLINES.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Night windows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>When it is dark, the Moon away and the Milky Way high, for each site and night: sunset to sunrise, windows, best months</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>darkness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>twilight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>moonrise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>moonset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>sunset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>sunrise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>new moon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>season</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Sites: the points under the sky</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Towns whose glow is reckoned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Field with the number of people of a town</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Field with the name of a town</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Field with the name of a site</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Fields of the sites to keep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Nights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Every window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Months</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>sites: {sites:,}, nights: {nights:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>No nights: there is no point that can be used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>APEX_MIN is {low:g}, but APEX_MAX is blank, which means {high:g} for {body}: nothing lies between. Give both.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>Cancelled: {n:,} nights written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>{n:,} nights without a window: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>{n:,} nights with a window ({searched}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/night_windows.py"/>
        <source>No night has a window ({searched}): the field reason tells why.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Season chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>A year in one picture, from night windows: every night a column, with its dark hours, window, Moon and the tilt of the band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>year</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>calendar</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{lat:.4f}° {ns}, {lon:.4f}° {ew}. Clock on the wall of {zone}, upward from {foot:02d}:00; a night bears its evening's date.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>the body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Moon up: the wider the bar, the more of it is lit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>new</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>full</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>clock {hours:+g} h</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Tilt of the band: 0° flat, 90° upright. Dot: at a window's best minute; tick: at its start; bar: from these to its end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>how the band rises from the core (the dot) at the best minute</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>A planning aid, not a survey and not a permit: it knows nothing of clouds, closures, access or footing. Arrive before dark, not alone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Every night is a column, from noon up to noon by the clock on the wall; the hour that clocks skip in spring is empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Access, closures and night hours are decided by the land manager and local law. Walking in the dark is dangerous.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Site and body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Month</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>A year of nights reads best. Select some sites and run on the selected features only, if there are many.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Folder for the pictures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Page of the pictures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Pictures drawn</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{who}, nights {first} to {last}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>first night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>nights with a window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>hours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>longest window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{n:,} of {total:,} nights have a window, {hours:.0f} h in all (of each night the longest); season {season}; longest: {window}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Why nights have no window, the most frequent reasons: {reasons}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>best night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>its window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Saturdays at new Moon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Nights: the first result of night_windows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Theme: print or night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>No pictures: there is no night that can be used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{body} usable, as asked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>dark: Sun under {limit:.3g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>None of {total:,} nights has a window.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>This asks for {n:,} pictures, a site each, over MAX_PICTURES ({limit:,}). Select fewer sites and run on the selected features only, or raise MAX_PICTURES.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Cancelled: {n:,} pictures drawn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{night} ({hours:+g} h)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{n:,} nights are not in the layer: hatched.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Season charts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>{n:,} pictures of {sites:,} sites and bodies in {folder}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>Clocks change in the night of {nights}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>the star</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/season_chart.py"/>
        <source>the place on the plane</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Shadow tracks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Where on the ground the Milky Way, the Moon or the Sun sits at a height over a subject's top: how the standpoint moves with it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>shadow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>ground track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>where to stand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>First time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Last time; blank: the first time alone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Step between times [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>0: where the tip of the shadow of the top falls, at the height of the lens.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Stand at most this far from the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Shadow track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>Lines of the track</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>START is blank. Give the first time, such as 2027-06-06 23:30:00.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 5.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>MAX_DISTANCE is 0 and lets nothing through. Give the metres within which to stand, such as 5000.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>The body's centre this far above the subject's top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>{n:,} places</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>No places.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>{n:,} subjects and times are left out: {body} stands at {low:.1f}° to {high:.1f}° then, below the horizon, or as an arch too high or without its core.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>{n:,} subjects and times have no first place within MAX_DISTANCE ({most:,.0f} m) and allowed ground: the shadow is longer, or falls elsewhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/shadow_track.py"/>
        <source>, {n:,} lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>True bearing, distance, altitude and angular size of each subject, seen from each camera, whether terrain hides it, with the line drawn along the Earth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>distance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>line of sight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>geodesic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>A compass needle turns by some 0.1° a year.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>Date of the magnetic bearings; blank: today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>Cancelled: {n:,} sightlines written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>No sightlines: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sightlines.py"/>
        <source>{n:,} sightlines (cameras: {cameras:,}, subjects: {subjects:,}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Site map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>A map for a permit: where people stand and walk, closed ground, coordinates, bearings and a timetable, a sheet a site</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>permit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>layout</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>closure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>application</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Sheets made</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Cancelled: nothing was written to OUTPUT.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Layers (file written)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Background</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>There is no place to draw. Give CAMERAS, SIGHTLINES, ALIGNMENTS, STANDPOINTS or SUBJECTS that hold one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>{n:,} sheets on {pages:,} pages in {file}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Sheet {n} of {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>TITLE is {n} letters long, and a sheet has room for {most}. Shorten it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>OUTPUT: {path} is the TEMPLATE, which would be lost. Choose another name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>The template asks for the font {fonts}, which this computer has not: {fallback} is taken.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>No font of this computer draws {letters}: they are boxes on the sheets. Install one that has them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/site_map.py"/>
        <source>Permit {number}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Sky exposure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>For how many minutes a night the body stands clear of the ridges in the dark, from each cell of an elevation model</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>raster</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>elevation model</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>DEM</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>terrain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>skyline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>visibility</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>month</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Cancelled: nothing is written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Off: one band, the mean of all nights. On: the mean of the nights of each month, in bands named such as 2027-06.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Ground outside it still hides what it hides.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Usable minutes a night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>SKY_STEP is 0. Give the degrees between two positions of the body, such as 1, or leave it blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>No night has a minute in which all conditions hold: the raster holds 0 everywhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>A band for each month</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Area for which it is told; blank: the whole elevation model</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Blank: 1° of its daily turn, 4 minutes; 2° for Sun and Moon, which take many more positions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>{n:,} positions of the body, {step:g}° of its daily turn apart: when it rises over a ridge or sinks behind one is told to {minutes:.0f} minutes, half of that on average.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>{cells:,} cells in {tiles:,} tiles; {rate:.1f} million cells and positions a second.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>Positions of the body closer together than this are taken as one [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_exposure.py"/>
        <source>DEM: '{name}' knows no height in the area. Choose another AREA, or another DEM_BAND.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>Sky positions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>Azimuth and altitude of the Milky Way's core and arch, the Sun, the Moon or a star over points, at a time or through a span of it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>altitude</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 10.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>No positions: there is no point that can be used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>Cancelled: {n:,} of {total:,} positions written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/sky_positions.py"/>
        <source>{n:,} positions (sites: {sites:,}, bodies: {bodies}, times: {times:,}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Skyline view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Pictures of what the camera sees: terrain, subjects, the Milky Way's band, Sun and Moon in true proportions, with the lens's frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>No elevation model here: the horizon is level, hills are not shown. A planning aid, not a survey and not a permit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Body less bearing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Body above the subject's top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Subject's height in the frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Longest focal length at which all fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Tilt of the band at the core</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Top of the arch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Access, closures and night hours are decided by the land manager; walking in the dark is dangerous.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Never look at the Sun, nor point an optical viewfinder or a long lens at it, without a certified solar filter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Draw the body's way this long before and after [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 30.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>END is before START. Exchange them, or mind their offsets from UTC.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>all fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Terrain: '{dem}', cells of {size:.3g} m, known to {reach:.1f} km, no trees or buildings. A planning aid, not a survey and not a permit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>{place}: {body} at azimuth {az:.1f}°, altitude {alt:.1f}°; Moon lit {lit:.0f} %, {moon:.1f}° high; Sun {sun:.1f}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>{subject} bears {bearing:.1f}° at {dist:,.0f} m. {lens}, aimed at azimuth {az:.1f}°, altitude {alt:.1f}°: {fits}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>azimuth {az:.1f}°, altitude {alt:.1f}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>This may draw up to {n:,} pictures (cameras: {cameras:,}), more than MAX_PICTURES ({limit:,}). Choose fewer cameras or times, or raise MAX_PICTURES.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Cancelled: {n:,} of {total:,} pictures drawn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>Skyline views</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>No pictures: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/skyline_view.py"/>
        <source>{n:,} pictures in {folder}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Standpoints on paths</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Where to stand on a path, or on which ground, so that a subject lies in a bearing, or under the Milky Way, the Moon or the Sun</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>path</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>viewpoint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Paths: the lines to stand on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>For STRETCHES and ZONES, and for ends and bends of a path that come near the direction and do not reach it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Stand at least this far from the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Field with the name of a path</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Fields of the paths to keep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Standpoints</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Parts of the paths within tolerance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Ground within tolerance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Give this, or BODY: alone with nights, or with TIME.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>The wall clock at the subject, or a time with its offset from UTC. Blank: nights.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>... and every STEP until this time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>Without TIME: first night, the date of its evening; blank: today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>STEP is 0. Give the minutes between two times, such as 15.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>BEARING and BODY are both given, and each is a direction. Leave one of them blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{name} stands at {alt}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{where} of altitude, below the horizon or outside the limits asked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{low} to {high}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>In the direction wanted within this angle to either side [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>True bearing, looking from the camera to the subject [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>The body at this time</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>No direction is given. Give BEARING, a true bearing from camera to subject, or BODY with TIME or with nights.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source> and the core at {alt}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{lost:,} of {all:,} subjects and times are left out: {sentence}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>AZ_TOLERANCE is {value:g}. Give a half-width of more than 0 and less than 90 degrees.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>in these nights {body} never meets the conditions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{n:,} moments every {step:g} min in which the conditions hold at one of the subjects.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>{names}: for nights only. The times given are taken as they are.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>TIME_END is given without TIME. Give the first time too.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>BEARING is given, and beside it {names}, which belong to a body. Leave them blank, or give BODY in place of BEARING.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/standpoints.py"/>
        <source>TIME and nights are both given. Leave TIME blank, or FIRST_NIGHT and LAST_NIGHT.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Terrain horizon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>How high the terrain stands against the sky around points, direction by direction, and where the ground is that makes the skyline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>horizon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Sites: the points to look from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>A summit narrower than the step may fall between two azimuths.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Points on the skyline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Skylines, as polygons</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>AZ_STEP is 0. Give the degrees between two azimuths, such as 1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Step between azimuths, from north clockwise [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>No skyline: there is no site on ground whose height the DEM knows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>Cancelled: {n:,} points on skylines written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>AZ_STEP is {step:g}: too many azimuths to be held. Give {least:g} or more, such as 1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../algorithms/terrain_horizon.py"/>
        <source>{n:,} points on skylines (sites: {sites:,}, azimuths: {azimuths:,}).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../charts/sheets.py"/>
        <source>Pictures are drawn with matplotlib, which this Python has not. Install it (Debian: python3-matplotlib), then run again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>NE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>SE</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>SW</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../charts/skyline_view.py"/>
        <source>NW</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a point, where the camera stands; its Z, if it has one, is the height above sea level in metres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a point, where the camera stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a point, where the subject stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>the CRS of the points: a text such as 'EPSG:4326', or @layer_crs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>a time, or a text such as '2027-06-06T23:30:00-06:00'. Without an offset it is UTC, as it is in the field t_utc and in the Temporal Controller. A number counts milliseconds of UTC since 1970: epoch(now()) is this moment, while now() alone is what the computer's clock shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>the plugin Sky Alidade is not loaded. Switch it on in the plugin manager.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the true bearing from a camera to a subject: at the camera, in degrees clockwise from true north, along the WGS 84 ellipsoid. NULL where the two are one place.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the distance from a camera to a subject along the WGS 84 ellipsoid, in metres.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the angle of the Milky Way to the horizontal at its core, in degrees, from 0 (flat) to 90 (upright). NULL while the core is down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>; 'star:RA,Dec': a fixed place, ICRS in degrees; 'galactic:LON': a place on the galactic plane, in degrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Syntax</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Arguments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Examples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{body}' is no body. Choose from: {known}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the azimuth of a body of the sky, in degrees clockwise from true north.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>Returns the altitude of a body's centre above the level horizon, in degrees, as it is seen: with the refraction of standard air.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{value}' is no geometry. Give a point, such as $geometry.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>{kind} is not one point. Take one of it, such as centroid($geometry).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>{x:g}, {y:g} is no place in {crs}. Check the CRS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{crs}' is no CRS. Give one such as 'EPSG:4326', @layer_crs or @project_crs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>function {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{text}' is no number of degrees. Write it as in galactic:80.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../expressions.py"/>
        <source>'{value}' is no time. Write it as 2027-06-06T23:30:00Z, or with an offset such as -06:00; without one it is UTC.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/geodesic.py"/>
        <source>{n} of {total} places are not on the Earth (not a number, or latitude beyond 90 degrees): leave them out, or check their CRS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/magnetic.py"/>
        <source>{n} of {total} latitudes lie beyond 90°: give coordinates as longitude, then latitude, in degrees.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/skyline.py"/>
        <source>Within {radius:g} m there is no ground beyond the {near:g} m passed over. Look farther.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>Heights between cells need a raster of at least 2 x 2 cells. Choose a larger elevation model.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>A vertical unit of {unit} m is no length. Give 1 for metres, 0.3048 for feet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>The elevation model holds no height. Choose another band, or another model.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../ground/terrain.py"/>
        <source>The elevation model's cells have no area. Give it a georeference first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../lens/frame.py"/>
        <source>The frame's {name} is {value}: give a number greater than 0.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Camera id</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject id</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Site id</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Path id</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Night (date of its evening)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Time (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Time (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Time zone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Start (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Start (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>End (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>End (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Length [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the body, apparent [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Semidiameter [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance along the path from its start [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Along the path, from [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Along the path, to [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearing wanted [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearing less the one wanted [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Error of the bearing by that of the position [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearings, clockwise from [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearings, clockwise to [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>In the area and not in closed ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunset (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunset (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark from (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark from (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark until (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Dark until (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunrise (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sunrise (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonrise (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonrise (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonset (UTC)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonset (local)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the body at the start [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the body at the end [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Tilt of the band at the start [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Tilt of the band at the end [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Darkness of the night [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Darkness without Moon [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Glow of towns toward the body, of the natural sky</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Town that glows most</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Usable nights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Hours of all windows [h]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Night of the longest window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest window [min]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>First usable night of the season</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Last usable night of the season</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Saturdays of new-moon weekends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Bearing, camera to subject [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Back bearing, subject to camera [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Magnetic bearing [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Magnetic declination, east positive [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Grid bearing [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the lens [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the subject's foot [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the subject's top [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the subject's foot [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the subject's top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Width of the subject [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the subject [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Top in line of sight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance to the least clearance [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Least clearance [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Hidden part of the subject [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Source of heights</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body less bearing [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body above the subject's top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body against the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the terrain skyline [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Height of the ground [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Crossing, counted outward</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Ground known as far as [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the Sun, geometric [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Darkness of the sky</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the Moon, geometric [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the Moon [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Lit fraction of the Moon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body to Moon [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moonlight comes from</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Brightening by moonlight [mag/arcsec²]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the core, apparent [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Tilt of the band at the core [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Side to which the band rises</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Altitude of the arch's top, geometric [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuth of the arch's top [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Galactic longitude of the arch's top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Field of view across [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Field of view, bottom to top [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Aim: azimuth [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Aim: altitude [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Left side on the horizon [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Right side on the horizon [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Body fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>All fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest focal length at which all fits [mm]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject's height in the frame [%]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject's height [px]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Subject's width [px]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Panorama: rows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Panorama: columns, of the longest row</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Panorama: frames in all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Row, from the lowest up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Column, from the left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Head: azimuth [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Head: altitude [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Declination of the fastest star [°]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest shutter by the rule of 500 [s]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest shutter by the NPF rule [s]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Shutter [s]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Longest star trail [px]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Hyperfocal distance [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Focus [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Blur of stars at that focus [px]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sharp from, at that focus [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sharp to, at that focus; null: without end [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Nearest focus that keeps stars sharp [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Sharp from, at the nearest focus that keeps stars sharp [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Focus once, or twice and blend</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance at which the disc is as wide as the subject [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Distance at which the disc is as high as the subject [m]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuths reached, from [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Azimuths reached, to [° true]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Reason</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Milky Way arch (its top)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Celestial pole above the horizon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Star or other fixed place (STAR)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Place on the galactic plane (GALACTIC_LON)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>every camera with every subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>cameras and subjects with the same value in a field</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>each camera with its closest subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moon up or down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>Moon down, or lit less than MOON_LIT_MAX</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>24 x 36 mm, 6000 pixels wide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>16 x 24 mm (crop 1.5), 6000 pixels wide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>13 x 17.3 mm (4/3), 5200 pixels wide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>33 x 44 mm (medium format), 8300 pixels wide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>the long side level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>210 x 297 mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>8.5 x 11 in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>across</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>at the middle between subject and body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>at the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>at the body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>dark on white, for paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>red on black, for reading in the dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>subject and body</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../names.py"/>
        <source>the whole arch of the Milky Way, and the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>There is no time zone '{zone}'.{hint} Give an IANA name such as Europe/Berlin, or a fixed offset such as UTC-02:00.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{time} occurs twice in {zone}, where the clocks go back; the first, at {offset}, is taken.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>The time zone '{zone}' cannot be looked up: this Python holds no time zone data. Install its package tzdata, or give a fixed offset such as UTC-02:00.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source> Did you mean {zone}?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{n} of {total} longitudes are not numbers: a place without longitude has no time zone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{n} of {total} moments lie outside the years 1 to 9999: check their unit, seconds since 1970.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/clock.py"/>
        <source>{time} does not exist in {zone}: the clocks go forward over it. Choose another time, or give the time with its offset from UTC.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/exposure.py"/>
        <source>Rays of {km:g} km about latitude {lat:.1f}° are no smooth lines on the elevation model's map. Warp it to a polar map, or give a shorter TERRAIN_RADIUS.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/lattice.py"/>
        <source>{n:.3g} subjects and times would have to be looked at, a STEP of {step:g} min apart, over {most:,}. Give a longer STEP, fewer nights or fewer subjects.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/lattice.py"/>
        <source>{n:.3g} subjects and times would have to be looked at, over {most:,}. Give a longer STEP, less time or fewer subjects.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>arch's top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>celestial pole</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} does not climb to {least:g}° at any of these sites: it does so only between latitude {south:.1f}° and {north:.1f}°. Lower ALT_MIN.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the core</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} does not climb to {least:g}° at any of these sites: it does so only south of latitude {south:.1f}° or north of {north:.1f}°. Lower ALT_MIN.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the window is told with the night beside this one, in which the best minute lies</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>no darkness this night: the Sun stays above {limit:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} is never {seen}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} stays below {least:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>Moon {up} all night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the band's tilt is never {tilt} while {who} is {seen}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>the arch's top never stands {apex} while {who} is {seen}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} is {seen} only by day or in twilight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>Moon {up} while {who} is {seen} in the dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{who} stays behind the terrain skyline while all else holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{seen} and the band's tilt {tilt}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{seen} with the band's tilt {tilt}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>{seen} with the arch's top {apex}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>plane at galactic longitude {lon:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/night_windows.py"/>
        <source>up and lit over {lit:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/nights.py"/>
        <source>The last night, {last}, lies before the first, {first}. Exchange them, or leave one blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/pairs.py"/>
        <source>The largest distance is {most} m and lets nothing through: give one greater than 0.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/seasons.py"/>
        <source>'{text}' is no day. Write 2027-03-01, or 03-01 for each year.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/seasons.py"/>
        <source>'{first}' and '{last}' are not of one kind: give two dates with a year, or two days without.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/seasons.py"/>
        <source>'{last}' lies before '{first}'. Exchange them.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/sightlines.py"/>
        <source>{n} of {total} subjects have only one of the two bearings between which they may be seen: give both, or leave both blank.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/sightlines.py"/>
        <source>{n} of {total} {what} have no {name} of 0 or more: it is measured upward. Correct them, or leave them out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the plane at galactic longitude {lon:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the arch's top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the Sun</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the Moon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>the celestial pole</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>There is no body '{body}'. Choose from {known}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>The body 'star' needs STAR: right ascension and declination in degrees (ICRS), such as 279.235,38.784.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/targets.py"/>
        <source>The body 'galactic' needs GALACTIC_LON: a galactic longitude in degrees, 0 at the core.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never while the arch's top stands {limits}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never {gap} over the subject's top, which stands at {top:.1f}°.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never above the terrain skyline, which is {ground:.1f}° high there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never with the Sun {limits}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never with the Moon down or lit under {lit:g}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never while the band's tilt at the core is {limits}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached: {who} stands between {first:.1f}° and {last:.1f}° through north while {height}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached: {who} stands between {first:.1f}° and {last:.1f}° while {height}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} is closest to the bearing just outside the nights asked: ask for a night more at either end.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} is never seen {height} in these nights.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never with the Moon down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} passes bearing {bearing:.1f}°, but never lit {limits}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{who} stays in the zenith, over no bearing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached by {who} {height}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>Bearing {bearing:.1f}° is never reached: {who} stands at {first:.1f}° while {height}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>at least {least:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>at most {most:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>at least {least:g} and at most {most:g}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>below {most:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>above {least:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>between {least:g}° and {most:g}°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/unmet.py"/>
        <source>{apex} with the core {limits}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../plan/zones.py"/>
        <source>{n} of {total} places have no longitude, or no latitude from -90 to 90: a place without both has no time zone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../sky/bodies.py"/>
        <source>There is no place at right ascension {ra}°, declination {dec}°: declination runs from -90 to 90.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../sky/ephemeris.py"/>
        <source>The ephemeris {path} is missing. Stage the plugin with package.py, or install the release again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../sky/ephemeris.py"/>
        <source>The dates asked reach beyond the ephemeris, which can be used from {first} to {last}. Choose dates between.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/alignments.qml"/>
        <source>Star or other fixed place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/alignments.qml"/>
        <source>Place on the galactic plane</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/night_windows.qml"/>
        <source>with a window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/night_windows.qml"/>
        <source>without</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/shadow_track.qml"/>
        <source>standpoint: the first place outward</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/shadow_track.qml"/>
        <source>a later place, farther out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/shadow_track.qml"/>
        <source>not allowed: outside the area, or closed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/sightlines.qml"/>
        <source>in sight or not: too close to tell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/sightlines.qml"/>
        <source>terrain not tested</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/standpoints.qml"/>
        <source>top in sight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/standpoints.qml"/>
        <source>top hidden by terrain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/stretches.qml"/>
        <source>within tolerance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../styles/track_lines.qml"/>
        <source>the way of the standpoint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Season of a park</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Elevation model, a raster file; blank: ground is not looked at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Draw a chart of each viewpoint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Last night; blank: 365 nights in all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Charts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>Sky Alidade</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>The first question for a whole park: when. Each night of each viewpoint has its window, in which it is dark, the Moon is away and the body stands where it is wanted, or the reason why there is none; each month has its usable nights, its hours and its best night; the new-moon weekends are marked. Charts, where they are wanted, show the year of each viewpoint in one picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>core: Milky Way core; arch: Milky Way arch (its top); sun: Sun; moon: Moon; pole: Celestial pole above the horizon; star: Star or other fixed place (STAR); galactic: Place on the galactic plane (GALACTIC_LON)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>The folder of the pictures, with the page season_chart.html.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>A picture a viewpoint, half a second each, and a page that gathers them; for no more viewpoints than MAX_PICTURES.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>A point for each viewpoint and month: usable nights, hours, best night, new-moon weekends.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>any: Moon up or down; down: Moon down; down_or_thin: Moon down, or lit less than MOON_LIT_MAX</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>A point for each viewpoint and night, with its window or the reason why there is none.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>For every viewpoint of a layer: the dark windows of each night, the months with their best nights, and a chart of the year</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/park_season.model3"/>
        <source>print: dark on white, for paper; night: red on black, for reading in the dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Permit package</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Last night; blank: 30 nights in all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Field with the height of a subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>When the body is to stand over the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Finds the places on the paths from which each subject lies under the body at the time given, leaves out closed ground, looks up every night of the season on which the body stands over the subject from there, and makes a sheet for each place: map, coordinates, bearings, timetable, closures.

The sheets are the applicant's map. They are not a permit: access, closures, night hours, lights, group size and commercial work are decided by the land manager and local law. Walking in the dark is dangerous, and the results know nothing of footing, tide or weather.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>A line for each stretch of time, with times for the Temporal Controller.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Tripod and camera: from the ground to the middle of the lens. In metres, also from a field; the dialog takes other units.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>Places farther off, along the Earth's surface, are left out. In metres; the dialog takes other units.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>portrait: upright; landscape: across</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>a4: 210 x 297 mm; letter: 8.5 x 11 in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>The sheets, a PDF.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>From paths and subjects to what a land manager reads: where to stand, on which nights, and a sheet for each place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>A line from each place to its subject, with bearing, distance and altitude.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>A point for each place to stand, with its bearing, distance and line of sight.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>From its foot upward, so that what stands above it can be told. In metres, also from a field; the dialog takes other units.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>In metres, where subjects differ: taken in place of the one height.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>One moment, such as 2027-06-06T23:30:00: the clock on the wall at the subject, or with an offset or Z. It decides where to stand; on other nights the body comes there at another minute.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/permit_package.model3"/>
        <source>The ground from which the subject lies in the direction wanted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Plan one subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Where the camera stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Name of the camera's place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Where the subject stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Name of the subject</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Unmet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Two clicks on the map, and no layer to build first. The sightline tells bearing, distance and altitude; the alignments tell every stretch of time in which the Milky Way, the Moon, the Sun or a star stands over the subject while the sky is dark.

Without an elevation model camera and subject stand on the same level ground and no hill is known.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Click on the map, or write 'longitude,latitude [EPSG:4326]'.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>As it is to stand in the tables and reports.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>Click where the camera stands and where the subject is: the sightline between them, and when the sky stands over it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>The line from camera to subject, with bearing, distance and altitude.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>The middle of its foot, as far as you know it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>For its apparent width in degrees and in the picture. In metres, also from a field; the dialog takes other units.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <location filename="../models/plan_one_subject.model3"/>
        <source>The bodies that never stand over the subject, and why.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
