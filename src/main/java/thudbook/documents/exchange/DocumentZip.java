package thudbook.documents.exchange;

import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import thudbook.documents.NounDocument;

/**
 * A zip of documents in a folder a noun, such as {@code gates/} and {@code recipes/}, and of photos
 * in {@code media/}, written while it is made. The same content makes the same bytes: no times are
 * kept.
 */
public final class DocumentZip implements Closeable {
  private static final int BATCH = 100;
  private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final ZipOutputStream zip;

  /** Writes a zip to a stream. */
  public DocumentZip(OutputStream out) {
    this.zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
  }

  /** Adds every document of some nouns, reading a few at a time. */
  public void addAll(List<NounDocument<?>> nouns, DocumentStore store) throws IOException {
    for (NounDocument<?> noun : nouns) {
      add(noun.word() + "s/", noun, store);
    }
  }

  /** Adds a file. */
  public void add(String name, InputStream content) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(NO_TIME);
    zip.putNextEntry(entry);
    content.transferTo(zip);
    zip.closeEntry();
  }

  private void add(String folder, NounDocument<?> noun, DocumentStore store) throws IOException {
    long after = 0;
    while (true) {
      List<DocumentStore.Text> batch = store.texts(noun, after, BATCH);
      for (DocumentStore.Text kept : batch) {
        byte[] text = kept.document().getBytes(StandardCharsets.UTF_8);
        add(folder + kept.slug() + ".md", new ByteArrayInputStream(text));
        after = kept.key();
      }
      if (batch.size() < BATCH) {
        return;
      }
    }
  }

  /** Ends the zip and the stream. */
  @Override
  public void close() throws IOException {
    zip.close();
  }
}
