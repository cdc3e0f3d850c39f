// @ts-check
/**
 * The estimator on any page. `<script type="module" src="…/embed.js">` makes the element
 *
 *     <foamwright-estimate settings="company-settings.json" title="How much foam?">Call us</foamwright-estimate>
 *
 * which holds one frame, the `embed.html` beside this file, as wide as there is room and as high as what is in it.
 * `settings` is the address of a file of the page's own origin, `sandbox` is passed on to the frame, and the
 * property `.settings` stands in place of the file. What is within the element is shown where the frame is not.
 * Events: `foamwright-ready`, `foamwright-height`, `foamwright-estimate`, each with `detail.version === 1`.
 */

const NAME = 'foamwright-estimate';
const HOME = new URL('./', import.meta.url);
/** How long the frame may take until it answers, in ms. */
const PATIENCE = 15_000;
/** How high it is until it has said how high it is, and at most, in px. */
const [AT_FIRST, MOST_HEIGHT] = [480, 20_000];
const MOST_BYTES = 200_000;
const WORDS = {
  en: { title: 'Foam estimate', open: 'Open the foam estimator' },
  es: { title: 'Cálculo de espuma', open: 'Abrir el estimador de espuma' },
};

/** Says something to the page's owner, never to its visitors. @param {string} text */
const tell = (text) => console.warn(`<${NAME}>: ${text}`);

/** Of a language, if we speak it. @param {string | null} tag @returns {'en' | 'es' | undefined} */
const spoken = (tag) => /** @type {any} */ (/^(en|es)\b/i.exec(tag ?? '')?.[1].toLowerCase());

// As every element has them: a form has its controls in place of its properties.
const { closest, getAttribute } = Element.prototype;

/** The language of the page around an element; none where it says none, or one that we do not speak. @param {Element} element */
function languageOf(element) {
  for (let at = element; ;) {
    const named = closest.call(at, '[lang]');
    if (named) return spoken(getAttribute.call(named, 'lang'));
    const root = at.getRootNode();
    if (!(root instanceof ShadowRoot)) return undefined;
    at = root.host;
  }
}

/** Our own words, in the page's language or else in the visitor's. @param {Element} element */
const wordsFor = (element) => WORDS[languageOf(element) ?? spoken(navigator.language) ?? 'en'];

/** Settings as plain data, whatever a framework has wrapped them in. @param {any} settings */
function plain(settings) {
  const text = JSON.stringify(settings) ?? 'null';
  if (new Blob([text]).size > MOST_BYTES) throw new Error(`more than ${MOST_BYTES / 1000} kB`);
  return JSON.parse(text);
}

/** The settings in a file of the page's own origin. @param {string} address @param {string} base */
async function fileOf(address, base) {
  const url = new URL(address, base);
  if (url.origin !== location.origin) throw new Error(`only a file of ${location.origin} is taken`);
  const answer = await fetch(url, { mode: 'same-origin' });
  if (!answer.ok) throw new Error(`the server answers ${answer.status}`);
  const file = await answer.blob();
  if (file.size > MOST_BYTES) throw new Error(`more than ${MOST_BYTES / 1000} kB`);
  return JSON.parse(await file.text());
}

/** @returns {CustomElementConstructor} */
const element = () => class extends HTMLElement {
  static observedAttributes = ['sandbox', 'settings', 'title'];

  /** @type {HTMLIFrameElement | undefined} */
  #frame;
  /** To whom settings go once the frame has asked for them: its origin, or anybody where it has none. */
  #to = '';
  /** What stands in place of the file. @type {any} */
  #given;
  /** The settings to send: `null` for none, `undefined` while they are on the way. @type {any} */
  #settings;
  /** What this frame was sent last, as a text. */
  #sent = '';
  /** Each fetch outruns the ones before it. */
  #asked = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;

  constructor() {
    super();
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(':host{display:block}:host([hidden]){display:none}');
    this.attachShadow({ mode: 'open' }).adoptedStyleSheets = [sheet];
  }

  get settings() {
    return this.#given;
  }

  /** A text is an address, as frameworks that set properties in place of attributes have it. */
  set settings(value) {
    if (typeof value === 'string') {
      this.setAttribute('settings', value);
      return;
    }
    this.#given = value ?? undefined;
    if (this.#frame) this.#get();
  }

  connectedCallback() {
    // Settings that were given before this script came stand in the way of the property.
    if (Object.hasOwn(this, 'settings')) {
      const given = this.settings;
      // @ts-ignore
      delete this.settings;
      this.settings = given;
    }
    addEventListener('message', this.#hear);
    document.addEventListener('securitypolicyviolation', this.#refused);
    this.#open();
    this.#get();
  }

  disconnectedCallback() {
    removeEventListener('message', this.#hear);
    document.removeEventListener('securitypolicyviolation', this.#refused);
    clearTimeout(this.#timer);
    this.#asked += 1;
    this.#frame?.remove();
    this.#frame = undefined;
  }

  /** Moved in one piece, where a browser can do that, the frame stays as it is. */
  connectedMoveCallback() {}

  /** @param {string} name @param {string | null} before @param {string | null} now */
  attributeChangedCallback(name, before, now) {
    if (!this.#frame || before === now) return;
    if (name === 'title') this.#frame.title = this.#title();
    if (name === 'settings') this.#get();
    if (name === 'sandbox') this.#open();
  }

  #title() {
    return this.getAttribute('title') || wordsFor(this).title;
  }

  /** Puts a fresh frame in place: a sandbox holds from the first document on. */
  #open() {
    const frame = document.createElement('iframe');
    const sandbox = this.getAttribute('sandbox');
    if (sandbox !== null) frame.setAttribute('sandbox', sandbox);
    frame.title = this.#title();
    frame.referrerPolicy = 'no-referrer';
    frame.allow = 'clipboard-write';
    Object.assign(frame.style, { border: '0', display: 'block', minHeight: `${AT_FIRST}px`, width: '100%' });
    frame.src = new URL('embed.html#settings-follow', HOME).href;
    this.#frame = frame;
    this.#to = '';
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#unanswered(), PATIENCE);
    this.shadowRoot?.replaceChildren(frame);
  }

  /** Fetches the settings, or takes those that were given, and sends them on. */
  async #get() {
    const asked = ++this.#asked;
    const address = this.getAttribute('settings');
    this.#settings = undefined;
    let settings = null;
    try {
      if (this.#given !== undefined) settings = plain(this.#given);
      else if (address) settings = await fileOf(address, this.baseURI);
    } catch (error) {
      tell(`${this.#given === undefined ? `settings ${address}` : 'the property settings'}: ${error instanceof Error ? error.message : error}; the usual ones are used`);
    }
    if (asked !== this.#asked) return;
    this.#settings = settings;
    this.#send();
  }

  #send() {
    if (!this.#to || this.#settings === undefined) return;
    // Where there were settings and are none any more, the usual ones take their place.
    const settings = this.#settings ?? (this.#sent.includes('"settings"') ? { format: 'foamwright-embed', version: 1 } : undefined);
    const message = { foamwright: 1, sized: true, language: languageOf(this), settings };
    const text = JSON.stringify(message);
    if (text === this.#sent) return;
    this.#sent = text;
    this.#frame?.contentWindow?.postMessage(message, this.#to);
  }

  /** What the frame says, and nobody else. @param {MessageEvent} event */
  #hear = ({ data, origin, source }) => {
    const frame = this.#frame;
    if (!frame || !source || source !== frame.contentWindow || ![HOME.origin, 'null'].includes(origin) || data?.foamwright !== 1) return;
    const { event, height, estimate } = data;
    if (event === 'ready') {
      clearTimeout(this.#timer);
      this.#to = origin === 'null' ? '*' : origin;
      this.#sent = '';
      // It may have been given up already.
      frame.style.display = 'block';
      this.shadowRoot?.lastElementChild !== frame && this.shadowRoot?.lastElementChild?.remove();
      this.#send();
      this.#say(event, {});
    }
    if (event === 'height' && Number.isInteger(height) && height >= 1 && height <= MOST_HEIGHT) {
      Object.assign(frame.style, { height: `${height}px`, minHeight: '' });
      this.#say(event, { height });
    }
    if (event === 'estimate' && estimate instanceof Object) this.#say(event, { estimate });
  };

  /** @param {string} event @param {object} detail */
  #say(event, detail) {
    this.dispatchEvent(new CustomEvent(`foamwright-${event}`, { bubbles: true, composed: true, detail: { version: 1, ...detail } }));
  }

  /** The page's policy has refused the frame: nothing is left to wait for. @param {SecurityPolicyViolationEvent} event */
  #refused = ({ blockedURI, disposition, effectiveDirective }) => {
    if (disposition === 'enforce' && effectiveDirective === 'frame-src' && blockedURI.startsWith(HOME.origin)) this.#unanswered();
  };

  /** Without an answer the element shows what is within it, or a plain link. */
  #unanswered() {
    const frame = this.#frame;
    if (!frame || this.#to || frame.style.display === 'none') return;
    clearTimeout(this.#timer);
    tell(`the frame has not answered. A Content-Security-Policy of this page has to allow: script-src ${HOME.origin}; frame-src ${HOME.origin}; connect-src 'self'. `
      + `A sandbox has to allow scripts, and the same origin unless ${HOME.origin} sends Access-Control-Allow-Origin with its files.`);
    frame.style.display = 'none';
    const link = Object.assign(document.createElement('a'), { href: HOME.href, target: '_blank', rel: 'noopener', textContent: wordsFor(this).open });
    this.shadowRoot?.append(this.childElementCount || this.textContent?.trim() ? document.createElement('slot') : link);
  }
};

if (!customElements.get(NAME)) customElements.define(NAME, element());
