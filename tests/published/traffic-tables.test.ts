import { blockingProbability, waitingProbability } from "../../src/planning/rates";

describe("Erlang B: the offered load that finds all servers busy with 1 %, as traffic tables print it (from memory)", () => {
  test.each([
    [1, 0.0101],
    [2, 0.153],
    [5, 1.361],
    [10, 4.461],
    [20, 12.03],
    [50, 37.9],
    [100, 84.06],
  ])("%i servers: %p erlangs", (servers, offered) => {
    expect(Math.abs(blockingProbability(servers, offered) - 0.01)).toBeLessThan(0.00006);
  });
});

describe("Erlang C: closed forms of one and two servers (Kleinrock, Queueing Systems, volume 1, 1975, from memory)", () => {
  test.each([0.1, 0.5, 0.9, 0.99])("at a load of %p a server", (load) => {
    expect(waitingProbability(1, load)).toBeCloseTo(load, 12);
    expect(waitingProbability(2, 2 * load)).toBeCloseTo((2 * load * load) / (1 + load), 12);
  });
});

test("Erlang C: ten servers and eight erlangs let 40.92 % wait, five and four 55.41 % (60-digit arithmetic of the defining sum)", () => {
  expect(waitingProbability(10, 8)).toBeCloseTo(0.4091801507, 9);
  expect(waitingProbability(5, 4)).toBeCloseTo(0.5541125541, 9);
});
