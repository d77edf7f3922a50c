package thudbook.patching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Dimension;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/**
 * A number of a recipe's sound that a knob can set, as the knob is marked: a modulator in hertz or
 * as a ratio, whichever the knob has; an exponential decay or release as the time to 1 %, whatever
 * fraction the recipe names, since that is how the knobs of the studio are marked.
 *
 * @param si the number in the SI unit of its dimension; null: the recipe does not have it yet
 */
public record SoundValue(
    Dimension dimension, @Nullable Double si, DoubleFunction<Recipe> replacing) {
  private static final Pattern STAGE = Pattern.compile("stages\\.([0-3])\\.(.+)");

  /**
   * The value that a setting names, if the sound of the recipe has such a value.
   *
   * @param pointer such as {@code envelope.decay} or {@code stages.0.gain}
   * @param marked the dimension of the knob that sets it
   */
  public static Optional<SoundValue> at(Recipe recipe, String pointer, Dimension marked) {
    Matcher stage = STAGE.matcher(pointer);
    if (stage.matches()) {
      return ofStage(recipe, Integer.parseInt(stage.group(1)), stage.group(2));
    }
    int dot = pointer.indexOf('.');
    String block = dot < 0 ? pointer : pointer.substring(0, dot);
    String key = pointer.substring(dot + 1);
    return switch (block) {
      case "source" ->
          SourceNumbers.of(recipe.source(), key, marked)
              .map(part -> part.in(source -> withSource(recipe, source)));
      case "envelope" ->
          EnvelopeNumbers.of(recipe.envelope(), key)
              .map(part -> part.in(envelope -> withEnvelope(recipe, envelope)));
      case "strikes" ->
          ofStrikes(recipe.strikes(), key)
              .map(part -> part.in(strikes -> withStrikes(recipe, strikes)));
      case "output" ->
          key.equals("coupling")
              ? Optional.of(
                  new SoundValue(
                      Dimension.FREQUENCY,
                      recipe.couplingHertz(),
                      hertz -> withCoupling(recipe, hertz)))
              : Optional.empty();
      default -> Optional.empty();
    };
  }

  /**
   * The same recipe with another number here.
   *
   * @throws IllegalArgumentException if the sound can't have it
   */
  public Recipe with(double other) {
    return replacing.apply(other);
  }

  private static Optional<SoundValue> ofStage(Recipe recipe, int index, String key) {
    if (index >= recipe.stages().size()) {
      return Optional.empty();
    }
    StageEntry stage = recipe.stages().get(index);
    Drive drive = stage.drive();
    if (key.startsWith("envelope.")) {
      return EnvelopeNumbers.of(stage.envelope(), key.substring("envelope.".length()))
          .map(
              part ->
                  part.in(
                      own ->
                          withStage(
                              recipe,
                              index,
                              new StageEntry(stage.gate(), stage.channel(), drive, own))));
    }
    return ofDrive(drive, key)
        .map(
            part ->
                part.in(
                    other ->
                        withStage(
                            recipe,
                            index,
                            new StageEntry(
                                stage.gate(), stage.channel(), other, stage.envelope()))));
  }

  private static Optional<Part<Drive>> ofDrive(Drive drive, String key) {
    return switch (key) {
      case "gain" ->
          Part.some(
              Dimension.NUMBER,
              drive.gain(),
              gain -> new Drive(gain, drive.offsetVolts(), drive.railVolts()));
      case "offset" ->
          Part.some(
              Dimension.VOLTAGE,
              drive.offsetVolts(),
              volts -> new Drive(drive.gain(), volts, drive.railVolts()));
      case "controlRail" ->
          Part.some(
              Dimension.VOLTAGE,
              drive.railVolts(),
              volts -> new Drive(drive.gain(), drive.offsetVolts(), volts));
      default -> Optional.empty();
    };
  }

  private static Optional<Part<Strikes>> ofStrikes(@Nullable Strikes strikes, String key) {
    if (strikes instanceof Strikes.Every every && key.equals("every")) {
      return Part.some(
          Dimension.TIME,
          every.everySeconds(),
          seconds -> new Strikes.Every(seconds, every.count(), every.restart()));
    }
    if (strikes instanceof Strikes.Tempo tempo && key.equals("tempo")) {
      return Part.some(
          Dimension.TEMPO,
          tempo.beatsPerMinute(),
          beats ->
              new Strikes.Tempo(
                  beats, tempo.numerator(), tempo.denominator(), tempo.count(), tempo.restart()));
    }
    return Optional.empty();
  }

  private static Recipe withSource(Recipe recipe, SourceEntry source) {
    return recipe.withSound(
        source, recipe.envelope(), recipe.strikes(), recipe.stages(), recipe.couplingHertz());
  }

  private static Recipe withEnvelope(Recipe recipe, EnvelopeEntry envelope) {
    return recipe.withSound(
        recipe.source(), envelope, recipe.strikes(), recipe.stages(), recipe.couplingHertz());
  }

  private static Recipe withStrikes(Recipe recipe, Strikes strikes) {
    return recipe.withSound(
        recipe.source(), recipe.envelope(), strikes, recipe.stages(), recipe.couplingHertz());
  }

  private static Recipe withCoupling(Recipe recipe, double hertz) {
    return recipe.withSound(
        recipe.source(), recipe.envelope(), recipe.strikes(), recipe.stages(), hertz);
  }

  private static Recipe withStage(Recipe recipe, int index, StageEntry stage) {
    List<StageEntry> stages = new ArrayList<>(recipe.stages());
    stages.set(index, stage);
    return recipe.withSound(
        recipe.source(), recipe.envelope(), recipe.strikes(), stages, recipe.couplingHertz());
  }
}
