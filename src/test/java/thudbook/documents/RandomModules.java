package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import thudbook.documents.tree.Units;
import thudbook.equipment.Control;
import thudbook.equipment.Control.Knob;
import thudbook.equipment.Control.Ranged;
import thudbook.equipment.Control.Switch;
import thudbook.equipment.Gate;
import thudbook.equipment.MeasuredTaper.Point;
import thudbook.equipment.Module;
import thudbook.equipment.Port;
import thudbook.equipment.Sweep;
import thudbook.equipment.Taper;
import thudbook.quantities.Dimension;

/** Modules at random, as a reader may give them. */
final class RandomModules {
  private static final Dimension[] UNITS = {
    Dimension.TIME,
    Dimension.FREQUENCY,
    Dimension.VOLTAGE,
    Dimension.LEVEL,
    Dimension.SHARE,
    Dimension.RATIO,
    Dimension.TEMPO,
    Dimension.MINUTES,
    Dimension.NUMBER
  };

  private final Random random;
  private final RandomDocuments words;

  RandomModules(long seed) {
    this.random = new Random(seed);
    this.words = new RandomDocuments(seed);
  }

  Module module() {
    List<Control> controls = new ArrayList<>();
    List<Switch> switches = new ArrayList<>();
    for (int i = random.nextInt(3); i > 0; i--) {
      Switch toggle = new Switch("switch " + i + words.line(50), names("at "));
      switches.add(toggle);
      controls.add(toggle);
    }
    for (int i = random.nextInt(6); i > 0; i--) {
      controls.add(knob("knob " + i + words.line(50), switches));
    }
    List<Port> ports =
        IntStream.range(0, random.nextInt(6))
            .mapToObj(i -> port((i / 2) + " " + words.line(50), i % 2 == 0))
            .toList();
    return new Module(
        new UUID(random.nextLong(), random.nextLong()),
        words.slug(),
        words.line(Limits.LABEL),
        words.line(Limits.TITLE),
        of(Module.Kind.values()),
        random.nextBoolean() ? null : words.line(Limits.NAME),
        random.nextBoolean() ? null : "keeper-twin",
        random.nextBoolean() ? null : 600 * random.nextDouble(),
        of(Gate.Caution.values()),
        controls,
        ports,
        words.notes());
  }

  private Port port(String name, boolean in) {
    return new Port(
        name,
        in ? Port.Direction.IN : Port.Direction.OUT,
        of(Port.Carries.values()),
        random.nextBoolean() ? null : words.line(Limits.NAME));
  }

  private Knob knob(String name, List<Switch> switches) {
    Dimension unit = of(UNITS);
    List<Ranged> tapers = new ArrayList<>();
    String by = null;
    if (!switches.isEmpty() && random.nextBoolean()) {
      Switch toggle = switches.get(random.nextInt(switches.size()));
      by = toggle.name();
      toggle.positions().forEach(at -> tapers.add(new Ranged(at, taper(unit))));
    } else {
      tapers.add(new Ranged(null, taper(unit)));
    }
    double tolerance =
        random.nextBoolean() ? Knob.USUAL_TOLERANCE_DEGREES : 0.1 + 80 * random.nextDouble();
    return new Knob(name, unit, sweep(), tapers, by, tolerance);
  }

  private Sweep sweep() {
    return new Sweep(
        Sweep.USUAL.clock(random.nextDouble()), Sweep.USUAL.clock(random.nextDouble()));
  }

  private Taper taper(Dimension unit) {
    double most = Units.range(unit).most();
    double from = most * random.nextDouble() * 0.9;
    double to = from + (most - from) * (0.01 + 0.9 * random.nextDouble());
    switch (random.nextInt(3)) {
      case 0 -> {
        return new Taper.Linear(to, from);
      }
      case 1 -> {
        return new Taper.Exponential(from + most * 1e-6, to + most * 2e-6);
      }
      default -> {
        return Taper.measured(points(from, to));
      }
    }
  }

  private List<Point> points(double from, double to) {
    List<Point> points = new ArrayList<>();
    int inner = random.nextInt(6);
    for (int i = 0; i <= inner + 1; i++) {
      double share = (double) i / (inner + 1);
      points.add(new Point(share, from + (to - from) * Math.pow(share, 1.5)));
    }
    return points;
  }

  private List<String> names(String start) {
    return IntStream.rangeClosed(0, random.nextInt(4))
        .mapToObj(i -> start + i + words.line(30))
        .toList();
  }

  @SafeVarargs
  private <T> T of(T... all) {
    return all[random.nextInt(all.length)];
  }
}
