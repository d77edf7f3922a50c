package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.documents.tree.Choice;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Strikes;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Channel;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.quantities.Refusal;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;
import thudbook.sources.Source;

/** The body of a prediction: the sound of a recipe, with nothing missing. */
final class PredictionBody {
  private final Things<Gate> gates;
  private final Faults faults = new Faults();

  PredictionBody(Things<Gate> gates) {
    this.gates = gates;
  }

  Sound read(Tree tree) {
    Fields fields = Fields.of(tree, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    Source source = source(fields);
    fields.need("envelope", "an envelope");
    EnvelopeEntry entry = StagePart.envelope(fields, faults);
    Envelope envelope = complete(entry, fields);
    Tree strikesTree = fields.get("strikes");
    Strikes strikes = strikesTree == null ? null : StrikesPart.read(strikesTree, faults);
    List<StageEntry> entries = new ArrayList<>();
    List<Stage> stages = new ArrayList<>();
    Tree list = fields.need("stages", "a list of 1 to " + Limits.STAGES + " stages");
    if (list != null) {
      for (Tree item : Fields.itemsOf(list, 1, Limits.STAGES, faults)) {
        Stage stage = stage(item, entries);
        if (stage != null) {
          stages.add(stage);
        }
      }
    }
    if (strikes != null) {
      RecipeDocument.refuseStruckRecording(fields, entry, entries, faults);
    }
    Double coupling = RecipeDocument.coupling(fields, faults);
    fields.done();
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    if (source == null || envelope == null) {
      throw new IllegalStateException("a sound without faults is complete");
    }
    return new Sound(source, envelope, strikes, stages, coupling == null ? 0 : coupling);
  }

  private @Nullable Source source(Fields fields) {
    Tree tree = fields.need("source", "a source");
    SourceEntry entry = tree == null ? null : SourcePart.read(tree, faults);
    if (tree == null || entry == null) {
      return null;
    }
    entry.missing().forEach(key -> faults.missing(tree.place().key(key, 0), "a value"));
    return entry.complete().orElse(null);
  }

  /** The envelope of an entry, with a fault for each key that it lacks. */
  private @Nullable Envelope complete(@Nullable EnvelopeEntry entry, Fields fields) {
    if (entry == null) {
      return null;
    }
    Place place = fields.placeOf("envelope");
    entry.missing().forEach(key -> faults.missing(place.key(key, 0), "a value"));
    return entry.complete().orElse(null);
  }

  private @Nullable Stage stage(Tree tree, List<StageEntry> entries) {
    int before = faults.count();
    Fields fields = Fields.of(tree, faults);
    if (faults.count() > before) {
      return null;
    }
    Channel channel = channel(fields);
    StageEntry entry =
        new StageEntry(null, null, StagePart.drive(fields), StagePart.envelope(fields, faults));
    fields.done();
    entries.add(entry);
    Envelope envelope = complete(entry.envelope(), fields);
    return channel == null || faults.count() > before
        ? null
        : new Stage(channel, entry.drive(), envelope);
  }

  private @Nullable Channel channel(Fields fields) {
    Tree tree = fields.need("channel", "the name of a channel, or a channel itself");
    if (tree instanceof Tree.Mapping) {
      if (fields.get("gate") != null) {
        faults.say(
            fields.placeOf("gate"),
            "mixed",
            "gate",
            "no gate",
            "a channel that is given whole belongs to no gate, leave gate out");
      }
      return inline(tree);
    }
    String slug = StagePart.gate(fields, faults);
    String name = tree == null ? null : Values.line(tree, Limits.NAME, faults);
    if (fields.get("gate") == null) {
      faults.missing(fields.placeOf("gate"), "the slug of a gate");
    }
    if (slug == null || name == null) {
      return null;
    }
    Optional<Kept<Gate>> gate = gates.find(slug);
    if (gate.isEmpty()) {
      faults.add(fields.placeOf("gate"), "no-such-gate", slug, "a gate of this studio");
      return null;
    }
    Optional<StudioChannel> channel = gate.get().thing().channel(name);
    if (channel.isEmpty()) {
      List<String> names =
          gate.get().thing().channels().stream().map(c -> c.channel().name()).toList();
      faults.add(fields.placeOf("channel"), "no-such-channel", name, Choice.expected(names));
    }
    return channel.map(StudioChannel::channel).orElse(null);
  }

  private @Nullable Channel inline(Tree tree) {
    Fields fields = Fields.of(tree, faults);
    String name = fields.needLine("name", Limits.NAME);
    StudioChannel channel = ChannelPart.read(name, fields, faults);
    fields.done();
    return channel == null ? null : channel.channel();
  }
}
