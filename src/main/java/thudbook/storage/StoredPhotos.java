package thudbook.storage;

import static thudbook.storage.schema.Tables.PHOTO;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.impl.DSL;
import thudbook.photos.Photo;
import thudbook.photos.PhotoStore;
import thudbook.photos.Picture;

/** Photos in their table. */
final class StoredPhotos implements PhotoStore {
  private static final Field<String> FILE = PHOTO.SHA256.concat(".").concat(PHOTO.ENDING);

  private final Connections connections;

  StoredPhotos(Connections connections) {
    this.connections = connections;
  }

  @Override
  public void keep(Photo photo, Picture picture, Picture thumbnail, Instant at) {
    connections.write(
        db ->
            db.insertInto(PHOTO)
                .set(PHOTO.SHA256, photo.sha256())
                .set(PHOTO.ENDING, photo.format().ending())
                .set(PHOTO.WIDTH, (long) photo.width())
                .set(PHOTO.HEIGHT, (long) photo.height())
                .set(PHOTO.ADDED_AT, at.toEpochMilli())
                .set(PHOTO.BYTES, picture.bytes())
                .set(PHOTO.THUMBNAIL, thumbnail.bytes())
                .onConflict(PHOTO.SHA256)
                .doNothing()
                .execute());
  }

  @Override
  public Optional<Photo> find(String file) {
    return connections.read(
        db ->
            db.select(PHOTO.SHA256, PHOTO.ENDING, PHOTO.WIDTH, PHOTO.HEIGHT)
                .from(PHOTO)
                .where(named(file))
                .fetchOptional(
                    row ->
                        new Photo(
                            row.value1(),
                            Photo.Format.valueOf(row.value2().toUpperCase(Locale.ROOT)),
                            row.value3().intValue(),
                            row.value4().intValue())));
  }

  @Override
  public Optional<Picture> picture(String file) {
    return bytes(file, PHOTO.BYTES);
  }

  @Override
  public Optional<Picture> thumbnail(String file) {
    return bytes(file, PHOTO.THUMBNAIL);
  }

  @Override
  public List<String> files(String after, int limit) {
    return connections.read(
        db ->
            db.select(FILE)
                .from(PHOTO)
                .where(PHOTO.SHA256.gt(hash(after)))
                .orderBy(PHOTO.SHA256)
                .limit(limit)
                .fetch(FILE));
  }

  private Optional<Picture> bytes(String file, Field<byte[]> column) {
    return connections.read(
        db ->
            db.select(column)
                .from(PHOTO)
                .where(named(file))
                .fetchOptional(column)
                .map(Picture::of));
  }

  /** By the key, so that the index is used, and by the ending, which is a part of the name. */
  private static Condition named(String file) {
    return PHOTO.SHA256.eq(hash(file)).and(DSL.condition(FILE.eq(file)));
  }

  private static String hash(String file) {
    int dot = file.indexOf('.');
    return dot < 0 ? file : file.substring(0, dot);
  }
}
