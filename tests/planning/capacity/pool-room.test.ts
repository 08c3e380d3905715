import { roomWithout } from "../../../src/planning/capacity";
import { bytes, share } from "../../../src/planning/quantity";
import { problemOf } from "../../support/sentence";

const member = (name: string, usable: number, used: number) => ({ name, usable: bytes(BigInt(usable)), used: bytes(BigInt(used)) });
const pool = [member("North 1", 100, 60), member("North 2", 100, 50), member("North 3", 100, 20)];

test("an array can go when the others have room for what it holds", () => {
  expect(roomWithout(pool, "north 1", share(0.8))).toEqual({ removable: true, moving: 60n, room: 90n, fillAfterwards: 0.65 });
});

test("and cannot when they have not", () => {
  expect(roomWithout(pool, "North 1", share(0.6))).toEqual({ removable: false, moving: 60n, room: 50n, fillAfterwards: 0.65 });
});

test("an array past the fill limit has no room, and lends none to the others", () => {
  expect(roomWithout([...pool, member("North 4", 100, 95)], "North 1", share(0.8)).room).toBe(90n);
});

test("exactly enough is enough", () => {
  expect(roomWithout([member("A", 10, 5), member("B", 10, 5)], "A", share(1))).toMatchObject({ removable: true, fillAfterwards: 1 });
});

test("the last byte of room counts", () => {
  expect(roomWithout([member("A", 10, 1), member("B", 10, 9)], "A", share(1))).toMatchObject({ removable: true, room: 1n });
});

test.each<[ReturnType<typeof member>[], string, string, string, string]>([
  [pool, "South", "invalid", "remove", 'remove "South" is not among the members. Write a name from their first column.'],
  [[...pool, member("north 1", 1, 0)], "North 1", "invalid", "members", 'members has "North 1" 2 times. Give every array a name of its own.'],
  [[member("A", 1, 0)], "A", "no-answer", "remove", 'remove "A" is the only member, so nothing can take over. Add the other arrays of the pool.'],
])("refuses %#", (members, name, kind, argument, sentence) => {
  expect(problemOf(() => roomWithout(members, name, share(1)))).toMatchObject({ kind, argument, sentence });
});
