<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>
<qgis version="3.22.0" styleCategories="Symbology|Labeling|Temporal" labelsEnabled="1">
  <!-- A stroke from the camera toward the subject, crossed out, longer for each further body so that several can be told apart. -->
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
      <symbol name="core" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="4.6"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-3"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="4.6"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-3"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-5.4"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <symbol name="arch" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="6.4"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-3.9"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="6.4"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-3.9"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-7.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <symbol name="sun" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="8.2"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-4.8"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="8.2"/>
          <prop k="outline_color" v="213,94,0,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-4.8"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="213,94,0,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-9"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <symbol name="moon" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="10.0"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-5.7"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="10.0"/>
          <prop k="outline_color" v="0,158,115,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-5.7"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="0,158,115,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-10.8"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <symbol name="pole" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="11.799999999999999"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-6.6"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="11.799999999999999"/>
          <prop k="outline_color" v="230,159,0,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-6.6"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="230,159,0,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-12.6"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <symbol name="star" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="13.6"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-7.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="13.6"/>
          <prop k="outline_color" v="86,180,233,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-7.5"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="86,180,233,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-14.4"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <symbol name="galactic" type="marker" alpha="1">
        <layer class="SimpleMarker" enabled="1" pass="0">
          <prop k="name" v="line"/>
          <prop k="size" v="15.4"/>
          <prop k="outline_color" v="255,255,255,255"/>
          <prop k="outline_width" v="1.1"/>
          <prop k="offset" v="0,-8.4"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="line"/>
          <prop k="size" v="15.4"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.6"/>
          <prop k="offset" v="0,-8.4"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
              </Option>
            </Option>
          </data_defined_properties>
        </layer>
        <layer class="SimpleMarker" enabled="1" pass="1">
          <prop k="name" v="cross2"/>
          <prop k="size" v="1.6"/>
          <prop k="outline_color" v="204,121,167,255"/>
          <prop k="outline_width" v="0.5"/>
          <prop k="offset" v="0,-16.2"/>
          <data_defined_properties>
            <Option type="Map">
              <Option name="type" type="QString" value="collection"/>
              <Option name="properties" type="Map">
                <Option name="angle" type="Map"><Option name="active" type="bool" value="true"/><Option name="type" type="int" value="3"/>
                  <Option name="expression" type="QString" value="coalesce(try(with_variable('p', transform($geometry, @layer_crs, 'EPSG:4326'), degrees(azimuth(transform(@p, 'EPSG:4326', @map_crs), transform(make_point(x(@p) + 0.001 * sin(radians(&quot;bearing_deg&quot;)) / cos(radians(y(@p))), y(@p) + 0.001 * cos(radians(&quot;bearing_deg&quot;))), 'EPSG:4326', @map_crs))))), &quot;bearing_deg&quot;)"/></Option>
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
      <text-style isExpression="1" fieldName='"reason"' fontFamily="DejaVu Sans" namedStyle="Book" fontSize="6.5" fontSizeUnit="Point" textColor="34,34,34,255" textOpacity="1" multilineHeight="0.9">
        <families>
          <family name="DejaVu Sans"/>
          <family name="Open Sans"/>
          <family name="Arial"/>
        </families>
        <text-buffer bufferDraw="1" bufferSize="0.8" bufferSizeUnits="MM" bufferColor="255,255,255,255" bufferOpacity="0.9" bufferNoFill="1" bufferJoinStyle="128"/>
      </text-style>
      <text-format multilineAlign="0" autoWrapLength="36" useMaxLineLengthForAutoWrap="1"/>
      <placement placement="6" predefinedPositionOrder="BR,BL,TR,TL,R,L" dist="3" distUnits="MM" priority="5"/>
      <rendering drawLabels="1" obstacle="0" scaleVisibility="1" scaleMin="1" scaleMax="25000" limitNumLabels="1" maxNumLabels="300"/>
    </settings>
  </labeling>
</qgis>
