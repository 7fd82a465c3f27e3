/**
 * Files for other programs: CSV (RFC 4180), GeoPackage (OGC 12-128), GeoTIFF (OGC 19-008), GPX 1.1 and GeoJSON (RFC 7946)
 * layers. Spreadsheets get the units of the reports, everything else SI.
 *
 * <p>For other packages: {@link BatchCsv}, {@link Cells}, {@link FieldGeoPackage}, {@link FieldMap}, {@link GeoPackage}, {@link Layers},
 * {@link PassesCsv}, {@link PlacesGpx}, {@link ReceivedTiff}, {@link RowsCsv}, {@link SeasonCsv}.
 */
@NullMarked
package io.rowledger.export;

import org.jspecify.annotations.NullMarked;
