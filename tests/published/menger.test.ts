import { buildGraph, disjointPaths, minimumCut, singlePoints, type Link } from "../../src/planning/resilience";

function graphOf(edges: string) {
  const links = edges.split(" ").map((edge): Link => {
    const [from, to] = edge.split("-") as [string, string];
    return { from, to };
  });
  return buildGraph(links);
}

const petersen = "0-1 0-4 0-5 1-2 1-6 2-3 2-7 3-4 3-8 4-9 5-7 5-8 6-8 6-9 7-9";
const utilities = "0-3 0-4 0-5 1-3 1-4 1-5 2-3 2-4 2-5";
const heawood = "0-1 0-13 0-5 1-2 1-10 2-3 2-7 3-4 3-12 4-5 4-9 5-6 6-7 6-11 7-8 8-9 8-13 9-10 10-11 11-12 12-13";
const kite = "0-1 0-2 0-3 0-5 1-3 1-4 1-6 2-3 2-5 3-4 3-5 3-6 4-6 5-6 5-7 6-7 7-8 8-9";
const florence =
  "Acciaiuoli-Medici Medici-Barbadori Medici-Ridolfi Medici-Tornabuoni Medici-Albizzi Medici-Salviati Castellani-Peruzzi Castellani-Strozzi " +
  "Castellani-Barbadori Peruzzi-Strozzi Peruzzi-Bischeri Strozzi-Ridolfi Strozzi-Bischeri Ridolfi-Tornabuoni Tornabuoni-Guadagni Albizzi-Ginori " +
  "Albizzi-Guadagni Salviati-Pazzi Bischeri-Guadagni Guadagni-Lamberteschi";

describe("Menger 1927: as many paths without a common node as nodes that part the ends; edges and figures of the graphs as NetworkX 3.6.1 has them", () => {
  test.each([
    ["Petersen", petersen, "0", "7", 3, 3],
    ["Petersen, neighbours", petersen, "0", "1", 3, 3],
    ["K3,3", utilities, "0", "1", 3, 3],
    ["Heawood", heawood, "0", "3", 3, 3],
    ["Krackhardt's kite, its tail", kite, "0", "9", 1, 1],
    ["Krackhardt's kite, its body", kite, "0", "7", 2, 2],
    ["Krackhardt's kite, neighbours", kite, "3", "6", 4, 5],
    ["Florentine families", florence, "Medici", "Strozzi", 3, 3],
    ["Florentine families, its ends", florence, "Acciaiuoli", "Pazzi", 1, 1],
  ])("%s", (_, edges, from, to, byNodes, byLinks) => {
    const graph = graphOf(edges);
    expect(disjointPaths(graph, from, to, "node")).toBe(byNodes);
    expect(disjointPaths(graph, from, to, "link")).toBe(byLinks);
    expect(minimumCut(graph, from, to)).toHaveLength(byNodes);
  });

  test("single points of Krackhardt's kite are its articulation points and bridges", () => {
    expect(singlePoints(graphOf(kite), "0", "9").map(({ name }) => name)).toEqual(["7", "7 - 8", "8", "8 - 9"]);
  });

  test("single points of the Florentine families between Acciaiuoli and Ginori", () => {
    const points = singlePoints(graphOf(florence), "Acciaiuoli", "Ginori").map(({ name }) => name);
    expect(points).toEqual(["Acciaiuoli - Medici", "Medici", "Albizzi", "Albizzi - Ginori"]);
  });
});
