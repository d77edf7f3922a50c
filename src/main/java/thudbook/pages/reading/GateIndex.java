package thudbook.pages.reading;

import java.util.List;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;

/** The list of gates, as it is shown. */
public record GateIndex(List<Item> gates) {
  /** One gate. */
  public record Item(String slug, String title, boolean tube, List<Line> channels) {}

  /** One of its channels. */
  public record Line(String name, String kind, String brief) {}

  /** The list of the studio's gates. */
  static GateIndex of(Things<Gate> gates) {
    return new GateIndex(
        gates.all().stream()
            .map(Kept::thing)
            .map(
                gate ->
                    new Item(
                        gate.slug(),
                        gate.title(),
                        gate.caution() == Gate.Caution.TUBE,
                        gate.channels().stream()
                            .map(c -> c.channel())
                            .map(c -> new Line(c.name(), ChannelView.kind(c), ChannelView.brief(c)))
                            .toList()))
            .toList());
  }
}
