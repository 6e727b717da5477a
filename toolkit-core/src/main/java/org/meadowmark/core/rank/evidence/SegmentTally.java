package org.meadowmark.core.rank.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.rank.statistics.SegmentStatistics;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.RankingParameters;

/** Adds up the parts of scars that belong to one segment. */
public final class SegmentTally {
  private static final double PERCENT = 100;

  /** A depth that is known for less of the length than this is called a gap. */
  private static final double DEPTH_KNOWN_ENOUGH = 0.995;

  private record DepthOfPart(double metres, double length) {}

  private final Map<String, Double> metresByCause = new TreeMap<>();
  private final Map<String, Double> defaultAreaByCause = new TreeMap<>();
  private final List<DepthOfPart> depths = new ArrayList<>();
  private PartEvidence sum = PartEvidence.NONE;
  private int scars;
  private int scarsAtEdge;
  private double metresAtEdge;
  private double measuredArea;
  private double measuredVariance;
  private double gainHectares;
  private double newMetres;
  private double againMetres;

  /**
   * Adds the part of a scar.
   *
   * @param scar the scar
   * @param widthVariation coefficient of variation of its width
   * @param part what was seen
   * @param gainOfPartHectares what filling the part would restore
   * @param limits what counts as reaching the edge
   */
  public void add(
      Scar scar,
      double widthVariation,
      PartEvidence part,
      double gainOfPartHectares,
      RankingParameters limits) {
    scars++;
    sum = sum.plus(part);
    metresByCause.merge(scar.cause(), part.metres(), Double::sum);
    gainHectares += gainOfPartHectares;
    if (part.nearestMetres() <= limits.edgeReachMetres()) {
      scarsAtEdge++;
      metresAtEdge += part.metres();
    }
    if (part.depthKnownMetres() > 0) {
      depths.add(
          new DepthOfPart(part.depthMetres() / part.depthKnownMetres(), part.depthKnownMetres()));
    }
    double area = part.metres() * scar.widthMetres();
    if (scar.widthSource() == WidthSource.CAUSE_DEFAULT) {
      defaultAreaByCause.merge(scar.cause(), area, Double::sum);
    } else {
      measuredArea += area;
      measuredVariance += widthVariation * area * widthVariation * area;
    }
  }

  /**
   * Adds what is new of the part of a scar.
   *
   * @param metres new length here
   * @param isCutAgain whether it lies on ground that was scarred before
   */
  public void addNew(double metres, boolean isCutAgain) {
    newMetres += metres;
    againMetres += isCutAgain ? metres : 0;
  }

  /** {@return scars with a part here} */
  public int scarCount() {
    return scars;
  }

  /** {@return scar length here} */
  public double metres() {
    return sum.metres();
  }

  /** {@return scar length here by cause key, in key order} */
  public Map<String, Double> metresByCause() {
    return metresByCause;
  }

  /**
   * {@return cause with most length, the first by key of equals; empty text where there is none}
   */
  public String leadingCause() {
    return metresByCause.entrySet().stream()
        .max(
            Map.Entry.<String, Double>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .map(Map.Entry::getKey)
        .orElse("");
  }

  /**
   * {@return the evidence}
   *
   * @param beds bed in reach
   * @param classes keys of the severity classes, lightest first
   * @param known what could be known in this survey at all
   * @param statistics rate and hot-spot test, for what is missing there
   * @param parameters limits
   */
  public SegmentEvidence evidence(
      BedsInReach beds,
      List<String> classes,
      KnownEvidence known,
      SegmentStatistics statistics,
      Parameters parameters) {
    boolean any = sum.metres() > 0;
    Optional<ScarLie> lie =
        any
            ? Optional.of(
                new ScarLie(
                    sum.angleMetres() / sum.metres(),
                    share(sum.alongMetres()),
                    share(sum.alongEdgeMetres()),
                    share(sum.insideBendMetres()),
                    share(sum.acrossMetres())))
            : Optional.empty();
    return new SegmentEvidence(
        any
            ? Optional.of(new EdgeContact(share(metresAtEdge), (double) scarsAtEdge / scars))
            : Optional.empty(),
        lie,
        lie.map(l -> l.pattern(parameters.ranking())).orElse(ScarPattern.NONE),
        depth(),
        beds,
        beds.worstClass(classes),
        beds.meanClass(classes),
        new ScarredArea(measuredArea, Math.sqrt(measuredVariance), defaultAreaByCause),
        known.connectivity() ? OptionalDouble.of(gainHectares) : OptionalDouble.empty(),
        newMetres > 0
            ? OptionalDouble.of(Math.min(1, againMetres / newMetres))
            : OptionalDouble.empty(),
        gaps(beds, classes, known, statistics, parameters));
  }

  private double share(double metres) {
    return Math.min(1, metres / sum.metres());
  }

  private Optional<ScarDepth> depth() {
    if (depths.isEmpty()) {
      return Optional.empty();
    }
    depths.sort(
        Comparator.comparingDouble(DepthOfPart::metres).thenComparingDouble(DepthOfPart::length));
    double half = sum.depthKnownMetres() / 2;
    double passed = 0;
    double median = depths.get(depths.size() - 1).metres;
    for (DepthOfPart part : depths) {
      passed += part.length;
      if (passed >= half) {
        median = part.metres;
        break;
      }
    }
    return Optional.of(
        new ScarDepth(
            share(sum.depthKnownMetres()),
            Math.min(1, sum.shallowMetres() / sum.depthKnownMetres()),
            median));
  }

  private List<String> gaps(
      BedsInReach beds,
      List<String> classes,
      KnownEvidence known,
      SegmentStatistics statistics,
      Parameters parameters) {
    List<String> gaps = new ArrayList<>();
    if (!(beds.hectares() > 0)) {
      gaps.add("no bed in reach");
    } else if (beds.hectares() < parameters.minimumExposureHectares()) {
      gaps.add("too little bed in reach");
    } else {
      if (beds.worstClass(classes).isEmpty()) {
        gaps.add("severity of the bed in reach unknown");
      }
      if (statistics.rate().collapsed()) {
        gaps.add("no interval of the rate: rates differ no more than chance makes them differ");
      }
      if (!statistics.hotSpotRemark().isEmpty()) {
        gaps.add("no hot-spot test: " + statistics.hotSpotRemark());
      }
    }
    if (!known.depth()) {
      gaps.add("no depth layer");
    } else if (sum.metres() > 0 && share(sum.depthKnownMetres()) < DEPTH_KNOWN_ENOUGH) {
      gaps.add(
          sum.depthKnownMetres() > 0
              ? String.format(
                  Locale.ROOT,
                  "depth known for %.0f %% of scar length",
                  PERCENT * share(sum.depthKnownMetres()))
              : "no depth known at its scars");
    }
    if (!known.connectivity()) {
      gaps.add("connectivity of each scar not worked out (connectivity_detail_patches)");
    }
    if (!known.earlier()) {
      gaps.add("one season: re-scarring unknown");
    } else if (!(newMetres > 0)) {
      gaps.add("no new scar since the survey before: re-scarring unknown");
    }
    gaps.add("channel width assumed");
    return gaps;
  }
}
