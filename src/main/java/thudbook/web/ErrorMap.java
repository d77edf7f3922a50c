package thudbook.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.MethodNotAllowedResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.io.EofException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * The one place that turns errors into answers: problem details under {@code /api} and for {@code
 * /health}, pages elsewhere. What is nobody's refusal is logged with a request id and answered
 * without a word about its inside.
 */
final class ErrorMap {
  private static final Logger LOG = LoggerFactory.getLogger(ErrorMap.class);

  private final ErrorPage page;
  private final Supplier<String> requestIds;

  ErrorMap(ErrorPage page, Supplier<String> requestIds) {
    this.page = page;
    this.requestIds = requestIds;
  }

  void addTo(JavalinConfig config) {
    config.routes.exception(
        Refusal.class,
        (refusal, ctx) -> answer(ctx, ErrorKind.of(refusal.kind()), refusal.faults(), null));
    config.routes.exception(
        HttpError.class, (error, ctx) -> answer(ctx, error.kind(), List.of(), null));
    config.routes.exception(
        MethodNotAllowedResponse.class,
        (error, ctx) -> {
          ctx.header("Allow", allowed(error));
          answer(ctx, ErrorKind.METHOD_NOT_ALLOWED, List.of(), null);
        });
    config.routes.exception(
        HttpResponseException.class,
        (error, ctx) -> answer(ctx, ErrorKind.ofStatus(error.getStatus()), List.of(), null));
    config.routes.exception(
        HttpException.RuntimeException.class,
        (error, ctx) -> answer(ctx, ErrorKind.ofStatus(error.getCode()), List.of(), null));
    // The reader has gone: there is nobody to answer and nothing of ours to log.
    config.routes.exception(EofException.class, (error, ctx) -> ctx.status(400));
    config.routes.exception(Exception.class, this::internal);
    config.router.javaLangErrorHandler(
        (response, error) -> {
          LOG.error("request {} failed", requestIds.get(), error);
          response.setStatus(500);
        });
  }

  private void internal(Exception error, Context ctx) {
    String requestId = requestIds.get();
    LOG.error(
        "request {} failed: {} {}", requestId, ctx.method(), ctx.req().getRequestURI(), error);
    answer(ctx, ErrorKind.INTERNAL, List.of(), requestId);
  }

  private void answer(Context ctx, ErrorKind kind, List<Fault> faults, @Nullable String requestId) {
    ctx.status(kind.status()).header("Cache-Control", "no-store").removeHeader("ETag");
    if (isForPrograms(ctx.path())) {
      // As bytes: a text would be sent in the container's charset, and JSON is UTF-8 (RFC 8259,
      // 8.1).
      ctx.contentType(Problem.MEDIA_TYPE)
          .result(Problem.json(kind, faults, requestId).getBytes(StandardCharsets.UTF_8));
    } else {
      ctx.html(drawn(kind, faults, requestId));
    }
  }

  /** The page, or the barest one if drawing it fails: an error must not hide behind another. */
  private String drawn(ErrorKind kind, List<Fault> faults, @Nullable String requestId) {
    try {
      return page.html(kind, faults, requestId);
    } catch (RuntimeException e) {
      LOG.error("the page of an error failed", e);
      return "<!doctype html><html lang=\"en\"><title>"
          + kind.title()
          + "</title><h1>"
          + kind.title()
          + "</h1><p>"
          + kind.meaning()
          + "</p></html>";
    }
  }

  private static boolean isForPrograms(String path) {
    return path.equals("/api") || path.startsWith("/api/") || path.equals("/health");
  }

  private static String allowed(MethodNotAllowedResponse error) {
    String methods = error.getDetails().getOrDefault("availableMethods", "GET");
    return methods.contains("GET") && !methods.contains("HEAD") ? methods + ", HEAD" : methods;
  }
}
