import { spawn } from "node:child_process";

const openers = { darwin: ["open"], win32: ["cmd", "/c", "start", ""] };

/** The command that opens an address here, or undefined where nobody would see it. */
export function browserCommand(env, platform) {
  if (env.LACBENCH_OPEN === "0" || env.CI) return undefined;
  if (openers[platform] !== undefined) return openers[platform];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ["xdg-open"] : undefined;
}

/** Opens the address in a browser if there is one. The address is printed as well, so not finding one is no failure. */
export function openBrowser(address) {
  const found = browserCommand(process.env, process.platform);
  if (found === undefined) return;
  const [command, ...args] = found;
  const child = spawn(command, [...args, address], { stdio: "ignore", detached: true });
  child.on("error", () => {});
  child.unref();
}
