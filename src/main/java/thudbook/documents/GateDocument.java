package thudbook.documents;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Dates;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.equipment.Gate;
import thudbook.equipment.Measured;
import thudbook.equipment.StudioChannel;
import thudbook.quantities.Dimension;

/** A gate document. */
final class GateDocument extends NounDocument<Gate> {
  static final GateDocument NOUN = new GateDocument();

  private GateDocument() {
    super(Gate.class, "gate");
  }

  @Override
  String notes(Gate gate) {
    return gate.notes();
  }

  @Override
  public Gate withSlug(Gate gate, String slug) {
    return gate.withSlug(slug);
  }

  @Override
  DifferenceWords words(Gate before, Gate after) {
    return DifferenceWords.of(before, after);
  }

  @Override
  @Nullable Gate read(Fields fields, String notes, Identity identity, Faults faults) {
    int before = faults.count();
    UUID id = Names.id(fields, faults);
    String slug = Names.slug(fields, faults);
    String title = fields.needLine("title", Limits.TITLE);
    Gate.Caution caution = fields.choice("caution", Choices.CAUTION, Gate.Caution.NONE);
    List<StudioChannel> channels = channels(fields, faults);
    fields.done();
    if (title == null || faults.count() > before) {
      return null;
    }
    return new Gate(
        id == null ? identity.newId() : id,
        slug == null ? identity.slugFor(title) : slug,
        title,
        caution,
        channels,
        notes);
  }

  private static List<StudioChannel> channels(Fields fields, Faults faults) {
    Tree tree = fields.need("channels", "a list of 1 to " + Limits.CHANNELS + " channels");
    List<StudioChannel> channels = new ArrayList<>();
    if (tree == null) {
      return channels;
    }
    Set<String> names = new HashSet<>();
    for (Tree item : Fields.itemsOf(tree, 1, Limits.CHANNELS, faults)) {
      Fields channelFields = Fields.of(item, faults);
      String name = channelFields.needLine("name", Limits.NAME);
      StudioChannel channel = ChannelPart.read(name, channelFields, faults);
      Measured measured = measured(channelFields, faults);
      channelFields.done();
      if (name != null && !names.add(name)) {
        faults.add(
            channelFields.placeOf("name"), "name-taken", name, "a name that no channel above has");
      }
      if (channel != null) {
        channels.add(new StudioChannel(channel.channel(), measured, channel.unused()));
      }
    }
    return channels;
  }

  private static @Nullable Measured measured(Fields channel, Faults faults) {
    Tree tree = channel.get("measured");
    if (tree == null) {
      return null;
    }
    Fields fields = Fields.of(tree, faults);
    Tree howTree = fields.need("how", "sweep, recording or data sheet");
    Measured.How how = howTree == null ? null : Choices.HOW.read(howTree, faults);
    Tree dateTree = fields.need("date", Dates.EXPECTED);
    LocalDate date = dateTree == null ? null : Dates.read(dateTree, faults);
    Double warmUp = fields.quantity("warmUp", Limits.WARM_UP);
    fields.done();
    return how == null || date == null ? null : new Measured(how, date, warmUp);
  }

  @Override
  Draft.Mapping write(Gate gate, Draft.@Nullable Keys notes) {
    Draft.Keys keys =
        Draft.keys()
            .token("thudbook", format())
            .token("id", gate.id().toString())
            .words("slug", gate.slug())
            .words("title", gate.title());
    if (gate.caution() != Gate.Caution.NONE) {
      keys.choice("caution", Choices.CAUTION, gate.caution());
    }
    keys.put("channels", Draft.lines(gate.channels().stream().map(GateDocument::channel).toList()));
    return (notes == null ? keys : keys.all(notes)).lines();
  }

  private static Draft channel(StudioChannel channel) {
    Draft.Keys keys = ChannelPart.write(channel);
    Measured measured = channel.measured();
    if (measured != null) {
      keys.put(
          "measured",
          Draft.keys()
              .choice("how", Choices.HOW, measured.how())
              .words("date", measured.date().toString())
              .quantity("warmUp", measured.warmUpMinutes(), Dimension.MINUTES)
              .inline());
    }
    return keys.lines();
  }
}
