package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Scar;

/**
 * Two surveys of the same scars, a season apart, drawn by different hands, with the truth about
 * which is which.
 *
 * <p>Each scar has a fate of its own ({@link Fate}). What a survey maps of it is drawn again with
 * vertices of its own and an error of the stated size: four fifths of its variance move the scar as
 * a whole, the rest bends it (slowly, over some 40 m) and shakes its vertices. Scars near each
 * other have independent errors, which is harder to match than a shift of a whole picture. Ids say
 * nothing about which is which.
 *
 * @param earlier scars of the earlier survey, in order of id
 * @param later scars of the later survey, in order of id
 * @param pairs which earlier scar is which later one, in order of ids
 * @param fates what became of each true scar
 * @param newMetres true length that only the later survey can have seen: new scars and extensions
 * @param healedMetres true length that only the earlier survey can have seen; the edges of basins
 *     that close are not counted
 */
public record TwoSeasons(
    List<Scar> earlier,
    List<Scar> later,
    List<TruePair> pairs,
    Map<String, Fate> fates,
    double newMetres,
    double healedMetres) {

  /** What became of a scar between the two surveys. */
  public enum Fate {
    PERSISTING(0.40),
    HEALED(0.18),
    /** Still there, but the later survey missed it: it cannot be told from one that has healed. */
    MISSED(0.04),
    NEW(0.20),
    /** Made longer by 5–25 m at one end. */
    EXTENDED(0.06),
    /** A fifth to two fifths of it healed, at one end. */
    SHORTENED(0.04),
    /** 3–10 m of it healed, inside. */
    SPLIT(0.04),
    /** Two scars 3–10 m apart, joined by a new one on the same line. */
    MERGED(0.04);

    private final double share;

    Fate(double share) {
      this.share = share;
    }
  }

  /** An earlier scar that is a later one, or a part of it, or has it as a part. */
  public record TruePair(String earlierId, String laterId) {}

  private static final double LEAST_TO_CUT_METRES = 20;
  private static final double WHOLE_SHIFT_VARIANCE = 0.8;
  private static final double BEND_VARIANCE = 0.15;
  private static final double SHAKE_VARIANCE = 0.05;
  private static final double NARROWING = 0.93;

  public TwoSeasons {
    earlier = List.copyOf(earlier);
    later = List.copyOf(later);
    pairs = List.copyOf(pairs);
    fates = Map.copyOf(fates);
  }

  /**
   * Draws the two surveys.
   *
   * @param base true scars in metres; each is in one of the surveys, or in both
   * @param radialErrorMetres radial root mean square error of each survey's positions
   * @param seed everything is drawn from it
   */
  public static TwoSeasons of(List<Scar> base, double radialErrorMetres, long seed) {
    return new Maker(radialErrorMetres, seed).make(base);
  }

  /** A mapped scar whose id is not yet given, with the true scar that it belongs to. */
  private record Mapped(int number, Scar scar, Geometry geometry, double width) {}

  private static final class Maker {
    private final double axisErrorMetres;
    private final long seed;
    private final List<Mapped> earlier = new ArrayList<>();
    private final List<Mapped> later = new ArrayList<>();
    private final Map<Integer, Fate> fates = new TreeMap<>();
    private double newMetres;
    private double healedMetres;

    Maker(double radialErrorMetres, long seed) {
      this.axisErrorMetres = radialErrorMetres / Math.sqrt(2);
      this.seed = seed;
    }

    TwoSeasons make(List<Scar> base) {
      for (int i = 0; i < base.size(); i++) {
        make(i, base.get(i));
      }
      List<Scar> before = withIds(earlier, "E", 1);
      List<Scar> after = withIds(later, "L", 2);
      Map<Integer, List<String>> earlierIds = ids(earlier, before);
      Map<Integer, List<String>> laterIds = ids(later, after);
      List<TruePair> pairs = new ArrayList<>();
      Map<String, Fate> fateById = new HashMap<>();
      fates.forEach(
          (number, fate) -> {
            List<String> from = earlierIds.getOrDefault(number, List.of());
            List<String> to = laterIds.getOrDefault(number, List.of());
            from.forEach(id -> fateById.put(id, fate));
            to.forEach(id -> fateById.put(id, fate));
            from.forEach(e -> to.forEach(l -> pairs.add(new TruePair(e, l))));
          });
      pairs.sort(Comparator.comparing(TruePair::earlierId).thenComparing(TruePair::laterId));
      Comparator<Scar> byId = Comparator.comparing(Scar::id);
      return new TwoSeasons(
          before.stream().sorted(byId).toList(),
          after.stream().sorted(byId).toList(),
          pairs,
          fateById,
          newMetres,
          healedMetres);
    }

    private static Map<Integer, List<String>> ids(List<Mapped> mapped, List<Scar> scars) {
      Map<Integer, List<String>> ids = new TreeMap<>();
      for (int i = 0; i < scars.size(); i++) {
        ids.computeIfAbsent(mapped.get(i).number, n -> new ArrayList<>()).add(scars.get(i).id());
      }
      return ids;
    }

    private List<Scar> withIds(List<Mapped> mapped, String prefix, int salt) {
      int[] numbers = new int[mapped.size()];
      SplittableRandom random = new SplittableRandom(Draws.mix(seed + salt));
      for (int i = 0; i < numbers.length; i++) {
        int j = random.nextInt(i + 1);
        numbers[i] = numbers[j];
        numbers[j] = i + 1;
      }
      List<Scar> scars = new ArrayList<>();
      for (int i = 0; i < numbers.length; i++) {
        Mapped one = mapped.get(i);
        String id = String.format(Locale.ROOT, "%s%07d", prefix, numbers[i]);
        scars.add(
            new Scar(
                id,
                new FeatureRef("invented", "scars", id),
                one.geometry,
                one.scar.cause(),
                one.width,
                one.scar.widthSource(),
                one.scar.date()));
      }
      return scars;
    }

    private void make(int number, Scar scar) {
      Draws draws = Draws.of(seed, Purpose.TWO_SEASONS, number);
      Fate fate = fate(draws.uniform());
      boolean isPath = scar.geometry().getGeometryType().equals("LineString");
      double length = isPath ? scar.geometry().getLength() : scar.geometry().getLength() / 2;
      boolean mayCut = isPath && length >= LEAST_TO_CUT_METRES;
      boolean cuts = fate == Fate.SPLIT || fate == Fate.MERGED || fate == Fate.SHORTENED;
      if (cuts && !mayCut || fate == Fate.EXTENDED && !isPath) {
        fate = Fate.PERSISTING;
      }
      fates.put(number, fate);
      if (!isPath) {
        outline(number, scar, fate, length, draws);
        return;
      }
      Coordinate[] whole = scar.geometry().getCoordinates();
      Drawing before = new Drawing(draws, axisErrorMetres);
      Drawing after = new Drawing(draws, axisErrorMetres);
      double gap = draws.between(3, 10);
      double from = (length - gap) * draws.between(0.3, 0.7);
      switch (fate) {
        case PERSISTING -> {
          map(earlier, number, scar, before.of(whole, 0, length), 1);
          map(later, number, scar, after.of(whole, 0, length), NARROWING);
        }
        case HEALED, MISSED -> {
          map(earlier, number, scar, before.of(whole, 0, length), 1);
          healedMetres += length;
        }
        case NEW -> {
          map(later, number, scar, after.of(whole, 0, length), 1);
          newMetres += length;
        }
        case EXTENDED -> {
          double more = draws.between(5, 25);
          map(earlier, number, scar, before.of(whole, 0, length), 1);
          map(later, number, scar, after.of(longer(whole, more), 0, length + more), NARROWING);
          newMetres += more;
        }
        case SHORTENED -> {
          double left = length * draws.between(0.6, 0.8);
          map(earlier, number, scar, before.of(whole, 0, length), 1);
          map(later, number, scar, after.of(whole, 0, left), NARROWING);
          healedMetres += length - left;
        }
        case SPLIT -> {
          map(earlier, number, scar, before.of(whole, 0, length), 1);
          map(later, number, scar, after.of(whole, 0, from), NARROWING);
          map(later, number, scar, after.of(whole, from + gap, length), NARROWING);
          healedMetres += gap;
        }
        case MERGED -> {
          map(earlier, number, scar, before.of(whole, 0, from), 1);
          map(earlier, number, scar, before.of(whole, from + gap, length), 1);
          map(later, number, scar, after.of(whole, 0, length), NARROWING);
          newMetres += gap;
        }
      }
    }

    private void outline(int number, Scar scar, Fate fate, double length, Draws draws) {
      if (fate != Fate.NEW) {
        earlier.add(new Mapped(number, scar, moved(scar.geometry(), 1, draws), 0));
      }
      if (fate == Fate.HEALED || fate == Fate.MISSED) {
        healedMetres += length;
        return;
      }
      double size = fate == Fate.NEW ? 1 : draws.between(0.9, 1);
      later.add(new Mapped(number, scar, moved(scar.geometry(), size, draws), 0));
      newMetres += fate == Fate.NEW ? length : 0;
    }

    private Geometry moved(Geometry geometry, double size, Draws draws) {
      Coordinate middle = geometry.getEnvelopeInternal().centre();
      return AffineTransformation.scaleInstance(size, size, middle.x, middle.y)
          .translate(axisErrorMetres * draws.normal(), axisErrorMetres * draws.normal())
          .transform(geometry);
    }

    private static void map(
        List<Mapped> survey, int number, Scar scar, Coordinate[] line, double narrowing) {
      survey.add(
          new Mapped(
              number,
              scar,
              scar.geometry().getFactory().createLineString(line),
              scar.widthMetres() * narrowing));
    }

    private static Fate fate(double uniform) {
      double left = uniform;
      for (Fate fate : Fate.values()) {
        left -= fate.share;
        if (left < 0) {
          return fate;
        }
      }
      return Fate.PERSISTING;
    }

    private static Coordinate[] longer(Coordinate[] line, double metres) {
      Coordinate last = line[line.length - 1];
      Coordinate before = line[line.length - 2];
      double share = metres / last.distance(before);
      Coordinate[] longer = new Coordinate[line.length + 1];
      System.arraycopy(line, 0, longer, 0, line.length);
      longer[line.length] =
          new Coordinate(
              last.x + share * (last.x - before.x), last.y + share * (last.y - before.y));
      return longer;
    }
  }

  /** How one survey draws one scar: the same error for all its parts. */
  private static final class Drawing {
    private final Draws draws;
    private final double shiftX;
    private final double shiftY;
    private final double bendX;
    private final double bendY;
    private final double phase;
    private final double wave;
    private final double shake;
    private final double spacing;

    Drawing(Draws draws, double axisError) {
      this.draws = draws;
      double whole = axisError * Math.sqrt(WHOLE_SHIFT_VARIANCE);
      shiftX = whole * draws.normal();
      shiftY = whole * draws.normal();
      // A sine has half the variance of its square amplitude.
      double bend = axisError * Math.sqrt(2 * BEND_VARIANCE);
      bendX = bend * draws.sign();
      bendY = bend * draws.sign();
      phase = draws.between(0, 2 * StrictMath.PI);
      wave = draws.between(30, 60);
      shake = axisError * Math.sqrt(SHAKE_VARIANCE);
      spacing = draws.between(2, 6);
    }

    Coordinate[] of(Coordinate[] line, double from, double to) {
      int pieces = Math.max(1, (int) Math.round((to - from) / spacing));
      Coordinate[] drawn = new Coordinate[pieces + 1];
      for (int i = 0; i <= pieces; i++) {
        double at = from + (to - from) * i / pieces;
        Coordinate point = along(line, at);
        double bend = StrictMath.sin(phase + 2 * StrictMath.PI * at / wave);
        drawn[i] =
            new Coordinate(
                point.x + shiftX + bendX * bend + shake * draws.normal(),
                point.y + shiftY + bendY * bend + shake * draws.normal());
      }
      return drawn;
    }

    private static Coordinate along(Coordinate[] line, double metres) {
      double left = metres;
      for (int i = 1; i < line.length; i++) {
        double edge = line[i].distance(line[i - 1]);
        if (left <= edge || i == line.length - 1) {
          double share = edge > 0 ? Math.min(1, left / edge) : 0;
          return new Coordinate(
              line[i - 1].x + share * (line[i].x - line[i - 1].x),
              line[i - 1].y + share * (line[i].y - line[i - 1].y));
        }
        left -= edge;
      }
      return line[0].copy();
    }
  }
}
