package thudbook.pages.frame;

/** Where a browser finds the files of {@code web/assets} and of the libraries. */
@FunctionalInterface
public interface AssetAddresses {
  /**
   * The address of a file, with whatever lets a browser keep it for ever.
   *
   * @param name its path below {@code web/assets}, such as {@code site.css}
   */
  String of(String name);
}
