package thudbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/**
 * The gate for scripts and style sheets, as strict as the one for Java: formatted by one formatter,
 * without complaints of one linter. Property tests over the files.
 *
 * <p>{@code mvn test -Dtest=PageFormatTest -Dscripts.format=apply} formats them.
 */
class PageFormatTest {
  private static final String HOW_TO =
      "format them with: mvn test -Dtest=PageFormatTest -Dscripts.format=apply";
  private static final int MOST_LINES = 250;

  /**
   * What was found well formatted and free of complaints before, so that it is not looked at twice.
   */
  private static final Path SEEN = Path.of("target/page-files-seen.txt");

  private static final PageTools TOOLS = PageTools.shared();

  @Test
  void everyFileIsFormatted() throws IOException {
    boolean apply = "apply".equals(System.getProperty("scripts.format"));
    Set<String> seen = seen();
    List<String> unlike = new ArrayList<>();
    for (Map.Entry<String, String> file : PageFiles.scriptsAndStyles().entrySet()) {
      String mark = mark("formatted", file.getValue());
      if (seen.contains(mark)) {
        continue;
      }
      String formatted = TOOLS.formatted(file.getKey(), file.getValue());
      if (formatted.equals(file.getValue())) {
        seen.add(mark);
      } else if (apply) {
        Files.writeString(PageFiles.ASSETS.resolve(file.getKey()), formatted);
      } else {
        unlike.add(file.getKey() + firstDifference(file.getValue(), formatted));
      }
    }
    Files.write(SEEN, seen);
    assertThat(unlike).as(HOW_TO).isEmpty();
  }

  private static String firstDifference(String is, String shouldBe) {
    List<String> lines = is.lines().toList();
    List<String> wanted = shouldBe.lines().toList();
    int at = 0;
    while (at < lines.size() && at < wanted.size() && lines.get(at).equals(wanted.get(at))) {
      at++;
    }
    String here = at < lines.size() ? lines.get(at) : "the end";
    String there = at < wanted.size() ? wanted.get(at) : "the end";
    return ", line " + (at + 1) + ": " + here.strip() + " → " + there.strip();
  }

  @Test
  void noScriptHasComplaints() throws IOException {
    Set<String> seen = seen();
    List<String> complaints = new ArrayList<>();
    for (Map.Entry<String, String> script : PageFiles.texts(PageFiles.ASSETS, ".js").entrySet()) {
      String mark = mark("without complaints", script.getValue());
      if (!seen.contains(mark)) {
        List<String> found = TOOLS.complaints(script.getValue());
        found.forEach(complaint -> complaints.add(script.getKey() + ", " + complaint));
        if (found.isEmpty()) {
          seen.add(mark);
        }
      }
    }
    Files.write(SEEN, seen);
    assertThat(complaints).isEmpty();
  }

  @Test
  void theLinterFindsMistakes() throws IOException {
    assertThat(
            TOOLS.complaints("const a = 1;\nlet b = a == 2;\nexport const c = (d) => missing;\n"))
        .anyMatch(complaint -> complaint.startsWith("line 2: Expected '==='"))
        .anyMatch(complaint -> complaint.contains("'b' is defined but never used"))
        .anyMatch(complaint -> complaint.contains("'missing' is not defined"));
  }

  @Test
  void noScriptIsLongAndEveryOneSaysHowItIsUsed() throws IOException {
    PageFiles.texts(PageFiles.ASSETS, ".js")
        .forEach(
            (name, text) -> {
              assertThat(text.lines().count()).as(name).isLessThanOrEqualTo(MOST_LINES);
              assertThat(text).as(name).startsWith("/*\n");
              assertThat(text.substring(0, text.indexOf("*/"))).as(name).contains("Usage:");
            });
  }

  @Test
  void onlyOneModuleReadsPages() throws IOException {
    Map<String, String> scripts = PageFiles.texts(PageFiles.ASSETS, ".js");
    assertThat(scripts.keySet())
        .as("fetches a part of a page and puts it in place")
        .filteredOn(name -> scripts.get(name).matches("(?s).*(DOMParser|importNode|innerHTML =).*"))
        .containsExactly("frame/parts.js");
    assertThat(scripts.keySet())
        .as("keeps in the browser")
        .filteredOn(name -> scripts.get(name).contains("localStorage."))
        .containsExactly("frame/device.js");
  }

  private static Set<String> seen() throws IOException {
    return Files.exists(SEEN) ? new HashSet<>(Files.readAllLines(SEEN)) : new HashSet<>();
  }

  /** Of a file's content, whatever its name; another version of a tool needs a clean build. */
  private static String mark(String what, String text) {
    return what + " " + UUID.nameUUIDFromBytes(text.getBytes(StandardCharsets.UTF_8));
  }
}
