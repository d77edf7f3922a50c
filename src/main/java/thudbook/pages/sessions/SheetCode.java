package thudbook.pages.sessions;

import io.nayuki.qrcodegen.QrCode;
import java.net.URI;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What leads from a printed sheet back to the notebook: a scannable code where other devices reach
 * it, else a short number to type.
 *
 * @param number the first six digits of the recipe's id
 * @param address what the code says; null: there is none
 * @param path the dark squares of the code as an SVG path, one unit each, with the four units of
 *     quiet around that readers need; empty: there is none
 * @param size of the code in units, with the quiet around it; 0: there is none
 */
public record SheetCode(String number, @Nullable String address, String path, int size) {
  private static final int QUIET = 4;
  private static final int NUMBER_DIGITS = 6;

  /**
   * The code of a recipe.
   *
   * @param base where other devices reach the notebook, with a slash at its end; null: nowhere
   */
  static SheetCode of(UUID recipe, String slug, @Nullable URI base) {
    String number = recipe.toString().substring(0, NUMBER_DIGITS);
    if (base == null) {
      return new SheetCode(number, null, "", 0);
    }
    String address = base.resolve("/recipes/" + slug + "/recall").toString();
    QrCode code = QrCode.encodeText(address, QrCode.Ecc.MEDIUM);
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.size; y++) {
      for (int x = 0; x < code.size; x++) {
        if (code.getModule(x, y)) {
          path.append('M').append(x + QUIET).append(',').append(y + QUIET).append("h1v1h-1z");
        }
      }
    }
    return new SheetCode(number, address, path.toString(), code.size + 2 * QUIET);
  }
}
