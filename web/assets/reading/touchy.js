/*
 * The settings of a recipe tell on which knob it is touchy. Turning every knob takes a moment, so the
 * page is shown first and the settings are asked for again. Without scripts there is a link.
 *
 * Usage: load as a module. The link with data-touchy stands in the section that is replaced.
 */

import { pageOf, put } from '../frame/parts.js';

const link = document.querySelector('a[data-touchy]');

async function ask(section) {
  const anew = (await pageOf(link.href)).querySelector('.settings');
  if (anew !== null) {
    put(section, anew);
  }
}

if (link !== null) {
  const words = link.textContent;
  link.textContent = 'Turning every knob as far as it may be off…';
  ask(link.closest('.settings'))
    .catch(() => {})
    .finally(() => {
      link.textContent = words;
    });
}
