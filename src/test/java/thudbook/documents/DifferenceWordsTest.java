package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thudbook.changes.Thing;
import thudbook.equipment.Gate;
import thudbook.recipes.Recipe;

/** Property: what changed is told in words, each difference once, in the words of the pages. */
class DifferenceWordsTest {
  private static final String KICK =
      """
      ---
      thudbook: recipe/1
      title: Kick
      tags: [dry, kick]
      source: {kind: oscillator, frequency: A1}
      envelope: {kind: attack-hold-decay, peak: 7 V, attack: 1 ms, decay: 180 ms}
      stages:
        - {gate: keeper-twin, channel: quick}
      connections:
        - {out: N1 noise, in: G1 in 1}
      ---
      Monitors down.
      """;

  private static final String GATE =
      """
      ---
      thudbook: gate/1
      title: Lamp
      channels:
        - name: quick
          transfer: [[2.4 V, 0], [5 V, 1]]
          opening: 1.2 ms
          release: [{share: 1, time: 18 ms}]
          cutoff: {closed: 40 Hz, open: 9 kHz}
          leak: -66 dB
      ---
      """;

  @Test
  void aValueIsToldWithItsUnit() {
    assertThat(recipe("decay: 180 ms", "decay: 240 ms"))
        .containsExactly("decay 180\u00a0ms → 240\u00a0ms");
    assertThat(gate("-66 dB", "-60 dB")).containsExactly("quick: leak −66\u00a0dB → −60\u00a0dB");
    assertThat(gate("[2.4 V, 0]", "[2 V, 0]"))
        .containsExactly("quick: transfer 2.4\u00a0V, 0; 5\u00a0V, 1 → 2\u00a0V, 0; 5\u00a0V, 1");
  }

  @Test
  void wordsOfAPersonStandInQuotes() {
    assertThat(recipe("title: Kick", "title: Kick two")).contains("title “Kick” → “Kick two”");
    assertThat(recipe("Monitors down.", "")).containsExactly("notes removed");
    assertThat(recipe("Monitors down.", "Down.")).containsExactly("notes changed");
  }

  @Test
  void rowsAreAddedAndRemoved() {
    assertThat(recipe("[dry, kick]", "[dry, kick, low]")).containsExactly("tag low added");
    assertThat(recipe("connections:\n  - {out: N1 noise, in: G1 in 1}\n", ""))
        .containsExactly("connection N1 noise, G1 in 1 removed");
  }

  @Test
  void anotherKindIsToldOnceAndAStageAsAWhole() {
    assertThat(recipe("{kind: oscillator, frequency: A1}", "{kind: noise, colour: pink}"))
        .containsExactly("source oscillator → noise");
    assertThat(recipe("channel: quick}", "channel: quick}\n  - {gate: storm-door, channel: only}"))
        .containsExactly("stage 2 added");
    assertThat(recipe("stages:\n", "strikes: {every: 375 ms, count: 8}\nstages:\n"))
        .containsExactly("strikes added");
  }

  @Test
  void aSummaryNamesThreeThingsAndCountsTheRest() {
    assertThat(DifferenceWords.summary(List.of())).isEqualTo("changed nothing");
    assertThat(DifferenceWords.summary(differences("/envelope/decay", "/envelope/peak")))
        .isEqualTo("changed decay and peak");
    assertThat(
            DifferenceWords.summary(
                differences("/tags", "/tags", "/title", "/stages/0/gain", "/notes", "/room")))
        .isEqualTo("changed tags, title, control gain and 2 more");
  }

  @Test
  void aSaveOfAGateTellsChannelsAsAWhole() {
    String slow = GATE.substring(GATE.indexOf("  - name"), GATE.lastIndexOf("---"));
    String two =
        GATE.replace("1.2 ms", "2 ms")
            .replace("  leak: -66 dB\n", "  leak: -66 dB\n" + slow.replace("quick", "slow"));
    assertThat(DifferenceWords.summary(gateOf(GATE), gateOf(two)))
        .isEqualTo("changed opening; channel slow added");
    assertThat(DifferenceWords.summary(gateOf(two), gateOf(GATE)))
        .isEqualTo("changed opening; channel slow removed");
    assertThat(DifferenceWords.summary(gateOf(GATE), gateOf(GATE))).isEqualTo("changed nothing");
  }

  @Test
  void twoDifferentDocumentsAreNeverToldAsTheSame() {
    RandomDocuments documents = new RandomDocuments(21);
    IntStream.range(0, 100)
        .forEach(
            i -> {
              Recipe one = documents.recipe();
              assertThat(DifferenceWords.sentences(one, one)).isEmpty();
              assertThat(DifferenceWords.sentences(one, documents.recipe())).isNotEmpty();
              Gate gate = documents.gate();
              assertThat(DifferenceWords.sentences(gate, gate)).isEmpty();
              assertThat(DifferenceWords.sentences(gate, documents.gate())).isNotEmpty();
            });
  }

  private static List<Differences.Difference> differences(String... pointers) {
    return Arrays.stream(pointers)
        .map(pointer -> new Differences.Difference(pointer, "a", "b"))
        .toList();
  }

  private static List<String> recipe(String from, String to) {
    assertThat(KICK).contains(from);
    return DifferenceWords.sentences(recipeOf(KICK), recipeOf(KICK.replace(from, to)));
  }

  private static List<String> gate(String from, String to) {
    assertThat(GATE).contains(from);
    return DifferenceWords.sentences(gateOf(GATE), gateOf(GATE.replace(from, to)));
  }

  private static Recipe recipeOf(String text) {
    return ((Recipe) noun(text));
  }

  private static Gate gateOf(String text) {
    return ((Gate) noun(text));
  }

  private static Thing noun(String text) {
    return Documents.read(text.getBytes(StandardCharsets.UTF_8), new KnownIdentity()).thing();
  }
}
