package thudbook.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import thudbook.recipes.Listening;
import thudbook.sessions.Conflict;
import thudbook.sessions.OtherChannel;
import thudbook.sessions.Plan;

/** Clashes of a session in words, and what resolves them. */
public final class PlanWords {
  private final Plan plan;
  private final Listening listening;

  public PlanWords(Plan plan, Listening listening) {
    this.plan = plan;
    this.listening = listening;
  }

  /** What is in whose way. */
  public String clash(Plan.Clash clash) {
    Conflict conflict = clash.conflict();
    String one = title(clash.first());
    String other = title(clash.second());
    String both = one + " and " + other + " both want ";
    return switch (conflict.kind()) {
      case CHANNEL -> both + "the channel " + channel(conflict.what()) + ".";
      case OSCILLATOR -> both + "the oscillator " + conflict.what() + ".";
      case ENVELOPE -> both + "the envelope module " + conflict.what() + ".";
      case INPUT ->
          conflict.what()
              + " is fed from "
              + conflict.one()
              + " for "
              + one
              + ", and from "
              + conflict.other()
              + " for "
              + other
              + ".";
      case CONTROL ->
          conflict.what()
              + " stands at "
              + conflict.one()
              + " for "
              + one
              + ", and at "
              + conflict.other()
              + " for "
              + other
              + ".";
    };
  }

  /** Why the two sound or stand there at once. */
  public String occasion(Plan.Clash clash) {
    String layer = plan.session().entries().get(clash.first()).layer();
    boolean layered =
        layer != null && layer.equals(plan.session().entries().get(clash.second()).layer());
    return layered
        ? "At once, in the layer " + layer
        : title(clash.first()) + " stays patched while " + title(clash.second()) + " is played";
  }

  /** The channels through which one of the two sounds alike. */
  public List<String> ways(Plan.Clash clash) {
    List<String> ways = new ArrayList<>();
    for (OtherChannel other : OtherChannel.resolving(clash, plan, listening)) {
      ways.add(
          "Play "
              + title(other.entry())
              + " through "
              + channel(other.gate() + " " + other.channel())
              + ": hold "
              + share(other.hold())
              + ", tail to −40 dB "
              + share(other.release40())
              + ", peak "
              + signed(other.peakDb(), "\u00a0dB")
              + ".");
    }
    for (String label : plan.spare(clash)) {
      ways.add(label + " does the same and is free.");
    }
    return ways;
  }

  private String title(int entry) {
    return plan.recipe(entry)
        .map(recipe -> recipe.title())
        .orElse(plan.session().entries().get(entry).recipe());
  }

  private String channel(String gateAndChannel) {
    int space = gateAndChannel.indexOf(' ');
    String slug = gateAndChannel.substring(0, space);
    String gate = listening.studio().find(slug).map(stored -> stored.thing().title()).orElse(slug);
    return gate + ", " + gateAndChannel.substring(space + 1);
  }

  private static String share(double ratio) {
    return signed(100 * (ratio - 1), "\u00a0%");
  }

  private static String signed(double value, String unit) {
    String digits = String.format(Locale.ROOT, "%.1f", Math.abs(value));
    if (digits.equals("0.0")) {
      return "as it is";
    }
    return (value < 0 ? "−" : "+") + digits + unit;
  }
}
