package thudbook.recipes;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Thing;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Position;

/**
 * A patch written down, as its document says. Only the title is required; null and empty lists are
 * what has not been written.
 *
 * @param slug its name in addresses
 * @param tags at most 32, in the order of the document
 * @param by who made the patch
 * @param derivedFrom slug or id of the recipe that this one varies
 * @param heard one line by ear
 * @param rating 1 to 5
 * @param couplingHertz the output's coupling high-pass, 0 to 1 kHz; null: not said, none
 * @param room where and how it was heard
 * @param with the other people
 * @param notes CommonMark, at most 64 KiB
 */
public record Recipe(
    UUID id,
    String slug,
    String title,
    List<String> tags,
    @Nullable String by,
    @Nullable LocalDate made,
    @Nullable String derivedFrom,
    @Nullable String heard,
    @Nullable Integer rating,
    @Nullable SourceEntry source,
    @Nullable EnvelopeEntry envelope,
    @Nullable Strikes strikes,
    List<StageEntry> stages,
    @Nullable Double couplingHertz,
    List<Connection> connections,
    List<Setting> settings,
    List<Mix> mix,
    List<After> after,
    List<Photo> photos,
    @Nullable String room,
    List<String> with,
    String notes)
    implements Thing {
  public Recipe {
    tags = List.copyOf(tags);
    stages = List.copyOf(stages);
    connections = List.copyOf(connections);
    settings = List.copyOf(settings);
    mix = List.copyOf(mix);
    after = List.copyOf(after);
    photos = List.copyOf(photos);
    with = List.copyOf(with);
  }

  /** Whether another recipe says the same about everything that its prediction follows from. */
  public boolean soundsAs(Recipe other) {
    return Objects.equals(source, other.source)
        && Objects.equals(envelope, other.envelope)
        && Objects.equals(strikes, other.strikes)
        && stages.equals(other.stages)
        && Objects.equals(couplingHertz, other.couplingHertz);
  }

  /** The same recipe under another name in addresses. */
  public Recipe withSlug(String other) {
    return new Recipe(
        id,
        other,
        title,
        tags,
        by,
        made,
        derivedFrom,
        heard,
        rating,
        source,
        envelope,
        strikes,
        stages,
        couplingHertz,
        connections,
        settings,
        mix,
        after,
        photos,
        room,
        with,
        notes);
  }

  /** The same recipe with other photos. */
  public Recipe withPhotos(List<Photo> others) {
    return new Recipe(
        id,
        slug,
        title,
        tags,
        by,
        made,
        derivedFrom,
        heard,
        rating,
        source,
        envelope,
        strikes,
        stages,
        couplingHertz,
        connections,
        settings,
        mix,
        after,
        others,
        room,
        with,
        notes);
  }

  /** The same recipe with other settings. */
  public Recipe withSettings(List<Setting> others) {
    return new Recipe(
        id,
        slug,
        title,
        tags,
        by,
        made,
        derivedFrom,
        heard,
        rating,
        source,
        envelope,
        strikes,
        stages,
        couplingHertz,
        connections,
        others,
        mix,
        after,
        photos,
        room,
        with,
        notes);
  }

  /** The same recipe with other tags. */
  public Recipe withTags(List<String> others) {
    return new Recipe(
        id,
        slug,
        title,
        others,
        by,
        made,
        derivedFrom,
        heard,
        rating,
        source,
        envelope,
        strikes,
        stages,
        couplingHertz,
        connections,
        settings,
        mix,
        after,
        photos,
        room,
        with,
        notes);
  }

  /** The same recipe with another sound. */
  public Recipe withSound(
      @Nullable SourceEntry otherSource,
      @Nullable EnvelopeEntry otherEnvelope,
      @Nullable Strikes otherStrikes,
      List<StageEntry> otherStages,
      @Nullable Double otherCouplingHertz) {
    return new Recipe(
        id,
        slug,
        title,
        tags,
        by,
        made,
        derivedFrom,
        heard,
        rating,
        otherSource,
        otherEnvelope,
        otherStrikes,
        otherStages,
        otherCouplingHertz,
        connections,
        settings,
        mix,
        after,
        photos,
        room,
        with,
        notes);
  }

  /** A cable, output first, such as {@code N1 noise} into {@code G1 in 2}. */
  public record Connection(String out, String in) {}

  /**
   * A knob or switch.
   *
   * @param forValue the value of the sound that it sets, such as {@code envelope.decay}; null: none
   */
  public record Setting(String module, String control, Position at, @Nullable String forValue) {}

  /**
   * Where the sound goes.
   *
   * @param levelDb null: not said
   */
  public record Mix(String into, @Nullable Double levelDb) {}

  /** What treats the sound behind the gates. */
  public record After(String what, @Nullable String how) {}

  /**
   * A photo of the patch.
   *
   * @param file the SHA-256 of its bytes, a dot and its ending
   */
  public record Photo(String file, @Nullable String shows) {}
}
