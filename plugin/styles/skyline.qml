<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- The ring of places that stand against the sky: yellow in a casing of near-black, so that it is seen over any shading and is no sightline. -->
  <renderer-v2 type="singleSymbol" symbollevels="0">
    <symbols>
      <symbol name="0" type="fill" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="34,34,34,255"/>
          <prop k="line_width" v="0.9"/>
          <prop k="joinstyle" v="round"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="240,228,66,255"/>
          <prop k="line_width" v="0.5"/>
          <prop k="joinstyle" v="round"/>
        </layer>
      </symbol>
    </symbols>
  </renderer-v2>
  <labeling type="simple">
    <settings calloutType="simple">
      <text-style isExpression="1" fieldName="'skyline from ' || &quot;site&quot;" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7.5" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <placement placement="2" placementFlags="10" polygonPlacementFlags="2" dist="0.8" distUnits="MM" priority="5"/>
      <rendering drawLabels="1" obstacle="0" minFeatureSize="15"/>
    </settings>
  </labeling>
</qgis>
