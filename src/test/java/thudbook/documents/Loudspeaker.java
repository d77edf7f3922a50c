package thudbook.documents;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Act;
import thudbook.changes.Kept;
import thudbook.changes.Rule;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.notebook.AddedNoun;
import thudbook.quantities.Dimension;
import thudbook.quantities.Fault;

/**
 * A noun that was made up to see that a reader, a writer and a rule are all that one needs.
 *
 * @param lowestHertz down to where it plays; null: not known
 */
public record Loudspeaker(
    UUID id, String slug, String title, String place, @Nullable Double lowestHertz, String notes)
    implements Thing {
  /** What a notebook is opened with to keep loudspeakers. */
  public static final AddedNoun<Loudspeaker> NOUN = new AddedNoun<>(new Document(), OneAPlace::new);

  /** How loudspeakers are read and written. */
  private static final class Document extends NounDocument<Loudspeaker> {
    Document() {
      super(Loudspeaker.class, "loudspeaker");
    }

    @Override
    @Nullable Loudspeaker read(Fields fields, String notes, Identity identity, Faults faults) {
      int before = faults.count();
      UUID id = Names.id(fields, faults);
      String slug = Names.slug(fields, faults);
      String title = fields.needLine("title", Limits.TITLE);
      String place = fields.needLine("place", Limits.NAME);
      Double lowest = fields.quantity("lowest", Limits.FREQUENCY);
      fields.done();
      if (title == null || place == null || faults.count() > before) {
        return null;
      }
      return new Loudspeaker(
          id == null ? identity.newId() : id,
          slug == null ? identity.slugFor(title) : slug,
          title,
          place,
          lowest,
          notes);
    }

    @Override
    Draft.Mapping write(Loudspeaker loudspeaker, Draft.@Nullable Keys notes) {
      Draft.Keys keys =
          Draft.keys()
              .token("thudbook", format())
              .token("id", loudspeaker.id().toString())
              .words("slug", loudspeaker.slug())
              .words("title", loudspeaker.title())
              .words("place", loudspeaker.place())
              .quantity("lowest", loudspeaker.lowestHertz(), Dimension.FREQUENCY);
      return (notes == null ? keys : keys.all(notes)).lines();
    }

    @Override
    String notes(Loudspeaker loudspeaker) {
      return loudspeaker.notes();
    }

    @Override
    public Loudspeaker withSlug(Loudspeaker one, String slug) {
      return new Loudspeaker(
          one.id(), slug, one.title(), one.place(), one.lowestHertz(), one.notes());
    }
  }

  /** No two loudspeakers stand in one place. */
  private record OneAPlace(Store<Loudspeaker> store) implements Rule<Loudspeaker> {
    @Override
    public List<Fault> obstacles(Act act) {
      List<Loudspeaker> coming =
          Stream.concat(
                  act.writes(NOUN.documents()).stream().map(write -> write.thing()),
                  act.binnings(NOUN.documents(), false)
                      .map(one -> store.find(one.id().toString()).orElseThrow().thing()))
              .toList();
      List<Loudspeaker> there = store.all().stream().map(Kept::thing).toList();
      return coming.stream()
          .flatMap(
              one ->
                  Stream.concat(
                          there.stream(),
                          coming.stream().takeWhile(other -> !other.id().equals(one.id())))
                      .filter(other -> !other.id().equals(one.id()))
                      .filter(other -> Objects.equals(other.place(), one.place()))
                      .map(other -> taken(one, other)))
          .toList();
    }

    private static Fault taken(Loudspeaker one, Loudspeaker other) {
      String message = other.title() + " stands at " + one.place() + " already.";
      return new Fault("/place", 0, "place-taken", one.place(), "a free place", message);
    }
  }
}
