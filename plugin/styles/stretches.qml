<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- Parts of paths from which the subject is seen within tolerance; grey and dashed where one may not stand. -->
  <temporal enabled="1" mode="1" startField="t_utc" limitMode="0" durationUnit="min" fixedDuration="15" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="CASE WHEN coalesce(&quot;allowed&quot;, true) THEN 'allowed' ELSE 'closed' END" symbollevels="1">
    <categories>
      <category value="allowed" label="within tolerance" symbol="allowed" render="true"/>
      <category value="closed" label="not allowed: outside the area, or closed" symbol="closed" render="true"/>
    </categories>
    <symbols>
      <symbol name="allowed" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="2.2"/>
          <prop k="capstyle" v="flat"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="0,114,178,255"/>
          <prop k="line_width" v="1.4"/>
          <prop k="capstyle" v="flat"/>
          <prop k="joinstyle" v="round"/>
        </layer>
      </symbol>
      <symbol name="closed" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="2.2"/>
          <prop k="capstyle" v="flat"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="110,110,110,255"/>
          <prop k="line_width" v="1.4"/>
          <prop k="capstyle" v="flat"/>
          <prop k="joinstyle" v="round"/>
          <prop k="use_custom_dash" v="1"/>
          <prop k="customdash" v="1;0.8"/>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="format_number(&quot;from_m&quot;, 0) || ' to ' || format_number(&quot;to_m&quot;, 0) || ' m'" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="6.5" fontSizeUnit="Point" textColor="0,80,125,255" textOpacity="1" multilineHeight="0.9">
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
