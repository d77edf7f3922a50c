package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import thudbook.envelopes.Curve;
import thudbook.equipment.Gate;
import thudbook.predictions.Sound;
import thudbook.quantities.Frequency;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.sources.Source;

/** Scenario: documents as people write them, and bodies of predictions. */
class ReadingTest {
  /** The recipe of the design, with a whole photo name and without its remarks. */
  private static final String SLACK_TIDE =
      """
      ---
      thudbook: recipe/1
      id: 5f0c1d1e-8f0a-4b39-9a55-1f6f6a1c7d02
      slug: slack-tide-kick
      title: Slack-tide kick
      tags: [dry, kick, low]
      by: Oona
      made: "2026-10-02"
      derivedFrom: spring-tide-kick
      heard: "short, woody, a click in front"
      rating: 4
      source:
        kind: fm
        carrier: 55 Hz
        modulator: 1.5 x
        wave: square
        index: 0.8
        phase: locked
        level: 5 V
      envelope:
        kind: attack-hold-decay
        peak: 7 V
        attack: 1 ms
        attackCurve: linear
        hold: 0 ms
        decay: 180 ms
        decayCurve: exponential
        decaysTo: 1 %
      strikes: {every: 375 ms, count: 8, restart: level}
      stages:
        - gate: keeper-twin
          channel: quick
          gain: 0.8
          offset: 0 V
          controlRail: 12 V
      output: {coupling: 0 Hz}
      connections:
        - {out: N1 noise, in: G1 in 2}
      settings:
        - {module: E1, control: decay, at: "10:30", for: envelope.decay}
        - {module: O1, control: range, at: low}
      mix: [{into: desk 3, level: -6 dB}]
      after: [{what: spring reverb, how: a third wet}]
      photos: [{file: 3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a3f9a.jpg, shows: the whole patch}]
      room: "close, monitors at 70 dB(A)"
      with: [Pia]
      ---
      Tighten the decay if the room rings. **Monitors down** before connecting.
      """;

  @Test
  void theRecipeOfTheDesignIsCanonical() {
    Recipe recipe = recipe(SLACK_TIDE);
    assertThat(Documents.write(recipe)).isEqualTo(SLACK_TIDE);
    assertThat(Documents.json(recipe))
        .contains("\"carrier\":55,\"modulator\":{\"ratio\":1.5}")
        .contains("\"decay\":0.18,\"decayCurve\":\"exponential\",\"decaysTo\":0.01")
        .contains("\"strikes\":{\"every\":0.375,\"count\":8,\"restart\":\"level\"}")
        .contains("\"at\":{\"clock\":\"10:30\"},\"for\":\"envelope.decay\"")
        .contains("\"at\":\"low\"")
        .endsWith(
            "\"notes\":\"Tighten the decay if the room rings. **Monitors down** before connecting.\"}");
  }

  @Test
  void onlyATitleIsNeeded() {
    Documents.Read<?> read = read("---\nthudbook: recipe/1\ntitle: Größe & Kick!\n---\n");
    Recipe recipe = ((Recipe) read.thing());
    assertThat(recipe.id()).isEqualTo(KnownIdentity.ID);
    assertThat(recipe.slug()).isEqualTo("grosse-kick");
    assertThat(recipe.source()).isNull();
    assertThat(recipe.stages()).isEmpty();
    assertThat(recipe.notes()).isEmpty();
    assertThat(Documents.write(recipe))
        .isEqualTo(
            "---\nthudbook: recipe/1\nid: "
                + KnownIdentity.ID
                + "\nslug: grosse-kick\ntitle: \"Größe & Kick!\"\n---\n");
  }

  @Test
  void leavesOutWhatIsNotThereAndWritesDefaults() {
    Recipe recipe =
        recipe(
            """
            ---
            thudbook: recipe/1
            title: Half
            by:
            source: {kind: fm, carrier: a1}
            envelope: {kind: attack-hold-decay, decay: 0.18 s}
            stages: [{gate: keeper-twin}]
            ---
            """);
    assertThat(Documents.write(recipe))
        .contains(
            """
            title: Half
            source:
              kind: fm
              carrier: A1
              wave: sine
              phase: locked
              level: 5 V
            envelope:
              kind: attack-hold-decay
              attack: 0 ms
              attackCurve: linear
              hold: 0 ms
              decay: 180 ms
              decayCurve: exponential
              decaysTo: 1 %
            stages:
              - gate: keeper-twin
                gain: 1
                offset: 0 V
                controlRail: 12 V
            ---
            """);
  }

  @Test
  void commentsAndWhatHasNoEffectAreCounted() {
    Documents.Read<?> read =
        read(
            """
            ---
            # a kick
            thudbook: recipe/1   # the format

            title: "Kick # 2" # not a comment: # 2
            tags: [dry, # very
              low]
            envelope:
              # by ear
              kind: attack-hold-decay
              attackCurve: linear
              overshoot: 2
            source: {kind: oscillator, duty: 20 %}
            # the end
            ---
            # a heading
            """);
    Recipe recipe = ((Recipe) read.thing());
    assertThat(recipe.title()).isEqualTo("Kick # 2");
    assertThat(recipe.tags()).containsExactly("dry", "low");
    assertThat(recipe.notes()).isEqualTo("# a heading");
    assertThat(read.notes())
        .containsExactly(
            "line 13: source.duty was dropped, only a pulse has a duty",
            "line 12: envelope.overshoot was dropped, only an exponential attack has an overshoot",
            "6 comments were dropped");
  }

  @Test
  void scalarsAreTextWhateverTheyLookLike() {
    Recipe recipe =
        recipe(
            """
            ---
            thudbook: recipe/1
            title: no
            tags: [012, yes, 1e3, ~, 2026-10-02, 0x1F, 10:30]
            by: null
            made: 2026-10-02
            ---
            """);
    assertThat(recipe.title()).isEqualTo("no");
    assertThat(recipe.tags())
        .containsExactly("012", "yes", "1e3", "~", "2026-10-02", "0x1F", "10:30");
    assertThat(recipe.by()).isEqualTo("null");
    assertThat(recipe.made()).hasToString("2026-10-02");
    assertThat(Documents.write(recipe))
        .contains("title: \"no\"\ntags: [\"012\", \"yes\", \"1e3\", \"~\", \"2026-10-02\",");
  }

  @Test
  void lineEndsAndByteOrderMarksOfOtherSystemsAreTaken() {
    String text = SLACK_TIDE.replace("\n", "\r\n");
    assertThat(Documents.write(recipe("\ufeff" + text))).isEqualTo(SLACK_TIDE);
  }

  @Test
  void notesKeepTheirLines() {
    String notes = "  indented\n\n---\n\nbelow a rule\t|\n";
    Recipe recipe = recipe("---\nthudbook: recipe/1\ntitle: Kick\n---\n\n \n" + notes + "\n\n");
    assertThat(recipe.notes()).isEqualTo(notes.stripTrailing());
    assertThat(Documents.write(recipe)).endsWith("---\n" + notes.stripTrailing() + "\n");
  }

  @Test
  void releaseIsAsDecayUnlessItIsSaid() {
    Recipe recipe =
        recipe(
            """
            ---
            thudbook: recipe/1
            title: Bell
            envelope: {kind: attack-decay-sustain-release, decayCurve: linear, decaysTo: 5 %, releasesTo: 0.1 %}
            ---
            """);
    EnvelopeEntry.AttackDecaySustainRelease envelope =
        (EnvelopeEntry.AttackDecaySustainRelease) recipe.envelope();
    assertThat(envelope.release())
        .isEqualTo(new EnvelopeEntry.FallEntry(null, Curve.LINEAR, 0.001));
  }

  @Test
  void gatesMayLeaveOutWhatIsUsual() {
    Documents.Read<?> read =
        read(
            """
            ---
            thudbook: gate/1
            title: Keeper twin
            channels:
              - name: quick
                transfer: [[2.4 V, 0], [5 V, 100 %]]
                opening: 1200 us
                release: [{share: 88 %, time: 18 ms}, {share: 0.12, time: 0.12 s}]
                cutoff: {closed: 40 Hz, open: 9 kHz}
                leak: −66 dB
                bleed: 1.1 V
            ---
            """);
    assertThat(((Gate) read.thing())).isEqualTo(RandomDocuments.KEEPER_TWIN);
  }

  @Test
  void aSoundIsReadFromJson() {
    Gate gate = RandomDocuments.KEEPER_TWIN;
    String channel =
        Documents.json(gate).replaceAll(".*\"channels\":\\[", "").replaceAll("],\"notes.*", "");
    Sound sound =
        sound(
            """
            {"source": {"kind": "oscillator", "frequency": {"note": "A1"}},
             "envelope": {"kind": "attack-hold-decay", "peak": 7, "attack": 0.001, "decay": "180 ms"},
             "strikes": {"tempo": 80, "note": "1/8", "count": 4},
             "stages": [{"gate": "keeper-twin", "channel": "quick", "gain": 0.8}, {"channel": %s}],
             "output": {"coupling": 5}}
            """
                .formatted(channel));
    assertThat(sound.source())
        .isEqualTo(new Source.Oscillator(Source.Wave.SINE, new Frequency.Note("A1"), 0.5, 5));
    assertThat(sound.stages())
        .extracting(s -> s.channel())
        .containsOnly(gate.channels().get(0).channel());
    assertThat(sound.stages().get(0).drive().gain()).isEqualTo(0.8);
    assertThat(sound.strikes().seconds()).containsExactly(0.0, 0.375, 0.75, 1.125);
    assertThat(sound.couplingHertz()).isEqualTo(5);
  }

  private static Sound sound(String json) {
    return Documents.soundFromJson(
        json.getBytes(StandardCharsets.UTF_8), new KeptGates(List.of(RandomDocuments.KEEPER_TWIN)));
  }

  private static Documents.Read<?> read(String text) {
    return Documents.read(text.getBytes(StandardCharsets.UTF_8), new KnownIdentity());
  }

  private static Recipe recipe(String text) {
    return ((Recipe) read(text).thing());
  }
}
