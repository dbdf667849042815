// Installs and builds what is not there yet, then is the server: signals and exit codes are its own.
import "./house/node-version.mjs";
import { ensureBuilt } from "./house/build.mjs";
import { endWithNpm } from "./house/end-with-npm.mjs";
import { ensureInstalled } from "./house/install.mjs";
import { openBrowser } from "./house/open-browser.mjs";

endWithNpm();
await ensureInstalled();
await ensureBuilt("program", "pages");
const { address } = await import("../dist/server/main.js");
openBrowser(address);
