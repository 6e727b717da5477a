package org.meadowmark.core.model;

/** Hears how far long work has come. Calls may come from several threads. */
public interface Progress {
  /** Hears nothing. */
  Progress NONE =
      new Progress() {
        @Override
        public void begin(String stage, long total) {}

        @Override
        public void advance(long steps) {}

        @Override
        public void end() {}
      };

  /**
   * A stage starts.
   *
   * @param stage short name for a person, such as "measuring beds"
   * @param total number of steps, or -1 where it is not known
   */
  void begin(String stage, long total);

  /**
   * Steps were done.
   *
   * @param steps how many since the last call
   */
  void advance(long steps);

  /** The stage that began last has ended. */
  void end();
}
