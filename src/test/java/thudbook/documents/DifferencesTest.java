package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import thudbook.documents.Differences.Difference;
import thudbook.recipes.Recipe;

/** Property: what is told to differ is what differs. The expected words are reviewed by hand. */
class DifferencesTest {
  private static final String KICK =
      """
      ---
      thudbook: recipe/1
      title: Kick
      tags: [dry, kick]
      source: {kind: oscillator, frequency: A1}
      envelope: {kind: attack-hold-decay, peak: 7 V, decay: 180 ms}
      strikes: {every: 375 ms, count: 8}
      stages:
        - {gate: keeper-twin, channel: quick}
      connections:
        - {out: N1 noise, in: G1 in 1}
        - {out: G1 out 1, in: desk 3}
      settings:
        - {module: E1, control: decay, at: "10:30", for: envelope.decay}
      ---
      Monitors down.
      """;

  @Test
  void nothingDiffersFromItself() {
    RandomDocuments documents = new RandomDocuments(11);
    for (int i = 0; i < 200; i++) {
      Recipe recipe = documents.recipe();
      assertThat(Differences.between(recipe, recipe)).isEmpty();
    }
  }

  @Test
  void twoRecipesDifferIfAndOnlyIfTheirTextsDo() {
    RandomDocuments documents = new RandomDocuments(12);
    for (int i = 0; i < 200; i++) {
      Recipe one = documents.recipe();
      Recipe other = documents.recipe();
      assertThat(Differences.between(one, other)).isNotEmpty();
    }
  }

  @Test
  void aValueIsToldAsTheDocumentWritesIt() {
    assertThat(changed("decay: 180 ms", "decay: 0.24 s"))
        .containsExactly(new Difference("/envelope/decay", "180 ms", "240 ms"));
    assertThat(changed("A1", "55.5 Hz"))
        .containsExactly(new Difference("/source/frequency", "A1", "55.5 Hz"));
    assertThat(changed("Monitors down.", "Monitors down!"))
        .containsExactly(new Difference("/notes", "Monitors down.", "Monitors down!"));
  }

  @Test
  void aRowIsGoneNewOrChangedWhereverItStands() {
    assertThat(changed("  - {out: N1 noise, in: G1 in 1}\n", ""))
        .containsExactly(new Difference("/connections", "N1 noise, G1 in 1", null));
    assertThat(changed("at: \"10:30\"", "at: \"11:00\""))
        .containsExactly(
            new Difference(
                "/settings",
                "E1, decay, 10:30, envelope.decay",
                "E1, decay, 11:00, envelope.decay"));
    assertThat(changed("[dry, kick]", "[kick, low]"))
        .containsExactly(
            new Difference("/tags", "dry", null), new Difference("/tags", null, "low"));
  }

  @Test
  void anotherKindIsToldKeyByKey() {
    List<Difference> differences =
        changed("{kind: oscillator, frequency: A1}", "{kind: noise, colour: pink}");
    assertThat(differences)
        .contains(
            new Difference("/source/kind", "oscillator", "noise"),
            new Difference("/source/frequency", "A1", null),
            new Difference("/source/colour", null, "pink"));
  }

  @Test
  void aStageThatIsNewIsToldPartByPart() {
    assertThat(
            changed(
                "channel: quick}",
                "channel: quick}\n  - {gate: storm-door, channel: only, gain: 2}"))
        .contains(
            new Difference("/stages/1/gate", null, "storm-door"),
            new Difference("/stages/1/gain", null, "2"));
  }

  @Test
  void strikesAreToldByWhatTheyAreMadeOf() {
    assertThat(changed("every: 375 ms", "every: 0.5 s"))
        .containsExactly(new Difference("/strikes/every", "375 ms", "500 ms"));
    assertThat(changed("strikes: {every: 375 ms, count: 8}\n", ""))
        .contains(new Difference("/strikes/count", "8", null));
  }

  private static List<Difference> changed(String from, String to) {
    assertThat(KICK).contains(from);
    return Differences.between(read(KICK), read(KICK.replace(from, to)));
  }

  private static Recipe read(String text) {
    return ((Recipe)
        Documents.read(text.getBytes(StandardCharsets.UTF_8), new KnownIdentity()).thing());
  }
}
