package org.meadowmark.core.write.record;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.meadowmark.core.model.Progress;

/**
 * Measures wall time and peak heap of the stages that it hears of, and passes progress on. Stages
 * do not nest. Peaks are those of the whole virtual machine.
 */
public final class StageMeter implements Progress {
  private final Progress next;
  private final List<StageUse> stages = new ArrayList<>();
  private String stage = "";
  private long startNanos;

  /**
   * A meter.
   *
   * @param next hears everything that this meter hears
   */
  public StageMeter(Progress next) {
    this.next = next;
  }

  @Override
  public void begin(String stageName, long total) {
    heapPools().forEach(MemoryPoolMXBean::resetPeakUsage);
    stage = stageName;
    startNanos = System.nanoTime();
    next.begin(stageName, total);
  }

  @Override
  public void advance(long steps) {
    next.advance(steps);
  }

  @Override
  public void end() {
    long peak = heapPools().stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum();
    stages.add(new StageUse(stage, Duration.ofNanos(System.nanoTime() - startNanos), peak));
    next.end();
  }

  /** {@return the stages that have ended, in order} */
  public List<StageUse> stages() {
    return List.copyOf(stages);
  }

  private static List<MemoryPoolMXBean> heapPools() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(pool -> pool.getType() == MemoryType.HEAP)
        .toList();
  }
}
