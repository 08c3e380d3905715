import { make, type Child } from "../taskpane/elements/make";

interface ButtonOptions {
  /** main: the one thing to do next; answer: one of the large answers. */
  readonly look?: "main" | "answer";
  readonly disabled?: boolean;
  /** What a screen reader says where the text alone says too little. */
  readonly label?: string;
}

/** Makes a button that a thumb finds. */
export function makeButton(content: Child, run: () => unknown, { look, disabled, label }: ButtonOptions = {}): HTMLButtonElement {
  return make("button", { type: "button", class: look, disabled, "aria-label": label, on: { click: () => void run() } }, content);
}

let fields = 0;

/** A field with its label above it. */
export interface Field<Input extends HTMLElement = HTMLInputElement> {
  readonly element: HTMLElement;
  readonly input: Input;
}

/** Makes a field for a line of text; `offered` are texts that it proposes and does not fill in. */
export function makeField(label: string, value = "", attributes: Readonly<Record<string, string>> = {}, offered: readonly string[] = []): Field {
  const id = nextId();
  const list = offered.filter((text) => text !== "");
  const input = make("input", { id, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", list: list.length > 0 && `${id}-offered`, ...attributes });
  input.value = value;
  const options = list.length > 0 && make("datalist", { id: `${id}-offered` }, list.map((text) => make("option", { value: text })));
  return { input, element: make("div", { class: "field" }, make("label", { for: id }, label), input, options) };
}

/** Makes a field for several lines. */
export function makeTextField(label: string, value = ""): Field<HTMLTextAreaElement> {
  const id = nextId();
  const input = make("textarea", { id, rows: 3 });
  input.value = value;
  return { input, element: make("div", { class: "field" }, make("label", { for: id }, label), input) };
}

/** A choice of one among a few. */
export interface Choice {
  readonly element: HTMLElement;
  /** What is chosen; "" where nothing is. */
  readonly chosen: () => string;
}

/** Makes a choice whose answers lie side by side. */
export function makeChoice(label: string, answers: readonly string[], chosen = ""): Choice {
  const name = nextId();
  const inputs = answers.map((answer) => {
    const input = make("input", { type: "radio", name, value: answer });
    input.checked = answer === chosen;
    return input;
  });
  return {
    element: make("fieldset", { class: "choice" }, make("legend", {}, label), inputs.map((input, index) => make("label", {}, input, make("span", {}, answers[index])))),
    chosen: () => inputs.find(({ checked }) => checked)?.value ?? "",
  };
}

/** Makes a form that its button sends, or Enter; the browser itself sends nothing. `behind` stands below the button. */
export function makeForm(send: () => unknown, button: string, fields: Child, behind: Child = null): HTMLElement {
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    void send();
  };
  return make("form", { on: { submit } }, fields, make("button", { type: "submit", class: "main" }, button), behind);
}

/** Makes the heading of a screen, which takes the keys when the screen comes up, so that it is read aloud. */
export function makeHeading(...content: readonly Child[]): HTMLElement {
  return make("h1", { tabindex: -1 }, ...content);
}

function nextId(): string {
  return `field-${(fields += 1)}`;
}
