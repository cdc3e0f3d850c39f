// As much of a page's elements as the drawings are made of, in Node: made, nested, found by tag, class or id.

class Element {
  constructor(tag) {
    this.tag = tag;
    this.attributes = new Map();
    this.childNodes = [];
  }
  setAttribute(name, value) { this.attributes.set(name, String(value)); }
  getAttribute(name) { return this.attributes.get(name) ?? null; }
  append(...nodes) {
    for (const node of nodes) {
      this.childNodes.push(node);
      if (node instanceof Element) node.parent = this;
    }
  }
  replaceWith(...nodes) { this.parent.childNodes.splice(this.parent.childNodes.indexOf(this), 1, ...nodes); }
  remove() { this.replaceWith(); }
  addEventListener(kind, hear) { (this.heard ??= {})[kind] = hear; }
  click() { this.heard.click({}); }
  get children() { return this.childNodes.filter((one) => one instanceof Element); }
  get textContent() { return this.childNodes.map((one) => (one instanceof Element ? one.textContent : one)).join(''); }
  get outerHTML() { return `<${this.tag}${[...this.attributes].map(([name, value]) => ` ${name}="${value}"`).join('')}>${this.childNodes.map((one) => (one instanceof Element ? one.outerHTML : one)).join('')}</${this.tag}>`; }
  /** `tag`, `.class`, `tag.class` or `#id`. */
  matches(selector) {
    const [, tag, kind, id] = /^(\w*)(?:\.(\w+))?(?:#(\w+))?$/.exec(selector);
    return (!tag || this.tag === tag) && (!kind || (this.getAttribute('class') ?? '').split(' ').includes(kind)) && (!id || this.getAttribute('id') === id);
  }
  querySelectorAll(selector) { return this.children.flatMap((one) => [...(one.matches(selector) ? [one] : []), ...one.querySelectorAll(selector)]); }
  querySelector(selector) { return this.querySelectorAll(selector)[0] ?? null; }
}

/** Gives the modules of the page something to make their elements with. */
export function page() {
  globalThis.document = { createElement: (tag) => new Element(tag), createElementNS: (_, tag) => new Element(tag) };
}
