import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const certutil = (...args: string[]): void => {
  const { status, stderr, error } = spawnSync("certutil", args, { encoding: "utf8" });
  if (status !== 0) throw new Error(`certutil ${args.join(" ")}: ${error?.message ?? stderr}`);
};

/** A home folder whose browser trusts this certificate authority, as a phone does whose owner was led through it. */
export function homeThatTrusts(authority: string): string {
  const home = mkdtempSync(join(tmpdir(), "lacbench-home-"));
  const store = join(home, ".pki/nssdb");
  mkdirSync(store, { recursive: true });
  certutil("-d", `sql:${store}`, "-N", "--empty-password");
  certutil("-d", `sql:${store}`, "-A", "-t", "C,,", "-n", "lacbench", "-i", authority);
  return home;
}
