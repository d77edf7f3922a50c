package thudbook.pages.frame;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Property: notes become HTML that leads only where notes may lead, whatever was written. */
class NotesTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "java\tscript:alert(1)",
        " javascript:alert(1)",
        "\u0001javascript:alert(1)",
        "java&#x09;script:alert(1)",
        "javascript&colon;alert(1)",
        "&#106;avascript:alert(1)",
        "vbscript:x",
        "data:text/html;base64,PHN2Zz4=",
        "file:///etc/passwd",
        "blob:x",
        "//elsewhere.example/x",
        "\\\\\\\\elsewhere.example/x",
      })
  void addressesOfOtherKindsAreNotLinked(String address) {
    String html = Notes.html("[words](<" + address + ">) ![picture](<" + address + ">)");
    assertThat(html).doesNotContain("href").doesNotContain("src=").contains("words");
    assertThat(new Markup(html).tags).noneMatch(tag -> tag.name().equals("img"));
  }

  @Test
  void theWebMailAndTheNotebookAreLinked() {
    assertThat(Notes.html("[a](https://example.org/x) [b](mailto:a@example.org) [c](/gates)"))
        .contains("href=\"https://example.org/x\"")
        .contains("href=\"mailto:a@example.org\"")
        .contains("href=\"/gates\"");
    assertThat(Notes.html("see https://example.org/x.")).contains("href=\"https://example.org/x\"");
  }

  @Test
  void picturesOfOtherHostsAreOnlyNamed() {
    assertThat(Notes.html("![the patch](https://example.org/a.png)"))
        .isEqualTo("<p>[picture: the patch]</p>\n");
    assertThat(Notes.html("![the patch](data:image/png;base64,AAAA)")).doesNotContain("<img");
  }

  @Test
  void rawHtmlIsShownAsText() {
    assertThat(Notes.html("<script>alert(1)</script>\n\na <b onclick=x>b</b>"))
        .doesNotContain("<script")
        .doesNotContain("<b")
        .contains("&lt;script&gt;");
  }

  @Test
  void headingsStandBelowThoseOfThePage() {
    assertThat(Notes.html("# One\n\n## Two\n\n###### Six"))
        .isEqualTo("<h3>One</h3>\n<h4>Two</h4>\n<h6>Six</h6>\n");
  }

  @Test
  void tablesAreTables() {
    assertThat(Notes.html("| a | b |\n| --- | --- |\n| 1 | 2 |")).contains("<table>", "<td>2</td>");
  }

  @Test
  void noNotesAreEmpty() {
    assertThat(Notes.html("")).isEmpty();
  }
}
