import { chromium } from "playwright-core";
const [url, out, size = "phone", light = "day", ...acts] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
const page = await browser.newPage({ viewport: size === "phone" ? { width: 390, height: 844 } : { width: 1280, height: 800 }, deviceScaleFactor: 1, timezoneId: "Europe/Berlin", locale: "en-GB" });
page.on("pageerror", (e) => console.log("ERROR", String(e.stack).slice(0, 600)));
page.on("console", (m) => m.type() === "error" && console.log("CONSOLE", m.text().slice(0, 600)));
await page.goto(`http://127.0.0.1:5299${url}`);
await page.waitForTimeout(Number(process.env.WAIT ?? 5000));
for (const act of acts) { await page.evaluate(act); await page.waitForTimeout(1500); }
await page.evaluate((to) => { document.documentElement.dataset.light = to; }, light);
if (out === "-") console.log(await page.locator("main").innerText());
else await page.screenshot({ path: out, fullPage: true });
await browser.close();
