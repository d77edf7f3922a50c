package thudbook.pages.frame;

import thudbook.changes.Revision;
import thudbook.wording.TimeOfRecord;

/**
 * What stands above a thing as it was.
 *
 * @param newest the number of the revision that counts today
 * @param address of the thing as it is
 * @param comparison address of the comparison with today; empty: there is none
 * @param version what an act on it has to name; 0: it is in the bin, there is none
 */
public record RevisionBanner(
    int number,
    int newest,
    TimeOfRecord at,
    String author,
    String what,
    String address,
    String comparison,
    long version) {

  public static RevisionBanner of(
      Revision<?> revision, int newest, String address, String comparison, long version) {
    return new RevisionBanner(
        revision.number(),
        newest,
        TimeOfRecord.of(revision.at()),
        revision.author().name(),
        revision.what(),
        address,
        comparison,
        version);
  }

  /** Whether it is what counts today. */
  public boolean current() {
    return number == newest;
  }
}
