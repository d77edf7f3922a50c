package thudbook.documents;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Choice;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.equipment.Control;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.quantities.Dimension;

/** A module document. */
final class ModuleDocument extends NounDocument<Module> {
  static final ModuleDocument NOUN = new ModuleDocument();

  private ModuleDocument() {
    super(Module.class, "module");
  }

  @Override
  String notes(Module module) {
    return module.notes();
  }

  @Override
  public Module withSlug(Module module, String slug) {
    return module.withSlug(slug);
  }

  @Override
  public Comparator<Module> order() {
    return Comparator.comparing(Module::label);
  }

  @Override
  @Nullable Module read(Fields fields, String notes, Identity identity, Faults faults) {
    int before = faults.count();
    UUID id = Names.id(fields, faults);
    String slug = Names.slug(fields, faults);
    String label = fields.needLine("label", Limits.LABEL);
    String title = fields.needLine("title", Limits.TITLE);
    Module.Kind kind = fields.choice("kind", Choices.MODULE_KIND, Module.Kind.OTHER);
    String place = fields.line("place", Limits.NAME);
    String gate = Names.reference(fields, "gate", "the slug of a gate", faults);
    Double warmUp = fields.quantity("warmUp", Limits.WARM_UP);
    Gate.Caution caution = fields.choice("caution", Choices.CAUTION, Gate.Caution.NONE);
    List<Control> controls = ControlPart.read(fields, faults);
    List<Port> ports = ports(fields, faults);
    fields.done();
    if (label == null || title == null || faults.count() > before) {
      return null;
    }
    return new Module(
        id == null ? identity.newId() : id,
        slug == null ? identity.slugFor(label + " " + title) : slug,
        label,
        title,
        kind,
        place,
        gate,
        warmUp,
        caution,
        controls,
        ports,
        notes);
  }

  private static List<Port> ports(Fields module, Faults faults) {
    List<Port> ports = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Tree item : module.items("ports", Limits.PORTS)) {
      Fields fields = Fields.of(item, faults);
      String name = fields.needLine("name", Limits.NAME);
      Port.Direction direction = needChoice(fields, "direction", Choices.DIRECTION, faults);
      Port.Carries carries = needChoice(fields, "carries", Choices.CARRIES, faults);
      String channel = fields.line("channel", Limits.NAME);
      fields.done();
      if (name == null || direction == null || carries == null) {
        continue;
      }
      if (names.add(direction + " " + name)) {
        ports.add(new Port(name, direction, carries, channel));
      } else {
        faults.add(
            fields.placeOf("name"),
            "name-taken",
            name,
            "a name that no port above with direction "
                + Choices.DIRECTION.word(direction)
                + " has");
      }
    }
    return ports;
  }

  private static <T extends Enum<T>> @Nullable T needChoice(
      Fields fields, String key, Choice<T> choice, Faults faults) {
    Tree tree = fields.need(key, choice.expected());
    return tree == null ? null : choice.read(tree, faults);
  }

  @Override
  Draft.Mapping write(Module module, Draft.@Nullable Keys notes) {
    Draft.Keys keys =
        Draft.keys()
            .token("thudbook", format())
            .token("id", module.id().toString())
            .words("slug", module.slug())
            .words("label", module.label())
            .words("title", module.title())
            .choice("kind", Choices.MODULE_KIND, module.kind())
            .words("place", module.place())
            .words("gate", module.gate())
            .quantity("warmUp", module.warmUpMinutes(), Dimension.MINUTES);
    if (module.caution() != Gate.Caution.NONE) {
      keys.choice("caution", Choices.CAUTION, module.caution());
    }
    if (!module.controls().isEmpty()) {
      keys.put(
          "controls", Draft.lines(module.controls().stream().map(ControlPart::write).toList()));
    }
    if (!module.ports().isEmpty()) {
      keys.put("ports", Draft.lines(module.ports().stream().map(ModuleDocument::port).toList()));
    }
    return (notes == null ? keys : keys.all(notes)).lines();
  }

  private static Draft port(Port port) {
    return Draft.keys()
        .words("name", port.name())
        .choice("direction", Choices.DIRECTION, port.direction())
        .choice("carries", Choices.CARRIES, port.carries())
        .words("channel", port.channel())
        .inline();
  }
}
