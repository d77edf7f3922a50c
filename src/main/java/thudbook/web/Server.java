package thudbook.web;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.util.JavalinBindException;
import jakarta.servlet.DispatcherType;
import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.util.EnumSet;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.jetty.ee10.servlet.FilterHolder;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import org.jspecify.annotations.Nullable;

/** The HTTP server: one socket on loopback, guarded routes, and a graceful end. */
public final class Server implements AutoCloseable {
  /** How long a stop waits for requests that are being answered. */
  private static final long STOP_MILLISECONDS = 5_000;

  private final Javalin javalin;
  private final Address address;

  private Server(Javalin javalin, Address address) {
    this.javalin = javalin;
    this.address = address;
  }

  /**
   * Where and how to serve.
   *
   * @param listen a loopback address
   * @param port 0 to 65535; 0 takes a free one
   * @param baseUrl an address under which the server is also reached; null: none
   * @param bodyLimit largest body of a request in bytes
   */
  public record Address(InetAddress listen, int port, @Nullable URI baseUrl, long bodyLimit) {
    public Address {
      if (!listen.isLoopbackAddress()) {
        throw new IllegalArgumentException("a loopback address was expected, found " + listen);
      }
    }
  }

  /**
   * Starts serving.
   *
   * @param errorPage draws errors for people
   * @param requestIds gives each error of ours a name of its own
   * @param routes adds the routes
   * @throws IOException if the port is taken
   */
  public static Server start(
      Address address,
      ErrorPage errorPage,
      Supplier<String> requestIds,
      Consumer<JavalinConfig> routes)
      throws IOException {
    Javalin javalin =
        Javalin.create(
            config -> {
              settings(config, address);
              Origins origins = new Origins(address.baseUrl());
              config.routes.before(origins::check);
              config.routes.before(Visitors::meet);
              new ErrorMap(errorPage, requestIds).addTo(config);
              routes.accept(config);
            });
    try {
      javalin.start();
    } catch (JavalinBindException e) {
      throw new IOException("port " + address.port() + " is in use: choose another with --port", e);
    }
    return new Server(javalin, address);
  }

  private static void settings(JavalinConfig config, Address address) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = address.bodyLimit();
    // The library bounds bodies only where it reads them as a whole; multipart is read in parts,
    // which stay in memory, so that nothing is left behind in a folder that others share.
    config.jetty.multipartConfig.maxTotalRequestSize(address.bodyLimit(), SizeUnit.BYTES);
    config.jetty.multipartConfig.maxFileSize(address.bodyLimit(), SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize(
        (int) Math.min(Integer.MAX_VALUE, address.bodyLimit()), SizeUnit.BYTES);
    config.http.prefer405over404 = true;
    // Loopback gains nothing from squeezing answers; assets bring their own squeezed form.
    config.http.compressionStrategy = CompressionStrategy.NONE;
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.addCustomizer(
              (request, answer) -> {
                SecurityHeaders.VALUES.forEach(answer::put);
                return request;
              });
        });
    config.jetty.addConnector(
        (server, http) -> {
          ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
          connector.setHost(address.listen().getHostAddress());
          connector.setPort(address.port());
          return connector;
        });
    config.jetty.modifyServletContextHandler(
        context -> {
          context.setMaxFormKeys(Uploads.MOST_PARTS);
          context.addFilter(
              new FilterHolder(new HeadAsGet()), "/*", EnumSet.of(DispatcherType.REQUEST));
        });
    config.jetty.modifyServer(
        server -> {
          server.setStopTimeout(STOP_MILLISECONDS);
          server.setErrorHandler(new BareErrors());
        });
  }

  /** The port that is listened on. */
  public int port() {
    return javalin.port();
  }

  /** Where the server is reached, with a slash at the end. */
  public URI url() {
    String host = address.listen().getHostAddress();
    return URI.create(
        "http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port() + "/");
  }

  /** Takes no further requests, and waits up to five seconds for those being answered. */
  @Override
  public void close() {
    javalin.stop();
  }
}
