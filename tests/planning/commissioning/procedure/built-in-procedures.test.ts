import { jobsOf, readCommissioningPlan } from "../../../../src/planning/commissioning/build";
import { expandJob, type JobStep } from "../../../../src/planning/commissioning/job";
import { builtInProcedures, withdrawnSteps } from "../../../../src/planning/commissioning/procedure";
import type { TableRows } from "../../../../src/planning/plan/schema";
import { sampleRows } from "../../../../src/planning/plan/set-up";
import { planWorkbook } from "../../../support/commissioning-plan";

function stepsOf(rows: TableRows, job: number): JobStep[] {
  const source = readCommissioningPlan(planWorkbook(rows));
  return expandJob(source.model, jobsOf(source)[job]!).sections.flatMap(({ steps }) => steps);
}

describe("the built-in procedures", () => {
  const procedures = [...new Set(builtInProcedures.procedures.map(({ procedure }) => String(procedure)))];

  test.each(procedures)("%s can be worked out on the sample plan, every field filled", (procedure) => {
    const sample = sampleRows();
    const rows = { ...sample, ...builtInProcedures, jobs: sample.jobs!.map((row) => ({ ...row, procedure })) };
    for (let job = 0; job < sample.jobs!.length; job += 1) {
      const steps = stepsOf(rows, job);
      expect(steps.length).toBeGreaterThan(0);
      expect(steps.filter((one) => [one.do, one.caution, one.expectation.shown].join().includes("{{"))).toEqual([]);
    }
  });

  test("hold at what cannot be undone or hurts: power on, create, join, scheme, erase, capacity in, firmware, controllers out, every pull, data in, acceptance", () => {
    const holds = builtInProcedures.steps.filter(({ holdPoint }) => holdPoint === "yes").map(({ stepId }) => stepId);
    expect(holds).toEqual([
      "WSP-050", "WSP-053", "WSP-057",
      "INS-353", "INS-356", "INS-357", "INS-385", "INS-387", "INS-400", "INS-404", "INS-431", "INS-440", "INS-445", "INS-447", "INS-451", "INS-452",
      "INS-455", "INS-459", "INS-461", "INS-481", "INS-490",
      "JOI-353", "JOI-356", "JOI-357", "JOI-386", "JOI-400", "JOI-431", "JOI-440", "JOI-445", "JOI-447", "JOI-451", "JOI-452", "JOI-461", "JOI-481",
      "JOI-404", "JOI-486",
      "SHF-051", "SHF-072", "SHF-073", "SHF-080", "SHF-081", "SHF-481",
      "RCT-041", "RCT-048", "RCT-043", "RCT-062", "RCT-072",
      "RDR-040", "RDR-072",
      "FWM-040", "FWM-041", "FWM-042", "FWM-043", "FWM-050", "FWM-072",
      "OUT-041", "OUT-050", "OUT-051", "OUT-060", "OUT-071",
      "YCK-070",
    ]);
  });

  test.each(procedures)("%s says of every section to which visit it belongs, and each visit ends with the file given back to the lead", (procedure) => {
    const sections = builtInProcedures.procedures.filter((row) => row.procedure === procedure);
    // Signing the page with the seal comes after the tab was closed.
    const visits = new Map(sections.filter(({ section }) => section !== "Sign-off").map(({ visit, section }) => [visit, section]));
    expect([...visits.keys()].every((visit) => typeof visit === "string" && visit !== "")).toBe(true);
    for (const [, last] of visits) {
      const steps = builtInProcedures.steps.filter((row) => row.procedure === procedure && row.section === last);
      expect(steps.at(-1)!.do).toContain("back to the lead of the work");
    }
  });

  test.each(procedures.filter((procedure) => !["Site survey", "Receiving", "Workshop preparation"].includes(procedure)))(
    "%s leaves the site safe at the end of each visit: cords locked, alerts on, what is not in use told and signed by two", (procedure) => {
      const visits = new Map(builtInProcedures.procedures.filter((row) => row.procedure === procedure && row.section !== "Sign-off").map(({ visit, section }) => [visit, section]));
      for (const [, last] of visits) {
        const steps = builtInProcedures.steps.filter((row) => row.procedure === procedure && row.section === last);
        expect(steps.map(({ do: text, sign }) => [sign, /locked|alerts are on|not in use|back to the lead/.exec(String(text))?.[0]])).toEqual([
          ["one", "locked"], ["one", "alerts are on"], ["two", "not in use"], ["one", "back to the lead"],
        ]);
      }
    },
  );

  const sectionsOf = (procedure: string): string[] => builtInProcedures.procedures.filter((row) => row.procedure === procedure).map(({ section }) => String(section));
  const stand = (procedure: string, order: readonly string[]): void => {
    const sections = sectionsOf(procedure);
    expect(order.filter((section) => !sections.includes(section))).toEqual([]);
    expect(sections.filter((section) => order.includes(section))).toEqual(order);
  };

  test("test failures after the initial RAID build and before data goes in", () => {
    stand("Install a rack array", [
      "Racks", "Rails and lift", "Everything seated", "Power", "New cluster", "Initial RAID build", "Test volume", "Initial RAID build over",
      "Failure tests: cables", "Failure tests: controllers", "Failure tests: cords", "Failure tests: switches", "Failure tests: orderly stop",
      "Failure tests: a drive", "Spare in place", "Test volume gone", "Acceptance", "Put into use",
    ]);
  });

  test("let no array into a live pool before it was built, tested and accepted alone, whether joining adds its capacity or not", () => {
    stand("Add an array to a live cluster", [
      "Join without capacity", "Initial RAID build", "Initial RAID build over", "Failure tests: cables", "Failure tests: controllers", "Failure tests: cords",
      "Failure tests: a drive", "Test volume gone", "Acceptance", "Capacity into the live pool", "Join with capacity", "Data spread",
    ]);
    const touchingOthers = sectionsOf("Add an array to a live cluster").filter((section) => /switches|hosts|orderly/.test(section) && section.startsWith("Failure tests"));
    expect(touchingOthers).toEqual([]);
    const sample = sampleRows();
    const clusters = sample.clusters!.map((row) => ({ ...row, state: "existing" as const }));
    for (const joinAddsCapacity of ["yes", "no", null] as const) {
      const models = sample.models!.map((row) => ({ ...row, joinAddsCapacity }));
      const jobs = sample.jobs!.map((row) => ({ ...row, procedure: "Add an array to a live cluster" }));
      const ids = stepsOf({ ...sample, ...builtInProcedures, clusters, models, jobs }, 1).map(({ stepId }) => stepId);
      const capacityIn = joinAddsCapacity === "no" ? "JOI-404" : "JOI-486";
      for (const before of ["JOI-400", "JOI-431", "JOI-440", "JOI-445", "JOI-451", "JOI-471", "JOI-481"]) {
        expect([before, ids.includes(before), ids.lastIndexOf(before) < ids.indexOf(capacityIn)]).toEqual([before, true, true]);
      }
      expect(ids.filter((id) => ["JOI-386", "JOI-486"].includes(id))).toEqual(Array(2).fill(joinAddsCapacity === "no" ? "JOI-386" : "JOI-486"));
    }
  });

  test("step clear of the fans before a cord goes into an array whose supplies have no switch", () => {
    const sample = sampleRows();
    const steps = stepsOf({ ...sample, ...builtInProcedures }, 0);
    const first = steps.findIndex((one) => /cords? (of|into)/i.test(one.do));
    expect([steps[first]!.holdPoint, steps[first]!.do.indexOf("step clear") < steps[first]!.do.indexOf("cords into")]).toEqual([true, true]);
  });

  describe("for an array with a single controller", () => {
    const sample = sampleRows();
    const arrays = sample.arrays!.map((row) => ({ ...row, controllers: "A" }));
    const ports = sample.ports!.filter(({ controller }) => controller === "A");
    const idsOf = (procedure: string, controllers: string): string[] => {
      const jobs = sample.jobs!.map((row) => ({ ...row, procedure, arrays: "rr-array-1", subject: "A" }));
      const steps = stepsOf({ ...sample, ...builtInProcedures, ...(controllers === "A" ? { arrays, ports } : {}), jobs }, 0);
      expect(steps.filter(({ do: text }) => controllers === "A" && /both controllers|the other (one|controller)/i.test(text)).map(({ stepId }) => stepId)).toEqual([]);
      return steps.map(({ stepId }) => stepId);
    };

    test.each([
      ["Replace a controller", ["RCT-022", "RCT-041", "RCT-060", "RCT-062"], ["RCT-026", "RCT-048"]],
      ["Change firmware", ["FWM-024", "FWM-040", "FWM-041"], ["FWM-026", "FWM-042", "FWM-043"]],
    ])("%s asks for no other controller, and has the hosts let go first", (procedure, withOther, alone) => {
      const [one, two] = [idsOf(procedure, "A"), idsOf(procedure, "A,B")];
      expect([withOther.filter((id) => one.includes(id)), alone.filter((id) => !one.includes(id))]).toEqual([[], []]);
      expect([withOther.filter((id) => !two.includes(id)), alone.filter((id) => two.includes(id))]).toEqual([[], []]);
    });

    test.each(["Install a rack array", "Yearly check", "Workshop preparation"])("%s speaks of no other one", (procedure) => {
      idsOf(procedure, "A");
    });
  });

  test("expect of a drive that is taken out the serial number that the plan has for its bay", () => {
    const sample = sampleRows();
    const drives = [1, 2, 3].map((bay) => ({ array: "rr-array-1", bay, serial: `TMD-${bay}` }));
    const jobs = sample.jobs!.map((row) => ({ ...row, procedure: "Replace a drive", arrays: "rr-array-1", subject: "bay 2" }));
    const steps = stepsOf({ ...sample, ...builtInProcedures, drives, jobs }, 0);
    const read = steps.filter(({ stepId }) => ["RDR-021", "RDR-040"].includes(stepId));
    expect(read.map(({ subject, expectation }) => [subject, expectation.shown])).toEqual(Array(2).fill(["rr-array-1 bay 2", "TMD-2"]));
    // The plan is brought up to date once the tab is closed: before, it would expect the new drive where the old one was read.
    expect(steps.filter(({ do: text }) => text.includes("up to date"))).toEqual([]);
  });

  test("read the serial number of a chassis once it is unpacked, and not before the boxes have stood", () => {
    const ids = stepsOf({ ...sampleRows(), ...builtInProcedures }, 0).map(({ stepId }) => stepId);
    expect(ids.lastIndexOf("INS-325")).toBeLessThan(ids.indexOf("INS-321"));
    expect(ids.indexOf("INS-321")).toBeLessThan(ids.indexOf("INS-336"));
  });

  test("pull no second cord, cable or controller before what the first one belongs to is well again", () => {
    const both = builtInProcedures.steps.filter(({ do: text }) => /then (pull )?the other/i.test(String(text)));
    expect(both.map(({ stepId }) => stepId)).toEqual(["WSP-057", "SHF-072", "SHF-073"]);
    expect(both.filter(({ do: text }) => !/wait until that \w+ is well again/.test(String(text)))).toEqual([]);
  });

  test("expect the address of a cluster and the servers of a site, so that a tick is asked for again once the plan has others", () => {
    const expectOf = (id: string): unknown => builtInProcedures.steps.find(({ stepId }) => stepId === id)?.expect;
    for (const id of ["INS-386", "JOI-385", "JOI-485"]) expect(expectOf(id)).toContain("{{Shared address}}");
    for (const id of ["INS-377", "JOI-377"]) expect(expectOf(id)).toBe("{{Time servers}}; {{Name servers}}");
  });

  test("ask an array with one supply for no cord pulled", () => {
    const sample = sampleRows();
    const idsWith = (supplies: number | null): string[] => {
      const jobs = sample.jobs!.map((row) => ({ ...row, procedure: "Workshop preparation" }));
      const models = sample.models!.map((row) => ({ ...row, supplies }));
      return stepsOf({ ...sample, ...builtInProcedures, models, jobs }, 0).map(({ stepId }) => stepId);
    };
    expect([1, 2, null].map((supplies) => idsWith(supplies).includes("WSP-057"))).toEqual([false, true, true]);
  });

  const wordsOf = (id: string): string => String(builtInProcedures.steps.find(({ stepId }) => stepId === id)!.do);

  test("have every host let go of the test volume before it is deleted, and leave a live cluster alone while it is not well", () => {
    for (const id of ["INS-471", "JOI-471"]) expect(wordsOf(id)).toMatch(/lets go of the test volume.*deleted/);
    for (const id of ["JOI-385", "JOI-485"]) expect(wordsOf(id)).toMatch(/does not answer, or shows a fault or a rebuild, do not join/);
    expect(wordsOf("JOI-404")).toMatch(/^Only with every member well and no rebuild/);
  });

  test("send nobody to another place of the page, which a phone does not show, nor to a column that may be a row", () => {
    const steps = builtInProcedures.steps.filter(({ do: text, caution }) => /at the front\b|next column|\btable of\b/i.test(`${String(text)} ${String(caution)}`));
    expect(steps.map(({ stepId }) => stepId)).toEqual([]);
  });

  test("give no step an id that was withdrawn, nor one twice", () => {
    const ids = builtInProcedures.steps.map(({ stepId }) => String(stepId));
    expect(ids.filter((id) => id in withdrawnSteps)).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
