package thudbook.wording;

import thudbook.library.Quantity;

/** Numbers that are searched by, in words. */
public final class QuantityWords {
  private QuantityWords() {}

  /** What it is called, with a capital. */
  public static String name(Quantity quantity) {
    return quantity
        .metric()
        .map(metric -> MetricWords.of(metric).name())
        .orElseGet(() -> setting(quantity));
  }

  private static String setting(Quantity quantity) {
    return switch (quantity) {
      case INDEX -> "Modulation index";
      case PEAK -> "Envelope peak";
      case DECAY -> "Envelope decay";
      case CARRIER -> "Carrier or frequency";
      default -> throw new IllegalArgumentException("a metric: " + quantity);
    };
  }

  /** A value of it as people read it. */
  public static String said(Quantity quantity, double si) {
    return switch (quantity.dimension()) {
      case TIME -> ReadableNumbers.seconds(si);
      case VOLTAGE -> ReadableNumbers.volts(si);
      case LEVEL -> ReadableNumbers.decibels(si);
      case FREQUENCY -> ReadableNumbers.hertz(si);
      case SHARE -> ReadableNumbers.share(si);
      default -> ReadableNumbers.significant(si);
    };
  }
}
