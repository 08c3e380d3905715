import { assignPlanAddresses, proposeCabling } from "../../../../src/planning/assignment";
import { checkPlan, rules } from "../../../../src/planning/checks";
import { missingValues, planSite, questions, sections, type Answers, type QuestionKey } from "../../../../src/planning/plan/guided";
import { PlanModel } from "../../../../src/planning/plan/model";
import { tableKeys } from "../../../../src/planning/plan/schema";
import { planTables, sampleRows } from "../../../../src/planning/plan/set-up";
import type { WorkbookSnapshot } from "../../../../src/sheet";
import { initialRows } from "../../../../src/actions/set-up";
import { carryOut } from "../../../support/plan-changes";
import { snapshotOf } from "../../../support/plain-workbook";
import { cellOf, sample } from "../../../support/plan-rows";

const empty = (): WorkbookSnapshot => snapshotOf(planTables({ sheets: [] }, tableKeys, initialRows()));

/** Three arrays of one model, two switches and two hosts: what a person who knows the site answers. */
const answers: Answers = {
  site: "Map Store", room: "1.04", contact: "Front desk", timeServers: "10.9.0.5", alertsTo: "storage@thornmere.example", access: "Level from the yard",
  racks: "2", rackUnits: "42", rackDepth: "1000", rackLimit: "800", rackCooling: "4000", volts: "230", phases: "1", breaker: "16", sourceA: "UPS", sourceB: "Mains board",
  dataNetworks: "2", dataPrefixes: "10.64.81.0/24, 10.64.82.0/24", dataVlans: "181, 182", dataMtu: "9000", managementPrefix: "10.64.80.0/24", managementGateway: "10.64.80.1",
  switches: "2", switchPorts: "24", frameBytes: "9216", model: "Alder 24", bays: "24", units: "2", depth: "760", weight: "28", liftKg: "16", liftBy: "lift table", watts: "450", controllers: "2",
  dataPorts: "2", managementPorts: "1", arrays: "3", drives: "12", driveSize: "4 TB", scheme: "RAID 6", spares: "1", clusterState: "new", fillLimit: "80%", hosts: "2", plannedDate: "2026-12-01",
};

const planned = (given: Answers, book = empty()): WorkbookSnapshot => carryOut(book, planSite(new PlanModel(book), given));
const refusal = (given: Answers, book = empty()): string => {
  try {
    planSite(new PlanModel(book), given);
    return "";
  } catch (thrown) {
    return (thrown as { sentence: string }).sentence;
  }
};
const findings = (book: WorkbookSnapshot, weights: readonly string[]) =>
  checkPlan(book, rules, "2026-11-27").filter(({ weight }) => weights.includes(weight)).map((one) => `${one.rule} ${cellOf(book, one)}`);

test("a site of three arrays, two switches and two hosts takes at most sixty answers, none of them twice", () => {
  expect(Object.keys(questions).length).toBeLessThanOrEqual(60);
  expect(Object.values(sections).flatMap((part) => Object.keys(part))).toEqual(Object.keys(questions));
  expect(new Set(Object.values(questions).map(({ label }) => label)).size).toBe(Object.keys(questions).length);
});

test("what was answered stands in the tables, each once, and nothing of it is assumed but places in racks", () => {
  const book = planned(answers);
  const model = new PlanModel(book);
  expect(model.rows("arrays").map(({ array, rack, bottomUnit, units, weightKg, clusterOrder }) => [array, rack, bottomUnit, units, weightKg, clusterOrder])).toEqual([
    ["Map Store array 1", "Map Store rack 1", 1, 2, 28, 1],
    ["Map Store array 2", "Map Store rack 2", 1, 2, 28, 2],
    ["Map Store array 3", "Map Store rack 1", 3, 2, 28, 3],
  ]);
  expect(model.rows("networks").map(({ network, prefix, gateway, vlan, mtu, side }) => [network, prefix, gateway, vlan, mtu, side])).toEqual([
    ["Map Store data 1", "10.64.81.0/24", "none", 181, 9000, "A"],
    ["Map Store data 2", "10.64.82.0/24", "none", 182, 9000, "B"],
    ["Map Store management", "10.64.80.0/24", "10.64.80.1", null, null, ""],
  ]);
  expect(model.rows("switches").map(({ side, networks, bottomUnit }) => [side, networks, bottomUnit])).toEqual([
    ["A", "Map Store data 1, Map Store management", 42],
    ["B", "Map Store data 2, Map Store management", 42],
  ]);
  expect(model.rows("jobs").map(({ job, plannedDate, state }) => [job, plannedDate, state])).toEqual([["Map Store installation", "2026-12-01", "planned"]]);
  expect([...new Set(model.rows("assumptions").map(({ table, column }) => `${table} ${column}`))]).toEqual(["Arrays Bottom unit", "Switches Bottom unit", "Switches Units"]);
});

test("once addresses and cables are proposed nothing stops, and what warns is an id or an assumption", () => {
  let book = planned(answers);
  for (const propose of [assignPlanAddresses, proposeCabling]) book = carryOut(book, propose(book));
  expect(findings(book, ["stop"])).toEqual([]);
  expect([...new Set(findings(book, ["warn"]).map((one) => one.split(" ")[0]))]).toEqual(["missing-id", "assumed-value"]);
});

test("a site beside others, whose management network reaches every site, manages its arrays in its own", () => {
  const given = { ...answers, model: "Sorrel 8", dataPrefixes: "10.65.81.0/24, 10.65.82.0/24", managementPrefix: "10.65.80.0/24", managementGateway: "10.65.80.1" };
  let book = planned(given, snapshotOf(planTables({ sheets: [] }, tableKeys, { ...initialRows(), ...sampleRows() })));
  for (const propose of [assignPlanAddresses, proposeCabling]) book = carryOut(book, propose(book));
  expect(findings(book, ["stop"])).toEqual([]);
  expect([...new Set(findings(book, ["warn"]).map((one) => one.split(" ")[0]))]).toEqual(["missing-id", "assumed-value"]);
});

test("what was left empty is assumed and marked, every value of it, or missing and listed", () => {
  const book = planned({ site: "Map Store", model: "Alder 24", racks: "1", dataNetworks: "1", switches: "1", dataPorts: "2", managementPorts: "1", arrays: "1" });
  const model = new PlanModel(book);
  const assumed = model.assumptions.open().map(({ by, header }) => `${by.named} ${header} ${by.value}`);
  expect(assumed).toEqual([
    "Map Store rack 1 Units 42",
    "Map Store data 1 Prefix 10.0.0.0/24", "Map Store management Prefix 10.0.1.0/24", "Map Store management Gateway 10.0.1.1",
    "Alder 24 Units 2", "Alder 24 Controllers 2",
    "Map Store array 1 Bottom unit 1",
    "Map Store pool Fill limit 0.8",
    "Map Store A Volts 230", "Map Store A Phases 1", "Map Store A Breaker A 16", "Map Store B Volts 230", "Map Store B Phases 1", "Map Store B Breaker A 16",
    "Map Store switch 1 Bottom unit 42", "Map Store switch 1 Units 1",
  ]);
  expect(model.assumptions.lost()).toEqual([]);
  const missing = missingValues(model).map(({ table, header, rows }) => `${table} ${header}: ${rows.join(", ")}`);
  expect(missing).toContain("Feeds Source: Map Store A, Map Store B");
  expect(missing).toContain("Arrays Weight kg: Map Store array 1");
  expect(missing).toContain("Clusters State: Map Store cluster");
});

test("assumed networks keep out of every range that the plan has", () => {
  const rows = sample();
  rows.networks.push({ network: "old", prefix: "10.0.0.0/16" }, { network: "older", prefix: "10.1.0.0/24" });
  const book = snapshotOf(planTables({ sheets: [] }, tableKeys, rows));
  const networks = new PlanModel(planned({ site: "Map Store", model: "Alder 24", dataNetworks: "1" }, book)).rows("networks");
  expect(networks.slice(-2).map(({ prefix }) => prefix)).toEqual(["10.1.1.0/24", "10.1.2.0/24"]);
});

test("a model that the plan has is not asked for again, and not written twice", () => {
  const book = planned(answers);
  const unanswered = blank("dataPrefixes", "managementPrefix", "managementGateway", "dataVlans", "units", "bays", "depth", "weight", "liftKg", "liftBy", "watts", "controllers");
  const again = planned({ ...answers, site: "Annex", ...unanswered }, book);
  expect(new PlanModel(again).rows("models")).toHaveLength(1);
  expect(refusal({ ...answers, site: "Annex" }, book)).toBe('"Alder 24" stands in Models already, with all that is said of it. Empty Bays, or name another model.');
});

function blank(...keys: readonly QuestionKey[]): Answers {
  return Object.fromEntries(keys.map((key) => [key, ""]));
}

test("the ports of the model say what they are for: data ports first, then those for management", () => {
  expect(new PlanModel(planned(answers)).rows("modelPorts").map(({ model, port, role }) => `${model} ${port} ${role}`)).toEqual(["Alder 24 0 data", "Alder 24 1 data", "Alder 24 2 management"]);
});

test("arrays that do not fit into the racks get no place", () => {
  const book = planned({ ...answers, racks: "1", rackUnits: "5" });
  expect(new PlanModel(book).rows("arrays").map(({ rack, bottomUnit }) => [rack, bottomUnit])).toEqual([["Map Store rack 1", 1], ["Map Store rack 1", 3], ["", null]]);
});

test.each<[Answers, string]>([
  [{ site: "" }, "Site is empty. Write it: name of the site."],
  [{ model: " " }, "Model is empty. Write it: its name; one that the plan has needs no more answers here."],
  [{ racks: "two" }, 'Racks "two" is not a number. Write digits, such as 42 or 0.5.'],
  [{ racks: "1.5" }, 'Racks "1.5" is no count. Write a whole number.'],
  [{ arrays: "500" }, "Arrays: 500 is more than 200. Bring more in as a list."],
  [{ arrayNames: "north, south" }, "Names of the arrays: 2 for 3. Write one for each, or none."],
  [{ dataPrefixes: "10.64.81.0/24" }, "Prefixes of the data networks: 1 for 2. Write one for each, or none."],
  [{ driveSize: "four" }, 'Drive size "four" is not a size. Write TB as a number, such as 4, or text with a unit, such as "960 GB".'],
  [{ dataVlans: "181, 4095" }, "VLANs of the data networks is 4095. Write a whole number from 1 to 4094, such as 100."],
  [{ volts: "-230" }, "Volts is -230. Write a number above 0 and at most 1000, such as 230."],
  [{ fillLimit: "80" }, ""],
])("%j is refused with a sentence, and nothing is planned", (wrong, sentence) => {
  const said = refusal({ ...answers, ...wrong });
  expect(said).not.toBe("");
  if (sentence !== "") expect(said).toBe(sentence);
});

test("a name that the plan has is refused, before anything is planned", () => {
  const taken = snapshotOf(planTables({ sheets: [] }, tableKeys, sample()));
  expect(refusal({ site: "bindery", model: "Alder 24" }, taken)).toBe('"bindery" stands in Sites already. Write another name, or add to its rows by hand.');
});
