import { readFileSync } from "node:fs";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

declare global {
  var axe: { run(context: Document | { readonly include: string[][] }, options: { readonly runOnly?: string[] }): Promise<AxeResults> };
}

const source = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/**
 * Lists what the accessibility checker finds on a page, each fault with where it is; only in `parts`, by their selectors, and only by the rules of `runOnly`, where these are given.
 *
 * The policies of the pages let nobody put a script into them: the checker is run from outside.
 */
export async function complaintsOn(page: Page, { parts, runOnly }: { readonly parts?: string[]; readonly runOnly?: string[] } = {}): Promise<readonly string[]> {
  await page.evaluate(source);
  const asked = { include: parts?.map((part) => [part]), rules: runOnly ? { runOnly } : {} };
  const { violations } = await page.evaluate(({ include, rules }) => globalThis.axe.run(include ? { include } : document, rules), asked);
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
}
