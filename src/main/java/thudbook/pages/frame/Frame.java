package thudbook.pages.frame;

/**
 * What every page has around its own content.
 *
 * @param title of the page, without the name of the notebook
 * @param section the part of the notebook that the page belongs to
 */
public record Frame(String title, Section section, AssetAddresses assets) {
  /** The parts of the notebook that the head of every page leads to. */
  public enum Section {
    RECIPES,
    GATES,
    EQUIPMENT,
    SESSIONS,
    SHARE,
    HELP,
    /** Belongs to none: a page that says what went wrong. */
    NONE
  }

  /** Whether a link of the head leads to where the reader is. */
  public boolean isIn(Section other) {
    return section == other;
  }
}
