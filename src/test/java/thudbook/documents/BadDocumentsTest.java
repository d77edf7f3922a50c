package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import thudbook.quantities.Refusal;

/** Golden: what a person is told about documents that are refused. */
class BadDocumentsTest {
  private static final String FILE = "bad-documents.txt";

  /** A case of the golden file. */
  record Bad(String file, String document, List<String> messages) {
    @Override
    public String toString() {
      return file;
    }
  }

  static Stream<Bad> cases() throws IOException {
    try (InputStream in = BadDocumentsTest.class.getResourceAsStream(FILE)) {
      return read(new String(in.readAllBytes(), StandardCharsets.UTF_8)).stream();
    }
  }

  private static List<Bad> read(String golden) {
    List<Bad> cases = new ArrayList<>();
    for (String part : golden.split("(?m)^=== ", -1)) {
      int head = part.indexOf('\n');
      if (!part.startsWith("#")) {
        String rest = part.substring(head + 1);
        String document =
            rest.lines()
                .filter(l -> !l.startsWith("> "))
                .map(l -> l + "\n")
                .collect(Collectors.joining());
        cases.add(
            new Bad(
                part.substring(0, head),
                document,
                rest.lines().filter(l -> l.startsWith("> ")).map(l -> l.substring(2)).toList()));
      }
    }
    return cases;
  }

  @ParameterizedTest
  @MethodSource("cases")
  void saysWhatIsWrong(Bad bad) {
    assertThat(messages(bad)).isNotEmpty().isEqualTo(bad.messages());
  }

  @Test
  void hasAtLeastSixtyDocuments() throws IOException {
    assertThat(cases()).hasSizeGreaterThanOrEqualTo(60);
  }

  private static List<String> messages(Bad bad) {
    byte[] bytes = bad.document().getBytes(StandardCharsets.UTF_8);
    try {
      if (bad.file().endsWith(".recipe.json")) {
        Documents.RECIPE.fromJson(bytes, new KnownIdentity());
      } else if (bad.file().endsWith(".sound.json")) {
        Documents.soundFromJson(bytes, new KeptGates(List.of(RandomDocuments.KEEPER_TWIN)));
      } else {
        Documents.read(bytes, new KnownIdentity());
      }
      return List.of();
    } catch (Refusal refusal) {
      return refusal.faults().stream()
          .map(
              f ->
                  bad.file().endsWith(".json")
                      ? bad.file() + ": " + f.message()
                      : bad.file() + ":" + f.line() + ": " + f.message())
          .toList();
    }
  }

  /** Writes the golden file anew; what changed is then to be reviewed by eye. */
  public static void main(String[] file) throws IOException {
    Path golden = Path.of(file[0]);
    String text = Files.readString(golden);
    StringBuilder anew = new StringBuilder(text.substring(0, text.indexOf("=== ")));
    for (Bad bad : read(text)) {
      anew.append("=== ").append(bad.file()).append('\n').append(bad.document());
      messages(bad).forEach(message -> anew.append("> ").append(message).append('\n'));
    }
    Files.writeString(golden, anew);
  }
}
