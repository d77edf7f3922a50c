package thudbook.recipes;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thudbook.access.Hands;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.predictions.Sound;
import thudbook.quantities.Frequency;
import thudbook.sources.Source;
import thudbook.storage.Database;
import thudbook.storage.Written;

/** Property: a recipe is a sound if and only if nothing is missing, and what is missing is told. */
class ResolutionTest {
  private static final Gate TWIN = Written.gate("keeper-twin", "Keeper twin");
  private static final SourceEntry SINE =
      new SourceEntry.Oscillator(Source.Wave.SINE, Frequency.ofHertz(55), 0.5, 5);
  private static final EnvelopeEntry PULSE = new EnvelopeEntry.Pulse(5.0, 0.004);
  private static final EnvelopeEntry RECORDED =
      new EnvelopeEntry.Recorded(List.of(new Envelope.Sample(0, 0), new Envelope.Sample(0.1, 5)));

  @TempDir static Path folder;
  private static Database studio;

  @BeforeAll
  static void buildAStudioOfOneGate() {
    studio = Database.open(folder);
    Written.add(studio, List.of(Written.added(TWIN)), List.of(), Hands.OWNER);
  }

  @AfterAll
  static void close() {
    studio.close();
  }

  @Test
  void aWholeRecipeIsASound() {
    StageEntry second = new StageEntry("keeper-twin", "slow", new Drive(0.5, 1, 10), PULSE);
    Resolution resolution = join(SINE, PULSE, null, stage("keeper-twin", "quick"), second);
    assertThat(resolution.missing()).isEmpty();
    assertThat(resolution.gates()).containsExactly(TWIN);
    Sound sound = resolution.complete().orElseThrow();
    assertThat(sound.source()).isEqualTo(SINE.complete().orElseThrow());
    assertThat(sound.envelope()).isEqualTo(new Envelope.Pulse(5, 0.004));
    assertThat(sound.couplingHertz()).isZero();
    assertThat(sound.stages())
        .extracting(stage -> stage.channel().name())
        .containsExactly("quick", "slow");
    assertThat(sound.stages().get(0).envelope()).isNull();
    assertThat(sound.stages().get(1).envelope()).isEqualTo(new Envelope.Pulse(5, 0.004));
    assertThat(sound.stages().get(1).drive()).isEqualTo(new Drive(0.5, 1, 10));
  }

  @Test
  void aRecipeOfATitleMissesEverything() {
    assertMissing(join(null, null, null), "no source", "no envelope", "no gate channel");
  }

  @Test
  void eachKeyThatIsMissingIsNamed() {
    SourceEntry pair =
        new SourceEntry.FrequencyModulation(
            null, null, Source.Wave.SINE, null, Source.Phase.LOCKED, 5);
    EnvelopeEntry noDecay =
        new EnvelopeEntry.AttackHoldDecay(
            7.0, Rise.linear(0.001), 0, new EnvelopeEntry.FallEntry(null, Curve.EXPONENTIAL, 0.01));
    assertMissing(
        join(pair, noDecay, null, stage("keeper-twin", "quick")),
        "source: carrier",
        "source: modulator",
        "source: index",
        "envelope: decay");
  }

  @Test
  void aStageSaysWhatTheStudioLacks() {
    assertMissing(join(SINE, PULSE, null, stage(null, null)), "no gate channel");
    assertMissing(
        join(SINE, PULSE, null, stage("keeper-twin", null)), "no channel of the gate keeper-twin");
    assertMissing(
        join(SINE, PULSE, null, stage("keeper-twin", "tiny")),
        "gate keeper-twin has no channel tiny");
    assertMissing(join(SINE, PULSE, null, stage("lost", "quick")), "no gate lost in the studio");
  }

  @Test
  void ofSeveralStagesEachIsNamed() {
    StageEntry own =
        new StageEntry("keeper-twin", "slow", Drive.UNITY, new EnvelopeEntry.Pulse(5.0, null));
    Resolution resolution =
        join(SINE, PULSE, null, stage("keeper-twin", "quick"), own, stage(null, null));
    assertMissing(resolution, "stage 2: envelope: length", "stage 3: no gate channel");
    assertThat(resolution.gates()).containsExactly(TWIN);
  }

  @Test
  void aRecordedVoltageCannotBeStruckAgain() {
    Strikes strikes = new Strikes.Every(0.5, 4, Strikes.Restart.LEVEL);
    String told = "strikes: a recorded control voltage can't be struck again";
    StageEntry plain = stage("keeper-twin", "quick");
    StageEntry recorded = new StageEntry("keeper-twin", "slow", Drive.UNITY, RECORDED);
    StageEntry pulsed = new StageEntry("keeper-twin", "slow", Drive.UNITY, PULSE);
    assertMissing(join(SINE, RECORDED, strikes, plain), told);
    assertMissing(join(SINE, PULSE, strikes, plain, recorded), told);
    assertThat(join(SINE, RECORDED, null, plain).complete()).isPresent();
    assertThat(join(SINE, RECORDED, strikes, pulsed).complete()).isPresent();
  }

  private static void assertMissing(Resolution resolution, String... words) {
    assertThat(resolution.missing()).containsExactly(words);
    assertThat(resolution.complete()).isEmpty();
  }

  private static StageEntry stage(@Nullable String gate, @Nullable String channel) {
    return new StageEntry(gate, channel, Drive.UNITY, null);
  }

  private static Resolution join(
      @Nullable SourceEntry source,
      @Nullable EnvelopeEntry envelope,
      @Nullable Strikes strikes,
      StageEntry... stages) {
    Recipe recipe =
        Written.recipe("any", "Any", List.of(), source, envelope, Arrays.asList(stages));
    return Resolution.of(strikes == null ? recipe : struck(recipe, strikes), studio.gates());
  }

  private static Recipe struck(Recipe recipe, Strikes strikes) {
    return new Recipe(
        recipe.id(),
        recipe.slug(),
        recipe.title(),
        recipe.tags(),
        recipe.by(),
        recipe.made(),
        recipe.derivedFrom(),
        recipe.heard(),
        recipe.rating(),
        recipe.source(),
        recipe.envelope(),
        strikes,
        recipe.stages(),
        recipe.couplingHertz(),
        recipe.connections(),
        recipe.settings(),
        recipe.mix(),
        recipe.after(),
        recipe.photos(),
        recipe.room(),
        recipe.with(),
        recipe.notes());
  }
}
