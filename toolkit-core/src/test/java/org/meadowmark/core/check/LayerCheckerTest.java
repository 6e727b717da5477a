package org.meadowmark.core.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.check.Samples.feature;
import static org.meadowmark.core.check.Samples.header;
import static org.meadowmark.core.check.Samples.parameters;
import static org.meadowmark.core.check.Samples.source;
import static org.meadowmark.core.check.Samples.tables;
import static org.meadowmark.core.check.Samples.wkt;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.model.SiteNotes;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LengthUnit;

class LayerCheckerTest {
  private static final String LINE = "LINESTRING (0 0, 10 0)";
  private static final String SQUARE = "POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0))";

  private final FindingLog log = new FindingLog();

  private CheckedLayer<Scar> scars(LayerSource source, String[] names, Object[]... features) {
    LayerChecker<Scar> checker = LayerChecker.scars(source, parameters(), tables(), log);
    checker.header(header(names));
    int fid = 0;
    for (Object[] feature : features) {
      Map<String, Object> values = new HashMap<>();
      for (int i = 0; i < names.length; i++) {
        if (feature[i + 1] != null) {
          values.put(names[i], feature[i + 1]);
        }
      }
      Geometry geometry = feature[0] == null ? null : wkt((String) feature[0]);
      checker.feature(feature("f" + fid++, geometry, values));
    }
    return checker.checked();
  }

  private CheckedLayer<Scar> oneScar(String wkt) {
    return scars(
        source(LayerRole.SCARS),
        new String[] {"id", "cause", "width"},
        new Object[] {wkt, "7", "propeller", 0.5});
  }

  private CheckedLayer<Bed> oneBed(String wkt) {
    LayerChecker<Bed> checker = LayerChecker.beds(source(LayerRole.BEDS), tables(), log);
    checker.header(header());
    checker.feature(feature("1", wkt(wkt), Map.of()));
    return checker.checked();
  }

  private static Object[] row(Object... values) {
    return values;
  }

  private Finding only(FindingCode code) {
    List<Finding> found = log.sorted().stream().filter(f -> f.code() == code).toList();
    assertThat(found).as(code.name()).hasSize(1);
    return found.get(0);
  }

  @Nested
  class Geometries {
    @Test
    void goodLineIsKeptWithoutRemark() {
      CheckedLayer<Scar> layer = oneScar(LINE);
      Scar scar = layer.features().get(0);
      assertThat(scar.id()).isEqualTo("7");
      assertThat(scar.ref()).isEqualTo(new FeatureRef("scars.csv", "layer", "7"));
      assertThat(scar.cause()).isEqualTo("propeller");
      assertThat(scar.widthMetres()).isEqualTo(0.5);
      assertThat(scar.widthSource()).isEqualTo(WidthSource.MEASURED);
      assertThat(log.size()).isZero();
      assertThat(layer.count().read()).isEqualTo(1);
      assertThat(layer.count().used()).isEqualTo(1);
      assertThat(layer.count().skipped()).isZero();
    }

    @Test
    void repeatedPointsStayWithoutRemark() {
      assertThat(oneScar("LINESTRING (0 0, 0 0, 5 0, 5 0, 10 0)").features()).hasSize(1);
      assertThat(log.size()).isZero();
    }

    @Test
    void polygonScarNeedsNoWidth() {
      Scar scar = oneScar(SQUARE).features().get(0);
      assertThat(scar.widthSource()).isEqualTo(WidthSource.OUTLINE);
      assertThat(scar.widthMetres()).isZero();
    }

    static Stream<Arguments> unusable() {
      return Stream.of(
          Arguments.of(null, FindingCode.NULL_GEOMETRY),
          Arguments.of("LINESTRING EMPTY", FindingCode.EMPTY_GEOMETRY),
          Arguments.of("LINESTRING (1 1, 1 1, 1 1)", FindingCode.ZERO_LENGTH),
          Arguments.of("POLYGON ((0 0, 5 0, 0 0, 0 0))", FindingCode.ZERO_LENGTH),
          Arguments.of("POINT (1 1)", FindingCode.WRONG_GEOMETRY_TYPE),
          Arguments.of("MULTIPOINT ((1 1), (2 2))", FindingCode.WRONG_GEOMETRY_TYPE),
          Arguments.of("GEOMETRYCOLLECTION (POINT (1 1))", FindingCode.WRONG_GEOMETRY_TYPE));
    }

    @ParameterizedTest
    @MethodSource("unusable")
    void unusableScarIsListedAndSkipped(String text, FindingCode code) {
      CheckedLayer<Scar> layer =
          scars(source(LayerRole.SCARS), new String[] {"width"}, row(text, 1.0), row(LINE, 1.0));
      assertThat(layer.features()).hasSize(1);
      assertThat(only(code).treatment()).isEqualTo(Treatment.SKIPPED);
      assertThat(layer.count().read()).isEqualTo(2);
      assertThat(layer.count().skipped()).isEqualTo(1);
    }

    @Test
    void coordinateThatIsNoNumberIsSkipped() {
      LayerChecker<Scar> checker =
          LayerChecker.scars(source(LayerRole.SCARS), parameters(), tables(), log);
      checker.header(header("width"));
      Geometry line =
          new GeometryFactory()
              .createLineString(
                  new Coordinate[] {new Coordinate(0, Double.NaN), new Coordinate(1, 1)});
      checker.feature(feature("1", line, Map.of("width", 1.0)));
      assertThat(checker.checked().features()).isEmpty();
      assertThat(only(FindingCode.NON_FINITE_COORDINATE).treatment()).isEqualTo(Treatment.SKIPPED);
    }

    @Test
    void missingHeightIsNoFault() {
      assertThat(oneScar("LINESTRING Z (0 0 NaN, 10 0 NaN)").features()).hasSize(1);
      assertThat(log.size()).isZero();
    }

    @Test
    void crossingLineIsNotedAndKept() {
      assertThat(oneScar("LINESTRING (0 0, 10 10, 10 0, 0 10)").features()).hasSize(1);
      assertThat(only(FindingCode.SELF_CROSSING).level()).isEqualTo(Level.NOTE);
    }

    @Test
    void closedLineDoesNotCrossItself() {
      assertThat(oneScar("LINESTRING (0 0, 10 0, 10 10, 0 0)").features()).hasSize(1);
      assertThat(log.size()).isZero();
    }

    @Test
    void partWithoutLengthIsDropped() {
      CheckedLayer<Scar> layer = oneScar("MULTILINESTRING ((0 0, 10 0), (5 5, 5 5))");
      assertThat(layer.features().get(0).geometry().getLength()).isEqualTo(10);
      assertThat(layer.count().repaired()).isEqualTo(1);
      assertThat(only(FindingCode.ZERO_LENGTH).treatment()).isEqualTo(Treatment.REPAIRED);
    }

    @Test
    void polygonsOfCollectionAreTaken() {
      CheckedLayer<Bed> layer =
          oneBed("GEOMETRYCOLLECTION (POINT (1 1), " + SQUARE + ", LINESTRING (0 0, 1 1))");
      assertThat(layer.features().get(0).geometry().getArea()).isEqualTo(100);
      assertThat(only(FindingCode.WRONG_GEOMETRY_TYPE).action()).startsWith("1 of its 3 parts");
    }

    @Test
    void bowTieIsRepairedToBothHalves() {
      // Two triangles of base 10 and height 5.
      CheckedLayer<Bed> layer = oneBed("POLYGON ((0 0, 10 10, 10 0, 0 10, 0 0))");
      Geometry repaired = layer.features().get(0).geometry();
      assertThat(repaired.isValid()).isTrue();
      assertThat(repaired.getArea()).isCloseTo(50, within(1e-9));
      Finding finding = only(FindingCode.INVALID_POLYGON);
      assertThat(finding.treatment()).isEqualTo(Treatment.REPAIRED);
      assertThat(finding.problem()).contains("self-intersection");
      assertThat(finding.action()).contains("enclosed no area with their signs");
      assertThat(layer.count().repaired()).isEqualTo(1);
    }

    @Test
    void repairStatesChangeOfArea() {
      // A hole that is not inside the shell becomes grass: 100 - 4 before, 100 + 4 after.
      oneBed("POLYGON ((0 0, 10 0, 10 10, 0 10, 0 0), (20 0, 22 0, 22 2, 20 2, 20 0))");
      assertThat(only(FindingCode.INVALID_POLYGON).action()).contains("+8.333 %");
    }

    @Test
    void lineIsNoBedAndPolygonNoChannel() {
      assertThat(oneBed(LINE).features()).isEmpty();
      LayerChecker<Channel> channels = LayerChecker.channels(source(LayerRole.CHANNELS), log);
      channels.header(header("NAME"));
      channels.feature(feature("1", wkt(SQUARE), Map.of()));
      channels.feature(feature("2", wkt(LINE), Map.of("NAME", " Long Cut ")));
      CheckedLayer<Channel> layer = channels.checked();
      assertThat(layer.features()).extracting(Channel::name).containsExactly("Long Cut");
      assertThat(log.counts())
          .filteredOn(count -> count.code() == FindingCode.WRONG_GEOMETRY_TYPE)
          .extracting(FindingLog.Count::role)
          .containsExactly(LayerRole.BEDS, LayerRole.CHANNELS);
    }

    @Test
    void barriersMayBeLinesButSurveyedAreasMayNot() {
      for (LayerRole role : List.of(LayerRole.BARRIERS, LayerRole.SURVEYED_AREA)) {
        LayerChecker<MapArea> areas = LayerChecker.areas(source(role), log);
        areas.header(header());
        areas.feature(feature("1", wkt(LINE), Map.of()));
        areas.feature(feature("2", wkt(SQUARE), Map.of()));
        assertThat(areas.checked().features()).hasSize(role == LayerRole.BARRIERS ? 2 : 1);
      }
    }
  }

  @Nested
  class Values {
    @Test
    void fileWordsAreTranslatedWithoutCase() {
      LayerSource source =
          source(
              LayerRole.SCARS,
              Map.of(Field.CAUSE, "TYPE", Field.ID, "NO"),
              Map.of(Field.CAUSE, Map.of("Prop Scar", "propeller", "2", "hull")),
              LengthUnit.METRE);
      CheckedLayer<Scar> layer =
          scars(
              source,
              new String[] {"NO", "type", "width"},
              row(LINE, 1L, "PROP scar ", 1.0),
              row(LINE, 2.0, 2L, 1.0),
              row(LINE, "c", "Propeller", 1.0));
      assertThat(layer.features())
          .extracting(Scar::cause)
          .containsExactly("propeller", "hull", "propeller");
      assertThat(layer.features()).extracting(Scar::id).containsExactly("1", "2", "c");
      assertThat(log.size()).isZero();
    }

    @Test
    void unknownCauseIsListedWithTheKnownOnes() {
      CheckedLayer<Scar> layer =
          scars(source(LayerRole.SCARS), new String[] {"cause"}, row(LINE, "meteor"));
      assertThat(layer.features().get(0).cause()).isEqualTo("unknown");
      Finding finding = only(FindingCode.CAUSE_UNKNOWN);
      assertThat(finding.message())
          .isEqualTo(
              "scars.csv: layer: f0: unknown cause 'meteor'; taken as 'unknown'; known causes:"
                  + " propeller, hull, unknown");
      assertThat(finding.treatment()).isEqualTo(Treatment.KEPT);
    }

    @Test
    void unknownSpeciesIsListed() {
      LayerChecker<Bed> checker = LayerChecker.beds(source(LayerRole.BEDS), tables(), log);
      checker.header(header("Species", "texture"));
      checker.feature(
          feature("1", wkt(SQUARE), Map.of("Species", "TurtleGrass", "texture", "Patchy")));
      checker.feature(feature("2", wkt(SQUARE), Map.of("Species", "kelp")));
      checker.feature(feature("3", wkt(SQUARE), Map.of()));
      assertThat(checker.checked().features())
          .extracting(Bed::species)
          .containsExactly("turtlegrass", "unknown", "");
      assertThat(only(FindingCode.SPECIES_UNKNOWN).where().featureId()).isEqualTo("2");
    }

    @ParameterizedTest
    @CsvSource({"m, 0.3048", "cm, 30.48", "mm, 304.8", "in, 12", "ft, 1"})
    void widthUnitsGiveOneFoot(String unit, double width) {
      LayerSource source = source(LayerRole.SCARS, Map.of(), Map.of(), LengthUnit.ofKey(unit));
      Scar scar = scars(source, new String[] {"width"}, row(LINE, width)).features().get(0);
      assertThat(scar.widthMetres()).isCloseTo(0.3048, within(1e-12));
    }

    @Test
    void columnThatStatesMetresIsInMetres() {
      LayerSource source = source(LayerRole.SCARS, Map.of(), Map.of(), LengthUnit.FOOT);
      Scar scar =
          scars(source, new String[] {"width", "WIDTH_M"}, row(LINE, 9.0, "0.7")).features().get(0);
      assertThat(scar.widthMetres()).isEqualTo(0.7);
    }

    @Test
    void excavationIsReadInTheUnitOfTheLayer() {
      LayerSource source = source(LayerRole.SCARS, Map.of(), Map.of(), LengthUnit.FOOT);
      String[] feet = {"width", "excavation"};
      assertThat(scars(source, feet, row(LINE, 1, 1)).features().get(0).excavationMetres())
          .hasValueCloseTo(0.3048, within(1e-12));
      String[] metres = {"width", "EXCAVATION_M"};
      assertThat(scars(source, metres, row(SQUARE, null, "0")).features().get(0).excavationMetres())
          .hasValue(0);
      assertThat(scars(source, metres, row(LINE, 1, null)).features().get(0).excavationMetres())
          .isEmpty();
    }

    @Test
    void notesOnTheGroundAreReadForScarsAndBeds() {
      Map<Field, Map<String, String>> words =
          Map.of(Field.MUCK, Map.of("Soft mud", "yes", "sand", "no"));
      LayerSource source =
          source(LayerRole.SCARS, Map.of(Field.MUCK, "BOTTOM"), words, LengthUnit.METRE);
      String[] columns = {"width", "BOTTOM", "Grazing", "rescarred"};
      List<Scar> scars =
          scars(
                  source,
                  columns,
                  row(LINE, 0.5, "soft mud", true, "N"),
                  row(SQUARE, null, "Sand", 0.0, null),
                  row("POLYGON ((20 0, 30 0, 30 10, 20 0))", null, null, "", "1"))
              .features();
      assertThat(scars)
          .extracting(Scar::notes)
          .containsExactly(
              new SiteNotes(Optional.of(true), Optional.of(true), Optional.of(false)),
              new SiteNotes(Optional.of(false), Optional.of(false), Optional.empty()),
              new SiteNotes(Optional.empty(), Optional.empty(), Optional.of(true)));
      LayerChecker<Bed> beds = LayerChecker.beds(source(LayerRole.BEDS), tables(), log);
      beds.header(header("muck"));
      beds.feature(feature("1", wkt(SQUARE), Map.of("muck", "YES")));
      assertThat(beds.checked().features().get(0).notes().isMuck()).contains(true);
    }

    @Test
    void aNoteThatIsNeitherYesNorNoIsListedAndNotUsed() {
      Scar scar =
          scars(source(LayerRole.SCARS), new String[] {"width", "grazed"}, row(LINE, 0.5, "a bit"))
              .features()
              .get(0);
      assertThat(scar.notes()).isEqualTo(SiteNotes.NONE);
      assertThat(only(FindingCode.VALUE_UNREADABLE).treatment()).isEqualTo(Treatment.KEPT);
      assertThat(only(FindingCode.VALUE_UNREADABLE).problem())
          .isEqualTo("grazed 'a bit' is neither yes nor no");
      assertThat(only(FindingCode.VALUE_UNREADABLE).action()).contains("survey file");
    }

    @ParameterizedTest
    @ValueSource(strings = {"deep", "-0.1", "NaN"})
    void impossibleExcavationIsListedAndNotUsed(String depth) {
      Scar scar =
          scars(
                  source(LayerRole.SCARS),
                  new String[] {"width", "excavation", "cause"},
                  row(LINE, 0.5, depth, "propeller"))
              .features()
              .get(0);
      assertThat(scar.excavationMetres()).isEmpty();
      assertThat(only(FindingCode.VALUE_UNREADABLE).treatment()).isEqualTo(Treatment.KEPT);
      assertThat(only(FindingCode.VALUE_UNREADABLE).problem()).contains(depth);
    }

    @ParameterizedTest
    @CsvSource({
      "0, WIDTH_OUT_OF_RANGE",
      "-1, WIDTH_OUT_OF_RANGE",
      "wide, VALUE_UNREADABLE",
      "NaN, VALUE_UNREADABLE",
      "0.4f, VALUE_UNREADABLE"
    })
    void impossibleWidthIsReplacedByTheDefault(String width, FindingCode code) {
      CheckedLayer<Scar> layer =
          scars(
              source(LayerRole.SCARS),
              new String[] {"width", "cause"},
              row(LINE, width, "propeller"));
      Scar scar = layer.features().get(0);
      assertThat(scar.widthMetres()).isEqualTo(0.4);
      assertThat(scar.widthSource()).isEqualTo(WidthSource.CAUSE_DEFAULT);
      assertThat(only(code).treatment()).isEqualTo(Treatment.REPAIRED);
      assertThat(layer.count().repaired()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({"0.049, true", "0.05, false", "20, false", "20.01, true"})
    void oddWidthIsKeptAndListed(double width, boolean odd) {
      Scar scar =
          scars(source(LayerRole.SCARS), new String[] {"width", "cause"}, row(LINE, width, "hull"))
              .features()
              .get(0);
      assertThat(scar.widthMetres()).isEqualTo(width);
      assertThat(log.size()).isEqualTo(odd ? 1 : 0);
      if (odd) {
        assertThat(only(FindingCode.WIDTH_OUT_OF_RANGE).level()).isEqualTo(Level.WARNING);
      }
    }

    @Test
    void missingWidthTakesTheDefaultOfTheCause() {
      CheckedLayer<Scar> layer =
          scars(
              source(LayerRole.SCARS),
              new String[] {"width", "cause"},
              row(LINE, null, "propeller"),
              row(LINE, " ", "propeller"));
      assertThat(layer.features()).extracting(Scar::widthMetres).containsExactly(0.4, 0.4);
      assertThat(log.counts())
          .containsExactly(
              new FindingLog.Count(
                  LayerRole.SCARS, FindingCode.WIDTH_MISSING, Level.NOTE, Treatment.KEPT, 2));
    }

    @Test
    void layerWithoutWidthColumnHasOneRemark() {
      scars(
          source(LayerRole.SCARS),
          new String[] {"cause"},
          row(LINE, "propeller"),
          row(LINE, "propeller"),
          row(SQUARE, "hull"));
      Finding finding = only(FindingCode.WIDTH_MISSING);
      assertThat(finding.where().featureId()).isEmpty();
      assertThat(finding.problem()).contains("2 scar line(s)");
    }

    @Test
    void causeWithoutDefaultNeedsAWidth() {
      CheckedLayer<Scar> layer =
          scars(
              source(LayerRole.SCARS),
              new String[] {"width", "cause"},
              row(LINE, null, "hull"),
              row(LINE, -2.0, "hull"),
              row(LINE, 3.0, "hull"));
      assertThat(layer.features()).hasSize(1);
      assertThat(log.sorted())
          .extracting(Finding::code, Finding::treatment)
          .containsOnly(tuple(FindingCode.WIDTH_MISSING, Treatment.SKIPPED));
      assertThat(layer.count().skipped()).isEqualTo(2);
    }

    @Test
    void scarNarrowerThanPixelIsNoted() {
      LayerChecker<Scar> checker =
          LayerChecker.scars(
              source(LayerRole.SCARS),
              parameters(Optional.empty(), true, OptionalDouble.of(0.3)),
              tables(),
              log);
      checker.header(header("width", "cause"));
      checker.feature(feature("1", wkt(LINE), Map.of("width", 0.29, "cause", "propeller")));
      checker.feature(feature("2", wkt(LINE), Map.of("width", 0.3, "cause", "propeller")));
      checker.checked();
      assertThat(only(FindingCode.NARROWER_THAN_PIXEL).where().featureId()).isEqualTo("1");
    }

    static Stream<Arguments> dates() {
      LocalDate day = LocalDate.of(2024, 5, 31);
      return Stream.of(
          Arguments.of(day, day),
          Arguments.of("2024-05-31", day),
          Arguments.of("2024-05-31T10:20:30Z", day),
          Arguments.of("20240531", day),
          Arguments.of("2024-05", LocalDate.of(2024, 5, 1)),
          Arguments.of("2024", LocalDate.of(2024, 1, 1)),
          Arguments.of(2024L, LocalDate.of(2024, 1, 1)),
          Arguments.of("31/05/2024", null),
          Arguments.of("+999", null),
          Arguments.of("2024-02-30", null));
    }

    @ParameterizedTest
    @MethodSource("dates")
    void datesAreUnderstood(Object value, LocalDate expected) {
      Scar scar =
          scars(
                  source(LayerRole.SCARS),
                  new String[] {"date", "width", "cause"},
                  row(LINE, value, 1.0, "hull"))
              .features()
              .get(0);
      assertThat(scar.date()).isEqualTo(Optional.ofNullable(expected));
      assertThat(log.size()).isEqualTo(expected == null ? 1 : 0);
    }

    @Test
    void repeatedIdsAreMadeUnique() {
      CheckedLayer<Scar> layer =
          scars(
              source(LayerRole.SCARS),
              new String[] {"id", "width", "cause"},
              row(LINE, "a", 1.0, "hull"),
              row(LINE, "a-2", 1.0, "hull"),
              row(LINE, "a", 1.0, "hull"),
              row(LINE, "a", 1.0, "hull"),
              row(LINE, null, 1.0, "hull"));
      assertThat(layer.features())
          .extracting(Scar::id)
          .containsExactly("a", "a-2", "a-3", "a-4", "f4");
      assertThat(log.sorted())
          .filteredOn(f -> f.code() == FindingCode.DUPLICATE_ID)
          .extracting(f -> f.where().featureId())
          .containsExactly("a-3", "a-4");
      assertThat(only(FindingCode.VALUE_UNREADABLE).where().featureId()).isEqualTo("f4");
    }

    @Test
    void soundingsNeedADepth() {
      LayerSource source =
          source(LayerRole.DEPTH, Map.of(Field.DEPTH, "z"), Map.of(), LengthUnit.FOOT);
      LayerChecker<Sounding> checker = LayerChecker.soundings(source, log);
      checker.header(header("z"));
      checker.feature(feature("1", wkt("POINT (0 0)"), Map.of("z", 10L)));
      checker.feature(feature("2", wkt("POINT (0 0)"), Map.of("z", "deep")));
      checker.feature(feature("3", wkt("POINT (0 0)"), Map.of()));
      CheckedLayer<Sounding> layer = checker.checked();
      assertThat(layer.features()).extracting(Sounding::depthMetres).containsExactly(10 * 0.3048);
      assertThat(layer.count().skipped()).isEqualTo(2);
    }
  }

  @Nested
  class Layers {
    @Test
    void mappedAttributeThatIsMissingIsAnErrorThatListsWhatThereIs() {
      LayerSource source =
          source(LayerRole.SCARS, Map.of(Field.CAUSE, "kind"), Map.of(), LengthUnit.METRE);
      scars(source, new String[] {"type", "width"}, row(LINE, "x", 1.0));
      Finding finding = only(FindingCode.ATTRIBUTE_MISSING);
      assertThat(finding.level()).isEqualTo(Level.ERROR);
      assertThat(finding.message())
          .isEqualTo(
              "scars.csv: layer: the layer has no attribute 'kind' for 'cause'; it has: type,"
                  + " width");
      assertThat(log.hasErrors()).isTrue();
    }

    @Test
    void layerWithoutReferenceSystemIsRefusedWithTheOption() {
      LayerChecker<Scar> checker =
          LayerChecker.scars(source(LayerRole.SCARS), parameters(), tables(), log);
      LayerHeader header = new LayerHeader("layer", List.of(), Optional.empty(), -1);
      assertThatThrownBy(() -> checker.header(header))
          .isInstanceOf(SurveyInputException.class)
          .hasMessage(
              "scars.csv: layer: the file does not say what coordinate reference system it is in;"
                  + " state it with crs = \"EPSG:n\" for the layer in the survey file or --crs"
                  + " scars=EPSG:n");
    }

    @Test
    void surveysChoiceOfReferenceSystemWins() {
      LayerSource plain = source(LayerRole.BEDS);
      LayerSource source =
          new LayerSource(
              plain.role(),
              plain.file(),
              plain.fileLabel(),
              plain.layer(),
              Optional.of("EPSG:4326"),
              AxisOrder.AS_DEFINED,
              Map.of(),
              Map.of(),
              LengthUnit.METRE,
              LayerSource.GeometryColumns.USUAL);
      LayerChecker<Bed> checker = LayerChecker.beds(source, tables(), log);
      checker.header(header());
      checker.feature(feature("1", wkt(SQUARE), Map.of()));
      assertThat(checker.checked().crs())
          .isEqualTo(CrsText.ofCode("EPSG:4326").withAxisOrder(AxisOrder.AS_DEFINED));
      assertThat(only(FindingCode.CRS_MISMATCH).level()).isEqualTo(Level.NOTE);
    }

    @Test
    void layerOfPointsGivenAsScarsIsAnError() {
      scars(source(LayerRole.SCARS), new String[] {}, row("POINT (1 1)"), row("POINT (2 1)"));
      assertThat(only(FindingCode.NO_FEATURES).level()).isEqualTo(Level.ERROR);
    }

    @Test
    void emptyScarLayerIsAWarningAndEmptyBedLayerAnError() {
      scars(source(LayerRole.SCARS), new String[] {});
      assertThat(only(FindingCode.NO_FEATURES).level()).isEqualTo(Level.WARNING);
      LayerChecker<Bed> beds = LayerChecker.beds(source(LayerRole.BEDS), tables(), log);
      beds.header(header());
      beds.checked();
      assertThat(log.hasErrors()).isTrue();
    }

    @Test
    void featuresThatTheReaderSkippedAreCounted() {
      LayerChecker<Scar> checker =
          LayerChecker.scars(source(LayerRole.SCARS), parameters(), tables(), log);
      checker.header(header("width"));
      checker.finding(
          new Finding(
              FindingCode.UNREADABLE_FEATURE,
              Level.WARNING,
              Treatment.SKIPPED,
              LayerRole.SCARS,
              new FeatureRef("scars.csv", "layer", "line 7"),
              "bad text",
              "left out"));
      checker.feature(feature("1", wkt(LINE), Map.of("width", 1.0)));
      assertThat(checker.checked().count())
          .extracting("read", "used", "skipped")
          .containsExactly(2L, 1L, 1L);
    }

    @Test
    void checkedBeforeReadingIsAMistakeOfTheCaller() {
      LayerChecker<Scar> checker =
          LayerChecker.scars(source(LayerRole.SCARS), parameters(), tables(), log);
      assertThatThrownBy(checker::checked).isInstanceOf(IllegalStateException.class);
    }
  }
}
