package thudbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A forwarding proxy that holds back the first answer to one address until it is told to let it go.
 * One request a connection; every other one passes as it is.
 */
final class HeldAnswer implements AutoCloseable {
  private final ServerSocket socket = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
  private final int target;
  private final String held;
  private final AtomicInteger asked = new AtomicInteger();
  private final CountDownLatch letGo = new CountDownLatch(1);
  private final CountDownLatch gone = new CountDownLatch(1);

  /**
   * Begins to forward.
   *
   * @param target port of the server
   * @param held the start of the request line whose first answer is held, such as {@code POST /a}
   */
  HeldAnswer(int target, String held) throws IOException {
    this.target = target;
    this.held = held;
    Thread accepting = new Thread(this::accept, "proxy");
    accepting.setDaemon(true);
    accepting.start();
  }

  int port() {
    return socket.getLocalPort();
  }

  /** How often the address was asked for. */
  int asked() {
    return asked.get();
  }

  /** Lets the first answer go, and waits until it has gone or nobody takes it any more. */
  void letGo() throws InterruptedException {
    letGo.countDown();
    gone.await();
  }

  private void accept() {
    while (true) {
      try {
        Socket browser = socket.accept();
        Thread forwarding = new Thread(() -> forward(browser), "proxy-connection");
        forwarding.setDaemon(true);
        forwarding.start();
      } catch (IOException closed) {
        return;
      }
    }
  }

  private void forward(Socket browser) {
    boolean first = false;
    try (browser;
        Socket server = new Socket(InetAddress.getLoopbackAddress(), target)) {
      byte[] request = request(browser.getInputStream());
      String text = new String(request, StandardCharsets.ISO_8859_1);
      first = text.startsWith(held) && asked.incrementAndGet() == 1;
      server.getOutputStream().write(request);
      byte[] answer = server.getInputStream().readAllBytes();
      if (first) {
        letGo.await();
      }
      OutputStream out = browser.getOutputStream();
      out.write(answer);
      out.flush();
    } catch (SocketException e) {
      // The browser has given it up.
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    } finally {
      if (first) {
        gone.countDown();
      }
    }
  }

  /** A whole request, told to be the last of its connection, under the server's own name. */
  private byte[] request(InputStream in) throws IOException {
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    while (!head.toString(StandardCharsets.ISO_8859_1).endsWith("\r\n\r\n")) {
      int next = in.read();
      if (next < 0) {
        throw new SocketException("the browser opened a connection and asked for nothing");
      }
      head.write(next);
    }
    String text = head.toString(StandardCharsets.ISO_8859_1);
    int length = 0;
    StringBuilder passed = new StringBuilder();
    for (String line : text.strip().split("\r\n", -1)) {
      if (line.regionMatches(true, 0, "content-length:", 0, 15)) {
        length = Integer.parseInt(line.substring(15).strip());
      }
      if (!line.regionMatches(true, 0, "connection:", 0, 11)) {
        passed.append(line.replace(":" + port(), ":" + target)).append("\r\n");
      }
    }
    ByteArrayOutputStream request = new ByteArrayOutputStream();
    request.writeBytes(
        (passed + "Connection: close\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
    request.writeBytes(in.readNBytes(length));
    return request.toByteArray();
  }

  @Override
  public void close() throws IOException {
    letGo.countDown();
    socket.close();
  }
}
