package thudbook.drawings;

/**
 * A line down through all panels at one time.
 *
 * @param at in the unit of the x axis
 */
public record Moment(double at, String label) {}
