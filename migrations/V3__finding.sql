-- Finding: what of a recipe is filtered by, the words in it, favourites, shelves.

-- What a document says that no other column holds: the day in days since 1970-01-01, the numbers in
-- V, s and Hz. A row is made anew with every revision. Databases of earlier orders get theirs from
-- the documents, when they are opened.
CREATE TABLE recipe_fact (
  recipe INTEGER NOT NULL
    CONSTRAINT recipe_fact_key PRIMARY KEY
    CONSTRAINT recipe_fact_of REFERENCES recipe (id),
  made_on INTEGER,
  rating INTEGER CONSTRAINT recipe_fact_rating CHECK (rating BETWEEN 1 AND 5),
  photos INTEGER NOT NULL CONSTRAINT recipe_fact_photos CHECK (photos >= 0),
  modulation_index REAL,
  envelope_peak REAL,
  envelope_decay REAL,
  carrier REAL
) STRICT;

-- The words of recipes, folded before they come here. A recipe has up to three rows: 3 × key for its
-- title, + 1 for how it is heard, + 2 for everything else. Tags are not among them: a tag is looked
-- up by its name. The text itself is not kept a second time.
CREATE VIRTUAL TABLE recipe_words USING fts5 (
  words,
  content = '',
  contentless_delete = 1,
  tokenize = 'unicode61 remove_diacritics 0',
  prefix = '1 2 3'
);

-- What one member thinks of a recipe and did with it. It is nobody else's, and no revision.
CREATE TABLE mark (
  member TEXT NOT NULL
    CONSTRAINT mark_member CHECK (trim(member) <> '' AND length(member) <= 80),
  recipe INTEGER NOT NULL CONSTRAINT mark_of REFERENCES recipe (id),
  favourite INTEGER NOT NULL CONSTRAINT mark_favourite CHECK (favourite IN (0, 1)),
  last_used_at INTEGER,
  CONSTRAINT mark_key PRIMARY KEY (member, recipe)
) STRICT, WITHOUT ROWID;

CREATE INDEX mark_by_recipe ON mark (recipe);

-- Searches that were given a name. The search is the query of its address.
CREATE TABLE shelf (
  id INTEGER NOT NULL CONSTRAINT shelf_key PRIMARY KEY,
  name TEXT NOT NULL CONSTRAINT shelf_name CHECK (length(name) BETWEEN 1 AND 80),
  folded TEXT NOT NULL CONSTRAINT shelf_once UNIQUE,
  search TEXT NOT NULL CONSTRAINT shelf_search CHECK (length(search) <= 8000),
  author TEXT NOT NULL
    CONSTRAINT shelf_author CHECK (trim(author) <> '' AND length(author) <= 80),
  made_at INTEGER NOT NULL
) STRICT;

-- The list is ordered in memory.
DROP INDEX recipe_by_change;
DROP INDEX recipe_by_title;
