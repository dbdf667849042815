import { spawnSync } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { say } from "../house/root.mjs";
import { run } from "../house/run.mjs";

const usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

const findChromium = () =>
  [process.env.CHROMIUM, ...usual].find((path) => path !== undefined && isProgram(path));

const works = (command, args) => spawnSync(command, args, { stdio: "ignore" }).status === 0;

/** How packages may be installed here, or why they may not. */
function packageManager() {
  if (!isProgram("/usr/bin/apt-get")) return { why: "this system has no apt-get" };
  if (process.getuid?.() === 0) return { prefix: [] };
  if (works("sudo", ["-n", "true"])) return { prefix: ["sudo", "-n"] };
  return { why: "it needs root, or sudo without a password" };
}

async function install(prefix, packages) {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", ...packages]]) {
    const [command, ...rest] = [...prefix, "apt-get", "-q", ...args];
    if ((await run(command, rest, { env })) !== 0) return `apt-get ${args[0]} failed`;
  }
  return undefined;
}

/** What writes into the list of certificates that Chromium trusts; the tests of letting phones in need it. */
const hasCertutil = () => works("certutil", ["--help"]) || isProgram("/usr/bin/certutil");

/** The path of a Chromium for the browser tests, installed from the system's packages if it may be; undefined, with what to do said, if not. */
export async function ensureChromium() {
  const packages = [
    ...(findChromium() === undefined ? ["chromium"] : []),
    ...(hasCertutil() ? [] : ["libnss3-tools"]),
  ];
  if (packages.length === 0) return findChromium();
  const { prefix, why } = packageManager();
  if (prefix !== undefined) say(`Installing ${packages.join(" and ")} from the system's packages.`);
  const problem = prefix === undefined ? why : await install(prefix, packages);
  if (hasCertutil() && findChromium() !== undefined) return findChromium();
  say(
    `The browser tests need ${packages.join(" and ")}, which could not be installed: ${problem ?? "still not there"}.\n` +
      `Install them (on Debian: apt-get install ${packages.join(" ")}), or name a browser: CHROMIUM=/path/to/chromium npm test.`,
  );
  return undefined;
}
