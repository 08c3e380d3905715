import type { TableRow } from "../../../../src/planning/plan/schema";
import { PlanModel } from "../../../../src/planning/plan/model";
import { planSheets } from "../../../support/commissioning-plan";
import { modelOf } from "../../../support/plan-model";
import { workbookOf } from "../../../support/plain-workbook";

const alder: TableRow<"models"> = {
  model: "Alder 24", guide: "Installation guide, edition 3", bays: 24, units: 4, depthMm: 820, weightKg: 46, liftKg: 24, liftBy: "lift table", watts: 620, plug: "C14", supplies: 2,
  controllers: "A,B", ports: "0,1,2", portSharing: "array", consoleLine: "115200 8N1",
};

function arrayOf(array: TableRow<"arrays">, models: readonly TableRow<"models">[] = [alder]) {
  return modelOf({ models, arrays: [{ array: "a1", ...array }] }).rows("arrays")[0]!;
}

describe("an array of a model", () => {
  test("is what its model says where it says nothing, the model named without case", () => {
    expect(arrayOf({ model: " alder 24" })).toMatchObject({
      units: 4, depthMm: 820, weightKg: 46, liftKg: 24, liftBy: "lift table", watts: 620, plug: "C14", controllers: "A,B", ports: "0,1,2", portSharing: "array",
    });
  });

  test("keeps what stands in its own row, a 0 too", () => {
    const own = { units: 5, depthMm: 900, weightKg: 50, liftKg: 26, liftBy: "two", watts: 0, plug: "C20", controllers: "1,2", ports: "4", portSharing: "controller" } as const;
    expect(arrayOf({ model: "Alder 24", ...own })).toMatchObject(own);
  });

  test("takes nothing of what is its own: its serial number, place, drives and firmware", () => {
    expect(arrayOf({ model: "Alder 24" })).toMatchObject({ array: "a1", serial: "", rack: "", bottomUnit: null, drives: null, firmware: "" });
  });

  test("shows what it takes, and the further columns of its model", () => {
    const { shown } = arrayOf({ model: "Alder 24", watts: 640 });
    expect(shown).toMatchObject({ "Units": "4", "Watts": "640", "Guide": "Installation guide, edition 3", "Console line": "115200 8N1", "Model": "Alder 24" });
    expect(Object.getPrototypeOf(shown)).toBeNull();
  });

  test("takes nothing into a cell that cannot be read: it is not empty", () => {
    expect(arrayOf({ model: "Alder 24", units: "four", liftBy: "all of us" as "two" })).toMatchObject({ units: null, liftBy: "", watts: 620 });
  });

  test.each([["", "Rowan 12"], ["Rowan 12", "Rowan 12"]])("without a row of its model (%p) is as its own row says, and the model's further columns are blank", (model) => {
    const array = arrayOf({ model, watts: 80 });
    expect(array).toMatchObject({ units: null, plug: "", watts: 80 });
    expect(array.shown).toMatchObject({ "Units": "", "Watts": "80", "Console line": "" });
  });

  test("of a model that stands twice is what the first row says", () => {
    expect(arrayOf({ model: "Alder 24" }, [alder, { ...alder, units: 9 }]).units).toBe(4);
  });

  test.each([["is not there", {}], ["has no row", { Models: [["Table: Models"], ["Model", "Units"]] }]])("is as its own row says where the table Models %s", (_, models) => {
    const sheets = Object.fromEntries(planSheets({ arrays: [{ array: "a1", model: "Alder 24", watts: 80 }] }).map(({ name, values }) => [name, values]));
    const [array] = new PlanModel(workbookOf({ ...sheets, ...models })).rows("arrays");
    expect(array).toMatchObject({ units: null, watts: 80 });
    expect("Console line" in array!.shown).toBe(false);
  });

  test("takes what stands in columns that Arrays does not have at all", () => {
    const sheets = Object.fromEntries(planSheets({ models: [alder] }).map(({ name, values }) => [name, values]));
    const plan = new PlanModel(workbookOf({ ...sheets, Arrays: [["Table: Arrays"], ["Array", "Model"], ["a1", "Alder 24"]] }));
    expect(plan.rows("arrays")[0]).toMatchObject({ units: 4, controllers: "A,B" });
    expect(plan.rows("arrays")[0]!.shown).toMatchObject({ Units: "4" });
  });
});

describe("what follows from arrays follows from what their models give", () => {
  const model = modelOf({
    sites: [{ site: "Mill" }],
    racks: [{ rack: "R1", site: "Mill", units: 42, numberedFrom: "bottom" }],
    feeds: [{ feed: "F1", site: "Mill", volts: 230, phases: 1, breakerA: 16 }],
    networks: [{ network: "n1", prefix: "10.1.0.0/24" }],
    models: [alder],
    arrays: [{ array: "a1", site: "Mill", model: "Alder 24", rack: "R1", bottomUnit: 3, feedA: "F1" }],
  });
  const array = model.rows("arrays")[0]!;

  test("its units, weight and heat in the rack", () => {
    const { devices, kg, heat } = model.racks.of(model.find("racks", "R1")!);
    expect([devices.map(({ lowest, highest }) => [lowest, highest]), kg, heat]).toEqual([[[3, 6]], 46, 620]);
  });

  test("its load on a feed, and the ports it ought to have", () => {
    expect(model.power.loads()[0]!.normal.worstAmps).toBeCloseTo(620 / 230, 12);
    expect(model.ports.expected(array).map(({ controller, port }) => `${controller}/${port}`)).toEqual(["A/0", "A/1", "A/2", "B/0", "B/1", "B/2"]);
  });

  test("and is the same row wherever it is found", () => {
    expect(model.find("arrays", "A1")).toBe(array);
    expect(model.rowsWith("arrays", "rack", "R1")).toEqual([array]);
  });
});
