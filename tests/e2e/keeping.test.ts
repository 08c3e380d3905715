import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Dialog } from "playwright-core";
import { readTabs } from "../../src/planning/commissioning/tab";
import { readSnapshot } from "../../src/workbook/xlsx/read-snapshot";
import { launchBrowser, launchMortal } from "./support/launch-browser";
import { serveSite } from "./support/serve-site";
import { entriesIn, type Leaving, typeUntil } from "./support/typed-until";
import { WorkbookPage } from "./support/workbook-page";

const dist = join(__dirname, "..", "..", "dist");

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
});

const startNew = async ({ page }: WorkbookPage) => {
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByText("A new plan is on the desk.").waitFor();
};

const kept = (workbook: WorkbookPage) => workbook.page.getByText("Kept in this browser").waitFor();

describe("two windows of one browser", () => {
  test("with one plan know of each other, and both plans are listed", async () => {
    const first = await WorkbookPage.open(browser);
    await startNew(first);
    await first.type(0, 0, "first window");
    await kept(first);
    const second = await first.openTab();
    await second.page.getByText('Another window has "New plan" open. This window works on a copy.').waitFor();
    await first.page.getByText("Another window works on a copy of this plan").waitFor();
    await kept(second);
    await first.button("Recent").click();
    await first.page.getByRole("menuitem", { name: /^New plan \(copy\)/ }).waitFor();
    // A plan that another window has is neither removed under it nor opened twice.
    first.page.once("dialog", (dialog) => void dialog.accept());
    await first.page.getByRole("menuitem", { name: "Remove New plan (copy)" }).click();
    await first.page.getByText('Another window has "New plan (copy)" open: open another plan there, then remove it.').waitFor();
    await first.close();
    expect(first.faults).toEqual([]);
  });

  test("with two plans do not disturb each other, and each has its own again when it is loaded anew", async () => {
    const first = await WorkbookPage.open(browser);
    await startNew(first);
    const second = await first.openTab();
    await startNew(second);
    for (const [workbook, text] of [[first, "first window"], [second, "second window"]] as const) {
      await workbook.page.bringToFront();
      await workbook.type(0, 0, text);
      await kept(workbook);
    }
    for (const [workbook, text] of [[first, "first window"], [second, "second window"]] as const) {
      await workbook.page.reload();
      await workbook.ready();
      expect([await workbook.page.locator(".plan-name").textContent(), (await workbook.sheet("Sheet1")).values]).toEqual(["New plan", [[text]]]);
    }
    await first.close();
    expect(first.faults).toEqual([]);
  });

  test("one that crashes frees its plan", async () => {
    const first = await WorkbookPage.open(browser);
    await startNew(first);
    await first.type(0, 0, "before the crash");
    await kept(first);
    const crashed = first.page.waitForEvent("crash");
    void first.page.goto("chrome://crash").catch(() => undefined);
    await crashed;
    const second = await WorkbookPage.openIn(first.context, process.env["BAYWRIGHT_URL"]!);
    expect([await second.page.locator(".plan-name").textContent(), (await second.sheet("Sheet1")).values]).toEqual(["New plan", [["before the crash"]]]);
    await second.close();
  });
});

describe("leaving", () => {
  /** Asks to leave the page and answers with the question that came, if any; the page stays. */
  const askToLeave = async ({ page }: WorkbookPage): Promise<string | null> => {
    const asked: string[] = [];
    const stay = (dialog: Dialog) => {
      asked.push(dialog.type());
      void dialog.dismiss();
    };
    page.on("dialog", stay);
    await Promise.race([page.reload({ timeout: 5_000 }).catch(() => undefined), page.waitForEvent("dialog").then(() => page.waitForTimeout(300))]);
    page.off("dialog", stay);
    return asked[0] ?? null;
  };

  test("asks while something typed is not kept, or stands in a cell that is still open, and else does not", async () => {
    const workbook = await WorkbookPage.open(browser);
    await startNew(workbook);
    await workbook.click(0, 0);
    await workbook.page.keyboard.type("still open");
    await kept(workbook);
    expect(await askToLeave(workbook)).toBe("beforeunload");
    await workbook.page.keyboard.press("Enter");
    await workbook.typed();
    await kept(workbook);
    expect(await askToLeave(workbook)).toBeNull();
    await workbook.ready();
    expect((await workbook.sheet("Sheet1")).values).toEqual([["still open"]]);
    await workbook.close();
    expect(workbook.faults).toEqual([]);
  });

  test("in the middle of a cell tells afterwards what was being typed", async () => {
    const workbook = await WorkbookPage.open(browser);
    await startNew(workbook);
    await workbook.click(2, 1);
    await workbook.page.keyboard.type("a long remark, not ended");
    await kept(workbook);
    const { context } = workbook;
    await workbook.page.close();
    const again = await WorkbookPage.openIn(context, process.env["BAYWRIGHT_URL"]!);
    await again.page.getByText("When this page was left, this was being typed into Sheet1!B3 and stands in no cell: a long remark, not ended").waitFor();
    expect((await again.sheet("Sheet1")).values).toEqual([]);
    await again.close();
  });

  test("while tabs are built leaves each of them whole, or none of it", async () => {
    const workbook = await WorkbookPage.open(browser);
    const { page } = workbook;
    await kept(workbook);
    page.on("dialog", (dialog) => void dialog.accept().catch(() => undefined));
    for (const wait of [0, 1_600, 4_000]) {
      await workbook.turnTo("Commission");
      await workbook.button(/^Build \d+ tabs?$/).click();
      await page.waitForTimeout(wait);
      await page.reload();
      await workbook.ready();
      const tabs = readTabs(await page.evaluate(() => globalThis.baywright.port.read()));
      expect(tabs.filter(({ whole, faults }) => !whole || faults.length > 0).map(({ sheet }) => sheet)).toEqual([]);
      const seen = tabs.filter(({ visible }) => visible).map(({ sheet }) => sheet);
      expect(seen).toEqual([...new Set(seen)]);
    }
    await workbook.close();
    expect(workbook.faults).toEqual([]);
  });
});

test("with its server stopped the page goes on working, keeps, opens and saves, and opens again", async () => {
  const { server, url } = await serveSite(dist);
  const workbook = await WorkbookPage.open(browser, url);
  await workbook.page.waitForFunction(() => document.documentElement.dataset["offline"] === "ready");
  server.close();
  server.closeAllConnections();
  for (const view of ["Check", "Commission", "Functions", "Plan"]) await workbook.turnTo(view);
  await startNew(workbook);
  await workbook.type(0, 0, '=BAY.USABLE("RAID 6",12,4)');
  await kept(workbook);
  const waiting = workbook.page.waitForEvent("download");
  await workbook.button("Save .xlsx").click();
  const saved = await (await waiting).path();
  expect(readSnapshot(new Uint8Array(await readFile(saved))).sheets[0]!.values).toEqual([[40]]);
  await workbook.page.getByRole("button", { name: "Sample", exact: true }).click();
  await workbook.page.getByText("The sample plan is on the desk.").waitFor();
  await kept(workbook);
  const again = await workbook.openTab();
  for (const view of ["Check", "Commission", "Functions", "Plan"]) await again.turnTo(view);
  expect(await again.sheetNames()).toContain("Arrays");
  await workbook.close();
  expect(workbook.faults).toEqual([]);
});

test("a newer release is shown at its first load, though an older one is kept on the device", async () => {
  const folder = await mkdtemp(join(tmpdir(), "baywright-newer-"));
  await cp(dist, folder, { recursive: true });
  for (const ending of [".gz", ".br"]) await rm(join(folder, `index.html${ending}`), { force: true });
  const { server, url } = await serveSite(folder);
  const workbook = await WorkbookPage.open(browser, url);
  await workbook.page.waitForFunction(() => document.documentElement.dataset["offline"] === "ready");
  const page = join(folder, "index.html");
  // The server counts the files once, so that the newer page is as long as the older one.
  await writeFile(page, (await readFile(page, "utf8")).replace("needs JavaScript", "wants JavaScript"));
  await workbook.page.reload();
  await workbook.ready();
  expect(await workbook.page.content()).toContain("wants JavaScript");
  await workbook.close();
  server.close();
  await rm(folder, { recursive: true });
});

test("the policy of each page forbids text as code, scripts in the page and scripts from elsewhere", async () => {
  const context = await browser.newContext();
  for (const path of ["", "taskpane.html", "step/"]) {
    const page = await context.newPage();
    const address = new URL(path, process.env["BAYWRIGHT_URL"]).href;
    await page.route("**/tried-by-the-test.js", (route) =>
      route.fulfill({
        contentType: "text/javascript",
        body: `
          window.tried = { itself: "runs" };
          const attempt = (name, work) => { try { tried[name] = String(work()); } catch (fault) { tried[name] = fault.name; } };
          attempt("eval", () => eval("1 + 1"));
          attempt("new Function", () => new Function("return 2")());
          setTimeout("tried.timer = 'runs'", 0);
          const add = (fill) => { const script = document.createElement("script"); fill(script); document.head.append(script); };
          add((script) => { script.textContent = "tried.inline = 'runs'"; });
          add((script) => { script.src = "data:text/javascript,tried.data='runs'"; });
          add((script) => { script.src = URL.createObjectURL(new Blob(["tried.blob = 'runs'"])); });
          add((script) => { script.src = "https://elsewhere.example/tried.js"; });
          const button = document.createElement("button");
          button.setAttribute("onclick", "tried.attribute = 'runs'");
          button.click();
        `,
      }),
    );
    await page.route("https://elsewhere.example/**", (route) => route.fulfill({ contentType: "text/javascript", body: "tried.elsewhere = 'runs'" }));
    await page.goto(address);
    const tried = await page.evaluate(async () => {
      const script = document.createElement("script");
      script.src = new URL("/tried-by-the-test.js", location.href).href;
      await new Promise((resolve) => {
        script.onload = resolve;
        document.head.append(script);
      });
      await new Promise((resolve) => setTimeout(resolve, 500));
      return (globalThis as unknown as { tried: unknown }).tried;
    });
    expect([path, tried]).toEqual([path, { itself: "runs", eval: "EvalError", "new Function": "EvalError" }]);
    await page.close();
  }
  await context.close();
});

test("however the page ends while somebody types, all that it had called kept is there again, and nothing in between is left out", async () => {
  const profile = await mkdtemp(join(tmpdir(), "baywright-killed-"));
  let mortal = await launchMortal(profile);
  try {
    let workbook = await WorkbookPage.openIn(mortal.context, process.env["BAYWRIGHT_URL"]!);
    for (const [way, moment] of [["kill", 2_700], ["reload", 3_100], ["close", 2_300]] as readonly (readonly [Leaving, number])[]) {
      const { page } = workbook;
      page.on("dialog", (dialog) => void dialog.accept().catch(() => undefined));
      const leaving = { kill: () => mortal.kill(), reload: () => page.reload(), close: () => page.close() };
      const typed = await typeUntil(workbook, moment, leaving[way]);
      if (way === "kill") mortal = await launchMortal(profile);
      if (way === "reload") await workbook.ready();
      else workbook = await WorkbookPage.openIn(mortal.context, process.env["BAYWRIGHT_URL"]!);
      const back = await entriesIn(workbook);
      expect([way, back >= typed.saidKept, typed.saidKept > 0]).toEqual([way, true, true]);
    }
  } finally {
    await mortal.kill();
    await rm(profile, { recursive: true, force: true });
  }
});
