import { once, oncePer } from "../../../../src/planning/plan/model";

describe("a computation that runs once", () => {
  test("waits until it is asked for, and then keeps its result, null included", () => {
    let runs = 0;
    const answer = once(() => {
      runs += 1;
      return null;
    });
    expect(runs).toBe(0);
    expect([answer(), answer()]).toEqual([null, null]);
    expect(runs).toBe(1);
  });

  test("keeps one result a key, undefined included", () => {
    const asked: string[] = [];
    const length = oncePer((key: string) => {
      asked.push(key);
      return key === "" ? undefined : key.length;
    });
    expect([length("a"), length(""), length("a"), length(""), length("bb")]).toEqual([1, undefined, 1, undefined, 2]);
    expect(asked).toEqual(["a", "", "bb"]);
  });
});
