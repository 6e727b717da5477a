#!/bin/sh
# Makes the files in this folder with GDAL (last run with 3.6.2): ten invented features in three
# reference systems and every format that is read. Needs ogr2ogr with SpatiaLite.
set -eu
cd "$(dirname "$0")"
rm -rf ten-* lines-* areas-* points-* layers.gpkg old-crs.geojson no-crs.gpkg track.gpx

cat > ten.csvt <<'END'
"Integer","String","String","Real","Integer","Date","WKT"
END
cat > ten.csv <<'END'
id,kind,name,width,shoots,seen,wkt
1,line,Étang à l'anse,0.35,12,2024-06-30,"LINESTRING Z (340000.5 3060000.25 -1.5,340100 3060050 -2,340180.125 3060030 -1)"
2,line,"comma, and ""quote""",0.4,0,1999-12-31,"LINESTRING Z (340000 3060100 0,340200 3060100 0)"
3,line,,,,,"LINESTRING Z (340000 3060200 -1,340010 3060210 -1)"
4,line,two parts,1.25,7,2024-02-29,"MULTILINESTRING Z ((340000 3060300 0,340010 3060300 0),(340020 3060300 0,340040 3060300 0))"
5,line,no shape,0.3,1,2024-01-01,
6,area,plain,12.5,-3,2023-05-06,"POLYGON Z ((341000 3060000 0,341000 3060100 0,341100 3060100 0,341100 3060000 0,341000 3060000 0))"
7,area,hole,100,123456789,2023-05-07,"POLYGON Z ((341200 3060000 0,341200 3060100 0,341300 3060100 0,341300 3060000 0,341200 3060000 0),(341240 3060040 0,341260 3060040 0,341260 3060060 0,341240 3060060 0,341240 3060040 0))"
8,area,two parts and a hole,0.001,5,2023-05-08,"MULTIPOLYGON Z (((341400 3060000 0,341400 3060010 0,341410 3060010 0,341400 3060000 0)),((341500 3060000 0,341500 3060100 0,341600 3060100 0,341600 3060000 0,341500 3060000 0),(341510 3060010 0,341530 3060010 0,341530 3060030 0,341510 3060010 0)))"
9,area,,,,,"POLYGON Z ((341700 3060000 0,341700 3060010 0,341710 3060010 0,341700 3060000 0))"
10,area,äöü ß €,2,2,2023-05-10,"POLYGON Z ((341800 3060000 0,341800 3060010 0,341810 3060010 0,341800 3060000 0))"
END
cat > ten.vrt <<'END'
<OGRVRTDataSource>
  <OGRVRTLayer name="ten">
    <SrcDataSource relativeToVRT="1">ten.csv</SrcDataSource>
    <OpenOptions><OOI key="EMPTY_STRING_AS_NULL">YES</OOI></OpenOptions>
    <GeometryType>wkbUnknown</GeometryType>
    <LayerSRS>EPSG:32617</LayerSRS>
    <GeometryField encoding="WKT" field="wkt"/>
    <Field name="id" type="Integer"/>
    <Field name="kind"/>
    <Field name="name"/>
    <Field name="width" type="Real"/>
    <Field name="shoots" type="Integer"/>
    <Field name="seen" type="Date"/>
  </OGRVRTLayer>
</OGRVRTDataSource>
END

export OGR_CURRENT_DATE=2024-01-01T00:00:00.000Z
for srs in 32617 4326 2882; do
  ogr2ogr -f CSV "ten-$srs.csv" ten.vrt -t_srs "EPSG:$srs" -lco GEOMETRY=AS_WKT -lco CREATE_CSVT=NO
  ogr2ogr -f GPKG "ten-$srs.gpkg" ten.vrt -t_srs "EPSG:$srs" -nlt GEOMETRYZ -nln ten
  ogr2ogr -f GeoJSON "ten-$srs.geojson" ten.vrt -t_srs "EPSG:$srs" -lco COORDINATE_PRECISION=12
  for kind in line area; do
    ogr2ogr -f "ESRI Shapefile" "${kind}s-$srs.shp" ten.vrt -t_srs "EPSG:$srs" \
      -where "kind = '$kind'" -lco ENCODING=UTF-8
  done
done
ogr2ogr -f GeoJSON ten-rfc7946.geojson ten.vrt -t_srs EPSG:4326 -lco RFC7946=YES \
  -lco COORDINATE_PRECISION=12

# Shapefiles of other character sets and dimensions.
ogr2ogr -f "ESRI Shapefile" lines-latin1.shp ten.vrt -where "kind = 'line'" \
  -lco ENCODING=ISO-8859-1
ogr2ogr -f "ESRI Shapefile" lines-ldid.shp ten.vrt -where "kind = 'line'" -lco ENCODING=LDID/87
rm -f lines-ldid.cpg
ogr2ogr -f "ESRI Shapefile" lines-xy.shp ten.vrt -where "kind = 'line'" -lco SHPT=ARC -dim XY
ogr2ogr -f "ESRI Shapefile" lines-xym.shp ten.vrt -where "kind = 'line'" -lco SHPT=ARCM -dim XYM
ogr2ogr -f "ESRI Shapefile" areas-xym.shp ten.vrt -where "kind = 'area'" -lco SHPT=POLYGONM -dim XYM -lco ENCODING=UTF-8
for dim in XY XYZ XYM; do
  ogr2ogr -f "ESRI Shapefile" "points-$dim.shp" ten.vrt -dialect sqlite -dim "$dim" \
    -sql "SELECT id, ST_PointOnSurface(geometry) AS geometry FROM ten WHERE id IN (6, 7)"
done

# GeoPackages: several layers, dimensions, no reference system.
ogr2ogr -f GPKG layers.gpkg ten.vrt -nln lines -where "kind = 'line'" -dim XYZM -nlt GEOMETRYZM
ogr2ogr -f GPKG -update layers.gpkg ten.vrt -nln areas -where "kind = 'area'" -dim XYM -nlt GEOMETRYM
ogr2ogr -f GPKG -update layers.gpkg ten.vrt -nln notes -nlt NONE
ogr2ogr -f GPKG no-crs.gpkg ten.csv -oo GEOM_POSSIBLE_NAMES=wkt -oo KEEP_GEOM_COLUMNS=NO -nln ten

# The form that preceded RFC 7946.
sed 's/"type": "FeatureCollection",/&\n"crs": { "type": "name", "properties": { "name": "EPSG:2882" } },/; /urn:ogc:def:crs/d' \
  ten-2882.geojson > old-crs.geojson

rm -f ten.csv ten.csvt ten.vrt

cat > track.gpx <<'END'
<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">
  <wpt lat="27.65" lon="-82.61"><time>2024-06-30T23:30:00Z</time><name>Anse à l'Étang</name><desc>anchor hole</desc><type>anchor</type></wpt>
  <rte><name>edge</name><rtept lat="27.64" lon="-82.60"/><rtept lat="27.65" lon="-82.60"/></rte>
  <trk><name>dive 1</name><cmt>by boat</cmt><type>propeller</type>
    <trkseg>
      <trkpt lat="27.60" lon="-82.60"><ele>-1.5</ele><time>2024-06-30T12:00:00Z</time></trkpt>
      <trkpt lat="27.61" lon="-82.61"><ele>-1.4</ele><time>2024-06-30T12:00:05Z</time></trkpt>
    </trkseg>
    <trkseg>
      <trkpt lat="27.62" lon="-82.62"/>
      <trkpt lat="27.63" lon="-82.63"/>
      <trkpt lat="27.63" lon="-82.64"/>
    </trkseg>
  </trk>
</gpx>
END
