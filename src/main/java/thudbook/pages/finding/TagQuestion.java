package thudbook.pages.finding;

/**
 * What has to be asked, or mended, before a tag gets a name.
 *
 * @param tag the tag
 * @param name what it was to be called
 * @param fault what is wrong with the name; empty: another tag has it
 * @param recipes how many recipes have the other tag
 */
public record TagQuestion(String tag, String name, String fault, int recipes) {}
