<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology">
  <!-- Minutes a night, told in hours: from the grey of ground that sees nothing to the purple of the core. Seven colours, whose values are
       stretched to what a raster holds when it is written. -->
  <pipe>
    <rasterrenderer type="singlebandpseudocolor" band="1" opacity="0.85" alphaBand="-1" nodataColor="" classificationMin="0" classificationMax="360">
      <rasterTransparency/>
      <minMaxOrigin>
        <limits>None</limits>
        <extent>WholeRaster</extent>
        <statAccuracy>Estimated</statAccuracy>
      </minMaxOrigin>
      <rastershader>
        <colorrampshader colorRampType="INTERPOLATED" classificationMode="1" clip="0" minimumValue="0" maximumValue="360" labelPrecision="0">
          <item value="0" label="0 h" color="#4d4d4d" alpha="255"/>
          <item value="60" label="1 h" color="#7d6c76" alpha="255"/>
          <item value="120" label="2 h" color="#a5728f" alpha="255"/>
          <item value="180" label="3 h" color="#cc79a7" alpha="255"/>
          <item value="240" label="4 h" color="#dda2c1" alpha="255"/>
          <item value="300" label="5 h" color="#eeccdc" alpha="255"/>
          <item value="360" label="6 h" color="#fff5fa" alpha="255"/>
          <rampLegendSettings useContinuousLegend="0" minimumLabel="" maximumLabel="" prefix="" suffix="" direction="0" orientation="2"/>
        </colorrampshader>
      </rastershader>
    </rasterrenderer>
    <brightnesscontrast brightness="0" contrast="0"/>
    <huesaturation saturation="0" grayscaleMode="0" colorizeOn="0" colorizeRed="255" colorizeGreen="128" colorizeBlue="128" colorizeStrength="100"/>
    <rasterresampler maxOversampling="2"/>
  </pipe>
  <blendMode>0</blendMode>
</qgis>
