import { spawnSync } from "node:child_process";
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, truncate, utimes, writeFile } from "node:fs/promises";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { holdOutput } from "../../src/headless/output-file";
import { Problem } from "../../src/planning/text";

let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "output-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const at = (name: string): string => join(folder, name);
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const put = (name: string, text: string): Promise<void> => holdOutput(at(name), (write) => write(bytes(text)));

async function sentenceOf(work: Promise<unknown>): Promise<string> {
  const thrown: unknown = await work.then(() => null, (reason: unknown) => reason);
  if (thrown instanceof Problem) return thrown.sentence;
  throw new Error(`no sentence: ${String(thrown)}`);
}

describe("the file that a command writes", () => {
  test("is written whole, and nothing else is left beside it", async () => {
    await put("out.xlsx", "new");
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("new");
    expect(await readdir(folder)).toEqual(["out.xlsx"]);
  });

  test("keeps the mode of the file that was there", async () => {
    await writeFile(at("out.xlsx"), "old");
    await chmod(at("out.xlsx"), 0o640);
    await put("out.xlsx", "new");
    expect((await stat(at("out.xlsx"))).mode & 0o777).toBe(0o640);
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("new");
  });

  test("is left as it is where the work fails", async () => {
    await writeFile(at("out.xlsx"), "old");
    await expect(holdOutput(at("out.xlsx"), () => Promise.reject(new Error("engine")))).rejects.toThrow("engine");
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("old");
    expect(await readdir(folder)).toEqual(["out.xlsx"]);
  });

  test("is never a link, a folder or a device", async () => {
    await writeFile(at("plan.xlsx"), "old");
    await symlink(at("plan.xlsx"), at("link.xlsx"));
    await symlink(at("nowhere"), at("dangling.xlsx"));
    await mkdir(at("folder.xlsx"));
    expect(await sentenceOf(put("link.xlsx", "new"))).toMatch(/is a link\. Name the file/);
    expect(await sentenceOf(put("dangling.xlsx", "new"))).toMatch(/is a link\. Name the file/);
    expect(await sentenceOf(put("folder.xlsx", "new"))).toMatch(/a folder or a device/);
    expect(await sentenceOf(holdOutput("/dev/null", (write) => write(bytes("new"))))).toMatch(/a folder or a device/);
    expect(await readFile(at("plan.xlsx"), "utf8")).toBe("old");
    expect((await readdir(folder)).sort()).toEqual(["dangling.xlsx", "folder.xlsx", "link.xlsx", "plan.xlsx"]);
  });

  test("is not written over where it may only be read", async () => {
    await writeFile(at("out.xlsx"), "old", { mode: 0o444 });
    expect(await sentenceOf(put("out.xlsx", "new"))).toMatch(/may only be read/);
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("old");
  });

  test("is not made in a folder that is not there", async () => {
    expect(await sentenceOf(put("nowhere/out.xlsx", "new"))).toMatch(/cannot be written\. Check that its folder/);
    expect(await readdir(folder)).toEqual([]);
  });

  test("has one writer at a time: the second is told so, and the first is whole", async () => {
    let second = "";
    await holdOutput(at("out.xlsx"), async (write) => {
      second = await sentenceOf(put("out.xlsx", "second"));
      await write(bytes("first"));
    });
    expect(second).toMatch(/Another command is writing .* \(process \d+ on /);
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("first");
    await put("out.xlsx", "third");
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("third");
  });

  test("of twenty writers at once has one whole text, and whoever was refused was told", async () => {
    const ends = await Promise.allSettled(Array.from({ length: 20 }, (_, place) => put("out.xlsx", String(place).repeat(1000))));
    const text = await readFile(at("out.xlsx"), "utf8");
    const written = ends.flatMap(({ status }, place) => (status === "fulfilled" ? [String(place).repeat(1000)] : []));
    expect(written).toContain(text);
    for (const end of ends) if (end.status === "rejected") expect(end.reason).toBeInstanceOf(Problem);
    expect(await readdir(folder)).toEqual(["out.xlsx"]);
  });

  test("is not held by a process that was killed, whose unfinished part goes", async () => {
    const { pid } = spawnSync(process.execPath, ["-e", ""]);
    await writeFile(at(".out.xlsx.lock"), `${pid} on ${hostname()}`);
    await writeFile(at(`.out.xlsx.${pid}.part`), "half");
    await put("out.xlsx", "new");
    expect(await readdir(folder)).toEqual(["out.xlsx"]);
  });

  test("is held by a process of another machine, of which nobody here can tell whether it is there", async () => {
    await writeFile(at(".out.xlsx.lock"), "1 on elsewhere.example");
    expect(await sentenceOf(put("out.xlsx", "new"))).toMatch(/delete \.out\.xlsx\.lock/);
    expect(await readdir(folder)).toEqual([".out.xlsx.lock"]);
  });

  test("is held for ten seconds by a hold that says nothing yet, and no longer", async () => {
    await writeFile(at(".out.xlsx.lock"), "");
    expect(await sentenceOf(put("out.xlsx", "new"))).toMatch(/Another command is writing/);
    const before = new Date(Date.now() - 20_000);
    await utimes(at(".out.xlsx.lock"), before, before);
    await put("out.xlsx", "new");
    expect(await readdir(folder)).toEqual(["out.xlsx"]);
  });

  test("is not written over what another program saved there meanwhile", async () => {
    await writeFile(at("out.xlsx"), "old");
    const sentence = await sentenceOf(
      holdOutput(at("out.xlsx"), async (write) => {
        await writeFile(at("out.xlsx"), "saved by somebody");
        await write(bytes("new"));
      }),
    );
    expect(sentence).toMatch(/Another program changed .* meanwhile/);
    expect(await readFile(at("out.xlsx"), "utf8")).toBe("saved by somebody");
    expect(await readdir(folder)).toEqual(["out.xlsx"]);
  });

  test("is not written over a file that came or went meanwhile", async () => {
    await sentenceOf(holdOutput(at("new.xlsx"), async (write) => {
      await writeFile(at("new.xlsx"), "somebody's");
      await write(bytes("ours"));
    }));
    expect(await readFile(at("new.xlsx"), "utf8")).toBe("somebody's");
    await writeFile(at("gone.xlsx"), "old");
    await truncate(at("gone.xlsx"));
    await sentenceOf(holdOutput(at("gone.xlsx"), async (write) => {
      await rm(at("gone.xlsx"));
      await write(bytes("ours"));
    }));
    expect(await readdir(folder)).toEqual(["new.xlsx"]);
  });
});
