package org.meadowmark.core.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.reference.TableLibrary.Table;

class ReferenceTablesReaderTest {
  private static final String CAUSE_HEADER = "key,label,default_width_m,width_variation,source\n";
  private static final String CLASS_HEADER =
      "key,label,lowest_share,lowest_included,highest_share,highest_included,source\n";

  @TempDir Path folder;

  @Test
  void packedTablesHaveTheKeysOfTheTrade() {
    ReferenceTables tables = ReferenceTablesReader.bundled();

    assertThat(tables.species().keySet())
        .containsExactly(
            "turtlegrass",
            "shoalgrass",
            "manateegrass",
            "eelgrass",
            "widgeongrass",
            "mixed",
            "unknown");
    assertThat(tables.causes().keySet())
        .containsExactly("propeller", "hull", "anchor", "mooring", "grounding", "unknown");
    assertThat(tables.causes().get("anchor").defaultWidthMetres()).isEmpty();
    assertThat(tables.causes().get("unknown").defaultWidthMetres())
        .isEqualTo(tables.causes().get("propeller").defaultWidthMetres())
        .hasValue(0.4);
    assertThat(tables.severityClasses())
        .extracting(SeverityClass::key)
        .containsExactly("none", "light", "moderate", "severe");
    assertThat(tables.deviceRules())
        .extracting(DeviceRule::causeKey)
        .containsAll(tables.causes().keySet());
  }

  /**
   * Limits of Sargent, Leary, Crewz and Kruer (1995), FMRI TR-1: light below 5 %, moderate 5–20 %,
   * severe above 20 %, of a bed of 10,000 square metres.
   */
  @ParameterizedTest
  @CsvSource({
    "0, none",
    "0.0001, light",
    "499.99, light",
    "500, moderate",
    "2000, moderate",
    "2000.01, severe",
    "10000, severe"
  })
  void severityFollowsThePublishedLimits(double scarredSquareMetres, String key) {
    assertThat(ReferenceTablesReader.bundled().severityOf(scarredSquareMetres / 10_000))
        .map(SeverityClass::key)
        .hasValue(key);
  }

  @ParameterizedTest
  @EnumSource(Table.class)
  void everyPackedTableCanBePrinted(Table table) {
    assertThat(TableLibrary.bundled().text(table)).contains("source\n").endsWith("\n");
  }

  @Test
  void tableOfTheUsersFolderTakesThePlaceOfThePackedOne() throws IOException {
    write("scar-causes.csv", "\uFEFF" + CAUSE_HEADER + "unknown,?,1.5,0,own count\r\n");
    write(
        "device-rules.csv",
        "cause,pattern,device,shape,reason,source\nunknown,any,none,none,\"no, none\",own\n");

    ReferenceTables tables = ReferenceTablesReader.read(TableLibrary.of(folder));

    assertThat(tables.causes()).containsOnlyKeys("unknown");
    assertThat(tables.causes().get("unknown").defaultWidthMetres()).hasValue(1.5);
    assertThat(tables.deviceRules()).extracting(DeviceRule::reason).containsExactly("no, none");
    assertThat(tables.species()).containsKey("eelgrass");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "propeller,p,0.4m,0.3,s | line 3: default_width_m '0.4m' is no number",
        "propeller,p,NaN,0.3,s | line 3: default_width_m 'NaN' is no number",
        "propeller,p,0,0.3,s | line 3: default_width_m must be more than 0",
        "propeller,p,1,-1,s | line 3: width_variation must be 0 or more",
        "propeller,p,1,,s | line 3: width_variation is empty",
        "propeller,p,1,1, | line 3: source is empty",
        "Prop Scar,p,1,1,s | line 3: key 'Prop Scar' is no key",
        "unknown,p,1,1,s | line 3: key 'unknown' is used twice",
        "propeller,p,1,1 | line 3: has 4 values, not 5",
      })
  void aWrongRowIsRefusedWithFileAndLine(String row, String message) throws IOException {
    Path file = write("scar-causes.csv", CAUSE_HEADER + "unknown,u,,0.1,\"a, b\"\n" + row + "\n");

    assertRefused(file + ": " + message);
  }

  @Test
  void lineCountsLinesInsideQuotes() throws IOException {
    Path file = write("scar-causes.csv", CAUSE_HEADER + "unknown,\"u\nv\",,0.1,s\nx,x,wide,0,s\n");

    assertRefused(file + ": line 4: default_width_m 'wide' is no number");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "key;label;default_width_m;width_variation;source | line 1: column 'key' is missing",
        "key,label,default_width_m,width_variation | line 1: column 'source' is missing",
        "key,label,default_width_m,width_variation,source,x | line 1: column 'x' is not known",
        "key,key,label,default_width_m,width_variation,source | is not CSV",
      })
  void aWrongHeaderIsRefused(String header, String message) throws IOException {
    Path file = write("scar-causes.csv", header + "\nunknown,u,,0.1,s\n");

    assertRefused(file + ": " + message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "a,a,0,true,0.4,false,s / b,b,0.5,true,1,true,s | line 3: lowest_share leaves a gap",
        "a,a,0,true,0.4,true,s / b,b,0.4,true,1,true,s | line 3: lowest_share leaves a gap",
        "a,a,0,true,0.4,false,s / b,b,0.4,false,1,true,s | line 3: lowest_share leaves a gap",
        "a,a,0,false,1,true,s | line 2: lowest_share leaves a gap",
        "a,a,0,true,0,false,s | line 2: highest_share leaves nothing",
        "a,a,0,true,0.9,true,s | line 2: highest_share does not end at 1",
        "a,a,0,true,1.5,true,s | line 2: highest_share does not end at 1",
        "a,a,0,yes,1,true,s | line 2: lowest_included 'yes' is no flag",
      })
  void severityClassesMustCoverEveryShareOnce(String rows, String message) throws IOException {
    Path file = write("severity-classes.csv", CLASS_HEADER + rows.replace(" / ", "\n") + "\n");

    assertRefused(file + ": " + message);
  }

  @Test
  void everyFishGuildHasADistanceAndSaysWhereItComesFrom() {
    assertThat(ReferenceTablesReader.bundled().fishGuilds().values())
        .isNotEmpty()
        .allSatisfy(
            guild -> {
              assertThat(guild.crossingDistanceMetres()).isPositive();
              assertThat(guild.source()).isNotEmpty();
            });
  }

  @Test
  void aGuildThatCrossesLessThanNothingIsRefused() throws IOException {
    Path file =
        write("fish-guilds.csv", "key,label,crossing_distance_m,source\nray,rays,-1,own count\n");

    assertRefused(file + ": line 2: crossing_distance_m must be 0 or more");
  }

  /** From memory, as the table says: 0.15 m in 5 years is 0.03 m a year. */
  @Test
  void edgeRatesComeFromRecoveryTimesAndNotFromRhizomes() {
    ReferenceTables tables = ReferenceTablesReader.bundled();
    assertThat(tables.scarRecovery()).containsOnlyKeys("turtlegrass", "shoalgrass", "manateegrass");
    assertThat(tables.scarRecovery().get("turtlegrass").edgeMetresPerYear().middle())
        .isEqualTo(0.03);
    tables
        .scarRecovery()
        .forEach(
            (species, time) -> {
              assertThat(time.source()).contains("from memory");
              assertThat(time.edgeMetresPerYear().high())
                  .isLessThan(tables.rhizomeElongation().get(species).metresPerYear());
            });
  }

  @Test
  void recoveryTimesOutOfOrderOrOfNoSpeciesAreRefused() throws IOException {
    String header = "species,low_years,middle_years,high_years,scar_width_m,source\n";
    Path file = write("scar-recovery.csv", header + "eelgrass,3,2,4,0.3,own\n");
    assertRefused(
        file + ": line 2: middle_years is not between low_years and high_years, or one of them is");
    write("scar-recovery.csv", header + "eelgrass,0,2,4,0.3,own\n");
    assertRefused(file + ": line 2: middle_years is not between");
    write("scar-recovery.csv", header + "eelgrass,1,2,4,0,own\n");
    assertRefused(file + ": line 2: scar_width_m must be more than 0");
    write("scar-recovery.csv", header + "kelp,1,2,4,0.3,own\n");
    assertRefused(file + ": line 2: species 'kelp' is no species");
  }

  @Test
  void causesMustHoldTheRowForScarsOfUnknownCause() throws IOException {
    Path file = write("scar-causes.csv", CAUSE_HEADER + "propeller,p,1,1,s\n");

    assertRefused(file + ": has no row 'unknown'");
  }

  @Test
  void aRuleWithAShapeThatIsNoneIsRefused() throws IOException {
    Path file =
        write(
            "device-rules.csv",
            "cause,pattern,device,shape,reason,source\npropeller,any,d,triangle,r,s\n");

    assertRefused(file + ": line 2: shape 'triangle' is no shape of a mark; use one of: danger-");
  }

  @Test
  void aRuleForACauseThatIsNotThereIsRefused() throws IOException {
    Path file =
        write(
            "device-rules.csv", "cause,pattern,device,shape,reason,source\ntrawl,any,d,none,r,s\n");

    assertRefused(file + ": line 2: cause 'trawl' is no scar cause; use one of: propeller");
  }

  @Test
  void anEmptyTableIsRefused() throws IOException {
    assertRefused(
        write("species.csv", "key,scientific_name,common_name,source\n") + ": has no row");
  }

  @Test
  void aTableInAnotherEncodingIsRefused() throws IOException {
    Path file = folder.resolve("species.csv");
    Files.write(file, "é".getBytes(StandardCharsets.ISO_8859_1));

    assertRefused(file + ": is not UTF-8");
  }

  @Test
  void aQuoteLeftOpenIsRefused() throws IOException {
    assertRefused(
        write("species.csv", "key,scientific_name,common_name,source\na,\"b\n") + ": is not CSV");
  }

  @Test
  void aMisspeltTableNameIsRefused() throws IOException {
    Path file = write("scar_causes.csv", CAUSE_HEADER);

    assertRefused(file + ": is no reference table; use one of these names: species.csv");
  }

  @Test
  void aFolderWithoutTablesIsRefused() {
    assertRefused(folder + ": holds no reference table");
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> TableLibrary.of(folder.resolve("nowhere")))
        .withMessageStartingWith(folder.resolve("nowhere") + ": folder of tables cannot be read");
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private void assertRefused(String message) {
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> ReferenceTablesReader.read(TableLibrary.of(folder)))
        .satisfies(
            e -> assertThat(e.getMessage()).startsWith(message).contains("; ").hasLineCount(1));
  }
}
