package thudbook.patching;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Strikes;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;

/** A word of a recipe's sound that a switch can set, such as the curve of an attack. */
final class SoundWord {
  private SoundWord() {}

  /**
   * The word as documents write it: {@code exponential}.
   *
   * @param pointer such as {@code envelope.attackCurve}
   * @return empty if there is no such word
   */
  static Optional<String> at(Recipe recipe, String pointer) {
    if (pointer.equals("strikes.restart")) {
      Strikes strikes = recipe.strikes();
      return strikes == null ? Optional.empty() : word(strikes.restart());
    }
    if (pointer.startsWith("source.")) {
      return ofSource(recipe.source(), pointer.substring("source.".length()));
    }
    if (pointer.startsWith("envelope.")) {
      return ofEnvelope(recipe.envelope(), pointer.substring("envelope.".length()));
    }
    for (int i = 0; i < recipe.stages().size(); i++) {
      String start = "stages." + i + ".envelope.";
      if (pointer.startsWith(start)) {
        return ofEnvelope(recipe.stages().get(i).envelope(), pointer.substring(start.length()));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> ofSource(@Nullable SourceEntry source, String key) {
    if (source instanceof SourceEntry.Noise noise && key.equals("colour")) {
      return word(noise.colour());
    } else if (source instanceof SourceEntry.Oscillator one && key.equals("wave")) {
      return word(one.wave());
    } else if (source instanceof SourceEntry.FrequencyModulation pair && key.equals("wave")) {
      return word(pair.wave());
    }
    return Optional.empty();
  }

  private static Optional<String> ofEnvelope(@Nullable EnvelopeEntry envelope, String key) {
    if (envelope instanceof EnvelopeEntry.AttackHoldDecay one) {
      return switch (key) {
        case "attackCurve" -> word(one.attack().curve());
        case "decayCurve" -> word(one.decay().curve());
        default -> Optional.empty();
      };
    } else if (envelope instanceof EnvelopeEntry.AttackDecaySustainRelease one) {
      return switch (key) {
        case "attackCurve" -> word(one.attack().curve());
        case "decayCurve" -> word(one.decay().curve());
        case "releaseCurve" -> word(one.release().curve());
        default -> Optional.empty();
      };
    }
    return Optional.empty();
  }

  private static Optional<String> word(Enum<?> constant) {
    return Optional.of(constant.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }
}
