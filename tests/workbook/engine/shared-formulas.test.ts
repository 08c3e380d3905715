import { FormulaDependencyGenerator, Lexer } from "@univerjs/engine-formula";
import { bootEngine } from "../../../src/headless/open-headless";
import { createBrowserPort } from "../../../src/workbook/engine/browser-port";
import { LiveWorkbook } from "../../../src/workbook/engine/live-workbook";
import { shareFormulas } from "../../../src/workbook/engine/shared-formulas";
import { emptyWorkbook } from "../../../src/workbook/engine/stored-sheet";
import { expectSameStories } from "../../support/formula-story";

const generator = FormulaDependencyGenerator.prototype as unknown as Record<"_registerFormulas", unknown>;
const alone = generator._registerFormulas;
shareFormulas();
const shared = generator._registerFormulas;

test("formulas that say the same of their own rows show and keep the same whether the engine reads each or one for all, through entries, rows that come and go, and undo", async () => {
  await expectSameStories(() => (generator._registerFormulas = shared), () => (generator._registerFormulas = alone), 20261127);
}, 300_000);

test.each([["together", shared, 1], ["each alone", alone, 50]])("fifty formulas that were filled down are read %s", async (_, register, times) => {
  generator._registerFormulas = register;
  const univer = bootEngine(emptyWorkbook());
  const live = new LiveWorkbook(univer);
  const read = jest.spyOn(univer.__getInjector().get(Lexer), "treeBuilder");
  try {
    const rows = Array.from({ length: 50 }, (__, row) => [{ value: row }, { formula: `=A${row + 1}*777` }]);
    await createBrowserPort(univer, live).apply([{ kind: "add-sheet", plan: { name: "Many", rows, styles: {}, columnWidths: [] } }]);
    await live.settle();
    expect(new Set(read.mock.calls.map(([text]) => text)).size).toBe(times);
  } finally {
    live.dispose();
  }
});
