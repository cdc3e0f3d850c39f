// An example for owners of pages: what the estimator hands over when a visitor presses "Send to …". A company would put
// these totals into its own form; this page only writes them down. Texts go in as texts, never as markup.

const told = document.querySelector('#told');
const feet = new Intl.NumberFormat('en-US', { maximumFractionDigits: 0 });
const dollars = (cents) => new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(cents / 100);

/** The totals as lines of a name and a text. Where one still lacks something, kits and price are at least these. */
function lines({ complete, surfaces, of, area_ft2, board_feet, kits, price, language }) {
  const more = complete ? '' : ' or more';
  return [
    ['Surfaces', surfaces === of ? String(surfaces) : `${surfaces} of ${of}, the others lack something`],
    ['Area', `${feet.format(area_ft2)} ft²`],
    ['Foam', `${feet.format(board_feet)} board feet`],
    ['Kits', kits.length ? kits.map(({ name, count }) => `${count} × ${name}`).join(', ') + more : 'none yet'],
    ['Price', price ? `${dollars(price.total)}${more}: kits ${dollars(price.kits)}, tax ${dollars(price.tax)}, delivery ${dollars(price.delivery)}` : 'none yet'],
    ['Language', language],
  ];
}

addEventListener('foamwright-estimate', ({ detail }) => {
  // A later version may say it another way.
  if (detail.version !== 1) return;
  const list = document.createElement('dl');
  for (const [name, text] of lines(detail.estimate)) {
    list.append(
      Object.assign(document.createElement('dt'), { textContent: name }),
      Object.assign(document.createElement('dd'), { textContent: text }),
    );
  }
  told.replaceChildren(list);
});
