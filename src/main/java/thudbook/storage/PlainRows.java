package thudbook.storage;

import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.DOCUMENT_REVISION;
import static thudbook.storage.schema.Tables.DOCUMENT_SLUG;

import org.jooq.DSLContext;
import org.jooq.Record2;
import thudbook.library.Words;
import thudbook.recipes.Act.PlainWrite;

/** The rows of a module or session: written anew, or with another revision. */
final class PlainRows {
  private final DSLContext db;
  private final long change;

  PlainRows(DSLContext db, long change) {
    this.db = db;
    this.change = change;
  }

  /** Writes a new document, or the next revision of one whose version has been checked. */
  void write(PlainWrite write) {
    String noun = write.noun().word();
    long number = 1;
    long id;
    if (write.version() == null) {
      id =
          db.insertInto(DOCUMENT)
              .set(DOCUMENT.NOUN, noun)
              .set(DOCUMENT.UUID, write.id().toString())
              .set(DOCUMENT.SLUG, write.slug())
              .set(DOCUMENT.TITLE, write.title())
              .set(DOCUMENT.TITLE_KEY, Words.fold(write.title()))
              .set(DOCUMENT.VERSION, 1L)
              .set(DOCUMENT.HEAD, 1L)
              .returningResult(DOCUMENT.ID)
              .fetchSingle()
              .value1();
    } else {
      Record2<Long, Long> before =
          db.select(DOCUMENT.ID, DOCUMENT.HEAD)
              .from(DOCUMENT)
              .where(DOCUMENT.UUID.eq(write.id().toString()))
              .fetchSingle();
      id = before.value1();
      number = before.value2() + 1;
      db.update(DOCUMENT)
          .set(DOCUMENT.SLUG, write.slug())
          .set(DOCUMENT.TITLE, write.title())
          .set(DOCUMENT.TITLE_KEY, Words.fold(write.title()))
          .set(DOCUMENT.VERSION, DOCUMENT.VERSION.plus(1L))
          .set(DOCUMENT.HEAD, number)
          .where(DOCUMENT.ID.eq(id))
          .execute();
    }
    db.insertInto(DOCUMENT_SLUG)
        .set(DOCUMENT_SLUG.NOUN, noun)
        .set(DOCUMENT_SLUG.SLUG, write.slug())
        .set(DOCUMENT_SLUG.DOCUMENT, id)
        .onConflictDoNothing()
        .execute();
    db.insertInto(DOCUMENT_REVISION)
        .set(DOCUMENT_REVISION.DOCUMENT, id)
        .set(DOCUMENT_REVISION.NUMBER, number)
        .set(DOCUMENT_REVISION.CHANGE, change)
        .set(DOCUMENT_REVISION.SHA256, StoredText.sha256(write.document()))
        .set(DOCUMENT_REVISION.TEXT, write.document())
        .execute();
  }
}
