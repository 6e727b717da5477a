package org.meadowmark.core.change.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.change.Seasons;
import org.meadowmark.core.model.Scar;

/** No metre is lost and none is used twice; and what must not matter does not. */
class LengthConservationTest {
  private static final double ROUNDING = 1e-6;

  /** Of two flows that are worth the same, one may leave more of a drawing's bends unassigned. */
  private static final double TIES = 0.5;

  @Property(tries = 150, seed = "20260601")
  void everyMetreIsAssignedOnceOrNotAtAll(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 40) int scars,
      @ForAll @IntRange(min = 10, max = 80) int widthMetres) {
    Seasons seasons = RandomSeasons.of(seed, scars, widthMetres);
    SeasonMatch match = seasons.match();
    check(
        match.earlier(),
        seasons.earlier().scars(),
        match.links(),
        ScarLink::earlierId,
        ScarLink::earlierMetres);
    check(
        match.later(),
        seasons.later().scars(),
        match.links(),
        ScarLink::laterId,
        ScarLink::laterMetres);
  }

  private static void check(
      List<ScarChange> changes,
      List<Scar> scars,
      List<ScarLink> links,
      Function<ScarLink, String> id,
      ToDoubleFunction<ScarLink> metres) {
    assertThat(changes).hasSameSizeAs(scars);
    Map<String, Geometry> shapes = new HashMap<>();
    scars.forEach(scar -> shapes.put(scar.id(), scar.geometry()));
    Map<String, Double> linked = new HashMap<>();
    for (ScarLink link : links) {
      assertThat(metres.applyAsDouble(link)).isPositive();
      linked.merge(id.apply(link), metres.applyAsDouble(link), Double::sum);
    }
    for (ScarChange change : changes) {
      Geometry shape = shapes.get(change.id());
      double length = shape.getDimension() == 1 ? shape.getLength() : shape.getLength() / 2;
      assertThat(change.lengthMetres()).isCloseTo(length, within(ROUNDING));
      assertThat(change.assignedMetres() + change.unassignedMetres() + change.notComparableMetres())
          .isCloseTo(length, within(ROUNDING));
      assertThat(change.assignedMetres()).isNotNegative();
      assertThat(change.unassignedMetres()).isNotNegative();
      assertThat(change.notComparableMetres()).isNotNegative();
      assertThat(change.assignedMetres())
          .isCloseTo(linked.getOrDefault(change.id(), 0.0), within(ROUNDING));
    }
  }

  @Property(tries = 60, seed = "20260601")
  void classesAgreeWithLinks(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    SeasonMatch match = RandomSeasons.of(seed, 25, 40).match();
    Map<String, Integer> telling = new HashMap<>();
    match.links().stream()
        .filter(ScarLink::telling)
        .forEach(
            link -> {
              telling.merge(link.earlierId(), 1, Integer::sum);
              telling.merge(link.laterId(), 1, Integer::sum);
            });
    for (ScarLink link : match.links()) {
      assertThat(telling).containsKeys(link.earlierId(), link.laterId());
    }
    match
        .earlier()
        .forEach(change -> agree(change, telling, ChangeClass.SPLIT, ChangeClass.HEALED));
    match.later().forEach(change -> agree(change, telling, ChangeClass.MERGED, ChangeClass.NEW));
  }

  private static void agree(
      ScarChange change, Map<String, Integer> telling, ChangeClass many, ChangeClass none) {
    int links = telling.getOrDefault(change.id(), 0);
    assertThat(links > 1).isEqualTo(change.change() == many && links != 1);
    assertThat(links == 0)
        .isEqualTo(change.change() == none || change.change() == ChangeClass.NOT_COMPARABLE);
  }

  @Property(tries = 60, seed = "20260601")
  void swappedSurveysSwapNewAndHealed(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Seasons seasons = RandomSeasons.of(seed, 20, 40);
    SeasonMatch match = seasons.match();
    SeasonMatch swapped = seasons.matchSwapped();
    assertThat(swapped.earlierTotals().unassignedMetres())
        .isCloseTo(match.laterTotals().unassignedMetres(), within(TIES));
    assertThat(swapped.laterTotals().unassignedMetres())
        .isCloseTo(match.earlierTotals().unassignedMetres(), within(TIES));
    assertThat(SeasonMatch.counts(swapped.earlier()).get(ChangeClass.HEALED))
        .isEqualTo(SeasonMatch.counts(match.later()).get(ChangeClass.NEW));
    assertThat(SeasonMatch.counts(swapped.later()).get(ChangeClass.NEW))
        .isEqualTo(SeasonMatch.counts(match.earlier()).get(ChangeClass.HEALED));
    assertThat(SeasonMatch.counts(swapped.later()).get(ChangeClass.MERGED))
        .isEqualTo(SeasonMatch.counts(match.earlier()).get(ChangeClass.SPLIT));
  }

  @Property(tries = 60, seed = "20260601")
  void aMoveOfBothSurveysChangesNothing(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    AffineTransformation move = AffineTransformation.translationInstance(512, -1_024);
    same(RandomSeasons.of(seed, 20, 40), RandomSeasons.of(seed, 20, 40).map(move::transform));
  }

  @Property(tries = 60, seed = "20260601")
  void reversedLinesChangeNothing(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    same(RandomSeasons.of(seed, 20, 40), RandomSeasons.of(seed, 20, 40).map(Geometry::reverse));
  }

  /** Of a scar that lost as much as it gained, the last digits tell which is more. */
  private static List<ChangeClass> classes(List<ScarChange> scars) {
    return scars.stream()
        .map(ScarChange::change)
        .map(change -> change == ChangeClass.SHORTENED ? ChangeClass.EXTENDED : change)
        .toList();
  }

  private static void same(Seasons one, Seasons other) {
    SeasonMatch match = one.match();
    SeasonMatch changed = other.match();
    assertThat(classes(changed.earlier())).isEqualTo(classes(match.earlier()));
    assertThat(classes(changed.later())).isEqualTo(classes(match.later()));
    assertThat(changed.links()).hasSameSizeAs(match.links());
    assertThat(changed.laterTotals().assignedMetres())
        .isCloseTo(match.laterTotals().assignedMetres(), within(TIES));
  }

  /** A scar cut in two at a vertex, in a copy of the survey, is split; nothing else changes. */
  @Property(tries = 60, seed = "20260601")
  void aScarCutAtAVertexIsSplit(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Seasons seasons = new Seasons();
    List<Scar> base =
        RandomSeasons.of(seed, 12, 200).later().scars().stream()
            .filter(scar -> scar.isLine() && scar.geometry().getNumPoints() == 6)
            .toList();
    for (Scar scar : base) {
      seasons.earlier().scar(scar.id(), scar.geometry(), 0.4, "propeller");
      boolean first = scar == base.get(0);
      if (first) {
        var vertices = scar.geometry().getCoordinates();
        var factory = scar.geometry().getFactory();
        seasons
            .later()
            .scar(
                scar.id() + "x",
                factory.createLineString(Arrays.copyOfRange(vertices, 0, 4)),
                0.4,
                "propeller");
        seasons
            .later()
            .scar(
                scar.id() + "y",
                factory.createLineString(Arrays.copyOfRange(vertices, 3, 6)),
                0.4,
                "propeller");
      } else {
        seasons.later().scar(scar.id(), scar.geometry(), 0.4, "propeller");
      }
    }
    SeasonMatch match = seasons.match();
    if (!base.isEmpty()) {
      assertThat(match.earlierTotals().unassignedMetres()).isCloseTo(0, within(0.01));
      assertThat(SeasonMatch.counts(match.earlier()).get(ChangeClass.SPLIT)).isEqualTo(1);
      assertThat(SeasonMatch.counts(match.later()).get(ChangeClass.SPLIT)).isEqualTo(2);
    }
  }
}
