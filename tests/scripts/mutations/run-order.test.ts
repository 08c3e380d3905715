import { RunOrder } from "../../../scripts/mutations/run-order";

const [quick, slow] = [{ testFile: "quick", ms: 10 }, { testFile: "slow", ms: 100 }];
const names = (order: RunOrder) => order.sorted([slow, quick]).map(({ testFile }) => testFile);

test("before anything is known the shortest run comes first", () => {
  expect(names(new RunOrder())).toEqual(["quick", "slow"]);
});

test("a run that notices mutants comes before a shorter one that never does", () => {
  const order = new RunOrder();
  // 31 of 32 a 100 ms are more than 1 of 32 a 10 ms.
  for (let mutant = 0; mutant < 30; mutant += 1) {
    order.note("quick", false);
    order.note("slow", true);
  }
  expect(names(order)).toEqual(["slow", "quick"]);
});

test("a run that takes ten times as long must notice ten times as much to come first", () => {
  const order = new RunOrder();
  for (const hasNoticed of [true, false]) order.note("quick", hasNoticed);
  for (let mutant = 0; mutant < 30; mutant += 1) order.note("slow", true);
  expect(names(order)).toEqual(["quick", "slow"]);
});
