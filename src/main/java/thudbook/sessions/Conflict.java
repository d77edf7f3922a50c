package thudbook.sessions;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import thudbook.equipment.Rack;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;

/**
 * What two recipes can't both have at once.
 *
 * @param what the channel as gate and name, the label of the module, the input, or module and
 *     control
 * @param one what the first recipe wants there: what feeds the input, where the knob stands; empty
 *     for the others
 * @param other likewise the second
 */
public record Conflict(Kind kind, String what, String one, String other) {
  /** What is wanted twice. */
  public enum Kind {
    /** A channel of a gate. */
    CHANNEL,
    /** An oscillator, also where both tune it alike: it has other things to follow. */
    OSCILLATOR,
    /** An envelope module. */
    ENVELOPE,
    /** An input that each feeds from elsewhere. */
    INPUT,
    /** A knob or switch that each wants elsewhere. */
    CONTROL
  }

  /**
   * All conflicts of two recipes. Inputs and knobs of an oscillator or envelope module that is
   * wanted twice itself are not listed too, nor the inputs of a gate of which a channel is.
   *
   * @param rack tells what a module is; of one that it does not have, the recipes do
   */
  public static List<Conflict> between(Recipe one, Recipe other, Rack rack) {
    Wants first = Wants.of(one, rack);
    Wants second = Wants.of(other, rack);
    List<Conflict> conflicts = new ArrayList<>();
    Set<String> whole = new LinkedHashSet<>();
    for (String channel : common(first.channels(), second.channels())) {
      conflicts.add(new Conflict(Kind.CHANNEL, channel, "", ""));
      String gate = channel.substring(0, channel.indexOf(' '));
      rack.carrying(gate).forEach(module -> whole.add(module.label()));
    }
    Set<String> oscillators = common(first.oscillators(), second.oscillators());
    oscillators.forEach(label -> conflicts.add(new Conflict(Kind.OSCILLATOR, label, "", "")));
    Set<String> envelopes = common(first.envelopes(), second.envelopes());
    envelopes.forEach(label -> conflicts.add(new Conflict(Kind.ENVELOPE, label, "", "")));
    whole.addAll(oscillators);
    whole.addAll(envelopes);
    first
        .inputs()
        .forEach(
            (input, fedBy) -> {
              String otherwise = second.inputs().get(input);
              if (otherwise != null
                  && !otherwise.equals(fedBy)
                  && whole.stream().noneMatch(label -> input.startsWith(label + " "))) {
                conflicts.add(new Conflict(Kind.INPUT, input, fedBy, otherwise));
              }
            });
    first
        .positions()
        .forEach(
            (control, at) -> {
              Position otherwise = second.positions().get(control);
              if (otherwise != null && !otherwise.equals(at) && !whole.contains(control.module())) {
                String what = control.module() + " " + control.name();
                conflicts.add(new Conflict(Kind.CONTROL, what, at.text(), otherwise.text()));
              }
            });
    return conflicts;
  }

  private static Set<String> common(Collection<String> one, Collection<String> other) {
    Set<String> common = new LinkedHashSet<>(one);
    common.retainAll(other);
    return common;
  }
}
