package thudbook.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Fault;

/** Writes errors for programs. Source: RFC 9457, problem details for HTTP APIs. */
final class Problem {
  static final String MEDIA_TYPE = "application/problem+json";

  private static final ObjectMapper JSON = new ObjectMapper();

  private Problem() {}

  /**
   * The problem as JSON: {@code type}, {@code title}, {@code status}, {@code detail}, {@code
   * errors} with one entry per fault, and for an error of ours {@code requestId}.
   */
  static String json(ErrorKind kind, List<Fault> faults, @Nullable String requestId) {
    ObjectNode problem = JSON.createObjectNode();
    problem.put("type", kind.type());
    problem.put("title", kind.title());
    problem.put("status", kind.status());
    problem.put("detail", faults.size() == 1 ? faults.get(0).message() : kind.meaning());
    ArrayNode errors = problem.putArray("errors");
    for (Fault fault : faults) {
      errors
          .addObject()
          .put("pointer", fault.place())
          .put("code", fault.code())
          .put("found", fault.found())
          .put("expected", fault.expected())
          .put("message", fault.message());
    }
    if (requestId != null) {
      problem.put("requestId", requestId);
    }
    try {
      return JSON.writeValueAsString(problem);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
