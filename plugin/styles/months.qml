<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A disc for each month, wider the more nights can be used. The label is that of the site's best month. -->
  <renderer-v2 type="singleSymbol" symbollevels="1">
    <symbols>
      <symbol name="0" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="circle"/>
          <prop k="size" v="2"/>
          <prop k="color" v="204,121,167,90"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.3"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="size" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='1.5 + 0.35 * "nights"'/></Option>
                <Option name="enabled" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value='"nights" &gt; 0'/></Option>
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
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="if(&quot;nights&quot; &gt; 0 AND &quot;nights&quot; = maximum(&quot;nights&quot;, &quot;site_id&quot;), &quot;month&quot; || ': ' || &quot;nights&quot; || ' nights, ' || round(&quot;hours&quot;) || ' h', '')" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
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
