package thudbook.web;

/** Ends a request with one kind of error; nothing of it is logged. */
public final class HttpError extends RuntimeException {
  private final ErrorKind kind;

  /** An error of this kind. */
  public HttpError(ErrorKind kind) {
    super(kind.slug(), null, false, false);
    this.kind = kind;
  }

  /** What kind of error this is. */
  public ErrorKind kind() {
    return kind;
  }
}
