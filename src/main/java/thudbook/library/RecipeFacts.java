package thudbook.library;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.library.WordIndex.Place;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/**
 * What of a recipe's document is searched by, beside its title, tags, stages and prediction.
 *
 * @param photos how many it has
 * @param numbers the settings of the sound that are written down
 * @param words the folded words of each place; those of different items are kept apart by {@link
 *     #APART}
 */
public record RecipeFacts(
    @Nullable LocalDate madeOn,
    @Nullable Integer rating,
    int photos,
    Map<Quantity, Double> numbers,
    Map<Place, String> words) {
  /** A word that nobody types, so that no phrase reaches from one item to the next. */
  public static final String APART = "\uE000";

  public RecipeFacts {
    numbers = copy(new EnumMap<>(Quantity.class), numbers);
    words = copy(new EnumMap<>(Place.class), words);
  }

  private static <K extends Enum<K>, V> Map<K, V> copy(EnumMap<K, V> copy, Map<K, V> values) {
    copy.putAll(values);
    return Collections.unmodifiableMap(copy);
  }

  /** The facts of a recipe. */
  public static RecipeFacts of(Recipe recipe) {
    Map<Quantity, Double> numbers = new EnumMap<>(Quantity.class);
    source(recipe.source(), numbers);
    envelope(envelope(recipe), numbers);
    Map<Place, String> words = new EnumMap<>(Place.class);
    texts(recipe)
        .forEach(
            (place, items) ->
                words.put(
                    place,
                    String.join(
                        " " + APART + " ",
                        items.stream().map(item -> String.join(" ", Words.of(item))).toList())));
    return new RecipeFacts(recipe.made(), recipe.rating(), recipe.photos().size(), numbers, words);
  }

  /** The texts of a recipe in which words are looked for, item by item. */
  static Map<Place, List<String>> texts(Recipe recipe) {
    Map<Place, List<String>> texts = new EnumMap<>(Place.class);
    texts.put(Place.TITLE, List.of(recipe.title()));
    texts.put(Place.HEARD, items(recipe.heard()));
    List<String> people = items(recipe.by());
    people.addAll(recipe.with());
    texts.put(Place.PEOPLE, people);
    texts.put(Place.GEAR, gear(recipe));
    List<String> notes = items(recipe.notes());
    notes.addAll(items(recipe.room()));
    recipe.photos().forEach(photo -> notes.addAll(items(photo.shows())));
    texts.put(Place.NOTES, notes);
    return texts;
  }

  private static List<String> gear(Recipe recipe) {
    List<String> gear = new ArrayList<>();
    for (StageEntry stage : recipe.stages()) {
      gear.addAll(items(stage.gate()));
      gear.addAll(items(stage.channel()));
    }
    for (Recipe.Connection connection : recipe.connections()) {
      gear.add(connection.out());
      gear.add(connection.in());
    }
    for (Recipe.Setting setting : recipe.settings()) {
      gear.add(setting.module() + " " + setting.control());
    }
    recipe.mix().forEach(mix -> gear.add(mix.into()));
    for (Recipe.After after : recipe.after()) {
      gear.add(after.what());
      gear.addAll(items(after.how()));
    }
    return gear;
  }

  private static List<String> items(@Nullable String text) {
    List<String> items = new ArrayList<>();
    if (text != null) {
      items.add(text);
    }
    return items;
  }

  private static void source(@Nullable SourceEntry source, Map<Quantity, Double> numbers) {
    if (source instanceof SourceEntry.FrequencyModulation pair) {
      put(numbers, Quantity.INDEX, pair.index());
      put(numbers, Quantity.CARRIER, pair.carrier() == null ? null : pair.carrier().hertz());
    } else if (source instanceof SourceEntry.Oscillator oscillator
        && oscillator.frequency() != null) {
      put(numbers, Quantity.CARRIER, oscillator.frequency().hertz());
    }
  }

  /** The envelope of the recipe, or of the first stage that has its own. */
  private static @Nullable EnvelopeEntry envelope(Recipe recipe) {
    if (recipe.envelope() != null) {
      return recipe.envelope();
    }
    for (StageEntry stage : recipe.stages()) {
      if (stage.envelope() != null) {
        return stage.envelope();
      }
    }
    return null;
  }

  private static void envelope(@Nullable EnvelopeEntry envelope, Map<Quantity, Double> numbers) {
    if (envelope instanceof EnvelopeEntry.Pulse pulse) {
      put(numbers, Quantity.PEAK, pulse.peakVolts());
    } else if (envelope instanceof EnvelopeEntry.AttackHoldDecay decaying) {
      put(numbers, Quantity.PEAK, decaying.peakVolts());
      put(numbers, Quantity.DECAY, decaying.decay().seconds());
    } else if (envelope instanceof EnvelopeEntry.AttackDecaySustainRelease sustaining) {
      put(numbers, Quantity.PEAK, sustaining.peakVolts());
      put(numbers, Quantity.DECAY, sustaining.decay().seconds());
    }
  }

  private static void put(
      Map<Quantity, Double> numbers, Quantity quantity, @Nullable Double value) {
    if (value != null) {
      numbers.put(quantity, value);
    }
  }
}
