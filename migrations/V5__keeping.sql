-- One kept noun: recipes, gates, modules and sessions are things of one family of tables. What only
-- recipes have hangs on it in tables of their own.

-- Version rises with any change of what is shown; head is the number of the revision that counts.
-- The author is who added it. Each noun has slugs and UUIDs of its own.
CREATE TABLE thing (
  id INTEGER NOT NULL CONSTRAINT thing_key PRIMARY KEY,
  noun TEXT NOT NULL
    CONSTRAINT thing_noun CHECK (length(noun) BETWEEN 1 AND 40 AND noun = lower(noun)),
  uuid TEXT NOT NULL CONSTRAINT thing_uuid CHECK (length(uuid) = 36),
  slug TEXT NOT NULL,
  title TEXT NOT NULL CONSTRAINT thing_title CHECK (length(title) BETWEEN 1 AND 200),
  title_key TEXT NOT NULL,
  author TEXT NOT NULL
    CONSTRAINT thing_author CHECK (trim(author) <> '' AND length(author) <= 80),
  version INTEGER NOT NULL CONSTRAINT thing_version CHECK (version >= 1),
  head INTEGER NOT NULL CONSTRAINT thing_head_number CHECK (head >= 1),
  created_at INTEGER NOT NULL,
  changed_at INTEGER NOT NULL,
  binned_at INTEGER,
  CONSTRAINT thing_times CHECK (changed_at >= created_at),
  CONSTRAINT thing_uuid_once UNIQUE (noun, uuid),
  CONSTRAINT thing_slug_once UNIQUE (noun, slug),
  CONSTRAINT thing_slug_listed FOREIGN KEY (noun, slug) REFERENCES thing_slug (noun, slug)
    DEFERRABLE INITIALLY DEFERRED,
  CONSTRAINT thing_head FOREIGN KEY (id, head) REFERENCES revision (thing, number)
    DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE INDEX thing_in_bin ON thing (noun, binned_at, id) WHERE binned_at IS NOT NULL;

-- Every slug that a thing has or had: an old one stays as an alias.
CREATE TABLE thing_slug (
  noun TEXT NOT NULL,
  slug TEXT NOT NULL
    CONSTRAINT thing_slug_text
      CHECK (length(slug) BETWEEN 1 AND 80 AND slug NOT GLOB '*[^a-z0-9-]*'),
  thing INTEGER NOT NULL CONSTRAINT thing_slug_of REFERENCES thing (id),
  CONSTRAINT thing_slug_key PRIMARY KEY (noun, slug)
) STRICT, WITHOUT ROWID;

CREATE INDEX thing_slug_by_thing ON thing_slug (thing);

-- The canonical text of a thing, as it was saved. The parent is the hash of the text from which it
-- was made, by which other notebooks tell what came first.
CREATE TABLE revision (
  id INTEGER NOT NULL CONSTRAINT revision_key PRIMARY KEY,
  thing INTEGER NOT NULL CONSTRAINT revision_of REFERENCES thing (id),
  number INTEGER NOT NULL CONSTRAINT revision_number CHECK (number >= 1),
  change INTEGER NOT NULL CONSTRAINT revision_made_by REFERENCES change (id),
  parent TEXT CONSTRAINT revision_parent_sha256 CHECK (length(parent) = 64),
  sha256 TEXT NOT NULL CONSTRAINT revision_sha256 CHECK (length(sha256) = 64),
  document TEXT NOT NULL CONSTRAINT revision_document CHECK (document <> ''),
  CONSTRAINT revision_once UNIQUE (thing, number),
  CONSTRAINT revision_parent CHECK (number = 1 OR parent IS NOT NULL)
) STRICT;

CREATE INDEX revision_by_change ON revision (change);

-- Recipes keep their keys, which the index of words knows; gates, modules and sessions follow them.
CREATE TEMP TABLE key_after (family TEXT NOT NULL PRIMARY KEY, key INTEGER NOT NULL);
INSERT INTO key_after VALUES ('gate', (SELECT coalesce(max(id), 0) FROM recipe));
INSERT INTO key_after VALUES ('document',
  (SELECT key FROM key_after WHERE family = 'gate') + (SELECT coalesce(max(id), 0) FROM gate));

INSERT INTO thing
SELECT id, 'recipe', uuid, slug, title, title_key, author, version, head, created_at, changed_at,
  binned_at
FROM recipe ORDER BY id;

INSERT INTO thing
SELECT gate.id + key_after.key, 'gate', uuid, slug, title, title_key, added.author, version, head,
  added.at, max(added.at, saved.at), binned_at
FROM gate
JOIN key_after ON family = 'gate'
JOIN gate_revision AS first ON first.gate = gate.id AND first.number = 1
JOIN change AS added ON added.id = first.change
JOIN gate_revision AS last ON last.gate = gate.id AND last.number = gate.head
JOIN change AS saved ON saved.id = last.change
ORDER BY gate.id;

INSERT INTO thing
SELECT document.id + key_after.key, noun, uuid, slug, title, title_key, added.author, version, head,
  added.at, max(added.at, saved.at), binned_at
FROM document
JOIN key_after ON family = 'document'
JOIN document_revision AS first ON first.document = document.id AND first.number = 1
JOIN change AS added ON added.id = first.change
JOIN document_revision AS last ON last.document = document.id AND last.number = document.head
JOIN change AS saved ON saved.id = last.change
ORDER BY document.id;

INSERT INTO thing_slug SELECT 'recipe', slug, recipe FROM recipe_slug;
INSERT INTO thing_slug
SELECT 'gate', slug, gate + key FROM gate_slug JOIN key_after ON family = 'gate';
INSERT INTO thing_slug
SELECT noun, slug, document + key FROM document_slug JOIN key_after ON family = 'document';

-- In this order the effects of a change stay in theirs.
INSERT INTO revision
SELECT it.id, it.recipe, it.number, it.change, before.sha256, it.sha256, it.document
FROM recipe_revision AS it
LEFT JOIN recipe_revision AS before
  ON before.recipe = it.recipe AND before.number = it.number - 1
ORDER BY it.id;

INSERT INTO revision (thing, number, change, parent, sha256, document)
SELECT it.gate + key, it.number, it.change, before.sha256, it.sha256, it.document
FROM gate_revision AS it
JOIN key_after ON family = 'gate'
LEFT JOIN gate_revision AS before ON before.gate = it.gate AND before.number = it.number - 1
ORDER BY it.id;

INSERT INTO revision (thing, number, change, parent, sha256, document)
SELECT it.document + key, it.number, it.change, before.sha256, it.sha256, it.text
FROM document_revision AS it
JOIN key_after ON family = 'document'
LEFT JOIN document_revision AS before
  ON before.document = it.document AND before.number = it.number - 1
ORDER BY it.id;

-- Things that an act threw into the bin or took out of it. Revisions carry their change themselves.
CREATE TABLE moved (
  id INTEGER NOT NULL CONSTRAINT binning_key PRIMARY KEY,
  change INTEGER NOT NULL CONSTRAINT binning_made_by REFERENCES change (id),
  thing INTEGER NOT NULL CONSTRAINT binning_of REFERENCES thing (id),
  into_bin INTEGER NOT NULL CONSTRAINT binning_direction CHECK (into_bin IN (0, 1))
) STRICT;

INSERT INTO moved
SELECT binning.id, change,
  coalesce(recipe, gate + gates.key, document + documents.key), into_bin
FROM binning
JOIN key_after AS gates ON gates.family = 'gate'
JOIN key_after AS documents ON documents.family = 'document';

DROP TABLE binning;
ALTER TABLE moved RENAME TO binning;
CREATE INDEX binning_by_change ON binning (change);
CREATE INDEX binning_by_thing ON binning (thing);

-- What hangs on recipes ----------------------------------------------------------------------------

-- Gate (slug or UUID) and channel of each stage in the words of the recipe: it may name what the
-- studio lacks.
CREATE TABLE stage (
  recipe INTEGER NOT NULL CONSTRAINT recipe_stage_of REFERENCES thing (id),
  position INTEGER NOT NULL CONSTRAINT recipe_stage_position CHECK (position BETWEEN 1 AND 4),
  gate TEXT,
  channel TEXT,
  CONSTRAINT recipe_stage_key PRIMARY KEY (recipe, position)
) STRICT, WITHOUT ROWID;

INSERT INTO stage SELECT * FROM recipe_stage;
DROP TABLE recipe_stage;
ALTER TABLE stage RENAME TO recipe_stage;
CREATE INDEX recipe_stage_by_gate ON recipe_stage (gate, channel);

CREATE TABLE tagged (
  tag INTEGER NOT NULL CONSTRAINT recipe_tag_is REFERENCES tag (id),
  recipe INTEGER NOT NULL CONSTRAINT recipe_tag_of REFERENCES thing (id),
  position INTEGER NOT NULL CONSTRAINT recipe_tag_position CHECK (position BETWEEN 1 AND 32),
  CONSTRAINT recipe_tag_key PRIMARY KEY (tag, recipe)
) STRICT, WITHOUT ROWID;

INSERT INTO tagged SELECT * FROM recipe_tag;
DROP TABLE recipe_tag;
ALTER TABLE tagged RENAME TO recipe_tag;
CREATE INDEX recipe_tag_by_recipe ON recipe_tag (recipe, position);

-- The recipe that another one varies, in the words of its document: a slug or a UUID, which the
-- notebook may lack.
CREATE TABLE varied (
  recipe INTEGER NOT NULL
    CONSTRAINT recipe_parent_key PRIMARY KEY
    CONSTRAINT recipe_parent_of REFERENCES thing (id),
  parent TEXT NOT NULL CONSTRAINT recipe_parent_name CHECK (length(parent) BETWEEN 1 AND 80)
) STRICT;

INSERT INTO varied SELECT * FROM recipe_parent;
DROP TABLE recipe_parent;
ALTER TABLE varied RENAME TO recipe_parent;
CREATE INDEX recipe_parent_by_name ON recipe_parent (parent);

-- What a document says that is filtered by: the day in days since 1970-01-01, the numbers in V, s and
-- Hz. Databases of the first orders get their rows from the documents, when they are opened.
CREATE TABLE fact (
  recipe INTEGER NOT NULL
    CONSTRAINT recipe_fact_key PRIMARY KEY
    CONSTRAINT recipe_fact_of REFERENCES thing (id),
  made_by TEXT,
  heard TEXT,
  source_kind TEXT
    CONSTRAINT recipe_fact_source_kind CHECK (source_kind IN ('noise', 'oscillator', 'fm')),
  made_on INTEGER,
  rating INTEGER CONSTRAINT recipe_fact_rating CHECK (rating BETWEEN 1 AND 5),
  photos INTEGER NOT NULL CONSTRAINT recipe_fact_photos CHECK (photos >= 0),
  modulation_index REAL,
  envelope_peak REAL,
  envelope_decay REAL,
  carrier REAL
) STRICT;

INSERT INTO fact
SELECT recipe.id, made_by, heard, source_kind, made_on, rating, photos, modulation_index,
  envelope_peak, envelope_decay, carrier
FROM recipe JOIN recipe_fact ON recipe_fact.recipe = recipe.id
ORDER BY recipe.id;

DROP TABLE recipe_fact;
ALTER TABLE fact RENAME TO recipe_fact;

-- One row per recipe. Without a reach there is no prediction: something is still missing in the
-- recipe. A metric that does not exist for a sound is null. The shape is 48 doubles, most
-- significant byte first. The generation rises with each mark, so that numbers which were worked out
-- from what was there before are not written over a newer mark.
CREATE TABLE predicted (
  recipe INTEGER NOT NULL
    CONSTRAINT prediction_key PRIMARY KEY
    CONSTRAINT prediction_of REFERENCES thing (id),
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

INSERT INTO predicted SELECT * FROM prediction ORDER BY recipe;
DROP TABLE prediction;
ALTER TABLE predicted RENAME TO prediction;
CREATE INDEX prediction_stale ON prediction (recipe) WHERE stale = 1;
CREATE INDEX prediction_model ON prediction (model);

-- The numbers that a recipe had before a gate was changed, one row per recipe that uses it. While
-- its prediction is still marked, the recipe is not done.
CREATE TABLE predicted_before (
  change INTEGER NOT NULL CONSTRAINT prediction_before_change REFERENCES change (id),
  recipe INTEGER NOT NULL CONSTRAINT prediction_before_of REFERENCES thing (id),
  reach TEXT,
  peak_db REAL,
  attack REAL,
  hold REAL,
  release_40 REAL,
  thump_peak REAL,
  CONSTRAINT prediction_before_key PRIMARY KEY (change, recipe)
) STRICT, WITHOUT ROWID;

INSERT INTO predicted_before SELECT * FROM prediction_before;
DROP TABLE prediction_before;
ALTER TABLE predicted_before RENAME TO prediction_before;
CREATE INDEX prediction_before_by_recipe ON prediction_before (recipe);

-- What one member thinks of a recipe and did with it. It is nobody else's, and no revision.
CREATE TABLE marked (
  member TEXT NOT NULL
    CONSTRAINT mark_member CHECK (trim(member) <> '' AND length(member) <= 80),
  recipe INTEGER NOT NULL CONSTRAINT mark_of REFERENCES thing (id),
  favourite INTEGER NOT NULL CONSTRAINT mark_favourite CHECK (favourite IN (0, 1)),
  last_used_at INTEGER,
  CONSTRAINT mark_key PRIMARY KEY (member, recipe)
) STRICT, WITHOUT ROWID;

INSERT INTO marked SELECT * FROM mark;
DROP TABLE mark;
ALTER TABLE marked RENAME TO mark;
CREATE INDEX mark_by_recipe ON mark (recipe);

-- A recipe that was set up again, or is being. Ticks and what was set otherwise are JSON, by
-- connection and by knob. A page that was without a connection sends all of it again; step rises with
-- every tick, so that a late request does not write over a newer one.
CREATE TABLE recalled (
  id INTEGER NOT NULL CONSTRAINT recall_key PRIMARY KEY,
  uuid TEXT NOT NULL
    CONSTRAINT recall_uuid_once UNIQUE
    CONSTRAINT recall_uuid CHECK (length(uuid) = 36),
  recipe INTEGER NOT NULL CONSTRAINT recall_of REFERENCES thing (id),
  revision INTEGER NOT NULL CONSTRAINT recall_revision CHECK (revision >= 1),
  session INTEGER CONSTRAINT recall_session REFERENCES thing (id),
  author TEXT NOT NULL
    CONSTRAINT recall_author CHECK (trim(author) <> '' AND length(author) <= 80),
  begun_at INTEGER NOT NULL,
  finished_at INTEGER CONSTRAINT recall_times CHECK (finished_at >= begun_at),
  step INTEGER NOT NULL CONSTRAINT recall_step CHECK (step >= 0),
  marks TEXT NOT NULL CONSTRAINT recall_marks CHECK (json_valid(marks))
) STRICT;

INSERT INTO recalled
SELECT id, uuid, recipe, revision, session + key, author, begun_at, finished_at, step, marks
FROM recall JOIN key_after ON family = 'document';

DROP TABLE recall;
ALTER TABLE recalled RENAME TO recall;
CREATE INDEX recall_by_recipe ON recall (recipe, finished_at);
CREATE INDEX recall_by_session ON recall (session) WHERE session IS NOT NULL;

-- Any noun may be typed.
CREATE TABLE typed (
  key TEXT NOT NULL
    CONSTRAINT draft_key PRIMARY KEY
    CONSTRAINT draft_key_text CHECK (length(key) = 36),
  noun TEXT NOT NULL
    CONSTRAINT draft_noun CHECK (length(noun) BETWEEN 1 AND 40 AND noun = lower(noun)),
  subject TEXT CONSTRAINT draft_subject CHECK (length(subject) = 36),
  version INTEGER CONSTRAINT draft_version CHECK (version >= 1),
  author TEXT NOT NULL
    CONSTRAINT draft_author CHECK (trim(author) <> '' AND length(author) <= 80),
  kept_at INTEGER NOT NULL,
  step INTEGER NOT NULL CONSTRAINT draft_step CHECK (step >= 0),
  form TEXT NOT NULL CONSTRAINT draft_form CHECK (json_valid(form)),
  CONSTRAINT draft_of_a_version CHECK ((subject IS NULL) = (version IS NULL))
) STRICT, WITHOUT ROWID;

INSERT INTO typed SELECT * FROM draft;
DROP TABLE draft;
ALTER TABLE typed RENAME TO draft;
CREATE INDEX draft_by_time ON draft (kept_at);

-- The four families, and columns that nobody read.
DROP TABLE gate_channel;
DROP TABLE gate_slug;
DROP TABLE gate_revision;
DROP TABLE gate;
DROP TABLE document_slug;
DROP TABLE document_revision;
DROP TABLE document;
DROP TABLE recipe_slug;
DROP TABLE recipe_revision;
DROP TABLE recipe;
DROP TABLE key_after;
