package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import thudbook.equipment.Gate;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * Property: gate → form → gate is the same gate; what a form is refused for leads to its fields.
 */
class GateFormTest {
  private static final int GATES = 1000;

  @Test
  void randomGatesComeBack() {
    for (long seed = 0; seed < GATES; seed++) {
      Gate gate = new RandomDocuments(seed).gate();
      Map<String, List<String>> form = Documents.form(gate);
      Gate read = Documents.GATE.fromForm(form, new KnownIdentity());
      assertThat(read).as("seed %d", seed).isEqualTo(gate);
      assertThat(Documents.form(read)).as("seed %d", seed).isEqualTo(form);
    }
  }

  static Stream<Path> samples() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("sample-library/gates"))) {
      return files.filter(f -> f.toString().endsWith(".md")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void samplesComeBackByteForByte(Path file) throws IOException {
    Gate read = Documents.GATE.fromForm(Documents.form(sample(file)), new KnownIdentity());
    assertThat(Documents.write(read)).isEqualTo(Files.readString(file));
  }

  @Test
  void knotsStandAPairALine() throws IOException {
    assertThat(twin())
        .containsEntry("channels.0.transfer", List.of("2.4 V, 0\n5 V, 1"))
        .containsEntry("channels.0.release.0.share", List.of("0.88"));
  }

  @ParameterizedTest
  @CsvSource({
    "title, '', /title, missing",
    "channels.0.opening, fast, /channels/0/opening, not-a-quantity",
    "channels.1.leak, '', /channels/1/leak, missing",
    "channels.0.release.0.share, 0.5, /channels/0/release, shares",
    "channels.0.release.3.share, 0.1, /channels/0/release/3/time, missing",
    "channels.1.name, quick, /channels/1/name, name-taken",
    "channels.0.measured.date, soon, /channels/0/measured/date, ''",
    "channels.0.cutoff.closed, 20 kHz, /channels/0/cutoff/closed, not-below"
  })
  void aFaultLeadsToItsField(String field, String value, String place, String code)
      throws IOException {
    Map<String, List<String>> form = twin();
    form.put(field, List.of(value));
    assertThat(faults(form))
        .anySatisfy(
            fault -> {
              assertThat(fault.place()).isEqualTo(place);
              assertThat(fault.code()).contains(code);
            });
  }

  @Test
  void aFaultInAKnotTellsItsLine() throws IOException {
    Map<String, List<String>> form = twin();
    form.put("channels.0.transfer", List.of("2.4 V, 0\r\n\r\n2 V, 0.5\r\n5 V, 1"));
    assertThat(faults(form))
        .anySatisfy(
            fault -> {
              assertThat(fault.place()).startsWith("/channels/0/transfer");
              assertThat(fault.line()).isEqualTo(3);
            });
  }

  @Test
  void anEmptyFormMissesTitleAndChannels() {
    assertThat(faults(Map.of())).extracting(Fault::place).containsExactly("/title", "/channels");
  }

  private static List<Fault> faults(Map<String, List<String>> form) {
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class, () -> Documents.GATE.fromForm(form, new KnownIdentity()));
    assertThat(refusal).isNotNull();
    return refusal.faults();
  }

  private static Map<String, List<String>> twin() throws IOException {
    return new LinkedHashMap<>(
        Documents.form(sample(Path.of("sample-library/gates/keeper-twin.md"))));
  }

  private static Gate sample(Path file) throws IOException {
    return ((Gate) Documents.read(Files.readAllBytes(file), new KnownIdentity()).thing());
  }
}
