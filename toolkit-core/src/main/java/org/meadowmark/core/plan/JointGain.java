package org.meadowmark.core.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.meadowmark.core.measure.connectivity.JointFillings;
import org.meadowmark.core.plan.choice.JointBenefit;

/**
 * Benefit of repairs together: gains in grass add up, what they restore of connectivity is worked
 * out for all of them at once, given what earlier seasons filled.
 *
 * <p>With S the repairs: Σ grass gains, each by its chance to stay whole, + weight · (ECA with S
 * filled − ECA without) · mean chance to stay whole, by the numerators that each gains alone. So
 * one repair alone is worth what it is worth by itself, and a set is worth the same in any order.
 *
 * <p>A gain is worked out anew only where something was filled in the same part of the landscape;
 * else only its root is taken again, since ECA = √numerator.
 */
final class JointGain implements JointBenefit {
  /** In a part with more scars only those that share a patch are looked at at once. */
  private static final int SMALL_PART = 24;

  /** Of those that share a patch, as many as gain most alone. */
  private static final int MOST_RAISED = 16;

  /** Patches looked at before gains are no longer worked out anew: some seconds. */
  private static final long MOST_STEPS = 60_000_000;

  private final List<Repair> repairs;
  private final double weight;
  private final JointFillings fillings;
  private final List<Integer> given;
  private final double numeratorGiven;
  private final double[] alone;
  private final double highestChance;
  private final double[] most;
  private final double mostTogether;
  private final Map<Integer, List<Integer>> byPart = new HashMap<>();
  private final Map<Integer, List<Integer>> byPatch = new HashMap<>();

  /**
   * One repair.
   *
   * @param grass weighted gain in grass
   * @param staysWhole chance that it is not scarred again while it establishes
   * @param filling its number among the fillings, -1 where it makes no gap
   */
  record Repair(double grass, double staysWhole, int filling) {}

  /**
   * @param weight of a hectare of equivalent connected area
   * @param given fillings made before
   */
  JointGain(List<Repair> repairs, double weight, JointFillings fillings, List<Integer> given) {
    this.repairs = List.copyOf(repairs);
    this.weight = weight;
    this.fillings = fillings;
    this.given = List.copyOf(given);
    this.numeratorGiven = fillings.numeratorSquareHectares(given);
    this.highestChance = repairs.stream().mapToDouble(Repair::staysWhole).max().orElse(0);
    Set<Integer> touched = new HashSet<>();
    given.forEach(filling -> touched.add(fillings.partOf(filling)));
    JointFillings.Work work = begun();
    this.alone = new double[repairs.size()];
    for (int i = 0; i < alone.length; i++) {
      if (fills(i)) {
        alone[i] =
            touched.contains(fillings.partOf(filling(i)))
                ? work.gain(filling(i))
                : fillings.aloneSquareHectares(filling(i));
        byPart.computeIfAbsent(fillings.partOf(filling(i)), p -> new ArrayList<>()).add(i);
        for (int patch : fillings.patchesOf(filling(i))) {
          byPatch.computeIfAbsent(patch, p -> new ArrayList<>()).add(i);
        }
      }
    }
    List<Integer> all =
        IntStream.range(0, alone.length).filter(this::fills).map(this::filling).boxed().toList();
    List<Integer> among = new ArrayList<>(given);
    among.addAll(all);
    double[] mostGains = fillings.mostGains(among);
    double together = connected(fillings.numeratorSquareHectares(among));
    this.most = new double[repairs.size()];
    int next = given.size();
    for (int i = 0; i < most.length; i++) {
      double connected = fills(i) ? connected(numeratorGiven + mostGains[next++]) : 0;
      most[i] = apart(i) + weight * highestChance * Math.min(together, connected);
    }
    this.mostTogether = weight * highestChance * together;
  }

  private int filling(int repair) {
    return repairs.get(repair).filling();
  }

  private boolean fills(int repair) {
    return filling(repair) >= 0 && fillings.partOf(filling(repair)) >= 0;
  }

  private JointFillings.Work begun() {
    JointFillings.Work work = fillings.begin();
    given.forEach(filling -> work.add(filling, 0));
    return work;
  }

  /** Benefit of one repair alone. */
  double alone(int repair) {
    return apart(repair) + weight * repairs.get(repair).staysWhole() * connectedAlone(repair);
  }

  /** Growth of the equivalent connected area by one repair alone, hectares. */
  double connectedAlone(int repair) {
    return connected(numeratorGiven + alone[repair]);
  }

  /** Growth of the equivalent connected area, hectares. */
  private double connected(double numerator) {
    return Math.max(0, Math.sqrt(numerator) - Math.sqrt(numeratorGiven));
  }

  /** Growth of the equivalent connected area with all of a set filled, hectares. */
  double connectedHectares(Collection<Integer> chosen) {
    List<Integer> filled = new ArrayList<>(given);
    chosen.stream().filter(this::fills).forEach(i -> filled.add(filling(i)));
    return filled.size() == given.size() ? 0 : connected(fillings.numeratorSquareHectares(filled));
  }

  @Override
  public double of(Collection<Integer> chosen) {
    Sum sum = new Sum();
    chosen.forEach(sum::add);
    return sum.benefit(connectedHectares(chosen));
  }

  @Override
  public List<Integer> raised(int candidate) {
    if (!fills(candidate)) {
      return List.of();
    }
    List<Integer> part = byPart.get(fillings.partOf(filling(candidate)));
    if (part.size() <= SMALL_PART) {
      return part.stream().filter(i -> i != candidate).toList();
    }
    Set<Integer> neighbours = new HashSet<>();
    for (int patch : fillings.patchesOf(filling(candidate))) {
      neighbours.addAll(byPatch.get(patch));
    }
    neighbours.remove(candidate);
    return neighbours.stream()
        .sorted(
            (a, b) -> alone[a] != alone[b] ? Double.compare(alone[b], alone[a]) : a.compareTo(b))
        .limit(MOST_RAISED)
        .toList();
  }

  @Override
  public double apart(int candidate) {
    return repairs.get(candidate).grass() * repairs.get(candidate).staysWhole();
  }

  @Override
  public double most(int candidate) {
    return most[candidate];
  }

  @Override
  public double mostTogether() {
    return mostTogether;
  }

  @Override
  public Tally begin() {
    return new Work();
  }

  /** Sums over the repairs of a set. */
  private final class Sum {
    private double grass;
    private double alones;
    private double alonesWhole;
    private double wholes;
    private int count;

    void add(int i) {
      change(i, 1);
    }

    void remove(int i) {
      change(i, -1);
    }

    private void change(int i, int sign) {
      grass += sign * apart(i);
      if (fills(i)) {
        double chance = repairs.get(i).staysWhole();
        alones += sign * alone[i];
        alonesWhole += sign * alone[i] * chance;
        wholes += sign * chance;
        count += sign;
      }
    }

    double benefit(double connectedHectares) {
      double chance = alones > 0 ? alonesWhole / alones : count > 0 ? wholes / count : 0;
      return grass + weight * connectedHectares * Math.min(highestChance, chance);
    }
  }

  private final class Work implements Tally {
    private final JointFillings.Work work = begun();
    private final Sum sum = new Sum();
    private final Deque<Integer> chosen = new ArrayDeque<>();
    private final Map<Integer, Long> stateOfPart = new HashMap<>();
    private final double[] known = new double[repairs.size()];
    private final long[] knownIn = new long[repairs.size()];

    {
      System.arraycopy(alone, 0, known, 0, alone.length);
      Arrays.fill(knownIn, 1);
    }

    private final Deque<States> before = new ArrayDeque<>();
    private long counter = 1;
    private long state = 1;

    /** What {@link #removeLast} goes back to; no number is used for two states. */
    private record States(long state, long ofPart) {}

    private double numerator() {
      return numeratorGiven + work.numeratorSquareHectares() - fillings.numeratorSquareHectares();
    }

    private long stateOfPart(int i) {
      return fills(i) ? stateOfPart.getOrDefault(fillings.partOf(filling(i)), 1L) : 1;
    }

    private double numeratorGain(int i) {
      long now = stateOfPart(i);
      if (knownIn[i] != now) {
        known[i] = work.gain(filling(i));
        knownIn[i] = now;
      }
      return known[i];
    }

    @Override
    public double gain(int i) {
      double before = benefit();
      double numerator = numerator() + (fills(i) ? numeratorGain(i) : 0);
      sum.add(i);
      double after = sum.benefit(connected(numerator));
      sum.remove(i);
      return after - before;
    }

    @Override
    public void add(int i) {
      before.push(new States(state, stateOfPart(i)));
      state = ++counter;
      sum.add(i);
      chosen.push(i);
      if (fills(i)) {
        if (isTired()) {
          work.add(filling(i), alone[i]);
        } else {
          work.add(filling(i), numeratorGain(i));
        }
        stateOfPart.put(fillings.partOf(filling(i)), state);
      }
    }

    @Override
    public void removeLast() {
      int i = chosen.pop();
      States last = before.pop();
      state = last.state();
      sum.remove(i);
      if (fills(i)) {
        work.removeLast();
        stateOfPart.put(fillings.partOf(filling(i)), last.ofPart());
      }
    }

    @Override
    public double benefit() {
      return sum.benefit(connected(numerator()));
    }

    @Override
    public long state(int i) {
      return state;
    }

    @Override
    public boolean isTired() {
      return work.steps() > MOST_STEPS;
    }
  }
}
