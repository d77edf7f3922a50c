/*
 * The settings of a recipe tell on which knob it is touchy. Turning every knob takes a moment, so the
 * page is shown first and the settings are asked for again. Without scripts there is a link.
 *
 * Usage: load as a module. The link with data-touchy stands in the section that is replaced.
 */

const link = document.querySelector('a[data-touchy]');

async function ask(section) {
  const response = await fetch(link.href);
  if (response.ok) {
    const page = new DOMParser().parseFromString(await response.text(), 'text/html');
    const anew = page.querySelector('.settings');
    if (anew !== null) {
      section.replaceWith(document.adoptNode(anew));
    }
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
