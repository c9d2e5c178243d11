<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A camera where the tip of the shadow falls, its tick toward the subject; dashed and small where a later one lies behind it. -->
  <temporal enabled="1" mode="1" startField="t_utc" limitMode="0" durationUnit="min" fixedDuration="15" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="CASE WHEN not coalesce(&quot;allowed&quot;, true) THEN 'closed' WHEN &quot;order&quot; &gt; 1 THEN 'later' ELSE 'first' END" symbollevels="0">
    <categories>
      <category value="first" label="standpoint: the first place outward" symbol="first" render="true"/>
      <category value="later" label="a later place, farther out" symbol="later" render="true"/>
      <category value="closed" label="not allowed: outside the area, or closed" symbol="closed" render="true"/>
    </categories>
    <symbols>
      <symbol name="first" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2.4"/>
          <prop k="outline_color" v="0,114,178,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-2.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="square"/>
          <prop k="size" v="2.6"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="0,114,178,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="outline_style" v="solid"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="later" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2.4"/>
          <prop k="outline_color" v="0,114,178,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-2.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="square"/>
          <prop k="size" v="1.8"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="0,114,178,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="outline_style" v="dash"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
      <symbol name="closed" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="2.4"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-2.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="square"/>
          <prop k="size" v="2.6"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="outline_style" v="solid"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="&quot;subject&quot; || ' ' || substr(&quot;t_local&quot;, 12, 5) || '\n' || format_number(round(&quot;bearing_deg&quot;, 1) % 360, 1) || '°' || ' ' || format_number(&quot;dist_m&quot;, 0) || ' m'" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7" fontSizeUnit="Point" textColor="0,80,125,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="0"/>
      <placement placement="6" predefinedPositionOrder="R,L,BR,BL,TR,TL" dist="2" distUnits="MM" priority="7"/>
      <rendering drawLabels="1" obstacle="1" scaleVisibility="1" scaleMin="1" scaleMax="60000" limitNumLabels="1" maxNumLabels="300"/>
    </settings>
  </labeling>
</qgis>
