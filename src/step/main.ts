// Entry of the page on which a tab is filled one step at a time: on a phone, without the spreadsheet program and without a network once loaded.
import { dayOf } from "../actions/moment";
import { keepOffline } from "../offline/keep-offline";
import { Problem } from "../planning/text";
import { sheetDayOf } from "../sheet";
import { chooseFile } from "../taskpane/choose-file";
import { fill, make, type Child } from "../taskpane/elements/make";
import type { Hands } from "./hands";
import type { JobTab } from "./job-file";
import { listView } from "./list-view";
import { makeButton } from "./parts";
import { screenOf } from "./screen";
import { raiseView, snagsView, snagView } from "./snag-view";
import { jobsView, startView } from "./start-view";
import { openStepStore, type DeviceNames, type KeptTitle, type StepStore } from "./step-store";
import { stepView } from "./step-view";
import "./step.css";
import { Visit } from "./visit";
import { beginWalk, rowsOf, staysAt, turn, type Walk } from "./walk";

/** The page: what is at hand, and what fills the screen. */
class StepPage {
  private readonly said = make("div", { class: "said", role: "alert" });
  private readonly news = make("div", { class: "news", role: "status" });
  private readonly page = make("main");
  private readonly ways = make("nav", { "aria-label": "Steps" });
  private visit: Visit | null = null;
  private walk: Walk | null = null;
  private persists: boolean | null = null;
  private isOffline = false;

  private constructor(private readonly store: StepStore, private names: DeviceNames) {}

  static async open(root: HTMLElement): Promise<void> {
    const store = await openStepStore();
    const page = new StepPage(store, await store.names());
    fill(root, page.news, page.said, page.page, page.ways);
    keepOffline({
      ready: () => {
        page.isOffline = true;
        document.documentElement.dataset["offline"] = "ready";
        if (page.visit === null) void page.start();
      },
      newer: (take) => fill(page.news, "A newer release is here. What was typed stays. ", makeButton("Take it now", take)),
    });
    await page.start();
  }

  private say(sentence: string): void {
    fill(this.said, sentence !== "" && [make("p", {}, sentence), makeButton("×", () => this.say(""), { label: "Close this message" })]);
  }

  /** Does some work for the person; what is wrong is said in a sentence. */
  private async run(work: () => Promise<void> | void): Promise<void> {
    this.say("");
    try {
      await work();
    } catch (thrown) {
      if (!(thrown instanceof Problem || (thrown instanceof Error && thrown.message.endsWith(".")))) console.error(thrown);
      this.say(sentenceOf(thrown));
    }
  }

  private async start(): Promise<void> {
    this.visit?.close();
    [this.visit, this.walk] = [null, null];
    this.persists = (await persisted()) ?? this.persists;
    this.show("start", startView(await this.store.titles(), [...this.keeping(), ...whatMayBeCleared], {
      choose: () => this.run(async () => {
        const file = await chooseFile([".xlsx"]);
        if (file !== null) await this.enter(await Visit.choose(this.store, file.name, file.bytes, Date.now));
      }),
      open: (id) => this.run(async () => this.enter(await Visit.open(this.store, id, Date.now))),
      forget: (title) => this.run(() => this.forget(title)),
    }));
    fill(this.ways);
  }

  private async forget({ id, name, answers, givenBack }: KeptTitle): Promise<void> {
    const lost = answers === givenBack ? "" : ` ${answers - givenBack} answers were never given back and are lost.`;
    if (!confirm(`Remove ${name} from this device?${lost}`)) return;
    await this.store.forget(id);
    await this.start();
  }

  private async enter(visit: Visit): Promise<void> {
    this.visit?.close();
    this.visit = visit;
    this.persists ??= await askToPersist();
    const [only, ...others] = visit.file.jobs;
    if (only !== undefined && others.length === 0) await this.begin(only);
    else this.chooseJob(visit.file.jobs);
  }

  private chooseJob(jobs: readonly string[]): void {
    this.show("jobs", jobsView(jobs, (job) => this.run(() => this.begin(job))));
    fill(this.ways);
  }

  private async begin(sheet: string): Promise<void> {
    this.walk = beginWalk(await this.visit!.file.read(sheet));
    this.render();
  }

  private hands(): Hands {
    const visit = this.visit!;
    return {
      turn: (to) => {
        this.say(visit.refusal ?? "");
        this.walk = turn(this.walk!, to);
        this.render();
      },
      record: (entries, names = {}) => this.run(async () => {
        const { job } = this.walk!;
        const typed = entries();
        if (typed.length > 0) this.walk = turn(this.walk!, { to: "read", job: await visit.record(job.tab.sheet, typed) });
        await this.remember(names);
        this.render();
        if (visit.refusal !== null) this.say(visit.refusal);
      }),
      giveBack: () => this.run(async () => {
        const { name, bytes } = await visit.giveBack();
        download(name, bytes);
        this.render();
        this.say(`${name} is in the downloads of this device. Hand it to the lead, who brings it back in the pane.`);
      }),
      say: (sentence) => this.say(sentence),
      otherJob: visit.file.jobs.length > 1 ? () => { this.chooseJob(visit.file.jobs); } : null,
      leave: () => void this.run(() => this.start()),
      names: this.names,
      today: () => sheetDayOf(dayOf(new Date()))!,
      notGivenBack: visit.notGivenBack,
      choices: (step) => visit.file.choices(this.walk!.job, step),
    };
  }

  /** Keeps names for the next step; that they are not kept is no loss. */
  private async remember(names: Partial<DeviceNames>): Promise<void> {
    const next = { by: names.by ?? this.names.by, witness: names.witness ?? this.names.witness };
    if (next.by === this.names.by && next.witness === this.names.witness) return;
    this.names = next;
    await this.store.keepNames(next).catch(() => undefined);
  }

  private render(): void {
    const { job, place } = this.walk!;
    const hands = this.hands();
    this.show(JSON.stringify({ ...place, isOpen: false }), this.viewOf(job, hands));
    const row = place.at === "step" ? rowsOf(job).find((one) => one.row === place.row) : undefined;
    const stays = row !== undefined && staysAt(row);
    const look = row?.records.every(({ typed }) => typed.found !== null) === true ? { look: "main" as const } : {};
    fill(
      this.ways,
      place.at !== "list" && [makeButton("‹ Back", () => hands.turn({ to: "back" })),
        makeButton("List", () => hands.turn({ to: "list" }))],
      row !== undefined && makeButton(stays ? "Sign first" : "Next ›", () => hands.turn({ to: "next" }), { disabled: stays, ...look }),
    );
  }

  private viewOf(job: JobTab, hands: Hands): HTMLElement {
    const { place } = this.walk!;
    switch (place.at) {
      case "list":
        return listView(job, hands, [`File: ${this.visit!.name}.`, ...this.keeping()].join(" "));
      case "step": {
        const row = rowsOf(job).find((one) => one.row === place.row)!;
        return stepView(job, screenOf(job, row, place.isOpen), hands);
      }
      case "snags":
        return snagsView(job, hands);
      case "snag": {
        const snag = job.tab.snags.find(({ row }) => row === place.row);
        return snag === undefined ? raiseView(job, place.about, hands) : snagView(job, snag, hands);
      }
    }
  }

  private shown = "";

  /** Puts a view on the screen; another one than before begins at its top, with the keys at its heading. */
  private show(name: string, view: Child): void {
    fill(this.page, view);
    document.body.dataset["hold"] = String(this.page.querySelector(".hold") !== null);
    document.documentElement.dataset["ready"] = "true";
    if (name === this.shown) {
      this.page.querySelector<HTMLElement>(".outcome")?.scrollIntoView({ block: "nearest" });
      return;
    }
    this.shown = name;
    window.scrollTo(0, 0);
    this.page.querySelector("h1")?.focus({ preventScroll: true });
  }

  /** Says how it stands with keeping on this device. */
  private keeping(): string[] {
    if (this.store.passing !== null) return [this.store.passing];
    return [
      "A copy of the workbook and every answer are kept in the storage of this browser as soon as they are given.",
      this.persists === true
        ? "The browser has promised not to clear it by itself."
        : this.persists === false
          ? "The browser did not promise to keep it: it may clear it when the device runs short of space, or after weeks without a visit. Give the file back often."
          : "",
      this.isOffline ? "The page itself opens without a network from now on." : "The page itself is not on this device yet: stay in the network until this line says so.",
    ].filter((sentence) => sentence !== "");
  }
}

const whatMayBeCleared = [
  "Gone with it are a private window that is closed, the browser's data when somebody clears them, and the browser itself when it is removed.",
  "The file that is given back is the record: hand it over at every hold point and at the end of each visit.",
];

/** Tells whether the browser has promised to keep what is stored; null where it does not say. */
async function persisted(): Promise<boolean | null> {
  return "storage" in navigator && (await navigator.storage.persisted().catch(() => false)) ? true : null;
}

/** Asks the browser to promise; false where it refuses or knows no such promise. */
async function askToPersist(): Promise<boolean> {
  return "storage" in navigator && (await navigator.storage.persist().catch(() => false));
}

function sentenceOf(thrown: unknown): string {
  if (thrown instanceof Problem) return thrown.sentence;
  const message = thrown instanceof Error ? thrown.message : String(thrown);
  return message.endsWith(".") ? message : `That failed inside this page, not in your workbook. Give the file back, reload the page, and report it: ${message}`;
}

function download(name: string, bytes: Uint8Array): void {
  const file = new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" });
  const address = URL.createObjectURL(file);
  make("a", { href: address, download: name }).click();
  // The browser reads it after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Follows the theme of the device. */
function followTheme(): void {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const set = () => { document.body.dataset["theme"] = dark.matches ? "dark" : "light"; };
  dark.addEventListener("change", set);
  set();
}

followTheme();
// What stands beside this page is found from its folder.
if (location.pathname.endsWith("/step")) location.replace("step/");
const root = document.getElementById("step")!;
if (isSecureContext) void StepPage.open(root);
else fill(root, make("p", { class: "caution" }, "This page wants an address that begins with https: for any other one a browser keeps no page and locks no file. Ask who put it there."));
