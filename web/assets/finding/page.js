/*
 * The list of recipes while it is searched. Without this module the form is sent with its button,
 * and everything else works by links and forms.
 *
 * Usage: load as a module on a page with #find (the form), elements with data-part (what is
 * replaced), #rows (the list), #selection (what is done with selected rows); each may be missing.
 */

import { offerCompletions } from './completions.js';
import { listen } from './live.js';
import { favour } from './marks.js';
import { moveByKeys } from './rows.js';
import { followSelection } from './selection.js';

const WIDE = matchMedia('(min-width: 60rem)');

const form = document.getElementById('find');
if (form !== null) {
  const filters = document.getElementById('filters');
  const fit = () => {
    filters.open = WIDE.matches;
  };
  fit();
  WIDE.addEventListener('change', fit);

  const selection = followSelection(document.getElementById('selection'));
  const completions = offerCompletions(
    document.getElementById('q'),
    document.getElementById('completions'),
  );
  listen(form, { found: selection.renew, asked: completions.close });
  moveByKeys({ box: document.getElementById('q'), completions, selection });
  favour();
} else if (document.getElementById('rows') !== null) {
  moveByKeys({});
}
