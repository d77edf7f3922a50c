package thudbook.benchmark;

import java.nio.file.Path;
import java.util.List;

/** Something that is measured on processes rather than methods. */
interface Measurement {
  /**
   * Measures.
   *
   * @param folder an empty folder that may be filled
   */
  List<Figure> measure(Path folder) throws Exception;
}
