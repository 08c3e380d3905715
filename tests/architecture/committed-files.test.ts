import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "../support/source-files";

const files = execFileSync("git", ["ls-files", "-z"], { cwd: projectRoot, encoding: "utf8" }).split("\0").filter((file) => file !== "");
const text = (file: string) => readFileSync(join(projectRoot, file), "utf8");
const readable = files.filter((file) => !/\.(png|xlsx|ico|woff2?)$/.test(file));

/** Paths that are right on one machine only; written in parts, so that this file does not hold one. */
const machinePath = new RegExp(["/(?:work", "root", "home/[a-z]+)/|[A-Z]:\\\\Users\\\\"].join("|"));

describe("committed files", () => {
  test("hold no path of a machine", () => {
    expect(files.length).toBeGreaterThan(150);
    expect(readable.filter((file) => machinePath.test(text(file)))).toEqual([]);
    expect(machinePath.test(["", "work", "x"].join("/"))).toBe(true);
    expect(machinePath.test("https://example.com/homework/x")).toBe(false);
  });

  test("name no registry in the lock file", () => {
    expect(text("package-lock.json")).not.toMatch(/"resolved"/);
  });

  test("are named in lower case with dashes, but for the names that tools and readers expect", () => {
    const odd = files.filter((file) => !file.split("/").every((part) => /^\.?[a-z0-9]+([-.][a-z0-9]+)*$/.test(part)));
    const expected = /^(README|DEVELOPERS|CONTRIBUTING|CHANGELOG|SECURITY|LICENSE)(\.md)?$|^docs\/functions\/[A-Z0-9]+\.md$/;
    expect(odd.filter((file) => !expected.test(file))).toEqual([]);
  });
});
