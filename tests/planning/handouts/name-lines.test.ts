import fc from "fast-check";
import { reverseName } from "../../../src/planning/addressing";
import { namesOfPlan, planNames, plannedNames } from "../../../src/planning/handouts";
import { PlanModel } from "../../../src/planning/plan/model";
import { modelOf } from "../../support/plan-model";
import { sample, workbookWith } from "../../support/plan-rows";
import { problemOf } from "../../support/sentence";

const site = "Mill";
const networks = [{ network: "data 1", site, prefix: "10.0.1.0/24" }];

describe("names of a plan", () => {
  test("tell the ports of a device apart by its controller and port, its card, or its network", () => {
    const model = modelOf({
      networks,
      arrays: [{ array: "arr", site }, { array: "pair", site, portSharing: "array" }],
      ports: [
        { array: "arr", controller: "A", port: "1/4", address: "10.0.1.1" },
        { array: "pair", controller: "A", port: "0", address: "10.0.1.2" },
        { array: "pair", controller: "B", port: "0", address: "10.0.1.2" },
      ],
      clusters: [{ cluster: "north", sharedAddress: "10.0.1.3" }],
      hosts: [{ host: "h", site, address: "10.0.1.4" }, { host: "g", site }],
      hostPorts: [{ host: "g", card: "Slot 2", address: "10.0.1.5" }],
    });
    expect(plannedNames(model).map(({ name }) => name)).toEqual(["arr-a1-4", "pair-0", "north", "g-slot-2", "h-data-1"]);
  });

  test("are refused where a device cannot be a host name, each device once, and the others stand", () => {
    const model = modelOf({ networks, hosts: [{ host: "print room", site, address: "10.0.1.4, 10.0.1.5" }, { host: "a.b", site, address: "10.0.1.6" }, { host: "ok", site, address: "10.0.1.7" }] });
    const { refused, blocks } = namesOfPlan(model, "example.com");
    expect(refused).toEqual([
      '"print room" is no host name: it holds a blank. Write letters, digits and inner dashes.',
      '"a.b" holds a dot, so it would be a name in another domain. Write it without.',
    ]);
    expect(blocks[0]!.lines).toEqual(["$ORIGIN example.com.", "ok-data-1 IN A 10.0.1.7"]);
  });

  test.each(["", " ", "exa mple.com", "10.0.0.1", "-a.example", "a..example"])("are none in the domain %j", (domain) => {
    const { sentence } = problemOf(() => namesOfPlan(modelOf({ networks }), domain));
    expect(sentence).toContain("is no domain name. Write the one of these names, such as example.com.");
  });

  test("cannot smuggle a line or a record into a zone, whatever devices are called", () => {
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom("a", "1", "\n", "$", ";", "(", "\"", "\\", "@", "*", " ", "\t", ".", "-"), minLength: 1, maxLength: 12 }), (host) => {
      const model = modelOf({ networks, hosts: [{ host, site, address: "10.0.1.4" }] });
      const line = /^(?:\$ORIGIN [a-z0-9./-]+|[A-Za-z0-9.-]+ IN (?:A|PTR) [a-z0-9.-]+|[0-9.]+ [a-z0-9-]+\.example\.com [a-z0-9-]+)$/;
      for (const one of namesOfPlan(model, "example.com").blocks.flatMap(({ lines }) => lines)) expect(one).toMatch(line);
    }));
  });

  test("give every address of the sample a PTR record at the name of RFC 1035 and RFC 3596", () => {
    const plan = sample();
    plan.clusters.find(({ cluster }) => cluster === "Deep Store")!.cluster = "deep-store";
    const model = new PlanModel(workbookWith(plan));
    const { refused, blocks } = namesOfPlan(model, "thornmere.example");
    expect(refused).toEqual([]);
    const whole = blocks.filter(({ title }) => title.endsWith(".arpa")).flatMap(({ lines: [origin, ...lines] }) => lines.map((line) => `${line.split(" ")[0]}.${origin!.slice(8, -1)}`));
    const wanted = plannedNames(model).map(({ address }) => reverseName(address));
    expect(whole.sort()).toEqual(wanted.sort());
  });

  test("stand one line a cell, refused ones first, and none is a formula", () => {
    const model = modelOf({ networks, hosts: [{ host: "=1+1", site, address: "10.0.1.4" }, { host: "ok", site, address: "10.0.1.7" }] });
    const { rows } = planNames(model, "example.com", "2026-06-01 10:00");
    expect(rows.every((row) => row.length <= 1 && row.every((cell) => cell.formula === undefined))).toBe(true);
    expect(rows.map(([cell]) => cell?.value ?? "").slice(2, 8)).toEqual([
      "", "Without a name", '"=1+1" is no host name: it holds "=". Write letters, digits and inner dashes.', "", "Zone example.com", "$ORIGIN example.com.",
    ]);
  });

  test("have no sheet where no address stands in the plan", () => {
    expect(problemOf(() => planNames(modelOf({}), "example.com", "")).sentence).toBe("No address stands in the plan, so there is no name to list. Assign addresses first.");
  });

  test("have a reverse place by the usual network where an address lies outside its own", () => {
    const model = modelOf({ networks: [{ network: "n", site, prefix: "10.0.1.0/26" }], hosts: [{ host: "h", site }], hostPorts: [{ host: "h", card: "1", network: "n", address: "10.9.9.9" }] });
    const names = namesOfPlan(model, "example.com").blocks.map(({ title }) => title);
    expect(names).toEqual(["Zone example.com", "Zone 9.9.10.in-addr.arpa", "Hosts file"]);
  });
});
