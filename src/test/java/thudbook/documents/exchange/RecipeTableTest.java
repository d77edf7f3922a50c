package thudbook.documents.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.junit.jupiter.api.Test;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.KnownIdentity;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;

/**
 * Tables of recipes: what is read of them, their faults, and their way out and back. Properties.
 */
class RecipeTableTest {
  private final List<String> columns = new ArrayList<>();

  private List<Recipe> read(String table) {
    Parcel parcel = new Parcel();
    parcel.add("table.csv", new ByteArrayInputStream(table.getBytes(StandardCharsets.UTF_8)));
    return Incoming.read(Documents.NOUNS, parcel, new KnownIdentity(), columns).stream()
        .map(incoming -> ((Recipe) incoming.read().thing()))
        .toList();
  }

  @Test
  void columnsAreKnownByNameSynonymAndUnit() {
    Recipe recipe =
        read("""
        Name;Peak voltage (V);Decay (s);fm index;Carrier frequency;Tags;Mood
        Tide kick;7;0.18;0.8;A1;dry, kick;calm
        """)
            .get(0);
    assertThat(recipe.title()).isEqualTo("Tide kick");
    assertThat(recipe.tags()).containsExactly("dry", "kick");
    assertThat(recipe.envelope())
        .isInstanceOfSatisfying(
            EnvelopeEntry.AttackHoldDecay.class,
            envelope -> {
              assertThat(envelope.peakVolts()).isEqualTo(7);
              assertThat(envelope.decay().seconds()).isEqualTo(0.18);
            });
    assertThat(recipe.source()).isInstanceOf(SourceEntry.FrequencyModulation.class);
    assertThat(columns)
        .contains("“Name” is title", "“Decay (s)” is decay (ms)", "“Mood” is not taken");
  }

  @Test
  void aCellMaySayItsOwnUnit() {
    Recipe recipe = read("title,decay (ms),peak (V)\nA,0.2 s,500 mV\n").get(0);
    assertThat(((EnvelopeEntry.AttackHoldDecay) recipe.envelope()).decay().seconds())
        .isEqualTo(0.2);
  }

  @Test
  void faultsHaveTheirRowAndColumn() {
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () -> read("title,decay (ms),rating\nA,180,4\n,20,4\nB,long,9\nC,180,3\n"));
    assertThat(refusal.faults())
        .extracting(Fault::message)
        .satisfiesExactly(
            message -> assertThat(message).startsWith("table.csv, row 3, title: "),
            message -> assertThat(message).startsWith("table.csv, row 4, rating: "),
            message -> assertThat(message).startsWith("table.csv, row 4, decay (ms): "));
  }

  @Test
  void whatIsNoTableIsRefused() {
    for (String table : List.of("", "a,b\n1,2\n", "title\n\"never closed", "title\n", "\u0000")) {
      assertThat(catchThrowableOfType(Refusal.class, () -> read(table))).as(table).isNotNull();
    }
  }

  @Test
  void theSamplesComeBackWithEverythingThatTheTableHolds() throws IOException {
    StringWriter text = new StringWriter();
    List<Recipe> samples = new ArrayList<>();
    try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180);
        Stream<Path> files = Files.list(Path.of("sample-library/recipes"))) {
      printer.printRecord(RecipeTable.header());
      for (Path file : files.sorted().toList()) {
        Thing noun = Documents.read(Files.readAllBytes(file), new KnownIdentity()).thing();
        Recipe recipe = ((Recipe) noun);
        // A recorded voltage has no cell.
        if (!(recipe.envelope() instanceof EnvelopeEntry.Recorded)) {
          samples.add(recipe);
          printer.printRecord(RecipeTable.cells(recipe));
        }
      }
    }
    List<Recipe> back = read(text.toString());
    assertThat(back).hasSameSizeAs(samples);
    for (int i = 0; i < back.size(); i++) {
      assertThat(RecipeTable.cells(back.get(i))).isEqualTo(RecipeTable.cells(samples.get(i)));
    }
  }

  @Test
  void noCellIsAFormula() {
    Recipe recipe = read("title,heard,by\n'=SUM(A1),'@x,'-cmd\n").get(0);
    assertThat(recipe.title()).isEqualTo("=SUM(A1)");
    assertThat(RecipeTable.cells(recipe)).contains("'=SUM(A1)", "'@x", "'-cmd");
  }
}
