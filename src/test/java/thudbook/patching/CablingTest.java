package thudbook.patching;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thudbook.documents.Documents;
import thudbook.documents.exchange.Incoming;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.equipment.Port.Carries;
import thudbook.equipment.Port.Direction;
import thudbook.equipment.Rack;
import thudbook.recipes.Recipe;

/** Property: each kind of bad connection is named with its place; good ones are in signal order. */
class CablingTest {
  private static final String GOOD =
      "S1 trigger>E1 trigger; E1 out>A1 in 1; A1 out 1>G1 control 1; O1 sine>G1 in 1;"
          + " G1 out 1>M1 in 1";

  private static final Rack RACK =
      new Rack(
          List.of(
              module("S1", Module.Kind.RECORDER, "out trigger T", "out gate G"),
              module("E1", Module.Kind.ENVELOPE, "in trigger T", "in gate G", "out out C"),
              module(
                  "A1",
                  Module.Kind.ATTENUVERTER,
                  "in in_1 C 1",
                  "out out_1 C 1",
                  "in in_2 C 2",
                  "out out_2 C 2"),
              module("O1", Module.Kind.OSCILLATOR, "in pitch C", "in fm A", "out sine A"),
              module(
                  "G1",
                  Module.Kind.LOW_PASS_GATE,
                  "in in_1 A quick",
                  "in control_1 C quick",
                  "out out_1 A quick",
                  "in in_2 A long",
                  "in control_2 C long",
                  "out out_2 A long"),
              module("M1", Module.Kind.MIXER, "in in_1 A", "in in_2 A", "out out A")));

  @Test
  void aGoodPatchHasNoFaults() {
    assertThat(of(GOOD, "quick").faults()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "+ O9 sine>M1 in 2 | NO_SUCH_MODULE | connections.5.out"
            + " | O9 sine: the studio has no module of that label",
        "+ O1>M1 in 2 | NO_PORT_NAMED | connections.5.out"
            + " | O1 names a module without a port, it has the outputs sine",
        "+ O1 saw>M1 in 2 | NO_SUCH_PORT | connections.5.out"
            + " | O1 has no port saw, it has the outputs sine",
        "+ O1 sine>M1 in 9 | NO_SUCH_PORT | connections.5.in"
            + " | M1 has no port in 9, it has the inputs in 1, in 2",
        "+ O1 sine>M1 out | OUTPUT_INTO_OUTPUT | connections.5.in"
            + " | M1 out is an output: O1 sine goes from an output into an output",
        "+ M1 in 2>O1 fm | INPUT_USED_AS_OUTPUT | connections.5.out"
            + " | M1 in 2 is an input, nothing comes out of it",
        "+ M1 in 2>O1 sine | REVERSED | connections.5"
            + " | M1 in 2 is an input and O1 sine an output: turn it round",
        "+ G1 out 2>M1 in 1 | INPUT_FED_TWICE | connections.5.in"
            + " | M1 in 1 is fed by G1 out 1 already, G1 out 2 needs a mixer",
        "+ G1 out 1>M1 in 1 | LISTED_TWICE | connections.5"
            + " | G1 out 1 into M1 in 1 stands there already",
        "+ M1 out>G1 in 2; G1 out 2>M1 in 2 | LOOP | connections.5"
            + " | the signal goes round: M1 out into G1 in 2, G1 out 2 into M1 in 2",
        "+ O1 sine>A1 in 2 | AUDIO_INTO_CONTROL | connections.5.in"
            + " | O1 sine gives audio, A1 in 2 expects a control voltage",
        "+ E1 out>M1 in 2 | CONTROL_INTO_AUDIO | connections.5.in"
            + " | E1 out gives a control voltage, M1 in 2 expects audio",
        "+ O1 sine>E1 gate | NO_EDGE_FOR_TRIGGER | connections.5.in"
            + " | O1 sine gives audio, E1 gate expects a gate signal",
        "+ S1 gate>A1 in 2 | TRIGGER_INTO_SIGNAL | connections.5.in"
            + " | S1 gate gives a gate signal, A1 in 2 expects a control voltage",
        "+ S1 trigger>E1 gate | TRIGGER_INTO_GATE_SIGNAL | connections.5.in"
            + " | S1 trigger gives a trigger, E1 gate expects a gate signal",
        "- O1 sine>G1 in 1 | STAGE_NOT_FED | stages.0"
            + " | stage 1: G1 quick is not fed: nothing goes into G1 in 1",
        "- A1 out 1>G1 control 1 | STAGE_NOT_CONTROLLED | stages.0"
            + " | stage 1: G1 quick is never opened: nothing goes into G1 control 1",
        "- G1 out 1>M1 in 1 | STAGE_NOT_HEARD | stages.0"
            + " | stage 1: G1 quick is not heard: nothing goes on from it",
        "- S1 trigger>E1 trigger | ENVELOPE_NOT_STRUCK | connections.0.out"
            + " | E1 is used and nothing triggers it",
      })
  void eachKindIsNamedWithItsPlace(String change, String kind, String place, String message) {
    String cable = change.substring(2);
    String patch =
        change.startsWith("+") ? GOOD + ";" + cable : GOOD.replace(cable, "").replace("; ;", ";");
    CablingFault expected = new CablingFault(CablingFault.Kind.valueOf(kind), place, message);
    assertThat(of(patch, "quick").faults()).containsExactly(expected);
  }

  @Test
  void stagesAreInSeries() {
    String both =
        GOOD.replace("G1 out 1>M1 in 1", "G1 out 1>G1 in 2; G1 out 2>M1 in 1")
            + "; A1 out 2>G1 control 2";
    assertThat(of(both, "quick", "long").faults()).isEmpty();
    String apart = GOOD + "; O1 sine>G1 in 2; G1 out 2>M1 in 2; A1 out 2>G1 control 2";
    assertThat(of(apart, "quick", "long").faults())
        .containsExactly(
            new CablingFault(
                CablingFault.Kind.STAGES_NOT_IN_SERIES,
                "stages.1",
                "stage 2: G1 long is not fed by stage 1, which the recipe puts before it"));
  }

  @Test
  void aGateWithoutAModuleIsAWarning() {
    Rack rack = new Rack(RACK.modules().stream().filter(m -> !m.label().equals("G1")).toList());
    assertThat(Cabling.of(recipe("O1 sine>M1 in 1", "quick"), rack).faults())
        .containsExactly(
            new CablingFault(
                CablingFault.Kind.STAGE_WITHOUT_MODULE,
                "stages.0",
                "stage 1: no module of the studio carries twin"));
  }

  @Test
  void withoutModulesOnlyCablesAreCompared() {
    Recipe recipe = recipe("X1 a>Y1 b; Z1 c>Y1 b; X1 a>Y1 b", "quick");
    assertThat(Cabling.of(recipe, Rack.EMPTY).faults())
        .extracting(CablingFault::kind)
        .containsExactly(CablingFault.Kind.INPUT_FED_TWICE, CablingFault.Kind.LISTED_TWICE);
  }

  @Test
  void cablesAreInSignalOrder() {
    Cabling cabling =
        of(
            "G1 out 1>M1 in 1; A1 out 1>G1 control 1; O1 sine>G1 in 1; E1 out>A1 in 1;"
                + " S1 trigger>E1 trigger",
            "quick");
    assertThat(cabling.inSignalOrder()).containsExactly(2, 4, 3, 1, 0);
    assertThat(of("M1 out>G1 in 2; G1 out 2>M1 in 2", "quick").inSignalOrder())
        .containsExactly(0, 1);
  }

  private static Cabling of(String patch, String... channels) {
    return Cabling.of(recipe(patch, channels), RACK);
  }

  private static Recipe recipe(String patch, String... channels) {
    StringBuilder text = new StringBuilder("---\nthudbook: recipe/1\ntitle: Patch\nstages:\n");
    for (String channel : channels) {
      text.append("  - {gate: twin, channel: ").append(channel).append("}\n");
    }
    text.append("connections:\n");
    for (String cable : patch.split(";", -1)) {
      String[] ends = cable.strip().split(">", -1);
      if (ends.length == 2) {
        text.append("  - {out: \"").append(ends[0]).append("\", in: \"");
        text.append(ends[1]).append("\"}\n");
      }
    }
    text.append("---\n");
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    return ((Recipe)
        Documents.read(bytes, Incoming.identity(() -> new UUID(0, 1), slug -> false)).thing());
  }

  /**
   * Ports as {@code in in_1 A quick}: direction, name, first letter of what it carries, channel.
   */
  private static Module module(String label, Module.Kind kind, String... ports) {
    List<Port> all = new ArrayList<>();
    for (String port : ports) {
      String[] words = port.split(" ", -1);
      Carries carries =
          switch (words[2]) {
            case "A" -> Carries.AUDIO;
            case "C" -> Carries.CONTROL_VOLTAGE;
            case "G" -> Carries.GATE_SIGNAL;
            default -> Carries.TRIGGER;
          };
      all.add(
          new Port(
              words[1].replace('_', ' '),
              words[0].equals("in") ? Direction.IN : Direction.OUT,
              carries,
              words.length > 3 ? words[3] : null));
    }
    return new Module(
        new UUID(0, label.hashCode()),
        label.toLowerCase(Locale.ROOT),
        label,
        "Invented",
        kind,
        null,
        label.equals("G1") ? "twin" : null,
        null,
        Gate.Caution.NONE,
        List.of(),
        all,
        "");
  }
}
