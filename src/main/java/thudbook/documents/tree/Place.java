package thudbook.documents.tree;

/**
 * Where something stands in a document.
 *
 * @param line from 1; 0 in JSON
 * @param pointer JSON pointer (RFC 6901), {@code ""} for the whole
 */
public record Place(int line, String pointer) {
  public Place key(String key, int keyLine) {
    return new Place(keyLine, pointer + "/" + key.replace("~", "~0").replace("/", "~1"));
  }

  public Place item(int index, int itemLine) {
    return new Place(itemLine, pointer + "/" + index);
  }

  /** The same place in another line. */
  Place at(int otherLine) {
    return new Place(otherLine, pointer);
  }

  /** The line alone. */
  Place inWhole() {
    return new Place(line, "");
  }

  /** The pointer as one says it: {@code envelope.decay}. */
  String words() {
    return pointer.isEmpty()
        ? ""
        : pointer.substring(1).replace('/', '.').replace("~1", "/").replace("~0", "~");
  }
}
