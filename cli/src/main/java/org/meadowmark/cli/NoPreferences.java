package org.meadowmark.cli;

import java.util.prefs.AbstractPreferences;
import java.util.prefs.Preferences;
import java.util.prefs.PreferencesFactory;

/**
 * Preferences that are forgotten when the program ends.
 *
 * <p>The library of reference systems asks for its preferences, and Java would make a folder for
 * them in the user's home and say so on the error stream. The program keeps no preferences.
 */
public final class NoPreferences implements PreferencesFactory {
  static final String KEY = "java.util.prefs.PreferencesFactory";

  private final Preferences root = new Node(null, "");

  /** Used where nothing else was asked for. */
  static void use() {
    if (System.getProperty(KEY) == null) {
      System.setProperty(KEY, NoPreferences.class.getName());
    }
  }

  @Override
  public Preferences systemRoot() {
    return root;
  }

  @Override
  public Preferences userRoot() {
    return root;
  }

  /** A node that holds nothing. */
  private static final class Node extends AbstractPreferences {
    Node(AbstractPreferences parent, String name) {
      super(parent, name);
    }

    @Override
    protected void putSpi(String key, String value) {}

    @Override
    protected String getSpi(String key) {
      return null;
    }

    @Override
    protected void removeSpi(String key) {}

    @Override
    protected void removeNodeSpi() {}

    @Override
    protected String[] keysSpi() {
      return new String[0];
    }

    @Override
    protected String[] childrenNamesSpi() {
      return new String[0];
    }

    @Override
    protected AbstractPreferences childSpi(String name) {
      return new Node(this, name);
    }

    @Override
    protected void syncSpi() {}

    @Override
    protected void flushSpi() {}
  }
}
