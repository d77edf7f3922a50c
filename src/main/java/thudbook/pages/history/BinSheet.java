package thudbook.pages.history;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import thudbook.changes.Keeper;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.wording.TimeOfRecord;

/**
 * What lies in the bin, noun by noun, latest first.
 *
 * @param sections those of nouns of which something lies there
 */
public record BinSheet(List<Section> sections) {
  /** So many recipes are listed; of all else there are few. */
  private static final int RECIPES = 200;

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
    /** A noun whose name is the folder of its pages. */
    static <T extends Thing> Binned<T> of(Keeper<T> acts) {
      return new Binned<>(acts, "/" + acts.noun().word() + "s/", Thing::title);
    }

    String name() {
      return acts.noun().word() + "s";
    }

    private Section section() {
      String name = name();
      int most = acts.noun().equals(Documents.RECIPE) ? RECIPES : Integer.MAX_VALUE;
      List<Item> items =
          acts.store().binned(most).stream()
              .map(
                  kept ->
                      new Item(
                          title.apply(kept.thing()),
                          folder + kept.slug(),
                          "/bin/" + name + "/" + kept.id(),
                          TimeOfRecord.of(Objects.requireNonNull(kept.binnedAt()))))
              .toList();
      return new Section(name, heading(name), items, items.size() == most);
    }
  }

  /** The name of a folder as a heading. */
  static String heading(String folder) {
    return folder.substring(0, 1).toUpperCase(Locale.ROOT) + folder.substring(1).replace('-', ' ');
  }

  static BinSheet of(List<Binned<?>> nouns) {
    return new BinSheet(
        nouns.stream().map(Binned::section).filter(section -> !section.items().isEmpty()).toList());
  }
}
