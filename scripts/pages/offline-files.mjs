import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

export const workerFile = "service-worker.js";

/** Writes in front of the service worker what it is to keep: every built and every public file, and a mark of them all. */
export function offlineFiles() {
  let publicFolder;
  return {
    name: "offline-files",
    enforce: "post",
    apply: "build",
    configResolved(config) {
      publicFolder = config.publicDir;
    },
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const worker = bundle[workerFile];
        const built = Object.values(bundle).filter(
          (part) => part !== worker && !part.fileName.endsWith(".map"),
        );
        const contents = new Map(built.map((part) => [part.fileName, part.code ?? part.source]));
        for (const name of readdirSync(publicFolder))
          contents.set(name, readFileSync(join(publicFolder, name)));
        const files = [...contents.keys()].sort();
        const hash = createHash("sha256");
        for (const file of files) hash.update(`${file}\n`).update(contents.get(file));
        hash.update(worker.code);
        const version = hash.digest("hex").slice(0, 12);
        worker.code = `const lacbenchBuild = ${JSON.stringify({ version, files })};\n${worker.code}`;
      },
    },
  };
}
