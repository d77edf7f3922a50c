-- Writing it down: what an act did beside its revisions, drafts, photos, and what was predicted
-- before a gate was changed.

-- Goods that an act threw into the bin or took out of it. Revisions carry their change themselves.
CREATE TABLE binning (
  id INTEGER NOT NULL CONSTRAINT binning_key PRIMARY KEY,
  change INTEGER NOT NULL CONSTRAINT binning_made_by REFERENCES change (id),
  recipe INTEGER CONSTRAINT binning_recipe REFERENCES recipe (id),
  gate INTEGER CONSTRAINT binning_gate REFERENCES gate (id),
  into_bin INTEGER NOT NULL CONSTRAINT binning_direction CHECK (into_bin IN (0, 1)),
  CONSTRAINT binning_one_thing CHECK ((recipe IS NULL) <> (gate IS NULL))
) STRICT;

CREATE INDEX binning_by_change ON binning (change);
CREATE INDEX binning_by_recipe ON binning (recipe) WHERE recipe IS NOT NULL;
CREATE INDEX binning_by_gate ON binning (gate) WHERE gate IS NOT NULL;
CREATE INDEX recipe_in_bin ON recipe (binned_at, id) WHERE binned_at IS NOT NULL;
CREATE INDEX gate_in_bin ON gate (binned_at, id) WHERE binned_at IS NOT NULL;


-- What somebody is typing. A draft knows the version that it began from; step rises with every
-- pause in the typing, so that a late request does not write over a newer one. The form is what the
-- page holds, as JSON: names of fields with their values, also of kinds that are not chosen.
CREATE TABLE draft (
  key TEXT NOT NULL
    CONSTRAINT draft_key PRIMARY KEY
    CONSTRAINT draft_key_text CHECK (length(key) = 36),
  noun TEXT NOT NULL CONSTRAINT draft_noun CHECK (noun IN ('recipe', 'gate')),
  subject TEXT CONSTRAINT draft_subject CHECK (length(subject) = 36),
  version INTEGER CONSTRAINT draft_version CHECK (version >= 1),
  author TEXT NOT NULL
    CONSTRAINT draft_author CHECK (trim(author) <> '' AND length(author) <= 80),
  kept_at INTEGER NOT NULL,
  step INTEGER NOT NULL CONSTRAINT draft_step CHECK (step >= 0),
  form TEXT NOT NULL CONSTRAINT draft_form CHECK (json_valid(form)),
  CONSTRAINT draft_of_a_version CHECK ((subject IS NULL) = (version IS NULL))
) STRICT, WITHOUT ROWID;

CREATE INDEX draft_by_time ON draft (kept_at);

-- Photos by the SHA-256 of their bytes, which is also their name in documents. What a camera wrote
-- beside the picture is gone before they come here.
CREATE TABLE photo (
  sha256 TEXT NOT NULL
    CONSTRAINT photo_key PRIMARY KEY
    CONSTRAINT photo_sha256 CHECK (length(sha256) = 64),
  ending TEXT NOT NULL CONSTRAINT photo_ending CHECK (ending IN ('jpg', 'png')),
  width INTEGER NOT NULL CONSTRAINT photo_width CHECK (width >= 1),
  height INTEGER NOT NULL CONSTRAINT photo_height CHECK (height >= 1),
  added_at INTEGER NOT NULL,
  bytes BLOB NOT NULL CONSTRAINT photo_bytes CHECK (length(bytes) > 0),
  thumbnail BLOB NOT NULL CONSTRAINT photo_thumbnail CHECK (length(thumbnail) > 0)
) STRICT;

-- The numbers that a recipe had before a gate was changed, one row per recipe that uses it. While
-- its prediction is still marked, the recipe is not done.
CREATE TABLE prediction_before (
  change INTEGER NOT NULL CONSTRAINT prediction_before_change REFERENCES change (id),
  recipe INTEGER NOT NULL CONSTRAINT prediction_before_of REFERENCES recipe (id),
  reach TEXT,
  peak_db REAL,
  attack REAL,
  hold REAL,
  release_40 REAL,
  thump_peak REAL,
  CONSTRAINT prediction_before_key PRIMARY KEY (change, recipe)
) STRICT, WITHOUT ROWID;

CREATE INDEX prediction_before_by_recipe ON prediction_before (recipe);

-- The recipe that another one varies, in the words of its document: a slug or a UUID, which the
-- notebook may lack. Documents of the first order are read here: their front matter has the key in
-- a line of its own, in quotes where the value begins with a digit.
CREATE TABLE recipe_parent (
  recipe INTEGER NOT NULL
    CONSTRAINT recipe_parent_key PRIMARY KEY
    CONSTRAINT recipe_parent_of REFERENCES recipe (id),
  parent TEXT NOT NULL CONSTRAINT recipe_parent_name CHECK (length(parent) BETWEEN 1 AND 80)
) STRICT;

CREATE INDEX recipe_parent_by_name ON recipe_parent (parent);

WITH head (recipe, matter) AS (
  SELECT recipe.id,
    substr(document, 1, 4 + instr(substr(document, 5), char(10) || '---' || char(10)))
  FROM recipe JOIN recipe_revision
    ON recipe_revision.recipe = recipe.id AND recipe_revision.number = recipe.head
), rest (recipe, text) AS (
  SELECT recipe,
    substr(matter, instr(matter, char(10) || 'derivedFrom: ') + length('derivedFrom: ') + 1)
  FROM head
  WHERE instr(matter, char(10) || 'derivedFrom: ') > 0
)
INSERT INTO recipe_parent (recipe, parent)
SELECT recipe, trim(substr(text, 1, instr(text, char(10)) - 1), '"') FROM rest;
