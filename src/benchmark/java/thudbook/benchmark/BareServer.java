package thudbook.benchmark;

import io.javalin.Javalin;

/** A server that knows one word: what a start costs before anything of ours. */
final class BareServer {
  private BareServer() {}

  /** Serves on a free port and prints its address. */
  public static void main(String[] none) {
    Javalin server =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.routes.get("/", context -> context.result("bare"));
            });
    server.start("127.0.0.1", 0);
    System.out.println("ready at http://127.0.0.1:" + server.port() + "/");
  }
}
