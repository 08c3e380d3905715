// Records the answers of tests/golden in answers.json. An answer that differs from the last one recorded is put behind it, never over
// it: the test then wants the formula named under "Answers that change" in CHANGELOG.md.
import { writeFileSync } from "node:fs";
import { answerOf, answersFile, goldenFormulas, recordedAnswers, sameAnswer } from "../tests/support/golden-answers";
import { version } from "../package.json";

const recorded = recordedAnswers();
let [added, changed] = [0, 0];
for (const formula of goldenFormulas()) {
  const answer = answerOf(formula);
  const history = (recorded[formula] ??= []);
  const last = history.at(-1);
  if (last !== undefined && sameAnswer(last.answer, answer)) continue;
  history.push({ release: version, answer });
  if (last === undefined) added += 1;
  else changed += 1;
}
const lines = Object.entries(recorded)
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([formula, history]) => `  ${JSON.stringify(formula)}: ${JSON.stringify(history)}`);
writeFileSync(answersFile, `{\n${lines.join(",\n")}\n}\n`);
console.log(`${lines.length} formulas: ${added} added, ${changed} changed`);
