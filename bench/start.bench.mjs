// A second start, and what the server holds while nobody asks anything. The peer answers one word and keeps nothing.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { medianOf } from "./median.mjs";
import { residentMb, startServer } from "./server-process.mjs";

const bareServer = `
  const server = require("node:http").createServer((_, answer) => answer.end("bench"));
  server.listen(0, "127.0.0.1", () => console.log("Peer is at http://127.0.0.1:" + server.address().port));`;

async function firstAnswer(command, args, env) {
  const server = await startServer(command, args, env);
  await server.stop();
  return server.firstAnswerS;
}

async function idle(command, args, env) {
  const server = await startServer(command, args, env);
  await pause(3000);
  const held = residentMb(server.pid);
  await server.stop();
  return held;
}

export async function figures() {
  const data = mkdtempSync(join(tmpdir(), "lacbench-bench-"));
  const env = { LACBENCH_DATA: data, LACBENCH_NOTEBOOK: "demo" };
  const peer = [process.execPath, ["-e", bareServer], {}];
  try {
    await firstAnswer("npm", ["start"], env); // the first start makes the database and the notebook
    return [
      {
        name: "second `npm start` to the first answer",
        value: await medianOf(5, () => firstAnswer("npm", ["start"], env)),
        unit: "s",
        atMost: 3,
        peer: { name: "a bare node:http server", value: await medianOf(5, () => firstAnswer(...peer)) },
      },
      {
        name: "memory of the idle server",
        value: await medianOf(3, () => idle(process.execPath, ["scripts/start.mjs"], env)),
        unit: "MB",
        atMost: 150,
        peer: { name: "a bare node:http server", value: await medianOf(3, () => idle(...peer)) },
      },
    ];
  } finally {
    rmSync(data, { recursive: true });
  }
}
