package thudbook.documents;

import java.nio.charset.StandardCharsets;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.Texts;
import thudbook.documents.tree.Tree;

/** The notes of a document, in CommonMark. */
final class Notes {
  private Notes() {}

  /** Notes as they are kept: no empty lines before and nothing behind the last character. */
  static String kept(String text) {
    String notes = text.replace("\r\n", "\n").replace('\r', '\n').stripTrailing();
    int start = 0;
    for (int end = notes.indexOf('\n'); end >= 0; end = notes.indexOf('\n', start)) {
      if (!notes.substring(start, end).isBlank()) {
        break;
      }
      start = end + 1;
    }
    return notes.substring(start);
  }

  /** Notes that were read, as they are kept; a fault if they are too long. */
  static String checked(String text, Place place, Faults faults) {
    String notes = kept(text);
    int bytes = notes.getBytes(StandardCharsets.UTF_8).length;
    if (bytes > Limits.NOTES_BYTES) {
      faults.add(place, "too-large", bytes + " bytes", "at most 64 KiB of notes");
    }
    return notes;
  }

  /** The {@code notes} of JSON. */
  static String read(Fields fields, Faults faults) {
    Tree tree = fields.get("notes");
    if (tree == null) {
      return "";
    }
    if (!(tree instanceof Tree.Text text)) {
      faults.add(tree, "wrong-type", "text");
      return "";
    }
    String notes = checked(text.text(), tree.place(), faults);
    if (!notes.codePoints().allMatch(Texts::printable)) {
      faults.add(tree.place(), "control-character", "a control character", "text without any");
    }
    return notes;
  }

  /** The {@code notes} of JSON. */
  static Draft.Keys key(String notes) {
    return Draft.keys().put("notes", new Draft.Words(kept(notes)));
  }
}
