package thudbook.pages.writing;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.drawings.Format;
import thudbook.equipment.Gate;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.reading.ChannelView;
import thudbook.plots.StandardStrike;
import thudbook.quantities.Refusal;

/**
 * What the notebook says to the form of a gate while it is written.
 *
 * @param channels drawings of its channels; empty: something is wrong or missing
 * @param strike the same strike through every channel; null: something is wrong or missing
 * @param faults what is wrong, field by field
 * @param status in one line
 */
public record GateAnswer(
    List<ChannelView> channels,
    @Nullable StandardStrike strike,
    List<EditorFault> faults,
    String status) {

  /** Whether nothing can be drawn for now, so that what was shown before may stay. */
  public boolean keeps() {
    return strike == null;
  }

  /** The answer to a form. */
  static GateAnswer of(PostedForm form, Identity identity, Things<Gate> studio) {
    UUID subject = form.subject();
    List<EditorFault> faults = List.of();
    try {
      Documents.GATE.fromForm(form.gate(), identity);
    } catch (Refusal refusal) {
      faults = EditorFault.of(refusal.faults(), form.fields().keySet());
    }
    Gate gate = drawn(form, identity);
    if (gate == null) {
      return new GateAnswer(List.of(), null, faults, "");
    }
    List<Gate> others =
        studio.all().stream()
            .map(Kept::thing)
            .filter(other -> !other.id().equals(subject))
            .toList();
    List<ChannelView> channels = gate.channels().stream().map(ChannelView::of).toList();
    return new GateAnswer(
        channels,
        StandardStrike.of(gate, others, Format.BESIDE),
        faults,
        channels.size() == 1 ? channels.get(0).summary() : channels.size() + " channels drawn.");
  }

  /** Its channels can be drawn before it has a title. */
  private static @Nullable Gate drawn(PostedForm form, Identity identity) {
    PostedForm titled =
        form.text("title").isBlank() ? form.with(Map.of("title", "This gate")) : form;
    try {
      return Documents.GATE.fromForm(titled.gate(), identity);
    } catch (Refusal refusal) {
      return null;
    }
  }
}
