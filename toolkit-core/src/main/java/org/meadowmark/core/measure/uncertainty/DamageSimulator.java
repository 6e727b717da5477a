package org.meadowmark.core.measure.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.hprtree.HilbertEncoder;
import org.meadowmark.core.measure.uncertainty.DrawnArea.Errors;

/**
 * Draws widths and positions of scars and gives the scarred area of a piece of grass in every draw.
 *
 * <p>No footprint is built again. The measured area is exact; what is drawn is its change, at
 * sample points where an edge of the grass or another scar is in reach and in proportion to the
 * width elsewhere. Without errors the change is exactly 0. Where a line crosses itself the overlap
 * is taken to change with the width, and bends are not corrected for. The outline of a polygon scar
 * keeps its shape and is shifted as a whole.
 *
 * <p>Time is linear in draws times sample points times scars in reach of a point; memory is that of
 * a few hundred scars at a time. Thread-safe; the results do not depend on threads or on which
 * pieces are asked for.
 */
public final class DamageSimulator {
  private static final int BATCH_SIZE = 100;
  private static final int HILBERT_LEVEL = 12;

  private final ScarLayer layer;
  private final ErrorModel model;

  /**
   * Creates a simulator.
   *
   * @param scars all scars of the survey, in id order
   * @param model what is drawn
   */
  public DamageSimulator(List<UncertainScar> scars, ErrorModel model) {
    this.layer = new ScarLayer(scars, model);
    this.model = model;
  }

  /** {@return what is drawn, and how often} */
  public ErrorModel model() {
    return model;
  }

  /**
   * Draws the scarred area of a piece of grass.
   *
   * @param surveyedGrass the part of it that was surveyed, on the grid; may be empty
   * @param areaFactor grid area divided by ground area
   * @param scarredSquareMetres its measured scarred area, on the ground
   * @return its scarred area in every draw; the measured one in each where no scar can reach it
   */
  public DrawnArea draw(Geometry surveyedGrass, double areaFactor, double scarredSquareMetres) {
    Envelope envelope = surveyedGrass.getEnvelopeInternal();
    List<Integer> scars = surveyedGrass.isEmpty() ? List.of() : layer.reaching(envelope);
    if (scars.isEmpty()) {
      return DrawnArea.constant(scarredSquareMetres);
    }
    HilbertEncoder encoder = new HilbertEncoder(HILBERT_LEVEL, envelope);
    List<Integer> ordered =
        scars.stream()
            .sorted(
                Comparator.comparingInt(
                    scar -> encoder.encode(layer.scar(scar).geometry().getEnvelopeInternal())))
            .toList();
    GrassOutline grass = new GrassOutline(surveyedGrass);
    int batches = (ordered.size() + BATCH_SIZE - 1) / BATCH_SIZE;
    List<double[][]> changes =
        IntStream.range(0, batches)
            .parallel()
            .mapToObj(
                batch -> {
                  ScarSampler sampler = new ScarSampler(layer, grass, envelope, areaFactor);
                  ordered
                      .subList(
                          batch * BATCH_SIZE, Math.min(ordered.size(), (batch + 1) * BATCH_SIZE))
                      .forEach(sampler::add);
                  return changes(sampler);
                })
            .toList();
    return DrawnArea.of(scarredSquareMetres, surveyedGrass.getArea() / areaFactor, total(changes));
  }

  private double[][] changes(ScarSampler sampler) {
    double[] steady = sampler.steadyAreas();
    DrawnErrors all =
        DrawnErrors.of(sampler.scars().stream().map(layer::errors).toList(), model.draws());
    double[][] changes = new double[Errors.values().length][];
    changes[Errors.WIDTH.ordinal()] = changes(sampler, steady, all.widthOnly());
    if (layer.anyShift()) {
      changes[Errors.ALL.ordinal()] = changes(sampler, steady, all);
      changes[Errors.POSITION.ordinal()] = changes(sampler, steady, all.positionOnly());
    } else {
      changes[Errors.ALL.ordinal()] = changes[Errors.WIDTH.ordinal()];
      changes[Errors.POSITION.ordinal()] = new double[model.draws()];
    }
    return changes;
  }

  private double[] changes(ScarSampler sampler, double[] steady, DrawnErrors drawn) {
    double[] changes = new double[model.draws()];
    for (int scar = 0; scar < steady.length; scar++) {
      if (steady[scar] > 0) {
        for (int draw = 0; draw < changes.length; draw++) {
          changes[draw] += steady[scar] * (drawn.factor()[scar][draw] - 1);
        }
      }
    }
    DrawnErrors none = DrawnErrors.none(steady.length, 1);
    sampler.points().forEach(point -> point.addChanges(drawn, none, changes));
    return changes;
  }

  private double[][] total(List<double[][]> changes) {
    double[][] total = new double[Errors.values().length][model.draws()];
    for (double[][] change : changes) {
      for (int row = 0; row < total.length; row++) {
        for (int draw = 0; draw < model.draws(); draw++) {
          total[row][draw] += change[row][draw];
        }
      }
    }
    return total;
  }
}
