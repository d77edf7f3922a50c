-- The notebook: what was done, gates, recipes, tags and predictions.
--
-- The canonical text of a revision is the truth. Other columns hold what is joined, ordered or
-- filtered, and are made anew from the text whenever it is saved. Identifiers outside are UUIDs and
-- slugs; inside they are integers. Times are milliseconds since 1970-01-01T00:00:00Z.
--
-- No column is GENERATED and no DEFAULT calls a function: the code generator would lose the keys of
-- such a table without a word. It also takes two unnamed or inline references to one table for one.

-- One act: a save, a bulk edit, an import. Undoing one is an act too.
CREATE TABLE change (
  id INTEGER NOT NULL CONSTRAINT change_key PRIMARY KEY,
  at INTEGER NOT NULL,
  author TEXT NOT NULL
    CONSTRAINT change_author CHECK (trim(author) <> '' AND length(author) <= 80),
  what TEXT NOT NULL CONSTRAINT change_what CHECK (what <> ''),
  undone_by INTEGER CONSTRAINT change_undone_by REFERENCES change (id)
) STRICT;

CREATE INDEX change_undone ON change (undone_by) WHERE undone_by IS NOT NULL;

-- Gates ------------------------------------------------------------------------------------------

-- Version rises with any change of what is shown; head is the number of the revision that counts.
CREATE TABLE gate (
  id INTEGER NOT NULL CONSTRAINT gate_key PRIMARY KEY,
  uuid TEXT NOT NULL
    CONSTRAINT gate_uuid_once UNIQUE
    CONSTRAINT gate_uuid CHECK (length(uuid) = 36),
  slug TEXT NOT NULL
    CONSTRAINT gate_slug_once UNIQUE
    CONSTRAINT gate_slug_listed REFERENCES gate_slug (slug) DEFERRABLE INITIALLY DEFERRED,
  title TEXT NOT NULL CONSTRAINT gate_title CHECK (length(title) BETWEEN 1 AND 200),
  title_key TEXT NOT NULL,
  version INTEGER NOT NULL CONSTRAINT gate_version CHECK (version >= 1),
  head INTEGER NOT NULL CONSTRAINT gate_head_number CHECK (head >= 1),
  binned_at INTEGER,
  CONSTRAINT gate_head FOREIGN KEY (id, head) REFERENCES gate_revision (gate, number)
    DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE INDEX gate_by_title ON gate (title_key, id) WHERE binned_at IS NULL;

-- Every slug that a gate has or had: an old one stays as an alias.
CREATE TABLE gate_slug (
  slug TEXT NOT NULL
    CONSTRAINT gate_slug_key PRIMARY KEY
    CONSTRAINT gate_slug_text
      CHECK (length(slug) BETWEEN 1 AND 80 AND slug NOT GLOB '*[^a-z0-9-]*'),
  gate INTEGER NOT NULL CONSTRAINT gate_slug_of REFERENCES gate (id)
) STRICT, WITHOUT ROWID;

CREATE INDEX gate_slug_by_gate ON gate_slug (gate);

CREATE TABLE gate_revision (
  id INTEGER NOT NULL CONSTRAINT gate_revision_key PRIMARY KEY,
  gate INTEGER NOT NULL CONSTRAINT gate_revision_of REFERENCES gate (id),
  number INTEGER NOT NULL CONSTRAINT gate_revision_number CHECK (number >= 1),
  change INTEGER NOT NULL CONSTRAINT gate_revision_made_by REFERENCES change (id),
  sha256 TEXT NOT NULL CONSTRAINT gate_revision_sha256 CHECK (length(sha256) = 64),
  document TEXT NOT NULL CONSTRAINT gate_revision_document CHECK (document <> ''),
  CONSTRAINT gate_revision_once UNIQUE (gate, number)
) STRICT;

CREATE INDEX gate_revision_by_change ON gate_revision (change);

-- A channel keeps its row when the gate is saved again; one that is gone is retired, not deleted.
CREATE TABLE gate_channel (
  id INTEGER NOT NULL CONSTRAINT gate_channel_key PRIMARY KEY,
  gate INTEGER NOT NULL CONSTRAINT gate_channel_of REFERENCES gate (id),
  name TEXT NOT NULL CONSTRAINT gate_channel_name CHECK (name <> ''),
  retired_at INTEGER,
  CONSTRAINT gate_channel_once UNIQUE (gate, name)
) STRICT;

-- Recipes ----------------------------------------------------------------------------------------

CREATE TABLE recipe (
  id INTEGER NOT NULL CONSTRAINT recipe_key PRIMARY KEY,
  uuid TEXT NOT NULL
    CONSTRAINT recipe_uuid_once UNIQUE
    CONSTRAINT recipe_uuid CHECK (length(uuid) = 36),
  slug TEXT NOT NULL
    CONSTRAINT recipe_slug_once UNIQUE
    CONSTRAINT recipe_slug_listed REFERENCES recipe_slug (slug) DEFERRABLE INITIALLY DEFERRED,
  title TEXT NOT NULL CONSTRAINT recipe_title CHECK (length(title) BETWEEN 1 AND 200),
  title_key TEXT NOT NULL,
  author TEXT NOT NULL
    CONSTRAINT recipe_author CHECK (trim(author) <> '' AND length(author) <= 80),
  made_by TEXT,
  heard TEXT,
  source_kind TEXT
    CONSTRAINT recipe_source_kind CHECK (source_kind IN ('noise', 'oscillator', 'fm')),
  version INTEGER NOT NULL CONSTRAINT recipe_version CHECK (version >= 1),
  head INTEGER NOT NULL CONSTRAINT recipe_head_number CHECK (head >= 1),
  created_at INTEGER NOT NULL,
  changed_at INTEGER NOT NULL,
  binned_at INTEGER,
  CONSTRAINT recipe_times CHECK (changed_at >= created_at),
  CONSTRAINT recipe_head FOREIGN KEY (id, head) REFERENCES recipe_revision (recipe, number)
    DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE INDEX recipe_by_change ON recipe (changed_at, id) WHERE binned_at IS NULL;
CREATE INDEX recipe_by_title ON recipe (title_key, id) WHERE binned_at IS NULL;

CREATE TABLE recipe_slug (
  slug TEXT NOT NULL
    CONSTRAINT recipe_slug_key PRIMARY KEY
    CONSTRAINT recipe_slug_text
      CHECK (length(slug) BETWEEN 1 AND 80 AND slug NOT GLOB '*[^a-z0-9-]*'),
  recipe INTEGER NOT NULL CONSTRAINT recipe_slug_of REFERENCES recipe (id)
) STRICT, WITHOUT ROWID;

CREATE INDEX recipe_slug_by_recipe ON recipe_slug (recipe);

-- A merge has two parents. tag_ids are the tags in the order of the text, as a JSON list: a tag that
-- is renamed is renamed in every revision.
CREATE TABLE recipe_revision (
  id INTEGER NOT NULL CONSTRAINT recipe_revision_key PRIMARY KEY,
  recipe INTEGER NOT NULL CONSTRAINT recipe_revision_of REFERENCES recipe (id),
  number INTEGER NOT NULL CONSTRAINT recipe_revision_number CHECK (number >= 1),
  parent INTEGER,
  other_parent INTEGER,
  change INTEGER NOT NULL CONSTRAINT recipe_revision_made_by REFERENCES change (id),
  sha256 TEXT NOT NULL CONSTRAINT recipe_revision_sha256 CHECK (length(sha256) = 64),
  document TEXT NOT NULL CONSTRAINT recipe_revision_document CHECK (document <> ''),
  tag_ids TEXT NOT NULL CONSTRAINT recipe_revision_tag_ids CHECK (json_valid(tag_ids)),
  CONSTRAINT recipe_revision_once UNIQUE (recipe, number),
  CONSTRAINT recipe_revision_parent FOREIGN KEY (parent) REFERENCES recipe_revision (id),
  CONSTRAINT recipe_revision_other_parent
    FOREIGN KEY (other_parent) REFERENCES recipe_revision (id),
  CONSTRAINT recipe_revision_merge CHECK (other_parent IS NULL OR parent IS NOT NULL)
) STRICT;

CREATE INDEX recipe_revision_by_change ON recipe_revision (change);

-- Gate (slug or UUID) and channel of each stage in the words of the recipe: it may name what the
-- studio lacks.
CREATE TABLE recipe_stage (
  recipe INTEGER NOT NULL CONSTRAINT recipe_stage_of REFERENCES recipe (id),
  position INTEGER NOT NULL CONSTRAINT recipe_stage_position CHECK (position BETWEEN 1 AND 4),
  gate TEXT,
  channel TEXT,
  CONSTRAINT recipe_stage_key PRIMARY KEY (recipe, position)
) STRICT, WITHOUT ROWID;

CREATE INDEX recipe_stage_by_gate ON recipe_stage (gate, channel);

-- Tags -------------------------------------------------------------------------------------------

-- folded: without case and accents, so that Dry and dry are one tag.
CREATE TABLE tag (
  id INTEGER NOT NULL CONSTRAINT tag_key PRIMARY KEY,
  name TEXT NOT NULL CONSTRAINT tag_name CHECK (length(name) BETWEEN 1 AND 40),
  folded TEXT NOT NULL CONSTRAINT tag_once UNIQUE
) STRICT;

CREATE TABLE recipe_tag (
  tag INTEGER NOT NULL CONSTRAINT recipe_tag_is REFERENCES tag (id),
  recipe INTEGER NOT NULL CONSTRAINT recipe_tag_of REFERENCES recipe (id),
  position INTEGER NOT NULL CONSTRAINT recipe_tag_position CHECK (position BETWEEN 1 AND 32),
  CONSTRAINT recipe_tag_key PRIMARY KEY (tag, recipe)
) STRICT, WITHOUT ROWID;

CREATE INDEX recipe_tag_by_recipe ON recipe_tag (recipe, position);

-- Predictions ------------------------------------------------------------------------------------

-- One row per recipe. Without a reach there is no prediction: something is still missing in the
-- recipe. A metric that does not exist for a sound is null. The shape is 48 doubles, most
-- significant byte first. The generation rises with each mark, so that numbers which were worked out
-- from what was there before are not written over a newer mark.
CREATE TABLE prediction (
  recipe INTEGER NOT NULL
    CONSTRAINT prediction_key PRIMARY KEY
    CONSTRAINT prediction_of REFERENCES recipe (id),
  model INTEGER NOT NULL CONSTRAINT prediction_model_number CHECK (model >= 1),
  generation INTEGER NOT NULL CONSTRAINT prediction_generation CHECK (generation >= 1),
  stale INTEGER NOT NULL CONSTRAINT prediction_stale_mark CHECK (stale IN (0, 1)),
  peak_db REAL,
  peak_time REAL,
  dead_time REAL,
  onset REAL,
  attack REAL,
  hold REAL,
  release_20 REAL,
  release_40 REAL,
  release_60 REAL,
  flat_time REAL,
  let_go REAL,
  ignored_share REAL,
  thump_peak REAL,
  thump_to_tone REAL,
  headroom_positive REAL,
  headroom_negative REAL,
  clipped_share REAL,
  floor_db REAL,
  brightness_peak REAL,
  brightness_at_20 REAL,
  peak_openness REAL,
  build_up REAL,
  reach TEXT
    CONSTRAINT prediction_reach CHECK (reach IN ('silent', 'partial', 'brief', 'open', 'idle-open')),
  envelope_only TEXT,
  shape BLOB CONSTRAINT prediction_shape CHECK (length(shape) = 48 * 8),
  CONSTRAINT prediction_whole CHECK (
    (reach IS NULL) = (shape IS NULL) AND (reach IS NULL) = (envelope_only IS NULL))
) STRICT;

CREATE INDEX prediction_stale ON prediction (recipe) WHERE stale = 1;
CREATE INDEX prediction_model ON prediction (model);
