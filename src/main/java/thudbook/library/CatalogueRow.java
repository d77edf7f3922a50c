package thudbook.library;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.predictions.Reach;

/**
 * What the catalogue knows of one recipe, while it is filled in. One row may serve for many recipes
 * one after the other: {@link #begin} clears it.
 */
public final class CatalogueRow {
  /** A value of a facet, and what it is called. */
  record Value(Facet facet, String key, String label) {}

  private int key;
  private String titleKey = "";
  private long changedAt;
  private long lastUsedAt;
  private @Nullable LocalDate madeOn;
  private final double[] numbers = new double[Quantity.values().length];
  private final short[] shape = new short[Catalogue.SHAPE_POINTS];
  private boolean hasShape;
  private final List<Value> values = new ArrayList<>();
  private final Set<Flag> flags = EnumSet.noneOf(Flag.class);
  private final List<String> favouriteOf = new ArrayList<>();

  /** Begins with a recipe of which nothing is known but its key, title and times. */
  public CatalogueRow begin(int recipe, String foldedTitle, long changedAtMillis) {
    key = recipe;
    titleKey = foldedTitle;
    changedAt = changedAtMillis;
    lastUsedAt = Long.MIN_VALUE;
    madeOn = null;
    Arrays.fill(numbers, Double.NaN);
    hasShape = false;
    values.clear();
    flags.clear();
    favouriteOf.clear();
    return this;
  }

  /** A number that it has. */
  public void number(Quantity quantity, double value) {
    numbers[quantity.column()] = value;
  }

  /** A value that it has of a facet, with the name that is shown. */
  public void value(Facet facet, String value, String label) {
    values.add(new Value(facet, value, label));
  }

  /** A channel that it is played through. */
  public void channel(ChannelName name) {
    value(Facet.CHANNEL, name.gate(), name.gate());
    if (name.channel() != null) {
      value(Facet.CHANNEL, name.text(), name.channel());
    }
  }

  /** How far it opens its gate. */
  public void reach(Reach reach) {
    String word = Catalogue.word(reach);
    value(Facet.REACH, word, word);
  }

  /** Something that holds of it whoever asks. */
  public void flag(Flag flag) {
    flags.add(flag);
  }

  /** A member whose favourite it is. */
  public void favouriteOf(String member) {
    favouriteOf.add(member);
  }

  /** When somebody used it last, in milliseconds since 1970. */
  public void used(long at) {
    lastUsedAt = Math.max(lastUsedAt, at);
  }

  /** The day on which it was made. */
  public void made(LocalDate day) {
    madeOn = day;
  }

  /** A level of its small shape in dB, 0 to 47, of which all 48 must be given or none. */
  public void level(int point, double levelDb) {
    shape[point] = (short) Math.round(levelDb * Catalogue.SHAPE_STEPS_PER_DB);
    hasShape = true;
  }

  int key() {
    return key;
  }

  String titleKey() {
    return titleKey;
  }

  long changedAt() {
    return changedAt;
  }

  long lastUsedAt() {
    return lastUsedAt;
  }

  @Nullable LocalDate madeOn() {
    return madeOn;
  }

  double number(Quantity quantity) {
    return numbers[quantity.column()];
  }

  boolean hasShape() {
    return hasShape;
  }

  short level(int point) {
    return shape[point];
  }

  List<Value> values() {
    return values;
  }

  Set<Flag> flags() {
    return flags;
  }

  List<String> favouriteOf() {
    return favouriteOf;
  }
}
