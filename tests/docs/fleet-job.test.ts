import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";

const root = join(__dirname, "..", "..");

/** What the schema says against a manifest; "" when nothing. The schema package is a module that only node itself can load. */
function complaint(manifest: unknown): string {
  const script = `
    import { Job } from "kubernetes-models/batch/v1/Job";
    try { new Job(JSON.parse(process.argv[1])).validate(); } catch (thrown) { console.log(thrown.message); }`;
  return execFileSync(process.execPath, ["--input-type=module", "-e", script, JSON.stringify(manifest)], { cwd: root, encoding: "utf8" }).trim();
}

describe("the Kubernetes example agrees with the published schema of batch/v1", () => {
  const manifest = parse(readFileSync(join(root, "docs", "fleet-job.yaml"), "utf8")) as { spec: object };

  test("as it stands in the docs", () => {
    expect(complaint(manifest)).toBe("");
  });

  test("and a field of the wrong kind would be noticed", () => {
    expect(complaint({ ...manifest, spec: { ...manifest.spec, completions: "many" } })).toMatch(/completions/);
  });
});
