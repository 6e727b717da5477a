package org.meadowmark.core.write.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;

/**
 * Versions of the program, of Java and of the libraries that results depend on.
 *
 * @param tool version of Meadowmark
 * @param java version of the Java runtime
 * @param libraries version by library
 */
public record Versions(String tool, String java, Map<String, String> libraries) {
  private static final String NOT_STATED = "not stated";

  private static final Map<String, String> LIBRARIES = new LinkedHashMap<>();

  static {
    LIBRARIES.put("GeoTools", "org.geotools/gt-main");
    LIBRARIES.put("JTS", "org.locationtech.jts/jts-core");
    LIBRARIES.put("sqlite-jdbc", "org.xerial/sqlite-jdbc");
    LIBRARIES.put("JFreeChart", "org.jfree/jfreechart");
  }

  /**
   * Keeps a copy of the versions of libraries that cannot be changed.
   *
   * @param tool version of Meadowmark
   * @param java version of the Java runtime
   * @param libraries version by library
   * @throws NullPointerException if anything is null
   */
  public Versions {
    Objects.requireNonNull(tool, "tool");
    Objects.requireNonNull(java, "java");
    libraries = Map.copyOf(libraries);
  }

  /**
   * {@return the versions on the class path, from the descriptors that the libraries carry}
   *
   * @param tool version of Meadowmark, which no library states
   * @throws UncheckedIOException if a descriptor is there and cannot be read
   */
  public static Versions current(String tool) {
    Map<String, String> libraries = new LinkedHashMap<>();
    LIBRARIES.forEach((name, artifact) -> libraries.put(name, stated(artifact)));
    return new Versions(tool, Runtime.version().toString(), libraries);
  }

  private static String stated(String artifact) {
    String descriptor = "/META-INF/maven/" + artifact + "/pom.properties";
    try (InputStream in = Versions.class.getResourceAsStream(descriptor)) {
      if (in == null) {
        return NOT_STATED;
      }
      Properties properties = new Properties();
      properties.load(in);
      return properties.getProperty("version", NOT_STATED);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
