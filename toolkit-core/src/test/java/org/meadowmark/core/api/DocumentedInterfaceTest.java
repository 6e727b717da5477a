package org.meadowmark.core.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every public and protected element of the public interface has complete Javadoc: text, every
 * parameter, result and exception. Elsewhere the compiler checks what Javadoc there is, not that
 * there is some.
 */
class DocumentedInterfaceTest {
  private static final Path SOURCES =
      Path.of(
          System.getProperty("meadowmark.root"),
          "toolkit-core/src/main/java/org/meadowmark/core/api");

  @TempDir Path classes;

  @Test
  void theCompilerMissesNothing() throws IOException {
    List<Path> files;
    try (Stream<Path> found = Files.list(SOURCES)) {
      files = found.filter(file -> file.toString().endsWith(".java")).sorted().toList();
    }
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    DiagnosticCollector<JavaFileObject> messages = new DiagnosticCollector<>();
    try (StandardJavaFileManager manager =
        compiler.getStandardFileManager(messages, Locale.ROOT, StandardCharsets.UTF_8)) {
      compiler
          .getTask(
              null,
              manager,
              messages,
              List.of(
                  "-proc:none",
                  "-Xdoclint:all/protected",
                  "-d",
                  classes.toString(),
                  "-cp",
                  System.getProperty("java.class.path")),
              null,
              manager.getJavaFileObjectsFromPaths(files))
          .call();
    }

    assertThat(files).hasSizeGreaterThan(3);
    assertThat(
            messages.getDiagnostics().stream()
                .filter(m -> m.getSource() != null)
                .map(DocumentedInterfaceTest::text))
        .isEmpty();
  }

  private static String text(Diagnostic<? extends JavaFileObject> message) {
    return message.getSource().getName()
        + ":"
        + message.getLineNumber()
        + ": "
        + message.getMessage(Locale.ROOT);
  }
}
