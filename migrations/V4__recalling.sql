-- Recalling: modules, sessions, and what was ticked while recipes were set up again.

-- Documents of which SQL asks nothing but name and place in a list. Version rises with any change of
-- what is shown; head is the number of the revision that counts. Modules and sessions have slugs of
-- their own.
CREATE TABLE document (
  id INTEGER NOT NULL CONSTRAINT document_key PRIMARY KEY,
  noun TEXT NOT NULL CONSTRAINT document_noun CHECK (noun IN ('module', 'session')),
  uuid TEXT NOT NULL
    CONSTRAINT document_uuid_once UNIQUE
    CONSTRAINT document_uuid CHECK (length(uuid) = 36),
  slug TEXT NOT NULL,
  title TEXT NOT NULL CONSTRAINT document_title CHECK (length(title) BETWEEN 1 AND 200),
  title_key TEXT NOT NULL,
  version INTEGER NOT NULL CONSTRAINT document_version CHECK (version >= 1),
  head INTEGER NOT NULL CONSTRAINT document_head_number CHECK (head >= 1),
  binned_at INTEGER,
  CONSTRAINT document_slug_once UNIQUE (noun, slug),
  CONSTRAINT document_slug_listed FOREIGN KEY (noun, slug) REFERENCES document_slug (noun, slug)
    DEFERRABLE INITIALLY DEFERRED,
  CONSTRAINT document_head FOREIGN KEY (id, head) REFERENCES document_revision (document, number)
    DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE INDEX document_by_title ON document (noun, title_key, id) WHERE binned_at IS NULL;
CREATE INDEX document_in_bin ON document (noun, binned_at, id) WHERE binned_at IS NOT NULL;

-- Every slug that a document has or had: an old one stays as an alias.
CREATE TABLE document_slug (
  noun TEXT NOT NULL CONSTRAINT document_slug_noun CHECK (noun IN ('module', 'session')),
  slug TEXT NOT NULL
    CONSTRAINT document_slug_text
      CHECK (length(slug) BETWEEN 1 AND 80 AND slug NOT GLOB '*[^a-z0-9-]*'),
  document INTEGER NOT NULL CONSTRAINT document_slug_of REFERENCES document (id),
  CONSTRAINT document_slug_key PRIMARY KEY (noun, slug)
) STRICT, WITHOUT ROWID;

CREATE INDEX document_slug_by_document ON document_slug (document);

CREATE TABLE document_revision (
  id INTEGER NOT NULL CONSTRAINT document_revision_key PRIMARY KEY,
  document INTEGER NOT NULL CONSTRAINT document_revision_of REFERENCES document (id),
  number INTEGER NOT NULL CONSTRAINT document_revision_number CHECK (number >= 1),
  change INTEGER NOT NULL CONSTRAINT document_revision_made_by REFERENCES change (id),
  sha256 TEXT NOT NULL CONSTRAINT document_revision_sha256 CHECK (length(sha256) = 64),
  text TEXT NOT NULL CONSTRAINT document_revision_text CHECK (text <> ''),
  CONSTRAINT document_revision_once UNIQUE (document, number)
) STRICT;

CREATE INDEX document_revision_by_change ON document_revision (change);

-- A recipe that was set up again, or is being. Ticks and what was set otherwise are JSON, by
-- connection and by knob. A page that was without a connection sends all of it again; step rises with
-- every tick, so that a late request does not write over a newer one.
CREATE TABLE recall (
  id INTEGER NOT NULL CONSTRAINT recall_key PRIMARY KEY,
  uuid TEXT NOT NULL
    CONSTRAINT recall_uuid_once UNIQUE
    CONSTRAINT recall_uuid CHECK (length(uuid) = 36),
  recipe INTEGER NOT NULL CONSTRAINT recall_of REFERENCES recipe (id),
  revision INTEGER NOT NULL CONSTRAINT recall_revision CHECK (revision >= 1),
  session INTEGER CONSTRAINT recall_session REFERENCES document (id),
  author TEXT NOT NULL
    CONSTRAINT recall_author CHECK (trim(author) <> '' AND length(author) <= 80),
  begun_at INTEGER NOT NULL,
  finished_at INTEGER CONSTRAINT recall_times CHECK (finished_at >= begun_at),
  step INTEGER NOT NULL CONSTRAINT recall_step CHECK (step >= 0),
  marks TEXT NOT NULL CONSTRAINT recall_marks CHECK (json_valid(marks))
) STRICT;

CREATE INDEX recall_by_recipe ON recall (recipe, finished_at);
CREATE INDEX recall_by_session ON recall (session) WHERE session IS NOT NULL;

-- Modules and sessions go into the bin too. The table is made anew since a check can't be changed.
CREATE TABLE binning_of_any (
  id INTEGER NOT NULL CONSTRAINT binning_key PRIMARY KEY,
  change INTEGER NOT NULL CONSTRAINT binning_made_by REFERENCES change (id),
  recipe INTEGER CONSTRAINT binning_recipe REFERENCES recipe (id),
  gate INTEGER CONSTRAINT binning_gate REFERENCES gate (id),
  document INTEGER CONSTRAINT binning_document REFERENCES document (id),
  into_bin INTEGER NOT NULL CONSTRAINT binning_direction CHECK (into_bin IN (0, 1)),
  CONSTRAINT binning_one_thing
    CHECK ((recipe IS NOT NULL) + (gate IS NOT NULL) + (document IS NOT NULL) = 1)
) STRICT;

INSERT INTO binning_of_any (id, change, recipe, gate, into_bin)
SELECT id, change, recipe, gate, into_bin FROM binning;

DROP TABLE binning;
ALTER TABLE binning_of_any RENAME TO binning;

CREATE INDEX binning_by_change ON binning (change);
CREATE INDEX binning_by_recipe ON binning (recipe) WHERE recipe IS NOT NULL;
CREATE INDEX binning_by_gate ON binning (gate) WHERE gate IS NOT NULL;
CREATE INDEX binning_by_document ON binning (document) WHERE document IS NOT NULL;

-- Likewise what somebody is typing.
CREATE TABLE draft_of_any (
  key TEXT NOT NULL
    CONSTRAINT draft_key PRIMARY KEY
    CONSTRAINT draft_key_text CHECK (length(key) = 36),
  noun TEXT NOT NULL
    CONSTRAINT draft_noun CHECK (noun IN ('recipe', 'gate', 'module', 'session')),
  subject TEXT CONSTRAINT draft_subject CHECK (length(subject) = 36),
  version INTEGER CONSTRAINT draft_version CHECK (version >= 1),
  author TEXT NOT NULL
    CONSTRAINT draft_author CHECK (trim(author) <> '' AND length(author) <= 80),
  kept_at INTEGER NOT NULL,
  step INTEGER NOT NULL CONSTRAINT draft_step CHECK (step >= 0),
  form TEXT NOT NULL CONSTRAINT draft_form CHECK (json_valid(form)),
  CONSTRAINT draft_of_a_version CHECK ((subject IS NULL) = (version IS NULL))
) STRICT, WITHOUT ROWID;

INSERT INTO draft_of_any SELECT * FROM draft;
DROP TABLE draft;
ALTER TABLE draft_of_any RENAME TO draft;
CREATE INDEX draft_by_time ON draft (kept_at);
