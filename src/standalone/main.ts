import "./page.css";

async function start() {
  const { openGrid } = await import(/* webpackChunkName: "grid" */ "./open-grid");
  const grid = openGrid(document.getElementById("grid")!, { id: "plan", name: "Plan", sheetOrder: ["s"], sheets: { s: { id: "s", name: "Sheet1", rowCount: 200, columnCount: 26, cellData: { 0: { 0: { f: "=BAY.VERSION()" } } } } } });
  Object.assign(window, { grid });
}

void start();
