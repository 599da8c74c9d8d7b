// @ts-check

/**
 * Finds an element of the page that must be there.
 * @template {Element} E
 * @param {string} id
 * @param {new () => E} type
 * @returns {E}
 */
export const byId = (id, type) => {
  const found = document.getElementById(id);
  if (found instanceof type) return found;
  throw new Error(`the page has no ${id}`);
};

/**
 * Makes an element. Strings become text, never markup.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {{ class?: string, dir?: "auto", [attribute: string]: string | undefined }} [attributes]
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export const make = (tag, attributes = {}, ...children) => {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
};

/**
 * A button that does something.
 * @param {{ class?: string, [attribute: string]: string | undefined }} attributes
 * @param {() => void} press
 * @param {...(Node | string)} children
 */
export const button = (attributes, press, ...children) => {
  const element = make("button", { type: "button", ...attributes }, ...children);
  element.addEventListener("click", press);
  return element;
};

/**
 * One of the page's own drawings.
 * @param {string} name
 */
export const icon = (name) => {
  const namespace = "http://www.w3.org/2000/svg";
  const drawing = document.createElementNS(namespace, "svg");
  const use = document.createElementNS(namespace, "use");
  use.setAttribute("href", `#i-${name}`);
  drawing.setAttribute("aria-hidden", "true");
  drawing.append(use);
  return drawing;
};
