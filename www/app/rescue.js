// @ts-check
/*
 * The way out when the page's modules do not load, or the core cannot be brought back after a trap: lists the
 * kept jobs and hands them over as files. A classic script without wasm, modules or word files: everything
 * that it needs is in it, so its words are too.
 */
(function () {
  'use strict';

  /** @type {any} */
  var page = window;

  var PREFIX = 'foamwright.job.';
  var PATIENCE = 10000;
  /** @type {Record<string, Record<string, string>>} */
  var WORDS = {
    en: {
      title: 'The sheet could not be laid out',
      load: 'Part of the page did not arrive. Your jobs are still kept in this browser.',
      trap: 'Working out the job failed twice. Your entries are kept.',
      again: 'Load the page again',
      save: 'Save “{name}” as a job file',
      none: 'No job is kept in this browser.',
      blocked: 'This browser refuses storage, so no job is kept here.',
      unnamed: 'unnamed job'
    },
    es: {
      title: 'No se pudo abrir la hoja',
      load: 'Una parte de la página no llegó. Sus trabajos siguen guardados en este navegador.',
      trap: 'El cálculo del trabajo falló dos veces. Lo que escribió está guardado.',
      again: 'Cargar la página otra vez',
      save: 'Guardar “{name}” como archivo',
      none: 'No hay ningún trabajo guardado en este navegador.',
      blocked: 'Este navegador no permite guardar, así que aquí no hay trabajos.',
      unnamed: 'trabajo sin nombre'
    }
  };

  function words() {
    var spoken = '';
    try {
      spoken = JSON.parse(localStorage.getItem('foamwright.prefs') || '{}').language || '';
    } catch (blocked) { /* the browser's own language then */ }
    return /^es/.test(spoken || navigator.language || '') ? WORDS.es : WORDS.en;
  }

  /** Every kept job as {name, file, text}; undefined where storage is refused. */
  function kept() {
    try {
      var found = [];
      for (var i = 0; i < localStorage.length; i++) {
        var key = localStorage.key(i) || '';
        if (key.indexOf(PREFIX) !== 0) continue;
        var text = localStorage.getItem(key) || '';
        var name = '';
        try {
          var job = JSON.parse(text).job;
          if (job) {
            name = String(job.name || '');
            text = JSON.stringify(job, null, 1) + '\n';
          }
        } catch (torn) { /* handed over as it is */ }
        found.push({ name: name, file: (key.slice(PREFIX.length).replace(/[^\w-]/g, '') || 'job') + '.foamwright.json', text: text });
      }
      return found;
    } catch (blocked) {
      return undefined;
    }
  }

  /** @param {string} tag @param {string} kind @param {string} [text] */
  function node(tag, kind, text) {
    var made = document.createElement(tag);
    if (kind) made.className = kind;
    if (text) made.textContent = text;
    return made;
  }

  /** @param {string} reason */
  function show(reason) {
    var say = words();
    var jobs = kept();
    var panel = node('main', 'pad rescue');
    panel.append(node('h1', '', say.title), node('p', '', say[reason] || say.load));
    if (!jobs || !jobs.length) panel.append(node('p', 'note', jobs ? say.none : say.blocked));
    var list = node('div', 'dos');
    (jobs || []).forEach(function (job) {
      var link = /** @type {HTMLAnchorElement} */ (node('a', 'do line wide', say.save.replace('{name}', job.name || say.unnamed)));
      link.href = URL.createObjectURL(new Blob([job.text], { type: 'application/json' }));
      link.download = job.file;
      list.append(link);
    });
    var again = /** @type {HTMLButtonElement} */ (node('button', 'do wide', say.again));
    again.type = 'button';
    again.addEventListener('click', function () { location.reload(); });
    list.append(again);
    panel.append(list);
    var place = document.getElementById('view') || document.body;
    place.replaceChildren(panel);
    var bar = document.getElementById('bar');
    if (bar) bar.hidden = true;
  }

  var tried = false;

  /** One retry past the browser's own cache: an old page may name files that are gone. */
  function failed() {
    if (page.foamwrightReady || tried) return;
    tried = true;
    var first = false;
    try {
      first = !sessionStorage.getItem('foamwright.retried');
      sessionStorage.setItem('foamwright.retried', '1');
    } catch (blocked) { /* without a guard there is no retry */ }
    if (!first) return show('load');
    fetch(location.href.split('#')[0], { cache: 'reload' }).then(function () { location.reload(); }, function () { show('load'); });
  }

  /** @param {string} reason `load`: something did not arrive; `trap`: the core cannot be brought back */
  page.foamwrightRescue = function (reason) {
    if (reason === 'load') failed();
    else show(reason);
  };
  window.addEventListener('error', function (event) {
    if (event.target instanceof HTMLScriptElement) failed();
  }, true);
  var watchdog = setTimeout(failed, PATIENCE);

  /** The page says that it stands. */
  page.foamwrightStands = function () {
    clearTimeout(watchdog);
    page.foamwrightReady = true;
    try {
      sessionStorage.removeItem('foamwright.retried');
    } catch (blocked) { /* nothing to take back */ }
  };
})();
