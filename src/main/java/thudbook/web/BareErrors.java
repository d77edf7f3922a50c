package thudbook.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/**
 * Answers what never becomes a request of ours, such as an unreadable header: problem details with
 * the security headers, and nothing about the server.
 */
final class BareErrors extends ErrorHandler {
  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    byte[] body = body(response.getStatus(), response.getHeaders());
    response.write(true, ByteBuffer.wrap(body), callback);
    return true;
  }

  private static byte[] body(int status, HttpFields.Mutable headers) {
    byte[] body =
        Problem.json(ErrorKind.ofStatus(status), List.of(), null).getBytes(StandardCharsets.UTF_8);
    SecurityHeaders.VALUES.forEach(headers::put);
    headers.put(HttpHeader.CONTENT_TYPE, Problem.MEDIA_TYPE);
    headers.put(HttpHeader.CACHE_CONTROL, "no-store");
    headers.put(HttpHeader.CONTENT_LENGTH, body.length);
    return body;
  }
}
