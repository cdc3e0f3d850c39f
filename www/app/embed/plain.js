// @ts-check
/*
 * The plain line where the estimator cannot run in its frame: modules do not arrive where a frame has no origin of
 * its own and the server sends no header for such frames. A classic script: everything that it needs is in it, so its
 * words are too. It must stand before the page's module.
 */
(function () {
  'use strict';

  /** @type {any} */
  var page = window;

  var PATIENCE = 20000;
  /** @type {Record<string, Record<string, string>>} */
  var WORDS = {
    en: {
      line: 'The estimator cannot run in this frame.',
      link: 'Open it on a page of its own',
      address: 'Its address:'
    },
    es: {
      line: 'El estimador no puede funcionar dentro de este marco.',
      link: 'Ábralo en una página propia',
      address: 'Su dirección:'
    }
  };
  var OWNER = 'Foamwright: the modules of this frame did not arrive. A frame without an origin of its own '
    + '(sandbox without allow-same-origin) needs a server that sends Access-Control-Allow-Origin: * with the files.';

  function words() {
    return /^es/.test(navigator.language || '') ? WORDS.es : WORDS.en;
  }

  /** @param {string} tag @param {string} kind @param {...(Node | string)} children */
  function node(tag, kind, ...children) {
    var made = document.createElement(tag);
    made.className = kind;
    made.append(...children);
    return made;
  }

  /** @type {HTMLElement | undefined} */
  var shown;

  /** Stands above whatever else there is: what was typed, after a trap, or a page that is only slow. */
  function show() {
    var say = words();
    // The full tool lies beside the frame's page. A sandbox may let no page be opened: then its address helps.
    var address = new URL('./', location.href).href;
    var link = /** @type {HTMLAnchorElement} */ (node('a', 'do wide', say.link));
    link.href = address;
    link.target = '_blank';
    link.rel = 'noopener';
    shown = node('div', 'pad plain', node('p', '', say.line), link, node('p', 'note', say.address + ' ' + address));
    shown.lang = say === WORDS.es ? 'es' : 'en';
    document.body.prepend(shown);
    var wait = document.getElementById('wait');
    if (wait) wait.remove();
  }

  /** @param {string} [owner] what the page's owner should know */
  function failed(owner) {
    clearTimeout(watchdog);
    if (shown) return;
    if (owner) console.warn(owner);
    if (document.body) show();
    else document.addEventListener('DOMContentLoaded', show);
  }

  window.addEventListener('error', function (event) {
    if (event.target instanceof HTMLScriptElement) failed(OWNER);
  }, true);
  var watchdog = setTimeout(function () { failed(); }, PATIENCE);

  /** What did not arrive, and what the core does not come back from. */
  page.foamwrightRescue = function () { failed(); };

  /** The estimator says that it stands. */
  page.foamwrightStands = function () {
    clearTimeout(watchdog);
    if (shown) shown.remove();
    shown = undefined;
    page.foamwrightReady = true;
  };
})();
