package thudbook.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.sessions.Conflict;
import thudbook.sessions.Moves;
import thudbook.sessions.OtherChannel;
import thudbook.sessions.Plan;
import thudbook.sessions.Session;

/** What follows from a session as JSON. Entries and steps are numbered from 0. */
final class PlanJson {
  private PlanJson() {}

  static ObjectNode node(Plan plan, Listening listening) {
    ObjectNode node = Json.object();
    node.put("moves", plan.moves());
    node.set("missing", Json.words(plan.missing()));
    ArrayNode steps = node.putArray("steps");
    for (int i = 0; i < plan.steps().size(); i++) {
      steps.add(step(plan.steps().get(i), plan.moves(i)));
    }
    ArrayNode clashes = node.putArray("clashes");
    plan.clashes().forEach(clash -> clashes.add(clash(clash, plan, listening)));
    node.set("better", better(plan.better()));
    return node;
  }

  private static ObjectNode step(Session.Step step, Moves moves) {
    ObjectNode node = Json.object();
    node.put("first", step.first()).put("entries", step.entries().size());
    node.put("moves", moves.count());
    node.set("pull", connections(moves.pull()));
    node.set("make", connections(moves.make()));
    ArrayNode set = node.putArray("set");
    for (Moves.Setting setting : moves.set()) {
      set.addObject()
          .put("module", setting.control().module())
          .put("control", setting.control().name())
          .put("from", setting.from() == null ? null : setting.from().text())
          .put("to", setting.to().text());
    }
    return node;
  }

  private static ArrayNode connections(List<Recipe.Connection> connections) {
    ArrayNode list = Json.object().putArray("list");
    connections.forEach(c -> list.addObject().put("out", c.out()).put("in", c.in()));
    return list;
  }

  private static ObjectNode clash(Plan.Clash clash, Plan plan, Listening listening) {
    Conflict conflict = clash.conflict();
    ObjectNode node =
        Json.object()
            .put("first", clash.first())
            .put("second", clash.second())
            .put("kind", conflict.kind().name().toLowerCase(Locale.ROOT))
            .put("what", conflict.what())
            .put("one", conflict.one())
            .put("other", conflict.other());
    ArrayNode channels = node.putArray("channels");
    for (OtherChannel other : OtherChannel.resolving(clash, plan, listening)) {
      channels
          .addObject()
          .put("entry", other.entry())
          .put("stage", other.stage())
          .put("gate", other.gate())
          .put("channel", other.channel())
          .put("hold", other.hold())
          .put("release40", other.release40())
          .put("peakDb", other.peakDb());
    }
    return node;
  }

  private static ObjectNode better(Plan.Better better) {
    ObjectNode node = Json.object();
    ArrayNode order = node.putArray("order");
    better.found().ifPresent(steps -> steps.forEach(order::add));
    return node.put("moves", better.moves())
        .put("clashes", better.clashes())
        .put("clashesNow", better.clashesNow())
        .put("exact", better.exact());
  }
}
