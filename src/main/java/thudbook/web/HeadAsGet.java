package thudbook.web;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import java.io.IOException;

/**
 * Shows HEAD to the routes as GET, so that its status and headers are those of GET. The connection
 * still knows the method and sends no body.
 */
final class HeadAsGet implements Filter {
  @Override
  public void doFilter(ServletRequest request, ServletResponse answer, FilterChain chain)
      throws IOException, ServletException {
    HttpServletRequest http = (HttpServletRequest) request;
    chain.doFilter(http.getMethod().equals("HEAD") ? new Got(http) : http, answer);
  }

  private static final class Got extends HttpServletRequestWrapper {
    Got(HttpServletRequest head) {
      super(head);
    }

    @Override
    public String getMethod() {
      return "GET";
    }
  }
}
