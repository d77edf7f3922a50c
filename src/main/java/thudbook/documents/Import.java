package thudbook.documents;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act.GateWrite;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.Act.RecipeWrite;
import thudbook.recipes.Gates;
import thudbook.recipes.Modules;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.Session;
import thudbook.sessions.SessionStore;
import thudbook.sessions.Sessions;

/**
 * What would happen if documents were taken into a notebook. Nothing is written here: a person
 * looks at it first.
 */
public record Import(List<Entry> entries) {
  public Import {
    entries = List.copyOf(entries);
  }

  /** What a document is to the notebook. */
  public enum Kind {
    /** The notebook does not have it. */
    NEW,
    /** The notebook has it with the very same text. */
    SAME,
    /** The notebook has it with another text. */
    CHANGES,
    /** Something is in the way. */
    CONFLICT
  }

  /**
   * A document and what it is to the notebook.
   *
   * @param title of what it says
   * @param slug its name in addresses
   * @param details what changes, or what is in the way, a sentence each
   * @param notes what a reader should be told
   * @param version the version that it would change; null: none
   */
  public record Entry(
      String file,
      Documents.Noun noun,
      String title,
      String slug,
      Kind kind,
      List<String> details,
      List<String> notes,
      @Nullable Long version) {
    public Entry {
      details = List.copyOf(details);
      notes = List.copyOf(notes);
    }

    /** Whether importing it would do something. */
    public boolean canBeTaken() {
      return kind == Kind.NEW || kind == Kind.CHANGES;
    }

    /** What it is called: {@code gate}. */
    public String word() {
      return noun.word();
    }
  }

  /** Compares documents with a notebook. */
  public static Import of(
      List<Incoming> documents,
      RecipeStore recipes,
      GateStore gates,
      ModuleStore modules,
      SessionStore sessions) {
    Comparison comparison = new Comparison(recipes, gates, modules, sessions);
    return new Import(documents.stream().map(comparison::entry).toList());
  }

  /** How many documents there are of a kind. */
  public long count(Kind kind) {
    return entries.stream().filter(entry -> entry.kind() == kind).count();
  }

  /** The gates among some entries, ready to be written. */
  public static List<GateWrite> gates(List<Entry> taken) {
    List<GateWrite> writes = new ArrayList<>();
    for (Entry entry : taken) {
      if (entry.noun() instanceof Documents.AGate gate) {
        writes.add(new GateWrite(gate.gate(), Documents.write(gate.gate()), entry.version()));
      }
    }
    return writes;
  }

  /** The recipes among some entries, ready to be predicted and written. */
  public static List<RecipeWrite> recipes(List<Entry> taken) {
    List<RecipeWrite> writes = new ArrayList<>();
    for (Entry entry : taken) {
      if (entry.noun() instanceof Documents.ARecipe recipe) {
        writes.add(
            new RecipeWrite(
                recipe.recipe(), Documents.write(recipe.recipe()), entry.version(), null));
      }
    }
    return writes;
  }

  /** The modules and sessions among some entries, ready to be written. */
  public static List<PlainWrite> plain(List<Entry> taken) {
    List<PlainWrite> writes = new ArrayList<>();
    for (Entry entry : taken) {
      if (entry.noun() instanceof Documents.AModule module) {
        writes.add(new Modules.Written(module.module(), module.text()).write(entry.version()));
      } else if (entry.noun() instanceof Documents.ASession session) {
        writes.add(new Sessions.Written(session.session(), session.text()).write(entry.version()));
      }
    }
    return writes;
  }

  /** Compares one document after the other, each also with those before it. */
  private static final class Comparison {
    private final RecipeStore recipes;
    private final GateStore gates;
    private final ModuleStore modules;
    private final SessionStore sessions;
    private final Set<String> seen = new HashSet<>();

    Comparison(RecipeStore recipes, GateStore gates, ModuleStore modules, SessionStore sessions) {
      this.recipes = recipes;
      this.gates = gates;
      this.modules = modules;
      this.sessions = sessions;
    }

    Entry entry(Incoming document) {
      if (document.noun() instanceof Documents.ARecipe recipe) {
        return recipe(document, recipe.recipe());
      } else if (document.noun() instanceof Documents.AGate gate) {
        return gate(document, gate.gate());
      } else if (document.noun() instanceof Documents.AModule module) {
        return module(document, module.module());
      }
      return session(document, ((Documents.ASession) document.noun()).session());
    }

    private Entry recipe(Incoming document, Recipe recipe) {
      RecipeStore.Stored there = recipes.find(recipe.id().toString()).orElse(null);
      RecipeStore.Stored named = recipes.find(recipe.slug()).orElse(null);
      List<String> inTheWay = inThisParcel("recipe", recipe.id(), recipe.slug());
      if (named != null && !named.recipe().id().equals(recipe.id())) {
        inTheWay.add(taken(recipe.slug(), named.recipe().title()));
      } else if (named == null && Slugs.isKept(recipe.slug())) {
        inTheWay.add(kept(recipe.slug()));
      }
      if (there != null && there.binnedAt() != null) {
        inTheWay.add("It is in the bin: take it out first.");
      }
      boolean same = there != null && there.document().equals(Documents.write(recipe));
      return new Entry(
          document.file(),
          document.noun(),
          recipe.title(),
          recipe.slug(),
          kind(inTheWay, there != null, same),
          there == null || !inTheWay.isEmpty()
              ? inTheWay
              : DifferenceWords.sentences(there.recipe(), recipe),
          document.notes(),
          there == null ? null : there.version());
    }

    private Entry gate(Incoming document, Gate gate) {
      GateStore.Stored there = gates.find(gate.id().toString()).orElse(null);
      GateStore.Stored named = gates.find(gate.slug()).orElse(null);
      List<String> inTheWay = inThisParcel("gate", gate.id(), gate.slug());
      if (named != null && !named.gate().id().equals(gate.id())) {
        inTheWay.add(taken(gate.slug(), named.gate().title()));
      } else if (named == null && Slugs.isKept(gate.slug())) {
        inTheWay.add(kept(gate.slug()));
      }
      if (there != null && there.binnedAt() != null) {
        inTheWay.add("It is in the bin: take it out first.");
      } else if (there != null) {
        inTheWay.addAll(lost(there.gate(), gate));
      }
      boolean same = there != null && there.document().equals(Documents.write(gate));
      return new Entry(
          document.file(),
          document.noun(),
          gate.title(),
          gate.slug(),
          kind(inTheWay, there != null, same),
          there == null || !inTheWay.isEmpty()
              ? inTheWay
              : DifferenceWords.sentences(there.gate(), gate),
          document.notes(),
          there == null ? null : there.version());
    }

    private Entry module(Incoming document, Module module) {
      ModuleStore.Stored there = modules.find(module.id().toString()).orElse(null);
      ModuleStore.Stored named = modules.find(module.slug()).orElse(null);
      List<String> inTheWay = inThisParcel("module", module.id(), module.slug());
      if (named != null && !named.module().id().equals(module.id())) {
        inTheWay.add(taken(module.slug(), named.module().title()));
      } else if (named == null && Slugs.isKept(module.slug())) {
        inTheWay.add(kept(module.slug()));
      }
      if (there != null && there.binnedAt() != null) {
        inTheWay.add("It is in the bin: take it out first.");
      }
      Modules.sameLabel(modules, module)
          .ifPresent(other -> inTheWay.add(labelTaken(module.label(), other.title())));
      if (!seen.add("label " + module.label().toLowerCase(Locale.ROOT))) {
        inTheWay.add("Another document here has the label " + module.label() + ".");
      }
      boolean same = there != null && there.document().equals(document.noun().text());
      return new Entry(
          document.file(),
          document.noun(),
          module.title(),
          module.slug(),
          kind(inTheWay, there != null, same),
          there == null || !inTheWay.isEmpty()
              ? inTheWay
              : DifferenceWords.sentences(there.module(), module),
          document.notes(),
          there == null ? null : there.version());
    }

    private Entry session(Incoming document, Session session) {
      SessionStore.Stored there = sessions.find(session.id().toString()).orElse(null);
      SessionStore.Stored named = sessions.find(session.slug()).orElse(null);
      List<String> inTheWay = inThisParcel("session", session.id(), session.slug());
      if (named != null && !named.session().id().equals(session.id())) {
        inTheWay.add(taken(session.slug(), named.session().title()));
      } else if (named == null && Slugs.isKept(session.slug())) {
        inTheWay.add(kept(session.slug()));
      }
      if (there != null && there.binnedAt() != null) {
        inTheWay.add("It is in the bin: take it out first.");
      }
      boolean same = there != null && there.document().equals(document.noun().text());
      return new Entry(
          document.file(),
          document.noun(),
          session.title(),
          session.slug(),
          kind(inTheWay, there != null, same),
          there == null || !inTheWay.isEmpty()
              ? inTheWay
              : DifferenceWords.sentences(there.session(), session),
          document.notes(),
          there == null ? null : there.version());
    }

    /** The recipes that would lose a channel which they use. */
    private List<String> lost(Gate before, Gate after) {
      try {
        Gates.refuseUsed(recipes, before, after, Set.of());
        return List.of();
      } catch (Refusal refusal) {
        return refusal.faults().stream().map(Fault::message).toList();
      }
    }

    private static String kept(String slug) {
      return "The slug " + slug + " is the address of a page of the notebook.";
    }

    private List<String> inThisParcel(String noun, UUID id, String slug) {
      List<String> inTheWay = new ArrayList<>();
      if (!seen.add(noun + " " + id)) {
        inTheWay.add("Another document here has the same id.");
      }
      if (!seen.add(noun + " " + slug)) {
        inTheWay.add("Another document here has the slug " + slug + ".");
      }
      return inTheWay;
    }

    private static String taken(String slug, String title) {
      return "The slug " + slug + " is taken by " + title + ".";
    }

    private static String labelTaken(String label, String title) {
      return "The label " + label + " is taken by " + title + ".";
    }

    private static Kind kind(List<String> inTheWay, boolean there, boolean same) {
      if (same) {
        return Kind.SAME;
      }
      if (!inTheWay.isEmpty()) {
        return Kind.CONFLICT;
      }
      return there ? Kind.CHANGES : Kind.NEW;
    }
  }
}
