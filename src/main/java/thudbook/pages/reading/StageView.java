package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.envelopes.Drive;
import thudbook.equipment.Gate;
import thudbook.recipes.StageEntry;
import thudbook.wording.Entry;
import thudbook.wording.EnvelopeWords;
import thudbook.wording.Reading;

/**
 * One gate stage of a recipe, as it is shown.
 *
 * @param gate title of the gate, or what the recipe calls it
 * @param address of the gate's page; null: the studio does not have it
 * @param channel name of the channel
 * @param drive the control drive
 * @param envelope an envelope of its own; empty: the recipe's
 */
public record StageView(
    String gate,
    @Nullable String address,
    String channel,
    List<Entry> drive,
    List<Entry> envelope) {

  /** The stage at a place of a recipe, counted from 0. */
  static StageView of(StageEntry entry, int place, Things<Gate> gates) {
    String prefix = "stages." + place + ".";
    Optional<Gate> gate =
        entry.gate() == null ? Optional.empty() : gates.find(entry.gate()).map(Kept::thing);
    return new StageView(
        gate.map(Gate::title).orElse(entry.gate() == null ? "no gate yet" : entry.gate()),
        gate.map(g -> "/gates/" + g.slug()).orElse(null),
        entry.channel() == null ? "no channel yet" : entry.channel(),
        drive(entry.drive(), prefix),
        entry.envelope() == null
            ? List.of()
            : EnvelopeWords.entries(entry.envelope(), prefix + "envelope."));
  }

  /** Gate and channel in words. */
  public String heading() {
    return gate + ", " + channel;
  }

  private static List<Entry> drive(Drive drive, String prefix) {
    List<Entry> entries = new ArrayList<>();
    entries.add(
        new Entry(prefix + "gain", "Control drive", "gain\u00a0" + Reading.entered(drive.gain())));
    entries.add(
        new Entry(prefix + "offset", "Control offset", Reading.entered(drive.offsetVolts(), "V")));
    entries.add(
        new Entry(
            prefix + "controlRail", "Control rail", "±" + Reading.entered(drive.railVolts(), "V")));
    return entries;
  }
}
