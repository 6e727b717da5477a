package org.meadowmark.samples;

/** The estuary of the bundled sample, made once for all tests of a JVM. */
final class SampleEstuary {
  static final Estuary MADE = EstuaryGenerator.generate(EstuarySettings.SAMPLE);

  private SampleEstuary() {}
}
