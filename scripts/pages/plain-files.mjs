import { copyFileSync } from "node:fs";
import { join } from "node:path";

/**
 * For pages that lie as plain files on any host: the policy that the server would send stands in the page, and an address
 * that the host does not know is answered with the pages too, as most hosts do with a file of this name.
 */
export function plainFiles(policy) {
  let folder;
  return {
    name: "plain-files",
    apply: "build",
    configResolved(config) {
      folder = join(config.root, config.build.outDir);
    },
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "content-security-policy", content: policy.join("; ") },
        injectTo: "head-prepend",
      },
    ],
    closeBundle() {
      copyFileSync(join(folder, "index.html"), join(folder, "404.html"));
    },
  };
}
