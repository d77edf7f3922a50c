package thudbook.library;

import java.util.Arrays;
import java.util.Optional;

/** What recipes are told apart by: each has values with a number of recipes. */
public enum Facet {
  /** Tags, folded. All that are chosen must be there. */
  TAG("tag"),
  /** Kind of source: noise, oscillator, fm. */
  SOURCE("source"),
  /** Gate, or gate and channel, as {@link ChannelName#text} writes them. */
  CHANNEL("on"),
  /** How far a strike opens the gate, as {@link Catalogue#word} writes it. */
  REACH("reach"),
  /** Who made the patch, folded. */
  BY("by"),
  /** 1 to 5. */
  RATING("rating");

  private final String key;

  Facet(String key) {
    this.key = key;
  }

  /** The name in addresses. */
  public String key() {
    return key;
  }

  /** Whether all values that are chosen must hold, not only one of them. */
  public boolean all() {
    return this == TAG;
  }

  /** The facet of a key. */
  public static Optional<Facet> ofKey(String key) {
    return Arrays.stream(values()).filter(facet -> facet.key.equals(key)).findFirst();
  }
}
