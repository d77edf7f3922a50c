package thudbook.documents;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Dates;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.sessions.Session;

/** A session document. */
final class SessionDocument extends NounDocument<Session> {
  static final SessionDocument NOUN = new SessionDocument();

  private static final String RECIPE = "the slug of a recipe, such as slack-tide-kick";

  private SessionDocument() {
    super(Session.class, "session");
  }

  /** Whether an entry keeps its place when the order is changed. */
  enum Place {
    FREE,
    FIXED
  }

  /** Whether a recipe stays patched while the next one is played. */
  enum Stays {
    NO,
    PATCHED
  }

  @Override
  String notes(Session session) {
    return session.notes();
  }

  @Override
  public Session withSlug(Session session, String slug) {
    return session.withSlug(slug);
  }

  @Override
  @Nullable Session read(Fields fields, String notes, Identity identity, Faults faults) {
    int before = faults.count();
    UUID id = Names.id(fields, faults);
    String slug = Names.slug(fields, faults);
    String title = fields.needLine("title", Limits.TITLE);
    Tree day = fields.get("date");
    LocalDate date = day == null ? null : Dates.read(day, faults);
    String by = fields.line("by", Limits.NAME);
    List<Session.Entry> entries = entries(fields, faults);
    fields.done();
    if (title == null || faults.count() > before) {
      return null;
    }
    return new Session(
        id == null ? identity.newId() : id,
        slug == null ? identity.slugFor(title) : slug,
        title,
        date,
        by,
        entries,
        notes);
  }

  private static List<Session.Entry> entries(Fields session, Faults faults) {
    List<Session.Entry> entries = new ArrayList<>();
    List<Fields> rows = new ArrayList<>();
    for (Tree item : session.items("recipes", Session.MOST_ENTRIES)) {
      Fields row = Fields.of(item, faults);
      String recipe = Names.needReference(row, "recipe", RECIPE, faults);
      String note = row.line("note", Limits.SENTENCE);
      String layer = row.line("layer", Limits.NAME);
      Place place = row.choice("place", Choices.PLACE, Place.FREE);
      Stays stays = row.choice("stays", Choices.STAYS, Stays.NO);
      row.done();
      rows.add(row);
      entries.add(
          new Session.Entry(
              recipe == null ? "" : recipe,
              note,
              layer,
              place == Place.FIXED,
              stays == Stays.PATCHED));
    }
    int torn = Session.tornLayer(entries);
    if (torn >= 0) {
      String layer = Objects.requireNonNull(entries.get(torn).layer());
      faults.add(
          rows.get(torn).placeOf("layer"),
          "layer-torn",
          layer + " again",
          "the recipes of a layer one behind the other");
    }
    return entries;
  }

  @Override
  Draft.Mapping write(Session session, Draft.@Nullable Keys notes) {
    LocalDate date = session.date();
    Draft.Keys keys =
        Draft.keys()
            .token("thudbook", format())
            .token("id", session.id().toString())
            .words("slug", session.slug())
            .words("title", session.title())
            .words("date", date == null ? null : date.toString())
            .words("by", session.by())
            .put(
                "recipes",
                session.entries().isEmpty()
                    ? null
                    : Draft.lines(session.entries().stream().map(SessionDocument::entry).toList()));
    return (notes == null ? keys : keys.all(notes)).lines();
  }

  private static Draft entry(Session.Entry entry) {
    Draft.Keys keys =
        Draft.keys()
            .words("recipe", entry.recipe())
            .words("note", entry.note())
            .words("layer", entry.layer());
    if (entry.fixed()) {
      keys.choice("place", Choices.PLACE, Place.FIXED);
    }
    if (entry.stays()) {
      keys.choice("stays", Choices.STAYS, Stays.PATCHED);
    }
    return keys.inline();
  }
}
