import fc from "fast-check";
import type { FallibleNode, Link } from "../../../../src/planning/resilience";

/** A small graph whose ends are n0 and n1, both at some link. */
export interface SmallGraph {
  readonly links: readonly Link[];
  readonly nodes: readonly FallibleNode[];
}

// From 1e-12 on: a product of fifteen of them is still a number of full digits.
const unavailability = fc.oneof(fc.constantFrom(0, 1, 0.5, 1e-9, 1 - 2 ** -20), fc.double({ min: 1e-12, max: 1, noNaN: true }));

/** Makes graphs of up to 14 links, parallel ones and pieces included, with up to three nodes that fail and may not forward. */
export const smallGraphs: fc.Arbitrary<SmallGraph> = fc
  .record({
    size: fc.integer({ min: 2, max: 6 }),
    ends: fc.array(fc.tuple(fc.nat(), fc.nat(), unavailability), { minLength: 1, maxLength: 13, size: "max" }),
    failing: fc.array(fc.tuple(fc.nat(), unavailability, fc.boolean()), { maxLength: 3 }),
    // All links alike and all nodes alike, or each as it comes.
    alike: fc.option(fc.constantFrom(0.1, 0.5, 1e-9)),
  })
  .map(({ size, ends, failing, alike }) => {
    const links = ends.map(([a, step, down]) => ({
      from: `n${a % size}`,
      to: `n${((a % size) + 1 + (step % (size - 1))) % size}`,
      unavailability: alike ?? down,
    }));
    // Both ends must be in the table: a spur keeps each there without making a way.
    for (const end of ["n0", "n1"]) {
      if (!links.some((link) => link.from === end || link.to === end)) links.push({ from: end, to: `spur of ${end}`, unavailability: 0.5 });
    }
    const present = [...new Set(links.flatMap((link) => [link.from, link.to]))];
    const nodes = new Map(failing.map(([index, down, forwards]) => [present[index % present.length]!, { unavailability: alike ?? down, forwards }]));
    return { links, nodes: [...nodes].map(([name, known]) => ({ name, ...known })) };
  });
