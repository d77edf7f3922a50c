package thudbook;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.openqa.selenium.chrome.ChromeDriver;

/** A page as the browser prints it, read by a PDF library. */
final class PrintedSheet {
  private static final Pattern CONNECTION = Pattern.compile("[0-9]+ (.+) into (.+)");
  private static final Pattern DIAL = Pattern.compile("(?!sets )(.+) at (\\S.*)");

  private final byte[] pdf;

  private PrintedSheet(byte[] pdf) {
    this.pdf = pdf;
  }

  /** Prints what the browser shows; sizes in inches. */
  static PrintedSheet of(ChromeDriver browser, double width, double height) {
    Map<String, Object> options = new HashMap<>();
    options.put("paperWidth", width);
    options.put("paperHeight", height);
    options.put("printBackground", true);
    Object data = browser.executeCdpCommand("Page.printToPDF", options).get("data");
    return new PrintedSheet(Base64.getDecoder().decode(data.toString()));
  }

  byte[] bytes() {
    return pdf;
  }

  /** Its text, line by line from the top, with plain spaces. */
  List<String> lines() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      return stripper
          .getText(document)
          .lines()
          .map(line -> line.replace('\u00a0', ' ').replaceAll(" +", " ").strip())
          .filter(line -> !line.isEmpty())
          .toList();
    }
  }

  /** The lines between two headings. */
  private List<String> between(String from, String to) throws IOException {
    List<String> between = new ArrayList<>();
    boolean inside = false;
    for (String line : lines()) {
      if (line.matches("[0-9] " + to)) {
        inside = false;
      } else if (inside) {
        between.add(line);
      }
      inside |= line.matches("[0-9] " + from);
    }
    return between;
  }

  /** The connections, {@code out > in}, as far as the text alone tells them. */
  List<String> connections() throws IOException {
    List<String> found = new ArrayList<>();
    for (String line : between("Connections", "Switches")) {
      Matcher matcher = CONNECTION.matcher(line);
      if (matcher.matches()) {
        found.add(matcher.group(1) + " > " + matcher.group(2));
      }
    }
    return found;
  }

  /** Switches or knobs, {@code module control at position}. */
  List<String> dials(String from, String to) throws IOException {
    List<String> found = new ArrayList<>();
    for (String line : between(from, to)) {
      Matcher matcher = DIAL.matcher(line);
      if (matcher.matches()) {
        found.add(matcher.group(1) + " at " + matcher.group(2));
      }
    }
    return found;
  }

  /** What the code on its first page says. */
  String code() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, 200);
      int width = page.getWidth();
      int height = page.getHeight();
      int[] pixels = page.getRGB(0, 0, width, height, null, 0, width);
      RGBLuminanceSource source = new RGBLuminanceSource(width, height, pixels);
      // The upper right quarter: that is where a reader holds the phone.
      var corner = source.crop(width / 2, 0, width - width / 2, height / 3);
      return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(corner))).getText();
    } catch (NotFoundException e) {
      throw new AssertionError("no code was found", e);
    } catch (ReaderException e) {
      throw new AssertionError("the code can't be read", e);
    }
  }

  /** Text that leaves its page or lies on other text; none: nothing is cut or overlaps. */
  List<String> collisions() throws IOException {
    List<String> found = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int number = 1; number <= document.getNumberOfPages(); number++) {
        var box = document.getPage(number - 1).getMediaBox();
        List<TextPosition> letters = new ArrayList<>();
        PDFTextStripper stripper =
            new PDFTextStripper() {
              @Override
              protected void processTextPosition(TextPosition text) {
                if (!text.getUnicode().isBlank()) {
                  letters.add(text);
                }
              }
            };
        stripper.setStartPage(number);
        stripper.setEndPage(number);
        stripper.getText(document);
        for (int i = 0; i < letters.size(); i++) {
          TextPosition one = letters.get(i);
          double right = one.getXDirAdj() + one.getWidthDirAdj();
          if (one.getXDirAdj() < 0
              || right > box.getWidth()
              || one.getYDirAdj() > box.getHeight()) {
            found.add("page " + number + ": " + one.getUnicode() + " is cut");
          }
          for (int j = i + 1; j < letters.size(); j++) {
            if (overlap(one, letters.get(j))) {
              found.add(
                  "page "
                      + number
                      + ": "
                      + one.getUnicode()
                      + " on "
                      + letters.get(j).getUnicode());
            }
          }
        }
      }
    }
    return found;
  }

  /**
   * Whether two letters share more than half of the smaller one; kerning is less. The same letter
   * at the same place is a halo around itself.
   */
  private static boolean overlap(TextPosition one, TextPosition other) {
    double across =
        Math.min(
                one.getXDirAdj() + one.getWidthDirAdj(),
                other.getXDirAdj() + other.getWidthDirAdj())
            - Math.max(one.getXDirAdj(), other.getXDirAdj());
    double along =
        Math.min(one.getYDirAdj(), other.getYDirAdj())
            - Math.max(
                one.getYDirAdj() - one.getHeightDir(), other.getYDirAdj() - other.getHeightDir());
    return one.getDir() == other.getDir()
        && across > Math.min(one.getWidthDirAdj(), other.getWidthDirAdj()) / 2
        && along > Math.min(one.getHeightDir(), other.getHeightDir()) / 2
        && !(one.getUnicode().equals(other.getUnicode()) && across > 0.9 * one.getWidthDirAdj());
  }
}
