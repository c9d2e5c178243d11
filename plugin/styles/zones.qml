<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- Ground from which the subject is seen within tolerance; hatched grey where one may not stand. -->
  <temporal enabled="1" mode="1" startField="t_utc" limitMode="0" durationUnit="min" fixedDuration="15" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="CASE WHEN coalesce(&quot;allowed&quot;, true) THEN 'allowed' ELSE 'closed' END" symbollevels="0">
    <categories>
      <category value="allowed" label="within tolerance" symbol="allowed" render="true"/>
      <category value="closed" label="not allowed: outside the area, or closed" symbol="closed" render="true"/>
    </categories>
    <symbols>
      <symbol name="allowed" type="fill" alpha="1">
        <layer class="SimpleFill" enabled="1" pass="0">
          <prop k="color" v="0,114,178,45"/>
          <prop k="outline_color" v="0,114,178,255"/>
          <prop k="outline_width" v="0.25"/>
          <prop k="outline_style" v="solid"/>
          <prop k="style" v="solid"/>
        </layer>
      </symbol>
      <symbol name="closed" type="fill" alpha="1">
        <layer class="SimpleFill" enabled="1" pass="0">
          <prop k="color" v="255,255,255,255"/>
          <prop k="outline_color" v="110,110,110,255"/>
          <prop k="outline_width" v="0.2"/>
          <prop k="outline_style" v="dash"/>
          <prop k="style" v="no"/>
        </layer>
        <layer class="LinePatternFill" enabled="1" pass="0">
          <prop k="angle" v="45"/>
          <prop k="distance" v="1.4"/>
          <prop k="color" v="110,110,110,255"/>
          <prop k="line_width" v="0.15"/>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="&quot;subject&quot; || ' ' || format_number(round(&quot;target_deg&quot;, 1) % 360, 1) || '°' || CASE WHEN &quot;t_local&quot; IS NULL THEN '' ELSE ' ' || substr(&quot;t_local&quot;, 12, 5) END" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="6.5" fontSizeUnit="Point" textColor="0,80,125,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="0"/>
      <placement placement="1" dist="0" priority="3"/>
      <rendering drawLabels="1" obstacle="0" limitNumLabels="1" maxNumLabels="200"/>
    </settings>
  </labeling>
</qgis>
