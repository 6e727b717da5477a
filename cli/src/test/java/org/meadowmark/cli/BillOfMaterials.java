package org.meadowmark.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A bill of materials in the <a href="https://cyclonedx.org/specification/">CycloneDX</a> format.
 */
final class BillOfMaterials {
  static final String OURS = "org.meadowmark";

  /**
   * A library.
   *
   * @param reference its name in the bill
   * @param artifact group and artifact
   * @param version version
   * @param licences licences as stated
   */
  record Library(String reference, String artifact, String version, List<String> licences)
      implements Comparable<Library> {
    private static final Comparator<Library> ORDER =
        Comparator.comparing(Library::artifact).thenComparing(Library::reference);

    @Override
    public int compareTo(Library other) {
      return ORDER.compare(this, other);
    }

    /** Name of its jar in a folder of libraries, but for a classifier. */
    String fileName() {
      return artifact.substring(artifact.indexOf(':') + 1) + "-" + version + ".jar";
    }
  }

  private final Map<String, Library> libraries = new HashMap<>();
  private final Map<String, List<String>> dependencies = new HashMap<>();

  private BillOfMaterials() {}

  static BillOfMaterials read(Path file) throws IOException {
    JsonNode root = JsonMapper.builder().build().readTree(file.toFile());
    BillOfMaterials bill = new BillOfMaterials();
    bill.add(root.path("metadata").path("component"));
    root.path("components").forEach(bill::add);
    for (JsonNode node : root.path("dependencies")) {
      List<String> targets = new ArrayList<>();
      node.path("dependsOn").forEach(target -> targets.add(target.textValue()));
      bill.dependencies.put(node.path("ref").textValue(), targets);
    }
    return bill;
  }

  private void add(JsonNode component) {
    List<String> licences = new ArrayList<>();
    for (JsonNode choice : component.path("licenses")) {
      JsonNode licence = choice.path("license");
      licences.add(
          choice.has("expression")
              ? choice.path("expression").textValue()
              : licence.path(licence.has("id") ? "id" : "name").textValue());
    }
    String reference = component.path("bom-ref").textValue();
    libraries.put(
        reference,
        new Library(
            reference,
            component.path("group").textValue() + ":" + component.path("name").textValue(),
            component.path("version").textValue(),
            List.copyOf(licences)));
  }

  /** Everything in it, ours too, in order. */
  Set<Library> all() {
    return new TreeSet<>(libraries.values());
  }

  /** Libraries of others that a module of ours needs; empty where it holds no such module. */
  Optional<Set<Library>> neededBy(String module) {
    Optional<Library> start =
        libraries.values().stream()
            .filter(library -> library.artifact().equals(OURS + ":" + module))
            .findFirst();
    return start.map(
        library -> {
          Set<String> seen = new HashSet<>(Set.of(library.reference()));
          Deque<String> open = new ArrayDeque<>(seen);
          while (!open.isEmpty()) {
            for (String next : dependencies.getOrDefault(open.pop(), List.of())) {
              if (seen.add(next)) {
                open.push(next);
              }
            }
          }
          Set<Library> found = new TreeSet<>();
          for (String reference : seen) {
            Library one = libraries.get(reference);
            if (!one.artifact().startsWith(OURS + ":")) {
              found.add(one);
            }
          }
          return found;
        });
  }
}
