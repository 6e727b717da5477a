package org.meadowmark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.LayerRole;

/** Names of layer roles on the command line: those of the survey file, and the options' own. */
final class RoleName {
  private RoleName() {}

  /** Name of the option that gives the file of a role, without the dashes. */
  static String optionOf(LayerRole role) {
    return switch (role) {
      case MANAGEMENT_AREAS -> "areas";
      case SURVEYED_AREA -> "surveyed";
      default -> role.key();
    };
  }

  static Optional<LayerRole> find(String name) {
    for (LayerRole role : LayerRole.values()) {
      if (role.key().equals(name) || optionOf(role).equals(name)) {
        return Optional.of(role);
      }
    }
    return Optional.empty();
  }

  static String all() {
    List<String> names = new ArrayList<>();
    for (LayerRole role : LayerRole.values()) {
      names.add(optionOf(role));
    }
    return String.join(", ", names);
  }
}
