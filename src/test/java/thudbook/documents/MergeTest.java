package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import thudbook.documents.Merge.Side;
import thudbook.equipment.Gate;
import thudbook.recipes.Recipe;

/** Property: two changes of one recipe, put together in every way that can be chosen. */
class MergeTest {
  private static final int RECIPES = 300;

  private static final Map<String, List<String>> GATE = Documents.form(RandomDocuments.KEEPER_TWIN);

  private static final Map<String, String> BASE =
      Map.of(
          "title", "Thud",
          "source.kind", "noise",
          "source.noise.from", "100 Hz",
          "envelope.kind", "pulse",
          "envelope.pulse.peak", "5 V",
          "envelope.pulse.length", "4 ms",
          "stages.0.gate", "keeper-twin",
          "stages.0.gain", "1",
          "connections.0.out", "E1 out",
          "connections.0.in", "G1 control 1");

  @Test
  void whoChangedNothingTakesTheOther() {
    for (long seed = 0; seed < RECIPES; seed++) {
      Recipe base = named(new RandomDocuments(seed).recipe());
      Recipe other = named(new RandomDocuments(seed + RECIPES).recipe());
      assertThat(combined(Merge.of(base, base, other), Map.of())).isEqualTo(other);
      assertThat(combined(Merge.of(base, other, base), Map.of())).isEqualTo(other);
      assertThat(Merge.of(base, other, other).units()).noneMatch(Merge.Unit::contested);
      assertThat(Merge.of(base, base, base).units()).isEmpty();
    }
  }

  @Test
  void everySideCanBeHadWhole() {
    for (long seed = 0; seed < RECIPES; seed++) {
      Map<Side, Recipe> sides =
          Map.of(
              Side.BASE, named(new RandomDocuments(seed).recipe()),
              Side.THEIRS, named(new RandomDocuments(seed + RECIPES).recipe()),
              Side.YOURS, named(new RandomDocuments(seed + 2 * RECIPES).recipe()));
      Merge merge = Merge.of(sides.get(Side.BASE), sides.get(Side.THEIRS), sides.get(Side.YOURS));
      for (Side side : Side.values()) {
        Map<String, Side> all = new LinkedHashMap<>();
        merge.units().forEach(unit -> all.put(unit.name(), side));
        assertThat(combined(merge, all)).as("seed %d, %s", seed, side).isEqualTo(sides.get(side));
      }
    }
  }

  @Test
  void everySideOfAGateCanBeHadWhole() {
    for (long seed = 0; seed < RECIPES; seed++) {
      Map<Side, Gate> sides =
          Map.of(
              Side.BASE, named(new RandomDocuments(seed).gate()),
              Side.THEIRS, named(new RandomDocuments(seed + RECIPES).gate()),
              Side.YOURS, named(new RandomDocuments(seed + 2 * RECIPES).gate()));
      Merge merge = Merge.of(sides.get(Side.BASE), sides.get(Side.THEIRS), sides.get(Side.YOURS));
      for (Side side : Side.values()) {
        Map<String, Side> all = new LinkedHashMap<>();
        merge.units().forEach(unit -> all.put(unit.name(), side));
        assertThat(Documents.write(gate(merge.combined(all))))
            .as("seed %d, %s", seed, side)
            .isEqualTo(Documents.write(sides.get(side)));
      }
    }
  }

  @Test
  void channelsAreChosenFieldByFieldWhileTheirNamesAreTheSame() {
    Gate base = gate(GATE);
    Gate theirs = gate(with("channels.0.opening", "2 ms"));
    Gate yours = gate(with("channels.0.leak", "-70 dB"));
    assertThat(names(Merge.of(base, theirs, yours)))
        .containsExactlyInAnyOrder("channels.0.opening", "channels.0.leak");
    assertThat(names(Merge.of(base, theirs, gate(with("channels.0.name", "hasty")))))
        .containsExactly("channels");
    Map<String, List<String>> threeCells = with("channels.0.release.0.share", "0.5");
    threeCells.put("channels.0.release.2.share", List.of("0.38"));
    threeCells.put("channels.0.release.2.time", List.of("90 ms"));
    assertThat(names(Merge.of(base, theirs, gate(threeCells))))
        .containsExactlyInAnyOrder("channels.0.opening", "channels.0.release");
  }

  @Test
  void changesOfDifferentFieldsAreBothKept() {
    Merge merge =
        merge(Map.of("envelope.pulse.peak", "7 V"), Map.of("envelope.pulse.length", "9 ms"));
    assertThat(names(merge)).containsExactly("envelope.pulse.peak", "envelope.pulse.length");
    assertThat(merge.units()).noneMatch(Merge.Unit::contested);
    assertThat(Documents.write(combined(merge, Map.of())))
        .contains("peak: 7 V")
        .contains("length: 9 ms");
  }

  @Test
  void whatBothChangedIsContestedAndYoursAtFirst() {
    Merge merge = merge(Map.of("envelope.pulse.peak", "7 V"), Map.of("envelope.pulse.peak", "6 V"));
    Merge.Unit unit = merge.units().get(0);
    assertThat(unit.contested()).isTrue();
    assertThat(List.of(unit.text(Side.BASE), unit.text(Side.THEIRS), unit.text(Side.YOURS)))
        .containsExactly("5 V", "7 V", "6 V");
    assertThat(Documents.write(combined(merge, Map.of()))).contains("peak: 6 V");
    assertThat(Documents.write(combined(merge, Map.of(unit.name(), Side.THEIRS))))
        .contains("peak: 7 V");
  }

  @Test
  void blocksOfDifferentKindsAreChosenWhole() {
    Merge merge =
        merge(
            Map.of("source.kind", "oscillator", "source.oscillator.frequency", "A1"),
            Map.of("source.noise.from", "200 Hz"));
    assertThat(names(merge)).containsExactly("source");
    assertThat(merge.units().get(0).contested()).isTrue();
    assertThat(merge.units().get(0).text(Side.THEIRS))
        .contains("kind: oscillator", "frequency: A1");
    assertThat(Documents.write(combined(merge, Map.of("source", Side.THEIRS))))
        .contains("kind: oscillator")
        .doesNotContain("from:");
  }

  @Test
  void listsAreChosenWhole() {
    Merge merge =
        merge(
            Map.of("connections.1.out", "N1 noise", "connections.1.in", "G1 in 1"),
            Map.of("connections.0.out", "E2 out"));
    assertThat(names(merge)).containsExactly("connections");
    assertThat(merge.units().get(0).text(Side.THEIRS))
        .isEqualTo("E1 out, G1 control 1\nN1 noise, G1 in 1");
  }

  @Test
  void stagesAreChosenWholeWhereTheirNumberDiffers() {
    assertThat(names(merge(Map.of("stages.1.gate", "slow-tide"), Map.of("stages.0.gain", "0.5"))))
        .containsExactly("stages");
    assertThat(names(merge(Map.of("stages.0.gain", "0.8"), Map.of("stages.0.gate", "slow-tide"))))
        .containsExactly("stages.0.gate", "stages.0.gain");
  }

  private static List<String> names(Merge merge) {
    return merge.units().stream().map(Merge.Unit::name).toList();
  }

  private static Merge merge(Map<String, String> theirs, Map<String, String> yours) {
    return Merge.of(recipe(Map.of()), recipe(theirs), recipe(yours));
  }

  private static Recipe recipe(Map<String, String> changes) {
    Map<String, List<String>> form = new LinkedHashMap<>();
    BASE.forEach((name, value) -> form.put(name, List.of(value)));
    changes.forEach((name, value) -> form.put(name, List.of(value)));
    return Documents.RECIPE.fromForm(form, new KnownIdentity());
  }

  private static Map<String, List<String>> with(String field, String value) {
    Map<String, List<String>> form = new LinkedHashMap<>(GATE);
    form.put(field, List.of(value));
    return form;
  }

  private static Gate gate(Map<String, List<String>> form) {
    return Documents.GATE.fromForm(form, new KnownIdentity());
  }

  /** Versions of one recipe have one id. */
  private static Recipe named(Recipe recipe) {
    Map<String, List<String>> form = new LinkedHashMap<>(Documents.form(recipe));
    form.put("id", List.of(KnownIdentity.ID.toString()));
    return Documents.RECIPE.fromForm(form, new KnownIdentity());
  }

  private static Gate named(Gate gate) {
    Map<String, List<String>> form = new LinkedHashMap<>(Documents.form(gate));
    form.put("id", List.of(KnownIdentity.ID.toString()));
    return gate(form);
  }

  private static Recipe combined(Merge merge, Map<String, Side> chosen) {
    return Documents.RECIPE.fromForm(merge.combined(chosen), new KnownIdentity());
  }
}
