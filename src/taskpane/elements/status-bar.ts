import { makeButton } from "./button";
import { fill, make } from "./make";
import { explain, nextTurn, Stopped, type Message, type Work } from "./work";

/** The line at the foot of the pane: the last result, or the work that runs, with its progress and a way to stop it. */
export interface StatusBar {
  readonly element: HTMLElement;
  say(message: Message): void;
  /**
   * Runs one piece of work and says the message it answers with, or why it failed; null says nothing. A second piece of work is refused
   * while one runs.
   */
  run(title: string, work: (work: Work) => Promise<Message | null>): Promise<void>;
}

/** How long work may run before its progress is shown: a flash of a bar tells nobody anything. */
const quietMilliseconds = 250;

/** Makes the status bar. It is not seen while it has nothing to say. */
export function makeStatusBar(): StatusBar {
  const sentence = make("p", { role: "status" });
  const progress = make("fluent-progress-bar", { hidden: true, "aria-label": "Progress" }) as HTMLElement & { value: number | null; max: number };
  const buttons = make("div", { class: "bay-row", hidden: true });
  const element = make("footer", { class: "bay-status", hidden: true }, sentence, progress, buttons);
  let running: string | null = null;

  const show = ({ sentence: text, tone = "result", waysOn = [] }: Message) => {
    element.hidden = false;
    element.dataset["tone"] = tone;
    fill(sentence, text);
    const close = makeButton("Close", () => (element.hidden = true), { size: "small", appearance: "subtle" });
    fill(buttons, waysOn.map(({ label, run }) => makeButton(label, run, { size: "small" })), close);
    buttons.hidden = false;
  };

  return {
    element,
    say: show,
    async run(title, work) {
      if (running !== null) {
        fill(sentence, `${running} is still running. Wait for it, or choose Stop.`);
        return;
      }
      running = title;
      const stop = new AbortController();
      const started = performance.now();
      const begin = setTimeout(() => {
        element.hidden = false;
        element.dataset["tone"] = "result";
        fill(sentence, `${title} …`);
        progress.removeAttribute("value");
        progress.hidden = false;
        fill(buttons, makeButton("Stop", () => stop.abort(), { size: "small" }));
        buttons.hidden = false;
      }, quietMilliseconds);
      let message: Message | null;
      try {
        message = await work({
          signal: stop.signal,
          async report({ done, total }) {
            progress.setAttribute("max", String(total));
            progress.setAttribute("value", String(done));
            if (performance.now() - started > quietMilliseconds) fill(sentence, `${title}: ${done} of ${total} …`);
            await nextTurn();
            if (stop.signal.aborted) throw new Stopped();
          },
        });
      } catch (thrown) {
        message = explain(thrown, title);
      }
      clearTimeout(begin);
      running = null;
      progress.hidden = true;
      if (message === null) element.hidden = true;
      else show(message);
    },
  };
}
