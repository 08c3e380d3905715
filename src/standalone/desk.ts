import type { IWorkbookData } from "@univerjs/core";
import { bringUpNotes } from "../workbook/engine/stored-notes";
import { emptyWorkbook } from "../workbook/engine/stored-sheet";
import type { LiveWorkbook } from "../workbook/engine/live-workbook";
import type { SavedFile } from "../workbook/engine/workbook-file";
import type { Grid } from "./grid/open-grid";
import type { KeptPlan, KeptPlanTitle, PlanStore } from "./plan-store";

/** How long after the first change that is not kept the plan is kept, in milliseconds, however one types on. */
const keepAfter = 1_500;
/** How long after a refusal it is tried again, in milliseconds. */
const tryAgainAfter = 15_000;

/** A workbook to be opened, and under which name. */
interface Opened {
  readonly id: string;
  readonly name: string;
  readonly data: Partial<IWorkbookData>;
  readonly original?: Uint8Array;
}

/** How it stands with keeping the plan. */
export type Keeping = "kept" | "changed" | "refused" | "passing";

/** What the desk needs of the grid. */
export type DeskGrid = Pick<Grid, "live" | "endTyping" | "show">;

/** What the desk tells the page: that name or state changed, and sentences for the person. */
export interface DeskDisplay {
  readonly refresh: () => void;
  readonly say: (sentence: string) => void;
}

/** The one plan on the desk: opened, kept in the browser's storage as it changes, saved as a file. */
export class Desk {
  private constructor(
    private readonly store: PlanStore,
    private current: Opened,
    private readonly hold: Hold,
    private readonly display: DeskDisplay,
  ) {}

  private grid: DeskGrid | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;
  /** Sheets that changed since they were last kept, by id; "" for what names no sheet. */
  private touched = new Set<string>();
  /** What is being written at the moment. */
  private writing: Promise<void> | null = null;
  private refusal: string | null = null;
  /** True while there is something that no saved file has. */
  private unfiled = false;

  /** Sets the desk up with the plan that was last kept, else with the sample; a plan that cannot be read is passed over, and said. */
  static async open(store: PlanStore, display: DeskDisplay): Promise<Desk> {
    const said = store.passing === null ? [] : [`${store.passing} Plans are gone when this page is closed: save them as files.`];
    const say = (sentence: string) => void said.push(sentence);
    const hold = holdPlans();
    const plan = await ownCopy((await latestPlan(store, say)) ?? (await samplePlan()), hold, say);
    if (said.length > 0) display.say(said.join(" "));
    return new Desk(store, plan, hold, display);
  }

  /** The workbook that is to be shown. */
  get data(): Partial<IWorkbookData> {
    return this.current.data;
  }

  get name(): string {
    return this.current.name;
  }

  get keeping(): Keeping {
    if (this.store.passing !== null) return "passing";
    if (this.refusal !== null) return "refused";
    return this.touched.size > 0 || this.writing !== null ? "changed" : "kept";
  }

  /** True where closing the page would lose something. */
  get wouldLose(): boolean {
    return this.unfiled && this.keeping !== "kept";
  }

  /** Joins the desk to the grid that shows its workbook. */
  attach(grid: DeskGrid): void {
    this.grid = grid;
    // The sample and a copy are kept before anything is typed into them: another window must find them.
    void this.store.titles().then((titles) => {
      if (!titles.some(({ id }) => id === this.current.id)) this.touch("");
    }, () => undefined);
    grid.live.onChange(({ id, sheetId }) => {
      // Heights that rows find for themselves while they are drawn, and frozen columns that give way to a narrow grid, are nobody's change.
      if (id.includes("auto-height") || (id === "sheet.mutation.set-frozen" && grid.live.isOurs)) return;
      this.unfiled = true;
      this.touch(sheetId);
    });
  }

  /** Takes the plan off the desk, as the grid cannot show it, and puts the sample there; what is kept of the plan stays as it is. */
  async setAside(): Promise<void> {
    this.display.say(`"${this.name}" cannot be shown. It stays in this browser as it is; here is the sample. Open the file it was last saved as.`);
    this.current = await samplePlan();
  }

  startNew(): Promise<KeptPlanTitle> {
    return this.put({ id: newId(), name: "New plan", data: emptyWorkbook() });
  }

  async openSample(): Promise<KeptPlanTitle> {
    return this.put(await samplePlan());
  }

  async openFile(name: string, bytes: Uint8Array): Promise<KeptPlanTitle> {
    const { readWorkbook } = await import(/* webpackChunkName: "xlsx" */ "../workbook/engine/workbook-file");
    return this.put({ id: newId(), name: name.replace(/\.xlsx$/i, ""), data: readWorkbook(bytes), original: bytes });
  }

  async openKept(id: string): Promise<KeptPlanTitle> {
    return this.put(await readBack(this.store, id, this.display.say));
  }

  /** The plans that are kept, without the one on the desk. */
  async others(): Promise<KeptPlanTitle[]> {
    return (await this.store.titles()).filter(({ id }) => id !== this.current.id);
  }

  /** Removes a plan that is not on the desk from the browser's storage, for good. */
  async forget(id: string): Promise<void> {
    await this.store.forget(id);
    if (this.refusal !== null) await this.keepNow();
  }

  /** Makes an .xlsx file of the workbook as it is now, with what a person is to know of it. */
  async saveFile(): Promise<{ readonly file: Blob } & Omit<SavedFile, "bytes">> {
    const { writeWorkbook } = await import(/* webpackChunkName: "xlsx" */ "../workbook/engine/workbook-file");
    const live = await this.atRest();
    const { bytes, ...told } = writeWorkbook(live.store(), this.current.original);
    this.unfiled = false;
    return { file: new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" }), ...told };
  }

  /** Keeps what changed in the browser's storage now; a refusal is said once, and tried again later. */
  async keepNow(): Promise<void> {
    this.stopWaiting();
    // One after the other: what is written last must be what is latest.
    await this.writing;
    if (this.touched.size === 0 || this.grid === null) return;
    const { touched } = this;
    this.touched = new Set();
    this.writing = this.store.keep(this.kept(), this.sheetsAmong(touched)).then(
      () => {
        this.refusal = null;
      },
      (thrown: unknown) => {
        for (const sheet of touched) this.touched.add(sheet);
        const refusal = sentenceOf(thrown);
        if (refusal !== this.refusal) this.display.say(refusal);
        this.refusal = refusal;
        this.keepSoon(tryAgainAfter);
      },
    );
    await this.writing.finally(() => (this.writing = null));
    this.display.refresh();
  }

  /** Waits until what is being typed stands in its cell and all is computed; a cell left open would be typed into the next workbook. */
  private async atRest(): Promise<LiveWorkbook> {
    const grid = this.grid!;
    await grid.endTyping();
    await grid.live.settle();
    return grid.live;
  }

  private touch(sheetId: string): void {
    this.touched.add(sheetId);
    this.keepSoon(keepAfter);
    this.display.refresh();
  }

  private keepSoon(wait: number): void {
    this.timer ??= setTimeout(() => void this.keepNow(), wait);
  }

  private stopWaiting(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
  }

  /** The ids of sheets to be written: every one where a change named none. */
  private sheetsAmong(touched: ReadonlySet<string>): ReadonlySet<string> {
    return touched.has("") ? new Set(this.grid!.live.workbook.getSheets().map((sheet) => sheet.getSheetId())) : touched;
  }

  private kept(): KeptPlan {
    const { id, name, original } = this.current;
    return { id, name, data: this.grid!.live.store().data, ...(original && { original }) };
  }

  /** Puts another plan on the desk; the one that was there is kept, and its title is returned, so that it can be brought back. */
  private async put(next: Opened): Promise<KeptPlanTitle> {
    await this.atRest();
    this.touched.add("");
    await this.keepNow();
    if (this.refusal !== null && this.unfiled) throw new Error(`${this.refusal} Then do that again.`);
    this.stopWaiting();
    const before = { id: this.current.id, name: this.current.name, keptAt: Date.now() };
    this.current = await ownCopy(next, this.hold, this.display.say);
    this.grid!.show(next.data);
    this.touched = new Set([""]);
    this.unfiled = false;
    await this.keepNow();
    return before;
  }
}

/** Reads the plan that was last kept, of those that can be read. */
async function latestPlan(store: PlanStore, say: (sentence: string) => void): Promise<Opened | null> {
  try {
    for (const { id } of await store.titles()) {
      const plan = await readBack(store, id, say).catch((thrown: unknown) => {
        say(sentenceOf(thrown));
        return null;
      });
      if (plan !== null) return plan;
    }
  } catch {
    say("What this browser keeps cannot be read now: reload the page, or open a file.");
  }
  return null;
}

/** Reads a kept plan as far as it goes, and says what is missing. */
async function readBack(store: PlanStore, id: string, say: (sentence: string) => void): Promise<Opened> {
  const { plan, missing } = await store.load(id);
  for (const sentence of missing) say(sentence);
  return { ...plan, data: bringUpNotes(plan.data) };
}

function sentenceOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}

async function samplePlan(): Promise<Opened> {
  const { sampleWorkbook } = await import(/* webpackChunkName: "sample" */ "./sample-workbook");
  return { id: newId(), name: "Thornmere sample", data: sampleWorkbook() };
}

/** Holds a plan for this window as long as it lives; answers false where another window of this browser holds it. */
type Hold = (id: string) => Promise<boolean>;

/**
 * Holds a plan for this window; where another window of this browser holds it, takes a copy instead: two windows that keep the same plan
 * would undo each other's work.
 */
async function ownCopy(plan: Opened, hold: Hold, say: (sentence: string) => void): Promise<Opened> {
  if (await hold(plan.id)) return plan;
  say(`Another window has "${plan.name}" open. This window works on a copy.`);
  return ownCopy({ ...plan, id: newId(), name: `${plan.name} (copy)` }, hold, say);
}

function holdPlans(): Hold {
  const held = new Set<string>();
  return (id) => {
    if (held.has(id) || !("locks" in navigator)) return Promise.resolve(true);
    return new Promise((resolve) => {
      void navigator.locks.request(`baywright plan ${id}`, { ifAvailable: true }, (lock) => {
        if (lock !== null) held.add(id);
        resolve(lock !== null);
        // Held until the window is closed.
        return lock === null ? undefined : new Promise(() => undefined);
      });
    });
  };
}

function newId(): string {
  return crypto.randomUUID();
}
