package thudbook.commands;

import java.io.IOException;
import java.net.URI;
import thudbook.settings.Settings;

/** A notebook that is being served. */
public interface Served extends AutoCloseable {
  /** Where it is reached, with a slash at the end. */
  URI url();

  /** Finishes what is being answered, then what is being written. */
  @Override
  void close();

  /** Opens a notebook. */
  @FunctionalInterface
  interface Opening {
    /**
     * Opens the data folder that the settings name, loads the samples if it is new, and serves.
     *
     * @throws thudbook.quantities.Refusal if the folder can't be opened
     * @throws IOException if the port is taken
     */
    Served open(Settings settings) throws IOException;
  }
}
