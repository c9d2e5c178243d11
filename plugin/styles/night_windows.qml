<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- An open square for the site, with a stroke toward the body at the best minute of a night's longest window; pale and without a stroke where
       the night has none. Layers are temporal by their windows: nights without one show only while the Temporal Controller is off. -->
  <temporal enabled="1" mode="2" startField="t_start" endField="t_end" limitMode="0" durationUnit="min" fixedDuration="0" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="if(&quot;t_start&quot; IS NULL, 'without', 'window')" symbollevels="1">
    <categories>
      <category value="window" label="with a window" symbol="window" render="true"/>
      <category value="without" label="without" symbol="none" render="true"/>
    </categories>
    <symbols>
      <symbol name="window" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="7"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-3.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="7"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-3.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;az_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;az_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;az_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="2">
          <prop k="name" v="square"/>
          <prop k="size" v="1.9"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="34,34,34,255"/>
          <prop k="outline_width" v="0.35"/>
        </layer>
      </symbol>
      <symbol name="none" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="square"/>
          <prop k="size" v="1.9"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="150,150,150,255"/>
          <prop k="outline_width" v="0.35"/>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="coalesce(&quot;night&quot; || ', ' || substr(&quot;start_loc&quot;, 12, 5) || ' to ' || substr(&quot;end_loc&quot;, 12, 5), &quot;night&quot; || ': ' || &quot;reason&quot;)" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <placement placement="6" predefinedPositionOrder="BR,BL,TR,TL,R,L" dist="3" distUnits="MM" priority="5"/>
      <rendering drawLabels="1" obstacle="0" limitNumLabels="1" maxNumLabels="300"/>
    </settings>
  </labeling>
</qgis>
