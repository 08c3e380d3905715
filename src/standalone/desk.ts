import type { IWorkbookData } from "@univerjs/core";
import { emptyWorkbook } from "../workbook/engine/stored-sheet";
import type { LiveWorkbook } from "../workbook/engine/live-workbook";
import type { Grid } from "./open-grid";
import type { KeptPlan, KeptPlanTitle, PlanStore } from "./plan-store";

/** How long after a change the plan is kept, in milliseconds: while somebody types it waits. */
const keepAfter = 1_500;

/** A workbook to be opened, and under which name. */
interface Opened {
  readonly id: string;
  readonly name: string;
  readonly data: Partial<IWorkbookData>;
  readonly original?: Uint8Array;
}

/** The one plan on the desk: opened, kept in the browser's storage as it changes, saved as a file. */
export class Desk {
  private constructor(
    private readonly store: PlanStore,
    private current: Opened,
    private readonly changed: () => void,
  ) {}

  private grid: Grid | null = null;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private unsaved = false;

  /** Sets the desk up with the plan that was last kept, else with the sample. `changed` is called when name or state change. */
  static async open(store: PlanStore, changed: () => void): Promise<Desk> {
    const [latest] = await store.titles();
    const kept = latest === undefined ? undefined : await store.load(latest.id).catch(() => undefined);
    return new Desk(store, await ownCopy(kept ?? (await samplePlan())), changed);
  }

  /** The workbook that is to be shown. */
  get data(): Partial<IWorkbookData> {
    return this.current.data;
  }

  get name(): string {
    return this.current.name;
  }

  /** True while changes are not in the browser's storage yet. */
  get isUnsaved(): boolean {
    return this.unsaved;
  }

  /** Joins the desk to the grid that shows its workbook. */
  attach(grid: Grid): void {
    this.grid = grid;
    grid.live.onChange(({ id }) => {
      // Heights that rows find for themselves while they are drawn are nobody's change.
      if (!id.includes("auto-height")) this.keepSoon();
    });
    addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") void this.keepNow();
    });
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
    const kept = await this.store.load(id);
    if (kept === undefined) throw new Error("That plan is no longer kept in this browser.");
    return this.put(kept);
  }

  /** The plans that are kept, without the one on the desk. */
  async others(): Promise<KeptPlanTitle[]> {
    return (await this.store.titles()).filter(({ id }) => id !== this.current.id);
  }

  /** Makes an .xlsx file of the workbook as it is now; `outOfDate` names formulas that are saved without a result, as the engine may not compute them. */
  async saveFile(): Promise<{ readonly file: Blob; readonly outOfDate: readonly string[] }> {
    const { writeWorkbook } = await import(/* webpackChunkName: "xlsx" */ "../workbook/engine/workbook-file");
    const live = await this.atRest();
    const { bytes, outOfDate } = writeWorkbook(live.store(), this.current.original);
    return { file: new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" }), outOfDate };
  }

  /** Keeps the plan in the browser's storage now, where it changed. */
  async keepNow(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    if (!this.unsaved || this.grid === null) return;
    this.unsaved = false;
    await this.store.keep(this.kept());
    this.changed();
  }

  /** Waits until what is being typed stands in its cell and all is computed; a cell left open would be typed into the next workbook. */
  private async atRest(): Promise<LiveWorkbook> {
    const grid = this.grid!;
    await grid.endTyping();
    await grid.live.settle();
    return grid.live;
  }

  private keepSoon(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    else this.unsaved = true;
    this.timer = setTimeout(() => void this.keepNow(), keepAfter);
    this.changed();
  }

  private kept(): KeptPlan {
    const { id, name, original } = this.current;
    return { id, name, keptAt: Date.now(), data: this.grid!.live.store().data, ...(original && { original }) };
  }

  /** Puts another plan on the desk; the one that was there is kept, and its title is returned, so that it can be brought back. */
  private async put(next: Opened): Promise<KeptPlanTitle> {
    await this.atRest();
    const before = this.kept();
    await this.store.keep(before);
    this.current = await ownCopy(next);
    this.grid!.show(next.data);
    this.unsaved = true;
    await this.keepNow();
    return before;
  }
}

async function samplePlan(): Promise<Opened> {
  const { sampleWorkbook } = await import(/* webpackChunkName: "sample" */ "./sample-workbook");
  return { id: newId(), name: "Thornmere sample", data: sampleWorkbook() };
}

/** Plans that this tab holds. */
const held = new Set<string>();

/**
 * Holds a plan for this tab as long as the tab lives; where another tab of this browser holds it, takes a copy instead: two tabs that
 * keep the same plan would undo each other's work.
 */
async function ownCopy(plan: Opened): Promise<Opened> {
  if (held.has(plan.id) || (await holdPlan(plan.id))) return plan;
  return ownCopy({ ...plan, id: newId(), name: `${plan.name} (copy)` });
}

function holdPlan(id: string): Promise<boolean> {
  if (!("locks" in navigator)) return Promise.resolve(true);
  return new Promise((resolve) => {
    void navigator.locks.request(`baywright plan ${id}`, { ifAvailable: true }, (lock) => {
      if (lock !== null) held.add(id);
      resolve(lock !== null);
      // Held until the tab is closed.
      return lock === null ? undefined : new Promise(() => undefined);
    });
  });
}

function newId(): string {
  return crypto.randomUUID();
}
