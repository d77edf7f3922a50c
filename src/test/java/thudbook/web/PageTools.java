package thudbook.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.graalvm.polyglot.Context;
import org.graalvm.polyglot.Engine;
import org.graalvm.polyglot.Source;
import org.graalvm.polyglot.Value;
import org.graalvm.polyglot.proxy.ProxyExecutable;

/**
 * Formatter and linter of scripts and style sheets. Both are libraries written for browsers, so
 * they run in an interpreter here: it needs nothing but the Java machine, and some seconds to get
 * warm.
 */
final class PageTools {
  private static final PageTools SHARED = new PageTools();
  private static final String WEBJARS = "/META-INF/resources/webjars/";
  private static final String FORMATTER = WEBJARS + "prettier/3.9.6/";
  private static final String LINTER = WEBJARS + "jshint/2.13.6/dist/jshint.js";

  /** Strict where a mistake hides, silent where the formatter decides. */
  private static final String RULES =
      """
      ({esversion: 11, module: true, browser: true, undef: true, unused: 'strict', latedef: 'nofunc',
        varstmt: true, eqeqeq: true, eqnull: true, curly: true, shadow: 'outer', nonbsp: true,
        futurehostile: true, noarg: true, nonew: false, maxdepth: 4, maxparams: 5,
        maxcomplexity: 15, maxerr: 500, laxbreak: true, loopfunc: true,
        predef: ['AbortController', 'AbortSignal']})
      """;

  /** Rules of a style sheet out of the tree that the formatter's parser makes of it. */
  private static final String READING =
      """
      (text) => {
        const rules = [];
        const classesIn = (node) => [
          ...(node.type === 'selector-class' ? [node.value] : []),
          ...(node.nodes ?? []).flatMap(classesIn),
        ];
        const compounds = (selector) => selector.nodes.reduce((all, part) => {
          if (part.type === 'selector-combinator') {
            all.push([]);
          } else if (part.type === 'selector-class') {
            all[all.length - 1].push(part.value);
          }
          return all;
        }, [[]]);
        const walk = (node, conditions) => {
          for (const each of node.nodes ?? []) {
            if (each.type === 'css-rule') {
              rules.push({
                conditions,
                selectors: each.selector.nodes.map(compounds),
                classes: classesIn(each.selector),
                declarations: each.nodes.filter(decl => decl.type === 'css-decl')
                    .map(decl => text.slice(decl.source.startOffset, decl.source.endOffset)),
              });
            } else if (each.type === 'css-atrule') {
              walk(each, [...conditions, text.slice(each.source.startOffset).split('{', 1)[0]]);
            }
          }
        };
        walk(prettierPlugins.postcss.parsers.css.parse(text, {}), []);
        return rules;
      }
      """;

  private final Engine engine =
      Engine.newBuilder("js").option("engine.WarnInterpreterOnly", "false").build();
  private final Context context =
      Context.newBuilder("js").engine(engine).option("js.ecmascript-version", "2022").build();

  private final Set<String> loaded = new HashSet<>();

  /** What formats; loaded when it is first asked for. */
  private Value format;

  /** What reads style sheets; loaded when it is first asked for. */
  private Value read;

  /** What finds mistakes; loaded when it is first asked for. */
  private Value lint;

  private PageTools() {}

  /** The tools of this test run: they get warm only once. */
  static PageTools shared() {
    return SHARED;
  }

  /**
   * A file as it should be written.
   *
   * @param name of the file, whose ending tells its language
   * @throws AssertionError if the file can't be read as its language
   */
  String formatted(String name, String text) throws IOException {
    if (format == null) {
      load(FORMATTER + "standalone.js");
      for (String plugin : List.of("acorn", "estree", "postcss")) {
        load(FORMATTER + "plugins/" + plugin + ".js");
      }
      format =
          context.eval(
              "js",
              """
              (text, parser, done, failed) => prettier.format(text, {
                parser, printWidth: 100, singleQuote: parser !== 'css',
                plugins: [prettierPlugins.acorn, prettierPlugins.estree, prettierPlugins.postcss],
              }).then(done, failed)
              """);
    }
    List<String> formatted = new ArrayList<>();
    ProxyExecutable done = results -> formatted.add(results[0].asString());
    ProxyExecutable failed =
        errors -> {
          throw new AssertionError(name + ": " + errors[0]);
        };
    // What is promised to the caller is kept before the call returns: nothing here waits.
    format.executeVoid(text, name.endsWith(".css") ? "css" : "acorn", done, failed);
    return formatted.get(0);
  }

  /** What is wrong with a script, a line each. */
  List<String> complaints(String text) throws IOException {
    if (lint == null) {
      load(LINTER);
      lint =
          context.eval(
              "js",
              "(text) => { JSHINT(text, "
                  + RULES.strip()
                  + "); return JSHINT.errors.map(e => `line ${e.line}: ${e.reason} (${e.code})`); }");
    }
    return strings(lint.execute(text));
  }

  /** The rules of a style sheet, in their order, those inside of conditions too. */
  List<StyleRule> rules(String text) throws IOException {
    if (read == null) {
      load(FORMATTER + "plugins/postcss.js");
      read = context.eval("js", READING);
    }
    Value found = read.execute(text);
    List<StyleRule> rules = new ArrayList<>();
    for (Value rule : elements(found)) {
      rules.add(
          new StyleRule(
              strings(rule.getMember("conditions")),
              elements(rule.getMember("selectors")).stream()
                  .map(selector -> elements(selector).stream().map(PageTools::strings).toList())
                  .toList(),
              strings(rule.getMember("classes")),
              strings(rule.getMember("declarations"))));
    }
    return rules;
  }

  private static List<Value> elements(Value array) {
    List<Value> elements = new ArrayList<>();
    for (long i = 0; i < array.getArraySize(); i++) {
      elements.add(array.getArrayElement(i));
    }
    return elements;
  }

  private static List<String> strings(Value array) {
    return elements(array).stream().map(Value::asString).toList();
  }

  private void load(String resource) throws IOException {
    if (!loaded.add(resource)) {
      return;
    }
    try (InputStream in = PageTools.class.getResourceAsStream(resource)) {
      String code = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      context.eval(Source.newBuilder("js", code, resource).build());
    }
  }

  /**
   * A rule of a style sheet.
   *
   * @param conditions the at-rules around it, from outside in
   * @param selectors each as its compounds from left to right, of which only the classes are told
   * @param classes all classes that its selectors name, also inside of functions
   * @param declarations each as it is written, such as {@code margin: 0}
   */
  record StyleRule(
      List<String> conditions,
      List<List<List<String>>> selectors,
      List<String> classes,
      List<String> declarations) {
    /** The classes that it styles: of each selector those that stand nearest to its end. */
    List<String> styled() {
      List<String> styled = new ArrayList<>();
      for (List<List<String>> compounds : selectors) {
        for (int i = compounds.size() - 1; i >= 0; i--) {
          if (!compounds.get(i).isEmpty()) {
            styled.addAll(compounds.get(i));
            break;
          }
        }
      }
      return styled;
    }
  }
}
