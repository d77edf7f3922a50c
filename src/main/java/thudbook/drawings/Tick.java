package thudbook.drawings;

/**
 * A labelled place on an axis.
 *
 * @param at in the unit of the axis
 * @param rank where labels would touch, the one with the lower rank stays
 */
public record Tick(double at, String label, int rank) {}
