<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- Camera: open square. Subject: triangle on its foot. The line is near-black in a white casing: whole where the top is in sight,
       in long dashes where that is uncertain, thin, below the others and in short dashes where it is hidden: those bear no label, nor do
       lines under 8 mm. -->
  <renderer-v2 type="categorizedSymbol" attr="sight" symbollevels="1">
    <categories>
      <category value="clear" label="in sight" symbol="clear" render="true"/>
      <category value="uncertain" label="in sight or not: too close to tell" symbol="uncertain" render="true"/>
      <category value="hidden" label="hidden by terrain" symbol="hidden" render="true"/>
      <category value="" label="terrain not tested" symbol="untested" render="true"/>
    </categories>
    <symbols>
      <symbol name="clear" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="2">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.3"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="3">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.55"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="firstvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="square"/>
                <prop k="size" v="1.9"/>
                <prop k="color" v="255,255,255,255"/>
                <prop k="outline_color" v="34,34,34,255"/>
                <prop k="outline_width" v="0.35"/>
              </layer>
            </symbol>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="lastvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="triangle"/>
                <prop k="size" v="2.2"/>
                <prop k="color" v="34,34,34,255"/>
                <prop k="outline_color" v="255,255,255,255"/>
                <prop k="outline_width" v="0.25"/>
                <prop k="vertical_anchor_point" v="2"/>
              </layer>
            </symbol>
        </layer>
      </symbol>
      <symbol name="uncertain" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="2">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.3"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="3">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.55"/>
          <prop k="capstyle" v="flat"/>
          <prop k="use_custom_dash" v="1"/>
          <prop k="customdash" v="4;0.8"/>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="firstvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="square"/>
                <prop k="size" v="1.9"/>
                <prop k="color" v="255,255,255,255"/>
                <prop k="outline_color" v="34,34,34,255"/>
                <prop k="outline_width" v="0.35"/>
              </layer>
            </symbol>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="lastvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="triangle"/>
                <prop k="size" v="2.2"/>
                <prop k="color" v="34,34,34,255"/>
                <prop k="outline_color" v="255,255,255,255"/>
                <prop k="outline_width" v="0.25"/>
                <prop k="vertical_anchor_point" v="2"/>
              </layer>
            </symbol>
        </layer>
      </symbol>
      <symbol name="hidden" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,110"/>
          <prop k="line_width" v="0.7"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.3"/>
          <prop k="capstyle" v="flat"/>
          <prop k="use_custom_dash" v="1"/>
          <prop k="customdash" v="1;1.4"/>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="firstvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="square"/>
                <prop k="size" v="1.9"/>
                <prop k="color" v="255,255,255,255"/>
                <prop k="outline_color" v="34,34,34,255"/>
                <prop k="outline_width" v="0.35"/>
              </layer>
            </symbol>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="lastvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="triangle"/>
                <prop k="size" v="2.2"/>
                <prop k="color" v="34,34,34,255"/>
                <prop k="outline_color" v="255,255,255,255"/>
                <prop k="outline_width" v="0.25"/>
                <prop k="vertical_anchor_point" v="2"/>
              </layer>
            </symbol>
        </layer>
      </symbol>
      <symbol name="untested" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="2">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.3"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="3">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.55"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="firstvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="square"/>
                <prop k="size" v="1.9"/>
                <prop k="color" v="255,255,255,255"/>
                <prop k="outline_color" v="34,34,34,255"/>
                <prop k="outline_width" v="0.35"/>
              </layer>
            </symbol>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="4">
          <prop k="placement" v="lastvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="end" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="triangle"/>
                <prop k="size" v="2.2"/>
                <prop k="color" v="34,34,34,255"/>
                <prop k="outline_color" v="255,255,255,255"/>
                <prop k="outline_width" v="0.25"/>
                <prop k="vertical_anchor_point" v="2"/>
              </layer>
            </symbol>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="&quot;subject&quot; || '  ' || format_number(round(&quot;bearing_deg&quot;, 1) % 360, 1) || '°' || '  ' || format_number(&quot;dist_m&quot;, 0) || ' m'" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7.5" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="1"/>
      <placement placement="2" placementFlags="10" dist="0.6" distUnits="MM" lineAnchorPercent="0.3" lineAnchorType="0" overrunDistance="6" overrunDistanceUnit="MM" priority="6"/>
      <rendering drawLabels="1" obstacle="1" minFeatureSize="8"/>
      <dd_properties>
        <Option type="Map">
          <Option name="type" type="QString" value="collection"/>
          <Option name="properties" type="Map">
            <Option name="Show" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="&quot;sight&quot; IS NOT 'hidden'"/></Option>
          </Option>
        </Option>
      </dd_properties>
    </settings>
  </labeling>
</qgis>
