package thudbook.pages.writing;

import thudbook.documents.Limits;

/** The words of the fields that tell of a patch and of its evening. */
final class PatchFields extends FieldList {
  PatchFields() {
    about();
    patch();
  }

  private void about() {
    line("title", "Title", Limits.TITLE, "The one thing that a recipe must have.", "");
    line("tags", "Tags", 0, "With commas between them, at most 32.", "dry, kick");
    line("heard", "Heard", Limits.SENTENCE, "What it sounds like, in one line, by ear.", "");
    line("by", "By", Limits.NAME, "Who made the patch.", "");
    line("with", "With", 0, "The other people, with commas between them.", "");
    line("made", "Made", 0, "The day of the patch.", "2026-10-02");
    line(
        "room",
        "Room",
        Limits.SENTENCE,
        "Where and how it was heard.",
        "close, monitors at 70 dB(A)");
    choice(
        "rating",
        "Rating",
        "How much you want it back.",
        option("", "not rated"),
        option("1", "1 of 5"),
        option("2", "2 of 5"),
        option("3", "3 of 5"),
        option("4", "4 of 5"),
        option("5", "5 of 5"));
    line(
        "slug",
        "Address",
        80,
        "Its name in addresses and files. Links to the old one go on to work.",
        "made of the title");
    line("derivedFrom", "Derived from", 80, "The address of the recipe that this one varies.", "");
    lines(
        "notes", "Notes", "At most 64 KiB.", "In CommonMark: **bold**, lists, tables, links.", "");
  }

  private void patch() {
    line("connections.N.out", "From output", Limits.NAME, "", "E1 out");
    line("connections.N.in", "To input", Limits.NAME, "", "G1 control 1");
    line("settings.N.module", "Module", Limits.NAME, "", "E1");
    line("settings.N.control", "Control", Limits.NAME, "", "decay");
    line(
        "settings.N.at",
        "At",
        0,
        "A clock position, an angle, a share, a value or a name.",
        "10:30");
    choice("settings.N.for", "Sets", "The value of the sound that it sets.");
    line("mix.N.into", "Into", Limits.NAME, "", "desk 3");
    number("mix.N.level", "Level", Limits.MIX, "", "-6 dB", null);
    line("after.N.what", "What", Limits.NAME, "", "spring reverb");
    line("after.N.how", "How", Limits.SENTENCE, "", "a third wet");
    line("photos.N.file", "File", 0, "", "");
    line("photos.N.shows", "Shows", Limits.SENTENCE, "For readers who don’t see it.", "");
  }
}
