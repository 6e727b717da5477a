package org.meadowmark.core.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.SurveyInputException;

/**
 * Holds the public interface against the list of it, so that no change of it goes unseen. {@code
 * -Dmeadowmark.renew-interface=true} renews the list.
 */
class PublicInterfaceTest {
  private static final Path LIST =
      Path.of(
          System.getProperty("meadowmark.root"),
          "toolkit-core/src/test/resources/public-interface.txt");
  private static final List<Class<?>> EXCEPTIONS =
      List.of(
          MeadowmarkException.class,
          OutputExistsException.class,
          OutputFailedException.class,
          SurveyInputException.class);

  @Test
  void onlyWhatTheListSaysIsPublic() throws IOException {
    String now = String.join("\n", lines(types())) + "\n";
    String listed = Files.exists(LIST) ? Files.readString(LIST) : "";
    if (Boolean.getBoolean("meadowmark.renew-interface")) {
      Files.writeString(LIST, now);
    }

    assertThat(listed)
        .as(
            "public-interface.txt; if the change is meant, see the rules of versions in"
                + " docs/java-api.md, renew with -Dmeadowmark.renew-interface=true and write it into"
                + " CHANGELOG.md")
        .isEqualTo(now);
  }

  @Test
  void publicTypesNameNoInternalType() {
    Set<String> allowed =
        EXCEPTIONS.stream().map(Class::getName).collect(Collectors.toCollection(TreeSet::new));

    for (Class<?> type : types()) {
      for (Method method : type.getDeclaredMethods()) {
        if (Modifier.isPublic(method.getModifiers())) {
          String without = method.toGenericString().replace("org.meadowmark.core.api.", "");
          for (String name : allowed) {
            without = without.replace(name, "");
          }
          assertThat(without).as("in %s", type).doesNotContain("org.meadowmark");
        }
      }
    }
  }

  @Test
  void theDocumentNamesEveryPublicType() throws IOException {
    String document =
        Files.readString(Path.of(System.getProperty("meadowmark.root"), "docs/java-api.md"));

    assertThat(types()).hasSizeGreaterThan(3);
    for (Class<?> type : types()) {
      if (!type.isMemberClass()) {
        assertThat(document).contains("`" + type.getSimpleName() + "`");
      }
    }
    for (Class<?> type : EXCEPTIONS) {
      assertThat(document).contains("`" + type.getSimpleName() + "`");
    }
  }

  private static List<Class<?>> types() {
    List<Class<?>> types = new ArrayList<>();
    for (JavaClass type :
        new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.meadowmark.core.api")) {
      Class<?> found = type.reflect();
      if (Modifier.isPublic(found.getModifiers())) {
        types.add(found);
      }
    }
    return types;
  }

  private static Set<String> lines(List<Class<?>> types) {
    Set<String> lines = new TreeSet<>();
    for (Class<?> type : types) {
      lines.add(type.toGenericString());
      for (Constructor<?> constructor : type.getConstructors()) {
        lines.add(constructor.toGenericString());
      }
      for (Method method : type.getDeclaredMethods()) {
        if (Modifier.isPublic(method.getModifiers())) {
          lines.add(method.toGenericString());
        }
      }
    }
    for (Class<?> type : EXCEPTIONS) {
      lines.add(type.toGenericString() + " extends " + type.getSuperclass().getName());
    }
    return lines;
  }
}
