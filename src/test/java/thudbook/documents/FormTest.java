package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.recipes.SourceEntry;

/** Property: form → recipe → form is stable; and what a form is refused for leads to its fields. */
class FormTest {
  private static final int RECIPES = 1000;

  private static final String CHANNEL =
      """
      name: steep
      transfer: [[1 V, 0], [4 V, 1]]
      opening: 2 ms
      release: [{share: 1, time: 30 ms}]
      cutoff: {closed: 40 Hz, open: 9 kHz}
      leak: -60 dB
      """;

  @Test
  void randomRecipesComeBack() {
    for (long seed = 0; seed < RECIPES; seed++) {
      Recipe recipe = new RandomDocuments(seed).recipe();
      Map<String, List<String>> form = Documents.form(recipe);
      Recipe read = Documents.RECIPE.fromForm(form, new KnownIdentity());
      assertThat(read).as("seed %d", seed).isEqualTo(recipe);
      assertThat(Documents.form(read)).as("seed %d", seed).isEqualTo(form);
    }
  }

  @Test
  void linesOfTextareasMayEndAsBrowsersEndThem() {
    for (long seed = 0; seed < 200; seed++) {
      Recipe recipe = new RandomDocuments(seed).recipe();
      Map<String, List<String>> sent =
          changed(Documents.form(recipe), text -> text.replace("\n", "\r\n"));
      assertThat(Documents.RECIPE.fromForm(sent, new KnownIdentity()))
          .as("seed %d", seed)
          .isEqualTo(recipe);
    }
  }

  static Stream<Path> samples() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("sample-library/recipes"))) {
      return files.filter(f -> f.toString().endsWith(".md")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void samplesComeBackByteForByte(Path file) throws IOException {
    byte[] text = Files.readAllBytes(file);
    Recipe recipe = ((Recipe) Documents.read(text, new KnownIdentity()).thing());
    Recipe read = Documents.RECIPE.fromForm(Documents.form(recipe), new KnownIdentity());
    assertThat(Documents.write(read)).isEqualTo(Files.readString(file));
  }

  @Test
  void textsAreThoseOfTheDocument() throws IOException {
    Map<String, List<String>> form = Documents.form(sample("slack-tide-kick"));
    assertThat(form)
        .containsEntry("source.kind", List.of("fm"))
        .containsEntry("source.fm.modulator", List.of("1.5 x"))
        .containsEntry("envelope.attack-hold-decay.decay", List.of("180 ms"))
        .containsEntry("strikes.kind", List.of("every"))
        .containsEntry("strikes.every.count", List.of("8"))
        .containsEntry("stages.0.gain", List.of("0.8"))
        .containsEntry("tags", List.of("dry, kick, low"))
        .containsEntry("settings.1.at", List.of("12:40"))
        .containsEntry("mix.0.level", List.of("-6 dB"))
        .doesNotContainKey("thudbook");
  }

  @Test
  void aTitleAloneIsARecipe() {
    Recipe recipe = read(Map.of("title", "Thud", "notes", "Set now, numbers later.", "by", " "));
    assertThat(recipe.title()).isEqualTo("Thud");
    assertThat(recipe.slug()).isEqualTo("thud");
    assertThat(recipe.source()).isNull();
    assertThat(recipe.stages()).isEmpty();
    assertThat(recipe.by()).isNull();
  }

  @Test
  void onlyTheChosenKindIsRead() {
    Map<String, String> fields =
        Map.of(
            "title", "Thud",
            "source.kind", "noise",
            "source.noise.from", "1 kHz",
            "source.fm.carrier", "what a carrier?",
            "envelope.kind", "pulse",
            "envelope.pulse.length", "4 ms",
            "envelope.attack-hold-decay.decay", "long",
            "strikes.kind", "",
            "strikes.every.every", "often");
    Recipe recipe = read(fields);
    assertThat(recipe.source()).isInstanceOf(SourceEntry.Noise.class);
    assertThat(recipe.envelope()).isEqualTo(new EnvelopeEntry.Pulse(null, 0.004));
    assertThat(recipe.strikes()).isNull();
  }

  @Test
  void blankRowsAndStagesAreSkipped() {
    Recipe recipe =
        read(
            Map.of(
                "title", "Thud",
                "stages.0.gate", "",
                "stages.0.envelope.kind", "",
                "stages.1.gate", "keeper-twin",
                "stages.1.channel", "quick",
                "connections.0.out", "",
                "connections.0.in", " ",
                "connections.3.out", "N1 noise",
                "connections.3.in", "G1 in 1"));
    assertThat(recipe.stages()).hasSize(1);
    assertThat(recipe.connections()).containsExactly(new Recipe.Connection("N1 noise", "G1 in 1"));
  }

  @Test
  void wordsWithCommasStandInQuotes() {
    Recipe recipe =
        read(Map.of("title", "Thud", "tags", " dry , \"low, slow\",\"a \"\"b\"\"\", 5\""));
    assertThat(recipe.tags()).containsExactly("dry", "low, slow", "a \"b\"", "5\"");
    assertThat(read(Map.of("title", "T", "tags", "\"open, end")).tags())
        .containsExactly("\"open", "end");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "envelope.kind=pulse;envelope.pulse.length=4 | /envelope/pulse/length | unit-missing",
        "envelope.kind=pluck | /envelope/kind | unknown-word",
        "source.kind=fm;source.fm.carrier=55 Hz;source.fm.modulator=9000 x | /source/fm/modulator | out-of-range",
        "source.kind=noise;source.noise.from=2 kHz;source.noise.to=1 kHz | /source/noise/from | not-below",
        "strikes.kind=every;strikes.every.count=4 | /strikes/every/every | not-a-quantity",
        "strikes.kind=every;strikes.every.every=1 s | /strikes/every/count | missing",
        "strikes.kind=tempo;strikes.tempo.tempo=90 bpm;strikes.tempo.count=4 | /strikes/tempo/note | missing",
        "strikes.kind=at;strikes.at.at=0 ms, 30 ms, 20 ms | /strikes/at/at/2 | not-rising",
        "strikes.kind=at | /strikes/at/at | wrong-type",
        "connections.2.out=N1 noise | /connections/2/in | missing",
        "settings.1.module=E1;settings.1.control=decay;settings.1.at=25:00 | /settings/1/at | not-a-position",
        "stages.3.gain=9 | /stages/3/gain | out-of-range",
        "stages.1.envelope.kind=pulse;stages.1.envelope.pulse.peak=x | /stages/1/envelope/pulse/peak | not-a-quantity",
        "rating=6 | /rating | out-of-range",
        "colour=red | /colour | unknown-key",
        "slug=No Slug | /slug | not-a-slug",
        "stages.0.tried=name: x | /stages/0/tried | channel-not-kept"
      })
  void faultsLeadToFields(String fields, String place, String code) {
    List<Fault> faults = faults("title=Thud;" + fields);
    assertThat(faults).extracting(Fault::place).containsExactly(place);
    assertThat(faults).extracting(Fault::code).containsExactly(code);
  }

  @Test
  void allFaultsComeAtOnce() {
    assertThat(faults("rating=6;envelope.kind=pulse;envelope.pulse.peak=7,5 V;made=yesterday"))
        .extracting(Fault::place)
        .containsExactlyInAnyOrder("/title", "/rating", "/envelope/pulse/peak", "/made");
  }

  @Test
  void samplesStandAPairALine() {
    String samples = "0 ms, 0 V\r\n\r\n2 ms, 5 V\r\n4 ms";
    List<Fault> faults =
        faults("title=Thud;envelope.kind=recorded;envelope.recorded.samples=" + samples);
    assertThat(faults).extracting(Fault::place).containsExactly("/envelope/recorded/samples/3");
    assertThat(faults).extracting(Fault::line).containsExactly(4);
  }

  @Test
  void aChannelMayBeTriedOut() {
    Map<String, List<String>> form =
        form(
            "source.kind=noise;envelope.kind=pulse;envelope.pulse.peak=5 V;"
                + "envelope.pulse.length=4 ms;rating=often;stages.0.tried="
                + CHANNEL);
    Experiment experiment = Documents.experimentFromForm(form);
    Resolution resolution =
        Resolution.of(experiment.recipe(), experiment.in(new KeptGates(List.of())));
    assertThat(resolution.missing()).isEmpty();
    assertThat(resolution.complete().orElseThrow().stages().get(0).channel().name())
        .isEqualTo("steep");
  }

  @Test
  void faultsOfATriedChannelTellTheirLine() {
    Map<String, List<String>> form =
        form("stages.1.tried=" + CHANNEL.replace("2 ms", "2 V") + ";source.kind=hum");
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> Documents.experimentFromForm(form));
    assertThat(refusal.faults())
        .extracting(Fault::place)
        .containsExactlyInAnyOrder("/source/kind", "/stages/1/tried/opening");
    assertThat(refusal.faults()).extracting(Fault::line).contains(3);
    Map<String, List<String>> broken = form("stages.0.tried=a: b: c");
    assertThat(
            catchThrowableOfType(Refusal.class, () -> Documents.experimentFromForm(broken))
                .faults())
        .extracting(Fault::place)
        .containsExactly("/stages/0/tried");
  }

  @Test
  void hostileNamesCostNothing() {
    Map<String, List<String>> form = new LinkedHashMap<>();
    form.put("title", List.of("Thud"));
    form.put("a.".repeat(100_000) + "b", List.of("x"));
    form.put("stages.999999999.gain", List.of("1"));
    form.put("....", List.of("x"));
    form.put("", List.of("x"));
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class, () -> Documents.RECIPE.fromForm(form, new KnownIdentity()));
    assertThat(refusal.kind()).isEqualTo(Refusal.Kind.REFUSED_VALUES);
  }

  private static Recipe read(Map<String, String> fields) {
    return Documents.RECIPE.fromForm(listed(fields), new KnownIdentity());
  }

  private static List<Fault> faults(String fields) {
    return catchThrowableOfType(
            Refusal.class, () -> Documents.RECIPE.fromForm(form(fields), new KnownIdentity()))
        .faults();
  }

  private static Map<String, List<String>> form(String fields) {
    Map<String, String> form = new LinkedHashMap<>();
    for (String field : fields.split(";", -1)) {
      int equals = field.indexOf('=');
      form.put(field.substring(0, equals), field.substring(equals + 1));
    }
    return listed(form);
  }

  private static Map<String, List<String>> listed(Map<String, String> fields) {
    Map<String, List<String>> form = new LinkedHashMap<>();
    fields.forEach((name, value) -> form.put(name, List.of(value)));
    return form;
  }

  private static Map<String, List<String>> changed(
      Map<String, List<String>> form, UnaryOperator<String> change) {
    Map<String, List<String>> changed = new LinkedHashMap<>();
    form.forEach((name, values) -> changed.put(name, values.stream().map(change).toList()));
    return changed;
  }

  private static Recipe sample(String slug) throws IOException {
    Path file = Path.of("sample-library/recipes", slug + ".md");
    return ((Recipe) Documents.read(Files.readAllBytes(file), new KnownIdentity()).thing());
  }
}
