// @ts-check
/** The line at the foot of each printed page, where the browser can: what the papers are, and the page's number. */

const LOOK = 'font: 600 9pt/1.2 "Arial Narrow", Arial, sans-serif; color: #333;';

export function footLine() {
  const rules = new CSSStyleSheet();
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
  return {
    /** @param {string} text */
    say(text) {
      const safe = text.replace(/[^\p{L}\p{N} ]/gu, (one) => `\\${one.codePointAt(0)?.toString(16)} `);
      rules.replaceSync(`@page { @bottom-left { content: "${safe}"; ${LOOK} } @bottom-right { content: counter(page) " / " counter(pages); ${LOOK} } }`);
    },
    gone() {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== rules);
    },
  };
}
