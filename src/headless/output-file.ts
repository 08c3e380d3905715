import { randomUUID } from "node:crypto";
import { lstat, open, readdir, readFile, realpath, rename, rm, stat, unlink, type FileHandle } from "node:fs/promises";
import type { Stats } from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { invalid, noAnswer, quote, type Problem } from "../planning/text";

/** Writes the bytes of the file that is held, whole or not at all. */
export type WriteOutput = (bytes: Uint8Array) => Promise<void>;

/**
 * Holds the file that a command is to write while `work` reads and computes, so that no second command of ours writes it meanwhile.
 *
 * Only a regular file is written over, or a new one made: no link, folder or device. The bytes are written beside it, synced and renamed,
 * with the mode of the file that was there; a run that is cut off leaves the old file. Refused with a sentence: a file that another
 * command holds, one that may only be read, one that changed since it was taken, a disk that is full. What a killed run left behind, its
 * unfinished part and its hold, the next run clears away.
 */
export async function holdOutput<Result>(name: string, work: (write: WriteOutput) => Promise<Result>): Promise<Result> {
  const before = await statOutput(name);
  const folder = await realpath(dirname(name)).catch((thrown: unknown) => refuse(name, thrown));
  const own = `.${basename(name)}`;
  const hold = join(folder, `${own}.lock`);
  await takeHold(hold, name);
  try {
    await clearParts(folder, own);
    return await work((bytes) => replaceFile({ name, target: join(folder, basename(name)), part: join(folder, `${own}.${process.pid}.part`), before }, bytes));
  } finally {
    await rm(hold, { force: true });
  }
}

/** Looks at what stands where the file is to go; null where nothing does. */
async function statOutput(name: string): Promise<Stats | null> {
  const found = await lstat(name).catch((thrown: unknown) => (codeOf(thrown) === "ENOENT" ? null : refuse(name, thrown)));
  if (found === null) return null;
  if (found.isSymbolicLink()) throw invalid("output", name, `${quote(name)} is a link. Name the file that it leads to.`);
  if (!found.isFile()) throw invalid("output", name, `${quote(name)} is a folder or a device. Name a file to write.`);
  if ((found.mode & 0o222) === 0) throw invalid("output", name, `The file ${quote(name)} may only be read. Name another one, or let it be written to.`);
  return found;
}

/** Takes the hold of a file: a small file beside it that says which process has it. One of a process that is gone does not count. */
async function takeHold(hold: string, name: string): Promise<void> {
  for (;;) {
    try {
      await writeNew(hold, new TextEncoder().encode(holder()));
      return;
    } catch (thrown) {
      if (codeOf(thrown) !== "EEXIST") refuse(name, thrown);
    }
    const there = await readFile(hold, "utf8").catch(() => null);
    if (there === null) continue;
    if (there === "" ? await isFresh(hold) : isAtWork(there)) {
      const by = there === "" ? "" : ` (process ${there})`;
      throw noAnswer("output", name, `Another command is writing ${quote(shortened(name))}${by}. Run again once it has ended; if there is none, delete ${shortened(basename(hold))}.`);
    }
    await dropHold(hold, there);
  }
}

/** Takes a hold away that was left by a process that is gone; gives it back where somebody has taken it meanwhile. */
async function dropHold(hold: string, left: string): Promise<void> {
  const taken = `${hold}.${randomUUID()}`;
  const isMoved = await rename(hold, taken).then(() => true, () => false);
  if (!isMoved) return;
  if ((await readFile(taken, "utf8")) === left) await unlink(taken);
  else await rename(taken, hold);
}

function holder(): string {
  return `${process.pid} on ${hostname()}`;
}

/** Tells whether a hold that says nothing yet was made just now: its process is about to write into it. */
async function isFresh(hold: string): Promise<boolean> {
  const made = await stat(hold).catch(() => null);
  return made !== null && Date.now() - made.mtimeMs < 10_000;
}

/** Tells whether the process of a hold is still there; of another machine nobody here can tell. */
function isAtWork(there: string): boolean {
  const [, pid, host] = /^(\d+) on (.*)$/.exec(there) ?? [];
  if (pid === undefined || host !== hostname()) return true;
  try {
    process.kill(Number(pid), 0);
    return true;
  } catch (thrown) {
    return codeOf(thrown) !== "ESRCH";
  }
}

/** Deletes what killed runs have left of the file; only who holds it may. */
async function clearParts(folder: string, own: string): Promise<void> {
  const isPart = (file: string): boolean => file.startsWith(`${own}.`) && /^\d+\.part$/.test(file.slice(own.length + 1));
  for (const file of (await readdir(folder)).filter(isPart)) await rm(join(folder, file), { force: true });
}

interface Replacement {
  readonly name: string;
  readonly target: string;
  readonly part: string;
  readonly before: Stats | null;
}

async function replaceFile({ name, target, part, before }: Replacement, bytes: Uint8Array): Promise<void> {
  try {
    await writeNew(part, bytes, before === null ? undefined : before.mode & 0o777);
    const now = await statOutput(name);
    if (now?.ino !== before?.ino || now?.mtimeMs !== before?.mtimeMs || now?.size !== before?.size) {
      throw noAnswer("output", name, `Another program changed ${quote(name)} meanwhile. Nothing was written over it; run again.`);
    }
    await rename(part, target);
    await syncFolder(dirname(target));
  } catch (thrown) {
    await rm(part, { force: true });
    refuse(name, thrown);
  }
}

/** Writes a file that must not be there yet, and waits until it is on the disk. */
async function writeNew(path: string, bytes: Uint8Array, mode?: number): Promise<void> {
  const file = await open(path, "wx", mode);
  try {
    await file.writeFile(bytes);
    // The mode of a new file is what is left of it by the process' mask.
    if (mode !== undefined) await file.chmod(mode);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Lets the new name reach the disk too, where the system can open a folder for that. */
async function syncFolder(folder: string): Promise<void> {
  let handle: FileHandle | null = null;
  try {
    handle = await open(folder, "r");
    await handle.sync();
  } catch {
    // The file itself is synced: what is left is up to the system.
  } finally {
    await handle?.close();
  }
}

function codeOf(thrown: unknown): string {
  return (thrown as { readonly code?: string }).code ?? "";
}

function refuse(name: string, thrown: unknown): never {
  if (codeOf(thrown) === "") throw thrown;
  throw cannotWrite(name, codeOf(thrown));
}

function cannotWrite(name: string, code: string): Problem {
  if (code === "ENOSPC" || code === "EDQUOT" || code === "EFBIG") return noAnswer("output", name, `There is no room left for ${quote(name)}. Make some, then run again.`);
  return invalid("output", name, `The file ${quote(name)} cannot be written. Check that its folder is there and may be written to.`);
}

function shortened(name: string): string {
  return name.length > 40 ? `…${name.slice(-39)}` : name;
}
