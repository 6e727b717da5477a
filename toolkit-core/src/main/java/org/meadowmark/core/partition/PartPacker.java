package org.meadowmark.core.partition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HilbertEncoder;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Scar;

/**
 * Packs groups into parts of bounded size, one after the other along a Hilbert curve, so that a
 * part lies in one place. The same survey always gives the same parts.
 */
public final class PartPacker {
  private static final int HILBERT_LEVEL = 12;

  private PartPacker() {}

  /** A group, by what decides which part it comes to. */
  private static final class Group {
    final List<Integer> beds = new ArrayList<>();
    final List<Integer> scars = new ArrayList<>();
    final Envelope extent = new Envelope();
    long vertices;
  }

  /**
   * Packs.
   *
   * @param groups groups of the survey
   * @param beds its beds
   * @param scars its scars; read once
   * @param size how large a part may be
   * @return the parts, which hold every group once
   */
  public static List<SurveyPart> pack(
      SurveyGroups groups, List<Bed> beds, List<Scar> scars, PartSize size) {
    List<Group> all = new ArrayList<>();
    IntStream.range(0, groups.count()).forEach(i -> all.add(new Group()));
    Envelope everything = new Envelope();
    for (int i = 0; i < beds.size(); i++) {
      Group group = all.get(groups.groupOfBed()[i]);
      group.beds.add(i);
      group.vertices += beds.get(i).geometry().getNumPoints();
      group.extent.expandToInclude(beds.get(i).geometry().getEnvelopeInternal());
      everything.expandToInclude(beds.get(i).geometry().getEnvelopeInternal());
    }
    for (int i = 0; i < scars.size(); i++) {
      Group group = all.get(groups.groupOfScar()[i]);
      group.scars.add(i);
      if (group.beds.isEmpty()) {
        Envelope extent = scars.get(i).geometry().getEnvelopeInternal();
        group.extent.expandToInclude(extent);
        everything.expandToInclude(extent);
      }
    }
    HilbertEncoder encoder = new HilbertEncoder(HILBERT_LEVEL, everything);
    // The sort is stable, and groups come in order of their first feature.
    List<Group> inOrder =
        all.stream()
            .sorted(Comparator.comparingInt(group -> encoder.encode(group.extent)))
            .toList();
    List<SurveyPart> parts = new ArrayList<>();
    List<Group> open = new ArrayList<>();
    long openScars = 0;
    long openVertices = 0;
    for (Group group : inOrder) {
      boolean full =
          openScars + group.scars.size() > size.scars()
              || openVertices + group.vertices > size.bedVertices();
      if (full && !open.isEmpty()) {
        parts.add(part(open));
        open.clear();
        openScars = 0;
        openVertices = 0;
      }
      open.add(group);
      openScars += group.scars.size();
      openVertices += group.vertices;
    }
    if (!open.isEmpty()) {
      parts.add(part(open));
    }
    return parts;
  }

  private static SurveyPart part(List<Group> groups) {
    return new SurveyPart(
        groups.stream().flatMap(g -> g.beds.stream()).mapToInt(i -> i).sorted().toArray(),
        groups.stream().flatMap(g -> g.scars.stream()).mapToInt(i -> i).sorted().toArray(),
        groups.size());
  }
}
