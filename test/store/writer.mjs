// Appends entries one by one to the store in a folder: node writer.mjs FOLDER FIRST COUNT TEMPLATE
import { SqliteStore } from "../../dist/store/sqlite-store.js";

const [folder, first, count, template] = process.argv.slice(2);
const { notebook } = JSON.parse(template);
const store = await SqliteStore.open(folder);
for (let i = Number(first); i < Number(first) + Number(count); i++) {
  const id = `01a00000-0000-7000-8000-${i.toString(16).padStart(12, "0")}`;
  const { refused } = await store.append(notebook, [JSON.stringify({ ...JSON.parse(template), id, seq: i })]);
  if (refused.length > 0) throw new Error(refused[0].message);
}
await store.close();
