package thudbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import thudbook.web.PageTools.StyleRule;

/** How the style sheets are divided. Property tests over the files, read with a parser. */
class StylesTest {
  private static final String TOKENS = "frame/tokens.css";
  private static final Pattern COLOUR =
      Pattern.compile(
          "#[0-9a-fA-F]{3,8}\\b|\\b(rgba?|hsla?|oklch|lab|color)\\(|\\b(black|white)\\b");
  private static final Pattern LENGTH = Pattern.compile("(?<![\\w.])[0-9.]+(rem|px)\\b");
  private static final Pattern WIDTH = Pattern.compile("width: ([0-9.]+)rem");

  /** Names of tokens by the properties that use them. */
  private static final Map<String, String> TOKENS_OF =
      Map.of(
          "(margin|padding|gap|row-gap|column-gap)(-.*)?", "--space-",
          "font-size", "--text-",
          "border-radius", "--corner");

  /** By path of the sheet. */
  private static final Map<String, List<StyleRule>> RULES = new TreeMap<>();

  @BeforeAll
  static void read() throws IOException {
    for (Map.Entry<String, String> sheet : PageFiles.texts(PageFiles.ASSETS, ".css").entrySet()) {
      RULES.put(sheet.getKey(), PageTools.shared().rules(sheet.getValue()));
    }
  }

  @Test
  void aClassIsStyledInOneFile() {
    Map<String, Set<String>> sheets = new TreeMap<>();
    RULES.forEach(
        (sheet, rules) ->
            rules.stream()
                .flatMap(rule -> rule.styled().stream())
                .forEach(name -> sheets.computeIfAbsent(name, n -> new TreeSet<>()).add(sheet)));
    assertThat(sheets).hasSizeGreaterThan(200);
    sheets.values().removeIf(files -> files.size() == 1);
    assertThat(sheets).isEmpty();
  }

  @Test
  void coloursAreWrittenOutOnlyAmongTheTokens() {
    assertThat(outsideTokens(COLOUR)).isEmpty();
  }

  @Test
  void valuesThatHaveANameAreNotWrittenOut() {
    Map<String, String> tokens = tokens();
    List<String> writtenOut = new ArrayList<>();
    eachDeclaration(
        (sheet, property, value) ->
            TOKENS_OF.forEach(
                (properties, prefix) -> {
                  if (property.matches(properties)) {
                    Set<String> named =
                        tokens.entrySet().stream()
                            .filter(token -> token.getKey().startsWith(prefix))
                            .map(Map.Entry::getValue)
                            .collect(Collectors.toSet());
                    LENGTH
                        .matcher(value)
                        .results()
                        .filter(length -> named.contains(length.group()))
                        .forEach(length -> writtenOut.add(sheet + " " + property + ": " + value));
                  }
                }));
    assertThat(writtenOut).isEmpty();
  }

  @Test
  void everyTokenIsUsed() throws IOException {
    String all = String.join("\n", PageFiles.texts(PageFiles.ASSETS, ".css").values());
    assertThat(tokens().keySet())
        .filteredOn(token -> !token.startsWith("--width-"))
        .allMatch(token -> all.contains("var(" + token + ")"));
  }

  @Test
  void thereAreThreeWidthsInSheetsAndScripts() throws IOException {
    Set<Double> widths =
        tokens().entrySet().stream()
            .filter(token -> token.getKey().startsWith("--width-"))
            .map(token -> Double.parseDouble(token.getValue().replace("rem", "")))
            .collect(Collectors.toSet());
    assertThat(widths).hasSize(3);
    Map<String, String> texts = new TreeMap<>(PageFiles.texts(PageFiles.ASSETS, ".js"));
    RULES.forEach(
        (sheet, rules) ->
            texts.put(
                sheet,
                rules.stream()
                    .flatMap(rule -> rule.conditions().stream())
                    .collect(Collectors.joining("\n"))));
    texts.forEach(
        (file, text) -> {
          Matcher matcher = WIDTH.matcher(text);
          while (matcher.find()) {
            double asked = Double.parseDouble(matcher.group(1));
            // "Narrower than" is written as a hundredth less.
            assertThat(widths).as(file).containsAnyOf(asked, Math.round(asked + 0.01) + 0.0);
          }
        });
  }

  @Test
  void everyStyledClassOccursInATemplateAScriptOrADrawing() throws IOException {
    String users =
        String.join("\n", PageFiles.texts(PageFiles.TEMPLATES, ".jte").values())
            + String.join("\n", PageFiles.texts(PageFiles.ASSETS, ".js").values())
            + String.join("\n", PageFiles.texts(Path.of("src/main/java"), ".java").values());
    Set<String> unused = new TreeSet<>();
    RULES.values().stream()
        .flatMap(List::stream)
        .flatMap(rule -> rule.classes().stream())
        .filter(name -> !occurs(name, users))
        .forEach(unused::add);
    assertThat(unused).isEmpty();
  }

  @Test
  void everyClassOfATemplateIsStyledOrReadByAScript() throws IOException {
    Set<String> styled =
        RULES.values().stream()
            .flatMap(List::stream)
            .flatMap(rule -> rule.classes().stream())
            .collect(Collectors.toSet());
    String scripts = String.join("\n", PageFiles.texts(PageFiles.ASSETS, ".js").values());
    String tests = String.join("\n", PageFiles.texts(Path.of("src/test/java"), ".java").values());
    Map<String, Set<String>> idle = new TreeMap<>();
    Pattern plain = Pattern.compile("\\bclass=\"([a-z0-9 -]+)\"");
    PageFiles.texts(PageFiles.TEMPLATES, ".jte")
        .forEach(
            (file, text) ->
                plain
                    .matcher(text)
                    .results()
                    .flatMap(match -> List.of(match.group(1).split(" ", -1)).stream())
                    .filter(name -> !styled.contains(name))
                    .filter(name -> !scripts.contains("." + name) && !tests.contains("." + name))
                    .forEach(name -> idle.computeIfAbsent(name, n -> new TreeSet<>()).add(file)));
    assertThat(idle).isEmpty();
  }

  /** Literally, or as what a text that ends in a hyphen goes on with. */
  private static boolean occurs(String name, String users) {
    String literal = "(?<![\\w-])" + Pattern.quote(name) + "(?![\\w-])";
    int hyphen = name.lastIndexOf('-');
    String stem = hyphen < 0 ? name : name.substring(0, hyphen + 1);
    return Pattern.compile(literal).matcher(users).find()
        || (hyphen > 0 && (users.contains(stem + "\"") || users.contains(stem + "${")))
        || (name.startsWith("kind-") && users.contains("kind-${"));
  }

  private static List<String> outsideTokens(Pattern pattern) {
    List<String> found = new ArrayList<>();
    eachDeclaration(
        (sheet, property, value) -> {
          if (!sheet.equals(TOKENS) && pattern.matcher(value).find()) {
            found.add(sheet + " " + property + ": " + value);
          }
        });
    return found;
  }

  /** The names of the tokens with what they stand for in the light. */
  private static Map<String, String> tokens() {
    Map<String, String> tokens = new LinkedHashMap<>();
    eachDeclaration(
        (sheet, property, value) -> {
          if (sheet.equals(TOKENS) && property.startsWith("--")) {
            tokens.putIfAbsent(property, value);
          }
        });
    return tokens;
  }

  private static void eachDeclaration(Declarations act) {
    RULES.forEach(
        (sheet, rules) ->
            rules.stream()
                .flatMap(rule -> rule.declarations().stream())
                .map(declaration -> declaration.replaceFirst(";$", "").split(":", 2))
                .forEach(parts -> act.take(sheet, parts[0].strip(), parts[1].strip())));
  }

  /** What is done with each declaration. */
  private interface Declarations {
    void take(String sheet, String property, String value);
  }
}
