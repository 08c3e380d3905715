import { makeButton } from "./button";
import { fill, make } from "./make";
import { makeSign } from "./sign";
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
  /** Waits until nothing runs any more. */
  free(): Promise<void>;
}

/** How long work may run before its progress is shown: a flash of a bar tells nobody anything. */
const quietMilliseconds = 250;

/** Makes the status bar. It takes no room while it has nothing to say, but stays where a screen reader listens to it. */
export function makeStatusBar(): StatusBar {
  const sentence = make("p", { role: "status" });
  const close = makeButton(makeSign("close"), () => silence(), { size: "small", appearance: "subtle", icon: true, label: "Close the message" });
  const progress = make("fluent-progress-bar", { "aria-label": "Progress" });
  const buttons = make("div", { class: "bay-row" });
  const element = make("footer", { class: "bay-status" }, make("div", { class: "bay-said" }, sentence, close), progress, buttons);
  let running: string | null = null;
  let ending: Promise<void> = Promise.resolve();

  function silence(): void {
    element.dataset["tone"] = "silent";
    fill(sentence);
    close.hidden = progress.hidden = buttons.hidden = true;
  }

  function say({ sentence: text, tone = "result", waysOn = [] }: Message): void {
    element.dataset["tone"] = tone;
    fill(sentence, text);
    fill(buttons, waysOn.map(({ label, run }) => makeButton(label, run, { size: "small" })));
    buttons.hidden = waysOn.length === 0;
    close.hidden = false;
    progress.hidden = true;
  }

  function sayRunning(title: string): void {
    element.dataset["tone"] = "result";
    fill(sentence, `${title} …`);
    progress.removeAttribute("value");
    progress.hidden = false;
    close.hidden = buttons.hidden = true;
  }

  async function run(title: string, work: (work: Work) => Promise<Message | null>): Promise<void> {
    if (running !== null) {
      fill(sentence, `${running} is still running. Wait until it has ended, then choose again.`);
      return;
    }
    running = title;
    ending = begin(title, work);
    await ending;
  }

  async function free(): Promise<void> {
    while (running !== null) await ending;
  }

  async function begin(title: string, work: (work: Work) => Promise<Message | null>): Promise<void> {
    let isStopped = false;
    let isSaid = false;
    const saying = setTimeout(() => {
      isSaid = true;
      sayRunning(title);
    }, quietMilliseconds);
    const report: Work["report"] = async ({ done, total }) => {
      progress.setAttribute("max", String(total));
      progress.setAttribute("value", String(done));
      if (isSaid) {
        fill(sentence, `${title}: ${done} of ${total} …`);
        if (buttons.hidden) fill(buttons, makeButton("Stop", () => (isStopped = true), { size: "small" }));
        buttons.hidden = false;
      }
      await nextTurn();
      if (isStopped && done < total) throw new Stopped();
    };
    let message: Message | null;
    try {
      message = await work({ report });
    } catch (thrown) {
      message = explain(thrown, title);
    }
    clearTimeout(saying);
    running = null;
    if (message === null) silence();
    else say(message);
  }

  silence();
  return { element, say, run, free };
}
