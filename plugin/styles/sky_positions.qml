<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A dial about each site: the rim is the horizon, the middle the zenith, the mark on the rim true north. Bodies below the horizon are not drawn.
       Directions are those of the map's own projection. Labels at whole hours; in a frame of less than an hour azimuth, altitude and time at the rim. -->
  <temporal enabled="1" mode="1" startField="t_utc" limitMode="0" durationUnit="min" fixedDuration="10" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="body" symbollevels="1">
    <categories>
      <category value="core" label="Milky Way core" symbol="core" render="true"/>
      <category value="arch" label="Milky Way arch (its top)" symbol="arch" render="true"/>
      <category value="sun" label="Sun" symbol="sun" render="true"/>
      <category value="moon" label="Moon" symbol="moon" render="true"/>
      <category value="pole" label="Celestial pole above the horizon" symbol="pole" render="true"/>
      <category value="star" label="Star or other fixed place" symbol="star" render="true"/>
      <category value="galactic" label="Place on the galactic plane" symbol="galactic" render="true"/>
    </categories>
    <symbols>
      <symbol name="core" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="circle"/>
          <prop k="size" v="1.8"/>
          <prop k="color" v="204,121,167,255"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="0.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="arch" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="circle"/>
          <prop k="size" v="1.8"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="sun" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="circle"/>
          <prop k="size" v="2.4"/>
          <prop k="color" v="213,94,0,255"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="0.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="moon" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="circle"/>
          <prop k="size" v="2.4"/>
          <prop k="color" v="0,158,115,255"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="0.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="pole" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross_fill"/>
          <prop k="size" v="2.2"/>
          <prop k="color" v="230,159,0,255"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="0.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="star" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="star"/>
          <prop k="size" v="2.4"/>
          <prop k="color" v="86,180,233,255"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="0.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="galactic" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="24"/>
          <prop k="color" v="255,255,255,0"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.3"/>
          <prop k="offset" v="0,-12"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(0)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(0))), 'EPSG:4326', @map_crs))))), 0)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="diamond"/>
          <prop k="size" v="1.9"/>
          <prop k="color" v="204,121,167,255"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="0.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"alt_deg" &gt;= 0'/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="'0,' || (0.133333 * (&quot;alt_deg&quot; - 90))"/></Option>
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="if(coalesce(hour(@map_end_time - @map_start_time) &lt; 1, false), coalesce(map_get(map('sun', 'Sun', 'moon', 'Moon', 'galactic', 'plane'), &quot;body&quot;), &quot;body&quot;) || ' ' || format_number(round(&quot;az_deg&quot;, 1) % 360, 1) || '°\n' || format_number(&quot;alt_deg&quot;, 1) || '° up' || '  ' || substr(&quot;t_local&quot;, 12, 5), substr(&quot;t_local&quot;, 12, 5))" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="1"/>
      <placement placement="1" quadOffset="4" offsetUnits="MM" dist="0" priority="5"/>
      <rendering drawLabels="1" obstacle="0"/>
      <dd_properties>
        <Option type="Map">
          <Option name="type" type="QString" value="collection"/>
          <Option name="properties" type="Map">
            <Option name="Show" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="&quot;alt_deg&quot; &gt;= 0 AND (coalesce(hour(@map_end_time - @map_start_time) &lt; 1, false) OR substr(&quot;t_local&quot;, 15, 2) = '00')"/></Option>
            <Option name="OffsetXY" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="with_variable('a', radians(coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)), with_variable('r', if(coalesce(hour(@map_end_time - @map_start_time) &lt; 1, false), 12 + 7, 0.133333 * (90 - &quot;alt_deg&quot;) + 3), array(@r * sin(@a), -@r * cos(@a))))"/></Option>
            <Option name="Color" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="map_get(map('core', '#8c4f71', 'arch', '#8c4f71', 'galactic', '#8c4f71', 'sun', '#a34800', 'moon', '#00704f', 'pole', '#8a5f00', 'star', '#1f6a99'), &quot;body&quot;)"/></Option>
          </Option>
        </Option>
      </dd_properties>
    </settings>
  </labeling>
</qgis>
