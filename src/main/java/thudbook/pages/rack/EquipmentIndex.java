package thudbook.pages.rack;

import java.util.List;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Port;

/** The list of modules, as it is shown. */
public record EquipmentIndex(List<Item> modules) {
  /**
   * One module.
   *
   * @param brief how many controls and ports it has, and where it stands
   */
  public record Item(
      String slug, String label, String title, String kind, String brief, boolean tube) {}

  static EquipmentIndex of(Store<Module> modules) {
    return new EquipmentIndex(
        modules.all().stream().map(Kept::thing).map(EquipmentIndex::item).toList());
  }

  private static Item item(Module module) {
    String place = module.place() == null ? "" : ", " + module.place();
    return new Item(
        module.slug(),
        module.label(),
        module.title(),
        ModuleSheet.kind(module.kind()),
        counted(module.controls().size(), "control")
            + ", "
            + counted(module.ports(Port.Direction.IN).size(), "input")
            + ", "
            + counted(module.ports(Port.Direction.OUT).size(), "output")
            + place,
        module.caution() == Gate.Caution.TUBE);
  }

  private static String counted(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }
}
