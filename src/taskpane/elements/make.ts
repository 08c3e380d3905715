export type Child = Node | string | number | null | undefined | false | readonly Child[];

type Listeners = { readonly [Name in keyof HTMLElementEventMap]?: (event: HTMLElementEventMap[Name]) => unknown };

/** Attributes by name, where true sets an empty one and false, null and undefined leave it out; `on` holds listeners by event. */
export interface Attributes {
  readonly on?: Listeners;
  readonly [name: string]: string | number | boolean | null | undefined | Listeners;
}

/**
 * Makes an element with attributes and children.
 *
 * Strings become text nodes, whatever they hold: nothing from a cell is ever read as markup.
 */
export function make<Tag extends keyof HTMLElementTagNameMap>(tag: Tag, attributes?: Attributes, ...children: Child[]): HTMLElementTagNameMap[Tag];
export function make(tag: string, attributes?: Attributes, ...children: Child[]): HTMLElement;
export function make(tag: string, attributes: Attributes = {}, ...children: Child[]): HTMLElement {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "object" && value !== null) {
      for (const [event, listener] of Object.entries(value)) element.addEventListener(event, listener as EventListener);
    } else if (value !== false && value !== null && value !== undefined) {
      // An attribute for screen readers says true in a word: an empty one says nothing.
      element.setAttribute(name, value === true && !name.startsWith("aria-") ? "" : String(value));
    }
  }
  append(element, children);
  return element;
}

/** Puts `children` in place of whatever `element` holds. */
export function fill(element: Element, ...children: Child[]): void {
  element.replaceChildren();
  append(element, children);
}

function append(element: Element, children: readonly Child[]): void {
  for (const child of children) {
    if (child === null || child === undefined || child === false) continue;
    if (isList(child)) append(element, child);
    else element.append(child instanceof Node ? child : String(child));
  }
}

/** Tells a list of children from one child; the language's own test does not know lists that are read only. */
function isList(child: Child): child is readonly Child[] {
  return Array.isArray(child);
}
