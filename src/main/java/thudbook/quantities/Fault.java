package thudbook.quantities;

/**
 * One thing that is wrong with an input, said so that a person can mend it.
 *
 * @param place where: a JSON pointer such as {@code /envelope/decay}, {@code ""} for the whole
 * @param line the line in a text document, from 1; 0 where there are no lines
 * @param code a stable word for programs, such as {@code out-of-range}
 * @param found what stood there, shortened if long
 * @param expected what may stand there
 * @param message the whole in one sentence
 */
public record Fault(
    String place, int line, String code, String found, String expected, String message) {}
