<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A dot where the skyline stands, larger the higher it stands against the sky: 0.9 mm at the level horizon and below, 2.6 mm at 20° and above.
       Every 30° of azimuth its altitude. -->
  <renderer-v2 type="singleSymbol" symbollevels="0">
    <symbols>
      <symbol name="0" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="0.9"/>
          <prop k="color" v="240,228,66,255"/>
          <prop k="outline_color" v="34,34,34,255"/>
          <prop k="outline_width" v="0.25"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="size" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="scale_linear(coalesce(&quot;ground_deg&quot;, 0), 0, 20, 0.9, 2.6)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="format_number(round(&quot;ground_deg&quot;, 1) + 0, 1) || '°'" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <placement placement="6" predefinedPositionOrder="TR,TL,BR,BL,R,L" dist="1.5" distUnits="MM" priority="5"/>
      <rendering drawLabels="1" obstacle="0"/>
      <dd_properties>
        <Option type="Map">
          <Option name="type" type="QString" value="collection"/>
          <Option name="properties" type="Map">
            <Option name="Show" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="round(&quot;az_deg&quot;, 6) % 30 = 0"/></Option>
          </Option>
        </Option>
      </dd_properties>
    </settings>
  </labeling>
</qgis>
