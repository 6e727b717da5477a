package org.meadowmark.core.write.record;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * Measures wall time and peak heap of stages that run one after another. Peaks are those of the
 * whole virtual machine. Not for use by several threads at once.
 */
public final class StageMeter {
  private final List<StageUse> stages = new ArrayList<>();

  /** Runs a stage and notes what it took, also when it fails. */
  public <T> T measure(String stage, Supplier<T> work) {
    heapPools().forEach(MemoryPoolMXBean::resetPeakUsage);
    long start = System.nanoTime();
    try {
      return work.get();
    } finally {
      long peak = heapPools().stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum();
      stages.add(new StageUse(stage, Duration.ofNanos(System.nanoTime() - start), peak));
    }
  }

  /** Runs a stage that has no result. */
  public void measure(String stage, Runnable work) {
    measure(
        stage,
        () -> {
          work.run();
          return null;
        });
  }

  /** The stages that have run, in order. */
  public List<StageUse> stages() {
    return List.copyOf(stages);
  }

  private static List<MemoryPoolMXBean> heapPools() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(pool -> pool.getType() == MemoryType.HEAP)
        .toList();
  }
}
