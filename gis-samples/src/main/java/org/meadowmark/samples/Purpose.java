package org.meadowmark.samples;

/** What a stream of random numbers is for, so that streams never share numbers. */
final class Purpose {
  static final long SHORE = 1;
  static final long BARRIER = 2;
  static final long CHANNELS = 3;
  static final long ISLETS = 4;
  static final long ISLET_SHAPE = 5;
  static final long FLATS = 6;
  static final long GRASS = 7;
  static final long TEXTURE = 8;
  static final long PATCHES = 9;
  static final long AREAS = 10;
  static final long SURVEYED = 11;
  static final long HOT_SPOTS = 12;
  static final long SCAR_KIND = 13;
  static final long SCAR_PATH = 14;
  static final long SCAR_BIRTH = 15;
  static final long SCAR_FATE = 16;
  static final long SCAR_SURVEY = 17;
  static final long COVER = 18;
  static final long TWO_SEASONS = 19;

  private Purpose() {}
}
