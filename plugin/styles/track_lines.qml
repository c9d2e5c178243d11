<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- The way of the standpoint while the body moves. -->
  <temporal enabled="1" mode="2" startField="t_start" endField="t_end" limitMode="0" durationUnit="min" fixedDuration="0" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="'track'" symbollevels="1">
    <categories>
      <category value="track" label="the way of the standpoint" symbol="track" render="true"/>
    </categories>
    <symbols>
      <symbol name="track" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.1"/>
          <prop k="capstyle" v="flat"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="0,114,178,255"/>
          <prop k="line_width" v="0.5"/>
          <prop k="capstyle" v="flat"/>
          <prop k="joinstyle" v="round"/>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="&quot;subject&quot; || ' ' || substr(&quot;start_loc&quot;, 12, 5) || ' to ' || substr(&quot;end_loc&quot;, 12, 5)" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="6.5" fontSizeUnit="Point" textColor="0,80,125,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="0"/>
      <placement placement="2" placementFlags="10" dist="0.8" distUnits="MM" overrunDistance="10" overrunDistanceUnit="MM" priority="4"/>
      <rendering drawLabels="1" obstacle="0" minFeatureSize="8" limitNumLabels="1" maxNumLabels="300"/>
    </settings>
  </labeling>
</qgis>
