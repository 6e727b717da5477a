package org.meadowmark.core.rank.zone;

import java.util.List;

/** What must stand on every proposal. */
final class ZoneCautions {
  static final List<String> ALL =
      List.of(
          "This is a proposal, not a legal basis: a regulatory mark needs an established legal basis"
              + " before it is put up, and in some states damage to grass alone is not one.",
          "Marks in navigable water need the permits of the authorities for the waterway, the bed and"
              + " the wildlife; local codes and the local system of buoyage go before this text.",
          "Positions, shapes and wording need a licensed designer and a look at the place: depth,"
              + " current, traffic and existing marks were not considered.",
          "Scars show where damage was mapped, not who caused it or whether it goes on.");

  private ZoneCautions() {}
}
