package thudbook.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import thudbook.equipment.Port.Carries;
import thudbook.equipment.Port.Direction;
import thudbook.equipment.Rack.Socket;

/** Property: labels and ports are found as recipes write them. */
class RackTest {
  private static final Module G1 = module("G1", "control 1", "quick");
  private static final Module G1_B = module("G1 B", "control 1", null);
  private static final Rack RACK = new Rack(List.of(G1, G1_B));

  @Test
  void findsPortsBehindLabels() {
    assertThat(RACK.socket(Direction.IN, "G1 control 1").map(Socket::module)).contains(G1);
    assertThat(RACK.socket(Direction.IN, "g1 control 1").map(Socket::text))
        .contains("G1 control 1");
    assertThat(RACK.socket(Direction.IN, "G1 B control 1").map(Socket::module)).contains(G1_B);
    assertThat(RACK.socket(Direction.OUT, "G1 control 1")).isEmpty();
    assertThat(RACK.moduleOf("G12 out")).isEmpty();
    assertThat(RACK.moduleOf("G1")).contains(G1);
    assertThat(Rack.portName(G1, "G1")).isEmpty();
    assertThat(Rack.portName(G1, "G1 nowhere")).isEqualTo("nowhere");
  }

  @Test
  void signalsStayInTheirChannel() {
    Port in = new Port("in 1", Direction.IN, Carries.AUDIO, "quick");
    Port same = new Port("out 1", Direction.OUT, Carries.AUDIO, "quick");
    Port other = new Port("out 2", Direction.OUT, Carries.AUDIO, "long");
    Port whole = new Port("mix", Direction.OUT, Carries.AUDIO, null);
    assertThat(in.leadsTo(same)).isTrue();
    assertThat(in.leadsTo(other)).isFalse();
    assertThat(in.leadsTo(whole)).isTrue();
    assertThat(same.leadsTo(other)).isFalse();
  }

  @Test
  void namesAreTakenOnce() {
    Port port = new Port("in", Direction.IN, Carries.AUDIO, null);
    assertThatIllegalArgumentException().isThrownBy(() -> withPorts("X1", List.of(port, port)));
    Port out = new Port("in", Direction.OUT, Carries.AUDIO, null);
    assertThat(withPorts("X1", List.of(port, out)).ports(Direction.OUT)).containsExactly(out);
  }

  private static Module module(String label, String input, String channel) {
    return withPorts(
        label, List.of(new Port(input, Direction.IN, Carries.CONTROL_VOLTAGE, channel)));
  }

  private static Module withPorts(String label, List<Port> ports) {
    return module(label, List.of(), ports, null, null);
  }

  /** A module without ports. */
  static Module module(String label, List<Control> controls, Double warmUp, String gate) {
    return module(label, controls, List.of(), warmUp, gate);
  }

  private static Module module(
      String label, List<Control> controls, List<Port> ports, Double warmUp, String gate) {
    return new Module(
        new UUID(0, label.hashCode()),
        "x",
        label,
        "Invented",
        Module.Kind.LOW_PASS_GATE,
        null,
        gate,
        warmUp,
        Gate.Caution.NONE,
        controls,
        ports,
        "");
  }
}
