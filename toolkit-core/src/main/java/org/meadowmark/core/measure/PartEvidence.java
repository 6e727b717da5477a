package org.meadowmark.core.measure;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.measure.Measurement.ScarredGrass;
import org.meadowmark.core.store.RecordCodec;

/**
 * What one part of a survey gives: finished rows of its scars and beds, and what {@link PartMerger}
 * makes patches, gaps and totals from. Immutable; can be sent and kept as bytes, which the same
 * version of the program reads.
 */
public final class PartEvidence implements Serializable {
  private static final long serialVersionUID = 1;

  private final transient Content content;

  PartEvidence(Content content) {
    this.content = content;
  }

  /**
   * Everything, numbered inside the part.
   *
   * @param scars by id
   * @param scarsInBeds by scar, then bed
   * @param beds by id
   * @param scarredGrass by bed
   * @param meadows first bed of each meadow
   * @param before patches before scarring
   * @param after patches after scarring
   * @param crumbMeadowsBefore meadow of each crumb before scarring
   * @param crumbMeadowsAfter the same after scarring
   * @param gaps by scar, then patches
   * @param lines lines of totals
   */
  record Content(
      List<ScarMeasure> scars,
      List<ScarInBed> scarsInBeds,
      List<BedMeasure> beds,
      List<ScarredGrass> scarredGrass,
      List<String> meadows,
      List<PatchRow> before,
      List<PatchRow> after,
      int[] crumbMeadowsBefore,
      int[] crumbMeadowsAfter,
      List<GapRow> gaps,
      List<Line> lines) {}

  /**
   * A whole patch.
   *
   * @param geometry outline on the grid
   * @param bedIds beds it is part of; none is given before scarring
   * @param meadow its meadow
   * @param nearest nearest other patch of the part, -1 where there is none
   * @param nearestMetres how far that is
   */
  record PatchRow(
      Polygon geometry, List<String> bedIds, int meadow, int nearest, double nearestMetres) {}

  /**
   * A gap.
   *
   * @param scar scar that makes it
   * @param first one patch after scarring
   * @param second the other
   */
  record GapRow(
      int scar,
      int first,
      int second,
      double minimumWidthMetres,
      double meanWidthMetres,
      double lengthMetres,
      Geometry geometry) {}

  /**
   * A line of totals: a management area, what lies outside all of them, or the whole.
   *
   * @param grass beds and parts of beds
   * @param scarCount scars in them
   * @param draws scarred area of all in each draw; none where nothing was drawn
   * @param before patches and parts of patches before scarring
   * @param after the same after scarring
   * @param gapWidthsMetres widths of gaps
   */
  record Line(
      List<AreaMeasurer.Grass> grass,
      int scarCount,
      List<double[]> draws,
      Scope before,
      Scope after,
      double[] gapWidthsMetres) {}

  /**
   * Pieces of a line.
   *
   * @param patches whole patch of each piece
   * @param gridAreas area of each on the grid
   * @param squareMetres ground area of each
   * @param completeSquareMetres ground area of the whole patch of each
   * @param perimeterMetres ground length of the outline of each
   * @param edgePatches whole patches that have outline in the line
   * @param edges ground length of it
   * @param patchCrumbs whole patch of each crumb that was cut off a patch
   * @param crumbs whole crumbs
   * @param crumbSquareMetres ground area of the one, then the other
   * @param nearest whole patches whose nearest other counts
   * @param firsts first piece of each way over water
   * @param seconds second piece
   * @param metres length of the way
   */
  record Scope(
      int[] patches,
      double[] gridAreas,
      double[] squareMetres,
      double[] completeSquareMetres,
      double[] perimeterMetres,
      int[] edgePatches,
      double[] edges,
      int[] patchCrumbs,
      int[] crumbs,
      double[] crumbSquareMetres,
      int[] nearest,
      int[] firsts,
      int[] seconds,
      double[] metres) {}

  Content content() {
    return content;
  }

  /** {@return number of scars in the part} */
  public int scarCount() {
    return content.scars.size();
  }

  /** {@return number of beds in the part} */
  public int bedCount() {
    return content.beds.size();
  }

  /** {@return number of patches of the part after scarring} */
  public int patchCount() {
    return content.after.size();
  }

  /**
   * {@return everything as bytes, for {@link #fromBytes}; the same evidence gives the same bytes}
   */
  public byte[] toBytes() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      RecordCodec.write(content, Content.class, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /**
   * {@return the evidence that {@link #toBytes} made bytes of}
   *
   * @param bytes all of them, as {@link #toBytes} of the same version of the program gave them
   * @throws UncheckedIOException if the bytes end too early
   */
  public static PartEvidence fromBytes(byte[] bytes) {
    try {
      return new PartEvidence(
          RecordCodec.read(Content.class, new DataInputStream(new ByteArrayInputStream(bytes))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Object writeReplace() {
    return new Form(toBytes());
  }

  private record Form(byte[] bytes) implements Serializable {
    private Object readResolve() {
      return fromBytes(bytes);
    }
  }
}
