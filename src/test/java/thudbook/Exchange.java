package thudbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Speaks HTTP over a plain socket, so that a test can send what well-behaved clients refuse to:
 * foreign hosts, broken bodies, chunks of its own.
 */
public final class Exchange {
  private final int port;
  private final String start;
  private final Map<String, String> headers = new LinkedHashMap<>();
  private byte[] body = new byte[0];
  private boolean chunked;

  private Exchange(int port, String start) {
    this.port = port;
    this.start = start;
    headers.put("Host", "127.0.0.1:" + port);
    headers.put("Connection", "close");
  }

  /** A request, such as {@code request(port, "GET", "/health")}. */
  public static Exchange request(int port, String method, String target) {
    return new Exchange(port, method + " " + target + " HTTP/1.1\r\n");
  }

  /** The answer to a plain GET. */
  public static Answer get(int port, String target) throws IOException {
    return request(port, "GET", target).send();
  }

  /** Sets a header; null leaves it out. */
  public Exchange header(String name, String value) {
    if (value == null) {
      headers.remove(name);
    } else {
      headers.put(name, value);
    }
    return this;
  }

  /** Sends a body with its length. */
  public Exchange body(String type, byte[] content) {
    body = content;
    return header("Content-Type", type).header("Content-Length", String.valueOf(content.length));
  }

  /** Sends a body in chunks, without saying how long it will be. */
  public Exchange chunks(String type, byte[] content) {
    body = content;
    chunked = true;
    return header("Content-Type", type).header("Transfer-Encoding", "chunked");
  }

  /** The answer. */
  public Answer send() throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
      socket.setSoTimeout(30_000);
      StringBuilder head = new StringBuilder(start);
      headers.forEach((name, value) -> head.append(name + ": " + value + "\r\n"));
      ByteArrayOutputStream sent = new ByteArrayOutputStream();
      sent.writeBytes(head.append("\r\n").toString().getBytes(StandardCharsets.UTF_8));
      if (chunked) {
        sent.writeBytes(
            (Integer.toHexString(body.length) + "\r\n").getBytes(StandardCharsets.US_ASCII));
        sent.writeBytes(body);
        sent.writeBytes("\r\n0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
      } else {
        sent.writeBytes(body);
      }
      try {
        socket.getOutputStream().write(sent.toByteArray());
      } catch (IOException e) {
        // The server may have answered and closed before it took the whole body.
      }
      return Answer.read(socket.getInputStream());
    }
  }

  /** An answer; header names in lower case. */
  @SuppressWarnings("ArrayRecordComponent") // answers are not compared as a whole
  public record Answer(int status, Map<String, String> headers, byte[] bytes) {
    /** The body as text. */
    public String text() {
      return new String(bytes, StandardCharsets.UTF_8);
    }

    /** A header, or null. */
    public String header(String name) {
      return headers.get(name.toLowerCase(Locale.ROOT));
    }

    static Answer read(InputStream in) throws IOException {
      String[] head = head(in).split("\r\n", -1);
      Map<String, String> headers = new TreeMap<>();
      for (int i = 1; i < head.length; i++) {
        int colon = head[i].indexOf(':');
        headers.put(
            head[i].substring(0, colon).toLowerCase(Locale.ROOT),
            head[i].substring(colon + 1).trim());
      }
      byte[] body = in.readAllBytes();
      if ("chunked".equals(headers.get("transfer-encoding"))) {
        body = unchunked(body);
      }
      return new Answer(Integer.parseInt(head[0].split(" ", -1)[1]), headers, body);
    }

    private static String head(InputStream in) throws IOException {
      StringBuilder head = new StringBuilder();
      while (head.indexOf("\r\n\r\n") < 0) {
        int next = in.read();
        if (next < 0) {
          throw new IOException("the answer ended within its head: " + head);
        }
        head.append((char) next);
      }
      return head.toString().trim();
    }

    private static byte[] unchunked(byte[] raw) {
      ByteArrayOutputStream whole = new ByteArrayOutputStream();
      int at = 0;
      while (true) {
        int end = at;
        while (raw[end] != '\r') {
          end++;
        }
        int length = Integer.parseInt(new String(raw, at, end - at, StandardCharsets.US_ASCII), 16);
        if (length == 0) {
          return whole.toByteArray();
        }
        whole.write(raw, end + 2, length);
        at = end + 2 + length + 2;
      }
    }
  }
}
