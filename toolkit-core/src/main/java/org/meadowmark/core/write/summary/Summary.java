package org.meadowmark.core.write.summary;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.Fragmentation.Crossing;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.LengthDistribution;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.measure.uncertainty.DamageInterval.Range;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.Foremost;
import org.meadowmark.core.write.record.FindingCounts;

/**
 * The results of a survey on a page of plain text: the users' questions answered in a sentence
 * each, then a few small tables.
 *
 * <p>Lines have at most {@value #WIDTH} characters. The same results give the same text. Time n log
 * n in the number of management areas, linear in the rest.
 */
public final class Summary {
  /** Most characters in a line. */
  public static final int WIDTH = 80;

  private static final int MOST_AREAS = 40;
  private static final int MOST_NAMED = 3;
  private static final Comparator<ScarMeasure> MOST_GAPS_FIRST =
      Comparator.comparingInt((ScarMeasure scar) -> -scar.gapCount())
          .thenComparing(scar -> scar.scar().id(), Ids.ORDER);
  private static final String UNKNOWN = "unknown";

  private final AssessedSurvey assessed;
  private final List<String> lines = new ArrayList<>();

  private Summary(AssessedSurvey assessed) {
    this.assessed = assessed;
  }

  /**
   * {@return the summary as lines}
   *
   * @param assessed results of an assessment
   */
  public static List<String> lines(AssessedSurvey assessed) {
    Summary summary = new Summary(assessed);
    summary.write();
    return summary.lines.stream().map(line -> line.replace(Figures.UNIT_SPACE, ' ')).toList();
  }

  /**
   * {@return the summary as one text, with a line end after every line}
   *
   * @param assessed results of an assessment
   */
  public static String text(AssessedSurvey assessed) {
    return lines(assessed).stream().map(line -> line + "\n").collect(Collectors.joining());
  }

  private void write() {
    String date = assessed.definition().date().map(d -> ", " + d).orElse("");
    String title = assessed.definition().name() + date;
    paragraph(title);
    lines.add("=".repeat(Math.min(WIDTH, title.length())));
    lines.add("");
    damage();
    segments();
    gaps();
    recovery();
    areaTable();
    segmentTable();
    inputTable();
    findings();
    lines.add("");
    paragraph(
        "Caution: \"no scar seen\" is not \"no scar\". Markers and repair work need the permits of"
            + " the authorities, licensed designers and trained crews.");
  }

  private void damage() {
    AreaMeasure whole = whole();
    Damage damage = whole.damage();
    Fragmentation pieces = whole.fragmentation();
    StringBuilder text = new StringBuilder();
    if (damage.grassSquareMetres() <= 0) {
      text.append("No bed was mapped, so no damage to grass can be stated.");
    } else if (damage.share().isEmpty()) {
      text.append("None of the ")
          .append(Figures.area(damage.grassSquareMetres()))
          .append(" of mapped bed lies in the surveyed area: its damage is unknown.");
    } else {
      text.append("Scars take up ")
          .append(Figures.area(damage.scarredSquareMetres()))
          .append(" of ")
          .append(Figures.area(damage.surveyedSquareMetres()))
          .append(" of surveyed bed (")
          .append(Figures.percent(damage.share()))
          .append("; ")
          .append(severity(damage))
          .append("): ")
          .append(Figures.count(damage.scarCount(), "scar", "scars"))
          .append(", ")
          .append(Figures.length(damage.scarLengthMetres()))
          .append(" of line inside beds. ");
      damage.interval().ifPresent(interval -> text.append(interval(interval)));
      text.append(fragmentation(pieces));
      double unknown = unsurveyed(damage);
      if (unknown > 0) {
        text.append(" Damage to another ")
            .append(Figures.area(unknown))
            .append(" of mapped bed is unknown: it was not surveyed.");
      }
    }
    answer("How much was scarred, and how fragmented is the grass?", text.toString());
  }

  private String interval(DamageInterval interval) {
    Parameters parameters = assessed.definition().parameters();
    Range area = interval.areaSquareMetres();
    Range share = interval.share();
    StringBuilder text =
        new StringBuilder("The scarred area is between ")
            .append(Figures.area(area.low()))
            .append(" and ")
            .append(Figures.area(area.high()))
            .append(" (")
            .append(Figures.percent(share.low()))
            .append(" to ")
            .append(Figures.percent(share.high()))
            .append(") in 90")
            .append(Figures.UNIT_SPACE)
            .append("% of ")
            .append(Figures.count(interval.draws(), "draw", "draws"))
            .append(", seed ")
            .append(parameters.seed());
    if (interval.drawShare(interval.likeliestClass()) < 1) {
      text.append("; class ")
          .append(interval.likeliestClass())
          .append(" in ")
          .append(Figures.percent(interval.drawShare(interval.likeliestClass())))
          .append(" of them");
    }
    if (!interval.positionDrawn()) {
      text.append("; widths were drawn, positions were not, since position_rmse_m is not stated");
    } else {
      interval
          .largerError()
          .ifPresent(error -> text.append("; ").append(error.key()).append(" is the larger error"));
    }
    return text.append(". ").toString();
  }

  private String fragmentation(Fragmentation pieces) {
    StringBuilder text =
        new StringBuilder("Without scars the grass is ")
            .append(Figures.count(pieces.before().patchCount(), "patch", "patches"))
            .append(", with them ")
            .append(Figures.count(pieces.after().patchCount()));
    if (pieces.before().largestShare().isPresent() && pieces.after().largestShare().isPresent()) {
      text.append("; the largest holds ")
          .append(Figures.percent(pieces.after().largestShare()))
          .append(" of the grass (")
          .append(Figures.percent(pieces.before().largestShare()))
          .append(" without scars)");
    }
    OptionalDouble meshBefore = pieces.before().mesh().squareMetres();
    OptionalDouble meshAfter = pieces.after().mesh().squareMetres();
    if (meshBefore.isPresent() && meshAfter.isPresent()) {
      text.append(". Effective mesh size, of all mapped grass: ")
          .append(Figures.area(meshBefore.getAsDouble()))
          .append(" without scars, ")
          .append(Figures.area(meshAfter.getAsDouble()))
          .append(" with them");
    }
    headline(pieces)
        .ifPresent(
            crossing ->
                text.append(". Crossing gaps of up to ")
                    .append(Figures.chosenLength(crossing.distanceMetres()))
                    .append(guild())
                    .append(", an animal finds ")
                    .append(Figures.count(crossing.groupsAfter(), "group", "groups"))
                    .append(" of patches (")
                    .append(Figures.count(crossing.groupsBefore()))
                    .append(" without scars)")
                    .append(equivalentArea(crossing)));
    return text.append('.').toString();
  }

  private static String equivalentArea(Crossing crossing) {
    if (crossing.before().isEmpty() || crossing.after().isEmpty()) {
      return "";
    }
    return "; the grass is worth one patch of "
        + Figures.area(Hectare.SQUARE_METRES * crossing.after().get().equivalentAreaHectares())
        + " ("
        + Figures.area(Hectare.SQUARE_METRES * crossing.before().get().equivalentAreaHectares())
        + " without scars) where such a gap is crossed half the time";
  }

  /** Words for the guild that the headline distance was taken from, where it was. */
  private String guild() {
    return assessed
        .definition()
        .parameters()
        .fishGuild()
        .map(key -> " (fish guild " + key + ")")
        .orElse("");
  }

  private Optional<Crossing> headline(Fragmentation pieces) {
    double distance = assessed.definition().parameters().crossingDistanceMetres();
    return pieces.crossings().stream().filter(c -> c.distanceMetres() == distance).findFirst();
  }

  private void segments() {
    SegmentLines segments = new SegmentLines(assessed);
    answer("Which channel segments lead?", segments.answer());
    if (!segments.sureness().isEmpty()) {
      answer("How sure is that order?", segments.sureness());
    }
    String zones = new ZoneLines(assessed).answer();
    if (!zones.isEmpty()) {
      answer("Where would markers cover the most damage?", zones);
    }
    String repairs = new RepairLines(assessed.repairs()).answer();
    if (!repairs.isEmpty()) {
      answer("Which scars are worth planting?", repairs);
    }
  }

  private void recovery() {
    String recovery = new RecoveryLines(assessed.recovery()).answer();
    if (!recovery.isEmpty()) {
      answer("What is lost until the scars have closed?", recovery);
    }
  }

  private void gaps() {
    Measurement measured = assessed.measurement();
    String question = "Which scars separate the most grass?";
    if (measured.gaps().isEmpty()) {
      answer(question, "None: no scar separates two patches.");
      return;
    }
    List<ScarMeasure> cutting =
        Foremost.of(measured.scars(), MOST_GAPS_FIRST, MOST_NAMED).stream()
            .filter(scar -> scar.gapCount() > 0)
            .toList();
    List<Gap> longest = Foremost.of(measured.gaps(), Gap.LONGEST_FIRST, MOST_NAMED);
    StringBuilder text = new StringBuilder();
    if (!cutting.isEmpty()) {
      text.append("Most gaps between patches: ")
          .append(
              cutting.stream()
                  .map(s -> "scar " + s.scar().id() + " (" + Figures.count(s.gapCount()) + ")")
                  .collect(Collectors.joining(", ")))
          .append(". ");
    }
    text.append("Longest gaps: ")
        .append(
            longest.stream()
                .map(
                    gap ->
                        "scar "
                            + gap.scarId()
                            + " ("
                            + Figures.length(gap.lengthMetres())
                            + " long, at least "
                            + Figures.length(gap.minimumWidthMetres())
                            + " wide)")
                .collect(Collectors.joining(", ")))
        .append(". ")
        .append(gapWidths());
    answer(question, text.toString());
  }

  private String gapWidths() {
    LengthDistribution widths = whole().fragmentation().gaps();
    return "Over "
        + Figures.count(widths.count(), "gap", "gaps")
        + " the width is "
        + metres(widths.medianMetres())
        + " at the median, "
        + metres(widths.ninetiethPercentileMetres())
        + " at the 90th percentile and "
        + metres(widths.maximumMetres())
        + " at most.";
  }

  private static String metres(OptionalDouble value) {
    return value.isPresent() ? Figures.length(value.getAsDouble()) : UNKNOWN;
  }

  private void areaTable() {
    heading("Areas");
    TextTable table =
        new TextTable("", "bed ha", "unknown ha", "scarred ha", "share", "class", "patches");
    List<AreaMeasure> areas =
        assessed.measurement().areas().stream()
            .filter(area -> area.kind() == Kind.MANAGEMENT_AREA)
            .sorted(Comparator.comparing(area -> area.area().orElseThrow().id(), Ids.ORDER))
            .toList();
    areas.stream().limit(MOST_AREAS).forEach(area -> addArea(table, area));
    if (!areas.isEmpty()) {
      assessed.measurement().areas().stream()
          .filter(area -> area.kind() == Kind.OUTSIDE_MANAGEMENT_AREAS)
          .forEach(area -> addArea(table, area));
    }
    addArea(table, whole());
    lines.addAll(table.lines(WIDTH));
    if (areas.size() > MOST_AREAS) {
      paragraph(
          Figures.count(areas.size() - MOST_AREAS) + " more management areas are in the tables.");
    }
    paragraph(
        "Class by "
            + denominator()
            + ": "
            + assessed.references().severityClasses().stream()
                .map(Summary::limits)
                .collect(Collectors.joining(", "))
            + ". Share: scarred / surveyed bed. Bed that was not surveyed is unknown. Patches: without"
            + " scars > with them.");
  }

  private static void addArea(TextTable table, AreaMeasure area) {
    Damage damage = area.damage();
    boolean surveyed = damage.surveyedSquareMetres() > 0;
    String instead = damage.grassSquareMetres() > 0 ? UNKNOWN : "no bed";
    Fragmentation pieces = area.fragmentation();
    table.add(
        area.label(),
        Figures.number(Figures.hectareValue(damage.grassSquareMetres())),
        Figures.number(Figures.hectareValue(unsurveyed(damage))),
        surveyed ? Figures.number(Figures.hectareValue(damage.scarredSquareMetres())) : instead,
        surveyed ? Figures.percent(damage.share()) : instead,
        surveyed ? damage.severityKey() : instead,
        Figures.count(pieces.before().patchCount())
            + " > "
            + Figures.count(pieces.after().patchCount()));
  }

  private static double unsurveyed(Damage damage) {
    return Math.max(0, damage.grassSquareMetres() - damage.surveyedSquareMetres());
  }

  private static String limits(SeverityClass severity) {
    String name = severity.key();
    if (severity.lowestShare() == severity.highestShare()) {
      return name + " " + Figures.chosenPercent(severity.highestShare());
    }
    if (severity.highestShare() >= 1) {
      return name
          + (severity.lowestIncluded() ? " from " : " over ")
          + Figures.chosenPercent(severity.lowestShare());
    }
    return name
        + (severity.highestIncluded() ? " to " : " under ")
        + Figures.chosenPercent(severity.highestShare());
  }

  private String denominator() {
    return switch (assessed.definition().parameters().severityDenominator()) {
      case BED -> "scarred area / surveyed bed area";
      case SCAR_GROUP -> "scarred area / area inside outlines around groups of scars";
    };
  }

  private String severity(Damage damage) {
    String share =
        damage.severityShare().equals(damage.share())
            ? ""
            : Figures.percent(damage.severityShare()) + " ";
    return "class "
        + damage.severityKey()
        + ", "
        + share
        + "by "
        + (damage.severityDenominator().equals("scar-group") ? "scar group" : "bed area");
  }

  private void segmentTable() {
    SegmentLines segments = new SegmentLines(assessed);
    if (segments.leading().isEmpty()) {
      return;
    }
    heading("Channel segments, highest score first");
    lines.addAll(segments.table(WIDTH));
    paragraph(segments.belowTable());
  }

  private void inputTable() {
    heading("Features");
    TextTable table = new TextTable("", "read", "used", "repaired", "skipped");
    for (LayerCount count : assessed.counts()) {
      table.add(
          count.role().key() + " (" + count.file() + ")",
          Figures.count(count.read()),
          Figures.count(count.used()),
          Figures.count(count.repaired()),
          Figures.count(count.skipped()));
    }
    lines.addAll(table.lines(WIDTH));
  }

  private void findings() {
    heading("Findings");
    if (assessed.findings().isEmpty()) {
      lines.add("none");
      return;
    }
    TextTable table = new TextTable("", "count", "level", "treatment");
    for (FindingCounts.Count count : FindingCounts.of(assessed.findings())) {
      table.add(
          count.code().title(),
          Figures.count(count.count()),
          count.level().name().toLowerCase(Locale.ROOT),
          count.treatment().name().toLowerCase(Locale.ROOT));
    }
    lines.addAll(table.lines(WIDTH));
  }

  private AreaMeasure whole() {
    return assessed.measurement().areas().stream()
        .filter(area -> area.kind() == Kind.WHOLE_SURVEY)
        .findFirst()
        .orElseThrow();
  }

  private void heading(String text) {
    if (!lines.get(lines.size() - 1).isEmpty()) {
      lines.add("");
    }
    lines.add(text);
    lines.add("");
  }

  private void answer(String question, String text) {
    lines.add(question);
    lines.addAll(Wrap.lines(text, WIDTH, "  ", "  "));
    lines.add("");
  }

  private void paragraph(String text) {
    lines.addAll(Wrap.lines(text, WIDTH, "", ""));
  }
}
