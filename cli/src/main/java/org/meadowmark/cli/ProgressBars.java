package org.meadowmark.cli;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.meadowmark.core.model.Progress;

/** One bar a stage, on the process's error stream. */
final class ProgressBars implements Progress {
  private static final int MILLIS_BETWEEN_UPDATES = 200;

  private ProgressBar bar;

  @Override
  public synchronized void begin(String stage, long total) {
    end();
    ProgressBarBuilder builder =
        new ProgressBarBuilder()
            .setTaskName(stage)
            .setInitialMax(total)
            .setStyle(ProgressBarStyle.ASCII)
            .setUpdateIntervalMillis(MILLIS_BETWEEN_UPDATES);
    bar = (total < 0 ? builder.hideEta() : builder).build();
  }

  @Override
  public synchronized void advance(long steps) {
    if (bar != null) {
      bar.stepBy(steps);
    }
  }

  @Override
  public synchronized void end() {
    if (bar != null) {
      bar.close();
      bar = null;
    }
  }
}
