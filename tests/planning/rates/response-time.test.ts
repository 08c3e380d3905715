import { share } from "../../../src/planning/quantity";
import { responseTimeMs, type QueueKind } from "../../../src/planning/rates";
import { problemOf } from "../../support/sentence";

const mean = (operations: number, serviceMs: number, servers: number, queues: QueueKind, hits = 0, cacheMs = 0.2) =>
  responseTimeMs({ operations, serviceMs, servers, cacheHits: share(hits), cacheMs, queues });

test.each<[string, number, number, number, QueueKind, number, number]>([
  ["an idle server", 1e-9, 10, 1, "own", 0, 10],
  ["one server half busy: twice its service (M/M/1)", 50, 10, 1, "own", 0, 20],
  ["one server half busy, shared", 50, 10, 1, "shared", 0, 20],
  ["two servers of one queue, half busy: S/(1 - 1/4) (M/M/2)", 100, 10, 2, "shared", 0, 40 / 3],
  ["two servers of their own queues, half busy", 100, 10, 2, "own", 0, 20],
  ["ten drives at 80 %", 800, 10, 10, "own", 0, 50],
  ["ten links at 80 %", 800, 10, 10, "shared", 0, 12.045900753982218],
  ["cache hits keep load from the drives: 12 ms for 70 %, 0.2 ms for the rest", 2000, 5, 12, "own", 0.3, 8.46],
  ["everything from the cache, whatever the drives could do", 1e6, 10, 1, "own", 1, 0.2],
])("%s (queues of Kleinrock, 1975, sections 3.2 and 3.5, from memory)", (_case, operations, serviceMs, servers, queues, hits, expected) => {
  expect(Math.abs(mean(operations, serviceMs, servers, queues, hits) / expected - 1)).toBeLessThan(1e-12 + 2e-11 * Number(operations < 1));
});

test("a hair below saturation keeps its digits: 999.999 operations of 1 ms take 1000 s", () => {
  expect(Math.abs(mean(999.999, 1, 1, "own") / 1e6 - 1)).toBeLessThan(1e-12);
  expect(Math.abs(mean(999.999, 1, 1, "shared") / 1e6 - 1)).toBeLessThan(1e-12);
});

test.each([
  [100, 10, 1, 2],
  [1001, 10, 10, 11],
  [1000, 10, 10, 11],
])("%i operations a second of %i ms are too much for %i servers: no answer, %i are named", (operations, serviceMs, servers, needed) => {
  expect(problemOf(() => mean(operations, serviceMs, servers, "own"))).toMatchObject({
    kind: "no-answer",
    argument: "servers",
    sentence: `servers ${servers} cannot keep up with ${operations} operations a second: ${needed} are the least. Write more servers or fewer operations.`,
  });
});
