package org.meadowmark.core.project;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.PlainText;
import org.meadowmark.core.model.SurveyInputException;

/**
 * Looks up coordinate reference systems by authority code or by well-known text.
 *
 * <p>A text that carries its own {@code EPSG} code, or that the EPSG database knows by name and
 * parameters, is replaced by the database's definition. An ESRI text whose projection is not found
 * but whose datum is keeps its projection on the database's datum: otherwise a layer with a .prj
 * and one with a code would be shifted against each other by the datum's shift to WGS 84, which
 * only the database has. Text after the 2019 standard (WKT 2) is understood where it carries an
 * EPSG code. Vertical axes are dropped.
 *
 * <p>The first look-up opens the EPSG database, which takes a second or two. Safe for use by
 * several threads; answers are kept.
 */
public final class CrsCatalog {
  private static final Pattern CODE_AT_END =
      Pattern.compile(
          "(?:AUTHORITY|ID)\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?(\\d+)\"?\\s*\\]\\s*\\]\\s*$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern URN_OR_URL =
      Pattern.compile(
          "(?:urn:(?:ogc|x-ogc):def:crs:|https?://www\\.opengis\\.net/def/crs/)"
              + "([A-Za-z]+)[:/][^:/]*[:/]([A-Za-z0-9]+)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern AXIS_CLAUSE =
      Pattern.compile(",\\s*AXIS\\s*\\[[^\\]]*\\]", Pattern.CASE_INSENSITIVE);
  private static final Pattern LONGITUDE_FIRST_WGS84 =
      Pattern.compile("(?:OGC|CRS):(?:CRS)?84H?", Pattern.CASE_INSENSITIVE);

  private static final int LONGEST_WKT = 100_000;
  private static final int DEEPEST_WKT = 100;
  private static final int LONGEST_NAME = 100;

  private final Map<CrsText, ResolvedCrs> known = new ConcurrentHashMap<>();

  /**
   * Looks up the reference system of a layer.
   *
   * @param text what the file or the survey says
   * @param role what the layer stands for
   * @param layer the layer, for messages
   * @return the system, with easting or longitude as its first axis
   * @throws SurveyInputException if it is not known or does not describe places on a map
   */
  public ResolvedCrs resolve(CrsText text, LayerRole role, FeatureRef layer) {
    ResolvedCrs answer = known.get(text);
    if (answer == null) {
      try {
        answer = lookUp(text);
      } catch (FactoryException | RuntimeException e) {
        throw new SurveyInputException(unknown(text, role, layer), e);
      }
      known.put(text, answer);
    }
    return answer;
  }

  private static Finding unknown(CrsText text, LayerRole role, FeatureRef layer) {
    return new Finding(
        FindingCode.CRS_UNKNOWN,
        Finding.Level.ERROR,
        Finding.Treatment.REFUSED,
        role,
        layer,
        "the coordinate reference system '"
            + PlainText.line(text.label(), LONGEST_NAME)
            + "' is not known",
        "state one that EPSG lists with crs = \"EPSG:n\" for the layer in the survey file or --crs "
            + role.key()
            + "=EPSG:n");
  }

  private static ResolvedCrs lookUp(CrsText text) throws FactoryException {
    String wkt = text.wkt().orElse("");
    if (wkt.length() > LONGEST_WKT || isDeep(wkt)) {
      throw new FactoryException("no text of a reference system is that long or that deep");
    }
    Optional<String> code = text.code().map(CrsCatalog::plainCode);
    if (code.isPresent()) {
      try {
        return ofCode(code.get(), text.axisOrder());
      } catch (FactoryException e) {
        if (text.wkt().isEmpty()) {
          throw e;
        }
      }
    }
    return ofWkt(text.wkt().orElseThrow(), text.axisOrder());
  }

  /** The library reads nested brackets by recursion. */
  private static boolean isDeep(String wkt) {
    int depth = 0;
    for (int i = 0; i < wkt.length() && depth <= DEEPEST_WKT; i++) {
      char c = wkt.charAt(i);
      if (c == '[' || c == '(') {
        depth++;
      } else if (c == ']' || c == ')') {
        depth--;
      }
    }
    return depth > DEEPEST_WKT;
  }

  private static ResolvedCrs ofCode(String code, AxisOrder order) throws FactoryException {
    if (LONGITUDE_FIRST_WGS84.matcher(code).matches()) {
      return new ResolvedCrs(DefaultGeographicCRS.WGS84, false, "OGC:CRS84");
    }
    CoordinateReferenceSystem eastFirst = horizontal(CRS.decode(code, true));
    boolean northFirst =
        order == AxisOrder.AS_DEFINED && isNorthFirst(horizontal(CRS.decode(code, false)));
    if (isNorthFirst(eastFirst)) {
      // Compound systems keep their axes whatever is asked for; their horizontal part does not.
      return ofCode(identifier(eastFirst).orElseThrow(FactoryException::new), order);
    }
    return new ResolvedCrs(eastFirst, northFirst, code);
  }

  private static ResolvedCrs ofWkt(String wkt, AxisOrder order) throws FactoryException {
    Matcher stated = CODE_AT_END.matcher(wkt);
    if (stated.find()) {
      try {
        return ofCode("EPSG:" + stated.group(1), order);
      } catch (FactoryException e) {
        // A number that this version of the database does not have: the text itself may do.
      }
    }
    CoordinateReferenceSystem asWritten = horizontal(CRS.parseWKT(wkt));
    CoordinateReferenceSystem parsed =
        horizontal(CRS.parseWKT(AXIS_CLAUSE.matcher(wkt).replaceAll("")));
    boolean northFirst = order == AxisOrder.AS_DEFINED && isNorthFirst(asWritten);
    Optional<String> identifier = identifier(parsed);
    if (identifier.isPresent()) {
      ResolvedCrs found = ofCode(identifier.get(), order);
      boolean saysNothing = !AXIS_CLAUSE.matcher(wkt).find();
      return new ResolvedCrs(
          found.crs(), saysNothing ? found.northFirst() : northFirst, found.label());
    }
    return new ResolvedCrs(onKnownDatum(parsed), northFirst, parsed.getName().getCode());
  }

  private static CoordinateReferenceSystem onKnownDatum(CoordinateReferenceSystem crs)
      throws FactoryException {
    if (!(crs instanceof ProjectedCRS projected)) {
      return crs;
    }
    Optional<String> identifier = identifier(projected.getBaseCRS());
    if (identifier.isEmpty()
        || !(CRS.decode(identifier.get(), true) instanceof GeographicCRS known)) {
      return crs;
    }
    return Reprojection.of(
        crs.getName().getCode(), projected, known, projected.getCoordinateSystem());
  }

  private static CoordinateReferenceSystem horizontal(CoordinateReferenceSystem crs)
      throws FactoryException {
    CoordinateReferenceSystem flat = CRS.getHorizontalCRS(crs);
    if (!(flat instanceof GeographicCRS || flat instanceof ProjectedCRS)) {
      throw new FactoryException("not a system of places on a map: " + crs.getName());
    }
    return flat;
  }

  private static Optional<String> identifier(CoordinateReferenceSystem crs)
      throws FactoryException {
    String identifier = CRS.lookupIdentifier(crs, false);
    return Optional.ofNullable(identifier).filter(id -> id.startsWith("EPSG:"));
  }

  private static boolean isNorthFirst(CoordinateReferenceSystem crs) {
    return CRS.getAxisOrder(crs) == CRS.AxisOrder.NORTH_EAST;
  }

  private static String plainCode(String code) {
    String stripped = code.strip();
    Matcher longForm = URN_OR_URL.matcher(stripped);
    String plain = longForm.matches() ? longForm.group(1) + ":" + longForm.group(2) : stripped;
    return plain.toUpperCase(Locale.ROOT);
  }
}
