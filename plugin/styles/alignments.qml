<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A colour a body, set side by side so that several bodies over one subject can be told apart: the core lies on the sightline itself.
       The shift is data-defined, so that the legend, which has no feature, shows each line in its middle.
       Labels: over spans of more than a day the longest stretch of each camera, subject and body; in a frame of the Temporal Controller all.
       Thousands of labels on one line would take minutes to sort out. -->
  <temporal enabled="1" mode="2" startField="t_start" endField="t_end" limitMode="0" durationUnit="min" fixedDuration="0" accumulate="0"/>
  <renderer-v2 type="categorizedSymbol" attr="body" symbollevels="1">
    <categories>
      <category value="core" label="Milky Way core" symbol="core" render="true"/>
      <category value="arch" label="Milky Way arch (its top)" symbol="arch" render="true"/>
      <category value="sun" label="Sun" symbol="sun" render="true"/>
      <category value="moon" label="Moon" symbol="moon" render="true"/>
      <category value="pole" label="Celestial pole above the horizon" symbol="pole" render="true"/>
      <category value="star" label="Star or other fixed place" symbol="star" render="true"/>
      <category value="galactic" label="Place on the galactic plane" symbol="galactic" render="true"/>
    </categories>
    <symbols>
      <symbol name="core" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.6"/>
          <prop k="capstyle" v="flat"/>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="204,121,167,255"/>
          <prop k="line_width" v="0.9"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <symbol name="arch" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.8"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'arch' THEN 1.1 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="204,121,167,255"/>
          <prop k="line_width" v="1.1"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'arch' THEN 1.1 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="2">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="0.45"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'arch' THEN 1.1 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <symbol name="sun" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.2999999999999998"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'sun' THEN 2.1 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="213,94,0,255"/>
          <prop k="line_width" v="0.6"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'sun' THEN 2.1 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <symbol name="moon" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.2999999999999998"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'moon' THEN -0.95 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="0,158,115,255"/>
          <prop k="line_width" v="0.6"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'moon' THEN -0.95 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <symbol name="pole" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.2999999999999998"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'pole' THEN -1.8 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="230,159,0,255"/>
          <prop k="line_width" v="0.6"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'pole' THEN -1.8 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <symbol name="star" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.2999999999999998"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'star' THEN 2.9 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="86,180,233,255"/>
          <prop k="line_width" v="0.6"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'star' THEN 2.9 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <symbol name="galactic" type="line" alpha="1">
        <layer class="SimpleLine" enabled="1" pass="0">
          <prop k="line_color" v="255,255,255,255"/>
          <prop k="line_width" v="1.15"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'galactic' THEN -2.6 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleLine" enabled="1" pass="1">
          <prop k="line_color" v="204,121,167,255"/>
          <prop k="line_width" v="0.45"/>
          <prop k="capstyle" v="flat"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="customDash" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;sight&quot; = 'hidden' THEN '1.6;1.6' WHEN &quot;sight&quot; = 'uncertain' THEN '4;0.8' ELSE '9999;0' END"/></Option>
                <Option name="offset" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="CASE WHEN &quot;body&quot; = 'galactic' THEN -2.6 END"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="MarkerLine" enabled="1" pass="3">
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
        <layer class="MarkerLine" enabled="1" pass="3">
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
      <text-style isExpression="1" fieldName="coalesce(map_get(map('sun', 'Sun', 'moon', 'Moon', 'galactic', 'plane'), &quot;body&quot;), &quot;body&quot;) || ' ' || format_number(round(&quot;bearing_deg&quot;, 1) % 360, 1) || '°' || '  ' || substr(&quot;t_local&quot;, 12, 5) || '\n' || format_date(&quot;night&quot;, 'yyyy-MM-dd')" fontFamily="DejaVu Sans" namedStyle="Book" fontSize="7.5" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="1"/>
      <placement placement="2" placementFlags="10" dist="1.6" distUnits="MM" lineAnchorPercent="0.3" lineAnchorType="0" overrunDistance="6" overrunDistanceUnit="MM" priority="6"/>
      <rendering drawLabels="1" obstacle="0" minFeatureSize="8"/>
      <dd_properties>
        <Option type="Map">
          <Option name="type" type="QString" value="collection"/>
          <Option name="properties" type="Map">
            <Option name="Priority" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="if(&quot;body&quot; IN ('core', 'arch'), 4, 0) + scale_linear(&quot;minutes&quot;, 0, 90, 0, 6)"/></Option>
            <Option name="Color" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="map_get(map('core', '#8c4f71', 'arch', '#8c4f71', 'galactic', '#8c4f71', 'sun', '#a34800', 'moon', '#00704f', 'pole', '#8a5f00', 'star', '#1f6a99'), &quot;body&quot;)"/></Option>
            <Option name="Show" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
              <Option name="expression" type="QString" value="coalesce(hour(@map_end_time - @map_start_time) &lt;= 24, false) OR &quot;minutes&quot; = maximum(&quot;minutes&quot;, group_by := &quot;body&quot; || ' ' || &quot;camera_id&quot; || ' ' || &quot;subject_id&quot;)"/></Option>
          </Option>
        </Option>
      </dd_properties>
    </settings>
  </labeling>
</qgis>
