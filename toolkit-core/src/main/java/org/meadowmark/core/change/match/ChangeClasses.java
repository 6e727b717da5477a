package org.meadowmark.core.change.match;

import java.util.List;
import org.meadowmark.core.change.match.Assignment.Assigned;

/**
 * Classes of scars from the links that tell.
 *
 * <p>A scar with several is split, or merged; so is one that is a piece of such a scar. One to one,
 * the class goes by the metres that only one of the two surveys has: as long as they pass neither
 * the tolerance nor the least change of length they are put down to mapping.
 */
final class ChangeClasses {
  /** As much gained as lost counts as gained, whatever the last digits. */
  private static final double EVEN_METRES = 0.01;

  private final List<ComparedTrace> earlier;
  private final List<ComparedTrace> later;
  private final double toleranceMetres;
  private final double lengthChange;
  private final int[] earlierLinks;
  private final int[] laterLinks;
  private final double[] earlierMetres;
  private final double[] laterMetres;
  private final Assigned[] lastOfEarlier;
  private final Assigned[] lastOfLater;

  ChangeClasses(
      List<ComparedTrace> earlier,
      List<ComparedTrace> later,
      List<Assigned> links,
      double toleranceMetres,
      double lengthChange) {
    this.earlier = earlier;
    this.later = later;
    this.toleranceMetres = toleranceMetres;
    this.lengthChange = lengthChange;
    earlierLinks = new int[earlier.size()];
    laterLinks = new int[later.size()];
    earlierMetres = new double[earlier.size()];
    laterMetres = new double[later.size()];
    lastOfEarlier = new Assigned[earlier.size()];
    lastOfLater = new Assigned[later.size()];
    for (Assigned link : links) {
      int from = link.pair().earlier();
      int to = link.pair().later();
      earlierMetres[from] += link.earlierMetres();
      laterMetres[to] += link.laterMetres();
      if (link.telling()) {
        earlierLinks[from]++;
        laterLinks[to]++;
        lastOfEarlier[from] = link;
        lastOfLater[to] = link;
      }
    }
  }

  ScarChange ofEarlier(int index, boolean crowded) {
    ComparedTrace scar = earlier.get(index);
    ChangeClass change;
    if (scar.gridMetres() == 0) {
      change = ChangeClass.NOT_COMPARABLE;
    } else if (earlierLinks[index] == 0) {
      change = ChangeClass.HEALED;
    } else if (earlierLinks[index] > 1) {
      change = ChangeClass.SPLIT;
    } else if (laterLinks[lastOfEarlier[index].pair().later()] > 1) {
      change = ChangeClass.MERGED;
    } else {
      change = oneToOne(lastOfEarlier[index].pair());
    }
    return change(scar, change, earlierMetres[index], crowded);
  }

  ScarChange ofLater(int index, boolean crowded) {
    ComparedTrace scar = later.get(index);
    ChangeClass change;
    if (scar.gridMetres() == 0) {
      change = ChangeClass.NOT_COMPARABLE;
    } else if (laterLinks[index] == 0) {
      change = ChangeClass.NEW;
    } else if (laterLinks[index] > 1) {
      change = ChangeClass.MERGED;
    } else if (earlierLinks[lastOfLater[index].pair().earlier()] > 1) {
      change = ChangeClass.SPLIT;
    } else {
      change = oneToOne(lastOfLater[index].pair());
    }
    return change(scar, change, laterMetres[index], crowded);
  }

  private ChangeClass oneToOne(Pair pair) {
    double before = earlier.get(pair.earlier()).comparableMetres();
    double after = later.get(pair.later()).comparableMetres();
    double lost = before - earlierMetres[pair.earlier()];
    double gained = after - laterMetres[pair.later()];
    double least = Math.max(toleranceMetres, lengthChange * before);
    if (gained > least && gained >= lost - EVEN_METRES) {
      return ChangeClass.EXTENDED;
    }
    return lost > least ? ChangeClass.SHORTENED : ChangeClass.PERSISTING;
  }

  private static ScarChange change(
      ComparedTrace scar, ChangeClass change, double assigned, boolean crowded) {
    double comparable = scar.comparableMetres();
    double used = Math.min(assigned, comparable);
    return new ScarChange(
        scar.trace().scar().id(),
        scar.trace().isLine(),
        change,
        scar.metres(),
        used,
        comparable - used,
        Math.max(0, scar.metres() - comparable),
        crowded);
  }
}
