package thudbook.pages.frame;

import java.util.List;
import org.commonmark.Extension;
import org.commonmark.ext.autolink.AutolinkExtension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * Notes, written in CommonMark with tables, as HTML that is safe to put on a page: raw HTML is
 * shown as text, addresses pass {@link Addresses}, and headings stand below those of the page.
 */
public final class Notes {
  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), AutolinkExtension.create());
  private static final Parser PARSER = Parser.builder().extensions(EXTENSIONS).build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder()
          .extensions(EXTENSIONS)
          .escapeHtml(true)
          .sanitizeUrls(true)
          .urlSanitizer(new Addresses())
          .build();

  /** A note's own headings start two below the page's title. */
  private static final int HEADINGS_BELOW = 2;

  private static final int DEEPEST_HEADING = 6;

  private Notes() {}

  /** The notes as HTML; empty if there are none. */
  public static String html(String commonMark) {
    Node document = PARSER.parse(commonMark);
    document.accept(new Mending());
    return RENDERER.render(document);
  }

  /** Lowers headings; leaves the words of links and pictures whose address is refused. */
  private static final class Mending extends AbstractVisitor {
    @Override
    public void visit(Heading heading) {
      heading.setLevel(Math.min(DEEPEST_HEADING, heading.getLevel() + HEADINGS_BELOW));
      visitChildren(heading);
    }

    @Override
    public void visit(Link link) {
      visitChildren(link);
      if (!Addresses.mayLinkTo(link.getDestination())) {
        unwrap(link);
      }
    }

    @Override
    public void visit(Image image) {
      visitChildren(image);
      if (!Addresses.mayShow(image.getDestination())) {
        image.insertBefore(new Text("[picture: "));
        image.insertAfter(new Text("]"));
        unwrap(image);
      }
    }

    private static void unwrap(Node node) {
      Node child = node.getFirstChild();
      while (child != null) {
        Node next = child.getNext();
        node.insertBefore(child);
        child = next;
      }
      node.unlink();
    }
  }
}
