package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import thudbook.changes.Change;
import thudbook.changes.Revision;
import thudbook.quantities.Refusal;

/** Revisions and changes as JSON. */
final class HistoryJson {
  private static final int USUAL_LIMIT = 50;
  private static final int LARGEST_LIMIT = 200;

  private HistoryJson() {}

  /**
   * Which revisions a reader asks for.
   *
   * @param below only lower numbers; 0: from the newest on
   */
  record Wanted(int below, int limit) {
    static Wanted of(Context ctx) {
      Query query = new Query(ctx);
      int below = query.whole("below", 1, Integer.MAX_VALUE, 0);
      int limit = query.whole("limit", 1, LARGEST_LIMIT, USUAL_LIMIT);
      query.refuseFaults();
      return new Wanted(below, limit);
    }
  }

  /** The number of a revision in an address. */
  static int number(Context ctx) {
    String text = ctx.pathParam("number");
    if (!text.matches("[1-9][0-9]{0,8}")) {
      throw noSuchRevision();
    }
    return Integer.parseInt(text);
  }

  static Refusal noSuchRevision() {
    return Refusal.of(
        Refusal.Kind.NOT_FOUND, "no-such-revision", "There is no revision of this number.");
  }

  /** A page of a history; {@code next} is what to ask for as {@code below}, null at its end. */
  static ObjectNode page(List<? extends Revision<?>> revisions, Wanted wanted) {
    ObjectNode node = Json.object();
    ArrayNode list = node.putArray("revisions");
    revisions.forEach(revision -> list.add(revision(revision)));
    int last = revisions.isEmpty() ? 1 : revisions.get(revisions.size() - 1).number();
    boolean ends = last == 1 || revisions.size() < wanted.limit();
    return ends ? node.putNull("next") : node.put("next", last);
  }

  /** A revision without its text. */
  static ObjectNode revision(Revision<?> revision) {
    return Json.object()
        .put("number", revision.number())
        .put("at", revision.at().toString())
        .put("author", revision.author().name())
        .put("what", revision.what())
        .put("change", revision.change());
  }

  /**
   * A revision with what was saved.
   *
   * @param noun the key under which it stands
   * @param json what was saved, as JSON
   */
  static String revision(Revision<?> revision, String noun, String json) {
    // The documents' own writer gives the numbers as they were typed; they are not written again.
    String head = Json.write(revision(revision));
    return head.substring(0, head.length() - 1) + ",\"" + noun + "\":" + json + "}";
  }

  static ObjectNode change(Change change) {
    ObjectNode node =
        Json.object()
            .put("id", change.id())
            .put("at", change.at().toString())
            .put("author", change.author().name())
            .put("what", change.what())
            .put("undoneBy", change.undoneBy())
            .put("count", change.count());
    ArrayNode effects = node.putArray("effects");
    for (Change.Effect effect : change.effects()) {
      effects
          .addObject()
          .put("noun", effect.noun())
          .put("slug", effect.slug())
          .put("title", effect.title())
          .put("kind", word(effect.kind()))
          .put("revision", effect.revision() == 0 ? null : effect.revision());
    }
    return node;
  }

  /** What an act answers: its number, under which it can be undone. */
  static ObjectNode done(long change) {
    return Json.object().put("change", change).put("undo", "/api/changes/" + change + "/undo");
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
