package thudbook.yardstick;

import java.util.List;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;

/**
 * Where tests of the core put channels together: an amplifier of one cell, threshold 0 V, ceiling 5
 * V, opening in 1 ms, release in 10 ms, leak −80 dB, no bleed, rail 10 V, and what differs from
 * that.
 */
public final class ChannelBuilder {
  private Response.Kind response = Response.Kind.AMPLITUDE;
  private Transfer transfer = Transfer.between(0, 5);
  private double openingSeconds = 1e-3;
  private List<Cell> cells = List.of(new Cell(1, 1e-2, null));
  private int poles = 1;
  private double spread = 1;
  private double closedHertz = 40;
  private double openHertz = 9000;
  private double levelExponent = 1;
  private double cutoffExponent = 1;
  private double saturation;
  private double leakDb = -80;
  private double bleedVolts;
  private double railVolts = 10;

  /** Begins with the amplifier. */
  public static ChannelBuilder amplifier() {
    return new ChannelBuilder();
  }

  /** The channel. */
  public Channel build() {
    return new Channel(
        "built",
        transfer,
        new Cells(openingSeconds, cells),
        built(),
        new Output(bleedVolts, railVolts));
  }

  private Response built() {
    return switch (response) {
      case BOTH -> new Response.Both(level(), filter());
      case AMPLITUDE -> new Response.Amplitude(level());
      case LOW_PASS -> new Response.LowPass(filter());
    };
  }

  private Level level() {
    return new Level(leakDb, levelExponent, saturation);
  }

  private Filter filter() {
    return new Filter(poles, spread, closedHertz, openHertz, cutoffExponent);
  }

  /** A transfer of one line. */
  public ChannelBuilder between(double thresholdVolts, double ceilingVolts) {
    return transfer(Transfer.between(thresholdVolts, ceilingVolts));
  }

  /** Any transfer. */
  public ChannelBuilder transfer(Transfer other) {
    transfer = other;
    return this;
  }

  /** The time constants of opening and of the one cell's release. */
  public ChannelBuilder times(double opening, double release) {
    openingSeconds = opening;
    return cells(List.of(new Cell(1, release, null)));
  }

  /** The cells. */
  public ChannelBuilder cells(List<Cell> other) {
    cells = other;
    return this;
  }

  /** Moves a filter too. */
  public ChannelBuilder filter(int count, double ratio, double closed, double open) {
    response = Response.Kind.BOTH;
    poles = count;
    spread = ratio;
    closedHertz = closed;
    openHertz = open;
    return this;
  }

  /** What the openness moves. */
  public ChannelBuilder response(Response.Kind other) {
    response = other;
    return this;
  }

  /** Exponents of level and cutoff, and saturation. */
  public ChannelBuilder bent(double level, double cutoffs, double k) {
    levelExponent = level;
    cutoffExponent = cutoffs;
    saturation = k;
    return this;
  }

  /** The level of the closed gate. */
  public ChannelBuilder leak(double decibels) {
    leakDb = decibels;
    return this;
  }

  /** The offset of the open gate, and where the output clips. */
  public ChannelBuilder output(double bleed, double rail) {
    bleedVolts = bleed;
    railVolts = rail;
    return this;
  }
}
