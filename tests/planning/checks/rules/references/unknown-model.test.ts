import { unknownModel } from "../../../../../src/planning/checks/rules/references/unknown-model";
import { found, mends, sample } from "../../../../support/plan-rows";

function withModels(...models: string[]) {
  const rows = sample();
  rows.models = models.map((model) => ({ model }));
  return rows;
}

describe("unknown-model", () => {
  test("warns of an array whose model is not in the table Models, with a mend where one name is spelt alike", () => {
    const rows = withModels("Alder 24", "Rowan-12");
    const said = 'Model "Rowan 12" of bi-array-1 is not in the table Models, so nothing is known of it. Write Rowan-12.';
    expect(found(unknownModel, rows)).toEqual([`Arrays 7 Model: ${said}`, `Arrays 8 Model: ${said.replace("array-1", "array-2")}`]);
    expect(mends(unknownModel, rows)).toEqual(["Arrays 7 Model: Rowan-12", "Arrays 8 Model: Rowan-12"]);
  });

  test("asks to add it, or to mend the name, where none is spelt alike", () => {
    const rows = withModels("Alder 24");
    expect(found(unknownModel, rows)[0]).toMatch(/so nothing is known of it\. Add it there, or mend the name\.$/);
    expect(mends(unknownModel, rows)).toEqual([]);
  });

  test("is content with models in any case, and with an array that names none", () => {
    const rows = withModels("alder 24", "ROWAN 12");
    rows.arrays[0]!.model = null;
    expect(found(unknownModel, rows)).toEqual([]);
  });

  test("has nothing to say where the table Models is not there or blank", () => {
    expect(found(unknownModel, sample())).toEqual([]);
  });
});
