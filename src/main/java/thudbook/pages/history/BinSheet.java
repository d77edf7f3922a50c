package thudbook.pages.history;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import thudbook.changes.Keeper;
import thudbook.changes.Thing;
import thudbook.wording.TimeOfRecord;

/**
 * What lies in the bin, noun by noun, latest first.
 *
 * @param sections those of nouns of which something lies there
 */
public record BinSheet(List<Section> sections) {
  /** So many things of a noun are listed. */
  static final int ROWS = 200;

  /**
   * The things of a noun.
   *
   * @param name a part of addresses: {@code gates}
   * @param full whether there may be more than are listed
   */
  public record Section(String name, String heading, List<Item> items, boolean full) {}

  /**
   * One thing.
   *
   * @param restore where the form that takes it out is sent
   */
  public record Item(String title, String address, String restore, TimeOfRecord at) {}

  /**
   * A noun as the bin shows it.
   *
   * @param folder of the addresses of its pages, with slashes
   * @param title what a thing is called
   */
  record Binned<T extends Thing>(Keeper<T> acts, String folder, Function<T, String> title) {
    String name() {
      return acts.noun().word() + "s";
    }

    private Section section() {
      String name = name();
      List<Item> items =
          acts.store().binned(ROWS).stream()
              .map(
                  kept ->
                      new Item(
                          title.apply(kept.thing()),
                          folder + kept.slug(),
                          "/bin/" + name + "/" + kept.id(),
                          TimeOfRecord.of(Objects.requireNonNull(kept.binnedAt()))))
              .toList();
      String heading = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
      return new Section(name, heading, items, items.size() == ROWS);
    }
  }

  static BinSheet of(List<Binned<?>> nouns) {
    return new BinSheet(
        nouns.stream().map(Binned::section).filter(section -> !section.items().isEmpty()).toList());
  }
}
