// A regression file: what is recorded was computed by this code, so it says that answers stay as they are, not that they are right. Whether
// they are right is held against outside figures in tests/published.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../../src/functions/catalogue";
import { answerOf, goldenFormulas, recordedAnswers, sameAnswer } from "../support/golden-answers";
import { parseCall } from "../support/formula-call";

const recorded = recordedAnswers();
const formulas = goldenFormulas();

/** What the changelog says under every heading "Answers that change". */
function announced(changelog: string): string {
  return [...changelog.matchAll(/^### Answers that change\n([\s\S]*?)(?=^#|$(?![\s\S]))/gm)].map(([, text]) => text).join("\n");
}

describe("answers", () => {
  test("are held for a few hundred formulas, of every function but VERSION, and for no other", () => {
    expect(formulas.length).toBeGreaterThan(400);
    expect([...new Set(formulas.map((formula) => parseCall(formula).id))].sort()).toEqual(catalogue.map(({ id }) => id).filter((id) => id !== "VERSION").sort());
    expect(Object.keys(recorded).sort()).toEqual([...formulas].sort());
  });

  test("do not change: who means to change one runs npm run answers and names the formula in CHANGELOG.md", () => {
    const changed = formulas.flatMap((formula) => {
      const now = answerOf(formula);
      const held = recorded[formula]?.at(-1)?.answer;
      return sameAnswer(now, held) ? [] : [{ formula, held, now }];
    });
    expect(changed).toEqual([]);
  });

  test('that did change are named under "Answers that change" in the changelog', () => {
    const said = announced(readFileSync(join(__dirname, "..", "..", "CHANGELOG.md"), "utf8"));
    const silent = Object.entries(recorded).filter(([formula, history]) => history.length > 1 && !said.includes(formula));
    expect(silent.map(([formula]) => formula)).toEqual([]);
  });

  test("are announced only where the changelog says so under that heading", () => {
    const said = announced("## [2.0.0]\n\n### Added\n\n- `=BAY.A(1)`\n\n### Answers that change\n\n- `=BAY.B(1)` was 1, is 2.\n\n### Fixed\n\n- `=BAY.C(1)`\n");
    expect([said.includes("=BAY.A(1)"), said.includes("=BAY.B(1)"), said.includes("=BAY.C(1)")]).toEqual([false, true, false]);
  });
});
