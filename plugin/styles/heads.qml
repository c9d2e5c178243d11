<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A stroke from the camera for each frame of a panorama, the way the head points. -->
  <renderer-v2 type="singleSymbol" symbollevels="0">
    <symbols>
      <symbol name="0" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="6"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-3.6"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;head_az&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;head_az&quot;))), 'EPSG:4326', @map_crs))))), &quot;head_az&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="6"/>
          <prop k="outline_color" v="34,34,34,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-3.6"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;head_az&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;head_az&quot;))), 'EPSG:4326', @map_crs))))), &quot;head_az&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="square"/>
          <prop k="size" v="1.9"/>
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="34,34,34,255"/>
          <prop k="outline_width" v="0.35"/>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="&quot;pano_row&quot; || '/' || &quot;pano_col&quot; || '  ' || format_number(round(&quot;head_az&quot;, 1) % 360, 1) || '°  ' || format_number(&quot;head_alt&quot;, 1) || '° up'" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="6.5" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <placement placement="6" predefinedPositionOrder="TR,TL,BR,BL,R,L" dist="3" distUnits="MM" priority="4"/>
      <rendering drawLabels="1" obstacle="0" scaleVisibility="1" scaleMin="1" scaleMax="25000" limitNumLabels="1" maxNumLabels="300"/>
    </settings>
  </labeling>
</qgis>
