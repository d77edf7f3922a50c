package thudbook.sessions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import thudbook.changes.Kept;
import thudbook.equipment.Gate;
import thudbook.equipment.Rack;
import thudbook.equipment.StudioChannel;
import thudbook.predictions.Departure;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;

/**
 * Another channel of the studio through which a recipe sounds nearly the same, so that the one that
 * it has is free for somebody else.
 *
 * @param entry index of the session's entry that moves
 * @param stage index of its stage that moves
 * @param hold hold there, as a share of what it was; 1 where neither has one
 * @param release40 likewise
 * @param peakDb how much louder its peak is there, in dB
 */
public record OtherChannel(
    int entry,
    int stage,
    String gate,
    String channel,
    double hold,
    double release40,
    double peakDb) {
  /**
   * The channels that resolve a clash about a channel, for either recipe, nearest first. None for a
   * clash about anything else, or for a recipe that can't be predicted.
   */
  public static List<OtherChannel> resolving(Plan.Clash clash, Plan plan, Listening listening) {
    if (clash.conflict().kind() != Conflict.Kind.CHANNEL) {
      return List.of();
    }
    List<OtherChannel> found = new ArrayList<>();
    found.addAll(moving(clash.second(), clash.conflict().what(), plan, listening));
    found.addAll(moving(clash.first(), clash.conflict().what(), plan, listening));
    found.sort(Comparator.comparingDouble(OtherChannel::departure));
    return found;
  }

  private static List<OtherChannel> moving(
      int entry, String wanted, Plan plan, Listening listening) {
    Recipe recipe = plan.recipe(entry).orElseThrow();
    Sound sound = listening.hear(recipe).sound().orElse(null);
    if (sound == null) {
      return List.of();
    }
    Set<String> taken = new HashSet<>(Wants.of(recipe, Rack.EMPTY).channels());
    for (int other : plan.besides(entry)) {
      plan.recipe(other).ifPresent(r -> taken.addAll(Wants.of(r, Rack.EMPTY).channels()));
    }
    List<OtherChannel> found = new ArrayList<>();
    for (int i = 0; i < recipe.stages().size(); i++) {
      StageEntry stage = recipe.stages().get(i);
      if (wanted.equals(Wants.channel(stage))) {
        for (Kept<Gate> stored : listening.studio().all()) {
          found.addAll(through(stored.thing(), entry, i, sound, taken, listening));
        }
      }
    }
    return found;
  }

  private static List<OtherChannel> through(
      Gate gate, int entry, int index, Sound sound, Set<String> taken, Listening listening) {
    Metrics now = listening.prediction(sound).metrics();
    List<OtherChannel> found = new ArrayList<>();
    for (StudioChannel candidate : gate.channels()) {
      String name = candidate.channel().name();
      if (taken.contains(gate.slug() + " " + name)) {
        continue;
      }
      Stage stage = sound.stages().get(index);
      List<Stage> stages = new ArrayList<>(sound.stages());
      stages.set(index, new Stage(candidate.channel(), stage.drive(), stage.envelope()));
      Metrics there =
          listening
              .prediction(
                  new Sound(
                      sound.source(),
                      sound.envelope(),
                      sound.strikes(),
                      stages,
                      sound.couplingHertz()))
              .metrics();
      OtherChannel other =
          new OtherChannel(
              entry,
              index,
              gate.slug(),
              name,
              share(now.get(Metric.HOLD), there.get(Metric.HOLD)),
              share(now.get(Metric.RELEASE_40), there.get(Metric.RELEASE_40)),
              there.get(Metric.PEAK_DB).orElseThrow() - now.get(Metric.PEAK_DB).orElseThrow());
      if (other.departure() <= 1) {
        found.add(other);
      }
    }
    return found;
  }

  /** One through the other; infinite where only one of them exists. */
  private static double share(OptionalDouble now, OptionalDouble there) {
    if (now.isEmpty() && there.isEmpty()) {
      return 1;
    }
    return now.isEmpty() || there.isEmpty()
        ? Double.POSITIVE_INFINITY
        : there.getAsDouble() / now.getAsDouble();
  }

  /** The largest departure as a part of what is allowed: at most 1 where it sounds alike. */
  double departure() {
    double shares = Math.max(Math.abs(hold - 1), Math.abs(release40 - 1)) / Departure.ALIKE_SHARE;
    return Math.max(shares, Departure.ofPeaks(0, peakDb));
  }
}
