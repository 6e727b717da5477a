package org.meadowmark.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** Version of the program, as the build wrote it down. */
final class ToolVersion implements IVersionProvider {

  static String text() {
    try (InputStream in = ToolVersion.class.getResourceAsStream("version.properties")) {
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public String[] getVersion() {
    return new String[] {"meadowmark " + text()};
  }
}
