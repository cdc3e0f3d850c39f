/* Sets the chosen theme before anything is drawn. A classic script: it must not wait for modules. */
try {
  var chosen = JSON.parse(localStorage.getItem('foamwright.prefs') || '{}').theme;
  if (chosen === 'paper' || chosen === 'crawl') document.documentElement.dataset.theme = chosen;
} catch (blocked) { /* without storage the device's own setting decides */ }
