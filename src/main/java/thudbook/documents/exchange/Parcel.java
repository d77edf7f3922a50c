package thudbook.documents.exchange;

import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Texts;
import thudbook.documents.tree.Utf8;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * Files that came together: chosen ones, a folder, a zip, pasted text. Nothing is unpacked onto a
 * disk and no name becomes a path; what is too much is refused before it takes memory.
 */
public final class Parcel {
  private static final int MOST_FILES = 10_000;
  private static final int LONGEST_NAME = 300;
  private static final int LONGEST_FILE = 16 << 20;
  private static final long LONGEST_TOTAL = 48L << 20;

  /** Text shrinks to about a fifth; what shrinks far more is made to. */
  private static final int MOST_RATIO = 100;

  private static final int RATIO_COUNTS_FROM = 1 << 20;
  private static final int ZIP_SIGNATURE = 0x504b;
  private static final Pattern DOCUMENT = Pattern.compile("(?i).*\\.(md|markdown|txt)");
  private static final Pattern PHOTO = Pattern.compile("(?i).*\\.(jpe?g|png|webp)");
  private static final Pattern TABLE = Pattern.compile("(?i).*\\.(csv|tsv)");
  private static final Pattern HIDDEN = Pattern.compile("(.*/)?(\\.[^/]*|__MACOSX)(/.*)?");
  private static final Pattern DOCUMENT_START =
      Pattern.compile("(?m)^---[ \\t]*\\r?\\n(?=thudbook[ \\t]*:)");

  private final List<Item> documents = new ArrayList<>();
  private final List<Item> tables = new ArrayList<>();
  private final List<Item> photos = new ArrayList<>();
  private final List<String> leftOut = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();
  private int files;
  private long total;

  /** One file of a parcel. */
  public static final class Item {
    private final String name;
    private final int lineOffset;
    private final byte[] bytes;

    private Item(String name, int lineOffset, byte[] bytes) {
      this.name = name;
      this.lineOffset = lineOffset;
      this.bytes = bytes;
    }

    /** What its sender calls it. */
    public String name() {
      return name;
    }

    /** How many lines stand before it in the text that it is a part of. */
    int lineOffset() {
      return lineOffset;
    }

    /** A copy of its bytes. */
    public byte[] bytes() {
      return bytes.clone();
    }
  }

  /**
   * Adds a file; a zip adds what is in it.
   *
   * @throws Refusal if the parcel becomes too large or the zip can't be read
   */
  public void add(String name, InputStream content) {
    try (BufferedInputStream in = new BufferedInputStream(content)) {
      in.mark(2);
      int start = in.read() << 8 | in.read();
      in.reset();
      if (start == ZIP_SIGNATURE) {
        addZip(name, in);
      } else {
        addFile(name, read(name, in));
      }
    } catch (ZipException | IllegalArgumentException e) {
      // The second is what names that are not UTF-8 come to.
      throw malformed(name, "this zip can't be read: it is damaged, cut off or locked");
    } catch (IOException e) {
      throw malformed(name, "this file did not arrive as a whole");
    }
  }

  /** Adds text that holds one document or several, one behind the other. */
  public void addText(String name, String text) {
    List<Integer> starts =
        new ArrayList<>(
            DOCUMENT_START.matcher(text).results().map(found -> found.start()).toList());
    // What stands before the first one is not thrown away but read, and refused with its line.
    if (starts.isEmpty() || !text.substring(0, starts.get(0)).isBlank()) {
      starts.add(0, 0);
    }
    for (int i = 0; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : text.length();
      byte[] bytes = text.substring(starts.get(i), end).getBytes(StandardCharsets.UTF_8);
      int lines = (int) text.substring(0, starts.get(i)).chars().filter(c -> c == '\n').count();
      count(name);
      weigh(name, bytes.length);
      documents.add(new Item(name, lines, bytes));
    }
  }

  /**
   * The documents.
   *
   * @throws Refusal with every name that is refused
   */
  public List<Item> documents() {
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    return List.copyOf(documents);
  }

  /** Tables in CSV. */
  public List<Item> tables() {
    return List.copyOf(tables);
  }

  /** Files that are named like photos. */
  public List<Item> photos() {
    return List.copyOf(photos);
  }

  /** Names of the files that are neither. */
  public List<String> leftOut() {
    return List.copyOf(leftOut);
  }

  private void addZip(String zip, InputStream in) throws IOException {
    CountingStream compressed = new CountingStream(in);
    try (ZipInputStream entries = new ZipInputStream(compressed, StandardCharsets.UTF_8)) {
      long before = total;
      boolean any = false;
      for (ZipEntry entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
        any = true;
        if (!entry.isDirectory()) {
          addFile(entry.getName(), read(entry.getName(), entries));
        }
        long unpacked = total - before;
        if (unpacked > RATIO_COUNTS_FROM && unpacked > compressed.count() * MOST_RATIO) {
          throw tooLarge(zip, "it unpacks to more than " + MOST_RATIO + " times its size");
        }
      }
      if (!any) {
        throw malformed(zip, "there is nothing in this zip");
      }
    }
  }

  private void addFile(String name, byte[] bytes) {
    count(name);
    String wrong = wrongWith(name);
    if (wrong != null) {
      String shown = Faults.shown(name);
      faults.add(new Fault("", 0, "bad-name", shown, "", shown + ": " + wrong));
    } else if (HIDDEN.matcher(name).matches()) {
      leftOut.add(name);
    } else if (PHOTO.matcher(name).matches()) {
      photos.add(new Item(name, 0, bytes));
    } else if (DOCUMENT.matcher(name).matches()) {
      documents.add(new Item(name, 0, bytes));
    } else if (TABLE.matcher(name).matches()) {
      tables.add(new Item(name, 0, bytes));
    } else {
      leftOut.add(name);
    }
  }

  /** No name is used as a path; one that looks like an attack is refused all the same. */
  private static @Nullable String wrongWith(String name) {
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      return "a name has 1 to " + LONGEST_NAME + " characters";
    }
    if (!name.codePoints().allMatch(Texts::visible)) {
      return "a name has no characters that can't be seen";
    }
    boolean away =
        name.startsWith("/")
            || name.contains("\\")
            || name.matches("[A-Za-z]:.*")
            || List.of(name.split("/", -1)).contains("..");
    return away ? "a name may not lead out of its folder" : null;
  }

  private byte[] read(String name, InputStream in) throws IOException {
    int most = (int) Math.min(LONGEST_FILE, LONGEST_TOTAL - total);
    if (DOCUMENT.matcher(name).matches()) {
      most = Math.min(most, Utf8.LONGEST);
    }
    byte[] bytes = in.readNBytes(most + 1);
    if (bytes.length > most) {
      throw tooLarge(
          Faults.shown(name),
          most == Utf8.LONGEST
              ? "a document has at most 256 KiB"
              : "all files together are too large");
    }
    weigh(name, bytes.length);
    return bytes;
  }

  private void count(String name) {
    files++;
    if (files > MOST_FILES) {
      throw tooLarge(Faults.shown(name), "there are more than " + MOST_FILES + " files");
    }
  }

  private void weigh(String name, int bytes) {
    total += bytes;
    if (total > LONGEST_TOTAL) {
      throw tooLarge(Faults.shown(name), "all files together are too large");
    }
  }

  private static Refusal tooLarge(String name, String what) {
    return Refusal.of(Refusal.Kind.TOO_LARGE, "too-large", name + ": " + what);
  }

  private static Refusal malformed(String name, String what) {
    return Refusal.of(Refusal.Kind.MALFORMED, "not-readable", Faults.shown(name) + ": " + what);
  }

  /** Counts what was taken from a stream. */
  private static final class CountingStream extends FilterInputStream {
    private long count;

    CountingStream(InputStream in) {
      super(in);
    }

    long count() {
      return count;
    }

    @Override
    public int read() throws IOException {
      int read = super.read();
      count += read < 0 ? 0 : 1;
      return read;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
      int read = super.read(bytes, from, length);
      count += Math.max(0, read);
      return read;
    }
  }
}
