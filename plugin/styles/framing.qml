<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- What the lens takes in, shaded, from an open square where the camera stands: bounded by a whole line where subject and body fit, by
       dashes where they do not. -->
  <renderer-v2 type="categorizedSymbol" attr="if(&quot;fits&quot;, 'fits', 'cut off')" symbollevels="0">
    <categories>
      <category value="fits" label="fits" symbol="fits" render="true"/>
      <category value="cut off" label="does not fit" symbol="cut off" render="true"/>
    </categories>
    <symbols>
      <symbol name="fits" type="fill" alpha="1">
        <layer class="SimpleFill" enabled="1" pass="0">
          <prop k="color" v="34,34,34,36"/>
          <prop k="outline_style" v="no"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="0.9"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.4"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="0">
          <prop k="placement" v="firstvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="camera" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="square"/>
                <prop k="size" v="1.9"/>
                <prop k="color" v="255,255,255,255"/>
                <prop k="outline_color" v="34,34,34,255"/>
                <prop k="outline_width" v="0.35"/>
              </layer>
            </symbol>
        </layer>
      </symbol>
      <symbol name="cut off" type="fill" alpha="1">
        <layer class="SimpleFill" enabled="1" pass="0">
          <prop k="color" v="34,34,34,14"/>
          <prop k="outline_style" v="no"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="0.9"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.4"/>
          <prop k="joinstyle" v="round"/>
          <prop k="use_custom_dash" v="1"/>
          <prop k="customdash" v="1.6;1.6"/>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="0">
          <prop k="placement" v="firstvertex"/>
          <prop k="rotate" v="0"/>
            <symbol name="camera" type="marker" alpha="1">
              <layer class="SimpleMarker" enabled="1" pass="0">
                <prop k="name" v="square"/>
                <prop k="size" v="1.9"/>
                <prop k="color" v="255,255,255,255"/>
                <prop k="outline_color" v="34,34,34,255"/>
                <prop k="outline_width" v="0.35"/>
              </layer>
            </symbol>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="&quot;subject&quot; || '  ' || format_number(&quot;focal_mm&quot;, 0) || ' mm' || '\n' || if(&quot;fits&quot;, 'fits', 'does not fit') || coalesce(if(&quot;fits&quot;, ', up to ', ', would at ') || format_number(floor(&quot;fit_mm&quot;), 0) || ' mm', '')" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7.5" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="1"/>
      <placement placement="1" centroidInside="1" centroidWhole="1" dist="0" priority="5"/>
      <rendering drawLabels="1" obstacle="0" minFeatureSize="12"/>
    </settings>
  </labeling>
</qgis>
