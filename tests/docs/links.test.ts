import { existsSync, readFileSync, readdirSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";

const root = resolve(__dirname, "..", "..");
const pages = [
  ...readdirSync(root).filter((name) => name.endsWith(".md")).map((name) => join(root, name)),
  ...["docs", "decisions"].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".md")).map((name) => join(root, folder, name)),
  ),
];

/** What a heading is called in a link: small letters, without marks, blanks as hyphens. */
const anchor = (heading: string): string => heading.toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, "").trim().replace(/\s+/g, "-");

const anchorsOf = (path: string): string[] => (readFileSync(path, "utf8").match(/^#+ .+$/gm) ?? []).map((line) => anchor(line.replace(/^#+ /, "")));

describe("links of the pages", () => {
  test("there are pages to look at", () => {
    expect(pages.length).toBeGreaterThan(70);
  });

  test.each(pages.map((path) => [relative(root, path), path]))("in %s all lead somewhere", (_name, path) => {
    const text = readFileSync(path, "utf8").replace(/```[\s\S]*?```/g, "").replace(/`[^`\n]*`/g, "");
    const targets = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target!);
    const dead = targets.filter((target) => {
      if (/^[a-z]+:/.test(target)) return !target.startsWith("https://");
      const [file = "", fragment] = target.split("#");
      const there = file === "" ? path : resolve(dirname(path), file);
      return !existsSync(there) || (fragment !== undefined && !anchorsOf(there).includes(fragment));
    });
    expect(dead).toEqual([]);
  });
});
